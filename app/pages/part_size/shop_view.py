"""The picture and the table of a shop told apart, and its card."""

from __future__ import annotations

import numpy as np

from app.pages.trialcard import advice_card
from app.widgets.fields import local_text
from app.widgets.resulttext import CardData
from app.widgets.shopview import Share, ShopData
from app.words import Said, shown
from core.guidance.shopadvice import ShopJudgement
from core.guidance.splitshop import AxisSplit, Shop
from core.guidance.verdict import Setting
from core.part_size.shop_links import links_of
from core.part_size.shop_split import NO_LOT
from core.quantity import coverage_factor, rounded_pair
from core.words import Words, side_by_side, tr

_NOTE = tr(
    "Bars: 95 %. Pale bar: expected before any print. Dotted ring: too few prints to know better. Lines: who printed "
    "what."
)
_MOST_NAMED = 12  # trials of one reason
_K = coverage_factor(float("inf"))


def shop_picture(shop: Shop, found: AxisSplit, picked: tuple[int | None, int | None]) -> ShopData:
    """Return machines, lots and prints of one axis; `picked` are the ids of machine and lot picked in the window."""
    split = found.split
    islands = {("m", i): n for n, island in enumerate(found.islands) for i in island.machines}
    islands |= {("l", j): n for n, island in enumerate(found.islands) for j in island.lots}
    prior_u, by_prior, lot_by_prior = split.machine_prior_u_ratio, split.machine_by_prior, split.lot_by_prior
    machines = [
        _share(row.name, np.expm1(split.machine_ratio[i]), split.u_machine_ratio[i], 0.0, prior_u[i],
               bool(by_prior[i]), islands.get(("m", i)), row.id == picked[0])
        for i, row in enumerate(shop.machines)
    ]  # fmt: skip
    lots = [
        _share(row.name, -np.expm1(split.lot_ratio[j]), split.u_lot_ratio[j], -np.expm1(split.prior.lot_ratio[j]),
               split.prior.lot_u_ratio[j], bool(lot_by_prior[j]), islands.get(("l", j)), row.id == picked[1])
        for j, row in enumerate(shop.lots)
    ]  # fmt: skip
    count, apart = len(found.trial_ids), len(found.islands)
    says = tr("Axis {axis}. Trials: {count}; machines: {machines}; lots: {lots}.", count=count,
              machines=len(machines), lots=len(lots), axis=found.axis.upper())  # fmt: skip
    if apart > 1:
        says = tr("{says} They fall into {islands} islands that share no print.", says=says, islands=apart)
    for share in (*machines, *lots):
        if share.picked:
            says = tr("{says} {share}.", says=says, share=Said(share.says))
    return ShopData(
        machines=machines,
        lots=lots,
        links=tuple(links_of(split.seen)),
        machine_label=shown(tr("machine's share {axis}, %", axis=found.axis.upper())),
        lot_label=shown(tr("shrinkage {axis}, %", axis=found.axis.upper())),
        summary=shown(says),
        note=shown(_NOTE),
    )  # fmt: skip


def _share(
    name: str, value: float, u: float, prior: float, prior_u: float, by_prior: bool, island: int | None, picked: bool
) -> Share:
    text = _percent(value, u)
    says = tr("{name}: {share} %", name=name, share=text)
    if by_prior:
        says = tr("{says}, mostly what was known before any print", says=says)
    if island:
        says = tr("{says}; island {number}, not linked with the first", says=says, number=island + 1)
    return Share(
        name, 100 * value, 100 * _K * u, 100 * prior, 100 * _K * prior_u, by_prior, island, picked, shown(says)
    )


def _percent(value: float, u: float) -> str:
    number, U = rounded_pair(100 * value, 100 * _K * u)
    return local_text(f"{number} ± {U}")


def shop_rows(shop: Shop, found: AxisSplit) -> list[tuple[str, str, str, str, str]]:
    """Return the table: name, what it is, share with U in percent, X less Y, prints."""
    split, seen = found.split, found.split.seen
    of_machine = np.bincount(seen.machine, minlength=len(shop.machines))
    of_lot = np.bincount(seen.lot[seen.lot != NO_LOT], minlength=len(shop.lots))
    rows = []
    for i, machine in enumerate(shop.machines):
        contrast = shop.contrasts.get(i)
        differs = _percent(contrast.value, contrast.u) if contrast else ""
        text = _percent(np.expm1(split.machine_ratio[i]), split.u_machine_ratio[i])
        rows.append((machine.name, shown(tr("machine")), text, differs, str(of_machine[i])))
    for j, lot in enumerate(shop.lots):
        text = _percent(-np.expm1(split.lot_ratio[j]), split.u_lot_ratio[j]).removeprefix("+")
        rows.append((lot.name, lot.material or shown(tr("lot")), text, "", str(of_lot[j])))
    return rows


def shop_card(judgement: ShopJudgement, why_not: str) -> CardData:
    """Return the card."""
    mind = []
    if any(pair.by_prior for pair in judgement.pairs):
        mind.append(tr("The machine's share is mostly its drive's tolerance: the prints say little of it yet."))
    if left := not_counted(judgement.shop):
        mind.append(left)
    proved = [a for a in judgement.advice if a.setting is not Setting.UNDECIDED] or judgement.advice
    untouched = [shown(a.do_not_touch) for a in proved]
    return advice_card(judgement.advice, judgement.estimates(), why_not, mind=mind, untouched=untouched)


def not_counted(shop: Shop) -> Words | None:
    """Say which trials do not count, each once, by the reason; None where all do."""
    reasons: dict[int, Words] = {}
    for axis in shop.axes.values():
        reasons = {**axis.left_out, **reasons}
    trials: dict[Words, list[str]] = {}
    for number, reason in sorted(reasons.items()):
        trials.setdefault(reason, []).append(str(number))
    if not trials:
        return None
    groups = (
        tr("№ {numbers}: {reason}", numbers=", ".join(named[:_MOST_NAMED]) + ", …" * (len(named) > _MOST_NAMED),
           reason=reason)
        for reason, named in trials.items()
    )  # fmt: skip
    return tr("Not counted: {trials}.", trials=side_by_side(groups, "; "))
