"""Steps per degree from the parts of a rotary axis. Own computation by the definition of a turn."""

import math

import pytest

from core.errors import InputError
from core.machine_geometry.drive import (
    Drive,
    DriveKind,
    Reeving,
    check_axes,
    describe_drive,
    question_drive,
)
from core.machine_geometry.foundsteps import found_steps_effect
from core.machine_geometry.mixup import find_mixups, parts_behind_steps, ratio_from_lengths, search_mixups
from core.machine_geometry.resolution import clean_heights_mm, question_height
from core.machine_geometry.rotary import describe_rotary, steps_reason
from core.records.rows import Motion

TABLE = Drive(DriveKind.ROTARY, gears=((60, 20), (40, 1)))
BELT = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20)


def test_steps_per_degree_follow_from_motor_microsteps_and_gears():
    """A worm of 40 and a pair of 3 to 1: 120 motor turns of 3200 microsteps are a turn of the axis."""
    result = describe_rotary(TABLE)
    assert result.steps_deg == pytest.approx(200 * 16 * 120 / 360, rel=1e-15)
    assert result.motor_turn_deg == 3.0
    assert result.full_step_deg == pytest.approx(0.015)
    assert result.microstep_deg == pytest.approx(1 / result.steps_deg)
    assert result.electrical_cycle_deg == pytest.approx(0.06)
    assert result.why == "200 × 16 × 60/20 × 40/1 ÷ 360° = 1066.6667 steps/°"
    assert steps_reason(TABLE) == result.why and steps_reason(BELT) == describe_drive(BELT).why


def test_whole_turns_are_exact_and_every_unit_is_of_an_angle():
    estimates = describe_rotary(TABLE).estimates()
    assert [(e.name, e.unit) for e in estimates] == [
        ("steps_deg", "steps/°"),
        ("motor_turn", "°"),
        ("full_step", "°"),
        ("microstep", "°"),
        ("electrical_cycle", "°"),
    ]
    assert all(e.u == 0 and math.isinf(e.dof) for e in estimates)
    assert TABLE.tolerance_ratio == 0


@pytest.mark.parametrize(
    "compare",
    [
        describe_drive,
        clean_heights_mm,
        lambda drive: question_height(drive, 0.2),
        lambda drive: found_steps_effect(drive, 80.0),
        lambda drive: find_mixups(drive, 1.25),
        lambda drive: parts_behind_steps(drive, 80.0),
        lambda drive: search_mixups(drive, ratio_from_lengths(100.0, 80.0, 0.5)),
    ],
)
def test_it_is_never_compared_with_a_length(compare):
    with pytest.raises(InputError) as refused:
        compare(TABLE)
    assert (refused.value.field, refused.value.message) == (
        "kind",
        "A rotary axis has steps per degree and is never compared with a length. Command 360° and look whether a mark "
        "comes back to its place.",
    )


def test_a_drive_that_moves_by_lengths_has_no_steps_per_degree():
    with pytest.raises(InputError) as refused:
        describe_rotary(BELT)
    assert (refused.value.field, refused.value.message) == (
        "kind", "This drive moves by lengths and has no steps per degree; choose a rotary axis."
    )  # fmt: skip


def test_nothing_is_reeved():
    with pytest.raises(InputError) as refused:
        Drive(DriveKind.ROTARY, reeving=Reeving.HALF)
    assert (refused.value.field, refused.value.message) == (
        "reeving", "A rotary axis has no reeving; enter its wheels as gear pairs."
    )  # fmt: skip


@pytest.mark.parametrize("motion", [Motion.CROSSED_BELT, Motion.DELTA])
def test_it_goes_with_no_motion_that_shares_lengths_among_motors(motion):
    with pytest.raises(InputError) as refused:
        check_axes(motion, {"x": TABLE, "y": BELT})
    assert (refused.value.field, refused.value.message) == (
        "kind",
        "Crossed belts and deltas move by lengths on every motor; a rotary axis goes with the motion cartesian.",
    )


def test_what_is_odd_about_it_is_asked():
    assert question_drive(TABLE) == ()
    (bare,) = question_drive(Drive(DriveKind.ROTARY))
    assert (bare.field, bare.says) == (
        "gears", "Without a gear pair the motor's shaft turns with the axis; is that so?"
    )  # fmt: skip
    assert check_axes(Motion.CARTESIAN, {"x": BELT, "y": TABLE}) == ()
    (stacked,) = check_axes(Motion.CARTESIAN, {"x": BELT, "z": TABLE})
    assert (stacked.field, stacked.says) == ("kind", "Layers are stacked along Z; is the rotary axis not X or Y?")
