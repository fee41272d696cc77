"""A table in which each row is one thing and each column one look at it."""

from __future__ import annotations

from collections.abc import Sized

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt

from app.faults import or_else

AnyIndex = QModelIndex | QPersistentModelIndex


def told_place(heading: str, row_name: str) -> str:
    """Return where a cell stands, for a screen reader: its column in one line, and what its row is called."""
    return ", ".join(part for part in (" ".join(heading.split()), row_name) if part)


class RowsModel(QAbstractTableModel):
    """Knows its size and headings; what a cell shows is up to the model made of it.

    Attributes:
        titles: of the columns.
        names: the column that holds the name of a row.
    """

    titles: tuple[str, ...] = ()
    names = 0

    def held(self) -> Sized:
        """Return what stands in the rows."""
        raise NotImplementedError

    @or_else(0)
    def rowCount(self, parent: AnyIndex | None = None) -> int:
        """Return the number of things."""
        return 0 if parent is not None and parent.isValid() else len(self.held())

    @or_else(0)
    def columnCount(self, parent: AnyIndex | None = None) -> int:
        """Return the number of columns."""
        return 0 if parent is not None and parent.isValid() else len(self.titles)

    @or_else(None)
    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Return the title of a column, or the name of a row, which only a screen reader is told."""
        if role != Qt.ItemDataRole.DisplayRole:
            return None
        return self.titles[section] if orientation is Qt.Orientation.Horizontal else self.row_name(section)

    def row_name(self, row: int) -> str:
        """Return what a row is called."""
        return str(self.index(row, self.names).data())

    def told(self, index: AnyIndex, role: int) -> str | None:
        """Return where a cell stands, if that is asked for."""
        if role != Qt.ItemDataRole.AccessibleDescriptionRole:
            return None
        return told_place(self.titles[index.column()], self.row_name(index.row()))
