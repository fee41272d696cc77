"""The real window killed at random moments while readings are typed and kept; what it had shown must be there."""

from __future__ import annotations

import random
import sqlite3
import subprocess
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

from core.records.rows import TrialState
from core.records.store import Store, open_store

ROOT = Path(__file__).parents[2]


@dataclass
class Killed:
    """What was counted over all kills; all after `kept` must stay empty. `details` tells of each thing missing."""

    kills: int = 0
    drafts: int = 0
    kept: int = 0
    missing: int = 0
    half_kept: int = 0
    unclean: int = 0
    errors: str = ""
    details: list[str] = field(default_factory=list)


def start_window(path: Path) -> subprocess.Popen[str]:
    """Start a window that imports everything and then waits for its go."""
    return subprocess.Popen(
        [sys.executable, "-m", "tests.faults.window", str(path)],
        cwd=ROOT, text=True, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
    )  # fmt: skip


def kill_windows(path: Path, kills: int, seed: int, tell: Callable[[Killed], object] = lambda _: None) -> Killed:
    """Type and keep in one window after the other, each killed some time after it began."""
    open_store(path).close()
    chance = random.Random(seed)
    counted, trials = Killed(), set()
    following = start_window(path)
    try:
        for _ in range(kills):
            window, following = following, start_window(path)  # imports while this one is killed
            assert window.stdout and window.stdin
            assert window.stdout.readline() == "ready\n", window.communicate()[1]
            window.stdin.write("go\n")
            window.stdin.flush()
            said = [window.stdout.readline() for _ in range(chance.randrange(1, 25))]
            time.sleep(chance.uniform(0.0, 0.02))
            window.kill()
            rest, errors = window.communicate()
            counted.kills += 1
            counted.errors += errors
            lines = [line.split() for line in said + rest.splitlines(keepends=True) if line.endswith("\n")]
            _check(path, [(what, int(number), int(count)) for what, number, count in lines], counted, trials)
            tell(counted)
    finally:
        following.kill()
        following.communicate()
    store = open_store(path)
    counted.missing += sum(store.trial(number).state != TrialState.KEPT for number in trials)
    store.close()
    return counted


def _check(path: Path, said: list[tuple[str, int, int]], counted: Killed, trials: set[int]) -> None:
    store = open_store(path)
    for what, number, count in said:
        if what == "opened":
            continue
        counted.drafts += what == "draft"
        counted.kept += what == "kept"
        if what == "kept":
            trials.add(number)
        if not _is_there(store, what, number, count):
            counted.missing += 1
            counted.details.append(f"{what} {number} {count}: {store.trial(number)}; said: {said}")
    for trial in store.trials(limit=3):
        counted.half_kept += trial.state == TrialState.KEPT and not (trial.estimates and trial.verdict)
    store.close()
    with sqlite3.connect(path) as connection:
        clean = connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        counted.unclean += not (clean and connection.execute("PRAGMA foreign_key_check").fetchall() == [])
    connection.close()


def _is_there(store: Store, what: str, number: int, count: int) -> bool:
    trial = store.trial(number)  # one reading more may be there, whose line did not arrive
    found = sum(bool(raw) for raw in trial.readings["raw"])
    return found >= count and (what == "draft" or trial.state == TrialState.KEPT)
