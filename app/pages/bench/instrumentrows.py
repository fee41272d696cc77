"""Rows of an instrument check, as the core wants them and as a trial keeps them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from app.pages.trialpage import NOTHING_YET
from app.widgets.fields import local_text
from app.widgets.readings import Column
from app.words import shown
from core.errors import InputError
from core.measuring.instrumentkinds import LightGap, Part, Plan, kind_of, part_words, parts_of, plan_check
from core.words import Words, tr

if TYPE_CHECKING:
    from core.measuring.checkreadings import CheckReadings

Row = Mapping[str, Any]
_FIELD_OF = {"measured": "measured_mm", "reference": "nominal_mm", "part": "kind"}


@dataclass(frozen=True, slots=True)
class CheckSettings:
    """What holds for a whole check; None where a field is empty."""

    kind: str
    resolution: float
    limit: float | None
    blade_land_mm: float | None
    tolerance_mm: float | None
    light_gap: LightGap


def columns_of(kind: str) -> tuple[Column, ...]:
    """Return the columns of a check of an instrument of this kind."""
    known = kind_of(kind)
    unit, measures = known.unit, "length" if known.length else "number"
    parts = [(str(part), shown(part_words(part))) for part in parts_of(kind)]
    return (
        Column("feature", shown(tr("What"))),
        Column("kind", shown(tr("Part")), "choice", choices=parts),
        Column("nominal_mm", shown(tr("Reference {unit}", unit=unit)), measures, unit=unit),
        Column("half_width", shown(tr("± {unit}", unit=unit)), "number", low=0.0, unit=unit, again=True),
        Column("measured_mm", shown(tr("Reading {unit}", unit=unit)), measures, unit=unit),
        Column("error", shown(tr("Error {unit}", unit=unit)), "shown", editable=False),
    )


def rows_of(kind: str, plan: Plan) -> list[dict[str, Any]]:
    """Return the empty readings of a plan."""
    return [
        {
            "feature": reading.name,
            "kind": str(reading.part),
            "nominal_mm": reading.reference,
            "nominal_raw": "" if reading.reference is None else f"{reading.reference:g}",
            "half_width": reading.half_width,
            "half_width_raw": "" if reading.half_width is None else f"{reading.half_width:g}",
        }
        for reading in plan_check(kind, plan)
    ]


def replanned(rows: Sequence[Row], planned: Sequence[Row]) -> list[Row]:
    """Return the readings that are in, and below them what another plan still asks for."""
    taken = [row for row in rows if row["raw"] or row["excluded"]]
    left = [_name_of(row) for row in taken]
    still = []
    for row in planned:
        if _name_of(row) in left:
            left.remove(_name_of(row))
        else:
            still.append(row)
    return [*taken, *still]


def counts(row: Row) -> bool:
    """Whether a row takes part in the evaluation: read, not excluded, no question open."""
    return row["measured_mm"] is not None and not row["excluded"] and not row["questioned"]


def readings_of(rows: Sequence[Row], places: Sequence[int], settings: CheckSettings) -> CheckReadings:
    """Return the readings at these places of the table.

    Raises:
        InputError: where there is none yet, or a row has no part.
    """
    if not places:
        raise InputError(NOTHING_YET, tr("No reading yet."))
    from core.measuring.checkreadings import CheckReadings  # the page opens before it is needed

    for place in places:
        if rows[place]["kind"] not in set(Part):
            raise InputError("kind", tr("Row {row}: choose the part of the check.", row=place + 1), place)
    used = [rows[place] for place in places]
    return CheckReadings(
        kind=settings.kind,
        part=[Part(row["kind"]) for row in used],
        reference=[row["nominal_mm"] for row in used],
        half_width=[row.get("half_width") for row in used],
        measured=[row["measured_mm"] for row in used],
        resolution=settings.resolution,
        limit=settings.limit,
        blade_land_mm=settings.blade_land_mm,
        light_gap=settings.light_gap,
    )


def at_the_table(error: InputError, places: Sequence[int]) -> InputError:
    """Return a refusal of the core with the column and the row of the table."""
    row = None if error.row is None else places[error.row]
    message = error.message
    if row is not None and isinstance(message, Words):
        message = tr(message.template, **{**message.values, "row": row + 1})
    return InputError(_FIELD_OF.get(error.field, error.field), message, row)


def error_text(row: Row) -> str:
    """Return what a reading is off its reference, for the last column."""
    reference, measured = row.get("nominal_mm"), row.get("measured_mm")
    if row.get("kind") in (Part.HAND, Part.SECOND):
        return ""
    if not isinstance(reference, float | int) or not isinstance(measured, float | int):
        return ""
    return local_text(f"{round(measured - reference, 3) + 0.0:+.3f}")


def _name_of(row: Row) -> tuple[str, str]:
    return str(row.get("feature", "")), str(row.get("kind", ""))
