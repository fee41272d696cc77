"""The direct trials: what each one is for, what it asks, and what it needs.

The entries are data, so that the form is made from them. Usual values: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from core.pieces.toolpath import PURGE, bead_stroke
from core.pieces.toolpathdraw import (
    Drawn,
    Setup,
    draw_box,
    draw_feed,
    draw_ladder,
    draw_lag,
    draw_pads,
    draw_pen,
    draw_ringing,
    draw_strands,
)
from core.words import Words, tr

_PURGE_MM = 60.0
_PURGE_AWAY_MM = 10.0
_PURGE_FACTOR = 1.5


class TrialKind(StrEnum):
    """A direct trial."""

    WALL_BOX = "wall_box"
    MASS_BOX = "mass_box"
    TOP_PADS = "top_pads"
    FLOW_LADDER = "flow_ladder"
    LAG_LINES = "lag_lines"
    RINGING = "ringing"
    STRANDS = "strands"
    FEED = "feed"
    PEN_LINES = "pen_lines"


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing that a trial asks: usual value and limits in `unit`; `whole` for counts."""

    key: str
    label: Words
    unit: str
    usual: float
    low: float
    high: float
    whole: bool = False


@dataclass(frozen=True, slots=True)
class TrialPlan:
    """A direct trial: its name, what it is for, what it asks, how it is drawn, and what it needs.

    Attributes:
        heats: whether anything is heated.
        lays: whether beads are laid on the bed; then the bed is heated and the nozzle purged by a line.
        own_speed: whether it asks for its speeds itself.
        lift_mm: by how much the nozzle or pen is lifted between strokes.
    """

    title: Words
    purpose: Words
    entries: tuple[Entry, ...]
    draw: Callable[[Mapping[str, float], Setup], Drawn]
    heats: bool = True
    lays: bool = True
    own_speed: bool = False
    lift_mm: float = 0.0


_LENGTH = Entry("length_mm", tr("Length"), "mm", 100.0, 20.0, 400.0)
_LINES = Entry("lines", tr("Lines"), "", 9.0, 2.0, 21.0, whole=True)

TRIALS: Mapping[TrialKind, TrialPlan] = {
    TrialKind.WALL_BOX: TrialPlan(
        tr("Wall box"),
        tr("A box of one or two beads; its walls are read on the page Wall."),
        (
            Entry("side_mm", tr("Side"), "mm", 40.0, 15.0, 200.0),
            Entry("high_mm", tr("Height"), "mm", 15.0, 1.0, 100.0),
            Entry("beads", tr("Beads"), "", 1.0, 1.0, 2.0, whole=True),
        ),
        draw_box,
    ),
    TrialKind.MASS_BOX: TrialPlan(
        tr("Mass box"),
        tr("A box of several beads without infill; it is weighed for the page Mass."),
        (
            Entry("side_mm", tr("Side"), "mm", 40.0, 15.0, 200.0),
            Entry("high_mm", tr("Height"), "mm", 25.0, 1.0, 100.0),
            Entry("beads", tr("Beads"), "", 4.0, 1.0, 12.0, whole=True),
        ),
        draw_box,
    ),
    TrialKind.TOP_PADS: TrialPlan(
        tr("Top pads"),
        tr("Nine solid pads of different flow; their tops are scored on the page Top pads."),
        (
            Entry("size_mm", tr("Pad"), "mm", 25.0, 5.0, 60.0),
            Entry("layers", tr("Layers"), "", 5.0, 1.0, 40.0, whole=True),
        ),
        draw_pads,
    ),
    TrialKind.FLOW_LADDER: TrialPlan(
        tr("Flow ladder"),
        tr("Lines of rising flow side by side: where they are as wide as drawn, the flow is right."),
        (_LENGTH, _LINES, Entry("span_percent", tr("From − to +"), "%", 12.0, 1.0, 30.0)),
        draw_ladder,
    ),
    TrialKind.LAG_LINES: TrialPlan(
        tr("Lag lines"),
        tr("Lines that go slow, fast, slow, each fed ahead for another lag; the evenest one tells the pressure lag."),
        (
            Entry("length_mm", tr("Length"), "mm", 120.0, 40.0, 400.0),
            Entry("lines", tr("Lines"), "", 11.0, 2.0, 21.0, whole=True),
            Entry("lag_s", tr("Lag up to"), "s", 0.1, 0.005, 2.0),
            Entry("slow_mm_s", tr("Slow"), "mm/s", 25.0, 5.0, 100.0),
            Entry("fast_mm_s", tr("Fast"), "mm/s", 70.0, 6.0, 300.0),
            Entry("acceleration_mm_s2", tr("Acceleration"), "mm/s²", 500.0, 20.0, 20000.0),
        ),
        draw_lag,
        own_speed=True,
    ),
    TrialKind.RINGING: TrialPlan(
        tr("Ringing corner"),
        tr("A box of one bead, faster from band to band; the ripple after its corners tells frequency and limit."),
        (
            Entry("side_mm", tr("Side"), "mm", 80.0, 30.0, 300.0),
            Entry("high_mm", tr("Height"), "mm", 20.0, 1.0, 100.0),
            Entry("bands", tr("Bands"), "", 4.0, 1.0, 12.0, whole=True),
            Entry("slow_mm_s", tr("Slow"), "mm/s", 40.0, 5.0, 300.0),
            Entry("fast_mm_s", tr("Fast"), "mm/s", 100.0, 5.0, 500.0),
        ),
        draw_ringing,
        own_speed=True,
    ),
    TrialKind.STRANDS: TrialPlan(
        tr("Ceiling strands"),
        tr("Strands of equal length at rising rates fall on the cold bed; they are weighed for the page Ceiling."),
        (
            Entry("length_mm", tr("Filament each"), "mm", 200.0, 20.0, 500.0),
            Entry("strands", tr("Strands"), "", 6.0, 2.0, 15.0, whole=True),
            Entry("slow_mm3_s", tr("Slowest"), "mm³/s", 2.0, 0.5, 100.0),
            Entry("fast_mm3_s", tr("Fastest"), "mm³/s", 12.0, 0.5, 200.0),
            Entry("pause_s", tr("Pause between"), "s", 30.0, 1.0, 120.0),
        ),
        draw_strands,
        lays=False,
    ),
    TrialKind.FEED: TrialPlan(
        tr("Feed move"),
        tr("One slow feed; what is left to the mark is read on the page Feed."),
        (
            Entry("length_mm", tr("Filament"), "mm", 100.0, 20.0, 400.0),
            Entry("feed_mm_s", tr("Feed speed"), "mm/s", 1.5, 0.2, 1.5),
        ),
        draw_feed,
        lays=False,
    ),
    TrialKind.PEN_LINES: TrialPlan(
        tr("Drawn lines"),
        tr("A pen on the carriage draws a rectangle, all cold; its diagonals are read on the page Squareness."),
        (
            Entry("side_x_mm", tr("Side X"), "mm", 160.0, 50.0, 1000.0),
            Entry("side_y_mm", tr("Side Y"), "mm", 160.0, 50.0, 1000.0),
            Entry("pen_mm", tr("Pen at Z"), "mm", 10.0, 0.0, 200.0),
            Entry("draw_mm_s", tr("Speed"), "mm/s", 30.0, 1.0, 100.0),
        ),
        draw_pen,
        heats=False,
        lays=False,
        lift_mm=5.0,
    ),
}


def draw_trial(kind: TrialKind, values: Mapping[str, float], setup: Setup) -> Drawn:
    """Return the strokes of a trial, for what lies on the bed with a line in front of it that fills the nozzle.

    Raises:
        InputError: at the entry that does not fit the others.
    """
    plan = TRIALS[kind]
    drawn = plan.draw(values, setup)
    if not plan.lays:
        return drawn
    points = np.concatenate([stroke.points_mm for stroke in drawn.strokes])
    low, front = (float(value) for value in points.min(axis=0))
    y = front - _PURGE_AWAY_MM
    line = bead_stroke([(low, y), (low + _PURGE_MM, y)], setup.bead.height_mm, setup.bead,
                       min(setup.speed_mm_s, setup.first_mm_s), PURGE, factor=_PURGE_FACTOR)  # fmt: skip
    return Drawn([line, *drawn.strokes], drawn.parts)
