"""Strokes of the direct trials that lie on the bed or fall on it: lines of rising flow, lag lines, strands, pen lines.

    lag line        slow, fast, slow; tau v_e is fed ahead: on each ramp of speed tau e (v2 - v1) more, or less again
    ramp            (v2^2 - v1^2)/(2a) long, within the fast stretch, where the controller speeds up and slows down
    strand          Q/A_f is the speed of the filament

Symbols: tau the lag tried, e filament for each mm of path, v1 and v2 the two speeds, a acceleration, Q rate.

Reference: uniformly accelerated motion. Sizes: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import above_zero, within_reach
from core.pieces.toolpath import PURGE, PathBead, Stroke, bead_stroke
from core.words import tr

APART_MM = 6.0  # lines on the bed
_SLOW_RATIO, _FAST_RATIO = 0.4, 0.35  # of a lag line; the rest is slow again. Slow flow settles in its own time
STRANDS_APART_MM = 40.0
STRAND_HEIGHT_MM = 30.0  # the strand falls, the heap stays below the nozzle
_PURGE_STRAND_MM = 30.0
_OVER_MM = 8.0  # by which pen lines cross at the corners
_TICK_MM = 4.0

Floats = NDArray[np.float64]


@within_reach
def spread(count: int, apart_mm: float) -> Floats:
    """Return places about zero, equally far apart."""
    return np.asarray(apart_mm * (np.arange(count) - (count - 1) / 2), dtype=float)


@finite_in("factor_ratio", "length_mm", "speed_mm_s", "middle_mm")
def ladder_strokes(
    length_mm: float, factor_ratio: Sequence[float], bead: PathBead, middle_mm: tuple[float, float], speed_mm_s: float
) -> list[Stroke]:
    """Return lines along X, the first in front, each with its own multiple of the flow factor; a tick marks the first.

    Args:
        length_mm: of each line.
        factor_ratio: of each line, multiplies the flow factor in force.
        bead: the bead.
        middle_mm: where the middle stands on the bed.
        speed_mm_s: of all lines.
    """
    strokes = [_tick(length_mm, len(factor_ratio), bead, middle_mm, speed_mm_s)]
    for number, (y, factor) in enumerate(zip(spread(len(factor_ratio), APART_MM), factor_ratio, strict=True), start=1):
        points = np.array([(-length_mm / 2, y), (length_mm / 2, y)]) + middle_mm
        strokes.append(bead_stroke(points, bead.height_mm, bead, speed_mm_s, number, factor=factor))
    return strokes


@within_reach
@above_zero("acceleration_mm_s2")
@finite_in("lag_s", "length_mm", "middle_mm")
def lag_strokes(
    length_mm: float,
    lag_s: Sequence[float],
    bead: PathBead,
    middle_mm: tuple[float, float],
    speeds_mm_s: tuple[float, float],
    acceleration_mm_s2: float,
) -> list[Stroke]:
    """Return lines along X that go slow, fast, slow over 40, 35 and 25 % of their length; a tick marks the first.

    Args:
        length_mm: of each line.
        lag_s: of each line, the lag that is fed ahead for.
        bead: the bead.
        middle_mm: where the middle stands on the bed.
        speeds_mm_s: slow and fast.
        acceleration_mm_s2: with which the controller changes from one to the other.

    Raises:
        InputError: field `fast_mm_s` not above the slow speed, `length_mm` where the ramps do not fit,
            `acceleration_mm_s2` not above zero.
    """
    slow, fast = speeds_mm_s
    if not fast > slow:
        raise InputError("fast_mm_s", tr("The fast stretch must be faster than {slow:g} mm/s.", slow=slow))
    ramp = (fast**2 - slow**2) / (2 * acceleration_mm_s2)
    if 2 * ramp >= _FAST_RATIO * length_mm:
        raise InputError(
            "length_mm",
            tr("The speed changes over {ramp:.1f} mm; lines of {length:g} mm are too short. Lower the fast speed, or "
               "set a higher acceleration.", ramp=ramp, length=length_mm),
        )  # fmt: skip
    faster = (_SLOW_RATIO - 0.5) * length_mm
    slower, end = faster + _FAST_RATIO * length_mm, length_mm / 2
    x = np.array([-end, faster, faster + ramp, slower - ramp, slower, end])
    speed = np.array([slow, fast, fast, fast, slow])
    strokes = [_tick(length_mm, len(lag_s), bead, middle_mm, slow)]
    for number, (y, lag) in enumerate(zip(spread(len(lag_s), APART_MM), lag_s, strict=True), start=1):
        points = np.column_stack((x, np.full(6, y))) + middle_mm
        plain = bead_stroke(points, bead.height_mm, bead, speed, number)
        ahead = lag * bead.filament_ratio * (fast - slow) * np.array([0.0, 1.0, 0.0, -1.0, 0.0])
        strokes.append(
            Stroke(points, bead.height_mm, plain.filament_mm + ahead, speed, bead.width_mm, number)
        )
    return strokes


def strand_places_mm(count: int, middle_mm: tuple[float, float]) -> list[tuple[float, float]]:
    """Return where strands fall: a purged one and then `count`, in rows of four, to and fro."""
    rows = -(-(count + 1) // 4)
    across, along = spread(4, STRANDS_APART_MM) + middle_mm[0], spread(rows, STRANDS_APART_MM) + middle_mm[1]
    places = [(float(x), float(y)) for row, y in enumerate(along) for x in (across if row % 2 == 0 else across[::-1])]
    return places[: count + 1]


@within_reach
@above_zero("filament_mm", "pause_s")
@finite_in("filament_mm", "length_mm", "middle_mm", "pause_s", "rate_mm3_s")
def strand_strokes(
    length_mm: float, rate_mm3_s: Sequence[float], filament_mm: float, middle_mm: tuple[float, float], pause_s: float
) -> list[Stroke]:
    """Return strands that fall on the bed from above, the slowest first, after a short one that fills the nozzle.

    Args:
        length_mm: filament of each strand.
        rate_mm3_s: of each strand.
        filament_mm: diameter of the filament.
        middle_mm: where the middle stands on the bed.
        pause_s: how long the nozzle takes from place to place, so that it recovers.

    Raises:
        InputError: field `rate_mm3_s` without any; `filament_mm` or `pause_s` not above zero.
    """
    if not rate_mm3_s:
        raise InputError("rate_mm3_s", tr("No strand is planned; type one rate at least."))
    area = math.pi * filament_mm**2 / 4
    strokes = []
    lengths, rates = [_PURGE_STRAND_MM, *[length_mm] * len(rate_mm3_s)], [rate_mm3_s[0], *rate_mm3_s]
    for number, place in enumerate(strand_places_mm(len(rate_mm3_s), middle_mm)):
        points = np.array([place, place])
        fed, speed = np.array([lengths[number]]), np.array([rates[number] / area])
        approach = STRANDS_APART_MM / pause_s if number else None
        strokes.append(Stroke(points, STRAND_HEIGHT_MM, fed, speed, 0.0, number or PURGE, approach))
    return strokes


@finite_in("length_mm", "speed_mm_s", "middle_mm")
def feed_strokes(length_mm: float, speed_mm_s: float, middle_mm: tuple[float, float]) -> list[Stroke]:
    """Return one long feed in one place, well above the bed."""
    points = np.array([middle_mm, middle_mm])
    return [Stroke(points, STRAND_HEIGHT_MM, np.array([length_mm]), np.array([speed_mm_s]), 0.0, 1)]


@within_reach
@finite_in("pen_z_mm", "sides_mm", "speed_mm_s", "width_mm", "middle_mm")
def pen_strokes(
    sides_mm: tuple[float, float], pen_z_mm: float, width_mm: float, middle_mm: tuple[float, float], speed_mm_s: float
) -> list[Stroke]:
    """Return the four sides of a rectangle, each drawn towards + and over the corners, so that they cross there.

    Args:
        sides_mm: between the crossings, along X and along Y.
        pen_z_mm: height of the axis at which the pen touches.
        width_mm: of the pen's line.
        middle_mm: where the middle stands on the bed.
        speed_mm_s: of drawing.
    """
    half = np.array(sides_mm) / 2
    reach = half + _OVER_MM
    ends = [
        [(-reach[0], -half[1]), (reach[0], -half[1])],
        [(-reach[0], half[1]), (reach[0], half[1])],
        [(-half[0], -reach[1]), (-half[0], reach[1])],
        [(half[0], -reach[1]), (half[0], reach[1])],
    ]
    nothing, speed = np.zeros(1), np.array([speed_mm_s])
    return [
        Stroke(np.array(line) + middle_mm, pen_z_mm, nothing, speed, width_mm, number)
        for number, line in enumerate(ends, start=1)
    ]


def _tick(length_mm: float, count: int, bead: PathBead, middle_mm: tuple[float, float], speed_mm_s: float) -> Stroke:
    """Return a short bead across, at the left of the first line; it belongs to no line."""
    x, y = -length_mm / 2 - _TICK_MM, float(spread(count, APART_MM)[0])
    points = np.array([(x, y - _TICK_MM / 2), (x, y + _TICK_MM / 2)]) + middle_mm
    return bead_stroke(points, bead.height_mm, bead, speed_mm_s, PURGE)
