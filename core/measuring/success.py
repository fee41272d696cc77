"""From which step on specimens succeed: a logistic curve through successes and failures, and its 80 % point.

    P(x) = 1/(1 + exp(-(L + s (z - q))))       z = (x - x_m)/h,   L = ln(p/(1 - p)) at the wanted share p

Symbols: x step, x_m and h middle and half span of the steps, q the place where the share p succeeds, s > 0 slope, l log
likelihood, I information about constant and slope. Where all fail below a step and all succeed from it on, l alone
makes the curve infinitely steep; l + ln(det I)/2 does not. The interval of q holds every place whose best slope is at
most 3.84/2 (chi squared, one degree of freedom, 95 %) below the best of all.

Reference: Firth, Biometrika 80 (1993) 27 (the penalty); Heinze and Schemper, Stat. Med. 21 (2002) 2409 (its use for
separated data, intervals from the profile).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.words import tr

Floats = NDArray[np.float64]
Share = float  # of specimens that succeed, 0 to 1

WANTED_SHARE: Share = 0.8  # common practice, no source
_CHI_SQUARED = 3.841459  # 95 % point, one degree of freedom
_BEYOND = 2.0  # half spans past either end of the steps within which the place is sought
_PLACES = 601
_SLOPES = np.geomspace(0.5, 200.0, 81)  # per half span: from hardly rising to a jump between two of many steps


@dataclass(frozen=True, slots=True)
class Success:
    """The place from which on the wanted share succeeds, with its 95 % interval; an open end is infinite."""

    at: float
    low: float
    high: float
    share: Share


@finite_in("step", "share")
def fit_success(step: ArrayLike, success: ArrayLike, share: Share = WANTED_SHARE) -> Success:
    """Return from which step on a share of the specimens succeeds; more of it never does worse.

    Args:
        step: (n,) step of each specimen, two different ones or more.
        success: (n,) whether it succeeded.
        share: wanted, between 0 and 1.

    Raises:
        InputError: field `success`: not as many as steps, or all alike, so that no curve can be told; field `step`:
            all the same; field `share`.
    """
    if not 0.0 < share < 1.0:
        raise InputError("share", tr("A share of {share:g} is not between 0 and 1; type 0.8 for 80 %.", share=share))
    x, good = np.asarray(step, dtype=float), np.asarray(success, dtype=bool)
    if x.shape != good.shape or good.all() or not good.any():
        raise InputError("success", tr("All specimens succeed, or none: try steps where some fail and some do not."))
    middle, half = float((x.max() + x.min()) / 2), float((x.max() - x.min()) / 2)
    if half == 0:
        raise InputError("step", tr("All specimens have one step; try two steps at least."))
    z, place = np.unique((x - middle) / half, return_inverse=True)
    count, wins = np.bincount(place).astype(float), np.bincount(place, good).astype(float)
    q = np.linspace(-1 - _BEYOND, 1 + _BEYOND, _PLACES)
    best = _penalised(z, count, wins, q, math.log(share / (1 - share))).max(axis=1)
    inside = np.flatnonzero(best >= best.max() - _CHI_SQUARED / 2)
    at, low, high = middle + half * q[[int(np.argmax(best)), int(inside[0]), int(inside[-1])]]
    return Success(
        float(at),
        -math.inf if inside[0] == 0 else float(low),
        math.inf if inside[-1] == q.size - 1 else float(high),
        share,
    )


def _penalised(z: Floats, count: Floats, wins: Floats, q: Floats, logit: float) -> Floats:
    """Return l + ln(det I)/2 (places, slopes), from how many of each step there are and how many succeed."""
    eta = logit + _SLOPES[:, np.newaxis] * (z - q[:, np.newaxis, np.newaxis])
    log_p, log_q = -np.logaddexp(0.0, -eta), -np.logaddexp(0.0, eta)
    weight = count * np.exp(log_p + log_q)
    sums = [np.sum(weight * z**power, axis=2) for power in range(3)]
    det = np.maximum(sums[0] * sums[2] - sums[1] ** 2, 1e-300)
    return np.asarray(log_p @ wins + log_q @ (count - wins) + 0.5 * np.log(det))
