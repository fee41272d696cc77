"""Flow ceiling: the volumetric rate up to which the hot end delivers what is commanded.

    share = mass / (mass per length * filament length)
    share = r0 for Q below the knee, r0 - b*(Q - knee) above; the ceiling is where the share is 2 % below r0
    ln(ceiling) is nearly linear in the temperature
    speed = safety * ceiling / bead area

Symbols: Q volumetric rate, mm3/s; r0 share at slow rates, which is the net feed and not asked for here; T temperature.

Reference: `core.measuring.brokenstick` for the fit; ISO/TS 28037:2010 for the line over the temperatures. A drop of 2
%, 80 % of the ceiling for printing, and ± 5 K: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.brokenstick import BrokenStick, fit_broken_stick
from core.measuring.reach import within_reach
from core.measuring.straightline import Line, fit_line
from core.quantity import Estimate, coverage_factor
from core.words import Words, tr

METHOD = "ceiling 1"
DROP_RATIO = 0.02
SAFETY_RATIO = 0.8
MOST_SHARE = 1.03
SAME_TEMPERATURE_C = 2.5  # within one trial
HOLDS_WITHIN_K = 5.0

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class CeilingAt:
    """The strands of one temperature: rates, shares, the fit, and the ceiling where it was reached.

    Attributes:
        highest_mm3_s: the highest rate tried; where no ceiling was reached it lies above.
        ceiling: the rate at a drop of 2 %, None where it was not reached or is not bounded by the readings.
        low_mm3_s: lower end of its 95 % interval, -inf where it is open.
        high_mm3_s: upper end of its 95 % interval, inf where it is open.
    """

    temperature_c: float
    rate_mm3_s: Floats
    share_ratio: Floats
    stick: BrokenStick
    highest_mm3_s: float
    ceiling: Estimate | None
    low_mm3_s: float
    high_mm3_s: float


@dataclass(frozen=True, slots=True, eq=False)
class Ceiling:
    """The ceilings by temperature, low to high; the line ln(ceiling) over temperature where three were reached."""

    at: tuple[CeilingAt, ...]
    trend: Line | None

    def estimates(self) -> tuple[Estimate, ...]:
        """Return flow_ceiling (mm3/s), for several temperatures each with its temperature in the name."""
        return tuple(part.ceiling for part in self.at if part.ceiling is not None)


@dataclass(frozen=True, slots=True)
class KnownCeiling:
    """A ceiling that was kept: the nozzle's temperature, the rate, and the trial it comes from."""

    temperature_c: float
    ceiling: Estimate
    trial_id: int


@within_reach
def ceiling_near(known: Sequence[KnownCeiling], temperature_c: float) -> KnownCeiling | None:
    """Return the ceiling that holds at a temperature: the nearest within 5 K, the first of equally near ones."""
    near = [one for one in known if abs(one.temperature_c - temperature_c) <= HOLDS_WITHIN_K]
    return min(near, key=lambda one: abs(one.temperature_c - temperature_c), default=None)


@within_reach
def ceiling_far(known: Sequence[KnownCeiling], temperature_c: float) -> Words | None:
    """Mark that ceilings are known, but none within 5 K of a temperature."""
    if not known or ceiling_near(known, temperature_c) is not None:
        return None
    nearest = min(known, key=lambda one: abs(one.temperature_c - temperature_c))
    return tr(
        "The flow ceiling was measured at {tested:g} °C: outside ±5 K of it nothing is told at {used:g} °C. Measure it "
        "there.",
        tested=round(nearest.temperature_c, 1),
        used=temperature_c,
    )


@within_reach
def delivered_share(mass_g: ArrayLike, length_mm: float, mass_per_length_g_m: float) -> Floats:
    """Return mass / (mass per length * length) of each strand (n,).

    Raises:
        InputError: fields `length_mm` or `mass_per_length_g_m` not above zero, `mass_g` with the row at fault.
    """
    mass = np.asarray(mass_g, dtype=float)
    for field, value in (("length_mm", length_mm), ("mass_per_length_g_m", mass_per_length_g_m)):
        if not 0 < value < math.inf:
            raise InputError(field, tr("This must be above 0; type what was commanded or weighed."))
    for row in np.flatnonzero(~((mass > 0) & (mass < 1000))):
        raise InputError(
            "mass_g",
            tr("A strand of {mass:g} g cannot be; weigh it again or leave the row empty.", mass=float(mass[row])),
            int(row),
        )
    return np.asarray(mass / (mass_per_length_g_m * length_mm / 1000.0))


@within_reach
def fit_ceiling(
    rate_mm3_s: ArrayLike,
    share_ratio: ArrayLike,
    temperature_c: ArrayLike,
    *,
    hot_end_limit_c: float,
) -> Ceiling:
    """Find the flow ceiling at each temperature.

    Args:
        rate_mm3_s: (n,) commanded volumetric rate.
        share_ratio: (n,) delivered share, as `delivered_share` gives it.
        temperature_c: (n,) nozzle temperature; values within 2.5 K count as one.
        hot_end_limit_c: the hot end's stated limit; nothing above it is evaluated.

    Raises:
        InputError: fields `rate_mm3_s`, `share_ratio` or `temperature_c`, with the row at fault.
    """
    rate, share, temperature = _checked(rate_mm3_s, share_ratio, temperature_c, hot_end_limit_c)
    groups = _by_temperature(temperature)
    at = tuple(_one(rate[rows], share[rows], float(np.mean(temperature[rows])), len(groups) > 1) for rows in groups)
    return Ceiling(at, _trend(at))


@within_reach
def highest_speed_mm_s(ceiling: CeilingAt, bead_area_mm2: float, safety_ratio: float = SAFETY_RATIO) -> Estimate:
    """Return the printing speed (mm/s) at a share of the ceiling, or of the highest rate tried where none was reached.

    Args:
        ceiling: of the temperature that is printed with.
        bead_area_mm2: cross-section of the bead.
        safety_ratio: share of the ceiling that is used.

    Raises:
        InputError: field `bead_area_mm2` or `safety_ratio`, not possible.
    """
    if not 0 < bead_area_mm2 < 100:
        raise InputError(
            "bead_area_mm2", tr("A bead of {area:g} mm² cannot be; check width and height.", area=bead_area_mm2)
        )
    if not 0 < safety_ratio <= 1:
        raise InputError("safety_ratio", tr("The share of the ceiling that is used lies between 0 and 1."))
    factor = safety_ratio / bead_area_mm2
    found = ceiling.ceiling or Estimate("flow_ceiling", ceiling.highest_mm3_s, 0.0, math.inf, "mm3/s")
    return Estimate("highest_speed", found.value * factor, found.u * factor, found.dof, "mm/s")


def _one(rate: Floats, share: Floats, temperature_c: float, several: bool) -> CeilingAt:
    slow = float(np.median(share[np.argsort(rate)][: max(2, share.size // 3)]))
    stick = fit_broken_stick(rate, share, -DROP_RATIO * slow)
    place = stick.changed
    reached = stick.seen and math.isfinite(place.low) and math.isfinite(place.high) and place.at <= float(rate.max())
    name = f"flow_ceiling_{temperature_c:.0f}c" if several else "flow_ceiling"
    u = (place.high - place.low) / 2 / coverage_factor(stick.dof) if reached else math.nan
    ceiling = Estimate(name, place.at, u, stick.dof, "mm3/s") if reached else None
    return CeilingAt(temperature_c, rate, share, stick, float(rate.max()), ceiling, place.low, place.high)


def _trend(at: Sequence[CeilingAt]) -> Line | None:
    known = [(part.temperature_c, part.ceiling) for part in at if part.ceiling is not None]
    if len(known) < 3:
        return None
    value = np.array([ceiling.value for _, ceiling in known])
    u = np.array([ceiling.u for _, ceiling in known])
    return fit_line([temperature for temperature, _ in known], np.log(value), u_y=u / value)


def _by_temperature(temperature_c: Floats) -> list[NDArray[np.intp]]:
    """Group rows whose temperatures follow each other within 2.5 K, low to high."""
    order = np.argsort(temperature_c, kind="stable")
    breaks = np.flatnonzero(np.diff(temperature_c[order]) > SAME_TEMPERATURE_C) + 1
    return list(np.split(order, breaks))


def _checked(
    rate_mm3_s: ArrayLike, share_ratio: ArrayLike, temperature_c: ArrayLike, limit_c: float
) -> tuple[Floats, Floats, Floats]:
    rate, share, temperature = (np.asarray(v, dtype=float) for v in (rate_mm3_s, share_ratio, temperature_c))
    if rate.size == 0 or not rate.shape == share.shape == temperature.shape:
        raise InputError("rate_mm3_s", tr("Every strand needs its rate, its mass and its temperature."))
    for row in range(rate.size):
        if not 0 < rate[row] <= 200:
            raise InputError(
                "rate_mm3_s",
                tr("A rate of {rate:g} mm³/s is not between 0 and 200; retype it.", rate=float(rate[row])),
                row,
            )
        if not temperature[row] <= limit_c:
            raise InputError(
                "temperature_c",
                tr(
                    "{temperature:g} °C is above this hot end's stated limit of {limit:g} °C. "
                    "Refused: the lining gives off toxic fume.",
                    temperature=float(temperature[row]),
                    limit=limit_c,
                ),
                row,
            )
        if share[row] > MOST_SHARE:
            raise InputError(
                "share_ratio",
                tr(
                    "{percent:.0f} % of the commanded mass at {rate:g} mm³/s: timing, or a strand "
                    "that stuck; weigh again.",
                    percent=100 * float(share[row]),
                    rate=float(rate[row]),
                ),
                row,
            )
    return rate, share, temperature
