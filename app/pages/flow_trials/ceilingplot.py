"""The picture of a ceiling trial: delivered share against the rate, a broken stick with its band a temperature."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from app.widgets.plotdata import FitCurve, LimitLine, PlotData, PointSeries
from app.words import shown
from core.flow_trials.ceiling import DROP_RATIO, CeilingAt
from core.guidance.ceilingadvice import CeilingJudgement
from core.measuring.brokenstick import stick_band
from core.words import tr

_SYMBOLS = ("●", "▲", "■", "◆", "▼")
_PERCENT = 100.0


def ceiling_plot(judged: CeilingJudgement) -> PlotData:
    """Return shares in percent less commanded, the fits with their bands, and a mark at each ceiling."""
    at = judged.ceiling.at
    return PlotData(
        points=tuple(_points(part, place) for place, part in enumerate(at)),
        curves=tuple(_curve(part, place) for place, part in enumerate(at)),
        limits=(_drop(at),),
        x_label=shown(tr("volumetric rate, mm³/s")),
        y_label=shown(tr("delivered − commanded, %")),
        title=shown(tr("Delivered share")),
        summary=" ".join(shown(advice.because) for advice in judged.advice),
    )


def _points(part: CeilingAt, place: int) -> PointSeries:
    tips = tuple(
        shown(tr("{rate:g} mm³/s at {temperature:.0f} °C: {percent:.1f} % delivered", rate=rate,
                 temperature=part.temperature_c, percent=_PERCENT * share))
        for rate, share in zip(part.rate_mm3_s.tolist(), part.share_ratio.tolist(), strict=True)
    )  # fmt: skip
    off = _PERCENT * (part.share_ratio - 1.0)
    return PointSeries(
        _name(part), part.rate_mm3_s, off, symbol=_SYMBOLS[place % len(_SYMBOLS)], role=place, tips=tips
    )


def _curve(part: CeilingAt, place: int) -> FitCurve:
    """Return the broken stick; of the two sides of its band the wider one is drawn on both."""
    x = np.linspace(float(part.rate_mm3_s.min()), part.highest_mm3_s, 121)
    low, high = stick_band(part.rate_mm3_s, part.share_ratio, part.stick, x)
    mean = part.stick.mean(x) if part.stick.seen else np.full(x.shape, float(part.share_ratio.mean()))
    half = np.maximum(high - mean, mean - low)
    return FitCurve(_name(part), x, _PERCENT * (mean - 1.0), _PERCENT * half, role=place)


def _drop(at: Sequence[CeilingAt]) -> LimitLine:
    """Return the share at which the ceiling is read off: 2 % below the mean level of all temperatures."""
    level = sum(part.stick.level if part.stick.seen else float(part.share_ratio.mean()) for part in at) / len(at)
    ends = np.array([0.0, max(part.highest_mm3_s for part in at)])
    off = _PERCENT * (level * (1.0 - DROP_RATIO) - 1.0)
    return LimitLine(shown(tr("2 % less")), ends, np.full(2, off), dashed=True)


def _name(part: CeilingAt) -> str:
    return shown(tr("{temperature:.0f} °C", temperature=part.temperature_c))
