"""Which reading of a size trial to take next, in a sentence.

The rows of the table are the gauges there are; those with a reading that counts are the ones at hand.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from core.errors import InputError
from core.guidance.names import parameter_words
from core.measuring.rownames import row_words
from core.part_size.features import FeatureKind, axis_problem
from core.part_size.nextreading import NextReading, next_reading
from core.part_size.planner import Place
from core.part_size.sizeerror import SizeError
from core.quantity import rounded_pair
from core.records.rows import Instrument
from core.words import Words, tr


@dataclass(frozen=True, slots=True)
class GaugeRow:
    """One row of the table: its gauge, and whether it holds a reading that counts."""

    feature: str
    kind: str
    axis: str
    nominal_mm: float
    read: bool


@dataclass(frozen=True, slots=True)
class NextAsked:
    """The row to fill, or to repeat, and why."""

    row: int
    says: Words


def ask_next(fit: SizeError, rows: Sequence[GaugeRow], instrument: Instrument | None = None) -> NextAsked | None:
    """Return the reading that shrinks the uncertainty of what matters most, or None where none does.

    Args:
        fit: of the readings at hand.
        rows: of the table; those that cannot be read along their axis are passed over.
        instrument: of the further reading.
    """
    gauges: dict[tuple[str, str, str, float], list[int]] = {}
    for number, row in enumerate(rows):
        if _can_be(row):
            label = row_words(row.feature) or tr("row {number}", number=number + 1)
            gauges.setdefault((label, row.kind, row.axis, row.nominal_mm), []).append(number)
    places = [Place(FeatureKind(kind), axis, nominal) for _, kind, axis, nominal in gauges]
    times = [sum(rows[i].read for i in numbers) for numbers in gauges.values()]
    if not places:
        return None
    found = next_reading(fit, places, times, instrument=instrument)
    if found is None:
        return None
    (name, *_), numbers = list(gauges.items())[found.place]
    free = next((i for i in numbers if not rows[i].read), numbers[-1])
    return NextAsked(free, _says(name, found))


def _can_be(row: GaugeRow) -> bool:
    try:
        return axis_problem(FeatureKind(row.kind), row.axis) is None and math.isfinite(row.nominal_mm)
    except (ValueError, InputError):
        return False


def _says(gauge: str, found: NextReading) -> Words:
    what = parameter_words(found.name)
    if math.isnan(found.u_then):
        return tr("Gauge {gauge} brings {parameter} nearer to being told.", gauge=gauge, parameter=what)
    if math.isnan(found.u_now):
        return tr("Gauge {gauge} tells {parameter}.", gauge=gauge, parameter=what)
    factor, unit = (100.0, "%") if found.unit == "1" else (1.0, "mm")
    again = tr("{gauge}, once more,", gauge=gauge) if found.again else gauge
    return tr(
        "Gauge {gauge} takes the standard uncertainty of {parameter} from {now} to {then} {unit}.",
        gauge=again,
        parameter=what,
        now=rounded_pair(0.0, factor * found.u_now)[1],
        then=rounded_pair(0.0, factor * found.u_then)[1],
        unit=unit,
    )
