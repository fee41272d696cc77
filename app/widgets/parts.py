"""One of several parts of a page is seen; those out of view ask for no room."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget


class Parts(QWidget):
    """As a stack, but as small as the part in view."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._parts: list[QWidget] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)

    def addWidget(self, part: QWidget) -> None:
        """Append a part; the first one is seen."""
        self._parts.append(part)
        self._column.addWidget(part)
        part.setVisible(len(self._parts) == 1)

    def currentIndex(self) -> int:
        """Return the place of the part in view, -1 where there is none."""
        return next((place for place, part in enumerate(self._parts) if not part.isHidden()), -1)

    def setCurrentIndex(self, place: int) -> None:
        """Bring a part into view."""
        for other, part in enumerate(self._parts):
            if other != place:
                part.hide()
        self._parts[place].show()
