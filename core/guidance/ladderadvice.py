"""What follows from a ladder: the step to use, for machine or lot, what to try next, or that nothing differs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from core.errors import InputError
from core.guidance.criteriaadvice import (
    CriteriaJudgement,
    at_end,
    judge_criteria,
    one_piece_words,
    use_none,
    use_step,
)
from core.guidance.farvalues import far_values_words
from core.guidance.ladderjudgement import StepJudgement
from core.guidance.verdict import Advice, Setting, setting_words
from core.measuring.ladder import GOOD_SCORE, Answer, Choose, Ladder, fit_scores, fit_values
from core.measuring.scores import check_score
from core.motion_trials.ladders import LadderKind, LadderReadings, Read, check_columns, check_steps, ladders
from core.motion_trials.lag import fit_lag
from core.words import Words, tr

METHOD = "ladder 2"
_ALIKE = 1.0  # score: less between best and worst is no difference that matters


@dataclass(frozen=True, slots=True, eq=False)
class LadderJudgement(StepJudgement[Ladder]):
    """A ladder of one criterion, what was read, and what follows."""

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD


def judge_ladder(readings: LadderReadings, rng: np.random.Generator) -> LadderJudgement | CriteriaJudgement:
    """Judge a ladder: from readings to a verdict.

    Args:
        readings: what was read.
        rng: of the shuffles that tell chance.

    Raises:
        InputError: field `step`, `value`, `score` or `judge`, with the row where it is one.
    """
    kind = readings.kind
    check_columns(readings)
    check_steps(kind, readings.step, readings.limit)
    if readings.read is Read.SCORE and any(readings.criterion):
        return judge_criteria(readings, rng)
    if readings.read is Read.SCORE:
        piece = readings.piece or None
        ladder = fit_scores(readings.step, readings.value, readings.judge, rng, kind.choose, piece)
    elif readings.read is Read.WIDTHS:
        ladder = _by_widths(readings)
    else:
        ladder = fit_values(readings.step, readings.value, least=readings.read is Read.LOW)
    return LadderJudgement(readings, ladder, (_advice(readings, ladder),), _mind(readings, ladder))


def check_ladder(readings: LadderReadings) -> None:
    """Refuse what stands against readings while some are still awaited, without judging the others.

    Raises:
        InputError: field `step` or `score`, with the row.
    """
    check_columns(readings)
    check_steps(readings.kind, readings.step, readings.limit)
    if readings.read is Read.SCORE:
        measured = {criterion.key for criterion in readings.kind.criteria if criterion.unit}
        criterion = readings.criterion or [""] * len(readings.value)
        for row, (value, key) in enumerate(zip(readings.value, criterion, strict=True)):
            if key not in measured:
                check_score(value, row)


def kinds_words(kind: LadderKind) -> Words:
    """Return the name of a ladder for people."""
    if kind.key == "temperature":
        return tr("Temperature")
    return setting_words(Setting(kind.setting))


def _by_widths(readings: LadderReadings) -> Ladder:
    """Group the widths by step; each step has one line."""
    steps = sorted(set(readings.step))
    widths = [[v for s, v in zip(readings.step, readings.value, strict=True) if s == step] for step in steps]
    whole = max(len(line) for line in widths)
    for step, line in zip(steps, widths, strict=True):
        if len(line) < whole:
            row = max(place for place, s in enumerate(readings.step) if s == step)
            says = tr("Read all {count} widths of the line at {step:g}, or exclude it.", count=whole, step=step)
            raise InputError("value", says, row)
    try:
        return fit_lag(steps, widths)
    except InputError as error:
        place = None if error.row is None else list(readings.step).index(steps[error.row])
        field = "value" if error.field == "widths_mm" else error.field
        raise InputError(field, error.message, place) from error


def _advice(readings: LadderReadings, ladder: Ladder) -> Advice:
    if ladder.answer is Answer.FOUND and ladder.chosen is not None:
        return use_step(readings.kind, ladder.chosen, _why(readings, ladder))
    return use_none(*_not_found(readings, ladder))


def _not_found(readings: LadderReadings, ladder: Ladder) -> tuple[Words, Words]:
    """Return what to do where no step is found, and why."""
    percent = 100 * ladder.p
    if ladder.answer is Answer.NO_DIFFERENCE:
        action = tr("No difference seen: keep what is set, or try wider steps and more specimens.")
        if readings.read is Read.SCORE:
            return action, tr("Chance alone makes the steps differ so in {percent:.0f} % of shuffles.", percent=percent)
        return action, tr("Scatter alone would bend the curve as much in {percent:.0f} % of cases.", percent=percent)
    if ladder.answer is Answer.ONLY_ENDS:
        action = tr("Both ends are better than the middle: look for a second thing that changed, and print it again.")
        return action, tr("No single best step bends so.")
    if ladder.answer is Answer.NONE_GOOD:
        action = tr("No step does it: where it gets worse again nothing scores {good:g}. Look for another cause.",
                    good=GOOD_SCORE)  # fmt: skip
        return action, tr("The steps above the best one are proved worse, so more does not help.")
    if ladder.answer is Answer.UNSURE:
        return tr("Print and score another set of pieces: these are too few."), _from_where(readings, ladder)
    high = ladder.answer is Answer.EXTEND_HIGH
    return at_end(readings, max(readings.step) if high else min(readings.step), high)


def _why(readings: LadderReadings, ladder: Ladder) -> Words:
    unit = readings.kind.unit
    if readings.read is not Read.SCORE:
        return tr(
            "The parabola through {count} readings turns between {low:.3g} and {high:.3g} {unit} (95 %).",
            count=len(readings.value), low=ladder.low, high=ladder.high, unit=unit,
        )  # fmt: skip
    if ladder.success is not None:
        return _from_where(readings, ladder)
    best = next(s for s in ladder.scored if s.step == ladder.chosen)
    return tr(
        "It scores {score:.1f} ({low:.1f} to {high:.1f}); from {first:g} to {last:g} {unit} no step is proved worse "
        "than the best ({count} scores).",
        score=best.place.score, low=best.place.low, high=best.place.high, first=ladder.low, last=ladder.high, unit=unit,
        count=sum(s.count for s in ladder.scored),
    )  # fmt: skip


def _from_where(readings: LadderReadings, ladder: Ladder) -> Words:
    """Return from which step on the wanted share scores well enough, and how sure that is."""
    found, unit, steps = ladder.success, readings.kind.unit, sorted(set(readings.step))
    assert found is not None  # asked for only where there is one
    below = tr("under {step:g}", step=steps[0])
    above = tr("over {step:g}", step=steps[-1])
    return tr(
        "{percent:.0f} % of the pieces score {good:g} or more from {at:.3g} {unit} on ({low} to {high}, 95 %; {count} "
        "scores).",
        percent=100 * found.share, good=GOOD_SCORE, at=found.at, unit=unit,
        low=below if found.low < steps[0] else tr("{value:.3g}", value=found.low),
        high=above if found.high > steps[-1] else tr("{value:.3g}", value=found.high),
        count=len(readings.value),
    )  # fmt: skip


def _mind(readings: LadderReadings, ladder: Ladder) -> tuple[Words, ...]:
    kind, says = readings.kind, list(far_values_words(readings))
    if kind.limit and readings.limit is None:
        says.append(tr("The machine's limit is not typed yet, so it is not watched here."))
    if readings.read is Read.SCORE and readings.piece and len(set(readings.piece)) <= len(set(readings.step)):
        says.append(one_piece_words())
    means = [step.place.score for step in ladder.scored]
    if kind.key == "retraction" and means and max(means) - min(means) < _ALIKE:
        if min(means) >= GOOD_SCORE:
            says.append(tr("Hardly a string at any length: less may do too. Extend the ladder below the first step."))
        elif max(means) < GOOD_SCORE:
            says.append(
                tr("Strings alike at all lengths: the filament is wet or too hot; retraction is not the cause.")
            )
    if ladder.answer is Answer.FOUND:
        steps = sorted(set(readings.step))
        if kind.choose is Choose.LEAST and readings.read is Read.SCORE:
            says += _least_mind(readings, ladder, steps)
        elif ladder.low <= steps[0] or ladder.high >= steps[-1]:
            says.append(tr("The plateau may go on beyond the steps tried."))
        if kind.key == "lag":
            says.append(tr("After a change of it read the contour offset again: corners and walls change with it."))
    return tuple(says)


def _least_mind(readings: LadderReadings, ladder: Ladder, steps: Sequence[float]) -> list[Words]:
    """Return what to mind where the least step that does is used."""
    chosen, unit = ladder.chosen, readings.kind.unit
    says = []
    if chosen == steps[0]:
        says.append(tr("The first step does it already: less may do too; extend the ladder below it."))
    if ladder.success is not None and chosen is not None and ladder.high > chosen:
        says.append(tr("It may take up to {high:.3g} {unit}: if a string is seen, use the next step.",
                       high=ladder.high, unit=unit))  # fmt: skip
    says.append(tr("The least that does is used: more does harm elsewhere (gaps after travels, grinding)."))
    return says


def known_kinds() -> Mapping[str, LadderKind]:
    """Return the ladders by key."""
    return ladders()
