"""A piece planned from the record of a machine: its drives set the lengths, its instrument the floor."""

import math

import pytest

from core.errors import InputError
from core.guidance.pieceplan import (
    PieceWishes,
    Share,
    bounds_of,
    diagonal_gauges,
    pillar_sides_mm,
    plan_piece,
    size_gauges,
)
from core.pieces.bounds import Bounds
from core.pieces.catalogue import SIZE_SETS, plan_set, set_names
from core.records.rows import Instrument, Machine, Motion
from tests.core.pieces.onmesh import bounds_for

BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 16, "full_steps": 200}
SCREW = {"kind": "screw", "pitch_mm": 2.0, "starts": 4, "full_steps": 200}
CALIPER = Instrument("Caliper 2", u_outside_zero_mm=0.015, u_inside_zero_mm=0.015, sd_hand_mm=0.02, sd_hand_dof=19)


def test_bounds_come_from_bed_and_drives():
    """16 teeth of a 2 mm belt turn once in 32 mm; lead 8 in 200 steps of 0.04 mm: 0.2 is five of them."""
    machine = Machine("Bramble", travel_x_mm=250, travel_y_mm=210, travel_z_mm=180, drives={"x": BELT, "z": SCREW})
    bounds = bounds_of(machine, Bounds(caliper_mm=200, nozzle_mm=0.6))
    assert (bounds.bed_x_mm, bounds.bed_y_mm, bounds.bed_z_mm) == (250, 210, 180)
    assert (bounds.turn_x_mm, bounds.turn_y_mm, bounds.layer_mm, bounds.first_layer_mm) == (32, 0, 0.2, 0.2)
    assert (bounds.caliper_mm, bounds.nozzle_mm) == (200, 0.6)
    assert bounds_of(None) == Bounds()


def test_odd_screws_get_their_own_clean_layer():
    """A lead of 1.25 mm in 200 full steps: 0.00625 mm each, 32 of them 0.2 mm; a pitch of an inch/20: 0.1905."""
    inch = {"kind": "screw", "pitch_mm": 1.27, "starts": 1, "full_steps": 20}
    assert bounds_of(Machine("Thistle", drives={"z": inch})).layer_mm == pytest.approx(0.1905)
    coarse = {"kind": "screw", "pitch_mm": 50.0, "starts": 1, "full_steps": 20}
    assert bounds_of(Machine("Thistle", drives={"z": coarse})).layer_mm == Bounds().layer_mm


def test_carriages_of_a_delta_and_turns_longer_than_the_bed_are_no_step():
    assert bounds_of(Machine("Sorrel", Motion.DELTA, drives={"x": BELT, "y": BELT})).turn_x_mm == 0
    wheel = {"kind": "wheel", "diameter_mm": 100.0, "full_steps": 200}
    assert bounds_of(Machine("Sorrel", drives={"x": wheel})).turn_x_mm == pytest.approx(314.159, abs=0.01)


def test_a_rotary_axis_gives_no_lengths_and_no_layers():
    table = {"kind": "rotary", "gears": [[90, 10]]}
    bounds = bounds_of(Machine("Teasel", drives={"x": BELT, "y": table, "z": table}))
    assert (bounds.turn_x_mm, bounds.turn_y_mm, bounds.layer_mm) == (32, 0, Bounds().layer_mm)


@pytest.mark.parametrize("key", set_names())
@pytest.mark.parametrize("share", Share)
def test_every_set_is_planned_in_every_way(key, share):
    plan = plan_piece(PieceWishes(key, bounds_for(key), share=share, rounds=2), CALIPER)
    assert len(plan.times) == len(plan.planned.gauges) and plan.readings == sum(plan.times)
    assert bool(plan.expected) == (key in SIZE_SETS)
    assert all(0 < e.floor_u < e.u for e in plan.expected)
    others = [g for g in plan.planned.gauges if g.kind == "wall" or g in diagonal_gauges(plan.planned)]
    assert len(size_gauges(plan.planned)) == len(plan.planned.gauges) - len(others)
    assert len(diagonal_gauges(plan.planned)) == (4 if key == "pillars" else 0)


def test_the_sentences_say_chance_readings_and_floor():
    plan = plan_piece(PieceWishes("comb_x", scale_ratio=0.001), CALIPER)
    assert [str(says) for says in plan.says] == [
        "A scale error X of 0.1 % is told from none more than 99 times in 100.",
        "Temperature, run-out and the next print come on top: caliper work knows no scale better than ± 0.06 %.",
        "In pairs over 112 mm, 2 readings see it nine times in ten; take 4, on two prints.",
        "On a length below 30 mm no repeat shows it, for the zero of the jaws.",
    ]
    fine = [str(says) for says in plan_piece(PieceWishes("comb_x", scale_ratio=0.0002), CALIPER).says]
    assert any("No repeat takes its expanded uncertainty below 0.0" in says for says in fine)
    chance = next(says for says in fine if "times in 100" in says)
    assert 5 < int(chance.rsplit(" ", 4)[1]) < 99


def test_what_no_turn_fits_is_said_before_all():
    plan = plan_piece(PieceWishes("comb_x", Bounds(turn_x_mm=0)))
    assert "not on record" in plan.says[0]
    assert not any("zero of the jaws" in says for says in plan.says)


def test_sharing_for_the_scale_beats_sharing_evenly():
    even, scale = (
        next(e.u for e in plan_piece(PieceWishes("comb_x", share=share, rounds=2)).expected if e.name == "scale_x")
        for share in (Share.EVEN, Share.SCALE)
    )
    assert scale < 0.95 * even


@pytest.mark.parametrize("rounds", [0, 21])
def test_rounds_that_cannot_be(rounds):
    with pytest.raises(InputError, match="type 1 to 20") as refused:
        plan_piece(PieceWishes("comb_x", rounds=rounds))
    assert refused.value.field == "rounds"


def test_a_flow_piece_has_no_size_gauges():
    assert size_gauges(plan_set("wall_box_1")) == ()


@pytest.mark.parametrize("share", Share)
def test_flare_blocks_promise_the_flare_and_no_scale(share):
    """Four low less four high readings, halved: u = sqrt(2 (f^2 + sd^2/2)) / 2, of 8 walls' pairs (from memory)."""
    plan = plan_piece(PieceWishes("flare_block", share=share))
    (flare,) = plan.expected
    reading_mm, face_mm = 0.02, 0.01
    one_mm = math.sqrt(reading_mm**2 + 2 * face_mm**2)
    assert flare.name == "first_layer_flare" and flare.u == pytest.approx(math.sqrt(2 * one_mm**2 / 4) / 2)
    assert plan.times == (1,) * 8 and plan.says == ()


def test_a_scale_promised_worse_than_caliper_work_is_not_warned_of():
    says = [str(words) for words in plan_piece(PieceWishes("rings")).says]
    assert not any("caliper work" in words for words in says)


def test_sides_of_the_pillar_plate_are_centre_distances():
    assert pillar_sides_mm(plan_set("pillars")) == (80, 80)
    assert pillar_sides_mm(plan_set("pillars", Bounds(turn_x_mm=0, turn_y_mm=32))) == (97, 96)
