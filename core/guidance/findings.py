"""Is an effect small, real, or not told? Judged against the tolerance of the lengths it was read on.

Symbols: T half-width of the tolerance, e effect on the size, U its expanded uncertainty.

small    proved below T/4: nothing to gain by a change
real     beyond its uncertainty and above T/10
unclear  neither: more readings are needed

T/4 and T/10: common practice, no source. Reference: JCGM 106:2012, ISO 14253-1:2017 (proof against a limit).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.reach import within_reach
from core.measuring.tolerance import Conformity, decide, tolerance_mm, tolerance_range_mm
from core.part_size.sizeerror import SizeError
from core.quantity import Estimate
from core.words import tr

SMALL_SHARE = 0.25
REAL_SHARE = 0.1


class Size(StrEnum):
    """What is known of the size of an effect."""

    SMALL = "small"
    REAL = "real"
    UNCLEAR = "unclear"


@dataclass(frozen=True, slots=True)
class Finding:
    """An estimate, its effect on a size (an estimate in mm), the tolerance there (mm), and what is known of it."""

    estimate: Estimate
    effect: Estimate
    tolerance_mm: float
    size: Size


def tolerance_at(length_mm: float, tolerance: str | float) -> float:
    """Return the half-width of the tolerance at one length; see `tolerances_at`."""
    return float(tolerances_at(np.array([length_mm]), tolerance)[0])


def tolerances_at(length_mm: NDArray[np.float64], tolerance: str | float) -> NDArray[np.float64]:
    """Return the half-width of the tolerance at lengths (n,): of a class, or the plus-minus value (mm) itself.

    Below the first row of a class its first row is used, above the last its last.

    Raises:
        InputError: field `tolerance` for an unknown class or a value not above zero.
    """
    if isinstance(tolerance, str):
        lowest, highest = tolerance_range_mm(tolerance)
        return tolerance_mm(np.clip(length_mm, math.nextafter(lowest, math.inf), highest), tolerance)
    if not 0 < tolerance < math.inf:
        raise InputError("tolerance", tr("A tolerance is above 0 mm; type plus-minus what the part may be off."))
    return np.full(length_mm.shape, tolerance)


@within_reach
def finding(estimate: Estimate, factor_mm: float, length_mm: float, tolerance: str | float) -> Finding:
    """Judge an estimate by its effect on the size.

    Args:
        estimate: what was found.
        factor_mm: effect on the size per unit of the estimate (the length for a scale, 2 for the wall outset).
        length_mm: nominal length at which the tolerance is taken.
        tolerance: a class, or plus-minus in mm.
    """
    effect = Estimate("effect", estimate.value * factor_mm, estimate.u * abs(factor_mm), estimate.dof, "mm")
    T = tolerance_at(length_mm, tolerance)
    return Finding(estimate, effect, T, _judge(effect, T))


def _judge(effect: Estimate, T: float) -> Size:
    limit = SMALL_SHARE * T
    if decide(effect.value, effect.u, limit, effect.dof, lower=-limit).conformity is Conformity.CONFORMING:
        return Size.SMALL
    return Size.REAL if effect.significant and abs(effect.value) > REAL_SHARE * T else Size.UNCLEAR


def scale_difference(fit: SizeError) -> Estimate | None:
    """Return scale_x - scale_y of one print: shrinkage is the same in both, so this is free of it."""
    return fit.combination("scale_difference", scale_x=1.0, scale_y=-1.0)


def common_scale(fit: SizeError) -> Estimate | None:
    """Return the scale of the drawing plane: X and Y weighted for least uncertainty, or the one that was measured."""
    x, y = fit.estimate("scale_x"), fit.estimate("scale_y")
    if x is None or y is None:
        return x or y
    shared = fit.covariance("scale_x", "scale_y")
    own_x, own_y = x.u**2 - shared, y.u**2 - shared
    of_x = min(max(own_y / (own_x + own_y), 0.0), 1.0) if own_x + own_y > 0 else 0.5
    return fit.combination("scale_xy", scale_x=of_x, scale_y=1.0 - of_x)
