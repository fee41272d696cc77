"""What pages with kept trials share: the layout, the locked look at a kept trial, and the way back to new readings.

Such a page makes a form, a plot and a card, calls `lay_out`, and fills in `plan` beside the four methods of every page.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from app.context import Context, Level
from app.pages.base import Page
from app.theme import STEP_PX
from app.widgets.picturepane import Picture
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.reading_rows import lists_of, rows_from
from app.widgets.reportbutton import ReportButton
from app.widgets.resultcard import ResultCard
from app.widgets.resulttext import CardData, Paragraph
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.errors import StoreError
from core.quantity import Estimate
from core.records.rows import Trial

NOTHING_YET = "readings"  # the field at fault where there is no reading at all
_PLOT_PX = 240  # high: a long verdict scrolls rather than press the plot flat
# Estimates that only the check of an instrument gives.
_LINES_IN_SIGHT = 17  # of the verdict in the smallest window; the plot gives way
_CHECKED = ("zero_outside", "zero", "zero_inside", "zero_depth", "sd_hand")


class TrialPage(Page):
    """A page whose trials are kept and looked at again.

    Attributes:
        picker: chooses between the readings in progress and the kept trials of the picked machine.
        kept_trial: the kept trial that is looked at; None while readings are in progress.
        report: writes the kept trial that is looked at as PDF or CSV.
        form, plot, card: left, above right and below right; given to `lay_out`.
        picture: the plot, or what a subject draws itself instead.
    """

    form: TrialForm
    plot: PlotPane
    picture: PlotPane | Picture
    card: ResultCard

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.picker = TrialPicker()
        self.kept_trial: Trial | None = None
        self.report = ReportButton(self._write_report, self.tr("Report"), one_trial=True)
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
        if any(row["questioned"] for row in self.form.model.rows()):
            return self.tr("A reading has an open question; answer it, then keep the trial.")
        if unread := self.form.model.problems():
            text = self.tr("Row {row} cannot be read; mend or clear it, then keep the trial.")
            return text.format(row=unread[0][0] + 1)
        if self.context.machine is None:
            return self.tr("Choose or add a machine above, then keep the trial.")
        return ""

    # For the subject to call

    def lay_out(
        self, form: TrialForm, plot: PlotPane | Picture, card: ResultCard, head: Sequence[QWidget] = ()
    ) -> None:
        """Lay the page out and wire it; `head` stands at the right of the heading."""
        self.form, self.picture, self.card = form, plot, card
        if isinstance(plot, PlotPane):
            self.plot = plot
        heading = QLabel(self.title)
        heading.setObjectName("heading")
        above, right, across, down = QHBoxLayout(), QVBoxLayout(), QHBoxLayout(), QVBoxLayout(self)
        above.addWidget(heading, 1)
        for widget in head:
            above.addWidget(widget)
        plot.setMinimumHeight(_PLOT_PX)
        right.addWidget(plot, 3)
        right.addWidget(card, 2)
        across.addWidget(form, 45)
        across.addLayout(right, 55)
        down.addLayout(above)
        down.addLayout(across, 1)
        down.setContentsMargins(0, 0, 0, 0)
        card.head.addWidget(self.report)
        self.report.hide()
        for layout in (above, right, down):
            layout.setSpacing(STEP_PX)
        across.setSpacing(2 * STEP_PX)
        card.grow(_LINES_IN_SIGHT)
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
        machine, lot, instrument = self.context.machine, self.context.lot, self.context.instrument
        return Trial(
            subject=self.subject,
            machine_id=machine.id if machine else None,
            lot_id=lot.id if lot else None,
            instrument_id=instrument.id if instrument else None,
            readings=lists_of(self.form.model.rows()),
            conditions=self.form.conditions(),
            estimates=tuple(estimates),
            verdict=tuple(verdict),
            used=tuple(used),
            method=method,
        )

    def with_doubts(self, trial: Trial) -> Trial:
        """Keep the checks that are not met with the trial: whoever looks at it again is to see them."""
        mind = list(self.card.card.mind) if self.card.card else []
        return replace(trial, conditions={**trial.conditions, "mind": mind}) if mind else trial

    def instrument_check(self) -> Trial | None:
        """Return the last kept check of the picked instrument; None where it was never checked here."""
        instrument = self.context.instrument
        return self._check_of(instrument.id if instrument else None)

    def _check_of(self, instrument_id: int | None) -> Trial | None:
        if instrument_id is None:
            return None
        try:
            found = [self.context.store.newest_for_instrument(name, instrument_id) for name in _CHECKED]
            numbers = [newest[0] for newest in found if newest is not None]
            return self.context.store.trial(max(numbers)) if numbers else None
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return None

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
        if self.form.settings.show_problem(field, message):
            message = f"{self.form.settings.field(field).accessibleName()}: {shown(message)}"
        else:
            self.form.model.show_problem(row, field, message)
        self._empty_picture()
        if field == NOTHING_YET:
            self.card.show_empty()
        else:
            said = Paragraph(self.tr("Cannot tell yet:"), message, "unknown")
            self.card.show_card(CardData((said,), can_keep=False))

    def _empty_picture(self) -> None:
        if isinstance(self.picture, PlotPane):
            self.picture.set_data(PlotData((), title=self.picture.data.title))
        else:
            self.picture.show_nothing()

    def clear_problems(self) -> None:
        """Take the sentences away."""
        self.form.settings.clear_problems()
        self.form.model.clear_problems()

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

    def _wire(self, form: TrialForm, plot: PlotPane | Picture, card: ResultCard) -> None:
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

    def _answer_kept(self, trial: Trial) -> None:
        """Keep the verdict of a kept trial in sight."""
        if trial.subject == self.subject:
            self._list_trials()
            self._look_at(trial)

    def _choose_trial(self) -> None:
        if self.unsaved and not self.save_draft():
            with QSignalBlocker(self.picker):
                self.picker.set_value("")
            return
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
        self.report.show()
        self._show_trial(trial)
        self.form.lock(True)
        self.recompute()

    def _write_report(self, _kind: str, path: Path) -> bool:
        """Write the kept trial that is looked at; the button says whether it could."""
        from app.reportfiles import write_trial

        trial = self.kept_trial
        if trial is None:
            return False
        return write_trial(self.context, trial, self._check_of(trial.instrument_id), path, self.picture)

    def _list_trials(self) -> None:
        """List the kept trials of the picked machine."""
        machine = self.context.machine
        try:
            trials = self.context.store.trials(subject=self.subject, machine_id=machine.id) if machine else ()
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            trials = ()
        self.picker.offer(trials)
