"""The page *Feed*: filament fed without and under load, the extruder's steps per millimetre, and where it slips."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any, ClassVar, NamedTuple

from PySide6.QtWidgets import QWidget

from app.context import Context
from app.pages.filament.feedform import MARKS, FeedForm
from app.pages.trialpage import NOTHING_YET, TrialPage
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.reading_rows import lists_of
from app.widgets.resultcard import ResultCard
from core.errors import InputError, StoreError
from core.quantity import told_value
from core.records.rows import SettingInForce, Trial
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.feedadvice import ByMarks, ByMass, FeedJudgement, FeedReadings
    from core.quantity import Estimate

_SAME_STEPS = 1e-4
_SAME_PER_M = 1e-4
_U_PER_M_RATIO = 0.003  # of a mass per length typed; one kept for this lot has its own
_FIELDS = {
    "commanded_mm": "nominal_mm",
    "rest_mm": "measured_mm",
    "fed_mm": "measured_mm",
    "mass_g": "measured_mm",
    "share_ratio": "measured_mm",
}


class Typed(NamedTuple):
    """The repeats that count, and the rows of the table they stand in."""

    places: list[int]
    readings: FeedReadings


class FeedPage(TrialPage):
    """Mark the filament or weigh the strand, command a length, read what was fed."""

    subject: ClassVar[str] = "feed"
    form: FeedForm

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Feed")
        plot = PlotPane(self.tr("No repeat yet. Mark the filament, command 100 mm, and type what is left to the mark."))
        plot.set_data(PlotData((), title=self.tr("Fed less commanded")))
        self.lay_out(FeedForm(self.picker), plot, ResultCard())
        self.steps, self.add_button = self.form.steps, self.form.add_button

    # The four methods of a page

    def read(self) -> Typed:
        """Return the repeats that are complete; one without a rate is one without load."""
        from core.guidance.feedadvice import FeedReadings  # the window opens before the mathematics is needed

        form, rows = self.form, self.form.model.rows()
        keys = ("nominal_mm", "measured_mm", *(("mark_mm",) if form.chosen() == MARKS else ()))
        places = [
            place
            for place, row in enumerate(rows)
            if not row["excluded"] and not row["questioned"] and all(row.get(key) is not None for key in keys)
        ]
        if not places:
            raise InputError(NOTHING_YET, tr("No repeat yet."))
        used = [rows[place] for place in places]
        rates = [None if row.get("rate_mm3_s") is None else float(row["rate_mm3_s"]) for row in used]
        commanded = [float(row["nominal_mm"]) for row in used]
        steps = form.number("in_force_steps_mm")
        return Typed(places, FeedReadings(commanded, self._fed(used), rates, steps, form.hot()))

    def compute(self, readings: Typed) -> FeedJudgement:
        """Judge the feed: one call into the core."""
        from core.guidance.feedadvice import judge_feed

        try:
            return judge_feed(readings.readings, self._previous())
        except InputError as error:
            row = None if error.row is None else readings.places[error.row]
            raise InputError(_FIELDS.get(error.field, error.field), error.message, row) from error

    def show_result(self, result: FeedJudgement) -> None:
        """Draw the repeats, and say what follows."""
        from app.pages.filament.feedplot import feed_plot
        from app.pages.trialcard import advice_card, kept_card, place_row

        self.plot.set_data(feed_plot(result))
        place = [place_row(self.context, self.kept_trial)]
        self.card.show_card(
            kept_card(self.kept_trial, place)
            if self.kept_trial
            else advice_card(result.advice, result.estimates(), self.why_not_keep(), further_rows=place)
        )

    def record(self) -> Trial:
        """Return the trial as it stands, with the repeats of both ways."""
        judged: FeedJudgement | None = self.result
        trial = self.trial_of()
        if judged is not None:
            verdict = [advice.as_json() for advice in judged.advice]
            kept = self._kept_per_length()
            used = (kept[0],) if kept and self.form.chosen() != MARKS and self._is_kept(kept[1]) else ()
            trial = self.trial_of(judged.estimates(), verdict, judged.method, used)
        return replace(trial, readings=lists_of(self.form.all_rows()), instrument_id=None)

    def settings(self) -> tuple[SettingInForce, ...]:
        """Put changed steps in force; a trial that changes nothing verifies those in force, or puts them on record."""
        from core.filament.feed import FeedAnswer
        from core.guidance.feedadvice import EXTRUDER_STEPS

        machine, judged = self.context.machine, self.result
        if machine is None or machine.id is None or judged is None or judged.feed is None:
            return ()
        feed = judged.feed
        if feed.answer is FeedAnswer.CHANGE:
            old, new = feed.in_force_steps_mm, told_value(feed.steps)
            return (SettingInForce(machine.id, None, EXTRUDER_STEPS, old, new, "steps/mm"),)
        now = self.context.store.in_force(EXTRUDER_STEPS, machine.id)
        if feed.answer is not FeedAnswer.LEAVE:
            return ()
        right = feed.in_force_steps_mm
        if now is not None and abs(now.new / right - 1) < _SAME_STEPS:
            return (now,)
        return (SettingInForce(machine.id, None, EXTRUDER_STEPS, right, right, "steps/mm"),)

    def plan(self) -> None:
        """Begin with three repeats, the steps in force, and the mass per length of the lot."""
        kept = self._kept_per_length()
        conditions: dict[str, Any] = {"in_force_steps_mm": self._steps_in_force()}
        self.form.plan(conditions | ({"mass_per_length_g_m": told_value(kept[1])} if kept else {}))

    # Helpers

    def _fed(self, rows: list[dict[str, Any]]) -> ByMarks | ByMass:
        from core.guidance.feedadvice import ByMarks, ByMass
        from core.quantity import Estimate

        readings, form = [float(row["measured_mm"]) for row in rows], self.form
        if form.chosen() == MARKS:
            return ByMarks([float(row["mark_mm"]) for row in rows], readings, form.number("u_reading_mm"))
        value, kept = form.number("mass_per_length_g_m"), self._kept_per_length()
        if kept is not None and self._is_kept(kept[1]):
            return ByMass(readings, kept[1], form.number("u_balance_g"))
        per_m = Estimate("mass_per_length", value, _U_PER_M_RATIO * value, float("inf"), "g/m")
        return ByMass(readings, per_m, form.number("u_balance_g"))

    def _is_kept(self, per_length: Estimate) -> bool:
        """Whether the mass per length in the form is the kept one as it was told."""
        return abs(self.form.number("mass_per_length_g_m") / told_value(per_length) - 1.0) < _SAME_PER_M

    def _kept_per_length(self) -> tuple[int, Estimate] | None:
        lot = self.context.lot
        try:
            return self.context.store.newest("mass_per_length", lot_id=lot.id) if lot else None
        except StoreError:
            return None  # it can be typed; keeping will say what is wrong with the store

    def _steps_in_force(self) -> float | None:
        from core.guidance.feedadvice import EXTRUDER_STEPS

        machine = self.context.machine
        if machine is None or machine.id is None:
            return None
        try:
            now = self.context.store.in_force(EXTRUDER_STEPS, machine.id)
        except StoreError:
            return None  # it can be typed; keeping will say what is wrong with the store
        return now.new if now else None

    def _previous(self) -> tuple[float, float] | None:
        """Return ratio and steps in force of the last kept feed trial of this machine."""
        if self.context.machine is None or self.kept_trial is not None:
            return None
        try:
            newest = self.context.store.newest("feed_ratio", machine_id=self.context.machine.id)
            steps = self.context.store.trial(newest[0]).conditions.get("in_force_steps_mm") if newest else None
        except StoreError:
            return None  # only a question is lost; keeping will say what is wrong with the store
        return (newest[1].value, float(steps)) if newest and steps else None
