"""What the whole shop says of one machine and one lot along one axis, and what a further print adds to it.

Symbols: m effect of the machine, f effect of the lot, both as ln of a ratio; a print of the two measures x = m + f.

    gain K = C x' / (x C x' + u^2),  m' = m + K_m (y - m - f),  C' = C - K x C

Reference: one further reading of a normal linear model (Kalman's update; GUM supplement JCGM 102:2011 6.2 for the
covariance of the two).
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import lru_cache

from core.errors import InputError
from core.measuring.reach import LARGEST, within_reach
from core.part_size.shop_split import PIECE_U_RATIO
from core.quantity import Estimate, coverage_factor, size_ratio
from core.words import tr

_MOST = 100.0  # of an effect or its uncertainty: its exponential is still a number


@dataclass(frozen=True, slots=True)
class SplitPair:
    """Machine and lot along one axis.

    Attributes:
        axis: x, y or z.
        machine_ratio: m, with `u_machine_ratio`.
        lot_ratio: f, with `u_lot_ratio`; below zero where it shrinks.
        covariance_ratio: of the two, the square of a ratio.
        prints: kept prints of this machine, of any lot.
        lots: different lots among them.
        machines: different machines that printed this lot.
        others: kept trials that link the two to the rest, prints of just these two left out.
        travel: whether the travel of the axis was read directly.
        by_prior: whether the machine's figure is mostly its drive's tolerance.
        allowance_ratio: factor by which parts of the lot are drawn larger now, 1 for not at all.
        axis_ratio: factor on the axis in force beside its calculated steps, 1 for none.
    """

    axis: str
    machine_ratio: float
    u_machine_ratio: float
    lot_ratio: float
    u_lot_ratio: float
    covariance_ratio: float
    prints: int = 0
    lots: int = 0
    machines: int = 0
    others: int = 0
    travel: bool = False
    by_prior: bool = True
    allowance_ratio: float = 1.0
    axis_ratio: float = 1.0

    def __post_init__(self) -> None:
        """Refuse effects that no machine and no lot has."""
        for name in ("machine_ratio", "u_machine_ratio", "lot_ratio", "u_lot_ratio", "covariance_ratio"):
            if not abs(getattr(self, name)) <= _MOST:
                raise InputError(name, tr("The share of a machine or a lot is out of reach; check the sizes."))

    @property
    def machine_scale(self) -> Estimate:
        """The machine's share as a scale error, with its calculated steps."""
        value = math.expm1(self.machine_ratio)
        return Estimate(f"machine_scale_{self.axis}", value, self.u_machine_ratio * (1 + value), math.inf, "1")

    @property
    def shrinkage(self) -> Estimate:
        """The lot's share, above zero where parts come out smaller than drawn."""
        size = math.exp(self.lot_ratio)
        return Estimate(f"shrinkage_{self.axis}", 1.0 - size, self.u_lot_ratio * size, math.inf, "1")

    @property
    def allowance(self) -> Estimate:
        """Factor by which parts of this lot are to be drawn larger."""
        factor = math.exp(-self.lot_ratio)
        return Estimate(f"shrink_allowance_{self.axis}", factor, self.u_lot_ratio * factor, math.inf, "1")

    @within_reach
    def with_print(self, scale: Estimate) -> SplitPair:
        """Return the pair after a further print of these two with this scale error.

        Raises:
            InputError: field `scale`, no scale error of a print.
        """
        longer = size_ratio(scale.value)
        y = math.log1p(scale.value) - math.log(self.allowance_ratio * self.axis_ratio)
        u2 = print_u_ratio(scale.u, scale.dof) ** 2 / longer**2
        of_m = self.u_machine_ratio**2 + self.covariance_ratio
        of_f = self.u_lot_ratio**2 + self.covariance_ratio
        whole = of_m + of_f + u2
        off = y - self.machine_ratio - self.lot_ratio
        return replace(
            self,
            machine_ratio=self.machine_ratio + of_m / whole * off,
            lot_ratio=self.lot_ratio + of_f / whole * off,
            u_machine_ratio=math.sqrt(self.u_machine_ratio**2 - of_m**2 / whole),
            u_lot_ratio=math.sqrt(self.u_lot_ratio**2 - of_f**2 / whole),
            covariance_ratio=self.covariance_ratio - of_m * of_f / whole,
            prints=self.prints + 1,
        )


def print_u_ratio(u_ratio: float, dof: float) -> float:
    """Return the standard uncertainty of one print's scale error for the split.

    Few degrees of freedom widen it, so that its normal 95 % interval is as wide as Student's; piece-to-piece scatter is
    added, which one print cannot show.

    Raises:
        InputError: field `u_ratio` or `dof`, out of reach.
    """
    if not u_ratio < LARGEST:  # asked for each print of the shop: no guard that looks at every argument
        raise InputError("u_ratio", tr("The uncertainty of a scale of {u:g} is out of reach; check it.", u=u_ratio))
    return math.hypot(u_ratio * widening(dof), PIECE_U_RATIO)


@lru_cache(maxsize=4096)  # a shop has a hundred thousand prints, of pieces with few numbers of readings
def widening(dof: float) -> float:
    """Return by how much a standard uncertainty of these degrees of freedom is widened for the normal distribution."""
    return coverage_factor(dof) / coverage_factor(math.inf)
