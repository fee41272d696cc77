"""Every version of the tables that was ever released opens with all that it held."""

import math
import sqlite3
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from core.quantity import Estimate
from core.records.place import APPLICATION_ID
from core.records.rows import (
    Attachment,
    Event,
    Instrument,
    Lot,
    Machine,
    Motion,
    SettingInForce,
    ShopValue,
    Trial,
    TrialState,
)
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
    datetime(2026, 11, 25, 9, 19, 26, 94774, UTC), "", 3, serial=3,
)  # fmt: skip

# What differs from version to version.
MACHINE = Machine("Tall one", Motion.CROSSED_BELT, 300.0, 300.0, 400.0, DRIVES, "by the window", 1, 2)
MACHINES = {
    "0001": MACHINE,
    "0002": MACHINE,
    "0003": replace(MACHINE, limits={"nozzle_mm": 0.4}, templates={"settings": "{word} {value}"}),
}
LOTS = {
    "0001": (Lot("grey 7", "PLA", "grey", "dry", id=1),),
    "0002": (
        Lot("clear 1", "PETG", id=2),
        Lot("grey 7", "PLA", "grey", "dry", "own extruder", "24/7", 1.75, 0.03, 212.5, 1, 2),
    ),
}
LOTS["0003"] = LOTS["0002"]
CHECKED = Instrument("caliper 2", sd_hand_mm=0.008, sd_hand_dof=19, id=1)
CHECKS = {"0001": CHECKED, "0002": replace(CHECKED, version=3), "0003": replace(CHECKED, version=3)}
FIRST_SETTINGS = (
    SettingInForce(1, 1, "scale_x", None, 0.0021, "1", KEPT.kept_at, 3, 2, serial=3),
    SettingInForce(
        1, None, "steps_x", 79.5, 80.0, "steps/mm", datetime(2026, 11, 25, 9, 19, 26, 90126, UTC), 2, 1, 3, serial=2
    ),
)
SETTINGS = {
    "0001": (),
    "0002": FIRST_SETTINGS,
    "0003": (
        SettingInForce(
            1, None, "steps_y", None, 80.0, "steps/mm", datetime(2026, 11, 25, 16, tzinfo=UTC), None, 4,
            prediction={"name": "scale_y", "value": 0.0, "U": 0.001, "unit": "1"}, because="read back", author="Kim",
            serial=8,
        ),
        SettingInForce(
            1, None, "steps_x", 80.0, 79.5, "steps/mm", datetime(2026, 11, 25, 15, tzinfo=UTC), None, 3,
            undoes=1, because="lost steps", author="Kim", serial=7,
        ),
        *FIRST_SETTINGS,
    ),
}  # fmt: skip
EVENTS = {
    "0003": (
        Event("belt_changed", 1, detail={"axis": "x"}, note="frayed", author="Kim",
              at=datetime(2026, 11, 25, 12, tzinfo=UTC), serial=4, id=1),
        Event("gauge_bad", instrument_id=1, author="Kim", at=datetime(2026, 11, 25, 13, tzinfo=UTC), serial=5, id=2),
        Event("belt_changed", 1, note="it was the other machine", author="Kim", takes_back=1,
              at=datetime(2026, 11, 25, 14, tzinfo=UTC), serial=6, id=3),
    )
}  # fmt: skip
PICTURE = Attachment(
    "belt.png", "image/png", event_id=1, note="the frayed end", author="Kim",
    at=datetime(2026, 11, 25, 12, tzinfo=UTC), size=4, id=1,
)  # fmt: skip
AUTHORS = ShopValue("authors", {"names": ["Kim", "Bo"]}, "Kim", datetime(2026, 11, 25, 11, 30, tzinfo=UTC), 2)


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
    assert store.machines() == (MACHINES[version],)
    assert store.lots() == LOTS[version]
    assert store.instruments() == (CHECKS[version], Instrument("caliper 3", id=2))
    assert store.settings(1) == SETTINGS[version]
    assert store.trial(3) == replace(KEPT, author="Bo" if version == "0003" else "")
    assert store.events() == EVENTS.get(version, ())
    assert store.attachments() == ((PICTURE,) if version == "0003" else ())
    assert store.shop_value("authors") == (AUTHORS if version == "0003" else None)
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
    lot, instrument = store.lots()[-1], store.instruments()[0]
    assert store.change_lot(replace(lot, spool_mass_g=200.0)).version == lot.version + 1
    assert store.change_instrument(replace(instrument, note="cleaned")).version == instrument.version + 1
    kept = store.keep(store.draft("sizeerror", 1), [SettingInForce(1, None, "steps_x", 80.0, 80.1, "steps/mm")])
    assert kept.id == 4
    assert store.in_force("steps_x", 1).new == 80.1
    assert [point.trial_id for point in store.series("scale_x", 1)] == [3]
    assert [trial.id for trial in store.read_with(1, KEPT.kept_at)] == [3]
    assert store.log_event(Event("moved", 1)).serial == kept.serial + 1
    assert store.save_draft(Trial("sizeerror", 1)).id == 5
    store.close()


def rows_of(path: Path, tables: dict[str, list[str]]) -> dict[str, list[tuple[object, ...]]]:
    """All rows of tables, in columns by name."""
    with closing(sqlite3.connect(path)) as connection:
        return {
            table: connection.execute(f"SELECT {', '.join(names)} FROM {table} ORDER BY id").fetchall()
            for table, names in tables.items()
        }


@pytest.mark.parametrize("version", KNOWN[:-1])
def test_an_upgrade_keeps_every_row_and_leaves_a_copy_of_before(tmp_path, version):
    path = tmp_path / "shop.sqlite"
    build(version, path)
    with closing(sqlite3.connect(path)) as connection:
        names = connection.execute("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
        tables = {
            name: [f'"{column[1]}"' for column in connection.execute(f"PRAGMA table_info({name})")]
            for (name,) in names.fetchall()
            if name != "alembic_version"
        }
        dump_before = list(connection.iterdump())
    before = rows_of(path, tables)
    assert {"machine", "lot", "instrument", "trial", "result", "used"} <= before.keys()
    open_store(path).close()
    assert rows_of(path, tables) == before
    (copy,) = tmp_path.glob("shop-backups/shop-*-upgrade.sqlite")
    with closing(sqlite3.connect(copy)) as connection:
        assert list(connection.iterdump()) == dump_before


@pytest.mark.parametrize("version", KNOWN)
def test_however_old_the_tables_are_those_of_a_new_file(tmp_path, version):
    made, new = tmp_path / "made.sqlite", tmp_path / "new.sqlite"
    build(version, made)
    found = []
    for path in (made, new):
        open_store(path).close()
        with closing(sqlite3.connect(path)) as connection:
            found.append(connection.execute("SELECT type, name, sql FROM sqlite_master ORDER BY name").fetchall())
    assert found[0] == found[1]
