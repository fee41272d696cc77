"""Reversal error and its companions: one axis, several targets, each approached several times from both sides.

    x_ij = reading - target              up: approached moving towards +, down: moving towards -
    B_i = mean_up_i - mean_down_i        B = max |B_i|                       B_mean = mean of B_i
    m_i = (mean_up_i + mean_down_i)/2    M = max m_i - min m_i
    E = max of all means - min of all means, of both directions together or of one
    R_i up = 4 s_i up                    R_i = max(2 s_i up + 2 s_i down + |B_i|, R_i up, R_i down)    R = max R_i
    A = max(mean + 2s) - min(mean - 2s), of both directions together or of one

Symbols: i target, j cycle, s standard deviation with n - 1. Where the readings begin to count drops out of all of them.

Their uncertainty is type A (s/sqrt(n) of a mean, s/sqrt(2(n - 1)) of a standard deviation) with the resolution of two
readings, r/sqrt(6). What the instrument does wrong at every reading alike is not in it.

Reference: ISO 230-2:2014 clauses 3 and 8; JCGM 100:2008 4.2, 5.1, F.2.2.1 (resolution), G.4 (degrees of freedom).
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, fields
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.choices import each_of
from core.measuring.finite import finite_in
from core.measuring.gum import combine
from core.measuring.reach import of_one_length, within_reach
from core.quantity import Estimate
from core.words import Words, tr

Floats = NDArray[np.float64]
Part = tuple[float, float]  # contribution to the uncertainty and its degrees of freedom

GROSS_MM = 1.0  # half a tooth of a usual belt; nothing that is to be calibrated (common practice, no source)
FEWEST_CYCLES, FEWEST_TARGETS = 5, 5  # of the standard, for axes up to 2 m


class Approach(StrEnum):
    """From where a target is approached."""

    UP = "up"
    DOWN = "down"


@dataclass(frozen=True, slots=True, eq=False)
class Approached:
    """The deviations of one direction by target (m,): mean and standard deviation of so many readings."""

    mean_mm: Floats
    sd_mm: Floats
    count: NDArray[np.int_]

    def __post_init__(self) -> None:
        """Make the arrays read-only."""
        for each in fields(self):
            getattr(self, each.name).flags.writeable = False

    @property
    def high_mm(self) -> Floats:
        """Mean + 2s."""
        return self.mean_mm + 2.0 * self.sd_mm

    @property
    def low_mm(self) -> Floats:
        """Mean - 2s."""
        return self.mean_mm - 2.0 * self.sd_mm


@dataclass(frozen=True, slots=True, eq=False)
class Reversal:
    """A full cycle evaluated.

    Attributes:
        axis: x, y or z.
        target_mm: (m,) rising.
        up: approached moving towards +.
        down: approached moving towards -.
        worst: number of the target with the largest reversal error.
        resolution_mm: worth of the last digit.
        minds: what falls short of the standard.
        found: the estimates, worked out once.
    """

    axis: str
    target_mm: Floats
    up: Approached
    down: Approached
    worst: int
    resolution_mm: float
    minds: tuple[Words, ...]
    found: tuple[Estimate, ...] = field(init=False, repr=False, default=())

    def __post_init__(self) -> None:
        """Work out the figures of the standard."""
        self.target_mm.flags.writeable = False
        object.__setattr__(self, "found", tuple(self._figures()))

    @property
    def reversal_mm(self) -> Floats:
        """B_i by target (m,)."""
        return self.up.mean_mm - self.down.mean_mm

    def estimates(self) -> tuple[Estimate, ...]:
        """Return B, its mean, M, E, R and A, the last three by direction too."""
        return self.found

    def estimate(self, stem: str) -> Estimate:
        """Return one estimate by its name without the axis."""
        return next(e for e in self.found if e.name == f"{stem}_{self.axis}")

    def _figures(self) -> Iterable[Estimate]:
        up, down, B = self.up, self.down, self.reversal_mm
        both = (up, down)
        yield self._estimate("reversal", abs(B[self.worst]), [*_parts(up, self.worst), *_parts(down, self.worst)])
        m = B.size
        mean_parts = [part for way in both for i in range(m) for part in _parts(way, i, 1.0 / m)]
        yield self._estimate("mean_reversal", B.mean(), mean_parts)
        middle = (up.mean_mm + down.mean_mm) / 2.0
        ends = (int(np.argmax(middle)), int(np.argmin(middle)))
        yield self._estimate(
            "mean_deviation", np.ptp(middle), [part for i in ends for way in both for part in _parts(way, i, 0.5)]
        )
        for suffix, ways in (("", both), ("_up", (up,)), ("_down", (down,))):
            yield self._range(f"systematic{suffix}", ways, 0.0)
        yield self._repeatability()
        yield self._one_way_repeatability("_up", up)
        yield self._one_way_repeatability("_down", down)
        for suffix, ways in (("", both), ("_up", (up,)), ("_down", (down,))):
            yield self._range(f"accuracy{suffix}", ways, 2.0)

    def _range(self, stem: str, ways: Sequence[Approached], of_sd: float) -> Estimate:
        """Return E (of_sd 0) or A (of_sd 2): the highest mean + of_sd*s less the lowest mean - of_sd*s."""
        highs = np.concatenate([way.mean_mm + of_sd * way.sd_mm for way in ways])
        lows = np.concatenate([way.mean_mm - of_sd * way.sd_mm for way in ways])
        ends = [divmod(int(place), self.target_mm.size) for place in (np.argmax(highs), np.argmin(lows))]
        parts = [part for way, i in ends for part in _parts(ways[way], i, 1.0, of_sd)]
        return self._estimate(stem, highs.max() - lows.min(), parts)

    def _repeatability(self) -> Estimate:
        up, down = self.up, self.down
        across = 2.0 * up.sd_mm + 2.0 * down.sd_mm + np.abs(self.reversal_mm)
        R = np.stack([across, 4.0 * up.sd_mm, 4.0 * down.sd_mm])
        which, i = divmod(int(np.argmax(R)), across.size)
        parts = (
            [*_parts(up, i, 1.0, 2.0), *_parts(down, i, 1.0, 2.0)],
            _parts(up, i, 0.0, 4.0),
            _parts(down, i, 0.0, 4.0),
        )
        return self._estimate("repeatability", R.max(), parts[which])

    def _one_way_repeatability(self, suffix: str, way: Approached) -> Estimate:
        i = int(np.argmax(way.sd_mm))
        return self._estimate(f"repeatability{suffix}", 4.0 * way.sd_mm[i], _parts(way, i, 0.0, 4.0))

    def _estimate(self, stem: str, value_mm: float, parts: Sequence[Part]) -> Estimate:
        u = combine(
            [*(p[0] for p in parts), pair_resolution_mm(self.resolution_mm)], [*(p[1] for p in parts), math.inf]
        )
        return Estimate(f"{stem}_{self.axis}", float(value_mm), u.u, u.dof, "mm")


@within_reach
@of_one_length("target_mm", "reading_mm", "approach")
@finite_in("target_mm")
def reversal_from_cycle(
    target_mm: ArrayLike, reading_mm: ArrayLike, approach: Sequence[str], *, axis: str, resolution_mm: float
) -> Reversal:
    """Evaluate a full cycle.

    Args:
        target_mm: (n,) commanded positions.
        reading_mm: (n,) measured positions, from any origin; nan for one that is missing or left out.
        approach: (n,) names of `Approach`.
        axis: x, y or z.
        resolution_mm: worth of the last digit of the readings.

    Raises:
        InputError: field `reading_mm`, with its row, for a reading far from its like, or for too few; `approach`, with
            its row; `resolution_mm`.

    Reference: ISO 230-2:2014 clauses 3 and 8.
    """
    targets, readings = np.asarray(target_mm, dtype=float), np.asarray(reading_mm, dtype=float)
    check_resolution(resolution_mm)
    ways = np.array(each_of(Approach, approach, "approach"), dtype=str)
    known = np.isfinite(readings)
    groups = {
        (float(target), way): np.flatnonzero(known & (targets == target) & (ways == way))
        for target in np.unique(targets[known])
        for way in Approach
    }
    for rows in groups.values():
        refuse_stray(readings, rows.tolist())
    places = sorted({target for target, _ in groups})
    complete = [p for p in places if min(groups[p, Approach.UP].size, groups[p, Approach.DOWN].size) >= 2]
    if len(complete) < 2:
        raise InputError(
            "reading_mm",
            tr(
                "Two targets, each approached twice from either side, are the least ({count} so far); at one target "
                "alone take the quick cycle.",
                count=len(complete),
            ),
        )
    up, down = (
        _approached([readings[groups[place, way]] - place for place in complete])
        for way in (Approach.UP, Approach.DOWN)
    )
    B = up.mean_mm - down.mean_mm
    worst = int(np.argmax(np.abs(B)))
    refuse_gross(abs(float(B[worst])))
    minds = _minds(len(complete), len(places) - len(complete), int(min(up.count.min(), down.count.min())))
    return Reversal(axis, np.array(complete), up, down, worst, resolution_mm, minds)


def _parts(way: Approached, i: int, of_mean: float = 1.0, of_sd: float = 0.0) -> list[Part]:
    """Return the parts of the uncertainty of of_mean*mean + of_sd*s at target i."""
    n, s = int(way.count[i]), float(way.sd_mm[i])
    return [(of_mean * s / math.sqrt(n), n - 1.0), (of_sd * s / math.sqrt(2.0 * (n - 1)), n - 1.0)]


def _approached(deviations_mm: Sequence[Floats]) -> Approached:
    return Approached(
        np.array([d.mean() for d in deviations_mm]),
        np.array([d.std(ddof=1) for d in deviations_mm]),
        np.array([d.size for d in deviations_mm]),
    )


def _minds(complete: int, incomplete: int, cycles: int) -> tuple[Words, ...]:
    minds = []
    if incomplete:
        minds.append(tr("Targets without two readings from either side: {count}; left out.", count=incomplete))
    if complete < FEWEST_TARGETS or cycles < FEWEST_CYCLES:
        minds.append(
            tr(
                "ISO 230-2 asks for {targets} targets and {cycles} cycles; here are {some} and {few}.",
                targets=FEWEST_TARGETS,
                cycles=FEWEST_CYCLES,
                some=complete,
                few=cycles,
            )
        )
    return tuple(minds)


@finite_in("resolution_mm")
def pair_resolution_mm(resolution_mm: float) -> float:
    """Return the standard uncertainty that the resolution gives a difference of two readings, r/sqrt(6)."""
    return resolution_mm / math.sqrt(6.0)


def check_resolution(resolution_mm: float) -> None:
    """Refuse a resolution that cannot be: equal readings must not pass for exact ones."""
    if not 0 < resolution_mm < GROSS_MM:
        raise InputError(
            "resolution_mm", tr("The dial must read to more than 0 and less than 1 mm; type its graduation.")
        )


def refuse_stray(readings_mm: Floats, rows: Sequence[int]) -> None:
    """Refuse a reading that is far from its like: mistyped, or the indicator was moved."""
    if len(rows) < 3:
        return
    like = readings_mm[np.asarray(rows)]
    off = np.abs(like - np.median(like))
    if off.max() > GROSS_MM:
        row = rows[int(np.argmax(off))]
        raise InputError(
            "reading_mm",
            tr(
                "{reading:g} mm is {off:.2f} mm from the other readings of the same approach; type it again, or leave "
                "it out with a reason.",
                reading=float(readings_mm[row]),
                off=float(off.max()),
            ),
            row,
        )


def refuse_gross(reversal_mm: float) -> None:
    """Refuse what is no property of the axis."""
    if reversal_mm > GROSS_MM:
        raise InputError(
            "reading_mm",
            tr(
                "Reversal {value:.2f} mm is more than the teeth of a belt allow: something is loose. Look at the clamp "
                "of the carriage and the grub screws, then measure again; this is not kept as a result.",
                value=reversal_mm,
            ),
        )
