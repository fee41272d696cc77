"""What must be done before a shop can be opened and takes a while: it is shown how far it is, and can be stopped.

An older database has its tables changed first, and a copy that takes the place of a damaged file is checked first. Both
run beside the window; stopped, everything stays as it was.
"""

from __future__ import annotations

from contextlib import ExitStack
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from app.jobs import Step
from app.theme import STEP_PX
from app.waitrow import WaitBar
from app.widgets.labels import heading
from app.widgets.panel import Panel
from core.errors import StoreError
from core.words import tr

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from app.mainwindow import MainWindow
    from core.records.store import Store

_WIDEST_PX = 640


class LaterError(Exception):
    """The tables are to be changed first, which is no work for the thread of the window."""


def open_or_wait(
    window: MainWindow,
    opened: Callable[[Step], Store],
    go_on: Callable[[Store], None],
    refuse: Callable[[StoreError], None],
) -> None:
    """Open a database at once, or, where its tables are to be changed first, beside the window.

    Args:
        window: shows how far it is.
        opened: opens the database; is told the part done of a change of its tables.
        go_on: is given the store once it is open.
        refuse: is told why it cannot be opened, later too.

    Raises:
        StoreError: it cannot be opened; nothing was changed.
    """

    def enter(store: object) -> None:
        try:
            go_on(store)  # type: ignore[arg-type]
        except StoreError as error:
            refuse(error)

    try:
        store = opened(_leave_for_later)
    except LaterError:
        title = QCoreApplication.translate("LongWork", "The records are brought up to date")
        says = QCoreApplication.translate(
            "LongWork",
            "They were written by an earlier version of this program. If you stop this, they stay as they were.",
        )
        work = LongWork(title, says, window)
        work.begin(lambda step: _kept_open(opened, step), enter, refuse)
    else:
        go_on(store)


def _kept_open(opened: Callable[[Step], Store], step: Step) -> Store:
    """Open a database; it is closed again where nobody waits for it any more."""
    store = opened(step)
    with ExitStack() as undo:
        undo.callback(store.close)
        step(1.0)
        undo.pop_all()
    return store


def _leave_for_later(_part: float) -> None:
    raise LaterError


def put_in_place(window: MainWindow, file: str, where: str | Path, go_on: Callable[[str, str], None]) -> None:
    """Put a copy in the place of a database that cannot be opened; `go_on` is given what came of it and its level."""
    from core.records.rescue import rescue

    def say_done(aside: object) -> None:
        go_on(tr("The copy is in place; the file that could not be opened is now {file}.", file=aside), "good")

    def say_failed(error: StoreError) -> None:
        go_on(error.message, "error")

    title = QCoreApplication.translate("LongWork", "The copy is put in place")
    says = QCoreApplication.translate("LongWork", "It is checked first. If you stop this, everything stays as it is.")
    LongWork(title, says, window).begin(lambda step: rescue(where, file, step), say_done, say_failed)


class LongWork(QWidget):
    """Stands in the body of the window while the work runs.

    Attributes:
        bar: how far it is.
    """

    def __init__(self, title: str, says: str, window: MainWindow) -> None:
        super().__init__()
        self.bar = WaitBar(window.closed)
        self.bar.stop.setAccessibleDescription(says)
        self._lay_out(title, says)
        self.setFocusProxy(self.bar.stop)
        window.show_meanwhile(self)

    def begin(
        self,
        work: Callable[[Step], object],
        go_on: Callable[[object], object],
        refuse: Callable[[StoreError], object],
    ) -> None:
        """Do the work beside the window, then go on with its answer or say why there is none."""
        job = self.bar.job
        job.answered.connect(go_on)
        job.failed.connect(refuse)
        job.stopped.connect(lambda: refuse(StoreError(tr("Stopped; everything is as it was."))))
        job.ended.connect(self.deleteLater)
        self.bar.start(work)
        self.bar.stop.setFocus()

    def _lay_out(self, title: str, says: str) -> None:
        words = QLabel(says)
        words.setWordWrap(True)
        card = Panel(title)
        card.setMaximumWidth(_WIDEST_PX)
        inside, around = QVBoxLayout(card), QVBoxLayout(self)
        inside.setContentsMargins(2 * STEP_PX, 2 * STEP_PX, 2 * STEP_PX, 2 * STEP_PX)
        inside.setSpacing(STEP_PX)
        inside.addWidget(heading(title))
        inside.addWidget(words)
        inside.addWidget(self.bar)
        around.setContentsMargins(0, 0, 0, 0)
        around.addWidget(card)
        around.addStretch(1)
