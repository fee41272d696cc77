"""What the tests of these pages share."""

import pytest

from core.records.rows import Lot, Machine


@pytest.fixture
def shop(context, store):
    machine, lot = store.add_machine(Machine("Ash")), store.add_lot(Lot("Slate", "PETG"))
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    return context
