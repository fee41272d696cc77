"""Rows of the readings table, as the core wants them and as a trial keeps them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import nan
from typing import TYPE_CHECKING, Any

from app.pages.trialpage import NOTHING_YET
from app.widgets.readings import Column, Expected
from app.words import shown
from core.errors import InputError
from core.part_size.features import AXES, FeatureKind, kind_from_text, kind_words
from core.quantity import coverage_factor
from core.words import Words, tr

if TYPE_CHECKING:
    from core.guidance.sizetrial import SizeReadings
    from core.part_size.sizeerror import SizeError
    from core.records.rows import Instrument

Row = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class LeftOut:
    """An excluded reading: shown hollow, used for nothing."""

    axis: str
    kind: str
    nominal_mm: float
    measured_mm: float
    reason: str


def columns() -> tuple[Column, ...]:
    """Return the columns of a size trial."""
    kinds = [(str(kind), shown(kind_words(kind))) for kind in FeatureKind]
    return (
        Column("feature", shown(tr("Gauge"))),
        Column("axis", shown(tr("Axis")), "choice", choices=[(a, a.upper()) for a in AXES]),
        Column("kind", shown(tr("Kind")), "choice", choices=kinds),
        Column("nominal_mm", shown(tr("Nominal mm")), "length"),
        Column("measured_mm", shown(tr("Reading mm")), "length"),
        Column("error", shown(tr("Error mm")), "shown", editable=False),
        Column("expected", shown(tr("Expected mm")), "shown", editable=False),
    )


def counts(row: Row) -> bool:
    """Whether a row takes part in the evaluation: complete, not excluded, no question open."""
    complete = row["measured_mm"] is not None and row["nominal_mm"] is not None
    return complete and not row["excluded"] and not row["questioned"]


def readings_of(rows: Sequence[Row], places: Sequence[int], tolerance: str, part_c: float | None) -> SizeReadings:
    """Return the readings at these places of the table.

    Raises:
        InputError: where there is none yet, or a row has no kind or axis.
    """
    if not places:
        raise InputError(NOTHING_YET, tr("No reading yet."))
    from core.guidance.sizetrial import SizeReadings  # the window opens before the mathematics is needed
    from core.part_size.lengths import PartTemperature

    for place in places:
        for key, what in (("kind", tr("kind")), ("axis", tr("axis"))):
            if not rows[place][key]:
                raise InputError(key, tr("Row {row}: choose the {what}.", row=place + 1, what=what), place)
    used = [rows[place] for place in places]
    return SizeReadings(
        nominal_mm=[row["nominal_mm"] for row in used],
        measured_mm=[row["measured_mm"] for row in used],
        kind=[row["kind"] for row in used],
        axis=[row["axis"] for row in used],
        feature=[row["feature"] for row in used],
        tolerance=tolerance,
        part_temperature=None if part_c is None else PartTemperature(part_c),
    )


def left_out(rows: Sequence[Row]) -> list[LeftOut]:
    """Return the complete readings that were excluded."""
    return [
        LeftOut(row["axis"], row["kind"], row["nominal_mm"], row["measured_mm"], row["reason"])
        for row in rows
        if row["excluded"] and row["measured_mm"] is not None and row["nominal_mm"] is not None and row["kind"]
    ]


def next_asked(rows: Sequence[Row], fit: SizeError, instrument: Instrument | None) -> Words | None:
    """Say which reading to take next, or None where none helps."""
    from core.guidance.sizenext import GaugeRow, ask_next

    asked = [
        GaugeRow(row["feature"], row["kind"], row["axis"], nan if row["nominal_mm"] is None else row["nominal_mm"],
                 counts(row))
        for row in rows
        if not row["excluded"]
    ]  # fmt: skip
    following = ask_next(fit, asked, instrument)
    return following.says if following else None


def expected_readings(rows: Sequence[Row], fit: SizeError) -> dict[int, Expected]:
    """Predict every row from the fit, where it can tell: place in the table to expected reading."""
    groups: dict[tuple[str, str], dict[float, list[int]]] = {}
    for place, row in enumerate(rows):
        if row["nominal_mm"] is not None and row["kind"] and row["axis"]:
            groups.setdefault((row["axis"], row["kind"]), {}).setdefault(row["nominal_mm"], []).append(place)
    found: dict[int, Expected] = {}
    for (axis, kind), by_length in groups.items():
        if band := fit.band(axis, kind_from_text(kind), list(by_length)):
            k = coverage_factor(fit.scattered.dof)
            for (nominal, places), mean, half in zip(by_length.items(), band.mean_mm, band.prediction_mm, strict=True):
                length = nominal + float(mean)
                text = shown(tr("{length:.2f} ± {half:.2f} mm", length=length, half=float(half)))
                found |= dict.fromkeys(places, Expected(length, float(half) / k, text))
    return found
