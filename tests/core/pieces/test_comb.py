"""The size comb: its gauges touch walls of its outlines, and exact readings give back what was planted."""

import numpy as np
import pytest

from core.part_size.features import FeatureKind
from core.part_size.sizeerror import fit_size_error
from core.pieces.comb import BODY_MM, DEPTH_MM, TOOTH_OUT_MM, plan_comb


@pytest.mark.parametrize("axis", ["x", "y"])
def test_gauges_are_named_once_and_along_the_axis(axis):
    piece = plan_comb(axis)
    assert piece.axis == axis and piece.name == f"Size comb {axis.upper()}"
    assert len({g.name for g in piece.gauges}) == len(piece.gauges) == 11
    assert {g.axis for g in piece.gauges} == {axis} and all(g.says for g in piece.gauges)
    assert {FeatureKind(g.kind) for g in piece.gauges} == {"tooth", "notch", "outside", "closed_hole"}


def walls(outline):
    """Upright walls: position along the bar, from height, to height."""
    ends = zip(outline, (*outline[1:], outline[0]), strict=True)
    return [(a[0], min(a[1], b[1]), max(a[1], b[1])) for a, b in ends if a[0] == b[0]]


def test_the_jaws_stand_on_walls():
    piece = plan_comb("x")
    for gauge in piece.gauges:
        outline = walls(piece.outlines[gauge.kind == "closed_hole"])
        for jaw in gauge.jaws_mm:
            low, height = (0.0, gauge.height_mm)
            assert any(at == jaw and lo <= height <= hi for at, lo, hi in outline), (gauge.name, jaw)
            assert low < height


def test_inside_jaws_stand_in_air_and_outside_jaws_on_plastic():
    teeth = [(5.0, 15.0), (45.0, 55.0), (65.0, 75.0), (125.0, 135.0)]
    for gauge in plan_comb("x").gauges:
        left, right = sorted(gauge.jaws_mm)
        if gauge.kind == "notch":
            assert any(b == left for _, b in teeth) and any(a == right for a, _ in teeth)
        if gauge.kind == "tooth":
            assert any(a == left for a, _ in teeth) and any(b == right for _, b in teeth)
    assert all(0 < a < b < BODY_MM for a, b in teeth)


def test_the_outlines_are_closed_simple_and_inside_one_another():
    body, window = plan_comb("x").outlines
    for outline in (body, window):
        x, y = np.array(outline).T
        area = 0.5 * float(np.sum(x * np.roll(y, -1) - np.roll(x, -1) * y))
        assert area > 0  # anticlockwise
        assert len(set(outline)) == len(outline)
    area = 0.5 * sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(body, (*body[1:], body[0]), strict=True))
    assert area == pytest.approx(BODY_MM * DEPTH_MM + 4 * 10 * TOOTH_OUT_MM)
    assert all(0 < x < BODY_MM and 0 < y < DEPTH_MM for x, y in window)


def test_exact_readings_of_a_planted_comb():
    """Scale -0.25 %, outset 0.04, lost motion 0.06: the rows of a worked example, to all digits."""
    rows = {"outer 1-4": 129.755, "inner 1-4": 109.645, "outer 1-2": 49.955, "inner 1-2": 29.845, "tooth 1": 10.055,
            "notch 2-3": 9.895, "overall": 139.670, "window": 109.585}  # fmt: skip
    gauges = {g.name.removesuffix(" x"): g for g in plan_comb("x").gauges}
    fit = fit_size_error(
        [gauges[name].nominal_mm for name in rows], list(rows.values()), [gauges[name].kind for name in rows]
    )
    exact = {"scale_x": -0.0025, "wall_outset": 0.04, "lost_motion_x": 0.06}
    assert {e.name: e.value for e in fit.estimates()} == pytest.approx(exact, abs=1e-9)
    assert (rows["outer 1-4"] + rows["inner 1-4"]) / 2 == pytest.approx(120 * (1 - 0.0025))
