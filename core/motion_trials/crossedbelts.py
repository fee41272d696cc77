"""Crossed belts: two motors move X and Y together, so that what a motor can do limits a move by its direction.

    q_A = x + y        q_B = x - y                      way of the belt at each motor; signs by how the belts run
    v (|d_x| + |d_y|) <= V                              the faster motor: max(|q_A'|, |q_B'|) = |x'| + |y'|
    F_x = F_A + F_B    F_y = F_A - F_B                  from F_A dq_A + F_B dq_B = F_x dx + F_y dy for every dx and dy
    max(|F_A|, |F_B|) = (|F_x| + |F_y|)/2               F_x = m_x a d_x, F_y = m_y a d_y
    a (|d_x|/A_x + |d_y|/A_y) <= 1                      with A_x = 2F/m_x and A_y = 2F/m_y

Symbols: d unit direction of the move, v and a along it, F the most a motor pulls its belt with, m_x and m_y what is
moved along X and along Y. A_x, A_y, V_x and V_y are the limits of a move along one axis alone, as the record of a
machine states them: such a move turns both motors at its own speed, so a motor does V = max(V_x, V_y) at least, and no
more is known of it. Along a diagonal one motor does all the work: with equal limits it allows 1/sqrt(2) of them. In an
arc the worst direction counts: sqrt(2) of the speed, and sqrt(1/A_x^2 + 1/A_y^2) for the acceleration.

Reference: elementary kinematics and virtual work; Sollmann, Jouaneh and Lavender, IEEE/ASME Trans. Mechatronics 15
(2010) 280, for the motor equations of such belts (from memory).
"""

from __future__ import annotations

import math
from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.reach import SMALLEST
from core.motion_trials.gcodepath import Path
from core.words import tr

Floats = NDArray[np.float64]


def motor_speeds_mm_s(path: Path, axis_speed_mm_s: Mapping[str, float]) -> Floats:
    """Return the highest speed (n,) of each move that the motors allow; infinite where X and Y have no limit.

    Args:
        path: the moves.
        axis_speed_mm_s: limits of moves along one axis alone; those of x and y count.

    Raises:
        InputError: field `axis_speed_mm_s`, not above zero.
    """
    known = _known("axis_speed_mm_s", axis_speed_mm_s)
    if not known:
        return np.full(path.moves, np.inf)
    share = np.where(np.isfinite(path.radius_mm), math.sqrt(2.0), np.abs(path.begin.x) + np.abs(path.begin.y))
    return _over(max(known), share)


def motor_accelerations_mm_s2(path: Path, axis_acceleration_mm_s2: Mapping[str, float]) -> Floats:
    """Return the highest acceleration (n,) of each move that the motors allow; infinite where X and Y have no limit.

    Args:
        path: the moves.
        axis_acceleration_mm_s2: limits of moves along one axis alone; of x and y one that is missing is taken as the
            other.

    Raises:
        InputError: field `axis_acceleration_mm_s2`, not above zero.
    """
    known = _known("axis_acceleration_mm_s2", axis_acceleration_mm_s2)
    if not known:
        return np.full(path.moves, np.inf)
    per_x, per_y = 1.0 / known[0], 1.0 / known[-1]
    straight = np.abs(path.begin.x) * per_x + np.abs(path.begin.y) * per_y
    return _over(1.0, np.where(np.isfinite(path.radius_mm), math.hypot(per_x, per_y), straight))


def _known(field: str, limits: Mapping[str, float]) -> list[float]:
    known = [limits[axis] for axis in "xy" if axis in limits]
    if not all(limit > SMALLEST for limit in known):
        raise InputError(field, tr("This must be a number above 0; type the limit that holds."))
    return known


def _over(limit: float, share: Floats) -> Floats:
    """Return limit/share, infinite where a move asks nothing of the motors."""
    with np.errstate(divide="ignore"):
        return np.asarray(limit / share)
