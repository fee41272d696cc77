"""Rows of a bed trial as the core wants them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from app.pages.machine_geometry.bedform import PLACE
from core.errors import InputError
from core.words import tr

Row = Mapping[str, Any]
Place = tuple[float, float]


class BedRows(NamedTuple):
    """The readings that count, and for each the row of the table it stands in."""

    place_rows: list[int]
    x_mm: list[float]
    y_mm: list[float]
    z_mm: list[float]
    soak_rows: list[int]
    elapsed_s: list[float]
    soak_mm: list[float]


def bed_rows(rows: Sequence[Row]) -> BedRows:
    """Return the readings that count.

    Raises:
        InputError: a height without its place, or without its time.
    """
    found = BedRows([], [], [], [], [], [], [])
    for number, row in enumerate(rows):
        if row["measured_mm"] is None or row["excluded"] or row["questioned"]:
            continue
        if row["axis"] == PLACE:
            x, y = _place_of(rows, number)
            found.place_rows.append(number)
            found.x_mm.append(x)
            found.y_mm.append(y)
            found.z_mm.append(row["measured_mm"])
            continue
        if row.get("minutes") is None:
            says = tr("Row {row}: when was that read? Type the minutes since the heating began.", row=number + 1)
            raise InputError("minutes", says, number)
        found.soak_rows.append(number)
        found.elapsed_s.append(60.0 * row["minutes"])
        found.soak_mm.append(row["measured_mm"])
    return found


def _place_of(rows: Sequence[Row], number: int) -> Place:
    """Return the place of a probe; a row without one repeats the touch above it, if it has its name."""
    row = rows[number]
    x, y = row.get("x_mm"), row.get("y_mm")
    if x is None and y is None and number and rows[number - 1]["feature"] == row["feature"]:
        return _place_of(rows, number - 1)
    if x is None or y is None:
        says = tr("Row {row}: where was that probed? Type X and Y.", row=number + 1)
        raise InputError("x_mm" if x is None else "y_mm", says, number)
    return x, y
