"""A look at the board: a thousand machines, a million readings in a hundred thousand kept trials.

Reading is held against the same statements by bare sqlite3; the page until its machines stand, against the same
statements and a bare table of Qt with a row for each machine. How long it takes until every walk and every drift is
worked out, while the keyboard answers, and how long one machine's walk takes, has no peer: it is told alone.
"""

from __future__ import annotations

import gc
import json
import os
import random
import sqlite3
import tempfile
import time
from collections.abc import Iterator
from contextlib import closing
from functools import partial
from pathlib import Path

from tests.benchmarks.sidebyside import Contest, Way

TITLE = "Board"
READINGS = 10  # of a trial
_BREATH_S = 0.0005  # between two turns of the event loop: a worker reads beside it
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
_LENGTHS_MM = [10.0 * number for number in range(1, READINGS + 1)]
_RAW = json.dumps(
    {
        "kind": ["outside"] * READINGS,
        "axis": ["x", "y"] * (READINGS // 2),
        "feature": [f"outside {length:g}" for length in _LENGTHS_MM],
        "nominal_mm": _LENGTHS_MM,
        "measured_mm": [length + 0.05 for length in _LENGTHS_MM],
        "raw": [f"{length + 0.05:.2f}" for length in _LENGTHS_MM],
    }
)
_AT = "2026-06-01 12:00:00.000000"
_NEWEST = (
    "SELECT machine_id, lot_id, subject, gives, max(serial) FROM trial WHERE state = 'kept' "
    "GROUP BY machine_id, lot_id, subject, gives"
)
_IN_USE = (
    "SELECT id, serial, subject, machine_id, lot_id, instrument_id, kept_at, gives, verdict FROM trial "
    "WHERE serial IN ({numbers}) AND state = 'kept'"
)


_CHARTED = ("wall_outset", "reversal_x", "reversal_y")
_SERIES = (
    "SELECT trial.id, trial.kept_at, result.value, result.u, result.dof, result.unit, trial.machine_id, trial.lot_id "
    "FROM trial JOIN result ON trial.id = result.trial_id WHERE result.name = ? AND trial.state = 'kept' "
    "ORDER BY trial.kept_at, result.id"
)


def contests(quick: bool) -> Iterator[Contest]:
    from app.context import Context
    from app.pages.shop.boardreader import read_board
    from core.records.store import open_store

    machines, lots, trials = (20, 5, 400) if quick else (1000, 200, 100_000)
    said = f"{machines} machines, {trials * READINGS} readings"
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "shop.sqlite"
        build(path, machines, lots, trials)
        store = open_store(path)
        context = Context(store)
        with closing(sqlite3.connect(path)) as bare:
            yield Contest(
                "newest",
                f"which trials are the newest: {said}",
                Way("Store.newest_kept", store.newest_kept),
                (Way("the same statement by sqlite3", lambda: bare.execute(_NEWEST).fetchall(), rows_apart),),
                (0.0, "rows"),
                rounds=9,
            )
            yield Contest(
                "records",
                f"all that the board rests on: {said}",
                Way("read_board", partial(read_board, context)),
                (Way("the same statements by sqlite3", partial(read_bare, bare), kept_apart),),
                (0.0, "trials"),
                rounds=9,
            )
            some = read_board(context)
            yield Contest(
                "walk",
                f"walk of one machine: {said}",
                Way("Board.line", lambda: some.line(some.machines[len(some.kept) // 2])),
            )
            yield from page_contests(context, bare, said)
        store.close()


def page_contests(context, bare: sqlite3.Connection, said: str) -> Iterator[Contest]:
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from PySide6.QtWidgets import QApplication

    from app.theme import apply_theme

    app = QApplication.instance() or QApplication(["slipgauge"])
    apply_theme(app, dark=False)
    yield Contest(
        "page",
        f"page opened until the machines stand: {said}",
        Way("the page Board", partial(open_page, app, context, until_complete=False)),
        (Way("bare QTableView, sqlite3", partial(open_table, app, bare), names_apart),),
        (0.0, "rows"),
        rounds=5,
    )
    yield Contest(
        "complete",
        f"page opened until all walks and drifts are worked out: {said}",
        Way("the page Board", partial(open_page, app, context, until_complete=True)),
        rounds=3,
    )
    yield Contest(
        "wait",
        f"longest time the keyboard waits meanwhile: {said}",
        Way("the page Board", partial(longest_wait, app, context), tells=True),
        rounds=3,
    )


def open_page(app, context, *, until_complete: bool) -> list[str]:
    """Open the page and return the names of its rows."""
    from app.pages.shop.board import BoardPage

    page = BoardPage(context)
    page.resize(1080, 720)
    page.show()
    app.processEvents()
    while not page.model.rows or (until_complete and not page.is_complete()):
        app.processEvents()
        time.sleep(_BREATH_S)
    names = [row.machine.name for row in page.model.rows]
    page.close()
    page.deleteLater()
    app.processEvents()
    return names


def longest_wait(app, context) -> float:
    """Seconds of the longest turn of the event loop between the first paint and the last machine."""
    from app.pages.shop.board import BoardPage

    gc.collect()
    gc.disable()  # as in the program, which collects garbage between two looks at the keyboard: see app.garbage
    page = BoardPage(context)
    page.resize(1080, 720)
    page.show()
    app.processEvents()
    longest = 0.0
    while not page.is_complete():
        begun = time.perf_counter()
        app.processEvents()
        longest = max(longest, time.perf_counter() - begun)
        time.sleep(_BREATH_S)
    page.close()
    page.deleteLater()
    app.processEvents()
    gc.enable()
    return longest


def open_table(app, bare: sqlite3.Connection) -> list[str]:
    """The least that shows the machines: the same rows read, a table of plain items."""
    from PySide6.QtGui import QStandardItem, QStandardItemModel
    from PySide6.QtWidgets import QTableView

    names, *_ = read_bare(bare)
    model = QStandardItemModel(len(names), 5)
    for place, name in enumerate(names):
        for column, text in enumerate((name, "", "", "", "")):
            model.setItem(place, column, QStandardItem(text))
    table = QTableView()
    table.setModel(model)
    table.resize(1080, 720)
    table.show()
    app.processEvents()
    table.close()
    table.deleteLater()
    app.processEvents()
    return names


def read_bare(bare: sqlite3.Connection):
    """Names of machines and lots, the trials that any machine rests on, events, settings and checks, as plain rows."""
    newest = bare.execute(_NEWEST).fetchall()
    numbers = sorted(serials_wanted(newest))
    kept = []
    for start in range(0, len(numbers), 10_000):
        some = numbers[start : start + 10_000]
        kept += bare.execute(_IN_USE.format(numbers=", ".join("?" * len(some))), some).fetchall()
    rest = [bare.execute(f"SELECT * FROM {table}").fetchall() for table in ("used", "event", "setting", "lot")]
    rest += [bare.execute(_SERIES, (name,)).fetchall() for name in _CHARTED]
    names = [row[0] for row in bare.execute("SELECT name FROM machine ORDER BY name")]
    return names, {row[1] for row in kept}, rest


def serials_wanted(newest) -> set[int]:
    """What ours asks for too: the core says which of the newest trials a machine rests on."""
    from core.guidance.board import loaded_lots, serials_by_machine
    from core.records.rows import NewestKept

    found = [NewestKept(*row) for row in newest]
    return {serial for some in serials_by_machine(found, loaded_lots(found)).values() for serial in some}


def rows_apart(ours, other) -> float:
    return float(len(set(map(tuple, ours)) ^ set(other)))


def kept_apart(board, other) -> float:
    return float(len({trial.serial for some in board.kept.values() for trial in some} ^ other[1]))


def names_apart(ours: list[str], other: list[str]) -> float:
    return float(len(set(ours) ^ set(other)))


def build(path: Path, machines: int, lots: int, trials: int) -> None:
    """Write the shop in a few statements: kept one by one it would take an hour."""
    from core.records.store import open_store

    open_store(path).close()
    belt = '{"kind": "belt", "pitch_mm": 2.0, "teeth": 20}'
    drives = f'{{"x": {belt}, "y": {belt}, "z": {belt}}}'
    chance = random.Random(5)
    loaded = [chance.randrange(1, lots + 1) for _ in range(machines + 1)]
    rows, results = [], []
    subjects = list(GIVES)
    for number in range(1, trials + 1):
        machine, subject = 1 + number % machines, chance.choice(subjects)
        lot = None if subject not in OF_LOT else loaded[machine] if chance.random() < 0.5 else chance.randrange(1, lots)
        gives = "\n".join(sorted(GIVES[subject]))
        kept = (number, subject, machine, lot, "kept", _RAW, "{}", "[]", "", "", _AT, _AT, "", "", number, gives)
        rows.append(kept)
        results += [(number, name, chance.gauss(0.0, 1.0), 0.1, 9.0, "mm") for name in GIVES[subject]]
    with closing(sqlite3.connect(path)) as bare, bare:
        bare.executemany(
            "INSERT INTO machine (id, name, motion, travel_x_mm, travel_y_mm, travel_z_mm, drives, note, version) "
            "VALUES (?, ?, 'cartesian', 220, 220, 220, ?, '', 1)",
            [(number, f"Bay {number}", drives) for number in range(1, machines + 1)],
        )
        bare.executemany(
            "INSERT INTO lot (id, name, material, colour, note) VALUES (?, ?, 'PETG', '', '')",
            [(number, f"Slate {number}") for number in range(1, lots + 1)],
        )
        bare.executemany(f"INSERT INTO trial ({_columns()}) VALUES ({', '.join('?' * 16)})", rows)
        bare.executemany("INSERT INTO result (trial_id, name, value, u, dof, unit) VALUES (?, ?, ?, ?, ?, ?)", results)


def _columns() -> str:
    return (
        "id, subject, machine_id, lot_id, state, readings, conditions, verdict, method, note, started_at, kept_at, "
        "withdrawn_because, author, serial, gives"
    )
