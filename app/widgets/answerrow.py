"""The answers to a question about a reading, as buttons: as typed, or one of the lengths it may have meant."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QPushButton, QWidget

MOST_SUGGESTIONS = 3
_ACROSS = 2


class AnswerRow(QWidget):
    """Hidden until there is something to answer; `answered` carries 0 for the first button, then 1, 2, 3."""

    answered = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(8)
        self._buttons = [QPushButton() for _ in range(1 + MOST_SUGGESTIONS)]
        for place, button in enumerate(self._buttons):
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            button.setAutoDefault(False)
            button.clicked.connect(partial(self.answered.emit, place))
            grid.addWidget(button, place // _ACROSS, place % _ACROSS)
        self.hide()

    def offer(self, texts: Sequence[str]) -> None:
        """Show a button for each answer, Alt and its number pressing it from the second on; none hides the row."""
        if not texts and self.isHidden():
            return
        self.setVisible(bool(texts))
        for place, button in enumerate(self._buttons):
            button.setVisible(place < len(texts))
            button.setText(texts[place] if place < len(texts) else "")
            button.setShortcut(f"Alt+{place}" if 0 < place < len(texts) else "")
