"""Machines and lots of a large shop told apart, held against scipy's lsmr: `python -m tests.benchmarks.shopsplit`.

Ours gives every effect with its posterior standard deviation, lsmr the effects alone; both solve the same equations,
with the same weights and priors. They take turns, so that a slow minute is slow for both. Printed, never asserted.
"""

from __future__ import annotations

import statistics
import time

import numpy as np
import scipy.sparse as sp
from scipy.sparse.linalg import lsmr

from core.part_size.shop_split import Priors, Seen, split_shop

MACHINES = LOTS = 1000
TRIALS = 200_000
ROUNDS = 15
TARGET = 5.0


def scattered(rng: np.random.Generator) -> tuple[np.ndarray, np.ndarray]:
    """Any lot on any machine."""
    return rng.integers(0, MACHINES, TRIALS), rng.integers(0, LOTS, TRIALS)


def chained(rng: np.random.Generator) -> tuple[np.ndarray, np.ndarray]:
    """Each machine prints two lots only: where alternating updates seem to have settled and have not."""
    machine = rng.integers(0, MACHINES, TRIALS)
    return machine, (machine + rng.integers(0, 2, TRIALS)) % LOTS


def shop(machine: np.ndarray, lot: np.ndarray, rng: np.random.Generator) -> tuple[Seen, Priors]:
    u = np.full(TRIALS, 3e-4)
    truth = rng.normal(0, 5e-4, MACHINES)[machine] + rng.normal(-3e-3, 3e-3, LOTS)[lot]
    log_ratio = truth + u * rng.normal(size=TRIALS)
    prior = Priors(np.full(MACHINES, 5e-4), np.full(LOTS, -3e-3), np.full(LOTS, 3e-3), 3e-4)
    return Seen(machine, lot, np.expm1(log_ratio), u), prior


def equations(seen: Seen, prior: Priors) -> tuple[sp.csr_matrix, np.ndarray]:
    """The same problem as rows for lsmr: trials, drives about what they share, lots about their material."""
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


def main() -> None:
    for design in (scattered, chained):
        rng = np.random.default_rng(1)
        seen, prior = shop(*design(rng), rng)
        matrix, right = equations(seen, prior)
        ours, peers = [], []
        for _ in range(ROUNDS):
            start = time.perf_counter()
            split = split_shop(seen, prior)
            middle = time.perf_counter()
            effects = lsmr(matrix, right, atol=1e-12, btol=1e-12, maxiter=20_000)[0]
            ours.append(1000 * (middle - start))
            peers.append(1000 * (time.perf_counter() - middle))
        apart = np.abs(effects[:MACHINES] - split.machine_ratio).max() / split.u_machine_ratio.min()
        ratio = statistics.median(ours) / statistics.median(peers)
        print(f"{design.__name__}: {MACHINES} machines, {LOTS} lots, {TRIALS} trials")
        print(f"  effects and every posterior sd  {statistics.median(ours):8.1f} ms  (best {min(ours):.1f})")
        print(f"  lsmr, effects alone             {statistics.median(peers):8.1f} ms  (best {min(peers):.1f})")
        verdict = "within" if ratio <= TARGET else "ABOVE"
        print(f"  ratio {ratio:.2f}: {verdict} {TARGET}; apart by {apart:.1e} u at most")


if __name__ == "__main__":
    main()
