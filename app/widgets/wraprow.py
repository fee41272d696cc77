"""A row that goes on below where there is no more room, so that no text is cut in a narrow window."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, QSize
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget

from app.faults import or_else, told_at_once

_LEAST_WORDS_PX = 140  # for a wrapped text beside buttons; with less it goes below them


class WrapRow(QLayout):
    """Side by side from the left; what shares what is left over in its row grows, up to its greatest width."""

    def __init__(self, parent: QWidget | None = None, *, at_foot: bool = False) -> None:
        """Lay out from the left; `at_foot` puts what is lower at the bottom, and a row where nothing shares right."""
        super().__init__(parent)
        self._at_foot = at_foot
        self._items: list[QLayoutItem] = []
        self._sharing: set[QWidget] = set()
        self.setContentsMargins(0, 0, 0, 0)

    def add(self, widget: QWidget, *, shares: bool = False) -> None:
        """Append a widget; `shares` lets it take what is left over in its row."""
        self.insert(len(self._items), widget, shares=shares)

    def insert(self, place: int, widget: QWidget, *, shares: bool = False) -> None:
        """Put a widget before others."""
        if shares:
            self._sharing.add(widget)
        self.addWidget(widget)
        self._items.insert(place, self._items.pop())

    # What Qt asks of a layout

    @told_at_once
    def addItem(self, item: QLayoutItem) -> None:
        """Append an item."""
        self._items.append(item)
        self.invalidate()

    @or_else(0)
    def count(self) -> int:
        """Return the number of items."""
        return len(self._items)

    @or_else(None)
    def itemAt(self, index: int) -> QLayoutItem | None:
        """Return an item."""
        return self._items[index] if 0 <= index < len(self._items) else None

    @or_else(None)
    def takeAt(self, index: int) -> QLayoutItem | None:
        """Take an item out."""
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    @or_else(False)
    def hasHeightForWidth(self) -> bool:
        """Rows depend on the width."""
        return True

    @or_else(-1)
    def heightForWidth(self, width: int) -> int:
        """Return the height of the rows at a width."""
        return self._place(QRect(0, 0, width, 0), move=False)

    @or_else(QSize())
    def sizeHint(self) -> QSize:
        """Ask for one row."""
        seen = self._seen()
        width = sum(self._least(item) for item in seen) + max(self.spacing(), 0) * max(len(seen) - 1, 0)
        return QSize(width, max((item.sizeHint().height() for item in seen), default=0))

    @or_else(QSize())
    def minimumSize(self) -> QSize:
        """Be content with the widest item."""
        seen = self._seen()
        return QSize(max((self._least(item) for item in seen), default=0),
                     max((item.minimumSize().height() for item in seen), default=0))

    @told_at_once
    def setGeometry(self, rect: QRect) -> None:
        """Place the items."""
        super().setGeometry(rect)
        self._place(rect, move=True)

    def _seen(self) -> list[QLayoutItem]:
        return [item for item in self._items if not item.isEmpty()]

    def _least(self, item: QLayoutItem) -> int:
        if item.widget() not in self._sharing:
            return item.sizeHint().width()
        words = min(_LEAST_WORDS_PX, item.sizeHint().width()) if item.hasHeightForWidth() else 0
        return max(item.minimumSize().width(), words)

    def _rows(self, width: int) -> list[list[QLayoutItem]]:
        rows: list[list[QLayoutItem]] = [[]]
        taken = 0
        for item in self._seen():
            needed = self._least(item) + (self.spacing() if rows[-1] else 0)
            if rows[-1] and taken + needed > width:
                rows.append([])
                taken, needed = 0, self._least(item)
            rows[-1].append(item)
            taken += needed
        return rows

    def _place(self, rect: QRect, *, move: bool) -> int:
        """Lay the rows out from the top of `rect` and return their height."""
        y = rect.y()
        for row in self._rows(rect.width()):
            widths = self._widths(row, rect.width())
            height = max((_height(item, width) for item, width in zip(row, widths, strict=True)), default=0)
            used = sum(widths) + self.spacing() * (len(row) - 1)
            x = rect.x() + (max(rect.width() - used, 0) if self._at_foot else 0)
            for item, width in zip(row, widths, strict=True):
                own = _height(item, width)
                if move:
                    lower = height - own if self._at_foot else (height - own) // 2
                    at = QRect(QPoint(x, y + lower), QSize(width, own))
                    item.setGeometry(QRect(rect.right() + 1 - (at.right() + 1 - rect.x()), at.y(), width, own)
                                     if self._from_right() else at)
                x += width + self.spacing()
            y += height + self.spacing()
        return max(y - self.spacing() - rect.y(), 0)

    def _from_right(self) -> bool:
        parent = self.parentWidget()
        return parent is not None and parent.isRightToLeft()

    def _widths(self, row: list[QLayoutItem], width: int) -> list[int]:
        """Return the widths in a row: what is left over goes to those that share, evenly."""
        widths = [self._least(item) for item in row]
        left = width - sum(widths) - self.spacing() * (len(row) - 1)
        sharing = [place for place, item in enumerate(row) if item.widget() in self._sharing]
        while left > 0 and sharing:
            each = max(left // len(sharing), 1)
            for place in list(sharing):
                more = min(each, row[place].maximumSize().width() - widths[place], left)
                widths[place] += more
                left -= more
                if more < each:
                    sharing.remove(place)
        return [min(one, width) for one in widths]


def _height(item: QLayoutItem, width: int) -> int:
    return item.heightForWidth(width) if item.hasHeightForWidth() else item.sizeHint().height()
