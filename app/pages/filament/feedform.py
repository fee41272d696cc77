"""The left side of the page *Feed*: how the filament fed is found, and the repeats without and under load."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from PySide6.QtWidgets import QLabel, QPushButton

from app.widgets.fields import ChoiceField, LengthField, NumberField, local_text
from app.widgets.reading_columns import Column
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.errors import InputError
from core.words import tr

if TYPE_CHECKING:
    from core.filament.slip import HotFeed

MARKS, MASS = "marks", "mass"
PLANNED = 3
DEFAULTS: Mapping[str, Any] = {
    "way": MARKS,
    "in_force_steps_mm": None,
    "u_reading_mm": 0.3,
    "mass_per_length_g_m": None,
    "u_balance_g": 0.01,
    "temperature_c": None,
    "hot_end_limit_c": 240.0,  # a lined hot end; no other stands higher by itself
    "nozzle_mm": 0.4,
}
_AXIS = {MARKS: "e", MASS: "e by mass"}  # tells the rows of the two ways apart
_ASKED_MM = {MARKS: 100.0, MASS: 1000.0}
_MARK_MM = 120.0
_ROW_NUMBERS_PX = 34
_IN_WAY = {"u_reading_mm": MARKS, "mass_per_length_g_m": MASS, "u_balance_g": MASS}


class FeedForm(TrialForm):
    """A trial form with a table for each way, one in view; `all_rows` gives the rows of both."""

    def __init__(self, picker: TrialPicker) -> None:
        self.caution = QLabel(
            self.tr(
                "Caution: the wheel starts without warning. Unloaded: nozzle taken off, path open, at most 1.5 mm/s. "
                "Under load: hot plastic; ventilate, stay with it."
            )
        )
        self.caution.setObjectName("question")
        self.caution.setWordWrap(True)
        super().__init__(columns_of(MARKS), picker, above_entry=self.caution, across=3)
        self._aside: list[Mapping[str, Any]] = []
        self.way = ChoiceField([(MARKS, self.tr("marks")), (MASS, self.tr("mass"))])
        self.way.changed.connect(self._change_way)  # first: a problem needs its column in sight
        self.steps = NumberField(required=True, low=0.001, high=1e6)
        self.typed: dict[str, NumberField] = {"in_force_steps_mm": self.steps}
        self.add_setting("way", self.tr("Read b&y"), self.way)
        self.add_setting("in_force_steps_mm", self.tr("&Steps/mm in force"), self.steps)
        self._add("u_reading_mm", self.tr("&One mark, 1 u"), NumberField(required=True, low=0.0, high=5.0), "mm")
        self._add("mass_per_length_g_m", self.tr("Per len&gth"), NumberField(required=True, low=0.01), self.tr("g/m"))
        self._add("u_balance_g", self.tr("Balance, &1 u"), NumberField(required=True, low=1e-5, high=10.0), "g")
        self._add("temperature_c", self.tr("Nozzle, if &hot"), NumberField(low=0.0), self.tr("°C"))
        self._add("hot_end_limit_c", self.tr("Hot end u&p to"), NumberField(required=True, low=100.0), self.tr("°C"))
        self._add("nozzle_mm", self.tr("No&zzle"), LengthField(required=True), self.tr("mm"))
        self.add_button = QPushButton(self.tr("Add a &repeat"))
        self.load_button = QPushButton(self.tr("Add one under &load"))
        for button in (self.add_button, self.load_button):
            self.foot.addWidget(button)
        self.model.set_error_text(self._fed_text)
        self.add_button.clicked.connect(self._add_repeat)
        self.load_button.clicked.connect(self._add_loaded)
        self._show_way()

    def plan(self, conditions: Mapping[str, Any]) -> None:
        """Begin with three empty repeats by the way chosen last."""
        self._aside = []
        self.show_conditions({**DEFAULTS, "way": self.way.value(), **conditions})
        self.show_rows([])

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings, the usual ones where none are stored."""
        super().show_conditions({**DEFAULTS, **conditions})

    def show_rows(self, rows: Sequence[Mapping[str, Any]]) -> None:
        """Show the repeats of the chosen way, planned where there are none; the others wait aside."""
        way = self.chosen()
        mine = [row for row in rows if way_of(row) == way]
        self._aside = [row for row in rows if way_of(row) != way]
        self.model.set_columns(columns_of(way))
        self._keep_columns_in_sight()
        super().show_rows(mine or [repeat(way, number + 1) for number in range(PLANNED)])
        self._show_way()

    def all_rows(self) -> list[Mapping[str, Any]]:
        """Return the rows in the table, then those of the other way."""
        return [*self.model.rows(), *self._aside]

    def chosen(self) -> str:
        """Return the way the filament fed is found."""
        return str(self.way.value() or MARKS)

    def hot(self) -> HotFeed | None:
        """Return what held under load; None where no temperature is typed.

        Raises:
            InputError: at the field that cannot be.
        """
        from core.filament.slip import HotFeed  # the window opens before the mathematics is needed

        if self.typed["temperature_c"].value() is None:
            return None
        return HotFeed(self.number("nozzle_mm"), self.number("temperature_c"), self.number("hot_end_limit_c"))

    def _add(self, key: str, label: str, field: NumberField, unit: str) -> None:
        self.typed[key] = field
        self.add_setting(key, label, field, unit)

    def _keep_columns_in_sight(self) -> None:
        """Ask for the width that all columns need, beside row numbers and scroll bar."""
        bar = self.table.verticalScrollBar().sizeHint().width()
        self.table.setMinimumWidth(self.table.horizontalHeader().length() + _ROW_NUMBERS_PX + bar)

    def _change_way(self) -> None:
        self.show_rows(self.all_rows())

    def _show_way(self) -> None:
        for key, way in _IN_WAY.items():
            self.settings.show_field(key, way == self.chosen())

    def _add_repeat(self) -> None:
        """Add a repeat of the length commanded last."""
        row = self.model.rowCount()
        new = repeat(self.chosen(), row + 1)
        last = self.model.values(row - 1) if row else {}
        new |= {key: last[key] for key in ("nominal_mm", "nominal_raw", "mark_mm", "mark_raw") if last.get(key)}
        self.model.insert_row(row, new)
        self.table.go_to(row)
        self.entry.setFocus()

    def _add_loaded(self) -> None:
        """Add a repeat and ask for its rate."""
        self._add_repeat()
        self.table.edit_cell(self.model.rowCount() - 1, "rate_mm3_s")

    def _fed_text(self, row: Mapping[str, object]) -> str:
        """Return what was fed of what was commanded, in percent."""
        numbers = [row.get(key) for key in ("nominal_mm", "measured_mm")]
        commanded, reading = (value if isinstance(value, float | int) else None for value in numbers)
        if not commanded or reading is None:
            return ""
        if way_of(row) == MARKS:
            mark = row.get("mark_mm")
            return local_text(f"{100 * (mark - reading) / commanded:.2f}") if isinstance(mark, float | int) else ""
        try:
            per_mm = self.number("mass_per_length_g_m") / 1000.0
        except InputError:
            return ""
        return local_text(f"{100 * reading / per_mm / commanded:.2f}")


def columns_of(way: str) -> tuple[Column, ...]:
    """Return the columns of a way."""
    rate = Column("rate_mm3_s", shown(tr("Rate\nmm³/s")), "number", low=0.0, high=200.0, again=True)
    asked = Column("nominal_mm", shown(tr("Asked\nmm")), "length", word=shown(tr("asked")))
    fed = Column("error", shown(tr("Fed\n%")), "shown", editable=False)
    if way == MASS:
        mass = Column("measured_mm", shown(tr("Mass\ng")), "number", low=0.0, high=1000.0, unit="g")
        return rate, asked, mass, fed
    mark = Column("mark_mm", shown(tr("Mark\nmm")), "length", again=True)
    return rate, asked, mark, Column("measured_mm", shown(tr("Rest\nmm")), "length"), fed


def way_of(row: Mapping[str, object]) -> str:
    """Return the way a row belongs to."""
    return MASS if row.get("axis") == _AXIS[MASS] else MARKS


def repeat(way: str, number: int) -> dict[str, Any]:
    """Return an empty repeat; without a rate it is one without load."""
    asked = _ASKED_MM[way]
    read = "mass" if way == MASS else "rest"
    row: dict[str, Any] = {
        "feature": f"{read} of repeat {number}",
        "axis": _AXIS[way],
        "kind": "travel",
        "nominal_mm": asked,
        "nominal_raw": f"{asked:g}",
    }
    return row | ({"mark_mm": _MARK_MM, "mark_raw": f"{_MARK_MM:g}"} if way == MARKS else {})
