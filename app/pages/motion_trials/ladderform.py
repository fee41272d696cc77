"""The left side of the page *Ladder*: which setting, read how, from where to where, and the rows of its specimens."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import TYPE_CHECKING, Any

import numpy as np

from app.pages.motion_trials.scoreform import ScoreForm
from app.pages.motion_trials.scorerows import Row, letter_of, measured_rows, piece_of, scored_rows, specimen_row
from app.widgets.fields import ChoiceField, CountField, NumberField, TextField
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.errors import InputError

if TYPE_CHECKING:
    from core.measuring.criteria import Aim, Criterion
    from core.motion_trials.ladders import LadderKind, Read

_LONGEST_UNIT = 12  # letters
_WIDTHS = ("after faster", "steady", "after slower")


class LadderForm(ScoreForm):
    """Plans the rows of the chosen ladder; readings of another one stay and do not count.

    Attributes:
        limits: what the machine can bear, as its record says.
        now_set: what is in force of a ladder's setting, for whom it is planned; None where nothing is.
        rng: of the blind order.
    """

    def __init__(self, picker: TrialPicker) -> None:
        from core.guidance.ladderadvice import kinds_words, known_kinds

        super().__init__(picker, self.tr("Step"))
        self.kinds = known_kinds()
        self.limits: Mapping[str, Any] = {}
        self.now_set: Callable[[LadderKind], float | None] = _nothing_set
        self.rng = np.random.default_rng()
        self.ladder = ChoiceField([(key, shown(kinds_words(kind))) for key, kind in self.kinds.items()])
        self.read_by = ChoiceField(
            [
                ("score", self.tr("Scores")),
                ("widths", self.tr("Widths")),
                ("low", self.tr("Least is best")),
                ("high", self.tr("Most is best")),
            ]
        )
        self.add_setting("ladder", self.tr("&Ladder of"), self.ladder)
        self.add_setting("read", self.tr("&Read by"), self.read_by)
        self.add_setting("low", self.tr("&First step"), NumberField(required=True))
        self.add_setting("high", self.tr("La&st step"), NumberField(required=True))
        self.add_setting("steps", self.tr("Ste&ps"), CountField(low=3, high=20, required=True))
        self.add_setting("limit", self.tr("Machine up t&o"), NumberField())
        self.add_setting("in_force", self.tr("No&w set"), NumberField())
        self.purpose = ChoiceField([("looks", self.tr("Looks")), ("strength", self.tr("Strength"))])
        self.add_setting("aim", self.tr("&Goal"), self.purpose)
        self.value_unit = TextField(longest=_LONGEST_UNIT)
        self.value_unit.set_hint(self.tr("The unit of what is read of each specimen; empty for a count."))
        self.add_setting("value_unit", self.tr("&Value in"), self.value_unit)
        self.value_unit.changed.connect(self.show_columns)
        self.ladder.changed.connect(self.choose_ladder)
        for key in ("read", "low", "high", "steps", "limit"):
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
    def unit(self) -> str:
        """Unit of a value of any kind; empty for a count, and where scores or widths are read."""
        return self.value_unit.value() if self.read.is_of_any_kind else ""

    @property
    def aim(self) -> Aim:
        """What the parts are for."""
        from core.measuring.criteria import Aim

        return Aim(str(self.purpose.value()))

    @property
    def criteria(self) -> Mapping[str, Criterion]:
        """What is scored or measured of each specimen, by key; nothing where one score is given."""
        return {c.key: c for c in self.kind.criteria} if self.read_by.value() == "score" else {}

    @property
    def group(self) -> str:
        """Name under which the rows of this ladder, read this way, go."""
        return f"{self.ladder.value()}/{self.read_by.value()}"

    def scale_text(self, row: Row) -> str:
        """Return which way the scale of a row's criterion goes."""
        from core.guidance.criteriaadvice import scale_words

        found = self._criterion_of(row)
        return "" if found is None else shown(scale_words(found))

    def may_be_left_out(self, row: Row) -> bool:
        """Whether no step must meet a bound of the row's criterion."""
        found = self._criterion_of(row)
        return found is not None and not found.counts

    def _criterion_of(self, row: Row) -> Criterion | None:
        """Return by which criterion a row is scored, as it was when it was planned; None where one score is given."""
        return self.kind.criterion(str(row.get("criterion") or "")) if self.criteria else None

    def value_title(self) -> str:
        """Return the title of the column that is read."""
        value = self.tr("Value")
        titles = {"score": self.tr("Score"), "widths": self.tr("Width mm")}
        return titles.get(str(self.read_by.value()), f"{value} {self.unit}".strip())

    def plan(self, limits: Mapping[str, Any], key: str = "temperature") -> None:
        """Begin with the usual steps of a ladder."""
        self.limits = limits
        self._show_usual(key)
        self.show_rows(self.planned_or_none(0))

    def choose_ladder(self) -> None:
        """Show the usual steps of the chosen ladder, and its rows."""
        self._show_usual(str(self.ladder.value()))
        self.replan()

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings, and the units of their ladder."""
        super().show_conditions(conditions)
        self._name_units()

    def _show_usual(self, key: str) -> None:
        """Show the usual steps, about what is set now, so far down that none lies above the machine's limit."""
        from core.motion_trials.ladders import usual_range

        kind, limit = self.kinds[key], self.limits.get(self.kinds[key].limit)
        now = self.now_set(kind)
        low, high = usual_range(kind, now, float(limit) if limit else None)
        self.show_conditions(
            {"ladder": key, "read": str(kind.read), "low": low, "high": high, "steps": kind.steps, "limit": limit,
             "in_force": now, "aim": self.purpose.value(), "value_unit": self.value_unit.value()}
        )  # fmt: skip

    def _name_units(self) -> None:
        from core.guidance.ladderwords import caution_words

        if self.ladder.value() is None:
            return
        kind = self.kind
        for key, label in (
            ("low", self.tr("&First step")), ("high", self.tr("La&st step")), ("limit", self.tr("Machine up t&o")),
            ("in_force", self.tr("No&w set")),
        ):  # fmt: skip
            self.settings.set_unit(key, label, kind.unit)
        self._show_what_counts()
        self.caution.setText(shown(caution_words(kind)))
        self._say_how()

    def replan(self) -> None:
        """Plan the rows anew."""
        self._show_what_counts()
        super().replan()

    def _show_what_counts(self) -> None:
        """Ask what the parts are for where criteria are scored, and for a unit where a value of any kind is read."""
        self.reads_instrument = self.read_by.value() == "widths"
        self.settings.show_fields({"aim": bool(self.criteria), "value_unit": self.read.is_of_any_kind})

    def show_columns(self) -> None:
        """Hide the steps, or show them with the order in which they are printed."""
        super().show_columns()
        if self.ladder.value() is not None:
            self._say_how()

    def planned(self, first: int) -> Sequence[Mapping[str, Any]]:
        """Return the rows of one set of specimens; `first` letters are taken."""
        from core.measuring.ladder import blind_order, plan_steps
        from core.motion_trials.ladders import Read, check_plan

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
        check_plan(kind, steps, self.optional("limit"))
        if self.read is Read.SCORE:
            return self._scored(steps, blind_order(len(steps), self.rng), first)
        if self.read is Read.WIDTHS:
            return [
                specimen_row(f"{letter_of(first + place)}, {where}", step, self.group)
                for place, step in enumerate(steps)
                for where in _WIDTHS
            ]
        return [specimen_row(letter_of(first + place), step, self.group) for place, step in enumerate(steps)]

    def _scored(self, steps: Sequence[float], order: Sequence[int], first: int) -> list[dict[str, Any]]:
        """Return the rows of scores, then those of what is measured beside them."""
        from core.guidance.criteriaadvice import criterion_words

        named = {c: (key, str(criterion_words(c))) for key, c in self.criteria.items()}
        rows = scored_rows(steps, order, first, self.group, [name for c, name in named.items() if not c.unit])
        for criterion, (key, name) in named.items():
            if criterion.unit:
                rows += measured_rows(steps, order, first, self.group, (key, f"{name} {criterion.unit}"))
        return rows

    def _say_how(self) -> None:
        """Say what to print and look at; who has the steps in sight also in which order."""
        from core.guidance.ladderwords import how_words

        says = shown(how_words(self.kind, self.read))
        own = [row for row in self.model.rows() if row["axis"] == self.group]
        in_sight = self.key_button.isChecked() or (own and not any(row.get("judge") for row in own))
        if in_sight and self.kind.key == "temperature":
            marks = {piece_of(row): row["step"] for row in own if row.get("step") is not None}  # not of pasted rows
            order = sorted(marks, key=lambda mark: -marks[mark])
            steps = ", ".join(f"{marks[mark]:g} {mark}" for mark in order)
            says = self.tr("{how} Print: {steps}.").format(how=says, steps=steps)
        self.how.setText(says)


def _nothing_set(_kind: LadderKind) -> None:
    """Say that nothing is in force: the form by itself does not know."""
