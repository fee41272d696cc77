"""What a drive allows: layer height, speed, load, tension of its belt; on a delta what its rods do to the size."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import LengthField, NumberField
from app.words import shown
from core.machine_geometry.drivelimits import DriveLimit, Wanted

_LINE = '<p style="margin: 0 0 5px 0"><b>{head}:</b> {text}</p>'
_BELT = ("belt_width_mm", "span_mm", "tone_hz")
_RODS = ("rod_mm", "rod_measured_mm", "radius_mm")
_TURNING = ("at_radius_mm", "centre_off_mm")
_TRAVELLING = ("height_mm", "load_ratio")
_FACTORS = {"step_rate_per_s": 1000.0, "load_ratio": 0.01}  # typed in kHz and per cent


class LimitsCard(QFrame):
    """Asks for what is wanted of the drive and says what it allows."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card")
        caution = QLabel(self.tr("Caution: pluck a belt with the machine off and its axes at rest."))
        caution.setObjectName("question")
        caution.setWordWrap(True)
        self.form = self._make_form()
        self.says = QLabel()
        self.says.setWordWrap(True)
        self.says.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.says.setAccessibleName(self.tr("What the drive allows"))
        self.says.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setWidget(self.says)
        scroll.viewport().setAutoFillBackground(False)
        self.says.setAutoFillBackground(False)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(2 * STEP_PX, STEP_PX, 2 * STEP_PX, STEP_PX)
        layout.setSpacing(4)
        for part in (caution, self.form):
            layout.addWidget(part)
        layout.addWidget(scroll, 1)
        self.show_limits(())

    def wanted(self) -> Wanted:
        """Return what was typed, or raise InputError at the first field that cannot be read."""
        typed = {key: value for key, value in self.form.values().items() if isinstance(value, float)}
        return Wanted(**{key: value * _FACTORS.get(key, 1.0) for key, value in typed.items()})

    def show_own_fields(self, *, belt: bool, delta: bool, rotary: bool) -> None:
        """Show the fields that say something to such a drive; a rotary axis stacks no layers."""
        for keys, visible in ((_BELT, belt), (_RODS, delta), (_TURNING, rotary), (_TRAVELLING, not rotary)):
            for key in keys:
                if self.form.field(key).isHidden() is visible:
                    self.form.show_field(key, visible)

    def show_limits(self, limits: Sequence[DriveLimit]) -> None:
        """Show what the drive allows of what is wanted."""
        if limits:
            lines = (_LINE.format(head=escape(shown(one.about)), text=escape(shown(one.says))) for one in limits)
            self.says.setText("".join(lines))
        else:
            self.say(self.tr("Type a layer height, a speed with the step rate of the controller, a load, or a tone."))

    def say(self, text: str) -> None:
        """Show other words in the place of the limits."""
        self.says.setText(escape(text))

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
