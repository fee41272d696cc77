"""The page *Board*: all machines at a glance; Enter on one picks it and opens its walk.

The records are read at once, from indexes alone; the walks are worked out some at a time between two looks at the
keyboard, those in sight first, so that a thousand machines do not hold the window up.
"""

from __future__ import annotations

from collections.abc import Iterator
from time import monotonic
from typing import TYPE_CHECKING, Any, ClassVar

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QTimer
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from app.context import Context, Level
from app.firststart import FirstStart
from app.options import OPEN
from app.pages.base import Page
from app.pages.shop.boardmodel import BoardFilter, BoardModel, BoardRow
from app.pages.shop.boardreader import Board, read_board
from app.pages.shop.boardtable import BoardTable
from app.theme import STEP_PX
from app.widgets.fields import ChoiceField
from app.widgets.labels import heading
from app.words import shown
from core.errors import StoreError
from core.records.rows import Trial

if TYPE_CHECKING:
    from PySide6.QtGui import QHideEvent

_SLICE_S = 0.03  # at a time, then the window may breathe


class BoardPage(Page):
    """Nothing is typed here but what to look for."""

    subject: ClassVar[str] = "board"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Board")
        self.finder, self.wanted, self.count = QLineEdit(), ChoiceField(), QLabel()
        self.open_button = QPushButton(self.tr("Open its &walk"))
        self.model = BoardModel(self)
        self.sight = BoardFilter(self.model, self)
        self.table = BoardTable(self.sight)
        self.start = FirstStart()
        self._board: Board | None = None
        self._work: Iterator[int] = iter(())
        self._timer = QTimer(self)
        self._timer.setInterval(0)
        self._lay_out()
        self._timer.timeout.connect(self._work_on)
        self.finder.textChanged.connect(self._choose)
        self.finder.returnPressed.connect(self.table.setFocus)
        self.wanted.changed.connect(self._choose)
        self.table.activated.connect(self._open_walk)
        self.open_button.clicked.connect(self._open_chosen)
        self.start.add.clicked.connect(self._add_machine)
        self.start.demo.clicked.connect(self._try_demo)
        self.start.steps.clicked.connect(context.first_steps_asked)
        self.start.help.clicked.connect(context.help_asked)
        for changed in (context.kept, context.logged, context.machines_changed):
            changed.connect(self._answer_context)

    # The four methods of a page

    def read(self) -> None:
        """Nothing is typed."""

    def compute(self, readings: None) -> Board:  # noqa: ARG002
        """Read what is on record of all machines."""
        return read_board(self.context)

    def show_result(self, result: Board) -> None:
        """Show the machines; what they want follows."""
        self._board = result
        self._show_start(not result.machines)
        self.model.show_rows([BoardRow(machine, result.lot_name(machine.id)) for machine in result.machines])
        self.count.setText(self._counted())
        self._work = self._work_out(result)
        self._timer.start()

    def record(self) -> Trial:
        """Return an empty trial: a board keeps nothing."""
        return Trial(self.subject)

    # Hooks

    def keep(self) -> None:
        """Say that there is nothing to keep here."""
        self.context.say(self.tr("The board has nothing to keep; Enter opens the walk of a machine."), Level.INFO)

    def save_draft(self) -> bool:
        """Nothing is typed here, so nothing can be lost."""
        return True

    def load_draft(self, trial: Trial | None) -> None:
        """The board is the same whatever is picked."""

    def shown(self) -> None:
        """Look at all machines anew."""
        self.recompute()

    def hideEvent(self, event: QHideEvent) -> None:
        """Rest while nobody looks."""
        super().hideEvent(event)
        self._timer.stop()

    def is_complete(self) -> bool:
        """Return whether every machine is worked out."""
        return not self._timer.isActive()

    # What follows from them

    def _work_on(self) -> None:
        """Work rows out until the slice of time is over."""
        until, done = monotonic() + _SLICE_S, []
        try:
            while monotonic() < until and (row := next(self._work, None)) is not None:
                done.append(row)
        except StoreError as error:
            self._timer.stop()
            self.context.say(shown(error.message), Level.ERROR)
            return
        if done:
            self.model.tell_changed(min(done), max(done))
        else:
            self._timer.stop()
            self._choose()

    def _work_out(self, board: Board) -> Iterator[int]:
        """Work out the walks, those in sight first, then promises and drifts."""
        places = self._in_sight_first()
        for place in places:
            row = self.model.rows[place]
            row.line = board.line(row.machine)
            row.promise = board.promise(self.context, row.line)
            yield place
        for place in places:
            row = self.model.rows[place]
            row.drift, row.drifts = board.drift(self.context, row.machine)
            yield place

    def _in_sight_first(self) -> list[int]:
        top = max(self.table.rowAt(0), 0)
        bottom = self.table.rowAt(self.table.viewport().height())
        last = bottom if bottom >= 0 else min(self.sight.rowCount(), top + 60) - 1
        seen = [self.sight.mapToSource(self.sight.index(row, 0)).row() for row in range(top, last + 1)]
        first = set(seen)
        return seen + [place for place in range(len(self.model.rows)) if place not in first]

    def _choose(self) -> None:
        self.sight.show_only(self.finder.text(), self.wanted.value() or "")
        self.count.setText(self._counted())

    def _counted(self) -> str:
        seen, every = self.sight.rowCount(), len(self.model.rows)
        if seen == every:
            return self.tr("Machines: {every}").format(every=every)
        return self.tr("{seen} of {every} machines").format(seen=seen, every=every)

    def _open_chosen(self) -> None:
        if self.table.currentIndex().isValid():
            self._open_walk(self.table.currentIndex())
        else:
            self.context.say(self.tr("Choose a machine in the table first."), Level.WARNING)

    def _open_walk(self, index: QModelIndex | QPersistentModelIndex) -> None:
        row = self.model.rows[self.sight.mapToSource(index).row()]
        self.context.select_machine(row.machine.id)
        if row.line is not None and row.line.lot_id is not None:
            self.context.select_lot(row.line.lot_id)
        self.context.page_asked.emit("walk")

    def _add_machine(self) -> None:
        self.context.select_machine(None)
        self.context.page_asked.emit("drive")

    def _try_demo(self) -> None:
        self.start.demo.setEnabled(False)  # once is enough
        self.context.demo_asked.emit(OPEN)

    def _show_start(self, empty: bool) -> None:
        """Show where to begin instead of a table without a line."""
        for widget in (self._card, self.finder, self.wanted, self.count, self.open_button):
            widget.setVisible(not empty)
        self.start.setVisible(empty)
        self.start.demo.setEnabled(True)
        self.setFocusProxy(self.start if empty else self.finder)

    def _answer_context(self, _what: Any = None) -> None:
        if self.isVisible():
            self.recompute()

    def _lay_out(self) -> None:
        self.count.setObjectName("quiet")
        self.finder.setPlaceholderText(self.tr("machine or lot"))
        self.finder.setAccessibleName(self.tr("Find a machine or lot"))
        self.finder.setMaximumWidth(220)
        self.wanted.setAccessibleName(self.tr("Which machines"))
        self.wanted.set_choices(
            [
                ("", self.tr("all machines")),
                ("attention", self.tr("want attention")),
                ("stale", self.tr("with stale steps")),
                ("doubt", self.tr("in doubt")),
                ("setup", self.tr("being set up")),
                ("verified", self.tr("verified")),
            ]
        )
        self._card = card = QFrame()
        card.setObjectName("card")
        inside = QVBoxLayout(card)
        inside.setContentsMargins(1, 1, 1, 1)
        inside.addWidget(self.table)
        above = QHBoxLayout()
        above.setSpacing(2 * STEP_PX)
        above.addWidget(heading(self.title))
        above.addWidget(self.finder)
        above.addWidget(self.wanted)
        above.addWidget(self.count, 1)
        above.addWidget(self.open_button)
        down = QVBoxLayout(self)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(STEP_PX)
        down.addLayout(above)
        down.addWidget(card, 1)
        down.addWidget(self.start, 1)
        self._show_start(False)
