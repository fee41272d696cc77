"""Scores in a few ordered classes: the proportional-odds model, and whether specimens differ at all.

    P(score <= c_k) = F(theta_k - eta),   eta = x b,   F(t) = 1/(1 + exp(-t))

Symbols: c_k the scores that occur, low to high, theta_k thresholds between them, x design row, b effects, eta place on
the scale of the scores. A score says an order and no distance: a step from 1 to 2 need not be one from 3 to 4. The
effects have a normal prior about 0, wide against any real difference, so that specimens which all judges scored alike
have an answer with an interval and not an infinite one.

All judges of a piece see the same piece: their scores share what makes it better or worse than others of its step.
Scores of one piece therefore count less than as many of different pieces, each 1/(1 + (m - 1) rho) of a score.

Reference: McCullagh, Regression models for ordinal data, J. R. Stat. Soc. B 42 (1980) 109; Pratt, J. Am. Stat. Assoc.
76 (1981) 103 (the likelihood is concave, so that Newton's steps find the one maximum). Permutations within judges:
Lehmann, Nonparametrics (1975), 3.3. Weights of scores that share a piece: Kish, Survey Sampling (1965), 5.6.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import NormalDist

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.quantity import coverage_factor
from core.words import tr

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]

PRIOR_SD = 3.0  # odds of 20 to 1 between neighbours are one standard deviation: wider than any ladder's step
SHARED = 0.5  # rho: share of the scatter about a step's mean that all judges of a piece have in common; simulated
_STEPS = 200
_DONE = 1e-9
_DRAWS = 2000
_TAIL = 5.0  # degrees of freedom of the draws' t distribution: wider tails than what they are weighted to


@dataclass(frozen=True, slots=True)
class Place:
    """A mean score with its 95 % interval, which never leaves the scale, and its standard uncertainty."""

    score: float
    low: float
    high: float
    u: float


@dataclass(frozen=True, slots=True, eq=False)
class _Data:
    """Class (n,), design (n, p), weight (n,) of each score; the prior's sd; the last `added` scores are assumed."""

    place: Ints
    design: Floats
    weight: Floats
    prior_sd: float
    added: int


@dataclass(frozen=True, slots=True, eq=False)
class Ordinal:
    """A fit.

    Attributes:
        classes: (K,) scores that occur, rising.
        thresholds: (K - 1,) theta.
        effects: (p,) b.
        cov: (K - 1 + p, K - 1 + p) covariance of thresholds and effects.
        log_likelihood: without the prior of the effects.
        data: what was fitted.
    """

    classes: Floats
    thresholds: Floats
    effects: Floats
    cov: Floats
    log_likelihood: float
    data: _Data

    @property
    def tail(self) -> float:
        """Share of the draws beyond either end of an interval: that beyond Student's factor for scores less effects.

        With two scores a specimen 2.5 % at either end would be too short: simulated, 87 % of such intervals held the
        true mean score, and 93 to 98 % of these.
        """
        dof = max(float(self.data.weight.size - self.effects.size - self.data.added), 1.0)
        return NormalDist().cdf(-coverage_factor(dof))

    def mean_score(self, row: ArrayLike) -> float:
        """Return the mean score at a design row (p,)."""
        below = _logistic(self.thresholds - float(np.asarray(row, dtype=float) @ self.effects))
        return float(self.classes[-1] - np.diff(self.classes) @ below)


@dataclass(frozen=True, slots=True, eq=False)
class Draws:
    """Weighted draws (m,) of thresholds and effects: what else the scores and the prior allow."""

    fit: Ordinal
    thresholds: Floats
    effects: Floats
    weights: Floats

    def place(self, row: ArrayLike) -> Place:
        """Return the mean score at a design row (p,) with its 95 % interval."""
        eta = self.effects @ np.asarray(row, dtype=float)
        scores = self.fit.classes[-1] - _logistic(self.thresholds - eta[:, np.newaxis]) @ np.diff(self.fit.classes)
        order = np.argsort(scores)
        share = np.cumsum(self.weights[order])
        ends = np.searchsorted(share, [self.fit.tail, 1.0 - self.fit.tail]).clip(max=scores.size - 1)
        low, high = (float(score) for score in scores[order][ends])
        score = self.fit.mean_score(row)
        return Place(score, min(low, score), max(high, score), float(np.sqrt(self.weights @ (scores - score) ** 2)))

    def above(self, first: ArrayLike, second: ArrayLike) -> float:
        """Return how sure the second row is above the first."""
        difference = self.effects @ (np.asarray(second, dtype=float) - np.asarray(first, dtype=float))
        return float(np.sum(self.weights[difference > 0]))


def fit_proportional_odds(
    score: ArrayLike,
    design: ArrayLike,
    prior_sd: float = PRIOR_SD,
    scale: Sequence[float] | None = None,
    weight: ArrayLike | None = None,
) -> Ordinal:
    """Fit the proportional-odds model.

    Args:
        score: (n,) scores, at least two different ones unless the scale is given.
        design: (n, p) without a column of ones: the thresholds are the constant.
        prior_sd: standard deviation of the effects' prior; infinite for the maximum of the likelihood alone.
        scale: all scores there are; a specimen in the middle (a row of zeros) is then taken as scored once, in equal
            shares by each of them, so that a score nobody gave is not taken as impossible.
        weight: (n,) of each score, as `piece_weights` gives it; 1 for all when None.

    Raises:
        InputError: field `score`: not as many as rows, not finite, not on the scale, or all the same.
    """
    y, X = np.asarray(score, dtype=float), np.array(design, dtype=float, ndmin=2)
    if y.ndim != 1 or X.shape[0] != y.size or not np.all(np.isfinite(y)):
        raise InputError("score", tr("A score is missing or not a number; type 0, 1, 2, 3 or 4."))
    classes = np.unique(y if scale is None else np.asarray(scale, dtype=float))
    if classes.size < 2:
        raise InputError("score", tr("All scores are the same; nothing differs, or the judges did not look."))
    place = np.searchsorted(classes, y)
    if not np.all(classes[np.minimum(place, classes.size - 1)] == y):
        raise InputError("score", tr("A score lies between two of the scale; type 0, 1, 2, 3 or 4."))
    weight = np.ones(y.size) if weight is None else np.asarray(weight, dtype=float)
    if scale is not None:
        place = np.concatenate([place, np.arange(classes.size)])
        X = np.vstack([X, np.zeros((classes.size, X.shape[1]))])
        weight = np.concatenate([weight, np.full(classes.size, 1.0 / classes.size)])
    return _fitted(classes, _Data(place, X, weight, prior_sd, 0 if scale is None else classes.size))


def _fitted(classes: Floats, data: _Data) -> Ordinal:
    """Climb to the maximum by Newton's steps, halved where one goes too far."""
    place, X, weight, K = data.place, data.design, data.weight, classes.size
    upper, lower = _rows(place, X, K, 0), _rows(place, X, K, -1)
    share = np.cumsum(np.bincount(place, weight))[:-1] / weight.sum()
    at = np.concatenate([np.log(share / (1.0 - share)), np.zeros(X.shape[1])])
    pull = np.concatenate([np.zeros(K - 1), np.full(X.shape[1], 1.0 / data.prior_sd**2)])
    top, bottom = place == K - 1, place == 0
    value, gradient, curvature = _likelihood(at, upper, lower, top, bottom, weight)
    moved, steps = np.inf, 0
    while moved > _DONE * (1.0 + float(np.max(np.abs(at)))) and steps < _STEPS:
        gradient, curvature = gradient - pull * at, curvature + np.diag(pull)
        step, size = np.linalg.solve(curvature, gradient), 1.0
        goal = value - 0.5 * float(pull @ at**2) - 1e-12
        tried, found = at + step, _likelihood(at + step, upper, lower, top, bottom, weight)
        while found[0] - 0.5 * float(pull @ tried**2) < goal:
            size /= 2.0
            tried = at + size * step
            found = _likelihood(tried, upper, lower, top, bottom, weight)
        moved, steps = float(np.max(np.abs(tried - at))), steps + 1
        at, (value, gradient, curvature) = tried, found
    cov = np.asarray(np.linalg.inv(curvature + np.diag(pull)), dtype=float)
    return Ordinal(classes, at[: K - 1], at[K - 1 :], cov, value, data)


def piece_weights(piece: ArrayLike) -> Floats:
    """Return what each score counts, from which piece (n,) it is of.

    With rho = 0.5 simulated intervals of the mean score of a step held it in 93 to 99 % of cases, from no scatter at
    all between pieces to as much as between judges; without the weights in 86 to 96 %.
    """
    _, place, count = np.unique(np.asarray(piece), return_inverse=True, return_counts=True)
    return np.asarray(1.0 / (1.0 + (count[place] - 1.0) * SHARED))


def draw_around(fit: Ordinal, rng: np.random.Generator, draws: int = _DRAWS) -> Draws:
    """Return draws from what the scores and the prior leave possible.

    Reference: importance sampling from a t distribution about the mode; Gelman et al., Bayesian Data Analysis, 3rd ed.
    (2013), 10.4 and 13.3.
    """
    place, X, weight, prior_sd = fit.data.place, fit.data.design, fit.data.weight, fit.data.prior_sd
    K = fit.classes.size
    root = np.linalg.cholesky(fit.cov)
    z = rng.standard_normal((draws, root.shape[0]))
    stretch = np.sqrt(_TAIL / rng.chisquare(_TAIL, draws))
    at = np.concatenate([fit.thresholds, fit.effects]) + (z * stretch[:, np.newaxis]) @ root.T
    theta, b = at[:, : K - 1], at[:, K - 1 :]
    ends = np.column_stack([np.full(draws, -np.inf), theta, np.full(draws, np.inf)])
    eta = b @ X.T
    P = _logistic(ends[:, place + 1] - eta) - _logistic(ends[:, place] - eta)
    with np.errstate(divide="ignore", invalid="ignore"):
        log_weight = np.where(np.all(P > 0, axis=1), np.log(P) @ weight, -np.inf)
    log_weight -= 0.5 * np.sum(b**2, axis=1) / prior_sd**2
    log_weight += 0.5 * (_TAIL + root.shape[0]) * np.log1p(np.sum(z**2, axis=1) * stretch**2 / _TAIL)
    share = np.exp(log_weight - log_weight.max())
    return Draws(fit, theta, b, share / share.sum())


def difference_p(
    score: ArrayLike,
    specimen: ArrayLike,
    judge: ArrayLike,
    rng: np.random.Generator,
    draws: int,
    piece: ArrayLike | None = None,
) -> float:
    """Return how often chance alone makes specimens differ as much.

    Pieces are shuffled whole over the specimens they are of, with all their judges' scores. Where every specimen has
    one piece only that tells nothing, and the scores are shuffled within each judge: then it is known that the pieces
    differ, and not that another piece of the same specimen would be like it.

    Args:
        score: (n,) scores.
        specimen: (n,) which specimen, as integers from 0.
        judge: (n,) which judge, as integers from 0.
        rng: of the shuffles.
        draws: how many.
        piece: (n,) which piece of the specimen was scored; every score is of a piece of its own when None.
    """
    y, s, j = np.asarray(score, dtype=float), np.asarray(specimen, dtype=np.intp), np.asarray(judge, dtype=np.intp)
    rank = np.empty(y.size)
    for one in np.unique(j):
        rank[j == one] = _centred_ranks(y[j == one])
    member = (s[:, np.newaxis] == np.unique(s)[np.newaxis, :]).astype(float)
    if piece is not None:
        _, first, place = np.unique(np.asarray(piece), return_index=True, return_inverse=True)
        if first.size > member.shape[1]:
            sums, count = np.bincount(place, rank), np.bincount(place).astype(float)
            order = np.argsort(rng.random((draws, first.size)), axis=1)
            order[0] = np.arange(first.size)
            totals = _between(sums[order] @ member[first], count[order] @ member[first])
            return float(np.mean(totals >= totals[0] - 1e-9))
    seen = _between(rank[np.newaxis, :] @ member, member.sum(axis=0))[0]
    shuffled = np.tile(rank, (draws, 1))
    for one in np.unique(j):
        columns = np.flatnonzero(j == one)
        shuffled[:, columns] = rng.permuted(shuffled[:, columns], axis=1)
    as_far = int(np.count_nonzero(_between(shuffled @ member, member.sum(axis=0)) >= seen - 1e-9))
    return (1 + as_far) / (1 + draws)


def _between(total: Floats, count: Floats) -> Floats:
    """Return the sum over specimens of n times the square of the mean rank, from sums of ranks, row by row."""
    return np.asarray(np.sum(total**2 / count, axis=1))


def _centred_ranks(y: Floats) -> Floats:
    """Return mid-ranks less their mean."""
    order = np.sort(y)
    middle = 0.5 * (np.searchsorted(order, y, "left") + np.searchsorted(order, y, "right"))
    return np.asarray(middle - middle.mean())


def _rows(place: Ints, X: Floats, K: int, shift: int) -> Floats:
    """Return the rows that give theta - eta at the upper (shift 0) or lower (shift -1) end of each score's class."""
    at = place + shift
    rows = np.zeros((place.size, K - 1 + X.shape[1]))
    inside = np.flatnonzero((at >= 0) & (at < K - 1))
    rows[inside, at[inside]] = 1.0
    rows[inside, K - 1 :] = -X[inside]
    return rows


def _likelihood(
    at: Floats, upper: Floats, lower: Floats, top: NDArray[np.bool_], bottom: NDArray[np.bool_], weight: Floats
) -> tuple[float, Floats, Floats]:
    """Return log likelihood, gradient, and its negative second derivative; minus infinity where thresholds cross."""
    Fa, Fb = np.where(top, 1.0, _logistic(upper @ at)), np.where(bottom, 0.0, _logistic(lower @ at))
    P = Fa - Fb
    if not np.all(P > 0):
        return -np.inf, np.zeros(at.size), np.eye(at.size)
    ga, gb = Fa * (1.0 - Fa) / P, Fb * (1.0 - Fb) / P
    gradient = upper.T @ (weight * ga) - lower.T @ (weight * gb)
    haa, hbb = weight * (ga**2 - ga * (1.0 - 2.0 * Fa)), weight * (gb**2 + gb * (1.0 - 2.0 * Fb))
    mixed = upper.T @ (lower * (-weight * ga * gb)[:, np.newaxis])
    curvature = upper.T @ (upper * haa[:, np.newaxis]) + lower.T @ (lower * hbb[:, np.newaxis]) + mixed + mixed.T
    return float(weight @ np.log(P)), gradient, curvature


def _logistic(t: Floats) -> Floats:
    return np.asarray(1.0 / (1.0 + np.exp(-np.clip(t, -700.0, 700.0))))
