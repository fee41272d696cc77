"""The parts held against the real machine: a value found in its controller, and a length that came out wrong."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtWidgets import QWidget

from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField, LengthField, NumberField, Value
from app.widgets.findingscard import FindingsCard
from app.words import shown
from core.machine_geometry.foundsteps import FoundSteps
from core.machine_geometry.mixup import Mixup, MixupSearch

_PERCENT = 100.0
PRINTED, TRAVELLED = "printed", "travelled"
_USUAL: dict[str, Value] = {
    "U_measured_mm": 0.5,
    "measured_on": TRAVELLED,
    "shrink_percent": 1.0,
}  # rule; usual filaments; no source


@dataclass(frozen=True, slots=True)
class Entries:
    """What was typed; None where a field is empty. The shrinkage is 0 for a measured travel."""

    found_steps_mm: float | None
    commanded_mm: float | None
    measured_mm: float | None
    U_measured_mm: float
    shrink_ratio: float


class MixupCard(FindingsCard):
    """Asks for the value found and for commanded and measured length; shows what they come to."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        caution = self.tr(
            "Caution: axes start without warning. Nothing in the travel, lowest speed, off switch at hand."
        )
        self.lay_out(caution, self._make_form(), self.tr("Result of the mix-up finder"))
        self.clear()
        self.form.changed.connect(self.show_own_fields)

    def clear(self) -> None:
        """Empty the entries, but for what is usual."""
        self.form.set_values({"found_steps_mm": None, "commanded_mm": None, "measured_mm": None, **_USUAL})
        self.show_own_fields()
        self.show_findings(None, (), None)

    def entries(self) -> Entries:
        """Return the entries, or raise InputError at the first that cannot be read."""
        values = {key: value if isinstance(value, float) else None for key, value in self.form.values().items()}
        return Entries(
            found_steps_mm=values["found_steps_mm"],
            commanded_mm=values["commanded_mm"],
            measured_mm=values["measured_mm"],
            U_measured_mm=values["U_measured_mm"] or 0.0,
            shrink_ratio=(values.get("shrink_percent") or 0.0) / _PERCENT,
        )

    def show_findings(self, found: FoundSteps | None, behind: Sequence[Mixup], search: MixupSearch | None) -> None:
        """Show what the found value does, which parts would give it, and which wrong parts give the measured length."""
        lines = [(self.tr("In controller:"), shown(found.says))] if found else []
        lines += [("•", shown(hit.says)) for hit in behind]
        if search is not None:
            lines.append((self.tr("Measured:"), shown(search.says)))
            lines += [
                (f"{place}.", f"{shown(hit.says)} ({100 * hit.share:.0f} %)")
                for place, hit in enumerate(search.hits, 1)
            ]
        if lines:
            self.show_lines(lines)
        else:
            self.say(
                self.tr(
                    "Type the value found, or command a long travel and measure it: the wrong part that explains it is "
                    "named."
                )
            )

    def say(self, text: str) -> None:
        """Show other words in the place of the findings."""
        self.show_lines([("", text)])

    def show_own_fields(self) -> None:
        """Ask for the shrinkage where a printed part was measured."""
        self.form.show_field("shrink_percent", self.form.field("measured_on").value() == PRINTED)

    def _make_form(self) -> FieldGrid:
        form = FieldGrid(3)
        form.add("found_steps_mm", self.tr("In controller"), NumberField(), self.tr("steps/mm"))
        form.add("commanded_mm", self.tr("Commanded"), LengthField(), "mm")
        form.add("measured_mm", self.tr("Measured"), LengthField(), "mm")
        how = [(TRAVELLED, self.tr("travel")), (PRINTED, self.tr("printed part"))]
        form.add("measured_on", self.tr("Measured on"), ChoiceField(how))
        form.add("U_measured_mm", self.tr("Reading ±"), LengthField(), "mm")
        form.add("shrink_percent", self.tr("Shrinks up to"), NumberField(low=0.0), "%")
        return form
