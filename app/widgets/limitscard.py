"""What a drive allows: layer height, speed, load, tension of its belt; on a delta what its rods do to the size."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QWidget

from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import LengthField, NumberField
from app.widgets.findingscard import FindingsCard
from app.words import shown
from core.machine_geometry.drivelimits import DriveLimit, Wanted

_BELT = ("belt_width_mm", "span_mm", "tone_hz")
_RODS = ("rod_mm", "rod_measured_mm", "radius_mm")
_TURNING = ("at_radius_mm", "centre_off_mm")
_TRAVELLING = ("height_mm", "load_ratio")
_FACTORS = {"step_rate_per_s": 1000.0, "load_ratio": 0.01}  # typed in kHz and per cent


class LimitsCard(FindingsCard):
    """Asks for what is wanted of the drive and says what it allows."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        caution = self.tr("Caution: pluck a belt with the machine off and its axes at rest.")
        self.lay_out(caution, self._make_form(), self.tr("What the drive allows"))
        self.show_limits(())

    def wanted(self) -> Wanted:
        """Return what was typed, or raise InputError at the first field that cannot be read."""
        typed = {key: value for key, value in self.form.values().items() if isinstance(value, float)}
        return Wanted(**{key: value * _FACTORS.get(key, 1.0) for key, value in typed.items()})

    def show_own_fields(self, *, belt: bool, delta: bool, rotary: bool) -> None:
        """Show the fields that say something to such a drive; a rotary axis stacks no layers."""
        groups = (_BELT, belt), (_RODS, delta), (_TURNING, rotary), (_TRAVELLING, not rotary)
        self.form.show_fields({key: visible for keys, visible in groups for key in keys})

    def show_limits(self, limits: Sequence[DriveLimit]) -> None:
        """Show what the drive allows of what is wanted."""
        if limits:
            self.show_lines((f"{shown(one.about)}:", shown(one.says)) for one in limits)
        else:
            self.say(self.tr("Type a layer height, a speed with the step rate of the controller, a load, or a tone."))

    def _make_form(self) -> FieldGrid:
        form = FieldGrid(4)
        form.set_gap(8)  # four columns beside the parts in the smallest window
        form.add("height_mm", self.tr("Layer"), LengthField(), self.tr("mm"))
        form.add("speed_mm_s", self.tr("Speed"), NumberField(), self.tr("mm/s"))
        form.add("step_rate_per_s", self.tr("Steps"), NumberField(), self.tr("kHz"))
        form.add("load_ratio", self.tr("Load"), NumberField(), self.tr("%"))
        form.add("supply_v", self.tr("Supply"), NumberField(), self.tr("V"))
        form.add("current_a", self.tr("Current"), NumberField(), self.tr("A"))
        form.add("inductance_mh", self.tr("Winding"), NumberField(), self.tr("mH"))
        form.add("extruder_steps_mm", self.tr("Feed"), NumberField(), self.tr("steps/mm"))
        form.add("flow_mm3_s", self.tr("Flow"), NumberField(), self.tr("mm³/s"))
        form.add("filament_mm", self.tr("Filament"), LengthField(), self.tr("mm"))
        form.add("at_radius_mm", self.tr("At radius"), LengthField(), self.tr("mm"))
        form.add("centre_off_mm", self.tr("Centre off"), LengthField(), self.tr("mm"))
        form.add("belt_width_mm", self.tr("Belt width"), LengthField(), self.tr("mm"))
        form.add("span_mm", self.tr("Free span"), LengthField(), self.tr("mm"))
        form.add("tone_hz", self.tr("Tone"), NumberField(), self.tr("Hz"))
        form.add("rod_mm", self.tr("Rod set"), LengthField(), self.tr("mm"))
        form.add("rod_measured_mm", self.tr("measured"), LengthField(), self.tr("mm"))
        form.add("radius_mm", self.tr("Radius"), LengthField(), self.tr("mm"))
        return form
