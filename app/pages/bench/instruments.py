"""The page *Instruments*: a caliper, balance or other instrument is proved before its readings are believed."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtWidgets import QLabel, QWidget

from app.context import Context, Level
from app.pages.bench.instrumentform import InstrumentForm
from app.pages.bench.instrumentpane import DOUBT, InstrumentPane
from app.pages.bench.instrumentrecord import SUBJECT, checks_of, doubtful_of, instrument_of, write_record
from app.pages.bench.instrumentrows import CheckSettings, at_the_table, counts, error_text, readings_of
from app.pages.trialpage import NOTHING_YET, TrialPage
from app.widgets.resultcard import ResultCard
from app.words import shown
from core.errors import InputError, StoreError
from core.records.rows import Trial
from core.words import tr

if TYPE_CHECKING:
    from app.newrows import ChangeInstrument
    from core.guidance.instrumentadvice import InstrumentJudgement
    from core.measuring.checkreadings import CheckReadings


class Typed(NamedTuple):
    """The readings that count, the rows of the table they stand in, and the settings."""

    readings: CheckReadings
    places: list[int]
    settings: CheckSettings


class Judged(NamedTuple):
    """The same with what follows from them."""

    readings: CheckReadings
    places: list[int]
    settings: CheckSettings
    judgement: InstrumentJudgement


class InstrumentsPage(TrialPage):
    """Readings of zero, references and hand at the left; curve, budget or doubtful results and verdict at the right.

    A check belongs to an instrument and to no machine; the picked instrument is the one that is checked.
    """

    subject: ClassVar[str] = SUBJECT
    form: InstrumentForm
    picture: InstrumentPane

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Instruments")
        form, pane = InstrumentForm(self.picker), InstrumentPane()
        self._of: int | None = None  # the instrument whose readings are in progress
        self._change: ChangeInstrument | None = None
        label = QLabel(self.tr("&Shown"))
        label.setBuddy(pane.view)
        pane.view.setAccessibleName(self.tr("Shown"))
        self.lay_out(form, pane, ResultCard(), (label, pane.view))
        form.model.set_error_text(error_text)
        form.change_button.clicked.connect(self._change_instrument)

    # The four methods of a page

    def read(self) -> Typed:
        """Return the readings that count."""
        rows = self.form.model.rows()
        places = [place for place, row in enumerate(rows) if counts(row)]
        settings = self.form.check_settings()
        readings = readings_of(rows, places, settings)
        self._refuse_another()
        return Typed(readings, places, settings)

    def compute(self, readings: Typed) -> Judged:
        """Judge the check: one call into the core."""
        from core.guidance.instrumentadvice import judge_instrument  # the page opens before the mathematics is needed

        try:
            judgement = judge_instrument(readings.readings, readings.settings.tolerance_mm)
        except InputError as error:
            raise at_the_table(error, readings.places) from error
        return Judged(*readings, judgement)

    def show_result(self, result: Judged) -> None:
        """Draw the curve, fill the budget, write the verdict, mark the readings that zero has spoiled."""
        from app.pages.bench.instrumentcard import instrument_card
        from app.pages.bench.instrumentplot import instrument_plot
        from app.pages.trialcard import kept_card

        check = result.judgement.check
        self.picture.plot.set_data(instrument_plot(check, result.settings.kind, result.settings.limit))
        self.picture.budget.show_check(check)
        moved = check.zero_return.doubtful_rows if check.zero_return else ()
        says = self.tr("Doubtful: zero had moved when it was looked at next.")
        self.form.model.set_marks({result.places[row]: says for row in moved})
        card = instrument_card(result.judgement, self.why_not_keep())
        self.card.show_card(kept_card(self.kept_trial) if self.kept_trial else card)

    def record(self) -> Trial:
        """Return the check as it stands: of its instrument, of no machine and no lot."""
        judgement = self.result.judgement if self.result else None
        trial = self.trial_of(
            judgement.estimates() if judgement else (),
            judgement.verdict_json() if judgement else (),
            judgement.method if judgement else "",
        )
        return replace(trial, machine_id=None, lot_id=None, instrument_id=self._of)

    # What differs from other pages with trials

    def plan(self) -> None:
        """Begin with the empty readings of a full check of the picked instrument."""
        self._of = self.context.instrument_id
        self.form.begin(self.context.instrument)

    def why_not_keep(self) -> str:
        """Say what stands against keeping the check; it needs an instrument, and no machine."""
        if self.kept_trial is not None:
            return self.tr("Kept trials are not changed.")
        if any(row["questioned"] for row in self.form.model.rows()):
            return self.tr("A reading has an open question; answer it, then keep the check.")
        if self._of is None:
            return self.tr("Pick or add the instrument in the top row, then keep the check.")
        return ""

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show why there is no verdict; without a reading, what comes first."""
        super().show_problem(field, row, message)
        if field == NOTHING_YET:
            first = self.tr("Pick the instrument in the top row, or add it there. Then type the readings of its check.")
            self.card.show_empty(self.tr("Type the readings of the check.") if self._of else first)

    def load_draft(self, trial: Trial | None) -> None:
        """Show the open check, whichever instrument it is of, or plan a new one."""
        if trial is not None:
            self._of = trial.instrument_id
            if self.context.instrument is None and trial.instrument_id is not None:
                self.context.select_instrument(trial.instrument_id)
        super().load_draft(trial)
        self._show_doubt()

    def shown(self) -> None:
        """Follow an instrument that was picked while the page was out of view."""
        self._answer_context()

    def _here(self) -> tuple[int | None, int | None]:
        return None, None

    def _refuse_another(self) -> None:
        """Refuse to book readings of one instrument to another."""
        picked = self.context.instrument
        if self.kept_trial is not None or self._of is None or (picked is not None and picked.id == self._of):
            return
        begun = instrument_of(self.context, self._of)
        raise InputError(
            "instrument",
            tr(
                "These readings were begun with {name}: pick it again and keep or clear them first.",
                name=begun.name if begun else "?",
            ),
        )

    def _answer_context(self) -> None:
        """Turn to the picked instrument where no readings of another are in progress."""
        if not self.isVisible():
            return
        picked = self.context.instrument_id
        typed = any(row["raw"] for row in self.form.model.rows())
        if self.kept_trial is not None and self.kept_trial.instrument_id != picked:
            self._load(self.draft)
            self.show_example()
        elif self.kept_trial is None and self._of != picked and not typed:
            self.load_draft(None)
            self.undoing.forget()
            self.show_example()
        elif self.kept_trial is None and self._of is None:
            self._of = picked  # typed before the instrument was picked
            self.answer_change()
        else:
            self.recompute()
        self._list_trials()
        if self.kept_trial is not None:
            self.picker.mark(self.kept_trial)
        self._show_doubt()

    def _answer_kept(self, trial: Trial) -> None:
        super()._answer_kept(trial)
        if trial.subject != self.subject or self.result is None:
            return
        try:
            after = write_record(
                self.context, trial, self.result.judgement.check, self.result.settings.resolution
            )
        except (InputError, StoreError) as error:
            self.context.say(shown(error.message), Level.ERROR)
            return
        if after is not None:
            self.context.instruments_changed.emit()
            said = self.tr("Check {number} kept; {name} is used with its uncertainties from now on.")
            self.context.say(said.format(number=trial.id, name=after.name), Level.GOOD)
        if count := self._show_doubt():
            self.picture.turn_to(DOUBT)
            said = self.tr("Check {number} kept; results in doubt that were read with this instrument: {count}.")
            self.context.say(said.format(number=trial.id, count=count), Level.WARNING)

    def _list_trials(self) -> None:
        """List the kept checks of the picked instrument."""
        try:
            self.picker.offer(checks_of(self.context))
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)

    def _show_doubt(self) -> int:
        """List the results that a bad check throws doubt on, and return how many."""
        try:
            doubtful = doubtful_of(self.context)
            machines = {m.id: m.name for m in self.context.store.machines() if m.id is not None} if doubtful else {}
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return 0
        self.picture.doubt.show_doubt(doubtful, _subjects(), machines)
        return len(doubtful)

    def _change_instrument(self) -> None:
        if self.context.instrument is None:
            self.context.say(self.tr("Pick the instrument in the top row first."), Level.WARNING)
            return
        from app.newrows import ChangeInstrument

        if self._change is None:
            self._change = ChangeInstrument(self.context, self)
        self._change.show_instrument(self.context.instrument)
        self._change.open_below(self.form.change_button)


def _subjects() -> dict[str, str]:
    from app.pages import PAGES

    return {entry.key: entry.shown_title() for entry in PAGES}
