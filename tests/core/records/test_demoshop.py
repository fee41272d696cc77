"""The demo shop: begun beside the person's own database, fresh each time, never over what somebody did in it."""

import json
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from core.errors import InputError, StoreError
from core.records import demoshop
from core.records.demoshop import demo_path, ready_demo
from core.records.rows import Lot, Machine
from core.records.store import default_database_path, open_store

NOW = datetime(2031, 3, 1, 8, 30, tzinfo=UTC)
AT = datetime(2026, 1, 30, 12, 0, tzinfo=UTC)


@pytest.fixture
def export(tmp_path, monkeypatch):
    """A small demo shop in the place of the one that comes with the program."""
    (tmp_path / "demo").mkdir()
    file = tmp_path / "demo" / "shop.json"
    store = open_store(":memory:")
    store.add_machine(Machine("Amsel", drives={"x": {"kind": "belt", "pitch_mm": 2.0, "teeth": 20}}))
    store.set_shop_value("demo", {"says": "invented"}, None)
    store.storage.export_json(str(file))
    store.close()
    found = json.loads(file.read_text())
    for table in ("event", "shop_value"):
        for row, days in zip(found["rows"][table], (0, 3), strict=False):
            row["at"] = (AT - timedelta(days=days)).isoformat()
    file.write_text(json.dumps(found))
    monkeypatch.setattr(demoshop, "files", lambda package: tmp_path)
    return file


@pytest.fixture
def path(tmp_path):
    return tmp_path / "data" / "demo.sqlite"


def opened(path, now=NOW, **how):
    ready_demo(path, now, **how)
    return open_store(path)


def test_it_lies_beside_the_persons_own_database_under_another_name():
    assert demo_path().parent == default_database_path().parent
    assert demo_path() != default_database_path()


def test_its_newest_record_is_of_yesterday_at_the_same_time_of_day(export, path):
    store = opened(path)
    assert store.is_demo
    assert [event.at for event in store.events()] == [datetime(2031, 2, 28, 12, 0, tzinfo=UTC)]
    store.close()


def test_it_is_fresh_again_on_a_later_day_while_nobody_worked_in_it(export, path):
    opened(path).close()
    store = opened(path, NOW + timedelta(days=400))
    assert store.events()[0].at == datetime(2032, 4, 3, 12, 0, tzinfo=UTC)
    store.close()


def change_machine(store):
    store.change_machine(Machine("Amsel 2", id=store.machines()[0].id))


def add_lot(store):
    store.add_lot(Lot("Slate", "PETG"))


@pytest.mark.parametrize("work", [add_lot, change_machine])
def test_what_somebody_did_in_it_stays_until_it_is_begun_anew(export, path, work):
    store = opened(path)
    work(store)
    seen = store.machines(), store.lots()
    store.close()
    store = opened(path, NOW + timedelta(days=2))
    assert (store.machines(), store.lots()) == seen
    store.close()
    store = opened(path, NOW + timedelta(days=2), anew=True)
    assert [machine.name for machine in store.machines()] == ["Amsel"]
    assert store.lots() == ()
    assert store.events()[0].at == datetime(2031, 3, 2, 12, 0, tzinfo=UTC)
    store.close()


def test_another_database_of_that_name_is_left_as_it_is(export, path):
    path.parent.mkdir()
    store = open_store(path)
    add_lot(store)
    store.close()
    with pytest.raises(StoreError, match="is not the demo shop, and was left as it is"):
        ready_demo(path, NOW, anew=True)
    store = open_store(path)
    assert [lot.name for lot in store.lots()] == ["Slate"]
    assert not store.is_demo
    store.close()


def test_a_folder_that_cannot_be_made_is_told(export, tmp_path):
    (tmp_path / "file").write_text("")
    with pytest.raises(StoreError, match=r"demo\.sqlite"):
        ready_demo(tmp_path / "file" / "demo.sqlite", NOW)


def test_its_export_is_not_mixed_with_a_persons_own_records(export, path, tmp_path, store):
    demo = opened(path)
    demo.storage.export_json(str(tmp_path / "out.json"))
    with pytest.raises(InputError, match="export of the demo shop, invented data") as caught:
        store.storage.import_from(str(tmp_path / "out.json"))
    assert caught.value.field == "file"
    assert store.machines() == ()
    report = demo.storage.import_from(str(tmp_path / "out.json"))  # into itself: all of it is there already
    assert not report.refused and not any(report.added.values())
    demo.close()


def test_its_exports_say_at_their_head_that_they_are_invented(export, path, tmp_path, store):
    demo = opened(path)
    for name, shop in (("demo", demo), ("own", store)):
        shop.storage.export_json(str(tmp_path / f"{name}.json"))
        shop.storage.export_csv(str(tmp_path / f"{name} tables"))
    demo.close()
    heads = [(tmp_path / f"{name}.json").read_text("utf-8").partition("\n")[0] for name in ("demo", "own")]
    assert [',"note":"invented",' in head for head in heads] == [True, False]
    files = [tmp_path / f"{name} tables" / "about.csv" for name in ("demo", "own")]
    tables = [file.read_text("utf-8-sig").splitlines() for file in files]
    assert tables[0] == [f"{tables[1][0]},note", f"{tables[1][1]},invented"]


def test_a_copy_of_it_is_marked_too(export, path, tmp_path):
    demo = opened(path)
    demo.storage.copy_to(str(tmp_path / "copy.sqlite"))
    demo.close()
    copy = open_store(tmp_path / "copy.sqlite")
    assert copy.is_demo
    copy.close()


def test_the_one_that_comes_with_the_program_can_be_opened(path):
    store = opened(path)
    assert {machine.name for machine in store.machines()} >= {"Amsel", "Birch", "Cobble", "Dune", "Elm"}
    assert Path(path).stat().st_size > 0
    store.close()
