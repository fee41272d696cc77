"""The page *Size error*: lengths of a printed part in, which setting each error belongs to out."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QLabel, QWidget

from app.context import Context
from app.pages.kepttrials import newest_check
from app.pages.part_size.linkedpairs import LinkedPairs
from app.pages.part_size.sizeforetold import Foretold, expected_at, foretold
from app.pages.part_size.sizeform import SizeForm
from app.pages.part_size.sizeheat import heat_of, heat_rows
from app.pages.part_size.sizerows import (
    counts,
    expected_readings,
    left_out,
    next_asked,
    readings_of,
)
from app.pages.trialpage import TrialPage
from app.widgets.fields import ChoiceField, local_text
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.resultcard import ResultCard
from core.errors import InputError, StoreError
from core.records.rows import Trial

if TYPE_CHECKING:
    from core.guidance.known import KeptResult
    from core.guidance.sizetrial import SizeJudgement, SizeReadings
    from core.guidance.splitpair import SplitPair


class Typed(NamedTuple):
    """The readings that count and the rows of the table they stand in."""

    readings: SizeReadings
    places: list[int]


class Judged(NamedTuple):
    """The same with what follows from them, and the kept trials that it relies on: flow, and the instrument's check."""

    readings: SizeReadings
    places: list[int]
    judgement: SizeJudgement
    flow: int | None
    check: Trial | None


class SizeErrorPage(TrialPage):
    """Readings at the left, picture and verdict at the right."""

    subject: ClassVar[str] = "sizeerror"
    form: SizeForm

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Size error")
        self._foretold: Foretold = {}
        form = SizeForm(self.picker)
        self.axis = ChoiceField([("x", "X")])
        self.axis_label = QLabel(self.tr("Ax&is shown"))
        self.axis_label.setBuddy(self.axis)
        self.axis.setAccessibleName(self.tr("Axis shown"))
        plot = PlotPane(self.tr("No readings yet. Type the first one at the left: it appears here at once."))
        plot.set_data(PlotData((), title=self.tr("Error against length")))
        self.lay_out(form, plot, ResultCard(), (self.axis_label, self.axis))
        self.linked = LinkedPairs(self.card, context)
        self.linked.found.connect(self.recompute)
        self._offer_axes(["x"])
        form.model.set_error_text(_error_text)
        self.axis.changed.connect(self.recompute)

    # The four methods of a page

    def read(self) -> Typed:
        """Return the readings that count."""
        rows = self.form.model.rows()
        places = [place for place, row in enumerate(rows) if counts(row)]
        return Typed(readings_of(rows, places, str(self.form.tolerance.value()), self.form.part_c.value()), places)

    def compute(self, readings: Typed) -> Judged:
        """Judge the readings: one call into the core."""
        from core.guidance.sizetrial import judge_size_trial  # the window opens before the mathematics is needed

        flow = self._flow_trial()
        try:
            judgement = judge_size_trial(
                readings.readings,
                self.context.machine,
                self.context.instrument,
                flow_checked=flow is not None,
                reversal=self._kept_reversal(),
                split=self._split(),
            )
        except InputError as error:  # it counts the readings that count; the table has others between them
            row = None if error.row is None else readings.places[error.row]
            raise InputError(error.field, error.message, row) from error
        return Judged(*readings, judgement, flow, newest_check(self.context, self.context.instrument_id))

    def show_result(self, result: Judged) -> None:
        """Draw the picture, write the verdict, mark what stands out."""
        from app.pages.part_size.sizecard import size_card
        from app.pages.part_size.sizeplot import size_plot
        from app.pages.trialcard import instrument_row, kept_card

        self._offer_axes(sorted(set(result.readings.axis)))
        rows = self.form.model.rows()
        self.plot.set_data(size_plot(result.readings, result.judgement, str(self.axis.value()), left_out(rows)))
        instrument = self.context.instrument
        known = [instrument_row(instrument, result.check)] if instrument else []
        known += [*heat_rows(self.form.heat), *self._flow_held(result.flow)]
        following = next_asked(rows, result.judgement.fit, instrument)
        card = size_card(result.judgement, self.why_not_keep(), known, following)
        kept = self.kept_trial
        self.card.show_card(kept_card(kept, heat_rows(kept.conditions)) if kept else card)
        advice = self.tr("Stands out from the others: read it again, and one ordinary gauge with it.")
        flagged = zip(result.places, result.judgement.fit.flagged.tolist(), strict=True)
        self.form.model.set_marks({place: advice for place, stands_out in flagged if stands_out})
        now = expected_readings(rows, result.judgement.fit)
        if self.form.model.set_expected(expected_at(rows, self._foretold) | now):
            self.recompute()  # with the readings that are doubtful no longer

    def record(self) -> Trial:
        """Return the trial as it stands."""
        if self.result is None:
            return self.trial_of()
        judgement = self.result.judgement
        verdict = [advice.as_json() for advice in judgement.advice]
        check = self.result.check
        used = [number for number in (check.id if check else None, self.result.flow) if number is not None]
        used += [kept.trial_id for axis, kept in judgement.known.reversal.items() if axis in judgement.fit.axes]
        return self.trial_of(judgement.estimates(), verdict, judgement.method, used)

    # Hooks

    def plan(self) -> None:
        """Begin with the empty readings of a piece."""
        self.form.plan()

    def load_draft(self, trial: Trial | None) -> None:
        """Plan for the picked machine from now on."""
        self._bound()
        super().load_draft(trial)

    def keep(self) -> None:
        """Keep the trial with what was in force when it was begun: it may have moved to another machine or lot."""
        self._bound()
        super().keep()

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show why there is no verdict; what was predicted for this print is expected all the same."""
        super().show_problem(field, row, message)
        if self.form.model.set_expected(expected_at(self.form.model.rows(), self._foretold)):
            self.recompute()

    def _bound(self) -> None:
        """Look up what was predicted, and tell the form what is in force and what fits the picked machine, if any."""
        from core.guidance.pieceplan import bounds_of

        try:
            self._foretold = foretold(self.context)
            self.form.heat = heat_of(self.context, self.draft)
        except StoreError:
            self._foretold, self.form.heat = {}, {}  # keeping will say what is wrong with the store
        try:
            self.form.bounds = bounds_of(self.context.machine)
        except InputError:
            self.form.bounds = bounds_of(None)

    def _flow_trial(self) -> int | None:
        """Return the trial that last found the flow factor of the picked machine and lot, if there is a valid one."""
        machine, lot = self.context.machine, self.context.lot
        if machine is None or lot is None:
            return None
        try:
            newest = self.context.store.newest("flow_ratio", machine.id, lot.id)
        except StoreError:
            return None  # the flow is then asked for; keeping will say what is wrong with the store
        return newest[0] if newest else None

    def _flow_held(self, number: int | None) -> list[tuple[str, str, str]]:
        """Say what the flow trial behind this print holds for."""
        from app.pages.part_size.keptbeside import flow_row
        from core.guidance.printedat import nozzle_of

        try:
            return [] if number is None else [flow_row(self.context, number, nozzle_of(self.form.heat))]
        except StoreError:
            return []  # only a row is lost; keeping will say what is wrong with the store

    def _kept_reversal(self) -> dict[str, KeptResult]:
        """Return the newest valid reversal error of X and Y of the picked machine."""
        from core.guidance.known import KeptResult

        machine = self.context.machine
        try:
            found = {
                axis: self.context.store.newest(f"reversal_{axis}", machine.id) if machine else None
                for axis in "xy"
            }
        except StoreError:
            return {}  # the print speaks alone; keeping will say what is wrong with the store
        return {axis: KeptResult(*newest) for axis, newest in found.items() if newest}

    def _split(self) -> dict[str, SplitPair]:
        """Return by axis what other trials of the shop say of the picked machine and lot; read once a showing."""
        try:
            return self.linked.now()
        except (StoreError, InputError):
            return {}  # the print speaks alone; keeping, or the page Drive, will say what is wrong

    def shown(self) -> None:
        """Judge again by what was kept meanwhile."""
        self.linked.forget()
        self._bound()
        super().shown()

    def hidden(self) -> None:
        """Stop a work whose answer nobody waits for."""
        super().hidden()
        self.linked.forget()

    def _answer_kept(self, trial: Trial) -> None:
        """Judge again when a reversal trial of this machine was kept on its page."""
        self.linked.forget()
        super()._answer_kept(trial)
        if trial.subject == "reversal" and self._draft_of is not None:
            self.recompute()

    def _offer_axes(self, axes: list[str]) -> None:
        chosen = self.axis.value()
        with QSignalBlocker(self.axis):
            self.axis.set_choices([(axis, axis.upper()) for axis in axes])
            self.axis.set_value(chosen if chosen in axes else axes[0])
        self.axis.setVisible(len(axes) > 1)
        self.axis_label.setVisible(len(axes) > 1)


def _error_text(row: Mapping[str, object]) -> str:
    nominal, measured = row.get("nominal_mm"), row.get("measured_mm")
    if not isinstance(nominal, float | int) or not isinstance(measured, float | int):
        return ""
    return local_text(f"{measured - nominal:+.3f}")
