"""Estimates of one name over time: what charts draw, and what a bad instrument may have spoiled."""

import math
import sqlite3
from contextlib import closing
from dataclasses import replace
from datetime import timedelta

import pytest
from sqlalchemy import event
from sqlalchemy.engine import Engine

from core.errors import InputError
from core.quantity import Estimate
from core.records import trials
from core.records.rows import Instrument, Lot, Machine, SeriesPoint, Trial
from core.records.store import open_store
from tests.statements import sent

SCALE = Estimate("scale_x", 0.0021, 0.0004, 3.7, "1")
WALL = Estimate("wall_outset", 0.031, 0.006, math.inf, "mm")


@pytest.fixture
def shop(store):
    """Two machines, a lot and two instruments."""
    store.add_machine(Machine("A"))
    store.add_machine(Machine("B"))
    store.add_lot(Lot("L", "PLA"))
    store.add_instrument(Instrument("C"))
    store.add_instrument(Instrument("D"))
    return store


def test_a_series_is_oldest_first_with_when_and_where(shop):
    first = shop.keep(Trial("sizeerror", 1, 1, estimates=(WALL, SCALE)))
    second = shop.keep(Trial("other", estimates=(replace(SCALE, value=0.5, dof=math.inf, unit="mm"),)))
    assert shop.series("scale_x") == (
        SeriesPoint(first.id, first.kept_at, 0.0021, 0.0004, 3.7, "1", 1, 1),
        SeriesPoint(second.id, second.kept_at, 0.5, 0.0004, math.inf, "mm", None, None),
    )
    assert [point.value for point in shop.series("wall_outset")] == [WALL.value]


def test_a_series_is_of_one_machine_or_lot_where_asked_and_of_trials_in_use(shop):
    keep = {
        (machine, lot): shop.keep(Trial("sizeerror", machine, lot, estimates=(SCALE,))).id
        for machine in (1, 2, None)
        for lot in (1, None)
    }
    withdrawn = shop.keep(Trial("sizeerror", 1, 1, estimates=(SCALE,)))
    shop.withdraw(withdrawn.id, "cold part")
    shop.save_draft(Trial("sizeerror", 1, 1))

    def ids(**where):
        return [point.trial_id for point in shop.series("scale_x", **where)]

    assert ids() == list(keep.values())
    assert ids(machine_id=1) == [keep[1, 1], keep[1, None]]
    assert ids(lot_id=1) == [keep[1, 1], keep[2, 1], keep[None, 1]]
    assert ids(machine_id=2, lot_id=1) == [keep[2, 1]]
    assert shop.series("steps_x") == ()


def test_a_series_is_of_one_instrument_where_asked(shop):
    mine = [shop.keep(Trial("instrument", instrument_id=number, estimates=(SCALE,))).id for number in (1, 2, 1)]
    assert [point.trial_id for point in shop.series("scale_x", instrument_id=1)] == [mine[0], mine[2]]


def test_the_newest_estimate_of_an_instrument(shop):
    first = shop.keep(Trial("instruments", instrument_id=1, estimates=(SCALE,)))
    last = shop.keep(Trial("instruments", instrument_id=1, estimates=(replace(SCALE, value=0.5),)))
    other = shop.keep(Trial("instruments", instrument_id=2, estimates=(replace(SCALE, value=0.7),)))
    assert shop.newest_for_instrument("scale_x", 1) == (last.id, replace(SCALE, value=0.5))
    assert shop.newest_for_instrument("scale_x", 2) == (other.id, replace(SCALE, value=0.7))
    assert shop.newest_for_instrument("zero_outside", 1) is None
    shop.withdraw(last.id, "dirt on a jaw")
    assert shop.newest_for_instrument("scale_x", 1) == (first.id, SCALE)


def test_the_newest_check_of_an_instrument(shop):
    zero = replace(SCALE, name="zero_outside")
    first = shop.keep(Trial("instruments", instrument_id=1, estimates=(SCALE,)))
    last = shop.keep(Trial("instruments", instrument_id=1, readings={"raw": ["1"]}, estimates=(zero,)))
    assert shop.newest_check(("scale_x", "zero_outside", "sd_hand"), 1) == last
    assert shop.newest_check(("scale_x",), 1) == first
    assert shop.newest_check(("scale_x", "zero_outside"), 2) is None


def test_what_was_read_with_an_instrument_since_a_time(shop):
    early = shop.keep(Trial("sizeerror", 1, instrument_id=1, readings={"raw": ["1"]}, estimates=(SCALE,)))
    late = shop.keep(Trial("drive", 1, instrument_id=1, used=(early.id,)))
    shop.keep(Trial("drive", 1, instrument_id=2))
    shop.keep(Trial("drive", 1))
    shop.save_draft(Trial("drive", 1, instrument_id=1))
    shop.withdraw(shop.keep(Trial("drive", instrument_id=1)).id, "cold part")
    assert shop.read_with(1, early.kept_at) == (late, replace(early, readings={}))
    assert shop.read_with(1, early.kept_at + timedelta(microseconds=1)) == (late,)
    assert shop.read_with(1, late.kept_at + timedelta(days=1)) == ()


def test_all_that_was_read_is_found_however_much(shop, monkeypatch):
    monkeypatch.setattr(trials, "IDS_AT_ONCE", 3)
    first = shop.keep(Trial("drive", instrument_id=1))
    kept = [
        shop.keep(Trial("drive", instrument_id=1, estimates=(SCALE, WALL), used=(first.id,), readings={}))
        for _ in range(7)
    ]
    assert shop.read_with(1, first.kept_at) == (*reversed(kept), first)


@pytest.mark.parametrize("place", ["machine_id", "lot_id"])
def test_a_series_touches_no_row_with_readings(path, place):
    sent = []

    def note(_connection, _cursor, statement, values, *_rest):
        sent.append((statement, values))

    store = open_store(path)
    event.listen(Engine, "before_cursor_execute", note)
    store.series("scale_x", **{place: 3})
    event.remove(Engine, "before_cursor_execute", note)
    store.close()
    ((statement, values),) = [one for one in sent if one[0].startswith("SELECT")]
    with closing(sqlite3.connect(path)) as other:
        plan = [row[3] for row in other.execute(f"EXPLAIN QUERY PLAN {statement}", values)]
    assert any(step.startswith(f"SEARCH trial USING COVERING INDEX ix_trial_{place}") for step in plan)


def plan_of(path, ask, number=0):
    """How SQLite finds what is asked for by that statement of the ones sent."""
    sent = []

    def note(_connection, _cursor, statement, values, *_rest):
        sent.append((statement, values))

    store = open_store(path)
    event.listen(Engine, "before_cursor_execute", note)
    ask(store)
    event.remove(Engine, "before_cursor_execute", note)
    store.close()
    statement, values = [one for one in sent if one[0].startswith("SELECT")][number]
    with closing(sqlite3.connect(path)) as other:
        return [row[3] for row in other.execute(f"EXPLAIN QUERY PLAN {statement}", values)]


@pytest.mark.parametrize(
    ("ask", "number"),
    [
        (lambda store: store.trials(), 0),
        (lambda store: store.trials("drive"), 0),
        (lambda store: store.newest("scale_x", 3), 1),  # the first looks among the results kept last
    ],
)
def test_the_newest_of_a_large_shop_are_found_without_reading_the_others(path, ask, number):
    plan = plan_of(path, ask, number)
    assert not [step for step in plan if step.startswith("SCAN trial") and "COVERING INDEX" not in step]
    assert not [step for step in plan if "ix_result_name" in step]


def test_the_newest_of_a_machine_is_found_behind_any_number_of_others(shop, monkeypatch):
    monkeypatch.setattr(trials, "_LOOKED_AT", 2)
    kept = {
        machine: [shop.keep(Trial("sizeerror", machine, readings={}, estimates=(SCALE,))) for _ in range(count)]
        for machine, count in ((1, 2), (2, 3))
    }
    assert shop.newest("scale_x", 1) == (kept[1][-1].id, SCALE)
    assert shop.newest("scale_x", 2) == (kept[2][-1].id, SCALE)
    assert shop.newest("scale_x", 3) is None


def test_the_names_of_late_and_how_many_trials_there_are(shop):
    assert shop.last_trial_id() == 0 and shop.results_of_late() == ()
    first = shop.keep(Trial("sizeerror", 1, readings={"raw": ["1"]}, estimates=(SCALE, WALL)))
    last = shop.save_draft(Trial("sizeerror", 1))
    assert shop.last_trial_id() == last.id
    assert shop.results_of_late() == (WALL.name, SCALE.name) and shop.results_of_late(1) == (WALL.name,)
    assert shop.trials("sizeerror", readings=True) == (last, first)


def test_a_trial_that_relies_on_many_asks_as_often_as_one_that_relies_on_two(shop, monkeypatch):
    """The split of a shop relies on all its size trials."""
    kept = [shop.keep(Trial("sizeerror", 1)).id for _ in range(30)]

    def asked(used):
        with sent() as statements:
            assert shop.keep(Trial("shop_split", 1, used=tuple(used))).used == tuple(used)
        return len(statements)

    assert asked(kept[:2]) == asked(kept[:2]) == asked(kept)
    monkeypatch.setattr(trials, "IDS_AT_ONCE", 7)
    assert asked(kept) == asked(kept[:7]) + 4  # in portions that a statement takes
    shop.withdraw(kept[-1], "wrong part")
    with pytest.raises(InputError, match=f"Trial {kept[-1]} is not in use"):
        shop.keep(Trial("shop_split", 1, used=tuple(kept)))
    with pytest.raises(InputError, match="Trial 999 is not on record"):
        shop.keep(Trial("shop_split", 1, used=(kept[0], 999)))


def test_which_trial_is_the_newest_is_told_without_reading_the_others(path):
    """The page Storage asks for it, where the readings of a hundred thousand trials lie between."""
    plan = plan_of(path, lambda store: store.storage.warnings())
    assert [step for step in plan if step.startswith("SCAN trial") and "COVERING INDEX" not in step] == []
    assert any(step.startswith("SEARCH trial USING INTEGER PRIMARY KEY") for step in plan)


def test_the_checks_of_an_instrument_are_those_of_the_subject_asked_for(shop):
    check, other = shop.keep(Trial("instrument", instrument_id=1)), shop.keep(Trial("drive", instrument_id=1))
    shop.keep(Trial("instrument", instrument_id=2))
    assert shop.read_with(1, check.kept_at, "instrument") == (check,)
    assert shop.read_with(1, check.kept_at) == shop.read_with(1) == (other, check)


def test_the_trials_that_a_machine_rests_on_are_looked_up_and_not_searched_for_among_all(path):
    plan = plan_of(path, lambda store: store.in_use(range(1, 500)))
    assert [step for step in plan if "trial" in step] == ["SEARCH trial USING INDEX ix_trial_serial (serial=?)"]
