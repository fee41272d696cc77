"""The page *Board*: all machines at a glance; Enter on one picks it and opens its walk.

The records are read from indexes alone; then the walks are worked out, those in sight first.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, ClassVar

from PySide6.QtCore import QModelIndex, QPersistentModelIndex
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QPushButton, QVBoxLayout, QWidget

from app.context import Context, Level
from app.firststart import FirstStart
from app.helptopics import FIRST_STEPS
from app.options import OPEN
from app.pages.base import Page
from app.pages.shop.boardmodel import BoardFilter, BoardModel, BoardRow
from app.pages.shop.boardreader import Board, read_board
from app.pages.shop.boardtable import BoardTable
from app.pages.shop.boardwork import BoardWork
from app.theme import STEP_PX
from app.waitrow import is_large
from app.widgets.fields import ChoiceField
from app.widgets.labels import heading
from app.widgets.panel import Panel
from app.words import shown
from core.errors import StoreError
from core.records.rows import Trial


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
        self.work = BoardWork(context, self)
        self._lay_out()
        self.work.was_read.connect(self.show_result)
        self.work.worked_out.connect(self.model.tell_changed)
        self.work.ended.connect(self._choose)
        self.work.stopped.connect(self._say_stopped)
        self.work.failed.connect(self._say_failed)
        self.finder.textChanged.connect(self._choose)
        self.finder.returnPressed.connect(self.table.setFocus)
        self.wanted.changed.connect(self._choose)
        self.table.activated.connect(self._open_walk)
        self.open_button.clicked.connect(self._open_chosen)
        self.start.add.clicked.connect(self._add_machine)
        self.start.demo.clicked.connect(self._try_demo)
        self.start.steps.clicked.connect(self._show_first_steps)
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
        self._show_start(not result.machines)
        self.model.show_rows([BoardRow(machine, result.lot_name(machine.id)) for machine in result.machines])
        self.count.setText(self._counted())
        self.work.work_out(self._work_out(result), 2 * len(result.machines))

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

    def recompute(self) -> None:
        """Look at all machines; those of a large shop are read beside the window, and those of before stay in sight."""
        try:
            if is_large(self.context):
                self.work.read()
            else:
                super().recompute()
        except StoreError as error:
            self._say_failed(error)

    def hidden(self) -> None:
        """Rest while nobody looks."""
        self.work.rest()

    def is_complete(self) -> bool:
        """Return whether every machine is worked out."""
        return not self.work.is_busy()

    # What follows from them

    def _say_failed(self, error: StoreError) -> None:
        self.context.say(shown(error.message), Level.ERROR)

    def _say_stopped(self) -> None:
        self._choose()
        self.context.say(self.tr("Stopped. Go to another page and come back, and it is read anew."), Level.WARNING)

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
            row.drift, row.drifts = board.drift(row.machine)
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

    def _show_first_steps(self) -> None:
        self.context.help_topic_asked.emit(FIRST_STEPS.key)

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
        self._card = card = Panel(self.table.accessibleName())
        inside = QVBoxLayout(card)
        inside.setContentsMargins(1, 1, 1, 1)
        inside.addWidget(self.table)
        inside.addWidget(self.work.bar)
        self.work.bar.setContentsMargins(STEP_PX, 0, STEP_PX, STEP_PX // 2)
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
