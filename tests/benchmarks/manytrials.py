"""How long a shop of many years is searched: a hundred thousand kept trials of ten machines."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

KEPT_TRIALS = 100_000
MACHINES = 10
NAMES = 5
FIRST_S = 1767225600  # one trial a second from the beginning of 2026
READINGS = '{"raw": ["%s"]}' % ("12.345 " * 150)


def measure(path: Path, median_ms: Callable[[Callable[[], object]], float]) -> dict[str, float]:
    """Milliseconds by name, in a database that is made at this path."""
    from core.records.store import open_store

    build(path)
    store = open_store(path)
    count = len(store.series("name_0", 1))
    found = {
        f"series of one name and machine, {count} of {KEPT_TRIALS}": median_ms(lambda: store.series("name_0", 1)),
        f"newest of one name and machine, {KEPT_TRIALS} kept": median_ms(lambda: store.newest("name_0", 1)),
        f"list of 200 trials of a machine, {KEPT_TRIALS} kept": median_ms(lambda: store.trials(machine_id=1)),
    }
    store.close()
    return found


def build(path: Path) -> None:
    """Write the trials in two statements: kept one by one they would take minutes."""
    from core.records.rows import Machine
    from core.records.store import open_store

    store = open_store(path)
    for number in range(MACHINES):
        store.add_machine(Machine(f"machine {number}"))
    store.close()
    count = f"WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < {KEPT_TRIALS})"
    with closing(sqlite3.connect(path)) as connection, connection:
        connection.execute(
            "INSERT INTO trial (id, subject, machine_id, state, readings, conditions, verdict, method, note, "
            f"started_at, kept_at, withdrawn_because) {count} SELECT i, 'sizeerror', 1 + i % {MACHINES}, 'kept', ?, "
            "'{}', '[]', '', '', '2026-01-01 00:00:00.000000', "
            "strftime('%Y-%m-%d %H:%M:%f000', ? + i, 'unixepoch'), '' FROM n",
            [READINGS, FIRST_S],
        )
        connection.execute(
            f"INSERT INTO result (trial_id, name, value, u, dof, unit) {count} "
            f"SELECT i, 'name_' || (i / {MACHINES} % {NAMES}), i, 0.1, 7.5, '1' FROM n"
        )
