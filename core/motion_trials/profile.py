"""Motion profiles: how fast one move goes and how long it takes.

With limited acceleration a move is a trapezoid of speed over time, or a triangle where it is too short to reach its
speed. With limited jerk the corners of the trapezoid are rounded: the double S.

Symbols: l length, v0 and v1 speed at the start and at the end, v speed wanted, vp speed reached, a acceleration, j
jerk, theta inside angle of a corner, eps how far the path may leave the corner; T_a, T_v, T_d duration of speeding up,
cruising and slowing down, T_j1 and T_j2 duration of constant jerk in speeding up and in slowing down.

    vp^2 = min(v^2, (v0^2 + v1^2)/2 + a l)
    t = (vp - v0)/a + (vp - v1)/a + (l - (2 vp^2 - v0^2 - v1^2)/(2 a))/vp
    corner: v^2 = a eps sin(theta/2)/(1 - sin(theta/2))

Reference: Biagiotti and Melchiorri, Trajectory Planning for Automatic Machines and Robots (2008), 3.2 (trapezoid), 3.4
(double S, equations 3.17 to 3.30). Corner: an arc that leaves the corner by eps, driven at v^2/r = a; elementary.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.reach import finite_out, within_reach
from core.words import tr

Floats = NDArray[np.float64]

_SHRINK = 0.99  # of the acceleration, where a move is too short for two ramps of it (Biagiotti and Melchiorri, 3.4.4)
_ROUNDING = 1e-9


@dataclass(frozen=True, slots=True)
class Trapezoid:
    """A move with limited acceleration: durations of its parts, and the speed it reaches."""

    speed_up_s: float
    cruise_s: float
    slow_down_s: float
    peak_mm_s: float

    @property
    def duration_s(self) -> float:
        """Time of the whole move."""
        return self.speed_up_s + self.cruise_s + self.slow_down_s


@within_reach
def trapezoid(
    length_mm: float,
    speed_mm_s: float,
    acceleration_mm_s2: float,
    start_mm_s: float = 0.0,
    end_mm_s: float = 0.0,
) -> Trapezoid:
    """Return the fastest move with limited acceleration; a triangle has no cruise.

    Raises:
        InputError: a limit that is not above zero, a speed at an end above the wanted one, or a move too short to
            change from one to the other (field `length_mm`).
    """
    _positive(length_mm=length_mm, speed_mm_s=speed_mm_s, acceleration_mm_s2=acceleration_mm_s2)
    _check_ends(speed_mm_s, start_mm_s, end_mm_s)
    if abs(end_mm_s**2 - start_mm_s**2) > 2 * acceleration_mm_s2 * length_mm * (1 + _ROUNDING):
        raise InputError(
            "length_mm",
            tr(
                "{length:g} mm are too short to change from {start:g} to {end:g} mm/s; allow more acceleration.",
                length=length_mm, start=start_mm_s, end=end_mm_s,
            ),
        )  # fmt: skip
    peak = math.sqrt(min(speed_mm_s**2, (start_mm_s**2 + end_mm_s**2) / 2 + acceleration_mm_s2 * length_mm))
    ramps = (2 * peak**2 - start_mm_s**2 - end_mm_s**2) / (2 * acceleration_mm_s2)
    up, down = (peak - start_mm_s) / acceleration_mm_s2, (peak - end_mm_s) / acceleration_mm_s2
    return Trapezoid(up, max(length_mm - ramps, 0.0) / peak, down, peak)


@finite_out("length_mm")
def move_durations_s(
    length_mm: ArrayLike,
    start_mm_s: ArrayLike,
    end_mm_s: ArrayLike,
    speed_mm_s: ArrayLike,
    acceleration_mm_s2: ArrayLike,
) -> tuple[Floats, Floats, Floats]:
    """Return duration, speed reached and length driven at that speed of n moves.

    Args:
        length_mm: (n,) lengths above zero.
        start_mm_s: (n,) speeds at the start.
        end_mm_s: (n,) speeds at the end, within reach of the start.
        speed_mm_s: (n,) speeds wanted.
        acceleration_mm_s2: (n,) or one number.

    Raises:
        InputError: field `length_mm` where the times are no numbers; what goes in is not checked.
    """
    way, v0, v1 = np.asarray(length_mm, float), np.asarray(start_mm_s, float), np.asarray(end_mm_s, float)
    v, a = np.asarray(speed_mm_s, float), np.asarray(acceleration_mm_s2, float)
    ends = 0.5 * (v0 * v0 + v1 * v1)
    square = np.minimum(v * v, ends + a * way)
    peak = np.sqrt(square)
    cruise = np.maximum(way - (square - ends) / a, 0.0)
    return (2.0 * peak - v0 - v1) / a + cruise / peak, peak, cruise


def corner_speed_mm_s(inside_deg: ArrayLike, acceleration_mm_s2: float, deviation_mm: float) -> Floats:
    """Return the speed through a corner; 0 for turning back, infinite for going straight on.

    Args:
        inside_deg: inside angle of the corner, 0 (back) to 180 (straight on).
        acceleration_mm_s2: across the path.
        deviation_mm: how far the path may leave the corner.

    Raises:
        InputError: field `inside_deg`, outside 0 to 180; the others below zero.
    """
    angle = np.asarray(inside_deg, dtype=float)
    if not np.all((angle >= 0) & (angle <= 180)):
        raise InputError("inside_deg", tr("The inside angle of a corner lies between 0 and 180 degrees; retype it."))
    _positive(acceleration_mm_s2=acceleration_mm_s2, deviation_mm=deviation_mm)
    return corner_speeds_mm_s(-np.cos(np.radians(angle)), np.asarray(acceleration_mm_s2), deviation_mm)


@finite_out("cosine_ratio", infinite=True)
def corner_speeds_mm_s(cosine_ratio: Floats, acceleration_mm_s2: Floats, deviation_mm: float) -> Floats:
    """Return the speeds through corners.

    Args:
        cosine_ratio: (n,) cosine of the change of direction, 1 straight on, -1 back.
        acceleration_mm_s2: (n,) or one number.
        deviation_mm: how far the path may leave the corner.

    Raises:
        InputError: field `cosine_ratio` where a speed is no number; what goes in is not checked.
    """
    half = np.sqrt(np.clip(0.5 * (1.0 + cosine_ratio), 0.0, 1.0))
    return np.sqrt(acceleration_mm_s2 * deviation_mm * half / (1.0 - half))


@dataclass(frozen=True, slots=True)
class DoubleS:
    """A move with limited jerk: the seven parts as T_j1, T_a, T_v, T_d, T_j2, and the speed reached.

    Attributes:
        speed_up_s: T_a. cruise_s: T_v. slow_down_s: T_d. jerk_up_s: T_j1. jerk_down_s: T_j2.
        peak_mm_s: highest speed.
        peak_up_mm_s2: highest acceleration in speeding up.
        peak_down_mm_s2: the same in slowing down, as a size.
    """

    speed_up_s: float
    cruise_s: float
    slow_down_s: float
    jerk_up_s: float
    jerk_down_s: float
    peak_mm_s: float
    peak_up_mm_s2: float
    peak_down_mm_s2: float

    @property
    def duration_s(self) -> float:
        """Time of the whole move."""
        return self.speed_up_s + self.cruise_s + self.slow_down_s


@within_reach
def double_s(
    length_mm: float,
    speed_mm_s: float,
    acceleration_mm_s2: float,
    jerk_mm_s3: float,
    start_mm_s: float = 0.0,
    end_mm_s: float = 0.0,
) -> DoubleS:
    """Return the fastest move with limited acceleration and jerk.

    Raises:
        InputError: a limit that is not above zero, a speed at an end above the wanted one, or a move too short for
            the change of speed (field `length_mm`).
    """
    _positive(length_mm=length_mm, speed_mm_s=speed_mm_s, acceleration_mm_s2=acceleration_mm_s2, jerk_mm_s3=jerk_mm_s3)
    _check_ends(speed_mm_s, start_mm_s, end_mm_s)
    v0, v1, a, j = start_mm_s, end_mm_s, acceleration_mm_s2, jerk_mm_s3
    least = min(math.sqrt(abs(v1 - v0) / j), a / j)  # equation 3.17
    need = least * (v0 + v1) if least < a / j else 0.5 * (v0 + v1) * (least + abs(v1 - v0) / a)  # 3.18
    if length_mm < need * (1 - _ROUNDING):
        raise InputError(
            "length_mm",
            tr(
                "{length:g} mm are too short to change from {start:g} to {end:g} mm/s; allow more jerk.",
                length=length_mm, start=v0, end=v1,
            ),
        )  # fmt: skip
    (up, jerk_up), (down, jerk_down) = _ramp(speed_mm_s - v0, a, j), _ramp(speed_mm_s - v1, a, j)
    cruise = length_mm / speed_mm_s - up / 2 * (1 + v0 / speed_mm_s) - down / 2 * (1 + v1 / speed_mm_s)  # 3.25
    if cruise >= 0:
        return DoubleS(up, cruise, down, jerk_up, jerk_down, speed_mm_s, j * jerk_up, j * jerk_down)
    return _without_cruise(length_mm, a, j, v0, v1)


def _ramp(change_mm_s: float, a: float, j: float) -> tuple[float, float]:
    """Return duration of a change of speed and of its constant jerk; equations 3.21 to 3.24."""
    if change_mm_s * j < a * a:
        jerk_s = math.sqrt(change_mm_s / j)
        return 2 * jerk_s, jerk_s
    return a / j + change_mm_s / a, a / j


def _without_cruise(length: float, a: float, j: float, v0: float, v1: float) -> DoubleS:
    """Return the move that does not reach its speed: the acceleration is lowered until both ramps fit; 3.26 to 3.30."""
    while True:
        jerk_s = a / j
        root = math.sqrt(a**4 / j**2 + 2 * (v0**2 + v1**2) + a * (4 * length - 2 * a / j * (v0 + v1)))
        up, down = (a * a / j - 2 * v0 + root) / (2 * a), (a * a / j - 2 * v1 + root) / (2 * a)
        if up < 0 or down < 0:
            return _one_ramp(length, j, v0, v1)
        if up >= 2 * jerk_s and down >= 2 * jerk_s:
            peak = v0 + (up - jerk_s) * a
            return DoubleS(up, 0.0, down, jerk_s, jerk_s, peak, a, a)
        a *= _SHRINK


def _one_ramp(length: float, j: float, v0: float, v1: float) -> DoubleS:
    """Return the move that only speeds up, or only slows down; equations 3.28 and 3.29."""
    whole = 2 * length / (v0 + v1)
    jerk_s = (j * length - math.sqrt(max(j * (j * length**2 - (v0 + v1) ** 2 * abs(v1 - v0)), 0.0))) / (j * (v0 + v1))
    if v0 > v1:
        return DoubleS(0.0, 0.0, whole, 0.0, jerk_s, v0, 0.0, j * jerk_s)
    return DoubleS(whole, 0.0, 0.0, jerk_s, 0.0, v1, j * jerk_s, 0.0)


def _positive(**values: float) -> None:
    for field, value in values.items():
        if not 0 < value < math.inf:
            raise InputError(field, tr("This must be a number above 0; type the limit that holds."))


def _check_ends(speed_mm_s: float, start_mm_s: float, end_mm_s: float) -> None:
    for field, value in (("start_mm_s", start_mm_s), ("end_mm_s", end_mm_s)):
        if not 0 <= value <= speed_mm_s:
            raise InputError(field, tr("A speed at an end lies between 0 and the wanted speed; retype it."))
