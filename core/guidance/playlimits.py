"""Limits of a reversal error, and what is proved against them.

Up to 0.02 mm is good, up to 0.05 mm acceptable (common practice, no source). A limit counts as kept, or as passed, only
where that is proved with its uncertainty; in between nothing is proved.

Reference: JCGM 106:2012, ISO 14253-1:2017 (proof against a limit).
"""

from __future__ import annotations

from enum import StrEnum

from core.measuring.tolerance import Conformity, decide
from core.quantity import Estimate

GOOD_MM = 0.02
LIMIT_MM = 0.05


class Play(StrEnum):
    """What is proved of a reversal error."""

    GOOD = "good"
    ACCEPTABLE = "acceptable"
    TOO_LARGE = "too_large"
    UNCLEAR = "unclear"


def play_of(reversal: Estimate) -> Play:
    """Return what is proved of a reversal error (mm)."""
    good, limit = (decide(reversal.value, reversal.u, most, reversal.dof).conformity for most in (GOOD_MM, LIMIT_MM))
    if limit is Conformity.NOT_CONFORMING:
        return Play.TOO_LARGE
    if good is Conformity.CONFORMING:
        return Play.GOOD
    return Play.ACCEPTABLE if limit is Conformity.CONFORMING else Play.UNCLEAR
