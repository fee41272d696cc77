"""The look into the chosen copy of the database, beside the window: a large one takes a while to be checked."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from app.context import Context
from app.pages.shop.storagetext import contents_text
from app.waitrow import LateBar
from app.words import shown
from core.errors import InputError, StoreError

if TYPE_CHECKING:
    from app.pages.shop.copiescard import CopiesCard
    from core.records.rows import Backup, Contents


class CopyLook(QObject):
    """Shows in the card what the copy chosen there holds; only a copy that was looked at can be put back.

    Attributes:
        bar: how far the look is.
    """

    def __init__(self, context: Context, card: CopiesCard) -> None:
        super().__init__(card)
        self._context, self._card = context, card
        self.bar = LateBar(context, card)
        card.add_below_preview(self.bar)
        card.chosen.connect(self._begin)
        self.bar.job.answered.connect(self._show)
        self.bar.job.failed.connect(self._say_failed)
        self.bar.job.stopped.connect(self._say_stopped)

    def _begin(self, backup: Backup | None) -> None:
        self.bar.job.stop()
        if backup is None:
            return
        storage = self._context.store.storage
        self._card.show_preview(self.tr("Looking into it…"))
        self._card.allow_restoring(False)
        self.bar.start(lambda step: storage.preview(backup.file, step))

    def _show(self, found: Contents) -> None:
        if self._card.current() is not None:
            self._card.show_preview(contents_text(found))
            self._card.allow_restoring(True)

    def _say_failed(self, error: StoreError | InputError) -> None:
        if self._card.current() is not None:
            self._card.show_preview(shown(error.message))

    def _say_stopped(self) -> None:
        if self._card.current() is not None:
            self._card.show_preview(self.tr("Stopped. Choose it again to look into it."))
