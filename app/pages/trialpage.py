"""What pages with kept trials share: look at one, locked, and go back to the readings in progress.

Such a page has a `TrialPicker`, and fills in `plan`, `show_trial` and `lock` beside the four methods.
"""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from app.context import Context, Level
from app.pages.base import Page
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.errors import StoreError
from core.records.rows import Trial


class TrialPage(Page):
    """A page whose trials are kept and looked at again.

    Attributes:
        picker: chooses between the readings in progress and the kept trials of the picked machine.
        kept_trial: the kept trial that is looked at; None while readings are in progress.
    """

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.picker = TrialPicker()
        self.kept_trial: Trial | None = None
        self.picker.changed.connect(self._choose_trial)
        context.kept.connect(self._answer_kept)

    # To be filled in

    def plan(self) -> None:
        """Begin with empty readings; emits nothing."""
        raise NotImplementedError

    def show_trial(self, trial: Trial) -> None:
        """Show the readings of a trial, open or kept; emits nothing."""
        raise NotImplementedError

    def lock(self, locked: bool) -> None:
        """Show readings without letting them be changed."""
        raise NotImplementedError

    def why_not_keep(self) -> str:
        """Say what stands against keeping the trial; nothing where it can be kept."""
        if self.kept_trial is not None:
            return self.tr("Kept trials are not changed.")
        if self.context.machine is None:
            return self.tr("Choose or add a machine above, then keep the trial.")
        return ""

    # What follows from them

    def load_draft(self, trial: Trial | None) -> None:
        """Show an open trial, or plan a new one."""
        self.kept_trial = None
        self.lock(False)
        self._list_trials()
        if trial is None:
            self.plan()
        else:
            self.show_trial(trial)
        self.recompute()

    def save_draft(self) -> bool:
        """Commit the readings in progress; a kept trial has nothing to commit."""
        return True if self.kept_trial else super().save_draft()

    def keep(self) -> None:
        """Keep the trial unless something stands against it."""
        if why_not := self.why_not_keep():
            self.context.say(why_not, Level.WARNING)
            return
        super().keep()

    def begin_anew(self) -> None:
        """Go on with the readings in progress."""
        self.load_draft(self.draft)
        self.take_focus()

    def answer_change(self) -> None:
        """Judge again and commit: what the window shows as kept is in the database."""
        self.recompute()
        self.save_draft()

    def _answer_kept(self, trial: Trial) -> None:
        """Keep the verdict of a kept trial in sight."""
        if trial.subject == self.subject:
            self._list_trials()
            self._look_at(trial)

    def _choose_trial(self) -> None:
        trial_id = self.picker.chosen_id()
        if trial_id is None:
            self.begin_anew()
            return
        try:
            self._look_at(self.context.store.trial(trial_id))
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)

    def _look_at(self, trial: Trial) -> None:
        self.picker.mark(trial)
        self.kept_trial = trial
        self.show_trial(trial)
        self.lock(True)
        self.recompute()

    def _list_trials(self) -> None:
        """List the kept trials of the picked machine."""
        machine = self.context.machine
        try:
            trials = self.context.store.trials(subject=self.subject, machine_id=machine.id) if machine else ()
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            trials = ()
        self.picker.offer(trials)
