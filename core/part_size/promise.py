"""What a machine and a lot can be promised to hold: bias, spread from piece to piece and within one, tolerance, length.

    T(L) = |bias(L)| + k_2 s(L) + U              promised: 95 % of all parts of a length, with 95 % confidence

Symbols: bias, s mean error and spread of one reading of one new piece (`spread`); U guard band, the expanded
uncertainty of a reading that no repeat removes; k_2 for the degrees of freedom of s and for n = (s/u(bias))^2, all at
the length L; Cp = T/(3 s), Cpk = (T - |bias|)/(3 s).

Reference: ISO 16269-6:2014 (k_2); A. Bissell, Applied Statistics 39 (1990) 331 (lower bound of Cpk; that of Cp from
chi-squared, ISO 22514-2:2017); ISO 14253-1:2017, JCGM 106:2012 8 (guard band). Ten pieces at least, and promises
rounded up to 0.05 mm: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.measuring.tolerance import CLASSES, tolerance_mm, tolerance_range_mm
from core.measuring.tolerancefactor import two_sided_factor
from core.part_size.spread import Spread
from core.quantity import LEVEL
from core.words import tr

METHOD = "promise 1"
FEWEST_PIECES = 10
ROUND_TO_MM = 0.05
_ONE_SIDED_95 = 1.6448536269514722  # normal quantile, for the lower bound of Cpk
_LENGTHS = 201  # at which a promise is held against a class
_FACTORS = 9  # lengths at which the tolerance factor is found; between them it is interpolated

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Promise:
    """What may be promised of one class of features between the shortest and the longest length that was read.

    Attributes:
        spread: what it rests on.
        guard_mm: U at zero length, `guard_ratio` its growth with the length; the two add as squares.
        content: share of all parts.
        confidence: of the statement.
    """

    spread: Spread
    guard_mm: float
    guard_ratio: float
    content: float
    confidence: float

    @within_reach
    def factor_at(self, length_mm: ArrayLike) -> Floats:
        """Return k_2 at lengths: the less mean error and spread are known there, the larger."""
        lengths = np.atleast_1d(np.asarray(length_mm, dtype=float))
        few = np.unique(lengths) if lengths.size <= _FACTORS else np.linspace(lengths.min(), lengths.max(), _FACTORS)
        n = (self.spread.sd_at(few) / self.spread.u_bias_at(few)) ** 2
        known = zip(n.tolist(), self.spread.dof_at(few).tolist(), strict=True)
        factors = [two_sided_factor(size, dof, self.content, self.confidence) for size, dof in known]
        return np.asarray(np.interp(lengths, few, factors))

    @within_reach
    def tolerance_at(self, length_mm: ArrayLike) -> Floats:
        """Return T(L) (mm), not rounded."""
        lengths = np.atleast_1d(np.asarray(length_mm, dtype=float))
        guard = np.hypot(self.guard_mm, self.guard_ratio * lengths)
        spread = self.factor_at(lengths) * self.spread.sd_at(lengths)
        return np.asarray(np.abs(self.spread.bias_at(lengths)) + spread + guard)

    def held_up_to_mm(self, klass: str) -> float | None:
        """Return the length up to which the parts hold a class of `tolerance.CLASSES`; None where not even the first.

        Never beyond the longest length that was read: what was not measured is not promised.
        """
        lowest, highest = tolerance_range_mm(klass)
        low, high = max(self.spread.shortest_mm, math.nextafter(lowest, math.inf)), min(self.spread.longest_mm, highest)
        if low > high:
            return None
        lengths = np.linspace(low, high, _LENGTHS)
        held = self.tolerance_at(lengths) <= tolerance_mm(lengths, klass)
        if not held[0]:
            return None
        return float(lengths[-1] if held.all() else lengths[int(np.argmin(held)) - 1])

    def finest_class(self, classes: Sequence[str] = tuple(CLASSES)) -> str | None:
        """Return the first of these classes that is held over all lengths that were read; None where none is."""
        return next((klass for klass in classes if self.held_up_to_mm(klass) == self.spread.longest_mm), None)


@within_reach
@finite_in("guard_mm", "guard_ratio", "content_ratio", "confidence_ratio")
def promise(
    spread: Spread,
    *,
    guard_mm: float = 0.0,
    guard_ratio: float = 0.0,
    content_ratio: float = LEVEL,
    confidence_ratio: float = LEVEL,
) -> Promise:
    """Return what may be promised.

    Args:
        spread: of one class of features.
        guard_mm: expanded uncertainty of a reading that no repeat removes.
        guard_ratio: its part that grows with the length.
        content_ratio: share of all parts.
        confidence_ratio: of the statement.

    Raises:
        InputError: field `piece` for fewer than ten parts.
    """
    if spread.pieces < FEWEST_PIECES:
        raise InputError(
            "piece",
            tr(
                "Only {count} parts: a spread can be shown, a tolerance cannot be promised. Measure {more} more.",
                count=spread.pieces,
                more=FEWEST_PIECES - spread.pieces,
            ),
        )
    return Promise(spread, guard_mm, guard_ratio, content_ratio, confidence_ratio)


@within_reach
@finite_in("tolerance_mm")
def rounded_up_mm(tolerance_mm: float) -> float:
    """Return a promise rounded up to 0.05 mm.

    Raises:
        InputError: field `tolerance_mm`, out of reach.
    """
    return math.ceil(tolerance_mm / ROUND_TO_MM - 1e-9) * ROUND_TO_MM


@dataclass(frozen=True, slots=True)
class Capability:
    """Cp and Cpk at one length against plus-minus T, with their lower 95 % bounds."""

    length_mm: float
    tolerance_mm: float
    cp_ratio: float
    cp_lower_ratio: float
    cpk_ratio: float
    cpk_lower_ratio: float


@within_reach
@finite_in("length_mm")
def capability(spread: Spread, length_mm: float, tolerance_mm: float) -> Capability:
    """Return Cp and Cpk of one class of features at one length.

    Raises:
        InputError: field `tolerance` when it is not above zero.
    """
    if not 0.0 < tolerance_mm < math.inf:
        raise InputError("tolerance", tr("A tolerance is above 0 mm; type plus-minus what the part may be off."))
    sd, dof = float(spread.sd_at(length_mm)), float(spread.dof_at(length_mm))
    cp = tolerance_mm / (3.0 * sd)
    cpk = (tolerance_mm - abs(float(spread.bias_at(length_mm)))) / (3.0 * sd)
    from scipy.special import chdtri

    cp_lower = cp * math.sqrt(float(chdtri(dof, LEVEL)) / dof)
    return Capability(length_mm, tolerance_mm, cp, cp_lower, cpk, cpk_lower(cpk, dof + 1.0))


@within_reach
@finite_in("cpk_ratio", "n_ratio")
def cpk_lower(cpk_ratio: float, n_ratio: float) -> float:
    """Return the lower 95 % bound Cpk - 1.645 sqrt(1/(9n) + Cpk^2/(2(n-1))) for n parts, effective ones too.

    Raises:
        InputError: field `n_ratio`, not above one.

    Reference: Bissell 1990, equation 5.
    """
    if n_ratio <= 1.0:
        raise InputError("n_ratio", tr("One part does not scatter; read two parts at least."))
    return cpk_ratio - _ONE_SIDED_95 * math.sqrt(1.0 / (9.0 * n_ratio) + cpk_ratio**2 / (2.0 * (n_ratio - 1.0)))
