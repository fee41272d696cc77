"""A machine with every step of the setup walk done, for tests of the walk."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import UTC, datetime
from itertools import count
from typing import Any

from core.guidance.walk import Walk, walk_state
from core.guidance.walkplan import shop_plan
from core.records.rows import Event, InUse, Machine, SettingInForce, Trial, TrialState

AT = datetime(2026, 11, 25, 9, tzinfo=UTC)
MACHINE = Machine("A", id=1, drives={axis: {"kind": "belt"} for axis in "xyz"})
GIVES = {
    "reversal": {"reversal_x", "reversal_y"},
    "squareness": {"squareness_xy"},
    "bedplane": {"bed_flatness", "bed_tilt_x"},
    "feed": {"feed_ratio"},
    "diameter": {"diameter", "ovality"},
    "ceiling": {"flow_ceiling_210c"},
    "wall": {"flow_ratio_wall"},
    "sizeerror": {"scale_x", "scale_y", "wall_outset", "squash_z"},
}
BY_HAND = ("temp", "lag", "speed")
ON_MACHINE = ("reversal", "squareness", "bedplane", "feed")


class Shop:
    """What is kept of one machine and lot 1, each with the next serial number."""

    def __init__(self, machine: Machine = MACHINE) -> None:
        self.machine = machine
        self.kept: list[InUse] = []
        self.events: list[Event] = []
        self.settings: list[SettingInForce] = []
        self.checks: list[Trial] = []
        self._next = count(1)

    def trial(self, subject: str, gives: set[str] | None = None, **changes: Any) -> InUse:
        number = next(self._next)
        lot_id = None if subject in ON_MACHINE else 1
        names = frozenset(GIVES[subject] if gives is None else gives)
        made = InUse(number, number, subject, 1, lot_id, None, AT, names)._replace(**changes)
        self.kept.append(made)
        return made

    def event(self, kind: str, detail: Mapping[str, Any] | None = None, **changes: Any) -> Event:
        number = next(self._next)
        place = {"machine_id": 1, **changes}
        made = Event(kind, detail=detail or {}, at=AT, serial=number, id=number, **place)
        self.events.append(made)
        return made

    def checked(self, step: str, **detail: Any) -> Event:
        return self.event("checked", {"step": step, **detail})

    def setting(self, trial_id: int | None, **changes: Any) -> SettingInForce:
        number = next(self._next)
        made = SettingInForce(1, 1, "contour_offset", 0.0, -0.03, "mm", AT, trial_id, number, serial=number)
        self.settings.append(replace(made, **changes))
        return self.settings[-1]

    def check_of_gauge(self, conformity: str, instrument_id: int = 1) -> Trial:
        number = next(self._next)
        made = Trial(
            "instrument", instrument_id=instrument_id, state=TrialState.KEPT, id=number, serial=number, kept_at=AT,
            verdict=({"conformity": conformity},),
        )  # fmt: skip
        self.checks.append(made)
        return made

    def walk(self, lot_id: int | None = 1) -> Walk:
        return walk_state(shop_plan(), self.machine, lot_id, self.kept, self.events, self.settings, self.checks)


def done_shop() -> Shop:
    """Every step done, one after the other."""
    shop = Shop()
    shop.checked("mechanics")
    shop.checked("steps")
    shop.check_of_gauge("conforming")
    for subject in ("reversal", "squareness", "bedplane", "feed", "diameter"):
        shop.trial(subject)
    shop.checked("temp")
    for subject in ("ceiling", "wall"):
        shop.trial(subject)
    shop.checked("lag")
    shop.checked("speed")
    shop.trial("sizeerror")
    for step in ("decision", "proof", "promise", "watch", "yearly"):
        shop.checked(step)
    return shop
