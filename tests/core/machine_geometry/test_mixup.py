"""Plant one wrong part, and the finder must name it, first where nothing else gives that ratio."""

import math
from dataclasses import replace

import pytest

from core.errors import InputError
from core.machine_geometry.drive import Drive, DriveKind, Reeving, describe_drive
from core.machine_geometry.mixup import (
    RatioInterval,
    Slip,
    find_mixups,
    mixups_within,
    parts_behind_steps,
    ratio_from_lengths,
    search_mixups,
)
from core.machine_geometry.slips import slips_of

BELT = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20)
SCREW = Drive(DriveKind.SCREW, pitch_mm=2.0, starts=4)
RACK = Drive(DriveKind.RACK, module_mm=1.0, teeth=20)
WHEEL = Drive(DriveKind.WHEEL, diameter_mm=12.0)
GEARED = replace(BELT, gears=((43, 12),))
EDGES = [
    Drive(DriveKind.BELT, pitch_mm=2.0, teeth=3, gears=((1000, 1000), (40, 1))),
    Drive(DriveKind.BELT, pitch_mm=2.0, teeth=500, microsteps=256),
    Drive(DriveKind.SCREW, pitch_mm=0.5, starts=6),
    Drive(DriveKind.RACK, pitch_mm=5.0, teeth=12, helix_deg=30),
    Drive(DriveKind.WHEEL, diameter_mm=1.0),
    Drive(DriveKind.WHEEL, diameter_mm=500.0),
]


@pytest.mark.parametrize(
    "entered, fitted, slip, says",
    [
        (BELT, replace(BELT, teeth=16), Slip.TEETH, "16 teeth where 20 are entered: 100 mm come out as 80 mm. "),
        (BELT, replace(BELT, teeth=18), Slip.TEETH, "18 teeth where 20 are entered: 100 mm come out as 90 mm. "),
        (
            BELT,
            replace(BELT, pitch_mm=2.032),
            Slip.BELT_PITCH,
            "a belt of 2.032 mm pitch where 2 mm is entered: 100 mm come out as 101.6 mm. ",
        ),
        (
            BELT,
            replace(BELT, microsteps=32),
            Slip.MICROSTEPS,
            "32 microsteps where 16 are entered: 100 mm come out as 50 mm. ",
        ),
        (
            BELT,
            replace(BELT, full_steps=400),
            Slip.STEP_ANGLE,
            "a motor of 400 full steps per turn where 200 are entered: 100 mm come out as 50 mm. ",
        ),
        (BELT, replace(BELT, gears=((3, 1),)), Slip.GEAR_MISSING, "a gear pair 3/1 that is not entered: "),
        (GEARED, replace(BELT, gears=((12, 43),)), Slip.GEAR_INVERSE, "the gear pair 43/12 entered upside down: "),
        (GEARED, BELT, Slip.GEAR_MISSING, "no gear pair 43/12 in the drive: "),
        (GEARED, replace(BELT, gears=((43, 13),)), Slip.GEAR_PAIR, "a gear pair 43/13 where 43/12 is entered: "),
        (
            BELT,
            replace(BELT, reeving=Reeving.DOUBLE),
            Slip.REEVING,
            "a carriage that goes twice as far as the belt, not as far as the belt: 100 mm come out as 200 mm. ",
        ),
        (
            replace(SCREW, starts=1),
            SCREW,
            Slip.STARTS,
            "4 thread starts where 1 is entered: 100 mm come out as 400 mm. ",
        ),
        (
            replace(SCREW, pitch_mm=8.0),
            SCREW,
            Slip.LEAD_AS_PITCH,
            "the 8 mm entered as thread pitch is already the travel per turn: 100 mm come out as 25 mm. ",
        ),
        (
            SCREW,
            replace(SCREW, pitch_mm=1.5, starts=1),
            Slip.SCREW,
            "a screw of 1.5 mm travel per turn where 8 mm is entered: 100 mm come out as 18.75 mm. ",
        ),
        (
            RACK,
            replace(RACK, module_mm=1.5),
            Slip.RACK_PITCH,
            "a rack of module 1.5 mm where module 1 mm is entered: 100 mm come out as 150 mm. ",
        ),
        (
            replace(RACK, module_mm=5.0),
            replace(RACK, module_mm=None, pitch_mm=5.0),
            Slip.RACK_PITCH,
            "pitch 5 mm where module 5 mm is entered: module and pitch mistaken: 100 mm come out as 31.83 mm. ",
        ),
        (
            RACK,
            replace(RACK, helix_deg=19.5283),
            Slip.HELIX,
            "a rack of 19.5283° helix where 0° is entered: 100 mm come out as 106.1 mm. ",
        ),
        (
            WHEEL,
            replace(WHEEL, diameter_mm=24.0),
            Slip.DIAMETER,
            "the radius of the wheel entered as its diameter: 100 mm come out as 200 mm. ",
        ),
    ],
)
def test_a_planted_wrong_part_is_named(entered, fitted, slip, says):
    ratio = describe_drive(entered).steps_mm / describe_drive(fitted).steps_mm
    hits = find_mixups(entered, ratio, 0.001 * ratio)
    named = [hit for hit in hits if hit.slip is slip and hit.says.startswith(says)]
    assert len(named) == 1
    assert named[0].ratio == pytest.approx(ratio, rel=1e-12)
    assert describe_drive(named[0].drive).steps_mm == pytest.approx(describe_drive(fitted).steps_mm, rel=1e-12)


@pytest.mark.parametrize("teeth", range(16, 25))
def test_each_miscount_of_up_to_four_teeth_comes_first(teeth):
    hits = find_mixups(BELT, teeth / 20, 0.002)
    if teeth == 20:
        assert hits == ()
    else:
        assert (hits[0].slip, hits[0].fitted) == (Slip.TEETH, str(teeth))


@pytest.mark.parametrize(
    "ratio, slip",
    [(1.016, Slip.BELT_PITCH), (25.4, Slip.INCH), (1 / 25.4, Slip.INCH), (0.8, Slip.TEETH), (1.5, Slip.BELT_PITCH)],
)
def test_the_likeliest_of_the_gross_ratios_of_a_2_mm_belt(ratio, slip):
    """Common practice, no source: the ratios that point to the parts list and not to trimming."""
    assert find_mixups(BELT, ratio, 0.002 * ratio)[0].slip is slip


def test_every_power_of_two_of_the_microsteps_is_tried():
    for micro in (1, 2, 4, 8, 32, 64, 128, 256):
        fitted = {hit.fitted for hit in find_mixups(BELT, 16 / micro, 1e-4) if hit.slip is Slip.MICROSTEPS}
        assert fitted == {str(micro)}


def test_ambiguous_ratios_list_all_explanations_with_shares_that_sum_to_one():
    hits = find_mixups(BELT, 0.5, 0.001)
    assert [hit.slip for hit in hits] == [
        Slip.MICROSTEPS,
        Slip.STEP_ANGLE,
        Slip.TEETH,
        Slip.GEAR_MISSING,
        Slip.REEVING,
    ]
    assert sum(hit.share for hit in hits) == pytest.approx(1, abs=1e-12)
    assert list(hits) == sorted(hits, key=lambda hit: -hit.share)


def test_nearer_to_the_reading_is_likelier():
    near = find_mixups(BELT, 0.90, 0.05)
    shares = {hit.fitted: hit.share for hit in near if hit.slip is Slip.TEETH}
    assert shares["18"] > shares["17"]


@pytest.mark.parametrize("drive", [BELT, SCREW, RACK, WHEEL, GEARED, *EDGES])
def test_no_candidate_repeats_the_entry_or_another(drive):
    candidates = slips_of(drive)
    assert all(abs(candidate.ratio - 1) > 1e-9 and candidate.weight > 0 for candidate in candidates)
    assert len({(candidate.slip, candidate.fitted) for candidate in candidates}) == len(candidates)


def test_inside_the_tolerance_of_sound_parts_nothing_is_found():
    """A belt is well inside 0.5 % (common practice, no source): such ratios have no wrong part."""
    assert find_mixups(BELT, 1.004, 0.0005) == ()
    assert find_mixups(BELT, 0.995, 0.0005) == ()


def test_the_interval_is_the_95_percent_one_widened_by_the_drive():
    exact = replace(BELT, u_ratio=1e-6)
    wide = replace(BELT, u_ratio=0.01)
    assert find_mixups(exact, 0.809, 0.005)[0].fitted == "16"  # 1.8 u away
    assert find_mixups(exact, 0.812, 0.005) == ()  # 2.4 u: beyond k = 1.96, within k = 2.78 for 4 degrees of freedom
    assert find_mixups(exact, 0.812, 0.005, dof=4)[0].fitted == "16"
    assert find_mixups(wide, 0.812, 0.005)[0].fitted == "16"


def test_a_ratio_without_uncertainty_still_meets_its_part():
    assert find_mixups(replace(BELT, u_ratio=1e-6), 0.8)[0].fitted == "16"


def test_what_lies_far_off_is_shared_out_by_how_usual_it_is():
    weights = {(one.slip, one.fitted): one.weight for one in slips_of(BELT)}
    every = sum(weights.values())
    hits = find_mixups(BELT, 0.07, 1e-6, dof=0.1)  # two tenths of a degree of freedom hold anything
    assert len(hits) == len(weights) and len(set(weights.values())) > 1
    assert all(hit.share == pytest.approx(weights[hit.slip, hit.fitted] / every) for hit in hits)
    shares = [hit.share for hit in hits]
    assert shares == sorted(shares, reverse=True)


def test_next_to_no_steps_are_behind_no_parts():
    assert parts_behind_steps(BELT, 1e-30) == ()


def test_a_value_found_in_the_controller_is_the_base_of_the_ratio():
    """16 teeth fitted, 20 entered, and somebody had typed 100 for it: the travel is right, so the reading is 1."""
    found = mixups_within(BELT, RatioInterval(1.0, 0.001), found_steps_mm=100.0)
    assert [(hit.slip, hit.fitted) for hit in found][:1] == [(Slip.TEETH, "16")]
    assert found[0].ratio == pytest.approx(1.0, rel=1e-12)
    assert find_mixups(BELT, 1.25, 0.001, found_steps_mm=100.0) == ()


def test_shrunk_plastic_hides_part_of_the_ratio():
    printed = ratio_from_lengths(100, 79.5, 0.1, shrink_ratio=0.01)
    assert [hit.fitted for hit in mixups_within(BELT, printed)] == ["16"]
    travelled = ratio_from_lengths(100, 79.5, 0.1)
    assert mixups_within(BELT, travelled) == ()


def test_ratio_of_two_lengths_with_its_interval():
    interval = ratio_from_lengths(100, 80, 0.5)
    assert interval.ratio == 0.8
    assert (interval.low_ratio, interval.high_ratio) == pytest.approx((0.795, 0.805), abs=1e-8)
    assert interval.holds(0.8) and not interval.holds(0.81)


@pytest.mark.parametrize(
    "lengths, words",
    [
        ((100, 100.1, 0.5), "The parts as entered fit this reading"),
        ((100, 80, 0.5), "Wrong parts that give a ratio of 0.7949 to 0.8051, the likeliest first:"),
        ((100, 100.7, 0.1), "Off by 0.70 %: too little for a wrong part."),
        ((100, 86, 0.1), "No single wrong part gives a ratio of 0.8587 to 0.8613: two slips at once"),
    ],
)
def test_the_search_is_summed_up_in_a_sentence(lengths, words):
    search = search_mixups(BELT, ratio_from_lengths(*lengths))
    assert search.says.startswith(words)
    assert search.as_entered is (lengths[1] == 100.1)


def test_other_parts_behind_a_found_value():
    (teeth,) = parts_behind_steps(BELT, 100.0)
    assert teeth.says == (
        "100 steps/mm would belong to 16 teeth where 20 are entered. Count the wheel that moves the carriage, one "
        "tooth marked; an idler does not count."
    )
    assert describe_drive(teeth.drive).steps_mm == 100.0
    assert [hit.fitted for hit in parts_behind_steps(BELT, 78.74)] == ["2.032"]


def test_a_tuned_value_belongs_to_no_parts_and_a_right_one_to_those_entered():
    assert parts_behind_steps(BELT, 80.63) == ()
    assert parts_behind_steps(BELT, 80.0) == ()
    assert parts_behind_steps(BELT, 80 * 25.4) == ()  # a unit is no part


@pytest.mark.parametrize(
    "call, field, message",
    [
        (lambda: find_mixups(BELT, 0), "ratio", "A ratio of 0 is not possible; it is a length over a length."),
        (lambda: find_mixups(BELT, math.nan), "ratio", "A ratio of nan is not possible; it is a length over a length."),
        (
            lambda: find_mixups(BELT, 0.8, 0.9),
            "u_ratio",
            "An uncertainty of 0.9 leaves a ratio of 0.8 open; measure again.",
        ),
        (
            lambda: find_mixups(BELT, 0.8, 0.01, found_steps_mm=0),
            "found_steps_mm",
            "“0” must be a number above 0; type it again.",
        ),
        (
            lambda: parts_behind_steps(BELT, -1),
            "found_steps_mm",
            "“−1” must be a number above 0; type it again.",
        ),
        (
            lambda: ratio_from_lengths(0, 80, 0.5),
            "commanded_mm",
            "0 mm gives no ratio; enter a length above 0.",
        ),
        (
            lambda: ratio_from_lengths(100, -80, 0.5),
            "measured_mm",
            "−80 mm gives no ratio; enter a length above 0.",
        ),
        (
            lambda: ratio_from_lengths(100, 80, 90),
            "U_measured_mm",
            "An uncertainty of 90 mm must be 0 or more and below the reading of 80 mm.",
        ),
        (
            lambda: ratio_from_lengths(100, 80, 0.5, shrink_ratio=0.2),
            "shrink_ratio",
            "Shrinkage of 20 % is outside 0 to 5 %.",
        ),
    ],
)
def test_each_refusal_names_its_field(call, field, message):
    with pytest.raises(InputError) as refused:
        call()
    assert (refused.value.field, refused.value.message) == (field, message)
