"""The two themes: colours as tokens, one palette and one style sheet made from them.

The data colours are those of Okabe and Ito, "Color Universal Design" (2008), chosen so that colour-blind readers tell
them apart; the two that are pale on white are drawn darker there. Meaning is never carried by colour alone. Text keeps
a contrast of at least 4.5:1 (WCAG 2.2, 1.4.3), marks and the edges of fields 3:1 (1.4.11).

Names the style sheet knows, to be set with `setObjectName`:
    QFrame#card  QLabel#heading  QLabel#quiet  QLabel#question (warning ink)  QLabel#good  QPushButton#primary
    QPushButton#plain (looks like text)  QLineEdit#entry (the one big field), #find  QFrame#rail  QPushButton#group and
    QPushButton#page (in the rail)  QFrame#popover  QFrame#notice
A field at fault is given the property `wrong` (true) and is then edged in the warning colour.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from PySide6 import QtCore  # QtCore.Qt is slow to make: not before the first paint
from PySide6.QtGui import QColor, QFontInfo, QGuiApplication, QPalette
from PySide6.QtWidgets import QApplication

STEP_PX = 8  # the rhythm: margins and gaps are this or a multiple of it
CORNER_PX = 6
_MIDDLE_GREY = 128
_USUAL_PX = 13  # high: letters on most desktops
_ICONS = Path(__file__).resolve().parents[1] / "resources" / "icons"


@dataclass(frozen=True, slots=True)
class Tokens:
    """The colours of one theme as `#rrggbb`; `series` are the data colours in the order of use."""

    name: str
    ground: str
    card: str
    ink: str
    quiet: str
    hairline: str
    accent: str
    warning: str
    good: str
    soft: str
    on_accent: str
    box: str
    series: tuple[str, ...]


LIGHT = Tokens(
    name="light",
    ground="#f6f4ef",
    card="#ffffff",
    ink="#23272b",
    quiet="#5f666d",
    hairline="#dcd8cf",
    accent="#0072b2",
    warning="#b34700",
    good="#00735a",
    soft="#f2efe8",
    on_accent="#ffffff",
    box="#82888e",
    series=("#0072b2", "#d55e00", "#009e73", "#cc79a7", "#c48800", "#4a9bc9", "#23272b"),
)
DARK = Tokens(
    name="dark",
    ground="#17191b",
    card="#202427",
    ink="#eceae4",
    quiet="#a3a8ab",
    hairline="#363b3f",
    accent="#56b4e9",
    warning="#f0a070",
    good="#5fd0ae",
    soft="#292e31",
    on_accent="#101214",
    box="#80878c",
    series=("#56b4e9", "#d55e00", "#009e73", "#cc79a7", "#e69f00", "#f0e442", "#eceae4"),
)


def tokens() -> Tokens:
    """Return the colours of the theme now applied."""
    return DARK if QGuiApplication.palette().color(QPalette.ColorRole.Window) == QColor(DARK.ground) else LIGHT


def apply_theme(app: QApplication, dark: bool | None = None) -> None:
    """Dress the application; None takes the choice of the desktop where it makes one, else light."""
    if dark is None:
        dark = desktop_is_dark(app)
    if dark is None:
        dark = palette_is_dark(app)
    chosen = DARK if dark else LIGHT
    if app.styleSheet():  # put in the place of another one, it would dress a widget once for each one it lies in
        app.setStyleSheet("")
    app.setPalette(_palette(chosen))
    app.setStyleSheet(_style_sheet(chosen))


def desktop_is_dark(app: QApplication) -> bool | None:
    """Return the choice of the desktop as it is now; None where it makes none."""
    scheme = QtCore.Qt.ColorScheme
    return {scheme.Dark: True, scheme.Light: False}.get(app.styleHints().colorScheme())


def palette_is_dark(app: QApplication) -> bool:
    """Tell it of the palette as it is: before ours is applied, that which Qt made for the desktop."""
    return app.palette().color(QPalette.ColorRole.Window).lightness() < _MIDDLE_GREY


def _palette(t: Tokens) -> QPalette:
    """Colour the palette ourselves: the style hints do nothing where no desktop theme is active."""
    role, group = QPalette.ColorRole, QPalette.ColorGroup
    palette = QPalette(QColor(t.card), QColor(t.ground))
    for which, colour in (
        (role.Window, t.ground),
        (role.WindowText, t.ink),
        (role.Base, t.card),
        (role.AlternateBase, t.soft),
        (role.Text, t.ink),
        (role.Button, t.card),
        (role.ButtonText, t.ink),
        (role.BrightText, t.on_accent),
        (role.ToolTipBase, t.card),
        (role.ToolTipText, t.ink),
        (role.PlaceholderText, t.quiet),
        (role.Highlight, t.accent),
        (role.Accent, t.accent),
        (role.HighlightedText, t.on_accent),
        (role.Link, t.accent),
        (role.LinkVisited, t.accent),
    ):
        palette.setColor(which, QColor(colour))
    for which in (role.WindowText, role.Text, role.ButtonText):
        palette.setColor(group.Disabled, which, QColor(t.box))
    palette.setColor(group.Disabled, role.Highlight, QColor(t.hairline))
    return palette


def _larger(usual_px: int) -> int:
    """Return a size of letters beside the usual text, which may be larger than usual on this desktop."""
    return round(usual_px * max(QFontInfo(QGuiApplication.font()).pixelSize() / _USUAL_PX, 1.0))


def _style_sheet(t: Tokens) -> str:
    return _frames(t) + _texts(t) + _buttons(t) + _fields(t) + _lists(t) + _bars(t)


def _frames(t: Tokens) -> str:
    return f"""
QFrame#rail {{ border: none; background: {t.soft}; border-right: 1px solid {t.hairline}; }}
QFrame#card, QFrame#popover {{ background: {t.card}; border: 1px solid {t.hairline}; border-radius: {CORNER_PX}px; }}
QFrame#popover {{ border-color: {t.box}; border-radius: 0; }}
QFrame#demo {{ background: {t.card}; border: 2px dashed {t.warning}; margin: 0 8px 6px 8px; }}
QFrame#notice {{ border: none; border-top: 1px solid {t.hairline}; }}
QScrollArea {{ background: transparent; border: none; }}
QSplitter::handle {{ background: transparent; }}
QToolTip {{ background: {t.card}; color: {t.ink}; border: 1px solid {t.hairline}; padding: 4px; }}
"""


def _texts(t: Tokens) -> str:
    return f"""
QLabel#heading {{ font-size: {_larger(17)}px; font-weight: 600; }}
QLabel#quiet {{ color: {t.quiet}; }}
QLabel#question {{ color: {t.warning}; }}
QLabel#demoSign {{ color: {t.warning}; font-size: 15px; font-weight: 600; }}
QLabel#good {{ color: {t.good}; }}
"""


def _buttons(t: Tokens) -> str:
    return f"""
QPushButton {{ padding: 6px 14px; border: 1px solid {t.hairline}; border-radius: 5px; background: {t.card};
    color: {t.ink}; }}
QPushButton:hover {{ background: {t.soft}; }}
QPushButton:focus {{ border: 2px solid {t.accent}; padding: 5px 13px; }}
QPushButton:disabled {{ color: {t.box}; }}
QPushButton#primary {{ background: {t.accent}; color: {t.on_accent}; border-color: {t.accent}; font-weight: 600; }}
QPushButton#primary:focus {{ border: 2px solid {t.ink}; padding: 5px 13px; }}
QPushButton#primary:disabled {{ background: {t.soft}; color: {t.box}; border-color: {t.hairline}; }}
QPushButton#plain {{ border-color: transparent; background: transparent; padding: 2px 6px; color: {t.accent}; }}
QPushButton#plain:focus {{ border: 1px solid {t.accent}; padding: 2px 6px; }}
QCheckBox {{ spacing: 6px; background: transparent; }}
QCheckBox::indicator {{ width: 14px; height: 14px; border: 1px solid {t.box}; border-radius: 3px;
    background: {t.card}; }}
QCheckBox::indicator:checked {{ background: {t.accent}; border-color: {t.accent};
    image: url({(_ICONS / f"check_{t.name}.svg").as_posix()}); }}
QCheckBox::indicator:focus {{ border: 2px solid {t.ink}; width: 12px; height: 12px; }}
"""


def _fields(t: Tokens) -> str:
    return f"""
QLineEdit, QComboBox, QPlainTextEdit {{ padding: 5px 8px; border: 1px solid {t.box}; border-radius: 5px;
    background: {t.card}; selection-background-color: {t.accent}; selection-color: {t.on_accent}; }}
QLineEdit:focus, QComboBox:focus, QPlainTextEdit:focus {{ border: 2px solid {t.accent}; padding: 4px 7px; }}
QComboBox:focus {{ padding-right: 0; }}
QLineEdit:disabled, QComboBox:disabled {{ color: {t.box}; background: {t.ground}; border-color: {t.hairline}; }}
QLineEdit[wrong="true"], QComboBox[wrong="true"] {{ border-color: {t.warning}; }}
QLineEdit#entry {{ font-size: {_larger(26)}px; padding: 6px 10px; border: 2px solid {t.box};
    border-radius: {CORNER_PX}px; }}
QLineEdit#entry:focus {{ border-color: {t.accent}; padding: 6px 10px; }}
QComboBox {{ padding-right: 0; }}
QComboBox::drop-down {{ subcontrol-origin: padding; subcontrol-position: center right; width: 20px; border: none; }}
QComboBox::down-arrow {{ image: url({(_ICONS / "arrow.svg").as_posix()}); width: 12px; height: 12px; }}
QComboBox QAbstractItemView {{ background: {t.card}; border: 1px solid {t.hairline}; outline: none;
    selection-background-color: {t.accent}; selection-color: {t.on_accent}; }}
QAbstractItemView QLineEdit {{ border: none; border-radius: 0; padding: 0 4px; }}
"""


def _lists(t: Tokens) -> str:
    return f"""
QTableView {{ border: none; gridline-color: {t.hairline}; background: {t.card};
    alternate-background-color: {t.soft}; selection-background-color: {t.accent}; selection-color: {t.on_accent}; }}
QHeaderView, QTableCornerButton::section {{ background: {t.card}; border: none; }}
QHeaderView::section {{ background: {t.card}; color: {t.quiet}; border: none; border-bottom: 1px solid {t.hairline};
    padding: 5px 6px; font-weight: 600; }}
QLineEdit#find {{ margin: 0 12px 6px 12px; }}
QScrollArea#pages, QScrollArea#pages > QWidget > QWidget {{ background: transparent; }}
QPushButton#group {{ text-align: left; font-weight: 600; padding: 7px 8px 5px 13px; border: none;
    border-left: 3px solid transparent; border-radius: 0; background: transparent; color: {t.quiet}; }}
QPushButton#group:checked {{ color: {t.ink}; }}
QPushButton#group:hover, QPushButton#group:focus {{ color: {t.ink}; text-decoration: underline; }}
QPushButton#page {{ text-align: left; padding: 4px 8px 4px 25px; border: none; border-left: 3px solid transparent;
    border-radius: 0; background: transparent; color: {t.quiet}; }}
QPushButton#page:hover, QPushButton#page:focus {{ color: {t.ink}; text-decoration: underline; }}
QPushButton#page:checked {{ background: {t.card}; color: {t.accent}; border-left-color: {t.accent}; font-weight: 600; }}
QMenu {{ background: {t.card}; border: 1px solid {t.hairline}; padding: 4px; }}
QMenu::item {{ padding: 5px 20px; }}
QMenu::item:selected {{ background: {t.accent}; color: {t.on_accent}; }}
QMenu::item:disabled {{ color: {t.box}; }}
"""


def _bars(t: Tokens) -> str:
    return f"""
QScrollBar:vertical {{ background: transparent; border: none; width: 12px; margin: 0; }}
QScrollBar:horizontal {{ background: transparent; border: none; height: 12px; margin: 0; }}
QScrollBar::handle {{ background: {t.hairline}; border-radius: 4px; margin: 2px; }}
QScrollBar::handle:vertical {{ min-height: 28px; }}
QScrollBar::handle:horizontal {{ min-width: 28px; }}
QScrollBar::handle:hover {{ background: {t.box}; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page, QAbstractScrollArea::corner {{ background: transparent; border: none; }}
"""
