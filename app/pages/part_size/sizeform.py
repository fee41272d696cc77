"""The left side of the page *Size error*: piece, tolerance, part temperature, and the piece with the jaws lit."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import asdict
from typing import Any

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QPushButton

from app.faults import told_at_once
from app.pages.part_size.sizerows import columns
from app.units import inches_for
from app.widgets.fields import ChoiceField, NumberField
from app.widgets.gaugerows import rows_of
from app.widgets.piecesketch import PieceSketch
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.errors import InputError
from core.measuring.tolerance import CLASSES
from core.part_size.features import FeatureKind
from core.pieces.bounds import Bounds
from core.pieces.catalogue import SIZE_SETS, plan_set, set_names
from core.pieces.piece import Gauge, PrintSet

OWN = "own"
_FIRST = "comb_x"
_ROOM_PX, _MORE_ROOM_PX = 430, 600  # of the table with all its columns
_INCHES_PX = 120  # their numbers are longer
_OWN_ROW = {"axis": "x", "kind": "outside"}


class SizeForm(TrialForm):
    """A trial form that knows the pieces.

    Attributes:
        bounds: of the machine, for the piece that is planned next; a trial keeps those its piece was planned with.
        heat: temperatures in force when the readings were begun; a trial keeps them.
    """

    def __init__(self, picker: TrialPicker) -> None:
        self.sketch = PieceSketch(inch=inches_for("sizeerror"))
        super().__init__(columns(), picker, above_entry=self.sketch, above_stays=True)
        self.bounds = Bounds()
        self.heat: dict[str, float] = {}
        self._planned: PrintSet | None = None
        self._planned_for = Bounds()
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
        piece = _FIRST
        try:
            self._take(piece, self.bounds)
        except InputError:  # a bed too small for it
            piece = OWN
            self._take(piece, self.bounds)
        self._show(piece, {"tolerance": self.tolerance.value()})
        self.show_rows(self._rows())

    def conditions(self) -> dict[str, Any]:
        """Return the settings, with the bounds that the piece was planned for and the temperatures in force."""
        bounds = {"piece_bounds": asdict(self._planned_for)} if self._planned is not None else {}
        return {**super().conditions(), **bounds, **self.heat}

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings; readings without a piece are lengths of their own."""
        piece = str(conditions.get("piece") or OWN)
        try:
            self._take(piece, Bounds(**conditions.get("piece_bounds", {})))
        except (InputError, TypeError):  # planned by another version: its rows say all that the fit needs
            self._planned = None
        self._show(piece, conditions)

    def show_rows(self, rows: Sequence[Mapping[str, Any]]) -> None:
        """Show other rows; kind and axis are columns of their own only where they are not given by a piece."""
        super().show_rows(rows)
        self._show_columns()

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Find room for what is expected, or none."""
        super().resizeEvent(event)
        self._show_columns()

    def _show(self, piece: str, conditions: Mapping[str, Any]) -> None:
        super().show_conditions({**conditions, "piece": piece})

    def _pieces(self) -> list[tuple[str, str]]:
        names = set_names()
        return [*((key, shown(names[key])) for key in SIZE_SETS), (OWN, self.tr("Own lengths"))]

    def _take(self, piece: str, bounds: Bounds) -> None:
        self._planned = None if piece == OWN else plan_set(piece, bounds)
        self._planned_for = bounds

    def _rows(self) -> list[dict[str, Any]]:
        """Return the empty rows of the planned piece."""
        if self._planned is None:
            return [dict(_OWN_ROW) for _ in range(3)]
        kinds = set(FeatureKind)
        return rows_of([gauge for gauge in self._planned.gauges if gauge.kind in kinds])

    def _plan_anew(self) -> None:
        """Plan another piece; readings that are in stay above its rows, and one undo brings the old plan back."""
        try:
            self._take(str(self.piece.value()), self.bounds)
        except InputError as error:
            self.piece.problem(error.message)
            return
        taken = [row for row in self.model.rows() if row["raw"] or row["excluded"]]
        names = {row["feature"] for row in taken}
        planned = [row for row in self._rows() if row.get("feature") not in names]
        self.model.replan([*taken, *planned])
        self._show_columns()
        self._light(self.entry.current_row())

    def _show_columns(self) -> None:
        """Show kind and axis of own lengths only, and what is expected where there is room; else it is said above."""
        given = self.piece.value() != OWN
        hidden = {"axis", "kind"} if given else set()
        more_px = _INCHES_PX if self.model.inch else 0
        if self.table.width() < (_ROOM_PX if given else _MORE_ROOM_PX) + more_px:
            hidden.add("expected")
        for place, column in enumerate(self.model.columns):
            self.table.setColumnHidden(place, column.key in hidden)

    def _add_length(self) -> None:
        row = self.model.rowCount()
        self.model.insert_row(row, _OWN_ROW)
        self.table.edit_cell(row, "nominal_mm")

    def _light(self, row: int) -> None:
        """Light the jaws of the gauge that is read next."""
        name = self.model.values(row)["feature"] if 0 <= row < self.model.rowCount() else ""
        pieces = self._planned.pieces if self._planned is not None else ()
        for piece in pieces:
            for gauge in piece.gauges:
                if gauge.name == name:
                    self.sketch.light(piece, gauge, self._number(gauge))
                    return
        self.sketch.light(None, None)

    def _number(self, gauge: Gauge) -> int:
        assert self._planned is not None  # the gauge is one of its own
        return self._planned.gauges.index(gauge) + 1


def _short(name: str) -> str:
    """Name a tolerance class under a label that says ISO already, in the little room there is."""
    return name.removeprefix("ISO ").removesuffix(", half to either side")
