"""A table to look at: headings and rows of texts, numbers at the right, readable with the arrow keys."""

from __future__ import annotations

from collections.abc import Sequence
from heapq import nlargest
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHeaderView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from app.faults import or_else, told_at_once
from app.units import inch_heading, inch_numbers, inch_sentence, is_length
from app.widgets.panel import Panel
from app.widgets.rowsmodel import told_place

Index = QModelIndex | QPersistentModelIndex
_NOWHERE = QModelIndex()
_GAP_PX = 8
_MEASURED = 60  # rows; a text of fewer letters than so many others is not the widest


class TextRows(QAbstractTableModel):
    """Headings and rows; the columns from `numbers_from` on are written at the right."""

    def __init__(self, headings: Sequence[str], numbers_from: int = 1) -> None:
        super().__init__()
        self._headings = tuple(headings)
        self._numbers_from = numbers_from
        self._rows: list[tuple[str, ...]] = []
        self._lengths: set[int] = set()
        self._inch = False
        self.two_lines = False

    def show_inches(self) -> None:
        """Show the rows that come from now on in inch: numbers below a heading in mm."""
        self._inch = True
        self._lengths = {place for place, heading in enumerate(self._headings) if is_length(heading)}
        self._headings = tuple(inch_heading(heading) for heading in self._headings)

    def set_rows(self, rows: Sequence[Sequence[str]]) -> None:
        """Show other rows."""
        self.beginResetModel()
        self._rows = [tuple(self._in_unit(place, cell) for place, cell in enumerate(row)) for row in rows]
        self.endResetModel()

    def _in_unit(self, column: int, cell: str) -> str:
        if not self._inch:
            return cell
        return inch_numbers(cell) if column in self._lengths else inch_sentence(cell)

    def head_in_two_lines(self, two_lines: bool) -> None:
        """Write the unit of a number below its heading, or beside it."""
        if two_lines != self.two_lines:
            self.two_lines = two_lines
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(self._headings) - 1)

    def rows(self) -> list[tuple[str, ...]]:
        """Return what is shown."""
        return list(self._rows)

    def longest(self, column: int) -> list[int]:
        """Return the rows of the longest texts of a column."""
        return nlargest(_MEASURED, range(len(self._rows)), key=lambda row: len(self._rows[row][column]))

    @or_else(0)
    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """Count the rows."""
        return 0 if parent.isValid() else len(self._rows)

    @or_else(0)
    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Count the columns."""
        return 0 if parent.isValid() else len(self._headings)

    @or_else(None)
    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return the text of a cell, or where it stands."""
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole):
            return self._rows[index.row()][index.column()]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return self._align(index.column())
        if role == Qt.ItemDataRole.AccessibleDescriptionRole:
            return told_place(self._headings[index.column()], self._rows[index.row()][0])
        return None

    @or_else(None)
    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return a heading, above its column, or the name of a row, which only a screen reader is told."""
        if orientation == Qt.Orientation.Vertical:
            return self._rows[section][0] if role == Qt.ItemDataRole.DisplayRole else None
        if orientation == Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return self._heading(section)
        if orientation == Qt.Orientation.Horizontal and role == Qt.ItemDataRole.TextAlignmentRole:
            return self._align(section)
        return None

    def _heading(self, column: int) -> str:
        heading = self._headings[column]
        below = self.two_lines and column >= self._numbers_from
        return "\n".join(heading.rsplit(", ", 1)) if below else heading

    def _align(self, column: int) -> Qt.AlignmentFlag:
        side = Qt.AlignmentFlag.AlignRight if column >= self._numbers_from else Qt.AlignmentFlag.AlignLeft
        return side | Qt.AlignmentFlag.AlignVCenter


class _Apart(QStyledItemDelegate):
    """Keeps numbers apart that no wide heading keeps apart."""

    @or_else(QSize())
    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Ask for a gap beside the text."""
        rows = index.model()
        apart = isinstance(rows, TextRows) and rows.two_lines
        return super().sizeHint(option, index) + QSize(_GAP_PX if apart else 0, 0)


class PlainTable(QTableView):
    """Shows `TextRows`; Tab leaves it."""

    def __init__(
        self, name: str, headings: Sequence[str], numbers_from: int = 1, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.rows = TextRows(headings, numbers_from)
        self.setModel(self.rows)
        self.setItemDelegate(_Apart(self))
        self.setAccessibleName(name)
        self.setTabKeyNavigation(False)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTextElideMode(Qt.TextElideMode.ElideMiddle)  # a name ends in its length, which tells it from others
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(self.fontMetrics().height() + 8)
        head = self.horizontalHeader()
        head.setHighlightSections(False)
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)

    def set_rows(self, rows: Sequence[Sequence[str]]) -> None:
        """Show other rows."""
        self.rows.set_rows(rows)
        self._fit()

    @or_else(-1)
    def sizeHintForColumn(self, column: int) -> int:
        """Return the width that a column needs; of many rows the longest texts alone are measured."""
        cells = (self.rows.index(row, column) for row in self.rows.longest(column))
        return max((self.sizeHintForIndex(cell).width() for cell in cells), default=0)

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Follow the width."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        """Write the headings in two lines where the names in the first column would lack the room."""
        head = self.horizontalHeader()
        self.rows.head_in_two_lines(False)
        needed = sum(max(self.sizeHintForColumn(column), head.sectionSizeHint(column))
                     for column in range(self.rows.columnCount()))
        self.rows.head_in_two_lines(needed > self.viewport().width())

    def show_inches(self) -> None:
        """Show lengths in inch from the next rows on."""
        self.rows.show_inches()


def framed(table: QTableView) -> QFrame:
    """Return a card with the table in it; the table is square, the corners of the card are not."""
    card = Panel(table.accessibleName())
    inside = QVBoxLayout(card)
    inside.setContentsMargins(1, 2, 1, 4)
    inside.addWidget(table)
    return card
