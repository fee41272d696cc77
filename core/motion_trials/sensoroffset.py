"""The best temperature of a lot on a machine, from ladders of other lots and machines: sensors read differently.

    T_mf = T_f + b_m + r_mf        predicted T = x^T beta,   u^2 = x^T (X^T W X)^- x + s^2,   W = 1/(u_mf^2 + s^2)

Symbols: T_mf best setting of lot f on machine m by its ladders, T_f what the lot itself wants, b_m offset of the
machine's sensor, beta all T_f and b_m, x the row of the machine and lot that is asked for, X those of the ladders, r_mf
what the sum leaves over, with standard uncertainty s. A constant added to every machine and taken off every lot changes
no sum: only sums within machines and lots that ladders link can be predicted, those with x in the row space of X.

Where more ladders than needed agree worse than their uncertainties allow (chi squared, 95 %), these are widened by
Birge's factor.

Reference: weighted least squares in the two-way layout, estimable functions and connected data: S. Searle, Linear
Models (1971), 5.4 and 7.4 (from memory); Birge, Phys. Rev. 40 (1932) 207. To 3 K: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.reach import within_reach
from core.quantity import Estimate
from core.words import tr

Floats = NDArray[np.float64]
Cell = tuple[int, int]  # machine and lot

METHOD = "sensoroffset 1"
U_RULE_K = 3.0  # to which the sum holds from machine to machine, for 95 % (common practice, no source)


@dataclass(frozen=True, slots=True)
class BestTemperature:
    """What one ladder gave: machine, lot, temperature with its standard uncertainty, and the trial."""

    machine: int
    lot: int
    value_c: float
    u_k: float
    trial_id: int = 0


@dataclass(frozen=True, slots=True)
class Predicted:
    """A predicted temperature.

    Attributes:
        estimate: `ladder_temperature` in °C, with all that is not known.
        trial_ids: the ladders it rests on, oldest first.
        chi_squared: how badly the ladders agree; `dof` of them more than needed.
    """

    estimate: Estimate
    trial_ids: tuple[int, ...]
    chi_squared: float
    dof: int


@dataclass(frozen=True, slots=True)
class NotLinked:
    """Why nothing can be predicted.

    Attributes:
        machine_known: whether the machine has a ladder, of another lot.
        lot_known: whether the lot has one, on another machine.
        partner_lots: lots with a ladder on this machine's island: one of them on a machine of the lot links the two.
        partner_machines: machines on the lot's island.
    """

    machine_known: bool
    lot_known: bool
    partner_lots: tuple[int, ...] = ()
    partner_machines: tuple[int, ...] = ()


@within_reach
def predict_temperature(ladders: Sequence[BestTemperature], machine: int, lot: int) -> Predicted | NotLinked:
    """Return the best temperature of a lot on a machine as all other ladders foretell it.

    Args:
        ladders: of the shop, oldest first; those of this lot on this machine itself do not count.
        machine: asked for.
        lot: asked for.

    Raises:
        InputError: field `value_c` or `u_k`, with the row, for a ladder that is no number or has no uncertainty.
    """
    _check(ladders)
    others = [one for one in ladders if (one.machine, one.lot) != (machine, lot)]
    machines = sorted({one.machine for one in others} | {machine})
    lots = sorted({one.lot for one in others} | {lot})
    cells, y, w = _cells(others)
    X = np.array([_row(cell, machines, lots) for cell in cells]).reshape(len(cells), len(machines) + len(lots))
    x = _row((machine, lot), machines, lots)
    used = _linked(cells, machine)
    if lot not in {cell[1] for cell in used}:
        return _not_linked(cells, machine, lot)
    # One lot of each island counts as zero: what can be told is the same whichever, and the rest has full rank.
    held = {len(machines) + lots.index(lot_of) for lot_of in _one_of_each_island(cells)}
    counted = [column for column in range(x.size) if column not in held]
    X, x = X[:, counted], x[counted]
    weighted = X.T * w
    normal = weighted @ X
    beta, spread = np.linalg.solve(normal, np.column_stack((weighted @ y, x))).T
    left = y - X @ beta
    dof = len(cells) - x.size
    chi_squared = float(w @ left**2)
    wider = chi_squared / dof if chi_squared > _at_most(dof) else 1.0
    u = math.sqrt(wider * (float(x @ spread) + (U_RULE_K / 2.0) ** 2))
    trials = tuple(one.trial_id for one in others if (one.machine, one.lot) in used)
    told = Estimate("ladder_temperature", float(x @ beta), u, math.inf, "°C")
    return Predicted(told, trials, chi_squared, dof)


def _at_most(dof: int) -> float:
    """Return what chi squared does not pass in 95 % of cases; infinite without a ladder more than needed."""
    from scipy.special import chdtri

    return float(chdtri(dof, 0.05)) if dof else math.inf


def _check(ladders: Sequence[BestTemperature]) -> None:
    for row, one in enumerate(ladders):
        if not math.isfinite(one.value_c):
            raise InputError("value_c", tr("Row {row}: a temperature is missing or not a number.", row=row + 1), row)
        if not 0 < one.u_k < math.inf:
            raise InputError("u_k", tr("Row {row}: a temperature without uncertainty; type it.", row=row + 1), row)


def _cells(ladders: Sequence[BestTemperature]) -> tuple[list[Cell], Floats, Floats]:
    """Return machine and lot of each pair tried, the mean of its ladders and its weight: their r is the same."""
    of_cell: dict[Cell, list[BestTemperature]] = {}
    for one in ladders:
        of_cell.setdefault((one.machine, one.lot), []).append(one)
    cells = sorted(of_cell)
    y, w = np.empty(len(cells)), np.empty(len(cells))
    for number, cell in enumerate(cells):
        own = of_cell[cell]
        weights = np.array([one.u_k for one in own]) ** -2.0
        y[number] = float(weights @ np.array([one.value_c for one in own]) / weights.sum())
        w[number] = 1.0 / (1.0 / weights.sum() + (U_RULE_K / 2.0) ** 2)
    return cells, y, w


def _row(cell: Cell, machines: Sequence[int], lots: Sequence[int]) -> Floats:
    row = np.zeros(len(machines) + len(lots))
    row[machines.index(cell[0])] = 1.0
    row[len(machines) + lots.index(cell[1])] = 1.0
    return row


def _linked(cells: Sequence[Cell], machine: int | None = None, lot: int | None = None) -> set[Cell]:
    """Return the pairs on the island of a machine or of a lot."""
    machines, lots = {machine}, {lot}
    while True:
        found = {cell for cell in cells if cell[0] in machines or cell[1] in lots}
        grown = machines | {cell[0] for cell in found}, lots | {cell[1] for cell in found}
        if grown == (machines, lots):
            return found
        machines, lots = grown


def _one_of_each_island(cells: Sequence[Cell]) -> set[int]:
    """Return one lot of each island."""
    held, left = set(), list(cells)
    while left:
        held.add(left[0][1])
        island = _linked(left, machine=left[0][0])
        left = [cell for cell in left if cell not in island]
    return held


def _not_linked(cells: Sequence[Cell], machine: int, lot: int) -> NotLinked:
    of_machine, of_lot = _linked(cells, machine=machine), _linked(cells, lot=lot)
    return NotLinked(
        machine_known=bool(of_machine),
        lot_known=bool(of_lot),
        partner_lots=tuple(sorted({cell[1] for cell in of_machine})),
        partner_machines=tuple(sorted({cell[0] for cell in of_lot})),
    )
