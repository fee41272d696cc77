"""Picture, table and card of a promise."""

from __future__ import annotations

import math

import numpy as np

from app.widgets.fields import local_text, number_text
from app.widgets.plotdata import FitCurve, Ground, LimitLine, PlotData, PointSeries
from app.widgets.resulttext import CardData, Paragraph, Tone
from app.words import shown
from core.guidance.findings import tolerances_at
from core.guidance.partgroups import group_words
from core.guidance.promised import Promised, PromiseJudgement
from core.measuring.tolerance import CLASSES
from core.quantity import coverage_factor, rounded_pair
from core.words import tr

_STEPS = 61
_GROUND_STEPS = 601


def promise_plot(one: Promised, tolerance: str | float) -> PlotData:
    """Return error against part size: readings, mean, 95 % of parts, the promise, the class as ground."""
    parts, spread = one.parts, one.spread
    numbers = {trial: number + 1 for number, trial in enumerate(dict.fromkeys(parts.trial))}
    tips = [
        shown(tr("part {number} (trial № {trial}): {length} mm, error {error} mm", number=numbers[trial], trial=trial,
                 length=number_text(length), error=number_text(float(error), 3)))
        for trial, length, error in zip(parts.trial, parts.nominal_mm.tolist(), parts.error_mm, strict=True)
    ]  # fmt: skip
    points = PointSeries(shown(group_words(parts.group)), parts.nominal_mm, parts.error_mm, tips=tips)
    longest = float(parts.nominal_mm.max())
    ground_x = np.linspace(min(1.0, float(parts.nominal_mm.min())), longest * 1.1, _GROUND_STEPS)
    label = CLASSES[tolerance] if isinstance(tolerance, str) else tr("± {mm} mm", mm=number_text(tolerance))
    curves: tuple[FitCurve, ...] = ()
    limits: tuple[LimitLine, ...] = ()
    if spread is not None:
        low, high = spread.shortest_mm, spread.longest_mm
        x = np.linspace(low, high, _STEPS) if high > low else np.array([low - 0.5, low + 0.5])
        mean = spread.bias_at(x)
        half = coverage_factor(spread.dof) * spread.u_bias_at(x)
        reach = one.promise.factor_at(x) * spread.sd_at(x) if one.promise else np.zeros(x.size)
        curves = (FitCurve(shown(tr("mean error")), x, mean, half, reach),)
        if one.promise:
            T = one.promise.tolerance_at(x)
            limits = (LimitLine(shown(tr("promised")), x, T), LimitLine(shown(tr("promised")), x, -T))
    return PlotData(
        points=(points,),
        curves=curves,
        ground=Ground(ground_x, tolerances_at(ground_x, tolerance), shown(label).partition(",")[0]),
        limits=limits,
        x_label=shown(tr("nominal length, mm")),
        y_label=shown(tr("measured − nominal, mm")),
        title=shown(tr("Error against part size")),
        summary=shown(one.says),
        bands_label=shown(tr("mean, and 95 % of parts")),
    )


def promise_rows(judgement: PromiseJudgement) -> list[tuple[str, ...]]:
    """Return class of features, parts, bias, spread, promise, Cp, Cpk with its lower bound, length held."""
    rows = []
    for one in judgement.groups:
        cells = [shown(group_words(one.parts.group)), str(one.parts.pieces)]
        spread, able = one.spread, one.capability
        if spread is not None:
            known = coverage_factor(spread.dof) * spread.sd_mm / math.sqrt(2 * spread.dof)
            sd, U_sd = rounded_pair(spread.sd_mm, known)
            bias, U = rounded_pair(spread.bias_mm, coverage_factor(spread.dof) * spread.u_bias_mm)
            cells += [f"{bias} ± {U}", f"{sd} ± {U_sd}".removeprefix("+")]
        else:
            cells += ["", ""]
        cells.append("" if one.promised_mm is None else f"±{one.promised_mm:.2f}")
        cells += (
            ["", ""]
            if able is None
            else [_bounded(able.cp_ratio, able.cp_lower_ratio), _bounded(able.cpk_ratio, able.cpk_lower_ratio)]
        )
        up_to = one.promise.held_up_to_mm(judgement.tolerance) if one.promise and isinstance(
            judgement.tolerance, str) else None  # fmt: skip
        cells.append("" if up_to is None else f"{int(up_to)}")
        rows.append(tuple(local_text(cell) for cell in cells))
    return rows


def _bounded(value: float, lower: float) -> str:
    return f"{value:.2f} (≥ {lower:.2f})".replace("-", "−")


def promise_card(judgement: PromiseJudgement, why_not: str, peg: str, *, guarded: bool) -> CardData:
    """Return the card; `peg` advises on clearance, `guarded` says whether an instrument gives the guard band."""
    paragraphs = []
    for one in judgement.groups:
        tone: Tone = "good" if one.promise else "unknown"
        head = tr("May be promised") if one.promise else tr("No promise yet")
        says = shown(one.says)
        paragraphs.append(Paragraph(shown(head), says[:1].upper() + says[1:], tone))
    paragraphs.append(Paragraph(shown(tr("Fit")), peg))
    if not guarded:
        says = tr("No instrument is picked: its uncertainty U is not taken off the tolerance.")
        paragraphs.append(Paragraph(shown(tr("Please note")), shown(says), "warning"))
    if judgement.left_out:
        says = tr("Pieces printed before the newest change of settings or machine do not count: {count} left out.",
                  count=len(judgement.left_out))  # fmt: skip
        paragraphs.append(Paragraph(shown(tr("Please note")), shown(says), "plain"))
    says = tr("Not promised: sizes that were not measured, form, strength, fitness for a use.")
    paragraphs.append(Paragraph(shown(tr("Limits")), shown(says), "plain"))
    return CardData(tuple(paragraphs), (), "", not why_not, why_not)
