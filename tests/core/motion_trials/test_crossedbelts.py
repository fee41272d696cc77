"""Limits of the motors of crossed belts, against their own equations and a linear programme over their forces."""

import math
from dataclasses import replace

import numpy as np
import pytest
from scipy.optimize import linprog

from core.motion_trials.crossedbelts import motor_accelerations_mm_s2, motor_speeds_mm_s
from core.motion_trials.gcodepath import read_path
from core.motion_trials.gcodetime import Limits, time_path

ROUND = np.radians(np.arange(0.0, 360.0, 7.5))
STAR = read_path(
    "\n".join(f"G1 X{400 * math.cos(a):.6f} Y{400 * math.sin(a):.6f} F60000\nG1 X0 Y0" for a in ROUND).encode()
)


def belts(**limits):
    return Limits(1e5, 0.02, crossed_belts=True, **limits)


@pytest.mark.parametrize(
    ("line", "speed"),
    [("X300", 120.0), ("Y-300", 120.0), ("X300 Y300", 120 / math.sqrt(2)), ("X300 Y400", 120 * 5 / 7)],
)
def test_a_diagonal_turns_one_motor_root_two_times_as_fast(line, speed):
    """q_A = x + y, q_B = x - y."""
    timed = time_path(read_path(f"G1 {line} F60000".encode()), belts(axis_speed_mm_s={"x": 120.0, "y": 120.0}))
    assert timed.peak_mm_s[0] == pytest.approx(speed, rel=1e-9)


def test_no_motor_goes_faster_than_it_can_and_one_of_them_goes_so_fast():
    timed = time_path(STAR, belts(axis_speed_mm_s={"x": 100.0, "y": 100.0}))
    motors = np.abs([STAR.begin.x + STAR.begin.y, STAR.begin.x - STAR.begin.y]) * timed.peak_mm_s
    assert motors.max(axis=0) == pytest.approx(np.full(STAR.moves, 100.0), rel=1e-9)


def test_axes_with_limits_of_their_own_keep_them():
    """Both motors turn for X alone: what is slower along Y is not the motors."""
    speeds = motor_speeds_mm_s(STAR, {"x": 150.0, "y": 60.0})
    assert speeds == pytest.approx(150.0 / (np.abs(STAR.begin.x) + np.abs(STAR.begin.y)))
    limits = belts(axis_speed_mm_s={"x": 150.0, "y": 60.0})
    assert time_path(read_path(b"G1 Y300 F60000"), limits).peak_mm_s[0] == pytest.approx(60.0)
    assert time_path(read_path(b"G1 X300 F60000"), limits).peak_mm_s[0] == pytest.approx(150.0)
    assert time_path(read_path(b"G1 X300 Y50 F60000"), limits).peak_mm_s[0] == pytest.approx(
        150.0 * math.hypot(300, 50) / 350
    )


@pytest.mark.parametrize("masses_kg", [(0.3, 0.3), (0.3, 0.9)])
def test_the_acceleration_is_the_most_that_two_limited_belts_can_pull(masses_kg):
    """The largest a with F_A + F_B = m_x a d_x, F_A - F_B = m_y a d_y and both forces within +-F (linear programme)."""
    m_x, m_y = masses_kg
    most_n = 3.0
    found = motor_accelerations_mm_s2(STAR, {"x": 2 * most_n / m_x * 1e3, "y": 2 * most_n / m_y * 1e3})
    for place in range(0, STAR.moves, 2):
        equations = [[m_x * STAR.begin.x[place], -1.0, -1.0], [m_y * STAR.begin.y[place], -1.0, 1.0]]
        bounds = [(0, None), (-most_n, most_n), (-most_n, most_n)]
        pulled = linprog([-1.0, 0.0, 0.0], A_eq=equations, b_eq=[0.0, 0.0], bounds=bounds)
        assert found[place] == pytest.approx(pulled.x[0] * 1e3, rel=1e-6)


def test_a_diagonal_from_rest_to_rest_takes_longer_by_root_of_root_two():
    """l = a t^2/4 with a = A/sqrt(2)."""
    path = read_path(b"G1 X3 Y3 F60000")
    limits = belts(axis_acceleration_mm_s2={"x": 2000.0, "y": 2000.0})
    assert time_path(path, limits).duration_s == pytest.approx(2 * math.sqrt(math.hypot(3, 3) * math.sqrt(2) / 2000))
    straight = time_path(read_path(b"G1 X3 F60000"), limits).duration_s
    assert straight == pytest.approx(2 * math.sqrt(3 / 2000))


def test_one_limit_on_record_is_that_of_both_motors():
    for axis in "xy":
        assert motor_accelerations_mm_s2(STAR, {axis: 1000.0}) == pytest.approx(
            motor_accelerations_mm_s2(STAR, {"x": 1000.0, "y": 1000.0})
        )
        assert motor_speeds_mm_s(STAR, {axis: 90.0}) == pytest.approx(motor_speeds_mm_s(STAR, {"x": 90.0, "y": 90.0}))


def test_an_arc_somewhere_runs_along_the_diagonal():
    arc = read_path(b"G2 I50 F60000")
    assert motor_speeds_mm_s(arc, {"x": 100.0}) == pytest.approx(100 / math.sqrt(2))
    assert motor_accelerations_mm_s2(arc, {"x": 900.0, "y": 1200.0}) == pytest.approx(720.0)  # 1/hypot(1/900, 1/1200)


def test_without_limits_or_without_a_way_in_the_plane_the_motors_allow_all():
    for limits in ({}, {"z": 5.0, "e": 40.0}):
        assert np.all(np.isinf(motor_speeds_mm_s(STAR, limits)))
        assert np.all(np.isinf(motor_accelerations_mm_s2(STAR, limits)))
    up = read_path(b"G1 Z5 F600")
    assert np.isinf(motor_speeds_mm_s(up, {"x": 100.0})[0])
    assert np.isinf(motor_accelerations_mm_s2(up, {"x": 100.0})[0])
    plain = Limits(2000.0, axis_speed_mm_s={"z": 5.0})
    assert time_path(STAR, replace(plain, crossed_belts=True)).duration_s == time_path(STAR, plain).duration_s
