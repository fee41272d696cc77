"""Islands, the print that joins them, the next best one, and the trial that disagrees."""

import math

import numpy as np
import pytest

from core.part_size.shop_links import (
    NEXT_U_RATIO,
    axis_contrasts,
    deleted_residual,
    disagreeing,
    islands,
    joining_prints,
    links_of,
    next_print,
)
from core.part_size.shop_split import NO_LOT, Priors, Seen, split_shop

SD, TAU = 0.0003, 0.0005


def seen(*cells, values=None, u=SD):
    machine, lot = (np.array(part) for part in zip(*cells, strict=True))
    return Seen(machine, lot, np.zeros(machine.size) if values is None else np.expm1(values), np.full(machine.size, u))


def priors(machines, lots, common=0.0):
    return Priors(np.full(machines, TAU), np.full(lots, -0.003), np.full(lots, 0.005), common)


def with_print(trials, machine, lot):
    return Seen(
        np.append(trials.machine, machine), np.append(trials.lot, lot), np.append(trials.scale_ratio, 0.0),
        np.append(trials.u_ratio, NEXT_U_RATIO),
    )  # fmt: skip


def test_a_chain_of_lots_links_machines_and_unused_ones_are_in_no_island():
    trials = seen((0, 0), (1, 0), (1, 1), (2, 2), (2, 2), (3, 3))
    found = islands(trials, 5, 5)
    assert [(i.machines, i.lots, i.trials) for i in found] == [
        ((0, 1), (0, 1), 3), ((2,), (2,), 2), ((3,), (3,), 1),
    ]  # fmt: skip
    assert list(links_of(trials)) == [(0, 0, 1), (1, 0, 1), (1, 1, 1), (2, 2, 2), (3, 3, 1)]


def test_the_travel_of_two_machines_links_them():
    (only,) = islands(seen((0, 0), (1, 1), (0, NO_LOT), (1, NO_LOT)), 2, 2)
    assert only.machines == (0, 1) and only.lots == (0, 1)


def test_no_trials_make_no_island():
    nothing = Seen(np.zeros(0, int), np.zeros(0, int), np.zeros(0), np.zeros(0))
    assert islands(nothing, 2, 2) == () and list(links_of(nothing)) == []
    split = split_shop(nothing, priors(2, 2))
    assert disagreeing(split).size == 0 and joining_prints(split, islands(seen((0, 0)), 2, 2)) == ()


def test_the_joining_print_is_the_best_of_all_that_join():
    """Tried out: each print between the islands is made, and the sum of all variances compared."""
    trials = seen((0, 0), (0, 1), (1, 0), (1, 1), (0, 0), (2, 2), (3, 2), (3, 3))
    split = split_shop(trials, priors(4, 4))
    apart = islands(trials, 4, 4)
    (joining,) = joining_prints(split, apart)
    left = {}
    for a, b in (apart, apart[::-1]):
        for i in a.machines:
            for j in b.lots:
                after = split_shop(with_print(trials, i, j), priors(4, 4))
                left[i, j] = np.sum(after.u_machine_ratio**2) + np.sum(after.u_lot_ratio**2)
    assert (joining.machine, joining.lot) == min(left, key=left.get)
    joined = islands(with_print(trials, joining.machine, joining.lot), 4, 4)
    assert len(joined) == 1 and not joining.of_machine


def test_the_next_print_takes_most_off_the_worst_effect():
    trials = seen((0, 0), (1, 0), (2, 0), (0, 1), (1, 1))
    split = split_shop(trials, priors(3, 3))
    best = next_print(split)
    assert (best.of_machine, best.effect, best.lot) == (False, 2, 2)  # never printed: known by its material alone
    assert best.u_before_ratio == pytest.approx(0.005)
    after = {i: split_shop(with_print(trials, i, 2), priors(3, 3)).u_lot_ratio[2] for i in range(3)}
    assert best.machine == min(after, key=after.get)
    assert best.u_after_ratio == pytest.approx(after[best.machine], rel=1e-9)


def test_a_machine_gains_where_its_lots_are_known():
    trials = seen(*((i, j) for i in range(4) for j in range(3) for _ in range(8)))
    split = split_shop(trials, priors(5, 3, common=1e-5))
    best = next_print(split)
    assert (best.of_machine, best.effect, best.machine) == (True, 4, 4)
    assert best.u_after_ratio < 0.95 * best.u_before_ratio


def test_where_no_print_helps_none_is_asked_for():
    split = split_shop(seen(*((i, j) for i in range(3) for j in range(3) for _ in range(60))), priors(3, 3))
    assert next_print(split) is None


def test_the_trial_that_disagrees_is_found_by_the_others():
    rng = np.random.default_rng(6)
    cells = [(i, j) for i in range(5) for j in range(4)]
    values = np.array([0.0002 * i - 0.0004 - 0.002 * j for i, j in cells]) + SD * rng.standard_normal(20)
    assert not disagreeing(split_shop(seen(*cells, values=values), priors(5, 4))).any()
    values[7] += 0.0025
    split = split_shop(seen(*cells, values=values), priors(5, 4))
    assert np.flatnonzero(disagreeing(split)).tolist() == [7]
    rest = [c for n, c in enumerate(cells) if n != 7]
    without = split_shop(seen(*rest, values=np.delete(values, 7)), priors(5, 4))
    i, j = cells[7]
    off = values[7] - without.machine_ratio[i] - without.lot_ratio[j]
    variance = without.u_machine_ratio[i] ** 2 + without.u_lot_ratio[j] ** 2 + 2 * without.cross_covariance(i, j)
    u = SD * math.exp(-values[7])
    assert deleted_residual(split)[7] == pytest.approx(off / math.sqrt(u**2 + variance), rel=1e-6)


def test_one_shop_in_twenty_has_a_trial_flagged_where_all_agree():
    rng, flagged = np.random.default_rng(4), 0
    cells = [(i, j) for i in range(4) for j in range(3)]
    for _ in range(600):
        m, f = TAU * rng.standard_normal(4), -0.003 + 0.005 * rng.standard_normal(3)
        values = np.array([m[i] + f[j] for i, j in cells]) + SD * rng.standard_normal(12)
        flagged += disagreeing(split_shop(seen(*cells, values=values), priors(4, 3))).any()
    assert 0.025 < flagged / 600 < 0.075


def test_x_less_y_is_the_machines_whatever_the_lot_shrinks():
    machine = np.array([0, 0, 1, 2, 2])
    found = axis_contrasts(machine, np.array([0.001, 0.002, -0.003, 0.001, 0.003]), np.array([1, 1, 2, 10, 10]) * 1e-3)
    assert found[0].value == pytest.approx(0.0015) and found[0].u == pytest.approx(1e-3 / math.sqrt(2))
    assert (found[1].value, found[1].u, found[1].prints) == (pytest.approx(-0.003), pytest.approx(2e-3), 1)
    scattered = axis_contrasts(np.array([4, 4]), np.array([0.0, 0.004]), np.array([1e-3, 1e-3]))[4]
    assert scattered.u == pytest.approx(0.002) and scattered.prints == 2  # what the two themselves show


def test_where_many_disagree_only_the_worst_few_are_named():
    rng = np.random.default_rng(9)
    cells = [(i, j) for i in range(8) for j in range(8)]
    values = SD * rng.standard_normal(64)
    values[::7] += 0.02 * rng.standard_normal(10)
    assert disagreeing(split_shop(seen(*cells, values=values), priors(8, 8))).sum() == 5
