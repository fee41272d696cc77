"""Ladders scored by several criteria at once: the steps that meet all of them, and the place among these to use.

    score of b or more is met    where P(score >= b) >= 1/2, that is eta >= theta under b
    score of b or less is met    where P(score <= b) >= 1/2, that is eta <= theta over b
    place = first + q (last - first)      q = 1/2 the middle of the plateau, 5/6 the middle of its upper third

Symbols: b bound, eta place of a step on the scale of one criterion, theta threshold between two scores (both of
`core.measuring.ordinal`), first and last the ends of the plateau: the longest run of steps that meet every bound.

How sure a step meets a bound is the share of draws in which it does; the same draws give a plateau each, and so the
interval of the place to use.

Reference: the rule (bounds, middle, upper third): common practice, no source; proportional odds: `ordinal`.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.ladder import CHANCE, Answer
from core.measuring.ordinal import Draws, Place, difference_p
from core.measuring.scores import DRAWS, FEWEST_JUDGES, FEWEST_STEPS, checked_scores, draw_scores
from core.quantity import Estimate, coverage_factor
from core.words import tr

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]
Share = float  # 0 to 1

SURE: Share = 0.8  # how sure the step to use must meet every bound (common practice, no source)
_MANY = 2 * DRAWS  # draws: scores that separate the steps leave few of them with any weight


class Aim(StrEnum):
    """What the parts are for: it says where on the plateau the step to use lies."""

    LOOKS = "looks"
    STRENGTH = "strength"

    @property
    def share(self) -> Share:
        """Share of the plateau below the place to use."""
        return 1 / 2 if self is Aim.LOOKS else 5 / 6


@dataclass(frozen=True, slots=True)
class Criterion:
    """One thing that is looked at, or measured.

    Attributes:
        key: its name in data.
        at_least: least score that is wanted, above 0; None for no such bound.
        at_most: greatest score that is wanted, under 4; None for no such bound.
        unit: of a measured value; empty where scores 0 to 4 are given.
    """

    key: str
    at_least: int | None = None
    at_most: int | None = None
    unit: str = ""

    @property
    def counts(self) -> bool:
        """Whether a step must meet a bound of it; else it is only looked at."""
        return self.at_least is not None or self.at_most is not None


class Scores(NamedTuple):
    """Scores of one criterion, each (n,): step, score, judge, and the piece it is of."""

    step: Sequence[float]
    score: Sequence[float]
    judge: Sequence[str]
    piece: Sequence[str]

    def rows(self, wanted: Sequence[int]) -> Scores:
        """Return some of the scores."""
        return Scores(
            [self.step[row] for row in wanted],
            [self.score[row] for row in wanted],
            [self.judge[row] for row in wanted],
            [self.piece[row] for row in wanted],
        )


@dataclass(frozen=True, slots=True)
class MetStep:
    """One step by one criterion: mean score, how many scores, and how sure it meets the bound (1 without a bound)."""

    step: float
    place: Place
    count: int
    sure: Share

    @property
    def meets(self) -> bool:
        """Whether it rather meets the bound than not."""
        return self.sure >= 1 / 2


@dataclass(frozen=True, slots=True)
class CriteriaLadder:
    """The answer of a ladder with several criteria.

    Attributes:
        answer: whether a step is found, and what to do where none is.
        chosen: the step to use; None unless found.
        low: lower end of the plateau; of all steps where there is none.
        high: upper end.
        interval: 95 % interval of the place to use.
        p: how often chance alone makes the steps differ as much, for the criterion where they differ most.
        steps: in rising order.
        sure: by step, how sure it meets every bound.
        met: by criterion its steps.
        meant: the step that was meant, found or not; None without a plateau.
    """

    answer: Answer
    chosen: float | None
    low: float
    high: float
    interval: tuple[float, float]
    p: float
    steps: tuple[float, ...]
    sure: tuple[Share, ...]
    met: Mapping[str, tuple[MetStep, ...]]
    meant: float | None = None

    @property
    def goes_on(self) -> tuple[bool, bool]:
        """Whether the plateau reaches the first step tried, and the last one."""
        return self.low <= self.steps[0], self.high >= self.steps[-1]

    def estimate(self, name: str, unit: str) -> Estimate | None:
        """Return the step to use with U, never under half the way to the next step; None where none is found."""
        if self.chosen is None:
            return None
        at = self.steps.index(self.chosen)
        gaps = [abs(self.steps[k] - self.chosen) for k in (at - 1, at + 1) if 0 <= k < len(self.steps)]
        U = max(self.interval[1] - self.chosen, self.chosen - self.interval[0], max(gaps) / 2)
        return Estimate(name, self.chosen, U / coverage_factor(math.inf), math.inf, unit)


def fit_criteria(
    scores: Mapping[str, Scores], criteria: Sequence[Criterion], aim: Aim, rng: np.random.Generator
) -> CriteriaLadder:
    """Return what the scores of several criteria say about the steps.

    Args:
        scores: by criterion. Steps without a score of every criterion with a bound do not count.
        criteria: those with a bound decide, the others are only looked at.
        aim: what the parts are for.
        rng: of draws and shuffles.

    Raises:
        InputError: field `score`, `step` or `judge`, with the row within its criterion where it is one.
    """
    counted = [criterion for criterion in criteria if criterion.counts]
    shared = set.intersection(*(set(scores[c.key].step) if c.key in scores else set() for c in counted))
    if len(shared) < FEWEST_STEPS:
        says = tr("Score three different steps at least by every criterion that counts.")
        raise InputError("score", says)
    steps = np.array(sorted(shared))
    met, p, every = {}, 1.0, np.ones((_MANY, steps.size), dtype=bool)
    tail = 0.0
    for criterion in criteria:
        own = _at_steps(scores.get(criterion.key), steps) if not criterion.unit else None
        if own is None or not (criterion.counts or _enough(own)):
            continue
        seen = steps if criterion.counts else np.unique(own.step)
        y, place, who = _read(own, seen)
        draws = draw_scores(y, place, who, rng, own.piece, _MANY)
        inside = _inside(draws, criterion, seen.size)
        met[criterion.key] = _met(draws, inside, seen, place)
        if criterion.counts:
            p = min(p, len(counted) * difference_p(y, place, who, rng, DRAWS, own.piece))
            every &= inside[rng.choice(_MANY, _MANY, p=draws.weights)]
            tail = max(tail, draws.fit.tail)
    whole = [all(met[c.key][k].meets for c in counted) for k in range(steps.size)]
    return _answer(steps, whole, every, tail, aim, p, met)


def _at_steps(scores: Scores | None, steps: Floats) -> Scores | None:
    """Return the scores of these steps only."""
    if scores is None:
        return None
    kept = [row for row, step in enumerate(scores.step) if step in steps]
    return scores.rows(kept)


def _enough(scores: Scores) -> bool:
    return len(set(scores.step)) >= FEWEST_STEPS and len(set(scores.judge)) >= FEWEST_JUDGES


def _read(scores: Scores, steps: Floats) -> tuple[Floats, NDArray[np.intp], NDArray[np.intp]]:
    """Return scores, places of their steps and of their judges."""
    x, y = checked_scores(scores.step, scores.score, scores.judge)
    _, who = np.unique(np.asarray(scores.judge), return_inverse=True)
    return y, np.searchsorted(steps, x), who


def _inside(draws: Draws, criterion: Criterion, steps: int) -> Bools:
    """Return for each draw which steps meet the bounds of a criterion."""
    effects = draws.effects[:, :steps]
    inside = np.ones(effects.shape, dtype=bool)
    if criterion.at_least is not None:
        inside &= effects >= draws.thresholds[:, [criterion.at_least - 1]]
    if criterion.at_most is not None:
        inside &= effects <= draws.thresholds[:, [criterion.at_most]]
    return inside


def _met(draws: Draws, inside: Bools, steps: Floats, place: NDArray[np.intp]) -> tuple[MetStep, ...]:
    sure, count = draws.weights @ inside, np.bincount(place)
    rows = np.zeros((steps.size, draws.effects.shape[1]))
    rows[:, : steps.size] = np.eye(steps.size)
    return tuple(
        MetStep(float(steps[k]), draws.place(row), int(count[k]), min(float(sure[k]), 1.0))
        for k, row in enumerate(rows)
    )


def _answer(
    steps: Floats,
    whole: Sequence[bool],
    every: Bools,
    tail: Share,
    aim: Aim,
    p: float,
    met: Mapping[str, tuple[MetStep, ...]],
) -> CriteriaLadder:
    sure = every.mean(axis=0)
    tried, certain = tuple(steps.tolist()), tuple(sure.tolist())
    run = _plateau(whole, sure)
    p = min(p, 1.0)
    if run is None:
        answer = Answer.NO_DIFFERENCE if p > CHANCE else Answer.NONE_GOOD
        ends = float(steps[0]), float(steps[-1])
        return CriteriaLadder(answer, None, *ends, ends, p, tried, certain, met)
    first, last = run
    low, high = float(steps[first]), float(steps[last])
    at = low + aim.share * (high - low)
    best = min(range(first, last + 1), key=lambda k: (round(abs(tried[k] - at), 9), -certain[k]))
    answer = Answer.FOUND
    if p > CHANCE:
        answer = Answer.NO_DIFFERENCE
    elif best in (0, steps.size - 1):
        answer = Answer.EXTEND_LOW if best == 0 else Answer.EXTEND_HIGH
    elif sure[best] < SURE:
        answer = Answer.UNSURE
    interval = _interval(steps, every, tail, aim.share, run)
    chosen = tried[best] if answer is Answer.FOUND else None
    return CriteriaLadder(answer, chosen, low, high, interval, p, tried, certain, met, tried[best])


def _plateau(whole: Sequence[bool], sure: Floats) -> tuple[int, int] | None:
    """Return first and last of the longest run of steps that meet everything, of two the surer; None without one."""
    runs: list[tuple[int, int]] = []
    for k, meets in enumerate(whole):
        if meets and k and whole[k - 1]:
            runs[-1] = runs[-1][0], k
        elif meets:
            runs.append((k, k))
    return max(runs, key=lambda run: (run[1] - run[0], float(sure[run[0] : run[1] + 1].sum())), default=None)


def _interval(steps: Floats, every: Bools, tail: Share, share: Share, run: tuple[int, int]) -> tuple[float, float]:
    """Return the 95 % interval of the place to use; a plateau that reaches an end may go on by a step at least."""
    numbers = every @ (1 << np.arange(steps.size))  # equal for draws with the same steps
    _, first, which = np.unique(numbers, return_index=True, return_inverse=True)
    places = np.full(first.size, math.nan)
    for number, pattern in enumerate(every[first].tolist()):
        if (own := _plateau(pattern, np.ones(steps.size))) is not None:
            low, high = steps[own[0]], steps[own[1]]
            places[number] = low + share * (high - low)
    found = places[which]
    found = found[~np.isnan(found)]
    low, high = np.quantile(found, [tail, 1.0 - tail])
    if run[0] == 0:
        low -= (1.0 - share) * (steps[1] - steps[0])
    if run[1] == steps.size - 1:
        high += share * (steps[-1] - steps[-2])
    return float(low), float(high)
