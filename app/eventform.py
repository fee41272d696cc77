"""Logging what happened: a click opens the list, a second one logs, and what became stale is said at once."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from app.authors import author_completer, sign_as
from app.context import Context, Level
from app.faults import told_at_once
from app.theme import STEP_PX
from app.walkreader import read_walk
from app.widgets.popover import show_below
from app.words import shown
from core.errors import InputError, StoreError
from core.guidance.walk import Standing, newly_spoiled
from core.guidance.walkplan import shop_plan
from core.guidance.walkwords import event_words, result_words
from core.records.rows import Event, NewestKept
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.walk import ResultState

_WIDTH_PX = 620


class EventForm(QFrame):
    """Opens below a button. The list logs with one click; after that the outcome stands in its place."""

    page_asked = Signal(str)

    def __init__(self, context: Context, parent: QWidget) -> None:
        super().__init__(parent, Qt.WindowType.Popup)
        self.setObjectName("popover")
        self.setAccessibleName(self.tr("What happened"))
        self._context = context
        self._last: Event | None = None
        self.buttons: dict[str, QPushButton] = {}
        self.heading, self.about, self.outcome = QLabel(), QLabel(), QLabel()
        self.author, self.note = QLineEdit(), QLineEdit()
        self.take_back = QPushButton(self.tr("&Take it back"))
        self.walk = QPushButton(self.tr("Open the &walk"))
        self.close_button = QPushButton(self.tr("Close"))
        self._parts = QStackedWidget()
        self._lay_out()
        self.take_back.clicked.connect(self._take_back)
        self.walk.clicked.connect(self._open_walk)
        self.close_button.clicked.connect(self.hide)
        self.author.editingFinished.connect(self._sign)
        self.setFixedWidth(_WIDTH_PX)

    def open_below(self, widget: QWidget) -> None:
        """Show the list for what is picked, with the keyboard on its first event that can be logged."""
        self._show_list()
        show_below(self, widget)
        can_log = next((button for button in self.buttons.values() if button.isEnabled()), self.close_button)
        (can_log if self._context.store.author else self.author).setFocus(Qt.FocusReason.PopupFocusReason)

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Close on Escape."""
        if event.key() == Qt.Key.Key_Escape:
            self.hide()
        else:
            super().keyPressEvent(event)

    def log(self, kind: str) -> None:
        """Log an event of what is picked, and say what it spoiled."""
        self._sign()
        machine, lot_id, store = self._context.machine, self._context.lot_id, self._context.store
        try:
            before = read_walk(store, machine, lot_id) if machine else None
            self._last = store.log_event(self._event(kind))
            after = read_walk(store, machine, lot_id) if machine else None
        except (InputError, StoreError) as error:
            self.hide()
            self._context.say(shown(error.message), Level.ERROR)
            return
        spoiled = newly_spoiled(before, after) if before and after else ()
        self._show_outcome(kind, spoiled)
        self._context.logged.emit(self._last)

    def _event(self, kind: str) -> Event:
        machine, lot, instrument = self._context.machine, self._context.lot, self._context.instrument
        about = shop_plan().about[kind]
        detail = {}
        if about == "lot" and lot is not None and machine is not None:
            before = _lot_before(self._context.store.newest_kept(machine.id), machine.id, lot.id)
            detail = {} if before is None else {"from_lot": before}
        return Event(
            kind,
            machine_id=machine.id if machine and about != "instrument" else None,
            lot_id=lot.id if lot and about == "lot" else None,
            instrument_id=instrument.id if instrument and about == "instrument" else None,
            detail=detail,
            note=self.note.text().strip(),
        )

    def _show_list(self) -> None:
        self._parts.setCurrentIndex(0)
        self.author.setText(self._context.store.author)
        picked = {"machine": self._context.machine, "lot": self._context.lot, "instrument": self._context.instrument}
        for kind, button in self.buttons.items():
            button.setEnabled(picked[shop_plan().about[kind]] is not None)
        names = [row.name for row in picked.values() if row is not None]
        self.heading.setText(self.tr("What happened?"))
        text = self.tr("One click logs it for what is picked: {names}.").format(names=", ".join(names))
        self.about.setText(text if names else self.tr("Pick a machine, a lot or an instrument first."))
        self.author.setCompleter(author_completer(self._context, self.author))

    def _show_outcome(self, kind: str, spoiled: tuple[ResultState, ...]) -> None:
        self.heading.setText(self.tr("Logged: {event}").format(event=shown(event_words(kind))))
        self.outcome.setText(spoiled_text(spoiled))
        self.note.clear()  # only now: where nothing was stored, the words wait for the next try
        self._parts.setCurrentIndex(1)
        self.take_back.setEnabled(True)
        self.walk.setFocus()
        self._context.say(f"{self.heading.text()}. {' '.join(self.outcome.text().splitlines())}", Level.INFO)

    def _take_back(self) -> None:
        assert self._last is not None  # the button stands beside it
        back = Event(
            self._last.kind,
            machine_id=self._last.machine_id,
            lot_id=self._last.lot_id,
            instrument_id=self._last.instrument_id,
            takes_back=self._last.id,
        )
        try:
            back = self._context.store.log_event(back)
        except (InputError, StoreError) as error:
            self._context.say(shown(error.message), Level.ERROR)
            return
        self._context.say(self.tr("Taken back; both stay in the logbook."), Level.GOOD)
        self._context.logged.emit(back)
        self.hide()

    def _open_walk(self) -> None:
        self.hide()
        self.page_asked.emit("walk")

    def _sign(self) -> None:
        sign_as(self._context, self.author.text())

    def _lay_out(self) -> None:
        self.heading.setObjectName("heading")
        self.about.setObjectName("quiet")
        for label in (self.about, self.outcome):
            label.setWordWrap(True)
        self.author.setAccessibleName(self.tr("Who is at work here"))
        self.author.setPlaceholderText(self.tr("your name, asked once"))
        self.note.setAccessibleName(self.tr("Words to go with it"))
        self.note.setPlaceholderText(self.tr("words to go with it, if any; type them first"))
        self._parts.addWidget(self._make_list())
        self._parts.addWidget(self._make_outcome())
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * STEP_PX, 2 * STEP_PX, 2 * STEP_PX, 2 * STEP_PX)
        layout.setSpacing(STEP_PX)
        layout.addWidget(self.heading)
        layout.addWidget(self._parts)

    def _make_list(self) -> QWidget:
        inside = QWidget()
        above = QHBoxLayout()
        above.addWidget(self.author, 1)
        above.addWidget(self.note, 2)
        grid = QGridLayout()
        grid.setHorizontalSpacing(STEP_PX)
        grid.setVerticalSpacing(STEP_PX // 2)
        kinds = list(shop_plan().about)
        rows = (len(kinds) + 1) // 2
        for place, kind in enumerate(kinds):
            button = QPushButton(shown(event_words(kind)))
            button.setAutoDefault(True)
            button.clicked.connect(partial(self.log, kind))
            self.buttons[kind] = button
            grid.addWidget(button, place % rows, place // rows)
        layout = QVBoxLayout(inside)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.about)
        layout.addLayout(above)
        layout.addLayout(grid)
        return inside

    def _make_outcome(self) -> QWidget:
        inside = QWidget()
        self.walk.setObjectName("primary")
        buttons = QHBoxLayout()
        buttons.addWidget(self.take_back)
        buttons.addStretch(1)
        buttons.addWidget(self.close_button)
        buttons.addWidget(self.walk)
        layout = QVBoxLayout(inside)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.outcome)
        layout.addStretch(1)
        layout.addLayout(buttons)
        return inside


def spoiled_text(spoiled: tuple[ResultState, ...]) -> str:
    """Say which results are to be done again and which are in doubt."""
    stale = [shown(result_words(found.kind.key)) for found in spoiled if found.standing is Standing.STALE]
    doubt = [shown(result_words(found.kind.key)) for found in spoiled if found.standing is Standing.DOUBT]
    says = []
    if stale:
        says.append(shown(tr("To be done again: {results}.", results=", ".join(stale))))
    if doubt:
        says.append(shown(tr("In doubt until a quick check: {results}.", results=", ".join(doubt))))
    return "\n".join(says) or shown(tr("Nothing more that was kept is spoiled by it."))


def _lot_before(newest: list[NewestKept], machine_id: int | None, lot_id: int | None) -> int | None:
    """Return the other lot that the machine was used with last."""
    used = [row for row in newest if row.machine_id == machine_id and row.lot_id not in (None, lot_id)]
    return max(used, key=lambda row: row.serial).lot_id if used else None
