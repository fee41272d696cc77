"""What the ladders of other machines and lots foretell of the best temperature here, or which ladder would tell it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from core.guidance.splitshop import newest_event
from core.motion_trials.sensoroffset import BestTemperature, NotLinked, Predicted, predict_temperature
from core.quantity import Estimate, rounded_pair
from core.records.rows import Event, Lot, Machine, SeriesPoint
from core.words import Words, tr

NAME = "ladder_temperature"
SPOILING = ("heater", "nozzle_other")  # after these a machine's ladders say nothing any more, as in resources/walk.toml
_NAMED = 3  # machines, lots or trials that a sentence names


@dataclass(frozen=True, slots=True)
class Foretold:
    """What is foretold, in words.

    Attributes:
        estimate: the temperature; None where it cannot be told yet.
        says: with its uncertainty and the trials it rests on, or which ladder would tell.
        refused: whether it is above what the machine bears, so that nothing is to be tried there.
        trial_ids: the ladders it rests on.
    """

    estimate: Estimate | None
    says: Words
    refused: bool = False
    trial_ids: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class ShopLadders:
    """All that temperature ladders of a shop gave: results in use oldest first, machines, lots and events."""

    points: Sequence[SeriesPoint]
    machines: Sequence[Machine]
    lots: Sequence[Lot]
    events: Sequence[Event] = ()


def foretell_temperature(shop: ShopLadders, machine_id: int, lot_id: int, limit_c: float | None) -> Foretold:
    """Return the temperature that other ladders foretell for a lot on a machine.

    Args:
        shop: what is kept.
        machine_id: asked for.
        lot_id: asked for.
        limit_c: what the hot end bears; None where nobody said.
    """
    ladders = _usable(shop)
    found = predict_temperature(ladders, machine_id, lot_id)
    if isinstance(found, NotLinked):
        return Foretold(None, _would_tell(found, shop))
    value, U = _told(found.estimate)
    rests = _numbers(found.trial_ids)
    if limit_c is not None and found.estimate.value > limit_c:
        says = tr(
            "Predicted from other ladders: {value} ± {U} °C (trials {trials}). That is above this machine's limit of "
            "{limit:g} °C. Refused: do not try this lot there.",
            value=value, U=U, limit=limit_c, trials=rests,
        )  # fmt: skip
        return Foretold(found.estimate, says, True, found.trial_ids)
    says = tr(
        "Predicted for this machine and lot from other ladders of the shop: {value} ± {U} °C (trials {trials}).",
        value=value, U=U, trials=rests,
    )  # fmt: skip
    if limit_c is not None and found.estimate.value + found.estimate.U > limit_c:
        says = tr("{says} Its upper end is above this machine's limit of {limit:g} °C.", says=says, limit=limit_c)
    own = [one for one in ladders if (one.machine, one.lot) == (machine_id, lot_id)]
    if own:
        says = tr("{says} {compared}", says=says, compared=_compared(own[-1], found))
    return Foretold(found.estimate, says, False, found.trial_ids)


def _usable(shop: ShopLadders) -> list[BestTemperature]:
    """Return the ladders that count: of machines and lots on record, with an uncertainty, since the last new heater."""
    begun = newest_event(shop.events, SPOILING)
    machines, lots = {row.id for row in shop.machines}, {row.id for row in shop.lots}
    return [
        BestTemperature(point.machine_id, point.lot_id, point.value, point.u, point.trial_id)
        for point in shop.points
        if point.machine_id is not None
        and point.lot_id is not None
        and point.machine_id in machines
        and point.lot_id in lots
        and 0 < point.u < math.inf
        and point.kept_at >= begun.get(point.machine_id, point.kept_at)
    ]


def _told(estimate: Estimate) -> tuple[str, str]:
    value, U = rounded_pair(estimate.value, estimate.U)
    return value.removeprefix("+"), U


def _numbers(ids: Sequence[int]) -> str:
    return ", ".join(str(number) for number in ids)


def _compared(own: BestTemperature, found: Predicted) -> Words:
    """Say whether a ladder of its own agrees with what the others foretell."""
    apart = own.value_c - found.estimate.value
    U = 2.0 * math.hypot(own.u_k, found.estimate.u)
    if abs(apart) <= U:
        return tr("Its own ladder (trial {trial}) agrees: {value:g} °C.", trial=own.trial_id, value=own.value_c)
    return tr(
        "Its own ladder (trial {trial}) says {value:g} °C, {apart:.0f} K from it, and ±{U:.0f} K is due: check the "
        "sensor with a thermometer, and whether lot and nozzle are those on record.",
        trial=own.trial_id, value=own.value_c, apart=abs(apart), U=U,
    )  # fmt: skip


def _would_tell(apart: NotLinked, shop: ShopLadders) -> Words:
    """Say which ladder would tell."""
    lots = _names([lot for lot in shop.lots if lot.id in apart.partner_lots])
    machines = _names([machine for machine in shop.machines if machine.id in apart.partner_machines])
    if apart.machine_known and apart.lot_known:
        return tr(
            "Nothing can be told yet: none links this machine with this lot. A ladder of one of "
            "{lots} on one of {machines} would tell, or this one here.",
            lots=lots, machines=machines,
        )  # fmt: skip
    if apart.lot_known:
        return tr(
            "Nothing can be told yet: this machine's sensor is not known against the others. A "
            "ladder here of a lot that was tried elsewhere too would tell, or this one here.",
        )
    if apart.machine_known:
        return tr(
            "Nothing can be told yet: this lot was tried nowhere. A ladder of it on a machine that "
            "shares one of the lots {lots} with this one would tell, or this one here.",
            lots=lots,
        )
    return tr("Nothing can be told yet: this ladder on this machine would tell.")


def _names(rows: Sequence[Machine] | Sequence[Lot]) -> str:
    """Return the first few names, by quotation marks."""
    told = ", ".join(f"“{row.name}”" for row in rows[:_NAMED])
    return f"{told}, …" if len(rows) > _NAMED else told
