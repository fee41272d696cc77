"""The start of the window, each in a process of its own, beside bare windows of Qt.

    first paint   our window painted, beside an empty QMainWindow painted
    usable        our page with the keyboard in its first field, beside a bare window with a pyqtgraph plot in it, and
                  beside one that has imported the database library too: what every such program has to load

Seconds count from the start of the process to the moment itself. The page cache is warm unless `--cold` empties it
before each start (Linux, root).
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from functools import partial
from pathlib import Path

from tests.benchmarks.sidebyside import Contest, Way

TITLE = "Cold start"
ROOT = Path(__file__).resolve().parents[2]
DROP_CACHES = Path("/proc/sys/vm/drop_caches")
empty_page_cache = False  # `--cold`


def contests(quick: bool) -> Iterator[Contest]:
    with tempfile.TemporaryDirectory() as folder:
        prepare_database(environment(Path(folder), "drive"))
        drive, sizeerror = (environment(Path(folder), page) for page in ("drive", "sizeerror"))
        yield Contest(
            "paint",
            "first paint",
            start("our window", ["painted"], drive),
            (start("empty QMainWindow", ["bare"], drive),),
            before=forget,
        )
        bare = (
            start("bare Qt and pyqtgraph plot", ["plot"], drive),
            start("bare Qt and plot, SQLAlchemy imported", ["plot", "sqlalchemy.orm"], drive),
        )
        window = start("our window", ["ready"], sizeerror)
        yield Contest("sizeerror", "usable, page Size error", window, bare, before=forget)
        if not quick:
            window = start("our window", ["ready"], drive)
            yield Contest("drive", "usable, page Drive", window, bare, before=forget)


def start(name: str, arguments: list[str], environ: dict[str, str]) -> Way:
    return Way(name, partial(one_start, arguments, environ), tells=True)


def one_start(arguments: list[str], environ: dict[str, str]) -> float:
    command = [sys.executable, str(Path(__file__).with_name("startup_child.py")), *arguments]
    begun = time.monotonic()
    done = subprocess.run(command, check=True, env=environ, cwd=ROOT, capture_output=True, timeout=60)
    return float(done.stdout.split()[-1]) - begun


def forget() -> None:
    """Empty the page cache where that was asked for."""
    if empty_page_cache:
        os.sync()
        DROP_CACHES.write_text("3")


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
