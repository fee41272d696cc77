"""What a chart says: whether anything changed, since when, and which reading tells cheapest whether it is real.

A signal never asks for an adjustment. It asks to read again, then to repeat, then to look where the cause would be.

Reference: the order of the readings is common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from core.guidance.drift import Drift
from core.measuring.chart import BASELINE, Phase, Standing
from core.measuring.runrules import Rule, Run
from core.quantity import Estimate, is_factor, rounded_pair
from core.records.rows import SeriesPoint
from core.words import Words, tr

MOST_SIGNALS = 3  # said in words; all are marked in the picture
_SHOWN_UNITS = {"1": (100.0, "%"), "rad": (math.degrees(1.0), "°")}


class Sort(StrEnum):
    """What a sentence is about."""

    QUIET = "quiet"
    SIGNAL = "signal"
    EARLIER = "earlier"
    UNKNOWN = "unknown"
    NEXT = "next"


@dataclass(frozen=True, slots=True)
class Saying:
    """One sentence of the chart."""

    sort: Sort
    text: Words


def shown_unit(unit: str) -> tuple[float, str]:
    """Return the factor and the unit in which an estimate is shown to people."""
    return _SHOWN_UNITS.get(unit, (1.0, unit))


def drift_unit(drift: Drift) -> tuple[float, str]:
    """Return the factor and the unit in which a chart is shown: a flow factor as it is typed."""
    return (1.0, "") if is_factor(drift.quantity.name) else shown_unit(drift.points[-1].unit)


def spaced_unit(unit: str) -> str:
    """Return a shown unit as it follows a number: degrees of an angle without a blank (ISO 80000-1)."""
    return unit if unit in ("", "°") else f" {unit}"


def sayings(drift: Drift, runs: Sequence[Run]) -> tuple[Saying, ...]:
    """Return what the chart says, the most pressing first.

    Args:
        drift: the judged results.
        runs: the signals of the chart that is looked at.
    """
    phase = drift.phase
    if phase.standing is Standing.NONE:
        return (Saying(Sort.UNKNOWN, _no_limits(phase)),)
    mine = [run for run in runs if run.first >= phase.start]
    mine.sort(key=lambda run: (-run.last, list(Rule).index(run.rule)))
    now = [run for run in mine if run.last == phase.stop - 1]
    said = [Saying(Sort.SIGNAL, _run_words(drift, run)) for run in now[:MOST_SIGNALS]]
    if now:
        said.append(Saying(Sort.NEXT, _next_words(drift, now[0])))
    earlier = [run for run in mine if run.last < phase.stop - 1]
    if not now:
        said.append(Saying(Sort.QUIET, _quiet_words(phase, earlier)))
    said += [Saying(Sort.EARLIER, _run_words(drift, run)) for run in earlier[: max(MOST_SIGNALS - len(now), 0)]]
    if phase.standing is Standing.TRIAL:
        said.append(Saying(Sort.UNKNOWN, _trial_words(phase)))
    return tuple(said)


def numbers(drift: Drift) -> tuple[tuple[Words, str], ...]:
    """Return the numbers of the newest phase: newest result with U, mean, spread, limits, baseline."""
    phase, newest = drift.phase, drift.points[-1]
    factor, named = drift_unit(drift)
    unit = spaced_unit(named)
    rows = [(tr("newest"), value_with_unit(drift, newest))]
    if phase.standing is not Standing.NONE:
        low, high = phase.limits
        spread = rounded_pair(phase.centre * factor, phase.sigma * factor)[1]
        rows += [
            (tr("mean"), f"{limit_text(drift, phase.centre)}{unit}"),
            (tr("spread σ"), f"{spread}{unit}"),
            (tr("upper limit"), f"{limit_text(drift, high)}{unit}"),
            (tr("lower limit"), f"{limit_text(drift, low)}{unit}"),
            (tr("limits from"), tr("{count} results", count=phase.baseline)),
        ]
    return tuple(rows)


def value_with_unit(drift: Drift, point: SeriesPoint) -> str:
    """Return a result with its expanded uncertainty and the shown unit."""
    factor, unit = drift_unit(drift)
    estimate = Estimate("", point.value * factor, point.u * factor, point.dof, unit)
    value, U = rounded_pair(estimate.value, estimate.U)
    return f"{_signed(drift, value)} ± {U}{spaced_unit(unit)}"


def limit_text(drift: Drift, value: float) -> str:
    """Return a value in the shown unit with as many digits as the spread of the newest phase gives sense to."""
    factor, _unit = drift_unit(drift)
    spread = drift.phase.sigma if drift.phase.standing is not Standing.NONE else drift.points[-1].u
    return _signed(drift, rounded_pair(value * factor, spread * factor)[0])


def _signed(drift: Drift, text: str) -> str:
    return text.removeprefix("+") if drift.quantity.is_magnitude else text


def _quiet_words(phase: Phase, earlier: Sequence[Run]) -> Words:
    if earlier:
        return tr("Results since the last signal: {count}.", count=phase.stop - 1 - earlier[0].last)
    return tr("No signal in {count} results.", count=phase.stop - phase.start)


def _no_limits(phase: Phase) -> Words:
    if phase.alike:
        return tr(
            "The results do not differ at all, so there is no spread to set limits by; read with a finer instrument."
        )
    return tr(
        "Results since the limits began: {count}. Trial limits need {missing} more, firm ones {firm} more.",
        count=phase.stop - phase.start,
        missing=phase.missing,
        firm=BASELINE - (phase.stop - phase.start),
    )


def _trial_words(phase: Phase) -> Words:
    return tr(
        "Trial limits from {count} results, drawn dashed; {missing} more make them firm.",
        count=phase.baseline,
        missing=phase.missing,
    )


def _run_words(drift: Drift, run: Run) -> Words:
    first, last = drift.points[run.first].trial_id, drift.points[run.last].trial_id
    count, side = run.last - run.first + 1, tr("above") if run.side > 0 else tr("below")
    if run.rule is Rule.BEYOND:
        return _beyond_words(drift, run, side)
    if run.rule is Rule.SPREAD:
        return _jump_words(drift, run)
    if run.rule is Rule.TWO_OF_THREE:
        return tr(
            "Two of three results, trials {first} to {last}, are more than two σ {side} the mean.",
            first=first,
            last=last,
            side=side,
        )
    if run.rule is Rule.ONE_SIDE:
        return tr(
            "Trials {first} to {last}, {count} results in a row, are {side} the mean.",
            count=count,
            first=first,
            last=last,
            side=side,
        )
    if run.rule is Rule.STEADILY:
        way = tr("rise steadily") if run.side > 0 else tr("fall steadily")
        return tr(
            "Trials {first} to {last}, {count} results in a row, {way}.", count=count, first=first, last=last, way=way
        )
    return tr(
        "Slow drift: the smoothed mean is {side} its limits from trial {first} to {last}.",
        first=first,
        last=last,
        side=side,
    )


def _beyond_words(drift: Drift, run: Run, side: Words) -> Words:
    newest, limit = drift.points[run.last], drift.phase.limits[1 if run.side > 0 else 0]
    said = tr(
        "Trial {last} gave {value}{unit}, {side} the limit {limit}{unit}.",
        last=newest.trial_id,
        value=limit_text(drift, newest.value),
        unit=spaced_unit(drift_unit(drift)[1]),
        side=side,
        limit=limit_text(drift, limit),
    )
    if abs(newest.value - limit) > Estimate("", newest.value, newest.u, newest.dof, newest.unit).U:
        return said
    return tr("{said} Its own uncertainty reaches back to the limit.", said=said)


def _jump_words(drift: Drift, run: Run) -> Words:
    jump = float(drift.individuals.moving_range[run.last])
    return tr(
        "From trial {before} to trial {last} the result jumps by {jump}{unit}; up to {limit}{unit} is usual.",
        before=drift.points[run.last - 1].trial_id,
        last=drift.points[run.last].trial_id,
        jump=limit_text(drift, jump).removeprefix("+"),
        limit=limit_text(drift, drift.phase.moving_range_limit).removeprefix("+"),
        unit=spaced_unit(drift_unit(drift)[1]),
    )


def _next_words(drift: Drift, run: Run) -> Words:
    quantity = drift.quantity
    return tr(
        "For trial {number}, {again}. If it stands, {repeat}. If it comes again, {look}.",
        number=drift.points[run.last].trial_id,
        again=quantity.again,
        repeat=quantity.repeat,
        look=quantity.look,
    )
