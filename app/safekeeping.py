"""What the program does for the records by itself, once a shop is open: the copy of the day, and words of warning."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QObject, QTimer

from app.context import Context, Level
from app.jobs import Job, Step
from app.words import shown
from core.errors import StoreError

if TYPE_CHECKING:
    from core.records.store import Store

SOON_MS = 1000  # the first page comes first


def send_waiting(store: Store) -> str:
    """Store what was typed while the database was away and the window was closed since; return what came of it."""
    try:
        taken, refused = store.spool.send(store)
    except StoreError as error:
        return shown(error.message)
    if refused:
        return " ".join(shown(sentence) for sentence in refused)
    if taken:
        return QCoreApplication.translate(
            "Safekeeper", "What was typed while the database was away is stored now, in the open trials of its pages."
        )
    return ""


def look_after_soon(context: Context) -> Safekeeper:
    """Begin in a moment with what `Safekeeper` does."""
    keeper = Safekeeper(context)
    QTimer.singleShot(SOON_MS, keeper, keeper.look_after)
    return keeper


class Safekeeper(QObject):
    """Makes the copy of the day beside the window, of a server too, then says what endangers the records."""

    def __init__(self, context: Context) -> None:
        super().__init__(context)
        self._context = context
        self.job = Job(self)
        self.job.answered.connect(self._say_warnings)
        self.job.failed.connect(self._say_failure)
        context.closing.connect(self.job.finish)

    def look_after(self) -> None:
        """Begin."""
        store = self._context.store
        self.job.start(lambda step: _look_after(store, step))

    def _say_warnings(self, warnings: tuple[str, ...]) -> None:
        if warnings:
            self._context.say(" ".join(shown(sentence) for sentence in warnings), Level.WARNING)

    def _say_failure(self, error: StoreError) -> None:
        text = self.tr("The copy of the day could not be made: {why}")
        self._context.say(text.format(why=shown(error.message)), Level.WARNING)


def _look_after(store: Store, step: Step) -> tuple[str, ...]:
    if store.is_demo:  # begun anew at any time: worth no copy
        return ()
    store.storage.back_up_daily(step)
    return store.storage.warnings()
