"""Parts in and out, and each refusal with its field and sentence."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.machine_geometry.drive import Drive, DriveKind, Reeving, drive_from_parts, gears_from_text

BELT = {"kind": "belt", "pitch_mm": 2, "teeth": 20}
SCREW = {"kind": "screw", "pitch_mm": 2, "starts": 4}
RACK = {"kind": "rack", "module_mm": 1, "teeth": 15}

pairs = st.lists(st.tuples(st.integers(1, 1000), st.integers(1, 1000)), max_size=3).map(tuple)
lengths = st.floats(1, 20)
whole = {
    DriveKind.BELT: {"pitch_mm": lengths, "teeth": st.integers(3, 500)},
    DriveKind.SCREW: {"pitch_mm": lengths, "starts": st.integers(1, 12)},
    DriveKind.RACK: {"module_mm": lengths, "teeth": st.integers(3, 500), "helix_deg": st.floats(0, 60)},
    DriveKind.WHEEL: {"diameter_mm": lengths},
    DriveKind.ROTARY: {},
}
drives = st.sampled_from(DriveKind).flatmap(
    lambda kind: st.builds(
        Drive,
        kind=st.just(kind),
        gears=pairs,
        reeving=st.just(Reeving.DIRECT) if kind is DriveKind.ROTARY else st.sampled_from(Reeving),
        microsteps=st.sampled_from([1, 16, 256]),
        u_ratio=st.none() | st.floats(1e-5, 0.05),
        **whole[kind],
    )
)


@given(drives)
def test_a_drive_survives_json(drive):
    assert drive_from_parts(json.loads(json.dumps(drive.parts()))) == drive


def test_parts_name_only_what_the_kind_has():
    assert Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20, gears=((43, 12),)).parts() == {
        "kind": "belt",
        "reeving": "direct",
        "full_steps": 200,
        "microsteps": 16,
        "pitch_mm": 2.0,
        "teeth": 20,
        "gears": [[43, 12]],
    }


@pytest.mark.parametrize(
    "parts, field, message",
    [
        ({}, "kind", "Choose what moves the carriage: belt, screw, rack or wheel; or a rotary axis."),
        (
            {"kind": "chain"},
            "kind",
            "“chain” is no kind of drive known here; choose one of belt, screw, rack, wheel, rotary.",
        ),
        ({**BELT, "reeving": "3"}, "reeving", "“3” is no reeving known here; choose one of direct, half, double."),
        ({**BELT, "colour": "red"}, "colour", "A drive has no part called “colour”; leave it out."),
        ({"kind": "belt", "pitch_mm": 2}, "teeth", "The number of teeth is missing; count or measure it."),
        ({"kind": "belt", "pitch_mm": "", "teeth": 20}, "pitch_mm", "The pitch is missing; count or measure it."),
        (
            {"kind": "screw", "pitch_mm": 2, "starts": None},
            "starts",
            "The number of starts is missing; count or measure it.",
        ),
        ({"kind": "wheel"}, "diameter_mm", "The diameter is missing; count or measure it."),
        ({"kind": "rack", "teeth": 15}, "module_mm", "A rack has a module or a pitch in mm: enter one of the two."),
        ({**RACK, "pitch_mm": 5}, "module_mm", "A rack has a module or a pitch in mm: enter one of the two."),
        (
            {**BELT, "teeth": 20.5},
            "teeth",
            "20.5 teeth is not possible; count again, a tooth count is a whole number.",
        ),
        (
            {**SCREW, "starts": 1.5},
            "starts",
            "1.5 starts is not possible; count the thread beginnings at the end of the screw.",
        ),
        (
            {**BELT, "full_steps": 1.8},
            "full_steps",
            "1.8° is the step angle; enter the full steps per turn, 200.",
        ),
        (
            {**BELT, "full_steps": 0.9},
            "full_steps",
            "0.9° is the step angle; enter the full steps per turn, 400.",
        ),
        (
            {**BELT, "full_steps": 200.5},
            "full_steps",
            "200.5 full steps is not possible; enter 360 divided by the step angle, a whole number.",
        ),
        (
            {**BELT, "microsteps": 15},
            "microsteps",
            "Microsteps 15 is not a power of two; drivers offer 1, 2, 4 … 256.",
        ),
        (
            {**BELT, "microsteps": 512},
            "microsteps",
            "Microsteps 512 is not a power of two; drivers offer 1, 2, 4 … 256.",
        ),
        ({**BELT, "teeth": "many"}, "teeth", "The number of teeth “many” is not a number; type it again."),
        ({**BELT, "teeth": True}, "teeth", "The number of teeth “True” is not a number; type it again."),
        ({**BELT, "pitch_mm": float("nan")}, "pitch_mm", "The pitch “nan” is not a number; type it again."),
        (
            {**BELT, "pitch_mm": 200},
            "pitch_mm",
            "The pitch 200 mm is outside 0.1 to 100 mm; check the decimal mark and the unit.",
        ),
        (
            {**BELT, "pitch_mm": -2},
            "pitch_mm",
            "The pitch −2 mm is outside 0.1 to 100 mm; check the decimal mark and the unit.",
        ),
        (
            {**RACK, "helix_deg": 75},
            "helix_deg",
            "The helix angle 75° is outside 0 to 60°; check the decimal mark and the unit.",
        ),
        (
            {**BELT, "u_ratio": 0.2},
            "u_ratio",
            "The tolerance of the drive 0.2 is outside 1e−06 to 0.05; check the decimal mark and the unit.",
        ),
        (
            {**BELT, "gears": [[43.5, 12]]},
            "gears",
            "A gear has whole teeth: “43.5” is not a tooth count; count again.",
        ),
        ({**BELT, "gears": [[0, 11]]}, "gears", "Gear pair 0/11: each wheel has 1 to 1000 teeth; count again."),
        ({**BELT, "gears": [["a", 11]]}, "gears", "A gear has whole teeth: “a” is not a tooth count; count again."),
        ({**BELT, "gears": 3.58}, "gears", "Gear pairs are counted teeth, driven/driving, such as 43/12."),
        ({**BELT, "gears": [43, 12]}, "gears", "Gear pairs are counted teeth, driven/driving, such as 43/12."),
        (
            {**BELT, "gears": "3.58"},
            "gears",
            "3.58 is a rounded gear ratio; enter the counted teeth, driven/driving. Is it 43/12?",
        ),
    ],
)
def test_what_cannot_be_is_refused_at_its_field(parts, field, message):
    with pytest.raises(InputError) as refused:
        drive_from_parts(parts)
    assert (refused.value.field, refused.value.message) == (field, message)


@pytest.mark.parametrize(
    "text, gears",
    [
        ("", ()),
        (" 43/12 ", ((43, 12),)),
        ("43:12", ((43, 12),)),
        ("3/1 43/12", ((3, 1), (43, 12))),
        ("3/1 × 43/12", ((3, 1), (43, 12))),
        ("40/1; 2/1", ((40, 1), (2, 1))),
    ],
)
def test_gear_pairs_are_read_as_counted_teeth(text, gears):
    assert gears_from_text(text) == gears


@pytest.mark.parametrize(
    "text, message",
    [
        ("3.58", "3.58 is a rounded gear ratio; enter the counted teeth, driven/driving. Is it 43/12?"),
        ("3,58", "3.58 is a rounded gear ratio; enter the counted teeth, driven/driving. Is it 43/12?"),
        ("3", "3 is a rounded gear ratio; enter the counted teeth, driven/driving. Is it 3/1?"),
        ("2.5", "2.5 is a rounded gear ratio; enter the counted teeth, driven/driving. Is it 5/2?"),
        ("0.0001", "0.0001 is a rounded gear ratio; count the teeth and enter driven/driving, such as 43/12."),
        ("big", "“big” is not a gear pair; enter counted teeth, driven/driving, such as 43/12."),
        ("57/0", "Gear pair 57/0: each wheel has 1 to 1000 teeth; count again."),
    ],
)
def test_a_rounded_ratio_is_refused_and_its_teeth_are_named(text, message):
    with pytest.raises(InputError) as refused:
        gears_from_text(text)
    assert (refused.value.field, refused.value.message) == ("gears", message)


@pytest.mark.parametrize("kind, u_ratio", [("belt", 0.0005), ("screw", 0.0005), ("rack", 0.0004), ("wheel", 0.0075)])
def test_each_kind_has_its_tolerance_and_it_may_be_edited(kind, u_ratio):
    own = {"belt": BELT, "screw": SCREW, "rack": RACK, "wheel": {"kind": "wheel", "diameter_mm": 12}}[kind]
    assert drive_from_parts(own).tolerance_ratio == u_ratio
    assert drive_from_parts({**own, "u_ratio": 0.001}).tolerance_ratio == 0.001


def test_belts_and_screws_are_well_inside_half_a_percent():
    """Common practice, no source: even twice their tolerance is no quarter of 0.5 %."""
    assert all(4 * 2 * drive_from_parts(own).tolerance_ratio < 0.005 for own in (BELT, SCREW))
