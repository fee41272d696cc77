"""The pictures of a bed trial: the map of the plate, or the drift of one place over time."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from app.pages.machine_geometry.bedform import SOAK
from app.widgets.fields import number_text
from app.widgets.mapview import MapData, MapPane, Screw
from app.widgets.picture import Picture
from app.widgets.plotpane import FitCurve, PlotData, PlotPane, PointSeries
from app.words import shown
from core.quantity import rounded_pair, value_text
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.bedadvice import BedJudgement
    from core.machine_geometry.bedplane import BedPlane
    from core.machine_geometry.bedscrews import ScrewTurn
    from core.machine_geometry.bedsoak import Soak

_STEPS = 121


class BedPicture(Picture):
    """Shows the one or the other."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.map = MapPane(
            self.tr("Bed from above"),
            self.tr("No map yet. Type the heights at the left, up positive; four places make a plane."),
        )
        self.drift = PlotPane(self.tr("No drift yet. Heat the bed and read its middle every two minutes."))
        self.drift.set_data(PlotData((), title=self.tr("Drift while soaking")))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.map)
        column.addWidget(self.drift)
        self.map.said.connect(self.said)
        self.drift.said.connect(self.said)
        self.show_kind("")

    def show_inches(self) -> None:
        """Show both in inch."""
        super().show_inches()
        self.map.show_inches()
        self.drift.show_inches()

    def show_kind(self, kind: str) -> None:
        """Show the picture that belongs to a kind of readings."""
        self.map.setVisible(kind != SOAK)
        self.drift.setVisible(kind == SOAK)

    def show_nothing(self, why: str = "") -> None:
        """Empty both."""
        self.map.show_nothing(why)
        self.drift.show_nothing(why)

    def show_judgement(
        self, judgement: BedJudgement, names: Sequence[str], soak_mm: tuple[Sequence[float], Sequence[float]],
        travel_mm: tuple[float, float],
    ) -> None:
        """Show a result; `names` by place, `soak_mm` minutes and heights of the soak readings."""
        self.show_nothing()
        if judgement.plane is not None:
            self.map.show_map(_map_data(judgement.plane, judgement.turns, names, travel_mm))
        if judgement.soak is not None:
            self.drift.set_data(_drift_data(judgement.soak, *soak_mm))


def turn_text(turn: ScrewTurn) -> str:
    """Return what to do at a screw in words."""
    if not turn.told:
        return shown(tr("stays"))
    return shown(tr("clockwise")) if turn.clockwise else shown(tr("anticlockwise"))


def _map_data(
    plane: BedPlane, turns: Sequence[ScrewTurn], names: Sequence[str], travel_mm: tuple[float, float]
) -> MapData:
    middle = float(plane.height(*plane.centre_mm))
    fall = value_text(plane.tilt_over_bed()).removeprefix("+")
    return MapData(
        x_mm=plane.x_mm,
        y_mm=plane.y_mm,
        height_mm=plane.z_mm - middle,
        residual_mm=plane.residual_mm,
        flagged=plane.flagged,
        names=tuple(names),
        screws=tuple(_screw(turn) for turn in turns),
        size_mm=travel_mm,
        summary=shown(
            tr(
                "Places: {count}; the bed falls by {fall}, flatness {flat}.",
                count=plane.z_mm.size,
                fall=fall,
                flat=value_text(plane.flatness).removeprefix("+"),
            )
        ),
        note=shown(tr("Blue low, orange high. Turns seen from above.")),
    )


def _screw(turn: ScrewTurn) -> Screw:
    angle, angle_U = rounded_pair(turn.angle_deg, 360.0 * turn.turns.U)
    values = {"number": turn.number, "sign": "↻" if turn.clockwise else "↺"}
    short = tr("{number}: stays", number=turn.number) if not turn.told else tr(
        "{number}: {sign} {angle} ± {U}°", angle=angle.removeprefix("+"), U=angle_U, **values
    )  # fmt: skip
    turns, U = rounded_pair(abs(turn.turns.value), turn.turns.U)
    says = tr(
        "Screw {number}: {what}, {turns} ± {U} turns",
        number=turn.number,
        what=turn_text(turn),
        turns=turns.removeprefix("+"),
        U=U,
    )
    return Screw(*turn.place_mm, shown(short), shown(says))


def _drift_data(soak: Soak, minutes: Sequence[float], heights_mm: Sequence[float]) -> PlotData:
    x = np.linspace(0.0, soak.last_s / 60.0, _STEPS)
    tau = number_text(soak.fit.tau / 60.0, 1)
    name = shown(tr("time constant {tau} min", tau=tau)) if soak.fit.seen else shown(tr("no drift told"))
    mean = soak.fit.mean(60.0 * x) if soak.fit.seen else np.full(x.size, float(np.mean(heights_mm)))
    return PlotData(
        points=(PointSeries(shown(tr("readings")), np.asarray(minutes), np.asarray(heights_mm), symbol="●"),),
        curves=(FitCurve(name, x, mean),),
        x_label=shown(tr("time since heating began, min")),
        y_label=shown(tr("height, mm")),
        title=shown(tr("Drift while soaking")),
        summary=shown(tr("Readings: {count}; {name}.", count=len(minutes), name=name)),
        zero_line=False,
        least_y_span=0.02,
    )
