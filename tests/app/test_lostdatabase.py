"""The database is moved away while the window is open: every page says so, none falls, all go on when it is back."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QFileDialog, QPushButton, QWidget

from app.context import Context
from app.pages import PAGES
from app.widgets.fields import ChoiceField, LineField
from core.records.rows import Instrument, Lot, Machine
from core.records.store import open_store

BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200, "microsteps": 16}
OTHER = "board"
MOVED = "has been moved, deleted or replaced"


@pytest.fixture
def shop(new_window, tmp_path, monkeypatch, entry):
    """A window on a shop with one of each, and the file it is in; no file dialog opens."""
    for name in ("getOpenFileName", "getSaveFileName"):
        monkeypatch.setattr(QFileDialog, name, lambda *_: ("", ""))
    monkeypatch.setattr(QDialog, "exec", lambda _: 0)
    path = tmp_path / "shop.db"
    store = open_store(path)
    machine = store.add_machine(Machine("Bramble", drives={"x": BELT, "y": BELT}))
    lot = store.add_lot(Lot("Slate 7", "PETG", nominal_diameter_mm=1.75))
    caliper = store.add_instrument(Instrument("Caliper 2"))
    window, context = new_window, Context(store, new_window)
    window.show()
    window.open_shop(context, OTHER if entry.key != OTHER else "drive")
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    context.select_instrument(caliper.id)
    yield window, path
    window.close()
    store.close()


def seen(page: QWidget, kind: type) -> list:
    return [widget for widget in page.findChildren(kind) if widget.isVisible() and widget.isEnabled()]


def busy_hands(page: QWidget) -> None:
    """Choose, type and press all that is there."""
    for field in seen(page, ChoiceField):
        field.setCurrentIndex((field.currentIndex() + 1) % max(field.count(), 1))
    for field in seen(page, LineField):
        field.setFocus()
        QTest.keyClicks(field, "12")
        QTest.keyClick(field, Qt.Key.Key_Return)
    for button in seen(page, QPushButton):
        if button.isVisible() and button.isEnabled() and button.menu() is None:
            button.click()
            QApplication.processEvents()


@pytest.mark.parametrize("before", [True, False], ids=["page seen before", "page not seen before"])
@pytest.mark.parametrize("entry", PAGES, ids=lambda entry: entry.key)
def test_a_page_without_its_database(shop, tmp_path, entry, before):
    window, path = shop
    said = []
    window.context.notice.connect(lambda text, _level: said.append(text))
    if before:
        window.enter_page(entry.key)
        window.enter_page(OTHER if entry.key != OTHER else "drive")
    path.rename(tmp_path / "aside.db")
    window.enter_page(entry.key)
    QApplication.processEvents()
    page = window._body.currentWidget()
    busy_hands(page)
    assert before or any(MOVED in text for text in said)
    (tmp_path / "aside.db").rename(path)
    window.enter_page(OTHER if entry.key != OTHER else "drive")
    window.enter_page(entry.key)
    QApplication.processEvents()
    said.clear()
    busy_hands(window._body.currentWidget())
    assert not [text for text in said if MOVED in text]


@pytest.mark.parametrize("entry", [PAGES[0]], ids=lambda entry: entry.key)
def test_a_pick_that_the_store_refused_is_not_shown_as_made(shop, tmp_path, entry):
    window, path = shop
    context, picker = window.context, window.pickers.machine
    context.store.add_machine(Machine("Thistle"))
    context.machines_changed.emit()
    path.rename(tmp_path / "aside.db")
    other = picker.findText("Thistle")
    picker.setCurrentIndex(other)
    picker.activated.emit(other)
    assert (context.machine.name, picker.currentText()) == ("Bramble", "Bramble")
    (tmp_path / "aside.db").rename(path)
    picker.setCurrentIndex(other)
    picker.activated.emit(other)
    assert (context.machine.name, picker.currentText()) == ("Thistle", "Thistle")
