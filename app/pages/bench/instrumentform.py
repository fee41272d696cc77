"""The left side of the page *Instruments*: how the instrument is checked, and the readings."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel, QPushButton

from app.faults import told_at_once
from app.pages.bench.instrumentrows import CheckSettings, columns_of, replanned, rows_of
from app.units import inch_numbers, inches_for
from app.widgets.fields import ChoiceField, GaugeField
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.measuring.instrumentkinds import LightGap, Part, Plan, kind_of, light_gap_words, plan_words, plans_of
from core.records.rows import Instrument

_ALL_PX = 450  # wide, to show errors beside the references that are typed; the picture shows them anyway
_ACROSS = 3


class InstrumentForm(TrialForm):
    """A trial form that knows the kinds of instrument.

    Attributes:
        kind: of the instrument whose readings are shown.
        change_button: asks for the instrument's own record.
    """

    def __init__(self, picker: TrialPicker) -> None:
        self.caution = QLabel()
        self.caution.setObjectName("question")
        self.caution.setWordWrap(True)
        super().__init__(columns_of("caliper"), picker, above_entry=self.caution, across=_ACROSS)
        self.kind = ""
        self.plan_choice = ChoiceField()
        self.limit = GaugeField(low_mm=0.0)
        self.resolution = GaugeField(low_mm=0.0, required=True)
        inch = inches_for("instrument")
        self.promised = GaugeField(low_mm=0.0, high_mm=10.0, inch=inch)
        self.land = GaugeField(low_mm=0.0, high_mm=5.0, inch=inch)
        self.add_setting("plan", self.tr("&Check"), self.plan_choice)
        self.add_setting("limit", self.tr("&Limit ±"), self.limit)
        self.add_setting("resolution", self.tr("&Resolution"), self.resolution)
        self.add_setting("tolerance_mm", self.tr("&Promise ±"), self.promised, self.tr("mm"))
        self.add_setting("blade_land_mm", self.tr("&Blade land"), self.land, self.tr("mm"))
        self.light_gap = ChoiceField([(str(gap), shown(light_gap_words(gap))) for gap in LightGap])
        self.add_setting("light_gap", self.tr("&Jaws closed"), self.light_gap)
        self.add_button = QPushButton(self.tr("Add a rea&ding"))
        self.change_button = QPushButton(self.tr("Chan&ge instrument…"))
        self.foot.addWidget(self.add_button)
        self.foot.addWidget(self.change_button)
        self.set_kind("caliper")
        self.plan_choice.changed.connect(self._plan_anew)
        self.add_button.clicked.connect(self._add_reading)

    def begin(self, instrument: Instrument | None) -> None:
        """Begin with the empty readings of a full check."""
        kind = instrument.kind if instrument else "caliper"
        known = kind_of(kind)
        self.set_kind(kind)
        resolution = instrument.resolution_mm if instrument and known.length else known.resolution
        super().show_conditions({"resolution": resolution, "light_gap": str(LightGap.NOT_LOOKED)})
        self.plan_choice.set_value(str(Plan.FULL))
        self.show_rows(rows_of(kind, Plan.FULL))
        self._show_columns()

    def set_kind(self, kind: str) -> None:
        """Show columns, units, plans and settings of a kind of instrument."""
        if kind == self.kind:
            return
        known, self.kind = kind_of(kind), kind
        self.model.set_columns(columns_of(kind))
        self.plan_choice.set_choices([(str(plan), shown(plan_words(plan))) for plan in plans_of(kind)])
        self.limit.inch = self.resolution.inch = known.length and inches_for("instrument")
        self.settings.set_unit("limit", self.tr("&Limit ±"), known.unit)
        self.settings.set_unit("resolution", self.tr("&Resolution"), known.unit)
        self.limit.setPlaceholderText(self.tr("usual"))
        usual = self.tr("0.3 to 0.5")
        self.land.setPlaceholderText(inch_numbers(usual) if self.land.inch else usual)
        self.settings.show_field("tolerance_mm", known.length)
        self.settings.show_field("blade_land_mm", known.inside)
        self.settings.show_field("light_gap", known.jaws)
        self._show_caution()

    def check_settings(self) -> CheckSettings:
        """Return what holds for the whole check.

        Raises:
            InputError: a field cannot be read.
        """
        known = kind_of(self.kind)
        resolution = self.resolution.value()
        assert resolution is not None  # a required field
        return CheckSettings(
            kind=self.kind,
            resolution=resolution,
            limit=self.limit.value(),
            blade_land_mm=self.land.value() if known.inside else None,
            tolerance_mm=self.promised.value() if known.length else None,
            light_gap=LightGap(str(self.light_gap.value())) if known.jaws else LightGap.NOT_LOOKED,
        )

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings and the columns of the kind they are of."""
        self.set_kind(str(conditions.get("kind", self.kind)))
        super().show_conditions({"light_gap": str(LightGap.NOT_LOOKED), **conditions})
        self._show_columns()

    def conditions(self) -> dict[str, Any]:
        """Return the settings as they are to be stored, with the kind."""
        return {**super().conditions(), "kind": self.kind}

    def _show_caution(self) -> None:
        warns = self.kind == "thermometer" or kind_of(self.kind).inside
        if self.kind == "thermometer":
            says = self.tr("Caution: boiling water and steam scald. Hold the thermometer, not the vessel.")
        elif warns:
            says = self.tr("Caution: jaws and blades are sharp. Wipe them with paper, never with a finger.")
        else:
            says = self.tr("Wipe instrument and reference; let both lie in one room for an hour.")
        self.caution.setText(says)
        self.caution.setObjectName("question" if warns else "quiet")
        self.caution.style().unpolish(self.caution)  # a style sheet looks at names when it polishes anew
        self.caution.style().polish(self.caution)

    def _plan_anew(self) -> None:
        """Plan other readings; those that are in stay above them, and one undo brings the old plan back."""
        planned = rows_of(self.kind, Plan(str(self.plan_choice.value())))
        self.model.replan(replanned(self.model.rows(), planned))
        self._show_columns()

    def _show_columns(self) -> None:
        """Show the part of the check, and how well a reference is known, where no plan gives them."""
        given = self.plan_choice.value() != str(Plan.OWN)
        for place, column in enumerate(self.model.columns):
            narrow = column.key == "error" and not given and self.width() < _ALL_PX
            self.table.setColumnHidden(place, narrow or (given and column.key in ("kind", "half_width")))

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave the errors to the picture where what is typed would not be read whole."""
        super().resizeEvent(event)
        self._show_columns()

    def _add_reading(self) -> None:
        self.plan_choice.set_value(str(Plan.OWN))
        self._show_columns()
        row = self.model.rowCount()
        self.model.insert_row(row, {"kind": str(Part.LENGTH)})
        self.table.edit_cell(row, "nominal_mm")
