"""The fields of the page *Toolpaths*: what one trial asks, what every trial is laid with, the limits of the machine."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField, CountField, LengthField, NumberField
from app.words import shown
from core.errors import InputError

if TYPE_CHECKING:
    from core.pieces.toolpathcheck import Limits
    from core.pieces.toolpathtrials import TrialPlan

_ACROSS = 3
RELATIVE, ABSOLUTE = "relative", "absolute"
_USUAL: Mapping[str, float | str | None] = {
    "width_mm": 0.45, "height_mm": 0.2, "model": "obround", "filament_mm": 1.75, "flow_ratio": 1.0,
    "extrusion": RELATIVE, "nozzle_c": None, "bed_c": 0.0, "fan_percent": 0.0, "speed_mm_s": 40.0, "retract_mm": 1.0,
}  # fmt: skip


class NumberGrid(FieldGrid):
    """A grid whose numbers are needed."""

    def number(self, key: str) -> float:
        """Return a number.

        Raises:
            InputError: at that field.
        """
        value = self.field(key).value()
        if not isinstance(value, float | int):
            raise InputError(key, self.tr("Nothing is typed here yet; this one is needed."))
        return float(value)


class OwnGrid(NumberGrid):
    """What one trial asks."""

    def __init__(self, plan: TrialPlan) -> None:
        super().__init__(2 if len(plan.entries) > _ACROSS else _ACROSS)
        self._entries = plan.entries
        for entry in plan.entries:
            field = CountField(required=True) if entry.whole else NumberField(required=True)
            self.add(entry.key, shown(entry.label), field, entry.unit)

    def show_usual(self) -> None:
        """Show the usual values."""
        self.set_values({entry.key: int(entry.usual) if entry.whole else entry.usual for entry in self._entries})

    def numbers(self) -> dict[str, float]:
        """Return all values.

        Raises:
            InputError: at the first field that cannot be read.
        """
        return {entry.key: self.number(entry.key) for entry in self._entries}


class LayingGrid(NumberGrid):
    """What every trial is laid with."""

    def __init__(self) -> None:
        super().__init__(_ACROSS)
        models = [("obround", self.tr("obround")), ("rectangle", self.tr("rectangle"))]
        counts = [(RELATIVE, self.tr("relative")), (ABSOLUTE, self.tr("absolute"))]
        for key, label, field, unit in (
            ("width_mm", self.tr("&Width"), LengthField(required=True), "mm"),
            ("height_mm", self.tr("La&yer"), LengthField(required=True), "mm"),
            ("model", self.tr("M&odel"), ChoiceField(models), ""),
            ("filament_mm", self.tr("Fi&lament"), LengthField(required=True), "mm"),
            ("flow_ratio", self.tr("Flow factor"), NumberField(required=True, low=0.3, high=3.0), ""),
            ("extrusion", self.tr("Extrus&ion"), ChoiceField(counts), ""),
            ("nozzle_c", self.tr("&Nozzle"), NumberField(low=0.0), "°C"),
            ("bed_c", self.tr("Be&d"), NumberField(required=True, low=0.0), "°C"),
            ("fan_percent", self.tr("&Fan"), NumberField(required=True, low=0.0, high=100.0), "%"),
            ("speed_mm_s", self.tr("&Speed"), NumberField(required=True, low=1.0), "mm/s"),
            ("retract_mm", self.tr("&Retraction"), LengthField(required=True, low_mm=0.0, high_mm=15.0), "mm"),
        ):
            self.add(key, label, field, unit)
        self.field("fan_percent").set_hint(self.tr("From the second layer on."))

    def show_usual(self, known: Mapping[str, float | str]) -> None:
        """Show the usual values, and what is known over them."""
        self.set_values({**_USUAL, **known})

    def number(self, key: str) -> float:
        """Return a number: of a field out of sight the usual one, and 0 where nobody said how hot the nozzle is."""
        field = self.field(key)
        if field.isHidden() or (key == "nozzle_c" and field.value() is None):
            return float(_USUAL[key] or 0.0)
        return super().number(key)

    def choice(self, key: str) -> str:
        """Return what is chosen."""
        return str(self.field(key).value())

    def show_needed(self, plan: TrialPlan) -> None:
        """Show the fields that a trial needs."""
        for keys, seen in (
            (("nozzle_c", "filament_mm", "extrusion", "retract_mm"), plan.heats),
            (("bed_c", "fan_percent", "width_mm", "height_mm", "model", "flow_ratio"), plan.lays),
            (("speed_mm_s",), plan.lays and not plan.own_speed),
        ):
            for key in keys:
                if self.field(key).isHidden() is seen:
                    self.show_field(key, seen)


class LimitsGrid(NumberGrid):
    """What the machine can bear."""

    def __init__(self) -> None:
        super().__init__(2)
        for key, label, unit in (
            ("hot_end_c", self.tr("&Hot end up to"), "°C"),
            ("bed_limit_c", self.tr("Bed up to"), "°C"),
            ("speed_limit_mm_s", self.tr("Speed up to"), "mm/s"),
            ("rate_mm3_s", self.tr("Rate u&p to"), "mm³/s"),
        ):
            self.add(key, label, NumberField(required=True, low=1.0), unit)

    def show_limits(self, limits: Limits) -> None:
        """Show limits."""
        self.set_values({
            "hot_end_c": limits.hot_end_c, "bed_limit_c": limits.bed_c,
            "speed_limit_mm_s": limits.speed_mm_s, "rate_mm3_s": limits.rate_mm3_s,
        })  # fmt: skip

    def typed_limits(self, known: Limits) -> Limits:
        """Return the limits as typed, within the travel that is known.

        Raises:
            InputError: at that field.
        """
        return replace(
            known,
            hot_end_c=self.number("hot_end_c"),
            bed_c=self.number("bed_limit_c"),
            speed_mm_s=self.number("speed_limit_mm_s"),
            rate_mm3_s=self.number("rate_mm3_s"),
        )
