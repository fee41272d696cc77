"""Kept results over time: their charts, the events among them, and where the limits begin anew.

Reference: ISO 7870-2:2013 and NIST/SEMATECH e-Handbook 6.3.2 for the charts.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from core.errors import InputError
from core.guidance.charted import Owner, Quantity
from core.measuring.chart import EwmaChart, IndividualsChart, Phase, ewma_chart, individuals_chart
from core.records.rows import SeriesPoint
from core.words import tr


@dataclass(frozen=True, slots=True)
class Event:
    """What happened to a machine or lot; only an identified one begins the limits anew."""

    at: datetime
    label: str
    identified: bool = True


@dataclass(frozen=True, slots=True, eq=False)
class Drift:
    """Results in their order with both charts and the events among them, as (place of the next result, event)."""

    quantity: Quantity
    points: tuple[SeriesPoint, ...]
    individuals: IndividualsChart
    ewma: EwmaChart
    events: tuple[tuple[int, Event], ...]

    @property
    def phase(self) -> Phase:
        """The phase of the newest result."""
        return self.individuals.phases[-1]


def judge_drift(quantity: Quantity, points: Sequence[SeriesPoint], events: Sequence[Event] = ()) -> Drift:
    """Chart results and find what stands out.

    Args:
        quantity: what they are.
        points: results, oldest first.
        events: what happened, in any order; those before the first result and after the last begin no limits.

    Raises:
        InputError: field `value` where there is no result; `unit` where their units differ.
    """
    if len({point.unit for point in points}) > 1:
        raise InputError("unit", tr("The results are in different units; withdraw those in the wrong one."))
    times = [point.kept_at for point in points]
    placed = sorted(((bisect_left(times, event.at), event) for event in events), key=lambda pair: (pair[0], pair[1].at))
    starts = sorted({place for place, event in placed if event.identified and 0 < place < len(points)})
    values = [point.value for point in points]
    return Drift(quantity, tuple(points), individuals_chart(values, starts), ewma_chart(values, starts), tuple(placed))


def changes_of_owner(
    quantity: Quantity, points: Sequence[SeriesPoint], lots: Mapping[int, str], machines: Mapping[int, str]
) -> tuple[Event, ...]:
    """Return an event for each change of the lot, and of the machine where it counts: limits of one fit no other.

    Args:
        quantity: what the results are; a new lot changes nothing of what the machine owns.
        points: results, oldest first.
        lots: names of the lots by id.
        machines: names of the machines by id.
    """
    if quantity.owner is not Owner.LOT:
        return ()
    events = []
    said = {lot_id: tr("lot {name}", name=lots.get(lot_id or 0, "?")) for lot_id in {p.lot_id for p in points}}
    for before, after in zip(points, points[1:], strict=False):
        if before.lot_id != after.lot_id:
            events.append(Event(after.kept_at, said[after.lot_id]))
        if quantity.of_print and before.machine_id != after.machine_id:
            events.append(Event(after.kept_at, machines.get(after.machine_id or 0, "?")))
    return tuple(events)
