"""The page *Reversal*: readings from either side in; reversal error, its companions and the verdict out."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtWidgets import QWidget

from app.context import Context
from app.pages.machine_geometry.reversalform import ReversalForm
from app.pages.machine_geometry.reversalplan import PUSH, differences
from app.pages.trialpage import NOTHING_YET, TrialPage
from app.widgets.fields import local_text
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.resultcard import ResultCard
from app.words import shown
from core.errors import InputError
from core.measuring.rownames import row_words
from core.quantity import Estimate, rounded_pair, value_text
from core.records.rows import Machine, Trial
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.reversaladvice import ReversalJudgement, ReversalReadings
    from core.machine_geometry.reversal import Reversal

_FIELDS = {"reading_mm": "measured_mm", "commanded_mm": "nominal_mm"}
_DIAL = "dial"
_BY_DIRECTION = (("E", "systematic"), ("R", "repeatability"), ("A", "accuracy"))


class Typed(NamedTuple):
    """The readings of the chosen way and the rows of the table they stand in."""

    readings: ReversalReadings
    places: list[int]


class Judged(NamedTuple):
    """The same with what follows from them."""

    judgement: ReversalJudgement
    places: list[int]


class ReversalPage(TrialPage):
    """Readings at the left, both directions and the verdict at the right."""

    subject: ClassVar[str] = "reversal"
    form: ReversalForm

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Reversal")
        plot = PlotPane(self.tr("No pair yet. Come to the same target from either side and read the dial each time."))
        plot.set_data(PlotData((), title=self.tr("Readings from either side")))
        self.lay_out(ReversalForm(self.picker), plot, ResultCard())
        context.machine_changed.connect(self._tell_travel)

    # The four methods of a page

    def read(self) -> Typed:
        """Return the readings of the chosen way; one that does not count is nan, so that pairs stay pairs."""
        from core.guidance.reversaladvice import ReversalReadings, Way
        from core.machine_geometry.stiffness import Push

        form, rows = self.form, self.form.model.rows()
        places = [place for place, row in enumerate(rows) if form.belongs(row)]
        own = [rows[place] for place in places]
        readings = [math.nan if row["excluded"] or row["measured_mm"] is None else row["measured_mm"] for row in own]
        targets = [math.nan if row["nominal_mm"] is None else row["nominal_mm"] for row in own]
        form.model.set_error_text(differences(str(form.method.value()), rows, places))
        form.model.set_marks(self._foreign_marks(set(places)))
        if all(math.isnan(reading) for reading in readings):
            raise InputError(NOTHING_YET, tr("No reading yet."))
        typed = ReversalReadings(
            axis=str(form.axis.value()),
            way=Way(str(form.method.value())),
            resolution_mm=float(form.resolution.value() or 0.0),
            place=[row["kind" if form.method.value() == PUSH else "feature"] for row in own],
            approach=[row["axis"] for row in own],
            nominal_mm=targets,
            reading_mm=readings,
            push=Push(float(form.push.value() or 0.0), float(form.push_limit.value() or 0.0)),
        )
        return Typed(typed, places)

    def compute(self, readings: Typed) -> Judged:
        """Judge the readings: one call into the core."""
        from core.guidance.reversaladvice import judge_reversal

        try:
            judgement = judge_reversal(readings.readings, self.context.machine)
        except InputError as error:
            row = None if error.row is None else readings.places[error.row]
            raise InputError(_FIELDS.get(error.field, error.field), error.message, row) from error
        return Judged(judgement, readings.places)

    def show_result(self, result: Judged) -> None:
        """Draw both directions, write the verdict, mark what stands out."""
        from app.pages.machine_geometry.reversalplot import reversal_plot
        from app.pages.trialcard import advice_card, kept_card

        judgement = result.judgement
        self.plot.set_data(reversal_plot(judgement))
        estimates = [e for e in judgement.estimates() if "_up_" not in e.name and "_down_" not in e.name]
        further = _further_rows(judgement)
        card = advice_card(judgement.advice, estimates, self.why_not_keep(), mind=judgement.minds, further_rows=further)
        self.card.show_card(kept_card(self.kept_trial) if self.kept_trial else card)
        advice = self.tr("Stands out from the other pairs of its place: read it again.")
        flagged = {result.places[row]: advice for row in _flagged_rows(judgement)}
        self.form.model.set_marks(self._foreign_marks(set(result.places)) | flagged)

    def record(self) -> Trial:
        """Return the trial as it stands."""
        if self.result is None:
            return self.trial_of()
        judgement: ReversalJudgement = self.result.judgement
        verdict = [advice.as_json() for advice in judgement.advice]
        return self.trial_of(judgement.estimates(), verdict, judgement.method)

    # Hooks

    def plan(self) -> None:
        """Begin with the quick cycle of X, read on the picked indicator."""
        self._tell_travel(self.context.machine)
        instrument = self.context.instrument
        self.form.plan(instrument.resolution_mm if instrument and instrument.kind == _DIAL else 0.01)

    def _tell_travel(self, machine: Machine | None) -> None:
        """Tell the form between which ends the targets of a full cycle lie."""
        travel = {"x": machine.travel_x_mm, "y": machine.travel_y_mm, "z": machine.travel_z_mm} if machine else {}
        self.form.travel_mm = travel

    def _foreign_marks(self, own: set[int]) -> dict[int, str]:
        says = self.tr("Read by another way: it does not count here.")
        return {place: says for place, row in enumerate(self.form.model.rows()) if row["raw"] and place not in own}


def _flagged_rows(judgement: ReversalJudgement) -> list[int]:
    from core.machine_geometry.quickcycle import QuickReversal

    if not isinstance(judgement.fit, QuickReversal):
        return []
    return [int(row) for place in judgement.fit.places for row in place.rows[place.flagged].ravel()]


def _further_rows(judgement: ReversalJudgement) -> list[tuple[str, str, str]]:
    """The other places of a quick cycle; by direction the figures of a full one."""
    from core.machine_geometry.quickcycle import QuickReversal
    from core.machine_geometry.reversal import Reversal

    fit = judgement.fit
    if isinstance(fit, QuickReversal):
        return [
            (shown(tr("at {place}", place=row_words(place.name))), _plain(place.reversal), "")
            for place in fit.places
            if place is not fit.worst
        ]
    if isinstance(fit, Reversal):
        return [_by_direction(fit, symbol, stem) for symbol, stem in _BY_DIRECTION]
    return []


def _by_direction(fit: Reversal, symbol: str, stem: str) -> tuple[str, str, str]:
    """Return one line for both directions: what, the two values, their U."""
    both = [fit.estimate(f"{stem}_{way}") for way in ("up", "down")]
    values, U = zip(*(rounded_pair(size.value, size.U) for size in both), strict=True)
    plain = [value.removeprefix("+") for value in values]
    return (
        shown(tr("{symbol} from −, from +", symbol=symbol)),
        local_text(f"{plain[0]}, {plain[1]} mm"),
        local_text(f"U {U[0]}, {U[1]}"),
    )


def _plain(size: Estimate) -> str:
    return local_text(value_text(size).removeprefix("+"))
