from pathlib import Path

import pytest

from core.errors import StoreError
from core.records.backup import folder_of
from core.records.rescue import copies_of, rescue
from core.records.rows import Machine
from core.records.store import open_store


class LeftError(Exception):
    """What a step raises to stop the work."""


@pytest.fixture
def damaged(tmp_path):
    """A file that cannot be opened, with a copy of before, and a log beside it."""
    path = tmp_path / "shop.sqlite"
    store = open_store(path)
    store.add_machine(Machine("A"))
    store.storage.back_up()
    store.close()
    path.write_bytes(path.read_bytes()[:9000])
    return path


def test_a_copy_takes_the_place_of_a_damaged_file(damaged):
    before = damaged.read_bytes()
    with pytest.raises(StoreError, match="is damaged"):
        open_store(damaged)
    damaged.with_name("shop.sqlite-wal").write_bytes(b"what is left of a log")
    (copy,) = copies_of(damaged)
    aside = rescue(damaged, copy.file)
    assert aside.read_bytes() == before
    assert aside.with_name(aside.name + "-wal").read_bytes() == b"what is left of a log"
    store = open_store(damaged)
    assert [machine.name for machine in store.machines()] == ["A"]
    assert copies_of(damaged) == (copy,)
    store.close()


def test_a_file_that_is_gone_comes_back(damaged):
    damaged.unlink()
    rescue(damaged, copies_of(damaged)[0].file)
    store = open_store(damaged)
    assert len(store.machines()) == 1
    store.close()


def test_a_bad_copy_changes_nothing(damaged):
    before = damaged.read_bytes()
    (copy,) = copies_of(damaged)
    Path(copy.file).write_bytes(Path(copy.file).read_bytes()[:5000])
    with pytest.raises(StoreError, match="is damaged"):
        rescue(damaged, copy.file)
    assert damaged.read_bytes() == before


def test_a_disk_that_refuses_is_said(damaged, monkeypatch):
    before = damaged.read_bytes()

    def refuse(path, target):
        raise PermissionError(13, "no")

    monkeypatch.setattr(Path, "replace", refuse)
    with pytest.raises(StoreError, match="write-protected"):
        rescue(damaged, copies_of(damaged)[0].file)
    assert damaged.read_bytes() == before


def test_what_has_no_copies(tmp_path):
    assert copies_of(":memory:") == copies_of("://") == copies_of(tmp_path / "none.sqlite") == ()


def test_a_rescue_that_is_stopped_while_the_copy_is_looked_at_changes_nothing(damaged):
    before = damaged.read_bytes()
    (copy,) = copies_of(damaged)
    told = []

    def step(part):
        told.append(part)
        if part > 0.5:  # everything in the copy is being read
            raise LeftError

    with pytest.raises(LeftError):
        rescue(damaged, copy.file, step)
    assert told == sorted(told)
    assert damaged.read_bytes() == before
    assert [file.name for file in folder_of(damaged).iterdir()] == [Path(copy.file).name]
