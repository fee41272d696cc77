"""Least layer time: layers of a path counted by hand, the floor path/t_min, and waits in the time of a part."""

import numpy as np
import pytest

from core.errors import InputError
from core.motion_trials.gcodepath import read_path
from core.motion_trials.gcodetime import Limits, straights_path, time_path
from core.motion_trials.layertime import LayerRule, check_rule, floor_mm_s, layers_of, waits_s
from core.motion_trials.parttime import part_times

LIMITS = Limits(1500.0)
LEVELS = [40.0, 56.6, 80.0, 113.0, 160.0]


def pyramid(sides, hop=True):
    """Squares that grow smaller, one a layer, with a hop to the seam and back between lines of a layer."""
    lines = ["M83", "G1 X5 Y5 F6000"]
    for number, side in enumerate(sides, start=1):
        z = 0.2 * number
        lines += [f"G1 Z{z:.2f} F600", "G0 X0 Y0"]
        corners = ((side, 0), (side, side), (0, side), (0, 0))
        lines += [f"G1 X{x:g} Y{y:g} E1 F3600" for x, y in corners]
        if hop:
            lines += ["G1 E-1", f"G0 Z{z + 1:.2f}", "G0 X1 Y1", f"G0 Z{z:.2f}", "G1 E1", f"G1 X{side - 1:g} E0.3"]
    return "\n".join(lines).encode()


def test_a_layer_begins_at_another_height_and_a_hop_begins_none():
    layers = layers_of(read_path(pyramid((40, 30, 20))))
    np.testing.assert_allclose(layers.path_mm, [160 + 38, 120 + 28, 80 + 18])


def test_the_times_of_the_layers_are_those_of_the_path():
    path = read_path(pyramid((40, 30, 20)))
    layers, timed = layers_of(path), time_path(path, LIMITS)
    times = layers.times_s(timed.move_s)
    assert times.sum() == pytest.approx(float(timed.move_s[layers.first[0] :].sum()))
    assert times[0] > times[1] > times[2] > layers.path_mm[2] / 60.0


def test_the_floor_is_path_over_time():
    assert floor_mm_s(400.0, 10.0) == 40.0  # elementary
    np.testing.assert_allclose(waits_s(np.array([4.0, 10.0, 12.0]), 10.0), [6.0, 0.0, 0.0])


def test_a_typed_layer_holds_the_straights_up():
    """600 mm in 10 s: 60 mm/s never slows down; with ramps the layer really waits a little above that."""
    free = part_times(straights_path(15.0, 400), LIMITS, "speed", LEVELS)
    held = part_times(straights_path(15.0, 400), LIMITS, "speed", LEVELS, rule=LayerRule(10.0, 600.0))
    layers = held.layers
    assert free.layers is None and layers.count == pytest.approx(10.0) and layers.line == 0
    assert [layers.waits(level) for level in LEVELS] == [False, False, True, True, True]
    low, high = layers.floor_mm_s
    assert low == 60.0 and 60.0 < high < 80.0
    for level in LEVELS:
        wait = max(0.0, 10.0 - free.time_s[level] / 10.0)
        assert layers.wait_s[level] == pytest.approx(10.0 * wait)
        assert held.time_s[level] == pytest.approx(free.time_s[level] + 10.0 * wait)
    assert held.time_s[80.0] == held.time_s[160.0] == pytest.approx(100.0)  # faster buys nothing
    at_high = time_path(straights_path(15.0, 400), LIMITS, speed_mm_s=high).duration_s / 10.0
    assert at_high == pytest.approx(10.0, rel=0.02)  # read between two of the curve's points
    assert held.along_s[-1] == pytest.approx(100.0)


def test_the_layers_of_a_file_wait_one_by_one():
    path = read_path(pyramid(tuple(range(40, 10, -2))))
    held = part_times(path, LIMITS, "speed", LEVELS, rule=LayerRule(4.0))
    layers = held.layers
    assert layers.count == 15 and layers.shortest_mm == pytest.approx(4 * 12 + 10)
    assert path.line[layers_of(path).first[-1]] + 1 == layers.line
    for level in LEVELS:
        times = layers_of(path).times_s(time_path(path, LIMITS, speed_mm_s=level).move_s)
        assert layers.waiting[level] == np.sum(times < 4.0)
        assert layers.wait_s[level] == pytest.approx(float(np.sum(np.maximum(4.0 - times, 0))))
        assert layers.shortest_s[level] == pytest.approx(times.min())
    assert 0 < layers.waiting[40.0] < layers.waiting[160.0] <= 15
    assert layers.floor_mm_s[0] == pytest.approx(58 / 4) and layers.floor_mm_s[1] == pytest.approx(25.0)


def test_what_never_waits_has_no_upper_floor_and_accelerations_neither():
    slow = part_times(straights_path(15.0, 400), LIMITS, "speed", LEVELS, rule=LayerRule(1.0, 600.0)).layers
    assert slow.floor_mm_s == (600.0, np.inf) and not any(slow.waits(level) for level in LEVELS)
    ramps = part_times(straights_path(15.0, 400), LIMITS, "acceleration", [500.0, 4000.0], speed_mm_s=80.0,
                       rule=LayerRule(9.0, 600.0)).layers  # fmt: skip
    assert ramps.floor_mm_s == (pytest.approx(200 / 3), np.inf) and not ramps.waits(500.0) and ramps.waits(4000.0)


@pytest.mark.parametrize(
    ("rule", "field"),
    [
        (LayerRule(0.0), "least_layer_s"),
        (LayerRule(601.0), "least_layer_s"),
        (LayerRule(10.0, 0.0), "layer_mm"),
        (LayerRule(10.0, 1e7), "layer_mm"),
    ],
)
def test_a_rule_that_cannot_be_is_refused(rule, field):
    with pytest.raises(InputError) as error:
        check_rule(rule)
    assert error.value.field == field
    with pytest.raises(InputError):
        part_times(straights_path(15.0, 4), LIMITS, "speed", LEVELS, rule=rule)


def test_a_path_without_layers_is_refused():
    climbing = "M83\n" + "\n".join(f"G1 X{20 * (n % 2)} Z{0.01 * n:.2f} E1 F3000" for n in range(1, 40))
    with pytest.raises(InputError, match="climbs while it prints") as error:
        layers_of(read_path(climbing.encode()))
    assert error.value.field == "least_layer_s"
    with pytest.raises(InputError, match="prints nothing"):
        layers_of(read_path(b"G1 X10 F3000\nG1 Y10"))
