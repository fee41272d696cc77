"""Every set has gauges that can be told apart on the piece and in the table, and what does not fit is refused."""

import math
from collections import Counter

import pytest

from core.errors import InputError
from core.part_size.features import FeatureKind, axis_problem
from core.pieces.bounds import Bounds
from core.pieces.catalogue import SIZE_SETS, extent_mm, plan_set, set_names
from tests.core.pieces.onmesh import bounds_for

OTHER_KINDS = {"outer_diagonal", "inner_diagonal", "wall"}


@pytest.mark.parametrize("key", set_names())
def test_it_is_named_and_fits_the_bed(key):
    planned = plan_set(key, bounds_for(key))
    assert planned.key == key and planned.name == set_names()[key] and planned.purpose
    x, y, z = extent_mm(planned)
    assert x <= bounds_for(key).bed_x_mm - 4 and y <= bounds_for(key).bed_y_mm - 4 and 0 < z <= 220
    names = [gauge.name for gauge in planned.gauges]
    assert len(set(names)) == len(names)


@pytest.mark.parametrize("key", SIZE_SETS)
def test_its_gauges_suit_the_page_that_takes_them(key):
    planned = plan_set(key, bounds_for(key))
    assert planned.page == "sizeerror"
    for gauge in planned.gauges:
        if gauge.kind not in OTHER_KINDS:
            assert axis_problem(FeatureKind(gauge.kind), gauge.axis) is None
        along = {"x": 0, "y": 1, "z": 2}
        (first, second) = dict(zip((g.name for g in planned.gauges), planned.places(), strict=True))[gauge.name]
        apart = [i for i in range(3) if abs(first[i] - second[i]) > 1e-9]
        assert apart == ([0, 1] if gauge.axis == "xy" else [along[gauge.axis]])
        assert math.dist(first, second) == pytest.approx(gauge.nominal_mm)


@pytest.mark.parametrize("key", set_names())
def test_no_wall_is_touched_by_two_gauges(key):
    """But the bed side, which all heights share: it goes into the squash."""
    planned = plan_set(key, bounds_for(key))
    touched = Counter(face for gauge in planned.gauges for face in gauge.faces if face != "bed")
    assert all(count == 1 for count in touched.values())


def test_both_combs_stand_beside_one_another():
    planned = plan_set("comb_xy")
    x_comb, y_comb = planned.pieces
    assert {g.axis for g in x_comb.gauges} == {"x"} and {g.axis for g in y_comb.gauges} == {"y"}
    assert planned.gauges[:10] == x_comb.gauges
    right = max(y_comb.on_bed((x, y, 0))[0] for x, y in y_comb.outlines[0])
    left = min(x_comb.on_bed((x, y, 0))[0] for x, y in x_comb.outlines[0])
    assert left - right == pytest.approx(10)


def test_a_small_bed_gets_shorter_combs_side_by_side():
    planned = plan_set("comb_xy", Bounds(bed_x_mm=150, bed_y_mm=150))
    assert max(g.nominal_mm for g in planned.pieces[0].gauges) < max(g.nominal_mm for g in planned.pieces[1].gauges)


@pytest.mark.parametrize(
    ("key", "bounds", "field", "says"),
    [
        ("cube", Bounds(), "piece", "no test piece called cube"),
        ("rings", Bounds(bed_x_mm=60), "bed_x_mm", "too short for the rings"),
        ("holes", Bounds(bed_y_mm=66), "bed_y_mm", "needs 68 mm here, the machine has 66 mm"),
    ],
)
def test_what_does_not_fit_is_refused(key, bounds, field, says):
    with pytest.raises(InputError, match=says) as refused:
        plan_set(key, bounds)
    assert refused.value.field == field


def test_rings_and_pillars_take_what_fits_where_no_turn_does():
    bounds = Bounds(turn_x_mm=30, turn_y_mm=0, bed_x_mm=70, bed_y_mm=80)
    rings = {g.name: g.nominal_mm for g in plan_set("rings", bounds).gauges if g.axis == "y"}
    assert rings == {"outside 1 y": 76, "inside 1 y": 60, "outside 2 y": 40, "inside 2 y": 24}
    pillars = {g.name: g.nominal_mm for g in plan_set("pillars", bounds).gauges}
    assert pillars["outer 1-2 x"] == 62 and pillars["inner 1-2 x"] == 42 and pillars["outer 1-4 y"] == 72
