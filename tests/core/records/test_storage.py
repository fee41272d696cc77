"""Copies, restoring, export, import and moving: nothing is lost on any of these ways, on a file and on a server."""

import csv
import json
import shutil
import sqlite3
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from core.errors import InputError, StoreError
from core.quantity import Estimate
from core.records import backup, storage
from core.records.backup import superfluous
from core.records.rows import (
    Attachment,
    Backup,
    BackupKind,
    Event,
    Instrument,
    Lot,
    Machine,
    Motion,
    SettingInForce,
    Trial,
    TrialState,
)
from core.records.store import Store, open_store
from core.records.transfer import TABLES, empty_all, read_rows, write_rows
from core.records.upgrade import KNOWN

DAY = timedelta(days=1)
BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200, "microsteps": 16}
TRIAL_COLUMNS = len(next(table for table in TABLES if table.name == "trial").columns)


class StoppedError(Exception):
    """What a step raises when the person stops the work."""


def stop(_part: float) -> None:
    raise StoppedError


def everything(store: Store) -> dict[str, list]:
    """All rows of all tables."""
    with store._database.transaction() as session:
        return {table.name: [row for part in read_rows(session, table) for row in part] for table in TABLES}


def fill(store: Store) -> None:
    """A small shop with something in every table."""
    machine = store.add_machine(
        Machine("=Bramble", Motion.DELTA, drives={"x": BELT}, note='-1 mm, "lower"\r\n')
    )
    lot = store.add_lot(Lot("Slate 7", "PETG", nominal_diameter_mm=1.75))
    caliper = store.add_instrument(Instrument("Caliper 2", sd_hand_mm=0.008, sd_hand_dof=19))
    scale = Estimate("scale_x", -0.0021, 0.0004, float("inf"), "1")
    first = store.keep(Trial("drive", machine.id, readings={"strange": [0.1, float("-inf"), None]}))
    setting = SettingInForce(machine.id, lot.id, "scale_x", None, 0.002, "1")
    store.keep(
        Trial("sizeerror", machine.id, lot.id, caliper.id, estimates=(scale,), used=(first.id,), note="'quoted"),
        [setting],
    )
    store.withdraw(store.keep(Trial("drive", machine.id)).id, "@home")
    store.save_draft(Trial("sizeerror", machine.id, readings={"raw": ["10,1", ""]}))
    event = store.log_event(Event("belt_changed", machine.id, note="\tnew belt"))
    store.attach(Attachment("belt.jpg", "image/jpeg", event_id=event.id), bytes(range(256)))
    store.set_shop_value("parts", {"$float": "not a number", "list": [1, None]}, None)


@pytest.fixture
def shop(tmp_path):
    """A small shop in a file."""
    store = open_store(tmp_path / "shop.sqlite")
    fill(store)
    yield store
    store.close()


@pytest.fixture(params=["file", "server"])
def empty(request, tmp_path, server):
    """The address of a database that does not exist yet, or is empty."""
    return str(tmp_path / "other.sqlite") if request.param == "file" else server.new_database()


@pytest.fixture(autouse=True)
def _data_folder(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))


# Copies


def test_a_copy_holds_what_the_log_beside_the_file_holds(shop, tmp_path):
    parts: list[float] = []
    made = shop.storage.back_up(parts.append)
    assert (made.kind, made.size) == (BackupKind.ASKED, Path(made.file).stat().st_size)
    assert (shop.storage.is_file, shop.storage.address) == (True, shop.where)
    assert Path(made.file).parent == tmp_path / "shop-backups" == Path(shop.storage.backups_folder)
    assert (parts[-1], sorted(parts)) == (1.0, parts)
    copy = open_store(made.file)
    assert everything(copy) == everything(shop)
    copy.close()
    assert shop.storage.backups() == (made,)


def test_what_is_in_a_database_at_a_glance(shop):
    here = shop.storage.contents()
    assert (here.tables, here.rows["machine"], here.rows["trial"], here.rows["attachment"]) == (KNOWN[-1], 1, 4, 1)
    number, subject, machine, at = here.newest
    assert (number, subject, machine, at) == (4, "sizeerror", "=Bramble", shop.trial(4).started_at)
    made = shop.storage.back_up()
    assert shop.storage.preview(made.file) == here


def test_an_empty_database_at_a_glance(store):
    here = store.storage.contents()
    assert (set(here.rows.values()), here.newest) == ({0}, None)
    assert store.storage.warnings() == ()


def test_a_server_is_copied_into_a_file_here(server, tmp_path):
    store = open_store(server.new_database())
    fill(store)
    assert not store.storage.is_file
    assert store.storage.address.startswith("postgresql+psycopg://shop@127.0.0.1:")
    made = store.storage.back_up()
    assert (
        Path(made.file).parent == tmp_path / "data" / "slipgauge" / f"{Path(made.file).name.partition('-')[0]}-backups"
    )
    copy = open_store(made.file)
    assert everything(copy) == everything(store)
    copy.close()
    before = everything(store)
    store.save_draft(Trial("later"))
    store.storage.restore(made.file)
    assert everything(store) == before
    assert [kept.kind for kept in store.storage.backups()] == [BackupKind.RESTORE, BackupKind.ASKED]
    assert store.save_draft(Trial("later")).id == 5
    store.close()


def test_a_server_is_copied_into_a_file_here_each_day(server, tmp_path):
    store = open_store(server.new_database())
    fill(store)
    folder = Path(store.storage.backups_folder)
    shown = f"{folder.name.removesuffix('-backups')}-127.0.0.1-{server.port}"
    folder.mkdir(parents=True)
    elsewhere = folder / f"{shown.replace('127.0.0.1', 'elsewhere')}-{datetime.now(UTC):%Y%m%dT%H%M%S%fZ}-daily.sqlite"
    elsewhere.write_bytes(b"of another server")
    made = store.storage.back_up_daily()
    assert (made.kind, Path(made.file).parent) == (BackupKind.DAILY, folder)
    assert Path(made.file).name.startswith(f"{shown}-20") and folder.is_relative_to(tmp_path / "data")
    assert store.storage.back_up_daily() is None
    copy = open_store(made.file)
    assert everything(copy) == everything(store)
    copy.close()
    for age in range(1, 40):
        moment = datetime.now(UTC) - age * DAY
        shutil.copy(made.file, folder / f"{shown}-{moment:%Y%m%dT%H%M%S%fZ}-daily.sqlite")
    Path(made.file).unlink()
    assert store.storage.back_up_daily() is not None
    assert len(list(folder.glob(f"{shown}-*"))) < 17 and elsewhere.exists()
    store.close()


def test_memory_is_worth_no_copy_of_the_day():
    store = open_store(":memory:")
    assert store.storage.back_up_daily() is None and not store.storage.on_server
    store.close()


def test_what_another_seat_writes_meanwhile_is_not_half_in_a_copy(server):
    """All that is copied is of one moment, also where every table is read by a statement of its own."""
    store, other = (open_store(where) for where in [server.new_database()] * 2)
    fill(store)
    before = everything(store)

    def write_meanwhile(part: float) -> None:
        if other.storage.contents().rows["machine"] == 1:
            machine = other.add_machine(Machine("Meanwhile"))
            other.keep(Trial("drive", machine.id, estimates=(Estimate("a", 1.0, 0.1, 3.0, "mm"),)))

    copy = open_store(store.storage.back_up(write_meanwhile).file)
    assert everything(copy) == before
    assert len(store.machines()) == 2
    for each in (store, other, copy):
        each.close()


def test_a_copy_a_day_and_only_the_daily_ones_are_thinned_out(shop, tmp_path):
    folder = tmp_path / "shop-backups"
    asked = shop.storage.back_up()
    made = shop.storage.back_up_daily()
    assert shop.storage.back_up_daily() is None
    Path(made.file).unlink()
    for age in range(1, 40):
        moment = datetime.now(UTC) - age * DAY
        shutil.copy(asked.file, folder / f"shop-{moment:%Y%m%dT%H%M%S%fZ}-daily.sqlite")
        shutil.copy(asked.file, folder / f"shop-{moment:%Y%m%dT%H%M%S%fZ}-upgrade.sqlite")
    (folder / "notes.txt").write_text("of the person")
    newest = shop.storage.back_up_daily()
    left = shop.storage.backups()
    daily = [kept for kept in left if kept.kind == BackupKind.DAILY]
    assert daily[0] == newest
    assert len([kept for kept in left if kept.kind == BackupKind.UPGRADE]) == 39
    assert asked in left
    assert (folder / "notes.txt").exists()
    weeks = {kept.made_at.isocalendar()[:2] for kept in daily[10:]}
    assert len(weeks) == len(daily) - 10 in (5, 6)  # of thirty days


def test_of_older_days_the_last_of_each_week_stays():
    monday = datetime(2026, 11, 2, 8, tzinfo=UTC)
    daily = [Backup(str(day), BackupKind.DAILY, monday + day * DAY, 1) for day in range(24)]
    gone = {int(each.file) for each in superfluous(tuple(daily))}
    assert gone == set(range(14)) - {6, 13}  # days 14 to 23 are the last ten; 6 and 13 are Sundays
    left = tuple(each for each in daily if int(each.file) not in gone)
    assert superfluous(left) == ()


def test_a_clock_set_back_thins_out_no_newer_copy_and_is_said(shop, monkeypatch):
    made = shop.storage.back_up_daily()
    early = datetime(2020, 5, 4, 12, tzinfo=UTC)

    class EarlyClock(datetime):
        @classmethod
        def now(cls, zone=None):
            return early.astimezone(zone)

    monkeypatch.setattr(backup, "datetime", EarlyClock)
    monkeypatch.setattr(storage, "datetime", EarlyClock)
    assert shop.storage.back_up_daily().made_at == early
    assert made in shop.storage.backups()
    (said,) = shop.storage.warnings()
    assert said.startswith("The clock of this computer is behind: trial 4 is of ")


def test_a_network_drive_is_said(shop, tmp_path, monkeypatch):
    mounts = tmp_path / "mounts"
    mounts.write_text(f"/dev/vda / ext4 rw 0 0\nbox:/shop {tmp_path} nfs4 rw 0 0\n")
    monkeypatch.setattr("core.records.share.MOUNTS", mounts)
    (said,) = shop.storage.warnings()
    assert "lies on a network drive (nfs4), where two seats at once can damage it" in said


def test_no_room_for_a_copy_leaves_none(shop, tmp_path):
    (tmp_path / "shop-backups").write_text("a file where the folder should be")
    for work in (
        shop.storage.back_up,
        shop.storage.back_up_daily,
        lambda: shop.storage.restore(tmp_path / "shop.sqlite"),
    ):
        with pytest.raises(StoreError, match="shop-backups cannot be opened"):
            work()
    assert sorted(file.name for file in tmp_path.iterdir() if "-wal" not in file.name and "-shm" not in file.name) == [
        "shop-backups", "shop.sqlite"
    ]  # fmt: skip


def test_a_stopped_copy_leaves_none(shop):
    with pytest.raises(StoppedError):
        shop.storage.back_up(stop)
    assert list(Path(shop.storage.backups_folder).iterdir()) == []


def test_a_damaged_file_is_not_taken_for_a_copy(shop, tmp_path):
    shop.close()
    with (tmp_path / "shop.sqlite").open("rb+") as file:
        file.seek(4096 * 3)
        file.write(b"\xff" * 4096)
    with pytest.raises(StoreError, match="is damaged"):
        shop.storage.back_up_daily()
    assert list(Path(shop.storage.backups_folder).iterdir()) == []


# Restoring


def test_a_copy_is_put_back_over_a_copy_of_now(shop):
    before, made = everything(shop), shop.storage.back_up()
    other_seat = open_store(shop.where)
    shop.add_machine(Machine("Later"))
    now, parts = everything(shop), []
    kept = shop.storage.restore(made.file, parts.append)
    assert everything(shop) == everything(other_seat) == before
    assert parts[-1] == 1.0
    assert shop.storage.preview(kept.file).rows["machine"] == 2
    assert shop.storage.backups() == (kept, made)
    shop.storage.restore(kept.file)
    assert everything(shop) == everything(other_seat) == now
    other_seat.close()


def test_a_copy_of_older_tables_is_brought_up_to_date_on_the_way(shop, tmp_path):
    from tests.old_databases.test_old_databases import build

    old = tmp_path / "old.sqlite"
    build("0001", old)
    before = old.read_bytes()
    glance = shop.storage.preview(old)
    assert (glance.tables, glance.rows["trial"], "event" in glance.rows, glance.newest[2]) == (
        "0001",
        4,
        False,
        "Tall one",
    )
    shop.storage.restore(old)
    assert shop.machines()[0].name == "Tall one"
    assert shop.storage.contents().tables == KNOWN[-1]
    assert old.read_bytes() == before


@pytest.mark.parametrize(
    "what",
    ["cut short", "cut in its last page", "of another program", "newer", "pointing nowhere", "not there", "no tables"],
)
def test_what_cannot_be_restored_changes_nothing(shop, tmp_path, what):
    copy = Path(shop.storage.back_up().file)
    before = everything(shop)
    with closing(sqlite3.connect(copy)) as other:
        if what == "of another program":
            other.execute("PRAGMA application_id=7")
        elif what == "newer":
            other.execute("UPDATE alembic_version SET version_num = '0999'")
        elif what == "pointing nowhere":
            other.execute("UPDATE trial SET machine_id = 77")
        elif what == "no tables":
            other.execute("DROP TABLE alembic_version")
        other.commit()
    if what == "cut short":
        copy.write_bytes(copy.read_bytes()[:9000])
    elif what == "cut in its last page":
        copy.write_bytes(copy.read_bytes()[:-1])
    elif what == "not there":
        copy.unlink()
    words = {
        "cut short": "is damaged",
        "cut in its last page": "is damaged",
        "of another program": "is a database of another program",
        "newer": "newer version",
        "pointing nowhere": "cannot be restored: Row 1 of trial points to a row of machine that is not there",
        "not there": "cannot be opened",
        "no tables": "is damaged",
    }[what]
    with pytest.raises(StoreError, match=words):
        shop.storage.restore(copy)
    assert everything(shop) == before
    assert [file for file in Path(shop.storage.backups_folder).iterdir() if file != copy] == []


def test_a_seat_that_does_not_let_go_is_said_and_nothing_is_replaced(shop, monkeypatch):
    monkeypatch.setattr(backup, "PATIENCE_S", 0.1)
    made = shop.storage.back_up()
    shop.add_machine(Machine("Later"))
    other = sqlite3.connect(shop.where, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with pytest.raises(StoreError, match="is locked by another program"):
        shop.storage.restore(made.file)
    other.close()
    assert len(shop.machines()) == 2


def test_a_disk_that_fails_while_replacing_is_said(shop, monkeypatch):
    made = shop.storage.back_up()

    def fail(source: Path, target: Path, step=None) -> None:
        if str(target) == shop.where:
            raise sqlite3.OperationalError
        shutil.copy(source, target)

    monkeypatch.setattr(backup, "copy_pages", fail)
    with pytest.raises(StoreError):
        shop.storage.restore(made.file)


def test_a_copy_that_vanishes_is_said(shop, monkeypatch):
    made = shop.storage.back_up()
    monkeypatch.setattr(backup, "contents_of", lambda path, _step: path.unlink())
    with pytest.raises(StoreError, match="cannot be opened"):
        shop.storage.restore(made.file)


def test_a_damaged_file_is_set_aside_with_its_log(tmp_path):
    path = tmp_path / "shop.sqlite"
    path.write_bytes(b"what is left")
    assert backup.set_aside(path).exists()
    path.with_name("shop.sqlite-wal").write_bytes(b"log")
    aside = backup.set_aside(path)
    assert (aside.read_bytes(), aside.with_name(aside.name + "-wal").read_bytes()) == (b"what is left", b"log")
    assert path.exists()
    shutil.rmtree(aside.parent)
    aside.parent.write_text("")
    with pytest.raises(StoreError, match="cannot be opened"):
        backup.set_aside(path)


# Checking


def test_a_sound_database_has_no_faults(store):
    fill(store)
    parts: list[float] = []
    assert store.storage.check(parts.append) == ()
    assert parts[-1] == 1.0


def test_faults_are_named(shop, tmp_path):
    with closing(sqlite3.connect(tmp_path / "shop.sqlite")) as other:
        other.execute("UPDATE result SET trial_id = 77")
        other.execute("PRAGMA writable_schema=ON")
        other.execute("DELETE FROM sqlite_master WHERE name = 'ix_result_name'")
        other.commit()
    shop.close()
    found = shop.storage.check()
    assert any("Row 1 of result points to a row of trial that is not there" in fault for fault in found)
    assert any("The pages of the file do not hang together" in fault for fault in found)


# Export and import


@pytest.mark.parametrize("form", ["csv", "json"])
def test_everything_out_and_in_again(shop, tmp_path, empty, form):
    target = tmp_path / ("all.json" if form == "json" else "all")
    parts: list[float] = []
    here = (shop.storage.export_json if form == "json" else shop.storage.export_csv)(str(target), parts.append)
    assert (here, parts[-1]) == (shop.storage.contents(), 1.0)
    other = open_store(empty)
    report = other.storage.import_from(str(target))
    assert (report.refused, report.lines, report.already) == (False, (), 0)
    assert report.added == {name: len(rows) for name, rows in everything(shop).items()}
    assert everything(other) == everything(shop)
    assert other.keep(Trial("drive", 1)).id == 5
    other.close()


def test_an_export_writes_over_nothing_and_leaves_nothing_half_done(shop, tmp_path):
    for export, name in ((shop.storage.export_json, "all.json"), (shop.storage.export_csv, "all")):
        with pytest.raises(StoppedError):
            export(str(tmp_path / name), stop)
        assert not list(tmp_path.glob("all*"))
        with pytest.raises(StoreError, match="cannot be opened"):
            export(str(tmp_path / "no" / name))
        export(str(tmp_path / name))
        with pytest.raises(InputError, match="is there already; choose another name"):
            export(str(tmp_path / name))
        shutil.rmtree(tmp_path / name) if name == "all" else (tmp_path / name).unlink()


def test_cells_that_a_spreadsheet_would_run_are_neutralised(shop, tmp_path):
    shop.storage.export_csv(str(tmp_path / "all"))
    for file in (tmp_path / "all").iterdir():
        with file.open(encoding="utf-8-sig", newline="") as lines:
            for cells in csv.reader(lines):
                for cell in cells:
                    try:
                        float(cell or "0")
                    except ValueError:
                        assert not cell.lstrip().startswith(("=", "+", "-", "@")), cell
                        assert not cell.startswith(("\t", "\r", "\n"))
    text = (tmp_path / "all" / "machine.csv").read_text("utf-8-sig")
    assert "'=Bramble" in text
    assert "-0.0021" in (tmp_path / "all" / "result.csv").read_text("utf-8-sig")


TEXT = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=12) | st.sampled_from(
    ["", "'", "''", "=1+1", " =1", "+", "-5", "@x", "\t=", "\r", "\n", '"', ",", ";", "＝1", "1e5", "$float", "\ufeff"]
)
NUMBER = st.floats(allow_nan=False)
JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | NUMBER | TEXT,
    lambda item: st.lists(item, max_size=3) | st.dictionaries(TEXT, item, max_size=3),
    max_leaves=6,
)
MOMENT = st.datetimes(datetime(1970, 1, 1), datetime(2100, 1, 1), timezones=st.just(UTC))
KINDS = {
    "JsonObject": st.dictionaries(TEXT, JSON, max_size=3),
    "JsonObjects": st.lists(st.dictionaries(TEXT, JSON, max_size=2), max_size=2).map(tuple),
    "Real": NUMBER, "UtcTime": MOMENT, "Content": st.binary(max_size=40), "MotionText": st.sampled_from(Motion),
    "StateText": st.sampled_from(TrialState), "PlainText": TEXT, "Integer": st.integers(0, 2**31 - 1),
}  # fmt: skip


@st.composite
def rows_of_all(draw):
    """Rows of every table, of any values that its columns take; what points points to a row that is there."""
    made = {}
    for table in TABLES:
        rows = made[table.name] = []
        for number in range(1, draw(st.integers(1, 3)) + 1):
            row = {"id": number}
            for column in table.columns:
                if column.name == "id":
                    continue
                target = next((key.column.table.name for key in column.foreign_keys), None)
                there = (
                    None
                    if target is None
                    else [None] * bool(column.nullable)
                    + [other["id"] for other in (made[target] if target != table.name else rows)]
                )
                value = draw(st.sampled_from(there) if there is not None else KINDS[type(column.type).__name__])
                if column.nullable and target is None and draw(st.booleans()):
                    value = None
                row[column.name] = value
            for name in ("name", "open_as"):  # what the tables allow once
                if row.get(name) is not None:
                    row[name] += f" {number}"
            if table.name == "used":
                row["trial_id"], row["used_id"] = number, 1
                if number > len(made["trial"]):
                    continue
            rows.append(row)
    return made


@pytest.fixture(scope="module")
def two_shops():
    stores = open_store(":memory:"), open_store(":memory:")
    yield stores
    for each in stores:
        each.close()


@settings(max_examples=25, deadline=None, suppress_health_check=list(HealthCheck))
@given(rows=rows_of_all())
def test_any_rows_out_and_in_again(tmp_path_factory, two_shops, rows):
    folder = tmp_path_factory.mktemp("rows")
    one, other = two_shops
    with one._database.transaction(write=True) as session:
        empty_all(session)
        for table in TABLES:
            write_rows(session, table, rows[table.name])
    assert everything(one) == rows
    one.storage.export_csv(str(folder / "all"))
    one.storage.export_json(str(folder / "all.json"))
    for source in ("all", "all.json"):
        with other._database.transaction(write=True) as session:
            empty_all(session)
        report = other.storage.import_from(str(folder / source))
        assert report.lines == ()
        assert everything(other) == rows


# What is wrong with a file is said line by line


@pytest.fixture
def exported(shop, tmp_path):
    """The shop as a folder of CSV tables."""
    shop.storage.export_csv(str(tmp_path / "all"))
    return tmp_path / "all"


def rewrite(file: Path, line: int, column: str, cell: str) -> None:
    """Put a text into a cell of a file; line 1 names the columns."""
    with file.open(encoding="utf-8-sig", newline="") as lines:
        rows = list(csv.reader(lines))
    rows[line - 1][rows[0].index(column)] = cell
    with file.open("w", encoding="utf-8-sig", newline="") as lines:
        csv.writer(lines).writerows(rows)


@pytest.mark.parametrize("form", ["csv", "json"])
@pytest.mark.parametrize("at", [0.0, 0.3, 0.5, 0.75])
def test_an_import_stopped_while_it_reads_checks_or_writes_leaves_nothing(shop, tmp_path, form, at):
    target = tmp_path / ("all.json" if form == "json" else "all")
    (shop.storage.export_json if form == "json" else shop.storage.export_csv)(str(target))
    other = open_store(":memory:")
    other.add_lot(Lot("Fern 2", "PLA"))
    before = everything(other)

    def stop_at(part: float) -> None:
        if part >= at:
            raise StoppedError

    with pytest.raises(StoppedError):
        other.storage.import_from(str(target), stop_at)
    assert everything(other) == before
    other.close()


@pytest.mark.parametrize(
    ("table", "column", "cell", "sentence"),
    [
        ("machine", "travel_x_mm", "wide", "travel_x_mm: “wide” is not a number; correct it."),
        ("machine", "id", "1.5", "id: “1.5” is not a whole number; correct it."),
        ("machine", "motion", "sideways", "motion: “sideways” is not one of the words it may hold; correct it."),
        ("machine", "drives", "{", "drives: “{” is not a list or group of values in JSON; correct it."),
        ("machine", "drives", "[]", "drives: “[]” is not a list or group of values in JSON; correct it."),
        ("machine", "travel_x_mm", "", "travel_x_mm is empty; fill it in."),
        ("event", "at", "yesterday\x07", "at: “yesterday?” is not a date and time such as 2026-07-01T12:00:00+00:00"),
        ("attachment", "content", "?", "content: “?” is not the content of a file in base 64; correct it."),
        ("machine", "travel_x_mm", "nan", "travel_x_mm: “nan” is not a number; correct it."),
        ("machine", "version", "4294967296", "version: “4294967296” is not a whole number; correct it."),
        ("event", "machine_id", "9", "machine_id: there is no machine 9 in this file; correct it."),
    ],
)
def test_a_cell_at_fault_is_named_and_nothing_is_imported(exported, table, column, cell, sentence):
    rewrite(exported / f"{table}.csv", 2, column, cell)
    other = open_store(":memory:")
    report = other.storage.import_from(str(exported))
    assert report.refused
    place, said = report.lines[0]
    assert (place, said[: len(sentence)]) == (f"{table}.csv, line 2", sentence)
    assert set(report.added.values()) == {0}
    assert other.machines() == ()
    other.close()


def test_lines_tables_and_columns_at_fault(exported):
    trials = exported / "trial.csv"
    trials.write_text(trials.read_text("utf-8-sig").replace("sizeerror", "sizeerror,more", 1) + ",,\n", "utf-8-sig")
    (exported / "lot.csv").unlink()
    setting = exported / "setting.csv"
    setting.write_text(setting.read_text("utf-8-sig").replace("because", "why"), "utf-8-sig")
    other = open_store(":memory:")
    report = other.storage.import_from(str(exported / "about.csv"))
    said = dict(report.lines)
    assert said["lot.csv"] == "The file is missing; export anew."
    assert said["setting.csv, line 1"].startswith("The columns must be: id, name, machine_id,")
    assert (
        said["trial.csv, line 3"]
        == f"{TRIAL_COLUMNS + 1} cells instead of {TRIAL_COLUMNS}; give every column its cell."
    )
    other.close()


def test_a_number_given_twice(exported):
    lots = exported / "lot.csv"
    lines = lots.read_text("utf-8-sig").splitlines(keepends=True)
    lots.write_text("".join([*lines, lines[1]]), "utf-8-sig")
    other = open_store(":memory:")
    report = other.storage.import_from(str(exported))
    assert report.lines == (
        ("lot.csv, line 3", "id 1 is there twice; correct one."),
        ("lot.csv, line 3", "name Slate 7 is there twice; correct one."),
    )
    other.close()


def test_blank_lines_at_the_end_are_nothing(exported):
    lots = exported / "lot.csv"
    text = lots.read_text("utf-8-sig")
    lots.write_text(text + "," * text.splitlines()[0].count(",") + "\r\n", "utf-8-sig")
    other = open_store(":memory:")
    assert other.storage.import_from(str(exported)).added["lot"] == 1
    other.close()


@pytest.mark.parametrize(
    ("name", "content", "sentence"),
    [
        ("a.json", b"{\n[", "is not JSON from line 2 on; export anew"),
        ("a.json", b"[" * 100_000, "is no export of this program"),
        ("a.json", b"[]", "is no export of this program"),
        ("a.json", b'{"rows":{}}', "is no export of this program"),
        ("a.json", b"\xff\xfe", "is not UTF-8 text"),
        (
            "a.json",
            b'{"program":"slipgauge","tables":"0999","rows":{}}',
            "was exported with tables 0999; this program reads",
        ),
        ("a.csv", b"x", "is no export of this program; choose a folder that holds about.csv"),
        ("about.csv", b"program\n", "is no export of this program"),
        ("about.csv", b'program,tables\n"', "about.csv, line 2: a quotation mark is not closed"),
        ("none.json", None, "is not there or is not a file"),
    ],
)
def test_files_that_are_no_export(tmp_path, name, content, sentence):
    if content is not None:
        (tmp_path / name).write_bytes(content)
    store = open_store(":memory:")
    with pytest.raises(InputError, match=sentence) as caught:
        store.storage.import_from(str(tmp_path / name))
    assert caught.value.field == "file"
    store.close()


def test_records_at_fault_in_json(shop, tmp_path):
    file = tmp_path / "all.json"
    shop.storage.export_json(str(file))
    found = json.loads(file.read_text("utf-8"))
    del found["rows"]["lot"]
    found["rows"]["machine"][0] |= {"name": 5, "travel_x_mm": "1", "travel_y_mm": True, "note": None, "id": True}
    found["rows"]["event"][0] |= {"at": 7}
    found["rows"]["trial"][1].pop("note")
    file.write_text(json.dumps(found), "utf-8")
    other = open_store(":memory:")
    report = other.storage.import_from(str(file))
    assert [said for place, said in report.lines if place == "machine, record 1"] == [
        "id: “True” is not a whole number; correct it.",
        "name: “5” is not one of the words it may hold; correct it.",
        "travel_x_mm: “1” is not a number; correct it.",
        "travel_y_mm: “True” is not a number; correct it.",
        "note is empty; fill it in.",
    ]
    said = dict(report.lines)
    assert said["lot"] == "The table is missing; export anew."
    assert said["event, record 1"].startswith("at: “7” is not a date")
    assert said["trial, record 2"].startswith("The columns must be: id, subject")
    other.close()


# Beside what is there


def test_an_import_into_the_shop_it_came_from_adds_nothing(shop, exported):
    before = everything(shop)
    report = shop.storage.import_from(str(exported))
    assert (set(report.added.values()), report.already, report.lines) == ({0}, sum(map(len, before.values())), ())
    assert everything(shop) == before


def test_two_shops_become_one(shop, exported, empty):
    other = open_store(empty)
    own = other.add_machine(Machine("Own"))
    same = other.add_machine(Machine("=Bramble", note="another one of that name"))
    other.keep(Trial("drive", own.id))
    other.log_event(Event("belt_changed", own.id))
    parts: list[float] = []
    report = other.storage.import_from(str(exported), parts.append)
    assert (parts[-1], parts) == (1.0, sorted(parts))
    assert report.lines == (
        ("machine.csv, line 2", "“=Bramble” is on record already with other values; those on record hold."),
    )
    assert report.added == {name: len(rows) - (name == "machine") for name, rows in everything(shop).items()}
    (size,) = other.trials("sizeerror", same.id, other.lots()[0].id)
    assert size.used == (2,)
    assert other.trial(2).readings == shop.trial(1).readings
    assert other.settings(same.id)[0].trial_id == size.id
    assert other.in_force("scale_x", same.id, size.lot_id).serial == size.serial > other.trial(1).serial
    assert other.draft("sizeerror", same.id).readings == {"raw": ["10,1", ""]}
    (event,) = other.events(same.id, kind="belt_changed")
    (photo,) = other.attachments(event_id=event.id)
    assert (event.note, other.attachment_content(photo.id)) == ("\tnew belt", bytes(range(256)))
    assert other.storage.check() == ()
    again = other.storage.import_from(str(exported))
    assert set(again.added.values()) == {0}
    other.close()


def test_an_open_trial_on_record_holds(shop, exported):
    other = open_store(":memory:")
    machine = other.add_machine(replace(shop.machines()[0], id=None))
    other.save_draft(Trial("sizeerror", machine.id, readings={"raw": ["9.9"]}))
    report = other.storage.import_from(str(exported))
    assert [said for _, said in report.lines] == [
        "A trial is open here for the same subject, machine and lot; keep or discard it, then import again."
    ]
    assert other.draft("sizeerror", machine.id).readings == {"raw": ["9.9"]}
    other.close()


def test_a_result_of_a_trial_on_record_holds(shop, exported):
    before = everything(shop)
    rewrite(exported / "result.csv", 2, "value", "7")
    report = shop.storage.import_from(str(exported))
    assert report.lines[0][1] == "The result 2 is on record already with other values; those on record hold."
    assert everything(shop) == before


def test_rows_that_point_into_their_own_table_follow(shop, tmp_path):
    first = shop.log_event(Event("nozzle_changed", 1))
    shop.log_event(Event("taken_back", 1, takes_back=first.id))
    shop.storage.export_json(str(tmp_path / "all.json"))
    other = open_store(":memory:")
    other.log_event(Event("moved"))
    assert other.storage.import_from(str(tmp_path / "all.json")).lines == ()
    found = other.events()
    back = next(event for event in found if event.kind == "taken_back")
    assert next(event for event in found if event.id == back.takes_back).kind == "nozzle_changed"
    other.close()


def test_a_long_report_ends(shop, exported, monkeypatch):
    monkeypatch.setattr("core.records.merge.LINES_LIMIT", 1)
    for column in ("travel_x_mm", "travel_y_mm", "travel_z_mm"):
        rewrite(exported / "machine.csv", 2, column, "wide")
    report = shop.storage.import_from(str(exported))
    assert report.lines[1][1] == "… and 2 more lines."


# Moving


def test_a_shop_moves_to_another_database(shop, empty):
    parts: list[float] = []
    there = shop.storage.copy_to(empty, parts.append)
    assert (there, parts[-1]) == (shop.storage.contents(), 1.0)
    other = open_store(empty)
    assert everything(other) == everything(shop)
    assert other.keep(Trial("drive", 1)).id == 5
    with pytest.raises(InputError, match="There are records in .* already; name an empty database") as caught:
        shop.storage.copy_to(empty)
    assert caught.value.field == "where"
    other.close()
    with pytest.raises(InputError, match="is this database; name another one"):
        shop.storage.copy_to(shop.where)


def test_rows_that_do_not_arrive_stop_the_move(shop, tmp_path, monkeypatch):
    monkeypatch.setattr(storage, "copy_all", lambda source, target, step: None)
    with pytest.raises(StoreError, match="Not every row arrived in .*other.sqlite; nothing was moved"):
        shop.storage.copy_to(str(tmp_path / "other.sqlite"))


def test_a_stopped_move_leaves_the_other_database_empty(shop, empty):
    with pytest.raises(StoppedError):
        shop.storage.copy_to(empty, stop)
    other = open_store(empty)
    assert other.trials() == ()
    other.close()
    assert shop.storage.copy_to(empty).newest == shop.storage.contents().newest


class LeftError(Exception):
    """What a step raises to stop the work."""


def test_a_check_can_be_stopped_while_the_pages_are_looked_at(shop, monkeypatch):
    """One statement of SQLite looks at all pages of a file, which takes seconds for a large shop."""
    monkeypatch.setattr(backup, "_LOOK_EVERY", 50)  # instructions
    told = []

    def step(part):
        told.append(part)
        raise LeftError

    with pytest.raises(LeftError):
        shop.storage.check(step)
    assert max(told) <= 0.2  # before any row is read
    assert shop.storage.check() == ()  # and nobody asks any more


def test_a_look_into_a_copy_can_be_stopped(shop, monkeypatch):
    made = shop.storage.back_up()
    monkeypatch.setattr(backup, "_LOOK_EVERY", 50)
    told = []
    assert shop.storage.preview(made.file, told.append).rows == shop.storage.contents().rows
    assert told == sorted(told) and 0.0 < told[0] <= told[-1] <= 1.0

    def stop(part):
        raise LeftError

    with pytest.raises(LeftError):
        shop.storage.preview(made.file, stop)
