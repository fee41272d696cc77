"""Pictures of a feed trial: the repeats with their mean, or what is fed at rising rates with the knee and its band."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from app.widgets.plotdata import FitCurve, Ground, LimitLine, PlotData, PointSeries
from app.words import shown
from core.filament.feed import LEAVE_RATIO, Feed
from core.filament.slip import Slip, SlipAnswer
from core.guidance.feedadvice import FeedJudgement
from core.measuring.brokenstick import stick_band
from core.quantity import Estimate, rounded_pair
from core.words import tr

Floats = NDArray[np.float64]

_PERCENT = 100.0
_FREE_ROLE, _LOADED_ROLE = 0, 1


def feed_plot(judged: FeedJudgement) -> PlotData:
    """Return the picture of a trial: by rate where anything was fed under load."""
    if judged.slip is not None:
        return _by_rate(judged.slip, judged.feed)
    assert judged.feed is not None  # one of the two there is
    return _repeats(judged.feed)


def _repeats(feed: Feed) -> PlotData:
    """Draw each repeat and the mean as the percentage fed less commanded."""
    number = np.arange(1.0, feed.repeats_ratio.size + 1.0)
    ends = np.array([0.5, number[-1] + 0.5])
    said = _percent(feed.ratio)
    mean, U = _PERCENT * (feed.ratio.value - 1.0), _PERCENT * feed.ratio.U
    name = shown(tr("mean, {mean} %", mean=said))
    return PlotData(
        points=(PointSeries(shown(tr("repeats")), number, _PERCENT * (feed.repeats_ratio - 1.0), symbol="●", role=0),),
        curves=(FitCurve(name, ends, np.full(2, mean), np.full(2, U), role=0),),
        ground=Ground(ends, np.full(2, _PERCENT * LEAVE_RATIO), shown(tr("leave it: ±0.5 %"))),
        x_label=shown(tr("repeat")),
        y_label=shown(tr("fed − commanded, %")),
        title=shown(tr("Fed less commanded")),
        summary=shown(tr("Repeats: {count}; mean {mean} %.", count=number.size, mean=said)),
    )


def _by_rate(slip: Slip, feed: Feed | None) -> PlotData:
    """Draw the share of each rate with its interval, the fit with its band, and the repeats without load at zero."""
    highest = float(slip.rates_mm3_s[-1])
    ends = np.array([-0.06, 1.05]) * highest
    free = (_free(feed),) if feed is not None else ()
    said = [tip for series in free for tip in series.tips]
    proved = slip.answer is SlipAnswer.PROVED
    if slip.level is not None:
        said.append(shown(tr("under load, slow, {share} %", share=_percent(slip.level))))
    if proved:
        said.append(shown(tr("no slip is proved up to {rate:.3g} mm³/s", rate=slip.free_to_mm3_s)))
    return PlotData(
        points=(*free, _shares(slip)),
        curves=() if slip.stick is None else _fit(slip),
        ground=Ground(ends, np.full(2, _PERCENT * LEAVE_RATIO), shown(tr("±0.5 %"))),
        x_label=shown(tr("volumetric rate, mm³/s")),
        y_label=shown(tr("fed − commanded, %")),
        title=shown(tr("Fed less commanded")),
        summary="; ".join(said) + "." if said else shown(tr("Rates so far: {count}.", count=slip.rates_mm3_s.size)),
        limits=(_proved(slip),) if proved else (),
    )


def _free(feed: Feed) -> PointSeries:
    """Return the repeats without load as one mark at zero rate."""
    off, U = np.array([_PERCENT * (feed.ratio.value - 1.0)]), np.array([_PERCENT * feed.ratio.U])
    tip = shown(tr("without load {share} %", share=_percent(feed.ratio)))
    return PointSeries(shown(tr("without load")), np.zeros(1), off, U, symbol="■", role=_FREE_ROLE, tips=(tip,))


def _shares(slip: Slip) -> PointSeries:
    tips = tuple(
        shown(tr("{rate:g} mm³/s: {share} %", rate=rate, share=_percent(share)))
        for rate, share in zip(slip.rates_mm3_s.tolist(), slip.shares, strict=True)
    )
    off = np.array([_PERCENT * (share.value - 1.0) for share in slip.shares])
    U = np.array([_PERCENT * share.U for share in slip.shares])
    return PointSeries(shown(tr("under load")), slip.rates_mm3_s, off, U, symbol="●", role=_LOADED_ROLE, tips=tips)


def _proved(slip: Slip) -> LimitLine:
    """Return the upright line from which on slip is proved."""
    lowest = _PERCENT * (float(slip.share_ratio.min()) - 1.0)
    return LimitLine(shown(tr("slip is proved")), np.full(2, slip.free_to_mm3_s), np.array([0.0, lowest]), dashed=True)


def _fit(slip: Slip) -> tuple[FitCurve, ...]:
    """Return the broken stick; of the two sides of its band the wider one is drawn on both."""
    stick = slip.stick
    assert stick is not None  # asked for where there is one
    x = np.linspace(float(slip.rates_mm3_s[0]), float(slip.rates_mm3_s[-1]), 121)
    low, high = stick_band(slip.rate_mm3_s, slip.share_ratio, stick, x)
    mean = stick.mean(x) if stick.seen else np.full(x.shape, float(slip.share_ratio.mean()))
    half = np.maximum(high - mean, mean - low)
    return (FitCurve(shown(tr("under load")), x, _PERCENT * (mean - 1.0), _PERCENT * half, role=_LOADED_ROLE),)


def _percent(share: Estimate) -> str:
    value, U = rounded_pair(_PERCENT * (share.value - 1.0), _PERCENT * share.U)
    return f"{value} ± {U}"
