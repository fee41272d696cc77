"""Machines and lots of a large shop told apart, beside scipy's sparse solvers of the same equations.

Ours gives every effect with its posterior standard deviation, and the covariance of any two. lsmr and conjugate
gradients give the effects alone; the sparse factorisation gives the standard deviations too.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

import numpy as np

from core.part_size.shop_split import Priors, Seen, split_shop
from tests.benchmarks.sidebyside import Contest, Way

TITLE = "Shop split"


def contests(quick: bool) -> Iterator[Contest]:
    """Both designs; the effects of machines are compared in shares of their own standard deviation."""
    size, trials = (30, 600) if quick else (1000, 200_000)
    for key, name, design in (
        ("scattered", "any lot on any machine", scattered),
        ("chained", "two lots a machine, a chain", chained),
    ):
        rng = np.random.default_rng(1)
        seen, prior = shop(*design(rng, size, trials), rng, size)
        matrix, right = equations(seen, prior)
        yield Contest(
            key,
            f"{size} machines, {size} lots, {trials} trials: {name}",
            Way("split_shop, effects and every sd", partial(split_shop, seen, prior)),
            (
                Way("scipy lsmr, effects alone", partial(by_lsmr, matrix, right), effects_apart),
                Way("scipy conjugate gradients, effects alone", partial(by_cg, matrix, right), effects_apart),
                Way("scipy sparse LU, effects and every sd", partial(by_lu, matrix, right), all_apart),
            ),
            (1e-5, "standard deviations"),
            rounds=5,
        )


def effects_apart(split, effects: np.ndarray) -> float:
    return float(np.abs(effects[: split.machine_ratio.size] - split.machine_ratio).max() / split.u_machine_ratio.min())


def all_apart(split, answer: tuple[np.ndarray, np.ndarray]) -> float:
    effects, sd = answer
    machines = split.machine_ratio.size
    of_sd = np.abs(sd[:machines] / split.u_machine_ratio - 1.0).max()
    return max(effects_apart(split, effects), float(of_sd))


def by_lsmr(matrix, right: np.ndarray) -> np.ndarray:
    from scipy.sparse.linalg import lsmr

    return lsmr(matrix, right, atol=1e-12, btol=1e-12, maxiter=20_000)[0]


def by_cg(matrix, right: np.ndarray) -> np.ndarray:
    import scipy.sparse as sp
    from scipy.sparse.linalg import cg

    normal = (matrix.T @ matrix).tocsr()
    return cg(normal, matrix.T @ right, rtol=1e-12, maxiter=20_000, M=sp.diags(1.0 / normal.diagonal()))[0]


def by_lu(matrix, right: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    from scipy.sparse.linalg import splu

    normal = (matrix.T @ matrix).tocsc()
    solved = splu(normal)
    inverse = solved.solve(np.eye(normal.shape[0]))
    return solved.solve(matrix.T @ right), np.sqrt(np.diag(inverse))


def scattered(rng: np.random.Generator, size: int, trials: int) -> tuple[np.ndarray, np.ndarray]:
    """Any lot on any machine."""
    return rng.integers(0, size, trials), rng.integers(0, size, trials)


def chained(rng: np.random.Generator, size: int, trials: int) -> tuple[np.ndarray, np.ndarray]:
    """Each machine prints two lots only: where alternating updates seem to have settled and have not."""
    machine = rng.integers(0, size, trials)
    return machine, (machine + rng.integers(0, 2, trials)) % size


def shop(machine: np.ndarray, lot: np.ndarray, rng: np.random.Generator, size: int) -> tuple[Seen, Priors]:
    u = np.full(machine.size, 3e-4)
    truth = rng.normal(0, 5e-4, size)[machine] + rng.normal(-3e-3, 3e-3, size)[lot]
    log_ratio = truth + u * rng.normal(size=machine.size)
    prior = Priors(np.full(size, 5e-4), np.full(size, -3e-3), np.full(size, 3e-3), 3e-4)
    return Seen(machine, lot, np.expm1(log_ratio), u), prior


def equations(seen: Seen, prior: Priors):
    """The same problem as sparse rows: trials, drives about what they share, lots about their material."""
    import scipy.sparse as sp

    M, F, n = prior.machine_u_ratio.size, prior.lot_u_ratio.size, seen.machine.size
    own, of_lot = 1 / prior.machine_u_ratio, 1 / prior.lot_u_ratio
    weight = 1 / seen.u_log_ratio
    blocks = (
        (np.arange(n), seen.machine, weight),
        (np.arange(n), M + seen.lot, weight),
        (n + np.arange(M), np.arange(M), own),
        (n + np.arange(M), np.full(M, M + F), -own),
        (n + M + np.arange(F), M + np.arange(F), of_lot),
        (np.array([n + M + F]), np.array([M + F]), np.array([1 / prior.common_u_ratio])),
    )
    rows, columns, values = (np.concatenate(part) for part in zip(*blocks, strict=True))
    right = np.concatenate([weight * seen.log_ratio, np.zeros(M), of_lot * prior.lot_ratio, [0.0]])
    return sp.csr_matrix((values, (rows, columns)), shape=(n + M + F + 1, M + F + 1)), right
