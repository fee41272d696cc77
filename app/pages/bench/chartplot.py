"""The pictures of a chart: single results, their moving ranges, the smoothed mean, and results by date."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from app.dates import moment_text
from app.pages.bench.chartlines import DAY_S, event_marks, limit_lines, smooth_limits
from app.widgets.plotdata import PlotData, PointSeries, Tips
from app.words import shown
from core.guidance.drift import Drift
from core.guidance.driftwords import drift_unit, limit_text, spaced_unit, value_with_unit
from core.measuring.chart import Standing
from core.measuring.runrules import Rule, Run
from core.quantity import coverage_factor
from core.records.rows import SeriesPoint
from core.words import Words, tr

Floats = NDArray[np.float64]

_ROLE, _RESULT_ROLE = 0, 6  # beside the smoothed mean the results are in ink


def individuals_plot(drift: Drift) -> PlotData:
    """Return the single results with their limits."""
    factor, unit = drift_unit(drift)
    flagged = _flags(drift, drift.individuals.runs, *(rule for rule in Rule if rule is not Rule.SPREAD))
    lines = [
        (tr("upper"), lambda phase: phase.limits[1], False),
        (tr("mean"), lambda phase: phase.centre, True),
        (tr("lower"), lambda phase: phase.limits[0], False),
    ]
    return PlotData(
        points=(_results(drift, flagged, joined=True),),
        x_label=_order_label(drift),
        y_label=_with_unit(shown(drift.quantity.words), unit),
        summary=_summary(drift, flagged),
        title=shown(tr("Single results")),
        flag_label=shown(tr("signal")),
        zero_line=False,
        least_y_span=_least_span(drift, factor),
        limits=limit_lines(drift, lines, factor),
        events=event_marks(drift, in_order=True),
    )


def _with_unit(name: str, unit: str) -> str:
    return f"{name}, {unit}" if unit else name


def ranges_plot(drift: Drift) -> PlotData:
    """Return the moving ranges of two results with their limit."""
    factor, unit = drift_unit(drift)
    flagged = _flags(drift, drift.individuals.runs, Rule.SPREAD)
    ranges = factor * drift.individuals.moving_range
    tips = Tips(ranges.size, lambda place: _range_tip(drift, place))
    lines = [
        (tr("limit"), lambda phase: phase.moving_range_limit, False),
        (tr("mean"), lambda phase: phase.mean_moving_range, True),
    ]
    name = shown(tr("moving range of two"))
    return PlotData(
        points=(PointSeries(name, _order(drift), ranges, symbol="●", role=_ROLE, tips=tips, flagged=flagged,
                            joined=True, breaks=_breaks(drift)),),
        x_label=_order_label(drift),
        y_label=_with_unit(name, unit),
        summary=_summary(drift, flagged),
        title=shown(tr("Moving range")),
        flag_label=shown(tr("signal")),
        least_y_span=_least_span(drift, factor),
        limits=limit_lines(drift, lines, factor, signed=False),
        events=event_marks(drift, in_order=True),
    )  # fmt: skip


def ewma_plot(drift: Drift) -> PlotData:
    """Return the smoothed mean with its limits, the results themselves hollow."""
    factor, unit = drift_unit(drift)
    flagged = _flags(drift, drift.ewma.runs, Rule.SMOOTHED)
    tips = Tips(len(drift.points), lambda place: _smooth_tip(drift, place))
    smooth = PointSeries(
        shown(tr("smoothed mean")), _order(drift), factor * drift.ewma.smoothed, symbol="●", role=_ROLE, tips=tips,
        flagged=flagged, joined=True, breaks=_breaks(drift),
    )  # fmt: skip
    has_limits = any(phase.standing is not Standing.NONE for phase in drift.ewma.phases)
    return PlotData(
        points=(smooth, _results(drift, np.zeros(len(drift.points), dtype=bool), hollow=has_limits)),
        x_label=_order_label(drift),
        y_label=_with_unit(shown(drift.quantity.words), unit),
        summary=_summary(drift, flagged),
        title=shown(tr("Smoothed mean")),
        flag_label=shown(tr("signal")),
        zero_line=False,
        least_y_span=_least_span(drift, factor),
        limits=smooth_limits(drift, factor),
        events=event_marks(drift, in_order=True),
    )


def dates_plot(drift: Drift) -> PlotData:
    """Return the results by the day they were kept, each with its own uncertainty."""
    factor, unit = drift_unit(drift)
    flagged = _flags(drift, drift.individuals.runs, *Rule)
    days = np.array([point.kept_at.timestamp() / DAY_S for point in drift.points])
    return PlotData(
        points=(_results(drift, flagged, x=days),),
        x_label=shown(tr("day it was kept")),
        y_label=_with_unit(shown(drift.quantity.words), unit),
        summary=_summary(drift, flagged),
        title=shown(tr("Results by date")),
        flag_label=shown(tr("signal")),
        zero_line=False,
        least_y_span=_least_span(drift, factor),
        events=event_marks(drift, in_order=False),
        x_dates=True,
    )


def _results(
    drift: Drift, flagged: NDArray[np.bool_], *, joined: bool = False, hollow: bool = False, x: Floats | None = None
) -> PointSeries:
    factor, _unit = drift_unit(drift)
    count = len(drift.points)
    return PointSeries(
        shown(tr("result")),
        _order(drift) if x is None else x,
        factor * drift.individuals.value,
        np.zeros(count) if hollow else factor * _expanded(drift.points),
        symbol="●",
        role=_RESULT_ROLE if hollow else _ROLE,
        tips=Tips(count, lambda place: _tip(drift, place)),
        flagged=flagged,
        hollow=np.full(count, hollow),
        joined=joined,
        breaks=_breaks(drift),
    )


def _breaks(drift: Drift) -> tuple[int, ...]:
    return tuple(phase.start for phase in drift.individuals.phases[1:])


def _expanded(points: Sequence[SeriesPoint]) -> Floats:
    """Return U (n,) of each; results of one kind share few degrees of freedom, so few factors are looked up."""
    dofs, place = np.unique([point.dof for point in points], return_inverse=True)
    factors = np.array([coverage_factor(float(dof)) for dof in dofs])
    return np.asarray(factors[place] * [point.u for point in points])


def _order(drift: Drift) -> Floats:
    return np.arange(1.0, len(drift.points) + 1)


def _order_label(drift: Drift) -> str:
    first, last = (_day(drift.points[place]) for place in (0, -1))
    return shown(tr("results in their order, {first} to {last}", first=first, last=last))


def _day(point: SeriesPoint) -> str:
    return _when(point).partition(" ")[0]


def _when(point: SeriesPoint) -> str:
    """Return day and time in the order year, month, day, which reads alike everywhere."""
    return moment_text(point.kept_at)


def _flags(drift: Drift, runs: Sequence[Run], *rules: Rule) -> NDArray[np.bool_]:
    flagged = np.zeros(len(drift.points), dtype=bool)
    for run in runs:
        if run.rule in rules:
            flagged[run.completed : run.last + 1] = True
    return flagged


def _least_span(drift: Drift, factor: float) -> float:
    """Return a range that leaves equal results within their uncertainty looking equal."""
    newest = drift.points[-1]
    return 2 * factor * max(newest.u, 1e-6 * abs(newest.value), 1e-12)


def _tip(drift: Drift, place: int) -> str:
    point = drift.points[place]
    value = value_with_unit(drift, point)
    said = tr("Trial {number}, {when}: {value}", number=point.trial_id, when=_when(point), value=value)
    return shown(said) + _signals(drift.individuals.runs, place)


def _range_tip(drift: Drift, place: int) -> str:
    text = limit_text(drift, float(drift.individuals.moving_range[place])).removeprefix("+")
    before, after = drift.points[place - 1].trial_id, drift.points[place].trial_id
    unit = spaced_unit(drift_unit(drift)[1])
    return shown(tr("Trial {before} to {after}: {range}{unit}", before=before, after=after, range=text, unit=unit))


def _smooth_tip(drift: Drift, place: int) -> str:
    point = drift.points[place]
    text, unit = limit_text(drift, float(drift.ewma.smoothed[place])), spaced_unit(drift_unit(drift)[1])
    said = tr("Smoothed mean after trial {number}: {value}{unit}", number=point.trial_id, value=text, unit=unit)
    return shown(said) + _signals(drift.ewma.runs, place)


def _signals(runs: Sequence[Run], place: int) -> str:
    broken = [run.rule for run in runs if run.completed <= place <= run.last]
    return "".join(f"; {shown(rule_words(rule))}" for rule in dict.fromkeys(broken))


def rule_words(rule: Rule) -> Words:
    """Return the name of a rule for the hover."""
    return {
        Rule.BEYOND: tr("beyond the limit"),
        Rule.TWO_OF_THREE: tr("two of three beyond two σ"),
        Rule.ONE_SIDE: tr("eight or more on one side"),
        Rule.STEADILY: tr("six or more steadily up or down"),
        Rule.SPREAD: tr("jump from the one before"),
        Rule.SMOOTHED: tr("smoothed mean beyond its limit"),
    }[rule]


def _summary(drift: Drift, flagged: NDArray[np.bool_]) -> str:
    return shown(
        tr(
            "{quantity}: results {count}, with a signal {signals}. The newest: {newest}.",
            count=len(drift.points),
            quantity=drift.quantity.words,
            signals=int(np.count_nonzero(flagged)),
            newest=value_with_unit(drift, drift.points[-1]),
        )
    )
