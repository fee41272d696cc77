"""The setup walk of a machine as the store now has it: for the pages of the shop and for the form that logs events."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from core.guidance.walk import Walk
    from core.records.rows import Event, Machine, Trial
    from core.records.store import Store

_CHECKS = 2000  # of instruments; a shop of ten that checks weekly keeps so many in four years


def read_walk(store: Store, machine: Machine, lot_id: int | None) -> Walk:
    """Return where each step of a machine with a lot stands.

    Raises:
        StoreError: the database cannot be read.
    """
    from core.guidance.walk import walk_state
    from core.guidance.walkplan import shop_plan

    assert machine.id is not None  # it comes from the store
    newest = store.newest_kept(machine.id, lot_id)
    kept = store.in_use([row.serial for row in newest])
    events = store.events_about(machine.id, lot_id)
    return walk_state(shop_plan(), machine, lot_id, kept, events, store.settings(machine.id), read_checks(store))


def read_checks(store: Store) -> tuple[Trial, ...]:
    """Return the checks of all instruments."""
    return store.checks(_CHECKS)


def standing_skips(store: Store, machine: Machine, step: str) -> list[Event]:
    """Return the events that skipped a step of a machine and were not taken back."""
    events = store.events(machine_id=machine.id, kind="skipped")
    gone = {event.takes_back for event in events}
    own = [event for event in events if event.detail.get("step") == step and event.takes_back is None]
    return [event for event in own if event.id not in gone]
