"""The page *Size error*: lengths of a printed part in, which setting each error belongs to out."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from app.context import Context, Level
from app.pages.part_size.sizeform import SizeForm
from app.pages.part_size.sizerows import (
    NOTHING_YET,
    counts,
    expected_readings,
    left_out,
    lists_of,
    readings_of,
    rows_from,
)
from app.pages.trialpage import TrialPage
from app.theme import STEP_PX
from app.widgets.fields import ChoiceField, local_text
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.resultcard import ResultCard
from app.widgets.resulttext import CardData, Paragraph
from core.errors import InputError
from core.records.rows import Trial

if TYPE_CHECKING:
    from core.guidance.sizetrial import SizeJudgement, SizeReadings


class Typed(NamedTuple):
    """The readings that count and the rows of the table they stand in."""

    readings: SizeReadings
    places: list[int]


class Judged(NamedTuple):
    """The same with what follows from them."""

    readings: SizeReadings
    places: list[int]
    judgement: SizeJudgement


class SizeErrorPage(TrialPage):
    """Readings at the left, picture and verdict at the right."""

    subject: ClassVar[str] = "sizeerror"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Size error")
        self.form = SizeForm(self.picker)
        self.axis = ChoiceField([("x", "X")])
        self.axis_label = QLabel(self.tr("A&xis shown"))
        self.plot = PlotPane(self.tr("No readings yet. Type the first one at the left: it appears here at once."))
        self.card = ResultCard()
        self._make_layout()
        self.setFocusProxy(self.form)
        self.form.model.set_error_text(_error_text)
        self.form.changed.connect(self.answer_change)
        self.form.table.refused.connect(self._say_refused)
        self.form.new_button.clicked.connect(self.begin_anew)
        self.axis.changed.connect(self.recompute)
        self.plot.said.connect(context.notice)
        self.card.keep_clicked.connect(self.keep)
        context.machine_changed.connect(self._answer_context)
        context.instrument_changed.connect(self._answer_context)

    # The four methods of a page

    def read(self) -> Typed:
        """Return the readings that count."""
        rows = self.form.model.rows()
        places = [place for place, row in enumerate(rows) if counts(row)]
        return Typed(readings_of(rows, places, str(self.form.tolerance.value()), self.form.part_c.value()), places)

    def compute(self, readings: Typed) -> Judged:
        """Judge the readings: one call into the core."""
        from core.guidance.sizetrial import judge_size_trial  # the window opens before the mathematics is needed

        try:
            judgement = judge_size_trial(readings.readings, self.context.machine, self.context.instrument)
        except InputError as error:  # it counts the readings that count; the table has others between them
            row = None if error.row is None else readings.places[error.row]
            raise InputError(error.field, error.message, row) from error
        return Judged(*readings, judgement)

    def show_result(self, result: Judged) -> None:
        """Draw the picture, write the verdict, mark what stands out."""
        from app.pages.part_size.sizecard import kept_card, size_card
        from app.pages.part_size.sizeplot import size_plot

        self._offer_axes(sorted(set(result.readings.axis)))
        rows = self.form.model.rows()
        self.plot.set_data(size_plot(result.readings, result.judgement, str(self.axis.value()), left_out(rows)))
        card = kept_card(self.kept_trial) if self.kept_trial else size_card(result.judgement, self.why_not_keep())
        self.card.show_card(card)
        advice = self.tr("Stands out from the others: read it again, and one ordinary gauge with it.")
        flagged = zip(result.places, result.judgement.fit.flagged.tolist(), strict=True)
        self.form.model.set_marks({place: advice for place, stands_out in flagged if stands_out})
        self.form.model.set_expected(expected_readings(rows, result.judgement.fit))

    def record(self) -> Trial:
        """Return the trial as it stands."""
        machine, lot, instrument = self.context.machine, self.context.lot, self.context.instrument
        judgement = self.result.judgement if self.result else None
        return Trial(
            subject=self.subject,
            machine_id=machine.id if machine else None,
            lot_id=lot.id if lot else None,
            instrument_id=instrument.id if instrument else None,
            readings=lists_of(self.form.model.rows()),
            conditions={
                "piece": self.form.piece.value(),
                "tolerance": self.form.tolerance.value(),
                "part_temperature_c": self.form.part_c_or_none(),
            },
            estimates=judgement.estimates() if judgement else (),
            verdict=tuple(advice.as_json() for advice in judgement.advice) if judgement else (),
            method=judgement.method if judgement else "",
        )

    # Hooks

    def plan(self) -> None:
        """Begin with the empty readings of a piece."""
        with QSignalBlocker(self.form):
            self.form.plan()

    def lock(self, locked: bool) -> None:
        """Show readings without letting them be changed."""
        self.form.lock(locked)

    def why_not_keep(self) -> str:
        """Say what stands against keeping the trial."""
        if any(row["questioned"] for row in self.form.model.rows()) and not self.kept_trial:
            return self.tr("A reading has an open question; answer it, then keep the trial.")
        return super().why_not_keep()

    def show_trial(self, trial: Trial) -> None:
        """Show the readings of a trial."""
        with QSignalBlocker(self.form):
            self.form.piece.set_value(trial.conditions.get("piece") or "own")
            self.form.tolerance.set_value(str(trial.conditions.get("tolerance") or "m"))
            self.form.part_c.set_value(trial.conditions.get("part_temperature_c"))
            self.form.show_rows(rows_from(trial.readings))

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show why there is no verdict: at its place, and in the card."""
        if not self.form.settings.show_problem(field, message):
            self.form.model.show_problem(row, field, message)
        self.plot.set_data(PlotData((), title=self.tr("Error against length")))
        if field == NOTHING_YET:
            self.card.show_empty()
        else:
            said = Paragraph(self.tr("Cannot tell yet"), message, "unknown")
            self.card.show_card(CardData((said,), can_keep=False))

    def clear_problems(self) -> None:
        """Take the sentences away."""
        self.form.settings.clear_problems()
        self.form.model.clear_problems()

    # Layout

    def _make_layout(self) -> None:
        heading = QLabel(self.title)
        heading.setObjectName("heading")
        self.axis_label.setBuddy(self.axis)
        self.axis.setAccessibleName(self.tr("Axis shown"))
        head = QHBoxLayout()
        head.setSpacing(STEP_PX)
        head.addWidget(heading, 1)
        head.addWidget(self.axis_label)
        head.addWidget(self.axis)
        right = QVBoxLayout()
        right.setSpacing(STEP_PX)
        right.addWidget(self.plot, 3)
        right.addWidget(self.card, 2)
        across = QHBoxLayout()
        across.setSpacing(2 * STEP_PX)
        across.addWidget(self.form, 45)
        across.addLayout(right, 55)
        down = QVBoxLayout(self)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(STEP_PX)
        down.addLayout(head)
        down.addLayout(across, 1)
        self._offer_axes(["x"])

    # Answers

    def _answer_context(self) -> None:
        if self.isVisible():
            self.recompute()

    def _offer_axes(self, axes: list[str]) -> None:
        chosen = self.axis.value()
        with QSignalBlocker(self.axis):
            self.axis.set_choices([(axis, axis.upper()) for axis in axes])
            self.axis.set_value(chosen if chosen in axes else axes[0])
        self.axis.setVisible(len(axes) > 1)
        self.axis_label.setVisible(len(axes) > 1)

    def _say_refused(self, sentences: tuple[str, ...]) -> None:
        if sentences:
            self.context.say("  ".join(sentences), Level.WARNING)


def _error_text(row: Mapping[str, object]) -> str:
    nominal, measured = row.get("nominal_mm"), row.get("measured_mm")
    if not isinstance(nominal, float | int) or not isinstance(measured, float | int):
        return ""
    return local_text(f"{measured - nominal:+.3f}")
