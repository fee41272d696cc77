"""Weighted least squares that also says what it could not determine; straight lines are in `core.measuring.lines`.

Symbols: X design matrix (m readings, p parameters), y readings, w weights (1/variance, up to a common factor), G the
linear map from readings to parameters, so that effects on the readings can be propagated through the very estimator
that was used.

Reference: JCGM 100:2008 H.3; ISO/TS 28037:2010 clauses 6 and 7; Golub and Van Loan, Matrix Computations, 5.5 (rank by
singular values) and 3.5.3 (one step of iterative refinement).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.reach import within_reach
from core.words import tr

Floats = NDArray[np.float64]

RANK_RATIO = 1e-10  # singular values below this share of the largest count as zero, once all columns have length 1


@dataclass(frozen=True, slots=True, eq=False)
class LinearFit:
    """Least-squares solution of X b = y.

    Attributes:
        coef: (p,) parameters; the smallest ones (in scaled columns) where the readings leave some open.
        unscaled_cov: (p, p) pseudo-inverse of X'WX; times the unit-weight variance it is the covariance.
        solver: (p, m) G with coef = G y.
        residual: (m,) y - X coef.
        leverage: (m,) diagonal of the hat matrix.
        null_space: (p, p - rank) directions of the parameters that change no reading.
        weights: (m,) as used.
        column_length: (p,) length of the weighted columns, 1 for an all-zero one: the units of the parameters.
        rank: number of parameter combinations that the readings determine.
        condition: ratio of the largest to the smallest non-zero singular value, columns scaled.
    """

    coef: Floats
    unscaled_cov: Floats
    solver: Floats
    residual: Floats
    leverage: Floats
    null_space: Floats
    weights: Floats
    column_length: Floats
    rank: int
    condition: float

    def __post_init__(self) -> None:
        for array in (self.coef, self.unscaled_cov, self.solver, self.residual, self.leverage, self.null_space,
                      self.weights, self.column_length):  # fmt: skip
            array.flags.writeable = False

    @property
    def dof(self) -> int:
        """Readings less determined parameters."""
        return int(self.residual.size - self.rank)

    @property
    def ssr(self) -> float:
        """Weighted sum of squared residuals (chi-squared where the weights are 1/u^2)."""
        return float(np.sum(self.weights * self.residual**2))

    @within_reach
    def determines(self, combination: ArrayLike) -> bool:
        """Whether the readings determine this linear combination of the parameters, given as (p,) coefficients.

        Raises:
            InputError: field `combination`, out of reach.
        """
        c = np.asarray(combination, dtype=float) / self.column_length  # scaled columns: no unit may sway the answer
        open_part = c @ _orthonormal(self.null_space * self.column_length[:, None])
        return bool(np.all(np.abs(open_part) <= 1e-7 * np.linalg.norm(c)))


@within_reach
def fit_linear(
    design: ArrayLike, y: ArrayLike, weights: ArrayLike | None = None, rank_ratio: float = RANK_RATIO
) -> LinearFit:
    """Solve X b = y by singular value decomposition of the weighted, column-scaled design.

    Args:
        design: (m, p) matrix X; columns of any scale, all-zero columns allowed (then undetermined).
        y: (m,) readings.
        weights: (m,) positive weights, 1 for each reading when None.
        rank_ratio: combinations whose singular value is below this share of the largest count as undetermined.

    Raises:
        InputError: field `y` for shapes that do not match or values that are not finite, `weights` for weights <= 0.
    """
    X, b, w = _checked(design, y, weights)
    root = np.sqrt(w)
    Xw = X * root[:, None]
    length = np.sqrt(np.square(Xw).sum(axis=0))
    scale = length + (length == 0.0)  # an all-zero column keeps its zeros
    left, singular, right = np.linalg.svd(Xw / scale, full_matrices=X.shape[0] < X.shape[1])
    rank = int(np.count_nonzero(singular > rank_ratio * singular[:1]))
    left = left[:, :rank]
    V = right[:rank].T / singular[:rank] / scale[:, None]
    pinv = V @ left.T  # of the weighted design
    coef = _refined(Xw, root * b, pinv)
    return LinearFit(
        coef=coef,
        unscaled_cov=V @ V.T,
        solver=pinv * root,
        residual=b - X @ coef,
        leverage=np.square(left).sum(axis=1),
        null_space=_orthonormal(right[rank:].T / scale[:, None]),
        weights=w,
        column_length=scale,
        rank=rank,
        condition=float(singular[0] / singular[rank - 1]) if rank else 1.0,
    )


def _checked(design: ArrayLike, y: ArrayLike, weights: ArrayLike | None) -> tuple[Floats, Floats, Floats]:
    X, b = np.array(design, dtype=float, ndmin=2), np.asarray(y, dtype=float)
    w = np.ones(b.shape) if weights is None else np.array(weights, dtype=float)
    if b.ndim != 1 or X.shape[0] != b.size or w.shape != b.shape or b.size == 0:
        raise InputError("y", tr("The readings and the terms of the fit differ in number; check the columns."))
    if not (np.isfinite(X).all() and np.isfinite(b).all()):
        raise InputError("y", tr("A reading is not a finite number; remove or retype it."))
    if not 0.0 < w.min() <= w.max() < math.inf:
        raise InputError("weights", tr("An uncertainty of a reading is zero or not finite; give its real size."))
    return X, b, w


def _refined(Xw: Floats, yw: Floats, pinv: Floats) -> Floats:
    """Solve, then correct once by the residual taken in extended precision: the last digits of ill-conditioned sets."""
    coef = pinv @ yw
    exact = yw - Xw.astype(np.longdouble) @ coef  # in extended precision
    return np.asarray(coef + pinv @ exact.astype(float))


def _orthonormal(columns: Floats) -> Floats:
    return np.linalg.qr(columns)[0] if columns.size else columns
