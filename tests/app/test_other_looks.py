"""No text is cut where words are longer than the English ones, letters larger than usual, or the screen is at 200 %.

German texts are a third longer on the whole, short ones more (common practice among translators, no source).
"""

from __future__ import annotations

import os
import subprocess
import sys
from contextlib import contextmanager

import pytest
from PySide6.QtCore import QSettings, Qt, QTranslator
from PySide6.QtGui import QFont, QFontInfo, QFontMetrics
from PySide6.QtWidgets import QApplication, QTableView, QWidget

from app import language
from app.context import Context
from app.mainwindow import MainWindow
from app.pages import PAGES
from app.theme import apply_theme
from app.widgets.plaintable import PlainTable
from app.widgets.plotpane import PlotPane
from app.widgets.resultcard import ResultCard
from core.records.rows import Instrument, Lot, Machine
from tests.app.test_every_page import BELT, SCREW, cut_texts
from tests.shots.__main__ import FILLS

LONGER_RATIO = 0.4
WORDS = ["aber", "noch", "etwas", "mehr", "Worte", "hier", "dazu", "und", "dann", "weiter", "so", "fort"]
ENDS = ".:…,?! "
LARGE_POINTS = 18.0  # twice the usual
HEADING_SIDES_PX = 8  # beside a heading
ROUNDS = 10  # of the event loop, until the layout has come to rest


class LongerWords(QTranslator):
    """A language whose texts are longer: what German will be, before it is there."""

    def isEmpty(self) -> bool:
        return False

    def translate(self, context, source, disambiguation=None, n=-1):
        return "" if context.startswith("Q") else longer(source)  # Qt's own texts stay


def longer(source: str) -> str:
    """Lengthen the words of a text before its end; a short one within its last word, as compound words are."""
    words = source.rstrip(ENDS)
    end, more = source[len(words):], round(len(words) * LONGER_RATIO)
    if more < 1 or "\n" in source:
        return source
    if len(words) <= 12:
        return f"{words}{'en' * more}"[: len(words) + more] + end
    added = ""
    while len(added) < more:
        added += f" {WORDS[len(added.split()) % len(WORDS)]}"
    return f"{words}{added[:more].rstrip()}{end}"


@contextmanager
def longer_words(app):
    translator = LongerWords()
    app.installTranslator(translator)
    yield
    app.removeTranslator(translator)


@contextmanager
def large_letters(app):
    before = app.font()
    large = app.font()
    large.setPointSizeF(LARGE_POINTS)
    app.setFont(large)
    apply_theme(app, dark=False)
    assert QFontInfo(app.font()).pointSizeF() > 1.5 * QFontInfo(before).pointSizeF()
    yield
    app.setFont(before)
    apply_theme(app, dark=False)


@contextmanager
def german(app):
    before = language.current_view()
    language.apply_view(app, language.View("de"), language.TRANSLATIONS)
    yield
    language.apply_view(app, before)


@contextmanager
def as_usual(app):
    asked = float(os.environ.get("QT_SCALE_FACTOR", "1"))
    assert app.primaryScreen().devicePixelRatio() == asked
    yield


def rest():
    for _ in range(ROUNDS):
        QApplication.processEvents()


def cut_headings(window) -> list[str]:
    """Every heading of a table has the room for its widest line."""
    cut = []
    for table in [table for table in window.findChildren(QTableView) if table.isVisible()]:
        bold, head = QFont(table.font()), table.horizontalHeader()
        bold.setBold(True)
        for column in range(head.count() if head.isVisible() else 0):
            title = str(table.model().headerData(column, Qt.Orientation.Horizontal) or "")
            widest = max((QFontMetrics(bold).horizontalAdvance(line) for line in title.splitlines()), default=0)
            if not head.isSectionHidden(column) and widest + HEADING_SIDES_PX > head.sectionSize(column):
                cut.append(f"“{title}”: {widest} px in {head.sectionSize(column)}")
    return cut


def untold(page) -> list[str]:
    """Return the pictures and verdicts that somebody who cannot see them is told nothing of."""
    drawn = [plot for plot in page.findChildren(PlotPane) if plot.isVisible() and plot.data.point_count]
    verdicts = [card.body for card in page.findChildren(ResultCard) if card.isVisible()]
    return [one.accessibleName() for one in (*drawn, *verdicts) if not one.accessibleDescription()]


def cuts(qtbot, store, settings, *, headings: bool) -> dict[str, list[str]]:
    """Return what is cut or told to nobody on any page at 1000 x 700, empty or filled, with the frame around it."""
    machine = store.add_machine(Machine("Bramble", drives={"x": BELT, "y": BELT, "z": SCREW}))
    lot = store.add_lot(Lot("Slate 7", "PETG", nominal_diameter_mm=1.75))
    caliper = store.add_instrument(Instrument("Caliper 2", u_outside_zero_mm=0.006, u_inside_zero_mm=0.008))
    window = MainWindow(settings)
    qtbot.addWidget(window)
    context = Context(store, window)
    window.resize(1000, 700)
    window.show()
    window.open_shop(context, PAGES[0].key)
    window.rail.demo.setVisible(headings)
    for select, row in ((context.select_machine, machine), (context.select_lot, lot),
                        (context.select_instrument, caliper)):
        select(row.id)
    found = {}
    for entry in PAGES:
        window.enter_page(entry.key)
        rest()
        found[entry.key] = cut_texts(window) + (cut_headings(window) if headings else [])
        if entry.key in FILLS:
            FILLS[entry.key](window._body.currentWidget())
            rest()
            found[f"{entry.key}, filled"] = cut_texts(window) + (cut_headings(window) if headings else [])
            found[f"{entry.key}, told"] = untold(window._body.currentWidget())
        if window.width() > 1000 or window.height() > 700:
            found[f"{entry.key}, window"] = [f"{window.width()} x {window.height()}"]
    return {page: texts for page, texts in found.items() if texts}


LOOKS = [as_usual] if "QT_SCALE_FACTOR" in os.environ else [longer_words, german, large_letters]


@pytest.mark.parametrize("looks", LOOKS)
def test_nothing_is_cut(qtbot, qapp, store, tmp_path, looks):
    with looks(qapp):
        settings = QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)
        found = cuts(qtbot, store, settings, headings=looks is german)
    assert found == {}


def test_a_cut_heading_would_be_found(qtbot):
    holder = QWidget()
    qtbot.addWidget(holder)
    table = PlainTable("parts", ("Part of the shop", "Nominal, mm"), parent=holder)
    table.resize(120, 100)
    holder.show()
    rest()
    assert [text.partition(":")[0] for text in cut_headings(holder)] == ["“Part of the shop”"]


def test_nothing_is_cut_at_200_percent():
    """In a process of its own: the scale holds from the start of Qt."""
    where = f"{__file__}::test_nothing_is_cut[as_usual]"
    done = subprocess.run([sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", "-p", "no:xdist", where],
                          env=os.environ | {"QT_SCALE_FACTOR": "2"}, capture_output=True, text=True, timeout=300,
                          check=False)
    assert done.returncode == 0, done.stdout[-3000:]


def test_the_longer_language_is_longer():
    assert [len(longer(text)) / len(text) > 1.3 for text in ("Keep trial", "No reading yet, type the first one.")] == [
        True, True]
    assert longer("&Name").startswith("&Name") and longer("Row {row}: none.").startswith("Row {row}: none")
