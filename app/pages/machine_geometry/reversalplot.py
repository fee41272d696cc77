"""The pictures of a reversal trial: both directions as the standard draws them, or the broken stick."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from app.units import hold
from app.widgets.fields import local_text, number_text
from app.widgets.plotdata import EventMark, FitCurve, LimitLine, PlotData, PointSeries
from app.words import shown
from core.guidance.playlimits import LIMIT_MM
from core.guidance.pushadvice import DRAG_N
from core.guidance.reversaladvice import ReversalJudgement
from core.machine_geometry.lostmotion import LostMotion
from core.machine_geometry.quickcycle import QuickReversal
from core.machine_geometry.reversal import Approach, Approached, Reversal
from core.machine_geometry.stiffness import Stiffness, side_words
from core.measuring.rownames import row_words
from core.quantity import value_text
from core.words import tr

Floats = NDArray[np.float64]
_UP, _DOWN = 0, 1  # data colours
_ROOM_FOR_PLACES = 1.6  # height against that of the readings, so that the names of the places stand free
_LEAST_MM = 0.04  # height of the picture that still shows the limits in proportion


def reversal_plot(judgement: ReversalJudgement) -> PlotData:
    """Return the picture of a trial."""
    fit = judgement.fit
    summary = " ".join(shown(advice.because) for advice in judgement.advice)
    if isinstance(fit, QuickReversal):
        return _pairs_plot(fit, summary)
    if isinstance(fit, Reversal):
        return _cycle_plot(fit, judgement, summary)
    if isinstance(fit, Stiffness):
        return _push_plot(fit, summary)
    return _curve_plot(fit, summary)


def _pairs_plot(fit: QuickReversal, summary: str) -> PlotData:
    """Draw each place's readings about their mean, pair after pair: the gap between the lines is the reversal error."""
    curves: list[FitCurve] = []
    events: list[EventMark] = []
    ups, downs, x, flagged = [], [], [], []
    start = 1
    for place in fit.places:
        n = len(place.rows)
        middle = (place.up_mm.mean() + place.down_mm.mean()) / 2.0
        at = np.arange(start, start + n, dtype=float)
        x.append(at)
        ups.append(place.up_mm - middle)
        downs.append(place.down_mm - middle)
        flagged.append(place.flagged)
        ends = np.array([start - 0.3, start + n - 0.7])
        names = ("", "") if events else (shown(tr("from −")), shown(tr("from +")))  # said once, at the first place
        curves += [_level(names[0], ends, ups[-1], _UP), _level(names[1], ends, downs[-1], _DOWN)]
        events.append(EventMark(start - 0.5, shown(row_words(place.name))))
        start += n
    where, marks = np.concatenate(x), np.concatenate(flagged)
    up, down = np.concatenate(ups), np.concatenate(downs)
    span = float(np.ptp(np.concatenate([up, down])))
    return PlotData(
        points=(
            PointSeries(shown(tr("from −")), where, up, symbol="▶", role=_UP, flagged=marks),
            PointSeries(shown(tr("from +")), where, down, symbol="◀", role=_DOWN, flagged=marks),
        ),
        curves=tuple(curves),
        x_label=shown(tr("pair, in the order of reading")),
        y_label=shown(tr("reading − middle of its place, mm")),
        title=shown(tr("Readings from either side")),
        flag_label=shown(tr("stands out")),
        events=tuple(events),
        bands_label=shown(tr("±2s")),
        summary=summary,
        least_y_span=max(_LEAST_MM, _ROOM_FOR_PLACES * span),
    )


def _push_plot(fit: Stiffness, summary: str) -> PlotData:
    """Draw how far each push moved it, side by side, with the limit that 5 N must keep, scaled to this push."""
    curves, events, points = [], [], []
    start = 1
    for role, side in enumerate(fit.sides):
        name, n = shown(side_words(side.side, fit.axis)), side.moved_mm.size
        ends = np.array([start - 0.3, start + n - 0.7])
        points.append(PointSeries(name, np.arange(start, start + n, dtype=float), side.moved_mm, role=role))
        curves.append(_level("", ends, side.moved_mm, role))
        events.append(EventMark(start - 0.5, name))
        start += n
    limit = LIMIT_MM * fit.push.force_n / DRAG_N
    ends = np.array([0.5, start - 0.5])
    top = max(limit, *(float(side.moved_mm.max()) for side in fit.sides))
    return PlotData(
        points=tuple(points),
        curves=tuple(curves),
        x_label=shown(tr("push, in the order of reading")),
        y_label=shown(tr("moved by {force} N, mm", force=number_text(fit.push.force_n))),
        title=shown(tr("Stiffness")),
        events=tuple(events),
        bands_label=shown(tr("±2s")),
        summary=summary,
        limits=(LimitLine(shown(tr("limit {value} mm", value=number_text(limit, 3))), ends, np.full(2, limit),
                          shown(tr("limit")), dashed=True),),
        least_y_span=_ROOM_FOR_PLACES * top,
    )  # fmt: skip


def _level(name: str, ends: Floats, values: Floats, role: int) -> FitCurve:
    return FitCurve(
        name, ends, np.full(2, values.mean()), prediction_half=np.full(2, 2.0 * values.std(ddof=1)), role=role
    )


def _cycle_plot(fit: Reversal, judgement: ReversalJudgement, summary: str) -> PlotData:
    """Draw deviation against position as the standard does: readings, means of both directions with ±2s, and A."""
    return PlotData(
        points=(
            _series(shown(tr("from −")), judgement, fit, Approach.UP, "▶", _UP),
            _series(shown(tr("from +")), judgement, fit, Approach.DOWN, "◀", _DOWN),
        ),
        curves=(
            _direction(shown(tr("from −")), fit.target_mm, fit.up, _UP),
            _direction(shown(tr("from +")), fit.target_mm, fit.down, _DOWN),
        ),
        x_label=hold(shown(tr("position, mm"))),
        y_label=shown(tr("measured − target, mm")),
        title=shown(tr("Deviation")),
        bands_label=shown(tr("±2s")),
        summary=summary,
        limits=_of_the_standard(fit),
        zero_line=bool(np.abs(np.concatenate([fit.up.mean_mm, fit.down.mean_mm])).max() < 1.0),  # the origin is free
        least_y_span=_LEAST_MM / 4,
    )


def _of_the_standard(fit: Reversal) -> tuple[LimitLine, ...]:
    """Return the mean of both directions, whose range is M, and the ends of A, named at the upper one."""
    middle = (fit.up.mean_mm + fit.down.mean_mm) / 2.0
    ends = fit.target_mm[[0, -1]]
    high = float(max(fit.up.high_mm.max(), fit.down.high_mm.max()))
    low = float(min(fit.up.low_mm.min(), fit.down.low_mm.min()))
    size = local_text(value_text(fit.estimate("accuracy")).removeprefix("+"))
    return (
        LimitLine(shown(tr("mean of both")), fit.target_mm, middle, shown(tr("mean")), centre=True),
        LimitLine(f"A {size}", ends, np.full(2, high), "A", dashed=True),
        LimitLine("", ends, np.full(2, low), dashed=True),
    )


def _series(
    name: str, judgement: ReversalJudgement, fit: Reversal, way: Approach, symbol: str, role: int
) -> PointSeries:
    r = judgement.readings
    target, reading = np.asarray(r.nominal_mm, dtype=float), np.asarray(r.reading_mm, dtype=float)
    use = np.isfinite(reading) & np.isin(target, fit.target_mm) & (np.array(r.approach, dtype=str) == str(way))
    return PointSeries(name, target[use], (reading - target)[use], symbol=symbol, role=role)


def _direction(name: str, target_mm: Floats, way: Approached, role: int) -> FitCurve:
    return FitCurve(name, target_mm, way.mean_mm, prediction_half=2.0 * way.sd_mm, role=role)


def _curve_plot(fit: LostMotion, summary: str) -> PlotData:
    """Draw travel against command with its broken stick, and the line of an axis that loses nothing."""
    x = np.unique(np.concatenate([np.linspace(fit.commanded_mm[0], fit.commanded_mm[-1], 81), [fit.stick.knee.at]]))
    ends = fit.commanded_mm[[0, -1]]
    share = number_text(100.0 * fit.stick.slope, 0)
    play = value_text(fit.play).removeprefix("+")
    return PlotData(
        points=(PointSeries(shown(tr("readings")), fit.commanded_mm, fit.travel_mm, symbol="●", role=2),),
        curves=(FitCurve(shown(tr("{share} % of the command arrives", share=share)), x, fit.stick.mean(x), role=2),),
        x_label=hold(shown(tr("commanded since the turn, mm"))),
        y_label=shown(tr("travelled, mm")),
        title=shown(tr("Lost-motion curve")),
        summary=summary,
        limits=(LimitLine(shown(tr("nothing lost")), ends, ends - ends[0], shown(tr("no loss")), dashed=True),),
        events=(EventMark(fit.stick.knee.at, local_text(shown(tr("play {value}", value=play)))),),
        least_y_span=_LEAST_MM,
    )
