"""Undo for everything that is entered below one widget, in the order of the edits.

What can be undone says so itself: it has `undo_state()`, `restore_state(state)` and a signal that follows a finished
edit; check boxes and large text fields are served here. A step is what one edit changed, also where one entry changed
others. While something is being typed the field's own undo comes first.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from typing import Any, NamedTuple, Protocol, cast

from PySide6.QtCore import QEvent, QObject, Qt, Signal, SignalInstance
from PySide6.QtGui import QKeyEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import QCheckBox, QLineEdit, QPlainTextEdit, QWidget
from shiboken6 import isValid

from app.faults import or_else

_UNDO = ("Ctrl+Z",)
_REDO = ("Ctrl+Shift+Z", "Ctrl+Y")
_MOST_STEPS = 500
_FOCUS = Qt.FocusReason.OtherFocusReason


class Undoable(Protocol):
    """What a field or a table of readings offers so that it can be undone."""

    def undo_state(self) -> Any:
        """Return what is entered; states are compared, and never changed in place."""

    def restore_state(self, state: Any) -> None:
        """Bring a state back and announce it as an edit."""

    def show_restored(self, before: Any) -> None:
        """Put the keyboard where the state now differs from the one before."""


@dataclass(frozen=True, slots=True)
class _Step:
    """What one edit changed: before and after by what holds it."""

    before: dict[QObject, Any]
    after: dict[QObject, Any]


class _Watched(NamedTuple):
    state: Callable[[], Any]
    restore: Callable[[Any], None]
    show: Callable[[Any], None]
    is_field: bool


class Undoing(QObject):
    """The steps of one page.

    `said` carries a sentence after each step back or forth; `shown_wanted` the widget that is to be brought into view.
    """

    said = Signal(str)
    shown_wanted = Signal(object)

    def __init__(self, root: QWidget, why_nothing: Callable[[], str] | None = None) -> None:
        """Serve what is below `root`; `why_nothing` says why there is no step where that is a matter of the page."""
        super().__init__(root)
        self._root = root
        self._why_nothing = why_nothing or str
        self._watched: dict[QObject, _Watched] = {}
        self._now: dict[QObject, Any] = {}
        self._done: list[_Step] = []
        self._undone: list[_Step] = []
        self._asking: set[QObject] = set()
        self._going = False
        for keys, slot in ((_UNDO, self.undo), (_REDO, self.redo)):
            shortcut = QShortcut(root)  # holds in the window while the page is in view
            shortcut.setKeys([QKeySequence(key) for key in keys])
            shortcut.activated.connect(slot)

    def watch(self) -> None:
        """Take in what is found below the widget; a widget that grows calls it again."""
        window = self._root.window()
        for found in self._root.findChildren(QObject):
            if found in self._watched or (isinstance(found, QWidget) and found.window() is not window):
                continue  # a form that pops up is undone by itself
            if isinstance(found, QLineEdit):
                found.installEventFilter(self)
            if hasattr(found, "undo_asked") and found not in self._asking:
                self._asking.add(found)
                found.undo_asked.connect(self.undo)
                cast(Any, found).redo_asked.connect(self.redo)
            served = _served(found)
            if served is None:
                continue
            watched, changed = served
            self._watched[found] = watched
            if changed is not None:
                changed.connect(self.note)
            if isinstance(found, QWidget):
                found.installEventFilter(self)  # once only, also where it is there already
        self._look()

    def forget(self) -> None:
        """Forget all steps: something else is shown now."""
        self._done.clear()
        self._undone.clear()
        self._look()

    def can_undo(self) -> bool:
        """Whether a step can be taken back."""
        return bool(self._done)

    def note(self) -> None:
        """Remember what has changed since the last look as one step."""
        if self._going:
            return
        before = self._now
        self._look()
        changed = [one for one, state in self._now.items() if one in before and before[one] != state]
        if changed:
            self._done.append(_Step({one: before[one] for one in changed}, {one: self._now[one] for one in changed}))
            del self._done[:-_MOST_STEPS]
            self._undone.clear()

    def undo(self) -> None:
        """Take the last step back."""
        if not self._done:
            self.said.emit(self._why_nothing() or self.tr("There is nothing to undo on this page."))
            return
        step = self._done.pop()
        self._undone.append(step)
        self._go(step.after, step.before)
        self.said.emit(self.tr("Undone: {what}.").format(what=_names(step, self.tr("readings"))))

    def redo(self) -> None:
        """Take the step undone last once more."""
        if not self._undone:
            self.said.emit(self.tr("There is nothing to redo on this page."))
            return
        step = self._undone.pop()
        self._done.append(step)
        self._go(step.before, step.after)
        self.said.emit(self.tr("Done again: {what}.").format(what=_names(step, self.tr("readings"))))

    @or_else(False)
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Look before an edit begins, note the end of one in a large text, and let typing be undone before steps."""
        kind = event.type()
        if kind == QEvent.Type.FocusIn:
            self._look()  # what the program filled in meanwhile belongs to no step
        elif kind == QEvent.Type.FocusOut and isinstance(watched, QPlainTextEdit):
            self.note()
        elif kind == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            wanted = _wanted(event)
            if wanted and not _types(watched, wanted):
                event.ignore()  # then the keys reach the page
                return True
        elif isinstance(event, QKeyEvent) and kind == QEvent.Type.KeyPress and _wanted(event) == _REDO:
            cast(QLineEdit, watched).redo()  # only typing gets here; Qt knows one of the two keys only
            return True
        return super().eventFilter(watched, event)

    def _look(self) -> None:
        self._watched = {one: served for one, served in self._watched.items() if isValid(one)}
        self._now = {one: served.state() for one, served in self._watched.items()}

    def _go(self, there: dict[QObject, Any], back: dict[QObject, Any]) -> None:
        """Bring states back: fields first, since they may plan the rows of a table anew."""
        self._going = True
        try:
            order = sorted((one for one in back if isValid(one)), key=lambda one: not self._watched[one].is_field)
            for one in (*order, *order):  # twice: one field may have changed another that was mended already
                if self._watched[one].state() != back[one]:
                    self._watched[one].restore(back[one])
        finally:
            self._going = False
            self._look()
        if order:
            self.shown_wanted.emit(order[0])
            self._watched[order[0]].show(there[order[0]])


class UndoPast(QObject):
    """Lets the keys of undo pass a line beside the page while it is empty: Tab leads there from the last field."""

    def __init__(self, line: QLineEdit) -> None:
        super().__init__(line)
        self._line = line
        line.installEventFilter(self)

    @or_else(False)
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Leave the keys to the page where nothing is typed."""
        if event.type() == QEvent.Type.ShortcutOverride and not self._line.text() and _wanted(cast(QKeyEvent, event)):
            event.ignore()
            return True
        return super().eventFilter(watched, event)


def _served(found: QObject) -> tuple[_Watched, SignalInstance | None] | None:
    """Return how an object is looked at and restored, with the signal of its finished edits; None for others."""
    if getattr(found, "undo_state", None) is not None and getattr(found, "is_entry", True):
        own = cast(Any, found)
        is_field = isinstance(found, QWidget)
        return _Watched(own.undo_state, own.restore_state, own.show_restored, is_field), own.edit_finished
    if isinstance(found, QCheckBox) and found.property("entry") is not False:

        def turn(_checked: bool) -> None:
            found.click()  # as a person would: those who listen to clicks hear it

        return _Watched(found.isChecked, turn, partial(_focus, found), is_field=True), found.clicked
    if isinstance(found, QPlainTextEdit) and not found.isReadOnly():
        return _Watched(found.toPlainText, found.setPlainText, partial(_focus, found), is_field=True), None
    return None


def _focus(field: QWidget, _before: Any) -> None:
    field.setFocus(_FOCUS)


def _wanted(event: QKeyEvent) -> tuple[str, ...]:
    """Return the keys of which these are one; none where they are others."""
    pressed = QKeySequence(event.keyCombination())
    return next((keys for keys in (_UNDO, _REDO) if pressed in [QKeySequence(key) for key in keys]), ())


def _types(watched: QObject, wanted: tuple[str, ...]) -> bool:
    """Whether the field's own undo has something to do: what is being typed comes first."""
    if isinstance(watched, QPlainTextEdit):
        document = watched.document()
        return document.isUndoAvailable() if wanted == _UNDO else document.isRedoAvailable()
    if not isinstance(watched, QLineEdit):
        return False
    if wanted == _REDO:
        return watched.isRedoAvailable()
    unfinished = getattr(watched, "is_unfinished", watched.isModified)
    return bool(unfinished())


def _names(step: _Step, table: str) -> str:
    """Return what a step changed, fields by their names."""
    left = [one for one in step.before if isValid(one)]
    fields = [one.accessibleName() or getattr(one, "text", str)() for one in left if isinstance(one, QWidget)]
    own = [getattr(one, "change_text", "") or table for one in left]
    return str((fields or own or [table])[0]).replace("&", "")
