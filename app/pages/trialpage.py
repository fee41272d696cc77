"""What pages with kept trials share: the layout, the locked look at a kept trial, and the way back to new readings.

Such a page makes a form, a plot and a card, calls `lay_out`, and fills in `plan` beside the four methods of every page.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QWidget

from app.context import Context, Level
from app.pages.base import Page
from app.pages.kepttrials import example, kept_on_machine, kept_trial, say_not_offered
from app.pages.opentrial import Place
from app.pages.triallayout import lay_out_trial
from app.pages.trialreport import report_name, write_looked_at
from app.units import choose_unit
from app.widgets.focus import keyboard_left
from app.widgets.labels import heading
from app.widgets.picture import Picture
from app.widgets.plotpane import PlotPane
from app.widgets.reading_rows import lists_of, rows_from
from app.widgets.reportbutton import ReportButton
from app.widgets.resultcard import ResultCard
from app.widgets.resulttext import CardData, Paragraph
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.quantity import Estimate
from core.records.rows import Trial
from core.words import as_plain

NOTHING_YET = "readings"  # the field at fault where there is no reading at all


class TrialPage(Page):
    """A page whose trials are kept and looked at again.

    Attributes:
        picker: chooses between the readings in progress and the kept trials of the picked machine.
        kept_trial: the kept trial that is looked at; None while readings are in progress.
        report: writes the kept trial that is looked at as PDF or CSV.
        form, plot, card, picture: left, above right, below right; the plot, or what a subject draws instead.
    """

    form: TrialForm
    plot: PlotPane
    picture: Picture
    card: ResultCard

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.picker = TrialPicker()
        self.kept_trial: Trial | None = None
        self.report = ReportButton(self._write_report, self.tr("Report"), one_trial=True, name=self._name_report)
        self.report.said.connect(context.notice)
        self.picker.changed.connect(self._choose_trial)
        context.kept.connect(self._answer_kept)

    # To be filled in

    def plan(self) -> None:
        """Fill the form with the empty readings of a new trial; the signals of the form are held back."""
        raise NotImplementedError

    def why_not_keep(self) -> str:
        """Say what stands against keeping the trial; nothing where it can be kept."""
        if self.kept_trial is not None:
            return self.tr("Kept trials are not changed.")
        if unfinished := self.form.unfinished():
            return unfinished
        if self.context.machine is None:
            return self.tr("Choose or add a machine above, then keep the trial.")
        return ""

    # For the subject to call

    def lay_out(self, form: TrialForm, plot: Picture, card: ResultCard, head: Sequence[QWidget] = ()) -> None:
        """Lay the page out and wire it; `head` stands at the right of the heading."""
        self.form, self.picture, self.card = form, plot, card
        if isinstance(plot, PlotPane):
            self.plot = plot
        lay_out_trial(self, (heading(self.title), *head), form, plot, card)
        card.add_at_head(self.report)
        self.report.hide()
        choose_unit(self.subject, form.model, plot, card)
        self.setFocusProxy(form)
        self._wire(form, plot, card)

    def trial_of(
        self,
        estimates: Sequence[Estimate] = (),
        verdict: Sequence[Mapping[str, Any]] = (),
        method: str = "",
        used: Sequence[int] = (),
    ) -> Trial:
        """Return the trial as it stands on the page."""
        return Trial(
            subject=self.subject,
            machine_id=self.context.machine_id,
            lot_id=self.context.lot_id,
            instrument_id=self.context.instrument_id if self.form.reads_instrument else None,
            readings=lists_of(self.form.model.rows()),
            conditions=self.form.conditions(),
            estimates=tuple(estimates),
            verdict=tuple(verdict),
            used=tuple(used),
            method=method,
        )

    def with_doubts(self, trial: Trial) -> Trial:
        """Keep the checks that are not met with the trial: whoever looks at it again is to see them."""
        mind = [as_plain(says) for says in self.card.card.mind] if self.card.card else []
        return replace(trial, conditions={**trial.conditions, "mind": mind}) if mind else trial

    def answer_change(self) -> None:
        """Judge again and commit: what the window shows as kept is in the database."""
        try:
            self.recompute()
        finally:  # a fault of ours in the judging must not keep a reading from the database
            saved = self.save_draft()
            self.form.model.unsaved = "" if saved else self.tr("Not stored yet, see the line below the page.")

    def shown(self) -> None:
        """Judge again: drives, instrument or other trials may have changed, or readings been planned, elsewhere."""
        self.take_planned()
        self.recompute()

    # What follows from them

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show why there is no verdict: at its place, and in the card."""
        message = self.form.show_problem(field, row, message)
        self._empty_picture("" if field == NOTHING_YET else message)
        if field == NOTHING_YET:
            self.card.show_empty()
        else:
            said = Paragraph(self.tr("Cannot tell yet:"), message, "unknown")
            self.card.show_card(CardData((said,), can_keep=False))

    def _empty_picture(self, says: str = "") -> None:
        self.picture.show_nothing(shown(says))

    def clear_problems(self) -> None:
        """Take the sentences away."""
        self.form.clear_problems()

    def load_draft(self, trial: Trial | None) -> None:
        """Show an open trial, or plan a new one."""
        self.kept_trial = None
        self.report.hide()
        self.form.lock(False)
        self._list_trials()
        if trial is None:
            with QSignalBlocker(self.form):
                self.plan()
        else:
            self._show_trial(trial)
        self.recompute()

    def save_draft(self) -> bool:
        """Commit the readings in progress; a kept trial has nothing to commit."""
        return True if self.kept_trial else super().save_draft()

    def why_nothing_to_undo(self) -> str:
        """Say that a kept trial is withdrawn instead."""
        return self.tr("Kept trials are not undone: withdraw one in the logbook.") if self.kept_trial else ""

    def keep(self) -> None:
        """Keep the trial unless something stands against it."""
        if why_not := self.why_not_keep():
            self.context.say(why_not, Level.WARNING)
            return
        super().keep()

    def begin_anew(self) -> None:
        """Go on with the readings in progress."""
        self._load(self.draft)
        self.take_focus()

    def show_example(self) -> None:
        """Begin in the demo shop with the newest kept trial: there is something to see at once."""
        if self.draft is None and (trial := example(self.context, self.picker.kept)) is not None:
            with keyboard_left(self):
                self._look_at(trial)

    def _turn_to(self, here: Place) -> None:
        super()._turn_to(here)
        self.show_example()

    def _wire(self, form: TrialForm, plot: Picture, card: ResultCard) -> None:
        form.changed.connect(self.answer_change)
        form.table.refused.connect(self._say_refused)
        form.new_button.clicked.connect(self.begin_anew)
        plot.said.connect(self.context.notice)
        card.keep_clicked.connect(self.keep)
        self.context.machine_changed.connect(self._answer_context)
        self.context.instrument_changed.connect(self._answer_context)

    def _answer_context(self) -> None:
        if self.isVisible():
            self.recompute()

    def _say_refused(self, sentences: tuple[str, ...]) -> None:
        if sentences:
            self.context.say("  ".join(sentences), Level.WARNING)

    def _show_trial(self, trial: Trial) -> None:
        with QSignalBlocker(self.form):
            self.form.show_conditions(trial.conditions)
            self.form.show_rows(rows_from(trial.readings))
        say_not_offered(self.context, self.form.not_offered(trial.conditions))

    def _answer_kept(self, trial: Trial) -> None:
        if trial.subject == self.subject:
            self._list_trials()
            self._look_at(trial)

    def _choose_trial(self) -> None:
        if self.unsaved and not self.save_draft():
            with QSignalBlocker(self.picker):
                self.picker.set_value("")
            return
        if (trial_id := self.picker.chosen_id()) is None:
            self.begin_anew()
        elif (trial := kept_trial(self.context, trial_id)) is not None:
            self._look_at(trial)

    def _look_at(self, trial: Trial) -> None:
        self.picker.mark(trial)
        self.kept_trial = trial
        self.report.show()
        self._show_trial(trial)
        self.form.lock(True)
        self.recompute()
        self.undoing.forget()

    def _write_report(self, _kind: str, path: Path) -> bool:
        return write_looked_at(self, path)

    def _name_report(self, _kind: str) -> str:
        return report_name(self.kept_trial)

    def _list_trials(self) -> None:
        self.picker.offer(kept_on_machine(self.context, self.subject))
