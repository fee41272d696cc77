"""The picture of a size trial: error against nominal length, one line for outside and one for inside.

Slope is scale, the gap between the lines is twice twice the wall outset, ringed points (closed outlines) drop by the
lost motion.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from app.pages.part_size.sizerows import LeftOut
from app.units import hold
from app.widgets.fields import number_text
from app.widgets.plotdata import FitCurve, Ground, PlotData, PointSeries, Tips, WarningCurve
from app.words import shown
from core.errors import InputError
from core.guidance.findings import tolerances_at
from core.guidance.sizetrial import SizeJudgement, SizeReadings
from core.measuring.rownames import row_words
from core.measuring.tolerance import CLASSES
from core.part_size.features import FEATURES, FeatureKind, kind_words
from core.part_size.forecast import small_piece_curve
from core.quantity import coverage_factor, value_text
from core.words import tr

Floats = NDArray[np.float64]

_STEPS = 41
_GROUND_STEPS = 601  # so that the steps of a tolerance class look upright
_SHORT_MM = 30.0  # up to here a length is one that people scale from


@dataclass(frozen=True, slots=True)
class _Family:
    """Kinds that share a line, the kinds whose line is drawn first, symbol and colour."""

    kinds: tuple[FeatureKind, ...]
    line: tuple[FeatureKind, ...]
    symbol: str
    role: int


_K = FeatureKind
_FAMILIES = (
    _Family((_K.OUTSIDE, _K.TOOTH), (_K.TOOTH, _K.OUTSIDE), "▲", 0),
    _Family((_K.CLOSED_HOLE, _K.NOTCH, _K.GAP), (_K.NOTCH, _K.CLOSED_HOLE, _K.GAP), "▼", 1),
    _Family((_K.SAME_FACING, _K.RING_MEAN), (_K.SAME_FACING, _K.RING_MEAN), "●", 2),
    _Family((_K.BOSS,), (_K.BOSS,), "◆", 0),
    _Family((_K.BORE,), (_K.BORE,), "■", 1),
    _Family((_K.HEIGHT,), (_K.HEIGHT,), "◆", 2),
    _Family((_K.TRAVEL,), (_K.TRAVEL,), "●", 2),
    _Family((_K.FIRST_LAYER,), (_K.FIRST_LAYER,), "■", 2),
)
_RINGED = (FeatureKind.OUTSIDE, FeatureKind.CLOSED_HOLE)


def size_plot(
    readings: SizeReadings, judgement: SizeJudgement, axis: str, left_out: Sequence[LeftOut] = ()
) -> PlotData:
    """Return the picture of one axis of a judged trial, excluded readings hollow."""
    mine = np.array([a == axis for a in readings.axis])
    nominal = np.asarray(readings.nominal_mm, dtype=float)
    present = {FeatureKind(kind) for kind, use in zip(readings.kind, mine.tolist(), strict=True) if use}
    travel = FeatureKind.TRAVEL in present
    x = _span(nominal[mine], travel=travel)
    families = [f for f in _FAMILIES if present.intersection(f.kinds)]
    points = tuple(_points(f, readings, judgement, mine, present) for f in families)
    points += tuple(_hollow(out) for out in left_out if out.axis == axis)
    curves = tuple(c for f in families if (c := _curve(f, judgement, axis, present, x)) is not None)
    return PlotData(
        points=points,
        curves=curves,
        warning_curve=_warning(readings, judgement, axis, mine, x),
        ground=None if travel else _ground(readings, x),
        x_label=hold(shown(tr("commanded position, mm"))) if travel else shown(tr("nominal length, mm")),
        y_label=shown(tr("measured − nominal, mm")),
        title=shown(tr("Error against length")),
        ring_label=shown(tr("closed outline")) if _both_ways(present) else "",
        flag_label=shown(tr("stands out")),
        summary=_summary(judgement, axis, int(mine.sum())),
    )


def _points(
    family: _Family, readings: SizeReadings, judgement: SizeJudgement, mine: NDArray[np.bool_],
    present: Collection[FeatureKind],
) -> PointSeries:
    fit = judgement.fit
    rows = np.flatnonzero(mine & np.isin(np.array(readings.kind), family.kinds))
    scatter = fit.scattered
    U = coverage_factor(scatter.dof) * math.sqrt(scatter.next_mm2) if math.isfinite(scatter.next_mm2) else 0.0
    return PointSeries(
        name=shown(kind_words(next(kind for kind in family.line if kind in present))),
        x=np.asarray(readings.nominal_mm, dtype=float)[rows],
        y=fit.reading_error_mm[rows],
        U=np.full(rows.size, U),
        symbol=family.symbol,
        role=family.role,
        ringed=np.isin(np.array(readings.kind)[rows], _RINGED),
        tips=Tips(rows.size, lambda place: _tip(readings, judgement, int(rows[place]))),
        flagged=fit.flagged[rows],
    )


def _hollow(out: LeftOut) -> PointSeries:
    family = next(f for f in _FAMILIES if out.kind in f.kinds)
    return PointSeries(
        name=shown(tr("excluded")),
        x=np.array([out.nominal_mm]),
        y=np.array([out.measured_mm - out.nominal_mm]),
        symbol=family.symbol,
        role=family.role,
        tips=(shown(tr("Excluded: {reason}", reason=out.reason)),),
        hollow=np.array([True]),
    )


def _tip(readings: SizeReadings, judgement: SizeJudgement, row: int) -> str:
    return shown(
        tr(
            "{name}: nominal {nominal} mm, read {reading} mm, error {error} mm, off the line by {rest} mm",
            name=row_words(readings.feature[row]) or kind_words(FeatureKind(readings.kind[row])),
            nominal=number_text(readings.nominal_mm[row]),
            reading=number_text(readings.measured_mm[row]),
            error=number_text(float(judgement.fit.reading_error_mm[row]), 3),
            rest=number_text(float(judgement.fit.residual_mm[row]), 3),
        )
    )


def _curve(
    family: _Family, judgement: SizeJudgement, axis: str, present: Collection[FeatureKind], x: Floats
) -> FitCurve | None:
    for kind in (k for k in family.line if k in present):
        band = judgement.fit.band(axis, kind, x)
        if band is not None:
            scale = judgement.fit.estimate(f"scale_{axis}")
            name = shown(
                tr(
                    "{kind}, slope {scale}",
                    kind=_family_name(family),
                    scale=value_text(scale) if scale else shown(tr("not told")),
                )
            )
            return FitCurve(name, x, band.mean_mm, band.confidence_mm, band.prediction_mm, family.role)
    return None


def _family_name(family: _Family) -> str:
    return {
        _K.OUTSIDE: shown(tr("outside")),
        _K.CLOSED_HOLE: shown(tr("inside")),
        _K.SAME_FACING: shown(tr("same-facing")),
        _K.BOSS: shown(tr("bosses")),
        _K.BORE: shown(tr("bores")),
        _K.HEIGHT: shown(tr("heights")),
        _K.TRAVEL: shown(tr("travel")),
        _K.FIRST_LAYER: shown(tr("first layers")),
    }[family.kinds[0]]


def _warning(
    readings: SizeReadings, judgement: SizeJudgement, axis: str, mine: NDArray[np.bool_], x: Floats
) -> WarningCurve | None:
    """Draw what correcting the steps from the shortest length would do to all the others."""
    told = {kind for kind in set(readings.kind) if FEATURES[FeatureKind(kind)].k > 0}
    own = [
        (L, k)
        for L, k, use in zip(readings.nominal_mm, readings.kind, mine.tolist(), strict=True)
        if use and L > 0 and k in told
    ]
    if not own:
        return None
    shortest, kind = min(own)
    if shortest > _SHORT_MM:
        return None
    try:
        y = small_piece_curve(judgement.fit, axis, FeatureKind(kind), shortest, x)
    except InputError:
        return None
    if y is None:
        return None
    label = shown(tr("if the steps were corrected from {length} mm", length=number_text(shortest)))
    return WarningCurve(x, y, label, shown(tr("small-piece correction")))


def _ground(readings: SizeReadings, span: Floats) -> Ground:
    x = np.linspace(span[0], span[-1], _GROUND_STEPS)
    half = tolerances_at(x, readings.tolerance)
    if isinstance(readings.tolerance, str):
        return Ground(x, half, shown(CLASSES[readings.tolerance]).partition(",")[0])
    return Ground(x, half, shown(tr("± {tolerance} mm", tolerance=number_text(readings.tolerance))))


def _span(lengths: Floats, travel: bool) -> Floats:
    low, high = float(lengths.min()), float(lengths.max())
    if travel:
        return np.linspace(low, high if high > low else low + 1.0, _STEPS)
    return np.linspace(min(1.0, low), high * 1.1, _STEPS)


def _both_ways(kinds: Collection[FeatureKind]) -> bool:
    return any(k in _RINGED for k in kinds) and any(FEATURES[k].r == 0 and not FEATURES[k].constant for k in kinds)


def _summary(judgement: SizeJudgement, axis: str, count: int) -> str:
    scale = judgement.fit.estimate(f"scale_{axis}")
    slope = value_text(scale) if scale else shown(tr("not told yet"))
    says = tr("Readings along {axis}: {count}; scale error {slope}.", count=count, axis=axis.upper(), slope=slope)
    return shown(says)
