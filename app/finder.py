"""The find box above the list: a page, machine, lot, instrument, text of the help or language by a part of its name."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, Any

from PySide6 import QtCore  # QtCore.Qt is slow to make: nothing below touches it before the first paint
from PySide6.QtCore import QModelIndex, QTimer, Signal
from PySide6.QtWidgets import QLineEdit, QWidget

from app.context import Level
from app.faults import told_at_once
from app.helptopics import TOPICS
from app.language import LANGUAGE, LENGTHS
from app.options import HOME, OPEN
from app.pages import PAGES
from app.viewmenu import view_choices
from core.errors import StoreError

if TYPE_CHECKING:
    from PySide6.QtGui import QFocusEvent, QKeyEvent

    from app.context import Context

_LINES, _WIDTH_PX = 12, 320
_DEMO, _HELP = "demo", "help"


class Finder(QLineEdit):
    """Type a part of a name, Enter goes there; what can be found is read anew each time the box takes the keyboard."""

    page_chosen = Signal(str)
    view_chosen = Signal(str, str)
    left = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._context: Context | None = None
        self.setObjectName("find")
        self.setPlaceholderText(self.tr("Find   Ctrl+K"))
        self.setAccessibleName(self.tr("Find a page, machine, lot or instrument"))
        self.setEnabled(False)

    def serve(self, context: Context) -> None:
        """Find in this shop from now on."""
        from PySide6.QtGui import QStandardItemModel  # all here was not needed for the first paint
        from PySide6.QtWidgets import QCompleter, QListView

        from app.widgets.undoing import UndoPast

        self._context = context
        self._places = QStandardItemModel(self)
        self.setEnabled(True)
        completer = QCompleter(self._places, self)
        completer.setCaseSensitivity(QtCore.Qt.CaseSensitivity.CaseInsensitive)
        completer.setFilterMode(QtCore.Qt.MatchFlag.MatchContains)
        completer.setMaxVisibleItems(_LINES)
        popup = QListView()
        popup.setMinimumWidth(_WIDTH_PX)
        completer.setPopup(popup)
        self.setCompleter(completer)
        completer.activated[QModelIndex].connect(self._go)  # type: ignore[index]
        self.returnPressed.connect(self._go_to_first)
        UndoPast(self)

    @told_at_once
    def focusInEvent(self, event: QFocusEvent) -> None:
        """Read what can be found."""
        super().focusInEvent(event)
        self.selectAll()
        if event.reason() != QtCore.Qt.FocusReason.PopupFocusReason:
            self._read()

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leave with Escape."""
        if event.key() == QtCore.Qt.Key.Key_Escape:
            self.clear()
            self.left.emit()
            return
        super().keyPressEvent(event)

    def _read(self) -> None:
        self._places.clear()
        for entry in PAGES:
            self._offer(f"{entry.shown_group()} › {entry.shown_title()}", "page", entry.key)
        for topic in TOPICS:
            self._offer(self.tr("Help › {topic}").format(topic=topic.shown_title()), _HELP, topic.key)
        for what, choice, text in view_choices():
            named = self.tr("Lengths: {choice}") if what == LENGTHS else self.tr("Language: {choice}")
            self._offer(named.format(choice=text), what, choice)
        if self._context is None:
            return
        store = self._context.store
        if self._context.is_demo:
            self._offer(self.tr("Demo shop: back to my shop"), _DEMO, HOME)
        else:
            self._offer(self.tr("Demo shop: try it"), _DEMO, OPEN)
        try:
            of_kind = (
                (self.tr("Machine: {name}"), "machine", store.machines()),
                (self.tr("Lot: {name}"), "lot", store.lots()),
                (self.tr("Instrument: {name}"), "instrument", store.instruments()),
            )
        except StoreError as error:  # pages and help can be found all the same
            from app.words import shown

            self._context.say(shown(error.message), Level.ERROR)
            return
        for what, kind, rows in of_kind:
            for row in rows:
                self._offer(what.format(name=row.name), kind, row.id)

    def _offer(self, text: str, kind: str, key: object) -> None:
        from PySide6.QtGui import QStandardItem

        item = QStandardItem(text)
        item.setData((kind, key), QtCore.Qt.ItemDataRole.UserRole)
        self._places.appendRow(item)

    def _go_to_first(self) -> None:
        completer = self.completer()
        completer.setCompletionPrefix(self.text())
        if self.text().strip() and completer.completionCount():
            self._go(completer.currentIndex())

    def _go(self, index: QModelIndex) -> None:
        """Go there once the list of names is closed: until then it writes into the box and holds the keyboard."""
        QTimer.singleShot(0, partial(self._arrive, *index.data(QtCore.Qt.ItemDataRole.UserRole)))

    def _arrive(self, kind: str, key: Any) -> None:
        self.clear()
        if kind == "page":
            self.page_chosen.emit(key)
        elif kind in (LANGUAGE, LENGTHS):
            self.view_chosen.emit(kind, key)
        elif kind == _DEMO and self._context is not None:
            self._context.demo_asked.emit(key)
        elif kind == _HELP and self._context is not None:
            self._context.help_topic_asked.emit(key)
        elif self._context is not None:
            select = {
                "machine": self._context.select_machine,
                "lot": self._context.select_lot,
                "instrument": self._context.select_instrument,
            }[kind]
            select(key)
            self.left.emit()
