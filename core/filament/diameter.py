"""Diameter of a filament from pairs of readings at 90 degrees: equivalent diameter, ovality, spread along the length.

    A_i = pi d1_i d2_i / 4          ellipse with the pair as its axes
    d_eq = sqrt(mean(d1_i d2_i))    the circle of the mean area
    ovality = mean |d1_i - d2_i|    area / nominal area = (d_eq / d_nom)^2, so u(A)/A = 2 u(d)/d

Symbols: d1, d2 largest reading of a place and the one square to it, n places, s experimental standard deviation of the
places, u_zero uncertainty of the gauge that no averaging removes. Readings that miss the axes of the ellipse show too
little ovality and too much area, by at most (d1 - d2)^2/(2 d1 d2): 0.24 % for 1.80 by 1.68 mm. A strand of constant
width that is not round (three lobes) cannot be told from a round one by two-point readings; its mass tells.

Reference: JCGM 100:2008 4.2 (type A), 5.1.6 and 5.2.2 (product of correlated inputs); ISO 14405-1 (two-point size).
Limits of what is usual, and the uncertainties of a usual gauge: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.gauge import Gauge
from core.measuring.gum import combine
from core.measuring.reach import above_zero, of_one_length, within_reach
from core.quantity import Estimate
from core.words import Words, tr

METHOD = "diameter 1"
USUAL_DIAMETERS_MM = (1.75, 2.85, 3.0)
FEWEST_PLACES = 2
USUAL_PLACES = 10
_LEAST_MM, _MOST_MM = 0.5, 5.0
_SAME_SORT_MM = 0.3  # further from its nominal no filament is
_NEAR_MM = 0.15
_SUSPECT_COUNT = 6  # so many equal readings are rather the label than the gauge
_ROOT_12 = math.sqrt(12.0)

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Diameter:
    """What pairs of readings say about a filament.

    Attributes:
        first_mm, second_mm: (n,) the pairs.
        place_mm: (n,) equivalent diameter of each place.
        nominal_mm: as claimed.
        diameter, ovality, spread, area: the estimates; the area as a ratio to that of the nominal diameter.
        rests_on: `scatter` of the places, or the last `digit` where they scatter less than it can show.
        questions: what to look at, in sentences.
    """

    first_mm: Floats
    second_mm: Floats
    place_mm: Floats
    nominal_mm: float
    diameter: Estimate
    ovality: Estimate
    spread: Estimate
    area: Estimate
    rests_on: str
    questions: tuple[Words, ...]

    def estimates(self) -> tuple[Estimate, ...]:
        """Return diameter (mm), area_ratio (1), ovality (mm) and diameter_sd (mm)."""
        return self.diameter, self.area, self.ovality, self.spread

    @property
    def oval_mm(self) -> Floats:
        """Ovality of each place (n,)."""
        return np.abs(self.first_mm - self.second_mm)

    @property
    def one_way_ratio(self) -> float:
        """Flow that follows from reading the larger width only, against the right one: 1.68/1.80 where so oval."""
        larger = np.maximum(self.first_mm, self.second_mm)
        return float(np.sum(self.place_mm**2) / np.sum(larger**2))


@of_one_length("first_mm", "second_mm")
@within_reach
def measure_diameter(
    first_mm: Sequence[float | None], second_mm: Sequence[float | None], nominal_mm: float, gauge: Gauge
) -> Diameter:
    """Return diameter, ovality and spread from pairs of readings.

    Args:
        first_mm: (n,) largest reading of each place; None where it was not read. A place read one way does not count.
        second_mm: (n,) reading square to it.
        nominal_mm: as claimed by the maker.
        gauge: what they were read with.

    Raises:
        InputError: fields `first_mm`, `second_mm` or `nominal_mm`: fewer than two pairs, a reading that is no
            filament, or filament of another nominal diameter.
    """
    _check_nominal(nominal_mm)
    for field, readings in (("first_mm", first_mm), ("second_mm", second_mm)):
        for row, reading in enumerate(readings):
            _check_reading(field, row, reading, nominal_mm)
    pairs = [(a, b) for a, b in zip(first_mm, second_mm, strict=True) if a is not None and b is not None]
    if len(pairs) < FEWEST_PLACES:
        raise InputError("second_mm", _too_few(len(pairs)))
    first, second = np.array(pairs, dtype=float).T
    place = np.sqrt(first * second)
    d_eq = float(np.sqrt(np.mean(first * second)))
    n, digit = place.size, gauge.resolution_mm / _ROOT_12
    s = float(np.std(place, ddof=1))
    rests_on = "scatter" if s >= gauge.resolution_mm / 2.0 else "digit"
    random, dof = (s / math.sqrt(n), n - 1.0) if rests_on == "scatter" else (digit, math.inf)
    u = combine([random, gauge.u_zero_mm, gauge.u_scale_ratio * d_eq], [dof, math.inf, math.inf])
    diameter = Estimate("diameter", d_eq, u.u, u.dof, "mm")
    return Diameter(
        first_mm=first,
        second_mm=second,
        place_mm=place,
        nominal_mm=nominal_mm,
        diameter=diameter,
        ovality=_ovality(first, second, digit),
        spread=_spread(s, digit, n),
        area=area_ratio(diameter, nominal_mm),
        rests_on=rests_on,
        questions=tuple(_questions(first_mm, second_mm, gauge)),
    )


@within_reach
@above_zero("nominal_mm")
def area_ratio(diameter: Estimate, nominal_mm: float) -> Estimate:
    """Return cross-section against that of the nominal diameter: (d/d_nom)^2, with u = 2 (d/d_nom) u(d)/d_nom."""
    ratio = diameter.value / nominal_mm
    return Estimate("area_ratio", ratio**2, 2.0 * ratio * diameter.u / nominal_mm, diameter.dof, "1")


def _ovality(first: Floats, second: Floats, digit: float) -> Estimate:
    """Return the mean difference of the pairs; the zero of the gauge cancels in it."""
    oval = np.abs(first - second)
    s = float(np.std(oval, ddof=1))
    least = math.sqrt(2.0) * digit  # of a difference of two readings
    n = oval.size
    u, dof = (s / math.sqrt(n), n - 1.0) if s >= least else (least, math.inf)
    return Estimate("ovality", float(np.mean(oval)), u, dof, "mm")


def _spread(s: float, digit: float, n: int) -> Estimate:
    """Return s with u(s) = s/sqrt(2(n - 1)) (JCGM 100:2008 E.4.3); a spread of zero is one below the digit."""
    known = max(s, digit)
    return Estimate("diameter_sd", s, known / math.sqrt(2.0 * (n - 1.0)), n - 1.0, "mm")


def _check_nominal(nominal_mm: float) -> None:
    if not 1.0 <= nominal_mm <= _MOST_MM:
        raise InputError(
            "nominal_mm",
            tr("A nominal diameter of {nominal:g} mm is not between 1 and 5 mm; type that of the label.",
               nominal=nominal_mm),
        )


def check_sort(reading_mm: float, nominal_mm: float, place: int | None = None) -> None:
    """Refuse a reading that is filament of another usual diameter than the nominal.

    Args:
        reading_mm: as read.
        nominal_mm: as claimed by the maker.
        place: number of its place, from 1; None where it is not told.

    Raises:
        InputError: field `nominal_mm`.
    """
    if abs(reading_mm - nominal_mm) <= _SAME_SORT_MM:
        return
    for known in USUAL_DIAMETERS_MM:
        if abs(reading_mm - known) <= _NEAR_MM:
            says = tr("{reading:g} mm read for a filament set to {nominal:g} mm: is it filament of {known:g} mm? Type "
                      "its nominal, or read again.", reading=reading_mm, nominal=nominal_mm, known=known)
            says = says if place is None else tr("Place {place}: {says}", place=place, says=says)
            raise InputError("nominal_mm", says)


def _check_reading(field: str, row: int, reading: float | None, nominal_mm: float) -> None:
    """Refuse what is no filament, and filament of another sort than the nominal."""
    if reading is None or abs(reading - nominal_mm) <= _SAME_SORT_MM:
        return
    check_sort(reading, nominal_mm, row + 1)
    for factor in (10.0, 100.0, 0.1):
        if abs(reading / factor - nominal_mm) <= _SAME_SORT_MM:
            raise InputError(
                field,
                tr("{reading:g} mm: with the decimal mark moved it would be {meant:g} mm. Type it again.",
                   reading=reading, meant=reading / factor),
                row,
            )
    if not _LEAST_MM <= reading <= _MOST_MM:
        raise InputError(
            field,
            tr("{reading:g} mm is no diameter of a filament (0.5 to 5 mm); read it again.", reading=reading),
            row,
        )
    raise InputError(
        field,
        tr("{reading:g} mm is more than {limit:g} mm from the nominal {nominal:g} mm; read it again, or type "
           "another nominal.", reading=reading, limit=_SAME_SORT_MM, nominal=nominal_mm),
        row,
    )


def _too_few(pairs: int) -> Words:
    if not pairs:
        return tr("Read one way only: turn the filament by 90° and read the same place again. One way alone sets the "
                  "flow up to 7 % off where it is 1.80 by 1.68 mm.")
    return tr("One pair tells nothing about the spread along the length: read at least one place more, ten over 2 m "
              "are usual.")


def equal_readings(first_mm: Sequence[float | None], second_mm: Sequence[float | None]) -> bool:
    """Whether so many readings are equal that they are rather the label than the gauge."""
    readings = [reading for reading in (*first_mm, *second_mm) if reading is not None]
    return len(readings) >= _SUSPECT_COUNT and len(set(readings)) == 1


def _questions(
    first_mm: Sequence[float | None], second_mm: Sequence[float | None], gauge: Gauge
) -> list[Words]:
    """Ask about places read one way, equal readings, too few places, and ovality that the hand may make."""
    asks: list[Words] = []
    pairs = list(zip(first_mm, second_mm, strict=True))
    single = [str(place + 1) for place, (a, b) in enumerate(pairs) if (a is None) != (b is None)]
    if single:
        asks.append(tr("Place {places} was read one way only and does not count; turn it by 90° and read again.",
                       places=", ".join(single)))
    if equal_readings(first_mm, second_mm):
        asks.append(tr("All readings are equal: please type what the instrument shows, not the label."))
    complete = sum(a is not None and b is not None for a, b in pairs)
    if complete < USUAL_PLACES:
        asks.append(tr("Places so far: {count}; ten over at least 2 m are usual.", count=complete))
    if gauge.sd_hand_mm:
        asks.append(tr("Re-reading alone shows an ovality of {apparent:.3f} mm with this gauge.",
                       apparent=2.0 / math.sqrt(math.pi) * gauge.sd_hand_mm))  # E|x1 - x2| of two normal readings
    return asks
