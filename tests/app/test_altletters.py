"""No two things in sight share an Alt letter: with it Alt only moves the keyboard between them, and does nothing.

Every page is taken in every mode, at a kept trial and at new readings, and every window that opens over it; in English
and in German. What has a letter in the texts for translators has to have been seen.
"""

from __future__ import annotations

import re
from contextlib import contextmanager
from xml.etree import ElementTree

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QSettings
from PySide6.QtWidgets import QApplication, QMessageBox

from app import language
from app.context import Context
from app.mainwindow import MainWindow
from app.newrows import ChangeInstrument
from app.pages import PAGES
from core.records.store import open_store
from tests.app.altletters import Walker
from tests.demo.opened import named, open_demo

LETTER = re.compile(r"(?<!&)&(?=\w)")
FILLED_IN = re.compile(r"\\\{\w+\\\}")
ROUNDS = 3


def rest():
    for _ in range(ROUNDS):
        QApplication.processEvents()


@contextmanager
def speaking(app, tongue):
    before = language.current_view()
    language.apply_view(app, language.View(tongue), language.TRANSLATIONS)
    yield
    language.apply_view(app, before)


@contextmanager
def window_on(store, folder):
    window = MainWindow(QSettings(str(folder / "window.ini"), QSettings.Format.IniFormat))
    context = Context(store, window)
    window.resize(1280, 800)
    window.show()
    window.open_shop(context, PAGES[0].key)
    yield window
    context.closing.emit()
    window.close()
    window.deleteLater()
    store.close()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


@contextmanager
def demo_window(folder):
    folder.mkdir()
    store = open_demo(folder)
    with window_on(store, folder) as window:
        window.context.select_machine(named(store.machines(), "Amsel"))
        window.context.select_lot(named(store.lots(), "Chalk 12"))
        window.context.select_instrument(named(store.instruments(), "Caliper 1"))
        yield window


def page_of(window, key):
    window.enter_page(key)
    rest()
    return window.page_in_view()


def through_all_pages(walker, window, ways):
    """Find the ways through every page, or go those that were found."""
    for entry in PAGES:
        page = page_of(window, entry.key)
        if entry.key in ways:
            walker.go_again(window, page, entry.key, ways[entry.key])
        else:
            ways[entry.key] = walker.go_through(window, page, entry.key)


def windows_above(walker, window):
    """What opens over the window has letters of its own: forms for new rows, what happened, the question at the end."""
    context, pickers = window.context, window.pickers
    for picker in (pickers.lot, pickers.instrument):
        picker.new_asked.emit()
        walker.look(QApplication.activePopupWidget(), "a new row")
        QApplication.activePopupWidget().hide()
    change = ChangeInstrument(context, window)
    change.show_instrument(context.instrument)
    change.open_below(pickers)
    walker.look(change, "change instrument")
    change.hide()
    pickers.happened.click()
    form = QApplication.activePopupWidget()
    form.author.setText("Kim")
    form.log("moved")
    walker.look(form, "what happened")
    form.hide()


def hand_checks(walker, window):
    """Steps of the walk after the machine was moved, and one that is skipped."""
    page = page_of(window, "walk")
    for row in range(page.steps.model().rowCount()):
        page.steps.setCurrentIndex(page.steps.model().index(row, 0))
        walker.look(window, f"step {row} of the walk, after a move")
    page.steps.setCurrentIndex(page.steps.model().index(0, 0))
    page.card.checks.words.set_texts({"note": "no time"})
    page.card.skip.click()
    page.steps.setCurrentIndex(page.steps.model().index(0, 0))
    walker.look(window, "a skipped step")


def what_follows(walker, window):
    """Buttons that stand there once something was done: compared, exported, moved, a copy about to be restored."""
    pane = page_of(window, "logbook").settings_pane
    page_of(window, "logbook").tabs.setCurrentIndex(1)
    pane.show_differences((), 3)
    walker.look(window, "a listing that agrees")
    page = page_of(window, "storage")
    page.report.begin("…")
    walker.look(window, "a work runs")
    for text in ("&Show it on all pages", "&Go on there, now and at every start"):
        page.report.say("…", QCoreApplication.translate("StoragePage", text))
        walker.look(window, "a work is done")
    page.copies.ask.setEnabled(True)
    page.copies.ask.click()
    walker.look(window, "a copy is about to be restored")


def first_window(walker, folder):
    """An empty shop, and a database that cannot be opened."""
    with window_on(open_store(":memory:"), folder) as window:
        for entry in PAGES:
            walker.look(window, f"{page_of(window, entry.key).objectName()} with nothing picked")
        window.refuse("The file is damaged.", [("yesterday", "copy.sqlite")])
        walker.look(window, "a database that cannot be opened")


def question_at_the_end(walker, window, monkeypatch):
    monkeypatch.setattr(window.page_in_view(), "save_draft", lambda: False)
    window.close()
    box = window.findChild(QMessageBox)
    walker.look(box, "what was typed last cannot be stored")
    box.reject()
    monkeypatch.undo()


@pytest.fixture(scope="module")
def walked(qapp, tmp_path_factory):
    """Both languages, one walker each."""
    walkers, ways = {}, {}
    for tongue in ("en", "de"):
        walker = walkers[tongue] = Walker()
        folder = tmp_path_factory.mktemp(tongue)
        with speaking(qapp, tongue), pytest.MonkeyPatch.context() as monkeypatch:
            with demo_window(folder / "demo") as window:
                through_all_pages(walker, window, ways)
                windows_above(walker, window)
                hand_checks(walker, window)
                what_follows(walker, window)
                question_at_the_end(walker, window, monkeypatch)
            first_window(walker, folder)
    return walkers


@pytest.mark.parametrize("tongue", ["en", "de"])
def test_no_two_things_share_an_alt_letter_in_any_mode(walked, tongue):
    assert walked[tongue].clashes == {}


@pytest.mark.parametrize("tongue", ["en", "de"])
def test_all_that_has_a_letter_was_seen(walked, tongue):
    """So that a new mode, button or window is gone through too."""
    seen = {text.partition(",")[0] for text in walked[tongue].seen} | walked[tongue].seen
    assert [text for text in texts_with_letters(tongue) if not any(map(pattern(text).fullmatch, seen))] == []


def texts_with_letters(tongue):
    messages = ElementTree.parse(language.TRANSLATIONS / "slipgauge_de.ts").iter("message")
    told = [message for message in messages if message.find("translation").get("type") != "vanished"]
    texts = {message.findtext("source" if tongue == "en" else "translation") for message in told}
    return sorted(text for text in texts if LETTER.search(text))


def pattern(text):
    """Return what fits a text with what is filled in and a unit behind it."""
    return re.compile(FILLED_IN.sub(".*", re.escape(text)) + "(, .*)?")
