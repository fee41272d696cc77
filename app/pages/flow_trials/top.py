"""The page *Top pads*: pads of different flow scored by two people, and the factor at which they close."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar, NamedTuple

from PySide6.QtWidgets import QWidget

from app.context import Context
from app.pages.flow_trials.flowform import FlowForm
from app.pages.flow_trials.flowpage import FlowPage
from app.widgets.fields import number_text
from app.widgets.plotdata import PlotData
from app.widgets.reading_rows import Column
from core.errors import InputError
from core.words import tr

if TYPE_CHECKING:
    from core.flow_trials.conditions import PrintConditions
    from core.guidance.flowadvice import FlowJudgement

_PERCENT = 100.0
_LETTERS = "ABCDEFGHI"


class Typed(NamedTuple):
    """The scores that count, the rows of the table they stand in, and what the pads were printed with."""

    places: list[int]
    change_ratio: list[float]
    score: list[float]
    judge: list[str]
    conditions: PrintConditions


class TopPage(FlowPage):
    """Score the tops of nine pads, blind, by two people."""

    subject: ClassVar[str] = "top"
    fields_of: ClassVar[Mapping[str, str]] = {"score": "measured_mm", "change_ratio": "change_percent"}

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Top pads")
        columns = (
            Column("feature", self.tr("Pad")),
            Column("judge", self.tr("Judge"), "choice", choices=("1", "2")),
            Column("change_percent", self.tr("Flow %"), "number", unit="%"),
            Column("measured_mm", self.tr("Score"), "number", low=-5.0, high=5.0),
        )
        form = FlowForm(columns, self.picker, self.tr("Add a s&core"))
        form.reads_instrument = False
        empty = self.tr(
            "No score yet. One person scores all pads, from −5 (gaps) over 0 (closed) to +5 (ridges); then the other "
            "one does."
        )
        self.lay_out_flow(form, empty)
        for signal in (form.model.modelReset, form.model.rowsInserted, form.model.rowsRemoved):
            signal.connect(self._show_columns)

    def read(self) -> Typed:
        """Return the scores that count."""
        places, rows = self.places(), self.form.model.rows()
        for place in places:
            if rows[place].get("change_percent") is None:
                raise InputError("change_percent", tr("Row {row}: type the flow of this pad.", row=place + 1), place)
        used = [rows[place] for place in places]
        return Typed(
            places,
            [float(row["change_percent"]) / _PERCENT for row in used],
            [float(row["measured_mm"]) for row in used],
            [str(row.get("judge") or "") for row in used],
            self.form.print_conditions(),
        )

    def compute(self, readings: Typed) -> FlowJudgement:
        """Judge the scores: one call into the core."""
        from core.guidance.flowadvice import judge_top  # the window opens before the mathematics is needed

        return self.judged(
            readings.places, lambda: judge_top(*readings[1:], self.beside(readings.conditions.temperature_c))
        )

    def reading_plot(self, result: FlowJudgement) -> PlotData:
        """Return the scores over the flow of the pads."""
        from app.pages.flow_trials.flowplot import top_plot
        from core.flow_trials.top import TopFlow

        assert isinstance(result.found, TopFlow)  # this page judges pads
        return top_plot(result.found)

    def plan_rows(self) -> list[dict[str, object]]:
        """Return the pads of the ladder, shuffled, for one judge after the other."""
        from core.flow_trials.top import JUDGES, LADDER_RATIO

        return [
            {
                "feature": f"Pad {letter}, judge {judge}",
                "judge": judge,
                "kind": "travel",  # a score may be below zero
                "change_percent": _PERCENT * change,
                "change_percent_raw": number_text(_PERCENT * change),
            }
            for judge in JUDGES
            for letter, change in zip(_LETTERS, LADDER_RATIO, strict=True)
        ]

    def _show_columns(self) -> None:
        """Hide judge and flow of the planned pads: who scores must not see the flow."""
        planned = {str(row["feature"]).casefold() for row in self.plan_rows()}
        blind = all(str(row["feature"]).casefold() in planned for row in self.form.model.rows())
        for place, column in enumerate(self.form.model.columns):
            self.form.table.setColumnHidden(place, blind and column.key in ("judge", "change_percent"))
