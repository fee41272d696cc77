"""A window on a shop of its own, random hands on it, and every fault they cause."""

from __future__ import annotations

import os
import sys
import traceback
from collections import deque
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QSettings, QtMsgType, qInstallMessageHandler
from PySide6.QtWidgets import QApplication

from tests.fuzz.hands import Hands, answer_file_dialogs

BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200, "microsteps": 16}
_LAST = 6  # things done before a fault that are told with it
_SHARE = 20  # progress is told so many times


def fuzz(folder: Path, events: int, seed: int, tell: Callable[[str], object] = lambda _: None) -> list[str]:
    """Do so many random things; return each fault once, with what was done before it."""
    faults: dict[str, str] = {}
    did: deque[str] = deque(maxlen=_LAST)

    def note(fault: str) -> None:
        faults.setdefault(fault, f"{fault}\n    after: " + " | ".join(did))

    def hear(kind: QtMsgType, _context: object, message: str) -> None:
        if kind not in (QtMsgType.QtDebugMsg, QtMsgType.QtInfoMsg) and "does not support" not in message:
            note(f"Qt said: {message}")

    def catch(kind: type[BaseException], error: BaseException, trace: object) -> None:
        note("".join(traceback.format_exception(kind, error, trace)))

    before_hook, before_handler = sys.excepthook, qInstallMessageHandler(hear)
    sys.excepthook = catch
    undo: list[tuple[object, str, object]] = []

    def patch(owner: object, name: str, value: object) -> None:
        undo.append((owner, name, getattr(owner, name)))
        setattr(owner, name, value)

    answer_file_dialogs(patch, folder)
    back = Path.cwd()
    os.chdir(folder)  # whatever they write goes here
    try:
        window = _window(folder)
        hands = Hands(window, folder, seed)
        for number in range(events):
            did.append("…")
            did[-1] = hands.work()
            if not window.isVisible():
                window.show()
            if number % max(events // _SHARE, 1) == 0:
                tell(f"{number} of {events}: {len(faults)} faults")
        window.hide()
        QApplication.processEvents()
        window.context.store.close()
        window.deleteLater()
    finally:
        os.chdir(back)
        sys.excepthook = before_hook
        qInstallMessageHandler(before_handler)
        for owner, name, value in undo:
            setattr(owner, name, value)
    return list(faults.values())


def _window(folder: Path):
    from app.context import Context
    from app.mainwindow import MainWindow
    from core.records.rows import Instrument, Lot, Machine
    from core.records.store import open_store

    store = open_store(folder / "fuzz.db")
    machine = store.add_machine(Machine("Bramble", drives={"x": BELT, "y": BELT}))
    lot = store.add_lot(Lot("Slate 7", "PETG", nominal_diameter_mm=1.75))
    caliper = store.add_instrument(Instrument("Caliper 2", u_outside_zero_mm=0.006, u_inside_zero_mm=0.008))
    window = MainWindow(QSettings(str(folder / "fuzz.ini"), QSettings.Format.IniFormat))
    context = Context(store, window)
    window.resize(1280, 800)
    window.show()
    window.open_shop(context, "sizeerror")
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    context.select_instrument(caliper.id)
    return window
