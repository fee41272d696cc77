"""What a drive allows, in sentences. Own computation; the shares of a ceiling: common practice, no source."""

import math

import pytest

from core.errors import InputError
from core.machine_geometry.drive import Drive, DriveKind
from core.machine_geometry.drivelimits import Wanted, limits_of
from core.machine_geometry.resolution import load_lag_mm, microstep_torque_ratio, rounding_sd_mm
from core.records.rows import Motion

BELT = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20)
SCREW = Drive(DriveKind.SCREW, pitch_mm=2.0, starts=4)
FINE = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20, microsteps=256)


def said(drive, motion=Motion.CARTESIAN, **wanted):
    return [(limit.about, limit.says, limit.asks) for limit in limits_of(drive, motion, Wanted(**wanted))]


def only(drive, motion=Motion.CARTESIAN, **wanted):
    ((about, says, asks),) = said(drive, motion, **wanted)
    return about, says, asks


def test_nothing_wanted_nothing_said():
    assert said(BELT) == []
    assert said(BELT, speed_mm_s=100.0, supply_v=24.0) == []  # no ceiling can be calculated
    assert said(BELT, belt_width_mm=6.0, span_mm=300.0) == []


def test_a_layer_that_is_no_whole_number_of_full_steps_names_the_nearest_that_are():
    about, says, asks = only(SCREW, height_mm=0.15)
    assert about == "Step grid" and asks
    assert says.startswith("Layer 0.15 mm is 3.75 full steps on this drive; layers will not be alike.")
    assert "0.12 mm, 0.16 mm" in says
    assert only(SCREW, height_mm=0.2) == ("Step grid", "0.2 mm is 5 full steps: layers are alike.", False)


def test_a_speed_above_the_step_rate_names_the_most_and_coarser_microsteps():
    about, says, asks = only(SCREW, speed_mm_s=300.0, step_rate_per_s=40_000.0)
    assert about == "Speed" and asks
    assert says == (
        "300 mm/s at 400 steps/mm needs 120000 steps/s; this controller's ceiling is 40000. Most here 100 mm/s; or "
        "microsteps 4."
    )


def test_the_least_ceiling_counts_and_seven_tenths_of_it_are_used():
    electrical = {"supply_v": 24.0, "current_a": 1.5, "inductance_mh": 3.0}  # 2667 full steps/s: 533 mm/s
    assert only(BELT, step_rate_per_s=40_000.0) == (
        "Speed", "Use up to 350 mm/s: the steps of the controller allow 500 mm/s.", False
    )  # fmt: skip
    assert only(BELT, speed_mm_s=300.0, step_rate_per_s=40_000.0)[1].startswith("Use up to 350 mm/s")
    assert only(BELT, step_rate_per_s=40_000.0, **electrical)[1] == (
        "Use up to 187 mm/s: the windings of the motor allow 267 mm/s."
    )
    assert only(BELT, speed_mm_s=200.0, **electrical) == (
        "Speed",
        "200 mm/s is too near to the 267 mm/s that the windings of the motor allow; use up to 187 mm/s.",
        True,
    )
    assert only(BELT, Motion.CROSSED_BELT, step_rate_per_s=40_000.0)[1].startswith("Use up to 247 mm/s")


def test_a_delta_is_told_that_carriages_run_faster_than_the_nozzle():
    first, second = said(BELT, Motion.DELTA, step_rate_per_s=40_000.0)
    assert "Use up to 350" in first[1] and "two to three times as fast as the nozzle" in second[1]


def test_a_load_makes_a_lag_that_looks_like_play():
    """10 % of the holding torque on full steps of 0.2 mm: 0.064 full steps, 0.013 mm."""
    assert load_lag_mm(BELT, 0.1) == pytest.approx(0.064 * 0.2, rel=0.01)
    assert microstep_torque_ratio(BELT) == pytest.approx(0.098, abs=5e-4)
    assert microstep_torque_ratio(FINE) == pytest.approx(0.006, abs=2e-4)
    assert rounding_sd_mm(BELT) == pytest.approx(0.0036, abs=5e-5)
    assert only(BELT, load_ratio=0.05) == (
        "Load",
        "5 % of the holding torque lets the motor lag by 0.0064 mm, which looks like a reversal of 0.013 mm. One "
        "microstep holds 9.8 %; rounding to it scatters by 0.0036 mm.",
        False,
    )
    first, second = said(FINE, load_ratio=0.1)
    assert not first[2] and second[2]
    assert second[1] == "Friction above 0.61 % swallows single microsteps: finer ones are no finer travel."


def test_the_tone_of_a_belt_is_its_tension_and_a_screw_has_none():
    tone = {"belt_width_mm": 6.0, "span_mm": 300.0, "tone_hz": 81.0}
    about, says, asks = only(BELT, **tone)
    assert about == "Belt" and not asks and says.startswith("Its tension is 19.8 ± 2.2 N;")
    assert said(SCREW, **tone) == []


def test_wrong_rods_of_a_delta_are_entered_and_the_steps_left_alone():
    about, says, asks = only(BELT, Motion.DELTA, rod_mm=215.0, rod_measured_mm=215.5, radius_mm=105.0)
    assert about == "Rods" and asks
    assert says.startswith("Parts come out +0.156 ± 0.035 % off") and says.endswith("Leave the steps.")
    assert "enter 215.5 mm" in says
    right = only(BELT, Motion.DELTA, rod_mm=215.0, rod_measured_mm=215.05, radius_mm=105.0)
    assert right[1].startswith("They agree: ") and not right[2]
    assert said(BELT, rod_mm=215.0, rod_measured_mm=215.5, radius_mm=105.0) == []  # no delta


@pytest.mark.parametrize(
    ("wanted", "field", "message"),
    [
        ({"height_mm": 0.0}, "height_mm", "A layer height of 0 mm is not possible."),
        ({"step_rate_per_s": 0.0}, "step_rate_per_s", "A step rate of 0 per second is not possible."),
        ({"step_rate_per_s": 1e4, "speed_mm_s": -1.0}, "speed_mm_s", "A speed of −1 mm/s is not possible."),
        ({"supply_v": 0.0, "current_a": 1.0, "inductance_mh": 3.0}, "supply_v", "“0” must be a number above 0"),
        ({"belt_width_mm": 0.0, "span_mm": 300.0, "tone_hz": 81.0}, "belt_width_mm", "The width of the belt is above"),
        ({"belt_width_mm": 6.0, "span_mm": 0.0, "tone_hz": 81.0}, "span_mm", "Span and mass of a belt are above zero"),
        ({"belt_width_mm": 6.0, "span_mm": 300.0, "tone_hz": 2.0}, "tone_hz", "2 Hz is no tone of a belt"),
        ({"load_ratio": 1.0}, "load_ratio", "A load of 100 % of the holding torque is not possible; type 0 to 99."),
        ({"load_ratio": math.nan}, "load_ratio", "A load of nan %"),
    ],
)
def test_refusals(wanted, field, message):
    with pytest.raises(InputError) as refused:
        said(BELT, **wanted)
    assert refused.value.field == field and refused.value.message.startswith(message)


def test_the_extruder_steps_under_the_same_ceiling():
    """400 steps/mm at 12 mm³/s through 2.4053 mm² of 1.75 mm filament: 1996 steps/s."""
    wanted = {"extruder_steps_mm": 400.0, "flow_mm3_s": 12.0, "filament_mm": 1.75}
    needed = 400.0 * 12.0 / (math.pi * 1.75**2 / 4)
    assert needed == pytest.approx(1996, abs=0.5)
    assert said(BELT, extruder_steps_mm=400.0, flow_mm3_s=12.0) == []
    assert only(BELT, **wanted) == ("Extruder", "12 mm³/s of 1.75 mm filament needs 1996 steps/s.", False)
    assert said(BELT, **wanted, step_rate_per_s=10_000.0)[-1] == (
        "Extruder", "12 mm³/s needs 1996 steps/s of 10000; up to 42.1 mm³/s may be used.", False
    )  # fmt: skip
    assert said(BELT, **wanted, step_rate_per_s=2_000.0)[-1] == (
        "Extruder",
        "12 mm³/s of 1.75 mm filament needs 1996 steps/s; this controller's ceiling is 2000. Use up to 8.42 mm³/s, or "
        "fewer microsteps at the extruder.",
        True,
    )


@pytest.mark.parametrize("field", ["extruder_steps_mm", "flow_mm3_s", "filament_mm"])
def test_an_extruder_that_cannot_be_is_refused_at_its_field(field):
    wanted = {"extruder_steps_mm": 400.0, "flow_mm3_s": 12.0, "filament_mm": 1.75, field: 0.0}
    with pytest.raises(InputError) as refused:
        limits_of(BELT, Motion.CARTESIAN, Wanted(**wanted))
    assert (refused.value.field, refused.value.message) == (field, "“0” must be a number above 0; type it again.")
