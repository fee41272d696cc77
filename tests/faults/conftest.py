import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


@pytest.fixture
def seat():
    """Start other processes that use a database; `seat(path, job, name, turns)` returns one that waits for its go."""
    started = []

    def start(path: Path, job: str, name: str, turns: int) -> subprocess.Popen[str]:
        process = subprocess.Popen(
            [sys.executable, "-m", "tests.faults.seat", str(path), job, name, str(turns)],
            cwd=ROOT, text=True, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
        )  # fmt: skip
        started.append(process)
        return process

    yield start
    for process in started:
        process.kill()
        process.communicate()


def go(process: "subprocess.Popen[str]") -> None:
    """Let a seat begin, once it is ready."""
    assert process.stdout.readline() == "ready\n", process.stderr.read()
    process.stdin.write("go\n")
    process.stdin.flush()
