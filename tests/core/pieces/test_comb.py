"""The size comb: its gauges touch walls of its outlines, share none, and exact readings give back what was planted."""

import numpy as np
import pytest

from core.errors import InputError
from core.part_size.features import FeatureKind
from core.part_size.sizeerror import fit_size_error
from core.pieces.bounds import Bounds
from core.pieces.comb import DEPTH_MM, TALL_MM, TOOTH_MM, comb_minds, plan_comb, plan_half_combs

BOUNDS = [
    Bounds(),
    Bounds(bed_x_mm=100, bed_y_mm=100),
    Bounds(turn_x_mm=32, turn_y_mm=32),
    Bounds(turn_x_mm=8, turn_y_mm=8),
    Bounds(turn_x_mm=60, turn_y_mm=60),
    Bounds(turn_x_mm=0, turn_y_mm=0),
    Bounds(turn_x_mm=500, turn_y_mm=500),
    Bounds(bed_x_mm=300, bed_y_mm=300, caliper_mm=300),
]
LONG = [
    Bounds(bed_x_mm=b, bed_y_mm=b, caliper_mm=300, turn_x_mm=t, turn_y_mm=t) for b in (220, 400) for t in (40, 0, 48)
]
PIECES = [(plan_comb, b) for b in BOUNDS] + [(plan_half_combs, b) for b in LONG]


@pytest.mark.parametrize("axis", ["x", "y"])
def test_gauges_are_named_once_and_along_the_axis(axis):
    piece = plan_comb(axis)
    assert piece.axis == axis and piece.name == f"Size comb {axis.upper()}" and piece.turned == (axis == "y")
    assert len({g.name for g in piece.gauges}) == len(piece.gauges) == 10
    assert {g.axis for g in piece.gauges} == {axis} and all(g.says for g in piece.gauges)
    assert {FeatureKind(g.kind) for g in piece.gauges} == {"tooth", "notch", "outside", "closed_hole"}


def walls(outline):
    """Upright walls: position along the bar, from height, to height."""
    ends = zip(outline, (*outline[1:], outline[0]), strict=True)
    return [(a[0], min(a[1], b[1]), max(a[1], b[1])) for a, b in ends if a[0] == b[0]]


@pytest.mark.parametrize(("plan", "bounds"), PIECES)
def test_every_jaw_stands_on_a_wall_of_its_own(plan, bounds):
    piece = plan("x", bounds)
    body, *windows = piece.outlines
    touched = []
    for gauge in piece.gauges:
        for jaw in gauge.jaws_mm:
            found = [
                (number, wall)
                for number, outline in enumerate([body, *windows])
                for wall in walls(outline)
                if abs(wall[0] - jaw) < 1e-9 and wall[1] <= gauge.height_mm <= wall[2]
                and (number > 0) == (gauge.kind == "closed_hole")
            ]
            assert len(found) == 1, (gauge.name, jaw)
            touched += found
    assert len(set(touched)) == len(touched) == len({f for g in piece.gauges for f in g.faces})


@pytest.mark.parametrize(("plan", "bounds"), PIECES)
def test_it_fits_bed_and_caliper_and_leaves_room_for_jaws(plan, bounds):
    piece = plan("y", bounds)
    body = max(x for x, _ in piece.outlines[0])
    assert body <= bounds.bed_y_mm - 4 and max(g.nominal_mm for g in piece.gauges) <= bounds.caliper_mm - 2
    teeth = sorted({jaw for g in piece.gauges if g.kind in ("tooth", "notch") for jaw in g.jaws_mm})
    assert all(b - a >= TOOTH_MM - 1e-9 for a, b in zip(teeth, teeth[1:], strict=False))
    assert all(5 <= g.first_mm[2] <= TALL_MM - 1 for g in piece.gauges)  # above the flare, below the top


@pytest.mark.parametrize("bounds", [b for b in BOUNDS if b.turn_x_mm in (40, 32, 8)])
def test_centre_distances_are_whole_turns_where_they_fit(bounds):
    piece = plan_comb("x", bounds)
    outer = [g.nominal_mm for g in piece.gauges if g.name.startswith("outer")]
    inner = [g.nominal_mm for g in piece.gauges if g.name.startswith("inner")]
    assert (outer[0] + inner[0]) / 2 % bounds.turn_x_mm == pytest.approx(0.0, abs=1e-9)
    assert comb_minds("x", bounds, piece) == ()


def test_what_no_turn_fits_is_said():
    for bounds, says in ((BOUNDS[5], "not on record"), (BOUNDS[6], "No whole turn of X (500 mm) fits")):
        (mind,) = comb_minds("x", bounds, plan_comb("x", bounds))
        assert says in mind


def test_the_usual_comb_is_centred_on_120_80_and_40():
    """A 20-tooth pulley for a 2 mm belt turns once in 40 mm; screws of lead 8 and 2 and cycles of 0.8 mm divide it."""
    lengths = {g.name: g.nominal_mm for g in plan_comb("x").gauges}
    assert lengths == {
        "outer 1-7 x": 128, "outer 2-6 x": 88, "outer 3-5 x": 48, "tooth 4 x": 8, "overall x": 140,
        "inner 1-7 x": 112, "inner 2-6 x": 72, "inner 3-5 x": 32, "window left x": 80, "window right x": 40,
    }  # fmt: skip


def test_short_blades_get_shorter_teeth():
    """A blade of 10 mm passes over a tooth that stands 5 mm out and grips 5 mm below its top."""
    piece = plan_comb("x", Bounds(reach_mm=10))
    assert max(y for _, y in piece.outlines[0]) == DEPTH_MM + 5
    assert {g.height_mm for g in piece.gauges if g.kind == "notch"} == {DEPTH_MM + 2.5}


def test_half_combs_are_longer_and_tied_by_a_narrower_bar():
    piece = plan_half_combs("x", Bounds(bed_x_mm=400, caliper_mm=300))
    assert max(g.nominal_mm for g in piece.gauges) == 296 and len(piece.gauges) == 9
    assert {y for x, y in piece.outlines[0] if 58 <= x <= 238} == {10.0, DEPTH_MM}


@pytest.mark.parametrize(
    ("plan", "bounds", "field", "says"),
    [
        (plan_comb, Bounds(bed_x_mm=70), "bed_x_mm", "66 mm left along X are too short .*; take one comb"),
        (plan_half_combs, Bounds(), "caliper_mm", "Half-combs start at 160 mm"),
        (plan_half_combs, Bounds(bed_x_mm=120, caliper_mm=300), "bed_x_mm", "Take the size comb"),
    ],
)
def test_what_does_not_fit_is_refused_with_the_way_out(plan, bounds, field, says):
    with pytest.raises(InputError, match=says) as refused:
        plan("x", bounds)
    assert refused.value.field == field


def test_the_outlines_are_closed_simple_and_inside_one_another():
    body, *windows = plan_comb("x").outlines
    for outline in (body, *windows):
        x, y = np.array(outline).T
        area = 0.5 * float(np.sum(x * np.roll(y, -1) - np.roll(x, -1) * y))
        assert area > 0  # anticlockwise
        assert len(set(outline)) == len(outline)
    area = 0.5 * sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(body, (*body[1:], body[0]), strict=True))
    assert area == pytest.approx(140 * DEPTH_MM + 7 * TOOTH_MM**2)
    assert all(0 < x < 140 and 0 < y < DEPTH_MM for window in windows for x, y in window)


def test_exact_readings_of_a_planted_comb():
    """Scale -0.25 %, outset 0.04, lost motion 0.06: L(1 + s) + 2kw - rB, worked by hand, comes back to all digits."""
    rows = {"outer 1-7": 127.76, "inner 1-7": 111.64, "outer 3-5": 47.96, "inner 3-5": 31.84, "tooth 4": 8.06,
            "overall": 139.67, "window left": 79.66}  # fmt: skip
    gauges = {g.name.removesuffix(" x"): g for g in plan_comb("x").gauges}
    fit = fit_size_error(
        [gauges[name].nominal_mm for name in rows], list(rows.values()), [gauges[name].kind for name in rows]
    )
    exact = {"scale_x": -0.0025, "wall_outset": 0.04, "lost_motion_x": 0.06}
    assert {e.name: e.value for e in fit.estimates()} == pytest.approx(exact, abs=1e-9)
    assert (rows["outer 1-7"] + rows["inner 1-7"]) / 2 == pytest.approx(120 * (1 - 0.0025))
