"""A plot for people who measure in inch: what is in mm at either axis is divided, once, on the way to the canvas."""

from __future__ import annotations

from dataclasses import replace

from app.units import inch_heading, inch_sentence, is_length
from app.widgets.plotdata import EventMark, FitCurve, Ground, LimitLine, PlotData, PointSeries, Tips, WarningCurve
from core.quantity import MM_PER_INCH


def plot_in_inch(data: PlotData) -> PlotData:
    """Return the plot with lengths in inch; an axis in another unit stays as it is."""
    a = MM_PER_INCH if is_length(data.x_label) else 1.0
    b = MM_PER_INCH if is_length(data.y_label) else 1.0
    return replace(
        data,
        points=tuple(_points(series, a, b) for series in data.points),
        curves=tuple(_curve(curve, a, b) for curve in data.curves),
        warning_curve=data.warning_curve and _warning(data.warning_curve, a, b),
        ground=data.ground and _ground(data.ground, a, b),
        limits=tuple(_limit(line, a, b) for line in data.limits),
        events=tuple(EventMark(mark.x / a, inch_sentence(mark.name)) for mark in data.events),
        least_y_span=data.least_y_span / b,
        x_label=inch_heading(data.x_label),
        y_label=inch_heading(data.y_label),
        summary=inch_sentence(data.summary),
        title=inch_sentence(data.title),
    )


def _points(series: PointSeries, a: float, b: float) -> PointSeries:
    tips = Tips(len(series.tips), lambda place: inch_sentence(series.tips[place]))
    return replace(series, name=inch_sentence(series.name), x=series.x / a, y=series.y / b, U=series.U / b, tips=tips)


def _curve(curve: FitCurve, a: float, b: float) -> FitCurve:
    confidence, prediction = curve.confidence_half / b, curve.prediction_half / b
    return replace(curve, name=inch_sentence(curve.name), x=curve.x / a, mean=curve.mean / b,
                   confidence_half=confidence, prediction_half=prediction)


def _warning(curve: WarningCurve, a: float, b: float) -> WarningCurve:
    label, switch = inch_sentence(curve.label), inch_sentence(curve.switch)
    return replace(curve, x=curve.x / a, y=curve.y / b, label=label, switch=switch)


def _ground(ground: Ground, a: float, b: float) -> Ground:
    return replace(ground, x=ground.x / a, half_height=ground.half_height / b, label=inch_sentence(ground.label))


def _limit(line: LimitLine, a: float, b: float) -> LimitLine:
    name, short = inch_sentence(line.name), inch_sentence(line.short)
    return replace(line, x=line.x / a, y=line.y / b, name=name, short=short)
