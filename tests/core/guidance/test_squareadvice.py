"""Squareness: the frame first, terms after it, the sign by its prediction. Planted causes, own computation."""

import math

import pytest

from core.errors import InputError
from core.guidance.squareactions import per_hundred
from core.guidance.squareadvice import Frame, SquareReadings, judge_squareness
from core.guidance.verdict import Setting
from core.machine_geometry.squareness import Plane, SignCheck
from core.quantity import Estimate
from core.records.rows import Instrument, Machine, Motion


def trial(g, plane=Plane.XY, frame=Frame.FOUND, side=80.0, parts=("outer", "inner"), tolerance=0.1, size=0.01, **more):
    """Pillars on a machine that leans by g rad, each length read twice, `size` mm to either side."""
    readings, diagonal, part = [], [], []
    for number, sign in (("1", 1), ("2", -1)):
        d = math.hypot(side + sign * side * math.sin(g), side * math.cos(g))
        for face in parts:
            for off in (size, -size):
                readings.append(d + {"outer": 10, "inner": -10}[face] + off)
                diagonal.append(number)
                part.append(face)
    held = {"side_a_mm": side, "side_b_mm": side, "span_mm": 300.0, "longest_mm": 200.0, "tolerance_mm": tolerance}
    return SquareReadings(plane=plane, frame=frame, reading_mm=readings, diagonal=diagonal, part=part, **held | more)


def settings(judged):
    return [advice.setting for advice in judged.advice]


def test_a_square_frame_is_left_alone():
    judged = judge_squareness(trial(0.00002))
    assert settings(judged) == [Setting.LEAVE]
    assert "Change nothing" in judged.advice[0].action
    assert judged.check is None and judged.method == "squareness 1"
    assert [e.name for e in judged.estimates()] == ["squareness_xy"]


@pytest.mark.parametrize(
    "g, plane, motion, words",
    [
        (0.002, Plane.XY, Motion.CARTESIAN, "stands ahead: bring it back (towards −Y) by 0.600"),
        (-0.002, Plane.XY, Motion.CARTESIAN, "lags: bring it forward (towards +Y) by 0.600"),
        (0.002, Plane.XY, Motion.CROSSED_BELT, "tension of the two belts first"),
        (0.002, Plane.XY, Motion.DELTA, "no side to shift"),
        (0.002, Plane.XZ, Motion.DELTA, "Z leans towards +X: bring its far end back by 0.600"),
        (-0.002, Plane.YZ, Motion.CARTESIAN, "Z leans towards −Y: bring its far end forward by 0.600"),
    ],
)
def test_a_leaning_frame_is_mended_before_any_term(g, plane, motion, words):
    judged = judge_squareness(trial(g, plane), Machine("m", motion))
    assert settings(judged) == [Setting.MEND_MECHANICS]
    assert words in judged.advice[0].action
    assert judged.advice[0].amount == pytest.approx(g * 300.0, rel=1e-3)
    assert "Steps per millimetre" in judged.advice[0].do_not_touch


@pytest.mark.parametrize("plane, formula", [(Plane.XY, "y·tan XY"), (Plane.XZ, "tan XZ − tan"), (Plane.YZ, "z·tan YZ")])
def test_what_the_frame_cannot_give_is_a_term(plane, formula):
    judged = judge_squareness(trial(0.002, plane, Frame.MOVED))
    assert settings(judged) == [Setting.SKEW_TERMS]
    action = judged.advice[0].action
    assert f"Set the term of {plane.upper()} to +0.00200 ± " in action and formula in action
    assert "+0.000000 was in force, +0.002000 is added" in action
    assert judged.new_term_ratio == judged.advice[0].amount == pytest.approx(math.tan(0.002))


def test_a_term_adds_to_the_one_in_force_when_the_piece_was_made():
    planted, entered = 0.002, 0.001  # with the term in force, the piece shows the rest
    judged = judge_squareness(trial(planted - entered, frame=Frame.TERMS, term_ratio=entered))
    assert judged.new_term_ratio == pytest.approx(planted, rel=1e-3) and not judged.verifies_term
    assert "to +0.00200 ± " in judged.advice[0].action and "+0.001000 was in force" in judged.advice[0].action
    too_much = judge_squareness(trial(-0.001, frame=Frame.TERMS, term_ratio=0.003))
    assert too_much.new_term_ratio == pytest.approx(0.002, rel=1e-3)
    assert "−0.001000 is added" in too_much.advice[0].action


@pytest.mark.parametrize("term", [0.04, -0.04, math.nan, math.inf])
def test_a_term_that_cannot_be_is_refused(term):
    with pytest.raises(InputError, match="A term is a tangent, below 0.035 either way") as refused:
        judge_squareness(trial(0.001, term_ratio=term))
    assert refused.value.field == "term_ratio"


def kept(value):
    return Estimate("squareness_xy", value, 0.00005, 8.0, "rad")


def test_a_correction_that_worked_is_said():
    judged = judge_squareness(trial(0.00001, frame=Frame.TERMS), before=kept(0.002))
    assert judged.check is SignCheck.GONE
    assert "did what was predicted" in judged.advice[0].action
    assert judged.verifies_term and judged.new_term_ratio is None
    moved = judge_squareness(trial(0.00001, frame=Frame.MOVED), before=kept(0.002))
    assert moved.check is SignCheck.GONE and not moved.verifies_term


@pytest.mark.parametrize(
    "frame, setting, words",
    [
        (Frame.TERMS, Setting.SKEW_TERMS, "Turn the sign of the term round"),
        (Frame.MOVED, Setting.MEND_MECHANICS, "Shift the same side the other way"),
    ],
)
def test_a_doubled_angle_is_a_wrong_sign(frame, setting, words):
    judged = judge_squareness(trial(0.004, frame=frame), before=kept(0.002))
    assert judged.check is SignCheck.WRONG_SIGN
    assert settings(judged) == [setting]
    assert words in judged.advice[0].action and "predicted was 0" in judged.advice[0].because
    assert judged.new_term_ratio is None  # what the term was is not said


def test_a_term_of_the_wrong_sign_is_turned_round():
    judged = judge_squareness(trial(0.004, frame=Frame.TERMS, term_ratio=0.002), before=kept(0.002))
    assert judged.check is SignCheck.WRONG_SIGN
    assert judged.new_term_ratio == -0.002 and judged.advice[0].unit == "1"
    assert "Turn the sign of the term round, to −0.002000" in judged.advice[0].action


def test_an_unchanged_angle_is_a_correction_not_in_force():
    judged = judge_squareness(trial(0.002, frame=Frame.MOVED), before=kept(0.002))
    assert settings(judged) == [Setting.MEND_MECHANICS]
    assert "in force at all" in judged.advice[0].action


def test_an_angle_from_before_counts_only_after_a_change_and_when_it_was_told():
    assert judge_squareness(trial(0.004), before=kept(0.002)).check is None
    assert judge_squareness(trial(0.004, frame=Frame.TERMS), before=kept(0.00005)).check is None
    partly = judge_squareness(trial(0.001, frame=Frame.TERMS), before=kept(0.002))
    assert partly.check is SignCheck.PARTLY and settings(partly) == [Setting.SKEW_TERMS]


def test_what_is_not_told_asks_for_the_reading_that_would():
    unclear = judge_squareness(trial(0.0004, size=0.05))
    assert settings(unclear) == [Setting.UNDECIDED] and "more often" in unclear.advice[0].action
    outside = judge_squareness(trial(0.0015, parts=("outer",)))
    assert settings(outside) == [Setting.UNDECIDED] and "both faces" in outside.advice[0].action
    play = {axis: Estimate("r", 0.01, 0.001, 8.0, "mm") for axis in "xy"}
    assert settings(judge_squareness(trial(0.0015, parts=("outer",)), reversal=play)) == [Setting.MEND_MECHANICS]


def test_a_square_turned_over_is_judged_alike():
    readings = SquareReadings(
        Plane.XZ, 100.0, 120.0, 300.0, 200.0, 0.1, Frame.FOUND, [0.3, 0.3], ["normal", "flipped"], ["square"] * 2
    )
    judged = judge_squareness(readings)
    assert settings(judged) == [Setting.MEND_MECHANICS]
    coarse = judge_squareness(readings, instrument=Instrument("d", resolution_mm=0.1))
    assert coarse.fit.angle.u > judged.fit.angle.u
    assert per_hundred(judged.fit.angle).value == pytest.approx(0.25, rel=1e-4)


@pytest.mark.parametrize("field", ["span_mm", "longest_mm", "tolerance_mm"])
def test_settings_that_cannot_be_are_refused(field):
    with pytest.raises(InputError, match="above zero") as refused:
        judge_squareness(trial(0.001, **{field: 0.0}) if field != "tolerance_mm" else trial(0.001, tolerance=0.0))
    assert refused.value.field == field
