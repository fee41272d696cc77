"""Events, small files and values for the whole shop: only ever added to."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from core.errors import InputError
from core.records import log
from core.records.rows import Attachment, Event, Instrument, Lot, Machine, Trial

DAY = datetime(2026, 11, 25, 9, tzinfo=UTC)
PICTURE = Attachment("belt.png", "image/png", machine_id=1, note="frayed")


@pytest.fixture
def shop(store):
    """Two machines, a lot and an instrument."""
    store.add_machine(Machine("A"))
    store.add_machine(Machine("B"))
    store.add_lot(Lot("L", "PLA"))
    store.add_instrument(Instrument("C"))
    return store


def test_an_event_is_dated_numbered_and_signed(shop):
    shop.author = "Kim"
    before = datetime.now(UTC)
    written = shop.log_event(Event("belt_changed", 1, 1, 1, detail={"axis": "x", "tone_hz": 92.5}, note="frayed"))
    assert written.at - before < timedelta(minutes=1)
    assert (written.author, written.serial, written.id) == ("Kim", 1, 1)
    assert shop.events() == (written,)


def test_an_event_may_say_who_and_when(shop):
    written = shop.log_event(Event("moved", 1, author="Bo", at=DAY))
    assert (written.author, written.at) == ("Bo", DAY)


def test_events_are_found_by_what_they_are_about_in_the_order_of_logging(shop):
    first = shop.log_event(Event("moved", 1, at=DAY))
    second = shop.log_event(Event("new_lot", lot_id=1, at=DAY - timedelta(days=1)))
    third = shop.log_event(Event("gauge_bad", instrument_id=1))
    back = shop.log_event(Event("moved", 1, takes_back=first.id, note="it was B"))
    assert shop.events(machine_id=1) == (first, back)
    assert shop.events(lot_id=1) == (second,)
    assert shop.events(instrument_id=1) == (third,)
    assert shop.events(kind="moved") == (first, back)
    assert shop.events(machine_id=2) == ()
    assert shop.events_about(1) == (first, second, third, back)
    assert shop.events_about(2) == (second, third)
    other = shop.log_event(Event("new_spool", 1, 1))
    assert shop.events_about(2, 1) == (second, third, other)


def test_one_count_runs_through_trials_settings_and_events(shop):
    trial = shop.keep(Trial("drive", 1))
    event = shop.log_event(Event("moved", 1))
    again = shop.keep(Trial("drive", 1))
    assert [trial.serial, event.serial, again.serial] == [1, 2, 3]
    assert shop.save_draft(Trial("drive", 1)).serial is None


def test_withdrawing_a_trial_is_an_event(shop):
    shop.author = "Kim"
    trial = shop.keep(Trial("drive", 1, 1, 1))
    shop.withdraw(trial.id, " wrong belt ")
    (said,) = shop.events(machine_id=1, lot_id=1, instrument_id=1)
    assert (said.kind, said.trial_id, said.note, said.author) == ("withdrawn", trial.id, "wrong belt", "Kim")
    assert trial.author == "Kim"


@pytest.mark.parametrize(
    ("event", "field", "words"),
    [
        (Event(" "), "kind", "Say what happened"),
        (Event("moved", 9), "machine_id", "The machine 9 is not on record"),
        (Event("moved", lot_id=9), "lot_id", "The lot 9"),
        (Event("moved", instrument_id=9), "instrument_id", "The instrument 9"),
        (Event("moved", trial_id=9), "trial_id", "The trial 9"),
        (Event("moved", takes_back=9), "takes_back", "The event 9"),
    ],
)
def test_an_event_about_nothing_is_refused(shop, event, field, words):
    with pytest.raises(InputError, match=words) as caught:
        shop.log_event(event)
    assert caught.value.field == field
    assert shop.events() == ()


def test_a_picture_is_kept_with_its_bytes(shop):
    shop.author = "Kim"
    event = shop.log_event(Event("moved", 1))
    trial = shop.keep(Trial("drive", 1, 1))
    one = shop.attach(PICTURE, b"\x89PNG\x00")
    others = [
        shop.attach(replace(PICTURE, machine_id=None, at=DAY, **{place: number}), b"x")
        for place, number in (("lot_id", 1), ("trial_id", trial.id), ("event_id", event.id))
    ]
    assert (one.size, one.author, one.id) == (5, "Kim", 1)
    assert shop.attachments() == (one, *others)
    assert shop.attachments(machine_id=1) == (one,)
    assert shop.attachments(lot_id=1) == (others[0],)
    assert shop.attachments(trial_id=trial.id) == (others[1],)
    assert shop.attachments(event_id=event.id) == (others[2],)
    assert shop.attachment_content(one.id) == b"\x89PNG\x00"


def test_a_file_that_cannot_be_kept_is_refused(shop, monkeypatch):
    with pytest.raises(InputError, match="belt.png is empty; choose another"):
        shop.attach(PICTURE, b"")
    monkeypatch.setattr(log, "LARGEST_BYTES", 2**20)
    with pytest.raises(InputError, match=r"belt.png has 1\.5 MiB; at most 1 MiB are kept"):
        shop.attach(PICTURE, bytes(3 * 2**19))
    with pytest.raises(InputError, match="The machine 9 is not on record"):
        shop.attach(replace(PICTURE, machine_id=9), b"x")
    with pytest.raises(InputError, match="The attachment 1 is not on record"):
        shop.attachment_content(1)
    assert shop.attachments() == ()


def test_the_newest_value_for_the_shop_holds(shop):
    shop.author = "Kim"
    assert shop.shop_value("parts") is None
    first = shop.set_shop_value("parts", {"belts": [2.0]}, None)
    assert shop.shop_value("parts") == first
    second = shop.set_shop_value("parts", {"belts": [2.0, 3.0]}, first)
    assert shop.shop_value("parts") == second
    assert second.author == "Kim"
    assert second.value == {"belts": [2.0, 3.0]}
    assert shop.shop_value("authors") is None


def test_a_stale_value_for_the_shop_is_refused(shop):
    first = shop.set_shop_value("parts", {"belts": [2.0]}, None)
    for seen in (None, replace(first, id=first.id + 1)):
        with pytest.raises(InputError, match="parts was changed elsewhere meanwhile"):
            shop.set_shop_value("parts", {}, seen)
    assert shop.shop_value("parts") == first


def test_counted_parts_are_an_event_and_other_changes_of_a_machine_are_none(shop):
    shop.author = "Kim"
    belt = {"kind": "belt", "teeth": 20}
    machine = shop.add_machine(Machine("C", drives={"x": belt}))
    machine = shop.change_machine(replace(machine, note="by the window"))
    shop.change_machine(replace(machine, drives={"x": {**belt, "teeth": 16}}))
    first, second = shop.events(machine_id=machine.id)
    assert (first.kind, first.author, first.detail["step"]) == ("checked", "Kim", "record")
    assert second.detail["drives"] == {"x": {"kind": "belt", "teeth": 16}}
    assert (second.detail["results"], second.detail["how"]) == (["steps"], "count")
    assert len(shop.events()) == 2
