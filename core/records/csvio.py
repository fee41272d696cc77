"""The readings file for a calculation without the window: text with one measured length a line, below a line of names.

`axis,kind,nominal_mm,measured_mm` and optionally `feature,repeat,lot,instrument,excluded,reason`; any other column is
kept as a note. Lines that begin with `#` are comments. Cells are parted by comma, semicolon or tab and may stand in
double quotes (RFC 4180), one row a line. All faults are collected, each with its line number.
"""

from __future__ import annotations

import csv
import math
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from core.errors import InputError
from core.quantity import length_from_text
from core.records.outside import content_of
from core.words import tr

REQUIRED = ("axis", "kind", "nominal_mm", "measured_mm")
OPTIONAL = ("feature", "repeat", "lot", "instrument", "excluded", "reason")
KNOWN = frozenset(REQUIRED + OPTIONAL)
SIZE_LIMIT_BYTES = 10 * 10**6
LINE_LIMIT_CHARACTERS = 10_000
CELL_LIMIT_CHARACTERS = 60  # of a length
FAULT_LIMIT = 200
_DELIMITERS = ",;\t"

Fault = tuple[int, str]


class ReadingsFileError(InputError):
    """The file cannot be read as readings.

    Attributes:
        faults: line number, counted from 1 (0: the file as a whole), and sentence of each fault, in order.
    """

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__("readings", faults[0][1])
        self.faults = faults


@dataclass(frozen=True, slots=True)
class ReadingsFile:
    """The rows as parallel tuples; text cells are trimmed, empty where the column is missing.

    `measured_text` is the cell as typed; `measured_mm` is None where an excluded row has no reading. `notes` holds what
    the other columns say, by their names as typed, empty cells left out.
    """

    line_number: tuple[int, ...]
    axis: tuple[str, ...]
    kind: tuple[str, ...]
    nominal_mm: tuple[float, ...]
    measured_mm: tuple[float | None, ...]
    measured_text: tuple[str, ...]
    feature: tuple[str, ...]
    repeat: tuple[str, ...]
    lot: tuple[str, ...]
    instrument: tuple[str, ...]
    excluded: tuple[bool, ...]
    reason: tuple[str, ...]
    notes: tuple[Mapping[str, str], ...]


def read_readings(path: Path, kinds: Collection[str]) -> ReadingsFile:
    """Read a readings file; `kinds` are the kinds of feature allowed.

    Raises:
        ReadingsFileError: the file cannot be opened or any row is at fault; nothing of it is used then.
    """
    return readings_from_bytes(_bytes_of(path), kinds)


def readings_from_bytes(content: bytes, kinds: Collection[str]) -> ReadingsFile:
    """Read what a readings file holds.

    Raises:
        ReadingsFileError: any row is at fault.
    """
    lines = _numbered_lines(_text_of(content))
    header = next(lines, None)
    if header is None:
        raise _whole(tr("The file is empty; its first line names the columns {names}.", names=", ".join(REQUIRED)))
    sheet = _Sheet(*header)
    allowed = tuple(sorted(kinds))
    faults = list(sheet.faults)
    rows: list[_Reading] = []
    for number, line in lines if not faults else ():
        row = _Row(number, sheet, allowed)
        reading = row.read(line)
        if reading is not None:
            rows.append(reading)
        faults += row.faults
        if len(faults) > FAULT_LIMIT:
            faults[FAULT_LIMIT:] = [(number, tr("There are more faults from here on; mend these first."))]
            break
    if not rows and not faults:
        faults = [(header[0], tr("There is no row of readings below the names of the columns; add one."))]
    if faults:
        raise ReadingsFileError(tuple(faults))
    return _file_from_rows(rows)


def _bytes_of(path: Path) -> bytes:
    try:
        return content_of(path, SIZE_LIMIT_BYTES // 10**6)
    except InputError as error:
        raise _whole(error.message) from error


def _whole(sentence: str) -> ReadingsFileError:
    return ReadingsFileError(((0, sentence),))


def _text_of(content: bytes) -> str:
    if b"\0" in content:
        line = content[: content.index(b"\0")].count(b"\n") + 1
        sentence = tr(
            "There is a zero byte: this is not plain text. Save the table as text (CSV, UTF-8), then try again."
        )
        raise ReadingsFileError(((line, sentence),))
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        sentence = tr("This line is not UTF-8 text; save the table as text (CSV, UTF-8), then try again.")
        raise ReadingsFileError(((line, sentence),)) from error
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _numbered_lines(text: str) -> Iterator[tuple[int, str]]:
    """Yield the lines that are neither blank nor comments, with their numbers."""
    for number, line in enumerate(text.split("\n"), start=1):
        if line.strip(_DELIMITERS + ' "') and not line.lstrip().startswith("#"):
            yield number, line


def _cells(line: str, delimiter: str) -> list[str] | str:
    """Return the trimmed cells of a line, or the sentence that says why it has none."""
    if len(line) > LINE_LIMIT_CHARACTERS:
        return tr("The line is longer than {limit} characters; shorten its notes.", limit=LINE_LIMIT_CHARACTERS)
    try:
        return [cell.strip() for cell in next(csv.reader([line], delimiter=delimiter, strict=True))]
    except csv.Error:
        return tr("A quotation mark is not closed on this line, or stands inside a cell; remove it.")


class _Sheet:
    """The line of names: which column is where, and what is wrong with it."""

    def __init__(self, number: int, line: str) -> None:
        self.delimiter = max(_DELIMITERS, key=line.count)
        cells = _cells(line, self.delimiter)
        self.columns = [] if isinstance(cells, str) else [self._key(cell) for cell in cells]
        self.faults: list[Fault] = [(number, cells)] if isinstance(cells, str) else []
        if not self.faults:
            self.faults = [(number, sentence) for sentence in self._judge()]

    @staticmethod
    def _key(cell: str) -> str:
        key = cell.lower()
        return key if key in KNOWN else cell

    def _judge(self) -> Iterator[str]:
        named = [column for column in self.columns if column]
        for column in sorted({column for column in named if named.count(column) > 1}):
            yield tr("The column {column} is there twice; rename or remove one.", column=_short(column))
        for column in REQUIRED:
            if column not in named:
                yield tr(
                    "The column {column} is missing; the first line names the columns {names}.",
                    column=column,
                    names=", ".join(REQUIRED),
                )


class _Reading(NamedTuple):
    """One faultless row, in the order of the fields of `ReadingsFile`."""

    line_number: int
    axis: str
    kind: str
    nominal_mm: float
    measured_mm: float | None
    measured_text: str
    feature: str
    repeat: str
    lot: str
    instrument: str
    excluded: bool
    reason: str
    notes: Mapping[str, str]


class _Row:
    """One line while it is read: its cells, and the faults found so far."""

    def __init__(self, number: int, sheet: _Sheet, kinds: tuple[str, ...]) -> None:
        self.number = number
        self.faults: list[Fault] = []
        self._sheet = sheet
        self._kinds = kinds
        self._cell: dict[str, str] = {}

    def read(self, line: str) -> _Reading | None:
        """Return what the line says; None if there are faults."""
        cells = _cells(line, self._sheet.delimiter)
        if isinstance(cells, str):
            self._fault(cells)
            return None
        if len(cells) != len(self._sheet.columns):
            self._fault(self._count_sentence(len(cells)))
            return None
        self._cell = dict(zip(self._sheet.columns, cells, strict=True))
        reading = self._reading(cells)
        return None if self.faults else reading

    def _reading(self, cells: list[str]) -> _Reading:
        text = self._text
        excluded = self._excluded()
        return _Reading(
            line_number=self.number,
            axis=self._choice("axis", ("x", "y", "z")),
            kind=self._choice("kind", self._kinds),
            nominal_mm=self._length("nominal_mm", tr("nominal_mm is empty; type the drawn length.")),
            measured_mm=None
            if excluded and not text("measured_mm")
            else self._length(
                "measured_mm", tr("measured_mm is empty; type the reading, or exclude the row with a reason.")
            ),
            measured_text=text("measured_mm"),
            feature=text("feature"),
            repeat=text("repeat"),
            lot=text("lot"),
            instrument=text("instrument"),
            excluded=excluded,
            reason=text("reason"),
            notes=self._notes(cells),
        )

    def _text(self, column: str) -> str:
        return self._cell.get(column, "")

    def _notes(self, cells: list[str]) -> dict[str, str]:
        return {
            column or tr("column {number}", number=place): cell
            for place, (column, cell) in enumerate(zip(self._sheet.columns, cells, strict=True), start=1)
            if cell and column not in KNOWN
        }

    def _choice(self, column: str, allowed: tuple[str, ...]) -> str:
        cell = self._text(column).lower()
        if not cell:
            self._fault(tr("{column} is empty; fill it in.", column=column))
        elif cell not in allowed:
            self._fault(
                tr(
                    "{column}: “{cell}” is not one of {allowed}; correct it.",
                    column=column,
                    cell=_short(cell),
                    allowed=", ".join(allowed),
                )
            )
        return cell

    def _excluded(self) -> bool:
        cell = self._text("excluded").lower()
        if cell not in ("", "yes", "no"):
            self._fault(tr("excluded: “{cell}” is neither yes nor no; type one of them.", cell=_short(cell)))
        if cell == "yes" and not self._text("reason"):
            self._fault(tr("The reading is excluded without a reason; give one in the column reason."))
        return cell == "yes"

    def _length(self, column: str, if_empty: str) -> float:
        cell = self._text(column)
        if not cell:
            self._fault(if_empty)
        elif len(cell) > CELL_LIMIT_CHARACTERS or not cell.isprintable():
            self._fault(tr("{column}: “{cell}” is not a length; type a number.", column=column, cell=_short(cell)))
        else:
            try:
                return length_from_text(cell, column).mm
            except InputError as error:
                self._fault(tr("{column}: {sentence}", column=column, sentence=error.message))
        return math.nan

    def _count_sentence(self, found: int) -> str:
        wanted = len(self._sheet.columns)
        if found > wanted and self._sheet.delimiter == ",":
            return tr(
                "{found} cells instead of {wanted}; a decimal comma needs semicolons between the cells, or quotes "
                "round the number.",
                found=found,
                wanted=wanted,
            )
        return tr("{found} cells instead of {wanted}; give every column its cell.", found=found, wanted=wanted)

    def _fault(self, sentence: str) -> None:
        self.faults.append((self.number, sentence))


def _short(cell: str) -> str:
    """Return a cell fit for a sentence: printable and not too long."""
    plain = "".join(letter if letter.isprintable() else "?" for letter in cell[: CELL_LIMIT_CHARACTERS + 1])
    return plain if len(plain) <= CELL_LIMIT_CHARACTERS else plain[:CELL_LIMIT_CHARACTERS] + "…"


def _file_from_rows(rows: list[_Reading]) -> ReadingsFile:
    return ReadingsFile(**{name: tuple(getattr(row, name) for row in rows) for name in _Reading._fields})
