"""What a table of readings shows: the text, sign, ink and tip of every cell, and what is said of its rows.

The rows are the truth; marks, errors, expected values and problems are shown beside them and never stored in them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import cache
from typing import Any, NamedTuple

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QColor, QFont

from app.faults import or_else
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

_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_ROOMY = 4  # so many columns fit beside the plot of the smallest window with titles of one line
_REFUSED, _QUESTIONED, _OUTLIER = "✗", "?", "⚑"


class Role:
    """What Qt asks of a cell, as whole numbers: each is compared thousands of times a keystroke."""

    DISPLAY = int(Qt.ItemDataRole.DisplayRole)
    EDIT = int(Qt.ItemDataRole.EditRole)
    ALIGNMENT = int(Qt.ItemDataRole.TextAlignmentRole)
    TIP = int(Qt.ItemDataRole.ToolTipRole)
    DESCRIPTION = int(Qt.ItemDataRole.AccessibleDescriptionRole)
    FONT = int(Qt.ItemDataRole.FontRole)
    INK = int(Qt.ItemDataRole.ForegroundRole)


class Look(NamedTuple):
    """What of a cell is painted; None for the font and the ink of the table."""

    text: str
    alignment: Qt.AlignmentFlag
    font: QFont | None
    ink: QColor | None


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
        self._rows: list[Row] = []  # replaced by another list at a change, never changed in place
        self._kept: list[Row] = []
        self._kept_of = self._rows
        self._marks: dict[int, str] = {}
        self._errors: ErrorText = {}
        self._expected: dict[int, Expected] = {}
        self._foretells = False
        self._said: dict[tuple[int, str], str] = {}
        self._covers: Callable[[Row], bool] | None = None
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
        if self._kept_of is not self._rows:  # asked several times at each keystroke
            self._kept_of, self._kept = self._rows, [cells.kept(row) for row in self._rows]
        return [dict(row) for row in self._kept]

    def problem(self, row: int, key: str) -> str:
        """Return what is wrong with a cell, or nothing."""
        return self.said(self._said.get((row, key)) or cells.problem(self._rows[row], self.column(key)))

    def problems(self) -> list[tuple[int, str, str]]:
        """Return (row, key, sentence) of every cell that cannot be read; excluded rows do not count."""
        typed = [column for column in self.columns if column.kind not in ("text", "shown")]
        found = [(place, column.key, cells.problem(row, column)) for place, row in enumerate(self._rows)
                 if not row["excluded"] for column in typed]
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

    def is_covered(self, row: int) -> bool:
        """Whether a reading is in and not to be seen now; one that cannot be read always is."""
        values = self._rows[row]
        refused = values[READING] is None or (row, READING) in self._said
        return self._covers is not None and not refused and self._covers(values)

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

    @or_else(0)
    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        """Return the number of rows."""
        return 0 if parent.isValid() else len(self._rows)

    @or_else(0)
    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        """Return the number of columns."""
        return 0 if parent.isValid() else len(self.columns)

    @or_else(None)
    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return titles and row numbers."""
        if role == Qt.ItemDataRole.DisplayRole:
            return self._title(section) if orientation == Qt.Orientation.Horizontal else str(section + 1)
        if role == Role.ALIGNMENT:
            numeric = orientation == Qt.Orientation.Vertical or self.columns[section].numeric
            return _alignment(numeric)
        return None

    def _title(self, section: int) -> str:
        """Return the title of a column; with many columns the unit of a number goes below its name."""
        column = self.columns[section]
        crowded = len(self.columns) > _ROOMY and column.numeric
        return "\n".join(column.title.rsplit(" ", 1)) if crowded else column.title

    @or_else(None)
    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return text, alignment, font, ink and tool tip of a cell."""
        if not index.isValid():
            return None
        place, column = index.row(), self.columns[index.column()]
        told: Any = None
        match int(role):
            case Role.DISPLAY:
                told = f"{self._sign(place, column)} {self._text(place, column)}".strip()
            case Role.EDIT:
                told = self._edit_text(place, column)
            case Role.ALIGNMENT:
                told = _alignment(column.numeric)
            case Role.TIP:
                told = self._tip(place, column)
            case Role.DESCRIPTION:
                told = f"{told_place(column.title, str(place + 1))}\n{self._tip(place, column)}".strip()
            case Role.FONT:
                told = _font(column.numeric, self._rows[place]["excluded"])
            case Role.INK:
                told = self._ink(place, column, self._sign(place, column))
        return told

    def look(self, row: int, column: int) -> Look:
        """Return what of a cell is painted; `data` tells the same by role."""
        shown = self.columns[column]
        sign, text = self._sign(row, shown), self._text(row, shown)
        font = _font(shown.numeric, self._rows[row]["excluded"])
        return Look(f"{sign} {text}" if sign else text, _alignment(shown.numeric), font, self._ink(row, shown, sign))

    def text(self, row: int, key: str) -> str:
        """Return the text of a cell as a person reads it, without its sign."""
        return self._text(row, self.column(key))

    def _text(self, row: int, column: Column) -> str:
        if column.key == "expected":
            return self._expected_text(row)
        if column.key == READING and self.is_covered(row):
            return self.tr("kept")
        if column.key != "error":
            return cells.plain_text(self._rows[row], column)
        text = self._errors(self._rows[row]) if callable(self._errors) else self._errors.get(row, "")
        return inch_numbers(text) if column.inch else text

    def _edit_text(self, row: int, column: Column) -> str:
        """Return the text to edit; nothing for a reading that is not to be seen: it is typed anew."""
        hidden = column.key == READING and self.is_covered(row)
        return "" if hidden else cells.edit_text(self._rows[row], column)

    def _expected_text(self, row: int) -> str:
        """Return what is expected, hidden until the reading is in, so that nobody reads what he expects."""
        expected = self.expected(row)
        if expected is None or (self.is_empty(row) and not self._foretells):
            return ""
        return expected.text.removesuffix(f" {self.length_unit}")

    def _sign(self, row: int, column: Column) -> str:
        """Return the sign before a cell's text: refused, questioned, flagged, or nothing."""
        if self._said.get((row, column.key)) or cells.problem(self._rows[row], column):
            return _REFUSED
        if column.key != READING:
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
            if self.is_covered(row):
                says.append(self.tr("Kept; hidden until all judges have scored."))
            length = cells.read_length(values["raw"], READING) if column.kind == "length" else None
            if length and (length.unit != self.length_unit or length.mm != values[READING]):
                unit = " mm" if self.inch and values["raw"][-1:].isdigit() else ""
                says.append(self.tr("typed as {text}").format(text=values["raw"] + unit))
        return "\n".join(line for line in says if line) or ("" if column.numeric else cells.plain_text(values, column))

    def _ink(self, row: int, column: Column, sign: str) -> QColor | None:
        if sign:
            return QColor(tokens().warning)
        quiet = self._rows[row]["excluded"] or column.key == "expected"
        return QColor(tokens().quiet) if quiet else None


def _alignment(numeric: bool) -> Qt.AlignmentFlag:
    return _RIGHT if numeric else _LEFT


@cache
def _font(numeric: bool, excluded: bool) -> QFont | None:
    if not numeric and not excluded:
        return None
    font = QFont()
    font.setStrikeOut(excluded)
    if numeric:
        font.setFeature(QFont.Tag("tnum"), 1)
    return font
