"""Help beside the page, by keyboard."""

from importlib.metadata import PackageNotFoundError

import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtTest import QTest

from app.helppane import HelpPane, help_path, version
from app.mainwindow import MainWindow
from app.pages import PAGES


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
    assert pane.geometry().right() <= window.width()


@pytest.mark.parametrize("entry", PAGES, ids=[entry.key for entry in PAGES])
def test_every_page_has_its_help_with_a_purpose(entry):
    text = help_path(entry).read_text(encoding="utf-8")
    assert text.startswith("# ")
    assert "**Purpose.**" in text


def test_words_keys_and_the_program_itself_are_told_too(qtbot, window):
    QTest.keyClick(window, Qt.Key.Key_F1)
    pane = window.findChild(HelpPane)
    for place, words in ((1, "closed window"), (2, "Ctrl+K"), (3, "MIT")):
        pane.choice.setCurrentIndex(place)
        assert words in pane.text.toPlainText()
        assert pane.heading.text() == f"Help: {pane.choice.tabText(place)}"
    assert "{version}" not in pane.text.toPlainText()
    QTest.keyClick(window, Qt.Key.Key_PageDown, Qt.KeyboardModifier.ControlModifier)
    assert pane.choice.currentIndex() == 0


def test_where_it_is_not_installed_the_version_says_so(monkeypatch):
    def missing(_name):
        raise PackageNotFoundError

    monkeypatch.setattr("importlib.metadata.version", missing)
    assert version() == "not installed"
