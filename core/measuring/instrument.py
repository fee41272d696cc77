"""The check of a hand instrument: zero, reference lengths, inside blades and hand; what it gives other trials.

    e = reading - reference = z + s*L + (what no line describes) + noise

Symbols: e error of indication, z zero of the outside jaws, s scale, L length of the reference. All in the unit of the
kind: mm, of a balance g, of a thermometer degrees Celsius.

Reference: EA-4/02 S10 (caliper); JCGM 100:2008 F.2.4.5 (a known error that is not corrected adds to the uncertainty);
JCGM 106:2012 and ISO 14253-1:2017 (decision).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from core.measuring.checkpoints import STEEL_PER_K, Point, ZeroReturn, points_of, zero_return_of
from core.measuring.checkreadings import CheckReadings, refuse_unusable
from core.measuring.correction import CorrectionCurve
from core.measuring.gum import Distribution, combine, standard_uncertainty
from core.measuring.hand import Hand, hand_from_seatings
from core.measuring.instrumentkinds import InstrumentKind, LightGap, Part, kind_of
from core.measuring.linefit import LinearFit, fit_linear
from core.measuring.tolerance import Conformity
from core.quantity import Estimate
from core.records.rows import Instrument
from core.words import Words, tr

METHOD = "instrument 1"
_OUTSIDE = (Part.ZERO, Part.LENGTH)
_TERMS = 2  # zero and scale


@dataclass(frozen=True, slots=True)
class Untold:
    """What the readings do not tell, and the reading that would."""

    name: str
    needs: Words


@dataclass(frozen=True, slots=True, eq=False)
class InstrumentCheck:
    """What a check has found.

    Attributes:
        kind: what was checked.
        points: the mean of the readings of each reference, judged against the limit of error.
        zero: of the outside jaws, or of the instrument as a whole; None where it is not told.
        inside_zero: of the blades.
        depth_zero: of the depth rod.
        light_gap: what was seen between the closed jaws.
        scale: proportional error, ratio.
        misfit: half-width of what zero and scale leave of the errors.
        hand: repeatability of a re-seated reading and offset between two people.
        zero_return: whether zero came back each time; None for fewer than two zero readings.
        conformity: of the instrument within its limit of error.
        untold: what the readings do not tell.
    """

    kind: InstrumentKind
    points: tuple[Point, ...]
    zero: Estimate | None
    inside_zero: Estimate | None
    depth_zero: Estimate | None
    light_gap: LightGap
    scale: Estimate | None
    misfit: float
    hand: Hand | None
    zero_return: ZeroReturn | None
    conformity: Conformity
    untold: tuple[Untold, ...]

    def estimates(self) -> tuple[Estimate, ...]:
        """Return what was found, by the names that are stored."""
        hand = (self.hand.estimate(self.kind.unit), self.hand.offset) if self.hand else ()
        return tuple(e for e in (self.zero, self.inside_zero, self.depth_zero, self.scale, *hand) if e is not None)

    def worst(self) -> Point | None:
        """Return the point that comes nearest to its limit, or goes farthest beyond."""
        return max(self.points, key=lambda point: (abs(point.error) + point.budget.U) / point.limit, default=None)

    def curve(self) -> CorrectionCurve | None:
        """Return the correction of outside readings; None without a reference length."""
        outside = sorted((p for p in self.points if p.part in _OUTSIDE), key=lambda point: point.reference)
        if all(point.part is Part.ZERO for point in outside):
            return None
        merged = {point.reference: point for point in outside}  # zero counts once where water and ice are a length
        rows = [(L, -p.error, p.budget.u, p.budget.U) for L, p in merged.items()]
        return CorrectionCurve(*np.array(rows).T)


def check_instrument(readings: CheckReadings) -> InstrumentCheck:
    """Judge the readings of a check.

    Raises:
        InputError: field `measured`, `reference`, `half_width`, `part`, `resolution`, `limit`, `tolerance`,
            `blade_land_mm` or `temperature_apart_k`, with its row where there is one.
    """
    refuse_unusable(readings)
    kind = kind_of(readings.kind)
    hand = hand_from_seatings(readings.of(Part.HAND), readings.of(Part.SECOND), readings.resolution, kind.unit)
    points = points_of(readings, hand)
    fit = _line([p for p in points if p.part in _OUTSIDE])
    zero, scale = _zero_and_scale(points, fit, readings, kind)
    zero_return = zero_return_of(readings)
    return InstrumentCheck(
        kind=kind,
        points=points,
        zero=zero,
        inside_zero=_own_zero("zero_inside", [p for p in points if p.part is Part.INSIDE], scale),
        depth_zero=_own_zero("zero_depth", [p for p in points if p.part is Part.DEPTH], scale),
        light_gap=readings.light_gap,
        scale=scale,
        misfit=float(np.max(np.abs(fit.residual))) if fit is not None and fit.dof > 0 else 0.0,
        hand=hand,
        zero_return=zero_return,
        conformity=_conformity(points, zero_return, readings.light_gap),
        untold=_untold(points, zero, scale, hand, readings),
    )


def instrument_after(instrument: Instrument, check: InstrumentCheck) -> Instrument:
    """Return the instrument's row with what a check has found; what it did not find stays.

    Readings of other trials are not corrected, so a zero or scale that is off counts as uncertainty there.

    Reference: JCGM 100:2008 F.2.4.5.
    """
    if not check.kind.length:
        return instrument  # the row holds lengths
    found: dict[str, float | int] = {}
    if check.zero is not None:
        found["u_outside_zero_mm"] = math.hypot(_uncorrected(check.zero), _of_rectangle(check.misfit))
    if check.inside_zero is not None:
        found["u_inside_zero_mm"] = _uncorrected(check.inside_zero)
    if check.scale is not None:
        found["u_scale_ratio"] = _uncorrected(check.scale)
    if check.hand is not None:
        found |= {"sd_hand_mm": check.hand.sd, "sd_hand_dof": check.hand.dof}
    return replace(instrument, **found)  # type: ignore[arg-type]  # the names are those of its fields


def _uncorrected(estimate: Estimate) -> float:
    return math.hypot(estimate.value, estimate.u)


def _of_rectangle(half_width: float) -> float:
    return standard_uncertainty(half_width, Distribution.RECTANGLE)


def _line(outside: Sequence[Point]) -> LinearFit | None:
    """Fit error against length, each point by what is its own: the temperature is common to all of them."""
    if not outside:
        return None
    design = [[1.0, point.reference] for point in outside]
    return fit_linear(design, [p.error for p in outside], [1 / p.own_u**2 for p in outside])


def _zero_and_scale(
    points: Sequence[Point], fit: LinearFit | None, readings: CheckReadings, kind: InstrumentKind
) -> tuple[Estimate | None, Estimate | None]:
    if fit is None:
        return None, None
    outside = [p for p in points if p.part in _OUTSIDE]
    found: list[Estimate | None] = []
    jaws = "zero_outside" if kind.length and readings.kind != "dial" else "zero"
    warmth = STEEL_PER_K * _of_rectangle(readings.temperature_apart_k) if kind.length else 0.0
    for place, (name, unit, common) in enumerate(((jaws, kind.unit, 0.0), ("scale", "1", warmth))):
        if not fit.determines(np.eye(_TERMS)[place]):
            found.append(None)
            continue
        shares = [g * p.own_u for g, p in zip(fit.solver[place], outside, strict=True)]
        whole = combine([*shares, common], [*(p.budget.dof for p in outside), math.inf])
        found.append(Estimate(name, float(fit.coef[place]), whole.u, whole.dof, unit))
    return found[0], found[1]


def _own_zero(name: str, points: Sequence[Point], scale: Estimate | None) -> Estimate | None:
    """Return the weighted mean error of blades or rod, less what the scale explains."""
    if not points:
        return None
    weights = np.array([1 / p.budget.u**2 for p in points])
    weights /= weights.sum()
    slope, u_slope = (scale.value, scale.u) if scale else (0.0, 0.0)
    value = sum(w * (p.error - slope * p.reference) for w, p in zip(weights, points, strict=True))
    from_scale = u_slope * sum(w * p.reference for w, p in zip(weights, points, strict=True))
    shares = [w * p.budget.u for w, p in zip(weights, points, strict=True)]
    whole = combine([*shares, from_scale], [*(p.budget.dof for p in points), scale.dof if scale else math.inf])
    return Estimate(name, float(value), whole.u, whole.dof, "mm")


def _conformity(points: Sequence[Point], zero_return: ZeroReturn | None, light_gap: LightGap) -> Conformity:
    """Judge the instrument by its points; zero alone proves nothing but a fault, light between the jaws no more."""
    said = {point.decision.conformity for point in points}
    if Conformity.NOT_CONFORMING in said:
        return Conformity.NOT_CONFORMING
    moved = zero_return is not None and not zero_return.ok
    references = any(point.part in (Part.LENGTH, Part.INSIDE) for point in points)
    proved = said == {Conformity.CONFORMING} and references and not moved and light_gap is not LightGap.SEEN
    return Conformity.CONFORMING if proved else Conformity.NOT_PROVED


def _untold(
    points: Sequence[Point], zero: Estimate | None, scale: Estimate | None, hand: Hand | None, readings: CheckReadings
) -> tuple[Untold, ...]:
    found, kind = [], kind_of(readings.kind)
    if zero is None:
        found.append(Untold("zero_outside" if kind.length else "zero", tr("read zero five times")))
    if scale is None:
        found.append(Untold("scale", tr("read a reference three times")))
    if kind.inside and not any(p.part is Part.INSIDE for p in points):
        found.append(Untold("zero_inside", tr("read a bore three times")))
    if kind.depth and not any(p.part is Part.DEPTH for p in points):
        found.append(Untold("zero_depth", tr("set the depth rod on a flat three times")))
    if kind.jaws and readings.light_gap is LightGap.NOT_LOOKED:
        found.append(Untold("light_gap", tr("close the jaws and hold them against a lamp")))
    if hand is None:
        found.append(Untold("sd_hand", tr("re-seat it on one gauge ten times")))
    return tuple(found)
