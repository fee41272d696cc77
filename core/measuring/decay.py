"""A reading that settles: y = y_end + A*exp(-t/tau), with the interval of tau or the answer that it is not bounded.

Symbols: t time since the start, y reading, y_end where it goes to, A what is still missing at t = 0, tau time constant,
n readings, SSR sum of squared residuals. For a given tau the model is a straight line in exp(-t/tau); tau is found by a
search. A value of tau lies inside the 95 % interval where its best SSR stays below SSR_min*(1 + F/(n - 3)), F the
quantile of the F distribution with 1 and n - 3 degrees of freedom.

Reference: Seber and Wild, Nonlinear Regression (1989) 5.2 (profile likelihood) and 5.10 (separable models).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.reach import finite_out, within_reach
from core.quantity import LEVEL, coverage_factor
from core.words import tr

Floats = NDArray[np.float64]

FEWEST = 6
_STEPS = 2000  # of the search grid for tau, evenly spaced in its logarithm
_WIDEST = 30.0  # spans of the readings: a longer tau cannot be told from a straight line
_SURE = 0.99  # level at which a decay must improve on a plain level to count as seen


@dataclass(frozen=True, slots=True)
class Decay:
    """A fitted decay.

    Attributes:
        tau: time constant; `low` and `high` bound its 95 % interval, 0 and infinite where the readings do not.
        end: y_end. start: A.
        sd: standard deviation of one reading about the curve, with `dof` degrees of freedom.
        seen: whether the readings tell a decay from a plain level.
    """

    tau: float
    low: float
    high: float
    end: float
    start: float
    sd: float
    dof: int
    seen: bool

    @finite_out("t")
    def mean(self, t: ArrayLike) -> Floats:
        """Return the fitted curve at t."""
        return np.asarray(self.end + self.start * np.exp(-np.asarray(t, dtype=float) / self.tau))


@within_reach
def fit_decay(t: ArrayLike, y: ArrayLike) -> Decay:
    """Fit a decay.

    Args:
        t: (n,) times, n >= 6, at least 5 different ones, in any order.
        y: (n,) readings.

    Raises:
        InputError: field `t` for too few readings, `y` for values that are not finite.
    """
    ts, ys = _checked(t, y)
    gaps = np.diff(np.unique(ts))
    span = float(np.ptp(ts))
    taus = np.geomspace(float(gaps.min()) / 5.0, _WIDEST * span, _STEPS)
    shape = np.exp(-(ts - ts.min())[np.newaxis, :] / taus[:, np.newaxis])
    centred = shape - shape.mean(axis=1, keepdims=True)
    off = ys - ys.mean()
    slope = centred @ off / np.sum(centred**2, axis=1)
    ssr = np.sum((off[np.newaxis, :] - slope[:, np.newaxis] * centred) ** 2, axis=1)
    best = int(np.argmin(ssr))
    dof, flat = ts.size - 3, float(np.sum(off**2))
    least = max(float(ssr[best]), 1e-24 * flat, 1e-300)
    low, high = _ends(taus, ssr, least * (1.0 + coverage_factor(dof, LEVEL) ** 2 / dof))
    return Decay(
        tau=float(taus[best]),
        low=low,
        high=high,
        end=float(ys.mean() - slope[best] * shape[best].mean()),
        start=float(slope[best] * math.exp(float(ts.min()) / taus[best])),
        sd=math.sqrt(least / dof),
        dof=dof,
        seen=(flat - least) / 2 / (least / dof) > _f_quantile(2, dof),
    )


def _checked(t: ArrayLike, y: ArrayLike) -> tuple[Floats, Floats]:
    ts, ys = np.asarray(t, dtype=float), np.asarray(y, dtype=float)
    if ts.ndim != 1 or ts.shape != ys.shape or not (np.all(np.isfinite(ts)) and np.all(np.isfinite(ys))):
        raise InputError("y", tr("A reading is missing or not a finite number; remove or retype it."))
    if ts.size < FEWEST or np.unique(ts).size < FEWEST - 1:
        raise InputError(
            "t", tr("A drift is fitted to {fewest} readings at different times or more; go on reading.", fewest=FEWEST)
        )
    return ts, ys


def _ends(taus: Floats, ssr: Floats, limit: float) -> tuple[float, float]:
    """Return where the profile crosses the limit on either side, 0 and infinite where it does not."""
    inside = np.flatnonzero(ssr <= limit)
    first, last = (int(inside[0]), int(inside[-1])) if inside.size else (int(np.argmin(ssr)),) * 2
    low = 0.0 if first == 0 else float(taus[first])
    return low, math.inf if last == taus.size - 1 else float(taus[last])


def _f_quantile(above: int, below: int) -> float:
    from scipy.special import fdtri

    return float(fdtri(above, below, _SURE))
