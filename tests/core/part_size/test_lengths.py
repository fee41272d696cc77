"""Readings as they come in: what is refused, at which field and row, and what is corrected before any fit."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.part_size.features import FeatureKind
from core.part_size.lengths import LayerPlan, PartTemperature, check_lengths, reading_problem


def lengths(nominal=(20.0, 60.0), measured=(20.1, 60.2), kind=("outside", "tooth"), axis=("x", "x"), **beside):
    feature, warm, layers = (beside.get(key) for key in ("feature", "part_temperature", "layers"))
    return check_lengths(nominal, measured, kind, axis, feature, warm, layers)


def test_readings_without_an_axis_are_along_x_and_features_of_their_own():
    checked = lengths(axis=None)
    assert checked.axes == ["x", "x"] and checked.kinds == ["outside", "tooth"]
    assert checked.error_mm == pytest.approx([0.1, 0.2])
    assert len(set(checked.labels)) == 2


def test_axis_and_kind_are_read_as_people_write_them():
    assert lengths(axis=(" X", "Y"), kind=("OUTSIDE", " tooth ")).axes == ["x", "y"]


REFUSED = [
    ({"nominal": (), "measured": (), "kind": (), "axis": ()}, "nominal_mm", None, "no reading yet; measure one"),
    ({"measured": (20.1,)}, "nominal_mm", None, "columns differ in length"),
    ({"kind": ("outside",)}, "nominal_mm", None, "columns differ in length"),
    ({"axis": ("x",)}, "nominal_mm", None, "columns differ in length"),
    ({"kind": ("outside", "cube")}, "kind", 1, "“cube” is not a kind of feature"),
    ({"axis": ("x", "u")}, "axis", 1, "“u” is not an axis"),
    ({"axis": ("x", "")}, "axis", 1, "“” is not an axis"),
    ({"axis": ("x", "xy")}, "axis", 1, "“xy” is not an axis"),
    ({"axis": ("z", "x")}, "kind", 0, "belongs to x and y"),
    ({"kind": ("outside", "height")}, "kind", 1, "A height is read along z"),
    ({"nominal": (20.0, 0.0)}, "nominal_mm", 1, "0 mm: a length on a part is 0.001 mm at least"),
    ({"measured": (-20.1, 60.0)}, "measured_mm", 0, "-20.1 mm: a length on a part is 0.001 mm at least"),
    ({"nominal": (20.0, math.nan)}, "nominal_mm", 1, "nan mm is not a length up to 10000 mm; retype it"),
    ({"measured": (math.inf, 1.0)}, "measured_mm", 0, "inf mm is not a length"),
    ({"measured": (20.0, 20_000.0)}, "measured_mm", 1, "20000 mm is not a length"),
    ({"measured": ("20.1", "60,2")}, "measured_mm", None, "A value is not a number"),
    ({"measured": (20.1, [60.2, 60.3])}, "measured_mm", None, "A value is not a number"),
    ({"nominal": 20.0}, "nominal_mm", None, "one list of lengths"),
    ({"nominal": ((20.0, 60.0),)}, "nominal_mm", None, "one list of lengths"),
    ({"kind": ("outside", "travel")}, "kind", 1, "do not belong to one trial"),
    ({"feature": ("a",)}, "feature", None, "Name the feature of every reading, or of none"),
    ({"feature": ("a", "a"), "kind": ("tooth", "tooth")}, "feature", 1, "a has two nominal lengths, 20 and 60 mm"),
    ({"part_temperature": PartTemperature(math.nan)}, "part_temperature", None, "nan °C is no temperature"),
    ({"part_temperature": PartTemperature(1000.0)}, "part_temperature", None, "type one from -50 to 300"),
    ({"part_temperature": PartTemperature(30.0, u_part_c=math.inf)}, "part_temperature", None, "no temperature"),
    ({"part_temperature": PartTemperature(30.0, expansion_per_k=-1.0)}, "part_temperature", None, "no temperature"),
    ({"layers": LayerPlan(0.0, 0.2)}, "layers", None, "A layer of 0 mm cannot be, 0.001 to 10000 mm can"),
    ({"layers": LayerPlan(0.2, math.nan)}, "layers", None, "A layer of nan mm cannot be"),
]


@pytest.mark.parametrize(("beside", "field", "row", "words"), REFUSED)
def test_refusals(beside, field, row, words):
    with pytest.raises(InputError, match=words) as refused:
        lengths(**beside)
    assert (refused.value.field, refused.value.row) == (field, row)


def test_travel_may_be_zero_or_negative():
    checked = lengths(nominal=(-50.0, 0.0), measured=(-50.01, 0.0), kind=("travel", "travel"))
    assert checked.error_mm == pytest.approx([-0.01, 0.0])
    assert reading_problem(FeatureKind.TRAVEL, "x", -1.0, 0.0) is None


def test_travel_of_one_axis_beside_lengths_along_another():
    assert lengths(kind=("travel", "tooth"), axis=("x", "y")).error_mm == pytest.approx([0.1, 0.2])


@pytest.mark.parametrize(
    ("feature", "groups"),
    [
        (("a", "a", "a", "a"), 3),  # two kinds, and one of them along two axes
        (("a", " a ", "b", "b"), 3),
        ((None, "", " ", "b"), 4),
        ((1, 1, 2, 2), 3),
    ],
)
def test_readings_of_one_feature_share_label_kind_and_axis(feature, groups):
    checked = lengths(
        (20.0, 20.0, 20.0, 20.0),
        (20.1,) * 4,
        ("tooth", "tooth", "notch", "tooth"),
        ("x", "x", "x", "y"),
        feature=feature,
    )
    assert len(set(checked.labels)) == groups


def test_a_warm_part_is_compared_at_20_degrees_and_travel_is_not():
    """100 mm of plastic 10 K above 20 C read 0.07 mm more (70e-6 1/K, common practice, no source)."""
    warm = PartTemperature(30.0)
    part, travel = lengths(
        (100.0, 100.0), (100.07, 100.07), ("tooth", "travel"), ("x", "y"), part_temperature=warm
    ).error_mm
    assert part == pytest.approx(0, abs=1e-4) and travel == pytest.approx(0.07)
    assert warm.u_ratio == pytest.approx(math.hypot(70e-6, 10 * 12e-6))


def test_layers_that_leave_nothing_of_a_height_are_refused():
    with pytest.raises(InputError, match="Layers of 20 mm leave nothing of a height") as refused:
        LayerPlan(layer_mm=20.0, first_layer_mm=20.0).printed_height_mm(np.array([60.0, 5.0]))
    assert refused.value.field == "layers"


def test_heights_are_compared_with_the_nearest_whole_layers():
    """20.1 mm of layers of 0.2 mm come out as 20.0 or 20.2 mm."""
    plan = LayerPlan(layer_mm=0.2, first_layer_mm=0.3)
    heights, tops = (20.05, 20.15, 40.02), (20.0, 20.0, 40.0)
    checked = lengths(
        (*heights, *tops), (20.1, 20.1, 40.1, *tops), ("height",) * 3 + ("same_facing",) * 3, ("z",) * 6, layers=plan
    )
    assert checked.wanted_mm == pytest.approx([20.1, 20.1, 40.1, *tops])
    assert checked.error_mm == pytest.approx(np.zeros(6), abs=1e-12)
