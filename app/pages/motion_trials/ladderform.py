"""The left side of the page *Ladder*: which setting, read how, from where to where, and the rows of its specimens."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

import numpy as np

from app.pages.motion_trials.scoreform import ScoreForm, letter_of, scored_rows, specimen_row
from app.widgets.fields import ChoiceField, CountField, NumberField
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.errors import InputError
from core.words import tr

if TYPE_CHECKING:
    from core.motion_trials.ladders import LadderKind, Read

_CHOICE_LETTERS = 10  # in sight in a small window
_WIDTHS = (tr("after faster"), tr("steady"), tr("after slower"))


class LadderForm(ScoreForm):
    """Plans the rows of the chosen ladder; readings of another one stay and do not count.

    Attributes:
        limits: what the machine can bear, as its record says.
        rng: of the blind order.
    """

    def __init__(self, picker: TrialPicker) -> None:
        from core.guidance.ladderadvice import kinds_words, known_kinds

        super().__init__(picker, self.tr("Step"))
        self.kinds = known_kinds()
        self.limits: Mapping[str, Any] = {}
        self.rng = np.random.default_rng()
        self.ladder = ChoiceField([(key, shown(kinds_words(kind))) for key, kind in self.kinds.items()])
        self.read_by = ChoiceField(
            [
                ("score", self.tr("Scores")),
                ("widths", self.tr("Widths")),
                ("low", self.tr("Least of")),
                ("high", self.tr("Most of")),
            ]
        )
        self.add_setting("ladder", self.tr("&Ladder of"), self.ladder)
        self.add_setting("read", self.tr("&Read by"), self.read_by)
        self.add_setting("low", self.tr("&First step"), NumberField(required=True))
        self.add_setting("high", self.tr("La&st step"), NumberField(required=True))
        self.add_setting("steps", self.tr("Ste&ps"), CountField(low=3, high=20, required=True))
        self.add_setting("limit", self.tr("Machine up t&o"), NumberField())
        self.add_setting("in_force", self.tr("No&w set"), NumberField())
        for field in (self.ladder, self.read_by):
            field.setMinimumContentsLength(_CHOICE_LETTERS)
        self.ladder.changed.connect(self.choose_ladder)
        for key in ("read", "low", "high", "steps"):
            self.settings.field(key).changed.connect(self.replan)

    @property
    def kind(self) -> LadderKind:
        """The chosen ladder."""
        return self.kinds[str(self.ladder.value())]

    @property
    def read(self) -> Read:
        """How it is read."""
        from core.motion_trials.ladders import Read

        return Read(str(self.read_by.value()))

    @property
    def group(self) -> str:
        """Name under which the rows of this ladder, read this way, go."""
        return f"{self.ladder.value()}/{self.read_by.value()}"

    def value_title(self) -> str:
        """Return the title of the column that is read."""
        return {"score": self.tr("Score"), "widths": self.tr("Width mm")}.get(
            str(self.read_by.value()), self.tr("Value")
        )

    def plan(self, limits: Mapping[str, Any], key: str = "temperature") -> None:
        """Begin with the usual steps of a ladder."""
        self.limits = limits
        self._show_usual(key)
        self.show_rows(self.planned(0))

    def choose_ladder(self) -> None:
        """Show the usual steps of the chosen ladder, and its rows."""
        self._show_usual(str(self.ladder.value()))
        self.replan()

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings, and the units of their ladder."""
        super().show_conditions(conditions)
        self._name_units()

    def _show_usual(self, key: str) -> None:
        kind = self.kinds[key]
        self.show_conditions(
            {"ladder": key, "read": str(kind.read), "low": kind.low, "high": kind.high, "steps": kind.steps,
             "limit": self.limits.get(kind.limit)}
        )  # fmt: skip

    def _name_units(self) -> None:
        from core.guidance.ladderadvice import caution_words, how_words

        if self.ladder.value() is None:
            return
        kind = self.kind
        for key, label in (
            ("low", self.tr("&First step")), ("high", self.tr("La&st step")), ("limit", self.tr("Machine up t&o")),
            ("in_force", self.tr("No&w set")),
        ):  # fmt: skip
            self.settings.set_unit(key, label, kind.unit)
        self.caution.setText(shown(caution_words(kind)))
        self.how.setText(shown(how_words(kind)))

    def planned(self, first: int) -> Sequence[Mapping[str, Any]]:
        """Return the rows of one set of specimens; `first` letters are taken."""
        from core.measuring.ladder import blind_order, plan_steps
        from core.motion_trials.ladders import Read

        kind = self.kind
        try:
            steps = [
                float(f"{step:.4g}")
                for step in plan_steps(
                    self.number("low"), self.number("high"), int(self.number("steps")), geometric=kind.geometric
                )
            ]
        except InputError as error:
            raise InputError({"count": "steps"}.get(error.field, error.field), error.message) from error
        if self.read is Read.SCORE:
            return scored_rows(steps, blind_order(len(steps), self.rng), first, self.group)
        if self.read is Read.WIDTHS:
            return [
                specimen_row(f"{letter_of(first + place)}, {shown(where)}", step, self.group)
                for place, step in enumerate(steps)
                for where in _WIDTHS
            ]
        return [specimen_row(letter_of(first + place), step, self.group) for place, step in enumerate(steps)]
