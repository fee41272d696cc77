"""The picture of a ladder: mean scores with intervals and the plateau, or the parabola and where it turns."""

from __future__ import annotations

import numpy as np

from app.pages.motion_trials.scoreplot import score_points
from app.widgets.plotdata import EventMark, FitCurve, PlotData, PointSeries
from app.words import shown
from core.guidance.ladderadvice import LadderJudgement, kinds_words
from core.measuring.ladder import HIGHEST_SCORE
from core.motion_trials.ladders import Read
from core.motion_trials.lag import width_scatter_mm2
from core.words import tr


def ladder_plot(judged: LadderJudgement) -> PlotData:
    """Return the picture of a judged ladder."""
    kind, ladder = judged.readings.kind, judged.ladder
    chosen = ladder.chosen
    events = () if chosen is None else (EventMark(chosen, shown(tr("use {value:.4g}", value=chosen))),)
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
    x, y, label = step, np.asarray(judged.readings.value), tr("value as read")
    if judged.readings.read is Read.WIDTHS:
        x = np.unique(step)
        y = 1000 * width_scatter_mm2([y[step == one] for one in x])  # in thousandths: nobody reads 0.0004
        label = tr("scatter of the widths S, 0.001 mm²")
    along = np.linspace(x.min(), x.max(), 121)
    factor = 1000.0 if judged.readings.read is Read.WIDTHS else 1.0
    return PlotData(
        (PointSeries(shown(tr("steps")), x, y, role=0),),
        curves=(FitCurve(shown(tr("parabola")), along, factor * ladder.at(along), role=0),),
        x_label=name,
        y_label=shown(label),
        title=shown(tr("Values of the steps")),
        events=events,
        summary=summary,
        zero_line=judged.readings.read is Read.WIDTHS,
    )
