"""A filament lot as a form: what it is, what its maker claims, and the empty spool."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtWidgets import QWidget

from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import LengthField, LineField, NumberField, TextField
from app.widgets.materialfield import MaterialField
from core.errors import InputError
from core.records.rows import Lot

_TEXTS = ("name", "material", "maker", "colour", "batch", "note")
_NUMBERS = ("nominal_diameter_mm", "claimed_tolerance_mm", "spool_mass_g")


class LotForm(FieldGrid):
    """Fields of a lot; `lot` puts them into a row, `show_lot` the other way round."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(2, parent)
        self.add("name", self.tr("&Name"), TextField(required=True, longest=80))
        self.add("material", self.tr("Mate&rial"), MaterialField())
        self.add("maker", self.tr("Ma&ker"), TextField(longest=80))
        self.add("colour", self.tr("&Colour"), TextField(longest=40))
        self.add("batch", self.tr("&Batch"), TextField(longest=80))
        self.add("nominal_diameter_mm", self.tr("&Diameter claimed"), LengthField(low_mm=1.0, high_mm=5.0), "mm")
        self.add("claimed_tolerance_mm", self.tr("&Tolerance claimed ±"), LengthField(low_mm=0.0, high_mm=0.5), "mm")
        self.add("spool_mass_g", self.tr("Em&pty spool"), NumberField(low=0.0, high=10000.0), "g")
        self.add("note", self.tr("N&ote"), TextField())

    def lot(self, stored: Lot | None) -> Lot:
        """Return the lot as typed, over the one it was read from.

        Raises:
            InputError: the first field that cannot be read; `field` is its key.
        """
        values = self.values()
        texts = {key: str(values[key] or "") for key in _TEXTS}
        numbers = {key: None if values[key] is None else float(str(values[key])) for key in _NUMBERS}
        return replace(stored or Lot(name="", material=""), **texts, **numbers)  # type: ignore[arg-type]

    def show_unread(self) -> None:
        """Say at each field what in it cannot be read; a name that is still missing is asked for on saving."""
        for key in (*_TEXTS, *_NUMBERS):
            field = self.field(key)
            if isinstance(field, LineField) and field.text().strip():
                try:
                    field.value()
                except InputError as error:
                    field.problem(error.message)

    def show_lot(self, lot: Lot | None) -> None:
        """Show a lot; None empties the form but for the usual diameter."""
        shown = lot or Lot(name="", material="", nominal_diameter_mm=1.75)
        self.set_values({key: getattr(shown, key) for key in (*_TEXTS, *_NUMBERS)})

    def material(self) -> str:
        """Return the material as it stands in its field, finished or not."""
        field = self.field("material")
        return field.text() if isinstance(field, LineField) else ""
