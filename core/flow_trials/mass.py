"""Flow factor from the mass of a piece without infill, against the plastic its path asks for.

    V_target = sum(e) A_f  at flow factor 1        m_expected = k V_target rho        k_new = k m_expected / m
    by mass per length: rho A_f is replaced by lambda, so that the filament's diameter does not count

Symbols: e filament lengths of the path, A_f cross-section of the filament as set, rho density, lambda mass per length,
m mass of one piece, k flow factor in force. By lambda the trial tests the feed; a diameter set wrong stays hidden.

Reference: JCGM 100:2008 4.2 and 5.1.6 (relative uncertainties of a product add in squares). Limits (0.7 and
1.4 of the mass expected, 1 % for the balance): common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.flow_trials.bead import strand_area_mm2
from core.flow_trials.conditions import PrintConditions
from core.flow_trials.plastic import Density, MassPerLength
from core.measuring.gum import combine
from core.measuring.reach import above_zero, within_reach
from core.quantity import Estimate, rounded_pair
from core.words import Words, tr

METHOD = "mass 1"
NAME = "flow_ratio_mass"
LEAST_SHARE, MOST_SHARE = 0.7, 1.4
COARSE_BALANCE_RATIO = 0.01
_SLIP_FACTOR = 1.5

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Commanded:
    """The plastic one piece asks for: its volume, and whether the factor in force is in it already.

    Raises:
        InputError: field `volume_mm3` not above zero.
    """

    volume_mm3: float
    with_factor: bool = True

    def __post_init__(self) -> None:
        """Refuse what is no volume."""
        if not 0 < self.volume_mm3 < 1e9:
            raise InputError("volume_mm3", tr("A path of {value:g} mm³ cannot be; add up its filament lengths.",
                                              value=self.volume_mm3))  # fmt: skip

    @within_reach
    @above_zero("in_force_ratio")
    def target_mm3(self, in_force_ratio: float) -> float:
        """Return the volume at flow factor 1.

        Raises:
            InputError: field `in_force_ratio` not above zero.
        """
        return self.volume_mm3 / in_force_ratio if self.with_factor else self.volume_mm3


@within_reach
def commanded_by_length(path_filament_mm: float, filament_mm: float, with_factor: bool = True) -> Commanded:
    """Return what a path asks for, from the sum of its filament lengths and the filament diameter it was counted with.

    Raises:
        InputError: fields `path_filament_mm` or `filament_mm` not above zero.
    """
    if not 0 < path_filament_mm < 1e8:
        raise InputError(
            "path_filament_mm",
            tr("{value:g} mm of filament cannot be; add up the lengths of the path.", value=path_filament_mm),
        )
    return Commanded(path_filament_mm * strand_area_mm2(filament_mm, "filament_mm"), with_factor)


@dataclass(frozen=True, slots=True, eq=False)
class MassFlow:
    """The answer of weighed pieces.

    Attributes:
        flow: the factor that lays the commanded volume, flow_ratio_mass.
        mass_g: (n,) pieces with their share of skirt and purge.
        reading_ratio: (n,) the factor each piece asks for by itself.
        expected_g: what one piece weighs when the flow is right, with the factor in force.
        questions: what to mind.
    """

    flow: Estimate
    mass_g: Floats
    reading_ratio: Floats
    expected_g: float
    questions: tuple[Words, ...]


@within_reach
def measure_mass(
    mass_g: Sequence[float],
    conditions: PrintConditions,
    commanded: Commanded,
    plastic: Density | MassPerLength,
    *,
    u_balance_g: float = 0.015,
    rest_g: float = 0.0,
) -> MassFlow:
    """Return the flow factor that the mass of a piece asks for.

    Args:
        mass_g: (n,) pieces of one path, each weighed by itself.
        conditions: what held while they were printed.
        commanded: what the path of one piece asks for.
        plastic: what a volume weighs.
        u_balance_g: standard uncertainty of one weighing that no repeat averages.
        rest_g: skirt, purge and strings of one piece, where the path counts them.

    Raises:
        InputError: field `mass_g`, with the row where it is one, `u_balance_g` or `rest_g`.
    """
    target = commanded.target_mm3(conditions.in_force_ratio)
    expected = conditions.in_force_ratio * target * plastic.g_mm3
    mass = _checked(mass_g, u_balance_g, rest_g) + rest_g
    share = float(np.mean(mass)) / expected
    _check_share(share)
    n = mass.size
    random = float(np.std(mass, ddof=1)) / math.sqrt(n) / float(np.mean(mass)) if n > 1 else 0.0
    parts = [random, u_balance_g / float(np.mean(mass)), plastic.u_ratio]
    relative = combine(parts, [max(n - 1.0, 1.0), math.inf, math.inf])
    value = conditions.in_force_ratio / share
    flow = Estimate(NAME, value, value * relative.u, relative.dof, "1")
    return MassFlow(
        flow=flow,
        mass_g=mass,
        reading_ratio=conditions.in_force_ratio * expected / mass,
        expected_g=expected,
        questions=(*_questions(mass, u_balance_g), *_fed(mass, plastic, share, flow.U / flow.value)),
    )


def _checked(mass_g: ArrayLike, u_balance_g: float, rest_g: float) -> Floats:
    mass = np.array(mass_g, dtype=float)
    if not 0 < u_balance_g < 100:
        raise InputError(
            "u_balance_g", tr("The uncertainty of the balance must be above 0 g; its last digit at least.")
        )
    if not 0 <= rest_g < 1000:
        raise InputError("rest_g", tr("Skirt and purge of {value:g} g cannot be; weigh them with the piece.",
                                      value=rest_g))  # fmt: skip
    if mass.size == 0:
        raise InputError("mass_g", tr("Weigh a piece first."))
    for row, value in enumerate(mass):
        if not 0 < value < 1e4:
            raise InputError(
                "mass_g", tr("{value:g} g cannot be; weigh again or leave the row empty.", value=float(value)), row
            )
    middle = float(np.median(mass))
    for row, value in enumerate(mass):
        if not middle / _SLIP_FACTOR < value < middle * _SLIP_FACTOR:
            raise InputError(
                "mass_g",
                tr("{value:g} g beside {middle:g} g: decimal mark, or another piece? Pieces of one path weigh alike.",
                   value=float(value), middle=middle),
                row,
            )  # fmt: skip
    return mass


def _check_share(share: float) -> None:
    if share < LEAST_SHARE:
        raise InputError(
            "mass_g",
            tr(
                "Mass {share:.2f} of expected: a hollow part or one with infill? This trial needs single walls or a "
                "solid piece, and the volume of its path.",
                share=share,
            ),
        )
    if share > MOST_SHARE:
        raise InputError(
            "mass_g",
            tr(
                "Mass {share:.2f} of expected: several pieces on the balance, or the path of one? Compare path and "
                "piece.",
                share=share,
            ),
        )


def _fed(mass: Floats, plastic: Density | MassPerLength, share: float, U_ratio: float) -> list[Words]:
    """Say how much filament is truly in a piece: m/lambda, against what its path commands."""
    if not isinstance(plastic, MassPerLength):
        return []
    fed_m = float(np.mean(mass)) / plastic.mass_per_length_g_m
    length, U_length = rounded_pair(fed_m, fed_m * U_ratio)
    percent, U_percent = rounded_pair(100.0 * share, 100.0 * share * U_ratio)
    return [
        tr(
            "By mass per length this tests the feed: {length} ± {U_length} m of filament are in a piece, {percent} ± "
            "{U_percent} % of what the path commands. A filament diameter set wrong stays hidden: weigh by density.",
            length=length.removeprefix("+"),
            U_length=U_length,
            percent=percent.removeprefix("+"),
            U_percent=U_percent,
        )
    ]


def _questions(mass: Floats, u_balance_g: float) -> list[Words]:
    asks, mean = [], float(np.mean(mass))
    if u_balance_g > COARSE_BALANCE_RATIO * mean:
        asks.append(
            tr(
                "The balance tells {mean:.3g} g to {share:.1f} % only: print at least {least:.0f} g.",
                mean=mean,
                share=100.0 * u_balance_g / mean,
                least=math.ceil(u_balance_g / COARSE_BALANCE_RATIO),
            )
        )
    if mass.size == 1:
        asks.append(tr("One piece: how far the next would differ is not in the interval."))
    return asks
