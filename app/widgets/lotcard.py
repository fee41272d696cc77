"""The card around the form of a filament lot, with the buttons that begin a new one and save this one."""

from __future__ import annotations

from PySide6.QtWidgets import QFrame, QPushButton, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.labels import heading
from app.widgets.lotform import LotForm
from app.widgets.wraprow import WrapRow


class LotCard(QFrame):
    """Heading, form and buttons."""

    def __init__(self, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        self.form = LotForm()
        self.save_button = QPushButton(self.tr("Save lot   Ctrl+S"))
        self.save_button.setObjectName("primary")
        self.new_button = QPushButton(self.tr("New &lot"))
        buttons = WrapRow()
        buttons.add(self.new_button)
        buttons.add(QWidget(), shares=True)
        buttons.add(self.save_button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * STEP_PX, STEP_PX, 2 * STEP_PX, 12)
        layout.setSpacing(STEP_PX)
        for part in (heading(title, of=self), self.form):
            layout.addWidget(part)
        layout.addLayout(buttons)
