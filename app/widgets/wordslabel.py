"""A label of several lines that insists on their height: a crowded layout would press it flat."""

from __future__ import annotations

from PySide6.QtGui import QResizeEvent

from app.faults import told_at_once
from app.widgets.unbroken import UnbrokenLabel


class WordsLabel(UnbrokenLabel):
    """As any label; with word wrap it is never lower than its lines."""

    def setText(self, text: str) -> None:
        """Show other words."""
        super().setText(text)
        self._insist(self.width())

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lines break elsewhere in another width."""
        super().resizeEvent(event)
        self._insist(event.size().width())

    def _insist(self, width: int) -> None:
        if self.wordWrap():
            if self.minimumHeight() > self.fontMetrics().lineSpacing():  # Qt never asks for less than that
                self.setMinimumHeight(0)
            self.setMinimumHeight(self.heightForWidth(width) if self.text() and width > 0 else 0)
