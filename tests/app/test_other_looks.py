"""No text is cut where words are longer than the English ones, letters larger than usual, or the screen is at 200 %.

German texts are a third longer on the whole, short ones more (common practice among translators, no source).
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from itertools import combinations

import pytest
from PySide6.QtCore import QSettings, QSignalBlocker, Qt, QTranslator
from PySide6.QtGui import QFont, QFontInfo, QFontMetrics
from PySide6.QtWidgets import (
    QApplication,
    QLayout,
    QLineEdit,
    QStyle,
    QStyleOptionFrame,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from app import language
from app.context import Context
from app.mainwindow import MainWindow
from app.pages import PAGES
from app.pages.shop.logmodel import LogModel
from app.theme import apply_theme
from app.widgets.fields import ChoiceField
from app.widgets.plaintable import PlainTable
from app.widgets.plotpane import PlotPane
from app.widgets.resultcard import ResultCard
from app.widgets.trialpicker import TrialPicker
from core.records.rows import Instrument, Lot, Machine, Trial, TrialState
from tests.app.test_every_page import BELT, SCREW, cut_texts, shared_alt_keys
from tests.app.test_inches import texts
from tests.shots.__main__ import FILLS

LONGER_RATIO = 0.4
WORDS = ["aber", "noch", "etwas", "mehr", "Worte", "hier", "dazu", "und", "dann", "weiter", "so", "fort"]
ENDS = ".:…,?! "
LARGE_POINTS = 18.0  # twice the usual
HEADING_SIDES_PX = 8  # beside a heading
POINTED = re.compile(r"(?<![\d.])\d+\.\d+(?![\d.]*\.\d)(?!\d)")
LINE_SIDE_PX = 2  # beside the text of a line, within its frame and padding: Qt's own
NAMED = ("Bramble", "Slate 7", "Caliper 2")
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


def cut_names(window) -> list[str]:
    """Every name in a table, every choice and every hint in an empty line stands there whole.

    What a person named may be longer than its room, and so may an entry of the log, which stands whole beside it.
    """
    cut = []
    for table in [table for table in window.findChildren(QTableView) if table.isVisible()]:
        model, side = table.model(), table.style().pixelMetric(QStyle.PixelMetric.PM_FocusFrameHMargin, None, table) + 1
        for column in range(0 if isinstance(model, LogModel) else model.columnCount()):
            texts = {str(model.index(row, column).data() or "") for row in range(model.rowCount())}
            widest = max(texts, key=table.fontMetrics().horizontalAdvance, default="")
            needed = table.fontMetrics().horizontalAdvance(widest) + 2 * side
            if not table.isColumnHidden(column) and needed > table.columnWidth(column):
                cut.append(f"“{widest}”: {needed} px in {table.columnWidth(column)}")
    for field in [field for field in window.findChildren(ChoiceField) if field.isVisible()]:
        cut += [f"“{text}” of “{field.accessibleName()}”" for text in cut_choices(field)]
    for line in [line for line in window.findChildren(QLineEdit) if line.isVisible() and line.placeholderText()]:
        needed, room = line.fontMetrics().horizontalAdvance(line.placeholderText()), line_room(line)
        cut += [f"“{line.placeholderText()}”: {needed} px in {room}"] if needed > room else []
    return cut


def pointed_numbers(window) -> list[str]:
    """Return what shows a number with a point where the locale has a comma; what a person typed stays as typed."""
    told = texts(window.centralWidget())
    for table in window.findChildren(QTableView):
        rows, columns = table.model().rowCount(), table.model().columnCount()
        told += [str(table.model().index(row, column).data() or "") for row in range(rows) for column in range(columns)]
    for plot in [plot for plot in window.findChildren(PlotPane) if plot.isVisible()]:
        told += [plot.data.summary, *(str(tip) for series in plot.data.points for tip in series.tips)]
    return sorted({text for text in told if POINTED.search(text)})


def cut_choices(field: ChoiceField) -> list[str]:
    """Every text of a choice, but for names that a person gave."""
    before, cut = field.currentIndex(), []
    with QSignalBlocker(field):
        for place in range(0 if isinstance(field, TrialPicker) else field.count()):
            field.setCurrentIndex(place)
            named = any(name in field.currentText() for name in NAMED)
            cut += [field.currentText()] if field.shown_text() != field.currentText() and not named else []
        field.setCurrentIndex(before)
    return cut


def line_room(line: QLineEdit) -> int:
    """Return how wide a text in an empty line may be."""
    option = QStyleOptionFrame()
    line.initStyleOption(option)
    inside = line.style().subElementRect(QStyle.SubElement.SE_LineEditContents, option, line)
    return inside.width() - 2 * LINE_SIDE_PX


def laid_out(layout: QLayout) -> Iterator[QWidget]:
    """Yield what a layout and those in it place, as far as it is in sight."""
    for item in (layout.itemAt(place) for place in range(layout.count())):
        if item.layout() is not None:
            yield from laid_out(item.layout())
        elif item.widget() is not None and item.widget().isVisible():
            yield item.widget()


def placed(window: QWidget) -> list[tuple[QWidget, list[QWidget]]]:
    """Return every part of a window that lays others out, with those."""
    hosts = [part for part in (window, *window.findChildren(QWidget)) if part.layout() is not None and part.isVisible()]
    return [(host, list(laid_out(host.layout()))) for host in hosts]


def misplaced(window: QWidget) -> list[str]:
    """Return what lies over what stands beside it, or reaches beyond what it stands in."""
    found = []
    for host, parts in placed(window):
        found += [f"{called(part)} reaches beyond {called(host)}" for part in parts
                  if not host.rect().contains(part.geometry())]
        found += [f"{called(one)} lies over {called(other)}" for one, other in combinations(parts, 2)
                  if one.geometry().intersects(other.geometry())]
    return found


def called(part: QWidget) -> str:
    return f"{type(part).__name__} “{part.accessibleName() or part.objectName()}”"


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
        names = cut_headings(window) + cut_names(window) if headings else []
        found[entry.key] = cut_texts(window) + misplaced(window) + names
        if entry.key in FILLS:
            FILLS[entry.key](window._body.currentWidget())
            rest()
            more = cut_headings(window) + cut_names(window) if headings else []
            found[f"{entry.key}, filled"] = cut_texts(window) + misplaced(window) + more
            found[f"{entry.key}, told"] = untold(window._body.currentWidget())
        found[f"{entry.key}, points"] = pointed_numbers(window) if headings else []
        found[f"{entry.key}, keys"] = [f"{keys}: {texts}" for keys, texts in shared_alt_keys(window).items()]
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


def test_a_cut_name_choice_or_hint_would_be_found(qtbot):
    holder = QWidget()
    qtbot.addWidget(holder)
    table = PlainTable("parts", ("Part",), parent=holder)
    table.set_rows([("Window right x",)])
    table.resize(60, 100)
    choice, line = ChoiceField([("a", "yes"), ("b", "micrometer or caliper")], parent=holder), QLineEdit(holder)
    choice.resize(80, 30)
    line.setPlaceholderText("machine or filament lot")
    line.resize(80, 30)
    holder.show()
    rest()
    assert [text.partition("”")[0] for text in cut_names(holder)] == [
        "“Window right x", "“micrometer or caliper", "“machine or filament lot"]
    assert choice.value() == "a"


def test_what_lies_over_its_neighbour_or_beyond_its_place_would_be_found(qtbot):
    holder = QWidget()
    qtbot.addWidget(holder)
    column = QVBoxLayout(holder)
    for name in ("one", "two", "three"):
        line = QLineEdit()
        line.setObjectName(name)
        column.addWidget(line)
    holder.show()
    rest()
    assert misplaced(holder) == []
    one, _, three = holder.findChildren(QLineEdit)
    one.resize(one.width(), 60)
    three.move(three.x(), holder.height() - 5)
    assert misplaced(holder) == [
        "QLineEdit “three” reaches beyond QWidget “”", "QLineEdit “one” lies over QLineEdit “two”"]


def test_a_change_of_theme_moves_nothing(qtbot, qapp, store, tmp_path):
    """Where a list of kept trials came after the first layout, too: Qt keeps old sizes of a choice until then."""
    window = MainWindow(QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat))
    qtbot.addWidget(window)
    window.resize(1000, 700)
    window.show()
    window.open_shop(Context(store, window), "top")
    for key in ("top", "speed"):
        window.enter_page(key)
        rest()
        page = window.page_in_view()
        page.picker.offer([Trial(page.subject, id=105083, state=TrialState.KEPT, kept_at=datetime.now(UTC))])
        rest()
        before = [part.geometry().getRect() for _, parts in placed(page) for part in parts]
        for dark in (True, False):
            apply_theme(qapp, dark)
            rest()
            assert [part.geometry().getRect() for _, parts in placed(page) for part in parts] == before


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
