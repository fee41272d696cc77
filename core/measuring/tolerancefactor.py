"""How far a sample must reach to hold a share of all that is to come: factors of two-sided tolerance intervals, exact.

Symbols: n size of the sample that the mean rests on, nu degrees of freedom of the standard deviation s, P share of the
population, gamma confidence, k_2 factor: mean ± k_2 s holds at least P with confidence gamma.

    integral over z of  phi(z) * Pr(chi2_nu >= nu r(z)^2 / k_2^2)  =  gamma,
    r(z) from  Phi(z/sqrt(n) + r) - Phi(z/sqrt(n) - r) = P

n and nu may be those of a mean and a standard deviation with components: n = (s / u of the mean)^2.

Reference: ISO 16269-6:2014 annex (exact two-sided factors); R. Odeh and D. Owen, Tables for Normal Tolerance Limits,
1980; W. Howe, J. Am. Stat. Assoc. 64 (1969) 610 (the approximation that the NIST handbook 7.2.6.3 uses).
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.quantity import LEVEL
from core.words import tr

Floats = NDArray[np.float64]

FARTHEST = 8.0  # standard deviations of the mean; beyond lies less than 1e-14
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(64)
_Z = 0.5 * FARTHEST * (_NODES + 1.0)
_DENSITY = FARTHEST * _WEIGHTS * np.exp(-(_Z**2) / 2.0) / math.sqrt(2.0 * math.pi)  # both sides of the mean
_NEWTON, _HALVINGS = 8, 36
_LEAST_SIZE = 1e-6  # of a sample; where less is behind a mean, it says nothing
_LEAST_DOF = 0.1  # likewise behind a standard deviation


def two_sided_factor(n: float, dof: float, content: float = LEVEL, confidence: float = LEVEL) -> float:
    """Return k_2.

    Args:
        n: (effective) size of the sample behind the mean; infinite where the mean is known.
        dof: degrees of freedom of the standard deviation, finite.
        content: share P of the population.
        confidence: gamma.

    Raises:
        InputError: field `n` with nothing behind the mean, `dof` likewise or infinite, `content` or `confidence`
            outside 0 to 1.
    """
    from scipy.special import chdtrc, chdtri

    if not n >= _LEAST_SIZE:
        raise InputError("n", tr("A tolerance interval needs one reading at least behind the mean."))
    if not _LEAST_DOF <= dof < math.inf:
        raise InputError("dof", tr("A tolerance interval needs a standard deviation from two readings at least."))
    for name, share in (("content", content), ("confidence", confidence)):
        if not 0.0 < share < 1.0:
            raise InputError(name, tr("A share lies between 0 and 1; give for example 0.95."))
    reach = _reach(_Z / math.sqrt(n), content)
    least = float(reach[0] * math.sqrt(dof / chdtri(dof, confidence)))  # where the mean is known
    low, high = 0.5 * least, 4.0 * least * math.sqrt(1.0 + 1.0 / n)
    for _ in range(_HALVINGS):
        k = 0.5 * (low + high)
        held = float(_DENSITY @ chdtrc(dof, dof * (reach / k) ** 2))
        low, high = (k, high) if held < confidence else (low, k)
    return 0.5 * (low + high)


def _reach(off: Floats, content: float) -> Floats:
    """Return r with Phi(off + r) - Phi(off - r) = content, by Newton's method from the right."""
    from scipy.special import ndtr, ndtri

    r = off + float(ndtri(0.5 + 0.5 * content))
    for _ in range(_NEWTON):
        missing = content - (ndtr(off + r) - ndtr(off - r))
        slope = (np.exp(-((off + r) ** 2) / 2.0) + np.exp(-((off - r) ** 2) / 2.0)) / math.sqrt(2.0 * math.pi)
        r = r + missing / slope
    return np.asarray(r)
