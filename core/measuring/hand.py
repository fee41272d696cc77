"""The hand that holds the instrument: repeatability of one re-seated reading, and the offset between two people.

Symbols: s standard deviation of one reading with nu degrees of freedom, T half-width of a tolerance, d mean reading of
the second person less that of the first.

Reference: JCGM 100:2008 4.2 and F.2.2.1 (a reading is known no better than its last digit); rules of T/10 and T/5:
common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.gum import Distribution, standard_uncertainty
from core.measuring.reach import within_reach
from core.quantity import Estimate
from core.words import tr

_MANY_EQUAL = 5  # so many equal readings are rather typed off a label than read
_GOOD_RATIO, _USABLE_RATIO = 1 / 10, 1 / 5


class HandGrade(StrEnum):
    """What a hand can promise of a tolerance."""

    GOOD = "good"
    USABLE = "usable"
    TOO_COARSE = "too_coarse"


@dataclass(frozen=True, slots=True)
class Hand:
    """How readings of one feature scatter.

    Attributes:
        sd: standard deviation of one reading, not below what the last digit hides.
        dof: its degrees of freedom, of all people together.
        count: readings of the first person.
        offset: what the second person reads more than the first; None with one person.
        all_equal: whether all readings are the same although there are many.
    """

    sd: float
    dof: int
    count: int
    offset: Estimate | None
    all_equal: bool

    def estimate(self, unit: str) -> Estimate:
        """Return the repeatability with its own uncertainty, s/sqrt(2 nu)."""
        return Estimate("sd_hand", self.sd, self.sd / math.sqrt(2 * self.dof), float(self.dof), unit)

    def grade(self, tolerance: float) -> HandGrade:
        """Judge the hand against the half-width of a tolerance."""
        if self.sd < _GOOD_RATIO * tolerance:
            return HandGrade.GOOD
        return HandGrade.USABLE if self.sd < _USABLE_RATIO * tolerance else HandGrade.TOO_COARSE


@within_reach
@finite_in("first", "second")
def hand_from_seatings(first: ArrayLike, second: ArrayLike, resolution: float, unit: str) -> Hand | None:
    """Return how re-seated readings of one feature scatter; None for fewer than two of one person.

    Args:
        first: (n,) readings of one person.
        second: (m,) readings of another person, may be empty.
        resolution: worth of the last digit.
        unit: of the readings.
    """
    people = [np.asarray(readings, dtype=float).ravel() for readings in (first, second)]
    dof = sum(max(readings.size - 1, 0) for readings in people)
    if dof == 0:
        return None
    sum_of_squares = sum(float(np.sum((x - x.mean()) ** 2)) for x in people if x.size)
    floor = standard_uncertainty(resolution / 2, Distribution.RECTANGLE)
    sd = max(math.sqrt(sum_of_squares / dof), floor)
    offset = None
    if all(x.size for x in people):
        d = float(people[1].mean() - people[0].mean())
        offset = Estimate("operator_offset", d, sd * math.sqrt(sum(1 / x.size for x in people)), float(dof), unit)
    everything = np.concatenate(people)
    all_equal = bool(everything.size >= _MANY_EQUAL and np.all(everything == everything[0]))
    return Hand(sd, dof, people[0].size, offset, all_equal)


@within_reach
@finite_in("sd_observed")
def part_spread(sd_observed: float, sd_hand: float, unit: str = "mm") -> float:
    """Return the spread of parts without the hand's share: sqrt(s_observed^2 - s_hand^2).

    Raises:
        InputError: field `sd_observed` where the hand alone scatters as much.
    """
    if not sd_observed > sd_hand >= 0.0:
        raise InputError(
            "sd_observed",
            tr(
                "The parts scatter by {observed:g} {unit}, the hand alone by {hand:g} {unit}: this instrument cannot "
                "see the parts.",
                observed=sd_observed,
                hand=sd_hand,
                unit=unit,
            ),
        )
    return math.sqrt(sd_observed**2 - sd_hand**2)
