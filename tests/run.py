"""Set everything up and run all tests: `python3 tests/run.py [arguments for pytest]`.

Runs ruff, mypy and pytest on all processors, and ends with one line for each. With arguments only the tests they choose
are run, one after the other, and the coverage of core is not asked for.
"""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT))

from app import start  # noqa: E402

# Debian packages that the tests need beside those of the window: a database server of their own, and a reader of PDF.
TEST_PACKAGES: tuple[str, ...] = ("postgresql", "poppler-utils")
EXTRAS = "postgres,test"


def main(arguments: list[str]) -> int:
    """Run everything in the environment; return the worst exit code."""
    python = str(start.prepare(EXTRAS, (*start.SYSTEM_PACKAGES, *TEST_PACKAGES)))
    whole = ["--cov=core", "--cov-report=term-missing", "--numprocesses=auto", "--dist=loadscope",
             "--max-worker-restart=0"]
    results = [
        _run("ruff", [python, "-m", "ruff", "check", "app", "core", "resources", "tests"]),
        _run("mypy", [python, "-m", "mypy"]),
        _run("pytest", [python, "-m", "pytest", *(arguments or whole)]),
    ]
    print("\nSummary")
    for name, code, seconds in results:
        print(f"  {name:7} {'ok' if code == 0 else f'FAILED (exit code {code})':24} {seconds:6.1f} s")
    return max(code for _, code, _ in results)


def _run(name: str, command: list[str]) -> tuple[str, int, float]:
    print(f"\n== {name}", flush=True)
    begun = time.monotonic()
    environ = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}
    code = subprocess.run(command, check=False, cwd=ROOT, env=environ).returncode
    return name, abs(code), time.monotonic() - begun


if __name__ == "__main__":
    sys.exit(start.refusing(lambda: main(sys.argv[1:])))
