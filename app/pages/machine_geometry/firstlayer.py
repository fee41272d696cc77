"""The page *First layer*: printed pads of one layer, the gap they tell, and the height offset that follows."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtWidgets import QWidget

from app.context import Context, Level
from app.pages.machine_geometry.firstlayerform import WARM, FirstLayerForm
from app.pages.trialpage import NOTHING_YET, TrialPage
from app.rownames import shown_name
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.resultcard import ResultCard
from app.words import shown
from core.errors import InputError, StoreError
from core.measuring.gauge import GaugeKind
from core.records.rows import SettingInForce, Trial
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.firstlayeradvice import BesidePads, FirstLayerJudgement, FlowBeside, PadReadings

_FIELDS = {"thickness_mm": "measured_mm"}
_FLOWS = ("flow_ratio", "flow_ratio_wall", "flow_ratio_mass", "flow_ratio_top")
_SAME_MM = 5e-4


class Typed(NamedTuple):
    """The pads that count and the rows of the table they stand in."""

    places: list[int]
    readings: PadReadings


class Judged(NamedTuple):
    """The same with what follows from them."""

    places: list[int]
    judgement: FirstLayerJudgement


class FirstLayerPage(TrialPage):
    """Print pads of one layer over the bed, read their thickness, set the height offset."""

    subject: ClassVar[str] = "firstlayer"
    form: FirstLayerForm

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("First layer")
        plot = PlotPane(self.tr("No pad yet. Print pads of one layer, let them cool, and read their thickness."))
        plot.set_data(PlotData((), title=self.tr("Pads")))
        self.lay_out(FirstLayerForm(self.picker), plot, ResultCard())

    # The four methods of a page

    def read(self) -> Typed:
        """Return the pads that count."""
        from core.guidance.firstlayeradvice import PadReadings  # the window opens before the mathematics is needed

        form, rows = self.form, self.form.model.rows()
        places = [
            place
            for place, row in enumerate(rows)
            if row["measured_mm"] is not None and not row["excluded"] and not row["questioned"]
        ]
        form.model.set_marks({})
        if not places:
            raise InputError(NOTHING_YET, tr("No reading yet."))
        x, y = ([_or_nan(rows[place].get(key)) for place in places] for key in ("x_mm", "y_mm"))
        readings = PadReadings(
            thickness_mm=[rows[place]["measured_mm"] for place in places],
            printed=form.printed(),
            x_mm=x,
            y_mm=y,
            inside_mm=form.number("inside_mm"),
            gauge=GaugeKind(str(form.gauge.value())),
            warm=form.state.value() == WARM,
        )
        return Typed(places, readings)

    def compute(self, readings: Typed) -> Judged:
        """Judge the pads: one call into the core."""
        from core.guidance.firstlayeradvice import judge_first_layer

        try:
            judgement = judge_first_layer(readings.readings, self.context.instrument, self._beside())
        except InputError as error:
            row = None if error.row is None else readings.places[error.row]
            raise InputError(_FIELDS.get(error.field, error.field), error.message, row) from error
        return Judged(readings.places, judgement)

    def show_result(self, result: Judged) -> None:
        """Draw the pads, write the verdict, mark what stands out."""
        from app.pages.machine_geometry.firstlayerplot import firstlayer_plot
        from app.pages.trialcard import advice_card, kept_card, place_row

        judgement, table = result.judgement, self.form.model.rows()
        pads = judgement.pads
        kept = self.kept_trial.estimates if self.kept_trial else ()
        error = next((e for e in kept if e.name == pads.error.name), pads.error)
        names = [shown_name(table[place]["feature"]) for place in result.places]
        self.plot.set_data(firstlayer_plot(pads, error, names))
        place = [place_row(self.context, self.kept_trial)]
        why_not = self.why_not_keep()
        card = advice_card(judgement.advice, pads.estimates(), why_not, mind=judgement.mind, further_rows=place)
        self.card.show_card(kept_card(self.kept_trial, place) if self.kept_trial else card)
        says = self.tr("Stands out from the other places: read it again.")
        odd = zip(result.places, pads.flagged.tolist(), strict=True)
        self.form.model.set_marks({row: says for row, flagged in odd if flagged})

    def record(self) -> Trial:
        """Return the trial as it stands."""
        if self.result is None:
            return self.trial_of()
        judgement: FirstLayerJudgement = self.result.judgement
        verdict = [advice.as_json() for advice in judgement.advice]
        return self.trial_of(judgement.estimates(), verdict, judgement.method, judgement.used)

    # Hooks

    def settings(self) -> tuple[SettingInForce, ...]:
        """Put a changed offset in force, with the one before; one that is left alone is verified, or put on record."""
        from core.guidance.firstlayeradvice import HEIGHT_OFFSET
        from core.guidance.verdict import Setting

        machine = self.context.machine
        if self.result is None or machine is None or machine.id is None:
            return ()
        judgement: FirstLayerJudgement = self.result.judgement
        old, new, error = judgement.readings.printed.offset_mm, judgement.new_offset_mm, judgement.pads.error
        if new is not None:
            expected = {"name": error.name, "value": 0.0, "U": error.U, "unit": error.unit}
            return (SettingInForce(machine.id, None, HEIGHT_OFFSET, old, new, "mm", prediction=expected),)
        if judgement.advice[0].setting is not Setting.LEAVE:
            return ()
        now = self.context.store.in_force(HEIGHT_OFFSET, machine.id)
        if now is not None and abs(now.new - old) < _SAME_MM:
            return (now,)
        return (SettingInForce(machine.id, None, HEIGHT_OFFSET, old, old, "mm"),)

    def plan(self) -> None:
        """Begin with five pads on the bed of the picked machine, printed with the offset in force."""
        machine = self.context.machine
        if machine is not None:
            self.form.travel_mm = (machine.travel_x_mm, machine.travel_y_mm)
        self.form.plan(self._offset_in_force())

    def _offset_in_force(self) -> float | None:
        from core.guidance.firstlayeradvice import HEIGHT_OFFSET

        machine = self.context.machine
        if machine is None or machine.id is None:
            return None
        try:
            now = self.context.store.in_force(HEIGHT_OFFSET, machine.id)
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return None
        return now.new if now else None

    def _beside(self) -> BesidePads:
        """Return flatness and flow of earlier trials, with their ids."""
        from core.guidance.firstlayeradvice import BesidePads

        machine = self.context.machine
        if machine is None or self.kept_trial is not None:
            return BesidePads()
        try:
            flatness = self.context.store.newest("bed_flatness", machine_id=machine.id)
            flow = self._flow()
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return BesidePads()
        used = tuple(found[0] for found in (flatness, flow) if found)
        return BesidePads(flatness[1] if flatness else None, flow[1] if flow else None, used)

    def _flow(self) -> tuple[int, FlowBeside] | None:
        """Return the factor found last for this machine and lot, with its trial; raise `StoreError`."""
        from core.guidance.firstlayeradvice import FlowBeside

        machine, lot, store = self.context.machine, self.context.lot, self.context.store
        if machine is None or machine.id is None or lot is None or lot.id is None:
            return None
        kept = [found for name in _FLOWS if (found := store.newest(name, machine.id, lot.id))]
        if not kept:
            return None
        trial_id, factor = max(kept, key=lambda one: (one[0], one[1].name == _FLOWS[0]))
        now = store.in_force("flow_factor", machine.id, lot.id)
        ratio = now.new if now else float(store.trial(trial_id).conditions.get("in_force_ratio") or 1.0)
        try:
            return trial_id, FlowBeside(factor, ratio)
        except InputError as error:
            self.context.say(shown(error.message), Level.WARNING)
            return None


def _or_nan(value: float | None) -> float:
    return math.nan if value is None else value
