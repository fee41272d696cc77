"""The picture of an instrument check: correction against length, between the limits of error."""

from __future__ import annotations

import numpy as np

from app.widgets.fields import local_text, number_text
from app.widgets.plotdata import FitCurve, Ground, PlotData, PointSeries
from app.words import shown
from core.errors import InputError
from core.measuring.checkpoints import Point
from core.measuring.instrument import InstrumentCheck
from core.measuring.instrumentkinds import Part, usual_limit
from core.quantity import rounded_pair
from core.words import tr

_FAMILIES = (  # parts, name, symbol, colour
    ((Part.ZERO, Part.LENGTH), tr("outside"), "▲", 0),
    ((Part.INSIDE,), tr("inside"), "▼", 1),
    ((Part.TIP,), tr("at the tips"), "◆", 2),
    ((Part.DEPTH,), tr("depth rod"), "■", 3),
)
_GROUND_STEPS = 401


def instrument_plot(check: InstrumentCheck, kind: str, limit: float | None) -> PlotData:
    """Return the picture of a check; `limit` as typed, None for the usual one."""
    unit = check.kind.unit
    points = tuple(
        _series([p for p in check.points if p.part in parts], shown(name), symbol, role, unit)
        for parts, name, symbol, role in _FAMILIES
        if any(p.part in parts for p in check.points)
    )
    curve = check.curve()
    worst = check.worst()
    return PlotData(
        points=points,
        curves=(FitCurve(shown(tr("correction")), curve.length, curve.correction, curve.U),) if curve else (),
        ground=_ground(check.points, kind, limit) if check.points else None,
        x_label=shown(tr("reference, {unit}", unit=unit)),
        y_label=shown(tr("correction, {unit}", unit=unit)),
        title=shown(tr("Correction against reference")),
        summary="" if worst is None else _tip(worst, unit),
        least_y_span=2.4 * min((p.limit for p in check.points), default=0.01),
    )


def _series(points: list[Point], name: str, symbol: str, role: int, unit: str) -> PointSeries:
    return PointSeries(
        name=name,
        x=np.array([p.reference for p in points]),
        y=np.array([-p.error for p in points]),
        U=np.array([p.budget.U for p in points]),
        symbol=symbol,
        role=role,
        tips=tuple(_tip(p, unit) for p in points),
    )


def _tip(point: Point, unit: str) -> str:
    value, U = rounded_pair(-point.error, point.budget.U)
    return shown(
        tr(
            "Correction at {reference} {unit}: {value} ± {U} {unit}, readings: {count}; limit ± {limit} {unit}",
            reference=number_text(point.reference),
            value=local_text(value),
            U=local_text(U),
            count=point.count,
            limit=number_text(point.limit),
            unit=unit,
        )
    )


def _ground(points: tuple[Point, ...], kind: str, limit: float | None) -> Ground:
    """Return the limit of error as a ground, its steps upright."""
    highest = max(p.reference for p in points) * 1.1
    low = min(0.0, *(p.reference for p in points))
    x = np.linspace(low, highest if highest > low else 1.0, _GROUND_STEPS)
    half = np.array([limit if limit is not None else _usual(kind, value, points) for value in x])
    return Ground(x, half, shown(tr("limit of error")))


def _usual(kind: str, value: float, points: tuple[Point, ...]) -> float:
    try:
        return usual_limit(kind, value)
    except InputError:  # just beyond the longest length of the table
        return points[-1].limit
