"""Help beside the page, by keyboard."""

import re
from importlib.metadata import PackageNotFoundError
from pathlib import Path

import pytest
from PySide6.QtCore import QLocale, QPoint, QSettings, Qt, QUrl
from PySide6.QtGui import QAccessible, QTextDocument
from PySide6.QtTest import QTest

from app.helppane import HelpPane, help_path, sketch_in_language, told_by
from app.helptopics import FIRST_STEPS
from app.mainwindow import MainWindow
from app.pages import PAGES
from app.version import our_version

HELP = Path(__file__).parents[2] / "resources" / "help"


@pytest.fixture
def window(qtbot, context, tmp_path):
    window = MainWindow(QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat))
    qtbot.addWidget(window)
    window.show()
    qtbot.waitExposed(window)
    window.open_shop(context, "drive")
    return window


def test_f1_shows_the_help_of_the_page_in_view_and_escape_closes_it(qtbot, window):
    QTest.keyClick(window, Qt.Key.Key_F1)
    pane = window.findChild(HelpPane)
    assert pane.isVisible()
    assert "Purpose" in pane.text.toPlainText()
    assert pane.heading.text() == "Help: Drive"
    QTest.keyClick(window, Qt.Key.Key_PageDown, Qt.KeyboardModifier.ControlModifier)
    assert pane.heading.text() == "Help: Reversal"
    pane.setFocus()
    QTest.keyClick(pane.text, Qt.Key.Key_Escape)
    assert not pane.isVisible()
    assert not pane.isAncestorOf(window.focusWidget())


def test_the_help_leaves_the_form_in_sight_when_the_window_is_resized(qtbot, window):
    QTest.keyClick(window, Qt.Key.Key_F1)
    pane = window.findChild(HelpPane)
    window.resize(1000, 700)
    assert 300 < pane.x() < 700
    right = window.rail.parentWidget().mapFrom(window, QPoint(window.width(), 0)).x()
    assert right - 20 < pane.geometry().right() < right


@pytest.mark.parametrize("entry", PAGES, ids=[entry.key for entry in PAGES])
def test_every_page_has_its_help_with_a_purpose(entry):
    text = help_path(entry).read_text(encoding="utf-8")
    assert text.startswith("# ")
    assert "**Purpose.**" in text


def test_words_keys_and_the_program_itself_are_told_too(qtbot, window):
    QTest.keyClick(window, Qt.Key.Key_F1)
    pane = window.findChild(HelpPane)
    for place, words in ((2, "closed window"), (3, "Ctrl+K"), (4, "MIT")):
        pane.choice.setCurrentIndex(place)
        assert words in pane.text.toPlainText()
        assert pane.heading.text() == f"Help: {pane.choice.tabText(place)}"
    assert "{version}" not in pane.text.toPlainText()
    QTest.keyClick(window, Qt.Key.Key_PageDown, Qt.KeyboardModifier.ControlModifier)
    assert pane.choice.currentIndex() == 0


def first_picture(pane):
    """The first picture of the text as it is shown, and the width there is for it."""
    name = "../pictures/walkthrough/01_begin_en.png"
    document = pane.text.document()
    shown = document.resource(QTextDocument.ResourceType.ImageResource, document.baseUrl().resolved(QUrl(name)))
    return shown, pane.text.viewport().width() - 2 * round(document.documentMargin())


def test_the_first_steps_stay_from_page_to_page_and_come_back_at_the_same_place(qtbot, window):
    window.resize(1000, 700)
    window.context.help_topic_asked.emit(FIRST_STEPS.key)
    pane = window.findChild(HelpPane)
    assert pane.isVisible() and pane.choice.tabText(pane.choice.currentIndex()) == "First steps"
    bar = pane.text.verticalScrollBar()
    bar.setValue(bar.maximum() // 2)
    place = bar.value()
    assert place > 0
    QTest.keyClick(window, Qt.Key.Key_PageDown, Qt.KeyboardModifier.ControlModifier)
    assert (pane.heading.text(), bar.value()) == ("Help: First steps", place)
    for key in (Qt.Key.Key_F1, Qt.Key.Key_F1):
        QTest.keyClick(window, key)
    assert pane.isVisible() and (pane.heading.text(), bar.value()) == ("Help: First steps", place)
    window.context.help_topic_asked.emit(FIRST_STEPS.key)  # while it is open: it stays so
    assert pane.isVisible()


def test_a_picture_is_as_wide_as_there_is_room_also_over_the_whole_page(qtbot, window):
    window.resize(1000, 700)
    window.context.help_topic_asked.emit(FIRST_STEPS.key)
    pane = window.findChild(HelpPane)
    beside, room = first_picture(pane)
    assert beside.width() == round(room * pane.devicePixelRatioF()) and 300 < room < 500
    QTest.mouseClick(pane.wider, Qt.MouseButton.LeftButton)
    wide, room = first_picture(pane)
    assert wide.width() == round(room * pane.devicePixelRatioF()) and room > 700
    window.resize(1700, 900)
    whole, room = first_picture(pane)
    assert whole.width() == round(1000 * pane.devicePixelRatioF()) and room > 1000
    QTest.mouseClick(pane.wider, Qt.MouseButton.LeftButton)
    assert first_picture(pane)[0].width() < whole.width()


@pytest.mark.parametrize("language", ["C", "de_DE"])
def test_no_help_is_wider_than_its_pane_in_the_smallest_window(qtbot, window, language):
    QLocale.setDefault(QLocale(language))
    try:
        window.resize(1000, 700)
        QTest.keyClick(window, Qt.Key.Key_F1)
        pane = window.findChild(HelpPane)
        for entry in PAGES:
            pane.show_help(entry)
            assert pane.text.horizontalScrollBar().maximum() == 0, entry.key
        for topic in range(1, pane.choice.count()):
            pane.choice.setCurrentIndex(topic)
            assert pane.text.horizontalScrollBar().maximum() == 0, pane.choice.tabText(topic)
    finally:
        QLocale.setDefault(QLocale("C"))


def test_where_it_is_not_installed_the_version_says_so(monkeypatch):
    def missing(_name):
        raise PackageNotFoundError

    monkeypatch.setattr("importlib.metadata.version", missing)
    assert our_version() == "from source"


PICTURE = re.compile(r"!\[([^\]]*)\]")


@pytest.mark.parametrize("path", sorted([*HELP.rglob("*.svg"), *HELP.rglob("*.md")]), ids=lambda path: path.name)
def test_every_sketch_and_picture_of_the_help_says_what_it_shows(path):
    text = path.read_text(encoding="utf-8")
    told = PICTURE.findall(text) if path.suffix == ".md" else [told_by(text)]
    assert [words for words in told if len(words.split()) < 3] == []


@pytest.mark.parametrize(("language", "words"),
                         [("C", "square turned over"), ("de_DE", "umgeschlagener Anschlagwinkel")])
def test_a_screen_reader_is_told_what_the_sketch_shows_in_the_language_of_the_window(window, language, words):
    QLocale.setDefault(QLocale(language))
    try:
        window.help.toggle()
        window.show_page("squareness")
        pane = window.findChild(HelpPane)
        told = QAccessible.queryAccessibleInterface(pane.text).text(QAccessible.Text.Description)
        assert words in told
        pane.show_topic("keys")
        assert not pane.text.accessibleDescription()
    finally:
        QLocale.setDefault(QLocale("C"))


def test_the_help_is_in_the_language_of_the_window_its_sketch_too(qtbot, window):
    QLocale.setDefault(QLocale("de_DE"))
    try:
        QTest.keyClick(window, Qt.Key.Key_F1)
        pane = window.findChild(HelpPane)
        assert "Zweck" in pane.text.toPlainText()
        reversal = next(entry for entry in PAGES if entry.key == "reversal")
        assert ">Schlitten<" in sketch_in_language(help_path(reversal).with_suffix(".svg"))
    finally:
        QLocale.setDefault(QLocale("C"))
    assert ">carriage<" in sketch_in_language(help_path(reversal).with_suffix(".svg"))


def test_a_language_without_help_of_its_own_gets_the_english(window):
    QLocale.setDefault(QLocale("fr_FR"))
    try:
        QTest.keyClick(window, Qt.Key.Key_F1)
        assert "Purpose" in window.findChild(HelpPane).text.toPlainText()
    finally:
        QLocale.setDefault(QLocale("C"))


def test_the_find_box_opens_the_first_steps_over_a_page_and_the_keyboard_reads_on_there(qtbot, window):
    QTest.keyClick(window, Qt.Key.Key_F1)
    QTest.keyClick(window, Qt.Key.Key_K, Qt.KeyboardModifier.ControlModifier)
    box = window.rail.finder
    qtbot.waitUntil(box.hasFocus)
    qtbot.keyClicks(box, "first st")
    qtbot.keyClick(box, Qt.Key.Key_Return)
    pane = window.findChild(HelpPane)
    qtbot.waitUntil(lambda: pane.heading.text() == "Help: First steps")
    assert pane.isVisible() and pane.text.hasFocus()
