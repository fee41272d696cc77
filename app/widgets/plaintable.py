"""A table to look at: headings and rows of texts, numbers at the right, readable with the arrow keys."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

Index = QModelIndex | QPersistentModelIndex
_NOWHERE = QModelIndex()


class TextRows(QAbstractTableModel):
    """Headings and rows; the columns from `numbers_from` on are written at the right."""

    def __init__(self, headings: Sequence[str], numbers_from: int = 1) -> None:
        super().__init__()
        self._headings = tuple(headings)
        self._numbers_from = numbers_from
        self._rows: list[tuple[str, ...]] = []

    def set_rows(self, rows: Sequence[Sequence[str]]) -> None:
        """Show other rows."""
        self.beginResetModel()
        self._rows = [tuple(row) for row in rows]
        self.endResetModel()

    def rows(self) -> list[tuple[str, ...]]:
        """Return what is shown."""
        return list(self._rows)

    def rowCount(self, parent: Index = _NOWHERE) -> int:
        """Count the rows."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = _NOWHERE) -> int:
        """Count the columns."""
        return 0 if parent.isValid() else len(self._headings)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return the text of a cell, or where it stands."""
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole):
            return self._rows[index.row()][index.column()]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return self._align(index.column())
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return a heading, above its column."""
        if orientation == Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return self._headings[section]
        if orientation == Qt.Orientation.Horizontal and role == Qt.ItemDataRole.TextAlignmentRole:
            return self._align(section)
        return None

    def _align(self, column: int) -> Qt.AlignmentFlag:
        side = Qt.AlignmentFlag.AlignRight if column >= self._numbers_from else Qt.AlignmentFlag.AlignLeft
        return side | Qt.AlignmentFlag.AlignVCenter


class PlainTable(QTableView):
    """Shows `TextRows`; Tab leaves it."""

    def __init__(
        self, name: str, headings: Sequence[str], numbers_from: int = 1, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.rows = TextRows(headings, numbers_from)
        self.setModel(self.rows)
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
