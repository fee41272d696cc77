"""The parts of one drive as a form; which fields there are follows from what moves the carriage."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from PySide6.QtWidgets import QWidget

from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import (
    ChoiceField,
    CountField,
    LengthField,
    LineField,
    NumberField,
    TextField,
    Value,
    local_text,
)
from core.machine_geometry.catalogue import table
from core.machine_geometry.drive import MICROSTEPS, OWN_PARTS, Drive, DriveKind, Reeving, drive_from_parts

_COUNTED = ("pitch_mm", "teeth", "starts", "module_mm", "diameter_mm")  # what a person must look up at the machine
_PERCENT = 100.0
_LAST_ROW = 99


class DriveForm(FieldGrid):
    """Motor, gears and what moves the carriage; `drive()` is the drive, or says at which field it fails."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(2, parent)
        self._grid.setRowStretch(_LAST_ROW, 1)  # a kind of few parts keeps its rows together
        kinds = {
            DriveKind.BELT: self.tr("toothed belt"),
            DriveKind.SCREW: self.tr("screw"),
            DriveKind.RACK: self.tr("rack and pinion"),
            DriveKind.WHEEL: self.tr("smooth wheel"),
            DriveKind.ROTARY: self.tr("rotary axis"),
        }
        self.add("kind", self.tr("&Driven by"), ChoiceField([(str(kind), text) for kind, text in kinds.items()]))
        self.add("module_mm", self.tr("Module"), LengthField(), self.tr("mm, or"))
        self.add("pitch_mm", self.tr("&Pitch"), LengthField(), "mm")
        self.add("teeth", self.tr("&Teeth"), CountField(low=1))
        self.add("starts", self.tr("Thread star&ts"), CountField(low=1))
        self.add("helix_deg", self.tr("Helix angle"), NumberField(), "°")
        self.add("diameter_mm", self.tr("Diameter"), LengthField(), "mm")
        motors = [
            (row["full_steps"], local_text(f"{row['full_steps']} ({row['step_angle_deg']}°)"))
            for row in table("drive_motors")
        ]
        self.add("full_steps", self.tr("&Full steps per turn"), ChoiceField(motors))
        self.add("microsteps", self.tr("Micr&osteps"), ChoiceField([(str(count), str(count)) for count in MICROSTEPS]))
        self.add("gears", self.tr("&Gears, driven/driving"), TextField(longest=60))
        ropes = {
            Reeving.DIRECT: self.tr("none, 1:1"),
            Reeving.HALF: self.tr("half the travel"),
            Reeving.DOUBLE: self.tr("twice the travel"),
        }
        reevings = [(str(reeving), text) for reeving, text in ropes.items()]
        self.add("reeving", self.tr("&Reeving"), ChoiceField(reevings))
        self.add("u_percent", self.tr("To&lerance, 1 u"), NumberField(low=0.0), "%")
        self._line("gears").setPlaceholderText(self.tr("none"))
        self.set_parts({})
        self.changed.connect(self.show_own_fields)

    def set_parts(self, parts: Mapping[str, Any]) -> None:
        """Show the parts of a drive as `Drive.parts()` gives them; none empties the form."""
        values: dict[str, Value] = dict.fromkeys((*_COUNTED, "gears", "u_percent"))
        values |= {"kind": "belt", "reeving": "direct", "full_steps": "200", "microsteps": "16", "helix_deg": None}
        values |= {key: value for key, value in parts.items() if key not in ("gears", "u_ratio")}
        values["full_steps"], values["microsteps"] = str(values["full_steps"]), str(values["microsteps"])
        values["gears"] = " ".join(f"{driven}/{driving}" for driven, driving in parts.get("gears", ()))
        if "u_ratio" in parts:
            values["u_percent"] = parts["u_ratio"] * _PERCENT
        self.set_values(values)
        self.show_own_fields()

    def drive(self) -> Drive:
        """Return the drive on the form.

        Raises:
            InputError: `field` is the key of the field at fault.
        """
        values = self.values()
        percent = values.pop("u_percent", None)
        parts: dict[str, Any] = {**values, "full_steps": int(str(values["full_steps"]))}
        parts["microsteps"] = int(str(values["microsteps"]))
        if isinstance(percent, float):
            parts["u_ratio"] = percent / _PERCENT
        return drive_from_parts(parts)

    def untouched(self) -> bool:
        """Whether nothing that must be counted at the machine has been typed."""
        return not self._rotary() and not any(self._line(key).text().strip() for key in (*_COUNTED, "gears"))

    def show_problem(self, key: str, message: str) -> bool:
        """Show a problem at its field; the core's name of the tolerance is not the form's."""
        return super().show_problem("u_percent" if key == "u_ratio" else key, message)

    def show_usual_tolerance(self, tolerance_ratio: float) -> None:
        """Show as a hint what holds while the field is empty."""
        self._line("u_percent").setPlaceholderText(self.tr("usual"))
        self._line("u_percent").set_hint(
            self.tr("empty: common practice for this kind, no source; now {percent} %").format(
                percent=local_text(f"{tolerance_ratio * _PERCENT:.3g}")
            )
        )

    def _line(self, key: str) -> LineField:
        field = self.field(key)
        assert isinstance(field, LineField)
        return field

    def show_own_fields(self) -> None:
        """Show the fields of the chosen kind only."""
        own = OWN_PARTS[DriveKind(str(self.field("kind").value()))]
        visible = {key: key in own for keys in OWN_PARTS.values() for key in keys}
        self.show_fields(visible | dict.fromkeys(("reeving", "u_percent"), not self._rotary()))

    def _rotary(self) -> bool:
        """Whether it turns by degrees: whole turns of counted teeth are exact, and no rope is reeved."""
        return self.field("kind").value() == DriveKind.ROTARY
