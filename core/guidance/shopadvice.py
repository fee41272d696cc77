"""The verdict on a whole shop: allowances of a lot, what a machine needs, islands, trials that disagree, what to print.

Reference: the order is common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from core.errors import InputError
from core.guidance.known import Known, known_of
from core.guidance.sentences import axes_differ, undecided
from core.guidance.splitadvice import NO_MATTER_RATIO, lot_advice, machine_advice
from core.guidance.splitpair import SplitPair
from core.guidance.splitshop import AxisSplit, Shop
from core.guidance.verdict import Advice, Setting
from core.part_size.shop_links import NextPrint
from core.part_size.shop_split import METHOD, NO_LOT
from core.quantity import Estimate, rounded_pair, value_text
from core.records.rows import Machine, Motion
from core.words import Words, tr


@dataclass(frozen=True, slots=True, eq=False)
class ShopJudgement:
    """The shop told apart, the picked machine and lot in it, and what follows.

    Attributes:
        pairs: by axis, of the picked machine and lot; empty where either is not picked or not on record.
        changes: settings that the advice gives, name and factor: `shrink_allowance_x`, `axis_scale_x`.
    """

    shop: Shop
    pairs: tuple[SplitPair, ...]
    advice: tuple[Advice, ...]
    changes: tuple[tuple[str, float], ...] = ()

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return machine_scale_ and shrinkage_ of each axis of the picked machine and lot."""
        return tuple(e for pair in self.pairs for e in (pair.machine_scale, pair.shrinkage))

    def settings(self) -> tuple[tuple[str, float], ...]:
        """Return what is in force once the verdict is kept: name and factor."""
        return self.changes

    def trial_ids(self) -> tuple[int, ...]:
        """Return the kept trials that the split rests on."""
        return tuple(sorted({trial for axis in self.shop.axes.values() for trial in axis.trial_ids}))


def judge_shop(
    shop: Shop, machine_id: int | None, lot_id: int | None, tolerance: str | float = "m"
) -> ShopJudgement:
    """Say what the shop's trials mean for one machine and lot, and what to print next.

    Args:
        shop: as `read_shop` gives it.
        machine_id: of the picked machine, None for none.
        lot_id: of the picked lot, None for none.
        tolerance: a class, or plus-minus in mm.

    Raises:
        InputError: field `value` where no trial counts yet; `tolerance` for a class or value that there is not.
    """
    if not shop.axes:
        raise InputError(
            "value",
            tr(
                "No kept size trial names its machine and lot yet. Keep one on the page Size error for each machine "
                "and lot; two machines and two lots that share a print tell most."
            ),
        )
    machine = next((row for row in shop.machines if row.id == machine_id), None)
    pairs = tuple(p for axis in shop.axes if (p := shop.pair(axis, machine_id, lot_id)) is not None)
    found: list[Advice] = []
    changes: list[tuple[str, float]] = []
    if machine is not None:
        for advice, given in _pair_advice(pairs, known_of(machine, tolerance)):
            found.append(advice)
            changes += given
        found += _axes_differ(shop, machine)
    found += [*_only_one(shop), *_disagreeing(shop), *_islands(shop), *_next(shop)]
    return ShopJudgement(shop, pairs, tuple(found), tuple(changes))


def _pair_advice(pairs: tuple[SplitPair, ...], known: Known) -> Iterator[tuple[Advice, list[tuple[str, float]]]]:
    """Judge X and Y together, Z alone: its shrinkage and its drive are others. With each advice what it sets."""
    for axes in ("xy", "z"):
        mine = [pair for pair in pairs if pair.axis in axes]
        if mine:
            longest = min(known.travel_mm[pair.axis] for pair in mine)
            for advice in lot_advice(mine, longest, known):
                given = mine if advice.setting is Setting.SHRINK_ALLOWANCE else []
                yield advice, [(f"shrink_allowance_{pair.axis}", pair.allowance.value) for pair in given]
            for advice in machine_advice(mine, known):
                yield advice, _axis_scales(advice, mine, known)


def _axis_scales(advice: Advice, pairs: list[SplitPair], known: Known) -> list[tuple[str, float]]:
    """Return the factor of the axis an advice speaks of; on crossed belts that of both."""
    if advice.setting is not Setting.AXIS_SCALE or advice.amount is None:
        return []
    both = known.motion is Motion.CROSSED_BELT
    given = [pair for pair in pairs if both or math.isclose(math.exp(-pair.machine_ratio), advice.amount)]
    return [(f"axis_scale_{pair.axis}", advice.amount) for pair in given]


def _axes_differ(shop: Shop, machine: Machine) -> Iterator[Advice]:
    """Say where X and Y of a machine differ over all its prints: free of shrinkage, whatever the lots."""
    contrast = shop.contrasts.get(shop.machines.index(machine))
    if contrast is None:
        return
    difference = Estimate("scale_difference", contrast.value, contrast.u, math.inf, "1")
    if not difference.significant or abs(difference.value) <= NO_MATTER_RATIO:
        return
    because = tr(
        "X less Y of {machine} is {value} (prints: {prints}); shrinkage is alike in both, so this is the machine.",
        machine=machine.name,
        value=value_text(difference),
        prints=contrast.prints,
    )
    yield axes_differ(difference, because, machine.motion)


def _only_one(shop: Shop) -> Iterator[Advice]:
    found = _widest(shop)
    seen = found.split.seen
    if len(set(seen.machine.tolist())) > 1 or len(set(seen.lot.tolist())) > 1 or NO_LOT in seen.lot:
        return
    machine, lot = int(seen.machine[0]), int(seen.lot[0])
    whole = float(found.split.machine_ratio[machine] + found.split.lot_ratio[lot])
    share = abs(float(found.split.lot_ratio[lot])) / max(abs(whole), 1e-9)
    yield undecided(
        tr("Print this file with the same lot on a second machine to make sure."),
        tr(
            "Only one machine and one lot along {axis}: {percent:+.2f} % may belong to either. By the drive's own "
            "tolerance about {share:.0f} % of it is booked to the filament.",
            axis=found.axis.upper(),
            percent=100 * whole,
            share=min(100 * share, 100.0),
        ),
    )


def _disagreeing(shop: Shop) -> Iterator[Advice]:
    trials = sorted({trial for found in shop.axes.values() for trial in found.flagged_trials})
    if trials:
        yield undecided(
            tr("Look at this print again: warm when read, another caliper, a damp or wrong lot? Withdraw it if so."),
            tr(
                "Disagrees with what all the others say of its machine and lot: trial № {trials}; it still counts.",
                trials=", ".join(str(trial) for trial in trials),
            ),
        )


def _islands(shop: Shop) -> Iterator[Advice]:
    found = _widest(shop)
    for island, joining in zip(found.islands[1:], found.joining, strict=True):
        names = ", ".join(shop.machines[i].name for i in island.machines)
        yield undecided(
            tr("Print {lot} on {machine}: it joins them.", **_names(shop, joining)),
            tr("No print links {names} with the others: only the tolerance of the drives compares them.", names=names),
        )


def _next(shop: Shop) -> Iterator[Advice]:
    found = _widest(shop)
    best = found.next
    if len(found.islands) > 1:
        return
    if best is None:
        if NO_LOT not in found.split.seen.lot:
            yield undecided(
                tr("Read the travel of a machine without filament: a drawn line, or a dial against gauge blocks."),
                tr("No single print would tell much more along {axis}: what all machines share is left.",
                   axis=found.axis.upper()),
            )  # fmt: skip
        return
    of = shop.machines[best.effect].name if best.of_machine else shop.lots[best.effect].name
    _, before = rounded_pair(0.0, 196 * best.u_before_ratio)
    _, after = rounded_pair(0.0, 196 * best.u_after_ratio)
    yield undecided(
        tr("Next best print: {lot} on {machine}.", **_names(shop, best)),
        tr("It tells most: {of} along {axis} goes from ±{before} to ±{after} %.", of=of, axis=found.axis.upper(),
           before=before, after=after),
    )  # fmt: skip


def _names(shop: Shop, joining: NextPrint) -> dict[str, Words | str]:
    return {"lot": shop.lots[joining.lot].name, "machine": shop.machines[joining.machine].name}


def _widest(shop: Shop) -> AxisSplit:
    """Return the axis with most trials: islands and prints are told of that one."""
    return max(shop.axes.values(), key=lambda found: len(found.trial_ids))
