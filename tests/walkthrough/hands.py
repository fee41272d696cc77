"""The hands that tell the story: they click and type on the window in view as a person does, and read it each time."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterable, Iterator
from contextlib import ExitStack, contextmanager
from datetime import timedelta
from importlib import import_module
from pathlib import Path
from typing import Any
from unittest.mock import patch

from PySide6.QtCore import QLocale, QSettings, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLineEdit, QScrollArea, QTabBar, QTableView, QWidget

from app import __main__ as program
from app.language import View, apply_view
from app.mainwindow import MainWindow
from app.options import Options
from app.pages import PAGES
from app.widgets.fields import local_text
from tests.demo.typist import LAST_DAY, Clock, shop_clock
from tests.walkthrough.sight import texts_in_sight

SIZE = 1000, 700
_BEGINS = LAST_DAY + timedelta(hours=17)  # the morning after the newest record of the demo shop
_TAKES = timedelta(seconds=10)  # between two things that are done
_LOOKS, _LOOK_MS = 1000, 20
_BEFORE_ENTER_MS = 60  # slower than a gauge that sends a reading


class Hands:
    """They work on the window that is open now.

    Attributes:
        read: what was read on the window since it was last emptied.
    """

    def __init__(self, app: QApplication) -> None:
        self.app = app
        self.read: set[str] = set()

    @property
    def window(self) -> MainWindow:
        """The window in view."""
        return next(w for w in self.app.topLevelWidgets() if isinstance(w, MainWindow) and w.isVisible())

    def page(self, key: str) -> Any:
        """Return the page in view, which must be this one."""
        assert self.window.rail.marked() == key, f"{self.window.rail.marked()} is in view"
        entry = next(entry for entry in PAGES if entry.key == key)
        return self.window.findChild(getattr(import_module(entry.module), entry.class_name))

    def look(self) -> None:
        """Let the window finish, read it, and let the clock of the shop go on."""
        for _ in range(3):
            self.app.processEvents()
        self.read |= texts_in_sight(self.window)
        Clock.here += _TAKES

    def await_window(self, ready: Callable[[MainWindow], bool]) -> None:
        """Wait until a window is open on its shop, and give it the size of the pictures."""

        def is_open() -> bool:
            windows = [w for w in self.app.topLevelWidgets() if isinstance(w, MainWindow) and w.isVisible()]
            return len(windows) == 1 and windows[0].context is not None and ready(windows[0])

        for _ in range(_LOOKS):
            if is_open():
                break
            QTest.qWait(_LOOK_MS)
        assert is_open(), "no window was opened"
        self.window.resize(*SIZE)
        self.window.activateWindow()
        self.look()

    def click(self, widget: QWidget) -> None:
        """Press a button, and scroll to it first where that is needed."""
        self.reveal(widget)
        assert widget.isVisible() and widget.isEnabled(), f"{widget} cannot be pressed"
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)
        self.look()

    def press(self, key: Qt.Key) -> None:
        """Press a key where the keyboard is."""
        QTest.keyClick(self.window.focusWidget() or self.window, key)
        self.look()

    def reveal(self, widget: QWidget) -> None:
        """Scroll until a widget is in sight."""
        self.look()
        above = widget.parentWidget()
        while above is not None:
            if isinstance(above, QScrollArea):
                above.ensureWidgetVisible(widget)
            above = above.parentWidget()
        self.look()

    def click_row(self, table: QTableView, row: int) -> None:
        """Click into a row of a table."""
        at = table.visualRect(table.model().index(row, 0)).center()
        QTest.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=at)
        self.look()

    def choose(self, box: QComboBox, text: str) -> None:
        """Open a list and choose an entry by its first letters."""
        box.showPopup()
        shown = box.view()
        place = box.findText(text, Qt.MatchFlag.MatchStartsWith)
        assert place >= 0, f"{text} is not in the list"
        shown.setCurrentIndex(box.model().index(place, box.modelColumn()))
        QTest.keyClick(shown, Qt.Key.Key_Return)
        self.look()

    def turn(self, tabs: QTabBar, place: int) -> None:
        """Click a tab."""
        QTest.mouseClick(tabs, Qt.MouseButton.LeftButton, pos=tabs.tabRect(place).center())
        self.look()

    def enter_page(self, key: str) -> None:
        """Click a heading of the list at the left, then the page below it."""
        entry = next(entry for entry in PAGES if entry.key == key)
        rail = self.window.rail
        if not rail.pages[key].isVisible():
            self.click(rail.headings[entry.shown_group()])
        self.click(rail.pages[key])

    def type_into(self, field: QLineEdit, text: str, *, then: Qt.Key = Qt.Key.Key_Tab) -> None:
        """Type over what is in a field, and go on."""
        assert field.isVisible() and field.isEnabled(), f"{field} cannot be typed into"
        field.setFocus()
        field.selectAll()
        QTest.keyClicks(field, local_text(text))
        QTest.keyClick(field, then)
        self.look()

    def read_off(self, page: Any, texts: Iterable[str]) -> None:
        """Type readings into the big field, with Enter after each."""
        for text in texts:
            line = self.window.focusWidget()
            assert line is page.form.entry.focusProxy(), f"{line} has the keyboard"
            QTest.keyClicks(line, local_text(text))
            QTest.qWait(_BEFORE_ENTER_MS)
            QTest.keyClick(line, Qt.Key.Key_Return)
            self.look()


@contextmanager
def begun(app: QApplication, folder: Path, language: str) -> Iterator[Hands]:
    """Start the program on an empty database in this folder, in a language, at a fixed moment; then put all back."""
    locale, hook = QLocale(), sys.excepthook
    with ExitStack() as stack:
        stack.enter_context(shop_clock())
        stack.enter_context(patch("app.whereabouts.datetime", Clock))
        stack.enter_context(patch.object(Clock, "here", _BEGINS))
        stack.enter_context(patch.dict(os.environ, {"XDG_DATA_HOME": str(folder)}))
        stack.enter_context(patch.object(program, "_collect_garbage_again", _let_be))
        apply_view(app, View(language))
        if language == "en":
            QLocale.setDefault(QLocale("en_GB"))
        settings = QSettings(str(folder / "window.ini"), QSettings.Format.IniFormat)
        hands = Hands(app)
        try:
            program._show_window(app, settings, Options(database=str(folder / "own.sqlite")))
            hands.await_window(lambda window: not window.is_demo)
            yield hands
        finally:
            hands.window.close()
            app.processEvents()
            apply_view(app, View())
            QLocale.setDefault(locale)
            sys.excepthook = hook


def _let_be(_window: object) -> None:
    """Leave the garbage collection of whoever runs the story as it is."""
