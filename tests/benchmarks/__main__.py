"""How long things take, side by side with a peer in one run: `python -m tests.benchmarks [--rounds N] [--cold]`.

First paint is held against an empty QMainWindow, the usable window against an empty one that has imported pyqtgraph and
sqlalchemy.orm. The children of a round run one after another, so that a slow minute is slow for all of them. Prints a
table, the same as JSON, then the work of a running window and the writing of a long program. `--cold` empties the page
cache before each child (Linux, root).
"""

from __future__ import annotations

import argparse
import json
import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from tests.benchmarks import gcode, work

ROOT = Path(__file__).resolve().parents[2]
LIBRARIES = ("pyqtgraph", "sqlalchemy.orm")
TARGETS = {"first paint": 1.5, "usable, page drive": 1.25, "usable, page sizeerror": 1.25}
DROP_CACHES = Path("/proc/sys/vm/drop_caches")


def main() -> int:
    parser = argparse.ArgumentParser(description="Time the start of the window beside a bare one.")
    parser.add_argument("--rounds", type=int, default=9)
    parser.add_argument("--cold", action="store_true", help="empty the page cache before each child")
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        prepare_database(environment(Path(folder), "drive"))
        drive, sizeerror = (environment(Path(folder), page) for page in ("drive", "sizeerror"))
        children = {
            "bare window": (["bare"], drive),
            "bare window and libraries": (["bare", *LIBRARIES], drive),
            "first paint": (["painted"], drive),
            "usable, page drive": (["ready"], drive),
            "usable, page sizeerror": (["ready"], sizeerror),
        }
        times = measure(children, options.rounds, options.cold)
    report(times, options.cold)
    work.report(work.measure())
    gcode.report(gcode.measure())
    return 0


def prepare_database(environ: dict[str, str]) -> None:
    """Make a small shop where the program looks for it: what a start finds on an ordinary day."""
    code = """
from core.records.rows import Instrument, Lot, Machine
from core.records.store import default_database_path, open_store
store = open_store(default_database_path())
for number in range(5):
    store.add_machine(Machine(f"machine {number}"))
    store.add_lot(Lot(f"lot {number}", "PETG"))
store.add_instrument(Instrument("caliper"))
store.close()
"""
    subprocess.run([sys.executable, "-c", code], check=True, env=environ, cwd=ROOT)


def environment(folder: Path, page: str) -> dict[str, str]:
    """A person who looked at this page last; bytecode as a finished installation has it."""
    environ = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    settings = folder / page / "slipgauge" / "window.ini"
    settings.parent.mkdir(parents=True, exist_ok=True)
    settings.write_text(f"[General]\npage={page}\nmachine=machine 1\n")
    places = {"XDG_CONFIG_HOME": folder / page, "XDG_DATA_HOME": folder, "LOCALAPPDATA": folder, "PYTHONPATH": ROOT}
    return {**environ, **{name: str(path) for name, path in places.items()}}


def measure(
    children: dict[str, tuple[list[str], dict[str, str]]], rounds: int, cold: bool
) -> dict[str, list[float]]:
    """Seconds from the start of the process, by child; the first round only warms up."""
    times: dict[str, list[float]] = {name: [] for name in children}
    for number in range(rounds + 1):
        for name, (arguments, environ) in children.items():
            if cold:
                os.sync()
                DROP_CACHES.write_text("3")
            seconds = one_start(arguments, environ)
            if number:
                times[name].append(seconds)
    return times


def one_start(arguments: list[str], environ: dict[str, str]) -> float:
    command = [sys.executable, str(Path(__file__).with_name("startup_child.py")), *arguments]
    begun = time.monotonic()
    done = subprocess.run(command, check=True, env=environ, cwd=ROOT, stdout=subprocess.PIPE, timeout=60)
    return float(done.stdout.split()[-1]) - begun


def report(times: dict[str, list[float]], cold: bool) -> None:
    """Print medians, spread and ratios, then the same as JSON."""
    medians = {name: statistics.median(values) for name, values in times.items()}
    print("cold" if cold else "warm", f"starts, median of {len(times['bare window'])}, from process start")
    for name, values in times.items():
        print(f"  {name:28} {1000 * medians[name]:6.0f} ms   ({1000 * min(values):.0f} to {1000 * max(values):.0f})")
    ratios = {}
    for name, target in TARGETS.items():
        base = "bare window" if name == "first paint" else "bare window and libraries"
        ratios[name] = medians[name] / medians[base]
        verdict = "within" if ratios[name] <= target else "ABOVE"
        print(f"  {name:28} {ratios[name]:6.2f} times the {base}: {verdict} {target}")
    print(json.dumps({"cold": cold, "median_s": medians, "ratio": ratios, "target": TARGETS}))


if __name__ == "__main__":
    sys.exit(main())
