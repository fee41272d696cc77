"""The mean range of n normal values, in standard deviations: the factor d2 of control charts.

    d2(n) = integral of 1 - P(x)^n - (1 - P(x))^n over x

Symbols: P normal distribution function, n values in the sample.

Reference: Tippett, Biometrika 17 (1925) 364; tabled as d2 in ISO 7870-2:2023 annex A.
"""

from __future__ import annotations

import numpy as np

from core.errors import InputError
from core.words import tr

MOST_VALUES = 100_000
_REACH = 9.0  # standard deviations; beyond, the integrand is below 1e-13 for every n that is taken
_STEP = 0.01  # the trapezium rule is exact to rounding here: the integrand and all its derivatives end in zero


def mean_range_ratio(n: int) -> float:
    """Return d2(n), the expected range of n normal values over their standard deviation; 0 for one value.

    Raises:
        InputError: field `n` below 1 or above 100 000.
    """
    from scipy.special import ndtr

    if not 1 <= n <= MOST_VALUES:
        raise InputError("n", tr("A sample has 1 to {most} values; {n} is outside.", most=MOST_VALUES, n=n))
    x = np.arange(-_REACH, _REACH + _STEP / 2, _STEP)
    below, above = ndtr(x), ndtr(-x)
    return float(np.sum(1.0 - below**n - above**n) * _STEP)
