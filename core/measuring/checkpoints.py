"""The points of an instrument check: the error at each reference with its uncertainty budget and decision.

    e = mean reading - (L_ref - under-read of the blades)

Symbols: a half-width, t land of an inside blade, D bore; a flat blade spans a chord, so that it reads sqrt(D^2 - t^2).

Reference: EA-4/02 S10; the chord: plane geometry; lands of 0.3 to 0.5 mm and 2 K between instrument and reference:
common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.checkreadings import REFERENCED, CheckReadings, refuse_unusable
from core.measuring.gum import Budget, Component, Distribution, budget, standard_uncertainty
from core.measuring.hand import Hand
from core.measuring.instrumentkinds import Part, kind_of, usual_limit
from core.measuring.reach import refuse_unlike, within_reach
from core.measuring.tolerance import Decision, decide
from core.words import Words, tr

Floats = NDArray[np.float64]

STEEL_PER_K = 11.5e-6  # thermal expansion, of instrument and reference alike; EA-4/02 S10
_LAND_MM, _LAND_HALF_MM, _TYPED_LAND_HALF_MM = 0.4, 0.1, 0.05
_RECTANGLE = Distribution.RECTANGLE
_SAME_RATIO = 1e-9


@dataclass(frozen=True, slots=True)
class Point:
    """The readings of one reference: mean error, limit of error there, budget of the error, what it proves.

    `own_u` is u without what all points share, the temperature.
    """

    part: Part
    reference: float
    error: float
    count: int
    limit: float
    budget: Budget
    own_u: float
    decision: Decision


@dataclass(frozen=True, slots=True)
class ZeroReturn:
    """How zero came back: first reading, the one farthest from it, what is allowed, rows read between the two."""

    first: float
    farthest: float
    allowed: float
    doubtful_rows: tuple[int, ...]

    @property
    def ok(self) -> bool:
        """Whether all zero readings lie within what is allowed."""
        return abs(self.farthest - self.first) <= self.allowed * (1 + _SAME_RATIO)


def points_of(readings: CheckReadings, hand: Hand | None) -> tuple[Point, ...]:
    """Return the points of a check, those of one part by rising reference.

    Args:
        readings: of the check.
        hand: how re-seated readings scatter, for where no reference was read twice.

    Raises:
        InputError: as `instrument.check_instrument`.
    """
    refuse_unusable(readings)
    groups = _groups(readings)
    if not groups:
        return ()
    sd, dof = _repeatability(list(groups.values()), readings, hand)
    apart = _jaws_apart(groups, readings)
    found = []
    for (part, reference), rows in sorted(groups.items()):
        own = _own_components(part, reference, rows, readings)
        own.append(Component(tr("repeatability"), sd / math.sqrt(len(rows)), 1.0, Distribution.STUDENT, float(dof)))
        if apart is not None and part in (Part.LENGTH, Part.TIP):
            own.append(_rectangle(tr("tips against root"), apart))
        whole = budget([*own, *_temperature(reference, readings)])
        true = reference - _blades(part, reference, readings.blade_land_mm)[0]
        error = float(np.mean([readings.measured[row] for row in rows])) - true
        limit = usual_limit(readings.kind, reference) if readings.limit is None else readings.limit
        own_u = math.hypot(*(component.contribution for component in own))
        decision = decide(error, whole.u, limit, whole.dof, lower=-limit)
        found.append(Point(part, reference, error, len(rows), limit, whole, own_u, decision))
    return tuple(found)


def _own_components(part: Part, reference: float, rows: Sequence[int], readings: CheckReadings) -> list[Component]:
    found = [_rectangle(tr("resolution"), readings.resolution / 2)]
    if part in REFERENCED:
        half_width = max(readings.half_width[row] or 0.0 for row in rows)
        found.insert(0, _rectangle(tr("reference"), half_width, -1.0))
    if part is Part.INSIDE:
        found.append(_rectangle(tr("land of the blades"), _blades(part, reference, readings.blade_land_mm)[1]))
    return found


def _rectangle(name: Words, half_width: float, sensitivity: float = 1.0) -> Component:
    return Component(name, standard_uncertainty(half_width, _RECTANGLE), sensitivity, _RECTANGLE)


def zero_return_of(readings: CheckReadings) -> ZeroReturn | None:
    """Return whether zero came back each time; None for fewer than two zero readings.

    Raises:
        InputError: field `measured`, where readings and their parts differ in number.
    """
    refuse_unlike(part=readings.part, measured=readings.measured)
    zeros = [row for row, part in enumerate(readings.part) if part is Part.ZERO]
    if len(zeros) < 2:
        return None
    allowed = max(kind_of(readings.kind).zero_range, readings.resolution)
    first = readings.measured[zeros[0]]
    reach = allowed * (1 + _SAME_RATIO)
    farthest = max((readings.measured[row] for row in zeros), key=lambda value: abs(value - first))
    moved = next((row for row in zeros if abs(readings.measured[row] - first) > reach), zeros[-1])
    last_good = max((row for row in zeros if row < moved), default=zeros[0])
    between = tuple(range(last_good + 1, moved)) if abs(farthest - first) > reach else ()
    return ZeroReturn(first, farthest, allowed, between)


@within_reach
def bore_under_read(land: float, bore: float) -> float:
    """Return by how much flat blades read a bore too small: D - sqrt(D^2 - t^2), about t^2/(2 D).

    Raises:
        InputError: field `blade_land_mm` where the blade does not fit into the bore.
    """
    if not 0.0 <= land < bore:
        raise InputError(
            "blade_land_mm",
            tr("A blade of {land:g} mm does not fit into a bore of {bore:g} mm; check both.", land=land, bore=bore),
        )
    return land**2 / (bore + math.sqrt(bore**2 - land**2))


def _blades(part: Part, bore: float, land: float | None) -> tuple[float, float]:
    """Return the under-read of the blades and its half-width; zero for what is no bore."""
    if part is not Part.INSIDE:
        return 0.0, 0.0
    t, half = (_LAND_MM, _LAND_HALF_MM) if land is None else (land, min(_TYPED_LAND_HALF_MM, land))
    return bore_under_read(t, bore), (bore_under_read(t + half, bore) - bore_under_read(t - half, bore)) / 2


def _temperature(reference: float, readings: CheckReadings) -> list[Component]:
    if not kind_of(readings.kind).length or reference == 0.0:
        return []
    return [_rectangle(tr("temperature apart"), readings.temperature_apart_k, STEEL_PER_K * reference)]


def _groups(readings: CheckReadings) -> dict[tuple[Part, float], list[int]]:
    found: dict[tuple[Part, float], list[int]] = {}
    for row, part in enumerate(readings.part):
        if part is Part.ZERO:
            found.setdefault((part, 0.0), []).append(row)
        elif part in REFERENCED:
            found.setdefault((part, float(readings.reference[row] or 0.0)), []).append(row)
    return found


def _repeatability(groups: Sequence[list[int]], readings: CheckReadings, hand: Hand | None) -> tuple[float, int]:
    """Return the standard deviation of one reading of a reference, all references together, and its dof."""
    values = [np.array([readings.measured[row] for row in rows]) for rows in groups]
    dof = sum(y.size - 1 for y in values)
    if dof > 0:
        return math.sqrt(sum(float(np.sum((y - y.mean()) ** 2)) for y in values) / dof), dof
    if hand is not None:
        return hand.sd, hand.dof
    raise InputError("measured", tr("Each reference was read once; read one of them three times to see the scatter."))


def _jaws_apart(groups: dict[tuple[Part, float], list[int]], readings: CheckReadings) -> float | None:
    """Return half the largest difference between tips and root at one reference; None where no tips were read."""

    def mean(part: Part, reference: float) -> float:
        return float(np.mean([readings.measured[row] for row in groups[part, reference]]))

    both = [L for part, L in groups if part is Part.TIP and (Part.LENGTH, L) in groups]
    return max((abs(mean(Part.TIP, L) - mean(Part.LENGTH, L)) / 2 for L in both), default=None)
