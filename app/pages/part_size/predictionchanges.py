"""The fields of the page *Prediction* for what is changed before the next piece; each trial keeps its own changes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.context import Context
from app.widgets.fields import NumberField
from core.records.rows import Trial

if TYPE_CHECKING:
    from core.part_size.prediction import Changes

_OFFSET_PLACES, _FACTOR_PLACES = 4, 6


class ChangeFields:
    """They begin with what was put in force since the piece of a trial; what is typed over that stays."""

    def __init__(self) -> None:
        self.offset_mm = NumberField(low=-1.0, high=1.0)
        self.factor_x, self.factor_y = NumberField(low=0.9, high=1.1), NumberField(low=0.9, high=1.1)
        self._key = 0  # of the trial whose changes are in sight
        self._begun: dict[int, Changes] = {}
        self._typed: dict[int, Changes] = {}
        for field, value in zip(self.fields(), (0.0, 1.0, 1.0), strict=True):
            field.set_value(value)

    def fields(self) -> tuple[NumberField, NumberField, NumberField]:
        """Return offset and factors in their order."""
        return self.offset_mm, self.factor_x, self.factor_y

    def values(self) -> Changes:
        """Return what is in the fields; InputError for a number that cannot be."""
        from core.part_size.prediction import Changes  # the window opens before the mathematics is needed

        factors = {"x": float(self.factor_x.value() or 1.0), "y": float(self.factor_y.value() or 1.0)}
        return Changes(float(self.offset_mm.value() or 0.0), factors)

    def begin(self, context: Context, source: Trial) -> None:
        """Show the changes of the trial to predict from.

        Raises:
            InputError: a number in sight that cannot be.
            StoreError: the settings in force cannot be read.
        """
        from core.guidance.changedsince import changed_since

        self._typed[self._key] = self.values()
        key = source.id or 0
        wanted = self._typed.get(key)
        if wanted is None or wanted == self._begun.get(key):
            self._show(changed_since(context.store.settings(source.machine_id), source))
            self._begun[key] = self.values()
        elif key != self._key:
            self._show(wanted)
        self._key = key

    def as_in_force(self) -> bool:
        """Whether the fields hold what was put in force since the trial, and that is a change."""
        values = self.values()
        changed = values.offset_mm != 0.0 or any(factor != 1.0 for factor in values.factor_ratio.values())
        return changed and values == self._begun.get(self._key)

    def _show(self, changes: Changes) -> None:
        self.offset_mm.set_value(round(changes.offset_mm, _OFFSET_PLACES))
        for field, axis in ((self.factor_x, "x"), (self.factor_y, "y")):
            field.set_value(round(changes.factor_ratio.get(axis, 1.0), _FACTOR_PLACES))
