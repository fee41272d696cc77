"""Mass per length of a filament, and the diameter that follows from it with the density.

    lambda = mean(m_i / L_i)        A = lambda / rho        d = sqrt(4 lambda / (pi rho))

Symbols: m mass and L length of a piece, rho density. u(A)/A = sqrt((u(lambda)/lambda)^2 + (u(rho)/rho)^2), and half of
it for d. The shape of the cross-section does not count. Balance and rule are off alike for all pieces, so averaging
takes nothing off their uncertainty.

Reference: JCGM 100:2008 4.2 and 5.1.6. Limits of what is usual: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from core.errors import InputError
from core.measuring.gum import combine
from core.measuring.reach import above_zero, of_one_length, within_reach
from core.quantity import Estimate
from core.words import tr

USUAL_LENGTH_MM = 1000.0
_LEAST_LENGTH_MM = 100.0
_G_CM3_LOW, _G_CM3_HIGH = 0.6, 6.0  # foamed to metal-filled, at the nominal diameter
_MM_PER_M = 1000.0


@of_one_length("mass_g", "length_mm")
@within_reach
@above_zero("nominal_mm")
def measure_mass_per_length(
    mass_g: Sequence[float], length_mm: Sequence[float], nominal_mm: float, *, u_balance_g: float, u_length_mm: float
) -> Estimate:
    """Return mass_per_length in g/m.

    Args:
        mass_g: (n,) of the pieces.
        length_mm: (n,) of the same pieces.
        nominal_mm: diameter as claimed, to notice a slipped decimal mark.
        u_balance_g: standard uncertainty of one weighing.
        u_length_mm: standard uncertainty of one length.

    Raises:
        InputError: fields `mass_g` or `length_mm`, for none, a short piece, or a mass that no filament has.
    """
    if not mass_g:
        raise InputError("mass_g", tr("No piece weighed yet."))
    for row, (m, L) in enumerate(zip(mass_g, length_mm, strict=True)):
        _check_piece(row, m, L, nominal_mm)
    masses, lengths = np.asarray(mass_g, dtype=float), np.asarray(length_mm, dtype=float)
    each = _MM_PER_M * masses / lengths
    mean, n = float(np.mean(each)), each.size
    s = float(np.std(each, ddof=1)) if n > 1 else 0.0
    u = combine(
        [s / math.sqrt(n), mean * float(np.mean(u_balance_g / masses)), mean * float(np.mean(u_length_mm / lengths))],
        [max(n - 1.0, 1.0), math.inf, math.inf],
    )
    return Estimate("mass_per_length", mean, u.u, u.dof, "g/m")


@within_reach
def diameter_from_mass(mass_per_length: Estimate, density: Estimate) -> Estimate:
    """Return the diameter of the circle of area lambda/rho, from g/m and g/cm3.

    Raises:
        InputError: field `mass_per_length` or `density`, not above zero.
    """
    for field, estimate in (("mass_per_length", mass_per_length), ("density", density)):
        if not estimate.value > 0.0:
            says = tr("{value:g} {unit} is not above zero; weigh again.", value=estimate.value, unit=estimate.unit)
            raise InputError(field, says)
    area_mm2 = mass_per_length.value / density.value  # g/m over g/cm3 is mm2
    d = math.sqrt(4.0 * area_mm2 / math.pi)
    relative = combine(
        [mass_per_length.u / mass_per_length.value / 2.0, density.u / density.value / 2.0],
        [mass_per_length.dof, density.dof],
    )
    return Estimate("diameter", d, d * relative.u, relative.dof, "mm")


def _check_piece(row: int, m: float, L: float, nominal_mm: float) -> None:
    if not L >= _LEAST_LENGTH_MM:
        raise InputError(
            "length_mm",
            tr("A piece of {length:g} mm is too short to weigh by length; cut 1 m, at least 100 mm.", length=L),
            row,
        )
    if not m > 0:
        raise InputError("mass_g", tr("A mass of {mass:g} g is not above zero; weigh again.", mass=m), row)
    implied = m / L * _MM_PER_M / (math.pi * nominal_mm**2 / 4.0)
    if not _G_CM3_LOW <= implied <= _G_CM3_HIGH:
        raise InputError(
            "mass_g",
            tr("{mass:g} g for {length:g} mm would be plastic of {density:.3g} g/cm³ at {nominal:g} mm; check the "
               "decimal mark, the length and the nominal.", mass=m, length=L, density=implied, nominal=nominal_mm),
            row,
        )
