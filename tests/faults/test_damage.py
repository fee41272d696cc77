"""A damaged file ends in a sentence, whatever was damaged, and is not made worse."""

import os
import random
import subprocess
import sys
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from core.errors import InputError, StoreError
from core.quantity import Estimate
from core.records.rows import Instrument, Lot, Machine, SettingInForce, Trial
from core.records.store import open_store

FLIPS = 50


@pytest.fixture(scope="module")
def content(tmp_path_factory) -> bytes:
    """A small shop: machines, lots, an instrument, kept, withdrawn and open trials."""
    path = tmp_path_factory.mktemp("whole") / "shop.sqlite"
    store = open_store(path)
    for number in range(4):
        machine = store.add_machine(Machine(f"machine {number}", drives={"x": {"teeth": 20, "pitch_mm": 2.0}}))
        lot = store.add_lot(Lot(f"lot {number}", "PLA"))
        readings = {"measured_mm": [0.1 * row for row in range(60)]}
        trial = Trial("sizeerror", machine.id, lot.id, readings=readings, verdict=({"setting": "leave"},))
        setting = SettingInForce(machine.id, lot.id, "scale_x", None, 0.002, "1")
        kept = store.keep(replace(trial, estimates=(Estimate("scale_x", 0.002, 0.001, 7.5, "1"),)), [setting])
        store.keep(replace(trial, used=(kept.id,)))
        store.withdraw(kept.id, "caliper not zeroed")
        store.save_draft(trial)
    store.add_instrument(Instrument("caliper"))
    store.close()
    return path.read_bytes()


def use_everything(path: Path) -> None:
    """Read all there is and write a little."""
    store = open_store(path)
    try:
        store.machines(), store.lots(), store.instruments(), store.newest("scale_x"), store.series("scale_x", 1)
        store.settings(1), store.in_force("scale_x", 1, 1), store.read_with(1, datetime(2026, 1, 1, tzinfo=UTC))
        store.newest_for_instrument("scale_x", 1)
        for trial in store.trials():
            store.trial(trial.id)
        draft = store.save_draft(Trial("drive", readings={"raw": ["1"]}))
        store.keep(replace(draft, estimates=(Estimate("steps", 1.0, 0.1, 3.0, "1"),)))
    finally:
        store.close()


def test_flipped_bits(tmp_path, content):
    chance = random.Random(11)
    path = tmp_path / "shop.sqlite"
    refused = 0
    for _ in range(FLIPS):
        damaged = bytearray(content)
        for _ in range(chance.choice((1, 3, 40))):
            damaged[chance.randrange(len(damaged))] ^= 1 << chance.randrange(8)
        path.write_bytes(damaged)
        try:
            open_store(path).close()
        except StoreError:
            assert path.read_bytes() == damaged
            refused += 1
            continue
        try:
            use_everything(path)
        except (StoreError, InputError) as error:
            assert error.message
    assert refused > FLIPS / 10


@pytest.mark.parametrize("page", range(4))
def test_an_overwritten_page(tmp_path, content, page):
    path = tmp_path / "shop.sqlite"
    damaged = content[: page * 4096] + random.Random(page).randbytes(4096) + content[(page + 1) * 4096 :]
    path.write_bytes(damaged)
    with pytest.raises(StoreError, match="is damaged|is not a database"):
        open_store(path)
    assert path.read_bytes() == damaged


def test_a_file_cut_short(tmp_path, content):
    path = tmp_path / "shop.sqlite"
    chance = random.Random(3)
    lengths = [1, 50, 80, 100, 511, 512, 4095, 4096, 8192, len(content) - 4096, len(content) - 1]
    for length in lengths + [chance.randrange(1, len(content)) for _ in range(30)]:
        path.write_bytes(content[:length])
        with pytest.raises(StoreError, match="is damaged|is not a database|is a database of another program"):
            open_store(path)
        assert path.read_bytes() == content[:length]


STRANGERS = {
    "a picture": b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 64,
    "a table of numbers": b"axis,kind,nominal_mm,measured_mm\nx,outside,10,10.1\n" * 100,
    "a document": b"%PDF-1.7\n" + bytes(range(256)) * 64,
    "a packed folder": b"PK\x03\x04" + bytes(range(256)) * 64,
    "nothing but zeros": b"\0" * 65_536,
    "a head and no database": b"SQLite format 3\0" + b"\xff" * 65_536,
    "a backup as text": b"PRAGMA foreign_keys=OFF;\nBEGIN TRANSACTION;\n" * 200,
}


@pytest.mark.parametrize("stranger", STRANGERS.values(), ids=list(STRANGERS))
def test_another_file_under_the_name_of_a_database(tmp_path, stranger):
    path = tmp_path / "shop.sqlite"
    path.write_bytes(stranger)
    with pytest.raises(StoreError, match="is damaged|is not a database|is a database of another program"):
        open_store(path)
    assert path.read_bytes() == stranger
    assert [file.name for file in tmp_path.iterdir()] == ["shop.sqlite"]


if os.name == "posix":
    LIMITED = """
import resource, sys
from core.errors import StoreError
from core.records.rows import Trial
from core.records.store import open_store
store = open_store(sys.argv[1])
kept = store.keep(Trial("sizeerror", readings={"raw": ["10.1"]}))
resource.setrlimit(resource.RLIMIT_FSIZE, (600_000, 600_000))
try:
    store.keep(Trial("sizeerror", readings={"raw": ["10.1"] * 200_000}))
except StoreError as error:
    print(error.message)
print(store.trials()[0].id == kept.id, store.save_draft(Trial("sizeerror")).id > kept.id)
"""

    def test_a_write_that_the_system_refuses(tmp_path):
        path = tmp_path / "shop.sqlite"
        result = subprocess.run(
            [sys.executable, "-c", LIMITED, str(path)],
            cwd=Path(__file__).parents[2],
            capture_output=True,
            text=True,
            check=True,
        )
        sentence, rest = result.stdout.splitlines()
        assert "cannot be read or written (SQLITE_IOERR_WRITE); nothing was written" in sentence
        assert rest == "True True"
        use_everything(path)
