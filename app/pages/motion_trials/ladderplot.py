"""The picture of a ladder: mean scores with intervals and the plateau, or the parabola and where it turns."""

from __future__ import annotations

import numpy as np

from app.pages.motion_trials.scoreplot import score_points
from app.widgets.plotdata import EventMark, FitCurve, LimitLine, PlotData, PointSeries
from app.words import shown
from core.guidance.criteriaadvice import CriteriaJudgement, bound_words, criterion_words
from core.guidance.ladderadvice import LadderJudgement, kinds_words
from core.measuring.criteria import Criterion, MetStep
from core.measuring.scores import HIGHEST_SCORE
from core.motion_trials.ladders import Read
from core.motion_trials.lag import width_scatter_mm2
from core.words import tr

_SYMBOLS = ("■", "●", "▲", "◆")  # of the criteria, those with a bound first
_APART = 0.012  # of the width: criteria side by side
_ABOVE = 0.6  # of the score: steps that meet all are marked over the scale


def criteria_plot(judged: CriteriaJudgement) -> PlotData:
    """Draw the mean scores of each criterion with intervals, its bound, and which steps meet all."""
    kind, ladder = judged.readings.kind, judged.ladder
    criteria = sorted((c for c in kind.criteria if c.key in ladder.met), key=lambda c: not c.counts)
    steps = np.array(ladder.steps)
    span = float(np.ptp(steps))
    series: list[PointSeries] = []
    for number, criterion in enumerate(criteria):
        shift = (number - (len(criteria) - 1) / 2) * 2 * _APART * span
        series += _criterion_points(criterion, ladder.met[criterion.key], shift, number)
    good = [step for step, sure in zip(ladder.steps, ladder.sure, strict=True) if sure >= 1 / 2]
    if good:
        over = np.full(len(good), HIGHEST_SCORE + _ABOVE)
        series.insert(0, PointSeries(shown(tr("meets all")), np.array(good), over, symbol="▼", role=3, joined=True))
    ends = np.array([steps.min() - 0.05 * span, steps.max() + 0.05 * span])
    limits = tuple(
        LimitLine(shown(bound_words(c)), ends, np.full(2, float(bound)), short=sign + str(bound))
        for c in criteria
        for bound, sign in ((c.at_least, "≥ "), (c.at_most, "≤ "))
        if bound is not None
    )
    return PlotData(
        tuple(series),
        limits=limits,
        events=_chosen_mark(ladder.chosen),
        x_label=shown(tr("{name}, {unit}", name=kinds_words(kind), unit=kind.unit)),
        y_label=shown(tr("score, 0 to 4, with 95 %")),
        title=shown(tr("Scores of the steps")),
        summary=" ".join(f"{shown(advice.action)} {shown(advice.because)}" for advice in judged.advice),
        least_y_span=HIGHEST_SCORE,
        zero_line=False,
    )


def _criterion_points(
    criterion: Criterion, met: tuple[MetStep, ...], shift: float, number: int
) -> tuple[PointSeries, PointSeries]:
    """Return the mean scores of a criterion, and their intervals, which hang lopsided about them."""
    x = np.array([one.step for one in met]) + shift
    low, high = (np.array([getattr(one.place, end) for one in met]) for end in ("low", "high"))
    mean, name = np.array([one.place.score for one in met]), shown(criterion_words(criterion))
    tips = [
        shown(
            tr("{name} at {step:g}: {score:.1f}, {low:.1f} to {high:.1f} (scores: {count})", name=name, step=one.step,
               score=one.place.score, low=one.place.low, high=one.place.high, count=one.count)
        )
        for one in met
    ]  # fmt: skip
    bars = PointSeries("", x, (low + high) / 2, (high - low) / 2, "❘", role=number)
    symbol = _SYMBOLS[number % len(_SYMBOLS)]
    return bars, PointSeries(name, x, mean, symbol=symbol, role=number, tips=tips, joined=True)


def ladder_plot(judged: LadderJudgement) -> PlotData:
    """Return the picture of a judged ladder."""
    kind, ladder = judged.readings.kind, judged.ladder
    events = _chosen_mark(ladder.chosen)
    name = shown(tr("{name}, {unit}", name=kinds_words(kind), unit=kind.unit))
    summary = " ".join(f"{shown(advice.action)} {shown(advice.because)}" for advice in judged.advice)
    step = np.asarray(judged.readings.step)
    if ladder.scored:
        x = np.array([s.step for s in ladder.scored])
        return PlotData(
            score_points(x, ladder.scored, step, judged.readings.value, judged.readings.judge),
            x_label=name,
            y_label=shown(tr("score, 0 to 4")),
            title=shown(tr("Scores of the steps")),
            events=events,
            summary=summary,
            least_y_span=HIGHEST_SCORE,
            zero_line=False,
        )
    unit = judged.readings.unit
    label = tr("value as read, {unit}", unit=unit) if unit else tr("value as read")
    x, y, title = step, np.asarray(judged.readings.value), tr("Values of the steps")
    if judged.readings.read is Read.WIDTHS:
        x = np.unique(step)
        y = 1000 * width_scatter_mm2([y[step == one] for one in x])  # in thousandths: nobody reads 0.0004
        label, title = tr("scatter of the widths S, 0.001 mm²"), tr("Widths of the steps")
    along = np.linspace(x.min(), x.max(), 121)
    factor = 1000.0 if judged.readings.read is Read.WIDTHS else 1.0
    return PlotData(
        (PointSeries(shown(tr("steps")), x, y, role=0),),
        curves=(FitCurve(shown(tr("parabola")), along, factor * ladder.at(along), role=0),),
        x_label=name,
        y_label=shown(label),
        title=shown(title),
        events=events,
        summary=summary,
        zero_line=judged.readings.read is Read.WIDTHS,
    )


def _chosen_mark(chosen: float | None) -> tuple[EventMark, ...]:
    return () if chosen is None else (EventMark(chosen, shown(tr("use {value:.4g}", value=chosen))),)
