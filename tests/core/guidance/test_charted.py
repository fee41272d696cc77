"""Whose a quantity is, and the results in their order."""

import math
from datetime import UTC, datetime, timedelta

import pytest

from core.guidance.charted import (
    DIFFERENCE,
    MEAN,
    Owner,
    main_quantities,
    other_quantities,
    owner_of,
    results_in_order,
)
from core.records.rows import SeriesPoint

BEGIN = datetime(2026, 3, 1, 8, tzinfo=UTC)


def point(trial, value, *, hours=0.0, u=0.0003, dof=8.0, machine=1, lot=1):
    return SeriesPoint(trial, BEGIN + timedelta(hours=hours), value, u, dof, "1", machine, lot)


def in_order(name, x=(), y=(), **others):
    names = {"scale_x": x, "scale_y": y, **others}
    return results_in_order(name, lambda wanted: names[wanted])


@pytest.mark.parametrize(
    ("name", "owner"),
    [
        (DIFFERENCE, Owner.MACHINE),
        ("squareness_xy", Owner.MACHINE),
        ("reversal_x", Owner.MACHINE),
        ("lost_motion_y", Owner.MACHINE),
        ("wall_outset", Owner.MACHINE),
        ("bed_flatness", Owner.MACHINE),
        ("feed_ratio", Owner.MACHINE),
        (MEAN, Owner.LOT),
        ("scale_x", Owner.LOT),
        ("diameter", Owner.LOT),
        ("diameter_sd", Owner.LOT),
        ("density", Owner.LOT),
        ("flow_ratio_wall", Owner.LOT),
        ("flow_ceiling_230c", Owner.LOT),
    ],
)
def test_what_the_machine_owns_and_what_travels_with_the_lot(name, owner):
    assert owner_of(name) is owner


def test_every_main_quantity_says_where_it_is_kept_and_three_readings_and_no_adjustment():
    quantities = main_quantities()
    assert len({q.name for q in quantities}) == len(quantities) == len({q.words for q in quantities})
    assert quantities[0].name == DIFFERENCE  # what every shop should look at first
    owners = [q.owner for q in quantities]
    assert owners == sorted(owners, key=list(Owner).index)  # not mixed in the list
    for q in quantities:
        assert q.kept_on and len({q.again, q.repeat, q.look}) == 3
        assert q.again.startswith(("read", "repeat", "weigh", "wipe"))
        for step in (q.again, q.repeat, q.look):
            assert not {"set", "adjust", "correct", "change", "scale", "trim"} & set(step.replace(",", " ").split())


def test_the_printing_machine_counts_for_scale_and_flow_of_a_lot():
    assert {q.name for q in main_quantities() if q.of_print} == {MEAN, "scale_x", "scale_y", "scale_z", "flow_ratio"}


def test_what_a_check_finds_is_the_instruments():
    mine = [q.name for q in main_quantities() if q.owner is Owner.INSTRUMENT]
    assert mine == ["zero_outside", "zero_inside", "zero_depth", "zero", "scale", "sd_hand", "operator_offset"]
    assert owner_of("scale_x") is Owner.LOT and owner_of("squareness_xy") is Owner.MACHINE
    assert owner_of("shrinkage_x") is Owner.LOT and owner_of("machine_scale_x") is Owner.MACHINE


def test_further_results_are_found_by_name():
    found = other_quantities(["probe_sd", "wall_outset", "sd_hand", "scale", "zero", "flow_ceiling_230c"])
    assert [(q.name, q.owner) for q in found] == [("flow_ceiling_230c", Owner.LOT), ("probe_sd", Owner.MACHINE)]
    assert [q.is_magnitude for q in found] == [True, True]
    assert found[1].words == "repeatability of the probe"


def test_an_estimate_is_taken_as_it_is():
    points = (point(1, 0.1), point(2, 0.2))
    assert in_order("wall_outset", wall_outset=points) == points
    assert in_order(DIFFERENCE) == in_order(MEAN) == ()


def test_difference_and_mean_of_one_trial():
    x, y = [point(7, -0.0025, u=0.0003, dof=8)], [point(7, -0.0035, u=0.0004, dof=8)]
    (difference,) = in_order(DIFFERENCE, x, y)
    (mean,) = in_order(MEAN, x, y)
    assert difference.value == pytest.approx(0.001)
    assert mean.value == pytest.approx(-0.003)
    assert difference.u == pytest.approx(0.0005)
    assert mean.u == pytest.approx(0.00025)
    # JCGM 100:2008 G.2b
    assert difference.dof == mean.dof == pytest.approx(5**4 / (3**4 / 8 + 4**4 / 8))
    assert (difference.trial_id, difference.machine_id, difference.lot_id, difference.unit) == (7, 1, 1, "1")


def test_known_uncertainties_stay_known():
    (difference,) = in_order(DIFFERENCE, [point(7, 0.1, dof=math.inf)], [point(7, 0.2, dof=math.inf)])
    assert math.isinf(difference.dof)


@pytest.mark.parametrize("first", ["x", "y"])
def test_two_combs_of_one_lot_within_a_day_are_one_print(first):
    early, late = point(1, 0.001, hours=0), point(2, 0.003, hours=2)
    (found,) = in_order(DIFFERENCE, *(([early], [late]) if first == "x" else ([late], [early])))
    assert found.value == pytest.approx(-0.002 if first == "x" else 0.002)
    assert (found.trial_id, found.kept_at) == (2, late.kept_at)


@pytest.mark.parametrize(
    "other",
    [
        point(2, 0.003, hours=25),
        point(2, 0.003, hours=2, lot=2),
        point(2, 0.003, hours=2, machine=2),
        point(2, 0.003, hours=2, lot=None),
        point(2, 0.003, hours=2, machine=None),
    ],
)
def test_combs_of_another_day_lot_or_machine_are_not_paired(other):
    assert in_order(DIFFERENCE, [point(1, 0.001)], [other]) == ()


def test_each_comb_is_used_once_and_the_nearest_one_counts():
    x = [point(1, 0.1, hours=0), point(2, 0.2, hours=1), point(5, 0.5, hours=4)]
    y = [point(3, 0.3, hours=2), point(4, 0.4, hours=3), point(6, 0.6, hours=60)]
    found = in_order(DIFFERENCE, x, y)
    assert [(p.trial_id, round(p.value, 6)) for p in found] == [(3, -0.1), (5, 0.1)]
