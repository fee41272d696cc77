"""The page *Mass*: weighed pieces without infill, and the flow factor they ask for."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from math import isclose
from typing import TYPE_CHECKING, Any, ClassVar, NamedTuple

from PySide6.QtWidgets import QWidget

from app.context import Context
from app.pages.flow_trials.flowform import FlowForm
from app.pages.flow_trials.flowpage import FlowPage
from app.widgets.fields import ChoiceField, LengthField, NumberField
from app.widgets.plotdata import PlotData
from app.widgets.reading_rows import Column

if TYPE_CHECKING:
    from core.flow_trials.conditions import PrintConditions
    from core.flow_trials.mass import Commanded, Density, MassPerLength
    from core.guidance.flowadvice import FlowJudgement
    from core.quantity import Estimate

DENSITY, PER_LENGTH = "density", "mass_per_length"
_U_RATIO = {DENSITY: 0.005, PER_LENGTH: 0.003}  # of a value typed; one kept for this lot has its own
_FIELDS = {DENSITY: "density_g_cm3", PER_LENGTH: "mass_per_length_g_m"}
_MM, _CM3 = "mm", "cm3"
_IN_FORCE, _AT_ONE = "in_force", "at_one"
_MM3_PER_CM3 = 1000.0
_MOST_G = 10_000.0


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

    subject: ClassVar[str] = "mass"
    fields_of: ClassVar[Mapping[str, str]] = {"volume_mm3": "volume_cm3", "mass_g": "measured_mm"}
    own_defaults: ClassVar[Mapping[str, Any]] = {
        "by": DENSITY,
        "density_g_cm3": None,
        "mass_per_length_g_m": None,
        "path_counted": f"{_MM} {_IN_FORCE}",
        "path_filament_mm": None,
        "volume_cm3": None,
        "filament_mm": 1.75,
        "u_balance_g": 0.015,
    }

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Mass")
        columns = (
            Column("feature", self.tr("Piece")),
            Column("measured_mm", self.tr("Mass g"), "number", low=0.0, high=_MOST_G, unit="g"),
            Column("error", self.tr("Asks for %"), "shown", editable=False),
        )
        form = FlowForm(columns, self.picker, self.tr("Add a mas&s"))
        self._add_settings(form)
        self.lay_out_flow(
            form, self.tr("No mass yet. Weigh a piece without infill, 5 g or more, with what its path counts.")
        )
        for key in ("by", "path_counted"):
            form.typed[key].changed.connect(self._show_own_fields)
        self._show_own_fields()

    def _add_settings(self, form: FlowForm) -> None:
        by = [(DENSITY, self.tr("density")), (PER_LENGTH, self.tr("length"))]
        path = [
            (f"{_MM} {_IN_FORCE}", self.tr("mm as set")),
            (f"{_MM} {_AT_ONE}", self.tr("mm at 1")),
            (f"{_CM3} {_IN_FORCE}", self.tr("cm³ as set")),
            (f"{_CM3} {_AT_ONE}", self.tr("cm³ at 1")),
        ]
        form.add_own("by", self.tr("Weighed b&y"), ChoiceField(by))
        form.add_own("density_g_cm3", self.tr("&Density"), NumberField(required=True), self.tr("g/cm³"))
        form.add_own("mass_per_length_g_m", self.tr("Per le&ngth"), NumberField(required=True), self.tr("g/m"))
        form.add_own("u_balance_g", self.tr("Balance, &1 u"), NumberField(required=True), self.tr("g"))
        form.add_own("path_counted", self.tr("Path &counted"), ChoiceField(path))
        form.add_own("path_filament_mm", self.tr("Path, &2"), LengthField(required=True), self.tr("mm"))
        form.add_own("volume_cm3", self.tr("Path, &2"), NumberField(required=True), self.tr("cm³"))
        form.add_own("filament_mm", self.tr("F&ilament set"), LengthField(required=True), self.tr("mm"))
        form.typed["path_counted"].setToolTip(
            self.tr("As set: the path holds the flow factor already. At 1: it does not, the machine applies it.")
        )

    def read(self) -> Typed:
        """Return the pieces that count."""
        places, rows = self.places(), self.form.model.rows()
        mass = [float(rows[place]["measured_mm"]) for place in places]
        conditions, u_balance = self.form.print_conditions(), self.form.number("u_balance_g")
        return Typed(places, mass, conditions, self._commanded(), self._plastic(), u_balance)

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
        return [{"feature": self.tr("piece {number}").format(number=number)} for number in (1, 2, 3)]

    def plan(self) -> None:
        """Begin a new trial."""
        super().plan()
        self._show_own_fields()

    def measured_settings(self) -> dict[str, Any]:
        """Return density and mass per length of this lot, as other pages kept them."""
        kept = {name: self._kept(name) for name in (DENSITY, PER_LENGTH)}
        return {_FIELDS[name]: estimate.value for name, estimate in kept.items() if estimate}

    def _kept(self, name: str) -> Estimate | None:
        lot = self.context.lot
        newest = self.context.store.newest(name, lot_id=lot.id) if lot else None
        return newest[1] if newest else None

    def _commanded(self) -> Commanded:
        from core.flow_trials.mass import Commanded, commanded_by_length

        unit, _, factor = str(self.form.typed["path_counted"].value()).partition(" ")
        if unit == _CM3:
            return Commanded(self.form.number("volume_cm3") * _MM3_PER_CM3, factor == _IN_FORCE)
        length_mm, filament_mm = self.form.number("path_filament_mm"), self.form.number("filament_mm")
        return commanded_by_length(length_mm, filament_mm, factor == _IN_FORCE)

    def _plastic(self) -> Density | MassPerLength:
        from core.flow_trials.mass import Density, MassPerLength

        by = str(self.form.typed["by"].value() or DENSITY)
        value, kept = self.form.number(_FIELDS[by]), self._kept(by)
        same = kept is not None and isclose(kept.value, value, rel_tol=1e-4) and kept.u > 0
        u_ratio = kept.u / kept.value if kept is not None and same else _U_RATIO[by]
        if by == PER_LENGTH:
            return MassPerLength(value, self.form.number("filament_mm"), u_ratio)
        return Density(value, u_ratio)

    def _show_own_fields(self) -> None:
        per_length = self.form.typed["by"].value() == PER_LENGTH
        by_volume = str(self.form.typed["path_counted"].value()).startswith(_CM3)
        for key, seen in (
            ("density_g_cm3", not per_length),
            ("mass_per_length_g_m", per_length),
            ("path_filament_mm", not by_volume),
            ("volume_cm3", by_volume),
            ("filament_mm", per_length or not by_volume),
        ):
            self.form.settings.show_field(key, seen)
