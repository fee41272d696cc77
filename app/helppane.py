"""The help of the page in view, beside it, and the texts about the whole: F1 shows and hides it, Escape closes it."""

from __future__ import annotations

import json
import re
from pathlib import Path

from PySide6.QtCore import QLocale, QPoint, QRect, QTimer, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from app.faults import told_at_once
from app.helptopics import FIRST_STEPS, TOPICS, HelpPlace
from app.pages import PageEntry
from app.theme import STEP_PX
from app.version import our_version
from app.words import shown

_HELP = Path(__file__).resolve().parents[1] / "resources" / "help"
_KEYS = ("", *(topic.key for topic in TOPICS))  # in the order of the tabs; the first is the page's own
_PAD_PX = 7  # five tabs in the little room there is, in any language
_TOLD = re.compile(r'(?<= aria-label=")[^"]+')
_WORDS = re.compile(rf"(?<=>)[^<>]+(?=</text>)|{_TOLD.pattern}")
_SHARE, _WHOLE = 0.53, 1.0  # of the body's width: the form stays in sight, plot and verdict wait behind


class HelpPane(QFrame):
    """Lies over the right part of the body; what it covers is not needed while the steps are read."""

    closed = Signal()

    def __init__(self, parent: QWidget) -> None:
        from PySide6.QtGui import QKeySequence, QShortcut  # the window opens before anybody asks for help

        from app.widgets.helptext import HelpText
        from app.widgets.tabs import Tabs

        super().__init__(parent)
        self.setObjectName("card")
        self.heading = QLabel(self.tr("Help"))
        self.heading.setObjectName("heading")
        self.close_button = QPushButton(self.tr("Close   Esc"))
        self.wider = QPushButton(self.tr("Wider"))
        self.wider.setToolTip(self.tr("Over the whole page, so that pictures can be read; once more beside it again"))
        self.wider.setCheckable(True)
        for button in (self.wider, self.close_button):
            button.setObjectName("plain")
        self.choice = Tabs(self.tr("Which help"), pad_px=_PAD_PX)
        for text in (self.tr("This page"), *(topic.shown_title() for topic in TOPICS)):
            self.choice.addTab(text)
        self.text = HelpText()
        self.text.setAccessibleName(self.tr("Help of this page"))
        head = QHBoxLayout()
        head.addWidget(self.heading, 1)
        head.addWidget(self.wider)
        head.addWidget(self.close_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(2 * STEP_PX, STEP_PX, STEP_PX, STEP_PX)
        column.addLayout(head)
        column.addWidget(self.choice)
        column.addWidget(self.text, 1)
        self.setFocusProxy(self.text)
        self._entry: PageEntry | None = None
        self._over, self._body = parent, parent
        self._share: float | None = None  # how far down to go on once the text is laid out
        self.choice.currentChanged.connect(self._show_chosen)
        self.wider.toggled.connect(self._widen)
        self.close_button.clicked.connect(self.closed)
        QShortcut(QKeySequence("Esc"), self).activated.connect(self.closed)
        self.hide()

    def show_help(self, entry: PageEntry) -> None:
        """Show the help of a page; whoever takes the first steps goes on with them from page to page."""
        self._entry = entry
        if _KEYS[self.choice.currentIndex()] == FIRST_STEPS.key:
            return
        self.choice.setCurrentIndex(0)
        self._show_chosen()

    def show_topic(self, key: str) -> None:
        """Show a text that belongs to no page."""
        self.choice.setCurrentIndex(_KEYS.index(key))

    def place(self) -> HelpPlace:
        """Return where the reader is."""
        bar = self.text.verticalScrollBar()
        share = bar.value() / max(bar.maximum(), 1)
        return HelpPlace(_KEYS[self.choice.currentIndex()], share, not self.isHidden(), self.wider.isChecked())

    def go_on(self, place: HelpPlace) -> None:
        """Go on where the reader was in another window."""
        self.wider.setChecked(place.is_wide)
        self.show_topic(place.key)
        self._share = place.share

    @told_at_once
    def showEvent(self, event: QShowEvent) -> None:
        """Go on where it was left, once the text is laid out."""
        super().showEvent(event)
        QTimer.singleShot(0, self._go_down)

    def _go_down(self) -> None:
        if self._share is not None:
            bar = self.text.verticalScrollBar()
            bar.setValue(round(self._share * bar.maximum()))
            self._share = None

    def _show_chosen(self) -> None:
        """Show the chosen text, its sketch first."""
        chosen, entry = self.choice.currentIndex(), self._entry
        written = _HELP / f"{_KEYS[chosen]}.md" if chosen or entry is None else help_path(entry)
        sketch, path = written.with_suffix(".svg"), in_language(written)
        text = path.read_text(encoding="utf-8") if path.exists() else self.tr("There is no help for this page yet.")
        title, _, rest = text.partition("\n")
        drawing = sketch_in_language(sketch) if sketch.exists() else ""
        picture = f"\n\n![{told_by(drawing)}]({sketch.name})\n" if drawing else ""
        head = self.choice.tabText(chosen) if chosen or entry is None else entry.shown_title()
        self.heading.setText(self.tr("Help: {page}").format(page=head))
        self.setAccessibleName(self.heading.text())
        body = f"{picture}\n{rest if title.startswith('#') else text}".replace("{version}", shown(our_version()))
        self.text.show_text(body, written.parent, {sketch.name: drawing} if drawing else None)

    def cover(self, body: QWidget) -> None:
        """Lie over the right part of the body, or over all of it."""
        self._body = body
        place = QRect(body.mapTo(self._over, QPoint()), body.size())
        place.setLeft(place.right() + 1 - round(place.width() * (_WHOLE if self.wider.isChecked() else _SHARE)))
        self.setGeometry(place)
        self.raise_()

    def _widen(self) -> None:
        self.cover(self._body)


def help_path(entry: PageEntry) -> Path:
    """Return where the help of a page is kept: the same name in another room."""
    return _HELP.joinpath(*entry.module.split(".")[2:]).with_suffix(".md")


def in_language(path: Path) -> Path:
    """Return where a text of the help stands in the language of the window, or as written where that has none."""
    translated = _HELP / _language() / path.relative_to(_HELP)
    return translated if translated.exists() else path


def sketch_in_language(path: Path) -> str:
    """Return a sketch as SVG, with its labels, and what it tells who cannot see it, in the language of the window."""
    drawing = path.read_text(encoding="utf-8")
    labels = _HELP / _language() / "sketches.json"
    words = json.loads(labels.read_text(encoding="utf-8")) if labels.exists() else {}
    return _WORDS.sub(lambda found: words.get(found[0], found[0]), drawing)


def told_by(drawing: str) -> str:
    """Return what a sketch (SVG) tells who cannot see it."""
    found = _TOLD.search(drawing)
    return found[0] if found else ""


def _language() -> str:
    return QLocale().name().partition("_")[0]
