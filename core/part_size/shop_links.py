"""Who printed what: islands of a shop, the print that joins two of them, the next best print, the trial that disagrees.

Two machines can be compared where a chain of shared lots leads from one to the other, or where the travel of both was
read directly. An island is a set that is linked within and not to the rest; across islands only the priors speak.

Symbols: C posterior covariance, x = m_i + f_j what a print of lot j on machine i measures, u_0 its uncertainty.

    variance of effect t after that print    C_tt - (C_tx)^2 / (C_xx + u_0^2)
    trial left out                           z = r / sqrt(u^2 - C_xx),  r its residual with it in

Reference: D. Belsley, E. Kuh and R. Welsch, Regression Diagnostics, 1980, 2.1 (deletion of one row); C. Bonferroni's
inequality for the largest of n.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from core.measuring.finite import finite_in
from core.measuring.reach import above_zero, within_reach
from core.part_size.shop_split import NO_LOT, PIECE_U_RATIO, Floats, Ints, Seen, ShopSplit, split_shop
from core.quantity import LEVEL, coverage_factor

NEXT_U_RATIO = math.hypot(0.0003, PIECE_U_RATIO)  # of one comb read with a caliper; common practice, no source
MOST_FLAGGED = 5  # where more disagree, something else is wrong than single trials
_ASIDE = 1e4  # times its uncertainty: such a trial says nothing any more
WORTH_SHARE = 0.05  # of its uncertainty that a print must take off an effect to be worth asking for


@dataclass(frozen=True, slots=True)
class Island:
    """Machines and lots, by index, that prints link with one another, and how many trials do so."""

    machines: tuple[int, ...]
    lots: tuple[int, ...]
    trials: int


@dataclass(frozen=True, slots=True)
class NextPrint:
    """A print that is worth making.

    Attributes:
        machine: index of the machine to print on.
        lot: index of the lot to print.
        of_machine: whether the effect that gains is a machine's.
        effect: its index.
        u_before_ratio: its standard uncertainty now.
        u_after_ratio: and after the print.
    """

    machine: int
    lot: int
    of_machine: bool
    effect: int
    u_before_ratio: float
    u_after_ratio: float


def islands(seen: Seen, machine_count: int, lot_count: int) -> tuple[Island, ...]:
    """Return the sets of machines and lots that trials link, that with most trials first; unused ones are in none."""
    from scipy.sparse import coo_array
    from scipy.sparse.csgraph import connected_components

    travel = machine_count + lot_count  # a directly read travel links a machine to the millimetre itself
    other = np.where(seen.lot == NO_LOT, travel, machine_count + seen.lot)
    links = coo_array((np.ones(other.size), (seen.machine, other)), shape=(travel + 1, travel + 1))
    _, label = connected_components(links, directed=False)
    trials = np.bincount(label[seen.machine], minlength=label.max() + 1)
    found = [
        Island(
            tuple(np.flatnonzero(label[:machine_count] == island).tolist()),
            tuple(np.flatnonzero(label[machine_count:travel] == island).tolist()),
            int(trials[island]),
        )
        for island in np.flatnonzero(trials)
    ]
    return tuple(sorted(found, key=lambda island: -island.trials))


def joining_prints(split: ShopSplit, apart: tuple[Island, ...]) -> tuple[NextPrint, ...]:
    """Return for each island but the first the one print that joins it to the first and tells most.

    The effect named is the lot printed; its gain is the least of the reasons for the print.
    """
    covariance = _covariance(split) if len(apart) > 1 else None
    return tuple(_joining(split, covariance, apart[0], island) for island in apart[1:] if covariance is not None)


def _joining(split: ShopSplit, covariance: Floats, first: Island, other: Island) -> NextPrint:
    cells = [(i, j) for a, b in ((first, other), (other, first)) for i in a.machines for j in b.lots]
    machines = split.machine_ratio.size
    gains = []
    for i, j in cells:
        of_print = covariance[:, i] + covariance[:, machines + j]
        gains.append(float(of_print @ of_print / (of_print[i] + of_print[machines + j] + NEXT_U_RATIO**2)))
    machine, lot = cells[int(np.argmax(gains))]
    return _print(split, covariance, (machine, lot), machines + lot)


def next_print(split: ShopSplit) -> NextPrint | None:
    """Return the print that takes most off the worst uncertainty; None where no print takes off much.

    Effects that no print improves (the level that all machines share, say) are passed over for the next worst.
    """
    covariance = _covariance(split)
    machines = split.machine_ratio.size
    variance = np.diag(covariance)
    together = covariance[:machines, machines:] * 2 + variance[:machines, None] + variance[None, machines:]
    for effect in np.argsort(-variance).tolist():
        of_print = covariance[effect, :machines, None] + covariance[effect, None, machines:]
        gain = of_print**2 / (together + NEXT_U_RATIO**2)
        best = np.unravel_index(int(np.argmax(gain)), gain.shape)
        if gain[best] > (1.0 - (1.0 - WORTH_SHARE) ** 2) * variance[effect]:
            return _print(split, covariance, (int(best[0]), int(best[1])), effect)
    return None


def _print(split: ShopSplit, covariance: Floats, cell: tuple[int, int], effect: int) -> NextPrint:
    machines = split.machine_ratio.size
    i, j = cell[0], machines + cell[1]
    of_print = float(covariance[effect, i] + covariance[effect, j])
    together = float(covariance[i, i] + covariance[j, j] + 2 * covariance[i, j])
    before = float(covariance[effect, effect])
    after = before - of_print**2 / (together + NEXT_U_RATIO**2)
    of_machine = effect < machines
    index = effect if of_machine else effect - machines
    return NextPrint(*cell, of_machine, index, math.sqrt(before), math.sqrt(after))


def _covariance(split: ShopSplit) -> Floats:
    root = np.vstack([split.machine_root, split.lot_root])
    covariance = np.asarray(root @ root.T)
    covariance[np.diag_indices_from(covariance)] += np.concatenate([split.machine_own, split.lot_own])
    return covariance


def disagreeing(split: ShopSplit, level: float = LEVEL) -> NDArray[np.bool_]:
    """Return (n,) which trials disagree with what all the others say; flagged, never dropped.

    The worst is set aside before the next is judged, or it would drag sound ones along. The limit holds for all trials
    together: where all agree, one shop in twenty has a trial flagged.
    """
    flagged = np.zeros(split.seen.machine.size, dtype=bool)
    if flagged.size == 0:
        return flagged
    limit = coverage_factor(math.inf, 1.0 - (1.0 - level) / flagged.size)
    for _ in range(MOST_FLAGGED):
        z = np.where(flagged, 0.0, np.abs(deleted_residual(split)))
        worst = int(np.argmax(z))
        if z[worst] <= limit:
            break
        flagged[worst] = True
        seen = split.seen
        split = split_shop(replace(seen, u_ratio=np.where(flagged, _ASIDE, 1.0) * seen.u_ratio), split.prior)
    return flagged


def deleted_residual(split: ShopSplit) -> Floats:
    """Return (n,) how far each trial is from what the others predict, in standard uncertainties of that distance."""
    spare = np.maximum(split.seen.u_log_ratio**2 - split.fitted_variance(), 1e-12 * split.seen.u_log_ratio**2)
    return np.asarray(split.residual() / np.sqrt(spare))


def links_of(seen: Seen) -> Iterator[tuple[int, int, int]]:
    """Yield machine, lot and the number of their prints, for the graph of who printed what."""
    printed = seen.lot != NO_LOT
    pairs, count = np.unique(np.column_stack([seen.machine[printed], seen.lot[printed]]), axis=0, return_counts=True)
    for (machine, lot), times in zip(pairs.tolist(), count.tolist(), strict=True):
        yield machine, lot, times


@dataclass(frozen=True, slots=True)
class Contrast:
    """Of one machine: ln(1 + s_x) - ln(1 + s_y) over its prints, with u and the number of prints."""

    value: float
    u: float
    prints: int


@within_reach
@above_zero("u_ratio")
@finite_in("difference_ratio")
def axis_contrasts(machine: Ints, difference_ratio: Floats, u_ratio: Floats) -> dict[int, Contrast]:
    """Return X less Y of each machine, weighted over its prints: shrinkage is alike in both, so this is the machine's.

    Args:
        machine: (n,) index of the machine of each print that has both axes.
        difference_ratio: (n,) ln(1 + s_x) - ln(1 + s_y).
        u_ratio: (n,) its standard uncertainty.

    Where prints of one machine scatter more than their uncertainties say, u is widened by as much (R. Birge, Phys. Rev.
    40 (1932) 207).

    Raises:
        InputError: field `u_ratio`, not above zero.
    """
    found = {}
    for index in np.unique(machine).tolist():
        mine = machine == index
        weight = 1.0 / u_ratio[mine] ** 2
        mean = float(np.sum(weight * difference_ratio[mine]) / weight.sum())
        spare = int(mine.sum()) - 1
        ratio = float(np.sum(weight * (difference_ratio[mine] - mean) ** 2)) / spare if spare else 1.0
        found[index] = Contrast(mean, math.sqrt(max(ratio, 1.0) / weight.sum()), spare + 1)
    return found
