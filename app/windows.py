"""One window in the place of another: with other data, in another language, with lengths in another unit.

Every page begins anew then. The window in sight is closed first, so that what is typed in it is committed.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QSettings, QTimer
from PySide6.QtWidgets import QApplication

from app.context import Level
from app.language import LANGUAGE, apply_view, chosen_view
from app.options import HOME, Options
from app.whereabouts import remember_database
from app.widgets.fields import LineField
from app.words import shown
from core.words import tr

if TYPE_CHECKING:
    from app.mainwindow import MainWindow
    from app.pages.base import Page


@dataclass(frozen=True, slots=True)
class Shown:
    """A window, what it was begun with, and what shows another one; `show` takes a sentence to be said there last."""

    app: QApplication
    window: MainWindow
    settings: QSettings
    options: Options
    show: Callable[[QApplication, QSettings, Options, str], MainWindow]

    def show_next(self, options: Options, said: str = "") -> MainWindow:
        """Show a window begun in another way; whoever reads the help goes on with it there."""
        other = self.show(self.app, self.settings, options, said)
        if (place := self.window.help.place()) is not None:
            other.ready.connect(partial(other.help.go_on, place))
        return other


def replace_window(here: Shown, where: str, at_every_start: bool) -> None:
    """Go on with another database, or with this one as restored."""
    from core.records.demoshop import demo_path

    def open_the_other() -> None:
        if at_every_start and not here.window.is_demo:
            remember_database(here.settings, where)
        other = replace(here.options, database=where, machine=None, demo="")
        if here.options.demo and Path(where) == demo_path():  # restored: the way back to the person's own stays
            other = replace(here.options, machine=None)
        here.show_next(other, here.window.notices.label.accessibleDescription())

    _after_closing(here, open_the_other)


def visit_demo(here: Shown, way: str) -> None:
    """Go into the demo shop, OPEN or ANEW, or HOME to the person's own."""
    home = replace(here.options, page=None, machine=None, demo="")
    if way != HOME:
        other = replace(home, demo=way)
    elif here.options.demo:
        other = home
    else:  # a copy of the demo shop was opened: what was open before it nobody knows
        other = replace(home, database=None)
    _after_closing(here, partial(here.show_next, other))


def change_view(here: Shown, what: str, choice: str) -> None:
    """Go on in another language or with lengths in another unit, at the same page, picks and trial."""
    if unfinished := unfinished_form(here.window):
        here.window.say(unfinished, Level.WARNING)
        return

    def open_anew() -> None:
        here.settings.setValue(what, choice)
        now = replace(here.options, page=None, machine=None)
        now = replace(now, language=None) if what == LANGUAGE else replace(now, lengths=None)
        apply_view(here.app, chosen_view(here.settings, now.language, now.lengths))
        other = here.show_next(now)
        if (before := here.window.context) is not None:
            picked = before.machine_id, before.lot_id, before.instrument_id
            other.ready.connect(partial(_pick_again, other, here.window.rail.marked(), *picked))
            other.ready.connect(partial(_look_again, other, here.window.page_in_view()))  # after the picks

    _after_closing(here, open_anew)


def unfinished_form(window: MainWindow) -> str:
    """Say what is typed in a form that opens below a button, for such a form stores no draft; else nothing."""
    typed = (f.accessibleName() for f in window.findChildren(LineField) if f.touched() and f.window() is not window)
    name = next(typed, "")
    says = tr("“{name}” is typed in a form that is not finished; add it or empty it first.", name=name)
    return shown(says) if name else ""


def _after_closing(here: Shown, go_on: Callable[[], object]) -> None:
    """Close the window and go on with the next one, unless what is typed cannot be stored."""

    def close_it() -> None:  # later: the page that asked must not be taken away from under its own call
        here.app.setQuitOnLastWindowClosed(False)
        if here.window.close():  # what is typed is committed first
            go_on()
            here.window.deleteLater()
        here.app.setQuitOnLastWindowClosed(True)

    QTimer.singleShot(0, close_it)


def _pick_again(
    window: MainWindow, page: str, machine_id: int | None, lot_id: int | None, instrument_id: int | None
) -> None:
    if window.context is not None:
        window.context.select_machine(machine_id)
        window.context.select_lot(lot_id)
        window.context.select_instrument(instrument_id)
        window.enter_page(page)


def _look_again(window: MainWindow, before: Page | None) -> None:
    """Look at the kept trial that was in sight before, or at the readings in progress."""
    from app.pages.trialpage import TrialPage  # the window opens before another one is asked for

    page = window.page_in_view()
    if isinstance(page, TrialPage) and isinstance(before, TrialPage):
        page.picker.choose(before.kept_trial.id if before.kept_trial else None)
