"""Components of uncertainty put together. The coverage factor itself is `core.quantity.coverage_factor`.

Symbols: u_i(y) = |c_i| u(x_i) contribution of component i to the result y, nu_i its degrees of freedom, u_c combined
standard uncertainty, nu_eff effective degrees of freedom, k coverage factor, U = k*u_c expanded uncertainty.

Reference: JCGM 100:2008 (GUM) 5.1.2 and G.4.1, equation G.2b.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.quantity import LEVEL, coverage_factor
from core.words import tr

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Combined:
    """Combined standard uncertainty `u`, in the unit of its components, and its effective degrees of freedom."""

    u: float
    dof: float

    def expanded(self, level: float = LEVEL) -> float:
        """Return U = k*u for the level."""
        return coverage_factor(self.dof, level) * self.u


def combine(contributions: ArrayLike, dofs: ArrayLike = math.inf) -> Combined:
    """Combine independent components.

    Args:
        contributions: (n,) |c_i| u(x_i), all in the unit of the result.
        dofs: (n,) degrees of freedom, or one number for all; infinite where the uncertainty itself is taken as known.

    Raises:
        InputError: field `contributions` or `dofs`, as `welch_satterthwaite` does.
    """
    u, _ = _checked(contributions, dofs)
    return Combined(float(np.linalg.norm(u)), welch_satterthwaite(contributions, dofs))


def welch_satterthwaite(contributions: ArrayLike, dofs: ArrayLike) -> float:
    """Return the effective degrees of freedom u_c^4 / sum(u_i^4 / nu_i), not truncated; infinite if all u_i are known.

    Args:
        contributions: (n,) |c_i| u(x_i), all in the unit of the result.
        dofs: (n,) degrees of freedom, or one number for all.

    Raises:
        InputError: field `contributions` for none, or one that is not finite; `dofs` for one that is not above zero.

    Reference: JCGM 100:2008 G.4.1, equation G.2b.
    """
    u, nu = _checked(contributions, dofs)
    return float(effective_dofs(u[np.newaxis, :], nu)[0])


def effective_dofs(u: Floats, nu: Floats) -> Floats:
    """Return the effective degrees of freedom (n,) of n results with components u (n, m) of nu (m,), unchecked."""
    largest = u.max(axis=1, keepdims=True)
    share = (u / np.where(largest > 0.0, largest, 1.0)) ** 2  # fourth powers neither overflow nor vanish
    spread = np.sum(share**2 / nu, axis=1)
    known = spread <= 0.0
    return np.asarray(np.where(known, math.inf, np.sum(share, axis=1) ** 2 / np.where(known, 1.0, spread)))


def _checked(contributions: ArrayLike, dofs: ArrayLike) -> tuple[Floats, Floats]:
    u = np.abs(np.atleast_1d(np.asarray(contributions, dtype=float)))
    if u.size == 0 or not np.all(np.isfinite(u)):
        raise InputError(
            "contributions", tr("A component of the uncertainty is missing or not finite; give its real size.")
        )
    nu = np.asarray(dofs, dtype=float)
    if nu.ndim and nu.shape != u.shape:
        raise InputError("dofs", tr("Components and degrees of freedom differ in number; give one for each component."))
    if not np.all(nu > 0):
        raise InputError("dofs", tr("Degrees of freedom must be above zero; two readings give one degree of freedom."))
    return u, np.broadcast_to(nu, u.shape)
