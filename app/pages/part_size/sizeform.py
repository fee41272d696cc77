"""The left side of the page *Size error*: piece, tolerance, the big line for the next reading, and the table."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QPushButton, QVBoxLayout, QWidget

from app.pages.part_size.sizerows import columns, rows_of
from app.theme import STEP_PX
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField, NumberField
from app.widgets.piecesketch import PieceSketch
from app.widgets.reading_entry import ReadingEntry
from app.widgets.readings import ReadingsModel
from app.widgets.readings_table import ReadingsTable
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.errors import InputError
from core.measuring.tolerance import CLASSES
from core.pieces.comb import plan_comb

OWN = "own"
_AXES_OF = {"comb_x": "x", "comb_y": "y", "comb_xy": "xy", OWN: ""}
_FIRST = "comb_x"
_OWN_ROW = {"axis": "x", "kind": "outside"}


class SizeForm(QWidget):
    """What a person sets and types. The readings model is the truth; `changed` follows every finished change."""

    changed = Signal()

    def __init__(self, picker: TrialPicker, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.model = ReadingsModel(columns(), self)
        self.table = ReadingsTable(self.model)
        self.entry = ReadingEntry(self.table)
        self.sketch = PieceSketch()
        self.piece = ChoiceField(self._pieces())
        self.tolerance = ChoiceField([(key, _short(shown(words))) for key, words in CLASSES.items()])
        self.part_c = NumberField(required=False, low=-20.0, high=120.0)
        self.picker = picker
        self.new_button = QPushButton(self.tr("&New readings"))
        self.settings = self._make_settings()
        self.add_button = QPushButton(self.tr("Add a &length"))
        self._make_layout()
        self.setFocusProxy(self.entry)
        self.model.edited.connect(self.changed)
        self.entry.row_changed.connect(self._light)
        self.piece.changed.connect(self._plan_anew)
        self.tolerance.changed.connect(self.changed)
        self.part_c.changed.connect(self.changed)
        self.add_button.clicked.connect(self._add_length)

    def plan(self, piece: str = _FIRST, tolerance: str = "m") -> None:
        """Begin with the empty readings of a piece."""
        self.piece.set_value(piece)
        self.tolerance.set_value(tolerance)
        self.part_c.set_value(None)
        self.show_rows(_planned(piece))

    def show_rows(self, rows: Sequence[Mapping[str, Any]]) -> None:
        """Show other rows; kind and axis are columns of their own only where they are not given by a piece."""
        self.model.set_rows(rows)
        self._show_columns()

    def lock(self, locked: bool) -> None:
        """Show readings without letting them be changed."""
        self.model.lock(locked)
        for widget in (self.entry, self.piece, self.tolerance, self.part_c):
            widget.setEnabled(not locked)
        self.add_button.setVisible(not locked)
        self.new_button.setVisible(locked)
        if locked:
            self.new_button.setFocus()

    def _pieces(self) -> list[tuple[str, str]]:
        return [
            ("comb_x", self.tr("Size comb along X")),
            ("comb_y", self.tr("Size comb along Y")),
            ("comb_xy", self.tr("Size combs X and Y")),
            (OWN, self.tr("Own lengths")),
        ]

    def _make_layout(self) -> None:
        self.table.setMinimumHeight(4 * self.table.verticalHeader().defaultSectionSize())
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(STEP_PX)
        column.addWidget(self.settings)
        column.addWidget(_card(14, self.sketch, self.entry))
        column.addWidget(_card(1, self.table), 1)
        for button in (self.add_button, self.new_button):
            column.addWidget(button, 0, Qt.AlignmentFlag.AlignLeft)
        self.new_button.hide()

    def part_c_or_none(self) -> float | None:
        """Return the part's temperature; None where it is empty or cannot be read."""
        try:
            return self.part_c.value()
        except InputError:
            return None

    def _make_settings(self) -> FieldGrid:
        grid = FieldGrid(2)
        grid.add("piece", self.tr("&Piece"), self.piece)
        grid.add("trial", self.tr("Tri&al"), self.picker)
        grid.add("tolerance", self.tr("&Tolerance, ISO"), self.tolerance)
        grid.add("part_temperature_c", self.tr("Part tempe&rature"), self.part_c, self.tr("°C"))
        return grid

    def _plan_anew(self) -> None:
        """Plan another piece; readings that are in stay above its rows, and one undo brings the old plan back."""
        taken = [row for row in self.model.rows() if row["raw"] or row["excluded"]]
        names = {row["feature"] for row in taken}
        planned = [row for row in _planned(str(self.piece.value())) if row.get("feature") not in names]
        self.model.replan([*taken, *planned])
        self._show_columns()

    def _show_columns(self) -> None:
        given = self.piece.value() != OWN
        for place, column in enumerate(self.model.columns):
            self.table.setColumnHidden(place, given and column.key in ("axis", "kind"))

    def _add_length(self) -> None:
        row = self.model.rowCount()
        self.model.insert_row(row, _OWN_ROW)
        self.table.edit_cell(row, "nominal_mm")

    def _light(self, row: int) -> None:
        """Light the jaws of the gauge that is read next."""
        name = self.model.values(row)["feature"] if 0 <= row < self.model.rowCount() else ""
        for axis in "xy":
            piece = plan_comb(axis)
            for gauge in piece.gauges:
                if gauge.name == name:
                    self.sketch.light(piece, gauge)
                    return
        self.sketch.light(None, None)


def _short(name: str) -> str:
    """Name a tolerance class under a label that says ISO already, in the little room there is."""
    return name.removeprefix("ISO ").removesuffix(", half to either side")


def _planned(piece: str) -> list[dict[str, object]]:
    rows = [row for axis in _AXES_OF[piece] for row in rows_of(plan_comb(axis))]
    return rows or [dict(_OWN_ROW) for _ in range(3)]


def _card(margin_px: int, *widgets: QWidget) -> QFrame:
    card = QFrame()
    card.setObjectName("card")
    column = QVBoxLayout(card)
    column.setContentsMargins(margin_px, margin_px, margin_px, margin_px)
    column.setSpacing(STEP_PX)
    for widget in widgets:
        column.addWidget(widget)
    return card
