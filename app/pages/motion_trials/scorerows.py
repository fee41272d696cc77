"""The rows of scored specimens: one for each letter, criterion and judge, and what stands against one of them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from app.widgets.fields import number_text
from core.errors import InputError
from core.measuring.rownames import row_words
from core.words import tr

JUDGES = ("1", "2")
_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # without I and O: they are read as numbers on a printed part
Row = Mapping[str, Any]


def at_specimen(error: InputError, fields: Mapping[str, str], places: Sequence[int], rows: Sequence[Row]) -> InputError:
    """Return what stands against the readings with the names of the page: field, row of the table, specimen.

    Args:
        error: from the core; its row counts the readings that were used.
        fields: by the core's name of a field that of the page.
        places: rows of the table that were used.
        rows: of the table.
    """
    field = fields.get(error.field, error.field)
    if error.row is None:
        return InputError(field, error.message)
    place = places[error.row]
    says = tr("{specimen}: {says}", specimen=row_words(str(rows[place]["feature"])), says=error.message)
    return InputError(field, says, place)


def scored_rows(
    steps: Sequence[float], order: Sequence[int], first: int, group: str, criteria: Sequence[tuple[str, str]] = ()
) -> list[dict[str, Any]]:
    """Return the rows of a set of specimens, one judge after the other, each by one criterion after the other.

    Args:
        steps: of the ladder.
        order: place of the step that each letter stands for.
        first: how many letters are taken already.
        group: which trial the rows belong to.
        criteria: key and English name of each; none where one score is given.
    """
    if criteria:
        return [
            specimen_row(
                f"{letter_of(first + place)}, {name}, judge {judge}", steps[at], group, judge
            ) | {"criterion": key}
            for judge in JUDGES
            for key, name in criteria
            for place, at in enumerate(order)
        ]
    return [
        specimen_row(f"{letter_of(first + place)}, judge {judge}", steps[at], group, judge)
        for judge in JUDGES
        for place, at in enumerate(order)
    ]


def specimen_row(name: str, step: float, group: str, judge: str = "") -> dict[str, Any]:
    """Return an empty reading of a specimen."""
    steps = {"step": step, "step_raw": number_text(step)}
    return {"feature": name, "axis": group, "kind": "travel", "judge": judge, **steps}


def measured_rows(
    steps: Sequence[float], order: Sequence[int], first: int, group: str, criterion: tuple[str, str]
) -> list[dict[str, Any]]:
    """Return the rows of what is measured on a set of scored specimens; arguments as of `scored_rows`."""
    key, name = criterion
    rows = []
    for place, at in enumerate(order):
        rows.append(specimen_row(f"{letter_of(first + place)}, {name}", steps[at], group) | {"criterion": key})
    return rows


def piece_of(row: Row) -> str:
    """Return the mark of the piece that a row is a reading of."""
    return str(row["feature"]).partition(",")[0]


def letter_of(number: int) -> str:
    """Return the mark of a specimen: A, B, ..., then A2, B2, ..."""
    round_, place = divmod(number, len(_LETTERS))
    return _LETTERS[place] + (str(round_ + 1) if round_ else "")


def places_in(rows: Sequence[Row], group: str) -> list[int]:
    """Return the rows of a trial whose reading counts."""
    return [
        place
        for place, row in enumerate(rows)
        if row["axis"] == group
        and row["measured_mm"] is not None
        and row.get("step") is not None
        and not row["excluded"]
        and not row["questioned"]
    ]
