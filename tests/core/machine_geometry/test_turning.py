"""What a turning bed allows. Own computation by plane geometry; shares of a ceiling: common practice, no source."""

import math

import pytest

from core.errors import InputError
from core.machine_geometry.drive import Drive, DriveKind
from core.machine_geometry.drivelimits import Wanted, limits_of
from core.machine_geometry.rotary import describe_rotary
from core.machine_geometry.turning import least_radius_mm, step_at_radius_mm
from core.records.rows import Motion

TABLE = Drive(DriveKind.ROTARY, gears=((90, 10),))  # 80 steps/°
ELECTRICAL = {"supply_v": 24.0, "current_a": 1.5, "inductance_mh": 3.0}  # 2667 full steps/s


def said(**wanted):
    limits = limits_of(TABLE, Motion.CARTESIAN, Wanted(**wanted))
    return [(limit.about, limit.says, limit.asks) for limit in limits]


def test_nothing_wanted_nothing_said_and_layers_are_no_matter_of_it():
    assert said() == []
    assert said(height_mm=0.15, load_ratio=0.1, speed_mm_s=50.0) == []


def test_a_step_grows_with_the_radius():
    assert describe_rotary(TABLE).steps_deg == 80.0
    assert step_at_radius_mm(TABLE, 100.0) == pytest.approx(2 * math.pi * 100 / (360 * 80))
    assert said(at_radius_mm=100.0) == [
        ("Step grid", "At radius 100 mm one microstep is 0.022 mm; it grows with the radius.", False)
    ]


def test_the_turning_rate_leaves_a_disc_about_the_centre():
    """40 kHz on 80 steps/° are 500 °/s, of which 0.7: 350 °/s = 6.1087 rad/s; 60 mm/s need 9.82 mm."""
    assert least_radius_mm(60.0, 350.0) == pytest.approx(60 / (350 * math.pi / 180))
    rate, disc = said(step_rate_per_s=40_000.0, speed_mm_s=60.0)
    assert rate == ("Turning", "Use up to 350 °/s, 58.3 turns a minute.", False)
    assert disc == (
        "Turning",
        "At 60 mm/s nothing within 9.82 mm of the centre can be printed: the axis would have to turn faster.",
        False,
    )
    assert [limit[2] for limit in said(step_rate_per_s=40_000.0, speed_mm_s=60.0, at_radius_mm=5.0)] == [
        False, False, True
    ]  # fmt: skip
    assert [limit[2] for limit in said(step_rate_per_s=40_000.0, speed_mm_s=60.0, at_radius_mm=15.0)][-1] is False


def test_the_windings_count_too():
    """2667 full steps/s of 0.2°: 533 °/s, of which half and 0.7."""
    ((_, says, _),) = said(**ELECTRICAL)
    assert says.startswith("Use up to 187 °/s")
    assert said(step_rate_per_s=40_000.0, **ELECTRICAL)[0][1].startswith("Use up to 187 °/s")


def test_a_centre_out_of_place_is_no_matter_of_steps():
    ((about, says, asks),) = said(centre_off_mm=0.15)
    assert (about, asks) == ("Centre", True)
    assert says == (
        "A centre 0.15 mm out of place makes sizes up to 0.3 mm wrong, with the other sign across the centre: set the "
        "centre, leave the steps."
    )
    assert said(centre_off_mm=0.0)[0][2] is False


def test_the_extruder_counts_here_as_well():
    ((about, _, _),) = said(extruder_steps_mm=400.0, flow_mm3_s=10.0, filament_mm=1.75)
    assert about == "Extruder"


@pytest.mark.parametrize(
    ("wanted", "field", "words"),
    [
        ({"at_radius_mm": 0.0}, "at_radius_mm", "“0” must be a number above 0; type it again."),
        ({"centre_off_mm": -1.0}, "centre_off_mm", "A centre −1 mm out of place is not possible; type 0 to 10 mm."),
        ({"centre_off_mm": 11.0}, "centre_off_mm", "A centre 11 mm out of place is not possible; type 0 to 10 mm."),
        ({"step_rate_per_s": 0.0}, "step_rate_per_s", "A step rate of 0 per second is not possible."),
        ({"step_rate_per_s": 4e4, "speed_mm_s": -1.0}, "speed_mm_s", "“−1” must be a number above 0; type it again."),
        ({**ELECTRICAL, "supply_v": 0.0}, "supply_v", "“0” must be a number above 0; type it again."),
    ],
)
def test_what_cannot_be_is_refused_at_its_field(wanted, field, words):
    with pytest.raises(InputError) as refused:
        said(**wanted)
    assert (refused.value.field, refused.value.message) == (field, words)


def test_a_turning_rate_of_none_has_no_disc():
    with pytest.raises(InputError) as refused:
        least_radius_mm(60.0, 0.0)
    assert refused.value.field == "turning_deg_s"
