"""Machine and filament told apart: against a dense solver, scipy, and planted truths."""

import math

import numpy as np
import pytest
import scipy.sparse as sp
from scipy.sparse.linalg import lsmr, spsolve

from core.errors import InputError
from core.part_size.shop_split import COMMON_U_RATIO, NO_LOT, Priors, Seen, split_shop

# common practice, no source: numbers worked out by the trade notes for a shop of belt machines
SD, TAU, SHRINK = 0.0003, 0.0005, 0.01


def grid(machines, lots, u=SD):
    """Each lot once on each machine, all readings zero: for the uncertainties."""
    i, j = np.divmod(np.arange(machines * lots), lots)
    return Seen(i, j, np.zeros(i.size), np.full(i.size, u))


def priors(machines, lots, common=0.0, lot=0.0, tau=TAU):
    return Priors(np.full(machines, tau), np.full(lots, lot), np.full(lots, SHRINK), common)


def random_shop(rng, machines, lots, trials, common=COMMON_U_RATIO, travels=0):
    tau = rng.choice([0.0003, 0.0005, 0.0075], machines)
    lot_mean, lot_u = rng.uniform(-0.02, -0.002, lots), rng.uniform(0.003, 0.008, lots)
    prior = Priors(tau, lot_mean, lot_u, common)
    m = common * rng.standard_normal() + tau * rng.standard_normal(machines)
    f = lot_mean + lot_u * rng.standard_normal(lots)
    i = rng.integers(0, machines, trials + travels)
    j = np.append(rng.integers(0, lots, trials), np.full(travels, NO_LOT))
    u = rng.uniform(0.0002, 0.0006, i.size)
    y = m[i] + np.where(j == NO_LOT, 0.0, np.append(f, 0.0)[j]) + u * rng.standard_normal(i.size)
    return Seen(i, j, np.expm1(y), u * np.exp(y)), prior, m, f


def dense(seen, prior):
    """The textbook posterior, every matrix written out: mean and covariance of (m, f)."""
    M, F, n = prior.machine_u_ratio.size, prior.lot_u_ratio.size, seen.machine.size
    X = np.zeros((n, M + F))
    X[np.arange(n), seen.machine] = 1.0
    printed = np.flatnonzero(seen.lot != NO_LOT)
    X[printed, M + seen.lot[printed]] = 1.0
    P = np.zeros((M + F, M + F))
    P[:M, :M] = np.diag(prior.machine_u_ratio**2) + prior.common_u_ratio**2
    P[M:, M:] = np.diag(prior.lot_u_ratio**2)
    mean = np.append(np.zeros(M), prior.lot_ratio)
    V = X @ P @ X.T + np.diag(seen.u_log_ratio**2)  # the other way round: gain on the readings, not normal equations
    gain = np.linalg.solve(V, X @ P).T
    return mean + gain @ (seen.log_ratio - X @ mean), P - gain @ X @ P


def posterior(split):
    root = np.vstack([split.machine_root, split.lot_root])
    return root @ root.T + np.diag(np.append(split.machine_own, split.lot_own))


@pytest.mark.parametrize("common", [0.0, COMMON_U_RATIO])
@pytest.mark.parametrize(("machines", "lots", "trials", "travels"), [(5, 3, 20, 2), (3, 7, 12, 1), (4, 4, 0, 0)])
def test_means_and_all_covariances_are_those_of_a_dense_solver(machines, lots, trials, travels, common):
    seen, prior, _, _ = random_shop(np.random.default_rng(machines), machines, lots, trials, common, travels)
    split = split_shop(seen, prior)
    mean, C = dense(seen, prior)
    assert np.append(split.machine_ratio, split.lot_ratio) == pytest.approx(mean, rel=1e-9, abs=1e-13)
    assert posterior(split) == pytest.approx(C, rel=1e-7, abs=1e-14)
    assert np.append(split.u_machine_ratio, split.u_lot_ratio) == pytest.approx(np.sqrt(np.diag(C)), rel=1e-9)
    assert split.cross_covariance(1, 2) == pytest.approx(C[1, machines + 2], rel=1e-7, abs=1e-14)
    for difference, a, b in ((split.machine_difference, 0, 2), (split.lot_difference, machines, machines + 2)):
        value, u = difference(0, 2)
        assert value == pytest.approx(mean[a] - mean[b])
        assert u == pytest.approx(math.sqrt(C[a, a] + C[b, b] - 2 * C[a, b]), rel=1e-9)
    assert split.machine_difference(1, 1) == (0.0, 0.0)
    predicted = seen.log_ratio - split.residual()
    X_variance = [
        C[i, i] + (C[machines + j, machines + j] + 2 * C[i, machines + j] if j != NO_LOT else 0.0)
        for i, j in zip(seen.machine, seen.lot, strict=True)
    ]
    assert split.fitted_variance() == pytest.approx(X_variance, rel=1e-7)
    expected = mean[seen.machine] + np.where(seen.lot == NO_LOT, 0.0, np.append(mean[machines:], 0.0)[seen.lot])
    assert predicted == pytest.approx(expected, abs=1e-12)


def rows(seen, prior):
    """Trials and priors as rows of one sparse least-squares problem, with what machines share as an unknown."""
    M, F, n = prior.machine_u_ratio.size, prior.lot_u_ratio.size, seen.machine.size
    w, tau, p = 1 / seen.u_log_ratio, 1 / prior.machine_u_ratio, 1 / prior.lot_u_ratio
    parts = [
        (np.arange(n), seen.machine, w), (np.arange(n), M + seen.lot, w), (n + np.arange(M), np.arange(M), tau),
        (n + np.arange(M), np.full(M, M + F), -tau), (n + M + np.arange(F), M + np.arange(F), p),
        ([n + M + F], [M + F], [1 / prior.common_u_ratio]),
    ]  # fmt: skip
    at, column, value = (np.concatenate(part) for part in zip(*parts, strict=True))
    A = sp.csr_matrix((value, (at, column)), shape=(n + M + F + 1, M + F + 1))
    return A, np.concatenate([w * seen.log_ratio, np.zeros(M), p * prior.lot_ratio, [0.0]])


def test_a_larger_shop_agrees_with_scipy_sparse():
    seen, prior, _, _ = random_shop(np.random.default_rng(5), 60, 90, 1500)
    split = split_shop(seen, prior)
    A, b = rows(seen, prior)
    exact = spsolve((A.T @ A).tocsc(), A.T @ b)
    assert split.machine_ratio == pytest.approx(exact[:60], rel=1e-8, abs=1e-12)
    assert split.lot_ratio == pytest.approx(exact[60:150], rel=1e-8)
    iterated = lsmr(A, b, atol=1e-14, btol=1e-14, maxiter=5000)[0]
    assert split.lot_ratio == pytest.approx(iterated[60:150], rel=1e-6)


def test_a_chain_of_machines_is_solved_at_once():
    """Where updates that alternate between machines and lots settle slowly and look settled long before."""
    rng, n = np.random.default_rng(7), 200
    machine = np.repeat(np.arange(n), 2)
    lot = (machine + np.tile([0, 1], n)) % n
    m, f, u = 0.005 * rng.standard_normal(n), 0.003 * rng.standard_normal(n), np.full(2 * n, 1e-5)
    seen = Seen(machine, lot, np.expm1(m[machine] + f[lot] + u * rng.standard_normal(2 * n)), u)
    prior = Priors(np.full(n, 0.05), np.zeros(n), np.full(n, 0.05), 0.03)
    split = split_shop(seen, prior)
    A, b = rows(seen, prior)
    exact = spsolve((A.T @ A).tocsc(), A.T @ b)
    assert np.abs(split.machine_ratio - exact[:n]).max() < 1e-7
    a_m, a_f = np.zeros(n), np.zeros(n)
    for _ in range(100):
        a_m = np.bincount(machine, (seen.log_ratio - a_f[lot]) / 2, n)
        a_f = np.bincount(lot, (seen.log_ratio - a_m[machine]) / 2, n)
    free = np.ptp((a_m - split.machine_ratio) - np.mean(a_m - split.machine_ratio))
    assert free > 20 * np.ptp(split.machine_ratio - exact[:n])  # of the right size for the trap to be shown


# What a shop of belts can know (percent): sd of one machine, of one lot, of the difference of two machines.
BUYS = [
    (1, 1, 0.050, 0.058, None), (4, 1, 0.034, 0.029, 0.036), (4, 4, 0.028, 0.029, 0.020), (12, 1, 0.029, 0.017, 0.036),
    (12, 6, 0.018, 0.017, 0.017),
]  # fmt: skip


@pytest.mark.parametrize(("machines", "lots", "machine", "lot", "difference"), BUYS)
def test_what_more_machines_and_lots_buy(machines, lots, machine, lot, difference):
    """Common practice, no source: the trade's own table, recomputed by a dense solver for its notes."""
    split = split_shop(grid(machines, lots), priors(machines, lots))
    assert 100 * split.u_machine_ratio == pytest.approx(machine, abs=6e-4)
    assert 100 * split.u_lot_ratio == pytest.approx(lot, abs=6e-4)
    if difference is not None:
        assert 100 * split.machine_difference(0, 1)[1] == pytest.approx(difference, abs=6e-4)


def test_belts_of_one_batch_limit_the_levels_and_not_the_differences():
    split = split_shop(grid(12, 6), priors(12, 6, common=0.0003))
    assert 100 * split.u_machine_ratio == pytest.approx(0.0345, abs=1e-3)
    assert 100 * split.u_lot_ratio == pytest.approx(0.0345, abs=1e-3)
    assert 100 * split.machine_difference(0, 1)[1] == pytest.approx(0.017, abs=6e-4)


def test_a_shop_of_two_machines_and_two_lots():
    """Common practice, no source: percent read -0.20, -0.60 on one machine, -0.26, -0.66 on the other."""
    y = np.array([-0.20, -0.60, -0.26, -0.66]) / 100
    seen = Seen(np.array([0, 0, 1, 1]), np.array([0, 1, 0, 1]), np.expm1(y), SD * np.exp(y))
    prior = Priors(np.full(2, TAU), np.array([-0.0025, -0.0065]), np.full(2, SHRINK), 0.0)
    split = split_shop(seen, prior)
    assert 100 * split.machine_ratio == pytest.approx([0.0255, -0.0254], abs=1e-4)
    assert 100 * split.u_machine_ratio == pytest.approx(0.038, abs=5e-4)
    assert 100 * split.lot_ratio == pytest.approx([-0.2301, -0.6301], abs=1e-4)
    assert 100 * split.u_lot_ratio == pytest.approx(0.041, abs=5e-4)


def test_one_machine_and_one_lot_book_the_error_to_the_filament():
    """Common practice, no source: by a belt's prior 97 to 99 % and more of it is the filament's."""
    seen = Seen(np.array([0]), np.array([0]), np.array([-0.0031]), np.array([SD]))
    split = split_shop(seen, Priors(np.array([TAU]), np.array([0.0]), np.array([SHRINK]), 0.0))
    assert 0.97 < split.lot_ratio[0] / math.log1p(-0.0031) < 0.999
    assert split.machine_by_prior.all() and not split.lot_by_prior.any()


def test_what_was_never_printed_keeps_its_prior():
    split = split_shop(grid(2, 1), priors(3, 2, common=COMMON_U_RATIO, lot=-0.004))
    assert split.lot_ratio[1] == pytest.approx(-0.004) and split.u_lot_ratio[1] == pytest.approx(SHRINK)
    assert split.machine_by_prior.tolist()[2] and split.lot_by_prior.tolist() == [False, True]
    assert split.machine_prior_u_ratio[2] == pytest.approx(math.hypot(TAU, COMMON_U_RATIO))


def test_a_travel_gives_the_level_that_prints_cannot():
    """A dial or a drawn line holds no filament: after it, shrinkage is known as well as the travel."""
    with_travel = Seen(
        np.append(grid(4, 4).machine, 0), np.append(grid(4, 4).lot, NO_LOT), np.zeros(17), np.append([SD] * 16, 5e-5)
    )
    before, after = (split_shop(s, priors(4, 4, common=COMMON_U_RATIO)) for s in (grid(4, 4), with_travel))
    assert after.u_machine_ratio[0] < 5.1e-5 and after.u_lot_ratio[0] < 0.72 * before.u_lot_ratio[0]


def test_planted_truths_lie_in_their_intervals_at_the_nominal_rate():
    """12 machines, 8 lots, drawn from the priors anew each time: 95 % of 2000 x 20 intervals."""
    rng, inside, count = np.random.default_rng(12), 0, 0
    for _ in range(2000):
        seen, prior, m, f = random_shop(rng, 12, 8, 30, travels=1)
        split = split_shop(seen, prior)
        off = np.append(split.machine_ratio - m, split.lot_ratio - f)
        inside += int(np.sum(np.abs(off) < 1.96 * np.append(split.u_machine_ratio, split.u_lot_ratio)))
        count += off.size
    assert 0.94 < inside / count < 0.96


def at(seen, **changed):
    fields = {name: getattr(seen, name).copy() for name in ("machine", "lot", "scale_ratio", "u_ratio")}
    for name, value in changed.items():
        fields[name][1] = value
    return Seen(**fields)


@pytest.mark.parametrize(
    ("changed", "field", "words"),
    [
        ({"machine": 2}, "machine", "Trial 2 cannot be used: Its machine"),
        ({"lot": 5}, "lot", "lot is not in the list"),
        ({"lot": -2}, "lot", "lot is not in the list"),
        ({"scale_ratio": -1.0}, "scale_ratio", "above −100 %"),
        ({"scale_ratio": math.nan}, "scale_ratio", "above −100 %"),
        ({"u_ratio": 0.0}, "u_ratio", "not above zero"),
    ],
)
def test_a_trial_that_cannot_be_is_named(changed, field, words):
    with pytest.raises(InputError, match=words) as told:
        split_shop(at(grid(2, 2), **changed), priors(2, 2))
    assert (told.value.field, told.value.row) == (field, 1)


@pytest.mark.parametrize(
    "prior",
    [
        Priors(np.array([0.0, TAU]), np.zeros(2), np.full(2, SHRINK)),
        Priors(np.full(2, TAU), np.zeros(2), np.array([math.inf, SHRINK])),
        Priors(np.full(2, TAU), np.zeros(2), np.full(2, SHRINK), -1.0),
    ],
)
def test_a_prior_is_above_zero(prior):
    with pytest.raises(InputError, match="above zero; give one") as told:
        split_shop(grid(2, 2), prior)
    assert told.value.field == "prior"
