import json
import math
import os
from dataclasses import replace
from datetime import UTC, datetime

import pytest

from core.errors import StoreError
from core.quantity import Estimate
from core.records.rows import Machine, Trial
from core.records.spool import Spool, Waiting
from core.records.store import open_store

TYPED = Trial(
    "sizeerror", 1, None, 2, readings={"raw": ["10,1", None], "step_mm": [math.inf]}, conditions={"$a": {"b": 1}},
    started_at=datetime(2026, 7, 1, 12, 0, 0, 5, UTC), note="größer",
)  # fmt: skip


@pytest.fixture
def spool(tmp_path):
    return Spool("host/shop", tmp_path / "data")


def test_what_waits_comes_back_as_it_was_typed(spool, tmp_path):
    assert spool.waiting() == ()
    seen = replace(TYPED, id=7, readings={})
    file = spool.put(TYPED, seen)
    assert file.parent == tmp_path / "data" / "waiting"
    assert spool.waiting() == (Waiting(file, TYPED, seen),)
    assert Spool("another", tmp_path / "data").waiting() == ()
    newer = replace(TYPED, note="more")
    assert spool.put(newer, None) == file
    assert spool.waiting() == (Waiting(file, newer, None),)
    other = spool.put(replace(TYPED, lot_id=3, started_at=None), None)
    assert {waiting.file for waiting in spool.waiting()} == {file, other}
    spool.drop(newer)
    spool.drop(newer)
    assert [waiting.file for waiting in spool.waiting()] == [other]


def test_only_what_a_draft_holds_waits(spool):
    spool.put(replace(TYPED, estimates=(Estimate("a", 1.0, 0.1, 3.0, "mm"),), verdict=({"a": 1},), used=(1,)), None)
    assert spool.waiting()[0].trial == TYPED


BROKEN = ("{", "[]", "{}", '{"where":"host/shop","trial":{"state":"?"},"seen":null}', "\udcff")


@pytest.mark.parametrize("content", BROKEN)
def test_a_file_that_cannot_be_read_stays(spool, content):
    file = spool.put(TYPED, None).with_name("other.json")
    file.write_bytes(content.encode("utf-8", "surrogateescape"))
    assert [waiting.trial for waiting in spool.waiting()] == [TYPED]
    assert file.exists()


HELD = {"subject": "sizeerror", "state": "open", "readings": {"raw": ["1"]}, "conditions": {}}


@pytest.mark.parametrize("trial", [
    [], None, "x", 5, HELD | {"readings": [1]}, HELD | {"readings": "raw"}, HELD | {"conditions": None},
    HELD | {"subject": 5}, HELD | {"machine_id": "1"}, HELD | {"machine_id": 10**12}, HELD | {"lot_id": 1.5},
    HELD | {"started_at": 5}, HELD | {"kept_at": "noon"}, HELD | {"note": {"a": 1}}, HELD | {"state": ["open"]},
    {"state": "open"},
])  # fmt: skip
def test_what_is_no_trial_stays_too(spool, trial):
    file = spool.put(TYPED, None).with_name("other.json")
    for held in ({"trial": trial, "seen": None}, {"trial": HELD, "seen": trial or 1}):
        file.write_text(json.dumps({"where": "host/shop", **held}))
        assert [waiting.trial for waiting in spool.waiting()] == [TYPED]
    file.write_text(json.dumps({"where": "host/shop", "trial": HELD, "seen": None}))
    assert len(spool.waiting()) == 2


def test_no_pipe_is_waited_for(spool):
    file = spool.put(TYPED, None).with_name("other.json")
    os.mkfifo(file)
    assert [waiting.trial for waiting in spool.waiting()] == [TYPED]


def test_a_disk_that_does_not_take_it_either_is_said(spool, tmp_path):
    (tmp_path / "data").write_text("a file where the folder should be")
    with pytest.raises(StoreError, match="sizeerror-.*json cannot be opened"):
        spool.put(TYPED, None)


def test_the_store_knows_its_spool(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    store = open_store(tmp_path / "shop.sqlite")
    store.add_machine(Machine("A"))
    file = store.spool.put(TYPED, None)
    assert file.parent == tmp_path / "slipgauge" / "waiting"
    assert [waiting.trial for waiting in store.spool.waiting()] == [TYPED]
    store.close()


# Sending


@pytest.fixture
def shop(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    store = open_store(tmp_path / "shop.sqlite")
    yield store
    store.close()


@pytest.mark.parametrize("first", [True, False])
def test_what_waits_is_sent_and_waits_no_more(shop, first):
    seen = None if first else shop.save_draft(Trial("sizeerror", readings={"raw": ["1"]}))
    typed = Trial("sizeerror", readings={"raw": ["1", "2"]}) if first else replace(seen, readings={"raw": ["1", "2"]})
    shop.spool.put(typed, seen)
    assert shop.spool.send(shop) == (1, ())
    assert shop.draft("sizeerror").readings == {"raw": ["1", "2"]}
    assert shop.spool.waiting() == ()
    assert shop.spool.send(shop) == (0, ())


def test_what_another_seat_has_typed_meanwhile_is_not_written_over(shop):
    seen = shop.save_draft(Trial("sizeerror", readings={"raw": ["1"]}))
    file = shop.spool.put(replace(seen, readings={"raw": ["1", "2"]}), seen)
    shop.save_draft(replace(seen, readings={"raw": ["1", "3"]}))
    taken, (said,) = shop.spool.send(shop)
    assert taken == 0
    assert said.startswith(f"What was typed for sizeerror while the database was away waits in {file}: These readings")
    assert shop.draft("sizeerror").readings == {"raw": ["1", "3"]}
    assert len(shop.spool.waiting()) == 1


def test_what_was_kept_meanwhile_goes_on_as_a_new_trial(shop):
    seen = shop.save_draft(Trial("sizeerror", readings={"raw": ["1"]}))
    shop.spool.put(replace(seen, readings={"raw": ["1", "2"]}), seen)
    shop.keep(seen)
    assert shop.spool.send(shop) == (1, ())
    assert shop.draft("sizeerror").readings == {"raw": ["1", "2"]}
    assert shop.trial(seen.id).readings == {"raw": ["1"]}


def test_what_arrived_after_all_is_not_sent_again(shop):
    seen = shop.save_draft(Trial("sizeerror", readings={"raw": ["1"]}))
    stored = shop.save_draft(replace(seen, readings={"raw": ["1", "2"]}), seen)
    shop.spool.put(stored, seen)
    assert shop.spool.send(shop) == (1, ())


def test_a_ping_changes_nothing_and_says_what_is_wrong(shop, tmp_path):
    shop.ping()
    (tmp_path / "shop.sqlite").rename(tmp_path / "moved.sqlite")
    with pytest.raises(StoreError, match="moved, deleted or replaced"):
        shop.ping()
