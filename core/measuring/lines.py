"""Many straight lines in one call, each through readings of its own: the closed form, and the only one of the house.

    W = sum w,  x0 = sum(w x)/W,  y0 = sum(w y)/W,  S_xx = sum(w (x - x0)^2)
    b = sum(w (x - x0)(y - y0))/S_xx,  u^2(y0) = 1/W,  u^2(b) = 1/S_xx,  u(y0, b) = 0

Symbols: as in `core.measuring.straightline`, which asks more of one line; w = 1/u_y^2 weight of a reading. Taken about
the means, so that no digits are lost far from the origin. The readings of one line follow one another; those of many
lines are added up in one go, and nothing is done line by line.

Reference: ISO/TS 28037:2010 6.2.1 (steps 1 to 7) and annex E (scatter unknown).
"""

from __future__ import annotations

from dataclasses import dataclass, fields
from itertools import pairwise

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.reach import finite_out, within_reach
from core.words import Words, tr

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

_AT_ONCE = 16_384  # readings in one go: what is worked out on the way stays in the processor's cache
SAME = 1e-12  # positions whose spread is below this share of the largest are one position
NOT_FINITE = tr("this is not a finite number; remove or retype it.")
NOT_ABOVE_ZERO = tr("the uncertainty of a reading must be above zero; give its real size.")


@dataclass(frozen=True, slots=True, eq=False)
class Lines:
    """Fitted lines y = a + b*x, in ascending order of their numbers; (k,) arrays.

    Attributes:
        x0: where value and slope do not correlate (the weighted mean of x).
        y0: value of each line there, with standard uncertainty `u_y0`.
        slope: b, with standard uncertainty `u_slope`.
        s: standard deviation of one reading about each line, None where the uncertainties of the readings were given.
        chi2: weighted sum of squared residuals; the sum of their squares where `s` is estimated from it.
        spare: readings less two.
    """

    x0: Floats
    y0: Floats
    slope: Floats
    u_y0: Floats
    u_slope: Floats
    s: Floats | None
    chi2: Floats
    spare: Ints

    @within_reach
    def value(self, origin: float = 0.0) -> Floats:
        """Return the value (k,) of each line at `origin`; at 0 the intercepts.

        Raises:
            InputError: field `origin`, out of reach.
        """
        return np.asarray(self.y0 + self.slope * (origin - self.x0))

    def covariance(self, origin: float = 0.0) -> Floats:
        """Return the (k, 2, 2) covariances of value at `origin` and slope."""
        return line_covariance(origin - self.x0, self.u_y0, self.u_slope)


@dataclass(frozen=True, slots=True, eq=False)
class Sums:
    """What the closed form gives of each line, (k,), before anything is said of scatter."""

    x0: Floats
    y0: Floats
    slope: Floats
    weight: Floats
    s_xx: Floats
    chi2: Floats


@within_reach
def line_covariance(lever: ArrayLike, u_y0: ArrayLike, u_slope: ArrayLike) -> Floats:
    """Return the (..., 2, 2) covariance of value and slope of a line at this distance from its x0."""
    both = np.asarray(lever) * np.square(u_slope)
    value = np.square(u_y0) + lever * both
    found = np.empty((*np.shape(both), 2, 2))
    found[..., 0, 0], found[..., 1, 1] = value, np.square(u_slope)
    found[..., 0, 1] = found[..., 1, 0] = both
    return found


@within_reach
def fit_lines(of_line: ArrayLike, x: ArrayLike, y: ArrayLike, u_y: ArrayLike | None = None) -> Lines:
    """Fit a straight line to the readings of each number.

    Args:
        of_line: (N,) whole numbers, which line each reading belongs to; quickest where they ascend.
        x: (N,) positions, at least two different ones on each line.
        y: (N,) readings.
        u_y: standard uncertainties of the readings, (N,) or one for all; None estimates `s` of each line from its
            scatter.

    Raises:
        InputError: field `x`, `y` or `u_y`, with the row where it is one, for values that are not finite, columns of
            different length, a line whose positions are all the same, or one of two readings without uncertainties.
    """
    number, x_, y_ = np.asarray(of_line), np.asarray(x, dtype=float), np.asarray(y, dtype=float)
    if x_.ndim != 1 or not number.shape == x_.shape == y_.shape or x_.size == 0:
        raise InputError("x", tr("The positions and the readings differ in number; check the columns."))
    u = checked_column("u_y", 1.0 if u_y is None else u_y, x_)
    for field, values in (("x", x_), ("y", y_), ("u_y", u)):
        refuse_rows(field, ~np.isfinite(values), NOT_FINITE)
    refuse_rows("u_y", u <= 0, NOT_ABOVE_ZERO)
    if np.any(number[1:] < number[:-1]):
        order = np.argsort(number, kind="stable")
        number, x_, y_, u = number[order], x_[order], y_[order], u[order]
    first = np.flatnonzero(np.append(True, number[1:] != number[:-1]))
    count = np.diff(np.append(first, x_.size))
    _check_lines(first, count, x_, scatter=u_y is None)
    found = _portion_by_portion(first, count, x_, y_, u)
    spare = count - 2
    s = np.sqrt(found.chi2 / spare) if u_y is None else None
    scale = 1.0 if s is None else s
    u_y0, u_slope = scale / np.sqrt(found.weight), scale / np.sqrt(found.s_xx)
    return Lines(found.x0, found.y0, found.slope, u_y0, u_slope, s, found.chi2, spare)


def _portion_by_portion(first: Ints, count: Ints, x: Floats, y: Floats, u_y: Floats) -> Sums:
    cuts = np.searchsorted(first, np.arange(0, x.size, _AT_ONCE))
    found = []
    for low, high in pairwise(np.unique(np.append(cuts, first.size)).tolist()):
        begin, end = first[low], first[high - 1] + count[high - 1]
        w = 1.0 / np.square(u_y[begin:end])
        found.append(add_up(first[low:high] - begin, count[low:high], x[begin:end], y[begin:end], w))
    return Sums(*(np.concatenate([getattr(sums, field.name) for sums in found]) for field in fields(Sums)))


@finite_out("y")
def add_up(first: Ints, count: Ints, x: Floats, y: Floats, w: Floats) -> Sums:
    """Return the closed form of lines whose readings follow one another; what goes in is not checked.

    Args:
        first: (k,) place of the first reading of each line.
        count: (k,) how many it has.
        x: (N,) positions.
        y: (N,) readings.
        w: (N,) weights above zero.
    """
    total = np.add.reduceat
    W = total(w, first)
    x0, y0 = total(w * x, first) / W, total(w * y, first) / W
    dx, dy = x - np.repeat(x0, count), y - np.repeat(y0, count)
    wdx = w * dx
    s_xx = total(wdx * dx, first)
    slope = total(wdx * dy, first) / s_xx
    dx *= np.repeat(slope, count)
    dy -= dx  # the residuals
    dy *= dy
    dy *= w
    return Sums(x0, y0, slope, W, s_xx, total(dy, first))


def _check_lines(first: Ints, count: Ints, x: Floats, *, scatter: bool) -> None:
    low, high = np.minimum.reduceat(x, first), np.maximum.reduceat(x, first)
    same = high - low <= SAME * np.maximum(np.abs(low), np.abs(high))
    few = count < 3 if scatter else np.zeros(count.size, dtype=bool)
    for field, bad, why in (
        ("x", same, tr("all its positions are the same; measure at two different ones at least.")),
        ("y", few, tr("two readings always lie on a line; add a third, or give the uncertainty of each.")),
    ):
        if np.any(bad):
            raise InputError(field, tr("Line {number}: {why}", number=int(np.argmax(bad)) + 1, why=why))


def checked_column(field: str, values: ArrayLike, like: Floats) -> Floats:
    """Return uncertainties as one for each reading.

    Raises:
        InputError: this field, where they are neither one nor as many as the readings.
    """
    column = np.asarray(values, dtype=float)
    if column.ndim and column.shape != like.shape:
        raise InputError(
            field, tr("The uncertainties and the readings differ in number; give one for each or one for all.")
        )
    return np.broadcast_to(column, like.shape)


def refuse_rows(field: str, bad: NDArray[np.bool_], why: Words) -> None:
    """Raise InputError at the first bad row, if there is one."""
    if bad.any():
        row = int(np.argmax(bad))
        raise InputError(field, tr("Row {row}: {why}", row=row + 1, why=why), row)
