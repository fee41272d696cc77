"""The pictures of the speed trial: score against the time of the part, and time against the level."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from app.pages.motion_trials.scoreplot import score_points
from app.widgets.plotdata import EventMark, FitCurve, LimitLine, PlotData, PointSeries
from app.words import shown
from core.guidance.halfspeedadvice import HalfSpeedJudgement, short_run_words
from core.guidance.motionadvice import UNITS, SpeedJudgement, time_text
from core.measuring.scores import HIGHEST_SCORE
from core.motion_trials.halfspeed import Run
from core.motion_trials.layertime import LayerTimes
from core.motion_trials.parttime import SHARES, PartTimes
from core.words import tr

Floats = NDArray[np.float64]
_MINUTE_S = 60.0


def front_plot(judged: SpeedJudgement) -> PlotData:
    """Draw mean scores against the time of the part: to the left is faster, above is better."""
    trial, readings = judged.trial, judged.readings
    x = np.array([level.time_s for level in trial.levels]) / _MINUTE_S
    where = np.array([readings.time_s[level] for level in readings.level]) / _MINUTE_S
    scored = [level.scored for level in trial.levels]
    front = sorted((level for level in trial.levels if level.front), key=lambda level: level.time_s)
    line = PointSeries(
        shown(tr("nothing is both faster and better")),
        np.array([level.time_s for level in front]) / _MINUTE_S,
        np.array([level.scored.place.score for level in front]),
        symbol="❘", role=0, joined=True,
    )  # fmt: skip
    ends = np.array([x.min(), x.max()])
    unit = UNITS[readings.of]
    events = tuple(
        EventMark(float(at), shown(tr("{value:.4g} {unit}", value=level.scored.step, unit=unit)))
        for at, level in zip(x, trial.levels, strict=True)
        if level in (trial.chosen, trial.levels[0], trial.levels[-1])
    )
    mean = np.array([level.place.score for level in scored])
    waits = _waiting_points(readings.layers, [level.step for level in scored], x, mean)
    return PlotData(
        (line, *score_points(x, scored, where, readings.score, readings.judge), *waits),
        limits=(LimitLine(shown(tr("asked")), ends, np.full(2, trial.asked)),),
        events=events,
        x_label=shown(tr("time of the part, min")),
        y_label=shown(tr("score, 0 to 4")),
        title=shown(tr("Score against time")),
        summary=" ".join(f"{shown(a.action)} {shown(a.because)}" for a in judged.advice),
        least_y_span=HIGHEST_SCORE,
        zero_line=False,
    )


def _waiting_points(
    layers: LayerTimes | None, level: Sequence[float], x: Floats, y: Floats
) -> tuple[PointSeries, ...]:
    """Return the levels at which a layer waits, ringed; nothing where none does."""
    if layers is None or not (held := [place for place, value in enumerate(level) if layers.waits(value)]):
        return ()
    name, ringed = shown(tr("a layer waits")), np.ones(len(held), dtype=bool)
    return (PointSeries(name, x[held], y[held], symbol="◆", role=2, ringed=ringed),)


def time_plot(times: PartTimes, of: str) -> PlotData:
    """Draw the time of the part against the level: where the curve is flat, faster buys nothing."""
    levels, unit = np.array(list(times.time_s)), UNITS[of]
    minutes = np.array(list(times.time_s.values())) / _MINUTE_S
    if of == "speed":
        floor = times.printed_mm / times.levels / _MINUTE_S
        name = shown(tr("if it never had to slow down"))
    else:
        floor = np.full(times.levels.size, times.along_s[-1] / _MINUTE_S)
        name = shown(tr("at the highest acceleration"))
    tips = [
        shown(
            tr("{level:.4g} {unit}: {percent:.0f} % of the path at its speed",
               level=level, unit=unit, percent=100 * ratio)
        )  # fmt: skip
        for level, ratio in times.at_speed_ratio.items()
    ]
    events: tuple[EventMark, ...] = ()
    if of == "speed" and times.layers is not None:
        at = times.layers.floor_mm_s[0]
        events = (EventMark(at, shown(tr("no wait up to {value:.3g} mm/s", value=at))),)
    return PlotData(
        (
            PointSeries(shown(tr("levels")), levels, minutes, role=0, tips=tips),
            *_waiting_points(times.layers, list(times.time_s), levels, minutes),
        ),
        events=events,
        curves=(
            FitCurve(shown(tr("time of the part")), times.levels, times.along_s / _MINUTE_S, role=0),
            FitCurve(name, times.levels, floor, role=2),
        ),
        x_label=shown(tr("speed, mm/s") if of == "speed" else tr("acceleration, mm/s²")),
        y_label=shown(tr("time of the part, min")),
        title=shown(tr("Where faster buys nothing")),
        summary=shown(
            tr(
                "The part takes {slow} at {low:.4g} {unit} and {fast} at {high:.4g} {unit}.",
                slow=time_text(times.time_s[levels[0]]), low=levels[0],
                fast=time_text(times.time_s[levels[-1]]), high=levels[-1], unit=unit,
            )
        ),
    )


def rate_plot(times: PartTimes, of: str, ceiling_mm3_s: float | None) -> PlotData:
    """Draw which volumetric rate how much of the printed way does not pass, against the flow ceiling."""
    share = 100 * SHARES
    curves, ends = [], []
    for role, level in enumerate((min(times.rate_mm3_s), max(times.rate_mm3_s))):
        name = shown(tr("{value:.4g} {unit}", value=level, unit=UNITS[of]))
        curves.append(FitCurve(name, share, times.rate_mm3_s[level], role=role))
        ends.append(float(times.rate_mm3_s[level][-1]))
    limits: tuple[LimitLine, ...] = ()
    if ceiling_mm3_s is not None:
        limits = (LimitLine(shown(tr("flow ceiling")), share[[0, -1]], np.full(2, ceiling_mm3_s)),)
    highest = PointSeries(shown(tr("highest")), np.full(len(ends), 100.0), np.array(ends), symbol="◆", role=2)
    return PlotData(
        (highest,),
        curves=tuple(curves),
        limits=limits,
        x_label=shown(tr("share of the printed way, %")),
        y_label=shown(tr("volumetric rate at most, mm³/s")),
        title=shown(tr("Rate along the path")),
        summary=shown(tr("The highest rate is {low:.1f} to {high:.1f} mm³/s.", low=min(ends), high=max(ends))),
    )


def runs_plot(judged: HalfSpeedJudgement, score: list[float], judge: list[str], run: list[float]) -> PlotData:
    """Draw the scores of the four runs side by side."""
    named = [(number, run) for number, run in enumerate(Run, start=1) if run in judged.found.scores]
    who = np.array(judge)
    series = tuple(
        PointSeries(
            shown(tr("judge {name}", name=name)),
            np.array(run, dtype=float)[who == name] + 1.0 + (0.06 if number else -0.06),
            np.array(score)[who == name],
            symbol=("◀", "▶")[number % 2],
            role=number,
        )
        for number, name in enumerate(sorted(set(judge)))
    )
    return PlotData(
        series,
        x_label=shown(
            tr("run: {first}", first=", ".join(f"{number} {shown(short_run_words(run))}" for number, run in named))
        ),
        y_label=shown(tr("score of the defect, 4 none")),
        title=shown(tr("Half speed")),
        summary=" ".join(f"{shown(a.action)} {shown(a.because)}" for a in judged.advice),
        least_y_span=HIGHEST_SCORE,
        zero_line=False,
    )
