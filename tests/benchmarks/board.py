"""How long a look at the board takes: a thousand machines, a million readings in a hundred thousand kept trials.

Beside it, in the same run, the same statement by the bare database driver, and what it costs where its index is away.
`python -m tests.benchmarks.board` prints the times alone.
"""

from __future__ import annotations

import os
import random
import sqlite3
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

MACHINES, LOTS, TRIALS, READINGS = 1000, 200, 100_000, 10
GIVES = {
    "reversal": ("reversal_x", "reversal_y"),
    "squareness": ("squareness_xy",),
    "bedplane": ("bed_flatness", "bed_tilt_x", "bed_tilt_y"),
    "feed": ("feed_ratio", "feed_steps_mm"),
    "wall": ("flow_ratio_wall",),
    "ceiling": ("flow_ceiling_240c",),
    "sizeerror": ("scale_x", "scale_y", "wall_outset", "lost_motion_x", "lost_motion_y"),
}
OF_LOT = ("wall", "ceiling", "sizeerror")
_ROW = '"raw": [%s], "measured_mm": [%s]'
_RAW = "{%s}" % (_ROW % (", ".join(['"10.05"'] * READINGS), ", ".join(["10.05"] * READINGS)))
_AT = "2026-06-01 12:00:00.000000"
_NEWEST = (
    "SELECT machine_id, lot_id, subject, gives, max(serial) FROM trial WHERE state = 'kept' "
    "GROUP BY machine_id, lot_id, subject, gives"
)


def measure(path: Path, median_ms: Callable[[Callable[[], object]], float]) -> dict[str, float]:
    """Milliseconds by name, in a database that is made at this path."""
    from app.context import Context
    from app.pages.shop.boardreader import read_board
    from core.records.store import open_store

    build(path)
    store = open_store(path)
    context = Context(store)
    board = read_board(context)
    some = board.machines[:50]
    found = {
        "board: read what 1000 machines rest on": median_ms(lambda: read_board(context)),
        "board: the newest trials by the store": median_ms(store.newest_kept),
        "board: walk of one machine": median_ms(lambda: [board.line(machine) for machine in some]) / len(some),
    }
    store.close()
    with closing(sqlite3.connect(path)) as bare:
        found["board: the newest trials by bare sqlite3"] = median_ms(lambda: bare.execute(_NEWEST).fetchall())
        bare.execute("DROP INDEX ix_trial_state")
        found["board: the same without its index"] = median_ms(lambda: bare.execute(_NEWEST).fetchall())
    return found


def build(path: Path) -> None:
    """Write the shop in a few statements: kept one by one it would take an hour."""
    from core.records.store import open_store

    open_store(path).close()
    belt = '{"kind": "belt", "pitch_mm": 2.0, "teeth": 20}'
    drives = f'{{"x": {belt}, "y": {belt}, "z": {belt}}}'
    chance = random.Random(5)
    loaded = [chance.randrange(1, LOTS + 1) for _ in range(MACHINES + 1)]
    trials, results = [], []
    subjects = list(GIVES)
    for number in range(1, TRIALS + 1):
        machine, subject = 1 + number % MACHINES, chance.choice(subjects)
        lot = None if subject not in OF_LOT else loaded[machine] if chance.random() < 0.5 else chance.randrange(1, LOTS)
        gives = "\n".join(sorted(GIVES[subject]))
        kept = (number, subject, machine, lot, "kept", _RAW, "{}", "[]", "", "", _AT, _AT, "", "", number, gives)
        trials.append(kept)
        results += [(number, name, chance.gauss(0.0, 1.0), 0.1, 9.0, "mm") for name in GIVES[subject]]
    with closing(sqlite3.connect(path)) as bare, bare:
        bare.executemany(
            "INSERT INTO machine (id, name, motion, travel_x_mm, travel_y_mm, travel_z_mm, drives, note, version) "
            "VALUES (?, ?, 'cartesian', 220, 220, 220, ?, '', 1)",
            [(number, f"Bay {number}", drives) for number in range(1, MACHINES + 1)],
        )
        bare.executemany(
            "INSERT INTO lot (id, name, material, colour, note) VALUES (?, ?, 'PETG', '', '')",
            [(number, f"Slate {number}") for number in range(1, LOTS + 1)],
        )
        bare.executemany(f"INSERT INTO trial ({_columns()}) VALUES ({', '.join('?' * 16)})", trials)
        bare.executemany("INSERT INTO result (trial_id, name, value, u, dof, unit) VALUES (?, ?, ?, ?, ?, ?)", results)


def _columns() -> str:
    return (
        "id, subject, machine_id, lot_id, state, readings, conditions, verdict, method, note, started_at, kept_at, "
        "withdrawn_because, author, serial, gives"
    )


def _median_ms(work: Callable[[], object], rounds: int = 7) -> float:
    times = []
    for _ in range(rounds):
        begun = time.perf_counter()
        work()
        times.append(1000 * (time.perf_counter() - begun))
    return statistics.median(times)


def measure_page(path: Path) -> dict[str, float]:
    """Milliseconds until the page stands, until every walk is worked out, and until every drift is."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from PySide6.QtWidgets import QApplication

    from app.context import Context
    from app.pages.shop.board import BoardPage
    from core.records.store import open_store

    app = QApplication.instance() or QApplication(["slipgauge"])
    store = open_store(path)
    page = BoardPage(Context(store))
    begun = time.perf_counter()
    found, longest = {}, 0.0
    page.show()
    app.processEvents()
    found["board page: machines stand"] = 1000 * (time.perf_counter() - begun)
    while not page.is_complete():
        slice_begun = time.perf_counter()
        app.processEvents()
        longest = max(longest, time.perf_counter() - slice_begun)
        if all(row.line for row in page.model.rows):
            found.setdefault("board page: all walks worked out", 1000 * (time.perf_counter() - begun))
    found["board page: all drifts worked out"] = 1000 * (time.perf_counter() - begun)
    found["board page: longest time the keyboard waited"] = 1000 * longest
    store.close()
    return found


def main() -> int:
    """Print the times, and those of the page until every machine is worked out."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "shop.sqlite"
        build(path)
        found = measure_page(path)
        path.unlink()
        for name, milliseconds in {**measure(path, _median_ms), **found}.items():
            print(f"  {name:45} {milliseconds:8.1f} ms")
    return 0


if __name__ == "__main__":
    sys.exit(main())
