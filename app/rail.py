"""The list at the left: the find box, headings, below the open one its pages, help, view and theme at the foot."""

from __future__ import annotations

from functools import cached_property, partial
from itertools import groupby, pairwise
from typing import TYPE_CHECKING

from PySide6 import QtCore  # QtCore.Qt is slow to make: nothing below touches it before the first paint
from PySide6.QtCore import QEvent, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QButtonGroup, QFrame, QPushButton, QScrollArea, QVBoxLayout, QWidget

from app.faults import told_at_once
from app.finder import Finder
from app.pages import PAGES, PageEntry
from app.theme import DARK, STEP_PX, tokens
from app.viewmenu import ViewMenu
from app.widgets.wraprow import WrapRow

if TYPE_CHECKING:
    from PySide6.QtGui import QKeyEvent

    from app.context import Context
    from app.demoband import DemoBand

_WIDTH_PX = 188
_DIGITS = 9


class ListButton(QPushButton):
    """A line of the list; `stepped` carries +1 or -1 where an arrow key asks for the next page or the one before."""

    stepped = Signal(int)

    def __init__(self, text: str, parent: QWidget) -> None:
        super().__init__(text, parent)
        self.setCheckable(True)
        self.setAutoExclusive(True)  # to a screen reader one of several, as a radio button; else it were a check box
        QButtonGroup(self, exclusive=False).addButton(self)  # by itself: the list marks it, and Tab stops at each

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take the arrow keys, with which Qt would go from button to button."""
        step = {QtCore.Qt.Key.Key_Down: +1, QtCore.Qt.Key.Key_Up: -1}.get(QtCore.Qt.Key(event.key()))
        if step is not None:
            self.stepped.emit(step)
        else:
            super().keyPressEvent(event)


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
    demo_asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("rail")
        self._groups = {group: [entry.key for entry in entries] for group, entries in groupby(PAGES, _group)}
        self._seen = {group: keys[0] for group, keys in self._groups.items()}
        self.pages: dict[str, QPushButton] = {}
        self.headings: dict[str, QPushButton] = {}
        self.finder = Finder(self)
        self._list = self._make_list()
        self.help = QPushButton(self.tr("Help   F1"), self)
        self.help.setObjectName("plain")
        self.view = ViewMenu(self)
        self.theme = QPushButton(self)
        self.theme.setObjectName("plain")
        self._name_theme()
        self._column = layout = QVBoxLayout(self)
        layout.setContentsMargins(0, STEP_PX, 1, STEP_PX)
        layout.addWidget(self.finder)
        layout.addWidget(self._list, 1)
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

    @cached_property
    def demo(self) -> DemoBand:
        """The sign of the demo shop, out of sight; most shops are none."""
        from app.demoband import DemoBand

        band = DemoBand(self)
        band.hide()
        band.asked.connect(self.demo_asked)
        self._column.insertWidget(0, band)
        for one, following in pairwise((band.home, band.anew, band.really, band.leave, self.finder)):
            QWidget.setTabOrder(one, following)
        return band

    def serve(self, context: Context) -> None:
        """Find in this shop from now on."""
        self.take_keys()
        self.finder.serve(context)

    def take_keys(self) -> None:
        """Give the keyboard its way through the list, once the window is painted."""
        self._list.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)

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

    @told_at_once
    def changeEvent(self, event: QEvent) -> None:
        """Name the other theme when the theme has changed."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and hasattr(self, "theme"):
            self._name_theme()

    def _step(self, step: int) -> None:
        """Show the next page while the keyboard stays in the list."""
        key = self._beside(step)
        self.page_shown.emit(key)
        if self.pages[key].isVisible():
            self.pages[key].setFocus(QtCore.Qt.FocusReason.TabFocusReason)

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

    def _make_button(self, entry: PageEntry, parent: QWidget) -> QPushButton:
        button = ListButton(entry.shown_title(), parent)
        button.setObjectName("page")
        button.clicked.connect(partial(self._enter, entry.key))
        button.stepped.connect(self._step)
        return button

    def _make_heading(self, group: str, number: int, parent: QWidget) -> QPushButton:
        heading = ListButton(group, parent)
        heading.setObjectName("group")
        enter = partial(self._enter_group, group)
        heading.clicked.connect(enter)
        heading.stepped.connect(self._step)
        if number <= _DIGITS:
            heading.setToolTip(f"Ctrl+{number}")
            QShortcut(QKeySequence(f"Ctrl+{number}"), self).activated.connect(enter)
        return heading

    def _make_list(self) -> QScrollArea:
        """Make the list from outside in: a widget that changes its parent is dressed anew, which is slow."""
        area = QScrollArea(self)
        area.setObjectName("pages")
        area.setAccessibleName(self.tr("Pages"))
        area.setWidgetResizable(True)
        inside = QWidget(area)
        area.setWidget(inside)
        layout = QVBoxLayout(inside)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        for number, (group, entries) in enumerate(groupby(PAGES, _group), start=1):
            self.headings[group] = self._make_heading(group, number, inside)
            layout.addWidget(self.headings[group])
            for entry in entries:
                self.pages[entry.key] = self._make_button(entry, inside)
                layout.addWidget(self.pages[entry.key])
        layout.addStretch(1)
        return area

    def _ask_for_theme(self) -> None:
        self.theme_asked.emit(tokens() is not DARK)

    def _name_theme(self) -> None:
        self.theme.setText(self.tr("Light theme") if tokens() is DARK else self.tr("Dark theme"))


def _group(entry: PageEntry) -> str:
    return entry.shown_group()
