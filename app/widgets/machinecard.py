"""The card around the form of a machine, with the buttons that begin a new one and save this one."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QPushButton, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.focusscroll import FocusScroll
from app.widgets.labels import heading
from app.widgets.machineform import MachineForm
from app.widgets.wraprow import WrapRow


class MachineCard(QFrame):
    """Heading, form and buttons; the form scrolls where problems under its fields need more height than there is."""

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        scroll = FocusScroll(self)
        self.form = MachineForm(scroll)  # in its place from the first: to be given another one later is slow
        self.save_button = QPushButton(self.tr("Save machine   Ctrl+S"))
        self.save_button.setObjectName("primary")
        self.new_button = QPushButton(self.tr("Ne&w machine"))
        scroll.setWidgetResizable(True)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setWidget(self.form)
        scroll.setMinimumWidth(self.form.minimumSizeHint().width())
        self.form.setAutoFillBackground(False)  # the scroll area turns it on, and the card's ground would not show
        buttons = WrapRow()
        buttons.add(self.new_button)
        buttons.add(QWidget(), shares=True)
        buttons.add(self.save_button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * STEP_PX, STEP_PX, 2 * STEP_PX, STEP_PX)
        layout.addWidget(heading(title, of=self))
        layout.addWidget(scroll, 1)
        layout.addLayout(buttons)
