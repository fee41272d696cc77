"""Pegs in holes: what clearance to draw so that a wanted share goes together.

    P = Phi((c + b_h - b_p) / sqrt(s_h^2 + s_p^2 + u^2))
    u_c^2 = u_bh^2 + u_bp^2 + z^2 (s_h^4/(2 nu_h) + s_p^4/(2 nu_p)) / (s_h^2 + s_p^2 + u^2)

Symbols: c drawn clearance on the diameter, b mean error and s spread of hole and peg, u what means are uncertain by, z
normal quantile of P, nu degrees of freedom of a spread, u_c what c itself is uncertain by.

Reference: difference of two normal sizes; JCGM 100:2008 5.1.2 (u_c); common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.words import tr


@dataclass(frozen=True, slots=True)
class Mate:
    """Mean error and spread (mm) of one of two parts that go together, with what they are uncertain by."""

    bias_mm: float
    sd_mm: float
    u_bias_mm: float = 0.0
    dof: float = math.inf


@within_reach
@finite_in("clearance_mm")
def share_that_fits(clearance_mm: float, hole: Mate, peg: Mate) -> float:
    """Return the share of pairs that go together.

    Raises:
        InputError: field `sd_mm` where nothing is known of the spread.
    """
    from scipy.special import ndtr

    return float(ndtr((clearance_mm + hole.bias_mm - peg.bias_mm) / _spread(hole, peg)))


@within_reach
def clearance_for(share_ratio: float, hole: Mate, peg: Mate) -> tuple[float, float]:
    """Return the clearance on the diameter (mm) to draw so that this share goes together, and its standard uncertainty.

    Raises:
        InputError: field `share` outside 0 to 1, `sd_mm` where nothing is known of the spread.
    """
    from scipy.special import ndtri

    if not 0.0 < share_ratio < 1.0:
        raise InputError("share", tr("A share lies between 0 and 100 %, both left out; 99 % is usual."))
    z, whole = float(ndtri(share_ratio)), _spread(hole, peg)
    of_sd = math.hypot(*(mate.sd_mm**2 / math.sqrt(2.0 * mate.dof) for mate in (hole, peg))) / whole
    return z * whole - hole.bias_mm + peg.bias_mm, math.hypot(hole.u_bias_mm, peg.u_bias_mm, z * of_sd)


def _spread(hole: Mate, peg: Mate) -> float:
    spread = math.hypot(hole.sd_mm, peg.sd_mm, hole.u_bias_mm, peg.u_bias_mm)
    if not spread > 0.0:
        raise InputError("sd_mm", tr("The spread of hole and peg is not known yet; measure several of each."))
    return spread
