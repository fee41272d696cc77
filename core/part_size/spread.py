"""Bias and spread of one class of features over several pieces: from piece to piece, and within one.

    e_ij = a_i + b_i (L_ij - mean L) + w_ij           error of reading j on piece i
    s^2(L) = s_b^2(L) + s_w^2                         one reading of length L on one new piece

Symbols: a_i, b_i offset and scale error of piece i; s_b(L) scatter of a_i + b_i (L - mean L) from piece to piece, which
grows with the length where pieces differ in scale; w_ij place on it and reading, sd s_w; x = (1, L - mean L); S_c
covariance of the (a_i, b_i) as fitted; h = x' (X'X)^-1 x, X of one piece.

    MSB = x' S_c x / h,  n_0 = 1/h      mean square between pieces at L, and how many readings of L a piece is worth
    s^2(L) = MSB/n_0 + (1 - 1/n_0) MSW

How far pieces count as one reading each depends on R = s_b^2/s_w^2, which few pieces tell badly: as Mee does, an upper
bound R* of it gives the degrees of freedom of s and u of the mean. Where some piece has too few readings for a line of
its own, all share one slope, and s is alike at all lengths.

Reference: R. Mee, Technometrics 26 (1984) 251 (spread of two components); F. Graybill, Theory and Application of the
Linear Model, 1976, 15 (variance components); C. Rao, Biometrika 52 (1965) 447 (a line for each unit).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.lines import fit_lines
from core.measuring.reach import of_one_length, within_reach
from core.words import tr

_RATIO_BOUND = 0.85  # confidence of the upper bound of R for intervals of 95 % (Mee 1984)
_NOTHING_MM = 1e-9  # below it all readings are equal, rounding apart
_OWN_LINE = 3  # readings of a piece from which on it has a line of its own

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Spread:
    """Errors of one class of features over several pieces.

    Attributes:
        pieces: how many pieces.
        readings: how many readings.
        shortest_mm, longest_mm: nominal lengths that were read.
        middle_mm: mean nominal length.
        bias_mm: mean error there; `slope_ratio` its change with the length, zero where one length was read.
        sd_within_mm: between places and readings of one piece; nan where each piece has one reading.
        dof_within: its degrees of freedom; zero where there is none.
        between: (2, 2) covariance S_c of offset (mm) and scale error of the pieces as fitted; of the offsets alone
            where all share one slope.
        worth: (2, 2) mean of (X'X)^-1 of a piece.
        u_slope_ratio: standard uncertainty of a slope that all pieces share; zero where each has its own.
    """

    pieces: int
    readings: int
    shortest_mm: float
    longest_mm: float
    middle_mm: float
    bias_mm: float
    slope_ratio: float
    sd_within_mm: float
    dof_within: int
    between: Floats
    worth: Floats
    u_slope_ratio: float = 0.0

    @within_reach
    @finite_in("length_mm")
    def bias_at(self, length_mm: ArrayLike) -> Floats:
        """Return the mean error (mm) at lengths."""
        return np.asarray(self.bias_mm + self.slope_ratio * (np.asarray(length_mm, dtype=float) - self.middle_mm))

    @within_reach
    @finite_in("length_mm")
    def u_bias_at(self, length_mm: ArrayLike) -> Floats:
        """Return the standard uncertainty of the mean error (mm) at lengths."""
        away = np.asarray(length_mm, dtype=float) - self.middle_mm
        return np.hypot(self._at(length_mm).u_mean_mm, self.u_slope_ratio * away)

    @within_reach
    @finite_in("length_mm")
    def sd_at(self, length_mm: ArrayLike) -> Floats:
        """Return s (mm) of one reading of one new piece at lengths."""
        return self._at(length_mm).sd_mm

    @within_reach
    @finite_in("length_mm")
    def dof_at(self, length_mm: ArrayLike) -> Floats:
        """Return the effective degrees of freedom of s at lengths."""
        return self._at(length_mm).dof

    @property
    def u_bias_mm(self) -> float:
        """Of the mean error at the middle length."""
        return float(self.u_bias_at(self.middle_mm))

    @property
    def sd_mm(self) -> float:
        """The largest s at the lengths that were read: at one of their ends."""
        return float(np.max(self.sd_at([self.shortest_mm, self.longest_mm])))

    @property
    def dof(self) -> float:
        """Effective degrees of freedom of `sd_mm`."""
        ends = [self.shortest_mm, self.longest_mm]
        return float(self.dof_at(ends)[int(np.argmax(self.sd_at(ends)))])

    @property
    def sd_between_mm(self) -> float:
        """From piece to piece at the middle length; zero where pieces differ by less than chance."""
        within = 0.0 if math.isnan(self.sd_within_mm) else self.sd_within_mm
        return math.sqrt(max(float(self.between[0, 0]) - float(self.worth[0, 0]) * within**2, 0.0))

    def _at(self, length_mm: ArrayLike) -> _Components:
        away = np.asarray(length_mm, dtype=float) - self.middle_mm
        x = np.stack([np.ones_like(away), away], axis=-1)
        s2_means = np.einsum("...i,ij,...j->...", x, self.between, x)  # MSB/n_0
        dof_between = self.pieces - 1
        if self.dof_within < 1:
            dof = np.full_like(away, max(self.readings - 1 - (self.u_slope_ratio > 0.0), 1))
            return _Components(np.sqrt(s2_means), np.sqrt(s2_means / self.readings), dof)
        from scipy.special import fdtri

        h = np.clip(np.einsum("...i,ij,...j->...", x, self.worth, x), 1e-9, 1.0)  # 1/n_0
        s2 = s2_means + (1.0 - h) * self.sd_within_mm**2
        low = float(fdtri(dof_between, self.dof_within, 1.0 - _RATIO_BOUND))
        R = np.maximum(0.0, (s2_means / np.maximum(h * self.sd_within_mm**2 * low, 1e-30) - 1.0) * h)
        dof = (R + 1.0) ** 2 / ((R + h) ** 2 / dof_between + (1.0 - h) ** 2 / self.dof_within)
        return _Components(np.sqrt(s2), np.sqrt(s2 * (R + h) / (self.pieces * (R + 1.0))), dof)


@dataclass(frozen=True, slots=True, eq=False)
class _Components:
    """At lengths: standard deviation of one reading, u of the mean, degrees of freedom."""

    sd_mm: Floats
    u_mean_mm: Floats
    dof: Floats


@within_reach
@of_one_length("piece", "nominal_mm", "error_mm")
def fit_spread(piece: Sequence[int], nominal_mm: ArrayLike, error_mm: ArrayLike) -> Spread:
    """Tell bias and spread of one class of features over pieces.

    Args:
        piece: (N,) number of the piece that each reading was taken on.
        nominal_mm: (N,) drawn lengths.
        error_mm: (N,) measured less drawn.

    Raises:
        InputError: field `piece` for fewer than two pieces; `error_mm` where all readings are equal: the last digit
            hides the scatter; `nominal_mm` where a number is missing.
    """
    lengths, errors = np.asarray(nominal_mm, dtype=float), np.asarray(error_mm, dtype=float)
    if not np.all(np.isfinite(lengths)) or not np.all(np.isfinite(errors)):
        raise InputError("nominal_mm", tr("A reading or its nominal length is missing; leave its row out."))
    _, index, count = np.unique(np.asarray(piece), return_inverse=True, return_counts=True)
    if count.size < 2:
        raise InputError("piece", tr("One part shows no spread from part to part; measure a second one."))
    away = lengths - lengths.mean()
    moments = np.array([np.bincount(index, power) for power in (np.ones_like(away), away, away**2)])
    own_line = bool(np.all(count >= _OWN_LINE) and np.all(moments[0] * moments[2] - moments[1] ** 2 > _NOTHING_MM))
    fitted = _own_lines(index, away, errors) if own_line else _one_slope(index, away, errors, count)
    found = Spread(int(count.size), int(errors.size), float(lengths.min()), float(lengths.max()),
                   float(lengths.mean()), *fitted)  # fmt: skip
    if not found.sd_mm > _NOTHING_MM:
        raise InputError("error_mm", tr("All errors are equal: read to one digit more, or nothing is told of scatter."))
    return found


_Fitted = tuple[float, float, float, int, Floats, Floats, float]  # the fields of `Spread` from `bias_mm` on


def _own_lines(index: NDArray[np.int64], away: Floats, errors: Floats) -> _Fitted:
    """Fit each piece by a line of its own."""
    lines = fit_lines(index, away, errors, u_y=1.0)
    each = np.stack([lines.value(), lines.slope])
    dof = int(lines.spare.sum())
    within = math.sqrt(float(lines.chi2.sum()) / dof)
    mean = each.mean(axis=1)
    return float(mean[0]), float(mean[1]), within, dof, np.cov(each), lines.covariance().mean(axis=0), 0.0


def _one_slope(index: NDArray[np.int64], away: Floats, errors: Floats, count: NDArray[np.int64]) -> _Fitted:
    """Fit one slope for all pieces, and an offset for each."""
    pieces, readings = count.size, errors.size
    sxx = float(away @ away)
    slope = float(away @ errors) / sxx if sxx > 0.0 else 0.0
    rest = errors - errors.mean() - slope * away
    means = np.bincount(index, rest) / count
    dof = readings - pieces - (sxx > 0.0)
    between, worth = np.zeros((2, 2)), np.zeros((2, 2))
    if dof < 1:
        between[0, 0] = float(rest @ rest) / max(readings - 1 - (sxx > 0.0), 1)
        within, dof = math.nan, 0
    else:
        n_0 = (readings - float(np.sum(count**2)) / readings) / (pieces - 1)
        between[0, 0], worth[0, 0] = float(count @ means**2) / (pieces - 1) / n_0, 1.0 / n_0
        within = math.sqrt(float(np.sum((rest - means[index]) ** 2)) / dof)
    own = math.sqrt(between[0, 0]) if math.isnan(within) else within
    u_slope = own / math.sqrt(sxx) if sxx > 0.0 else 0.0
    return float(errors.mean()), slope, within, dof, between, worth, u_slope
