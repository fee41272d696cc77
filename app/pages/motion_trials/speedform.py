"""The left side of the page *Speed*: five levels of speed or acceleration, or the four runs of half speed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

import numpy as np
from PySide6.QtWidgets import QPushButton

from app.pages.motion_trials.scoreform import ScoreForm
from app.pages.motion_trials.scorerows import JUDGES, letter_of, scored_rows, specimen_row
from app.widgets.fields import ChoiceField, LengthField, NumberField
from app.widgets.trialpicker import TrialPicker
from core.errors import InputError

if TYPE_CHECKING:
    from core.motion_trials.gcodetime import Limits
    from core.motion_trials.layertime import LayerRule
    from core.records.rows import Trial

HALF, SPEED, ACCELERATION = "half", "speed", "acceleration"
_COLUMN_PX = 128
_ROWS_IN_SIGHT = 2  # in the smallest window: the many settings leave no room for more
_UNIT = {SPEED: "mm/s", ACCELERATION: "mm/s²"}
_USUAL: dict[str, dict[str, Any]] = {
    SPEED: {"low": 40.0, "high": 160.0, "other": 1500.0},
    ACCELERATION: {"low": 500.0, "high": 4000.0, "other": 80.0},
}
_DEFAULTS: dict[str, Any] = {"method": SPEED, "asked_score": 3.0, "corner_mm": 0.02, "straight_mm": 15.0}
_LEVEL_FIELDS = (
    "low", "high", "limit", "asked_score", "other", "corner_mm", "straight_mm", "least_layer_s", "layer_mm",
)  # fmt: skip


class SpeedForm(ScoreForm):
    """Plans the rows of the chosen way; readings of the other way stay and do not count.

    Attributes:
        limits: what the machine can bear, as its record says.
        known_limits: up to where the machine goes, as a kept trial says, by what was tried.
        crossed_belts: whether two motors move its X and Y together.
        file_button: chooses a file whose time counts.
    """

    def __init__(self, picker: TrialPicker) -> None:
        super().__init__(picker, self.tr("Level"))
        self.limits: Mapping[str, Any] = {}
        self.known_limits: Mapping[str, float] = {}
        self.crossed_belts = False
        self.rng = np.random.default_rng()
        self.method = ChoiceField(
            [
                (SPEED, self.tr("Speed")),
                (ACCELERATION, self.tr("Acceleration")),
                (HALF, self.tr("Half speed")),
            ]
        )
        self.add_setting("method", self.tr("Tr&y"), self.method)
        self.add_setting("low", self.tr("&Slowest"), NumberField(required=True, low=0.1))
        self.add_setting("high", self.tr("&Fastest"), NumberField(required=True, low=0.1))
        self.add_setting("limit", self.tr("Machine up t&o"), NumberField(low=0.1))
        self.add_setting("asked_score", self.tr("Score as&ked"), NumberField(required=True, low=0.0, high=4.0))
        self.add_setting("other", self.tr("Accele&ration"), NumberField(required=True, low=0.1))
        self.add_setting("corner_mm", self.tr("&Corner within"), LengthField(required=True), self.tr("mm"))
        self.add_setting("straight_mm", self.tr("Usual strai&ght"), LengthField(required=True), self.tr("mm"))
        self.add_setting("least_layer_s", self.tr("Layer at least"), NumberField(), self.tr("s"))
        self.add_setting("layer_mm", self.tr("&Path of a layer"), LengthField(), self.tr("mm"))
        for key in ("other", "limit", "asked_score"):  # no label in its column needs a second line
            self.settings.field(key).setMinimumWidth(_COLUMN_PX)
        self.table.setMinimumHeight(_ROWS_IN_SIGHT * self.table.verticalHeader().defaultSectionSize())
        self.caution.setText(
            self.tr(
                "Caution: fast moves start without warning. Hands, hair, cables out of the travel, hand on the "
                "switch, stop at the first lost step. Hot nozzle; local rules come first."
            )
        )
        self.file_button = QPushButton(self.tr("Time a fi&le…"))
        self.foot.addWidget(self.file_button)
        self.method.changed.connect(self._choose_method)
        for key in ("low", "high", "limit"):
            self.settings.field(key).changed.connect(self.replan)

    @property
    def group(self) -> str:
        """Name under which the rows of this way go."""
        return str(self.method.value())

    @property
    def is_secret(self) -> bool:
        """Whether who scores must not see the steps; the runs of half speed need no secret."""
        return self.group != HALF

    def plan(self, limits: Mapping[str, Any]) -> None:
        """Begin with five levels of speed."""
        self.limits = limits
        self.show_conditions(_DEFAULTS | self._usual(SPEED))
        self.show_rows(self.planned_or_none(0))

    def learn(self, kept: Sequence[Trial]) -> None:
        """Remember up to where the machine goes, as its kept trials say, the newest first."""
        said = [(str(trial.conditions.get("method")), trial.conditions.get("limit")) for trial in reversed(kept)]
        self.known_limits = {of: float(limit) for of, limit in said if limit}

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings with the units of their levels."""
        super().show_conditions(conditions)
        self._name_units()

    def motion_limits(self) -> Limits:
        """Return what the time model holds the path against: acceleration, corner, and the axes of the machine."""
        from core.motion_trials.gcodetime import Limits

        acceleration = self.number("other") if self.group == SPEED else self.number("high")
        speeds, ramps = (
            {axis: float(v) for axis, v in dict(self.limits.get(key) or {}).items() if v}
            for key in ("max_speed_mm_s", "max_acceleration_mm_s2")
        )
        return Limits(acceleration, self.number("corner_mm"), speeds, ramps, crossed_belts=self.crossed_belts)

    def layer_rule(self, has_file: bool) -> LayerRule | None:
        """Return the least layer time; a file tells its layers itself, without one the shortest layer is typed.

        Raises:
            InputError: at a field that cannot be read, or `layer_mm` where it is needed.
        """
        from core.motion_trials.layertime import LayerRule

        least = self.settings.field("least_layer_s").value()
        if least is None:
            return None
        if has_file:
            return LayerRule(float(least))
        path = self.settings.field("layer_mm").value()
        if path is None:
            says = self.tr("Type the length of all lines of the shortest layer, or time a file: it tells its layers.")
            raise InputError("layer_mm", says)
        return LayerRule(float(least), float(path))

    def replan(self) -> None:
        """Plan the rows anew, and name the settings of the chosen way."""
        self._name_units()
        super().replan()

    def _choose_method(self) -> None:
        if self.group != HALF:
            self.show_conditions(self.conditions() | self._usual(self.group))
        self.replan()

    def _usual(self, of: str) -> dict[str, Any]:
        """Return the usual range of the levels, within what X and Y of the machine can do, or could when last tried."""
        key = {SPEED: "max_speed_mm_s", ACCELERATION: "max_acceleration_mm_s2"}[of]
        own = dict(self.limits.get(key) or {})
        both = [float(own[axis]) for axis in ("x", "y") if own.get(axis)]
        limit = min(both) if both else self.known_limits.get(of)
        usual = dict(_USUAL[of])
        if limit is not None and limit < usual["high"]:
            usual |= {"low": limit / 4, "high": limit}
        return {**usual, "limit": limit}

    def _name_units(self) -> None:
        half = self.group == HALF
        for key in _LEVEL_FIELDS:
            self.settings.show_field(key, not half)
        self.file_button.setVisible(not half)
        self.how.setText(
            self.tr(
                "The same part: as usual; at half speed and half acceleration; at full speed with half the layer "
                "height; at full speed with a second copy on the bed. Score the defect: 4 none."
            )
            if half
            else self.tr(
                "Corners, a raised letter, a hole for each level, nothing else changed. Home before and after: a "
                "shift fails the level."
            )
        )
        of = SPEED if half else self.group
        for key, label in (
            ("low", self.tr("&Slowest")), ("high", self.tr("&Fastest")), ("limit", self.tr("Machine up t&o")),
        ):  # fmt: skip
            self.settings.set_unit(key, label, _UNIT[of])
        other = (self.tr("Accele&ration"), _UNIT[ACCELERATION]) if of == SPEED else (self.tr("Spee&d"), _UNIT[SPEED])
        self.settings.set_unit("other", *other)

    def planned(self, first: int) -> Sequence[Mapping[str, Any]]:
        """Return the rows of one set of specimens; `first` letters are taken."""
        from core.guidance.motionadvice import check_levels
        from core.measuring.ladder import blind_order, plan_steps
        from core.motion_trials.speed import LEVELS as COUNT

        if self.group == HALF:
            return self._runs(first)
        steps = [float(f"{v:.3g}") for v in plan_steps(self.number("low"), self.number("high"), COUNT, geometric=True)]
        try:
            check_levels(self.group, steps, self.optional("limit"))
        except InputError as error:
            raise InputError("high", error.message) from error
        return scored_rows(steps, blind_order(COUNT, self.rng), first, self.group)

    def _runs(self, first: int) -> list[dict[str, Any]]:
        """Return the rows of the four runs, each named: who scores sees the defect, and needs no secret."""
        from core.guidance.halfspeedadvice import short_run_words
        from core.motion_trials.halfspeed import Run

        piece = letter_of(first // len(Run))
        return [
            specimen_row(f"{piece} {short_run_words(run)}, judge {judge}", float(number), HALF, judge)
            for judge in JUDGES
            for number, run in enumerate(Run)
        ]
