"""Scale errors of a whole shop told apart: what stays with the machine, what travels with the filament lot.

    ln(1 + s_ij) = m_i + f_j + noise        a print of lot j on machine i, along one axis
    ln(1 + s_i)  = m_i + noise              travel read directly (dial, drawn line): no filament in it
    m_i = c + d_i,  d_i ~ N(0, tau_i^2),  c ~ N(0, tau_c^2),  f_j ~ N(prior of its material)

Symbols: s scale error, m machine, f lot (negative: it shrinks), tau_i tolerance of the drive, c what all drives of the
shop share (belts of one batch, the caliper's scale), w = 1/u^2 weight of a trial.

Adding a constant to every machine and taking it off every lot changes no print: differences are in the data, levels
come from the priors and from travel. The block of the larger kind is diagonal and is eliminated; the rest is a
Cholesky factor of the Schur complement, which also gives every covariance: the posterior is exact in one pass.

Reference: normal linear model with normal priors, posterior C = (X'WX + P^-1)^-1 (A. Gelman et al., Bayesian Data
Analysis, 3rd ed. 2013, 14.8; block elimination: G. Golub and C. Van Loan, Matrix Computations, 4th ed. 2013, 4.2.10).
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.reach import within_reach
from core.words import Words, tr

METHOD = "shop_split 1"
COMMON_U_RATIO = 0.0003  # belts of one batch; common practice, no source
PIECE_U_RATIO = 0.0002  # from piece to piece of one lot on one machine; common practice, no source
NO_LOT = -1  # a travel: no filament in it
_SMALLEST_RATIO = 1e-7  # of an uncertainty: no gauge and nobody tells a length to less
PRIOR_SHARE = 0.5  # of the prior's variance: where more is left, the prior speaks and not the data

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]


@dataclass(frozen=True, slots=True, eq=False)
class Seen:
    """What was measured along one axis, one row a trial (n).

    Attributes:
        machine: index of the machine.
        lot: index of the lot, `NO_LOT` for a travel.
        scale_ratio: scale error s.
        u_ratio: its standard uncertainty, scatter from piece to piece included.
    """

    machine: Ints
    lot: Ints
    scale_ratio: Floats
    u_ratio: Floats

    @property
    def log_ratio(self) -> Floats:
        """ln(1 + s)."""
        return np.asarray(np.log1p(self.scale_ratio))

    @property
    def u_log_ratio(self) -> Floats:
        """Standard uncertainty of ln(1 + s)."""
        return np.asarray(self.u_ratio / (1.0 + self.scale_ratio))


@dataclass(frozen=True, slots=True, eq=False)
class Priors:
    """What is known before any print.

    Attributes:
        machine_u_ratio: (M,) tolerance tau_i of each machine's drive.
        lot_ratio: (F,) expected ln of size over drawn size of each lot, below zero where it shrinks.
        lot_u_ratio: (F,) its standard uncertainty.
        common_u_ratio: tau_c of what all machines share; zero for none.
    """

    machine_u_ratio: Floats
    lot_ratio: Floats
    lot_u_ratio: Floats
    common_u_ratio: float = COMMON_U_RATIO


@dataclass(frozen=True, slots=True, eq=False)
class ShopSplit:
    """Every effect with its full posterior, as ln of a ratio.

    Attributes:
        machine_ratio: (M,) m_i, with `u_machine_ratio`.
        lot_ratio: (F,) f_j, with `u_lot_ratio`.
        machine_root: (M, k) and `lot_root` (F, k): the covariance of two effects is the product of their rows, and
            where the two are one effect `machine_own` (M,) or `lot_own` (F,) is added.
    """

    seen: Seen
    prior: Priors
    machine_ratio: Floats
    lot_ratio: Floats
    u_machine_ratio: Floats
    u_lot_ratio: Floats
    machine_root: Floats
    lot_root: Floats
    machine_own: Floats
    lot_own: Floats

    @property
    def machine_prior_u_ratio(self) -> Floats:
        """(M,) of each machine before any print, what all share included."""
        return np.asarray(np.hypot(self.prior.machine_u_ratio, self.prior.common_u_ratio))

    @property
    def machine_by_prior(self) -> NDArray[np.bool_]:
        """(M,) whether more than half of the prior's variance is left: the data say little."""
        return np.asarray(self.u_machine_ratio**2 > PRIOR_SHARE * self.machine_prior_u_ratio**2)

    @property
    def lot_by_prior(self) -> NDArray[np.bool_]:
        """(F,) whether more than half of the prior's variance is left."""
        return np.asarray(self.u_lot_ratio**2 > PRIOR_SHARE * self.prior.lot_u_ratio**2)

    def machine_difference(self, first: int, second: int) -> tuple[float, float]:
        """Return m_first - m_second and its standard uncertainty: free of what all machines share."""
        return _difference(self.machine_ratio, self.machine_root, self.machine_own, (first, second))

    def lot_difference(self, first: int, second: int) -> tuple[float, float]:
        """Return f_first - f_second and its standard uncertainty."""
        return _difference(self.lot_ratio, self.lot_root, self.lot_own, (first, second))

    def cross_covariance(self, machine: int, lot: int) -> float:
        """Return the covariance of one machine with one lot; below zero where prints tell only their sum."""
        return float(self.machine_root[machine] @ self.lot_root[lot])

    def fitted_variance(self) -> Floats:
        """Return the posterior variance (n,) of what each trial measured: m + f, or m alone for a travel."""
        machine, lot = self.seen.machine, self.seen.lot
        variance = self.u_machine_ratio[machine] ** 2
        printed = lot != NO_LOT
        cross = self.machine_root @ self.lot_root.T
        i, j = machine[printed], lot[printed]
        variance[printed] += self.u_lot_ratio[j] ** 2 + 2.0 * cross[i, j]
        return variance

    def residual(self) -> Floats:
        """Return ln(1 + s) less what the effects give (n,)."""
        of_lot = np.where(self.seen.lot == NO_LOT, 0.0, np.append(self.lot_ratio, 0.0)[self.seen.lot])
        return self.seen.log_ratio - self.machine_ratio[self.seen.machine] - of_lot


def _difference(value: Floats, root: Floats, own: Floats, pair: tuple[int, int]) -> tuple[float, float]:
    first, second = pair
    variance = float(np.sum((root[first] - root[second]) ** 2) + own[first] + own[second])
    return float(value[first] - value[second]), math.sqrt(variance) if first != second else 0.0


@within_reach
def split_shop(seen: Seen, prior: Priors) -> ShopSplit:
    """Tell machines and lots apart along one axis.

    Raises:
        InputError: field `machine` or `lot` for an index that there is not, `scale_ratio` or `u_ratio` for a trial that
            is no number, or at -1 and below; `prior` for a prior that is not above zero. The row is the trial's.
    """
    _check(seen, prior)
    y, w = seen.log_ratio, 1.0 / seen.u_log_ratio**2
    printed = seen.lot != NO_LOT
    tau, lot_p = prior.machine_u_ratio**-2.0, prior.lot_u_ratio**-2.0
    lot, lot_w, lot_wy = seen.lot[printed], w[printed], (w * y)[printed]
    machines, lots = tau.size, lot_p.size
    machine_side = _Side(
        np.bincount(seen.machine, weights=w, minlength=machines) + tau,
        np.bincount(seen.machine, weights=w * y, minlength=machines).astype(float),
        tau,
        seen.machine[printed],
    )
    lot_side = _Side(
        np.bincount(lot, weights=lot_w, minlength=lots) + lot_p,
        np.bincount(lot, weights=lot_wy, minlength=lots) + lot_p * prior.lot_ratio,
        np.zeros(lots),
        lot,
    )
    if machines >= lots:
        of_machine, of_lot = _eliminate(machine_side, lot_side, lot_w, prior.common_u_ratio)
    else:
        of_lot, of_machine = _eliminate(lot_side, machine_side, lot_w, prior.common_u_ratio)
    return ShopSplit(
        seen=seen,
        prior=prior,
        machine_ratio=of_machine.value,
        lot_ratio=of_lot.value,
        u_machine_ratio=of_machine.u,
        u_lot_ratio=of_lot.u,
        machine_root=of_machine.root,
        lot_root=of_lot.root,
        machine_own=of_machine.own,
        lot_own=of_lot.own,
    )


@dataclass(frozen=True, slots=True, eq=False)
class _Side:
    """Of machines or lots: diagonal and right side of the normal equations, coupling to what is common, (n,) rows."""

    diagonal: Floats
    right: Floats
    tau: Floats
    of_print: Ints


@dataclass(frozen=True, slots=True, eq=False)
class _Solved:
    """Effects of machines or lots, with what their covariance is made of."""

    value: Floats
    u: Floats
    root: Floats
    own: Floats


def _eliminate(large: _Side, small: _Side, weight: Floats, common_u_ratio: float) -> tuple[_Solved, _Solved]:
    """Solve the normal equations: the large block is diagonal and goes first.

    With D the large block, E its coupling and S = B - E' D^-1 E = L L', the covariance of the small block is S^-1, and
    that of the large one D^-1 + (D^-1 E L'^-1)(...)'.
    """
    from scipy.linalg.blas import dsyrk, dtrmm
    from scipy.linalg.lapack import dpotrf, dtrtri

    size, others = small.diagonal.size, large.diagonal.size
    count = size + (common_u_ratio > 0.0)
    cells = small.of_print * others + large.of_print
    summed = np.bincount(cells, weights=weight, minlength=count * others).astype(float, copy=False)
    scaled = summed.reshape(count, others).T  # by columns, as the solver wants it
    if common_u_ratio > 0.0:
        scaled[:, -1] = -large.tau
    root_d = np.sqrt(large.diagonal)
    scaled /= root_d[:, np.newaxis]
    schur = dsyrk(-1.0, scaled, trans=1, lower=1)
    schur[np.arange(size), np.arange(size)] += small.diagonal
    if common_u_ratio > 0.0:
        schur[-1, :size] -= small.tau
        schur[-1, -1] += small.tau.sum() + large.tau.sum() + common_u_ratio**-2.0
    factor, indefinite = dpotrf(schur, lower=1, clean=1, overwrite_a=1)
    inverse, singular = dtrtri(factor, lower=1, overwrite_c=1)
    if indefinite or singular:
        says = tr("What is known before any print differs too widely to calculate with; check the uncertainties.")
        raise InputError("prior", says)
    right = np.append(small.right, np.zeros(count - size)) - scaled.T @ (large.right / root_d)
    of_small = inverse.T @ (inverse @ right)
    of_large = (large.right / root_d - scaled @ of_small) / root_d
    root = dtrmm(-1.0, inverse, scaled, side=1, lower=1, trans_a=1, overwrite_b=1)
    root /= root_d[:, np.newaxis]
    own = 1.0 / large.diagonal
    kept = inverse[:, :size]
    return (
        _Solved(of_large, np.sqrt(own + np.einsum("ik,ik->i", root, root)), root, own),
        _Solved(of_small[:size], np.sqrt(np.einsum("ki,ki->i", kept, kept)), kept.T, np.zeros(size)),
    )


def _check(seen: Seen, prior: Priors) -> None:
    machines, lots = prior.machine_u_ratio.size, prior.lot_u_ratio.size
    _refuse("machine", (seen.machine < 0) | (seen.machine >= machines), tr("Its machine is not in the list."))
    _refuse("lot", (seen.lot < NO_LOT) | (seen.lot >= lots), tr("Its filament lot is not in the list."))
    scale = seen.scale_ratio
    _refuse("scale_ratio", ~(np.isfinite(scale) & (scale > -1.0)), tr("Its scale error is no number above −100 %."))
    u = seen.u_ratio
    _refuse("u_ratio", ~(np.isfinite(u) & (u > _SMALLEST_RATIO)), tr("The uncertainty of its scale is not above zero."))
    widths: Iterable[Floats] = (prior.machine_u_ratio, prior.lot_u_ratio)
    told = all(np.all(np.isfinite(width) & (width > _SMALLEST_RATIO)) for width in widths)
    if not told or not prior.common_u_ratio >= 0.0:
        raise InputError("prior", tr("What is known before any print has an uncertainty above zero; give one."))


def _refuse(field: str, wrong: NDArray[np.bool_], why: Words) -> None:
    if np.any(wrong):
        row = int(np.argmax(wrong))
        raise InputError(field, tr("Trial {row} cannot be used: {why}", row=row + 1, why=why), row)
