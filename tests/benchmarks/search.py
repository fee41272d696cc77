"""A shop of many years searched: a hundred thousand kept trials of ten machines, beside bare sqlite3."""

from __future__ import annotations

import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing
from functools import partial
from pathlib import Path

from tests.benchmarks.sidebyside import Contest, Way

TITLE = "Many kept trials searched"
MACHINES = 10
NAMES = 5
FIRST_S = 1767225600  # one trial a second from the beginning of 2026
READINGS = '{"raw": ["%s"]}' % ("12.345 " * 150)
_IN_USE = "FROM trial JOIN result ON trial.id = result.trial_id WHERE result.name = 'name_0' AND trial.state = 'kept'"
_SERIES = (
    "SELECT trial.id, trial.kept_at, result.value, result.u, result.dof, result.unit, trial.machine_id, trial.lot_id "
    f"{_IN_USE} AND trial.machine_id = 1 ORDER BY trial.kept_at, result.id"
)
_NEWEST = (
    f"SELECT trial.id, result.name, result.value, result.u, result.dof, result.unit {_IN_USE} "
    "AND trial.machine_id = 1 ORDER BY result.id DESC LIMIT 1"
)


def contests(quick: bool) -> Iterator[Contest]:
    from core.records.store import open_store

    count = 1_000 if quick else 100_000
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "shop.sqlite"
        build(path, count)
        store = open_store(path)
        with closing(sqlite3.connect(path)) as bare:
            found = len(store.series("name_0", 1))
            yield Contest(
                "series",
                f"series of one name and machine, {found} of {count}",
                Way("Store.series", partial(store.series, "name_0", 1)),
                (Way("the same statement by sqlite3", lambda: bare.execute(_SERIES).fetchall(), series_apart),),
                (0.0, "rows"),
            )
            yield Contest(
                "newest",
                f"newest of one name and machine of {count}",
                Way("Store.newest", partial(store.newest, "name_0", 1)),
                (Way("the same statement by sqlite3", lambda: bare.execute(_NEWEST).fetchone(), newest_apart),),
                (0.0, "values"),
            )
        store.close()


def series_apart(ours, other) -> float:
    mine = [(p.trial_id, p.value, p.u, p.dof, p.unit, p.machine_id, p.lot_id) for p in ours]
    its = [(row[0], *row[2:]) for row in other]
    return float(abs(len(mine) - len(its)) + sum(a != b for a, b in zip(mine, its, strict=False)))


def newest_apart(ours, other) -> float:
    number, e = ours
    return float(sum(a != b for a, b in zip((number, e.name, e.value, e.u, e.dof, e.unit), other, strict=True)))


def build(path: Path, count: int) -> None:
    """Write the trials in two statements: kept one by one they would take minutes."""
    from core.records.rows import Machine
    from core.records.store import open_store

    store = open_store(path)
    for number in range(MACHINES):
        store.add_machine(Machine(f"machine {number}"))
    store.close()
    numbers = f"WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < {count})"
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute(
            "INSERT INTO trial (id, subject, machine_id, state, readings, conditions, verdict, method, note, "
            f"started_at, kept_at, withdrawn_because) {numbers} SELECT i, 'sizeerror', 1 + i % {MACHINES}, 'kept', ?, "
            "'{}', '[]', '', '', '2026-01-01 00:00:00.000000', "
            "strftime('%Y-%m-%d %H:%M:%f000', ? + i, 'unixepoch'), '' FROM n",
            [READINGS, FIRST_S],
        )
        connection.execute(
            f"INSERT INTO result (trial_id, name, value, u, dof, unit) {numbers} "
            f"SELECT i, 'name_' || (i / {MACHINES} % {NAMES}), i, 0.1, 7.5, '1' FROM n"
        )
