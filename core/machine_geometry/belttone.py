"""Tension of a belt from the tone of a plucked free span, and whether two belts are tensioned alike.

    F = 4 * m * L^2 * f^2       f = sqrt(F/m) / (2*L), the lowest tone of a stretched string

Symbols: F tension, m mass per length of the belt, L free span, f tone, u standard uncertainty.

A belt is stiffer than a string, so that F is a little too large on short spans; the two belts of a machine are compared
on the same span, where this cancels.

Reference: string of mass per length m under tension F, any textbook of mechanics (from memory); JCGM 100:2008 5.1.
The 5 %, the usual mass of a belt and the usual uncertainties: common practice, no source.
"""

from __future__ import annotations

import math

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.quantity import Estimate
from core.words import tr

ALIKE_RATIO = 0.05
USUAL_MASS_G_M = 8.4  # a 6 mm wide belt of 2 mm pitch
USUAL_U_TONE_HZ, USUAL_U_SPAN_MM, USUAL_U_MASS_RATIO = 1.0, 1.0, 0.05
_LOWEST_TONE_HZ, _HIGHEST_TONE_HZ = 10.0, 1000.0


@within_reach
@finite_in("u_mass_ratio", "u_span_mm", "u_tone_hz")
def belt_tension(
    tone_hz: float,
    span_mm: float,
    mass_g_m: float = USUAL_MASS_G_M,
    u_tone_hz: float = USUAL_U_TONE_HZ,
    u_span_mm: float = USUAL_U_SPAN_MM,
    u_mass_ratio: float = USUAL_U_MASS_RATIO,
) -> Estimate:
    """Return the tension in newtons.

    Raises:
        InputError: a tone outside 10 to 1000 Hz, a span or a mass not above zero.
    """
    for field, value in (("span_mm", span_mm), ("mass_g_m", mass_g_m)):
        if not 0 < value < math.inf:
            raise InputError(field, tr("Span and mass of a belt are above zero; type them again."))
    if not _LOWEST_TONE_HZ <= tone_hz <= _HIGHEST_TONE_HZ:
        raise InputError(
            "tone_hz",
            tr(
                "{tone} Hz is no tone of a belt, which lies between {lowest} and {highest} Hz; listen again.",
                tone=f"{tone_hz:g}",
                lowest=f"{_LOWEST_TONE_HZ:g}",
                highest=f"{_HIGHEST_TONE_HZ:g}",
            ),
        )
    m, L, f = mass_g_m / 1000.0, span_mm / 1000.0, tone_hz
    F = 4 * m * L**2 * f**2
    relative_u = math.hypot(2 * u_tone_hz / tone_hz, 2 * u_span_mm / span_mm, u_mass_ratio)
    return Estimate("belt_tension", F, F * relative_u, math.inf, "N")


def tones_alike(first_hz: float, second_hz: float) -> bool:
    """Return whether two belts of the same span sound alike, within 5 % of the lower tone."""
    return abs(first_hz - second_hz) <= ALIKE_RATIO * min(first_hz, second_hz)
