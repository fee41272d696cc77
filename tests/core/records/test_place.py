import errno
import os
import sqlite3
import stat
import sys
import threading
from pathlib import Path

import pytest

from core.errors import StoreError
from core.records import place
from core.records.place import Place, default_database_path, file_place, identity, prepare, sqlite_address
from core.records.store import open_store

HOME = Path.home()


@pytest.mark.parametrize(
    ("system", "variable", "value", "expected"),
    [
        ("linux", "XDG_DATA_HOME", "", HOME / ".local/share/slipgauge/slipgauge.sqlite"),
        ("linux", "XDG_DATA_HOME", "not/absolute", HOME / ".local/share/slipgauge/slipgauge.sqlite"),
        ("linux", "XDG_DATA_HOME", str(HOME / "elsewhere"), HOME / "elsewhere/slipgauge/slipgauge.sqlite"),
        ("darwin", "XDG_DATA_HOME", "", HOME / "Library/Application Support/slipgauge/slipgauge.sqlite"),
        ("win32", "LOCALAPPDATA", "", HOME / "AppData/Local/slipgauge/slipgauge.sqlite"),
        ("win32", "LOCALAPPDATA", str(HOME / "data"), HOME / "data/slipgauge/slipgauge.sqlite"),
    ],
)
def test_the_usual_path_lies_in_the_data_folder_of_the_user(monkeypatch, system, variable, value, expected):
    monkeypatch.setattr(sys, "platform", system)
    monkeypatch.setenv(variable, value)
    assert default_database_path() == expected


def test_a_system_without_a_home_is_said(monkeypatch, tmp_path):
    def no_home():
        raise RuntimeError

    monkeypatch.setattr(Path, "home", no_home)
    for call in (default_database_path, lambda: file_place("~/shop.sqlite")):
        with pytest.raises(StoreError, match="This system tells no home folder; name a file"):
            call()
    open_store(tmp_path / "shop.sqlite").close()  # a file that is named needs no home


def test_the_usual_folder_is_made(monkeypatch, tmp_path):
    monkeypatch.setattr(place, "default_database_path", lambda: tmp_path / "a" / "b" / "shop.sqlite")
    open_store(tmp_path / "a" / "b" / "shop.sqlite").close()
    assert [file.name for file in (tmp_path / "a" / "b").iterdir()] == ["shop.sqlite"]


def test_another_missing_folder_is_not_made(tmp_path):
    with pytest.raises(StoreError, match="The folder .*absent does not exist; make it first"):
        open_store(tmp_path / "absent" / "shop.sqlite")
    assert list(tmp_path.iterdir()) == []


def test_a_path_does_not_depend_on_the_current_folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    store = open_store("shop.sqlite")
    monkeypatch.chdir("/")
    assert store.where == str(tmp_path / "shop.sqlite")
    assert store.machines() == ()
    store.close()
    assert file_place("~/shop.sqlite").path == HOME / "shop.sqlite"


@pytest.mark.parametrize("name", ["with space.sqlite", "100%?#&.sqlite", "größe.sqlite"])
def test_any_name_of_a_file(tmp_path, name):
    open_store(tmp_path / name).close()
    open_store(str(tmp_path / name)).close()
    assert [file.name for file in tmp_path.iterdir()] == [name]


def test_a_drive_letter_gets_its_slash():
    assert sqlite_address(Path("C:/data/shop.sqlite"), "rw") == "file:///C%3A/data/shop.sqlite?mode=rw"


def test_a_name_that_no_file_can_have():
    with pytest.raises(StoreError, match="cannot be the name of a file"):
        open_store("a\0b.sqlite")


def test_a_path_through_a_file(path):
    with pytest.raises(StoreError, match="cannot be opened; check that its disk is there"):
        open_store(path / "shop.sqlite")


def test_a_folder_is_not_a_database(tmp_path):
    with pytest.raises(StoreError, match=f"{tmp_path} is a folder or a device, not a file; name a file"):
        open_store(tmp_path)


def test_an_empty_file_may_be_what_is_left(tmp_path):
    path = tmp_path / "shop.sqlite"
    path.touch()
    with pytest.raises(StoreError, match="is an empty file, perhaps what is left of a database"):
        open_store(path)
    assert path.read_bytes() == b""


def test_a_file_that_another_seat_is_beginning_is_waited_for(path, tmp_path):
    begun = tmp_path / "begun.sqlite"
    begun.touch()
    timer = threading.Timer(0.02, begun.write_bytes, [path.read_bytes()])
    timer.start()
    open_store(begun).close()
    timer.join()


def test_no_database_at_all(tmp_path):
    path = tmp_path / "letter.txt"
    path.write_text("Dear reader, " * 100)
    before = path.read_bytes()
    with pytest.raises(StoreError, match="letter.txt is not a database; it was left as it is"):
        open_store(path)
    assert path.read_bytes() == before


@pytest.mark.parametrize("mode", ["DELETE", "WAL"])
def test_the_database_of_another_program_is_left_as_it_is(tmp_path, mode):
    path = tmp_path / "other.db"
    other = sqlite3.connect(path, isolation_level=None)
    other.execute(f"PRAGMA journal_mode={mode}")
    other.execute("CREATE TABLE machine (id)")
    files = {file.name: file.read_bytes() for file in tmp_path.iterdir()}
    with pytest.raises(StoreError, match="is a database of another program; it was left as it is"):
        open_store(path)
    assert {file.name: file.read_bytes() for file in tmp_path.iterdir()} == files
    other.close()


def test_the_first_page_is_ours_from_the_start(tmp_path):
    path = tmp_path / "shop.sqlite"
    prepare(file_place(path))
    assert path.read_bytes()[68:72] == b"SLGA"
    open_store(path).close()  # and what a crash left at that moment opens


def test_two_seats_that_begin_the_same_file(tmp_path, monkeypatch):
    path = tmp_path / "shop.sqlite"
    is_dir = Path.is_dir

    def other_seat_is_quicker(folder):
        path.write_bytes(b"theirs")
        return is_dir(folder)

    monkeypatch.setattr(Path, "is_dir", other_seat_is_quicker)
    prepare(file_place(path))
    assert path.read_bytes() == b"theirs"


@pytest.mark.parametrize(
    ("number", "words"),
    [
        (errno.ENOSPC, "is full; nothing was written"),
        (errno.EACCES, "is write-protected"),
        (errno.EIO, "cannot be opened"),
    ],
)
def test_a_disk_that_refuses_the_first_page_keeps_no_half_of_it(tmp_path, monkeypatch, number, words):
    def refuse(_file):
        raise OSError(number, "refused")

    monkeypatch.setattr(os, "fsync", refuse)
    with pytest.raises(StoreError, match=words):
        prepare(file_place(tmp_path / "shop.sqlite"))
    assert list(tmp_path.iterdir()) == []


def test_a_log_without_its_file_is_not_given_to_a_new_one(path):
    log = path.with_name("shop.sqlite-wal")
    log.write_bytes(b"the last entries")
    path.unlink()
    with pytest.raises(StoreError, match="is gone, but shop.sqlite-wal beside it may hold its last entries"):
        open_store(path)
    assert [file.name for file in path.parent.iterdir()] == ["shop.sqlite-wal"]


def test_a_last_page_cut_short_is_damage_unless_a_log_may_hold_it(path):
    whole = path.read_bytes()
    path.write_bytes(whole[:-1])
    with pytest.raises(StoreError, match="is damaged"):
        open_store(path)
    path.with_name("shop.sqlite-wal").touch()
    prepare(file_place(path))


def test_memory_needs_no_preparation():
    assert prepare(Place(":memory:")) is None
    assert identity(Place(":memory:")) == (0, 0)


def test_a_file_that_is_gone_is_no_file(path):
    assert stat.S_ISREG(path.stat().st_mode)
    assert identity(file_place(path)) != (0, 0)
    path.unlink()
    assert identity(file_place(path)) == (0, 0)


def test_half_a_letter_is_no_name():
    with pytest.raises(StoreError, match="cannot be the name of a file"):
        file_place("/tmp/\ud800.db")
