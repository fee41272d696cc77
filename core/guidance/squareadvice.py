"""What follows from a squareness trial: the frame first, correction terms only for what the frame cannot give.

A kept angle from before a correction is held against the prediction that the correction takes it to zero; doubled
means that the sign was wrong. Limits are the tolerance over the longest part; common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from core.errors import InputError
from core.guidance.verdict import Advice, Setting
from core.machine_geometry.squareness import (
    METHOD,
    Plane,
    SignCheck,
    Squareness,
    check_prediction,
    squareness_from_diagonals,
    squareness_from_flips,
)
from core.quantity import Estimate, value_text
from core.records.rows import Instrument, Machine, Motion
from core.words import Words, tr


class Frame(StrEnum):
    """What was done since the angle kept before."""

    FOUND = "found"
    MOVED = "moved"
    TERMS = "terms"


@dataclass(frozen=True, slots=True)
class SquareReadings:
    """The readings that count, column by column (n), and what held while they were taken.

    Attributes:
        diagonal: "1" or "2"; with a square "normal" or "flipped".
        part: "outer", "inner", "drawn" or "square", the same method throughout.
        side_a_mm: along the first axis.
        side_b_mm: along the second axis; with a square the travel along it.
        span_mm: between the places where the frame is shifted.
        longest_mm: part that must still be square within `tolerance_mm`.
    """

    plane: Plane
    side_a_mm: float
    side_b_mm: float
    span_mm: float
    longest_mm: float
    tolerance_mm: float
    frame: Frame
    reading_mm: Sequence[float]
    diagonal: Sequence[str]
    part: Sequence[str]


@dataclass(frozen=True, slots=True)
class SquareJudgement:
    """A squareness trial, the check of a correction if there was one, and what follows."""

    readings: SquareReadings
    fit: Squareness
    check: SignCheck | None
    advice: tuple[Advice, ...]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the estimates of the trial."""
        return self.fit.estimates()


def judge_squareness(
    readings: SquareReadings,
    machine: Machine | None = None,
    instrument: Instrument | None = None,
    reversal: Mapping[str, Estimate] | None = None,
    before: Estimate | None = None,
) -> SquareJudgement:
    """Judge a trial: from typed readings to a verdict.

    Args:
        readings: what was read.
        machine: how its motors move; None for none on record.
        instrument: whose uncertainties are known; None for none on record.
        reversal: kept reversal errors in mm by axis.
        before: the angle kept before the frame was moved or terms were entered.

    Raises:
        InputError: as `squareness_from_diagonals` and `squareness_from_flips` do, and for the settings.
    """
    for field, value in (("span_mm", readings.span_mm), ("longest_mm", readings.longest_mm),
                         ("tolerance_mm", readings.tolerance_mm)):  # fmt: skip
        if not (math.isfinite(value) and value > 0):
            raise InputError(field, tr("This must be above zero; type a length in mm."))
    fit = _measured(readings, instrument, reversal)
    check = None
    if before is not None and before.significant and readings.frame is not Frame.FOUND:
        check = check_prediction(before, fit.angle)
    motion = machine.motion if machine else Motion.CARTESIAN
    advice = (*_check_advice(readings, fit, check, before), *_size_advice(readings, fit, motion, check))
    return SquareJudgement(readings, fit, check, advice)


def per_hundred(angle: Estimate) -> Estimate:
    """Return an angle as the offset over 100 mm."""
    return Estimate("per_100", 100.0 * angle.value, 100.0 * angle.u, angle.dof, "mm")


def _measured(
    readings: SquareReadings, instrument: Instrument | None, reversal: Mapping[str, Estimate] | None
) -> Squareness:
    if "square" in readings.part:
        return squareness_from_flips(
            readings.plane,
            readings.side_b_mm,
            readings.reading_mm,
            readings.diagonal,
            resolution_mm=instrument.resolution_mm if instrument else 0.01,
        )
    return squareness_from_diagonals(
        readings.plane,
        readings.side_a_mm,
        readings.side_b_mm,
        readings.reading_mm,
        readings.diagonal,
        readings.part,
        instrument=instrument,
        reversal=reversal,
    )


def _check_advice(
    readings: SquareReadings, fit: Squareness, check: SignCheck | None, before: Estimate | None
) -> tuple[Advice, ...]:
    """Say what the correction did, where it did not do what was predicted."""
    if check not in (SignCheck.WRONG_SIGN, SignCheck.UNCHANGED) or before is None:
        return ()
    terms = readings.frame is Frame.TERMS
    setting = Setting.SKEW_TERMS if terms else Setting.MEND_MECHANICS
    now = tr(
        "Before {before} in 100 mm, now {now}; predicted was 0.",
        before=value_text(per_hundred(before)),
        now=value_text(per_hundred(fit.angle)),
    )
    if check is SignCheck.UNCHANGED:
        action = tr("Look whether the correction is in force at all: the angle is what it was.")
        return (Advice(setting, action, None, "", now, _untouched()),)
    action = (
        tr("Turn the sign of the term round: the correction doubled the angle.")
        if terms
        else tr("Shift the same side the other way, by twice as much: the correction doubled the angle.")
    )
    return (Advice(setting, action, None, "", now, _untouched()),)


def _size_advice(
    readings: SquareReadings, fit: Squareness, motion: Motion, check: SignCheck | None
) -> tuple[Advice, ...]:
    angle, allowed = fit.angle, readings.tolerance_mm / readings.longest_mm
    because = _because(readings, fit)
    if abs(angle.value) + angle.U <= allowed:
        done = tr("The correction did what was predicted.") if check is SignCheck.GONE else tr("Change nothing.")
        return (Advice(Setting.LEAVE, done, None, "", because, _untouched()),)
    if not (angle.significant and abs(angle.value) > allowed):
        return (Advice(Setting.UNDECIDED, _needs(fit), None, "", because, _untouched()),)
    if check in (SignCheck.WRONG_SIGN, SignCheck.UNCHANGED):
        return ()  # what to do is said already
    if readings.frame is Frame.FOUND:
        action = _frame_action(readings, fit, motion)
        return (Advice(Setting.MEND_MECHANICS, action, fit.shift(readings.span_mm).value, "mm", because, _untouched()),)
    return (Advice(Setting.SKEW_TERMS, _term_action(readings, fit), math.tan(angle.value), "1", because, _untouched()),)


def _because(readings: SquareReadings, fit: Squareness) -> Words:
    return tr(
        "Off square by {per_100} in 100 mm ({count} readings); allowed {allowed:.3f}.",
        per_100=value_text(per_hundred(fit.angle)),
        count=len(readings.reading_mm),
        allowed=100.0 * readings.tolerance_mm / readings.longest_mm,
    )


def _needs(fit: Squareness) -> Words:
    if fit.fake_rad > 0:
        return tr("Read the pillars on both faces: from one side only, reversal may be all of it.")
    return tr("Read each length more often, or make the piece larger: the interval is too wide to tell.")


def _frame_action(readings: SquareReadings, fit: Squareness, motion: Motion) -> Words:
    shift, g = fit.shift(readings.span_mm), fit.angle.value
    values: dict[str, str | float] = {
        "shift": value_text(Estimate("shift", abs(shift.value), shift.u, shift.dof, "mm")).removeprefix("+"),
        "span": readings.span_mm,
    }
    if fit.plane is not Plane.XY:
        values |= {"first": str(fit.plane)[0].upper(), "second": str(fit.plane)[1].upper()}
        if g > 0:
            return tr(
                "{second} leans towards +{first}: bring its far end back by {shift} over {span:g} mm. Terms only then.",
                **values,
            )
        return tr(
            "{second} leans towards −{first}: bring its far end forward by {shift} over {span:g} mm. Terms only then.",
            **values,
        )
    if motion is Motion.DELTA:
        return tr("A delta has no side to shift: measure rods and tower places, then enter what they are.")
    if motion is Motion.CROSSED_BELT:
        return tr("Even the tension of the two belts first, then set the beam: unequal belts lean Y like this.")
    if g > 0:
        return tr(
            "The +X side of the beam stands ahead: bring it back (towards −Y) by {shift} on {span:g} mm between the "
            "sides. Terms only then.",
            **values,
        )
    return tr(
        "The +X side of the beam lags: bring it forward (towards +Y) by {shift} on {span:g} mm between the sides. "
        "Terms only then.",
        **values,
    )


def _term_action(readings: SquareReadings, fit: Squareness) -> Words:
    """The term adds to the one in force, which is zero where none was entered yet."""
    return tr(
        "Add {tangent:+.6f} to the term of {plane} in force ({formula}), then make the piece again and expect 0; "
        "doubled means that the sign is wrong.",
        tangent=math.tan(fit.angle.value),
        plane=str(readings.plane).upper(),
        formula=_FORMULAS[readings.plane],
    )


_FORMULAS = {
    Plane.XY: "x − y·tan XY",
    Plane.XZ: "x − z·(tan XZ − tan XY·tan YZ)",
    Plane.YZ: "y − z·tan YZ",
}


def _untouched() -> Words:
    return tr("Steps per millimetre, flow, contour offset: none of them turns an axis.")
