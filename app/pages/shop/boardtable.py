"""The table of the board: a click on a heading sorts, Enter on a line goes on."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QFontMetrics
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from app.pages.shop.boardmodel import DOUBT, DRIFT, LOT, NAME, NEXT, PROMISE, STALE, VERIFIED, BoardFilter

_WIDTHS = {NAME: 100, LOT: 76, NEXT: 156, VERIFIED: 92, PROMISE: 90, DRIFT: 90}
_ROW_PX = 27
_BESIDE_HEAD_PX = 14
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
        heads.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        for column in (STALE, DOUBT):
            heads.setSectionResizeMode(column, QHeaderView.ResizeMode.Stretch)
        widths = {column: max(width, self._head_px(column)) for column, width in _WIDTHS.items()}
        stretched = 2 * max(self._head_px(column) for column in (STALE, DOUBT))
        over = sum(widths.values()) + stretched - _LEAST_PX  # what is too wide for the smallest window
        widths[NEXT] = max(widths[NEXT] - max(over, 0), self._head_px(NEXT))
        for column, width in widths.items():
            heads.resizeSection(column, width)

    def _head_px(self, column: int) -> int:
        """Return the width of a heading, without the arrow of the column that is sorted."""
        bold = QFont(self.font())
        bold.setBold(True)
        title = str(self.model().headerData(column, Qt.Orientation.Horizontal))
        return QFontMetrics(bold).horizontalAdvance(title) + _BESIDE_HEAD_PX
