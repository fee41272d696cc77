"""The model of a table of readings. Every change is one step that can be undone.

A page reads it with `rows()` and answers with marks, errors, expected values and problems.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from PySide6.QtCore import QModelIndex, QObject, Qt, Signal

from app.faults import or_else
from app.widgets import reading_rows as cells
from app.widgets.reading_cells import READING, ErrorText, Index, ReadingCells
from app.widgets.reading_rows import Column, Expected, Row

__all__ = ["READING", "Column", "Expected", "ReadingsModel"]

_EDITABLE = Qt.ItemFlag.ItemIsEditable


class ReadingsModel(ReadingCells):
    """Rows of readings under columns given as data, to be changed.

    Attributes:
        change_text: what the last finished edit changed, in words.
        settled: False while rows come or go, when views move their place: no time for another change.
    """

    edited = Signal()  # once after every finished edit, undone and redone ones included
    edit_finished = Signal()  # after all that follows from `edited`
    restored = Signal(int, int)  # the first row and column that differ after a step was undone or redone

    def __init__(self, columns: Sequence[Column], parent: QObject | None = None) -> None:
        super().__init__(columns, parent)
        self.change_text = ""
        self.settled = True
        self._locked = False

    # What the page asks and answers

    def set_rows(self, rows: Sequence[Mapping[str, Any]]) -> None:
        """Show other rows; no step, and no `edited`."""
        self.beginResetModel()
        self._rows = [cells.completed(row) for row in rows]
        self._marks, self._errors, self._expected, self._said = {}, self._kept_errors(), {}, {}
        self.endResetModel()

    def set_columns(self, columns: Sequence[Column]) -> None:
        """Show other columns over the same rows: another instrument reads in another unit."""
        self.beginResetModel()
        self.columns = self.own_columns(columns)
        self.endResetModel()

    def set_marks(self, marks: Mapping[int, str]) -> None:
        """Flag readings by row, each with its reason in words."""
        if marks != self._marks:
            self._marks = dict(marks)
            self._refresh()

    def set_error_text(self, texts: ErrorText) -> None:
        """Give the column `error` its texts, by row or as a function of the row."""
        self._errors = texts if callable(texts) else dict(texts)
        self._refresh()

    def set_expected(self, expected: Mapping[int, Expected]) -> bool:
        """Say by row what the other readings predict: new readings are questioned against it, open questions anew.

        Returns whether a question fell away by it: that reading counts from now on.
        """
        before, known = self._rows, self._expected
        self._expected = dict(expected)
        self._rows = [cells.asked(row, self._expected.get(place)) if row["question"] else row
                      for place, row in enumerate(before)]
        if self._expected != known or self._rows != before:
            self._refresh()
        return any(old["question"] and not new["question"] for old, new in zip(before, self._rows, strict=True))

    def foretell(self, foretells: bool) -> None:
        """Show in the column `expected` what is expected of readings that are not in yet, too."""
        self._foretells = foretells
        self._refresh()

    def cover(self, covers: Callable[[Row], bool] | None) -> None:
        """Show of readings for which this is true only that they are kept; None shows all."""
        self._covers = covers
        self._refresh()

    def show_problem(self, row: int | None, key: str, message: str) -> bool:
        """Mark a cell with a problem the page has found, until it is edited; False where there is no such cell."""
        if row is None or not 0 <= row < len(self._rows) or key not in {column.key for column in self.columns}:
            return False
        self._said[row, key] = message
        self._refresh()
        return True

    def clear_problems(self) -> None:
        """Take away the problems the page has found."""
        if self._said:
            self._said = {}
            self._refresh()

    # Changes, each one undo step

    def edit(self, row: int, key: str, text: str) -> str:
        """Take a text typed into a cell and return its problem, or nothing. A refused text stays in the cell."""
        column = self.column(key)
        changed = cells.typed(self._rows[row], column, text, self._expected.get(row))
        problem = cells.problem(changed, column)
        below = self._follow_below(row, column) if column.down and text.strip() and not problem else []
        filled = {place: cells.typed(self._rows[place], column, text) for place in below}
        self._change({row: changed, **filled}, self.tr("{column}, row {row}").format(column=column.name, row=row + 1))
        return problem

    def answer(self, row: int, meant_mm: float | None = None) -> None:
        """Answer the question about a reading: kept as typed (None), or the length that was meant."""
        self._change({row: cells.answered(self._rows[row], meant_mm)}, self.tr("answer, row {row}").format(row=row + 1))

    def set_excluded(self, row: int, excluded: bool, reason: str = "") -> None:
        """Leave a reading out of the evaluation, with its reason, or take it in again."""
        text = self.tr("exclude row {row}") if excluded else self.tr("include row {row}")
        changed = self._rows[row] | {"excluded": excluded, "reason": reason.strip() if excluded else ""}
        self._change({row: cells.asked(changed, self._expected.get(row))}, text.format(row=row + 1))

    def replan(self, rows: Sequence[Mapping[str, Any]]) -> None:
        """Show other rows as one step that can be undone."""
        self._push([cells.completed(row) for row in rows], self.tr("other rows"))

    def lock(self, locked: bool) -> None:
        """Show readings that cannot be changed, or let them be changed again."""
        self._locked = locked
        self._refresh()

    def clear_cells(self, wanted: Sequence[tuple[int, str]]) -> None:
        """Empty cells, as one step."""
        changed: dict[int, Row] = {}
        for row, key in wanted:
            if self.column(key).editable:
                changed[row] = cells.typed(changed.get(row, self._rows[row]), self.column(key), "")
        self._change(changed, self.tr("clear"))

    def insert_row(self, row: int, values: Mapping[str, Any] | None = None) -> None:
        """Insert a row before `row`, blank where `values` say nothing."""
        after = list(self._rows)
        after.insert(row, cells.completed(values or {}))
        self._push(after, self.tr("insert row {row}").format(row=row + 1))

    def repeat_row(self, row: int) -> None:
        """Insert a row below for a further reading of the same feature."""
        own = [key for column in self.columns if column.again for key in (column.key, cells.raw_key(column.key))]
        keys = ("feature", "axis", "kind", "nominal_mm", "nominal_raw", *own)
        same = {key: self._rows[row][key] for key in keys if key in self._rows[row]}
        self.insert_row(row + 1, same)

    def remove_rows(self, rows: Sequence[int]) -> None:
        """Remove rows, as one step."""
        gone = set(rows)
        self._push([row for place, row in enumerate(self._rows) if place not in gone], self.tr("remove rows"))

    def paste(self, row: int, column: int, text: str) -> tuple[str, ...]:
        """Take a block copied from a spreadsheet, its first cell at (row, column), rows appended where it is longer.

        Returns one sentence for every refused cell, naming its row and column; the others are taken, as one step.
        """
        after, refused = cells.pasted(self._rows, self.columns, (row, column), text, self._expected)
        self._push(after, self.tr("paste"))
        return () if self._locked else refused

    def _follow_below(self, row: int, column: Column) -> list[int]:
        """Return the rows below whose cell is empty, or as in this one while their reading is awaited."""
        old, places = cells.edit_text(self._rows[row], column), []
        for place in range(row + 1, len(self._rows)):
            text = cells.edit_text(self._rows[place], column)
            if text and not (text == old and self.is_empty(place)):
                break
            places.append(place)
        return places

    def _change(self, changed: Mapping[int, Row], text: str) -> None:
        self._push([changed.get(place, row) for place, row in enumerate(self._rows)], text)

    def _push(self, after: list[Row], text: str) -> None:
        if after != self._rows and not self._locked:
            self.change_text = text
            self.restore_state(after)

    def undo_state(self) -> list[Row]:
        """Return the rows; they are never changed in place."""
        return self._rows

    def show_restored(self, before: list[Row]) -> None:
        """Say where the rows now differ from those before."""
        places = zip(before, self._rows, strict=False)
        row = next((place for place, (old, new) in enumerate(places) if old != new), min(len(before), len(self._rows)))
        old, new = (rows[row] if row < len(rows) else {} for rows in (before, self._rows))
        keys = [column.key for column in self.columns]
        of_raw = {cells.raw_key(key): key for key in keys}
        changed = {of_raw.get(key, key) for key in {**old, **new} if old.get(key) != new.get(key)}
        wanted = next((key for key in keys if key in changed), READING)
        self.restored.emit(min(row, len(self._rows) - 1), keys.index(wanted) if wanted in keys else 0)

    def restore_state(self, rows: list[Row]) -> None:
        """Show the rows of a step done or undone. What the page said about rows that moved is forgotten."""
        old, new = len(self._rows), len(rows)
        self.settled = False
        self._forget_said(rows)
        if new > old:
            self.beginInsertRows(QModelIndex(), old, new - 1)
            self._rows = rows
            self.endInsertRows()
        elif new < old:
            self.beginRemoveRows(QModelIndex(), new, old - 1)
            self._rows = rows
            self.endRemoveRows()
        self._rows = rows
        self.settled = True
        self._refresh()
        self.edited.emit()
        self.edit_finished.emit()

    def _forget_said(self, rows: list[Row]) -> None:
        if len(rows) != len(self._rows):
            self._marks, self._expected, self._said, self._errors = {}, {}, {}, self._kept_errors()
            return
        same = {place for place, row in enumerate(rows) if row == self._rows[place]}
        self._said = {cell: says for cell, says in self._said.items() if cell[0] in same}

    def _kept_errors(self) -> ErrorText:
        return self._errors if callable(self._errors) else {}

    def _refresh(self) -> None:
        if self._rows:
            self.dataChanged.emit(self.index(0, 0), self.index(len(self._rows) - 1, len(self.columns) - 1))

    # What Qt asks for a change

    @or_else(Qt.ItemFlag.NoItemFlags)
    def flags(self, index: Index) -> Qt.ItemFlag:
        """Return what can be done with a cell."""
        flags = super().flags(index)
        editable = index.isValid() and self.columns[index.column()].editable and not self._locked
        return flags | _EDITABLE if editable else flags

    @or_else(False)
    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Take an edit from the table; text that is already there is no edit."""
        if role != Qt.ItemDataRole.EditRole or not index.isValid():
            return False
        column = self.columns[index.column()]
        if str(value).strip() != self._edit_text(index.row(), column):
            self.edit(index.row(), column.key, str(value))
        return True
