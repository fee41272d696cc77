"""What the pages on the flow factor share: the conditions, the estimates beside the trial, the factor put in force."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Any, ClassVar

from PySide6.QtWidgets import QLabel, QWidget

from app.context import Context, Level
from app.pages.flow_trials.flowform import DEFAULTS, FlowForm
from app.pages.flow_trials.keptbeside import SUBJECTS, known_beside
from app.pages.trialpage import NOTHING_YET, TrialPage
from app.rownames import shown_name
from app.widgets.fields import ChoiceField, local_text
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.reading_rows import lists_of
from app.widgets.resultcard import ResultCard
from app.words import shown
from core.errors import InputError, StoreError
from core.records.rows import SettingInForce, Trial
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.flowadvice import Beside, FlowJudgement

READINGS, ESTIMATES = "readings", "estimates"
_SAME_FACTOR = 5e-4  # as people type it, to three decimals


class FlowPage(TrialPage):
    """A page whose readings give a flow factor.

    Attributes:
        view: the picture, of the readings, or of all estimates of the factor side by side.
        own_defaults: the subject's own settings of a first trial.
        fields_of: names of core arguments that have another name in the table.
    """

    form: FlowForm
    uses_instrument: ClassVar[bool] = False
    own_defaults: ClassVar[Mapping[str, Any]] = {}
    fields_of: ClassVar[Mapping[str, str]] = {}

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.view = ChoiceField([(READINGS, self.tr("Readings")), (ESTIMATES, self.tr("Estimates of flow"))])
        self.view_label = QLabel(self.tr("&Picture"))
        self.view_label.setBuddy(self.view)
        self.view.setAccessibleName(self.tr("Picture"))

    # To be filled in

    def plan_rows(self) -> list[dict[str, object]]:
        """Return the empty readings of a new trial."""
        raise NotImplementedError

    def reading_plot(self, result: FlowJudgement) -> PlotData:
        """Return the picture of the readings."""
        raise NotImplementedError

    def measured_settings(self) -> dict[str, Any]:
        """Return settings of a new trial that other pages have measured for this lot."""
        return {}

    # For the subject to call

    def lay_out_flow(self, form: FlowForm, empty: str) -> None:
        """Lay the page out; `empty` says what the plot waits for."""
        plot = PlotPane(empty)
        plot.set_data(PlotData((), title=self.tr("Flow factor")))
        self.lay_out(form, plot, ResultCard(), (self.view_label, self.view))
        self.view.changed.connect(self.recompute)
        form.again_button.clicked.connect(self._add_reading)

    def places(self) -> list[int]:
        """Return the rows of the table whose reading counts.

        Raises:
            InputError: there is none yet.
        """
        rows = self.form.model.rows()
        places = [
            place
            for place, row in enumerate(rows)
            if row["measured_mm"] is not None and not row["excluded"] and not row["questioned"]
        ]
        if not places:
            raise InputError(NOTHING_YET, tr("No reading yet."))
        return places

    def names(self) -> list[str]:
        """Return the names of the readings that count."""
        rows = self.form.model.rows()
        return [
            shown_name(rows[place]["feature"]) or self.tr("reading {number}").format(number=place + 1)
            for place in self.places()
        ]

    def judged(self, places: Sequence[int], judge: Callable[[], FlowJudgement]) -> FlowJudgement:
        """Return what `judge` returns; errors of the core find their place in the table."""
        try:
            return judge()
        except InputError as error:
            row = None if error.row is None else places[error.row]
            raise InputError(error.field, error.message, row) from error

    def beside(self, temperature_c: float) -> Beside:
        """Return what other trials of this machine and lot say; a kept trial is shown with those it used."""
        return known_beside(self.context, self.kept_trial, temperature_c)

    # What follows from them

    def show_result(self, result: FlowJudgement) -> None:
        """Draw the picture, write the verdict."""
        from app.pages.flow_trials.flowplot import estimates_plot
        from app.pages.trialcard import advice_card, kept_card, place_row

        ratios = getattr(result.found, "reading_ratio", ())
        texts = [_asked(float(ratio) / result.conditions.in_force_ratio - 1.0) for ratio in ratios]
        self.form.model.set_error_text(dict(zip(self.places(), texts, strict=False)))
        readings = self.view.value() == READINGS
        self.plot.set_data(self.reading_plot(result) if readings else estimates_plot(result))
        place = [place_row(self.context, self.kept_trial)]
        card = advice_card(result.advice, result.estimates(), self.why_not_keep(), mind=result.mind, further_rows=place)
        self.card.show_card(kept_card(self.kept_trial, place) if self.kept_trial else card)

    def recompute(self) -> None:
        """Say what the bead is as commanded, then judge."""
        from core.flow_trials.bead import bead_words

        lot = self.context.lot
        try:
            here = self.form.print_conditions()
            says = shown(bead_words(here.bead, here.rate_mm3_s))
            more = shown(bead_words(here.bead, here.rate_mm3_s, lot.nominal_diameter_mm if lot else None))
        except InputError:
            says = more = ""  # a field is empty or cannot be; it says so itself once there is a reading
        self.form.bead.setText(says)
        self.form.bead.setToolTip(more)
        super().recompute()

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show a problem of the core at the field or column of this page."""
        self.form.model.set_error_text({})
        super().show_problem(self.fields_of.get(field, field), row, message)

    def why_not_keep(self) -> str:
        """Say what stands against keeping the trial."""
        if self.kept_trial is None and self.context.lot is None:
            return self.tr("Choose or add the filament lot above: a flow factor belongs to a lot.")
        return super().why_not_keep()

    def record(self) -> Trial:
        """Return the trial as it stands."""
        judged: FlowJudgement | None = self.result
        trial = self.trial_of()
        if judged is not None:
            verdict = [advice.as_json() for advice in judged.advice]
            trial = self.trial_of(judged.estimates(), verdict, judged.method, judged.used)
        return trial if self.uses_instrument else replace(trial, instrument_id=None)

    def settings(self) -> tuple[SettingInForce, ...]:
        """Put a changed factor in force; a trial that changes nothing verifies the one in force."""
        from core.guidance.flowadvice import FLOW_FACTOR
        from core.guidance.verdict import Setting

        machine, lot, judged = self.context.machine, self.context.lot, self.result
        if judged is None or machine is None or machine.id is None or lot is None:
            return ()
        base = judged.conditions.in_force_ratio
        if judged.new_ratio is not None:
            return (SettingInForce(machine.id, lot.id, FLOW_FACTOR, base, judged.new_ratio, "1"),)
        now = self.context.store.in_force(FLOW_FACTOR, machine.id, lot.id)
        leaves = judged.advice[0].setting is Setting.LEAVE
        return (now,) if leaves and now is not None and abs(now.new - base) < _SAME_FACTOR else ()

    def load_draft(self, trial: Trial | None) -> None:
        """Show an open trial; one that a test piece began has its sizes only, the rest is as in any new trial."""
        if trial is not None and not any(trial.readings.values()):
            known = {**self._first_conditions(), **trial.conditions}
            trial = replace(trial, conditions=known, readings=lists_of(self.plan_rows()))
        super().load_draft(trial)

    def plan(self) -> None:
        """Begin with empty readings, under the conditions of the last flow trial here, from the factor in force."""
        self.form.show_conditions(self._first_conditions())
        self.form.show_rows(self.plan_rows())

    def _first_conditions(self) -> dict[str, Any]:
        try:
            return {**DEFAULTS, **self.own_defaults, **self._last_conditions(), **self.measured_settings()}
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return {**DEFAULTS, **self.own_defaults}

    def _last_conditions(self) -> dict[str, Any]:
        machine, lot, store = self.context.machine, self.context.lot, self.context.store
        if machine is None or machine.id is None or lot is None or lot.id is None:
            return {}
        kept = [t for subject in SUBJECTS for t in store.trials(subject, machine.id, lot.id, limit=2) if t.kept_at]
        own = next((t.conditions for t in kept if t.subject == self.subject), {})
        newest = max(kept, key=lambda t: t.id or 0, default=None)
        shared = {key: newest.conditions.get(key) for key in DEFAULTS} if newest else {}
        now = store.in_force("flow_factor", machine.id, lot.id)
        return {**own, **shared, "in_force_ratio": now.new if now else 1.0}

    def _add_reading(self) -> None:
        row = self.form.model.rowCount()
        self.form.model.insert_row(row, self.plan_rows()[-1] | {"feature": ""})
        self.form.table.go_to(row)
        self.form.entry.setFocus()


def _asked(change: float) -> str:
    from core.flow_trials.conditions import percent_text

    return local_text(percent_text(change))
