"""The left side of the page *Bed plane*: temperatures, screws, and the rows of places and of readings over time."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any

from PySide6.QtWidgets import QLabel, QPushButton

from app.units import hold, inches_for
from app.widgets.fields import ChoiceField, NumberField, TextField, local_text, number_text
from app.widgets.reading_rows import Column
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.errors import InputError
from core.quantity import length_from_text
from core.words import tr

PLACE, SOAK = "place", "soak"
_GRIDS = ("3", "4", "5")
_TOUCHES = 9  # more, at a place that was read: ten in all
_SOAK_EVERY_MIN, _SOAK_READINGS = 2, 11
_SCREW_INSET_MM = 10.0
_SAME_MM = 0.5
_HIDDEN = {PLACE: ("minutes",), SOAK: ("x_mm", "y_mm", "error")}
Row = Mapping[str, Any]


class BedForm(TrialForm):
    """A trial form with two kinds of rows; the kind not chosen keeps its readings.

    Attributes:
        travel_mm: of the machine, for the plan of places.
    """

    def __init__(self, picker: TrialPicker) -> None:
        self.travel_mm = (220.0, 220.0)
        caution = QLabel(self.tr("Caution: hot bed, moving axes, motors under power."))
        caution.setObjectName("question")
        caution.setWordWrap(True)
        super().__init__(_columns(), picker, above_entry=caution, across=3)
        self.reading = ChoiceField([(PLACE, self.tr("Places")), (SOAK, self.tr("Soak"))])
        self.grid = ChoiceField([(n, f"{n} × {n}") for n in _GRIDS])
        self.state = ChoiceField([("hot", self.tr("hot")), ("cold", self.tr("cold"))])
        self.screws = TextField()
        self.screw_thread = ChoiceField([(name, f"{name}  {local_text(pitch)}") for name, pitch in _PITCHES])
        self.clockwise = ChoiceField([("lowers", self.tr("lowers")), ("raises", self.tr("raises"))])
        self.screws.set_hint(self.tr("x y of each screw, the one that stays first: 10 10; 210 10; 110 210"))
        celsius = self.tr("°C")
        self.add_setting("reading", self.tr("&Readings of"), self.reading)
        self.add_setting("grid", self.tr("Pro&bes"), self.grid)
        self.add_setting("state", self.tr("Bed &is"), self.state)
        self.add_setting("bed_c", self.tr("Be&d now"), NumberField(low=-20, high=200), celsius)
        self.add_setting("print_c", self.tr("&Printing at"), NumberField(low=-20, high=200), celsius)
        self.add_setting("screws", self.tr("Scre&ws x y; x y"), self.screws,
                         "mm" if inches_for("bedplane") else "")
        self.add_setting("thread", self.tr("&Thread, pitch"), self.screw_thread)
        self.add_setting("clockwise", self.tr("Cloc&kwise"), self.clockwise)
        self.touch_button = QPushButton(self.tr("Nine more touches &here"))
        self.place_button = QPushButton(self.tr("Add a row"))
        self.foot.addWidget(self.touch_button)
        self.foot.addWidget(self.place_button)
        self.reading.changed.connect(self._plan_anew)
        self.grid.changed.connect(self._plan_anew)
        self.touch_button.clicked.connect(self._touch_here)
        self.place_button.clicked.connect(self._add_row)
        self._show_columns()

    def plan(self) -> None:
        """Begin with nine places; temperatures and screws are usual ones until somebody types others."""
        x, y = (length - _SCREW_INSET_MM for length in self.travel_mm)
        i = _SCREW_INSET_MM
        corners = "; ".join(f"{number_text(a)} {number_text(b)}" for a, b in ((i, i), (x, i), (x, y), (i, y)))
        usual = {"reading": PLACE, "grid": _GRIDS[0], "state": "hot", "screws": corners, "clockwise": "lowers"}
        self.show_conditions({**usual, "print_c": 60.0, "thread": "M4"})
        self.show_rows(self._planned(PLACE))

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings, the places of the screws from their beginning."""
        super().show_conditions(conditions)
        self.screws.setCursorPosition(0)

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Show other rows and the columns of the chosen kind."""
        super().show_rows(rows)
        self._show_columns()

    def screw_places(self) -> list[tuple[float, float]]:
        """Return the places of the screws as typed.

        Raises:
            InputError: field `screws`, where a place has not two lengths.
        """
        found = []
        for text in re.split(r"[;\n]", str(self.screws.value() or "")):
            parts = re.split(r"[\s/]+", text.strip())
            if len(parts) == 2:
                found.append((length_from_text(parts[0], "screws").mm, length_from_text(parts[1], "screws").mm))
            elif text.strip():
                says = tr("“{text}” is no place; type x, a blank and y, then a semicolon.", text=text.strip())
                raise InputError("screws", says)
        return found

    def pitch_mm(self) -> float:
        """Return the pitch of the chosen thread."""
        return float(dict(_PITCHES)[str(self.screw_thread.value())])

    def _planned(self, kind: str) -> list[dict[str, Any]]:
        if kind == SOAK:
            return [_soak_row(_SOAK_EVERY_MIN * n) for n in range(_SOAK_READINGS)]
        from core.machine_geometry.bedplane import plan_probes  # numpy waits until the page is seen

        places = plan_probes(*self.travel_mm, int(str(self.grid.value())))
        return [_place_row(number, x, y) for number, (x, y) in enumerate(places, start=1)]

    def _plan_anew(self) -> None:
        """Plan the chosen kind; readings that are in stay, those of the chosen kind above."""
        kind = str(self.reading.value())
        taken = [row for row in self.model.rows() if row["raw"] or row["excluded"]]
        own, others = ([row for row in taken if (row["axis"] == kind) is mine] for mine in (True, False))
        planned = [row for row in self._planned(kind) if not any(_same(row, known) for known in own)]
        self.model.replan([*own, *planned, *others])
        self._show_columns()
        self.entry.go_to(min(len(own), self.model.rowCount() - 1))  # the first one that waits

    def _show_columns(self) -> None:
        hidden = _HIDDEN[str(self.reading.value())]
        for place, column in enumerate(self.model.columns):
            self.table.setColumnHidden(place, column.key in hidden)
        self.touch_button.setVisible(self.reading.value() == PLACE and not self.new_button.isVisibleTo(self))

    def _touch_here(self) -> None:
        """Plan further touches of the current place, so that they tell the repeatability of the probe."""
        row, rows = self.entry.current_row(), self.model.rows()
        if not 0 <= row < len(rows) or rows[row]["axis"] != PLACE:
            return
        again = {key: rows[row].get(key) for key in ("feature", "axis", "kind", "x_mm", "x_raw", "y_mm", "y_raw")}
        self.model.replan([*rows[: row + 1], *[again] * _TOUCHES, *rows[row + 1 :]])
        self.entry.setFocus()

    def _add_row(self) -> None:
        row = self.model.rowCount()
        if self.reading.value() == SOAK:
            self.model.insert_row(row, {"feature": "Centre", "axis": SOAK, "kind": "travel"})
            self.table.edit_cell(row, "minutes")
            return
        self.model.insert_row(row, {"feature": f"P{row + 1}", "axis": PLACE, "kind": "travel"})
        self.table.edit_cell(row, "x_mm")


_PITCHES = (("M3", "0.5"), ("M4", "0.7"), ("M5", "0.8"))


def _columns() -> tuple[Column, ...]:
    return (
        Column("feature", shown(tr("Probe"))),
        Column("x_mm", hold(shown(tr("X mm"))), "length", again=True),
        Column("y_mm", hold(shown(tr("Y mm"))), "length", again=True),
        Column("minutes", shown(tr("After min")), "number", low=0.0, high=1440.0, unit="min"),
        Column("measured_mm", shown(tr("Z mm")), "length"),
        Column("error", shown(tr("Off mm")), "shown", editable=False),
    )


def _place_row(number: int, x_mm: float, y_mm: float) -> dict[str, Any]:
    return {
        "feature": f"P{number}",
        "axis": PLACE,
        "kind": "travel",
        "x_mm": x_mm,
        "x_raw": f"{x_mm:g}",
        "y_mm": y_mm,
        "y_raw": f"{y_mm:g}",
    }


def _soak_row(minutes: int) -> dict[str, Any]:
    return {
        "feature": f"Centre at {minutes} min",
        "axis": SOAK,
        "kind": "travel",
        "minutes": float(minutes),
        "minutes_raw": str(minutes),
    }


def _same(planned: Row, known: Row) -> bool:
    """Whether a planned row is read already."""
    if planned["axis"] == SOAK:
        return bool(known.get("minutes") == planned["minutes"])
    x, y = known.get("x_mm"), known.get("y_mm")
    return None not in (x, y) and abs(x - planned["x_mm"]) <= _SAME_MM and abs(y - planned["y_mm"]) <= _SAME_MM
