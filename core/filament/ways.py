"""Ways to the cross-section of a filament, and which of them is good enough to move the diameter that is set.

    u(A)/A = 2 u(d)/d        good enough: U(d) <= 0.02 mm, so that a change of 0.02 mm is told from none

A way not used yet is judged by what is known of the gauge, the balance and the density; scatter comes on top.

Reference: JCGM 100:2008 5.1.6. The change worth setting, 0.02 mm: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from core.filament.diameter import area_ratio
from core.filament.massperlength import diameter_from_mass
from core.measuring.finite import finite_in
from core.measuring.gauge import Gauge
from core.measuring.reach import within_reach
from core.quantity import Estimate
from core.words import Words, tr

CHANGE_MM = 0.02
_PIECE_MM = 1000.0
_MM_PER_M = 1000.0


class WayName(StrEnum):
    """How the cross-section is found."""

    CALIPER = "caliper"
    MICROMETER = "micrometer"
    MASS = "mass"


def way_words(name: WayName) -> Words:
    """Return the name of a way for people."""
    return {
        WayName.CALIPER: tr("by caliper"),
        WayName.MICROMETER: tr("by micrometer"),
        WayName.MASS: tr("by balance"),
    }[name]


@dataclass(frozen=True, slots=True)
class Way:
    """One way, with the diameter it gives (planned: the nominal) and the area's relative uncertainty that follows."""

    name: WayName
    diameter: Estimate
    area: Estimate
    measured: bool

    @property
    def enough(self) -> bool:
        """Whether it tells a change of 0.02 mm from none."""
        return self.diameter.U <= CHANGE_MM


def ways_words(ways: Sequence[Way], nominal_mm: float) -> Words:
    """Say how well each way knows the area, and what a change of 0.02 mm asks for."""
    said = [
        tr("{way} to ± {U} %{used}", way=way_words(way.name), U=f"{100.0 * way.area.U:.2g}",
           used=tr(" (used)") if way.measured else "")
        for way in ways
    ]
    return tr(
        "The area is known {caliper}, {micrometer}, {balance}; to tell 0.02 mm from none it takes ± {limit} %.",
        caliper=said[0],
        micrometer=said[1],
        balance=said[2],
        limit=f"{200.0 * CHANGE_MM / nominal_mm:.2g}",
    )


@within_reach
def way_of(name: WayName, diameter: Estimate, nominal_mm: float, *, measured: bool) -> Way:
    """Return a way with the uncertainty of its area."""
    return Way(name, diameter, area_ratio(diameter, nominal_mm), measured)


@within_reach
@finite_in("nominal_mm")
def plan_by_gauge(gauge: Gauge, nominal_mm: float) -> Way:
    """Return what a gauge can tell at best: many places, no scatter left."""
    u = math.hypot(gauge.u_zero_mm, gauge.u_scale_ratio * nominal_mm)
    diameter = Estimate("diameter", nominal_mm, u, math.inf, "mm")
    return way_of(WayName(gauge.kind), diameter, nominal_mm, measured=False)


@within_reach
def plan_by_mass(density: Estimate, nominal_mm: float, u_balance_g: float, u_length_mm: float) -> Way:
    """Return what a balance can tell from one metre, with the density as known now."""
    per_m = density.value * math.pi * nominal_mm**2 / 4.0
    u = math.hypot(u_balance_g * _MM_PER_M / _PIECE_MM, per_m * u_length_mm / _PIECE_MM)
    mass_per_length = Estimate("mass_per_length", per_m, u, math.inf, "g/m")
    return way_of(WayName.MASS, diameter_from_mass(mass_per_length, density), nominal_mm, measured=False)
