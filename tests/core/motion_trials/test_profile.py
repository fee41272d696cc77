"""Moves against the examples of the book, exact trapezia, and an integrator that knows no formula."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.motion_trials.profile import corner_speed_mm_s, double_s, move_durations_s, trapezoid
from tests.published import table

MOVES = table("profile_moves")
DOUBLE_S = table("profile_double_s")


def integrated(move, start, jerk):
    """Distance and end speed of a double S, by adding up small steps of constant jerk."""
    parts = [
        (move.jerk_up_s, jerk), (move.speed_up_s - 2 * move.jerk_up_s, 0.0), (move.jerk_up_s, -jerk),
        (move.cruise_s, 0.0),
        (move.jerk_down_s, -jerk), (move.slow_down_s - 2 * move.jerk_down_s, 0.0), (move.jerk_down_s, jerk),
    ]  # fmt: skip
    x, v, a, fastest, hardest = 0.0, start, 0.0, start, 0.0
    for duration, j in parts:
        assert duration >= -1e-9
        steps = 400
        dt = max(duration, 0.0) / steps
        for _ in range(steps):
            x += v * dt + a * dt * dt / 2 + j * dt**3 / 6
            v += a * dt + j * dt * dt / 2
            a += j * dt
            fastest, hardest = max(fastest, v), max(hardest, abs(a))
    return x, v, a, fastest, hardest


@pytest.mark.parametrize("row", MOVES, ids=lambda row: row["shape"])
def test_exact_trapezia(row):
    move = trapezoid(float(row["length_mm"]), float(row["speed_mm_s"]), float(row["acceleration_mm_s2"]))
    assert move.duration_s == pytest.approx(float(row["duration_s"]), rel=1e-12)
    assert move.peak_mm_s == pytest.approx(float(row["peak_mm_s"]), rel=1e-12)
    assert (move.cruise_s == pytest.approx(0, abs=1e-12)) == (row["shape"] == "triangle")


def test_short_moves_gain_nothing_from_speed_alone():
    """Textbook kinematics of the triangle, from memory: 20 mm take 0.300, 0.283, 0.233 and 0.167 s."""
    times = [trapezoid(20, v, a).duration_s for v, a in ((100, 1000), (200, 1000), (100, 3000), (200, 3000))]
    assert [round(t, 3) for t in times] == [0.3, 0.283, 0.233, 0.167]


@pytest.mark.parametrize("row", DOUBLE_S, ids=lambda row: row["example"])
def test_double_s_of_biagiotti_and_melchiorri(row):
    want = {key: float(value) for key, value in row.items() if key != "example"}
    move = double_s(want["length"], want["vmax"], want["amax"], want["jmax"], want["v0"], want["v1"])
    got = [move.speed_up_s, move.cruise_s, move.slow_down_s, move.jerk_up_s, move.jerk_down_s, move.peak_mm_s]
    names = ["Ta", "Tv", "Td", "Tj1", "Tj2", "vlim"]
    assert [round(value, 4) for value in got] == [want[name] for name in names]


@given(
    st.floats(0.1, 200), st.floats(5, 300), st.floats(200, 5000), st.floats(2e3, 1e6), st.floats(0, 1), st.floats(0, 1)
)
def test_double_s_drives_its_length_and_keeps_its_limits(length, speed, acceleration, jerk, first, last):
    start, end = first * speed, last * speed
    try:
        move = double_s(length, speed, acceleration, jerk, start, end)
    except InputError as error:
        assert error.field == "length_mm"
        return
    x, v, a, fastest, hardest = integrated(move, start, jerk)
    assert x == pytest.approx(length, rel=1e-6)
    assert v == pytest.approx(end, abs=1e-6 * speed) and a == pytest.approx(0, abs=1e-6 * acceleration)
    assert fastest <= speed * (1 + 1e-9) and hardest <= acceleration * (1 + 1e-9)
    assert move.duration_s >= trapezoid(length, speed, acceleration, start, end).duration_s * (1 - 1e-9)


@pytest.mark.parametrize(
    ("start", "end", "need"),  # equation 3.18 of the book: sqrt(30/2e4) (v0 + v1), and (v0 + v1)/2 (a/j + 100/a)
    [(40.0, 10.0, 1.9364917), (10.0, 40.0, 1.9364917), (120.0, 20.0, 10.5), (20.0, 120.0, 10.5)],
)
def test_a_move_just_long_enough_for_its_change_of_speed_has_one_ramp(start, end, need):
    move = double_s(need * 1.0005, 200, 1000, 2e4, start, end)
    x, v, *_ = integrated(move, start, 2e4)
    assert x == pytest.approx(need * 1.0005, rel=1e-3) and v == pytest.approx(end, rel=1e-3)
    assert min(move.speed_up_s, move.slow_down_s) < 0.02
    with pytest.raises(InputError, match="too short"):
        double_s(need * 0.99, 200, 1000, 2e4, start, end)


def test_infinite_jerk_is_the_trapezoid():
    assert double_s(100, 50, 500, 1e9).duration_s == pytest.approx(2.1, rel=1e-6)


@given(st.floats(0.01, 300), st.floats(1, 500), st.floats(50, 2e4), st.floats(0, 1), st.floats(0, 1))
def test_durations_conserve_distance(length, speed, acceleration, first, last):
    start = first * speed
    low = math.sqrt(max(start**2 - 2 * acceleration * length, 0.0))
    high = min(math.sqrt(start**2 + 2 * acceleration * length), speed)
    end = low + last * (high - low)
    (time,), (peak,), (cruise,) = move_durations_s([length], [start], [end], [speed], [acceleration])
    ramps = (2 * peak**2 - start**2 - end**2) / (2 * acceleration)
    assert ramps + cruise == pytest.approx(length, rel=1e-9)
    assert time == pytest.approx(trapezoid(length, speed, acceleration, start, end).duration_s, rel=1e-9)


def test_corner_speed():
    """A right angle at 3000 mm/s2 and 0.01 mm gives 8.5 mm/s (from memory); back stands, straight is free."""
    assert round(float(corner_speed_mm_s(90, 3000, 0.01)), 2) == 8.51
    back, on = corner_speed_mm_s(np.array([0.0, 180.0]), 3000, 0.01)
    assert back == pytest.approx(0, abs=1e-3) and on == math.inf


@pytest.mark.parametrize(
    ("call", "field"),
    [
        (lambda: trapezoid(0, 50, 500), "length_mm"),
        (lambda: trapezoid(10, -1, 500), "speed_mm_s"),
        (lambda: trapezoid(10, 50, math.inf), "acceleration_mm_s2"),
        (lambda: trapezoid(10, 50, 500, 60), "start_mm_s"),
        (lambda: trapezoid(10, 50, 500, 0, -1), "end_mm_s"),
        (lambda: trapezoid(0.1, 50, 500, 0, 40), "length_mm"),
        (lambda: double_s(10, 50, 500, 0), "jerk_mm_s3"),
        (lambda: corner_speed_mm_s(190, 3000, 0.01), "inside_deg"),
        (lambda: corner_speed_mm_s(90, 3000, 0), "deviation_mm"),
    ],
)
def test_refused(call, field):
    with pytest.raises(InputError) as error:
        call()
    assert error.value.field == field
