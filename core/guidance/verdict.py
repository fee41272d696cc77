"""The words of a verdict: a setting, what to do with it, why, and what to leave alone."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from core.part_size.features import FeatureKind, kind_words
from core.words import SAID, Words, as_plain, side_by_side, tr


class Setting(StrEnum):
    """Where a remedy belongs."""

    LEAVE = "leave"
    MEND_MECHANICS = "mend_mechanics"
    WRONG_PART = "wrong_part"
    CHECK_FLOW = "check_flow"
    CONTOUR_OFFSET = "contour_offset"
    SHRINK_ALLOWANCE = "shrink_allowance"
    AXIS_SCALE = "axis_scale"
    EXTRUDER_STEPS = "extruder_steps"
    FILAMENT_DIAMETER = "filament_diameter"
    FILAMENT_LOT = "filament_lot"
    FLOW_FACTOR = "flow_factor"
    PRINT_SPEED = "print_speed"
    SKEW_TERMS = "skew_terms"
    LEVEL_BED = "level_bed"
    HEIGHT_MAP = "height_map"
    SOAK_TIME = "soak_time"
    USE_INSTRUMENT = "use_instrument"
    INSTRUMENT_OUT = "instrument_out"
    NOZZLE_TEMPERATURE = "nozzle_temperature"
    RETRACTION = "retraction"
    PRESSURE_LAG = "pressure_lag"
    CORNERING = "cornering"
    COOLING = "cooling"
    FIRST_LAYER_GAP = "first_layer_gap"
    HEIGHT_OFFSET = "height_offset"
    ACCELERATION = "acceleration"
    DYNAMICS = "dynamics"
    SETUP = "setup"
    UNDECIDED = "undecided"


def setting_words(setting: Setting) -> Words:
    """Return the name of a setting for people."""
    return {
        Setting.LEAVE: tr("Leave it"),
        Setting.MEND_MECHANICS: tr("Mend the mechanics"),
        Setting.WRONG_PART: tr("A part is not what the list says"),
        Setting.CHECK_FLOW: tr("Check the flow"),
        Setting.CONTOUR_OFFSET: tr("Contour offset"),
        Setting.SHRINK_ALLOWANCE: tr("Shrink allowance"),
        Setting.AXIS_SCALE: tr("Axis scale"),
        Setting.EXTRUDER_STEPS: tr("Extruder steps"),
        Setting.FILAMENT_DIAMETER: tr("Filament diameter"),
        Setting.FILAMENT_LOT: tr("The filament itself"),
        Setting.FLOW_FACTOR: tr("Flow factor"),
        Setting.PRINT_SPEED: tr("Printing speed"),
        Setting.SKEW_TERMS: tr("Squareness terms"),
        Setting.LEVEL_BED: tr("Levelling screws"),
        Setting.HEIGHT_MAP: tr("Height correction"),
        Setting.SOAK_TIME: tr("Soak time"),
        Setting.USE_INSTRUMENT: tr("Use this instrument"),
        Setting.INSTRUMENT_OUT: tr("Take it out of use"),
        Setting.NOZZLE_TEMPERATURE: tr("Nozzle temperature"),
        Setting.RETRACTION: tr("Retraction"),
        Setting.PRESSURE_LAG: tr("Pressure lag"),
        Setting.CORNERING: tr("Corner speed"),
        Setting.COOLING: tr("Cooling"),
        Setting.FIRST_LAYER_GAP: tr("First-layer gap"),
        Setting.HEIGHT_OFFSET: tr("Height offset"),
        Setting.ACCELERATION: tr("Acceleration"),
        Setting.DYNAMICS: tr("Motion, flow or cooling"),
        Setting.SETUP: tr("Geometry or setup"),
        Setting.UNDECIDED: tr("Cannot tell yet"),
    }[setting]


@dataclass(frozen=True, slots=True)
class Advice:
    """One sentence of the verdict.

    Attributes:
        setting: where the remedy belongs.
        action: what to do.
        amount: by how much, in `unit`; None where there is no number.
        because: the evidence, with its uncertainty and the readings it rests on.
        do_not_touch: settings that would hide the error instead of mending it.
    """

    setting: Setting
    action: Words
    amount: float | None
    unit: str
    because: Words
    do_not_touch: Words

    def as_json(self) -> dict[str, Any]:
        """Return plain JSON values: the sentences in English, and with their templates for another language."""
        return {
            "setting": str(self.setting),
            "action": str(self.action),
            "amount": self.amount,
            "unit": self.unit,
            "because": str(self.because),
            "do_not_touch": str(self.do_not_touch),
            SAID: {name: as_plain(getattr(self, name)) for name in ("action", "because", "do_not_touch")},
        }


def with_action(advice: Mapping[str, Any], action: str) -> dict[str, Any]:
    """Return a kept advice with another text of what to do."""
    said = {name: plain for name, plain in dict(advice.get(SAID, {})).items() if name != "action"}
    return {**advice, "action": action, SAID: said}


def without_templates(advice: Mapping[str, Any]) -> dict[str, Any]:
    """Return an advice as other programs read it."""
    return {name: value for name, value in advice.items() if name != SAID}


def basis(kinds: tuple[FeatureKind, ...]) -> Words:
    """Name the features a finding rests on: `4 × comb tooth, 3 × comb notch`."""
    counted = Counter(kinds).items()
    return side_by_side((tr("{count} × {kind}", count=n, kind=kind_words(kind)) for kind, n in counted), ", ")
