"""Time of a whole path on a machine: every move with its limits, all junctions, looking ahead to the end.

Limits: each axis has a speed and an acceleration; the path has an acceleration and a distance by which it may leave a
corner; the filament may have a flow ceiling. A move of unit direction d goes at most at the smallest of the wanted
speed, V_k/|d_k| over the axes k, the root of a r in an arc, and ceiling/(filament area per mm); it speeds up at most
with the smallest of a and A_k/|d_k|. On crossed belts the two motors of X and Y limit a move too, by its direction
(`crossedbelts`). The look-ahead is that of `lookahead`, without end: a controller that sees only
some moves ahead is slower, most of all on short moves.

Jerk is not limited here; a machine that limits it takes longer by about a/j for each ramp (`profile.double_s`).

Reference: elementary kinematics, `core.motion_trials.profile` and `lookahead`.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.motion_trials.crossedbelts import motor_accelerations_mm_s2, motor_speeds_mm_s
from core.motion_trials.gcodepath import Path
from core.motion_trials.lookahead import junction_speeds_mm_s
from core.motion_trials.profile import corner_speeds_mm_s, move_durations_s
from core.words import tr

Floats = NDArray[np.float64]

AXES = ("x", "y", "z", "e")
_FASTEST_MM_S = 1e4  # where neither file nor limits say a speed; no machine here is faster
_AT_SPEED = 0.999  # share of the wanted speed that counts as reached


@dataclass(frozen=True, slots=True)
class Limits:
    """What a machine may do.

    Attributes:
        acceleration_mm_s2: along the path.
        corner_mm: how far the path may leave a corner.
        axis_speed_mm_s: by axis (x, y, z, e) where it has its own limit.
        axis_acceleration_mm_s2: likewise.
        ceiling_mm3_s: flow ceiling that no printing move may pass; None where moves may ask for more.
        filament_mm: diameter of the filament.
        crossed_belts: whether two motors move X and Y together; their axis limits are then those of moves along one
            axis alone.
    """

    acceleration_mm_s2: float
    corner_mm: float = 0.02
    axis_speed_mm_s: dict[str, float] = field(default_factory=dict)
    axis_acceleration_mm_s2: dict[str, float] = field(default_factory=dict)
    ceiling_mm3_s: float | None = None
    filament_mm: float = 1.75
    crossed_belts: bool = False

    @property
    def filament_area_mm2(self) -> float:
        """Cross-section of the filament."""
        return math.pi * self.filament_mm**2 / 4


@dataclass(frozen=True, slots=True, eq=False)
class PathTime:
    """How long a path takes.

    Attributes:
        duration_s: all of it, dwells too. print_s: moves that lay filament down. dwell_s: dwells.
        printed_mm: length of the printing moves.
        at_speed_ratio: share of that length driven at the wanted speed.
        mean_mm_s: mean speed over that length.
        move_s: (n,) time of each move.
        peak_mm_s: (n,) speed reached in each move.
        rate_mm3_s: (n,) volumetric rate at that speed, 0 where nothing is laid down.
    """

    duration_s: float
    print_s: float
    dwell_s: float
    printed_mm: float
    at_speed_ratio: float
    mean_mm_s: float
    move_s: Floats
    peak_mm_s: Floats
    rate_mm3_s: Floats

    def above_ratio(self, length_mm: Floats, ceiling_mm3_s: float) -> float:
        """Return the share of the printed length whose rate passes a ceiling; `length_mm` (n,) is that of the path."""
        printed = self.rate_mm3_s > 0
        total = float(np.sum(length_mm[printed]))
        return float(np.sum(length_mm[self.rate_mm3_s > ceiling_mm3_s * (1 + 1e-9)])) / total if total else 0.0


def time_path(path: Path, limits: Limits, *, speed_mm_s: float | None = None) -> PathTime:
    """Return how long a path takes.

    Args:
        path: the moves.
        limits: of the machine.
        speed_mm_s: speed wanted of printing moves instead of the file's own.

    Raises:
        InputError: a limit that is not above zero; its field.
    """
    check_limits(limits)
    wanted, acceleration = _own_limits(path, limits, speed_mm_s)
    cap = np.zeros(path.moves + 1)
    slower = np.minimum(wanted[:-1], wanted[1:])
    gentler = np.minimum(acceleration[:-1], acceleration[1:])
    cap[1:-1] = np.minimum(corner_speeds_mm_s(path.turn_cosine, gentler, limits.corner_mm), slower)
    stand = path.feeds_only[1:] | path.feeds_only[:-1] | path.stop_before[1:]
    cap[1:-1][stand] = 0.0
    speeds = junction_speeds_mm_s(path.length_mm, acceleration, cap)
    move_s, peak, cruise = move_durations_s(path.length_mm, speeds[:-1], speeds[1:], wanted, acceleration)
    prints = path.prints
    asked = np.full(path.moves, float(speed_mm_s)) if speed_mm_s else path.wanted_mm_s
    printed_mm, print_s = float(np.sum(path.length_mm[prints])), float(np.sum(move_s[prints]))
    reached = prints & (peak >= _AT_SPEED * np.where(np.isfinite(asked), asked, wanted))
    per_mm = np.where(prints, path.filament_mm * limits.filament_area_mm2 / path.length_mm, 0.0)
    return PathTime(
        duration_s=float(np.sum(move_s)) + path.dwell_s,
        print_s=print_s,
        dwell_s=path.dwell_s,
        printed_mm=printed_mm,
        at_speed_ratio=float(np.sum(cruise[reached])) / printed_mm if printed_mm else 0.0,
        mean_mm_s=printed_mm / print_s if print_s else 0.0,
        move_s=move_s,
        peak_mm_s=peak,
        rate_mm3_s=per_mm * peak,
    )


def times_by_speed_s(path: Path, limits: Limits, speed_mm_s: Sequence[float]) -> Floats:
    """Return the time of the path for each wanted speed of its printing moves (k,)."""
    return np.array([time_path(path, limits, speed_mm_s=speed).duration_s for speed in speed_mm_s])


def times_by_acceleration_s(
    path: Path, limits: Limits, acceleration_mm_s2: Sequence[float], *, speed_mm_s: float | None = None
) -> Floats:
    """Return the time of the path for each acceleration along it (k,)."""
    return np.array(
        [
            time_path(path, replace(limits, acceleration_mm_s2=value), speed_mm_s=speed_mm_s).duration_s
            for value in acceleration_mm_s2
        ]
    )


@within_reach
@finite_in("filament_per_mm_ratio")
def straights_path(length_mm: float, count: int, filament_per_mm_ratio: float = 0.0) -> Path:
    """Return a path of equal straight lines with a right angle between them, where no file is at hand.

    Raises:
        InputError: field `length_mm`, not above zero.
    """
    from core.motion_trials.gcodepath import Turns

    if not 0 < length_mm < 1e5:
        raise InputError("length_mm", tr("A straight of {length:g} mm cannot be; type a length.", length=length_mm))
    way = np.arange(count) % 4
    ends = Turns(np.choose(way, [1.0, 0.0, -1.0, 0.0]), np.choose(way, [0.0, 1.0, 0.0, -1.0]), np.zeros(count))
    no = np.zeros(count, dtype=bool)
    filament = np.full(count, max(filament_per_mm_ratio, 1e-12) * length_mm)
    lengths, free = np.full(count, length_mm), np.full(count, np.inf)
    return Path(lengths, filament, free, ends, ends, free, no, no, np.arange(count), 0.0)


@within_reach
def check_limits(limits: Limits) -> None:
    """Refuse limits that cannot be.

    Raises:
        InputError: the field at fault.
    """
    values = {"acceleration_mm_s2": limits.acceleration_mm_s2, "corner_mm": limits.corner_mm,
              "filament_mm": limits.filament_mm}  # fmt: skip
    values |= {f"axis_speed_{axis}_mm_s": v for axis, v in limits.axis_speed_mm_s.items()}
    values |= {f"axis_acceleration_{axis}_mm_s2": v for axis, v in limits.axis_acceleration_mm_s2.items()}
    if limits.ceiling_mm3_s is not None:
        values["ceiling_mm3_s"] = limits.ceiling_mm3_s
    for name, value in values.items():
        if not 0 < value < math.inf:
            raise InputError(name, tr("This must be a number above 0; type the limit that holds."))


def _own_limits(path: Path, limits: Limits, speed_mm_s: float | None) -> tuple[Floats, Floats]:
    """Return for each move the highest speed and the acceleration that all limits allow."""
    wanted = np.minimum(path.wanted_mm_s, _FASTEST_MM_S)
    if speed_mm_s is not None:
        if not 0 < speed_mm_s < math.inf:
            raise InputError("speed_mm_s", tr("This must be a number above 0; type the limit that holds."))
        wanted = np.where(path.prints, speed_mm_s, wanted)
    acceleration = np.full(path.moves, float(limits.acceleration_mm_s2))
    curved = np.flatnonzero(np.isfinite(path.radius_mm))
    for axis in AXES:
        speed, most = limits.axis_speed_mm_s.get(axis), limits.axis_acceleration_mm_s2.get(axis)
        if speed is None and most is None:
            continue
        share = _share(path, axis, curved)
        for limit, target in ((speed, wanted), (most, acceleration)):
            if limit is not None:
                with np.errstate(divide="ignore"):
                    np.minimum(target, limit / share, out=target)
    if limits.crossed_belts:
        np.minimum(wanted, motor_speeds_mm_s(path, limits.axis_speed_mm_s), out=wanted)
        np.minimum(acceleration, motor_accelerations_mm_s2(path, limits.axis_acceleration_mm_s2), out=acceleration)
    if limits.ceiling_mm3_s is not None:
        with np.errstate(divide="ignore"):
            room = limits.ceiling_mm3_s / (path.filament_mm * limits.filament_area_mm2) * path.length_mm
        wanted = np.where(path.prints, np.minimum(wanted, room), wanted)
    wanted[curved] = np.minimum(wanted[curved], np.sqrt(acceleration[curved] * path.radius_mm[curved]))
    return wanted, acceleration


def _share(path: Path, axis: str, curved: NDArray[np.intp]) -> Floats:
    """Return how fast an axis goes for one unit of path speed; in an arc X and Y each come to all of it."""
    if axis == "e":
        return np.where(path.feeds_only, 1.0, np.abs(path.filament_mm) / path.length_mm)
    share = np.abs(getattr(path.begin, axis))
    if axis != "z":
        share[curved] = 1.0
    return np.asarray(share)
