"""What follows from weighing a spool before and after drying, and how much filament is left on it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from core.errors import InputError
from core.filament.drying import METHOD, Drying, Moisture, measure_drying, stock_left
from core.filament.materials import find_material, usual_density
from core.guidance.verdict import Advice, Setting
from core.quantity import Estimate, size_text
from core.records.rows import Lot
from core.words import Words, tr

_USUAL_TOLERANCE_MM = 0.05


@dataclass(frozen=True, slots=True)
class Weighing:
    """Masses with the spool on, as typed; `before_g` is None where the spool was not dried."""

    before_g: float | None
    now_g: float
    u_balance_g: float


@dataclass(frozen=True, slots=True)
class WeighingJudgement:
    """Loss in drying and filament left, each None where it cannot be told, and what follows."""

    drying: Drying | None
    stock: Estimate | None
    advice: tuple[Advice, ...]
    mind: tuple[Words, ...]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return drying_loss (1) and stock (m), as far as there are."""
        return (*(self.drying.estimates() if self.drying else ()), *((self.stock,) if self.stock else ()))


def judge_weighing(weighing: Weighing, lot: Lot, mass_per_length: Estimate | None = None) -> WeighingJudgement:
    """Judge a weighing: moisture and stock.

    Args:
        weighing: as typed.
        lot: with its material, claimed diameter and empty spool.
        mass_per_length: of the lot's kept trial; None takes the claim and the usual density.

    Raises:
        InputError: field `spool_mass_g` where the empty spool is not known; else as the functions of
            `core.filament.drying` do.
    """
    if lot.spool_mass_g is None:
        raise InputError(
            "spool_mass_g",
            tr("The mass of the empty spool is needed; weigh one of the same make, and type 0 for a coil without."),
        )
    u = {"u_balance_g": weighing.u_balance_g, "u_spool_g": weighing.u_balance_g}
    match = find_material(lot.material)
    polyamide = match is not None and match.material.polyamide
    drying = None
    if weighing.before_g is not None:
        drying = measure_drying(weighing.before_g, weighing.now_g, lot.spool_mass_g, **u, polyamide=polyamide)
    mind = []
    per_m = mass_per_length
    if per_m is None:
        per_m = usual_mass_per_length(lot)
        mind.append(
            tr("Mass per length as claimed and usual, unverified: weigh a metre on the page Diameter.")
            if per_m
            else tr("How much is left cannot be told: weigh a metre on the page Diameter.")
        )
    stock = None
    if per_m is not None:
        stock = stock_left(weighing.now_g, lot.spool_mass_g, per_m, **u)
    return WeighingJudgement(drying, stock, () if drying is None else (_moisture(drying),), tuple(mind))


def usual_mass_per_length(lot: Lot) -> Estimate | None:
    """Return mass per length in g/m by the maker's claim and the usual density; None where either is not known."""
    density = usual_density(lot.material)
    if density is None or lot.nominal_diameter_mm is None:
        return None
    d = lot.nominal_diameter_mm
    u_d = (lot.claimed_tolerance_mm or _USUAL_TOLERANCE_MM) / math.sqrt(3.0)
    per_m = density.value * math.pi * d**2 / 4.0
    u_relative = math.hypot(density.u / density.value, 2.0 * u_d / d)
    return Estimate("mass_per_length", per_m, per_m * u_relative, math.inf, "g/m")


def _moisture(drying: Drying) -> Advice:
    said = {"loss": size_text(drying.loss), "limit": 100.0 * drying.limit_ratio}
    untouched = tr("Temperature, retraction and flow: moisture looks like all three.")
    if drying.moisture is Moisture.WET:
        action = tr("It was wet. Weigh again after two hours more; dry before every ladder and flow trial.")
        because = tr("It lost {loss}; above {limit:g} % it was wet.", **said)
        return Advice(Setting.FILAMENT_LOT, action, None, "", because, untouched)
    if drying.moisture is Moisture.DRY:
        because = tr("It lost {loss}; up to {limit:g} % it counts as dry.", **said)
        return Advice(Setting.LEAVE, tr("It was dry."), None, "", because, untouched)
    because = tr("It lost {loss}; the limit of {limit:g} % lies inside the interval.", **said)
    action = tr("Dry on, or weigh with a finer balance.")
    return Advice(Setting.UNDECIDED, action, None, "", because, untouched)
