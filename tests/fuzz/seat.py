"""The program as it is started, on databases of its own: closed and begun again, held up by another process."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from functools import partial
from importlib import import_module
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QEvent, QSettings
from PySide6.QtWidgets import QApplication

from app.context import Context
from app.mainwindow import MainWindow
from app.options import ANEW, OPEN, Options

BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200, "microsteps": 16}
_IMPATIENT_MS = 20  # so that a locked database is told at once
_TURNS = 20  # of the loop of events, until a window has opened its shop
# Another process that writes and does not end: it holds the lock from one line of its input to the next.
_LOCKER = """
import sqlite3, sys
for path in sys.stdin:
    other = None
    try:  # only what is there: a file moved away must not come back empty
        other = sqlite3.connect(f"file:{path.strip()}?mode=rw", timeout=0.2, isolation_level=None, uri=True)
        other.execute("BEGIN EXCLUSIVE")
    except sqlite3.Error:
        pass
    print("held", flush=True)
    sys.stdin.readline()
    if other is not None:
        other.close()
    print("free", flush=True)
"""

Patch = Callable[[object, str, object], None]
Catch = Callable[[type[BaseException], BaseException, TracebackType | None], None]


class Seat:
    """Where the person sits. `window` is the one in sight; one that was closed is followed by a new one."""

    def __init__(self, app: QApplication, folder: Path, patch: Patch, catch: Catch) -> None:
        self.folder, self._app = folder, app
        self._settings = QSettings(str(folder / "fuzz.ini"), QSettings.Format.IniFormat)
        self._own = folder / "fuzz.sqlite"
        self._locker: subprocess.Popen[str] | None = None
        self._held = self._away = False
        self._empty = 0
        _patch_program(patch, catch)
        fill(self._own)
        self.begin(Options(database=str(self._own), page="sizeerror"))

    @property
    def window(self) -> MainWindow:
        """The window in sight."""
        if (seen := self._in_sight()) is None:
            self.settle()
            seen = self._in_sight()
        return seen or self.begin(Options(database=str(self._own)))

    def _in_sight(self) -> MainWindow | None:
        shown = [w for w in self._app.topLevelWidgets() if isinstance(w, MainWindow) and w.isVisible()]
        return shown[-1] if shown else None

    def ways(self) -> dict[str, Options]:
        """Return in what ways the program may be begun again."""
        self._empty += 1
        return {
            "own": Options(database=str(self._own)),
            "usual": Options(),
            "empty": Options(database=str(self.folder / f"empty{self._empty}.sqlite")),
            "demo": Options(demo=OPEN),
            "demo anew": Options(demo=ANEW),
            "no database": Options(database=str(self.folder / "binary.csv")),
            "another's": Options(database=str(self.folder / "other.sqlite")),
            "no machine": Options(database=str(self._own), page="nothing", machine="\ud800"),
        }

    def begin(self, options: Options) -> MainWindow:
        """Start the program, once the window in sight is closed; where it will not close, it stays."""
        from app.__main__ import _show_window

        if (before := self._in_sight()) is not None:
            if not before.close():
                return before
            before.deleteLater()
        window = _show_window(self._app, self._settings, options)
        for _ in range(_TURNS):
            self.settle()
            if window.context is not None:
                _pick_what_is_there(window.context)
                break
        return window

    def settle(self) -> None:
        """Let happen what is due, as the program's own loop would."""
        self._app.processEvents()
        self._app.sendPostedEvents(None, QEvent.Type.DeferredDelete)

    def hold_up(self) -> str:
        """Let another process begin to write the database, or end."""
        if self._locker is None:
            command = [sys.executable, "-c", _LOCKER]
            self._locker = subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
        says = "\n" if self._held else f"{self._own}\n"
        self._held = not self._held
        self._locker.stdin.write(says)
        self._locker.stdin.flush()
        return f"another process: {self._locker.stdout.readline().strip()}"

    def move_away(self) -> str:
        """Take the file of the database away, or bring it back where nothing has taken its place."""
        aside = self.folder / "aside.sqlite"
        if self._away and not self._own.exists():
            aside.rename(self._own)
        elif not self._away:
            self._own.rename(aside)
        self._away = not self._away
        return f"database {'moved away' if self._away else 'back'}"

    def let_go(self) -> None:
        """End what was held up or moved away."""
        if self._held:
            self.hold_up()
        if self._away:
            self.move_away()

    def leave(self) -> None:
        """Close the last window and the other process."""
        self.let_go()
        if (window := self._in_sight()) is not None and not window.close():
            window.hide()
            window.closed.emit()
        self.settle()
        if self._locker is not None:
            self._locker.communicate("")


def _pick_what_is_there(context: Context) -> None:
    """Pick a machine, a lot and an instrument, as a person does first of all."""
    store = context.store
    for picked, rows, pick in (
        (context.machine, store.machines(), context.select_machine),
        (context.lot, store.lots(), context.select_lot),
        (context.instrument, store.instruments(), context.select_instrument),
    ):
        if picked is None and rows:
            pick(rows[0].id)


def _patch_program(patch: Patch, catch: Catch) -> None:
    """Leave out of the program what a test must not do, and hear what it calls a bug."""
    import app.__main__ as program
    from core.errors import StoreError
    from core.records import store

    import_module("scipy.special")  # as the program does, but in no thread that would be left running
    report = program.report_bug

    def hear(window: MainWindow, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        if isinstance(error, StoreError):
            report(window, kind, error, trace)
        else:
            catch(kind, error, trace)

    patch(program, "report_bug", hear)
    patch(store, "open_store", partial(store.open_store, busy_timeout_ms=_IMPATIENT_MS))


def fill(path: Path) -> None:
    """Begin a database with one machine, lot and instrument."""
    from core.records.rows import Instrument, Lot, Machine
    from core.records.store import open_store

    store = open_store(path)
    store.add_machine(Machine("Bramble", drives={"x": BELT, "y": BELT}))
    store.add_lot(Lot("Slate 7", "PETG", nominal_diameter_mm=1.75))
    store.add_instrument(Instrument("Caliper 2", u_outside_zero_mm=0.006, u_inside_zero_mm=0.008))
    store.close()
