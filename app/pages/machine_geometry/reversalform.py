"""The left side of the page *Reversal*: axis, way and dial, the next move in words, and the rows of each way."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from app.pages.machine_geometry.reversalplan import (
    CURVE,
    DOWN,
    FULL,
    PUSH,
    PUSHED,
    QUICK,
    REST,
    SIDEWAYS,
    STEP_MM,
    UP,
    USUAL_TRAVEL_MM,
    planned_row,
    planned_rows,
    reversal_columns,
)
from app.units import inches_for
from app.widgets.fields import ChoiceField, LengthField, NumberField, number_text
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker

_FORCE: dict[str, Any] = {"push_n": 10.0, "push_limit_n": 0.5}
_FIRST: dict[str, Any] = {"axis": "x", "method": QUICK, "resolution_mm": 0.01}
Row = Mapping[str, Any]


class ReversalForm(TrialForm):
    """A trial form that plans the rows of the chosen way; readings of another way stay and do not count."""

    def __init__(self, picker: TrialPicker) -> None:
        self.next_move, self.caution = QLabel(), QLabel()
        self.caution.setText(
            self.tr("Caution: axes start without warning; lowest speed, hands off. Remove the indicator before homing.")
        )
        self.caution.setObjectName("question")
        for label in (self.next_move, self.caution):
            label.setWordWrap(True)
        super().__init__(reversal_columns(), picker, above_entry=_below_each_other(self.caution, self.next_move))
        self.travel_mm: Mapping[str, float] = {}
        self.axis = ChoiceField([("x", "X"), ("y", "Y"), ("z", "Z")])
        self.method = ChoiceField(
            [
                (QUICK, self.tr("Quick cycle")),
                (FULL, self.tr("Full cycle, ISO 230-2")),
                (CURVE, self.tr("Lost-motion curve")),
                (PUSH, self.tr("Push, for stiffness")),
            ]
        )
        self.resolution = LengthField(required=True, low_mm=0.0, inch=inches_for("reversal"))
        self.add_setting("axis", self.tr("Ax&is"), self.axis)
        self.add_setting("method", self.tr("Read &by"), self.method)
        self.add_setting("resolution_mm", self.tr("&Dial reads to"), self.resolution, self.tr("mm"))
        self.push, self.push_limit = NumberField(required=True), NumberField(required=True)
        self.add_setting("push_n", self.tr("Push &with"), self.push, self.tr("N"))
        self.add_setting("push_limit_n", self.tr("&Scale true to ±"), self.push_limit, self.tr("N"))
        self.add_button = QPushButton(self.tr("Add a &reading"))
        self.foot.addWidget(self.add_button)
        self.method.changed.connect(self._plan_anew)
        self.axis.changed.connect(self._plan_if_empty)
        self.add_button.clicked.connect(self._add_reading)
        self.entry.row_changed.connect(self._say_move)

    def plan(self, resolution_mm: float) -> None:
        """Begin with the quick cycle of X."""
        self.show_conditions(_FIRST | {"resolution_mm": resolution_mm})
        self.show_rows(self._planned())

    def conditions(self) -> dict[str, Any]:
        """Return the settings to be stored; a force belongs to pushes alone."""
        found = super().conditions()
        return found if self.method.value() == PUSH else {k: v for k, v in found.items() if k not in _FORCE}

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings, the usual force where none is."""
        super().show_conditions({**_FORCE, **conditions})
        self._show_force()

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Show other rows, and the columns of their way."""
        super().show_rows(rows)
        self._show_columns()

    def belongs(self, row: Row) -> bool:
        """Whether a row is of the chosen way."""
        with_target = row["nominal_mm"] is not None
        pushed = row["axis"] in (REST, PUSHED)
        return {
            PUSH: pushed,
            QUICK: bool(row["axis"]) and not with_target and not pushed,
            FULL: bool(row["axis"]) and with_target,
            CURVE: not row["axis"] and with_target,
        }[str(self.method.value())]

    def _planned(self) -> list[dict[str, Any]]:
        axis = str(self.axis.value())
        return planned_rows(str(self.method.value()), axis, self.travel_mm.get(axis, USUAL_TRAVEL_MM))

    def _plan_anew(self) -> None:
        """Plan the rows of another way; readings that are in stay, those of this way above."""
        taken = [row for row in self.model.rows() if row["raw"] or row["excluded"]]
        own = [row for row in taken if self.belongs(row)]
        others = [row for row in taken if not self.belongs(row)]
        self.model.replan([*own, *([] if own else self._planned()), *others])
        self._show_columns()
        self.entry.go_to(self.model.next_empty(self.model.rowCount() - 1) or 0)

    def _plan_if_empty(self) -> None:
        """Name the places of another axis while nothing is read."""
        if not any(row["raw"] or row["excluded"] for row in self.model.rows()):
            self.model.replan(self._planned())
            self.entry.go_to(0)
        self._say_move(self.entry.current_row())

    def _show_columns(self) -> None:
        self._show_force()
        hidden = {QUICK: ("nominal_mm",), FULL: (), CURVE: ("axis",), PUSH: ("nominal_mm",)}[str(self.method.value())]
        for place, column in enumerate(self.model.columns):
            self.table.setColumnHidden(place, column.key in hidden)
        self._say_move(self.entry.current_row())

    def _add_reading(self) -> None:
        """Add a row like the last one, from the other side."""
        own = [place for place, row in enumerate(self.model.rows()) if self.belongs(row)]
        last = self.model.values(own[-1]) if own else planned_row("", UP)
        other = {UP: DOWN, DOWN: UP, REST: PUSHED, PUSHED: REST}.get(last["axis"], "")
        place = own[-1] + 1 if own else self.model.rowCount()
        target = last["nominal_mm"] + STEP_MM if self.method.value() == CURVE and own else last["nominal_mm"]
        self.model.insert_row(place, planned_row(last["feature"], other, target) | {"kind": last["kind"]})
        self.table.edit_cell(place, "measured_mm")

    def _show_force(self) -> None:
        for key in _FORCE:
            self.settings.show_field(key, self.method.value() == PUSH)

    def _say_move(self, row: int) -> None:
        """Say the move before the next reading."""
        values = self.model.values(row) if 0 <= row < self.model.rowCount() else None
        self.next_move.setText("" if values is None else self._move_text(values))

    def _move_text(self, row: Row) -> str:
        axis = str(self.axis.value()).upper()
        if row["axis"] in (UP, DOWN):
            sign, side = ("+", "−") if row["axis"] == UP else ("−", "+")
            return self.tr("Come from {side}: move {axis} towards {sign} by 2 mm or more, stop at the target.").format(
                side=side, axis=axis, sign=sign
            )
        if row["axis"] in (REST, PUSHED):
            way = self.tr("sideways to {axis}") if row["kind"] == SIDEWAYS else self.tr("along {axis}")
            if row["axis"] == REST:
                says = self.tr("Motors hold, no program runs: push {way} once, let go, read at rest.")
            else:
                says = self.tr("Push {way} again, the same way; hold the force and read.")
            return says.format(way=way.format(axis=axis))
        if row["nominal_mm"] == 0:
            return self.tr("Move {axis} one way by 2 mm, stop, read; then step back the other way.").format(axis=axis)
        return self.tr("Step {axis} on, all steps one way: {sum} mm since the turn.").format(
            axis=axis, sum=number_text(row["nominal_mm"] or 0.0, 4)
        )


def _below_each_other(*widgets: QWidget) -> QWidget:
    both = QWidget()
    column = QVBoxLayout(both)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(4)
    for widget in widgets:
        column.addWidget(widget)
    return both
