"""A chart by filament used: what is read from the store for it, its picture and its card."""

from __future__ import annotations

import numpy as np

from app.context import Context
from app.widgets.fields import local_text, number_text
from app.widgets.plotdata import FitCurve, PlotData, PointSeries
from app.widgets.resulttext import CardData, Paragraph
from app.words import shown
from core.guidance.drift import Drift
from core.guidance.driftwords import drift_unit, value_with_unit
from core.guidance.wear import Wear, judge_wear, weighing_of
from core.quantity import Estimate, value_text
from core.records.rows import TrialState
from core.words import tr


def find_wear(context: Context, drift: Drift) -> Wear:
    """Gather the weighings of the lots in use, and judge.

    Raises:
        InputError: as `judge_wear`.
    """
    store = context.store
    names = {lot.id or 0: lot.name for lot in store.lots()}
    lots = {point.lot_id for point in drift.points if point.lot_id is not None}
    drying = store.trials("drying", limit=None, readings=True)  # at once: a chart of the shop has hundreds of lots
    found = [weighing_of(trial) for trial in drying if trial.state is TrialState.KEPT and trial.lot_id in lots]
    machines: dict[int, frozenset[int]] = dict.fromkeys(lots, frozenset())
    for kept in store.newest_kept():
        if kept.lot_id in machines and kept.machine_id is not None:
            machines[kept.lot_id] |= {kept.machine_id}
    return judge_wear(drift, [weighed for weighed in found if weighed is not None], names, machines)


def wear_plot(wear: Wear, drift: Drift) -> PlotData:
    """Return the results against the filament used, with the line through them."""
    factor, unit = drift_unit(drift)
    ends = np.linspace(float(wear.used_kg.min()), float(wear.used_kg.max()), 41)
    half = wear.line.band(ends)
    tips = [
        shown(tr("Trial {number}, {used} kg: {value}", number=point.trial_id, used=number_text(float(kg), 3),
                 value=value_with_unit(drift, point)))
        for point, kg in zip(wear.points, wear.used_kg, strict=True)
    ]  # fmt: skip
    U = np.array([Estimate("", p.value, p.u, p.dof, p.unit).U for p in wear.points])
    values = np.array([point.value for point in wear.points])
    return PlotData(
        points=(PointSeries(shown(tr("result")), wear.used_kg, factor * values, factor * U, tips=tips),),
        curves=(FitCurve("", ends, factor * wear.line.at(ends)[0], confidence_half=factor * half),),
        x_label=shown(tr("filament used, kg")),
        y_label=f"{shown(drift.quantity.words)}, {unit}" if unit else shown(drift.quantity.words),
        summary=shown(wear.says),
        title=shown(tr("By filament used")),
        zero_line=False,
    )


def wear_card(wear: Wear, drift: Drift) -> CardData:
    """Return whether it changes with the filament used, by how much a kilogram, and how well that mass is known."""
    factor, unit = drift_unit(drift)
    per_kg = wear.per_kg
    shown_per_kg = Estimate("", factor * per_kg.value, factor * per_kg.u, per_kg.dof, f"{unit}/kg")
    lines = [Paragraph(shown(tr("Signal") if per_kg.significant else tr("Steady")), shown(wear.says),
                       "warning" if per_kg.significant else "good")]  # fmt: skip
    if wear.left_out:
        says = tr("Results between no two weighings of their spool: {count}; weigh it again.", count=wear.left_out)
        lines.append(Paragraph(shown(tr("Left out")), shown(says), "unknown"))
    rows = (
        (shown(tr("change")), local_text(value_text(shown_per_kg)), ""),
        (shown(tr("filament")), shown(tr("{low} to {high} kg", low=number_text(float(wear.used_kg.min()), 3),
                                         high=number_text(float(wear.used_kg.max()), 3))), ""),
        (shown(tr("known to")), f"± {number_text(2 * float(wear.u_kg.max()), 3)} kg", ""),
        (shown(tr("newest")), local_text(value_with_unit(drift, wear.points[-1])), ""),
    )  # fmt: skip
    untouched = shown(tr("every setting, until the nozzle was looked at.")) if per_kg.significant else ""
    return CardData(tuple(lines), rows, untouched, can_keep=False)
