"""The page *Ceiling*: strands extruded at rising rates and weighed, and how fast the hot end really delivers."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtWidgets import QWidget

from app.context import Context
from app.pages.flow_trials.ceilingform import KEYS, CeilingForm
from app.pages.trialpage import NOTHING_YET, TrialPage
from app.widgets.plotpane import PlotData, PlotPane
from app.widgets.resultcard import ResultCard
from app.words import shown
from core.errors import InputError, StoreError
from core.quantity import told_value
from core.records.rows import Trial
from core.words import tr

if TYPE_CHECKING:
    from core.flow_trials.bead import Bead
    from core.flow_trials.conditions import PrintConditions
    from core.guidance.ceilingadvice import CeilingJudgement, Strands

_FIELD_OF = {"mass_g": "measured_mm", "share_ratio": "measured_mm"}


class Typed(NamedTuple):
    """The strands that count with the rows of the table they stand in, and the bead whose speed is asked for."""

    places: list[int]
    strands: Strands
    bead: Bead
    safety_ratio: float


class CeilingPage(TrialPage):
    """Extrude the same length into air, faster and faster, and weigh each strand."""

    subject: ClassVar[str] = "ceiling"
    form: CeilingForm

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Ceiling")
        plot = PlotPane(self.tr("No strand yet. Extrude the same length at each rate, weigh it, and type the mass."))
        plot.set_data(PlotData((), title=self.tr("Delivered share")))
        self.lay_out(CeilingForm(self.picker), plot, ResultCard())
        self.typed, self.add_button = self.form.typed, self.form.add_button

    # The four methods of a page

    def read(self) -> Typed:
        """Return the strands that are complete."""
        places, rows, number = self.form.complete(), self.form.model.rows(), self.form.number
        if not places:
            raise InputError(NOTHING_YET, tr("No strand yet."))
        from core.flow_trials.bead import Bead  # the window opens before the mathematics is needed
        from core.guidance.ceilingadvice import Strands

        temperature, rate, mass = ([float(rows[place][key]) for place in places] for key in KEYS)
        known = [number(key) for key in ("length_mm", "mass_per_length_g_m", "hot_end_limit_c", "nozzle_mm")]
        bead = Bead(number("width_mm"), number("height_mm"))
        return Typed(places, Strands(rate, mass, temperature, *known), bead, number("safety_percent") / 100)

    def compute(self, readings: Typed) -> CeilingJudgement:
        """Judge the strands: one call into the core."""
        from core.guidance.ceilingadvice import judge_ceiling

        try:
            return judge_ceiling(readings.strands, readings.bead, readings.safety_ratio, self._factor_found())
        except InputError as error:
            row = None if error.row is None else readings.places[error.row]
            raise InputError(_FIELD_OF.get(error.field, error.field), error.message, row) from error

    def show_result(self, result: CeilingJudgement) -> None:
        """Draw share against rate with the knees, and say how fast to print."""
        from app.pages.flow_trials.ceilingplot import ceiling_plot
        from app.pages.trialcard import advice_card, kept_card, place_row

        self.form.model.set_error_text(self._share_texts())
        self.plot.set_data(ceiling_plot(result))
        place = [place_row(self.context, self.kept_trial)]
        card = advice_card(result.advice, result.estimates(), self.why_not_keep(), mind=result.mind, further_rows=place)
        self.card.show_card(kept_card(self.kept_trial, place) if self.kept_trial else card)

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show why there is no verdict, and no share of an earlier one."""
        self.form.model.set_error_text({})
        super().show_problem(field, row, message)

    def record(self) -> Trial:
        """Return the trial as it stands."""
        judged: CeilingJudgement | None = self.result
        if judged is None:
            return self.trial_of()
        return self.trial_of(judged.estimates(), [a.as_json() for a in judged.advice], judged.method)

    def why_not_keep(self) -> str:
        """Say what stands against keeping the trial."""
        if self.kept_trial is None and self.context.lot is None:
            return self.tr("Choose or add the filament lot above: a ceiling belongs to machine and lot.")
        return super().why_not_keep()

    def plan(self) -> None:
        """Begin with ten rates; the mass per length is that of the lot where it is known."""
        self.form.plan(self._mass_per_length())

    # Helpers

    def _factor_found(self) -> PrintConditions | None:
        """Return what the flow factor in force was found with."""
        from app.pages.flow_trials.keptbeside import factor_found

        machine, lot = self.context.machine, self.context.lot
        if machine is None or machine.id is None or lot is None or lot.id is None:
            return None
        try:
            return factor_found(self.context, machine.id, lot.id)
        except StoreError:
            return None  # only a mark is lost; keeping will say what is wrong with the store

    def _mass_per_length(self) -> float | None:
        lot = self.context.lot
        try:
            newest = self.context.store.newest("mass_per_length", lot_id=lot.id) if lot else None
        except StoreError:
            return None  # it can be typed; keeping will say what is wrong with the store
        return told_value(newest[1]) if newest else None

    def _share_texts(self) -> dict[int, str]:
        typed = self.read()
        whole = typed.strands.mass_per_length_g_m * typed.strands.length_mm / 1000
        return {
            place: shown(tr("{percent:.1f}", percent=100 * mass / whole))
            for place, mass in zip(typed.places, typed.strands.mass_g, strict=True)
        }
