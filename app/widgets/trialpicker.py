"""A choice between the readings in progress and the kept trials, newest first."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtWidgets import QWidget

from app.dates import moment_text
from app.widgets.fields import ChoiceField
from core.records.rows import Trial, TrialState


class TrialPicker(ChoiceField):
    """`changed` follows a choice made by a person; to look at another trial is no edit.

    Attributes:
        kept: the trials to choose from, without their readings.
    """

    is_entry = False
    elision = Qt.TextElideMode.ElideRight  # the number alone tells a trial from all others

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent=parent)
        self.kept: tuple[Trial, ...] = ()
        self.least_text = self.tr("in progress")
        self.offer(())

    def offer(self, trials: Sequence[Trial]) -> None:
        """List the kept ones of these trials; chosen are the readings in progress."""
        self.kept = tuple(trial for trial in trials if trial.state is TrialState.KEPT)
        kept = [(str(trial.id), _text(trial)) for trial in self.kept]
        with QSignalBlocker(self):
            self.set_choices([("", self.tr("in progress")), *kept])
            self.set_value("")

    def mark(self, trial: Trial) -> None:
        """Show a trial as the chosen one."""
        with QSignalBlocker(self):
            self.set_value(str(trial.id))

    def choose(self, trial_id: int | None) -> None:
        """Choose a trial as a person does; None for the readings in progress."""
        if trial_id != self.chosen_id():
            with QSignalBlocker(self):
                self.set_value("" if trial_id is None else str(trial_id))
            self.changed.emit()

    def chosen_id(self) -> int | None:
        """Return the id of the chosen trial; None for the readings in progress."""
        chosen = self.value()
        return int(chosen) if chosen else None


def _text(trial: Trial) -> str:
    return f"№ {trial.id}  {moment_text(trial.kept_at)}"
