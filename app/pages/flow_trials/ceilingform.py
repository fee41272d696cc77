"""The left side of the page *Ceiling*: what all strands have in common, and ten rates for each temperature."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from PySide6.QtWidgets import QLabel, QPushButton

from app.widgets.fields import LengthField, NumberField
from app.widgets.reading_rows import Column
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from core.errors import InputError
from core.words import tr

RATES = (2, 4, 6, 8, 10, 12, 14, 16, 18, 20)
KEYS = ("temperature_c", "rate_mm3_s", "measured_mm")
DEFAULTS: Mapping[str, Any] = {
    "length_mm": 200.0,
    "mass_per_length_g_m": None,
    "hot_end_limit_c": 240.0,  # a lined hot end; no other stands higher by itself
    "nozzle_mm": 0.4,
    "width_mm": 0.45,
    "height_mm": 0.2,
    "safety_percent": 80.0,
}


class CeilingForm(TrialForm):
    """A trial form whose rows are strands; a temperature typed in one goes into the empty ones below it, too."""

    def __init__(self, picker: TrialPicker) -> None:
        caution = QLabel(
            self.tr(
                "Caution: hot plastic spits and curls. Guard your eyes, a bowl below the nozzle, ventilate, stay with "
                "it, stop at the first grinding. Never above the hot end's stated limit; local rules come first."
            )
        )
        caution.setObjectName("question")
        caution.setWordWrap(True)
        columns = (
            Column("temperature_c", self.tr("Nozzle\n°C"), "number", low=100.0, high=600.0, unit="°C", again=True,
                   down=True),
            Column("rate_mm3_s", self.tr("Rate\nmm³/s"), "number", low=0.0, high=200.0, again=True),
            Column("measured_mm", self.tr("Mass\ng"), "number", low=0.0, high=1000.0, unit="g"),
            Column("error", self.tr("Delivered\n%"), "shown", editable=False),
        )  # fmt: skip
        super().__init__(columns, picker, above_entry=caution, across=3)
        self.typed: dict[str, NumberField] = {}
        self._add("length_mm", self.tr("&Filament each"), LengthField(required=True), self.tr("mm"))
        self._add("mass_per_length_g_m", self.tr("Mass per len&gth"), NumberField(required=True, low=0.01),
                  self.tr("g/m"))  # fmt: skip
        self._add("hot_end_limit_c", self.tr("&Hot end up to"), NumberField(required=True, low=100.0), self.tr("°C"))
        self._add("nozzle_mm", self.tr("No&zzle"), LengthField(required=True), self.tr("mm"))
        self._add("width_mm", self.tr("Bead &width"), LengthField(required=True), self.tr("mm"))
        self._add("height_mm", self.tr("&Layer"), LengthField(required=True), self.tr("mm"))
        self._add("safety_percent", self.tr("Use &of it"), NumberField(required=True, low=1.0, high=100.0), "%")
        self.add_button = QPushButton(self.tr("Add a st&rand"))
        self.other_button = QPushButton(self.tr("Another &temperature"))
        for button in (self.add_button, self.other_button):
            self.foot.addWidget(button)
        self.add_button.clicked.connect(self._add_strand)
        self.other_button.clicked.connect(self._add_temperature)

    def plan(self, mass_per_length_g_m: float | None) -> None:
        """Begin with ten rates, their temperature to be typed."""
        self.show_conditions({**DEFAULTS, "mass_per_length_g_m": mass_per_length_g_m})
        self.show_rows(self._strands(0))

    def number(self, key: str) -> float:
        """Return a number that is needed.

        Raises:
            InputError: at that field, where it is empty or cannot be read.
        """
        return float(self.typed[key].value() or 0.0)

    def complete(self) -> list[int]:
        """Return the rows of the strands that count.

        Raises:
            InputError: at the temperature of a strand that was weighed, where it is not typed.
        """
        rows = self.model.rows()
        counted = [place for place, row in enumerate(rows) if not row["excluded"] and not row["questioned"]]
        for place in counted:
            if rows[place]["measured_mm"] is not None and rows[place].get("temperature_c") is None:
                says = tr("Row {row}: type the nozzle's temperature; it goes into the empty rows below, too.",
                          row=place + 1)  # fmt: skip
                raise InputError("temperature_c", says, place)
        return [place for place in counted if all(rows[place].get(key) is not None for key in KEYS)]

    def _add(self, key: str, label: str, field: NumberField, unit: str) -> None:
        self.typed[key] = field
        self.add_setting(key, label, field, unit)

    def _strands(self, before: int) -> list[dict[str, Any]]:
        return [
            {
                "feature": f"strand {number}",
                "rate_mm3_s": float(rate),
                "rate_mm3_s_raw": str(rate),
            }
            for number, rate in enumerate(RATES, start=before + 1)
        ]

    def _add_strand(self) -> None:
        """Add a strand at the temperature of the last one."""
        row = self.model.rowCount()
        last = self.model.values(row - 1) if row else {}
        same = {key: last[key] for key in ("temperature_c", "temperature_c_raw") if last.get(key)}
        self.model.insert_row(row, {"feature": f"strand {row + 1}", **same})
        self.table.edit_cell(row, "rate_mm3_s")

    def _add_temperature(self) -> None:
        """Add the rates once more and ask for their temperature."""
        row = self.model.rowCount()
        self.model.replan([*self.model.rows(), *self._strands(row)])
        self.table.edit_cell(row, "temperature_c")
