"""Names, axes and the design matrix of the kinds; their k and r are proved in `test_play_operator`."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.part_size.features import (
    AXES,
    FEATURES,
    FeatureKind,
    axis_problem,
    design_terms,
    kind_from_text,
    kind_words,
    parameter_names,
    travel_centres,
)


def test_every_kind_has_a_name_for_people_of_its_own():
    names = {kind_words(kind) for kind in FeatureKind}
    assert len(names) == len(FeatureKind) == len(FEATURES)


@pytest.mark.parametrize("text", ["outside", " Outside ", "CLOSED_HOLE"])
def test_a_kind_is_read_as_people_write_it(text):
    assert kind_from_text(text) == text.strip().lower()


def test_an_unknown_kind_is_refused_with_those_there_are():
    with pytest.raises(
        InputError, match="“cube” is not a kind of feature; use one of outside, closed_hole, tooth"
    ) as e:
        kind_from_text("cube", 4)
    assert (e.value.field, e.value.row) == ("kind", 4)


@pytest.mark.parametrize("kind", FeatureKind)
def test_which_kinds_belong_to_which_axes(kind):
    fits = {axis for axis in AXES if axis_problem(kind, axis) is None}
    if kind == "height":
        assert fits == {"z"}
    elif kind in ("travel", "same_facing"):
        assert fits == {"x", "y", "z"}
    else:
        assert fits == {"x", "y"}


@pytest.mark.parametrize(
    ("kind", "axis", "words"),
    [
        ("outside", "u", "“u” is not an axis; use x, y or z."),
        ("outside", "z", "“outside” belongs to x and y; along z read heights"),
        ("height", "y", "A height is read along z; for y use outside."),
    ],
)
def test_why_a_kind_does_not_suit_an_axis(kind, axis, words):
    assert words in axis_problem(FeatureKind(kind), axis)


def kinds(*names):
    return [FeatureKind(name) for name in names]


def test_parameters_are_those_the_readings_could_respond_to():
    read = kinds("outside", "bore", "height", "travel", "boss", "same_facing")
    assert parameter_names(read[:1], ["y"]) == ("scale_y", "wall_outset", "lost_motion_y")
    assert parameter_names(read[1:2], ["x"]) == ("scale_x", "bore_constant")
    assert parameter_names(read[5:], ["z"]) == ("scale_z",)
    assert parameter_names(read[:5], ["y", "x", "z", "x", "y"]) == (
        "scale_x", "scale_y", "scale_z", "wall_outset", "lost_motion_y",
        "bore_constant", "boss_constant", "origin_x", "squash_z",
    )  # fmt: skip


def test_the_design_says_how_each_reading_responds():
    read, axes = kinds("outside", "notch", "bore", "height"), ["x", "y", "y", "z"]
    names = parameter_names(read, axes)
    terms = design_terms(names, read, axes, [100.0, 20.0, 8.0, 40.0])
    by_name = {name: terms.design[:, j].tolist() for j, name in enumerate(names)}
    assert by_name == {
        "scale_x": [100, 0, 0, 0],
        "scale_y": [0, 20, 8, 0],
        "scale_z": [0, 0, 0, 40],
        "wall_outset": [2, -2, 0, 0],
        "lost_motion_x": [-1, 0, 0, 0],
        "lost_motion_y": [0, 0, 0, 0],
        "bore_constant": [0, 0, 1, 0],
        "squash_z": [0, 0, 0, 1],
    }
    assert terms.combination(wall_outset=2.0, lost_motion_x=-1.0).tolist() == [0, 0, 0, 2, -1, 0, 0, 0]
    assert terms.combination(origin_x=1.0) is None
    assert terms.coefficients("scale_y").tolist() == [0, 1, 0, 0, 0, 0, 0, 0]


@given(st.lists(st.floats(-5000, 5000), min_size=1, max_size=6), st.floats(-0.1, 0.1), st.floats(-5, 5))
def test_positions_count_from_their_middle_and_the_origin_stays_at_zero(positions, scale, origin):
    read, axes = kinds(*["travel"] * len(positions), "outside"), ["z"] * len(positions) + ["x"]
    lengths = np.array([*positions, 50.0])
    centre = travel_centres(read, axes, lengths)
    assert centre == {"z": pytest.approx(np.mean(positions))}
    terms = design_terms(parameter_names(read, axes), read, axes, lengths, centre)
    at_centre = origin + scale * centre["z"]
    coef = np.array([{"scale_z": scale, "origin_z": at_centre}.get(name, 0.0) for name in terms.names])
    assert (terms.design @ coef)[:-1] == pytest.approx(origin + scale * np.array(positions), abs=1e-9)
    assert terms.coefficients("origin_z") @ coef == pytest.approx(origin, abs=1e-9)
    assert terms.coefficients("scale_z") @ coef == scale
