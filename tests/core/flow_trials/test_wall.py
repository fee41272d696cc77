"""Flow factor from wall boxes: worked values, planted truth with its coverage, the ridge trap, every refusal."""

import math
from dataclasses import replace

import numpy as np
import pytest
from shapely import LineString, Point, unary_union

from core.errors import InputError
from core.flow_trials.bead import FLAT_SHARE, Bead, BeadModel, area_mm2
from core.flow_trials.conditions import PrintConditions
from core.flow_trials.wall import WallBox, measure_wall, right_wall_mm
from core.measuring.normalrange import mean_range_ratio
from core.records.rows import Instrument
from tests.published import printed

HERE = PrintConditions(Bead(0.45, 0.20), 0.4, 210.0, 4.0, 1.0, 240.0)
SMOOTH = WallBox(sd_lateral_mm=0.0)
FLAT = FLAT_SHARE * 0.20
CALIPER = Instrument("Caliper 2", resolution_mm=0.01, u_outside_zero_mm=0.006, u_scale_ratio=1e-4)


def test_a_wall_of_0_48_for_0_45():
    """Worked by hand: (0.45 - c 0.2)/(0.48 - c 0.2); the plain quotient of the widths is 0.6 % off."""
    found = measure_wall([0.48, 0.48], HERE, SMOOTH)
    assert found.flow.value == printed("0.9314")
    assert found.flow.name == "flow_ratio_wall"
    assert (0.45 / 0.48) / found.flow.value - 1 == printed("0.007")
    assert found.wall_mm == pytest.approx(0.48)
    assert found.over_read_mm == 0


def test_the_base_is_the_factor_in_force():
    found = measure_wall([0.48, 0.48], replace(HERE, in_force_ratio=0.97), SMOOTH)
    assert found.flow.value == pytest.approx(0.97 * (0.45 - FLAT) / (0.48 - FLAT))


@pytest.mark.parametrize("model", BeadModel)
@pytest.mark.parametrize("beads", [1, 2])
def test_the_right_wall_asks_for_no_change(model, beads):
    here, box = replace(HERE, bead=Bead(0.45, 0.2, model)), WallBox(beads, sd_lateral_mm=0.0)
    right = right_wall_mm(here, box)
    assert measure_wall([right, right], here, box).flow.value == pytest.approx(1.0)
    assert right == pytest.approx(beads * here.bead.spacing_mm + FLAT)


def test_a_rectangle_program_lays_walls_thicker_than_its_width():
    """It counts w h; laid half-round, that is a wall of w + c h."""
    assert right_wall_mm(replace(HERE, bead=Bead(0.45, 0.2, BeadModel.RECTANGLE)), SMOOTH) == pytest.approx(0.45 + FLAT)


@pytest.mark.parametrize("share", [0.9, 0.97, 1.0, 1.05, 1.15])
def test_two_beads_drawn_side_by_side(share):
    """Two beads laid at their spacing: with a gap the drawn outlines give the wall, without one their whole area."""
    bead = Bead(0.45, 0.20)
    width = share * bead.spacing_mm + FLAT
    drawn = unary_union(
        [LineString([(at - (width - 0.2) / 2, 0), (at + (width - 0.2) / 2, 0)]).buffer(0.1, quad_segs=512)
         for at in (0, bead.spacing_mm)]
    )  # fmt: skip
    left, _, right, _ = drawn.bounds
    wall = right - left if share <= 1 else 2 * share * bead.spacing_mm + FLAT
    found = measure_wall([wall, wall], HERE, WallBox(2, sd_lateral_mm=0.0))
    assert found.flow.value == pytest.approx(1 / share, rel=1e-6)


def test_the_laid_bead_is_an_obround():
    """The wall of one bead, inverted: area of the drawn shape over the area asked for."""
    wall = 0.47
    drawn = LineString([(0.1, 0), (wall - 0.1, 0)]).buffer(0.1, quad_segs=512).area
    assert measure_wall([wall, wall], HERE, SMOOTH).flow.value == pytest.approx(HERE.bead.area_mm2 / drawn, rel=1e-5)
    assert Point(0, 0).buffer(0.1, quad_segs=512).area == pytest.approx(area_mm2(0.2, 0.2, BeadModel.OBROUND), rel=1e-5)


def test_ridges_of_75_layers_make_a_tenth_of_false_flow():
    """d2(75) 0.01 mm on 0.45: 10.7 %, and it is taken off where the spread is known."""
    ridges = 0.01 * mean_range_ratio(75)
    assert ridges == printed("0.048")
    read = [0.45 + ridges] * 8
    assert measure_wall(read, HERE, SMOOTH).flow.value == pytest.approx(1 / (1 + ridges / (0.45 - FLAT)))
    assert ridges / 0.45 == printed("0.107")
    exact = replace(CALIPER, u_outside_zero_mm=0.0, u_scale_ratio=0.0)
    known = measure_wall(read, HERE, WallBox(1, 75, 0.01), exact)
    assert known.flow.value == pytest.approx(1.0)
    assert known.flow.u == pytest.approx(math.hypot(0.24 * ridges, 0.01 / math.sqrt(12)) / (0.45 - FLAT))
    unknown = measure_wall(read, HERE, WallBox(1, 75))
    assert unknown.over_read_mm == pytest.approx(ridges / 2)
    assert unknown.flow.value < 1 < unknown.flow.value + unknown.flow.U


def test_layers_in_contact_are_asked_about():
    (asks,) = measure_wall([0.48] * 8, HERE, WallBox(1, 75), CALIPER).questions
    assert "75 layers: ridges may add 0.048 mm" in asks
    assert measure_wall([0.48] * 8, HERE, WallBox(1, 5), CALIPER).questions == ()
    assert measure_wall([0.48] * 8, HERE, WallBox(1, 75, 0.0), CALIPER).questions == ()
    assert "0.024 mm" in measure_wall([0.48] * 8, HERE, WallBox(1, 75, 0.005), CALIPER).questions[0]


def test_few_places_and_no_instrument_are_asked_about():
    few, none = measure_wall([0.48] * 3, HERE, SMOOTH).questions
    assert "Only 3 places" in few
    assert "A usual caliper is taken, u 0.012 mm" in none


def test_components_of_the_uncertainty():
    """JCGM 100:2008 5.1.2: u(k) = k/(W - c h) u(W), u(W) from scatter, zero, scale and last digit."""
    walls = [0.47, 0.49, 0.48, 0.48, 0.50, 0.46, 0.48, 0.48]
    found = measure_wall(walls, HERE, SMOOTH, CALIPER)
    u = math.hypot(np.std(walls, ddof=1) / math.sqrt(8), 0.006, 1e-4 * 0.48)
    assert found.u_wall_mm == pytest.approx(u)
    assert found.flow.u == pytest.approx(found.flow.value * u / (0.48 - FLAT))
    equal = measure_wall([0.48] * 8, HERE, SMOOTH, CALIPER)
    assert equal.u_wall_mm == pytest.approx(math.hypot(0.01 / math.sqrt(12), 0.006, 1e-4 * 0.48))
    usual = measure_wall(walls, HERE, SMOOTH)  # common practice, no source: u 0.012 mm where nobody checked the zero
    assert usual.u_wall_mm == pytest.approx(math.hypot(np.std(walls, ddof=1) / math.sqrt(8), 0.012))


def test_each_reading_has_its_own_factor():
    found = measure_wall([0.45, 0.48], HERE, SMOOTH)
    assert found.reading_ratio == pytest.approx([1.0, (0.45 - FLAT) / (0.48 - FLAT)])
    assert found.right_wall_mm == pytest.approx(0.45)


@pytest.mark.parametrize("sd_known", [False, True])
def test_intervals_cover_a_planted_factor(sd_known):
    """2000 boxes with a planted delivery, ridges, zero and scatter: the true factor lies inside in 93 to 97 %."""
    rng, hits, layers = np.random.default_rng(11), 0, 25
    for _ in range(2000):
        sd_lateral = rng.uniform(0, 0.01)
        offsets = rng.standard_normal((8, layers)) * sd_lateral
        right_k = rng.uniform(0.93, 1.05)
        wall = (0.45 - FLAT) / right_k + FLAT + np.ptp(offsets, axis=1)
        read = np.round(wall + rng.normal(0, 0.006) + rng.normal(0, 0.012, 8), 2)
        told = sd_lateral * (1 + 0.24 * rng.standard_normal()) if sd_known else None
        found = measure_wall(read, HERE, WallBox(1, layers, None if told is None else max(told, 0)), CALIPER)
        hits += abs(found.flow.value - right_k) <= found.flow.U
    assert 0.93 < hits / 2000 < 0.975


@pytest.mark.parametrize(
    ("walls", "box", "field", "row", "says"),
    [
        ([0.90, 0.90], SMOOTH, "beads", None, "Wall 0.90 mm on a path of 0.45 mm: two beads?"),
        ([0.45, 0.45], WallBox(2), "beads", None, "one bead?"),
        ([0.48], SMOOTH, "wall_mm", None, "One place is not a wall"),
        ([], SMOOTH, "wall_mm", None, "One place is not a wall"),
        ([0.48, 4.8], SMOOTH, "wall_mm", 1, "4.8 mm for a wall of 0.45 mm: decimal mark"),
        ([0.048, 0.48], SMOOTH, "wall_mm", 0, "decimal mark"),
        ([math.nan, 0.48], SMOOTH, "wall_mm", 0, "decimal mark"),
        ([0.15, 0.15], WallBox(1, 1000, 0.1), "layers_in_contact", None, "nothing is left"),
    ],
)
def test_refusals(walls, box, field, row, says):
    with pytest.raises(InputError) as refused:
        measure_wall(walls, HERE, box)
    assert (refused.value.field, refused.value.row) == (field, row)
    assert says in refused.value.message


@pytest.mark.parametrize(
    ("box", "field"),
    [
        ({"beads": 3}, "beads"),
        ({"layers_in_contact": 0}, "layers_in_contact"),
        ({"layers_in_contact": 1001}, "layers_in_contact"),
        ({"sd_lateral_mm": -0.01}, "sd_lateral_mm"),
        ({"sd_lateral_mm": 0.2}, "sd_lateral_mm"),
    ],
)
def test_boxes_that_cannot_be_are_refused(box, field):
    with pytest.raises(InputError) as refused:
        WallBox(**box)
    assert refused.value.field == field
    assert refused.value.message
