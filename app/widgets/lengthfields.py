"""Fields for lengths: typed in mm or inch, shown in the unit that the page prefers; their value is in mm."""

from __future__ import annotations

import math
import re

from PySide6.QtWidgets import QWidget

from app.units import inch_digits, with_unit
from app.widgets.linefields import NumberField, Value, local_text, number_text
from core.errors import InputError
from core.quantity import length_from_text


class LengthField(NumberField):
    """A length in mm; inch and fractions of an inch are read and shown in mm. Limits in mm.

    With `inch` it is shown in inch and a number without a unit is inch; a value set by the program stays what it was in
    mm until another text is typed.
    """

    def __init__(
        self, *, low_mm: float | None = None, high_mm: float | None = None, required: bool = False,
        inch: bool = False, parent: QWidget | None = None,
    ) -> None:
        super().__init__(low=low_mm, high=high_mm, required=required, parent=parent)
        self.inch = inch
        self._meant = "", ""  # a text as shown in inch, and the one it stands for

    def mm(self) -> float | None:
        """Return the length in mm, or None where an optional field is empty."""
        return self.value()

    def set_mm(self, length_mm: float | None) -> None:
        """Show a length given in mm."""
        self.set_value(length_mm)

    def show_text(self, text: str) -> None:
        """Show a text as it was typed before, a length in inch where this field shows inch."""
        try:
            super().show_text(self._in_inch(text) if self.inch and text.strip() else text)
        except InputError:
            super().show_text(text)

    def kept_text(self) -> str:
        """Return the text as it reads whatever unit is preferred later."""
        return self._with_unit(self.text().strip()) if self.inch else self.text()

    def read(self, text: str) -> float:
        """Read a length with comma or point, in mm or inch."""
        return self.limited(length_from_text(self._with_unit(text), self.key).mm)

    def write(self, value: Value) -> str:
        """Show a length given in mm."""
        if not self.inch:
            return super().write(value)
        return self._in_inch(f"{float(value or 0.0):.9f}".rstrip("0"))

    def finished_text(self, text: str) -> str:
        """Show millimetres, or inches; what was typed in the other unit stays in the tool tip."""
        length = length_from_text(self._with_unit(text), self.key)
        converted = (length.unit == "in") != self.inch or math.isnan(length.step_mm)
        self.setToolTip(self.tr("typed as {text}").format(text=text) if converted else self._hint)
        if self.inch:
            return text if text == self._meant[0] else self._in_inch(self._with_unit(text))
        if length.unit == "in":
            return number_text(length.mm)
        return super().finished_text(re.sub(r"\s*mm$", "", text, flags=re.IGNORECASE))

    def _with_unit(self, text: str) -> str:
        """Return what a text stands for: of its own unit where it has none, or exactly what was shown as it."""
        if not self.inch:
            return text
        return self._meant[1] if text == self._meant[0] else with_unit(text)

    def _in_inch(self, text: str) -> str:
        """Return how a text with its own unit, or in mm, is shown here, and remember what it stands for."""
        length = length_from_text(text, self.key)
        if length.unit == "in" and not math.isnan(length.step_mm):
            says = local_text(re.sub(r"[^0-9.,+\-−]", "", text).replace(",", "."))
        else:
            says = local_text(inch_digits(length.mm))
        self._meant = says, text
        return says

    def _limit_message(self, template: str, value: float, limit: float) -> str:
        value_text, limit_text = (
            f"{local_text(inch_digits(mm))} in" if self.inch else f"{number_text(mm)} mm" for mm in (value, limit)
        )
        return template.format(value=value_text, limit=limit_text)


class GaugeField(LengthField):
    """A number in the unit of an instrument; where that is a length it can be shown and typed in inch."""

    def read(self, text: str) -> float:
        """Read a number, or a length where this field shows inch."""
        return super().read(text) if self.inch else NumberField.read(self, text)

    def finished_text(self, text: str) -> str:
        """Keep the digits as typed."""
        return super().finished_text(text) if self.inch else NumberField.finished_text(self, text)

    def _limit_message(self, template: str, value: float, limit: float) -> str:
        if self.inch:
            return super()._limit_message(template, value, limit)
        return NumberField._limit_message(self, template, value, limit)
