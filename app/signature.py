"""Who is at work: asked once in the notice line, after the first trial that nobody signed; nothing waits for it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QLineEdit

from app.authors import sign_as
from app.context import Context, Level
from app.words import shown
from core.errors import InputError, StoreError
from core.words import tr

if TYPE_CHECKING:
    from core.records.rows import Trial  # the window is painted before there is one


class Signature(QObject):
    """Shows a field when a trial is kept unsigned. What was kept so far gets a note of whose it is."""

    def __init__(self, context: Context, field: QLineEdit) -> None:
        super().__init__(field)
        self._context, self._field = context, field
        self._unsigned: list[Trial] = []
        field.setPlaceholderText(self.tr("who is at work? asked once"))
        field.setAccessibleName(self.tr("Who is at work here, asked once"))
        field.hide()
        context.kept.connect(self._look)
        context.author_changed.connect(self._sign)
        field.editingFinished.connect(self._answer)

    def _look(self, kept: Trial) -> None:
        from core.records.rows import TrialState

        if kept.state is TrialState.KEPT and not self._context.store.author:
            self._unsigned.append(kept)
            self._field.show()

    def _answer(self) -> None:
        sign_as(self._context, self._field.text())

    def _sign(self, name: str) -> None:
        """Note on what was kept before that it is theirs; the trials themselves stay as they are."""
        from core.records.rows import Event

        if not name:
            return
        self._field.hide()
        waiting, self._unsigned = self._unsigned, []
        note = shown(tr("Kept by {name}.", name=name))
        try:
            for kept in waiting:
                event = Event("note", kept.machine_id, kept.lot_id, trial_id=kept.id, note=note)
                self._context.logged.emit(self._context.store.log_event(event))
        except (InputError, StoreError) as error:
            self._context.say(shown(error.message), Level.ERROR)
            return
        self._context.say(self.tr("Signed: {name}.").format(name=name), Level.GOOD)
