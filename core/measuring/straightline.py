"""A straight line through readings, and what is asked of it afterwards: bands, forward and inverse use.

Symbols: y = a + b*x, x0 weighted mean of x, y0 value of the line there. About x0 value and slope do not correlate, so a
line is kept as x0, y0, b, u(y0), u(b); every other origin follows from these without loss, whatever the units.

Reference: ISO/TS 28037:2010 clauses 6 (uncertainty in y), 7 (in x and y), 11 (forward and inverse use) and annex E
(scatter unknown); JCGM 100:2008 H.3; Natrella, Experimental Statistics, NBS Handbook 91 (1963), 5-4.1.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.lines import (
    NOT_ABOVE_ZERO,
    NOT_FINITE,
    SAME,
    Sums,
    add_up,
    checked_column,
    line_covariance,
    refuse_rows,
)
from core.measuring.reach import refuse_unlike, within_reach
from core.quantity import LEVEL, coverage_factor
from core.words import tr

Floats = NDArray[np.float64]

_MOST_STEPS = 100  # ISO/TS 28037 example 3 needs six
_BELOW_ZERO = tr("the uncertainty of a position cannot be below zero; give its real size.")


@dataclass(frozen=True, slots=True)
class Line:
    """A fitted straight line y = a + b*x.

    Attributes:
        x0: where value and slope do not correlate (the weighted mean of x).
        y0: value of the line at x0, with standard uncertainty `u_y0`.
        slope: b, with standard uncertainty `u_slope`.
        s: standard deviation of one reading about the line, None where the uncertainties of the readings were given.
        chi2: weighted sum of squared residuals, None where `s` is estimated from it.
        spare: readings less two, the degrees of freedom of `s` or `chi2`.
    """

    x0: float
    y0: float
    slope: float
    u_y0: float
    u_slope: float
    s: float | None
    chi2: float | None
    spare: int

    @property
    def dof(self) -> float:
        """Degrees of freedom of the uncertainties: infinite where they follow from given ones."""
        return math.inf if self.s is None else float(self.spare)

    @property
    def intercept(self) -> float:
        """Value a of the line at x = 0."""
        return self.y0 - self.slope * self.x0

    def covariance(self, origin: float = 0.0) -> Floats:
        """Return the (2, 2) covariance of value at `origin` and slope; at 0 that of intercept and slope."""
        return line_covariance(origin - self.x0, self.u_y0, self.u_slope)

    def at(self, x: ArrayLike, u_x: ArrayLike = 0.0) -> tuple[Floats, Floats]:
        """Return the line at x and its standard uncertainty, `u_x` of the position included (forward use).

        Raises:
            InputError: field `u_x`, neither one nor as many as the positions.
        """
        lever = np.asarray(x, dtype=float) - self.x0
        u = np.hypot(np.hypot(self.u_y0, self.u_slope * lever), self.slope * _beside("x", lever, "u_x", u_x))
        return self.y0 + self.slope * lever, u

    @within_reach
    def band(self, x: ArrayLike, level: float = LEVEL) -> Floats:
        """Return the half-width of the confidence band of the line, point by point."""
        return np.asarray(coverage_factor(self.dof, level) * self.at(x)[1])

    @within_reach
    def prediction(self, x: ArrayLike, level: float = LEVEL, u_y: ArrayLike | None = None) -> Floats:
        """Return the half-width for one more reading; its standard uncertainty `u_y` is `s` unless given.

        Raises:
            InputError: field `u_y` when neither is known, or neither one nor as many as the positions are given.
        """
        u = self.at(x)[1]
        u_one = _beside("x", u, "u_y", self._of_reading(u_y))
        return np.asarray(coverage_factor(self.dof, level) * np.hypot(u, u_one))

    @within_reach
    def x_from_y(self, y: ArrayLike, u_y: ArrayLike | None = None) -> tuple[Floats, Floats]:
        """Return the position at which the line has the value y, and its standard uncertainty (inverse use).

        Raises:
            InputError: field `y` when the slope is not told from zero, `u_y` when nothing is known of the reading, or
                neither one nor as many as the readings are given.
        """
        if abs(self.slope) <= coverage_factor(self.dof) * self.u_slope:
            raise InputError(
                "y",
                tr(
                    "The slope of the line is not told from zero, so no position can be read off it; "
                    "measure at positions further apart."
                ),
            )
        x = self.x0 + (np.asarray(y, dtype=float) - self.y0) / self.slope
        u_one = _beside("y", x, "u_y", self._of_reading(u_y))
        return x, np.asarray(np.hypot(self.at(x)[1], u_one) / abs(self.slope))

    def _of_reading(self, u_y: ArrayLike | None) -> Floats:
        known = self.s if u_y is None else u_y
        if known is None:
            raise InputError(
                "u_y", tr("The uncertainty of the new reading is needed here; give it beside the reading.")
            )
        return np.asarray(known, dtype=float)


def _beside(field: str, values: Floats, u_field: str, u: ArrayLike) -> Floats:
    """Return the uncertainties of values; refuse as many as belong to no value."""
    each = np.asarray(u, dtype=float)
    if each.ndim and values.ndim and each.size not in (1, values.size):
        refuse_unlike(**{field: values, u_field: each})
    return each


@within_reach
def fit_line(x: ArrayLike, y: ArrayLike, u_y: ArrayLike | None = None, u_x: ArrayLike | None = None) -> Line:
    """Fit y = a + b*x.

    Args:
        x: (m,) positions, at least two different ones.
        y: (m,) readings.
        u_y: standard uncertainties of the readings, (m,) or one for all; None estimates a common `s` from the scatter.
        u_x: standard uncertainties of the positions, (m,) or one for all; taken as zero when None.

    Raises:
        InputError: field `x`, `y`, `u_y` or `u_x`, with the row where it is one, for values that are not finite,
            columns of different length, positions without spread, two readings without uncertainties, or a slope that
            `u_x` drowns.

    Reference: ISO/TS 28037:2010 6.2 and, with `u_x`, 7.2.1.
    """
    x_, y_, uy, ux = _checked(x, y, u_y, u_x)
    found = _line(x_, y_, 1.0 / (uy * uy)) if u_x is None else _settled(x_, y_, uy, ux)
    spare, chi2 = x_.size - 2, float(found.chi2[0])
    s = math.sqrt(chi2 / spare) if u_y is None else None
    scale = 1.0 if s is None else s
    return Line(
        x0=float(found.x0[0]),
        y0=float(found.y0[0]),
        slope=float(found.slope[0]),
        u_y0=scale / math.sqrt(float(found.weight[0])),
        u_slope=scale / math.sqrt(float(found.s_xx[0])),
        s=s,
        chi2=chi2 if s is None else None,
        spare=spare,
    )


def _line(x: Floats, y: Floats, w: Floats) -> Sums:
    return add_up(np.zeros(1, np.int64), np.array([x.size]), x, y, w)


def _settled(x: Floats, y: Floats, u_y: Floats, u_x: Floats) -> Sums:
    """Iterate ISO/TS 28037:2010 7.2.1, each step a line through what is left of y at the corrected positions x*.

    Returns:
        The last step, whose residuals are the line's, with value and slope of the whole line.
    """
    x_mean, y_mean = float(np.mean(x)), float(np.mean(y))
    x, y = x - x_mean, y - y_mean
    value, slope = 0.0, 0.0  # at x = 0
    for _ in range(_MOST_STEPS):
        t2 = 1.0 / (u_y**2 + (slope * u_x) ** 2)
        x_star = t2 * (u_y**2 * x + slope * u_x**2 * (y - value))
        if not np.ptp(x_star) > 1e-12 * np.ptp(x):
            break
        step = _line(x_star, y - value - slope * x, t2)
        slope += float(step.slope[0])
        value += float(step.y0[0] - step.slope[0] * step.x0[0])
        u = 1.0 / np.sqrt([step.weight[0], step.s_xx[0]])
        smallest = 1e-10 * u + 1e-12 * np.array([np.ptp(y), abs(slope)])
        if abs(step.y0[0]) <= smallest[0] and abs(step.slope[0]) <= smallest[1]:
            y0 = np.array([value + slope * step.x0[0] + y_mean])
            return replace(step, x0=step.x0 + x_mean, y0=y0, slope=np.array([slope]))
    raise InputError(
        "u_x",
        tr("The positions are too uncertain for their spread to tell a slope; measure at positions further apart."),
    )


def _checked(
    x: ArrayLike, y: ArrayLike, u_y: ArrayLike | None, u_x: ArrayLike | None
) -> tuple[Floats, Floats, Floats, Floats]:
    x_, y_ = np.array(x, dtype=float), np.array(y, dtype=float)
    if x_.ndim != 1 or x_.shape != y_.shape or x_.size == 0:
        raise InputError("x", tr("The positions and the readings differ in number; check the columns."))
    uy = checked_column("u_y", 1.0 if u_y is None else u_y, x_)
    ux = checked_column("u_x", 0.0 if u_x is None else u_x, x_)
    for field, values in (("x", x_), ("y", y_), ("u_y", uy), ("u_x", ux)):
        refuse_rows(field, ~np.isfinite(values), NOT_FINITE)
    refuse_rows("u_y", uy <= 0, NOT_ABOVE_ZERO)
    refuse_rows("u_x", ux < 0, _BELOW_ZERO)
    low, high = x_.min(), x_.max()
    if high - low <= SAME * max(-low, high):
        raise InputError("x", tr("All positions are the same; a line needs readings at two different ones at least."))
    if u_x is not None and u_y is None:
        raise InputError(
            "u_y", tr("With uncertain positions the uncertainties of the readings are needed too; give both.")
        )
    if u_y is None and x_.size < 3:
        raise InputError("y", tr("Two readings always lie on a line; add a third, or give the uncertainty of each."))
    return x_, y_, uy, ux
