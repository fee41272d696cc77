"""The table of the logbook: what happened gets the room, and a second line where there is little."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from app.faults import told_at_once
from app.pages.shop.logmodel import WHAT, WHEN, WHERE, WHO, LogModel

_ROW_PX = 26
_BESIDE_PX = 10  # the edges of a cell
_DAY = "2026-00-00"
_WHERE_SHARE = 0.16  # of the width
_WHO_PX, _LEAST_WHERE_PX = 50, 58
_NOBODY_PX = 560  # below it nobody is named in a column
_TWO_LINES_PX = 760  # below it long entries take a second line


class LogTable(QTableView):
    """All entries in sight. No entry is measured: there may be a hundred thousand of them."""

    def __init__(self, model: LogModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setModel(model)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.setTextElideMode(Qt.TextElideMode.ElideRight)
        self.setWordWrap(False)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(_ROW_PX)
        heads = self.horizontalHeader()
        heads.setHighlightSections(False)
        heads.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        heads.setMinimumSectionSize(_LEAST_WHERE_PX // 2)
        heads.setSectionResizeMode(WHAT, QHeaderView.ResizeMode.Stretch)
        heads.resizeSection(WHO, _WHO_PX)
        model.modelReset.connect(self._fit)

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Share the width out anew."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        """Give what happened all that day and place can spare; what is hidden stands in the tool tip and the card."""
        model, heads, width_px = self.model(), self.horizontalHeader(), self.viewport().width()
        assert isinstance(model, LogModel)
        broken = width_px < _TWO_LINES_PX
        heads.setSectionHidden(WHO, width_px < _NOBODY_PX)
        heads.setSectionHidden(WHERE, not model.has_places())
        heads.resizeSection(WHEN, self.fontMetrics().horizontalAdvance(_DAY) + _BESIDE_PX)
        heads.resizeSection(WHERE, max(int(_WHERE_SHARE * width_px), _LEAST_WHERE_PX))
        rows = self.verticalHeader()
        row_px = _ROW_PX + (self.fontMetrics().lineSpacing() if broken else 0)
        if rows.defaultSectionSize() != row_px:
            self.setWordWrap(broken)
            rows.setDefaultSectionSize(row_px)
