"""The real window without a screen, in which readings are typed and kept: `python -m tests.faults.window PATH`.

It says `ready` when all is imported and waits for a line; then it says a line for everything that the window shows as
stored: `draft ID COUNT` when a finished reading has no mark against it, `kept ID COUNT` when the notice says so.
"""

import os
import re
import sys
import tempfile
from pathlib import Path

os.environ["QT_QPA_PLATFORM"] = "offscreen"

from PySide6.QtCore import QSettings, Qt, qInstallMessageHandler
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from app.context import Context
from app.mainwindow import MainWindow
from app.pages.part_size.sizeerror import SizeErrorPage
from core.guidance import sizetrial  # noqa: F401
from core.records.rows import Lot, Machine
from core.records.store import open_store
from tests.faults.seat import say

TEXTS = ("127.55", "87.69", "47.83", "7.97", "139.52", "111.61", "71.75", "31.89", "79.72", "39.86")


def open_window(path: str) -> tuple[MainWindow, SizeErrorPage]:
    """Open the window on the page, with the one machine and lot of the shop."""
    store = open_store(path)
    if not store.machines():
        store.add_machine(Machine("Bramble", drives={"x": {"kind": "belt", "pitch_mm": 2.0, "teeth": 20}}))
    if not store.lots():
        store.add_lot(Lot("Slate 7", "PETG"))
    settings = QSettings(str(Path(tempfile.gettempdir()) / "none" / "window.ini"), QSettings.Format.IniFormat)
    window = MainWindow(settings)
    context = Context(store, window)
    window.show()
    window.activateWindow()
    while not window.isActiveWindow():
        QApplication.processEvents()
    window.open_shop(context, "sizeerror")
    context.select_machine(store.machines()[0].id)
    context.select_lot(store.lots()[0].id)
    page = window.findChild(SizeErrorPage)
    page.take_focus()
    return window, page


def stored_count(page: SizeErrorPage) -> int:
    """How many readings the page shows without the mark of what is not stored."""
    return 0 if page.form.model.unsaved else sum(bool(row["raw"]) for row in page.form.model.rows())


def type_one(page: SizeErrorPage, text: str) -> None:
    """Type a reading into whatever has the keyboard, and tell what the page shows then."""
    target = QGuiApplication.focusObject()
    QTest.keyClicks(target, text)
    QTest.keyClick(target, Qt.Key.Key_Return)
    QApplication.processEvents()
    if page.draft is not None and (count := stored_count(page)):
        say("draft", page.draft.id, count)


def keep_one(window: MainWindow, page: SizeErrorPage) -> None:
    """Keep the trial, tell what the notice says, and begin new readings."""
    count = stored_count(page)
    QTest.mouseClick(page.card.keep_button, Qt.MouseButton.LeftButton)
    QApplication.processEvents()
    said = re.search(r"Trial (\d+) kept", window.notices.label.text())
    assert said, window.notices.label.text()
    say("kept", said[1], count)
    QTest.keyClick(QGuiApplication.focusObject(), Qt.Key.Key_Space)
    QApplication.processEvents()


def main(path: str) -> None:
    app = QApplication(["slipgauge"])
    qInstallMessageHandler(lambda *_said: None)
    say("ready")
    sys.stdin.readline()
    window, page = open_window(path)
    say("opened", 0, 0)
    while True:
        for text in TEXTS[sum(bool(row["raw"]) for row in page.form.model.rows()) :]:
            type_one(page, text)
        keep_one(window, page)
        app.processEvents()


if __name__ == "__main__":
    main(sys.argv[1])
