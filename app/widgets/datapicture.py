"""A picture of one set of data, with its summary and its note; without data it says what is missing."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtWidgets import QWidget

from app.theme import Tokens
from app.widgets.picturepane import PicturePane


class DataPicture(PicturePane):
    """Shows one set of data, which says of itself `summary` (for who cannot see it) and `note` (for the line below).

    Attributes:
        data: what is shown; None while something is missing.
    """

    data: Any
    is_chart = True

    def __init__(self, title: str, empty_text: str, parent: QWidget | None = None) -> None:
        super().__init__(title, parent)
        self._empty_text = empty_text
        self.show_nothing()

    # To be filled in

    def draw_data(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        """Draw what there is."""
        raise NotImplementedError

    # What follows from it

    def show_data(self, data: Any) -> None:
        """Show a set of data."""
        self.data = data
        self.refresh()
        self.describe(data.summary)

    def show_nothing(self, why: str = "") -> None:
        """Say what is missing, or wrong."""
        self.data = None
        self.refresh()
        self.describe(why or self._empty_text)

    def hint(self) -> str:
        """Say what the marks mean."""
        return str(self.data.note) if self.data else ""

    def draw(self, painter: QPainter, size: QSize, theme: Tokens) -> None:
        """Draw the data, or say what is missing."""
        if self.data is not None:
            self.draw_data(painter, size, theme)
            return
        painter.setPen(QColor(theme.quiet))
        wrap = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
        painter.drawText(QRectF(20, 0, size.width() - 40, size.height()), int(wrap), self._empty_text)
