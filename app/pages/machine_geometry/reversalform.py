"""The left side of the page *Reversal*: axis, way and dial, the next move in words, and the rows of each way."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from app.widgets.fields import ChoiceField, LengthField, number_text
from app.widgets.reading_rows import Column
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.words import tr

QUICK, FULL, CURVE = "quick", "full", "curve"
UP, DOWN = "up", "down"
_FIRST: dict[str, Any] = {"axis": "x", "method": QUICK, "resolution_mm": 0.01}
_PAIRS, _CYCLES, _STEPS, _STEP_MM = 5, 5, 20, 0.01
_TARGETS = (0.1, 0.31, 0.48, 0.72, 0.9)  # shares of the travel, uneven so that nothing periodic hides
_USUAL_TRAVEL_MM = 220.0
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
        super().__init__(_columns(), picker, above_entry=_below_each_other(self.caution, self.next_move))
        self.travel_mm: Mapping[str, float] = {}
        self.axis = ChoiceField([("x", "X"), ("y", "Y"), ("z", "Z")])
        self.method = ChoiceField(
            [
                (QUICK, self.tr("Quick cycle")),
                (FULL, self.tr("Full cycle, ISO 230-2")),
                (CURVE, self.tr("Lost-motion curve")),
            ]
        )
        self.resolution = LengthField(required=True, low_mm=0.0)
        self.add_setting("axis", self.tr("A&xis"), self.axis)
        self.add_setting("method", self.tr("Read &by"), self.method)
        self.add_setting("resolution_mm", self.tr("&Dial reads to"), self.resolution, self.tr("mm"))
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

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Show other rows, and the columns of their way."""
        super().show_rows(rows)
        self._show_columns()

    def belongs(self, row: Row) -> bool:
        """Whether a row is of the chosen way."""
        with_target = row["nominal_mm"] is not None
        return {
            QUICK: bool(row["axis"]) and not with_target,
            FULL: bool(row["axis"]) and with_target,
            CURVE: not row["axis"] and with_target,
        }[str(self.method.value())]

    def _planned(self) -> list[dict[str, Any]]:
        method, axis = self.method.value(), str(self.axis.value())
        if method == QUICK:
            return [
                _row(place, way) for place in _places(axis) for _ in range(_PAIRS) for way in (UP, DOWN)
            ]  # fmt: skip
        if method == FULL:
            travel = self.travel_mm.get(axis, _USUAL_TRAVEL_MM)
            targets = [round(share * travel, 1) for share in _TARGETS]
            return [
                _row(shown(tr("Cycle {number}", number=cycle)), way, target)
                for cycle in range(1, _CYCLES + 1)
                for way, run in ((UP, targets), (DOWN, targets[::-1]))
                for target in run
            ]
        return [
            _row(shown(tr("Step {number}", number=step)), "", round(step * _STEP_MM, 4)) for step in range(_STEPS + 1)
        ]

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
        hidden = {QUICK: ("nominal_mm",), FULL: (), CURVE: ("axis",)}[str(self.method.value())]
        for place, column in enumerate(self.model.columns):
            self.table.setColumnHidden(place, column.key in hidden)
        self._say_move(self.entry.current_row())

    def _add_reading(self) -> None:
        """Add a row like the last one, from the other side."""
        own = [place for place, row in enumerate(self.model.rows()) if self.belongs(row)]
        last = self.model.values(own[-1]) if own else _row("", UP)
        other = {UP: DOWN, DOWN: UP}.get(last["axis"], "")
        place = own[-1] + 1 if own else self.model.rowCount()
        target = last["nominal_mm"] + _STEP_MM if self.method.value() == CURVE and own else last["nominal_mm"]
        self.model.insert_row(place, _row(last["feature"], other, target))
        self.table.edit_cell(place, "measured_mm")

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
        if row["nominal_mm"] == 0:
            return self.tr("Move {axis} one way by 2 mm, stop, read; then step back the other way.").format(axis=axis)
        return self.tr("Step {axis} on, all steps one way: {sum} mm since the turn.").format(
            axis=axis, sum=number_text(row["nominal_mm"] or 0.0, 4)
        )


def _columns() -> tuple[Column, ...]:
    sides = [(UP, shown(tr("−"))), (DOWN, shown(tr("+")))]
    return (
        Column("feature", shown(tr("Place"))),
        Column("axis", shown(tr("From")), "choice", choices=sides),
        Column("nominal_mm", shown(tr("Target mm")), "length"),
        Column("measured_mm", shown(tr("Reading mm")), "length"),
        Column("error", shown(tr("Differs mm")), "shown", editable=False),
    )


def _row(feature: str, way: str, target_mm: float | None = None) -> dict[str, Any]:
    raw = "" if target_mm is None else f"{target_mm:g}"
    return {"feature": feature, "axis": way, "kind": "travel", "nominal_mm": target_mm, "nominal_raw": raw}


def _places(axis: str) -> tuple[str, ...]:
    middle = shown(tr("Middle"))
    ends = {"x": (tr("Left"), tr("Right")), "y": (tr("Front"), tr("Back")), "z": (tr("Low"), tr("High"))}[axis]
    return shown(ends[0]), middle, shown(ends[1])


def _below_each_other(*widgets: QWidget) -> QWidget:
    both = QWidget()
    column = QVBoxLayout(both)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(4)
    for widget in widgets:
        column.addWidget(widget)
    return both
