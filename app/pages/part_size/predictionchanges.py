"""The fields of the page *Prediction* for what is changed before the next piece; each trial keeps its own changes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.context import Context
from app.widgets.fields import NumberField
from core.records.rows import Trial
from core.words import Words, tr

if TYPE_CHECKING:
    from core.part_size.prediction import Changes

_OFFSET_PLACES, _FACTOR_PLACES = 4, 6


class ChangeFields:
    """They begin with what was put in force since the piece of a trial, else with what was tried on Whose error.

    What is typed over that stays.
    """

    def __init__(self) -> None:
        self.offset_mm = NumberField(low=-1.0, high=1.0)
        self.factor_x, self.factor_y = NumberField(low=0.9, high=1.1), NumberField(low=0.9, high=1.1)
        self._key = 0  # of the trial whose changes are in sight
        self._begun: dict[int, Changes] = {}
        self._typed: dict[int, Changes] = {}
        self._of_trying: set[int] = set()  # trials whose changes began with what was tried
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
            since = changed_since(context.store.settings(source.machine_id), source)
            self._show(since)
            self._of_trying.discard(key)
            if not _changes_something(self.values()) and key in context.tried:
                self._show(context.tried[key])
                self._of_trying.add(key)
            self._begun[key] = self.values()
        elif key != self._key:
            self._show(wanted)
        self._key = key

    def taken(self) -> Words | None:
        """Say where the changes in the fields come from; None where there is none, or they are typed here."""
        values = self.values()
        if not _changes_something(values) or values != self._begun.get(self._key):
            return None
        if self._key in self._of_trying:
            return tr(
                "Offset and factors are what you tried on the page Whose error; nothing was put in force since that "
                "trial."
            )
        return tr("Offset and factors are what was put in force since that trial; type over them what else changes.")

    def _show(self, changes: Changes) -> None:
        self.offset_mm.set_value(round(changes.offset_mm, _OFFSET_PLACES))
        for field, axis in ((self.factor_x, "x"), (self.factor_y, "y")):
            field.set_value(round(changes.factor_ratio.get(axis, 1.0), _FACTOR_PLACES))


def _changes_something(changes: Changes) -> bool:
    return changes.offset_mm != 0.0 or any(factor != 1.0 for factor in changes.factor_ratio.values())
