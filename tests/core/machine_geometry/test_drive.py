"""Steps per millimetre by the definitions, exact, and what goes together on one machine."""

import math
from fractions import Fraction

import pytest

from core.errors import InputError
from core.machine_geometry.drive import (
    Drive,
    DriveKind,
    Reeving,
    check_axes,
    describe_drive,
    drive_from_parts,
    motion_note,
    question_drive,
)
from core.records.rows import Motion
from tests.published import table

BELT = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20)
SCREW = Drive(DriveKind.SCREW, pitch_mm=2.0, starts=4)


def drive_of(row):
    """Return the drive of a row of the published examples."""
    counts = {name: int(row[name]) for name in ("full_steps", "microsteps", "teeth", "starts") if row[name]}
    sizes = {name: float(row[name]) for name in ("pitch_mm", "module_mm", "diameter_mm") if row[name]}
    gears = [] if row["driven"] == "1" else [[int(row["driven"]), 1]]
    return drive_from_parts({"kind": row["kind"], **counts, **sizes, "gears": gears})


@pytest.mark.parametrize("row", table("drive_examples"), ids=lambda row: row["name"])
def test_published_steps_per_mm_to_all_digits(row):
    steps = describe_drive(drive_of(row)).steps_mm
    assert abs(steps - float(row["steps_mm"])) <= math.ulp(steps)  # the table itself is good to one


@pytest.mark.parametrize("row", table("drive_rack_modules"), ids=lambda row: f"m {row['m']}")
def test_travel_of_a_rack_per_tooth_is_pi_times_the_module(row):
    drive = Drive(DriveKind.RACK, module_mm=float(row["m"]), teeth=20)
    assert describe_drive(drive).feed_constant_mm / 20 == pytest.approx(float(row["travel_per_tooth_mm"]), abs=6e-7)


@pytest.mark.parametrize(
    "drive, steps_mm",
    [
        (Drive(DriveKind.BELT, pitch_mm=2, teeth=20, gears=((43, 12),)), Fraction(200 * 16 * 43, 12 * 40)),
        (Drive(DriveKind.BELT, pitch_mm=2, teeth=20, gears=((40, 1), (3, 2))), Fraction(80 * 40 * 3, 2)),
        (Drive(DriveKind.BELT, pitch_mm=2.032, teeth=20), Fraction(3200000, 2032 * 20)),
        (Drive(DriveKind.BELT, pitch_mm=2, teeth=20, reeving=Reeving.HALF), 160),
        (Drive(DriveKind.BELT, pitch_mm=2, teeth=20, reeving=Reeving.DOUBLE), 40),
        (Drive(DriveKind.SCREW, pitch_mm=2, starts=1), 1600),
        (Drive(DriveKind.RACK, pitch_mm=5, teeth=20), 32),
    ],
)
def test_rational_parts_give_the_nearest_double(drive, steps_mm):
    assert describe_drive(drive).steps_mm == float(steps_mm)


def test_a_counted_gear_pair_is_not_its_rounded_ratio():
    """43/12 against 3.58 is 0.093 % (own computation)."""
    counted = describe_drive(Drive(DriveKind.BELT, pitch_mm=2, teeth=20, gears=((43, 12),))).steps_mm
    rounded = describe_drive(Drive(DriveKind.BELT, pitch_mm=2, teeth=20, gears=((358, 100),))).steps_mm
    assert 100 * (rounded / counted - 1) == pytest.approx(-0.093, abs=5e-4)


def test_a_helical_rack_goes_further_by_the_slant():
    straight = describe_drive(Drive(DriveKind.RACK, module_mm=1, teeth=20)).feed_constant_mm
    helical = describe_drive(Drive(DriveKind.RACK, module_mm=1, teeth=20, helix_deg=60)).feed_constant_mm
    assert helical == pytest.approx(2 * straight, rel=1e-15)
    metric = Drive(DriveKind.RACK, pitch_mm=5, teeth=20, helix_deg=60)
    assert describe_drive(metric).feed_constant_mm == pytest.approx(200, rel=1e-15)


@pytest.mark.parametrize(
    "drive, full_step_mm",
    [
        (BELT, 0.2),
        (Drive(DriveKind.BELT, full_steps=400, pitch_mm=2, teeth=20), 0.1),
        (SCREW, 0.04),
        (Drive(DriveKind.SCREW, pitch_mm=2, starts=1), 0.01),
        (Drive(DriveKind.SCREW, pitch_mm=1.25, starts=1), 0.00625),
    ],
)
def test_resolution_follows_from_the_parts(drive, full_step_mm):
    result = describe_drive(drive)
    assert result.full_step_mm == full_step_mm
    assert result.microstep_mm == pytest.approx(full_step_mm / 16, rel=1e-15)
    assert result.electrical_cycle_mm == 4 * full_step_mm
    assert result.feed_constant_mm == pytest.approx(full_step_mm * drive.full_steps, rel=1e-15)


def test_estimates_carry_the_tolerance_of_the_drive():
    named = {estimate.name: estimate for estimate in describe_drive(BELT).estimates()}
    assert [(e.name, e.unit) for e in named.values()] == [
        ("steps_mm", "steps/mm"),
        ("feed_constant", "mm"),
        ("full_step", "mm"),
        ("microstep", "mm"),
        ("electrical_cycle", "mm"),
    ]
    assert named["steps_mm"].value == 80.0
    assert named["steps_mm"].u == 80.0 * 0.0005
    assert math.isinf(named["steps_mm"].dof)
    assert named["feed_constant"].value == 40.0


@pytest.mark.parametrize(
    "drive, why",
    [
        (BELT, "200 × 16 ÷ (2 mm × 20 teeth) = 80.0000 steps/mm"),
        (
            Drive(DriveKind.BELT, pitch_mm=2.032, teeth=20, gears=((43, 12),), reeving=Reeving.HALF),
            "200 × 16 × 43/12 ÷ (2.032 mm × 20 teeth × 1/2) = 564.3045 steps/mm",
        ),
        (SCREW, "200 × 16 ÷ (2 mm pitch × 4 starts) = 400.0000 steps/mm"),
        (Drive(DriveKind.WHEEL, diameter_mm=12), "200 × 16 ÷ (π × 12 mm) = 84.8826 steps/mm"),
        (
            Drive(DriveKind.RACK, module_mm=1, teeth=20),
            "200 × 16 ÷ (π × module 1 mm × 20 teeth) = 50.9296 steps/mm",
        ),
        (
            Drive(DriveKind.RACK, pitch_mm=5, teeth=20, helix_deg=60),
            "200 × 16 ÷ (5 mm × 20 teeth / cos 60°) = 16.0000 steps/mm",
        ),
    ],
)
def test_the_reason_spells_the_product_out(drive, why):
    assert describe_drive(drive).why == why


def test_crossed_belts_share_one_value_and_the_refusal_says_why():
    other = Drive(DriveKind.BELT, pitch_mm=2, teeth=16)
    with pytest.raises(InputError) as refused:
        check_axes(Motion.CROSSED_BELT, {"x": BELT, "y": other})
    assert refused.value.field == "y"
    assert refused.value.message == (
        "On crossed belts both motors turn for X as well as for Y, so they share one value. 80.0000 and 100.0000 "
        "steps/mm would not change X against Y but shear every part by 25 mm in 100 mm. Enter one set of "
        "parts for A and B."
    )


def test_crossed_belts_refuse_trimmed_values_too():
    """0.3 % on one motor shears by 0.30 mm in 100 mm (own computation)."""
    with pytest.raises(InputError, match=r"shear every part by 0\.3 mm in 100 mm"):
        check_axes(Motion.CROSSED_BELT, {"x": BELT, "y": BELT}, {"x": 80.0, "y": 80.24})


def test_unequal_belts_shear_but_do_not_scale_x_against_y():
    """The plain kinematics behind the refusal: q_a = x + y, q_b = x - y, one of them stretched."""
    eps = 0.003

    def moved(x, y):
        a, b = (x + y) * (1 + eps), x - y
        return (a + b) / 2, (a - b) / 2

    (xx, xy), (yx, yy) = moved(100, 0), moved(0, 100)
    assert xx == pytest.approx(yy, abs=1e-12)
    assert xy + yx == pytest.approx(100 * eps, abs=1e-12)


@pytest.mark.parametrize(
    "motion, drives",
    [
        (Motion.CARTESIAN, {"x": BELT, "y": SCREW, "z": SCREW}),
        (Motion.CROSSED_BELT, {"x": BELT, "y": BELT, "z": SCREW}),
        (Motion.CROSSED_BELT, {"x": BELT, "z": SCREW}),
        (Motion.CROSSED_BELT, {"y": BELT}),
        (Motion.DELTA, {"x": BELT, "y": BELT, "z": BELT}),
    ],
)
def test_axes_that_go_together_raise_no_question(motion, drives):
    assert check_axes(motion, drives) == ()


def test_delta_carriages_that_differ_are_asked_about():
    (question,) = check_axes(Motion.DELTA, {"x": BELT, "y": BELT, "z": SCREW})
    assert question.field == "z"
    assert question.says.startswith("The three carriages differ")


@pytest.mark.parametrize(
    "motion, words", [*zip(Motion, ("its own value", "this one value", "the carriages"), strict=True)]
)
def test_what_the_value_means_on_each_motion(motion, words):
    assert words in motion_note(motion)


@pytest.mark.parametrize(
    "drive, field, instead, says",
    [
        (
            SCREW,
            "pitch_mm",
            0.5,
            "2 mm with 4 starts: is 2 mm the thread pitch (travel 8 mm per turn) or already the travel per turn?",
        ),
        (
            Drive(DriveKind.SCREW, pitch_mm=100, starts=2),
            "pitch_mm",
            50.0,
            "100 mm with 2 starts: is 100 mm the thread pitch (travel 200 mm per turn) or already the travel per turn?",
        ),
        (
            Drive(DriveKind.SCREW, pitch_mm=0.2, starts=1),
            "pitch_mm",
            None,
            "Travel of 0.2 mm per turn is unusual for a screw (0.35 to 100 mm); check pitch and starts.",
        ),
        (
            Drive(DriveKind.BELT, pitch_mm=2.03, teeth=20),
            "pitch_mm",
            2.032,
            "A belt pitch of 2.03 mm is not in the catalogue; the nearest is 2.032 mm (MXL). Measure over ten teeth.",
        ),
        (
            Drive(DriveKind.BELT, pitch_mm=2, teeth=150),
            "teeth",
            None,
            "150 teeth is unusual, most wheels have 8 to 120; count again, one tooth marked.",
        ),
        (
            Drive(DriveKind.BELT, full_steps=3200, pitch_mm=2, teeth=20),
            "full_steps",
            200,
            "3200 full steps per turn is unusual; most motors have 200 (1.8°) or 400 (0.9°). Are microsteps in it?",
        ),
        (
            Drive(DriveKind.RACK, module_mm=5, teeth=20),
            "module_mm",
            None,
            "Module 5 mm is unusual (0.3 to 4 mm); is it the pitch of the rack?",
        ),
        (
            Drive(DriveKind.WHEEL, diameter_mm=12),
            "diameter_mm",
            None,
            "A smooth wheel gives a nominal value only: 0.05 mm on 12 mm is 0.4 %. Measure the travel.",
        ),
        (
            Drive(DriveKind.BELT, pitch_mm=2, teeth=20, reeving=Reeving.HALF),
            "reeving",
            None,
            "Does the carriage really move 1/2 times as far as the belt? Mark the belt and look.",
        ),
    ],
)
def test_what_is_odd_is_asked_about_at_its_field(drive, field, instead, says):
    (question,) = question_drive(drive)
    assert (question.field, question.instead, question.says) == (field, instead, says)


@pytest.mark.parametrize(
    "drive",
    [
        BELT,
        Drive(DriveKind.SCREW, pitch_mm=2, starts=1),
        Drive(DriveKind.SCREW, pitch_mm=0.5, starts=4),
        Drive(DriveKind.RACK, module_mm=1, teeth=20),
        Drive(DriveKind.RACK, pitch_mm=5, teeth=20),
    ],
)
def test_ordinary_parts_raise_no_question(drive):
    assert question_drive(drive) == ()
