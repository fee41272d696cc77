"""Half speed, the first diagnosis of any defect: print it again at half speed and half acceleration, nothing else.

Better: it is made by motion, flow or cooling. As before: by geometry or setup. Half speed halves the volumetric rate
and doubles the time of a layer too, and two further runs split these: full speed at half the layer height (half the
rate), and full speed with a second copy on the bed (twice the layer time).

A run counts as better where every judge scores it higher by one class at least, as no better where no judge does;
judges who disagree tell nothing yet.

Reference: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from core.errors import InputError
from core.measuring.reach import of_one_length
from core.measuring.scores import FEWEST_JUDGES, HIGHEST_SCORE, LOWEST_SCORE
from core.words import tr

METHOD = "halfspeed 1"
BETTER_BY = 1.0


class Run(StrEnum):
    """The four runs."""

    USUAL = "usual"
    HALF_SPEED = "half_speed"
    HALF_RATE = "half_rate"
    LONG_LAYERS = "long_layers"


class Change(StrEnum):
    """How a run compares with the usual one."""

    BETTER = "better"
    SAME = "same"
    DISAGREE = "disagree"
    NOT_RUN = "not_run"


class Cause(StrEnum):
    """Where the defect comes from."""

    NO_DEFECT = "no_defect"
    SETUP = "setup"
    DYNAMICS = "dynamics"
    RATE = "rate"
    COOLING = "cooling"
    RATE_AND_COOLING = "rate_and_cooling"
    MOTION = "motion"
    OPEN = "open"


@dataclass(frozen=True, slots=True)
class HalfSpeed:
    """The answer: the cause, how each run compares with the usual one, and by judge the mean score of each run."""

    cause: Cause
    changes: dict[Run, Change]
    scores: dict[Run, dict[str, float]]


@of_one_length("run", "score", "judge")
def judge_half_speed(run: Sequence[Run], score: Sequence[float], judge: Sequence[str]) -> HalfSpeed:
    """Return where a defect comes from.

    Args:
        run: (n,) which run the scored specimen is of.
        score: (n,) 0 (useless) to 4 (without fault), of this defect.
        judge: (n,) who scored; each judge scores every run.

    Raises:
        InputError: field `score` or `judge`, with the row where it is one.
    """
    for row, value in enumerate(score):
        if not LOWEST_SCORE <= value <= HIGHEST_SCORE:
            says = tr("A score of {value:g} is not between 0 (useless) and 4 (without fault).", value=value)
            raise InputError("score", says, row)
    judges = sorted(set(judge))
    if len(judges) < FEWEST_JUDGES:
        raise InputError("judge", tr("One pair of eyes only: let a second person score the specimens, blind."))
    scores: dict[Run, dict[str, float]] = {}
    for one in Run:
        for who in judges:
            own = [s for r, s, j in zip(run, score, judge, strict=True) if r is one and j == who]
            if own:
                scores.setdefault(one, {})[who] = sum(own) / len(own)
    for needed in (Run.USUAL, Run.HALF_SPEED):
        if len(scores.get(needed, {})) < len(judges):
            raise InputError("score", tr("Both judges score the usual run and the one at half speed, first of all."))
    changes: dict[Run, Change] = {one: _change(scores, one) for one in Run if one is not Run.USUAL}
    return HalfSpeed(_cause(scores, changes), changes, scores)


def _change(scores: dict[Run, dict[str, float]], run: Run) -> Change:
    usual, own = scores[Run.USUAL], scores.get(run, {})
    if len(own) < len(usual):
        return Change.NOT_RUN
    better = [own[who] - usual[who] >= BETTER_BY for who in usual]
    return Change.BETTER if all(better) else Change.DISAGREE if any(better) else Change.SAME


def _cause(scores: dict[Run, dict[str, float]], changes: dict[Run, Change]) -> Cause:
    if min(scores[Run.USUAL].values()) > HIGHEST_SCORE - BETTER_BY:
        return Cause.NO_DEFECT
    if changes[Run.HALF_SPEED] is not Change.BETTER:
        return Cause.SETUP if changes[Run.HALF_SPEED] is Change.SAME else Cause.OPEN
    rate, layers = changes[Run.HALF_RATE], changes[Run.LONG_LAYERS]
    if Change.NOT_RUN in (rate, layers):
        return Cause.DYNAMICS
    if Change.DISAGREE in (rate, layers):
        return Cause.OPEN
    return {
        (Change.BETTER, Change.SAME): Cause.RATE,
        (Change.SAME, Change.BETTER): Cause.COOLING,
        (Change.BETTER, Change.BETTER): Cause.RATE_AND_COOLING,
        (Change.SAME, Change.SAME): Cause.MOTION,
    }[rate, layers]
