"""A shop with one machine, whose limits are on record, and one lot picked."""

import pytest

from core.records.rows import Lot, Machine

BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200, "microsteps": 16}
LIMITS = {
    "hot_end_limit_c": 240.0,
    "max_speed_mm_s": {"x": 250.0, "y": 250.0, "z": 10.0},
    "max_acceleration_mm_s2": {"x": 4000.0, "y": 3000.0},
}


@pytest.fixture
def shop(context, store):
    machine = store.add_machine(Machine("Bramble", drives={"x": BELT, "y": BELT}, limits=LIMITS))
    context.select_machine(machine.id)
    context.select_lot(store.add_lot(Lot("Slate 7", "PETG")).id)
    return context
