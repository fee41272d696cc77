"""The columns of a table of readings as plain data, and how a number in one of them is read."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from app.units import inch_heading, is_length
from core.errors import InputError
from core.words import tr

_NUMBER = re.compile(r"[+-]?(\d+(\.\d*)?|\.\d+)")


@dataclass(frozen=True, slots=True)
class Column:
    """A column of the table.

    Attributes:
        key: name in the row.
        title: words over the column, with the unit; a line break saves width.
        kind: "text", "length", "number" for what is no length, "choice", or "shown" for what the page computes.
        editable: whether people may change it.
        choices: for "choice": the values, or (value, shown text) pairs.
        low: for "number": the least that is taken; None for no limit.
        high: for "number": the most that is taken; None for no limit.
        unit: for "number": its unit as people read it, which may be typed behind the number.
        again: whether a further reading of the same thing begins with the same value here.
        down: whether a value typed here fills the empty cells below it, and mends those it filled before whose
            reading is still awaited.
        word: for what a reading is held against: the word for it over the entry; "nominal" where empty.
        inch: whether its lengths are shown in inch, and read so without a unit; see `in_inch`.
    """

    key: str
    title: str
    kind: str = "text"
    editable: bool = True
    choices: Sequence[str | tuple[str, str]] = ()
    low: float | None = None
    high: float | None = None
    unit: str = ""
    again: bool = False
    down: bool = False
    word: str = ""
    inch: bool = False

    def in_inch(self) -> Column:
        """Return the column for a person who measures in inch; one without lengths stays as it is."""
        if self.kind not in ("length", "shown") or not is_length(self.title):
            return self
        return replace(self, title=inch_heading(self.title), inch=True)

    def pairs(self) -> list[tuple[str, str]]:
        """Return the choices as (value, shown text)."""
        return [(choice, choice) if isinstance(choice, str) else choice for choice in self.choices]

    @property
    def name(self) -> str:
        """The title in one line, for sentences."""
        return self.title.replace("\n", " ")

    @property
    def numeric(self) -> bool:
        """Whether its cells are numbers, set flush right."""
        return self.kind in ("length", "number", "shown")


@dataclass(frozen=True, slots=True)
class Expected:
    """What the other readings predict for a row: length, standard uncertainty, and both as text for people."""

    mm: float
    u_mm: float
    text: str


def tidy(text: str) -> str:
    """Mend what gauges and hasty fingers send: blanks behind the sign, and a decimal mark struck twice."""
    text = re.sub(r"^([+\-−])\s+", r"\1", text.strip())
    return re.sub(r"([.,])\1", r"\1", text)


def read_number(text: str, column: Column) -> float:
    """Return a number with decimal comma or point, its unit behind it or not.

    Raises:
        InputError: field the column's key: no number, or one outside the limits of the column.
    """
    plain = tidy(text)
    if column.unit:
        plain = re.sub(rf"\s*{re.escape(column.unit)}$", "", plain, flags=re.IGNORECASE)
    plain = plain.replace("−", "-").replace(",", ".")
    if not _NUMBER.fullmatch(plain):
        raise InputError(column.key, tr(
            "“{text}” is not a number; type for example 12.5 or 12,5, without thousands separators.", text=text))
    value = float(plain)
    if column.low is not None and value < column.low:
        raise InputError(column.key, tr("{value} is too small: at least {limit}.",
                                        value=f"{value:g}", limit=f"{column.low:g}"))
    if column.high is not None and value > column.high:
        raise InputError(column.key, tr("{value} is too large: at most {limit}.",
                                        value=f"{value:g}", limit=f"{column.high:g}"))
    return value
