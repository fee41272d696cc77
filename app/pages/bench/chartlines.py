"""The lines of a chart: limits of each phase, named at the newest one, and the marks of events."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np
from numpy.typing import NDArray

from app.widgets.fields import local_text
from app.widgets.plotdata import EventMark, LimitLine
from app.widgets.plotsheet import NAMED_EVENTS
from app.words import shown
from core.guidance.drift import Drift
from core.guidance.driftwords import limit_text
from core.measuring.chart import Phase, Standing
from core.words import Words, tr

Floats = NDArray[np.float64]

DAY_S = 86400.0


def limit_lines(
    drift: Drift,
    wanted: Sequence[tuple[Words, Callable[[Phase], float], bool]],
    factor: float,
    *,
    signed: bool = True,
) -> tuple[LimitLine, ...]:
    """Return each limit as one line for the firm phases and one for those on trial, named at the newest phase."""
    lines = []
    for standing in (Standing.FIRM, Standing.TRIAL):
        phases = [phase for phase in drift.individuals.phases if phase.standing is standing]
        ends = [end for phase in phases for end in (phase.start + 0.5, phase.stop + 0.5, np.nan)]
        for name, level, centre in wanted if phases else ():
            y = [factor * part for phase in phases for part in (level(phase), level(phase), np.nan)]
            newest = phases[-1] is drift.phase
            named = _limit_name(drift, name, level(drift.phase), signed=signed) if newest else ("", "")
            lines.append(_line(named, np.array(ends[:-1]), np.array(y[:-1]), standing, centre=centre))
    return tuple(lines)


def _line(named: tuple[str, str], x: Floats, y: Floats, standing: Standing, *, centre: bool) -> LimitLine:
    name, short = named
    return LimitLine(name, x, y, short, dashed=standing is Standing.TRIAL, centre=centre)


def _limit_name(drift: Drift, name: Words, level: float, *, signed: bool = True) -> tuple[str, str]:
    """Return the name with its value, and the value alone for where there is little room."""
    text = limit_text(drift, level)
    value = local_text(text if signed else text.removeprefix("+"))
    return f"{shown(name)} {value}", value


def smooth_limits(drift: Drift, factor: float) -> tuple[LimitLine, ...]:
    """Return the limits of the smoothed mean, which widen over its first results, and the mean."""
    lines = []
    for name, side in ((tr("upper"), 1.0), (tr("mean"), 0.0), (tr("lower"), -1.0)):
        for standing in (Standing.FIRM, Standing.TRIAL):
            phases = [phase for phase in drift.ewma.phases if phase.standing is standing]
            x, y = np.empty(0), np.empty(0)
            for phase in phases:
                places = np.arange(phase.start, phase.stop)
                x = np.concatenate([x, [np.nan], places + 1.0])
                y = np.concatenate([y, [np.nan], phase.centre + side * drift.ewma.half_width[places]])
            if phases:
                newest = phases[-1] is drift.ewma.phases[-1]
                named = _limit_name(drift, name, float(y[-1])) if newest else ("", "")
                lines.append(_line(named, x[1:], factor * y[1:], standing, centre=side == 0.0))
    return tuple(lines)


def event_marks(drift: Drift, *, in_order: bool) -> tuple[EventMark, ...]:
    """Return the events: between the results they fell between, or at their day; only the newest keep their names."""
    seen = [(place, event) for place, event in drift.events if not in_order or 0 < place < len(drift.points)]
    unnamed = len(seen) - NAMED_EVENTS
    return tuple(
        EventMark(
            place + 0.5 if in_order else event.at.timestamp() / DAY_S, shown(event.label) if number >= unnamed else ""
        )
        for number, (place, event) in enumerate(seen)
    )
