"""The page *Feed*: filament marked and drawn in, the feed ratio, and the extruder's steps per millimetre."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar, NamedTuple

import numpy as np
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from app.context import Context
from app.pages.trialpage import NOTHING_YET, TrialPage
from app.widgets.fields import NumberField, local_text
from app.widgets.plotdata import FitCurve, Ground
from app.widgets.plotpane import PlotData, PlotPane, PointSeries
from app.widgets.reading_rows import Column
from app.widgets.resultcard import ResultCard
from app.widgets.trialform import TrialForm
from app.words import shown
from core.errors import InputError, StoreError
from core.quantity import rounded_pair
from core.records.rows import SettingInForce, Trial
from core.words import tr

if TYPE_CHECKING:
    from core.filament.feed import Feed
    from core.guidance.feedadvice import FeedJudgement

EXTRUDER_STEPS = "extruder_steps_mm"  # name of the setting in force
_SAME_STEPS = 1e-4
_PLANNED = 3
_LEAVE_PERCENT = 0.5


class Typed(NamedTuple):
    """The repeats that count: rows of the table, commanded, mark and rest, and the settings."""

    places: list[int]
    commanded_mm: list[float]
    mark_mm: list[float]
    rest_mm: list[float]
    in_force_steps_mm: float
    u_reading_mm: float


class FeedPage(TrialPage):
    """Mark the filament, command a length, read the rest."""

    subject: ClassVar[str] = "feed"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Feed")
        columns = (
            Column("nominal_mm", self.tr("Asked mm"), "length"),
            Column("mark_mm", self.tr("Mark mm"), "length"),
            Column("measured_mm", self.tr("Rest mm"), "length"),
            Column("error", self.tr("Fed %"), "shown", editable=False),
        )
        caution = QLabel(
            self.tr("Caution: the wheel starts without warning. Nozzle off, feed path open, at most 1.5 mm/s.")
        )
        caution.setObjectName("question")
        caution.setWordWrap(True)
        form = TrialForm(columns, self.picker, above_entry=caution)
        self.steps = NumberField(required=True, low=0.001, high=1e6)
        self.u_reading = NumberField(required=True, low=0.0, high=5.0)
        form.add_setting("in_force_steps_mm", self.tr("&Steps/mm in force"), self.steps)
        form.add_setting("u_reading_mm", self.tr("&One mark, 1 u"), self.u_reading, self.tr("mm"))
        self.u_reading.set_value(0.3)
        self.add_button = QPushButton(self.tr("Add a &repeat"))
        form.foot.addWidget(self.add_button)
        plot = PlotPane(self.tr("No repeat yet. Mark the filament, command 100 mm, and type what is left to the mark."))
        plot.set_data(PlotData((), title=self.tr("Fed less commanded")))
        self.lay_out(form, plot, ResultCard())
        form.model.set_error_text(_fed_text)
        self.add_button.clicked.connect(self._add_repeat)

    # The four methods of a page

    def read(self) -> Typed:
        """Return the repeats that are complete."""
        rows = self.form.model.rows()
        keys = ("nominal_mm", "mark_mm", "measured_mm")
        places = [
            place
            for place, row in enumerate(rows)
            if not row["excluded"] and not row["questioned"] and all(row.get(key) is not None for key in keys)
        ]
        if not places:
            raise InputError(NOTHING_YET, tr("No repeat yet."))
        steps, u_reading = self.steps.value(), self.u_reading.value()
        assert steps is not None and u_reading is not None  # required fields
        commanded, mark, rest = ([float(rows[place][key]) for place in places] for key in keys)
        return Typed(places, commanded, mark, rest, steps, u_reading)

    def compute(self, readings: Typed) -> FeedJudgement:
        """Judge the feed: one call into the core."""
        from core.guidance.feedadvice import judge_feed  # the window opens before the mathematics is needed

        try:
            return judge_feed(
                readings.commanded_mm,
                readings.mark_mm,
                readings.rest_mm,
                readings.in_force_steps_mm,
                readings.u_reading_mm,
                self._previous(),
            )
        except InputError as error:
            field = {"commanded_mm": "nominal_mm", "rest_mm": "measured_mm", "fed_mm": "measured_mm"}.get(error.field)
            row = None if error.row is None else readings.places[error.row]
            raise InputError(field or error.field, error.message, row) from error

    def show_result(self, result: FeedJudgement) -> None:
        """Draw the repeats with their mean, and say what follows."""
        from app.pages.trialcard import advice_card, kept_card

        self.plot.set_data(_feed_plot(result.feed))
        self.card.show_card(
            kept_card(self.kept_trial)
            if self.kept_trial
            else advice_card(result.advice, result.estimates(), self.why_not_keep())
        )

    def record(self) -> Trial:
        """Return the trial as it stands."""
        if self.result is None:
            return self.trial_of()
        judgement: FeedJudgement = self.result
        return self.trial_of(judgement.estimates(), [a.as_json() for a in judgement.advice], judgement.method)

    def settings(self) -> tuple[SettingInForce, ...]:
        """Put changed steps in force; a trial that changes nothing verifies those in force."""
        from core.filament.feed import FeedAnswer

        machine, judgement = self.context.machine, self.result
        if machine is None or machine.id is None or judgement is None:
            return ()
        feed: Feed = judgement.feed
        if feed.answer is FeedAnswer.CHANGE:
            old, new = feed.in_force_steps_mm, feed.steps.value
            return (SettingInForce(machine.id, None, EXTRUDER_STEPS, old, new, "steps/mm"),)
        now = self.context.store.in_force(EXTRUDER_STEPS, machine.id)
        proved = feed.answer is FeedAnswer.LEAVE and now is not None
        return (now,) if proved and now and abs(now.new / feed.in_force_steps_mm - 1) < _SAME_STEPS else ()

    def plan(self) -> None:
        """Begin with three repeats of 100 mm, marked at 120 mm, and the steps in force."""
        self.form.show_conditions({"u_reading_mm": 0.3, "in_force_steps_mm": self._steps_in_force()})
        self.form.show_rows([_repeat(number + 1) for number in range(_PLANNED)])

    def _add_repeat(self) -> None:
        row = self.form.model.rowCount()
        self.form.model.insert_row(row, _repeat(row + 1))
        self.form.table.go_to(row)
        self.form.entry.setFocus()

    def _steps_in_force(self) -> float | None:
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


def _repeat(number: int) -> dict[str, object]:
    return {
        "feature": shown(tr("repeat {number}", number=number)),
        "axis": "e",
        "kind": "travel",
        "nominal_mm": 100.0,
        "nominal_raw": "100",
        "mark_mm": 120.0,
        "mark_raw": "120",
    }


def _fed_text(row: Mapping[str, object]) -> str:
    commanded, mark, rest = (row.get(key) for key in ("nominal_mm", "mark_mm", "measured_mm"))
    if not all(isinstance(value, float | int) and not isinstance(value, bool) for value in (commanded, mark, rest)):
        return ""
    return local_text(f"{100 * (float(str(mark)) - float(str(rest))) / float(str(commanded)):.2f}") if commanded else ""


def _feed_plot(feed: Feed) -> PlotData:
    """Draw each repeat and the mean as the percentage fed less commanded."""
    number = np.arange(1.0, feed.repeats_ratio.size + 1.0)
    percent = 100.0 * (feed.repeats_ratio - 1.0)
    ends = np.array([0.5, number[-1] + 0.5])
    mean, U = 100.0 * (feed.ratio.value - 1.0), 100.0 * feed.ratio.U
    mean_text, U_text = rounded_pair(mean, U)
    return PlotData(
        points=(PointSeries(shown(tr("repeats")), number, percent, symbol="●", role=0),),
        curves=(
            FitCurve(
                shown(tr("mean, {mean} ± {U} %", mean=mean_text, U=U_text)),
                ends,
                np.full(2, mean),
                np.full(2, U),
                role=0,
            ),
        ),
        ground=Ground(ends, np.full(2, _LEAVE_PERCENT), shown(tr("leave it: ±0.5 %"))),
        x_label=shown(tr("repeat")),
        y_label=shown(tr("fed − commanded, %")),
        title=shown(tr("Fed less commanded")),
        summary=shown(tr("{count} repeats; mean {mean} ± {U} %.", count=number.size, mean=mean_text, U=U_text)),
    )
