"""The gauges of a set in the order of reading: number, name, nominal length, where the jaws go, how often."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QLocale, QSignalBlocker, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableWidget, QTableWidgetItem

from app.faults import told_at_once
from app.rownames import shown_name
from app.widgets.readings_table import ROW_PX
from app.widgets.rowsmodel import told_place
from app.words import shown
from core.pieces.piece import Gauge

_NUMBER, _NAME, _NOMINAL, _WHERE, _TIMES = range(5)


class GaugeTable(QTableWidget):
    """A table to look at; `gauge_shown` follows the current row."""

    gauge_shown = Signal(int)

    def __init__(self) -> None:
        super().__init__(0, 5)
        titles = ("№", self.tr("Gauge"), self.tr("Nominal\nmm"), self.tr("Jaws"), self.tr("Times"))
        self.setHorizontalHeaderLabels(titles)
        self.setAccessibleName(self.tr("Gauges in the order of reading"))
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.setAlternatingRowColors(True)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(ROW_PX)
        header = self.horizontalHeader()
        header.setHighlightSections(False)
        header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        header.setSectionResizeMode(_WHERE, QHeaderView.ResizeMode.Stretch)
        self.currentCellChanged.connect(self._tell)

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Show where the jaws go only where all of it can be read: the picture tells it of the current gauge."""
        super().resizeEvent(event)
        self._share()

    def show_gauges(self, gauges: Sequence[Gauge], times: Sequence[int]) -> None:
        """Show the gauges of another set."""
        with QSignalBlocker(self):
            self.setRowCount(len(gauges))
            for row, (gauge, count) in enumerate(zip(gauges, times, strict=True)):
                texts = (str(row + 1), shown_name(gauge.name), _length(gauge), shown(gauge.says), str(count))
                for column, text in enumerate(texts):
                    item = QTableWidgetItem(text)
                    left = column in (_NAME, _WHERE)
                    side = Qt.AlignmentFlag.AlignLeft if left else Qt.AlignmentFlag.AlignRight
                    item.setTextAlignment(side | Qt.AlignmentFlag.AlignVCenter)
                    item.setToolTip(text if left else "")
                    title = str(self.model().headerData(column, Qt.Orientation.Horizontal))
                    item.setData(Qt.ItemDataRole.AccessibleDescriptionRole, told_place(title, texts[_NAME]))
                    self.setItem(row, column, item)
            self.setCurrentCell(0 if gauges else -1, _NAME)
        self._share()

    def light(self, number: int) -> None:
        """Make the row of a gauge the current one."""
        with QSignalBlocker(self):
            self.setCurrentCell(number, _NAME)

    def _share(self) -> None:
        """Give the rest of the width to the last text in sight."""
        header = self.horizontalHeader()
        taken = sum(
            max(self.sizeHintForColumn(column), header.sectionSizeHint(column))
            for column in range(self.columnCount())
            if column != _WHERE
        )
        fits = taken + self.sizeHintForColumn(_WHERE) <= self.viewport().width()
        self.setColumnHidden(_WHERE, not fits)
        rest = QHeaderView.ResizeMode.ResizeToContents if fits else QHeaderView.ResizeMode.Stretch
        header.setSectionResizeMode(_NAME, rest)

    def _tell(self, row: int, _column: int, _before: int, _left: int) -> None:
        self.gauge_shown.emit(row)


def _length(gauge: Gauge) -> str:
    return QLocale().toString(gauge.nominal_mm, "f", 3 if abs(gauge.nominal_mm * 100 % 1) > 1e-6 else 2)
