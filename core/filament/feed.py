"""Extruder feed: filament really drawn in against commanded, and the steps per millimetre that follow.

    fed = mark - rest            or        fed = mass / mass per length lambda
    ratio = fed / commanded      S_new = S_in_force / ratio

Symbols: S steps per millimetre of the extruder, S_in_force those in force when it was measured, n repeats, u_r standard
uncertainty of reading one mark. A repeat reads two marks; where the scatter of the repeats agrees with that
(chi-squared test), the uncertainty rests on the reading, else on the scatter. By mass a repeat is one weighing of
u_r/lambda; a balance that was used for lambda too is off alike in both, so only its reading counts.

Reference: JCGM 100:2008 4.2, 4.3 and 5.1.6 (relative uncertainty of a quotient). The rules (less than 0.5 %, or
less than U, to leave; 5 % to go back): common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.gum import combine
from core.measuring.reach import of_one_length, within_reach
from core.quantity import Estimate
from core.words import tr

METHOD = "feed 1"
LEAVE_RATIO = 0.005
BITE_RATIO = 0.05  # beyond it is no bite of the wheel
_READING_DOF = 50.0  # a reading uncertainty known to 10 % (JCGM 100:2008 G.4.2)
_FACTORS = (0.25, 0.5, 2.0, 4.0)
_FACTOR_WIDTH = 0.04
_MM_PER_M = 1000.0

Floats = NDArray[np.float64]


class FeedAnswer(StrEnum):
    """What a feed trial says."""

    LEAVE = "leave"
    CHANGE = "change"
    ONCE = "once"
    WRONG_PART = "wrong_part"
    GO_BACK = "go_back"
    UPSIDE_DOWN = "upside_down"
    UNCLEAR = "unclear"


@dataclass(frozen=True, slots=True, eq=False)
class Feed:
    """The ratio fed/commanded of each repeat (n,), its mean, and the steps per millimetre that would make it 1.

    Attributes:
        ratio: mean ratio with u and dof.
        steps: the new steps per millimetre; what they become is for `answer` to say.
        in_force_steps_mm: when it was measured.
        rests_on: `reading` or `scatter`: what the uncertainty rests on.
        factor: the gross factor it looks like, 1 where none.
        answer: what follows.
    """

    repeats_ratio: Floats
    ratio: Estimate
    steps: Estimate
    in_force_steps_mm: float
    rests_on: str
    factor: float
    answer: FeedAnswer

    def estimates(self) -> tuple[Estimate, ...]:
        """Return feed_ratio (1) and feed_steps_mm (steps/mm)."""
        return self.ratio, self.steps


@within_reach
@of_one_length("mark_mm", "rest_mm")
@finite_in("mark_mm", "rest_mm")
def fed_from_marks(mark_mm: Sequence[float], rest_mm: Sequence[float]) -> Floats:
    """Return the filament drawn in (n,): mark before less rest after, both from the same datum.

    Raises:
        InputError: field `rest_mm`, where more was drawn in than was marked, or nothing.
    """
    mark, rest = np.asarray(mark_mm, dtype=float), np.asarray(rest_mm, dtype=float)
    for row, (m, r) in enumerate(zip(mark, rest, strict=True)):
        if r < 0:
            raise InputError(
                "rest_mm",
                tr(
                    "A rest of {rest:g} mm: more than the marked {mark:g} mm would have been drawn in; "
                    "check which way you measured.",
                    rest=float(r),
                    mark=float(m),
                ),
                row,
            )
        if r >= m:
            raise InputError(
                "rest_mm",
                tr(
                    "The rest of {rest:g} mm is not below the mark of {mark:g} mm: nothing was drawn in; "
                    "check which way you measured.",
                    rest=float(r),
                    mark=float(m),
                ),
                row,
            )
    return np.asarray(mark - rest)


@within_reach
def fed_from_mass(mass_g: Sequence[float], mass_per_length_g_m: float) -> Floats:
    """Return the filament delivered in mm (n,), from the mass of each strand and the mass per length of its lot.

    Raises:
        InputError: field `mass_g` with the row, or `mass_per_length_g_m`, for what cannot be.
    """
    if not 0.3 <= mass_per_length_g_m <= 50.0:
        raise InputError(
            "mass_per_length_g_m",
            tr("{value:g} g/m is no filament; 1.75 mm has about 3 g/m. Weigh a metre on the page Diameter.",
               value=mass_per_length_g_m),
        )
    mass = np.asarray(mass_g, dtype=float)
    for row in np.flatnonzero(~((mass > 0) & (mass < 1000))):
        raise InputError(
            "mass_g",
            tr("A strand of {mass:g} g cannot be; weigh it again or leave the row empty.", mass=float(mass[row])),
            int(row),
        )
    return np.asarray(_MM_PER_M * mass / mass_per_length_g_m)


@within_reach
def measure_feed(
    commanded_mm: Sequence[float],
    fed_mm: Sequence[float],
    in_force_steps_mm: float,
    *,
    u_reading_mm: float = 0.3,
    u_scale_ratio: float = 0.0005,
    readings_each: int = 2,
    previous: tuple[float, float] | None = None,
) -> Feed:
    """Return the feed ratio and what follows from it.

    Args:
        commanded_mm: (n,) filament commanded.
        fed_mm: (n,) filament drawn in.
        in_force_steps_mm: steps per millimetre in force when it was measured.
        u_reading_mm: standard uncertainty of reading one mark (of fed_mm itself where it comes from a mass).
        u_scale_ratio: relative standard uncertainty of the rule or of the mass per length; no repeat averages it.
        readings_each: marks read for one repeat, 2 for marks and 1 for a mass.
        previous: ratio and steps in force of the last kept feed trial, to catch a ratio that was applied upside down.

    Raises:
        InputError: fields `commanded_mm`, `fed_mm` or `in_force_steps_mm`, for values that cannot be.
    """
    commanded, fed = _checked(commanded_mm, fed_mm, in_force_steps_mm)
    ratios = fed / commanded
    n = ratios.size
    u_reading = math.sqrt(readings_each) * u_reading_mm / float(np.mean(commanded)) / math.sqrt(n)
    u_scatter = float(np.std(ratios, ddof=1)) / math.sqrt(n) if n > 1 else 0.0
    rests_on = "scatter" if n > 1 and _scatters_more(u_scatter, u_reading, n) else "reading"
    random, dof = (u_scatter, n - 1.0) if rests_on == "scatter" else (u_reading, _READING_DOF)
    mean = float(np.mean(ratios))
    combined = combine([random, mean * u_scale_ratio], [dof, math.inf])
    ratio = Estimate("feed_ratio", mean, combined.u, combined.dof, "1")
    steps = in_force_steps_mm / mean
    u_steps = steps * combined.u / mean
    factor = next((f for f in _FACTORS if abs(mean / f - 1) < _FACTOR_WIDTH), 1.0)
    return Feed(
        ratios,
        ratio,
        Estimate("feed_steps_mm", steps, u_steps, combined.dof, "steps/mm"),
        in_force_steps_mm,
        rests_on,
        factor,
        _answer(ratio, n, factor, in_force_steps_mm, previous),
    )


def _answer(
    ratio: Estimate, repeats: int, factor: float, in_force_steps_mm: float, previous: tuple[float, float] | None
) -> FeedAnswer:
    change = abs(ratio.value - 1.0)
    if factor != 1.0:
        return FeedAnswer.WRONG_PART
    if previous is not None and _upside_down(ratio, in_force_steps_mm, *previous):
        return FeedAnswer.UPSIDE_DOWN
    if change > BITE_RATIO:
        return FeedAnswer.GO_BACK
    if change < LEAVE_RATIO:
        return FeedAnswer.LEAVE
    if change <= ratio.U:
        return FeedAnswer.UNCLEAR
    return FeedAnswer.CHANGE if repeats > 1 else FeedAnswer.ONCE  # one mark misread would be a change


def _upside_down(ratio: Estimate, in_force_steps_mm: float, ratio_before: float, steps_before: float) -> bool:
    """Whether the last ratio was multiplied on instead of divided by: the feed is then its square instead of 1."""
    if abs(ratio_before - 1.0) <= LEAVE_RATIO:
        return False
    applied = math.isclose(in_force_steps_mm, steps_before * ratio_before, rel_tol=1e-3)
    return applied and abs(ratio.value - ratio_before**2) < abs(ratio.value - 1.0)


def _scatters_more(u_scatter: float, u_reading: float, n: int) -> bool:
    """Chi-squared test at 5 %: do the repeats scatter more than reading the marks explains?"""
    from scipy.special import chdtri

    return (n - 1) * (u_scatter / u_reading) ** 2 > float(chdtri(n - 1, 0.05)) if u_reading > 0 else True


def _checked(commanded_mm: Sequence[float], fed_mm: Sequence[float], steps: float) -> tuple[Floats, Floats]:
    commanded, fed = np.asarray(commanded_mm, dtype=float), np.asarray(fed_mm, dtype=float)
    if commanded.size == 0 or commanded.shape != fed.shape:
        raise InputError("fed_mm", tr("Every repeat needs the commanded length and what was drawn in."))
    for field, values in (("commanded_mm", commanded), ("fed_mm", fed)):
        for row in np.flatnonzero(~((values > 0) & (values <= 5000))):
            raise InputError(
                field,
                tr("{length:g} mm of filament is not between 0 and 5000 mm; retype it.", length=float(values[row])),
                int(row),
            )
    if not 0 < steps < 1e6:
        raise InputError(
            "in_force_steps_mm",
            tr("Type the extruder's steps per millimetre in force when you measured; they are above 0."),
        )
    return commanded, fed
