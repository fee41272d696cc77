"""Shop / Storage as a person meets it: copies, restoring in two steps, export, import with its report, moving."""

from __future__ import annotations

import threading
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QFileDialog

from app import safekeeping
from app.context import Context
from app.pages.shop.storage import StoragePage
from core.errors import StoreError
from core.records.rows import BackupKind, Machine, Trial
from core.records.storage import Storage
from core.records.store import open_store
from tests.core.records.test_storage import everything, fill


@pytest.fixture
def store(tmp_path):
    """A small shop in a file."""
    store = open_store(tmp_path / "shop.sqlite")
    fill(store)
    yield store
    store.close()


@pytest.fixture
def context(qapp, store):
    context = Context(store)
    yield context
    context.closing.emit()


@pytest.fixture
def notices(context):
    said = []
    context.notice.connect(lambda text, level: said.append((text, level)))
    return said


@pytest.fixture
def page(qtbot, context, notices):
    page = StoragePage(context)
    qtbot.addWidget(page)
    page.resize(1000, 700)
    page.show()
    return page


@pytest.fixture
def asked(context):
    """The databases that the page wants opened."""
    wanted = []
    context.shop_asked.connect(lambda where, at_every_start: wanted.append((where, at_every_start)))
    return wanted


def click(qtbot, button, page):
    """Click and wait until the work is through."""
    with qtbot.waitSignal(page.job.ended):
        qtbot.mouseClick(button, Qt.MouseButton.LeftButton)


def name_file(monkeypatch, path: Path | str) -> None:
    """Answer the question for a file."""
    for question in ("getSaveFileName", "getOpenFileName"):
        monkeypatch.setattr(QFileDialog, question, lambda *_arguments: (str(path), ""))


def test_what_is_in_the_database_stands_at_the_left(page, store):
    assert page.database.where.text() == store.where
    first, second = page.database.contents.text().splitlines()
    assert first == "machines 1 · lots 1 · instruments 1 · trials 4 · events 3 · pictures 1"
    assert second.startswith("Newest trial: 4, Size error on =Bramble, 20")
    assert page.copies.folder.text().startswith("No copy yet. One is made each day")
    assert not page.copies.ask.isEnabled()
    assert page.database.warning.isHidden()


def look_at(qtbot, page, row):
    """Choose a copy and wait until it is looked into."""
    page.copies.table.selectRow(row)
    qtbot.waitUntil(lambda: not page.look.bar.job.is_running())


def test_a_copy_is_made_looked_into_and_restored_in_two_steps(qtbot, page, store, notices, asked):
    click(qtbot, page.database.back_up, page)
    (made,) = store.storage.backups()
    assert page.focusWidget() is page.database.back_up
    assert notices[-1] == (f"Copied to {made.file}.", "good")
    assert page.copies.table.rows.rows()[0][1:] == ("asked for", f"{made.size / 2**20:.1f} MiB")
    store.add_machine(Machine("Later"))
    page.shown()
    look_at(qtbot, page, 0)
    assert page.copies.preview.text().startswith("machines 1 ·")
    qtbot.mouseClick(page.copies.ask, Qt.MouseButton.LeftButton)
    assert page.copies.warning.isVisible()
    qtbot.mouseClick(page.copies.leave, Qt.MouseButton.LeftButton)
    assert not page.copies.warning.isVisible()
    assert len(store.machines()) == 2
    qtbot.mouseClick(page.copies.ask, Qt.MouseButton.LeftButton)
    click(qtbot, page.copies.restore, page)
    assert [machine.name for machine in store.machines()] == ["=Bramble"]
    assert store.storage.backups()[0].kind == BackupKind.RESTORE
    assert notices[-1][0].startswith("Restored. What was on record before is in ")
    assert asked == [(store.where, False)]


def test_a_damaged_copy_is_said_and_cannot_be_restored(qtbot, page, store):
    click(qtbot, page.database.back_up, page)
    copy = Path(store.storage.backups()[0].file)
    copy.write_bytes(copy.read_bytes()[:9000])
    look_at(qtbot, page, 0)
    assert "is damaged" in page.copies.preview.text()
    assert not page.copies.ask.isEnabled()


def test_a_look_into_a_copy_can_be_stopped_and_gives_way_to_another(qtbot, page, store, monkeypatch):
    for _ in range(2):
        click(qtbot, page.database.back_up, page)
    go_on, preview = threading.Event(), Storage.preview

    def slow(storage, file, step):
        while not go_on.wait(0.01):
            step(0.5)
        return preview(storage, file, step)

    monkeypatch.setattr(Storage, "preview", slow)
    page.copies.table.selectRow(1)
    assert (page.copies.preview.text(), page.copies.ask.isEnabled()) == ("Looking into it…", False)
    qtbot.waitUntil(page.look.bar.isVisible)  # it takes longer than a moment
    qtbot.mouseClick(page.look.bar.stop, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: not page.look.bar.isVisible())
    assert page.copies.preview.text().startswith("Stopped.") and not page.copies.ask.isEnabled()
    page.copies.table.selectRow(0)
    page.copies.table.selectRow(1)
    go_on.set()
    qtbot.waitUntil(page.copies.ask.isEnabled)
    assert page.copies.preview.text().startswith("machines 1 ·") and page.look.bar.isHidden()


def test_ctrl_s_means_a_copy(qtbot, page, store):
    with qtbot.waitSignal(page.job.ended):
        page.keep()
        page.keep()
    assert len(store.storage.backups()) == 1


def test_a_check_says_that_all_is_well_or_what_is_not(qtbot, page, monkeypatch, notices):
    click(qtbot, page.database.check, page)
    assert page.report.text.toPlainText() == "Everything was read; all of it hangs together."
    monkeypatch.setattr("core.records.storage.Storage.check", lambda storage, step: ("Row 1 of used points nowhere.",))
    click(qtbot, page.database.check, page)
    first, second = page.report.text.toPlainText().splitlines()
    assert first.startswith("Faults were found. Restore a copy that has none")
    assert second == "Row 1 of used points nowhere."
    assert notices[-1] == (first, "error")


@pytest.mark.parametrize("form", ["csv", "json"])
def test_everything_goes_out_and_comes_in(qtbot, page, store, tmp_path, monkeypatch, notices, asked, form):
    out = tmp_path / ("all.json" if form == "json" else "all")
    name_file(monkeypatch, out)
    click(qtbot, page.exchange.export_json if form == "json" else page.exchange.export_csv, page)
    assert notices[-1] == (f"Exported to {out}.", "good")
    click(qtbot, page.exchange.export_json if form == "json" else page.exchange.export_csv, page)
    assert notices[-1] == (f"{out} is there already; choose another name.", "error")
    name_file(monkeypatch, out if form == "json" else out / "about.csv")
    click(qtbot, page.exchange.import_any, page)
    rows = sum(len(rows) for rows in everything(store).values())
    assert page.report.text.toPlainText() == f"Nothing was added; {rows} rows are on record already."
    assert page.report.follow.isHidden()
    other = open_store(tmp_path / "other.sqlite")
    other.keep(Trial("drive", other.add_machine(Machine("Own")).id))
    other.storage.export_json(str(tmp_path / "other.json"))
    other.close()
    name_file(monkeypatch, tmp_path / "other.json")
    click(qtbot, page.exchange.import_any, page)
    assert page.report.text.toPlainText().startswith("Added: machine 1 · trial 1. On record already: 0 rows.")
    assert page.database.contents.text().startswith("machines 2 ·")
    qtbot.mouseClick(page.report.follow, Qt.MouseButton.LeftButton)
    assert asked == [(store.where, False)]


def test_an_import_at_fault_names_its_lines(qtbot, page, store, tmp_path, monkeypatch, notices):
    store.storage.export_csv(str(tmp_path / "all"))
    machines = tmp_path / "all" / "machine.csv"
    machines.write_text(machines.read_text("utf-8-sig").replace("delta", "sideways"), "utf-8-sig")
    name_file(monkeypatch, tmp_path / "all" / "about.csv")
    click(qtbot, page.exchange.import_any, page)
    head, line = page.report.text.toPlainText().splitlines()
    assert head == "Nothing was imported. Mend these lines, then try again."
    assert line == "machine.csv, line 2: motion: “sideways” is not one of the words it may hold; correct it."
    assert notices[-1] == (head, "warning")


def test_a_question_for_a_file_left_open_ended_begins_nothing(qtbot, page, monkeypatch):
    name_file(monkeypatch, "")
    for button in (page.exchange.export_csv, page.exchange.export_json, page.exchange.import_any):
        qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
        assert not page.job.is_running()


def test_the_shop_moves_to_a_server_and_goes_on_there(qtbot, page, store, server, asked):
    where = server.new_database()
    qtbot.keyClicks(page.exchange.target, where)
    click(qtbot, page.exchange.move_there, page)
    first, *rest = page.report.text.toPlainText().splitlines()
    assert first == "Everything is in the new database too. This window still shows the old one."
    assert rest == page.database.contents.text().splitlines()
    other = open_store(where)
    assert everything(other) == everything(store)
    other.close()
    qtbot.mouseClick(page.report.follow, Qt.MouseButton.LeftButton)
    assert asked == [(where, True)]
    click(qtbot, page.exchange.move_there, page)
    assert "There are records in" in page.exchange.target.accessibleDescription()
    assert "There are records in" not in page.report.text.toPlainText()


def test_nothing_typed_or_no_address_is_said_at_the_field_or_below(qtbot, page, notices):
    qtbot.mouseClick(page.exchange.move_there, Qt.MouseButton.LeftButton)
    assert page.exchange.target.accessibleDescription() == "Nothing is typed here yet; this one is needed."
    qtbot.keyClicks(page.exchange.target, "nosuch://host/name")
    with qtbot.waitSignal(page.job.ended):
        qtbot.keyClick(page.exchange.target, Qt.Key.Key_Return)
    assert "the driver for this kind of database is not installed" in notices[-1][0]


def test_work_is_stopped_and_changes_nothing(qtbot, page, monkeypatch, notices):
    begun = threading.Event()

    def endless(_storage, step):
        while True:
            begun.set()
            step(0.5)

    monkeypatch.setattr("core.records.storage.Storage.check", endless)
    qtbot.mouseClick(page.database.check, Qt.MouseButton.LeftButton)
    assert begun.wait(10)
    qtbot.waitUntil(lambda: page.report.bar.value() == 50)
    assert not page.database.back_up.isEnabled()
    page.shown()
    click(qtbot, page.report.stop, page)
    assert notices[-1] == ("Stopped; nothing was changed.", "warning")
    assert page.database.back_up.isEnabled()


def test_a_store_that_fails_is_said(qtbot, page, store, tmp_path, monkeypatch, notices):
    def fail(*_arguments):
        raise StoreError("The disk is full.")

    monkeypatch.setattr("core.records.storage.Storage.back_up", fail)
    click(qtbot, page.database.back_up, page)
    assert (page.report.text.toPlainText(), notices[-1]) == ("The disk is full.", ("The disk is full.", "error"))
    monkeypatch.setattr("core.records.storage.Storage.contents", fail)
    page.shown()
    assert notices[-1] == ("The disk is full.", "error")


def test_an_empty_shop_says_so(qtbot, tmp_path):
    store = open_store(tmp_path / "empty.sqlite")
    page = StoragePage(Context(store))
    qtbot.addWidget(page)
    page.show()
    assert page.database.contents.text() == "machines 0 · lots 0 · instruments 0 · trials 0 · events 0 · pictures 0"
    assert page.record() == Trial("storage")
    store.close()


def test_what_endangers_the_records_is_said_at_once(qtbot, context, monkeypatch):
    monkeypatch.setattr("core.records.storage.network_drive", lambda path: "nfs4")
    page = StoragePage(context)
    qtbot.addWidget(page)
    page.show()
    QApplication.processEvents()
    assert page.database.warning.isVisible()
    assert "lies on a network drive (nfs4)" in page.database.warning.text()


def test_of_a_server_a_copy_is_made_each_day_and_its_own_backup_is_asked_for(qtbot, server, tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    monkeypatch.setattr(safekeeping, "SOON_MS", 0)
    store = open_store(server.new_database())
    context = Context(store)
    page = StoragePage(context)
    qtbot.addWidget(page)
    page.show()
    assert page.copies.folder.text().startswith("Each day when the program starts, what the server holds is copied")
    keeper = safekeeping.look_after_soon(context)
    with qtbot.waitSignal(keeper.job.ended, timeout=30_000):
        pass
    page.recompute()
    (row,) = page.copies.table.rows.rows()
    assert row[1] == "daily" and f"In {tmp_path / 'data'}" in page.copies.folder.text()
    assert "no substitute for a backup of the server itself" in page.copies.folder.text()
    context.closing.emit()
    store.close()
