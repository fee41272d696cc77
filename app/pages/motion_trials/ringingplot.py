"""The pictures of ringing: wavelength against speed, ripple against acceleration, or the spectrum of a log."""

from __future__ import annotations

import numpy as np

from app.widgets.plotdata import EventMark, FitCurve, LimitLine, PlotData, PointSeries
from app.words import shown
from core.guidance.ringingadvice import RingingJudgement
from core.motion_trials.ringing import Kind, Ringing, Ripple, left_after_ramp_mm
from core.motion_trials.spectrum import Spectrum
from core.quantity import value_text
from core.words import tr

_HIGHEST_HZ = 200.0
_UM = 1000.0


def wavelength_plot(found: Ringing, ripples: list[Ripple], summary: str) -> PlotData:
    """Draw wavelength against speed: ringing is a line through zero, a mark a level line."""
    speed = np.array([r.speed_mm_s for r in ripples])
    length = np.array([r.wavelength_mm for r in ripples])
    U = 2.0 * found.u_hz / found.own_hz * length
    x = np.linspace(0.0, (1.65 if found.kind is Kind.OPEN else 1.1) * float(speed.max()), 60)
    curves = []
    if found.kind is Kind.OPEN:  # both ways that it may go on, neither with a number as if it were told
        curves.append(FitCurve(shown(tr("if it rings")), x, x / float(np.mean(found.own_hz)), role=0))
        curves.append(FitCurve(shown(tr("if it is a mark")), x, np.full(x.size, float(np.mean(length))), role=1))
    elif found.frequency is not None:
        name = shown(tr("ringing, {value}", value=value_text(found.frequency).removeprefix("+")))
        curves.append(FitCurve(name, x, x / found.frequency.value, role=0))
    elif found.wavelength is not None:
        name = shown(tr("a mark, {value}", value=value_text(found.wavelength).removeprefix("+")))
        curves.append(FitCurve(name, x, np.full(x.size, found.wavelength.value), role=1))
    return PlotData(
        (PointSeries(shown(tr("ripples")), speed, length, U, role=0),),
        curves=tuple(curves),
        x_label=shown(tr("speed, mm/s")),
        y_label=shown(tr("crest to crest, mm")),
        title=shown(tr("Wavelength")),
        summary=summary,
    )


def acceleration_plot(judged: RingingJudgement, summary: str) -> PlotData:
    """Draw the ripple that a ramp to the printing speed leaves, against its acceleration."""
    frequency, limit = judged.frequency, judged.limit
    assert frequency is not None and limit is not None  # offered only where something rings
    most = judged.use.most_mm_s2
    a = np.linspace(most / 200, most, 400)
    left = _UM * left_after_ramp_mm(frequency.value, judged.use.speed_mm_s, a)
    plain = _UM * a / (2 * np.pi * frequency.value) ** 2
    quiet = np.array([e.value for e in judged.quiet])
    marks = [EventMark(limit.value, shown(tr("by ripple {value}", value=value_text(limit).removeprefix("+"))))]
    points = PointSeries(shown(tr("whole periods")), quiet, np.zeros(quiet.size), symbol="◆", role=1)
    at_limit = PointSeries(shown(tr("limit")), np.array([limit.value]), np.array([_UM * judged.use.visible_mm]), role=2)
    return PlotData(
        (points, at_limit) if limit.value <= most else (points,) if quiet.size else (at_limit,),
        curves=(
            FitCurve(shown(tr("while speeding up")), a, plain, role=2),
            FitCurve(shown(tr("left after the ramp")), a, left, role=1),
        ),
        limits=(LimitLine(shown(tr("seen")), a[[0, -1]], np.full(2, _UM * judged.use.visible_mm)),),
        events=tuple(marks) if limit.value <= most else (),
        x_label=shown(tr("acceleration, mm/s²")),
        y_label=shown(tr("ripple, µm")),
        title=shown(tr("Ripple by acceleration")),
        summary=summary,
        zero_line=True,
    )


def spectrum_plot(found: Spectrum, summary: str) -> PlotData:
    """Draw the spectrum in decibels under its highest value, with the peaks."""
    chosen = (found.frequency_hz > 0) & (found.frequency_hz <= _HIGHEST_HZ)
    f, density = found.frequency_hz[chosen], found.density[chosen]
    top = float(density.max())
    db = 10 * np.log10(np.maximum(density / top, 1e-8))
    peaks = [peak for peak in found.peaks if peak.frequency.value <= _HIGHEST_HZ]
    at = np.array([peak.frequency.value for peak in peaks])
    heights = np.array([10 * np.log10(peak.height / top) for peak in peaks])
    series = PointSeries(shown(tr("peaks")), at, heights, symbol="▼", role=1)
    if not peaks:  # a picture without a point is not drawn
        series = PointSeries(shown(tr("highest")), f[[int(np.argmax(db))]], np.zeros(1), symbol="▼", role=1)
    return PlotData(
        (series,),
        curves=(FitCurve(shown(tr("spectrum")), f, db, role=0),),
        events=tuple(EventMark(float(x), shown(tr("{hz:.1f} Hz", hz=float(x)))) for x in at[:3]),
        x_label=shown(tr("frequency, Hz")),
        y_label=shown(tr("power against its highest, dB")),
        title=shown(tr("Spectrum of the log")),
        summary=summary,
        zero_line=False,
        least_y_span=10.0,
    )
