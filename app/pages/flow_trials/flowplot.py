"""Pictures of flow trials: the readings with their mean, and the estimates of the factor side by side."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from app.widgets.fields import number_text
from app.widgets.plotdata import FitCurve, Ground, PlotData, PointSeries
from app.words import shown
from core.flow_trials.combine import LEAVE_RATIO, FlowAnswer
from core.flow_trials.top import TopFlow
from core.guidance.flowadvice import FlowJudgement
from core.quantity import Estimate, rounded_pair
from core.words import tr

Floats = NDArray[np.float64]

_PLACES = {"flow_ratio_wall": (1.0, "■", 0), "flow_ratio_mass": (2.0, "●", 1), "flow_ratio_top": (3.0, "▲", 2)}
_TOGETHER_ROLE = 4
_IN_FORCE_ROLE = 6  # ink: it is no estimate
_RIGHT_ROLE = 2


@dataclass(frozen=True, slots=True, eq=False)
class Series:
    """Readings in order, their mean with U, and what they would be at the right flow; all in one unit."""

    names: Sequence[str]
    values: Floats
    mean: float
    U: float
    right: float
    x_label: str
    y_label: str
    unit: str
    least_span: float


def series_plot(data: Series) -> PlotData:
    """Return readings over their number, with mean and right value."""
    number = np.arange(1.0, data.values.size + 1.0)
    ends = np.array([0.5, number[-1] + 0.5])
    mean, U = rounded_pair(data.mean, data.U)
    told = shown(
        tr("mean less ridges, {mean} ± {U} {unit}", mean=mean.removeprefix("+"), U=U, unit=data.unit)
        if data.mean < float(np.mean(data.values)) - 1e-9
        else tr("mean, {mean} ± {U} {unit}", mean=mean.removeprefix("+"), U=U, unit=data.unit)
    )
    right = shown(tr("right flow, {right:.4g} {unit}", right=data.right, unit=data.unit))
    return PlotData(
        points=(
            PointSeries(
                shown(tr("readings")),
                number,
                data.values,
                symbol="●",
                role=0,
                tips=tuple(
                    f"{name}: {number_text(float(value))} {data.unit}"
                    for name, value in zip(data.names, data.values, strict=True)
                ),
            ),
        ),
        curves=(
            FitCurve(told, ends, np.full(2, data.mean), np.full(2, data.U), role=0),
            FitCurve(right, ends, np.full(2, data.right), role=_RIGHT_ROLE),
        ),
        x_label=data.x_label,
        y_label=data.y_label,
        title=shown(tr("Readings")),
        summary=f"{told}; {right}.",
        zero_line=False,
        least_y_span=data.least_span,
    )


def top_plot(found: TopFlow) -> PlotData:
    """Return the scores of each judge over the change of the factor, with the line and where it crosses zero."""
    percent = 100.0 * found.change_ratio
    x = np.linspace(float(percent.min()), float(percent.max()), 41)
    value, U = rounded_pair(100.0 * found.crossing.value, 100.0 * found.crossing.U)
    told = shown(tr("zero at {value} ± {U} %", value=value, U=U))
    who = np.array(found.judge)
    return PlotData(
        points=tuple(
            PointSeries(
                shown(tr("judge {number}", number=judge)),
                percent[who == judge],
                found.score[who == judge],
                symbol=symbol,
                role=role,
            )
            for judge, symbol, role in zip(sorted(set(found.judge)), "●▲■◆", range(4), strict=False)
        ),
        curves=(FitCurve(told, x, found.line.at(x / 100.0)[0], found.line.band(x / 100.0), role=_TOGETHER_ROLE),),
        x_label=shown(tr("change of the factor in force, %")),
        y_label=shown(tr("score: gaps below zero, ridges above")),
        title=shown(tr("Scores")),
        summary=shown(tr("Scores: {count}; {told}.", count=found.score.size, told=told)),
        least_y_span=1.0,
    )


def estimates_plot(judged: FlowJudgement) -> PlotData:
    """Return the estimates of the factor side by side with their intervals, and all together unless they conflict."""
    base, flow = judged.conditions.in_force_ratio, judged.flow
    ends = np.array([0.4, 3.6])
    points = tuple(_interval(estimate, base) for estimate in flow.estimates)
    curves = [FitCurve(shown(tr("in force, {factor:g}", factor=base)), ends, np.zeros(2), role=_IN_FORCE_ROLE)]
    said = [series.tips[0] for series in points]
    if flow.answer is FlowAnswer.CONFLICT:
        said.append(shown(tr("they conflict")))
    else:
        name = _said(tr("together"), flow.combined, base)
        mean, half = np.full(2, 100.0 * flow.change.value), np.full(2, 100.0 * flow.change.U)
        curves.append(FitCurve(name, ends, mean, half, role=_TOGETHER_ROLE))
        said.append(name)
    return PlotData(
        points=points,
        curves=tuple(curves),
        ground=Ground(ends, np.full(2, 100.0 * LEAVE_RATIO), shown(tr("leave it: ±1.5 %"))),
        x_label=shown(tr("1 wall, 2 mass, 3 top pads")),
        y_label=shown(tr("change of the factor in force, %")),
        title=shown(tr("Estimates of flow")),
        summary="; ".join(said) + ".",
        least_y_span=4.0,
    )


def _interval(estimate: Estimate, base: float) -> PointSeries:
    place, symbol, role = _PLACES[estimate.name]
    names = {"flow_ratio_wall": tr("wall"), "flow_ratio_mass": tr("mass"), "flow_ratio_top": tr("top pads")}
    return PointSeries(
        shown(names[estimate.name]),
        np.array([place]),
        np.array([100.0 * (estimate.value / base - 1.0)]),
        np.array([100.0 * estimate.U / base]),
        symbol=symbol,
        role=role,
        tips=(_said(names[estimate.name], estimate, base),),
    )


def _said(name: str, estimate: Estimate, base: float) -> str:
    value, U = rounded_pair(100.0 * (estimate.value / base - 1.0), 100.0 * estimate.U / base)
    return shown(tr("{name}, {value} ± {U} %", name=name, value=value, U=U))
