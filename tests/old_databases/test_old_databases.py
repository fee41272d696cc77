"""Every version of the tables that was ever released opens with all that it held."""

import math
import sqlite3
from datetime import UTC, datetime
from pathlib import Path

import pytest

from core.quantity import Estimate
from core.records.place import APPLICATION_ID
from core.records.rows import Instrument, Lot, Machine, Motion, Trial, TrialState
from core.records.store import open_store
from core.records.upgrade import KNOWN

HERE = Path(__file__).parent
DRIVES = {"x": {"kind": "belt", "teeth": 20, "pitch_mm": 2.0}}
KEPT = Trial(
    "sizeerror", 1, 1, 1, TrialState.KEPT,
    {"raw": ["10.05", "25/64in", None], "measured_mm": [10.05, 9.921875, None], "step_mm": [0.01, math.inf, 0.01]},
    {"part_temperature_c": 23.5, "tolerance": "m"},
    (Estimate("scale_x", 0.0021, 0.0004, 3.7, "1"), Estimate("wall_outset", 0.031, 0.006, 3.7, "mm")),
    ({"setting": "axis_scale", "amount": 0.0021, "unit": "1"},),
    (2,), "sizeerror 1", "größer", datetime(2026, 11, 24, 10, 30, 0, 250000, UTC),
    datetime(2026, 11, 25, 9, 19, 26, 94774, UTC), "", 3,
)  # fmt: skip


def build(version: str, path: Path) -> None:
    connection = sqlite3.connect(path, isolation_level=None)
    connection.executescript((HERE / f"{version}.sql").read_text("utf-8"))
    connection.execute(f"PRAGMA application_id={APPLICATION_ID}")
    connection.execute("PRAGMA journal_mode=WAL")
    connection.close()


def test_every_released_version_is_here():
    assert sorted(file.stem for file in HERE.glob("*.sql")) == list(KNOWN)


@pytest.mark.parametrize("version", KNOWN)
def test_an_old_database_opens_with_its_content(tmp_path, version):
    path = tmp_path / "shop.sqlite"
    build(version, path)
    store = open_store(path)
    assert store.machines() == (
        Machine("Tall one", Motion.CROSSED_BELT, 300.0, 300.0, 400.0, DRIVES, "by the window", 1, 2),
    )
    assert store.lots() == (Lot("grey 7", "PLA", "grey", "dry", 1),)
    assert store.instruments() == (
        Instrument("caliper 2", sd_hand_mm=0.008, sd_hand_dof=19, id=1),
        Instrument("caliper 3", id=2),
    )
    assert store.trial(3) == KEPT
    assert {trial.id: trial.state for trial in store.trials()} == {
        1: TrialState.WITHDRAWN, 2: TrialState.KEPT, 3: TrialState.KEPT, 4: TrialState.OPEN
    }  # fmt: skip
    assert store.trial(1).withdrawn_because == "wrong belt"
    assert store.draft("sizeerror", 1).readings == {"raw": ["20.1"]}
    assert store.newest("steps_x", 1) == (2, Estimate("steps_x", 80.0, 0.02, math.inf, "steps/mm"))
    store.close()


@pytest.mark.parametrize("version", KNOWN)
def test_an_old_database_goes_on(tmp_path, version):
    path = tmp_path / "shop.sqlite"
    build(version, path)
    store = open_store(path)
    kept = store.keep(store.draft("sizeerror", 1))
    assert kept.id == 4
    assert store.save_draft(Trial("sizeerror", 1)).id == 5
    store.close()
