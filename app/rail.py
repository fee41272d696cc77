"""The list of pages at the left: headings, pages below them, the theme switch at the foot."""

from __future__ import annotations

from functools import partial
from itertools import groupby

from PySide6.QtCore import QEvent, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QFrame, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget

from app.pages import PAGES, PageEntry
from app.theme import DARK, STEP_PX, tokens

_WIDTH_PX = 188
_DIGITS = 9


class Rail(QFrame):
    """All pages by heading.

    Arrow keys show a page; Space, a click, Ctrl+1 to Ctrl+9, Ctrl+PgDown and Ctrl+PgUp go into one.
    """

    page_shown = Signal(str)
    page_entered = Signal(str)
    theme_asked = Signal(bool)
    help_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("rail")
        self.setFixedWidth(_WIDTH_PX)
        self.pages = {entry.key: self._make_button(entry, number) for number, entry in enumerate(PAGES, start=1)}
        self.help = QPushButton(self.tr("Help   F1"))
        self.help.setObjectName("plain")
        self.theme = QPushButton()
        self.theme.setObjectName("plain")
        self._name_theme()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, STEP_PX, 1, STEP_PX)
        layout.addWidget(self._make_list(), 1)
        layout.addWidget(self.help)
        layout.addWidget(self.theme)
        self.help.clicked.connect(self.help_asked)
        self.theme.clicked.connect(self._ask_for_theme)
        for keys, slot in (("F1", self.help_asked.emit), ("Ctrl+PgDown", self._next), ("Ctrl+PgUp", self._last)):
            QShortcut(QKeySequence(keys), self).activated.connect(slot)

    def mark(self, key: str) -> None:
        """Mark the page in view."""
        self.pages[key].setChecked(True)

    def marked(self) -> str:
        """Return the key of the page in view."""
        return next((key for key, button in self.pages.items() if button.isChecked()), next(iter(self.pages)))

    def _next(self) -> None:
        self._go(+1)

    def _last(self) -> None:
        self._go(-1)

    def _go(self, step: int) -> None:
        keys = list(self.pages)
        self.page_entered.emit(keys[(keys.index(self.marked()) + step) % len(keys)])

    def changeEvent(self, event: QEvent) -> None:
        """Name the other theme when the theme has changed."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and hasattr(self, "theme"):
            self._name_theme()

    def _make_button(self, entry: PageEntry, number: int) -> QPushButton:
        button = QPushButton(entry.shown_title())
        button.setObjectName("page")
        button.setCheckable(True)
        button.setAutoExclusive(True)  # with it the arrow keys go from page to page
        enter = partial(self.page_entered.emit, entry.key)
        button.clicked.connect(enter)
        button.toggled.connect(partial(self._show_checked, entry.key))
        if number <= _DIGITS:
            button.setToolTip(f"Ctrl+{number}")
            QShortcut(QKeySequence(f"Ctrl+{number}"), self).activated.connect(enter)
        return button

    def _make_list(self) -> QScrollArea:
        inside = QWidget()
        layout = QVBoxLayout(inside)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        for group, entries in groupby(PAGES, key=PageEntry.shown_group):
            heading = QLabel(group)
            heading.setObjectName("group")
            layout.addWidget(heading)
            for entry in entries:
                layout.addWidget(self.pages[entry.key])
        layout.addStretch(1)
        area = QScrollArea()
        area.setObjectName("pages")
        area.setAccessibleName(self.tr("Pages"))
        area.setWidgetResizable(True)
        area.setWidget(inside)
        return area

    def _show_checked(self, key: str, checked: bool) -> None:
        if checked:
            self.page_shown.emit(key)

    def _ask_for_theme(self) -> None:
        self.theme_asked.emit(tokens() is not DARK)

    def _name_theme(self) -> None:
        self.theme.setText(self.tr("Light theme") if tokens() is DARK else self.tr("Dark theme"))
