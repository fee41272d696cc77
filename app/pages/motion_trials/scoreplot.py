"""Pictures that pages with scored specimens share."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from app.widgets.plotdata import PointSeries
from app.words import shown
from core.measuring.ladder import ScoredStep
from core.words import tr

Floats = NDArray[np.float64]
_SCORES, _MEAN = 1, 0  # data colours
_APART = 0.012  # of the width: judges side by side


def score_points(
    x: Floats, scored: Sequence[ScoredStep], where: Floats, score: Sequence[float], judge: Sequence[str]
) -> tuple[PointSeries, ...]:
    """Return the single scores hollow, each judge with a symbol, and the mean scores with their 95 % intervals.

    Args:
        x: of the steps.
        scored: the steps.
        where: x of each single score.
        score: single scores.
        judge: who gave them.
    """
    span = float(np.ptp(x)) or 1.0
    who, values = np.asarray(judge), np.asarray(score, dtype=float)
    names = sorted(set(judge))
    series = []
    for number, name in enumerate(names):
        own = who == name
        shift = (number - (len(names) - 1) / 2) * 2 * _APART * span
        label = shown(tr("judge {name}", name=name))
        symbol = ("◀", "▶")[number % 2]
        hollow = np.ones(int(own.sum()), dtype=bool)
        series.append(PointSeries(label, where[own] + shift, values[own], symbol=symbol, role=_SCORES, hollow=hollow))
    low, high = (np.array([getattr(s.place, end) for s in scored]) for end in ("low", "high"))
    mean = np.array([s.place.score for s in scored])
    # An interval near an end of the scale is lopsided: its bar hangs on an unseen middle, the symbol is at the mean.
    series.append(PointSeries(shown(tr("95 %")), x, (low + high) / 2, (high - low) / 2, symbol="❘", role=_MEAN))
    series.append(PointSeries(shown(tr("mean score")), x, mean, symbol="■", role=_MEAN, tips=_tips(scored)))
    return tuple(series)


def _tips(scored: Sequence[ScoredStep]) -> list[str]:
    return [
        shown(
            tr(
                "{step:g}: {score:.1f}, {low:.1f} to {high:.1f} (scores: {count})",
                step=s.step, score=s.place.score, low=s.place.low, high=s.place.high, count=s.count,
            )
        )
        for s in scored
    ]  # fmt: skip
