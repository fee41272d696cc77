"""The time of a part at each level of a trial, and along a range of levels: where faster buys nothing.

Reference: core.motion_trials.gcodetime.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from core.motion_trials.gcodepath import Path
from core.motion_trials.gcodetime import Limits, PathTime, time_path

Floats = NDArray[np.float64]

SHARES = np.linspace(0.0, 1.0, 41)
SPEED, ACCELERATION = "speed", "acceleration"
_ALONG = 13  # levels of the curve: smooth to the eye, and a file of a million moves is timed in a few seconds
_BEYOND = 1.6  # how far the curve goes past the slowest and the fastest level


@dataclass(frozen=True, slots=True, eq=False)
class PartTimes:
    """What a path takes.

    Attributes:
        time_s: by level.
        at_speed_ratio: by level the share of the printed length driven at the wanted speed.
        above_ratio: by level the share of it whose rate passes the flow ceiling; empty without one.
        rate_mm3_s: by level the volumetric rates (m,) that shares `SHARES` of the printed length do not pass.
        levels: (k,) of the curve.
        along_s: (k,) its times.
        moves: of the path.
        printed_mm: length of its printing moves.
    """

    time_s: dict[float, float]
    at_speed_ratio: dict[float, float]
    above_ratio: dict[float, float]
    rate_mm3_s: dict[float, Floats]
    levels: Floats
    along_s: Floats
    moves: int
    printed_mm: float


def part_times(
    path: Path,
    limits: Limits,
    of: str,
    level: Sequence[float],
    *,
    speed_mm_s: float | None = None,
    ceiling_mm3_s: float | None = None,
    step: Callable[[float], None] = lambda part: None,
) -> PartTimes:
    """Return the time of a path at each level.

    Args:
        path: the moves.
        limits: of the machine.
        of: `speed` of the printing moves in mm/s, or `acceleration` in mm/s2.
        level: one or more.
        speed_mm_s: speed of the printing moves where levels are accelerations; the file's own when None.
        ceiling_mm3_s: flow ceiling to hold the rates against; None for none.
        step: called with the part of the work done.

    Raises:
        InputError: as `gcodetime.time_path`.
    """
    wanted = sorted(set(level))
    along = np.geomspace(wanted[0] / _BEYOND, wanted[-1] * _BEYOND, _ALONG)
    total = len(wanted) + along.size
    times: list[PathTime] = []
    for number, value in enumerate([*wanted, *(float(v) for v in along)]):
        times.append(_at(path, limits, of, value, speed_mm_s))
        step((number + 1) / total)
    own = dict(zip(wanted, times, strict=False))
    above = {} if ceiling_mm3_s is None else {v: t.above_ratio(path.length_mm, ceiling_mm3_s) for v, t in own.items()}
    return PartTimes(
        time_s={value: t.duration_s for value, t in own.items()},
        at_speed_ratio={value: t.at_speed_ratio for value, t in own.items()},
        above_ratio=above,
        rate_mm3_s={value: _rates(path, t) for value, t in own.items()},
        levels=along,
        along_s=np.array([t.duration_s for t in times[len(wanted) :]]),
        moves=path.moves,
        printed_mm=times[0].printed_mm,
    )


def _rates(path: Path, timed: PathTime) -> Floats:
    """Return the rates that shares of the printed length do not pass; zeros where nothing is printed."""
    printed = np.flatnonzero(path.prints)
    if printed.size == 0:
        return np.zeros(SHARES.size)
    order = printed[np.argsort(timed.rate_mm3_s[printed])]
    along = np.cumsum(path.length_mm[order])
    place = np.searchsorted(along, SHARES * along[-1]).clip(max=order.size - 1)
    return np.asarray(timed.rate_mm3_s[order[place]])


def _at(path: Path, limits: Limits, of: str, value: float, speed_mm_s: float | None) -> PathTime:
    if of == SPEED:
        return time_path(path, limits, speed_mm_s=value)
    return time_path(path, replace(limits, acceleration_mm_s2=value), speed_mm_s=speed_mm_s)
