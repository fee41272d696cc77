"""The table of the board: a click on a heading sorts, Enter goes on; what is long takes a second line."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QFont, QFontMetrics, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from app.faults import told_at_once
from app.pages.shop.boardmodel import DOUBT, DRIFT, LOT, NAME, NEXT, PROMISE, STALE, VERIFIED, BoardFilter
from app.units import inches_for

_WIDTHS = {NAME: 100, LOT: 76, NEXT: 156, VERIFIED: 92, PROMISE: 90, DRIFT: 90}
_PROMISED, _PROMISED_INCH = "±0.000 ± 0.000 mm", "±0.00000 ± 0.00000 in"  # a number is never cut, as words may be
_ROW_PX = 27
_BESIDE_HEAD_PX = 14
_BESIDE_WORDS_PX = 4
_SOON_MS = 200
_BESIDE_LINES_PX = 10  # within a cell, and a little to spare
_IN_WORDS = (NEXT, STALE, DOUBT, DRIFT)
_LEAST_PX = 776  # all columns in the smallest window


class BoardTable(QTableView):
    """All machines in sight."""

    def __init__(self, sight: BoardFilter, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setModel(sight)
        self.setAccessibleName(self.tr("All machines"))
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setSortingEnabled(True)
        self.sortByColumn(NAME, Qt.SortOrder.AscendingOrder)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(_ROW_PX)
        heads = self.horizontalHeader()
        heads.setHighlightSections(False)
        heads.setResizeContentsPrecision(0)  # of a large shop only the lines in sight are measured
        heads.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        for column in (STALE, DOUBT):
            heads.setSectionResizeMode(column, QHeaderView.ResizeMode.Stretch)
        widths = {column: max(width, self._head_px(column)) for column, width in _WIDTHS.items()}
        promised = _PROMISED_INCH if inches_for("promise") else _PROMISED
        widths[PROMISE] = max(widths[PROMISE], self.fontMetrics().horizontalAdvance(promised))
        stretched = 2 * max(self._head_px(column) for column in (STALE, DOUBT))
        over = sum(widths.values()) + stretched - _LEAST_PX  # what is too wide for the smallest window
        widths[NEXT] = max(widths[NEXT] - max(over, 0), self._head_px(NEXT))
        self._widths = widths
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(_SOON_MS)
        self._soon.timeout.connect(self._fit_next)
        sight.dataChanged.connect(self._fit_soon)
        for told in (sight.modelReset, sight.layoutChanged):
            told.connect(self._fit_next)

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Give what is to be done the room that nothing else needs."""
        super().resizeEvent(event)
        self._fit_next()

    def _fit_soon(self) -> None:
        """Wait for more: a thousand machines are worked out a few at a time, and each time all in sight is measured."""
        if not self._soon.isActive():
            self._soon.start()

    def _fit_next(self) -> None:
        """Make what is to be done readable whole, where names, lots and days leave room for it."""
        heads = self.horizontalHeader()
        stretched = 2 * max(self._head_px(column) for column in (STALE, DOUBT))
        widths, wanted = dict(self._widths), self.sizeHintForColumn(NEXT) + _BESIDE_WORDS_PX
        lacking = wanted + sum(widths.values()) - widths[NEXT] + stretched - self.viewport().width()
        for column in (VERIFIED, LOT, NAME):
            sorts = heads.sortIndicatorSection() == column
            head = heads.sectionSizeHint(column) if sorts else self._head_px(column)
            needed = max(self.sizeHintForColumn(column) + _BESIDE_WORDS_PX, head)
            given = min(max(lacking, 0), max(widths[column] - needed, 0))
            widths[column] -= given
            lacking -= given
        widths[NEXT] = max(widths[NEXT], wanted - max(lacking, 0))
        rest = (self.viewport().width() - sum(widths.values())) // 2  # of each of the two that are stretched
        rooms = {**widths, STALE: rest, DOUBT: rest}
        broken = any(self.sizeHintForColumn(column) > rooms[column] for column in _IN_WORDS)
        if broken:
            widths[NEXT] = max(self._in_two_lines_px(NEXT), self._head_px(NEXT))
        self.setWordWrap(broken)
        line_px = self.fontMetrics().lineSpacing()
        self.verticalHeader().setDefaultSectionSize(_ROW_PX + (line_px if broken else 0))
        for column, width in widths.items():
            heads.resizeSection(column, width)

    def _in_two_lines_px(self, column: int) -> int:
        """Return the width in which every text in sight of a column needs no more than two lines."""
        last = self.rowAt(self.viewport().height())
        rows = range(max(self.rowAt(0), 0), self.model().rowCount() if last < 0 else last + 1)
        measure = self.fontMetrics()
        texts = {str(self.model().index(row, column).data() or "") for row in rows}
        least = (min(max(measure.horizontalAdvance(line) for line in halves) for halves in _halved(text))
                 for text in texts)
        return max(least, default=0) + _BESIDE_LINES_PX

    def _head_px(self, column: int) -> int:
        """Return the width of a heading, without the arrow of the column that is sorted."""
        bold = QFont(self.font())
        bold.setBold(True)
        title = str(self.model().headerData(column, Qt.Orientation.Horizontal))
        return QFontMetrics(bold).horizontalAdvance(title) + _BESIDE_HEAD_PX


def _halved(text: str) -> list[tuple[str, str]]:
    """Return the ways to break a text into two lines between words."""
    words = text.split(" ")
    return [(" ".join(words[:place]), " ".join(words[place:])) for place in range(1, len(words) + 1)]
