"""The left side of the page *First layer*: how the pads were printed and read, and a row for each place on the bed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from app.widgets.fields import ChoiceField, LengthField
from app.widgets.reading_columns import Column
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.measuring.gauge import GaugeKind, gauge_words
from core.words import tr

if TYPE_CHECKING:
    from core.machine_geometry.firstlayer import Printed

COOL, WARM = "cool", "warm"
_DEFAULTS: Mapping[str, Any] = {"layer_mm": 0.2, "offset_mm": None, "nozzle_mm": 0.4,
                                "gauge": str(GaugeKind.MICROMETER), "inside_mm": 5.0, "state": COOL}
_MARGIN_MM = 40.0  # from the edge of the bed to the middle of a pad


class FirstLayerForm(TrialForm):
    """A trial form with one row for each pad.

    Attributes:
        travel_mm: of the machine, for the places of the pads.
    """

    def __init__(self, picker: TrialPicker) -> None:
        self.travel_mm = (220.0, 220.0)
        super().__init__(_columns(), picker, above_entry=self._above_entry(), across=3, foretells=False)
        self.typed = {
            "layer_mm": LengthField(required=True),
            "offset_mm": LengthField(required=True),
            "nozzle_mm": LengthField(required=True),
            "inside_mm": LengthField(required=True, low_mm=0.0),
        }
        self.gauge = ChoiceField([(str(kind), shown(gauge_words(kind))) for kind in reversed(GaugeKind)])
        self.state = ChoiceField([(COOL, self.tr("cool")), (WARM, self.tr("still warm"))])
        mm = self.tr("mm")
        self.add_setting("layer_mm", self.tr("First la&yer"), self.typed["layer_mm"], mm)
        self.add_setting("offset_mm", self.tr("Height o&ffset"), self.typed["offset_mm"], mm)
        self.add_setting("nozzle_mm", self.tr("No&zzle"), self.typed["nozzle_mm"], mm)
        self.add_setting("gauge", self.tr("Read wit&h"), self.gauge)
        self.add_setting("inside_mm", self.tr("Inside ed&ge"), self.typed["inside_mm"], mm)
        self.add_setting("state", self.tr("Pa&ds are"), self.state)
        self.typed["offset_mm"].set_hint(self.tr("The one in force when the pads were printed; 0 for none."))
        self.typed["inside_mm"].set_hint(self.tr("How far from the edge of a pad the gauge touches it, at least."))
        self.add_button = QPushButton(self.tr("Add a pla&ce"))
        self.foot.addWidget(self.add_button)
        self.add_button.clicked.connect(self._add_place)

    def _above_entry(self) -> QWidget:
        says = QWidget()
        column = QVBoxLayout(says)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for name, text in (
            ("question", self.tr("Caution: hot bed and nozzle; stay with the first layer.")),
            ("quiet", self.tr("A larger height offset holds the nozzle farther from the bed.")),
        ):
            label = QLabel(text)
            label.setObjectName(name)
            label.setWordWrap(True)
            column.addWidget(label)
        return says

    def plan(self, offset_mm: float | None) -> None:
        """Begin with five empty pads, printed with the offset in force."""
        self.show_conditions({"offset_mm": offset_mm})
        x, y = self.travel_mm
        right, back = max(x - _MARGIN_MM, x / 2.0), max(y - _MARGIN_MM, y / 2.0)
        places = (
            ("Middle", x / 2.0, y / 2.0),
            ("Front left", x - right, y - back),
            ("Front right", right, y - back),
            ("Back right", right, back),
            ("Back left", x - right, back),
        )
        self.show_rows([_row(*place) for place in places])

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings, the usual ones where none are stored."""
        super().show_conditions({**_DEFAULTS, **conditions})

    def printed(self) -> Printed:
        """Return how the pads were printed.

        Raises:
            InputError: at the field that is empty or cannot be.
        """
        from core.machine_geometry.firstlayer import Printed  # the window opens before the mathematics is needed

        return Printed(self.number("layer_mm"), self.number("offset_mm"), self.number("nozzle_mm"))

    def number(self, key: str) -> float:
        """Return a length; each of them is needed.

        Raises:
            InputError: at that field, where it is empty or cannot be read.
        """
        return float(self.typed[key].value() or 0.0)

    def _add_place(self) -> None:
        row = self.model.rowCount()
        self.model.insert_row(row, _row(f"Place {row + 1}"))
        self.table.go_to(row)
        self.entry.setFocus()


def _columns() -> tuple[Column, ...]:
    return (
        Column("feature", shown(tr("Place"))),
        Column("x_mm", shown(tr("X mm")), "length"),
        Column("y_mm", shown(tr("Y mm")), "length"),
        Column("measured_mm", shown(tr("Pad mm")), "length"),
    )


def _row(name: str, x_mm: float | None = None, y_mm: float | None = None) -> dict[str, Any]:
    lengths = {"x": x_mm, "y": y_mm}
    placed = {f"{axis}_mm": value for axis, value in lengths.items() if value is not None}
    typed = {f"{axis}_raw": f"{value:g}" for axis, value in lengths.items() if value is not None}
    return {"feature": name, "kind": "travel", **placed, **typed}
