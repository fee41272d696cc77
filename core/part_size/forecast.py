"""What a change of setting would do to parts of every size, the tempting wrong one included.

    as is            e(L) = s*L + c,   c = 2*k*w - r*B
    contour offset   w set to zero:     s*L - r*B
    shrink allowance drawn by 1/(1+s):  c
    both             -r*B
    small piece      steps times f = L0/(L0 + e(L0)):  f*(1 + s)*L + c - L

The last one makes the length L0 right and every other one wrong: a correction of scale read off one short length books
a constant error as a proportional one.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.part_size.features import FEATURES, FeatureKind
from core.part_size.sizeerror import Band, SizeError
from core.words import tr

Floats = NDArray[np.float64]


class Change(StrEnum):
    """What is changed before the next part."""

    AS_IS = "as_is"
    CONTOUR_OFFSET = "contour_offset"
    SHRINK_ALLOWANCE = "shrink_allowance"
    BOTH = "both"


@dataclass(frozen=True, slots=True)
class SmallPiece:
    """A correction of the steps read off one short length, and what it does to a long one (mm).

    Attributes:
        from_length_mm: the length L0 it would be read from.
        factor: f, on the motion of the axis.
        at_length_mm: the long length.
        before_mm: its error as it is.
        after_mm: its error after the correction.
        U_factor_ratio: expanded uncertainty of f (95 %): what other readings of the same piece would make of it.
    """

    from_length_mm: float
    factor: float
    at_length_mm: float
    before_mm: float
    after_mm: float
    U_factor_ratio: float

    @property
    def unshrunk_mm(self) -> tuple[float, float]:
        """The error that f alone brings to the long length of a filament that does not shrink, (f - 1) L, with U."""
        return (self.factor - 1.0) * self.at_length_mm, self.U_factor_ratio * self.at_length_mm


@within_reach
def forecast(fit: SizeError, axis: str, kind: FeatureKind, length_mm: ArrayLike, change: Change) -> Band | None:
    """Return the error to expect after a change, with bands, or None where the readings do not tell the amount.

    The change takes away what was estimated; how far the estimate may be off stays, so the bands keep their width.

    Args:
        fit: the readings as they are.
        axis: x or y.
        kind: of the features asked for.
        length_mm: (j,) nominal lengths.
        change: what is done before the next part.
    """
    band = fit.band(axis, kind, length_mm)
    scale, outset = fit.estimate(f"scale_{axis}"), fit.estimate("wall_outset")
    offset = change in (Change.CONTOUR_OFFSET, Change.BOTH)
    allowance = change in (Change.SHRINK_ALLOWANCE, Change.BOTH)
    if band is None or (offset and outset is None) or (allowance and scale is None):
        return None
    mean = band.mean_mm.copy()
    if offset and outset is not None:
        mean -= 2.0 * FEATURES[kind].k * outset.value
    if allowance and scale is not None:
        mean -= scale.value * band.length_mm
    return Band(band.length_mm, mean, band.confidence_mm, band.prediction_mm)


@finite_in("from_length_mm")
def scaled_from(error_at_mm: float, from_length_mm: float) -> float:
    """Return f = L0/(L0 + e(L0)), the factor on the steps that makes one length L0 come out right.

    Raises:
        InputError: field `from_length_mm` when the length or its reading is not above zero.
    """
    if not (from_length_mm > 0 and from_length_mm + error_at_mm > 0):
        raise InputError("from_length_mm", tr("A correction is read from a length above 0 mm; choose another one."))
    return from_length_mm / (from_length_mm + error_at_mm)


@within_reach
def small_piece_curve(
    fit: SizeError, axis: str, kind: FeatureKind, from_length_mm: float, length_mm: ArrayLike
) -> Floats | None:
    """Return the error (j,) of each length after the steps were corrected from one, or None where it is not told.

    Args:
        fit: the readings as they are.
        axis: x or y.
        kind: of the features asked for, and of the short length.
        from_length_mm: the length L0 that the correction is read from.
        length_mm: (j,) nominal lengths.

    Raises:
        InputError: field `from_length_mm` when it is not above zero.
    """
    lengths = np.asarray(length_mm, dtype=float)
    band = fit.band(axis, kind, np.append(lengths, from_length_mm))
    if band is None:
        return None
    factor = scaled_from(float(band.mean_mm[-1]), from_length_mm)
    scale = fit.estimate(f"scale_{axis}")
    stretch = 1.0 + (scale.value if scale else 0.0)
    constant = band.mean_mm[:-1] - (stretch - 1.0) * lengths
    return np.asarray(factor * stretch * lengths + constant - lengths)


@within_reach
def small_piece_effect(
    fit: SizeError, axis: str, kind: FeatureKind, from_length_mm: float, at_length_mm: float
) -> SmallPiece | None:
    """Return what correcting the steps from one short length does to a long one, or None where it cannot be told."""
    after = small_piece_curve(fit, axis, kind, from_length_mm, [at_length_mm])
    band = fit.band(axis, kind, [from_length_mm, at_length_mm])
    if after is None or band is None or math.isclose(from_length_mm, at_length_mm):
        return None
    factor = scaled_from(float(band.mean_mm[0]), from_length_mm)
    U_factor = factor**2 / from_length_mm * float(band.confidence_mm[0])  # df = -f^2/L0 de
    return SmallPiece(from_length_mm, factor, at_length_mm, float(band.mean_mm[1]), float(after[0]), U_factor)
