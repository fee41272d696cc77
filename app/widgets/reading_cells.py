"""What a table of readings shows: the text, sign, ink and tip of every cell, and what is said of its rows.

The rows are the truth; marks, errors, expected values and problems are shown beside them and never stored in them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QColor, QFont

from app.theme import tokens
from app.units import inch_digits, inch_numbers, inch_sentence
from app.widgets import reading_rows as cells
from app.widgets.fields import local_text, number_text
from app.widgets.reading_rows import Column, Expected, Row
from app.widgets.rowsmodel import told_place
from core.measuring.plausible import Question

READING = "measured_mm"
Index = QModelIndex | QPersistentModelIndex
ErrorText = Mapping[int, str] | Callable[[Mapping[str, Any]], str]

_ROOMY = 4  # so many columns fit beside the plot of the smallest window with titles of one line
_REFUSED, _QUESTIONED, _OUTLIER = "✗", "?", "⚑"


class ReadingCells(QAbstractTableModel):
    """Rows of readings under columns given as data, to be looked at.

    Attributes:
        columns: as given.
        unsaved: why the last edit is not stored yet; the page says so.
        inch: whether lengths are shown in inch, and read so without a unit.
    """

    def __init__(self, columns: Sequence[Column], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.columns = tuple(columns)
        self._rows: list[Row] = []
        self._marks: dict[int, str] = {}
        self._errors: ErrorText = {}
        self._expected: dict[int, Expected] = {}
        self._foretells = False
        self._said: dict[tuple[int, str], str] = {}
        self.unsaved = ""
        self.inch = False

    def show_inches(self) -> None:
        """Show lengths in inch; the rows keep their millimetres."""
        self.beginResetModel()
        self.inch = True
        self.columns = self.own_columns(self.columns)
        self.endResetModel()

    def own_columns(self, columns: Sequence[Column]) -> tuple[Column, ...]:
        """Return columns with the titles of the unit that is shown."""
        return tuple(column.in_inch() if self.inch else column for column in columns)

    def said(self, text: str) -> str:
        """Return a sentence with the lengths in it in the unit that is shown."""
        return inch_sentence(text) if self.inch else text

    def length_text(self, length_mm: float, places: int = 6) -> str:
        """Return a length without its unit: with so many decimals of a millimetre, or as inches."""
        return local_text(inch_digits(length_mm)) if self.inch else number_text(length_mm, places)

    @property
    def length_unit(self) -> str:
        """The unit of the lengths shown."""
        return "in" if self.inch else "mm"

    def rows(self) -> list[Row]:
        """Return a copy of the rows, plain values only; `questioned` tells a reading whose question is open."""
        return [cells.kept(row) for row in self._rows]

    def problem(self, row: int, key: str) -> str:
        """Return what is wrong with a cell, or nothing."""
        return self.said(self._said.get((row, key)) or cells.problem(self._rows[row], self.column(key)))

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
        expected = self._expected.get(row)
        return replace(expected, text=self.said(expected.text)) if expected and self.inch else expected

    def mark(self, row: int) -> str:
        """Return why a reading is flagged, or nothing."""
        return self.said(self._marks.get(row, ""))

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

    # What Qt asks

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        """Return the number of rows."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        """Return the number of columns."""
        return 0 if parent.isValid() else len(self.columns)

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
                tip, place = self._tip(index.row(), column), told_place(column.title, str(index.row() + 1))
                return tip if role == Qt.ItemDataRole.ToolTipRole else f"{place}\n{tip}".strip()
            case Qt.ItemDataRole.FontRole:
                return _font(column.numeric, row["excluded"])
            case Qt.ItemDataRole.ForegroundRole:
                return self._ink(index.row(), column)
        return None

    def text(self, row: int, key: str) -> str:
        """Return the text of a cell as a person reads it, without its sign."""
        if key == "expected":
            return self._expected_text(row)
        if key != "error":
            return cells.plain_text(self._rows[row], self.column(key))
        text = self._errors(self._rows[row]) if callable(self._errors) else self._errors.get(row, "")
        return inch_numbers(text) if self.column(key).inch else text

    def _expected_text(self, row: int) -> str:
        """Return what is expected, hidden until the reading is in, so that nobody reads what he expects."""
        expected = self.expected(row)
        if expected is None or (self.is_empty(row) and not self._foretells):
            return ""
        return expected.text.removesuffix(f" {self.length_unit}")

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
            says += [cells.question_text(question, self.inch) if question else "", self.mark(row)]
            length = cells.read_length(values["raw"], READING) if column.kind == "length" else None
            if length and (length.unit != self.length_unit or length.mm != values[READING]):
                unit = " mm" if self.inch and values["raw"][-1:].isdigit() else ""
                says.append(self.tr("typed as {text}").format(text=values["raw"] + unit))
        return "\n".join(line for line in says if line) or ("" if column.numeric else cells.plain_text(values, column))

    def _ink(self, row: int, column: Column) -> QColor | None:
        if self.sign(row, column.key):
            return QColor(tokens().warning)
        quiet = self._rows[row]["excluded"] or column.key == "expected"
        return QColor(tokens().quiet) if quiet else None


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
