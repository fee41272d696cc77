"""The left side of the pages on the flow factor: what held while the trial was printed, and the caution."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from PySide6.QtWidgets import QLabel, QPushButton

from app.widgets.fields import ChoiceField, LengthField, LineField, NumberField
from app.widgets.reading_rows import Column
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from app.widgets.unbroken import UnbrokenLabel

if TYPE_CHECKING:
    from core.flow_trials.conditions import PrintConditions

_ACROSS = 3
DEFAULTS: dict[str, Any] = {
    "nozzle_mm": 0.4,
    "height_mm": 0.2,
    "width_mm": 0.45,
    "bead_model": "obround",
    "temperature_c": None,
    "hot_end_limit_c": 240.0,  # a lined hot end; no other stands higher by itself
    "rate_mm3_s": None,
    "in_force_ratio": 1.0,
}


class FlowForm(TrialForm):
    """A trial form with the conditions that all flow trials share; `again_button` adds a reading."""

    def __init__(self, columns: Sequence[Column], picker: TrialPicker, again: str) -> None:
        self.caution = QLabel(
            self.tr(
                "Caution: hot nozzle, burns. Ventilate the fumes, never leave it unattended; local rules come first."
            )
        )
        self.caution.setObjectName("question")
        self.caution.setWordWrap(True)
        super().__init__(columns, picker, above_entry=self.caution, across=_ACROSS)
        self.again_button = QPushButton(again)
        self.bead = UnbrokenLabel()  # what the bead is as commanded
        self.bead.setObjectName("quiet")
        self.bead.setWordWrap(True)
        self.foot.addWidget(self.again_button)
        self.foot.add(self.bead, shares=True)
        self.typed: dict[str, LineField | ChoiceField] = {}
        self._add("in_force_ratio", self.tr("&Factor in force"), NumberField(required=True))
        self._add("temperature_c", self.tr("&Temperature"), NumberField(required=True), self.tr("°C"))
        self._add("hot_end_limit_c", self.tr("&Hot end up to"), NumberField(required=True), self.tr("°C"))
        self._add("rate_mm3_s", self.tr("&Rate"), NumberField(required=True), self.tr("mm³/s"))
        self._add("nozzle_mm", self.tr("No&zzle"), LengthField(required=True), self.tr("mm"))
        self._add("height_mm", self.tr("La&yer"), LengthField(required=True), self.tr("mm"))
        self._add("width_mm", self.tr("Bead &width"), LengthField(required=True), self.tr("mm"))
        models = [("obround", self.tr("obround")), ("rectangle", self.tr("rectangle"))]
        self._add("bead_model", self.tr("Bead m&odel"), ChoiceField(models))

    def add_own(self, key: str, label: str, field: LineField | ChoiceField, unit: str = "") -> None:
        """Add a setting of the subject itself."""
        self._add(key, label, field, unit)

    def print_conditions(self) -> PrintConditions:
        """Return what held while the trial was printed.

        Raises:
            InputError: at the field that cannot be.
        """
        from core.flow_trials.bead import Bead, BeadModel  # the window opens before the mathematics is needed
        from core.flow_trials.conditions import PrintConditions

        model = BeadModel(str(self.typed["bead_model"].value() or BeadModel.OBROUND))
        return PrintConditions(
            Bead(self.number("width_mm"), self.number("height_mm"), model),
            nozzle_mm=self.number("nozzle_mm"),
            temperature_c=self.number("temperature_c"),
            rate_mm3_s=self.number("rate_mm3_s"),
            in_force_ratio=self.number("in_force_ratio"),
            hot_end_limit_c=self.number("hot_end_limit_c"),
        )

    def _add(self, key: str, label: str, field: LineField | ChoiceField, unit: str = "") -> None:
        self.typed[key] = field
        self.add_setting(key, label, field, unit)
