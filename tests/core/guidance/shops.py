"""A shop with planted truths, kept in a store as people would keep it. For tests only."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from core.guidance.sizetrial import SizeReadings, judge_size_trial
from core.part_size.shop_split import ShopSplit
from core.quantity import Estimate
from core.records.rows import Lot, Machine, Motion, Trial
from core.records.store import Store
from tests.core.part_size.printouts import Faults, Print

BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20}
SCREW = {"kind": "screw", "pitch_mm": 2.0, "starts": 4}
WHEEL = {"kind": "wheel", "diameter_mm": 12.0}
MATERIALS = ("PLA", "PETG", "ABS", "PLA", "PETG", "PA12", "PC", "PLA-CF")


@dataclass(frozen=True)
class Planted:
    """Machines and lots of a store, and the truth about each: ln of size over drawn size."""

    store: Store
    machines: tuple[Machine, ...]
    lots: tuple[Lot, ...]
    machine_ratio: np.ndarray
    lot_ratio: np.ndarray

    def keep(self, machine: int, lot: int | None, rng: np.random.Generator, sd_mm: float = 0.01) -> Trial:
        """Print size combs along X and Y on a machine, measure them, judge and keep the trial."""
        log = self.machine_ratio[machine] + (0.0 if lot is None else self.lot_ratio[lot])
        ratio = float(np.expm1(log + 0.0002 * rng.standard_normal()))  # piece to piece
        piece = Print("xy")
        sizes = piece.size_mm(Faults(scale=(ratio, ratio), wall_outset_mm=0.02))
        sizes = np.round(sizes + sd_mm * rng.standard_normal(sizes.size), 2)
        columns = {"nominal_mm": piece.nominal_mm.tolist(), "measured_mm": sizes.tolist(),
                   "kind": [str(k) for k in piece.kind], "axis": piece.axis, "feature": piece.feature}  # fmt: skip
        judged = judge_size_trial(SizeReadings(**columns), self.machines[machine])
        columns["excluded"] = [False] * len(piece.axis)
        return self.store.keep(
            Trial(
                "sizeerror",
                self.machines[machine].id,
                None if lot is None else self.lots[lot].id,
                readings=columns,
                conditions={"tolerance": "m", "part_temperature_c": None},
                estimates=judged.estimates(),
                method=judged.method,
            )
        )


def plant(
    store: Store, machines: int, lots: int, rng: np.random.Generator, motion: Motion = Motion.CARTESIAN
) -> Planted:
    """Put machines with belts and lots of common materials into a store, with truths drawn as the priors say."""
    from core.guidance.splitshop import lot_prior

    drives = {"x": BELT, "y": BELT, "z": SCREW}
    rows = tuple(store.add_machine(Machine(f"M{i:02}", motion, drives=drives)) for i in range(machines))
    of_lots = tuple(store.add_lot(Lot(f"L{j:02}", MATERIALS[j % len(MATERIALS)])) for j in range(lots))
    common = 0.0003 * rng.standard_normal()
    m = common + 0.0005 * rng.standard_normal(machines)
    f = np.array([np.log1p(-s) + min(u, 0.004) * rng.standard_normal() for s, u in map(lot_prior, of_lots)])
    return Planted(store, rows, of_lots, m, f)


def keep_estimate(
    store: Store, name: str, value: float, u: float, machine: int, lot: int | None, **also: float
) -> Trial:
    """Keep a trial with this estimate, and others of the same u."""
    found = [Estimate(n, v, u, 30.0, "1") for n, v in {name: value, **also}.items()]
    return store.keep(Trial("sizeerror", machine_id=machine, lot_id=lot, estimates=tuple(found)))


def joint_chi2(split: ShopSplit, machine_off: np.ndarray, lot_off: np.ndarray) -> float:
    """Return x' C^-1 x of what all effects are off by, with their whole covariance: chi-squared where C is true.

    Effects of one shop go off together (all machines up, all lots down), so counting intervals would count one chance
    many times.
    """
    root = np.vstack([split.machine_root, split.lot_root])
    C = root @ root.T + np.diag(np.concatenate([split.machine_own, split.lot_own]))
    off = np.concatenate([machine_off, lot_off])
    return float(off @ np.linalg.solve(C, off))
