"""The left side of the page *Diameter*: which readings are typed now, with what, and the cross-section as a sketch."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from PySide6.QtWidgets import QLabel, QPushButton

from app.pages.filament.diameterrows import (
    FIRST,
    MASS,
    PAIRS,
    SECOND,
    WATER,
    columns_of,
    numbers_in,
    planned,
    rows_of,
    view_of,
)
from app.widgets.fields import ChoiceField, LengthField, NumberField
from app.widgets.sectionsketch import SectionSketch
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.errors import InputError
from core.measuring.gauge import GaugeKind, gauge_words

DEFAULTS: Mapping[str, Any] = {"view": PAIRS, "gauge": str(GaugeKind.CALIPER), "u_balance_g": 0.01, "u_length_mm": 0.5,
                               "water_c": 20.0, "nominal_mm": 1.75, "in_force_mm": 1.75}
_IN_VIEW = {"gauge": (PAIRS,), "u_balance_g": (MASS, WATER), "u_length_mm": (MASS,), "water_c": (WATER,)}


class DiameterForm(TrialForm):
    """A trial form with three tables, one in view; `all_rows` gives the rows of all of them."""

    def __init__(self, picker: TrialPicker) -> None:
        self.sketch = SectionSketch()
        self.caution = QLabel()
        self.caution.setObjectName("quiet")
        self.caution.setWordWrap(True)
        super().__init__(columns_of(PAIRS), picker, above_entry=self.sketch, above_stays=True, across=3)
        self._aside: list[Mapping[str, Any]] = []
        self.view = ChoiceField([(PAIRS, self.tr("diameters")), (MASS, self.tr("mass")),
                                 (WATER, self.tr("in water"))])
        self.nominal = LengthField(required=True, low_mm=1.0, high_mm=5.0)
        self.in_force = LengthField(required=True, low_mm=1.0, high_mm=5.0)
        self.gauge = ChoiceField([(str(kind), shown(gauge_words(kind))) for kind in GaugeKind])
        self.view.changed.connect(self._change_view)
        self.nominal.changed.connect(self._change_nominal)
        self.add_setting("view", self.tr("Read&ings"), self.view)
        self.add_setting("nominal_mm", self.tr("N&ominal"), self.nominal, self.tr("mm"))
        self.add_setting("in_force_mm", self.tr("Set no&w"), self.in_force, self.tr("mm"))
        self.add_setting("gauge", self.tr("Read wit&h"), self.gauge)
        self.add_setting("u_balance_g", self.tr("&Balance, 1 u"), NumberField(required=True, low=1e-5, high=10.0), "g")
        self.add_setting("u_length_mm", self.tr("Len&gth, 1 u"), NumberField(required=True, low=0.0, high=50.0), "mm")
        self.add_setting("water_c", self.tr("Wa&ter"), NumberField(required=True, low=0.0, high=40.0), self.tr("°C"))
        self.add_button = QPushButton()
        self.foot.addWidget(self.add_button)
        self.foot.add(self.caution, shares=True)
        self.add_button.clicked.connect(self._add)
        self.entry.row_changed.connect(self._light)

    def plan(self, conditions: Mapping[str, Any]) -> None:
        """Begin with the empty readings of the view chosen last."""
        self.show_conditions({**DEFAULTS, "view": self.view.value(), "gauge": self.gauge.value(), **conditions})
        self.show_rows([])

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings, the usual ones where none are stored."""
        super().show_conditions({**DEFAULTS, **conditions})

    def show_rows(self, rows: Sequence[Mapping[str, Any]]) -> None:
        """Show the rows of the chosen view, planned where there are none; the others wait aside."""
        view = str(self.view.value())
        mine = [row for row in rows if view_of(row) == view]
        self._aside = [row for row in rows if view_of(row) != view]
        self.model.set_columns(columns_of(view))
        super().show_rows(mine or planned(view, self._nominal_or_none()))
        self._show_view(view)

    def all_rows(self) -> list[Mapping[str, Any]]:
        """Return the rows in the table, then those of the other views."""
        return [*self.model.rows(), *self._aside]

    def lock(self, locked: bool) -> None:
        """Lock the readings; the views of a kept trial can be looked at."""
        super().lock(locked)
        self.view.setEnabled(True)

    def _change_view(self) -> None:
        self.show_rows(self.all_rows())

    def _change_nominal(self) -> None:
        """Hold all diameters against the new nominal."""
        nominal_mm = self._nominal_or_none()
        if nominal_mm is None:
            return
        new = {"nominal_mm": nominal_mm, "nominal_raw": f"{nominal_mm:g}"}
        self._aside = [{**row, **new} if row.get("kind") in (FIRST, SECOND) else row for row in self._aside]
        if self.view.value() == PAIRS:
            self.model.replan([{**row, **new} for row in self.model.rows()])

    def _nominal_or_none(self) -> float | None:
        try:
            return self.nominal.mm()
        except InputError:
            return None

    def _show_view(self, view: str) -> None:
        for key, views in _IN_VIEW.items():
            self.settings.show_field(key, view in views)
        self.sketch.setVisible(view == PAIRS)
        self.add_button.setText({PAIRS: self.tr("Add a &place"), MASS: self.tr("Add a &piece"),
                                 WATER: self.tr("Add a sam&ple")}[view])
        self.caution.setText({
            PAIRS: self.tr("Turn until it reads most, then by 90°; jaws are sharp."),
            MASS: self.tr("Straighten, cut square; cut ends fly: glasses."),
            WATER: self.tr("Wet it well, no bubbles; keep water off the balance."),
        }[view])

    def _add(self) -> None:
        row, number = self.model.rowCount(), numbers_in(self.model.rows()) + 1
        for place, values in enumerate(rows_of(str(self.view.value()), number, self._nominal_or_none()), start=row):
            self.model.insert_row(place, values)
        self.table.go_to(row)
        self.entry.setFocus()

    def _light(self, row: int) -> None:
        """Show the jaws as they stand for the reading that is typed next."""
        if not 0 <= row < self.model.rowCount():
            return
        values = self.model.values(row)
        pair: dict[str, float | None] = {FIRST: None, SECOND: None}
        for other in self.model.rows():
            if other["axis"] == values["axis"] and other["kind"] in pair and not other["questioned"]:
                pair[other["kind"]] = other["measured_mm"]
        turned = values["kind"] == SECOND
        self.sketch.show_pair(self._nominal_or_none() or 0.0, pair[FIRST], pair[SECOND], turned=turned)
