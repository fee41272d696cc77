"""The page *Mass*: weighed pieces without infill, and the flow factor they ask for."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from math import isclose
from typing import TYPE_CHECKING, Any, ClassVar, NamedTuple

from PySide6.QtCore import QSignalBlocker
from PySide6.QtWidgets import QWidget

from app.context import Context, Level
from app.pages.flow_trials.flowpage import FlowPage
from app.pages.flow_trials.massform import DENSITY, MM_AS_SET, PER_LENGTH, MassForm
from app.widgets.plotdata import PlotData
from app.words import shown
from core.errors import StoreError
from core.quantity import told_value
from core.records.rows import Trial

if TYPE_CHECKING:
    from core.flow_trials.conditions import PrintConditions
    from core.flow_trials.mass import Commanded
    from core.flow_trials.plastic import Density, MassPerLength
    from core.guidance.flowadvice import FlowJudgement
    from core.quantity import Estimate

_U_RATIO = {DENSITY: 0.005, PER_LENGTH: 0.003}  # of a value typed; one kept for this lot has its own
_FIELDS = {DENSITY: "density_g_cm3", PER_LENGTH: "mass_per_length_g_m"}


class Typed(NamedTuple):
    """The pieces that count, the rows of the table they stand in, and what they were printed and weighed with."""

    places: list[int]
    mass_g: list[float]
    conditions: PrintConditions
    commanded: Commanded
    plastic: Density | MassPerLength
    u_balance_g: float


class MassPage(FlowPage):
    """Weigh a piece of single walls or a solid one against the filament of its path."""

    form: MassForm
    subject: ClassVar[str] = "mass"
    fields_of: ClassVar[Mapping[str, str]] = {"volume_mm3": "volume_cm3", "mass_g": "measured_mm"}
    own_defaults: ClassVar[Mapping[str, Any]] = {
        "by": DENSITY,
        "density_g_cm3": None,
        "mass_per_length_g_m": None,
        "path_counted": MM_AS_SET,
        "path_filament_mm": None,
        "volume_cm3": None,
        "filament_mm": 1.75,
        "u_balance_g": 0.015,
    }

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Mass")
        self.lay_out_flow(
            MassForm(self.picker),
            self.tr("No mass yet. Weigh a piece without infill, 5 g or more, with what its path counts."),
        )

    def read(self) -> Typed:
        """Return the pieces that count."""
        places, rows = self.places(), self.form.model.rows()
        mass = [float(rows[place]["measured_mm"]) for place in places]
        conditions, u_balance = self.form.print_conditions(), self.form.number("u_balance_g")
        return Typed(places, mass, conditions, self.form.commanded(), self._plastic(), u_balance)

    def compute(self, readings: Typed) -> FlowJudgement:
        """Judge the masses: one call into the core."""
        from core.guidance.flowadvice import judge_mass  # the window opens before the mathematics is needed

        judge = partial(judge_mass, *readings[1:5], u_balance_g=readings.u_balance_g)
        return self.judged(readings.places, lambda: judge(beside=self.beside(readings.conditions.temperature_c)))

    def reading_plot(self, result: FlowJudgement) -> PlotData:
        """Return the masses by piece, their mean, and the mass of the right flow."""
        from app.pages.flow_trials.flowplot import Series, series_plot
        from core.flow_trials.mass import MassFlow

        found = result.found
        assert isinstance(found, MassFlow)  # this page judges masses
        mean = float(found.mass_g.mean())
        data = Series(
            names=self.names(),
            values=found.mass_g,
            mean=mean,
            U=mean * found.flow.U / found.flow.value,
            right=found.expected_g,
            x_label=self.tr("piece"),
            y_label=self.tr("mass, g"),
            unit=self.tr("g"),
            least_span=0.05 * mean,
        )
        return series_plot(data)

    def plan_rows(self) -> list[dict[str, object]]:
        """Return three pieces of one path."""
        return [{"feature": f"piece {number}"} for number in (1, 2, 3)]

    def measured_settings(self) -> dict[str, Any]:
        """Return density and mass per length of this lot, and the path of the box laid last, as kept elsewhere."""
        kept = {name: self._kept(name) for name in (DENSITY, PER_LENGTH)}
        return {_FIELDS[name]: told_value(estimate) for name, estimate in kept.items() if estimate} | self._path_laid()

    def _answer_kept(self, trial: Trial) -> None:
        """Take the path of a box that was laid just now, while nothing is weighed."""
        super()._answer_kept(trial)
        unread = self.kept_trial is None and not any(row["raw"] for row in self.form.model.rows())
        if trial.subject == "toolpaths" and unread and self._draft_of == (trial.machine_id, trial.lot_id):
            try:
                laid = self._path_laid()
            except StoreError as error:
                self.context.say(shown(error.message), Level.ERROR)
                return
            with QSignalBlocker(self.form):
                self.form.show_path(laid)
            self.save_draft()

    def _path_laid(self) -> dict[str, Any]:
        machine, lot, store = self.context.machine, self.context.lot, self.context.store
        if machine is None or machine.id is None or lot is None:
            return {}
        newest = store.newest("path_filament", machine.id, lot.id)
        if newest is None:
            return {}
        filament = store.trial(newest[0]).conditions["filament_mm"]
        return {"path_counted": MM_AS_SET, "path_filament_mm": newest[1].value, "filament_mm": filament}

    def _kept(self, name: str) -> Estimate | None:
        lot = self.context.lot
        try:
            newest = self.context.store.newest(name, lot_id=lot.id) if lot else None
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return None
        return newest[1] if newest else None

    def _plastic(self) -> Density | MassPerLength:
        from core.flow_trials.plastic import Density, MassPerLength

        by = self.form.by()
        value, kept = self.form.number(_FIELDS[by]), self._kept(by)
        same = kept is not None and isclose(told_value(kept), value, rel_tol=1e-9) and kept.u > 0
        value = kept.value if kept is not None and same else value
        u_ratio = kept.u / kept.value if kept is not None and same else _U_RATIO[by]
        if by == PER_LENGTH:
            return MassPerLength(value, self.form.number("filament_mm"), u_ratio, kept=same)
        return Density(value, u_ratio, kept=same)
