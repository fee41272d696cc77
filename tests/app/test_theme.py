"""Text can be read in both themes; the formula is WCAG 2.2, "relative luminance" and "contrast ratio"."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QSettings, Qt
from PySide6.QtWidgets import (
    QApplication,
    QComboBox,
    QFrame,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QPushButton,
    QWidget,
)

from app.theme import DARK, LIGHT, Tokens, apply_theme, tokens
from app.widgets.plotmarks import blended
from app.widgets.readingcell import TINT_ALPHA

ICONS = Path(__file__).resolve().parents[2] / "resources" / "icons"
THEMES = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)


def luminance(colour: str) -> float:
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    r, g, b = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def contrast(one: str, other: str) -> float:
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_the_formula_gives_the_known_ends():
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.005)  # the well-known grey just below 4.5


@THEMES
@pytest.mark.parametrize("ground", ["ground", "card", "soft"])
@pytest.mark.parametrize("ink", ["ink", "quiet", "accent", "warning", "good"])
def test_text_is_readable(theme: Tokens, ink: str, ground: str):
    assert contrast(getattr(theme, ink), getattr(theme, ground)) >= 4.5


@THEMES
def test_text_on_the_accent_is_readable(theme: Tokens):
    assert contrast(theme.on_accent, theme.accent) >= 4.5


@THEMES
@pytest.mark.parametrize("ink", ["ink", "quiet", "warning"])
def test_text_in_the_current_row_is_readable(theme: Tokens, ink: str):
    tint = blended(theme.accent, theme.card, TINT_ALPHA / 255).name()
    assert contrast(getattr(theme, ink), tint) >= 4.5


@THEMES
@pytest.mark.parametrize("ground", ["ground", "card", "soft"])
def test_what_is_no_text_is_seen(theme: Tokens, ground: str):
    """WCAG 2.2, 1.4.11 asks for 3:1: the edge of a control, the frame of the one with the keyboard."""
    assert contrast(theme.box, getattr(theme, ground)) >= 3.0
    assert contrast(theme.accent, getattr(theme, ground)) >= 3.0


@THEMES
def test_data_are_seen(theme: Tokens):
    """WCAG 2.2, 1.4.11: 3:1 on the card they are drawn on."""
    assert {colour: contrast(colour, theme.card) for colour in theme.series if contrast(colour, theme.card) < 3.0} == {}
    assert len(set(theme.series)) == len(theme.series)


@THEMES
def test_signs_drawn_in_icons_are_seen(theme: Tokens):
    arrow, tick = (re.search(r'stroke="(#\w{6})"', (ICONS / name).read_text())[1]
                   for name in ("arrow.svg", f"check_{theme.name}.svg"))  # fmt: skip
    assert contrast(arrow, theme.card) >= 3.0 and contrast(tick, theme.accent) >= 3.0


@THEMES
@pytest.mark.parametrize("kind", [QLineEdit, QPlainTextEdit, QComboBox, QPushButton])
def test_what_has_the_keyboard_is_framed_twice_as_wide(qtbot, qapp, theme: Tokens, kind: type):
    apply_theme(qapp, dark=theme is DARK)
    holder = QWidget()
    qtbot.addWidget(holder)
    first, second = kind(holder), kind(holder)
    second.move(0, 80)
    holder.resize(200, 160)
    holder.show()
    holder.activateWindow()
    qtbot.waitUntil(holder.isActiveWindow)
    edges = []
    for focused in (second, first):
        focused.setFocus()
        edges.append(edge_of(first))
    unfocused = theme.hairline if kind is QPushButton else theme.box  # a button is told by its words
    apply_theme(qapp, dark=False)
    assert edges == [[unfocused, theme.card], [theme.accent, theme.accent]]


def edge_of(widget: QWidget) -> list[str]:
    """Return the colours of the two outermost pixels at the left, half-way down."""
    image = widget.grab().toImage()
    return [image.pixelColor(x, image.height() // 2).name() for x in (0, 1)]


@THEMES
def test_the_applied_theme_is_told(qapp: QApplication, theme: Tokens):
    apply_theme(qapp, dark=theme is DARK)
    assert tokens() is theme
    apply_theme(qapp, dark=False)


def test_without_a_choice_the_desktop_decides_else_light(qapp: QApplication):
    apply_theme(qapp)
    assert tokens() is LIGHT


@THEMES
def test_every_picture_of_the_style_sheet_exists(qapp: QApplication, theme: Tokens):
    apply_theme(qapp, dark=theme is DARK)
    pictures = re.findall(r"url\((.*?)\)", qapp.styleSheet())
    assert pictures
    assert all(Path(picture).is_file() for picture in pictures)
    apply_theme(qapp, dark=False)


@pytest.fixture
def desktop(qapp, monkeypatch):
    """A desktop whose choice the test makes; the dress of the other tests comes back."""
    choice = {"scheme": Qt.ColorScheme.Unknown}

    class Hints:
        def colorScheme(self):
            return choice["scheme"]

    monkeypatch.setattr(type(qapp), "styleHints", lambda app=None: Hints(), raising=False)
    yield choice
    monkeypatch.undo()
    apply_theme(qapp, dark=False)


def test_the_choice_of_the_desktop_is_taken_where_it_makes_one(qapp, desktop):
    apply_theme(qapp, dark=True)
    desktop["scheme"] = Qt.ColorScheme.Light
    apply_theme(qapp)
    assert tokens() is LIGHT
    desktop["scheme"] = Qt.ColorScheme.Dark
    apply_theme(qapp)
    assert tokens() is DARK


def test_the_window_changes_with_the_desktop_until_the_person_chooses(qapp, desktop, tmp_path):
    from app.__main__ import _change_theme, _follow_desktop

    settings = QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)
    desktop["scheme"] = Qt.ColorScheme.Dark
    _follow_desktop(qapp, settings, Qt.ColorScheme.Dark)
    assert tokens() is DARK
    _change_theme(qapp, settings, dark=False)
    _follow_desktop(qapp, settings, Qt.ColorScheme.Dark)
    assert (tokens(), settings.value("theme")) == (LIGHT, "light")
    _change_theme(qapp, settings, dark=True)  # as the desktop: it is followed again
    assert settings.value("theme") is None
    desktop["scheme"] = Qt.ColorScheme.Light
    _follow_desktop(qapp, settings, Qt.ColorScheme.Light)
    assert tokens() is LIGHT


class CountedLabel(QLabel):
    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.changes = 0

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        self.changes += event.type() == QEvent.Type.StyleChange


def test_another_theme_dresses_a_widget_once_however_deep_it_lies(qtbot, qapp):
    """With a page in a stack in a window a widget lies ten deep, and pages have hundreds of them."""
    apply_theme(qapp, dark=False)
    window = inner = QWidget()
    qtbot.addWidget(window)
    for _ in range(10):
        inner = QFrame(inner)
    label = CountedLabel(inner)
    window.show()
    label.changes = 0
    apply_theme(qapp, dark=True)
    apply_theme(qapp, dark=False)
    assert label.changes <= 2 * 3  # the old dress off, the new one on; not once for each widget around it
