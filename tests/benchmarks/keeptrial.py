"""A trial kept with its readings and results, beside bare sqlite3: the same rows, the same pragmas, on the same disk.

The peer writes what ours leaves in the file and nothing more: it checks neither machine nor lot nor names, and answers
nothing. Both commit to disk (write-ahead log, synchronous FULL).
"""

from __future__ import annotations

import json
import sqlite3
import tempfile
from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime
from itertools import cycle
from pathlib import Path

from tests.benchmarks.sidebyside import Contest, Way

TITLE = "Keep a trial"
READINGS = 20
_COLUMNS = (
    "subject, machine_id, lot_id, instrument_id, state, readings, conditions, verdict, method, note, started_at, "
    "kept_at, withdrawn_because, author, serial, gives"
)


def contests(quick: bool) -> Iterator[Contest]:
    from core.records.store import open_store

    with tempfile.TemporaryDirectory() as folder:
        paths = Path(folder) / "ours.sqlite", Path(folder) / "bare.sqlite"
        for path in paths:
            _furnish(path)
        store, bare = open_store(paths[0]), _connect(paths[1])
        trial = _trial()
        yield Contest(
            "keep",
            f"a trial of {READINGS} readings and {len(trial.estimates)} results",
            Way("Store.keep", lambda: (store.keep(trial), paths[0])),
            (Way("bare sqlite3", lambda: (_keep_bare(bare, trial), paths[1]), _rows_apart),),
            (0.0, "rows"),
        )
        ours, peer = _OpenTrial(store, trial), _BareTrial(bare, trial)
        yield Contest(
            "draft",
            f"an open trial of {READINGS} readings committed with one changed",
            Way("Store.save_draft", ours.change_one),
            (Way("bare sqlite3", peer.change_one, _lists_apart),),
            (0.0, "lists"),
        )
        store.close()
        bare.close()


class _OpenTrial:
    """An open trial in the store, one reading of which is typed over each time."""

    def __init__(self, store, trial) -> None:
        self.store, self.texts = store, cycle(("10.05", "10.06"))
        self.seen = store.save_draft(replace(trial, estimates=(), verdict=()))

    def change_one(self):
        raw = [next(self.texts), *self.seen.readings["raw"][1:]]
        self.seen = self.store.save_draft(replace(self.seen, readings={**self.seen.readings, "raw": raw}), self.seen)
        return self.seen.readings


class _BareTrial:
    """The same by sqlite3, read back as ours does."""

    def __init__(self, bare: sqlite3.Connection, trial) -> None:
        self.bare, self.texts = bare, cycle(("10.05", "10.06"))
        self.seen = replace(trial, estimates=(), verdict=())
        self.number = _draft_bare(bare, self.seen, None)

    def change_one(self):
        raw = [next(self.texts), *self.seen.readings["raw"][1:]]
        self.seen = replace(self.seen, readings={**self.seen.readings, "raw": raw})
        _draft_bare(self.bare, self.seen, self.number)
        return _read_bare(self.bare, self.number)


def _lists_apart(ours, other) -> float:
    return float(sum(ours.get(key) != other.get(key) for key in {*ours, *other}))


def _furnish(path: Path) -> None:
    from core.records.rows import Instrument, Lot, Machine
    from core.records.store import open_store

    store = open_store(path)
    store.add_machine(Machine("Bay 1"))
    store.add_lot(Lot("Slate", "PETG"))
    store.add_instrument(Instrument("caliper"))
    store.close()


def _connect(path: Path) -> sqlite3.Connection:
    connection = sqlite3.connect(path, isolation_level=None)
    for pragma in ("busy_timeout=5000", "synchronous=FULL", "foreign_keys=ON"):
        connection.execute(f"PRAGMA {pragma}")
    assert connection.execute("PRAGMA journal_mode").fetchone() == ("wal",)
    return connection


def _trial():
    from core.quantity import Estimate
    from core.records.rows import Trial

    readings = {
        "feature": [f"f{i}" for i in range(READINGS)],
        "axis": ["x"] * READINGS,
        "kind": ["tooth", "notch"] * (READINGS // 2),
        "nominal_mm": [10.0 * (1 + i) for i in range(READINGS)],
        "measured_mm": [9.97 * (1 + i) for i in range(READINGS)],
        "raw": [f"{9.97 * (1 + i):.2f}" for i in range(READINGS)],
    }
    names = ("scale_x", "scale_y", "wall_outset", "lost_motion_x", "lost_motion_y")
    estimates = tuple(Estimate(name, 0.01 * i, 0.002, 12.5, "mm") for i, name in enumerate(names))
    verdict = ({"setting": "contour_offset", "value": 0.06, "because": "outside and inside are off alike"},)
    return Trial("sizeerror", 1, 1, 1, readings=readings, conditions={"tolerance": "medium"}, estimates=estimates,
                 verdict=verdict, method="sizeerror 1", author="M")  # fmt: skip


def _row(trial, state: str, at: str) -> list[object]:
    texts = [json.dumps(value) for value in (trial.readings, trial.conditions, trial.verdict)]
    places = [trial.subject, trial.machine_id, trial.lot_id, trial.instrument_id, state]
    return [*places, *texts, trial.method, trial.note, at, None if state == "open" else at, "", trial.author]


def _keep_bare(bare: sqlite3.Connection, trial) -> int:
    at = datetime.now(UTC).strftime("%Y-%m-%d %H:%M:%S.%f")
    bare.execute("BEGIN IMMEDIATE")
    serial = 1 + max(
        bare.execute(f"SELECT max(serial) FROM {table}").fetchone()[0] or 0 for table in ("trial", "setting", "event")
    )
    gives = "\n".join(sorted(estimate.name for estimate in trial.estimates))
    marks = ", ".join("?" * 16)
    row = [*_row(trial, "kept", at), serial, gives]
    number = bare.execute(f"INSERT INTO trial ({_COLUMNS}) VALUES ({marks})", row).lastrowid
    bare.executemany(
        "INSERT INTO result (trial_id, name, value, u, dof, unit) VALUES (?, ?, ?, ?, ?, ?)",
        [(number, e.name, e.value, e.u, e.dof, e.unit) for e in trial.estimates],
    )
    bare.execute("COMMIT")
    return number


def _draft_bare(bare: sqlite3.Connection, trial, number: int | None) -> int:
    at = datetime.now(UTC).strftime("%Y-%m-%d %H:%M:%S.%f")
    bare.execute("BEGIN IMMEDIATE")
    row = _row(trial, "open", at)
    if number is None:
        marks = ", ".join("?" * 17)
        statement = f"INSERT INTO trial ({_COLUMNS}, open_as) VALUES ({marks})"
        number = bare.execute(statement, [*row, None, "", "sizeerror/1/1"]).lastrowid
    else:
        statement = "UPDATE trial SET readings = ?, conditions = ?, method = ?, note = ?, author = ? WHERE id = ?"
        bare.execute(statement, [row[5], row[6], trial.method, trial.note, trial.author, number])
    bare.execute("COMMIT")
    return number


def _read_bare(bare: sqlite3.Connection, number: int) -> dict[str, object]:
    return json.loads(bare.execute("SELECT readings FROM trial WHERE id = ?", [number]).fetchone()[0])


def _rows_apart(ours, other) -> float:
    """How many rows of the newest trial in the two files differ, moments left out."""
    found = []
    for _, path in (ours, other):
        connection = sqlite3.connect(path)
        newest = "(SELECT max(id) FROM trial WHERE state = 'kept')"
        kept = connection.execute(f"SELECT {_COLUMNS} FROM trial WHERE id = {newest}").fetchone()
        names = [name.strip() for name in _COLUMNS.split(",")]
        whole = {name: value for name, value in zip(names, kept, strict=True) if name not in ("started_at", "kept_at")}
        for name in ("readings", "conditions", "verdict"):
            whole[name] = json.loads(whole[name])
        results = f"SELECT name, value, u, dof, unit FROM result WHERE trial_id = {newest} ORDER BY id"
        found.append([whole, *connection.execute(results)])
        connection.close()
    mine, its = found
    return float(abs(len(mine) - len(its)) + sum(a != b for a, b in zip(mine, its, strict=False)))
