"""The program on a shop of its own, random hands on it, and every fault they cause."""

from __future__ import annotations

import gc
import os
import sys
import traceback
from collections import deque
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from PySide6.QtCore import QLocale, QtMsgType, qInstallMessageHandler
from PySide6.QtWidgets import QApplication

from app.language import apply_view, current_view
from app.theme import apply_theme
from core.records.store import open_store
from tests.fuzz.hands import Hands, answer_file_dialogs
from tests.fuzz.seat import Patch, Seat

_LAST = 6  # things done before a fault that are told with it
_SHARE = 20  # progress is told so many times
# Said by the platform without a screen, and by Qt of pictures that are none.
_EXPECTED = ("does not support", "qt.gui.imageio")


def fuzz(folder: Path, events: int, seed: int, tell: Callable[[str], object] = lambda _: None) -> list[str]:
    """Do so many random things; return each fault once, with what was done before it."""
    faults: dict[str, str] = {}
    did: deque[str] = deque(maxlen=_LAST)

    def note(fault: str) -> None:
        faults.setdefault(fault, f"{fault}\n    after: " + " | ".join(did))

    def hear(kind: QtMsgType, context: object, message: str) -> None:
        said = f"{getattr(context, 'category', '')} {message}"
        if kind not in (QtMsgType.QtDebugMsg, QtMsgType.QtInfoMsg) and not any(one in said for one in _EXPECTED):
            note(f"Qt said: {message}")

    def catch(kind: type[BaseException], error: BaseException, trace: object) -> None:
        note("".join(traceback.format_exception(kind, error, trace)))

    before_hook, before_handler = sys.excepthook, qInstallMessageHandler(hear)
    sys.excepthook = catch
    try:
        with _as_before() as patch, _in_folder(folder):
            answer_file_dialogs(patch, folder)
            seat = Seat(QApplication.instance(), folder, patch, catch)
            hands = Hands(seat, seed)
            for number in range(events):
                did.append("…")
                try:
                    did[-1] = hands.work()
                except Exception:  # noqa: BLE001
                    note(traceback.format_exc())
                if number % max(events // _SHARE, 1) == 0:
                    tell(f"{number} of {events}: {len(faults)} faults")
            seat.leave()
            for wrong in _wrong_on_record(folder):
                note(f"The database says: {wrong}")
    finally:
        sys.excepthook = before_hook
        qInstallMessageHandler(before_handler)
    return list(faults.values())


def _wrong_on_record(folder: Path) -> tuple[str, ...]:
    """Ask the database that was worked in whether all that it holds is whole."""
    store = open_store(folder / "fuzz.sqlite")
    try:
        return store.storage.check()
    finally:
        store.close()


@contextmanager
def _in_folder(folder: Path) -> Iterator[None]:
    """Whatever is written goes there, the person's own data too."""
    back, named = Path.cwd(), {name: os.environ.get(name) for name in ("XDG_DATA_HOME", "HOME")}
    os.chdir(folder)
    os.environ.update(dict.fromkeys(named, str(folder)))
    try:
        yield
    finally:
        os.chdir(back)
        for name, value in named.items():
            if value is None:
                del os.environ[name]
            else:
                os.environ[name] = value


@contextmanager
def _as_before() -> Iterator[Patch]:
    """Give what puts another thing in a place; at the end all places and the looks of the program are as before."""
    app, view, locale, collects = QApplication.instance(), current_view(), QLocale(), gc.isenabled()
    gc.disable()  # as the program: a worker's thread must not take widgets apart, see app.garbage
    undo: list[tuple[object, str, object]] = []

    def patch(owner: object, name: str, value: object) -> None:
        undo.append((owner, name, getattr(owner, name)))
        setattr(owner, name, value)

    try:
        yield patch
    finally:
        for owner, name, value in reversed(undo):
            setattr(owner, name, value)
        apply_view(app, view)
        QLocale.setDefault(locale)
        apply_theme(app, dark=False)
        gc.unfreeze()
        if collects:
            gc.enable()
