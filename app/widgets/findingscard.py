"""A card that asks for a few values and says below them what they come to."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.fieldgrid import FieldGrid

_LINE = '<p style="margin: 0 0 5px 0"><b>{head}</b> {text}</p>'


class FindingsCard(QFrame):
    """What it asks for is up to the card made of it, which calls `lay_out`.

    Attributes:
        form: the values asked for.
        says: what they come to.
    """

    form: FieldGrid

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        self.says = QLabel()

    def lay_out(self, caution: str, form: FieldGrid, name: str) -> None:
        """Lay the card out; `name` tells a screen reader what the words below the form are."""
        self.form = form
        warning = QLabel(caution)
        warning.setObjectName("question")
        warning.setWordWrap(True)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * STEP_PX, STEP_PX, 2 * STEP_PX, STEP_PX)
        layout.setSpacing(4)
        for part in (warning, form):  # before the words below: Tab follows the order in which parts come in
            layout.addWidget(part)
        self.says.setWordWrap(True)
        self.says.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.setAccessibleName(name)
        self.says.setAccessibleName(name)
        self.says.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)  # the text in it takes the keyboard
        scroll.setWidget(self.says)
        scroll.viewport().setAutoFillBackground(False)
        self.says.setAutoFillBackground(False)
        layout.addWidget(scroll, 1)

    def show_lines(self, lines: Iterable[tuple[str, str]]) -> None:
        """Show heads in bold, each with its words behind it."""
        self.says.setText("".join(_LINE.format(head=escape(head), text=escape(text)) for head, text in lines))

    def say(self, text: str) -> None:
        """Show other words in the place of the findings."""
        self.says.setText(escape(text))
