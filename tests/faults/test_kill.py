"""Nothing that the store has answered is lost when the process is killed at any moment."""

import random
import sqlite3
import subprocess
import time
from pathlib import Path

from core.records.rows import TrialState
from core.records.store import open_store
from tests.faults.conftest import go
from tests.faults.seat import READINGS_EACH, estimate

KILLS = 8
KILLS_AT_THE_FIRST_START = 3


def kill_after(process: "subprocess.Popen[str]", answers: int, wait_s: float) -> list[tuple[str, int, int]]:
    """Kill a seat some time after so many answers and return what it had said, without a last line cut short."""
    said = [process.stdout.readline() for _ in range(answers)]
    time.sleep(wait_s)
    process.kill()
    rest, errors = process.communicate()
    assert errors == ""
    said += rest.splitlines(keepends=True)
    lines = [line.split() for line in said if line.endswith("\n")]
    return [(what, int(number), int(count)) for what, number, count in lines]


def check_file(path: Path) -> None:
    connection = sqlite3.connect(path)
    assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
    assert connection.execute("PRAGMA foreign_key_check").fetchall() == []
    connection.close()


def check_said(path: Path, said: list[tuple[str, int, int]]) -> None:
    store = open_store(path)
    for what, number, count in said:
        if what == "opened":
            continue
        trial = store.trial(number)
        found = len(trial.readings["measured_mm"])
        assert found >= count  # one more may have been written whose answer did not arrive
        if what == "kept" or trial.state == TrialState.KEPT:
            assert (trial.state, found) == (TrialState.KEPT, READINGS_EACH)
            assert trial.estimates == (estimate(number),)
    store.close()


def test_what_was_acknowledged_survives_being_killed(tmp_path, seat):
    path = tmp_path / "shop.sqlite"
    open_store(path).close()
    chance = random.Random(20261)
    following = seat(path, "type", "sizeerror", 10**6)
    for _ in range(KILLS):
        process, following = following, seat(path, "type", "sizeerror", 10**6)  # imports while this one is killed
        go(process)
        answers = chance.randrange(2, 40)
        said = kill_after(process, answers, chance.uniform(0.0, 0.01))
        assert len(said) >= answers
        check_said(path, said)
        check_file(path)


def test_a_first_start_that_is_killed_leaves_a_file_that_opens(tmp_path, seat):
    chance = random.Random(7)
    following = seat(tmp_path / "0.sqlite", "type", "sizeerror", 10**6)
    for turn in range(KILLS_AT_THE_FIRST_START):
        process, following = following, seat(tmp_path / f"{turn + 1}.sqlite", "type", "sizeerror", 10**6)
        go(process)
        check_said(tmp_path / f"{turn}.sqlite", kill_after(process, 0, chance.uniform(0.0, 0.3)))
        check_file(tmp_path / f"{turn}.sqlite")
