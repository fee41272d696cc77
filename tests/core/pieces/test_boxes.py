"""Small pieces: the wall of a box of one and two beads, the block to weigh, pads on small beds."""

import pytest

from core.flow_trials.bead import Bead
from core.flow_trials.conditions import PrintConditions
from core.flow_trials.top import LADDER_RATIO
from core.flow_trials.wall import WallBox, right_wall_mm
from core.pieces.bounds import Bounds
from core.pieces.boxes import PAD_STEPS_PERCENT, plan_mass_box, wall_mm
from core.pieces.catalogue import extent_mm, plan_set
from core.pieces.solid import solid_of


@pytest.mark.parametrize("beads", [1, 2])
@pytest.mark.parametrize(("nozzle", "layer"), [(0.4, 0.2), (0.6, 0.3)])
def test_the_drawn_wall_is_what_the_wall_trial_expects(beads, nozzle, layer):
    bounds = Bounds(nozzle_mm=nozzle, layer_mm=layer)
    trial = PrintConditions(Bead(bounds.bead_mm, layer), nozzle, 210.0, 4.0, 1.0, 250.0)
    assert wall_mm(beads, bounds) == pytest.approx(right_wall_mm(trial, WallBox(beads)), abs=1e-4)
    gauges = plan_set(f"wall_box_{beads}", bounds).gauges
    assert [g.nominal_mm for g in gauges] == pytest.approx([wall_mm(beads, bounds)] * 8)


def test_the_block_weighs_five_grams_of_the_lightest_plastic():
    """Polypropylene, 0.90 g/cm3 (common practice, no source)."""
    assert solid_of(plan_mass_box(Bounds())).volume_mm3 / 1000 * 0.90 > 5.0


@pytest.mark.parametrize("bed", [100.0, 220.0])
def test_nine_pads_fit_in_rows_of_five_and_four_and_do_not_tell_their_flow(bed):
    """Who scores must not see the flow: it stands in the list for who prints, in the order of the page Top pads."""
    planned = plan_set("top_pads", Bounds(bed_x_mm=bed, bed_y_mm=bed))
    assert [str(p.name) for p in planned.pieces] == [f"Pad {letter}" for letter in "ABCDEFGHI"]
    rows = [p.place_mm[1] for p in planned.pieces]
    assert [rows.count(y) for y in sorted(set(rows))] == [5, 4]
    assert max(extent_mm(planned)) <= bed - 4
    assert [step / 100 for step in PAD_STEPS_PERCENT] == pytest.approx(LADDER_RATIO)
    assert "A +1.5 %, B -4.5 %" in str(planned.purpose) and "I -3 %" in str(planned.purpose)


def test_flare_blocks_are_read_low_and_high_and_have_no_stepped_edge():
    planned = plan_set("flare_block")
    assert {g.name: g.first_mm[2] for g in planned.gauges} == {
        f"{name} {number} {axis}": z for number in (1, 2) for name, z in (("low", 0.3), ("high", 4)) for axis in "xy"
    }
    assert {g.kind for g in planned.gauges if g.name.startswith("low")} == {"first_layer"}
    assert all(prism.relief_mm == 0 for piece in planned.pieces for prism in piece.prisms)
    assert len({face for gauge in planned.gauges for face in gauge.faces}) == 16  # no wall is touched twice


def test_places_of_a_wall_box_are_named_by_the_side_they_lie_on():
    """The first two rows of the page Wall are the front, towards whoever stands before the machine: least y."""
    gauges = plan_set("wall_box_1").gauges
    middle = {g.name: [(a + b) / 2 for a, b in zip(g.first_mm, g.second_mm, strict=True)] for g in gauges}
    assert list(middle) == [f"{side} {number}" for side in ("front", "right", "back", "left") for number in (1, 2)]
    assert max(middle["front 1"][1], middle["left 2"][0]) < 1 and min(middle["back 2"][1], middle["right 1"][0]) > 39
