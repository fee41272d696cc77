"""The list at the left: the find box, headings, below the open one its pages, help, view and theme at the foot."""

from __future__ import annotations

from functools import partial
from itertools import groupby

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import QFrame, QPushButton, QScrollArea, QVBoxLayout, QWidget

from app.demoband import DemoBand
from app.finder import Finder
from app.pages import PAGES, PageEntry
from app.theme import DARK, STEP_PX, tokens
from app.viewmenu import ViewMenu
from app.widgets.wraprow import WrapRow

_WIDTH_PX = 188
_DIGITS = 9
_STEPS = {Qt.Key.Key_Down: +1, Qt.Key.Key_Up: -1}


class Rail(QFrame):
    """All pages by heading; only the heading of the page in view is open.

    Arrow keys show the next page; Space, a click, Ctrl+PgDown and Ctrl+PgUp go into one. A heading, or Ctrl+1 to
    Ctrl+9, goes to the page of that heading that was in view last.
    """

    page_shown = Signal(str)
    page_entered = Signal(str)
    theme_asked = Signal(bool)
    view_asked = Signal(str, str)
    help_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("rail")
        self._groups = {group: [entry.key for entry in entries] for group, entries in groupby(PAGES, _group)}
        self._seen = {group: keys[0] for group, keys in self._groups.items()}
        self.pages = {entry.key: self._make_button(entry) for entry in PAGES}
        self.headings = {group: self._make_heading(group, n) for n, group in enumerate(self._groups, start=1)}
        self.demo, self.finder = DemoBand(), Finder()
        self.demo.hide()
        self.help = QPushButton(self.tr("Help   F1"))
        self.help.setObjectName("plain")
        self.view = ViewMenu()
        self.theme = QPushButton()
        self.theme.setObjectName("plain")
        self._name_theme()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, STEP_PX, 1, STEP_PX)
        layout.addWidget(self.demo)
        layout.addWidget(self.finder)
        layout.addWidget(self._make_list(), 1)
        foot = WrapRow()  # below one another where letters are large
        foot.setSpacing(0)
        foot.add(self.help, shares=True)
        foot.add(self.view)
        layout.addLayout(foot)
        layout.addWidget(self.theme)
        buttons = *self.pages.values(), *self.headings.values()
        self.setFixedWidth(max(_WIDTH_PX, *(button.sizeHint().width() for button in buttons)))
        self.mark(PAGES[0].key)
        self.help.clicked.connect(self.help_asked)
        self.theme.clicked.connect(self._ask_for_theme)
        self.finder.page_chosen.connect(self.page_entered)
        self.finder.view_chosen.connect(self.view_asked)
        self.view.asked.connect(self.view_asked)
        self.finder.left.connect(self._come_back)
        for keys, slot in (
            ("F1", self.help_asked.emit),
            ("Ctrl+K", self.finder.setFocus),
            ("Ctrl+PgDown", self._next),
            ("Ctrl+PgUp", self._last),
        ):
            QShortcut(QKeySequence(keys), self).activated.connect(slot)

    def mark(self, key: str) -> None:
        """Mark the page in view and open its heading."""
        self._marked = key
        for other, button in self.pages.items():
            button.setChecked(other == key)
        for group, keys in self._groups.items():
            opened = key in keys
            self.headings[group].setChecked(opened)
            for other in keys:
                self.pages[other].setVisible(opened)
            if opened:
                self._seen[group] = key

    def marked(self) -> str:
        """Return the key of the page in view."""
        return self._marked

    def changeEvent(self, event: QEvent) -> None:
        """Name the other theme when the theme has changed."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and hasattr(self, "theme"):
            self._name_theme()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Let the arrow keys show the next page while the keyboard stays in the list."""
        step = _STEPS.get(Qt.Key(event.key())) if isinstance(event, QKeyEvent) else None
        if step is None:
            return super().eventFilter(watched, event)
        if event.type() == QEvent.Type.KeyPress:
            key = self._beside(step)
            self.page_shown.emit(key)
            if self.pages[key].isVisible():
                self.pages[key].setFocus(Qt.FocusReason.TabFocusReason)
        return True

    def _come_back(self) -> None:
        self.page_entered.emit(self._marked)

    def _next(self) -> None:
        self.page_entered.emit(self._beside(+1))

    def _last(self) -> None:
        self.page_entered.emit(self._beside(-1))

    def _beside(self, step: int) -> str:
        keys = list(self.pages)
        return keys[(keys.index(self.marked()) + step) % len(keys)]

    def _enter(self, key: str) -> None:
        self.mark(self._marked)  # the click toggled its button; which page is in view is not up to the list
        self.page_entered.emit(key)

    def _enter_group(self, group: str) -> None:
        self._enter(self._seen[group])

    def _make_button(self, entry: PageEntry) -> QPushButton:
        button = QPushButton(entry.shown_title())
        button.setObjectName("page")
        button.setCheckable(True)
        button.clicked.connect(partial(self._enter, entry.key))
        button.installEventFilter(self)
        return button

    def _make_heading(self, group: str, number: int) -> QPushButton:
        heading = QPushButton(group)
        heading.setObjectName("group")
        heading.setCheckable(True)
        enter = partial(self._enter_group, group)
        heading.clicked.connect(enter)
        heading.installEventFilter(self)
        if number <= _DIGITS:
            heading.setToolTip(f"Ctrl+{number}")
            QShortcut(QKeySequence(f"Ctrl+{number}"), self).activated.connect(enter)
        return heading

    def _make_list(self) -> QScrollArea:
        inside = QWidget()
        layout = QVBoxLayout(inside)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        for group, keys in self._groups.items():
            layout.addWidget(self.headings[group])
            for key in keys:
                layout.addWidget(self.pages[key])
        layout.addStretch(1)
        area = QScrollArea()
        area.setObjectName("pages")
        area.setAccessibleName(self.tr("Pages"))
        area.setWidgetResizable(True)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setWidget(inside)
        return area

    def _ask_for_theme(self) -> None:
        self.theme_asked.emit(tokens() is not DARK)

    def _name_theme(self) -> None:
        self.theme.setText(self.tr("Light theme") if tokens() is DARK else self.tr("Dark theme"))


def _group(entry: PageEntry) -> str:
    return entry.shown_group()
