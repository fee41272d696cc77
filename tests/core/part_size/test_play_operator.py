"""The table of k and r comes out of a path followed with play: measured - nominal = s*L + 2*k*w - r*B."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.part_size.features import FEATURES, FeatureKind
from core.pieces.comb import plan_comb
from tests.core.part_size.printed import Printer, comb, gauge_sizes, rectangle

S, W, B = (0.004, -0.003), 0.06, (0.21, 0.08)

both_ways = pytest.mark.parametrize("clockwise", [False, True], ids=["anticlockwise", "clockwise"])
both_axes = pytest.mark.parametrize("axis", ["x", "y"])


def printer(s=S, w=W, b=B):
    return Printer(scale_ratio=s, lost_motion_mm=b, wall_outset_mm=w)


def positions(walls, axis, side):
    return sorted(wall.position_mm for wall in walls if (wall.axis, wall.side) == (axis, side))


def turned(points, axis):
    """Lay a shape drawn along x along y instead: the mirror turns the travel round, so turn it back."""
    return points if axis == "x" else points[::-1, ::-1]


def expected_mm(kind, axis, nominal_mm, s=S, w=W, b=B):
    feature, i = FEATURES[kind], "xy".index(axis)
    return nominal_mm + s[i] * nominal_mm + 2 * feature.k * w - feature.r * b[i]


def check(kind, axis, measured_mm, nominal_mm):
    assert measured_mm == pytest.approx(expected_mm(kind, axis, nominal_mm), abs=1e-12)


@both_axes
@both_ways
def test_outside_of_a_plain_bar(axis, clockwise):
    walls = printer().print_contour(turned(rectangle(3, 7, 103, 17, clockwise=clockwise), axis))
    assert len(walls) == 4
    check(FeatureKind.OUTSIDE, axis, positions(walls, axis, +1)[0] - positions(walls, axis, -1)[0], 100)


@both_axes
@both_ways
def test_a_closed_window(axis, clockwise):
    window = turned(rectangle(20, 5, 60, 15, clockwise=clockwise), axis)
    walls = printer().print_contour(window, material_inside=False)
    check(FeatureKind.CLOSED_HOLE, axis, positions(walls, axis, -1)[0] - positions(walls, axis, +1)[0], 40)


@both_axes
@both_ways
def test_teeth_and_notches_of_an_open_comb(axis, clockwise):
    walls = printer().print_contour(turned(comb(tooth_mm=8, notch_mm=12, teeth=4, clockwise=clockwise), axis))
    right, left = positions(walls, axis, +1), positions(walls, axis, -1)
    inner_right, inner_left = right[:-1], left[1:]  # the ends of the body are reached by the spine's run, see below
    for i in (1, 2):
        check(FeatureKind.TOOTH, axis, right[i] - left[i], 8)
    for i in range(3):
        check(FeatureKind.NOTCH, axis, inner_left[i] - inner_right[i], 12)
    check(FeatureKind.OUTSIDE, axis, right[-1] - left[0], 68)


@both_axes
@both_ways
def test_two_separate_pillars(axis, clockwise):
    machine = printer()
    first = machine.print_contour(turned(rectangle(0, 0, 10, 12, clockwise=clockwise), axis))
    second = machine.print_contour(turned(rectangle(60, 0, 70, 12, clockwise=clockwise), axis))
    (left_1,), (right_1,) = positions(first, axis, -1), positions(first, axis, +1)
    (left_2,), (right_2,) = positions(second, axis, -1), positions(second, axis, +1)
    check(FeatureKind.GAP, axis, left_2 - right_1, 50)
    check(FeatureKind.OUTSIDE, axis, right_2 - left_1, 70)
    check(FeatureKind.SAME_FACING, axis, ((right_2 - left_1) + (left_2 - right_1)) / 2, 60)
    check(FeatureKind.SAME_FACING, axis, left_2 - left_1, 60)
    check(FeatureKind.SAME_FACING, axis, right_2 - right_1, 60)


@both_axes
@both_ways
def test_a_ring(axis, clockwise):
    machine = printer()
    outer = machine.print_contour(turned(rectangle(0, 0, 50, 50, clockwise=clockwise), axis))
    inner = machine.print_contour(
        turned(rectangle(10, 10, 40, 40, clockwise=not clockwise), axis), material_inside=False
    )
    outside = positions(outer, axis, +1)[0] - positions(outer, axis, -1)[0]
    inside = positions(inner, axis, -1)[0] - positions(inner, axis, +1)[0]
    check(FeatureKind.OUTSIDE, axis, outside, 50)
    check(FeatureKind.CLOSED_HOLE, axis, inside, 30)
    check(FeatureKind.RING_MEAN, axis, (outside + inside) / 2, 40)


@both_ways
def test_left_to_left_along_a_comb(clockwise):
    walls = printer().print_contour(comb(tooth_mm=8, notch_mm=12, teeth=4, clockwise=clockwise))
    left = positions(walls, "x", -1)
    check(FeatureKind.SAME_FACING, "x", left[3] - left[1], 40)


@both_ways
def test_an_end_tooth_is_not_a_tooth_of_the_table(clockwise):
    """One of its walls is the end of the body, which the spine's run reaches: like outside, it loses B, on one end."""
    walls = printer().print_contour(comb(tooth_mm=8, notch_mm=12, teeth=4, clockwise=clockwise))
    right, left = positions(walls, "x", +1), positions(walls, "x", -1)
    widths = [right[0] - left[0], right[-1] - left[-1]]
    as_tooth, as_outside = (expected_mm(kind, "x", 8) for kind in (FeatureKind.TOOTH, FeatureKind.OUTSIDE))
    assert sorted(widths) == pytest.approx(sorted([as_outside, as_tooth]), abs=1e-12)


@both_axes
@both_ways
def test_every_gauge_of_the_size_comb_keeps_the_table(axis, clockwise):
    piece = plan_comb(axis)
    for gauge, size_mm in zip(piece.gauges, gauge_sizes(printer(), piece, clockwise=clockwise), strict=True):
        check(gauge.kind, axis, size_mm, gauge.nominal_mm)


@given(
    s=st.tuples(st.floats(-0.02, 0.02), st.floats(-0.02, 0.02)),
    w=st.floats(-0.3, 0.3),
    b=st.tuples(st.floats(0, 1.5), st.floats(0, 1.5)),
    length=st.floats(5, 300),
    start=st.integers(0, 3),
    clockwise=st.booleans(),
)
def test_the_table_holds_for_any_fault_and_any_seam(s, w, b, length, start, clockwise):
    seam = np.roll(rectangle(0, 0, length, 10, clockwise=clockwise), start, axis=0)
    solid, hole = (printer(s, w, b).print_contour(seam, material_inside=inside) for inside in (True, False))
    outside = positions(solid, "x", +1)[0] - positions(solid, "x", -1)[0]
    inside = positions(hole, "x", -1)[0] - positions(hole, "x", +1)[0]
    assert outside == pytest.approx(expected_mm(FeatureKind.OUTSIDE, "x", length, s, w, b), abs=1e-9)
    assert inside == pytest.approx(expected_mm(FeatureKind.CLOSED_HOLE, "x", length, s, w, b), abs=1e-9)


def test_a_wall_approached_by_a_slant_counts_as_approached_along_the_axis():
    chamfered = [[2, 0], [48, 0], [50, 2], [50, 8], [48, 10], [2, 10], [0, 8], [0, 2]]
    walls = printer().print_contour(chamfered)
    assert len(walls) == 4  # the chamfers face along no axis
    check(FeatureKind.OUTSIDE, "x", positions(walls, "x", +1)[0] - positions(walls, "x", -1)[0], 50)


def test_a_body_narrower_than_the_play_is_outside_the_table():
    """The last move before a wall must exceed B: here the carriage never moves along x, both walls fall together."""
    walls = printer(s=(0, 0), b=(0.5, 0.5)).print_contour(rectangle(0, 0, 0.3, 10))
    assert positions(walls, "x", +1)[0] - positions(walls, "x", -1)[0] == pytest.approx(2 * W)


def test_without_faults_the_part_is_the_drawing():
    walls = Printer().print_contour(comb(tooth_mm=8, notch_mm=12, teeth=2))
    assert positions(walls, "x", +1) == [8, 28] and positions(walls, "x", -1) == [0, 20]
    assert positions(walls, "y", +1) == [5, 20, 20] and positions(walls, "y", -1) == [0]


def test_the_carriage_lags_behind_either_direction_and_stands_still_inside_the_play():
    machine = Printer(lost_motion_mm=(0.2, 0.0))
    stops = [machine.follow(np.array([x, 0.0]))[0] for x in (10.0, 9.9, 9.8, 5.0, 5.15, 6.0)]
    assert stops == pytest.approx([9.9, 9.9, 9.9, 5.1, 5.1, 5.9])
