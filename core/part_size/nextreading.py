"""Which reading to take next: the one that shrinks the uncertainty of the parameter that matters most.

The parameter that matters most is one not told yet, else the one with the largest effect on a length: s on the longest
length, w twice, B once. Each reading that could be taken is added to the fit at hand, and the smallest standard
uncertainty wins; a repeat takes away only the share of the scatter that is the hand's.

Reference: JCGM 100:2008 5.1; the choice of one further reading is the first step of an exchange (Atkinson, Donev and
Tobias, Optimum Experimental Designs (2007) 12).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.measuring.linefit import LinearFit, fit_linear
from core.measuring.reach import of_one_length
from core.part_size.features import FeatureKind, design_terms, parameter_names
from core.part_size.lengths import fixed_effects
from core.part_size.planner import Place, refuse_below_zero
from core.part_size.scatter import RANK_RATIO
from core.part_size.sizeerror import SizeError
from core.records.rows import Instrument

Floats = NDArray[np.float64]
_SAME_MM = 1e-6  # nominal lengths this close are one
_WORTH_RATIO = 0.98  # a reading that takes less than 2 % off is not worth the hand


@dataclass(frozen=True, slots=True)
class NextReading:
    """The reading to take.

    Attributes:
        place: number among the places that were offered.
        name: the parameter that it tells better.
        u_now, u_then: its standard uncertainty before and after; nan before it is told.
        unit: of both.
        again: a gauge that was read before.
    """

    place: int
    name: str
    u_now: float
    u_then: float
    unit: str
    again: bool = False


@of_one_length("places", "times")
def next_reading(
    fit: SizeError,
    places: Sequence[Place],
    times: Sequence[int],
    *,
    instrument: Instrument | None = None,
    wanted: str = "",
) -> NextReading | None:
    """Return the reading to take next, or None where none helps.

    Args:
        fit: of the readings at hand.
        places: all lengths of the print.
        times: how often each was read.
        instrument: of the further reading.
        wanted: the parameter to be told better; empty for the one that matters most.

    Raises:
        InputError: field `times`, with its row, below zero.
    """
    refuse_below_zero(times)
    names = fit.terms.names
    fresh = [
        i
        for i, (place, count) in enumerate(zip(places, times, strict=True))
        if not count and set(parameter_names([place.kind], [place.axis])) <= set(names)
    ]
    known = wanted if wanted in names else _worst(fit, places)
    now = _u(fit, fit.scattered.fit, fit.fixed_mm, known)
    found = [(_u(fit, *_with(fit, places[i], instrument), known), i) for i in fresh]
    told = [(u, i) for u, i in found if not math.isnan(u)]
    if told:
        then, place = min(told)
        if math.isnan(now) or then < _WORTH_RATIO * now:
            return NextReading(place, known, now, then, _unit(known))
    if math.isnan(now) and fresh and (widening := _widening(fit, places, fresh)) is not None:
        return NextReading(widening, known, math.nan, math.nan, _unit(known))
    return _again(fit, places, times, (known, now), instrument) if not fresh and not math.isnan(now) else None


def _unit(name: str) -> str:
    return "1" if name.startswith("scale_") else "mm"


def _worst(fit: SizeError, places: Sequence[Place]) -> str:
    """Return the parameter that is not told, else that with the largest effect of its uncertainty."""
    longest = {axis: max(p.nominal_mm for p in places if p.axis == axis) for axis in {p.axis for p in places}}

    def effect_mm(name: str) -> float:
        u = _u(fit, fit.scattered.fit, fit.fixed_mm, name)
        stem, _, axis = name.rpartition("_")
        factor = longest.get(axis, 1.0) if stem == "scale" else 2.0 if name == "wall_outset" else 1.0
        return math.inf if math.isnan(u) else u * factor

    return max(fit.terms.names, key=effect_mm)


def _u(fit: SizeError, fitted: LinearFit, fixed_mm: Floats, name: str) -> float:
    """Return the standard uncertainty of a parameter in a fit; nan where it is not determined."""
    c = fit.terms.coefficients(name)
    if not fitted.determines(c) or math.isnan(fit.scattered.variance_mm2):
        return math.nan
    random = fit.scattered.variance_mm2 * float(c @ fitted.unscaled_cov @ c)
    return math.sqrt(random + float(np.sum((c @ fitted.solver @ fixed_mm) ** 2)))


def _row(fit: SizeError, place: Place) -> Floats:
    terms = design_terms(fit.terms.names, [place.kind], [place.axis], [place.nominal_mm], fit.terms.centre_mm)
    return terms.design


def _with(fit: SizeError, place: Place, instrument: Instrument | None) -> tuple[LinearFit, Floats]:
    """Return the fit with one more feature, and what all its readings share."""
    design = np.vstack([fit.terms.design, _row(fit, place)])
    weights = np.append(fit.scattered.fit.weights, float(np.mean(fit.scattered.fit.weights)))
    fixed = np.vstack([fit.fixed_mm, _shared(fit, place, instrument)])
    return fit_linear(design, np.zeros(len(design)), weights, RANK_RATIO), fixed


def _shared(fit: SizeError, place: Place, instrument: Instrument | None) -> Floats:
    """Return what a further reading shares with those at hand: jaw zeros, instrument scale, then temperature."""
    own = fixed_effects([place.kind], np.array([place.nominal_mm]), instrument, None)
    own = own if own.shape[1] <= fit.fixed_mm.shape[1] else own[:, :0]  # read without one on record
    by_length = np.mean(fit.fixed_mm[:, own.shape[1] :] / fit.nominal_mm[:, None], axis=0) * place.nominal_mm
    return np.hstack([own, by_length[None, :]])


def _widening(fit: SizeError, places: Sequence[Place], fresh: list[int]) -> int | None:
    """Return a reading that tells at least a combination more, or that shows scatter; None where none does."""
    rank, parameters = fit.scattered.fit.rank, len(fit.terms.names)
    wider = [i for i in fresh if _with(fit, places[i], None)[0].rank > rank]
    if wider:
        return wider[0]
    return fresh[0] if rank == parameters else None


def _again(
    fit: SizeError,
    places: Sequence[Place],
    times: Sequence[int],
    known: tuple[str, float],
    instrument: Instrument | None,
) -> NextReading | None:
    """Return the gauge whose repeat helps most, where it is known how much of the scatter is the hand's."""
    (name, now), hand2 = known, _hand_mm2(fit, times, instrument)
    share = (fit.terms.coefficients(name) @ fit.scattered.fit.solver) ** 2
    alike: dict[tuple[FeatureKind, str], list[int]] = {}
    for row, both in enumerate(zip(fit.kinds, fit.axes, strict=True)):
        alike.setdefault(both, []).append(row)
    read = {both: (np.array(rows), fit.nominal_mm[rows]) for both, rows in alike.items()}
    none, gains = (np.empty(0, dtype=np.int64), np.empty(0)), []
    for i, (place, count) in enumerate(zip(places, times, strict=True)):
        rows, lengths_mm = read.get((place.kind, place.axis), none)
        mine = rows[np.abs(lengths_mm - place.nominal_mm) <= _SAME_MM]
        if count and mine.size:
            gains.append((float(share[mine[0]]) * hand2 * (1.0 / count - 1.0 / (count + 1)), i))
    gain, best = max(gains, default=(0.0, 0))
    then = math.sqrt(max(now**2 - gain, 0.0))
    return NextReading(best, name, now, then, _unit(name), again=True) if then < _WORTH_RATIO * now else None


def _hand_mm2(fit: SizeError, times: Sequence[int], instrument: Instrument | None) -> float:
    """Return the variance of one reading about its own feature: of the repeats, else of the instrument's last check."""
    scattered = fit.scattered
    if scattered.source != "features":
        return scattered.next_mm2
    averaged = float(np.mean([1.0 / count for count in times if count] or [1.0]))
    if scattered.again_mm2 > 0.0 and averaged < 1.0:
        return scattered.again_mm2 / (1.0 - averaged)  # it holds that share of the hand's variance only
    known = (instrument.sd_hand_mm or 0.0) if instrument is not None else 0.0
    return min(known**2, scattered.next_mm2)
