"""The page *Wall*: the walls of an open box, and the flow factor they ask for."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, ClassVar, NamedTuple

from PySide6.QtWidgets import QWidget

from app.context import Context
from app.pages.flow_trials.flowform import FlowForm
from app.pages.flow_trials.flowpage import FlowPage
from app.widgets.fields import ChoiceField, CountField, LengthField
from app.widgets.plotdata import PlotData
from app.widgets.reading_rows import Column

if TYPE_CHECKING:
    from core.flow_trials.conditions import PrintConditions
    from core.flow_trials.wall import WallBox
    from core.guidance.flowadvice import FlowJudgement

_LEAST_SPAN_MM = 0.04


class Typed(NamedTuple):
    """The walls that count, the rows of the table they stand in, and how the box was printed and read."""

    places: list[int]
    wall_mm: list[float]
    conditions: PrintConditions
    box: WallBox


class WallPage(FlowPage):
    """Read the wall of a one-bead or two-bead box at eight places."""

    subject: ClassVar[str] = "wall"
    uses_instrument: ClassVar[bool] = True
    own_defaults: ClassVar[Mapping[str, Any]] = {"beads": "1", "layers_in_contact": 5, "sd_lateral_mm": None}
    fields_of: ClassVar[Mapping[str, str]] = {"wall_mm": "measured_mm"}

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Wall")
        columns = (
            Column("feature", self.tr("Place")),
            Column("measured_mm", self.tr("Wall mm"), "length"),
            Column("error", self.tr("Asks for %"), "shown", editable=False),
        )
        form = FlowForm(columns, self.picker, self.tr("Add a pla&ce"))
        beads = [("1", self.tr("one bead")), ("2", self.tr("two beads"))]
        form.add_own("beads", self.tr("Wall of the &box"), ChoiceField(beads))
        form.add_own("layers_in_contact", self.tr("&Layers touched"), CountField(low=1, high=1000, required=True))
        form.add_own("sd_lateral_mm", self.tr("Layer offsets, &1 sd"), LengthField(low_mm=0.0), self.tr("mm"))
        form.typed["sd_lateral_mm"].set_hint(
            self.tr("Spread of the sideways offset of single layers, if you measured it; else leave it empty.")
        )
        self.lay_out_flow(form, self.tr("No wall yet. Let the box cool, then read the middle of each face twice."))

    def read(self) -> Typed:
        """Return the walls that count."""
        from core.flow_trials.wall import WallBox  # the window opens before the mathematics is needed

        places, rows = self.places(), self.form.model.rows()
        sd = self.form.typed["sd_lateral_mm"].value()
        box = WallBox(
            int(self.form.number("beads")),
            int(self.form.number("layers_in_contact")),
            None if sd is None else float(sd),
        )
        walls = [float(rows[place]["measured_mm"]) for place in places]
        return Typed(places, walls, self.form.print_conditions(), box)

    def compute(self, readings: Typed) -> FlowJudgement:
        """Judge the walls: one call into the core."""
        from core.guidance.flowadvice import judge_wall

        return self.judged(
            readings.places,
            lambda: judge_wall(
                readings.wall_mm,
                readings.conditions,
                readings.box,
                self.context.instrument,
                self.beside(readings.conditions.temperature_c),
            ),
        )

    def reading_plot(self, result: FlowJudgement) -> PlotData:
        """Return the walls by place, their mean, and the wall of the right flow."""
        from app.pages.flow_trials.flowplot import Series, series_plot
        from core.flow_trials.wall import WallFlow
        from core.quantity import coverage_factor

        found = result.found
        assert isinstance(found, WallFlow)  # this page judges walls
        data = Series(
            names=self.names(),
            values=found.reading_mm,
            mean=found.wall_mm,
            U=found.u_wall_mm * coverage_factor(found.flow.dof),
            right=found.right_wall_mm,
            x_label=self.tr("place"),
            y_label=self.tr("wall, mm"),
            unit=self.tr("mm"),
            least_span=_LEAST_SPAN_MM,
        )
        return series_plot(data)

    def plan_rows(self) -> list[dict[str, object]]:
        """Return two places on each face."""
        faces = ("front", "right", "back", "left")  # as the gauges of the wall box are called
        return [{"feature": f"{face} {number}"} for face in faces for number in (1, 2)]
