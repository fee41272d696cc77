"""Density of a filament by weighing in air and in water.

    rho = rho_w m_a / (m_a - m_w)

    rho_w(t) = a5 (1 - (t + a1)^2 (t + a2) / (a3 (t + a4)))    water free of air at 101.325 kPa, 0 to 40 °C

Symbols: m_a mass in air, m_w apparent mass in water (below zero for what floats and is pulled under), rho_w density of
the water. Buoyancy in air is left out, as the standard does: 0.03 % for plastics. The water's minerals and air are
below 0.1 %.

Reference: ISO 1183-1 method A (immersion); Tanaka, Girard, Davis, Peuto and Bignell, Metrologia 38 (2001) 301,
equation 1 (from memory, checked against IAPWS R6-95); JCGM 100:2008 5.1.2. The share of clinging bubbles and of the
thread: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from core.errors import InputError
from core.measuring.gum import combine
from core.measuring.reach import of_one_length, within_reach
from core.quantity import Estimate
from core.words import tr

U_BUBBLES_G = 0.02  # standard uncertainty of clinging bubbles and of the thread
_COLDEST_C, _HOTTEST_C = 0.0, 40.0
_A1_C, _A2_C, _A3, _A4_C, _A5_KG_M3 = -3.983035, 301.797, 522528.9, 69.34881, 999.974950
_LEAST_LIFT = 1e-6
_LEAST_G = 1.0
_LOW_G_CM3, _HIGH_G_CM3 = 0.3, 9.0
_KG_M3_PER_G_CM3 = 1000.0


def water_density_g_cm3(water_c: float) -> float:
    """Return the density of pure water at a temperature between 0 and 40 °C.

    Raises:
        InputError: field `water_c` outside that range.
    """
    if not _COLDEST_C <= water_c <= _HOTTEST_C:
        raise InputError(
            "water_c", tr("Water at {water:g} °C: the formula holds from 0 to 40 °C. Let it come to room temperature.",
                          water=water_c)
        )
    t = water_c
    rho = _A5_KG_M3 * (1.0 - (t + _A1_C) ** 2 * (t + _A2_C) / (_A3 * (t + _A4_C)))
    return rho / _KG_M3_PER_G_CM3


@within_reach
@of_one_length("air_g", "water_g")
def measure_density(
    air_g: Sequence[float],
    water_g: Sequence[float],
    water_c: float,
    *,
    u_balance_g: float,
    u_bubbles_g: float = U_BUBBLES_G,
    u_water_c: float = 1.0,
) -> Estimate:
    """Return the density in g/cm3.

    Args:
        air_g: (n,) mass of each sample in air.
        water_g: (n,) what the balance shows for the same sample in water.
        water_c: temperature of the water.
        u_balance_g: standard uncertainty of one weighing.
        u_bubbles_g: standard uncertainty of bubbles and thread.
        u_water_c: standard uncertainty of the water's temperature.

    Raises:
        InputError: fields `air_g`, `water_g` or `water_c`, for none, too little, or what cannot be plastic.
    """
    rho_w = water_density_g_cm3(water_c)
    if not air_g:
        raise InputError("air_g", tr("No sample weighed in air and in water yet."))
    for row, (m_a, m_w) in enumerate(zip(air_g, water_g, strict=True)):
        _check_sample(row, m_a, m_w, rho_w)
    air, water = np.asarray(air_g, dtype=float), np.asarray(water_g, dtype=float)
    each = rho_w * air / (air - water)
    rho, n = float(np.mean(each)), each.size
    s = float(np.std(each, ddof=1)) if n > 1 else 0.0
    by_air = float(np.mean(rho_w * water / (air - water) ** 2))  # -d rho / d m_a
    by_water = float(np.mean(rho_w * air / (air - water) ** 2))  # d rho / d m_w
    warmer, colder = min(water_c + u_water_c, _HOTTEST_C), max(water_c - u_water_c, _COLDEST_C)
    u_rho_w = abs(water_density_g_cm3(warmer) - water_density_g_cm3(colder)) / 2.0
    u = combine(
        [
            s / math.sqrt(n),
            by_air * u_balance_g,
            by_water * math.hypot(u_balance_g, u_bubbles_g),
            rho / rho_w * u_rho_w,
        ],
        [max(n - 1.0, 1.0), math.inf, math.inf, math.inf],
    )
    return Estimate("density", rho, u.u, u.dof, "g/cm3")


def _check_sample(row: int, m_a: float, m_w: float, rho_w: float) -> None:
    if not m_a >= _LEAST_G:
        raise InputError(
            "air_g",
            tr("{mass:g} g in air is too little to weigh in water; take 5 to 10 g, at least 1 g.", mass=m_a),
            row,
        )
    if m_a - m_w <= _LEAST_LIFT:
        raise InputError(
            "water_g",
            tr("{water:g} g in water is not below {air:g} g in air; were the two swapped?", water=m_w, air=m_a),
            row,
        )
    rho = rho_w * m_a / (m_a - m_w)
    if not _LOW_G_CM3 <= rho <= _HIGH_G_CM3:
        raise InputError(
            "water_g",
            tr("{air:g} g in air and {water:g} g in water would be {density:.3g} g/cm³: check the decimal mark, and "
               "wipe bubbles off.", air=m_a, water=m_w, density=rho),
            row,
        )
