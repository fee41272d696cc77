"""The left side of the page *Mass*: what a volume weighs, and what the path of one piece asks for."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from app.pages.flow_trials.flowform import FlowForm
from app.widgets.fields import ChoiceField, LengthField, NumberField
from app.widgets.reading_rows import Column
from app.widgets.trialpicker import TrialPicker

if TYPE_CHECKING:
    from core.flow_trials.mass import Commanded

DENSITY, PER_LENGTH = "density", "mass_per_length"
_MM, _CM3 = "mm", "cm3"
_IN_FORCE, _AT_ONE = "in_force", "at_one"
MM_AS_SET = f"{_MM} {_IN_FORCE}"
_MM3_PER_CM3 = 1000.0
_MOST_G = 10_000.0


class MassForm(FlowForm):
    """A flow form that knows plastic and path; it shows the fields that the two choices need."""

    def __init__(self, picker: TrialPicker) -> None:
        columns = (
            Column("feature", self.tr("Piece")),
            Column("measured_mm", self.tr("Mass g"), "number", low=0.0, high=_MOST_G, unit="g"),
            Column("error", self.tr("Asks for %"), "shown", editable=False),
        )
        super().__init__(columns, picker, self.tr("Add a mas&s"))
        self.bead.hide()  # five rows of settings leave no room for it in a small window
        by = [(DENSITY, self.tr("density")), (PER_LENGTH, self.tr("length"))]
        path = [
            (MM_AS_SET, self.tr("mm as set")),
            (f"{_MM} {_AT_ONE}", self.tr("mm at 1")),
            (f"{_CM3} {_IN_FORCE}", self.tr("cm³ as set")),
            (f"{_CM3} {_AT_ONE}", self.tr("cm³ at 1")),
        ]
        self._by, self._path = ChoiceField(by), ChoiceField(path)
        for choice in (self._by, self._path):
            choice.changed.connect(self._show_own_fields)  # first: a problem needs its field in sight
        self.add_own("by", self.tr("Weighed &by"), self._by)
        self.add_own("density_g_cm3", self.tr("&Density"), NumberField(required=True), self.tr("g/cm³"))
        self.add_own("mass_per_length_g_m", self.tr("Per &length"), NumberField(required=True), self.tr("g/m"))
        self.add_own("u_balance_g", self.tr("Balance, &1 u"), NumberField(required=True), self.tr("g"))
        self.add_own("path_counted", self.tr("Path &counted"), self._path)
        self.add_own("path_filament_mm", self.tr("Path len&gth"), LengthField(required=True), self.tr("mm"))
        self.add_own("volume_cm3", self.tr("Path &volume"), NumberField(required=True), self.tr("cm³"))
        self.add_own("filament_mm", self.tr("F&ilament set"), LengthField(required=True), self.tr("mm"))
        self._path.setToolTip(
            self.tr("As set: the path holds the flow factor already. At 1: it does not, the machine applies it.")
        )
        self._show_own_fields()

    def by(self) -> str:
        """Return what a volume is weighed by: density, or mass per length."""
        return str(self._by.value() or DENSITY)

    def commanded(self) -> Commanded:
        """Return what the path of one piece asks for.

        Raises:
            InputError: at the field that cannot be.
        """
        from core.flow_trials.mass import Commanded, commanded_by_length  # as the page: not before it is needed

        unit, _, factor = str(self._path.value()).partition(" ")
        if unit == _CM3:
            return Commanded(self.number("volume_cm3") * _MM3_PER_CM3, factor == _IN_FORCE)
        return commanded_by_length(self.number("path_filament_mm"), self.number("filament_mm"), factor == _IN_FORCE)

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings, and the fields that they need."""
        super().show_conditions(conditions)
        self._show_own_fields()

    def show_path(self, path: Mapping[str, Any]) -> None:
        """Show another path; all else stays as it was typed."""
        for key, value in path.items():
            self.typed[key].set_value(value)
        self._show_own_fields()

    def _show_own_fields(self) -> None:
        per_length, by_volume = self.by() == PER_LENGTH, str(self._path.value()).startswith(_CM3)
        for key, seen in (
            ("density_g_cm3", not per_length),
            ("mass_per_length_g_m", per_length),
            ("path_filament_mm", not by_volume),
            ("volume_cm3", by_volume),
            ("filament_mm", per_length or not by_volume),
        ):
            self.settings.show_field(key, seen)
