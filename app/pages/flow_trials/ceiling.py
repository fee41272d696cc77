"""The page *Ceiling*: strands extruded at rising rates and weighed, and how fast the hot end really delivers."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar, NamedTuple

import numpy as np
from PySide6.QtWidgets import QLabel, QPushButton, QWidget

from app.context import Context
from app.pages.trialpage import NOTHING_YET, TrialPage
from app.widgets.fields import LengthField, NumberField
from app.widgets.plotdata import FitCurve
from app.widgets.plotpane import PlotData, PlotPane, PointSeries
from app.widgets.reading_rows import Column
from app.widgets.resultcard import ResultCard
from app.widgets.trialform import TrialForm
from app.words import shown
from core.errors import InputError, StoreError
from core.records.rows import Trial
from core.words import tr

if TYPE_CHECKING:
    from core.flow_trials.bead import Bead
    from core.flow_trials.ceiling import CeilingAt
    from core.guidance.ceilingadvice import CeilingJudgement, Strands

_RATES = (2, 4, 6, 8, 10, 12, 14, 16, 18, 20)
_SYMBOLS = ("●", "▲", "■", "◆", "▼")
_KEYS = ("temperature_c", "rate_mm3_s", "measured_mm")
_FIELD_OF = {"mass_g": "measured_mm", "share_ratio": "measured_mm"}
_DEFAULTS = {
    "length_mm": 200.0,
    "mass_per_length_g_m": None,
    "hot_end_limit_c": 240.0,
    "width_mm": 0.45,
    "height_mm": 0.2,
    "safety_percent": 80.0,
}


class Typed(NamedTuple):
    """The strands that count with the rows of the table they stand in, and the bead whose speed is asked for."""

    places: list[int]
    strands: Strands
    bead: Bead
    safety_ratio: float


class CeilingPage(TrialPage):
    """Extrude the same length into air, faster and faster, and weigh each strand."""

    subject: ClassVar[str] = "ceiling"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Ceiling")
        columns = (
            Column("temperature_c", self.tr("Nozzle\n°C"), "number", low=100.0, high=600.0, unit="°C"),
            Column("rate_mm3_s", self.tr("Rate\nmm³/s"), "number", low=0.0, high=200.0),
            Column("measured_mm", self.tr("Mass\ng"), "number", low=0.0, high=1000.0, unit="g"),
            Column("error", self.tr("Delivered\n%"), "shown", editable=False),
        )
        caution = QLabel(
            self.tr(
                "Caution: hot plastic spits and curls. Guard your eyes, a bowl below the nozzle, ventilate, stay with "
                "it, stop at the first grinding. Never above the hot end's stated limit; local rules come first."
            )
        )
        caution.setObjectName("question")
        caution.setWordWrap(True)
        form = TrialForm(columns, self.picker, above_entry=caution, across=3)
        self.typed: dict[str, NumberField] = {}
        for key, label, field, unit in self._settings():
            self.typed[key] = field
            form.add_setting(key, label, field, unit)
        self.add_button = QPushButton(self.tr("Add a st&rand"))
        form.foot.addWidget(self.add_button)
        plot = PlotPane(self.tr("No strand yet. Extrude the same length at each rate, weigh it, and type the mass."))
        plot.set_data(PlotData((), title=self.tr("Delivered share")))
        self.lay_out(form, plot, ResultCard())
        self.add_button.clicked.connect(self._add_strand)

    def _settings(self) -> tuple[tuple[str, str, NumberField, str], ...]:
        return (
            ("length_mm", self.tr("&Filament each"), LengthField(required=True), self.tr("mm")),
            ("mass_per_length_g_m", self.tr("&Mass per length"), NumberField(required=True, low=0.01), self.tr("g/m")),
            ("hot_end_limit_c", self.tr("&Hot end up to"), NumberField(required=True, low=100.0), self.tr("°C")),
            ("width_mm", self.tr("Bead &width"), LengthField(required=True), self.tr("mm")),
            ("height_mm", self.tr("&Layer"), LengthField(required=True), self.tr("mm")),
            ("safety_percent", self.tr("&Use of it"), NumberField(required=True, low=1.0, high=100.0), "%"),
        )

    # The four methods of a page

    def read(self) -> Typed:
        """Return the strands that are complete."""
        rows = self.form.model.rows()
        places = [
            place
            for place, row in enumerate(rows)
            if not row["excluded"] and not row["questioned"] and all(row.get(key) is not None for key in _KEYS)
        ]
        if not places:
            raise InputError(NOTHING_YET, tr("No strand yet."))
        from core.flow_trials.bead import Bead  # the window opens before the mathematics is needed
        from core.guidance.ceilingadvice import Strands

        temperature, rate, mass = ([float(rows[place][key]) for place in places] for key in _KEYS)
        known = [self._number(key) for key in ("length_mm", "mass_per_length_g_m", "hot_end_limit_c")]
        strands = Strands(rate, mass, temperature, *known)
        return Typed(
            places,
            strands,
            Bead(self._number("width_mm"), self._number("height_mm")),
            self._number("safety_percent") / 100,
        )

    def compute(self, readings: Typed) -> CeilingJudgement:
        """Judge the strands: one call into the core."""
        from core.guidance.ceilingadvice import judge_ceiling

        try:
            return judge_ceiling(readings.strands, readings.bead, readings.safety_ratio)
        except InputError as error:
            row = None if error.row is None else readings.places[error.row]
            raise InputError(_FIELD_OF.get(error.field, error.field), error.message, row) from error

    def show_result(self, result: CeilingJudgement) -> None:
        """Draw share against rate with the knees, and say how fast to print."""
        from app.pages.trialcard import advice_card, kept_card

        self.form.model.set_error_text(self._share_texts())
        self.plot.set_data(_ceiling_plot(result))
        mind = [shown(says) for says in result.mind]
        card = advice_card(result.advice, result.estimates(), self.why_not_keep(), mind=mind)
        self.card.show_card(kept_card(self.kept_trial) if self.kept_trial else card)

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
        self.form.show_conditions({**_DEFAULTS, "mass_per_length_g_m": self._mass_per_length()})
        self.form.show_rows([{"rate_mm3_s": float(rate), "rate_mm3_s_raw": str(rate)} for rate in _RATES])

    # Helpers

    def _number(self, key: str) -> float:
        value = self.typed[key].value()
        if value is None:
            raise InputError(key, tr("Nothing is typed here yet; this one is needed."))
        return float(value)

    def _mass_per_length(self) -> float | None:
        lot = self.context.lot
        try:
            newest = self.context.store.newest("mass_per_length", lot_id=lot.id) if lot else None
        except StoreError:
            return None  # it can be typed; keeping will say what is wrong with the store
        return newest[1].value if newest else None

    def _add_strand(self) -> None:
        """Add a strand at the temperature of the last one."""
        row = self.form.model.rowCount()
        last = self.form.model.values(row - 1) if row else {}
        keys = ("temperature_c", "temperature_c_raw")
        self.form.model.insert_row(row, {key: last[key] for key in keys if last.get(key)})
        self.form.table.edit_cell(row, "rate_mm3_s")

    def _share_texts(self) -> dict[int, str]:
        typed = self.read()
        whole = typed.strands.mass_per_length_g_m * typed.strands.length_mm / 1000
        return {
            place: shown(tr("{percent:.1f}", percent=100 * mass / whole))
            for place, mass in zip(typed.places, typed.strands.mass_g, strict=True)
        }


def _ceiling_plot(judged: CeilingJudgement) -> PlotData:
    """Draw delivered share in percent against the rate, one broken stick for each temperature."""
    at = judged.ceiling.at
    high = max(part.highest_mm3_s for part in at) * 1.05
    x = np.linspace(0.0, high, 121)
    return PlotData(
        points=tuple(_points(part, place) for place, part in enumerate(at)),
        curves=tuple(
            FitCurve(_name(part), x, 100 * (part.stick.mean(x) - 1), role=place) for place, part in enumerate(at)
        ),
        x_label=shown(tr("volumetric rate, mm³/s")),
        y_label=shown(tr("delivered − commanded, %")),
        title=shown(tr("Delivered share")),
        summary=" ".join(shown(advice.because) for advice in judged.advice),
    )


def _points(part: CeilingAt, place: int) -> PointSeries:
    return PointSeries(
        _name(part), part.rate_mm3_s, 100 * (part.share_ratio - 1), symbol=_SYMBOLS[place % len(_SYMBOLS)], role=place
    )


def _name(part: CeilingAt) -> str:
    return shown(tr("{temperature:.0f} °C", temperature=part.temperature_c))
