"""A shop with one machine and one lot picked."""

import pytest

from core.records.rows import Lot, Machine


@pytest.fixture
def shop(context, store, by_hand):
    context.select_machine(store.add_machine(Machine("Bramble")).id)
    context.select_lot(store.add_lot(Lot("Slate 7", "PETG")).id)
    return context
