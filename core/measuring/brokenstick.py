"""A level that breaks off into a slope: where the knee is, how sure that is, or that none is seen.

    y = a + b*max(x - c, 0) + noise

Symbols: a level, b slope beyond the knee, c place of the knee, n readings, SSR sum of squared residuals. For a given c
the model is linear; c is found by a search over the intervals between readings. A value of c (or of the place where
the level has changed by d) lies inside the 95 % interval where its best SSR stays below SSR_min*(1 + F/(n - p)), F the
quantile of the F distribution with 1 and n - p degrees of freedom.

Reference: Seber and Wild, Nonlinear Regression (1989) 5.2 (profile likelihood) and 9.3 (two-phase lines).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.quantity import LEVEL, coverage_factor
from core.words import tr

Floats = NDArray[np.float64]

FEWEST = 5
_STEPS = 300  # of the search grid for the knee
_FINER = 2  # times that the grid closes in: exact readings need a fine one, or SSR between its places looks too large
_ASIDE = 4.0  # times the limit up to which places stay in the finer grid
_SURE = 0.99  # level at which a knee must improve on a plain level to count as seen


@dataclass(frozen=True, slots=True)
class Knee:
    """A place on x with its interval; an end is infinite where the readings do not bound it."""

    at: float
    low: float
    high: float


@dataclass(frozen=True, slots=True, eq=False)
class BrokenStick:
    """The fit: level, slope, knee, place of the change, residual sd with its dof; `seen` tells a knee from none."""

    level: float
    u_level: float
    slope: float
    knee: Knee
    changed: Knee
    change: float
    sd: float
    dof: int
    seen: bool

    def mean(self, x: ArrayLike) -> Floats:
        """Return the fitted line at x; the level alone where no knee is seen."""
        beyond = np.maximum(np.asarray(x, dtype=float) - self.knee.at, 0.0)
        return np.asarray(self.level + (self.slope * beyond if self.seen else 0.0 * beyond))


@within_reach
@finite_in("level")
def fit_broken_stick(x: ArrayLike, y: ArrayLike, change: float, level: float | None = None) -> BrokenStick:
    """Fit a level that breaks off into a slope.

    Args:
        x: (n,) places, n >= 5, at least 4 different ones.
        y: (n,) readings.
        change: change of y (with its sign) whose place is wanted beside the knee.
        level: a where it is known, None where it is fitted.

    Raises:
        InputError: field `x` or `y`, for too few readings or values that are not finite; `change` where it is zero.
    """
    xs, ys = _checked(x, y, change)
    dof = xs.size - (2 if level is not None else 3)
    profile = _profile(xs, ys, _knees(xs), level)
    for _ in range(_FINER):
        closer = _closer(profile.knees, profile.ssr, dof, _STEPS)
        inner = xs[(xs > closer[0]) & (xs < closer[-1])]
        profile = _profile(xs, ys, np.unique(np.concatenate([closer, inner])), level)
    knees, best = profile.knees, int(np.argmin(profile.ssr))
    least = max(float(profile.ssr[best]), 1e-30)
    limit = _limit(least, dof)
    flat = float(np.sum((ys - (ys.mean() if level is None else level)) ** 2))
    right_way = bool(np.sign(profile.slope[best]) == np.sign(change))
    seen = right_way and (flat - least) / 2 / (least / dof) > _f_quantile(2, dof, _SURE)
    sd = float(np.sqrt(least / dof))
    before = max(1, int(np.sum(xs <= knees[best])))
    return BrokenStick(
        level=float(profile.level[best]),
        u_level=0.0 if level is not None else float(sd / np.sqrt(before)),
        slope=float(profile.slope[best]),
        knee=_interval(knees, profile.ssr, limit),
        changed=_changed(profile, change, xs, dof) if seen else Knee(np.inf, -np.inf, np.inf),
        change=change,
        sd=sd,
        dof=dof,
        seen=seen,
    )


@within_reach
def stick_band(x: ArrayLike, y: ArrayLike, stick: BrokenStick, places: ArrayLike) -> tuple[Floats, Floats]:
    """Return the ends of the 95 % interval of the line at places (k,): the profile likelihood over all knees.

    Args:
        x: (n,) places the stick was fitted to.
        y: (n,) readings it was fitted to, with its level fitted.
        stick: the fit.
        places: (k,) where the band is wanted.
    """
    xs, ys, at = (np.asarray(v, dtype=float) for v in (x, y, places))
    if not stick.seen:
        half = coverage_factor(xs.size - 1) * float(np.std(ys, ddof=1)) / np.sqrt(xs.size)
        return np.full(at.shape, ys.mean() - half), np.full(at.shape, ys.mean() + half)
    limit = stick.sd**2 * (stick.dof + _f_quantile(1, stick.dof, LEVEL))
    knees = _knees(xs)
    profile = _profile(xs, ys, knees, None)
    limit = max(limit, float(profile.ssr.min()))  # readings on the stick itself: rounding is all that is left
    inside = profile.ssr <= limit
    middle = np.maximum(xs[np.newaxis, :] - knees[inside, np.newaxis], 0.0).mean(axis=1)[:, np.newaxis]
    off = np.maximum(at[np.newaxis, :] - knees[inside, np.newaxis], 0.0) - middle
    mean = ys.mean() + profile.slope[inside, np.newaxis] * off
    spread = 1.0 / xs.size + off**2 / profile.stiffness[inside, np.newaxis]
    half_widths = np.sqrt((limit - profile.ssr[inside])[:, np.newaxis] * spread)
    return np.min(mean - half_widths, axis=0), np.max(mean + half_widths, axis=0)


def _knees(x: Floats) -> Floats:
    return np.unique(np.concatenate([np.linspace(x.min(), x.max(), _STEPS), x]))[:-1]


def _closer(places: Floats, ssr: Floats, dof: int, steps: int) -> Floats:
    """Return a finer grid over the places that may lie inside the interval, a step more on either side."""
    near = np.flatnonzero(ssr <= _ASIDE * _limit(max(float(ssr.min()), 1e-30), dof))
    low, high = places[max(near[0] - 1, 0)], places[min(near[-1] + 1, places.size - 1)]
    return np.linspace(low, high, steps)


def _limit(least: float, dof: int) -> float:
    return least * (1.0 + _f_quantile(1, dof, LEVEL) / dof)


def _checked(x: ArrayLike, y: ArrayLike, change: float) -> tuple[Floats, Floats]:
    xs, ys = np.asarray(x, dtype=float), np.asarray(y, dtype=float)
    if xs.ndim != 1 or xs.shape != ys.shape or not (np.all(np.isfinite(xs)) and np.all(np.isfinite(ys))):
        raise InputError("y", tr("A reading is missing or not a finite number; remove or retype it."))
    if xs.size < FEWEST or np.unique(xs).size < FEWEST - 1:
        raise InputError("x", tr("A knee is looked for in 5 readings at 4 places or more; take more."))
    if change == 0 or not np.isfinite(change):
        raise InputError("change", tr("The change that is looked for must not be zero."))
    return xs, ys


@dataclass(frozen=True, slots=True, eq=False)
class _Profile:
    """For each knee (k,): best level and slope, their SSR, and how fast SSR grows with the square of another slope."""

    knees: Floats
    ssr: Floats
    level: Floats
    slope: Floats
    stiffness: Floats


def _profile(x: Floats, y: Floats, knees: Floats, level: float | None) -> _Profile:
    h = np.maximum(x[np.newaxis, :] - knees[:, np.newaxis], 0.0)
    middle = h.mean(axis=1, keepdims=True) if level is None else np.zeros((knees.size, 1))
    base = y.mean() if level is None else level
    centred = h - middle
    stiffness = np.maximum(np.sum(centred**2, axis=1), 1e-300)
    slope = np.sum(centred * (y - base), axis=1) / stiffness  # a product of so few is quicker without threads
    a = base - slope * middle[:, 0]
    rest = y[np.newaxis, :] - a[:, np.newaxis] - slope[:, np.newaxis] * h
    return _Profile(knees, np.sum(rest**2, axis=1), a, slope, stiffness)


def _changed(profile: _Profile, change: float, x: Floats, dof: int) -> Knee:
    """Find where the line has changed by `change`, at first roughly, then closer."""
    first, last = float(x.min()), float(x.max())
    places = np.linspace(first, 2 * last - first, _STEPS)[1:]
    for _ in range(_FINER):
        places = _closer(places, _changed_ssr(profile, change, places, last - first), dof, _STEPS)
    limit = _limit(max(float(profile.ssr.min()), 1e-30), dof)
    return _interval(places, _changed_ssr(profile, change, places, last - first), limit)


def _changed_ssr(profile: _Profile, change: float, places: Floats, span: float) -> Floats:
    """Return the least SSR of a line changed by `change` at each place; its slope is then change/(place - knee)."""
    ssr = places[:, np.newaxis] - profile.knees[np.newaxis, :]  # the run; all in one array, which is what takes time
    ssr[ssr <= 0] = 1e-12 * span  # a knee beyond the place would need an endless slope
    np.divide(change, ssr, out=ssr)
    ssr -= profile.slope
    ssr *= ssr
    ssr *= profile.stiffness
    ssr += profile.ssr
    return np.asarray(np.min(ssr, axis=1))


def _interval(places: Floats, ssr: Floats, limit: float) -> Knee:
    """Return the best place and where SSR crosses the limit on either side, infinite where it does not."""
    inside = np.flatnonzero(ssr <= limit)
    best = int(np.argmin(ssr))
    if inside.size == 0:
        return Knee(float(places[best]), float(places[best]), float(places[best]))
    return Knee(
        float(places[best]),
        _crossing(places, ssr, limit, int(inside[0]), -1),
        _crossing(places, ssr, limit, int(inside[-1]), +1),
    )


def _crossing(places: Floats, ssr: Floats, limit: float, inner: int, step: int) -> float:
    outer = inner + step
    if not 0 <= outer < places.size:
        return step * np.inf
    share = (limit - ssr[inner]) / (ssr[outer] - ssr[inner])
    return float(places[inner] + share * (places[outer] - places[inner]))


def _f_quantile(above: int, below: int, level: float) -> float:
    from scipy.special import fdtri

    return float(fdtri(above, below, level))
