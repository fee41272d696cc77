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
from core.guidance.squareactions import (
    frame_action,
    needs,
    per_hundred,
    term_action,
    turn_action,
    unchanged_action,
    untouched,
)
from core.guidance.verdict import Advice, Setting
from core.machine_geometry.squareness import (
    METHOD,
    MOST_RAD,
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


def term_name(plane: str) -> str:
    """Return the name under which the term of a plane is in force on a machine."""
    return f"skew_{plane}"


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
        term_ratio: term of the plane that was in force when the piece was made, as a tangent; 0 for none.
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
    term_ratio: float = 0.0


@dataclass(frozen=True, slots=True)
class SquareJudgement:
    """A squareness trial, the check of a correction if there was one, and what follows."""

    readings: SquareReadings
    fit: Squareness
    check: SignCheck | None
    advice: tuple[Advice, ...]

    @property
    def new_term_ratio(self) -> float | None:
        """The term that keeping the trial puts in force; None where it changes none."""
        return next((a.amount for a in self.advice if a.setting is Setting.SKEW_TERMS), None)

    @property
    def verifies_term(self) -> bool:
        """Whether the trial found that the term in force takes the angle to zero."""
        return self.readings.frame is Frame.TERMS and self.check is SignCheck.GONE

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
    if not abs(readings.term_ratio) < math.tan(MOST_RAD):
        raise InputError(
            "term_ratio",
            tr("A term is a tangent, below {most:.3f} either way; 0 where none was set.", most=math.tan(MOST_RAD)),
        )
    for field, value in (("span_mm", readings.span_mm), ("longest_mm", readings.longest_mm),
                         ("tolerance_mm", readings.tolerance_mm)):  # fmt: skip
        if not (math.isfinite(value) and value > 0):
            raise InputError(field, tr("This must be above zero; type a length."))
    fit = _measured(readings, instrument, reversal)
    check = None
    if before is not None and before.significant and readings.frame is not Frame.FOUND:
        check = check_prediction(before, fit.angle)
    motion = machine.motion if machine else Motion.CARTESIAN
    advice = (*_check_advice(readings, fit, check, before), *_size_advice(readings, fit, motion, check))
    return SquareJudgement(readings, fit, check, advice)


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
        return (Advice(setting, unchanged_action(), None, "", now, untouched()),)
    turned = -readings.term_ratio if terms and readings.term_ratio else None
    return (Advice(setting, turn_action(turned, terms=terms), turned, "1" if turned else "", now, untouched()),)


def _size_advice(
    readings: SquareReadings, fit: Squareness, motion: Motion, check: SignCheck | None
) -> tuple[Advice, ...]:
    angle, allowed = fit.angle, readings.tolerance_mm / readings.longest_mm
    because = _because(readings, fit)
    if abs(angle.value) + angle.U <= allowed:
        done = tr("The correction did what was predicted.") if check is SignCheck.GONE else tr("Change nothing.")
        return (Advice(Setting.LEAVE, done, None, "", because, untouched()),)
    if not (angle.significant and abs(angle.value) > allowed):
        return (Advice(Setting.UNDECIDED, needs(fit), None, "", because, untouched()),)
    if check in (SignCheck.WRONG_SIGN, SignCheck.UNCHANGED):
        return ()  # what to do is said already
    if readings.frame is Frame.FOUND:
        action = frame_action(fit, readings.span_mm, motion)
        return (Advice(Setting.MEND_MECHANICS, action, fit.shift(readings.span_mm).value, "mm", because, untouched()),)
    action = term_action(fit, readings.term_ratio)
    return (Advice(Setting.SKEW_TERMS, action, readings.term_ratio + math.tan(angle.value), "1", because, untouched()),)


def _because(readings: SquareReadings, fit: Squareness) -> Words:
    return tr(
        "Off square by {per_100} in 100 mm (readings: {count}); allowed {allowed:.3f} mm in 100 mm.",
        per_100=value_text(per_hundred(fit.angle)),
        count=len(readings.reading_mm),
        allowed=100.0 * readings.tolerance_mm / readings.longest_mm,
    )
