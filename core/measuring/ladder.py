"""Ladders: a setting changed step by step, scored blind or measured; the best steps, or what to try next.

Scored specimens give a mean score for each step (proportional odds). Steps that are not proved worse than the best one
make a plateau; the step to use is its middle. Where the least step is wanted it is the first one tried at which the
wanted share of specimens scores well enough, by a logistic curve. Measured values give a parabola; its turning point
has an interval by Fieller. An optimum at the end of what was tried is none: the ladder is extended first.

Symbols: x step, z = (x - x_m)/h with middle x_m and half span h, S = c0 + c1 z + c2 z^2, turning point z0 = -c1/(2 c2).

Reference: Hsu, Ann. Statist. 9 (1981) 1026 (which are not proved worse than the best); Fieller, J. R. Stat. Soc. B 16
(1954) 175. Scores 0 to 4, two judges, blind order: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.linefit import fit_linear
from core.measuring.ordinal import Draws, Place, difference_p
from core.measuring.reach import within_reach
from core.measuring.scores import DRAWS, FEWEST_STEPS, HIGHEST_SCORE, LOWEST_SCORE, checked_scores, draw_scores
from core.measuring.success import Success, fit_success
from core.quantity import Estimate, coverage_factor
from core.words import tr

Floats = NDArray[np.float64]

GOOD_SCORE = 3.0  # a success where the least step is wanted: one class off without fault (common practice, no source)
CHANCE = 0.05  # above it scores, or values, are taken as alike
_PROVED = 0.975
_FEWEST_VALUES = 5  # a parabola has three parameters, and its residuals must tell something


class Answer(StrEnum):
    """What a ladder says."""

    FOUND = "found"
    NO_DIFFERENCE = "no_difference"
    EXTEND_LOW = "extend_low"
    EXTEND_HIGH = "extend_high"
    ONLY_ENDS = "only_ends"
    NONE_GOOD = "none_good"
    UNSURE = "unsure"


class Choose(StrEnum):
    """Which step is used: the middle of a plateau, or the least one that does."""

    MIDDLE = "middle"
    LEAST = "least"


@dataclass(frozen=True, slots=True)
class ScoredStep:
    """One step: mean score, how many scores, and whether it is not proved worse than the best."""

    step: float
    place: Place
    count: int
    as_good: bool


@dataclass(frozen=True, slots=True, eq=False)
class Ladder:
    """The answer of a ladder.

    Attributes:
        answer: whether a step is found, and what to do where none is.
        chosen: the step to use; None unless found.
        low: lower end of the plateau, or of the interval of the turning point or of the place of success.
        high: upper end.
        p: how often chance alone makes the steps differ as much.
        scored: the steps in rising order; empty for measured values.
        curve: c0, c1, c2 about `middle` with half span `half`; None for scores.
        success: from where on the wanted share scores well enough; None unless the least step is wanted.
    """

    answer: Answer
    chosen: float | None
    low: float
    high: float
    p: float
    scored: tuple[ScoredStep, ...] = ()
    curve: tuple[float, float, float] | None = None
    middle: float = 0.0
    half: float = 1.0
    dof: float = math.inf
    success: Success | None = None

    def estimate(self, name: str, unit: str) -> Estimate | None:
        """Return the chosen step with its U; None where none is found.

        U of a turning point or of a place of success is its interval. Among scored steps it is half the plateau. It is
        never under half the way to the next step.
        """
        if self.chosen is None:
            return None
        U = max(self.high - self.chosen, self.chosen - self.low)
        if self.scored:
            steps = [s.step for s in self.scored]
            at = steps.index(self.chosen)
            gaps = [abs(steps[other] - self.chosen) for other in (at - 1, at + 1) if 0 <= other < len(steps)]
            lowest = max(self.low, steps[0] - gaps[0])  # an interval open below ends a step under the first one
            U = max(self.high - self.chosen, self.chosen - lowest, gaps[0] / 2)
        return Estimate(name, self.chosen, U / coverage_factor(self.dof), self.dof, unit)

    @within_reach
    def at(self, step: ArrayLike) -> Floats:
        """Return the parabola at steps."""
        c0, c1, c2 = self.curve or (math.nan, math.nan, math.nan)
        z = (np.asarray(step, dtype=float) - self.middle) / self.half
        return np.asarray(c0 + c1 * z + c2 * z * z)


def plan_steps(low: float, high: float, count: int, *, geometric: bool = False) -> Floats:
    """Return the steps of a ladder, rising, evenly spaced or in equal ratios.

    Raises:
        InputError: field `count` under three, `high` not above `low`, `low` not above zero for equal ratios.
    """
    if not FEWEST_STEPS <= count <= 20:
        raise InputError("count", tr("A ladder has 3 to 20 steps, not {count}.", count=count))
    if not -math.inf < low < high < math.inf:
        raise InputError("high", tr("The last step must lie above the first one, {low:g}; retype it.", low=low))
    if geometric and low <= 0:
        raise InputError("low", tr("Steps in equal ratios begin above 0; retype the first step."))
    return np.geomspace(low, high, count) if geometric else np.linspace(low, high, count)


def blind_order(count: int, rng: np.random.Generator) -> tuple[int, ...]:
    """Return in which order the specimens are lettered: shuffled, and never as they were planned or the reverse."""
    while True:
        order = tuple(int(place) for place in rng.permutation(count))
        if count < FEWEST_STEPS or list(order) not in (list(range(count)), list(range(count))[::-1]):
            return order


def fit_scores(
    step: Sequence[float],
    score: Sequence[float],
    judge: Sequence[str],
    rng: np.random.Generator,
    choose: Choose = Choose.MIDDLE,
    piece: Sequence[str] | None = None,
) -> Ladder:
    """Return what scores say about the steps.

    Args:
        step: (n,) the step of each scored specimen.
        score: (n,) 0 (useless) to 4 (without fault).
        judge: (n,) who scored.
        rng: of the shuffles that tell chance.
        choose: which step is used.
        piece: (n,) the piece each score is of: the scores of one piece are no independent ones; None: all others.

    Raises:
        InputError: field `score`, `step` or `judge`, with the row where it is one.
    """
    x, y = checked_scores(step, score, judge)
    steps, place = np.unique(x, return_inverse=True)
    names, who = np.unique(np.asarray(judge), return_inverse=True)
    if np.unique(y).size < 2:
        even = Place(float(y[0]), LOWEST_SCORE, HIGHEST_SCORE, 0.0)
        same = tuple(ScoredStep(float(s), even, int(np.sum(place == k)), True) for k, s in enumerate(steps))
        return Ladder(Answer.NO_DIFFERENCE, None, float(steps[0]), float(steps[-1]), 1.0, same)
    scored = _scored(draw_scores(y, place, who, rng, piece), steps, np.bincount(place), names.size - 1)
    p = difference_p(y, place, who, rng, DRAWS, piece)
    return _least(scored, x, y, p) if choose is Choose.LEAST else _answer(scored, p)


def _scored(draws: Draws, steps: Floats, count: NDArray[np.intp], eyes: int) -> tuple[ScoredStep, ...]:
    rows = np.column_stack([np.eye(steps.size), np.zeros((steps.size, eyes))])
    best = rows[int(np.argmax(draws.fit.effects[: steps.size]))]
    return tuple(
        ScoredStep(float(steps[k]), draws.place(row), int(count[k]), draws.above(row, best) < _PROVED)
        for k, row in enumerate(rows)
    )


def _answer(scored: tuple[ScoredStep, ...], p: float) -> Ladder:
    first, best, last = _plateau(scored)
    low, high = scored[first].step, scored[last].step
    ends = (best == 0, best == len(scored) - 1)
    if p > CHANCE:
        return Ladder(Answer.NO_DIFFERENCE, None, scored[0].step, scored[-1].step, p, scored)
    if any(ends):
        return Ladder(Answer.EXTEND_LOW if ends[0] else Answer.EXTEND_HIGH, None, low, high, p, scored)
    return Ladder(Answer.FOUND, _nearest(scored, (low + high) / 2), low, high, p, scored)


def _plateau(scored: tuple[ScoredStep, ...]) -> tuple[int, int, int]:
    """Return the first, the best and the last step of the plateau about the best one."""
    best = max(range(len(scored)), key=lambda number: scored[number].place.score)
    first = last = best
    while first > 0 and scored[first - 1].as_good:
        first -= 1
    while last < len(scored) - 1 and scored[last + 1].as_good:
        last += 1
    return first, best, last


def _least(scored: tuple[ScoredStep, ...], x: Floats, y: Floats, p: float) -> Ladder:
    """Return the least step tried from which on the wanted share succeeds; steps above the plateau do harm."""
    _, _, last = _plateau(scored)
    steps = [s.step for s in scored]
    end, is_last = steps[last], last == len(scored) - 1
    if p > CHANCE:
        return Ladder(Answer.NO_DIFFERENCE, None, steps[0], steps[-1], p, scored)
    good = y[x <= end] >= GOOD_SCORE
    if good.all():
        return Ladder(Answer.FOUND, steps[0], steps[0], steps[0], p, scored)
    if last == 0:
        return Ladder(Answer.EXTEND_LOW, None, steps[0], steps[0], p, scored)
    if not good.any():
        return Ladder(Answer.EXTEND_HIGH if is_last else Answer.NONE_GOOD, None, end, end, p, scored)
    found = fit_success(x[x <= end], good)
    known = {"p": p, "scored": scored, "success": found}
    if found.at > end:
        answer = Answer.EXTEND_HIGH if is_last else Answer.NONE_GOOD
        return Ladder(answer, None, found.low, found.high, **known)  # type: ignore[arg-type]
    if found.high > end:
        return Ladder(Answer.UNSURE, None, found.low, found.high, **known)  # type: ignore[arg-type]
    chosen = next(step for step in steps if step >= found.at)
    return Ladder(Answer.FOUND, chosen, found.low, found.high, **known)  # type: ignore[arg-type]


def _nearest(scored: tuple[ScoredStep, ...], step: float) -> float:
    """Return the step itself that was tried nearest to a place, the better one of two."""
    return min(scored, key=lambda s: (round(abs(s.step - step), 9), -s.place.score)).step


@within_reach
def fit_values(step: ArrayLike, value: ArrayLike, *, least: bool = True, u_ratio: ArrayLike | None = None) -> Ladder:
    """Return where a parabola through measured values turns.

    Args:
        step: (n,) steps, n >= 5, three different ones or more.
        value: (n,) one measured value for each.
        least: whether the least value is wanted, else the greatest.
        u_ratio: (n,) uncertainty of each value against the others; the same for all when None.

    Raises:
        InputError: field `step` for too few, `value` for values that are not finite, `u_ratio` for ones not above zero.
    """
    x, y = np.asarray(step, dtype=float), np.asarray(value, dtype=float)
    if x.shape != y.shape or not (np.all(np.isfinite(x)) and np.all(np.isfinite(y))):
        raise InputError("value", tr("A value is missing or not a number; type it or leave the row empty."))
    if x.size < _FEWEST_VALUES or np.unique(x).size < FEWEST_STEPS:
        raise InputError("step", tr("A parabola needs 5 values at 3 steps or more; print and read more."))
    u = np.ones_like(y) if u_ratio is None else np.asarray(u_ratio, dtype=float)
    if u.shape != y.shape or not np.all((u > 0) & np.isfinite(u)):
        raise InputError("u_ratio", tr("Each value needs an uncertainty above zero; type it."))
    middle, half = float((x.max() + x.min()) / 2), float((x.max() - x.min()) / 2)
    z = (x - middle) / half
    fit = fit_linear(np.column_stack([np.ones_like(z), z, z * z]), y, None if u_ratio is None else 1.0 / u**2)
    w = fit.weights
    flat = float(np.sum(w * (y - np.sum(w * y) / np.sum(w)) ** 2))
    variance = max(fit.ssr / fit.dof, 1e-24 * flat, 1e-300)
    p = _f_tail((flat - fit.ssr) / 2 / variance, fit.dof)
    c = (float(fit.coef[0]), float(fit.coef[1]), float(fit.coef[2]))
    low, high = _turning(c[1], c[2], fit.unscaled_cov[1:, 1:] * variance, coverage_factor(fit.dof), least)
    known = {"p": p, "curve": c, "middle": middle, "half": half, "dof": float(fit.dof)}
    at_low, at_high = middle + half * low, middle + half * high
    if p > CHANCE:
        return Ladder(Answer.NO_DIFFERENCE, None, float(x.min()), float(x.max()), **known)  # type: ignore[arg-type]
    if not (math.isfinite(low) and math.isfinite(high)):
        return Ladder(_downhill(c, least), None, at_low, at_high, **known)  # type: ignore[arg-type]
    turn = -c[1] / (2 * c[2])
    if abs(turn) > 1:
        answer = Answer.EXTEND_HIGH if turn > 0 else Answer.EXTEND_LOW
        return Ladder(answer, None, at_low, at_high, **known)  # type: ignore[arg-type]
    return Ladder(Answer.FOUND, middle + half * turn, at_low, at_high, **known)  # type: ignore[arg-type]


def _turning(c1: float, c2: float, cov: Floats, k: float, least: bool) -> tuple[float, float]:
    """Return the interval of z0 = -c1/(2 c2) by Fieller; infinite where no bend the right way is proved."""
    sign = 1.0 if least else -1.0
    if sign * c2 <= k * math.sqrt(cov[1, 1]):
        return -math.inf, math.inf
    # all z with (c1 + 2 c2 z)^2 <= k^2 var(c1 + 2 c2 z)
    a = 4 * (c2 * c2 - k * k * cov[1, 1])
    b = 4 * (c1 * c2 - k * k * cov[0, 1])
    c = c1 * c1 - k * k * cov[0, 0]
    root = math.sqrt(max(b * b - 4 * a * c, 0.0))
    return (-b - root) / (2 * a), (-b + root) / (2 * a)


def _downhill(c: tuple[float, float, float], least: bool) -> Answer:
    """Return where the better end is, or that both ends are better than the middle."""
    sign = 1.0 if least else -1.0
    ends, slope = sign * c[2], sign * c[1]
    if abs(slope) < abs(ends) and ends < 0:
        return Answer.ONLY_ENDS
    return Answer.EXTEND_LOW if slope > 0 else Answer.EXTEND_HIGH


def _f_tail(f: float, below: int) -> float:
    from scipy.special import fdtrc

    return float(fdtrc(2, below, max(f, 0.0)))
