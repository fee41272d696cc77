"""What comes before a shop can be opened is done beside the window, and stopped it leaves everything as it was."""

import sqlite3
import sys
from contextlib import closing
from pathlib import Path
from threading import Event

import pytest
from PySide6.QtCore import QSettings

from app.longwork import LongWork
from app.notices import Refusal
from app.options import Options
from core.records import upgrade
from core.records.backup import backups_of
from core.records.place import APPLICATION_ID
from core.records.rows import Machine
from core.records.store import open_store
from tests.old_databases.test_old_databases import HERE


@pytest.fixture
def seat(qtbot, qapp, tmp_path, monkeypatch):
    """Start the program on a database and return its window."""
    from app import __main__ as program

    monkeypatch.setattr(program, "_collect_garbage_again", lambda window: None)
    monkeypatch.setattr(sys, "excepthook", sys.excepthook)
    settings = QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)
    windows = []

    def start(path):
        windows.append(program._show_window(qapp, settings, Options(database=str(path))))
        return windows[-1]

    yield start
    for window in windows:
        window.close()


@pytest.fixture
def old(tmp_path):
    path = tmp_path / "old.sqlite"
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript((HERE / "0002.sql").read_text(encoding="utf-8"))
        connection.execute(f"PRAGMA application_id={APPLICATION_ID}")
    return path


def version(path):
    with closing(sqlite3.connect(path)) as connection:
        return connection.execute("SELECT version_num FROM alembic_version").fetchone()[0]


def is_refused(window):
    return window.findChild(LongWork) is None and window.findChild(Refusal) is not None


def test_an_older_database_is_changed_beside_the_window_and_then_opens(qtbot, seat, old):
    window = seat(old)
    qtbot.waitUntil(lambda: window.findChild(LongWork) is not None)
    work = window.findChild(LongWork)
    assert work.isVisible() and work.bar.stop.hasFocus() and work.bar.bar.accessibleName() == "Progress"
    assert window.context is None  # until it is done
    qtbot.waitUntil(lambda: window.context is not None)
    assert window.context.machine.name == "Tall one"
    qtbot.waitUntil(lambda: window.findChild(LongWork) is None)
    assert version(old) == upgrade.KNOWN[-1] and len(backups_of(old)) == 1


def test_stopped_it_stays_as_it_was_and_can_be_tried_again(qtbot, seat, old, monkeypatch):
    copied, stopped, begun = upgrade.back_up, Event(), Event()

    def wait_for_the_person(*given):
        begun.set()
        stopped.wait(5)
        return copied(*given)

    monkeypatch.setattr(upgrade, "back_up", wait_for_the_person)
    window = seat(old)
    qtbot.waitUntil(begun.is_set)
    window.findChild(LongWork).bar.stop.click()
    stopped.set()
    qtbot.waitUntil(lambda: is_refused(window))
    assert window.findChild(Refusal).sentence.text() == "Stopped; everything is as it was."
    assert version(old) == "0002" and backups_of(old) == ()
    monkeypatch.undo()
    monkeypatch.setattr(sys, "excepthook", sys.excepthook)
    window.findChild(Refusal).retry.click()
    qtbot.waitUntil(lambda: window.context is not None)
    assert version(old) == upgrade.KNOWN[-1]


@pytest.mark.parametrize("bad", [False, True])
def test_a_copy_is_put_in_place_beside_the_window(qtbot, seat, tmp_path, bad):
    path = tmp_path / "shop.sqlite"
    store = open_store(path)
    store.add_machine(Machine("Heron"))
    copy = store.storage.back_up().file
    store.close()
    path.write_bytes(path.read_bytes()[:9000])
    if bad:
        with Path(copy).open("rb+") as file:
            file.truncate(5000)
    window = seat(path)
    qtbot.waitUntil(lambda: is_refused(window))
    said = window.findChild(Refusal).sentence.text()
    window.findChild(Refusal).restore.click()
    assert window.findChild(LongWork).isVisible()
    qtbot.waitUntil(lambda: window.findChild(LongWork) is None)
    if bad:
        assert is_refused(window) and window.findChild(Refusal).sentence.text() == said
        assert "is damaged" in window.notices.label.text() and len(path.read_bytes()) == 9000
    else:
        assert window.context.machine is None or window.context.machine.name == "Heron"
        assert "The copy is in place" in window.notices.label.text()
        assert [machine.name for machine in window.context.store.machines()] == ["Heron"]
