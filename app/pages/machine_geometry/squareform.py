"""The left side of the page *Squareness*: how and where it is read, and the rows of each way."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from PySide6.QtWidgets import QLabel

from app.units import inches_for
from app.widgets.fields import ChoiceField, LengthField, NumberField
from app.widgets.reading_rows import Column
from app.widgets.trialform import TrialForm
from app.widgets.trialpicker import TrialPicker
from app.words import shown
from core.words import tr

PILLARS, DRAWN, SQUARE = "pillars", "drawn", "square"
_KINDS = {PILLARS: ("outer", "inner"), DRAWN: ("drawn",), SQUARE: ("travel",)}
_REPEATS = 2
_FIRST: dict[str, Any] = {
    "method": PILLARS, "plane": "xy", "frame": "found", "side_a_mm": 80.0, "side_b_mm": 80.0, "span_mm": 300.0,
    "longest_mm": 200.0, "tolerance_mm": 0.1, "term_ratio": 0.0,
}  # fmt: skip
_LENGTHS = ("side_a_mm", "side_b_mm", "span_mm", "longest_mm", "tolerance_mm")
_MOST_TERM = 0.03  # two degrees


class SquareForm(TrialForm):
    """A trial form that plans the rows of the chosen method; readings of another method stay and do not count."""

    def __init__(self, picker: TrialPicker) -> None:
        self.caution = QLabel()
        self.caution.setObjectName("question")
        self.caution.setWordWrap(True)
        columns = (
            Column("feature", shown(tr("Length"))),
            Column("measured_mm", shown(tr("Reading mm")), "length"),
        )
        super().__init__(columns, picker, above_entry=self.caution, across=3)
        self.method = ChoiceField(
            [
                (PILLARS, self.tr("Pillars")),
                (DRAWN, self.tr("Drawn lines")),
                (SQUARE, self.tr("Square")),
            ]
        )
        self.plane = ChoiceField([("xy", "X, Y"), ("xz", "X, Z"), ("yz", "Y, Z")])
        self.frame_state = ChoiceField(
            [
                ("found", self.tr("as found")),
                ("moved", self.tr("squared")),
                ("terms", self.tr("terms set")),
            ]
        )
        lengths = {key: LengthField(required=True, low_mm=0.001, inch=inches_for("squareness")) for key in _LENGTHS}
        mm = self.tr("mm")
        self.add_setting("method", self.tr("Read &by"), self.method)
        self.add_setting("plane", self.tr("Axis pa&ir"), self.plane)
        self.add_setting("frame", self.tr("F&rame"), self.frame_state)
        self.add_setting("side_a_mm", self.tr("Side, &first axis"), lengths["side_a_mm"], mm)
        self.add_setting("side_b_mm", self.tr("Side, &second"), lengths["side_b_mm"], mm)
        self.add_setting("span_mm", self.tr("Frame &width"), lengths["span_mm"], mm)
        self.add_setting("longest_mm", self.tr("&Longest part"), lengths["longest_mm"], mm)
        self.add_setting("tolerance_mm", self.tr("&Tolerance ±"), lengths["tolerance_mm"], mm)
        term = NumberField(low=-_MOST_TERM, high=_MOST_TERM, required=True)
        self.add_setting("term_ratio", self.tr("Term in f&orce"), term)
        self.method.changed.connect(self._plan_anew)
        self.frame_state.changed.connect(self._show_own_fields)
        self._say_caution()
        self._show_own_fields()

    def plan(self, term_ratio: float) -> None:
        """Begin with pillars in X and Y, made under a term."""
        self.show_conditions(_FIRST | {"term_ratio": term_ratio})
        self.show_rows(_planned(PILLARS))

    def show_conditions(self, conditions: Mapping[str, Any]) -> None:
        """Show stored settings; what a planned piece does not say is as at first."""
        super().show_conditions({**_FIRST, **conditions})
        self._say_caution()
        self._show_own_fields()

    def nothing_read(self) -> bool:
        """Whether no reading stands in the table."""
        return not any(row["raw"] for row in self.model.rows())

    def counts(self, row: Mapping[str, Any]) -> bool:
        """Whether a reading takes part: read by the chosen method, not excluded, no question open."""
        return self.belongs(row) and row["measured_mm"] is not None and not row["excluded"] and not row["questioned"]

    def belongs(self, row: Mapping[str, Any]) -> bool:
        """Whether a row is of the chosen method."""
        return row["kind"] in _KINDS[str(self.method.value())]

    def _plan_anew(self) -> None:
        taken = [row for row in self.model.rows() if row["raw"] or row["excluded"]]
        own = [row for row in taken if self.belongs(row)]
        others = [row for row in taken if not self.belongs(row)]
        self.model.replan([*own, *([] if own else _planned(str(self.method.value()))), *others])
        self._say_caution()
        self.entry.go_to(self.model.next_empty(self.model.rowCount() - 1) or 0)

    def _show_own_fields(self) -> None:
        """Show where to push while the frame is as found; later the term that a further one adds to."""
        found = self.frame_state.value() == "found"
        self.settings.show_field("span_mm", found)
        self.settings.show_field("term_ratio", not found)

    def _say_caution(self) -> None:
        self.caution.setText(
            {
                PILLARS: self.tr("Caution: let the piece cool, off a hot bed. Jaws are sharp."),
                DRAWN: self.tr("Caution: axes start without warning; hands off."),
                SQUARE: self.tr("Caution: lowest speed; indicator off before homing."),
            }[str(self.method.value())]
        )


def _planned(method: str) -> Sequence[dict[str, Any]]:
    if method == SQUARE:
        placings = (("normal", "Square as it stands"), ("flipped", "Square turned over"))
        return [
            {"feature": name, "axis": placing, "kind": "travel"} for _ in range(_REPEATS) for placing, name in placings
        ]
    faces = {"outer": "outside", "inner": "inside", "drawn": "line"}
    return [
        {
            "feature": f"Diagonal {number}, {faces[kind]}",
            "axis": number,
            "kind": kind,
        }
        for _ in range(_REPEATS)
        for number in "12"
        for kind in _KINDS[method]
    ]
