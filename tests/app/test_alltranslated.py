"""Every word on every page goes through the translation: with each text in brackets, no word stands outside them."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QSettings, Qt, QTranslator
from PySide6.QtWidgets import QAbstractButton, QApplication, QComboBox, QLabel, QTableView, QTextEdit, QWidget

from app.context import Context
from app.mainwindow import MainWindow
from app.pages import PAGES
from core.records.rows import Instrument, Lot, Machine
from tests.shots.__main__ import FILLS

BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200, "microsteps": 16}
FILLED = ("drive", "reversal", "squareness", "bedplane", "sizeerror", "diameter", "wall")  # the quick ones
NAMES = re.compile(r"Bramble|Slate|PETG|Caliper|Slipgauge|:memory:|ISO \d+|IT\d+|Ctrl|PgDown|steps|<[^>]*>")
GAUGES = re.compile(r"\b(outer|inner|tooth|overall|window) [\w-]*( ?[xyz])?\b")  # names of rows, stored as they are
WORD = re.compile(r"[A-Za-z]{4,}")


class _Brackets(QTranslator):
    def translate(self, _context, text, _disambiguation=None, _number=-1):
        return f"⟦{text}⟧"

    def isEmpty(self) -> bool:
        return False


@pytest.fixture
def window(qtbot, tmp_path, store):
    brackets = _Brackets()
    QApplication.installTranslator(brackets)
    machine = store.add_machine(Machine("Bramble", drives={"x": BELT, "y": BELT}))
    lot = store.add_lot(Lot("Slate 7", "PETG", nominal_diameter_mm=1.75))
    caliper = store.add_instrument(Instrument("Caliper 2", u_outside_zero_mm=0.006, u_inside_zero_mm=0.008))
    found = MainWindow(QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat))
    qtbot.addWidget(found)
    context = Context(store, found)
    found.show()
    found.open_shop(context, PAGES[0].key)
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    context.select_instrument(caliper.id)
    yield found
    QApplication.removeTranslator(brackets)


def outside(text: str) -> str:
    """What of a text stands outside all brackets."""
    deep, found = 0, ""
    for sign in text:
        deep += (sign == "⟦") - (sign == "⟧")
        found += sign if deep == 0 and sign != "⟧" else ""
    return found


def texts(window: QWidget) -> Iterator[str]:
    """What a person reads or hears."""
    for widget in window.findChildren(QWidget):
        if not widget.isVisible():
            continue
        yield from (widget.accessibleName(), widget.accessibleDescription(), widget.toolTip())
        if isinstance(widget, QLabel | QAbstractButton):
            yield widget.text()
        elif isinstance(widget, QTextEdit):
            yield widget.toPlainText()
        elif isinstance(widget, QComboBox):
            yield from (widget.itemText(place) for place in range(widget.count()))
        elif isinstance(widget, QTableView) and widget.model() is not None:
            model = widget.model()
            for column in range(model.columnCount()):
                yield str(model.headerData(column, Qt.Orientation.Horizontal) or "")
                yield from (str(model.index(row, column).data() or "") for row in range(min(model.rowCount(), 12)))


def test_no_word_of_any_page_stands_outside_the_translation(window):
    left: dict[str, set[str]] = {}
    for entry in PAGES:
        window.show_page(entry.key)
        QApplication.processEvents()
        page = window._body.currentWidget()
        if entry.key in FILLED:
            FILLS[entry.key](page)
            QApplication.processEvents()
        found = (GAUGES.sub("", NAMES.sub("", outside(text))).strip() for text in texts(window))
        left |= {entry.key: words} if (words := {text for text in found if WORD.search(text)}) else {}
    assert left == {}
