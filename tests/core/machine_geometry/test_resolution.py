"""Clean heights and lengths, and how fast the controller can step. Expected: own computation."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.machine_geometry.drive import Drive, DriveKind, describe_drive
from core.machine_geometry.resolution import (
    clean_heights_mm,
    clean_lengths_mm,
    question_height,
    question_speed,
    speed_ceiling,
    winding_ceiling_mm_s,
)
from core.records.rows import Motion

BELT = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20)
SCREW = Drive(DriveKind.SCREW, pitch_mm=2.0, starts=4)
GEARED = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20, gears=((57, 11),))


def test_clean_heights_of_a_lead_of_8_mm():
    assert clean_heights_mm(SCREW, 0.12, 0.28) == (0.12, 0.16, 0.2, 0.24, 0.28)


def test_heights_too_many_to_choose_from_are_some_of_them():
    heights = clean_heights_mm(SCREW, 0.1, 1999.9)  # of 49 995 full steps
    assert 500 < len(heights) <= 1001 and 0.1 <= heights[0] < 5.0 and 1995.0 < heights[-1] <= 1999.9
    assert [height / 0.04 for height in heights] == pytest.approx([round(height / 0.04) for height in heights])


def test_clean_heights_of_a_belt_and_of_a_rack():
    assert clean_heights_mm(BELT) == (0.2,)
    rack = Drive(DriveKind.RACK, module_mm=0.5, teeth=15)
    assert clean_heights_mm(rack) == pytest.approx([math.pi * 7.5 / 200 * n for n in (1, 2)], rel=1e-15)


@pytest.mark.parametrize(
    "drive, lengths, whole_cycles",
    [
        (BELT, (40, 80, 120), True),
        (SCREW, tuple(range(16, 121, 8)), True),
        (GEARED, (40, 80, 120), False),  # whole cycles only after 11 turns of the pulley, 440 mm
        (Drive(DriveKind.BELT, pitch_mm=3, teeth=16), (48, 96), True),
    ],
)
def test_clean_lengths_are_whole_turns(drive, lengths, whole_cycles):
    clean = clean_lengths_mm(drive, 120)
    assert (clean.lengths_mm, clean.whole_cycles) == (lengths, whole_cycles)


def test_a_gear_pair_is_waited_for_where_there_is_room():
    assert clean_lengths_mm(GEARED, 500) == clean_lengths_mm(GEARED, 800, low_mm=440)
    assert clean_lengths_mm(GEARED, 500).lengths_mm == (440,)


@given(st.integers(8, 80), st.sampled_from([(), ((3, 1),), ((57, 11),), ((40, 16),)]))
def test_clean_lengths_hold_whole_turns_and_whole_cycles(teeth, gears):
    drive = Drive(DriveKind.BELT, pitch_mm=2.5, teeth=teeth, gears=gears)
    clean = clean_lengths_mm(drive, 20000)
    assert clean.whole_cycles
    for length in clean.lengths_mm[:5]:
        assert length / (2.5 * teeth) == pytest.approx(round(length / (2.5 * teeth)), abs=1e-9)
        cycles = length / describe_drive(drive).electrical_cycle_mm
        assert cycles == pytest.approx(round(cycles), abs=1e-6)


@pytest.mark.parametrize("function", [clean_heights_mm, clean_lengths_mm])
@pytest.mark.parametrize("low, high", [(0, 1), (2, 1), (1, math.inf)])
def test_a_range_must_be_one(function, low, high):
    with pytest.raises(InputError, match="is no range; the second must be the larger") as refused:
        function(BELT, low_mm=low, high_mm=high)
    assert refused.value.field == "high_mm"


def test_a_layer_that_is_no_whole_number_of_full_steps_is_asked_about():
    question = question_height(SCREW, 0.15)
    assert question.field == "height_mm"
    assert question.instead == 0.16
    assert question.says == (
        "Layer 0.15 mm is 3.75 full steps on this drive; layers will not be alike. Nearest clean heights: "
        "0.12 mm, 0.16 mm."
    )


def test_below_the_first_full_step_there_is_one_clean_height():
    question = question_height(BELT, 0.15)
    assert question.instead == 0.2
    assert question.says.endswith("Nearest clean heights: 0.2 mm.")


@pytest.mark.parametrize("height_mm", [0.04, 0.2, 0.28])
def test_a_clean_layer_raises_no_question(height_mm):
    assert question_height(SCREW, height_mm) is None


def test_a_layer_of_no_height_is_refused():
    with pytest.raises(InputError, match=r"A layer height of 0 mm is not possible\.") as refused:
        question_height(SCREW, 0)
    assert refused.value.field == "height_mm"


def test_speed_ceiling_of_the_controller():
    ceiling = speed_ceiling(SCREW, 40000)
    assert (ceiling.ceiling_mm_s, ceiling.usable_mm_s) == (100, 70)
    crossed = speed_ceiling(BELT, 40000, Motion.CROSSED_BELT)
    assert crossed.ceiling_mm_s == pytest.approx(500 / math.sqrt(2), rel=1e-15)


@pytest.mark.parametrize(
    "speed, rate, says",
    [
        (
            300,
            40000,
            "300 mm/s at 400 steps/mm needs 120000 steps/s; this controller's ceiling is 40000. Most here 100 mm/s; or "
            "microsteps 4.",
        ),
        (
            300,
            1000,
            "300 mm/s at 400 steps/mm needs 120000 steps/s; this controller's ceiling is 1000. Most here 2.5 mm/s, "
            "even with full steps.",
        ),
    ],
)
def test_a_speed_above_the_ceiling_is_asked_about(speed, rate, says):
    question = question_speed(SCREW, speed, rate)
    assert (question.field, question.says) == ("speed_mm_s", says)


def test_a_speed_at_the_ceiling_is_possible():
    assert question_speed(SCREW, 100, 40000) is None
    assert question_speed(BELT, 400, 40000, Motion.CROSSED_BELT) is not None


def test_ceiling_of_the_windings():
    """24 V, 1.5 A, 3 mH: 2667 full steps per second, 533 mm/s on 40 mm a turn and 107 mm/s on a lead of 8 mm."""
    assert winding_ceiling_mm_s(BELT, 24, 1.5, 3) == pytest.approx(533.3, abs=0.05)
    assert winding_ceiling_mm_s(SCREW, 24, 1.5, 3) == pytest.approx(106.7, abs=0.05)


@pytest.mark.parametrize(
    "call, field",
    [
        (lambda: speed_ceiling(BELT, 0), "step_rate_per_s"),
        (lambda: question_speed(BELT, math.inf, 40000), "speed_mm_s"),
        (lambda: question_speed(BELT, 100, -1), "step_rate_per_s"),
        (lambda: winding_ceiling_mm_s(BELT, 0, 1, 1), "supply_v"),
        (lambda: winding_ceiling_mm_s(BELT, 24, 0, 1), "current_a"),
        (lambda: winding_ceiling_mm_s(BELT, 24, 1, math.nan), "inductance_mh"),
    ],
)
def test_ceilings_refuse_what_is_no_rate(call, field):
    with pytest.raises(InputError, match="not possible|must be a number above 0") as refused:
        call()
    assert refused.value.field == field
