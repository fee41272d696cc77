"""Kept trials of a shop, told apart through the public core: planted truths, what counts, what was in force."""

import math

import numpy as np
import pytest
from scipy.stats import chi2

from core.errors import InputError
from core.guidance.shopadvice import judge_shop
from core.guidance.splitpair import SplitPair
from core.guidance.splitshop import in_force_at, lot_prior, read_shop
from core.quantity import Estimate
from core.records.rows import Event, Lot, Machine, SettingInForce, Trial
from core.records.store import open_store
from tests.core.guidance.shops import SCREW, WHEEL, joint_chi2, keep_estimate, plant


def read(store):
    machines = store.machines()
    settings = [s for machine in machines for s in store.settings(machine.id)]
    return read_shop(machines, store.lots(), store.series, settings)


def printed_shop(store, machines, lots, prints, rng):
    shop = plant(store, machines, lots, rng)
    for machine in range(machines):
        for lot in rng.choice(lots, prints, replace=False):
            shop.keep(machine, int(lot), rng)
    return shop


def test_truths_of_many_shops_lie_as_the_covariance_says():
    """Combs printed, measured, judged, kept, told apart; the truths of 12 shops, seeds as they come, by chi-squared.

    Each effect alone too: over many shops its interval holds it in 95 of 100, which one shop cannot show.
    """
    total, dof, inside = 0.0, 0, []
    for seed in range(12):
        store = open_store(":memory:")
        shop = printed_shop(store, 4, 3, 2, np.random.default_rng(seed))
        split = read(store).axes["x"].split
        store.close()
        off = split.machine_ratio - shop.machine_ratio, split.lot_ratio - shop.lot_ratio
        total, dof = total + joint_chi2(split, *off), dof + 7
        inside += [*(np.abs(off[0]) < 1.96 * split.u_machine_ratio), *(np.abs(off[1]) < 1.96 * split.u_lot_ratio)]
    assert chi2.ppf(0.005, dof) < total < chi2.ppf(0.995, dof)
    assert 0.85 < np.mean(inside) <= 1.0  # 84 intervals, but those of one shop go together


def test_a_planted_shop_books_shrinkage_to_lots_and_blames_no_belt(store):
    """12 machines, 8 lots, three prints a machine."""
    rng = np.random.default_rng(1)
    shop = printed_shop(store, 12, 8, 3, rng)
    found = read(store)
    split = found.axes["x"].split
    off = split.machine_ratio - shop.machine_ratio, split.lot_ratio - shop.lot_ratio
    assert chi2.ppf(0.001, 20) < joint_chi2(split, *off) < chi2.ppf(0.999, 20)
    assert np.all(split.u_lot_ratio < 0.0006)
    assert np.abs(split.machine_ratio).max() < 3.5 * math.hypot(0.0005, 0.0003)
    assert np.corrcoef(split.lot_ratio, shop.lot_ratio)[0, 1] > 0.99
    for machine in shop.machines:
        judged = judge_shop(found, machine.id, shop.lots[2].id)
        assert "axis_scale" not in [str(a.setting) for a in judged.advice]
    assert not found.axes["x"].left_out and len(found.axes["x"].trial_ids) == 36
    for index, contrast in found.contrasts.items():
        assert abs(contrast.value) < 4 * contrast.u, index


def two_by_two(store):
    machines = [store.add_machine(Machine(name)) for name in ("Ash", "Birch")]
    lots = [store.add_lot(Lot(name, "PETG")) for name in ("Slate", "Sand")]
    for i, machine in enumerate(machines):
        for j, lot in enumerate(lots):
            keep_estimate(store, "scale_x", -0.003 + 0.0004 * i - 0.001 * j, 0.0002, machine.id, lot.id)
    return machines, lots


def test_what_does_not_count_is_left_out_and_named(store):
    machines, lots = two_by_two(store)
    gross = keep_estimate(store, "scale_x", 0.25, 0.0002, machines[0].id, lots[0].id)
    unsure = store.keep(Trial("sizeerror", machines[0].id, lots[0].id,
                              estimates=(Estimate("scale_x", -0.003, 0.0, 5.0, "1"),)))  # fmt: skip
    no_lot = keep_estimate(store, "scale_x", -0.003, 0.0002, machines[0].id, None)
    keep_estimate(store, "scale_x", -0.003, 0.0002, None, lots[0].id)
    travel = keep_estimate(store, "scale_x", 0.0001, 0.00005, machines[0].id, None, origin_x=0.0)
    withdrawn = keep_estimate(store, "scale_x", -0.01, 0.0002, machines[0].id, lots[0].id)
    store.withdraw(withdrawn.id, "read warm")
    found = read(store).axes["x"]
    assert found.left_out == {gross.id: "beyond 3 %", unsure.id: "no uncertainty", no_lot.id: "no lot"}
    assert found.trial_ids[-1] == travel.id and withdrawn.id not in found.trial_ids
    assert found.split.seen.lot[-1] == -1 and found.split.u_machine_ratio[0] < 6e-5
    pair = read(store).pair("x", machines[0].id, lots[0].id)
    few = store.keep(Trial("sizeerror", machines[1].id, None, estimates=(
        Estimate("scale_x", 0.0, 0.0001, 2.0, "1"), Estimate("origin_x", 0.0, 0.01, 2.0, "mm"))))  # fmt: skip
    widened = read(store).axes["x"]
    assert widened.trial_ids[-1] == few.id
    assert widened.split.seen.u_ratio[-1] == pytest.approx(0.0001 * 4.303 / 1.96, rel=1e-3)  # Student's factor of 2
    assert pair.travel and (pair.prints, pair.lots, pair.machines, pair.others) == (2, 2, 2, 4)


def test_after_a_new_belt_a_machine_is_another_one(store):
    machines, lots = two_by_two(store)
    store.log_event(Event("nozzle_same", machine_id=machines[0].id))
    mistake = store.log_event(Event("belt_changed", machine_id=machines[1].id))
    store.log_event(Event("note", machine_id=machines[1].id, takes_back=mistake.id))
    store.log_event(Event("belt_changed"))
    store.log_event(Event("belt_changed", machine_id=machines[0].id))
    keep_estimate(store, "scale_x", -0.003, 0.0002, machines[0].id, lots[0].id)
    found = read_shop(store.machines(), store.lots(), store.series, (), store.events()).axes["x"]
    assert found.left_out == dict.fromkeys((1, 2), "before a new belt or screw") and len(found.trial_ids) == 3


def test_a_pair_is_of_the_shop_or_there_is_none(store):
    machines, lots = two_by_two(store)
    shop = read(store)
    assert shop.pair("x", None, lots[0].id) is None and shop.pair("x", machines[0].id, 99) is None
    assert shop.pair("y", machines[0].id, lots[0].id) is None
    store.add_machine(Machine("Cedar"))
    lot = store.add_lot(Lot("Moss", ""))
    new = read(store).pair("x", 3, lot.id)
    assert (new.prints, new.lots, new.machines, new.others) == (0, 0, 0, 0)


def test_a_trial_counts_with_what_was_in_force_when_it_was_kept(store):
    """Base rule: parts drawn larger came out larger; that is taken off before the split."""
    machines, lots = two_by_two(store)
    before = read(store).axes["x"].split
    allowance = SettingInForce(machines[0].id, lots[0].id, "shrink_allowance_x", 1.0, 1.003, "1")
    axis = SettingInForce(machines[0].id, None, "axis_scale_x", 1.0, 1.001, "1")
    store.keep(Trial("shop_split", machines[0].id, lots[0].id), (allowance, axis))
    drawn_larger = (1 - 0.003) * 1.003 * 1.001 - 1
    keep_estimate(store, "scale_x", drawn_larger, 0.0002, machines[0].id, lots[0].id)
    shop = read(store)
    split = shop.axes["x"].split
    assert split.seen.scale_ratio[-1] == pytest.approx(-0.003, abs=1e-9)
    assert split.lot_ratio == pytest.approx(before.lot_ratio, abs=1e-4)
    pair = shop.pair("x", machines[0].id, lots[0].id)
    assert (pair.allowance_ratio, pair.axis_ratio) == (1.003, 1.001)
    assert in_force_at(shop.settings, "shrink_allowance_x", (machines[0].id, lots[1].id)) == 1.0
    added = pair.with_print(Estimate("scale_x", drawn_larger, 0.0002, 30.0, "1"))
    assert added.machine_ratio == pytest.approx(pair.machine_ratio, abs=2e-4)
    keep_estimate(store, "scale_x", 0.001, 0.0002, machines[0].id, None, origin_x=0.0)  # its travel: no filament in it
    assert read(store).axes["x"].split.seen.scale_ratio[-1] == pytest.approx(0.0, abs=1e-9)


def test_a_further_print_changes_the_pair_as_a_new_split_would(store):
    machines, lots = two_by_two(store)
    pair = read(store).pair("x", machines[0].id, lots[1].id)
    more = Estimate("scale_x", -0.0035, 0.0002, 30.0, "1")
    added = pair.with_print(more)
    store.keep(Trial("sizeerror", machines[0].id, lots[1].id, estimates=(more,)))
    anew = read(store).pair("x", machines[0].id, lots[1].id)
    for name in ("machine_ratio", "lot_ratio", "u_machine_ratio", "u_lot_ratio", "covariance_ratio", "prints"):
        assert getattr(added, name) == pytest.approx(getattr(anew, name), rel=1e-9), name


def test_a_pair_speaks_in_ratios():
    pair = SplitPair("y", 0.001, 0.0002, -0.004, 0.0005, 0.0)
    assert pair.machine_scale == Estimate("machine_scale_y", math.expm1(0.001), 0.0002 * math.exp(0.001), math.inf, "1")
    assert pair.shrinkage.value == pytest.approx(1 - math.exp(-0.004)) and pair.shrinkage.name == "shrinkage_y"
    assert pair.allowance.value * (1 - pair.shrinkage.value) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("material", "shrinks", "u"),
    [("ABS", 0.0055, 0.003), ("PP", 0.0175, 0.0075), ("PLA-CF", 0.005, 0.01), ("", 0.005, 0.01), ("HIPS", 0.005, 0.01)],
)
def test_what_a_material_usually_shrinks(material, shrinks, u):
    assert lot_prior(Lot("L", material)) == pytest.approx((shrinks, u))


def test_the_drive_on_record_is_the_prior(store):
    store.add_machine(Machine("Wheels", drives={"x": WHEEL, "z": SCREW}))
    lot = store.add_lot(Lot("Slate", "PETG"))
    keep_estimate(store, "scale_x", -0.003, 0.0002, 1, lot.id, scale_z=-0.003)
    axes = read(store).axes
    assert axes["x"].split.prior.machine_u_ratio[0] == 0.0075 and axes["z"].split.prior.machine_u_ratio[0] == 0.0005
    assert read(store).contrasts == {}


def test_an_empty_shop_says_what_to_keep(store):
    with pytest.raises(InputError, match="two machines and two lots that share a print") as told:
        judge_shop(read(store), None, None)
    assert told.value.field == "value"
