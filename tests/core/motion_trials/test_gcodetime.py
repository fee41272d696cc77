"""Time of a path against closed forms, and against an integrator that drives it in small steps of time."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.motion_trials.gcodepath import read_path
from core.motion_trials.gcodetime import (
    Limits,
    straights_path,
    time_path,
    times_by_acceleration_s,
    times_by_speed_s,
)
from core.motion_trials.lookahead import junction_speeds_mm_s


def driven_s(length, caps, wanted, acceleration):
    """Drive a path in steps of time: as fast as allowed, braking as late as every limit ahead permits."""
    places = np.concatenate([[0.0], np.cumsum(length)])
    x = v = t = 0.0
    dt = 2e-5
    while x < places[-1] - 1e-6:
        here = min(np.searchsorted(places, x, side="right") - 1, len(length) - 1)
        ahead = places[here + 1 :] - x
        brake = np.sqrt(caps[here + 1 :] ** 2 + 2 * acceleration * np.maximum(ahead, 0.0))
        v = max(min(v + acceleration * dt, wanted[here], brake.min()), 1e-3)
        x, t = x + v * dt, t + dt
    return t


def test_the_look_ahead_is_the_loop_of_two_passes():
    rng = np.random.default_rng(4)
    length, cap = rng.uniform(0.01, 5, 400), rng.uniform(0, 150, 401)
    acceleration = rng.uniform(500, 5000, 400)
    square = cap**2
    for i in range(1, 401):
        square[i] = min(square[i], square[i - 1] + 2 * acceleration[i - 1] * length[i - 1])
    for i in range(399, -1, -1):
        square[i] = min(square[i], square[i + 1] + 2 * acceleration[i] * length[i])
    np.testing.assert_allclose(junction_speeds_mm_s(length, acceleration, cap) ** 2, square, rtol=1e-9, atol=1e-5)


@pytest.mark.parametrize("seed", range(3))
def test_an_integrator_takes_as_long(seed):
    rng = np.random.default_rng(seed)
    points = np.cumsum(rng.uniform(-6, 6, (12, 2)), axis=0)
    text = "\n".join(
        f"G1 X{x:.3f} Y{y:.3f} F{f:.0f}" for (x, y), f in zip(points, rng.uniform(1200, 6000, 12), strict=True)
    )
    path = read_path(text.encode())
    timed = time_path(path, Limits(2000, 0.02))
    half = np.sqrt((1 + path.turn_cosine) / 2)
    corner = np.sqrt(2000 * 0.02 * half / (1 - half))
    caps = np.concatenate([[0], np.minimum(corner, np.minimum(path.wanted_mm_s[1:], path.wanted_mm_s[:-1])), [0]])
    assert timed.duration_s == pytest.approx(driven_s(path.length_mm, caps, path.wanted_mm_s, 2000.0), rel=2e-3)


def test_a_straight_line_in_many_pieces_takes_as_long_as_in_one():
    one = read_path(b"G1 X100 F3000")
    many = read_path("\n".join(f"G1 X{n / 10:.1f} F3000" for n in range(1, 1001)).encode())
    assert time_path(one, Limits(500)).duration_s == pytest.approx(2.1, rel=1e-12)  # l/v + v/a
    assert time_path(many, Limits(500)).duration_s == pytest.approx(2.1, rel=1e-9)
    assert time_path(many, Limits(500)).move_s.sum() == pytest.approx(2.1, rel=1e-9)


def test_axes_keep_their_own_limits():
    limits = Limits(10_000, 0.02, {"x": 30.0, "e": 1.0}, {"z": 100.0})
    assert time_path(read_path(b"G1 X300 Y400 F60000"), limits).peak_mm_s[0] == pytest.approx(50)  # X has 0.6 of it
    assert time_path(read_path(b"M83\nG1 Y100 E10 F60000"), limits).peak_mm_s[0] == pytest.approx(10)
    assert time_path(read_path(b"G1 E5 F60000"), limits).peak_mm_s[0] == pytest.approx(1)
    assert time_path(read_path(b"G1 Z1 F60000"), limits).duration_s == pytest.approx(2 * math.sqrt(1 / 100))
    arc = time_path(read_path(b"G2 I50 F60000"), limits)
    assert arc.peak_mm_s[0] == pytest.approx(30)  # somewhere on it X has all of the speed
    assert time_path(read_path(b"G2 I1 Z0 F60000"), Limits(400)).peak_mm_s[0] == pytest.approx(20)  # root of a r


def test_the_flow_ceiling_slows_and_is_told():
    path = read_path(b"M83\nG1 X100 E5 F6000\nG0 X0")
    free = time_path(path, Limits(5000))
    per_mm = 0.05 * math.pi * 1.75**2 / 4
    assert free.rate_mm3_s[0] == pytest.approx(100 * per_mm)
    assert free.rate_mm3_s[1] == 0
    assert free.above_ratio(path.length_mm, 8.0) == 1 and free.above_ratio(path.length_mm, 13.0) == 0
    held = time_path(path, Limits(5000, ceiling_mm3_s=8.0))
    assert held.rate_mm3_s[0] == pytest.approx(8.0)
    assert held.above_ratio(path.length_mm, 8.0) == 0
    assert held.print_s > free.print_s and held.at_speed_ratio == 0
    travel = time_path(read_path(b"G0 X10 F600"), Limits(500))
    assert travel.above_ratio(np.array([10.0]), 1.0) == 0 and travel.at_speed_ratio == travel.mean_mm_s == 0


def test_share_at_the_wanted_speed():
    path = read_path(b"M83\nG1 X100 E5 F3000\nG4 P1000\nG1 X101 E0.05")
    timed = time_path(path, Limits(500))
    assert timed.at_speed_ratio == pytest.approx(95 / 101)  # 2.5 mm are lost at either end; 1 mm never reaches it
    assert timed.dwell_s == 1 and timed.duration_s == pytest.approx(2.1 + 1 + 2 * math.sqrt(1 / 500))
    assert timed.mean_mm_s == pytest.approx(101 / timed.print_s)


def test_short_straights_gain_nothing_from_speed():
    path = straights_path(2.0, 500)
    times = times_by_speed_s(path, Limits(1000, 0.02), [20, 40, 80, 160])
    assert times[0] > 1.3 * times[1] and times[2] == pytest.approx(times[3], rel=1e-6)
    faster = times_by_acceleration_s(path, Limits(1000, 0.02), [1000, 4000], speed_mm_s=160)
    assert faster[1] == pytest.approx(faster[0] / 2, rel=0.05)
    assert time_path(path, Limits(1000)).rate_mm3_s.max() < 1e-3


def test_a_file_without_speeds_goes_as_fast_as_its_axes():
    timed = time_path(read_path(b"G1 X100"), Limits(1e6, axis_speed_mm_s={"x": 50.0}))
    assert timed.peak_mm_s[0] == pytest.approx(50)


@pytest.mark.parametrize(
    ("limits", "speed", "field"),
    [
        (Limits(0), None, "acceleration_mm_s2"),
        (Limits(100, 0), None, "corner_mm"),
        (Limits(100, filament_mm=0), None, "filament_mm"),
        (Limits(100, axis_speed_mm_s={"x": 0}), None, "axis_speed_x_mm_s"),
        (Limits(100, axis_acceleration_mm_s2={"e": math.inf}), None, "axis_acceleration_e_mm_s2"),
        (Limits(100, ceiling_mm3_s=-1), None, "ceiling_mm3_s"),
        (Limits(100), 0.0, "speed_mm_s"),
    ],
)
def test_refused(limits, speed, field):
    with pytest.raises(InputError) as error:
        time_path(straights_path(5, 4), limits, speed_mm_s=speed)
    assert error.value.field == field


def test_a_straight_has_a_length():
    with pytest.raises(InputError, match="straight"):
        straights_path(0, 5)
