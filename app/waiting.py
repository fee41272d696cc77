"""What the database could not take: held in a file on this computer, and sent when the database answers again."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer
from shiboken6 import isValid

from app.jobs import Job
from app.words import shown
from core.errors import StoreError

if TYPE_CHECKING:
    from app.context import Context
    from core.records.rows import Trial

AGAIN_AFTER_MS = 5000


class WaitingRoom(QObject):
    """Asks for the database beside the window, so that a silent server does not stop the typing."""

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self._context = context
        self._senders: list[Callable[[], bool]] = []
        self._clock = QTimer(self)
        self._clock.setSingleShot(True)
        self._clock.timeout.connect(self._ask)
        self._job = Job(self)
        self._job.answered.connect(self._send_all)
        self._job.failed.connect(self._wait_on)
        context.closing.connect(self._clock.stop)
        context.closing.connect(self._job.finish)

    def hold(self, trial: Trial, seen: Trial | None, send: Callable[[], bool]) -> str:
        """Write what is typed to its file, begin to ask for the database, and say so; see `Context.hold`."""
        if send not in self._senders:
            self._senders.append(send)
        self._wait_on()
        try:
            self._context.store.spool.put(trial, seen)
        except StoreError as error:
            text = self.tr("What is typed stays on this page only; it cannot be held on this computer either: {why}")
            return text.format(why=shown(error.message))
        return self.tr("What is typed stays on this page and on this computer, and is sent when the database is back.")

    def release(self, trial: Trial) -> None:
        """Take the file of what is stored now away."""
        self._context.store.spool.drop(trial)

    def _wait_on(self) -> None:
        if not self._job.is_running():
            self._clock.start(AGAIN_AFTER_MS)

    def _ask(self) -> None:
        store = self._context.store
        self._job.start(lambda step: store.ping())

    def _send_all(self) -> None:
        senders, self._senders = self._senders, []
        # A page that is closed by now has its file; the next start sends it.
        senders = [send for send in senders if isValid(getattr(send, "__self__", self))]
        sent = [send() for send in senders]  # one that fails holds itself again
        if sent and all(sent):
            self._context.say(self.tr("The database is back; what was typed meanwhile is stored."), "good")
