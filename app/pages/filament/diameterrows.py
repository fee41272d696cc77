"""Rows of the page *Diameter*: pairs of diameters, weighed lengths and samples in water, each in a view of its own.

A row is told by its kind; `axis` is the number of its place, piece or sample. All views make one trial.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from app.widgets.reading_columns import Column
from app.words import shown
from core.errors import InputError
from core.words import tr

Row = Mapping[str, Any]

PAIRS, MASS, WATER = "pairs", "mass", "water"
VIEWS = (PAIRS, MASS, WATER)
FIRST, SECOND, PIECE, IN_AIR, IN_WATER = "first", "second", "piece", "in_air", "in_water"
_KINDS = {PAIRS: (FIRST, SECOND), MASS: (PIECE,), WATER: (IN_AIR, IN_WATER)}
_PLANNED = {PAIRS: 10, MASS: 2, WATER: 2}
_PIECE_MM = 1000.0
FIELDS = {FIRST: "first_mm", SECOND: "second_mm", PIECE: "mass_g", IN_AIR: "air_g", IN_WATER: "water_g"}


def columns_of(view: str) -> tuple[Column, ...]:
    """Return the columns of a view; the reading comes last, so that a pasted block of two columns is refused aloud."""
    if view == PAIRS:
        return (
            Column("feature", shown(tr("Place")), editable=False),
            Column("error", shown(tr("Oval mm")), "shown", editable=False),
            Column("measured_mm", shown(tr("Reading mm")), "length"),
        )
    if view == MASS:
        return (
            Column("feature", shown(tr("Piece")), editable=False),
            Column("length_mm", shown(tr("Length mm")), "length"),
            Column("measured_mm", shown(tr("Mass g")), "number", low=0.0, high=1000.0, unit="g"),
        )
    return (
        Column("feature", shown(tr("Sample")), editable=False),
        Column("measured_mm", shown(tr("Balance shows g")), "number", low=-1000.0, high=1000.0, unit="g"),
    )


def planned(view: str, nominal_mm: float | None) -> list[dict[str, Any]]:
    """Return the empty rows that a view begins with."""
    return [row for number in range(1, _PLANNED[view] + 1) for row in rows_of(view, number, nominal_mm)]


def rows_of(view: str, number: int, nominal_mm: float | None) -> list[dict[str, Any]]:
    """Return the empty rows of one place, piece or sample."""
    rows: list[dict[str, Any]] = []
    for kind in _KINDS[view]:
        row: dict[str, Any] = {"feature": _name(kind, number), "axis": str(number), "kind": kind}
        if view == PAIRS:
            row |= {"nominal_mm": nominal_mm, "nominal_raw": "" if nominal_mm is None else f"{nominal_mm:g}"}
        if view == MASS:
            row |= {"length_mm": _PIECE_MM, "length_raw": f"{_PIECE_MM:g}"}
        rows.append(row)
    return rows


def view_of(row: Row) -> str:
    """Return the view a row belongs to; a row pasted below others is of the kind of the one above it."""
    return next((view for view, kinds in _KINDS.items() if row.get("kind") in kinds), PAIRS)


def numbers_in(rows: Sequence[Row]) -> int:
    """Return the highest number of a place, piece or sample."""
    return max((int(row["axis"]) for row in rows if str(row.get("axis", "")).isdigit()), default=0)


@dataclass(frozen=True, slots=True)
class Typed:
    """Readings by kind and number, repeats averaged, and the row in the table where each was typed last.

    Attributes:
        values: kind to number to mean reading.
        lengths_mm: number of a piece to its length.
        questioned_mm: diameters whose question is open.
        places: kind and number to row in the table; rows of other views have none.
    """

    values: Mapping[str, Mapping[int, float]]
    lengths_mm: Mapping[int, float]
    questioned_mm: tuple[float, ...]
    places: Mapping[tuple[str, int], int]

    def row_of(self, kind: str, index: int) -> int | None:
        """Return the row in the table of the reading with this index among those of its kind."""
        numbers = self.numbers(kind)
        return self.places.get((kind, numbers[index])) if index < len(numbers) else None

    def numbers(self, kind: str) -> list[int]:
        """Return the numbers whose readings count, in order: of pairs all places, of pieces and samples the whole."""
        of = {name: set(self.values.get(name, {})) for name in FIELDS}
        if kind in (FIRST, SECOND):
            return sorted(of[FIRST] | of[SECOND])
        return sorted(of[IN_AIR] & of[IN_WATER]) if kind in (IN_AIR, IN_WATER) else sorted(of[PIECE])

    def of(self, kind: str) -> tuple[float | None, ...]:
        """Return the readings of a kind in order, None where one of a pair is missing."""
        return tuple(self.values.get(kind, {}).get(number) for number in self.numbers(kind))


def typed_of(rows: Sequence[Row], in_view: int) -> Typed:
    """Return what was typed; the first `in_view` rows are those of the table.

    Raises:
        InputError: a row was pasted below the planned ones, or a piece has no length.
    """
    found: dict[str, dict[int, list[float]]] = {}
    lengths: dict[int, float] = {}
    places: dict[tuple[str, int], int] = {}
    questioned: list[float] = []
    for place, row in enumerate(rows):
        reading = row["measured_mm"]
        if reading is None or row["excluded"]:
            continue
        if row["questioned"]:
            questioned.append(reading)
            continue
        here = place if place < in_view else None
        if not row["feature"] or not str(row["axis"]).isdigit():
            raise InputError("measured_mm", tr("This row belongs to no place: add places first, then paste."), here)
        kind, number = str(row["kind"]), int(row["axis"])
        if kind == PIECE and row.get("length_mm") is None:
            raise InputError("length_mm", tr("Type the length of this piece."), here)
        if kind == PIECE:
            lengths[number] = float(row["length_mm"])
        found.setdefault(kind, {}).setdefault(number, []).append(float(reading))
        if here is not None:
            places[kind, number] = here
    means = {kind: {number: sum(all_) / len(all_) for number, all_ in by.items()} for kind, by in found.items()}
    return Typed(means, lengths, tuple(questioned), places)


def _name(kind: str, number: int) -> str:
    return {
        FIRST: f"place {number}, largest",
        SECOND: f"place {number}, at 90°",
        PIECE: f"piece {number}",
        IN_AIR: f"sample {number}, in air",
        IN_WATER: f"sample {number}, in water",
    }[kind]
