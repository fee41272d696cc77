"""How many readings it takes to see a scale error, and what no number of readings shows.

    N = C (z1 + z2)^2 (sd/(a L))^2      C = 1 for outside and inside in pairs over L, 4 for long against short, L apart
    chance = P(|estimate| > k u)          L_min = 2u/a

Symbols: a scale error, sd of one reading, z1 and z2 normal quantiles of the interval's level and of the power.

Reference: NIST/SEMATECH e-Handbook 7.2.2.2 (readings for a power). Two readings at least: common practice, no source.
"""

from __future__ import annotations

import math
from statistics import NormalDist

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.quantity import LEVEL
from core.words import tr

POWER = 0.90
_FEWEST = 2


@within_reach
def readings_needed(
    scale_ratio: float, length_mm: float, sd_mm: float, *, paired: bool = True, power_ratio: float = POWER
) -> int:
    """Return how many readings see a scale error with this power, at 5 % risk of a false one.

    Args:
        scale_ratio: the smallest scale error that matters.
        length_mm: mean length of the pairs, or the difference of long and short.
        sd_mm: of one reading.
        paired: outside and inside over the same teeth; else long against short.
        power_ratio: chance to see it.

    Raises:
        InputError: field `scale_ratio`, `length_mm`, `sd_mm` or `power_ratio`, where it is not above zero.
    """
    for field, value in (
        ("scale_ratio", scale_ratio), ("length_mm", length_mm), ("sd_mm", sd_mm), ("power_ratio", power_ratio)
    ):  # fmt: skip
        if not 0 < value < math.inf or (field == "power_ratio" and value >= 1):
            raise InputError(field, tr("{value:g} cannot be; type what is above zero.", value=value))
    normal = NormalDist()
    z = normal.inv_cdf(0.5 + LEVEL / 2) + normal.inv_cdf(power_ratio)
    needed = (1.0 if paired else 4.0) * (z * sd_mm / (scale_ratio * length_mm)) ** 2
    return max(_FEWEST, math.ceil(needed - 1e-9))


@within_reach
@finite_in("scale_ratio")
def chance_to_see(scale_ratio: float, u: float) -> float:
    """Return the chance that a scale error of this size comes out beyond its 95 % interval.

    Raises:
        InputError: field `u`, not above zero.
    """
    if not u > 0.0:
        raise InputError("u", tr("{value:g} cannot be; type what is above zero.", value=u))
    normal = NormalDist()
    k = normal.inv_cdf(0.5 + LEVEL / 2)
    return normal.cdf(scale_ratio / u - k) + normal.cdf(-scale_ratio / u - k)


@within_reach
@finite_in("scale_ratio", "u_fixed_mm")
def shortest_length_mm(scale_ratio: float, u_fixed_mm: float) -> float:
    """Return the length below which no repeat shows a scale error: 2u/a.

    Raises:
        InputError: field `scale_ratio`, zero.
    """
    if scale_ratio == 0.0:
        raise InputError("scale_ratio", tr("{value:g} cannot be; type what is above zero.", value=scale_ratio))
    return 2.0 * u_fixed_mm / scale_ratio
