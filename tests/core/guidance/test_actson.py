"""What settings act on and what reads it; common practice, no source."""

import pytest

from core.guidance.actson import ACTS_ON, READ_BY, acts_on, both_act_on, names_that_read


def test_all_that_a_setting_acts_on_can_be_read():
    assert {thing for things in ACTS_ON.values() for thing in things} == set(READ_BY)


def test_a_setting_for_an_axis_acts_as_its_stem():
    assert acts_on("scale_x") == acts_on("axis_scale") == acts_on("shrink_allowance") == {"scale"}
    assert acts_on("flow_x") == acts_on("of a later version") == frozenset()


@pytest.mark.parametrize(
    ("one", "other", "both"),
    [
        ("flow_factor", "contour_offset", {"outset"}),
        ("flow_factor", "skew_xy", set()),
        ("scale_x", "scale_y", set()),
        ("scale_x", "shrink_allowance_x", {"scale"}),
        ("scale_x", "shrink_allowance", {"scale"}),
        ("scale_x", "of a later version", None),
    ],
)
def test_what_two_settings_act_on_both(one, other, both):
    assert both_act_on(one, other) == both_act_on(other, one) == both


def test_along_an_axis_the_same_axis_is_read():
    assert names_that_read("scale", "axis_scale_y") == ("scale_y",)
    assert names_that_read("scale", "axis_scale") == ("scale_x", "scale_y", "scale_z")
    assert names_that_read("skew_xz", "skew_xz") == ("squareness_xz",)
    assert names_that_read("flow_factor", "nozzle_temperature") == ("flow_ratio",)
    assert names_that_read("flow_factor", "flow_factor") == ("flow_ratio", "wall_outset")
    assert names_that_read("flow_factor", "skew_xy") == names_that_read("scale", "of a later version") == ()
