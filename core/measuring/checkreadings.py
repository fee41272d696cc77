"""One check of an instrument as it was typed, and what cannot be judged of it.

Reference: 2 K between instrument and reference: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.choices import each_of
from core.measuring.instrumentkinds import LightGap, Part, kind_of, part_words, parts_of, usual_limit
from core.measuring.reach import refuse_unlike, within_reach
from core.words import Words, tr

Floats = NDArray[np.float64]

TEMPERATURE_APART_K = 2.0  # plus and minus, between instrument and reference after an hour in one room
REFERENCED = (Part.LENGTH, Part.TIP, Part.INSIDE, Part.DEPTH)


@dataclass(frozen=True, slots=True, eq=False)
class CheckReadings:
    """One check as typed, in the unit of the kind and in the order of reading.

    Attributes:
        kind: key of `instrumentkinds.KINDS`.
        part: what each reading is about.
        reference: value of the reference; ignored for zero and re-seatings.
        half_width: how well that is known, plus and minus.
        measured: what the instrument showed.
        resolution: worth of the last digit.
        limit: limit of error, plus and minus, at all lengths; None for the usual one.
        temperature_apart_k: instrument and reference may differ by so much, plus and minus.
        blade_land_mm: width of the flat of an inside blade; None for what is usual.
        light_gap: what was seen between the closed jaws.
    """

    kind: str
    part: Sequence[Part]
    reference: Sequence[float | None]
    half_width: Sequence[float | None]
    measured: Sequence[float]
    resolution: float
    limit: float | None = None
    temperature_apart_k: float = TEMPERATURE_APART_K
    blade_land_mm: float | None = None
    light_gap: LightGap = LightGap.NOT_LOOKED

    def of(self, part: Part) -> Floats:
        """Return the readings of a part."""
        return np.array([y for p, y in zip(self.part, self.measured, strict=True) if p is part])


@within_reach
def refuse_unusable(readings: CheckReadings) -> None:
    """Refuse a check that cannot be judged.

    Raises:
        InputError: field `measured`, `resolution`, `limit`, `temperature_apart_k`; with its row `part`, `reference`,
            `half_width`.
    """
    refuse_unlike(part=readings.part, reference=readings.reference, half_width=readings.half_width,
                  measured=readings.measured)  # fmt: skip
    if not readings.measured:
        raise InputError("measured", tr("No reading yet."))
    if not 0.0 < readings.resolution < math.inf:
        raise InputError("resolution", tr("The resolution is above zero: type the worth of the last digit."))
    if readings.limit is not None and not 0.0 < readings.limit < math.inf:
        raise InputError("limit", tr("The limit of error is above zero; type what the maker states, without a sign."))
    if not 0.0 <= readings.temperature_apart_k < math.inf:
        raise InputError("temperature_apart_k", tr("Temperatures lie zero or more apart; type for example 2."))
    for row, part in enumerate(each_of(Part, readings.part, "part")):
        _check_row(readings, row, part)


def _check_row(readings: CheckReadings, row: int, part: Part) -> None:
    if part not in parts_of(readings.kind):
        name, kind = part_words(part), kind_of(readings.kind).name
        raise InputError("part", tr("Row {row}: “{part}” is not read with a {kind}; choose another part.",
                                    row=row + 1, part=name, kind=kind), row)  # fmt: skip
    if part not in REFERENCED:
        return
    reference, half_width = readings.reference[row], readings.half_width[row]
    if reference is None:
        raise InputError("reference", tr("Row {row}: type the value of the reference.", row=row + 1), row)
    if half_width is None or not half_width >= 0.0:
        raise InputError("half_width", tr("Row {row}: how well is the reference known? Type plus and minus how much, "
                                          "from its certificate or its class.", row=row + 1), row)  # fmt: skip
    limit = usual_limit(readings.kind, reference) if readings.limit is None else readings.limit
    if half_width >= limit:
        raise InputError("half_width", _too_loose(row, half_width, limit, kind_of(readings.kind).unit), row)


def _too_loose(row: int, half_width: float, limit: float, unit: str) -> Words:
    return tr(
        "Row {row}: the reference is known to ± {half_width:g} {unit}, the limit of error is {limit:g} {unit}, so it "
        "can decide nothing. The width of a bearing is no gauge: take its outside diameter or its bore.",
        row=row + 1,
        half_width=half_width,
        limit=limit,
        unit=unit,
    )
