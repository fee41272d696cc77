"""Settings as controller lines, and a pasted listing against them. Words: a letter and a number, as in ISO 6983-1."""

import pytest

from core.errors import InputError
from core.guidance.settinglines import (
    USUAL_TEMPLATE,
    Value,
    compare_listing,
    controller_lines,
    for_slicing,
    lines_of_template,
    template_of,
    values_in_force,
)
from core.machine_geometry.drive import Drive, DriveKind
from core.records.rows import Machine, SettingInForce

BELT = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20).parts()
FLOW = SettingInForce(1, 1, "flow_factor", 1.0, 0.97, "1", id=2)
FEED = SettingInForce(1, None, "extruder_steps_mm", 93.0, 95.55, "steps/mm", id=1)
USUAL = lines_of_template(USUAL_TEMPLATE)
E_STEPS, X_STEPS = Value("extruder_steps_mm", 93.0, "steps/mm"), Value("steps_x", 80.0, "steps/mm")
VALUES = (E_STEPS, X_STEPS, Value("flow_factor", 0.97, "1"))


def test_what_holds_is_set_or_follows_from_the_parts():
    machine = Machine("A", drives={"x": BELT, "z": {"kind": "no such"}})
    values = values_in_force(machine, (FLOW, FEED))
    assert [(value.name, value.value, value.unit) for value in values] == [
        ("extruder_steps_mm", 95.55, "steps/mm"), ("flow_factor", 0.97, "1"), ("steps_x", 80.0, "steps/mm")
    ]  # fmt: skip
    assert [value.setting for value in values] == [FEED, FLOW, None]


def test_a_set_value_goes_before_a_calculated_one():
    trimmed = SettingInForce(1, None, "steps_x", 80.0, 80.2, "steps/mm")
    (value,) = values_in_force(Machine("A", drives={"x": BELT}), (trimmed,))
    assert (value.value, value.setting) == (80.2, trimmed)


def test_the_usual_lines_are_written_with_four_decimals():
    assert controller_lines(USUAL, VALUES) == ("M92 X80.0000", "M92 E93.0000")


def test_a_template_of_ones_own():
    template = lines_of_template("# mine\n\nskew_xy : m852 i{value:6} ; lean\nsteps_x: G10 L2 P1 x {value:1}\n")
    assert [(line.name, line.code, line.letter, line.decimals) for line in template] == [
        ("skew_xy", "M852", "I", 6), ("steps_x", "G10", "X", 1)
    ]  # fmt: skip
    assert controller_lines(template, (Value("skew_xy", -0.0012, "1"),)) == ("m852 i-0.001200 ; lean",)


def test_the_rest_is_for_slicing():
    assert [value.name for value in for_slicing(USUAL, VALUES)] == ["flow_factor"]


@pytest.mark.parametrize("line", ["M92 X{value}", "steps_x: M92 X80", "steps_x: X{value}", "steps_x: M92 {value}"])
def test_a_line_that_cannot_be_filled_in_is_refused(line):
    with pytest.raises(InputError, match="Line 2 of the template: write a name, a colon") as caught:
        lines_of_template(f"steps_y: M92 Y{{value}}\n{line}")
    assert (caught.value.field, caught.value.row) == ("template", 1)


def test_a_name_twice_is_refused():
    with pytest.raises(InputError, match="Line 2 of the template names steps_x again"):
        lines_of_template("steps_x: M92 X{value}\nsteps_x: M92 Y{value}")


def compared(listing):
    differences, agree = compare_listing(USUAL, VALUES, listing)
    return [(found.name, found.in_force, found.found) for found in differences], agree


def test_a_listing_that_agrees():
    assert compared("M92 X80 E93") == ([], 2)
    assert compared("said: M92 x80.00 e93.00 ; Y1 Z2\nM201 X500") == ([], 2)


def test_differences_are_named():
    found = compared("M201 X500 Y500\nM92 X80 Y80 Z400 E93.1\n")
    assert found == (
        [("steps_y", None, 80.0), ("steps_z", None, 400.0), ("extruder_steps_mm", 93.0, 93.1)], 1
    )  # fmt: skip
    differences, _ = compare_listing(USUAL, VALUES, "M92 X80 Y80\nM92 X100.5\n")
    assert [found.sentence for found in differences] == [
        "M92 X: the controller has 100.5, in force is 80.0000.",
        "M92 Y: the controller has 80; here nothing is on record.",
        "M92 E: not in the listing; 93.0000 is in force.",
    ]


@pytest.mark.parametrize(
    ("text", "agrees"),
    [("93", True), ("93.0", True), ("93.04", False), ("92.95", False), ("93.00004", True), ("93.0002", False),
     ("94", False)],
)
def test_a_listed_number_agrees_as_far_as_it_is_written(text, agrees):
    differences, _ = compare_listing(USUAL, VALUES, f"M92 X80 E{text}")
    assert (not differences) is agrees


def test_a_listing_of_something_else_is_refused():
    with pytest.raises(InputError, match="none of the commands of the template") as caught:
        compare_listing(USUAL, VALUES, "hello\nM201 X500")
    assert caught.value.field == "listing"


def test_a_machine_has_the_usual_template_until_it_has_its_own():
    assert template_of({}) == USUAL_TEMPLATE
    assert template_of({"settings": "a: M1 B{value}"}) == "a: M1 B{value}"
