"""The left side of the page *Size error*: piece, tolerance, part temperature, and the piece with the jaws lit."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from PySide6.QtWidgets import QPushButton

from app.pages.part_size.sizerows import columns, rows_of
from app.widgets.fields import ChoiceField, NumberField
from app.widgets.piecesketch import PieceSketch
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.measuring.tolerance import CLASSES
from core.pieces.comb import plan_comb

OWN = "own"
_AXES_OF = {"comb_x": "x", "comb_y": "y", "comb_xy": "xy", OWN: ""}
_FIRST = "comb_x"
_OWN_ROW = {"axis": "x", "kind": "outside"}


class SizeForm(TrialForm):
    """A trial form that knows the pieces."""

    def __init__(self, picker: TrialPicker) -> None:
        self.sketch = PieceSketch()
        super().__init__(columns(), picker, above_entry=self.sketch)
        self.piece = ChoiceField(self._pieces())
        self.tolerance = ChoiceField([(key, _short(shown(words))) for key, words in CLASSES.items()])
        self.tolerance.set_value("m")
        self.part_c = NumberField(required=False, low=-20.0, high=120.0)
        self.add_setting("piece", self.tr("&Piece"), self.piece)
        self.add_setting("tolerance", self.tr("&Tolerance, ISO"), self.tolerance)
        self.add_setting("part_temperature_c", self.tr("Part tempe&rature"), self.part_c, self.tr("°C"))
        self.add_button = QPushButton(self.tr("Add a &length"))
        self.foot.addWidget(self.add_button)
        self.entry.row_changed.connect(self._light)
        self.piece.changed.connect(self._plan_anew)
        self.add_button.clicked.connect(self._add_length)

    def plan(self) -> None:
        """Begin with the empty readings of the first piece; the tolerance stays as it was."""
        self.show_conditions({"piece": _FIRST, "tolerance": self.tolerance.value()})
        self.show_rows(_planned(_FIRST))

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings; readings without a piece are lengths of their own."""
        super().show_conditions({"piece": OWN, **conditions})

    def show_rows(self, rows: Sequence[Mapping[str, Any]]) -> None:
        """Show other rows; kind and axis are columns of their own only where they are not given by a piece."""
        super().show_rows(rows)
        self._show_columns()

    def _pieces(self) -> list[tuple[str, str]]:
        return [
            ("comb_x", self.tr("Size comb along X")),
            ("comb_y", self.tr("Size comb along Y")),
            ("comb_xy", self.tr("Size combs X and Y")),
            (OWN, self.tr("Own lengths")),
        ]

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
