"""What follows from a ladder with several criteria: the step to use, or which criterion stands against every step."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from core.errors import InputError
from core.guidance.ladderjudgement import StepJudgement
from core.guidance.verdict import Advice, Setting
from core.measuring.criteria import Aim, CriteriaLadder, Criterion, MetStep, Scores, fit_criteria
from core.measuring.finite import finite_in
from core.measuring.ladder import Answer, Ladder, fit_values
from core.measuring.scores import FEWEST_JUDGES, check_score
from core.motion_trials.ladders import Bound, LadderKind, LadderReadings, Step, check_columns
from core.words import NOTHING, Words, side_by_side, tr

METHOD = "criteria 1"
_BETTER = 1.0  # of the score: so much better elsewhere on the plateau is worth a word
_FEWEST_VALUES = 5


@dataclass(frozen=True, slots=True, eq=False)
class CriteriaJudgement(StepJudgement[CriteriaLadder]):
    """A ladder with several criteria, what was read, and what follows; `measured` by criterion where it was."""

    measured: dict[str, Ladder]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD


def judge_criteria(readings: LadderReadings, rng: np.random.Generator) -> CriteriaJudgement:
    """Judge a ladder with several criteria: from readings to a verdict.

    Args:
        readings: what was read; `piece` and `criterion` say of each value what it is of. What was scored by a
            criterion of before is judged by it.
        rng: of the draws and shuffles.

    Raises:
        InputError: field `value`, `score`, `step` or `judge`, with the row where it is one.
    """
    check_columns(readings)
    readings = replace(readings, kind=readings.kind.scored_by(readings.criterion))
    kind = readings.kind
    of = {c.key: [row for row, key in enumerate(readings.criterion) if key == c.key] for c in kind.criteria}
    scored = [c for c in kind.criteria if not c.unit and of[c.key]]
    for row in sorted(row for criterion in scored for row in of[criterion.key]):
        check_score(readings.value[row], row)
    every = Scores(readings.step, readings.value, readings.judge, readings.piece)
    scores = {c.key: every.rows(of[c.key]) for c in scored}
    for criterion in kind.criteria:
        if criterion.counts:
            _check(criterion, scores.get(criterion.key))
    ladder = fit_criteria(scores, kind.criteria, readings.aim, rng)
    measured = {c.key: found for c in kind.criteria if c.unit and (found := _measured(readings, of[c.key]))}
    advice = _advice(readings, ladder)
    return CriteriaJudgement(readings, ladder, (advice,), _mind(readings, ladder, measured), measured)


def criterion_words(criterion: Criterion) -> Words:
    """Return the name of a criterion for people."""
    return {
        "clean": tr("cleanness"),
        "strings": tr("strings"),
        "bond": tr("bond"),
        "overhang": tr("overhang"),
        "force": tr("snap force"),
    }.get(criterion.key, Words(criterion.key.replace("{", "").replace("}", ""), {}))


def scale_words(criterion: Criterion) -> Words:
    """Return what to look at and which way its scale goes."""
    known = {
        "clean": tr("Strings between the posts: 4 none, 3 a few hairs, 2 some, 1 many, 0 a web."),
        "strings": tr("Strings between the posts: 0 none, 1 a few hairs, 2 some, 3 many, 4 a web."),
        "bond": tr(
            "Bond, by snapping a tab: 4 as strong as solid, 3 breaks across layers, 2 partly, 1 between layers, 0 "
            "falls apart."
        ),
        "overhang": tr(
            "Overhang and bridge: 4 clean, 3 faint lines, 2 sags, 1 loops, 0 fallen in. May be left out: * skips."
        ),
        "force": tr("Snap force of a tab in N, by a luggage scale: one value a piece. May be left out: * skips."),
    }.get(criterion.key)
    if known is not None:
        return known
    if criterion.unit:
        return tr("{name}: one value a piece, in {unit}.", name=criterion_words(criterion), unit=criterion.unit)
    if criterion.at_most is not None and criterion.at_least is None:
        return tr("{name}: 0 none, 4 very much.", name=criterion_words(criterion))
    return tr("{name}: 4 without fault, 0 useless.", name=criterion_words(criterion))


def bound_words(criterion: Criterion) -> Words:
    """Return what is asked of a criterion: `bond 3 or more`."""
    name = criterion_words(criterion)
    if criterion.at_least is not None and criterion.at_most is not None:
        return tr("{name} {low} to {high}", name=name, low=criterion.at_least, high=criterion.at_most)
    if criterion.at_least is not None:
        return tr("{name} {score} or more", name=name, score=criterion.at_least)
    return tr("{name} {score} or less", name=name, score=criterion.at_most)


def bounds_words(kind: LadderKind) -> Words:
    """Return all that is asked of a step: `cleanness 3 or more, bond 3 or more`."""
    return side_by_side((bound_words(criterion) for criterion in kind.criteria if criterion.counts), ", ")


def criterion_rows(judged: CriteriaJudgement) -> list[tuple[Words, Words, Words]]:
    """Return for each step and criterion its name, its mean score with interval, and how sure it meets the bound."""
    ladder, kind, rows = judged.ladder, judged.readings.kind, []
    for step in ladder.steps:
        for criterion in kind.criteria:
            met = _at(ladder, criterion, step)
            if met is None:
                continue
            name = tr("{value:.4g} {unit}, {name}", value=step, unit=kind.unit, name=criterion_words(criterion))
            place = met.place
            score = tr("{score:.1f} ({low:.1f} to {high:.1f})", score=place.score, low=place.low, high=place.high)
            sure = tr("met: {percent:.0f} %", percent=100 * met.sure) if criterion.counts else NOTHING
            rows.append((name, score, sure))
    return rows


def _check(criterion: Criterion, scores: Scores | None) -> None:
    """Refuse to judge before a criterion that counts was scored by two people."""
    name = criterion_words(criterion)
    if scores is None:
        raise InputError("score", tr("No score of {name} yet; it decides, so score it for every piece.", name=name))
    if len(set(scores.judge)) < FEWEST_JUDGES:
        says = tr("One pair of eyes only for {name}: let a second person score it, blind.", name=name)
        raise InputError("judge", says)


def _measured(readings: LadderReadings, rows: Sequence[int]) -> Ladder | None:
    """Return where a parabola through measured values is highest; None for too few of them."""
    step, value = [readings.step[row] for row in rows], [readings.value[row] for row in rows]
    if len(step) < _FEWEST_VALUES or len(set(step)) < 3:
        return None
    return fit_values(step, value, least=False)


def _at(ladder: CriteriaLadder, criterion: Criterion, step: float | None) -> MetStep | None:
    return next((met for met in ladder.met.get(criterion.key, ()) if met.step == step), None)


def _advice(readings: LadderReadings, ladder: CriteriaLadder) -> Advice:
    if ladder.answer is Answer.FOUND and ladder.chosen is not None:
        return use_step(readings.kind, ladder.chosen, _why(readings, ladder))
    return use_none(*_not_found(readings, ladder))


@finite_in("step")
def use_step(kind: LadderKind, step: Step, because: Words) -> Advice:
    """Advise a step of a ladder, for the lot or for the machine."""
    where = tr("for this lot on this machine") if kind.holds_for_lot else tr("on this machine")
    action = tr("Use {value:.4g} {unit} {where}.", value=step, unit=kind.unit, where=where)
    return Advice(Setting(kind.setting), action, step, kind.unit, because, _untouched())


def use_none(action: Words, because: Words) -> Advice:
    """Advise no step of a ladder, but how to go on."""
    return Advice(Setting.UNDECIDED, action, None, "", because, _untouched())


def _untouched() -> Words:
    return tr("All other settings: a ladder says something only while one setting changes.")


def _why(readings: LadderReadings, ladder: CriteriaLadder) -> Words:
    kind, chosen = readings.kind, ladder.chosen
    assert chosen is not None  # asked for only where there is one
    place = tr("upper third") if readings.aim is Aim.STRENGTH else tr("middle")
    return tr(
        "It is the {place} of the plateau, {low:g} to {high:g} {unit}, where all is met: {bounds}. That it meets all "
        "is sure to {percent:.0f} %; the place lies between {first:.4g} and {last:.4g} {unit} (95 %).",
        place=place, low=ladder.low, high=ladder.high, unit=kind.unit, bounds=bounds_words(kind),
        percent=100 * ladder.sure[ladder.steps.index(chosen)], first=ladder.interval[0], last=ladder.interval[1],
    )  # fmt: skip


def _not_found(readings: LadderReadings, ladder: CriteriaLadder) -> tuple[Words, Words]:
    """Return what to do where no step is found, and why."""
    kind, bounds = readings.kind, bounds_words(readings.kind)
    if ladder.answer is Answer.NO_DIFFERENCE:
        if ladder.meant is not None:
            action = tr("No difference seen: keep what is set; every step from {low:g} to {high:g} {unit} does.",
                        low=ladder.low, high=ladder.high, unit=kind.unit)  # fmt: skip
        else:
            action = tr("No difference seen: keep what is set, or try wider steps and more specimens.")
        return action, tr("Chance alone makes the steps differ so in {percent:.0f} % of shuffles.",
                          percent=100 * ladder.p)  # fmt: skip
    if ladder.answer is Answer.UNSURE:
        assert ladder.meant is not None  # unsure of a step
        because = tr(
            "{value:.4g} {unit} is meant, but that it meets all ({bounds}) is sure to {percent:.0f} % only.",
            value=ladder.meant, unit=kind.unit, bounds=bounds,
            percent=100 * ladder.sure[ladder.steps.index(ladder.meant)],
        )  # fmt: skip
        return tr("Print and score another set of pieces: these are too few."), because
    if ladder.answer is Answer.NONE_GOOD:
        return _none_meets(readings, ladder)
    high = ladder.answer is Answer.EXTEND_HIGH
    return at_end(readings, ladder.steps[-1] if high else ladder.steps[0], high)


def at_end(readings: LadderReadings, level: float, high: bool) -> tuple[Words, Words]:
    """Return what to do where the best step is the last one at the high or the low end, and why."""
    kind = readings.kind
    if level == end_of(kind, readings.limit, high):
        action = tr(
            "The best is at the end, {end:g} {unit}, and nothing lies beyond it: try finer steps next to it.",
            end=level, unit=kind.unit,
        )  # fmt: skip
    else:
        action = tr(
            "The best is at the end, {end:g} {unit}: extend the ladder beyond it before using it.",
            end=level, unit=kind.unit,
        )  # fmt: skip
    return action, tr("What was not tried is not known; nothing is read off there.")


@finite_in("limit")
def end_of(kind: LadderKind, limit: Bound | None, high: bool) -> float:
    """Return beyond which step nothing may be tried, at the high or the low end."""
    if not high:
        return kind.least
    return kind.most if limit is None else min(limit, kind.most)


def _none_meets(readings: LadderReadings, ladder: CriteriaLadder) -> tuple[Words, Words]:
    """Return what would tell where no step meets all: which criterion fails everywhere, or that they exclude others."""
    kind = readings.kind
    counted = [criterion for criterion in kind.criteria if criterion.counts]
    never = [c for c in counted if not any(met.meets for met in ladder.met[c.key])]
    meets = {c.key: [met.step for met in ladder.met[c.key] if met.meets] for c in counted if c not in never}
    told = [
        tr("{bound}: at {steps}", bound=bound_words(c), steps=", ".join(f"{step:g}" for step in meets[c.key]))
        if c.key in meets
        else tr("{bound}: at no step", bound=bound_words(c))
        for c in counted
    ]
    because = tr("{told} {unit}.", told=side_by_side(told, ", "), unit=kind.unit)
    if kind.key != "temperature":
        return tr("No step meets all that is asked: look for another cause, or extend the ladder."), because
    keys = {criterion.key for criterion in never}
    if keys == {"bond"} and ladder.steps[-1] < end_of(kind, readings.limit, True):
        action = tr("No step bonds well enough: extend the ladder to hotter steps, within the machine's limit.")
    elif keys == {"bond"}:
        action = tr(
            "No step bonds well enough, and nothing hotter may be tried: print slower or with less fan, then repeat it."
        )
    else:
        action = tr(
            "No step meets all. Weigh the lot, dry it, weigh again (page Lots): if it loses mass it was wet, and this "
            "ladder printed again with dry filament would tell."
        )
    return action, because


def _mind(readings: LadderReadings, ladder: CriteriaLadder, measured: dict[str, Ladder]) -> tuple[Words, ...]:
    kind, says = readings.kind, []
    if kind.limit and readings.limit is None:
        says.append(tr("The machine's limit is not typed yet, so it is not watched here."))
    if len(set(readings.piece)) <= len(set(readings.step)):
        says.append(one_piece_words())
    if ladder.answer is Answer.FOUND:
        if any(ladder.goes_on):
            says.append(tr("The plateau may go on beyond the steps tried."))
        says += [word for c in kind.criteria if not c.counts and (word := _better_elsewhere(ladder, c, kind.unit))]
    says += [_measured_words(kind, c, measured[c.key]) for c in kind.criteria if c.key in measured]
    return tuple(says)


def one_piece_words() -> Words:
    """Return what to mind where each step has one piece only."""
    return tr("One piece of each step: what differs may be the piece and not the step; another set would tell.")


def _better_elsewhere(ladder: CriteriaLadder, criterion: Criterion, unit: str) -> Words | None:
    """Say where on the plateau what is only looked at scores clearly better than at the step to use."""
    here = _at(ladder, criterion, ladder.chosen)
    others = [met for met in ladder.met.get(criterion.key, ()) if ladder.low <= met.step <= ladder.high]
    if here is None or not others:
        return None
    best = max(others, key=lambda met: met.place.score)
    if best.place.score - here.place.score < _BETTER:
        return None
    return tr(
        "At {step:g} {unit}, on the plateau too, {name} scores {better:.1f} instead of {score:.1f}.",
        step=best.step, unit=unit, name=criterion_words(criterion), better=best.place.score, score=here.place.score,
    )  # fmt: skip


def _measured_words(kind: LadderKind, criterion: Criterion, found: Ladder) -> Words:
    name = criterion_words(criterion)
    if found.answer is Answer.FOUND and found.chosen is not None:
        return tr(
            "The {name} is greatest at {value:.4g} {unit} ({low:.4g} to {high:.4g}, 95 %).",
            name=name, value=found.chosen, unit=kind.unit, low=found.low, high=found.high,
        )  # fmt: skip
    if found.answer is Answer.EXTEND_HIGH:
        return tr("The {name} still rises at the last step.", name=name)
    return tr("Where the {name} is greatest cannot be told from these steps.", name=name)
