"""Which kept trials are in use now: the newest of each set of results, with what they relied on."""

import sqlite3
from contextlib import closing
from dataclasses import replace

import pytest

from core.errors import StoreError
from core.quantity import Estimate
from core.records import newest
from core.records.rows import Instrument, InUse, Lot, Machine, NewestKept, Trial
from core.records.store import open_store


@pytest.fixture
def shop(store):
    """Two machines, two lots and an instrument."""
    for name in ("A", "B"):
        store.add_machine(Machine(name))
        store.add_lot(Lot(name, "PLA"))
    store.add_instrument(Instrument("C"))
    return store


def trial(subject, *names, **places):
    return Trial(subject, **places, estimates=tuple(Estimate(name, 1.0, 0.1, 9.0, "mm") for name in names))


def test_the_newest_of_each_machine_lot_subject_and_set_of_results(shop):
    shop.keep(trial("reversal", "reversal_y", "reversal_x", machine_id=1))
    both = shop.keep(trial("reversal", "reversal_x", "reversal_y", machine_id=1))
    one = shop.keep(trial("reversal", "reversal_x", machine_id=1))
    wall = shop.keep(trial("wall", "flow_ratio_wall", machine_id=1, lot_id=1))
    other = shop.keep(trial("wall", "flow_ratio_wall", machine_id=2, lot_id=1))
    spool = shop.keep(trial("diameter", "diameter", lot_id=2))
    found = {
        NewestKept(1, None, "reversal", "reversal_x\nreversal_y", both.serial),
        NewestKept(1, None, "reversal", "reversal_x", one.serial),
        NewestKept(1, 1, "wall", "flow_ratio_wall", wall.serial),
        NewestKept(None, 2, "diameter", "diameter", spool.serial),
    }
    assert set(shop.newest_kept(1)) == found
    elsewhere = NewestKept(2, 1, "wall", "flow_ratio_wall", other.serial)
    assert set(shop.newest_kept()) == set(shop.newest_kept(1, 1)) == found | {elsewhere}


def test_open_and_withdrawn_trials_are_not_in_use(shop):
    first = shop.keep(trial("feed", "feed_ratio", machine_id=1))
    second = shop.keep(trial("feed", "feed_ratio", machine_id=1))
    shop.save_draft(trial("feed", machine_id=1))
    assert [row.serial for row in shop.newest_kept()] == [second.serial]
    shop.withdraw(second.id, "slipped")
    assert [row.serial for row in shop.newest_kept()] == [first.serial]
    assert [row.id for row in shop.in_use({first.serial, second.serial})] == [first.id]


def test_a_trial_in_use_says_what_it_gives_and_relied_on(shop, monkeypatch):
    monkeypatch.setattr(newest, "IDS_AT_ONCE", 1)
    check = shop.keep(Trial("instrument", instrument_id=1))
    first = shop.keep(trial("reversal", "reversal_x", "reversal_y", machine_id=1))
    size = shop.keep(
        Trial("sizeerror", 1, 2, 1, estimates=trial("", "scale_x").estimates, used=(first.id, check.id))
    )
    both = [
        InUse(check.id, 1, "instrument", None, None, 1, check.kept_at, frozenset()),
        InUse(first.id, 2, "reversal", 1, None, None, first.kept_at, frozenset({"reversal_x", "reversal_y"})),
    ]
    last = InUse(size.id, 3, "sizeerror", 1, 2, 1, size.kept_at, frozenset({"scale_x"}), (first.id, check.id))
    assert shop.in_use([size.serial]) == [last, *both]
    assert shop.in_use([size.serial, first.serial]) == [both[1], last, both[0]]
    shop.withdraw(first.id, "slipped")
    assert shop.in_use([size.serial]) == [last, both[0]]
    assert shop.in_use([]) == []


UNTOLD = {"setting": "undecided", "action": "Weigh three pieces more."}
TOLD = {"setting": "flow_factor", "action": "Set it to 0.97."}


@pytest.mark.parametrize(
    ("verdict", "undecided"),
    [
        ((UNTOLD,), "Weigh three pieces more."),
        ((UNTOLD, UNTOLD, {"setting": "undecided", "action": "Read Y too."}), "Weigh three pieces more. Read Y too."),
        ((UNTOLD, TOLD), ""),
        ((TOLD,), ""),
        (({"conformity": "undecided"},), ""),
        ((), ""),
    ],
)
def test_a_trial_in_use_says_what_would_tell_where_it_cannot(shop, verdict, undecided):
    kept = shop.keep(replace(trial("mass", "flow_ratio_mass", machine_id=1, lot_id=1), verdict=verdict))
    assert [row.undecided for row in shop.in_use([kept.serial])] == [undecided]


@pytest.mark.parametrize("text", ['["undecided"]', '[{"setting": "undecided"}'])
def test_a_verdict_that_cannot_be_read_is_damage(path, text):
    store = open_store(path)
    machine = store.add_machine(Machine("Ash"))
    kept = store.keep(replace(trial("mass", "flow_ratio_mass", machine_id=machine.id), verdict=(UNTOLD,)))
    store.close()
    with closing(sqlite3.connect(path)) as other, other:
        other.execute("UPDATE trial SET verdict = ?", (text,))
    store = open_store(path)
    with pytest.raises(StoreError, match="damaged"):
        store.in_use([kept.serial])
    store.close()


def test_the_checks_in_use_are_told_newest_first_with_what_they_found(shop):
    found = ({"conformity": "conforming"},)
    check = trial("instrument", "zero_outside", instrument_id=1)
    first = shop.keep(replace(check, verdict=found, readings={"raw": ["1"]}))
    shop.keep(trial("feed", "feed_ratio", machine_id=1))
    second = shop.keep(trial("instrument", "scale", instrument_id=1))
    gone = shop.keep(trial("instrument", "scale", instrument_id=1))
    shop.withdraw(gone.id, "dropped")
    shop.save_draft(trial("instrument", instrument_id=1))
    bare = [replace(kept, estimates=(), readings={}, started_at=None, kept_at=None) for kept in (second, first)]
    assert list(shop.checks(9)) == bare
    assert list(shop.checks(1)) == bare[:1]
