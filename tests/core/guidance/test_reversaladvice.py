"""The verdict on a reversal trial: the limits with their uncertainty, planted causes, nothing else trimmed."""

import numpy as np
import pytest

from core.errors import InputError
from core.guidance.names import is_magnitude, parameter_words
from core.guidance.playlimits import LIMIT_MM, Play, play_of
from core.guidance.reversaladvice import ReversalReadings, Way, judge_reversal
from core.guidance.verdict import Setting
from core.quantity import Estimate
from core.records.rows import Machine, Motion

NONE = float("nan")


def pairs(B, sd=0.0, n=5, axis="x", resolution_mm=0.001, seed=0):
    rng = np.random.default_rng(seed)
    place, approach, reading = [], [], []
    for name in ("Left", "Middle", "Right"):
        for _ in range(n):
            place += [name] * 2
            approach += ["up", "down"]
            reading += [0.5 + rng.normal(0, sd), 0.5 - B + rng.normal(0, sd)]
    return ReversalReadings(axis, Way.QUICK, resolution_mm, place, approach, [NONE] * len(place), reading)


def curve(play, share, sd=0.001, axis="x", run=0.2, seed=0):
    x = np.linspace(0, run, 21)
    y = share * np.maximum(x - play, 0) + np.random.default_rng(seed).normal(0, sd, 21)
    return ReversalReadings(axis, Way.CURVE, 0.001, [""] * 21, [""] * 21, x.tolist(), y.tolist())


def full(B, axis="y"):
    target = np.repeat([10.0, 60.0, 110.0, 160.0, 210.0], 10)
    approach = ["up", "down"] * 25
    reading = target + np.where(np.array(approach) == "up", -B / 2, B / 2)
    return ReversalReadings(axis, Way.FULL, 0.001, [""] * 50, approach, target.tolist(), reading.tolist())


def only(readings, machine=None):
    judged = judge_reversal(readings, machine)
    (advice,) = judged.advice
    assert "Steps per millimetre, flow factor, contour offset" in advice.do_not_touch
    assert judged.method == "reversal 1"
    return advice, " ".join(judged.minds)


@pytest.mark.parametrize(
    ("B", "u", "play"),
    [
        (0.0, 0.004, Play.GOOD),
        (0.012, 0.004, Play.GOOD),
        (0.018, 0.004, Play.ACCEPTABLE),
        (0.040, 0.004, Play.ACCEPTABLE),
        (0.046, 0.004, Play.UNCLEAR),
        (0.054, 0.004, Play.UNCLEAR),
        (0.060, 0.004, Play.TOO_LARGE),
        (0.010, 0.04, Play.UNCLEAR),
    ],
)
def test_limits_are_decided_with_the_uncertainty(B, u, play):
    assert play_of(Estimate("reversal_x", B, u, 30.0, "mm")) is play


def test_good_and_acceptable_are_left_alone():
    good, minds = only(pairs(0.01))
    assert (good.setting, good.action, good.amount, minds) == (Setting.LEAVE, "Change nothing.", None, "")
    assert "Proved within 0.02 mm: good" in good.because
    fair, _ = only(full(0.035))
    assert fair.setting is Setting.LEAVE and "next upkeep" in fair.action
    assert "Reversal error Y is 0.03500 ± 0.00080 mm (at " in fair.because
    assert "worst of 5 targets)" in fair.because


@pytest.mark.parametrize("readings", [pairs(0.09, 0.002), full(0.09, "x"), curve(0.09, 1.0)], ids=["a", "b", "c"])
def test_play_beyond_the_limit_sends_to_the_mechanics(readings):
    advice, minds = only(readings)
    assert advice.setting is Setting.MEND_MECHANICS
    assert "grub screw on its flat, belt tension" in advice.action and "measure again" in advice.action
    assert advice.amount == pytest.approx(0.09, abs=0.003) and advice.unit == "mm"
    assert "Proved above 0.05 mm" in advice.because
    assert "Were the motors powered?" in minds


def test_what_is_special_of_z_and_of_crossed_belts():
    z, minds = only(pairs(0.09, axis="z"))
    assert "Z axis: nut, coupling" in z.action and "by weight" in minds
    _, minds = only(pairs(0.09), Machine("m", Motion.CROSSED_BELT))
    assert "reverses both motors" in minds
    _, minds = only(pairs(0.09), Machine("m", Motion.CARTESIAN))
    assert "both motors" not in minds


def test_what_is_not_proved_asks_for_the_right_reading():
    coarse, _ = only(pairs(0.05, resolution_mm=0.05))
    assert coarse.setting is Setting.UNDECIDED and "finer graduation" in coarse.action
    few, _ = only(pairs(0.05, 0.02))
    assert few.setting is Setting.UNDECIDED and "more pairs" in few.action
    assert "Neither within nor above 0.05 mm" in few.because


def test_windup_is_another_repair_than_play():
    advice, _ = only(curve(0.02, 0.5))
    assert advice.setting is Setting.MEND_MECHANICS and "wind-up, not play" in advice.action
    assert "of the command arrives" in advice.because
    growing, _ = only(curve(0.01, 0.9, run=0.1))
    assert growing.setting is Setting.UNDECIDED
    assert "still grows" in growing.because and "quick cycle" in growing.action
    tight, _ = only(curve(0.049, 1.0, 0.003, seed=2))
    assert tight.setting is Setting.UNDECIDED and "Neither" in tight.because


def test_refusals_pass_through():
    with pytest.raises(InputError) as refused:
        judge_reversal(pairs(1.3))
    assert refused.value.field == "reading_mm"


def test_every_estimate_has_a_name_for_people_and_sizes_no_plus():
    names = [e.name for way in (pairs(0.01), full(0.01), curve(0.06, 1.0)) for e in judge_reversal(way).estimates()]
    assert len({parameter_words(name) for name in names}) == len(set(names)) == 15
    signed = {name for name in names if not is_magnitude(name)}
    assert signed == {"mean_reversal_y", "windup_x"}
    assert LIMIT_MM == 0.05
