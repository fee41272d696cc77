"""A few lines of commands, as a machine reads them."""

from __future__ import annotations

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import QPlainTextEdit, QWidget

from app.faults import told_at_once
from app.theme import STEP_PX

_LINES = 4


class CommandText(QPlainTextEdit):
    """`finished` follows when it is left for another field with another text than before."""

    finished = Signal()

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setTabChangesFocus(True)
        self.setFixedHeight(_LINES * self.fontMetrics().lineSpacing() + 3 * STEP_PX)
        self._before = ""

    def show_text(self, text: str) -> None:
        """Show a text; nothing is announced."""
        with QSignalBlocker(self):
            self.setPlainText(text)
        self._before = text

    @told_at_once
    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Announce a change when the keyboard goes on."""
        super().focusOutEvent(event)
        stays = (Qt.FocusReason.ActiveWindowFocusReason, Qt.FocusReason.PopupFocusReason)
        if event.reason() not in stays and self.toPlainText() != self._before:
            self._before = self.toPlainText()
            self.finished.emit()
