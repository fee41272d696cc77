"""Moisture of a filament from its loss of mass in drying, and the filament left on a spool.

    loss = (m_before - m_after) / (m_before - m_spool)          left = (m_now - m_spool) / lambda

Symbols: m masses with the spool, m_spool that of the empty one, lambda mass per length. The zero of the balance
cancels in the loss; what remains is one reading's uncertainty, twice. A cardboard spool dries too and counts as loss.

Reference: JCGM 100:2008 5.1.2. Lost more than 0.3 % (polyamide 0.5 %): it was wet; common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from core.errors import InputError
from core.measuring.gum import combine
from core.measuring.reach import within_reach
from core.quantity import Estimate
from core.words import tr

METHOD = "drying 1"
WET_RATIO = 0.003
WET_POLYAMIDE_RATIO = 0.005
_MOST_RATIO = 0.15  # no filament takes up as much
_HEAVIEST_G = 30000.0


class Moisture(StrEnum):
    """What a loss says."""

    WET = "wet"
    DRY = "dry"
    UNCLEAR = "unclear"


@dataclass(frozen=True, slots=True)
class Drying:
    """The loss as a ratio to the filament's mass before, the limit it is held against, and what follows."""

    loss: Estimate
    limit_ratio: float
    moisture: Moisture

    def estimates(self) -> tuple[Estimate, ...]:
        """Return drying_loss (1)."""
        return (self.loss,)


@within_reach
def measure_drying(
    before_g: float, after_g: float, spool_g: float, *, u_balance_g: float, u_spool_g: float, polyamide: bool = False
) -> Drying:
    """Return the loss in drying and whether the filament was wet.

    Args:
        before_g: spool with filament before drying.
        after_g: the same after drying.
        spool_g: the empty spool.
        u_balance_g: standard uncertainty of one weighing, without the balance's zero.
        u_spool_g: standard uncertainty of the empty spool's mass.
        polyamide: whether the limit of polyamides holds.

    Raises:
        InputError: fields `before_g`, `after_g` or `spool_g`, for masses that cannot be.
    """
    _check_mass("before_g", before_g, spool_g)
    _check_mass("after_g", after_g, spool_g)
    net = before_g - spool_g
    if after_g - before_g > 2.0 * math.sqrt(2.0) * u_balance_g:
        raise InputError(
            "after_g",
            tr("{after:g} g after drying is more than {before:g} g before; were the two swapped?", after=after_g,
               before=before_g),
        )
    loss = (before_g - after_g) / net
    if loss > _MOST_RATIO:
        raise InputError(
            "after_g",
            tr("A loss of {percent:.1f} % is more than any filament takes up; was filament used between the two "
               "weighings, or a digit slipped?", percent=100.0 * loss),
        )
    u = combine([math.sqrt(2.0) * u_balance_g / net, abs(loss) * u_spool_g / net])
    estimate = Estimate("drying_loss", loss, u.u, u.dof, "1")
    limit = WET_POLYAMIDE_RATIO if polyamide else WET_RATIO
    return Drying(estimate, limit, _moisture(estimate, limit))


@within_reach
def stock_left(
    now_g: float, spool_g: float, mass_per_length: Estimate, *, u_balance_g: float, u_spool_g: float
) -> Estimate:
    """Return the filament left, in m.

    Args:
        now_g: spool with filament.
        spool_g: the empty spool.
        mass_per_length: of this lot, in g/m.
        u_balance_g: standard uncertainty of one weighing.
        u_spool_g: standard uncertainty of the empty spool's mass.

    Raises:
        InputError: fields `now_g`, `spool_g` or `mass_per_length`, for masses that cannot be.
    """
    _check_mass("now_g", now_g, spool_g)
    if mass_per_length.value <= 0.0:
        raise InputError(
            "mass_per_length",
            tr("{value:g} g/m is no mass of a filament; measure it anew.", value=mass_per_length.value),
        )
    net = now_g - spool_g
    left = net / mass_per_length.value
    u = combine(
        [math.hypot(u_balance_g, u_spool_g) / mass_per_length.value, left * mass_per_length.u / mass_per_length.value],
        [math.inf, mass_per_length.dof],
    )
    return Estimate("stock", left, u.u, u.dof, "m")


def _moisture(loss: Estimate, limit_ratio: float) -> Moisture:
    if loss.value - loss.U > limit_ratio:
        return Moisture.WET
    return Moisture.DRY if loss.value + loss.U <= limit_ratio else Moisture.UNCLEAR


def _check_mass(field: str, mass_g: float, spool_g: float) -> None:
    if not 0.0 <= spool_g < _HEAVIEST_G:
        raise InputError(
            "spool_g", tr("{spool:g} g is no mass of an empty spool; type it in g, 0 for a coil.", spool=spool_g)
        )
    if not mass_g < _HEAVIEST_G:
        raise InputError(field, tr("{mass:g} g is more than 30 kg; type the mass in g.", mass=mass_g))
    if not mass_g > spool_g:
        raise InputError(
            field,
            tr("{mass:g} g is not above the {spool:g} g of the empty spool; type the mass with the spool on.",
               mass=mass_g, spool=spool_g),
        )
