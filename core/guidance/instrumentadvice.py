"""What follows from the check of an instrument: use it, take it out of use, or the reading that is missing."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from core.guidance.verdict import Advice, Setting
from core.measuring.checkpoints import Point
from core.measuring.checkreadings import CheckReadings
from core.measuring.doubt import CONFORMITY_KEY
from core.measuring.hand import HandGrade
from core.measuring.instrument import METHOD, InstrumentCheck, check_instrument
from core.measuring.instrumentkinds import LightGap, Part
from core.measuring.tolerance import Conformity
from core.quantity import Estimate, rounded_pair, value_text
from core.words import Words, tr

_STEPS_OF_MASS = 300  # so many steps of the last digit are a third of a percent; common practice, no source


@dataclass(frozen=True, slots=True, eq=False)
class InstrumentJudgement:
    """A check, what follows from it, and what to mind."""

    check: InstrumentCheck
    advice: tuple[Advice, ...]
    mind: tuple[Words, ...]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the estimates of the check."""
        return self.check.estimates()

    def verdict_json(self) -> list[dict[str, Any]]:
        """Return the verdict as it is stored, with what it proves for the results read with the instrument."""
        return [{**advice.as_json(), CONFORMITY_KEY: str(self.check.conformity)} for advice in self.advice]


def judge_instrument(readings: CheckReadings, tolerance_mm: float | None = None) -> InstrumentJudgement:
    """Judge a check: from typed readings to a verdict.

    Args:
        readings: of the check.
        tolerance_mm: half-width of the tolerance that is to be promised; None for none.

    Raises:
        InputError: as `instrument.check_instrument`.
    """
    check = check_instrument(readings)
    return InstrumentJudgement(check, (_advice(check),), tuple(_mind(check, readings, tolerance_mm)))


def _advice(check: InstrumentCheck) -> Advice:
    untouched = tr("Machine and filament settings: an instrument's error is mended at the instrument.")
    worst = check.worst()
    if worst is None:
        action = tr("Read zero and a reference too: these readings tell about the hand only.")
        return Advice(Setting.UNDECIDED, action, None, "", tr("No reference was read."), untouched)
    found = _error_words(worst, check.kind.unit)
    if check.conformity is Conformity.CONFORMING:
        action = tr("Keep the check; its uncertainties go into the other trials by themselves.")
        return Advice(Setting.USE_INSTRUMENT, action, None, "", found, untouched)
    if check.conformity is Conformity.NOT_CONFORMING:
        return Advice(Setting.INSTRUMENT_OUT, _mend(check), worst.error, check.kind.unit, found, untouched)
    return Advice(Setting.UNDECIDED, _undecided(check), None, "", found, untouched)


def _error_words(point: Point, unit: str) -> Words:
    error, U = rounded_pair(point.error, point.budget.U)
    return tr(
        "The error nearest to its limit is {error} ± {U} {unit} at {reference:.6g} {unit}; limit ± {limit:g} {unit}.",
        error=error,
        U=U,
        unit=unit,
        reference=point.reference,
        limit=point.limit,
    )


def _mend(check: InstrumentCheck) -> Words:
    bad = [point for point in check.points if point.decision.conformity is Conformity.NOT_CONFORMING]
    if all(point.part is Part.ZERO for point in bad):
        return tr("Wipe it, set zero, and check it again; what was read with it since its last good check is in doubt.")
    return tr("Have it mended or use another; what was read with it since its last good check is in doubt.")


def _undecided(check: InstrumentCheck) -> Words:
    if check.light_gap is LightGap.SEEN:
        return tr("Wipe the jaws and look again: where light stays, they are worn; small pieces read too small there.")
    if check.zero_return is not None and not check.zero_return.ok:
        return tr("Find out why zero moved, then check it again.")
    if all(point.part in (Part.ZERO, Part.TIP, Part.DEPTH) for point in check.points):
        return tr("Read a reference too, near the longest length you measure: zero alone proves nothing.")
    return tr("Nothing is proved this near to the limit: read more often, or use a reference that is better known.")


def _mind(check: InstrumentCheck, readings: CheckReadings, tolerance_mm: float | None) -> list[Words]:
    found = [_zero_moved(check), _scale_off(check), *_about_the_hand(check, tolerance_mm), _too_light(readings, check)]
    return [words for words in found if words is not None]


def _zero_moved(check: InstrumentCheck) -> Words | None:
    moved = check.zero_return
    if moved is None or moved.ok:
        return None
    zero = tr(
        "Zero moved from {first:.6g} to {farthest:.6g} {unit} during this check ({allowed:g} {unit} is usual).",
        first=moved.first,
        farthest=moved.farthest,
        unit=check.kind.unit,
        allowed=moved.allowed,
    )
    count = len(moved.doubtful_rows)
    if not count:
        return zero
    return tr(
        "{zero} The readings in between ({count}) are marked doubtful. Read two of them again.", zero=zero, count=count
    )


def _scale_off(check: InstrumentCheck) -> Words | None:
    if check.scale is None or not check.scale.significant:
        return None
    return tr(
        "Its scale is off by {scale}: other trials count that as uncertainty. Add the correction of the plot by hand "
        "where it matters.",
        scale=value_text(check.scale),
    )


def _about_the_hand(check: InstrumentCheck, tolerance_mm: float | None) -> list[Words]:
    hand, unit = check.hand, check.kind.unit
    if hand is None:
        return []
    found = []
    if hand.all_equal:
        found.append(tr("All re-seated readings are equal: type what the instrument shows, not what it should."))
    if hand.offset is not None and hand.offset.significant:
        said = value_text(hand.offset)
        found.append(tr("The second person reads {offset} more: let one person read one trial.", offset=said))
    if tolerance_mm is not None and check.kind.length:
        found.append(_grade_words(hand.grade(tolerance_mm), value_text(hand.estimate(unit)), tolerance_mm))
    return found


def _grade_words(grade: HandGrade, sd: str, tolerance_mm: float) -> Words:
    sd, promised = sd.removeprefix("+"), f"± {tolerance_mm:g} mm"
    return {
        HandGrade.GOOD: tr("The hand, {sd}, is good for {promised}: below a tenth of it.", sd=sd, promised=promised),
        HandGrade.USABLE: tr(
            "The hand, {sd}, is usable for {promised}: below a fifth of it.", sd=sd, promised=promised
        ),
        HandGrade.TOO_COARSE: tr(
            "The hand, {sd}, cannot promise {promised}: it is a fifth of it or more. Average several seatings, or use "
            "another instrument.",
            sd=sd,
            promised=promised,
        ),
    }[grade]


def _too_light(readings: CheckReadings, check: InstrumentCheck) -> Words | None:
    """Say from which mass on a balance is fine enough."""
    if readings.kind != "balance":
        return None
    return tr(
        "With steps of {step:g} {unit} weigh {least:g} {unit} or more: less is known worse than a third of a percent.",
        step=readings.resolution,
        unit=check.kind.unit,
        least=_STEPS_OF_MASS * readings.resolution,
    )
