"""The model of a table of readings: what was typed, what it means, what is doubtful. Every change is one undo step.

The rows are the truth; a page reads them with `rows()` and answers with marks, errors, expected values and problems,
which are shown beside the readings and never stored in them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QColor, QFont, QUndoCommand, QUndoStack

from app.theme import tokens
from app.widgets import reading_rows as cells
from app.widgets.reading_rows import Column, Expected, Row
from core.measuring.plausible import Question

__all__ = ["Column", "Expected", "ReadingsModel"]

READING = "measured_mm"
Index = QModelIndex | QPersistentModelIndex
ErrorText = Mapping[int, str] | Callable[[Mapping[str, Any]], str]

_EDITABLE = Qt.ItemFlag.ItemIsEditable
_ROOMY = 4  # so many columns fit beside the plot of the smallest window with titles of one line
_REFUSED, _QUESTIONED, _OUTLIER = "✗", "?", "⚑"


class _Change(QUndoCommand):
    """The table before and after; rows are never changed in place, so the lists are cheap."""

    def __init__(self, model: ReadingsModel, before: list[Row], after: list[Row], text: str) -> None:
        super().__init__(text)
        self._model, self._before, self._after = model, before, after

    def undo(self) -> None:
        """Bring the table back."""
        self._model.replace_rows(self._before)

    def redo(self) -> None:
        """Make the change, the first time too."""
        self._model.replace_rows(self._after)


class ReadingsModel(QAbstractTableModel):
    """Rows of readings under columns given as data.

    Attributes:
        columns: as given.
        undo_stack: one step for every finished edit; texts are fit for a menu.
        settled: False while rows come or go, when views move their place: no time for another change.
    """

    edited = Signal()  # once after every finished edit, undone and redone ones included

    def __init__(self, columns: Sequence[Column], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.columns = tuple(columns)
        self.undo_stack = QUndoStack(self)
        self.settled = True
        self._locked = False
        self._rows: list[Row] = []
        self._marks: dict[int, str] = {}
        self._errors: ErrorText = {}
        self._expected: dict[int, Expected] = {}
        self._said: dict[tuple[int, str], str] = {}
        self.unsaved = ""  # why the last edit is not stored yet; the page says so

    # What the page asks and answers

    def rows(self) -> list[Row]:
        """Return a copy of the rows, plain values only; `questioned` tells a reading whose question is open."""
        return [cells.kept(row) for row in self._rows]

    def set_rows(self, rows: Sequence[Mapping[str, Any]]) -> None:
        """Show other rows; cannot be undone, and earlier steps are forgotten. No `edited`."""
        self.beginResetModel()
        self._rows = [cells.completed(row) for row in rows]
        self._marks, self._errors, self._expected, self._said = {}, self._kept_errors(), {}, {}
        self.endResetModel()
        self.undo_stack.clear()

    def set_columns(self, columns: Sequence[Column]) -> None:
        """Show other columns over the same rows: another instrument reads in another unit."""
        self.beginResetModel()
        self.columns = tuple(columns)
        self.endResetModel()

    def set_marks(self, marks: Mapping[int, str]) -> None:
        """Flag readings by row, each with its reason in words."""
        self._marks = dict(marks)
        self._refresh()

    def set_error_text(self, texts: ErrorText) -> None:
        """Give the column `error` its texts, by row or as a function of the row."""
        self._errors = texts if callable(texts) else dict(texts)
        self._refresh()

    def set_expected(self, expected: Mapping[int, Expected]) -> None:
        """Say by row what the other readings predict: new readings are questioned against it."""
        self._expected = dict(expected)
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
        self._said = {}
        self._refresh()

    def problem(self, row: int, key: str) -> str:
        """Return what is wrong with a cell, or nothing."""
        return self._said.get((row, key)) or cells.problem(self._rows[row], self.column(key))

    def problems(self) -> list[tuple[int, str, str]]:
        """Return (row, key, sentence) of every cell that cannot be read; excluded rows do not count."""
        found = [(place, column.key, cells.problem(row, column)) for place, row in enumerate(self._rows)
                 if not row["excluded"] for column in self.columns]
        return [entry for entry in found if entry[2]]

    def question(self, row: int) -> Question | None:
        """Return the open question about a reading."""
        question = self._rows[row]["question"]
        return question if isinstance(question, Question) else None

    def expected(self, row: int) -> Expected | None:
        """Return what is expected at a row."""
        return self._expected.get(row)

    def mark(self, row: int) -> str:
        """Return why a reading is flagged, or nothing."""
        return self._marks.get(row, "")

    def column(self, key: str) -> Column:
        """Return the column of that key."""
        return next(column for column in self.columns if column.key == key)

    def is_empty(self, row: int) -> bool:
        """Whether a row still waits for its reading."""
        return self._rows[row][READING] is None and not self._rows[row]["raw"] and not self._rows[row]["excluded"]

    def is_excluded(self, row: int) -> bool:
        """Whether a reading is left out of the evaluation."""
        return bool(self._rows[row]["excluded"])

    def values(self, row: int) -> Row:
        """Return one row, as `rows()` does."""
        return cells.kept(self._rows[row])

    def next_empty(self, row: int) -> int | None:
        """Return the next row after this one that waits for its reading, going round once; None where none does."""
        count = len(self._rows)
        order = [(row + step) % count for step in range(1, count + 1)] if count else []
        return next((place for place in order if self.is_empty(place)), None)

    # Changes, each one undo step

    def edit(self, row: int, key: str, text: str) -> str:
        """Take a text typed into a cell and return its problem, or nothing. A refused text stays in the cell."""
        column = self.column(key)
        changed = cells.typed(self._rows[row], column, text, self._expected.get(row))
        self._change({row: changed}, self.tr("{column}, row {row}").format(column=column.name, row=row + 1))
        return cells.problem(changed, column)

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
        same = {key: self._rows[row][key] for key in ("feature", "axis", "kind", "nominal_mm", "nominal_raw")}
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

    def _change(self, changed: Mapping[int, Row], text: str) -> None:
        self._push([changed.get(place, row) for place, row in enumerate(self._rows)], text)

    def _push(self, after: list[Row], text: str) -> None:
        if after != self._rows and not self._locked:
            self.undo_stack.push(_Change(self, self._rows, after, text))

    def replace_rows(self, rows: list[Row]) -> None:
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

    # What Qt asks

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        """Return the number of rows."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        """Return the number of columns."""
        return 0 if parent.isValid() else len(self.columns)

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Return what can be done with a cell."""
        flags = super().flags(index)
        editable = index.isValid() and self.columns[index.column()].editable and not self._locked
        return flags | _EDITABLE if editable else flags

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return titles and row numbers."""
        if role == Qt.ItemDataRole.DisplayRole:
            return self._title(section) if orientation == Qt.Orientation.Horizontal else str(section + 1)
        if role == Qt.ItemDataRole.TextAlignmentRole:
            numeric = orientation == Qt.Orientation.Vertical or self.columns[section].numeric
            return _alignment(numeric)
        return None

    def _title(self, section: int) -> str:
        """Return the title of a column; with many columns the unit of a number goes below its name."""
        column = self.columns[section]
        crowded = len(self.columns) > _ROOMY and column.numeric
        return "\n".join(column.title.rsplit(" ", 1)) if crowded else column.title

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Take an edit from the table; text that is already there is no edit."""
        if role != Qt.ItemDataRole.EditRole or not index.isValid():
            return False
        row, column = self._rows[index.row()], self.columns[index.column()]
        if str(value).strip() != cells.edit_text(row, column):
            self.edit(index.row(), column.key, str(value))
        return True

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return text, alignment, font, ink and tool tip of a cell."""
        if not index.isValid():
            return None
        row, column = self._rows[index.row()], self.columns[index.column()]
        match role:
            case Qt.ItemDataRole.DisplayRole:
                return f"{self.sign(index.row(), column.key)} {self.text(index.row(), column.key)}".strip()
            case Qt.ItemDataRole.EditRole:
                return cells.edit_text(row, column)
            case Qt.ItemDataRole.TextAlignmentRole:
                return _alignment(column.numeric)
            case Qt.ItemDataRole.ToolTipRole | Qt.ItemDataRole.AccessibleDescriptionRole:
                return self._tip(index.row(), column)
            case Qt.ItemDataRole.FontRole:
                return _font(column.numeric, row["excluded"])
            case Qt.ItemDataRole.ForegroundRole:
                return self._ink(index.row(), column)
        return None

    def text(self, row: int, key: str) -> str:
        """Return the text of a cell as a person reads it, without its sign."""
        if key != "error":
            return cells.plain_text(self._rows[row], self.column(key))
        return self._errors(self._rows[row]) if callable(self._errors) else self._errors.get(row, "")

    def sign(self, row: int, key: str) -> str:
        """Return the sign before a cell's text: refused, questioned, flagged, or nothing."""
        if self.problem(row, key):
            return _REFUSED
        if key != READING:
            return ""
        if self.question(row):
            return _QUESTIONED
        return _OUTLIER if row in self._marks else ""

    def _tip(self, row: int, column: Column) -> str:
        """Return why a cell looks as it does, one sentence a line."""
        values = self._rows[row]
        question = self.question(row)
        says = [self.problem(row, column.key)]
        if values["excluded"]:
            says.append(self.tr("Excluded: {reason}").format(reason=values["reason"]))
        if column.key == READING:
            says += [cells.question_text(question) if question else "", self._marks.get(row, "")]
            length = cells.read_length(values["raw"], READING) if column.kind == "length" else None
            if length and (length.unit == "in" or length.mm != values[READING]):
                says.append(self.tr("typed as {text}").format(text=values["raw"]))
        return "\n".join(line for line in says if line) or ("" if column.numeric else cells.plain_text(values, column))

    def _ink(self, row: int, column: Column) -> QColor | None:
        if self.sign(row, column.key):
            return QColor(tokens().warning)
        return QColor(tokens().quiet) if self._rows[row]["excluded"] else None


def _alignment(numeric: bool) -> Qt.AlignmentFlag:
    side = Qt.AlignmentFlag.AlignRight if numeric else Qt.AlignmentFlag.AlignLeft
    return side | Qt.AlignmentFlag.AlignVCenter


def _font(numeric: bool, excluded: bool) -> QFont | None:
    if not numeric and not excluded:
        return None
    font = QFont()
    font.setStrikeOut(excluded)
    if numeric:
        font.setFeature(QFont.Tag("tnum"), 1)
    return font
