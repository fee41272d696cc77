"""Delta towers: what a rod that is longer than entered does to the size of parts, although the bed still probes flat.

    h_i = z + sqrt(L^2 - (x - R*cos a_i)^2 - (y - R*sin a_i)^2)
    scale = kappa*dL/L      kappa = (1 + q^2)/(p + q^2*(p - 1))      p = 2/(1 + q^2/2)      q = R/sqrt(L^2 - R^2)

Symbols: h_i height of carriage i at the tower angle a_i, L rod length, R radius from the centre to the towers, dL true
less entered rod length, scale the size error of parts in X and Y with R trimmed again so that the bed is flat. A whole
family of (L, R) is flat near the centre, so a flat bed proves no size.

Reference: plane geometry of the rods; kappa is the limit of a small radius, own derivation, checked by solving h_i.
"""

from __future__ import annotations

import math

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.quantity import Estimate
from core.words import tr

U_ROD_MM = 0.1 / math.sqrt(3.0)  # of a rod measured hole to hole with a caliper; common practice, no source
_MOST_OFF_RATIO = 0.05


@within_reach
@finite_in("tower_deg", "rod_mm", "z_mm")
def carriage_height_mm(
    x_mm: float, y_mm: float, z_mm: float, rod_mm: float, radius_mm: float, tower_deg: float
) -> float:
    """Return the height of the carriage on one tower for a place of the nozzle; nan out of reach of the rod."""
    dx = x_mm - radius_mm * math.cos(math.radians(tower_deg))
    dy = y_mm - radius_mm * math.sin(math.radians(tower_deg))
    square = rod_mm**2 - dx**2 - dy**2
    return z_mm + math.sqrt(square) if square >= 0 else math.nan


@within_reach
@finite_in("u_measured_mm")
def scale_from_rods(rod_mm: float, measured_mm: float, radius_mm: float, u_measured_mm: float = U_ROD_MM) -> Estimate:
    """Return the size error in X and Y that a wrong rod length makes; longer true rods make larger parts.

    Args:
        rod_mm: as entered in the controller.
        measured_mm: hole to hole.
        radius_mm: from the centre to the towers' joints.
        u_measured_mm: standard uncertainty of the measured length.

    Raises:
        InputError: field `rod_mm`, `rod_measured_mm` or `radius_mm`, where such a machine cannot be.
    """
    for field, value in (("rod_mm", rod_mm), ("rod_measured_mm", measured_mm), ("radius_mm", radius_mm)):
        if not 0 < value < math.inf:
            raise InputError(field, tr("A delta has rods and a radius above 0 mm; measure and type them."))
    if radius_mm >= rod_mm:
        raise InputError(
            "radius_mm",
            tr("The radius {radius:g} mm is not below the rod length {rod:g} mm; are they exchanged?",
               radius=radius_mm, rod=rod_mm),
        )  # fmt: skip
    off = measured_mm - rod_mm
    if abs(off) > _MOST_OFF_RATIO * rod_mm:
        raise InputError(
            "rod_measured_mm",
            tr("{measured:g} mm is {off:.1f} mm off the rod as entered; was it measured from hole to hole?",
               measured=measured_mm, off=abs(off)),
        )  # fmt: skip
    share = _kappa(rod_mm, radius_mm) / rod_mm
    return Estimate("delta_scale", share * off, share * u_measured_mm, math.inf, "1")


def _kappa(rod_mm: float, radius_mm: float) -> float:
    q2 = radius_mm**2 / (rod_mm**2 - radius_mm**2)
    p = 2.0 / (1.0 + q2 / 2.0)
    return (1.0 + q2) / (p + q2 * (p - 1.0))
