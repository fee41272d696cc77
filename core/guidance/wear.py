"""Change of a result with the filament that went through the nozzle: wall outset or flow factor per kilogram.

    used at t = sum over the lots of (first net mass - net mass at t)        result = a + b*used

A spool is weighed now and then, not at every print: at t its net mass lies between that of the last weighing before and
of the first one after. The middle is taken, half the gap counts as a rectangle. b is the least-squares slope of the
results of the newest phase (since the last event that begins limits anew, such as a new nozzle); its uncertainty is the
larger of what the results and weighings state and what the results scatter.

Reference: ISO/TS 28037:2010 annex E (scatter); JCGM 100:2008 4.3.7 (rectangle), 5.1.2 (stated uncertainties). That a
worn nozzle shows in outset and flow factor: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.guidance.charted import Owner
from core.guidance.drift import Drift
from core.measuring.reach import refuse_out_of_reach
from core.measuring.straightline import Line, fit_line
from core.quantity import Estimate
from core.records.rows import SeriesPoint, Trial, TrialState
from core.words import Words, tr

Floats = NDArray[np.float64]
Bounds = tuple[float, float]

FEWEST = 3
_G_PER_KG = 1000.0


@dataclass(frozen=True, slots=True)
class Weighed:
    """Filament on the spool of a lot at a moment, without the spool, with the standard uncertainty of the weighing."""

    lot_id: int
    at: datetime
    net_g: float
    u_g: float


@dataclass(frozen=True, slots=True, eq=False)
class Wear:
    """Results against filament used.

    Attributes:
        points: the results that could be placed, oldest first.
        used_kg: (n,) filament used by then since the first weighing.
        u_kg: (n,) its standard uncertainty.
        line: the fit.
        per_kg: its slope.
        left_out: results of the phase that no two weighings bracket.
        says: whether it changes.
    """

    points: tuple[SeriesPoint, ...]
    used_kg: Floats
    u_kg: Floats
    line: Line
    per_kg: Estimate
    left_out: int
    says: Words


def weighing_of(trial: Trial) -> Weighed | None:
    """Return what a kept weighing of a spool tells, None where it is no such trial or no longer in use."""
    spool = trial.conditions.get("spool_mass_g")
    if trial.subject != "drying" or trial.state is not TrialState.KEPT or trial.lot_id is None or trial.kept_at is None:
        return None
    named = zip(trial.readings.get("field", ()), trial.readings.get("raw", ()), strict=True)
    texts = {str(key).rpartition(".")[2]: str(raw).replace(",", ".") for key, raw in named}
    if spool is None or not texts.get("now_g"):
        return None
    return Weighed(trial.lot_id, trial.kept_at, float(texts["now_g"]) - float(spool), float(texts["u_balance_g"]))


def judge_wear(
    drift: Drift, weighings: Iterable[Weighed], lots: Mapping[int, str], machines_of: Mapping[int, frozenset[int]]
) -> Wear:
    """Fit the results of the newest phase against the filament used.

    Args:
        drift: the charted results.
        weighings: of the lots that were used, in any order.
        lots: their names by id.
        machines_of: by lot the machines with kept trials of it: what a lot lost on another is not this nozzle's.

    Raises:
        InputError: field `used`: a quantity of an instrument, a lot used on several machines or one that grew, results
            without lot or weighings about them, or too few of them; `net_g` or `u_g` of a
            weighing out of reach.
    """
    if drift.quantity.owner is Owner.INSTRUMENT:
        raise InputError("used", tr("Filament does not wear an instrument; choose another chart."))
    phase = drift.phase
    points = drift.points[phase.start : phase.stop]
    used_lots = sorted({point.lot_id for point in points if point.lot_id is not None})
    _refuse_shared(used_lots, lots, machines_of)
    by_lot = _weighed_by_lot(weighings, used_lots, lots)
    times = {lot: [point.kept_at for point in points if point.lot_id == lot] for lot in used_lots}
    in_use = {lot: (min(mine), max(mine)) for lot, mine in times.items()}
    placed = [(point, _used(point, by_lot, in_use)) for point in points]
    told = [(point, used) for point, used in placed if used is not None]
    if len(told) < FEWEST:
        raise InputError("used", _weigh(points, len(told), used_lots, by_lot, lots))
    x, u_x = np.array([used for _, used in told]).T / _G_PER_KG
    return _fitted(drift, tuple(point for point, _ in told), x, u_x, len(points) - len(told))


def _refuse_shared(
    used_lots: Sequence[int], lots: Mapping[int, str], machines_of: Mapping[int, frozenset[int]]
) -> None:
    for lot in used_lots:
        if len(machines_of.get(lot, frozenset())) > 1:
            raise InputError(
                "used",
                tr(
                    "{lot} was printed on more than one machine, so its weighings do not tell what went through this "
                    "nozzle. Keep a spool to one machine while its wear is followed.",
                    lot=lots.get(lot, "?"),
                ),
            )


def _weighed_by_lot(
    weighings: Iterable[Weighed], used_lots: Sequence[int], lots: Mapping[int, str]
) -> dict[int, list[Weighed]]:
    """Return the weighings of each lot in order; a spool that gains is another spool."""
    every = sorted(weighings, key=lambda w: w.at)
    by_lot = {lot: [w for w in every if w.lot_id == lot] for lot in used_lots}
    for lot, mine in by_lot.items():
        refuse_out_of_reach("weighings", mine)
        for before, after in zip(mine, mine[1:], strict=False):
            if after.net_g - before.net_g > 3.0 * math.hypot(before.u_g, after.u_g):
                raise InputError(
                    "used",
                    tr(
                        "{lot} weighed {before:.0f} g of filament, and {after:.0f} g later: another spool? Make it a "
                        "lot of its own on page Lots, or withdraw the wrong weighing.",
                        lot=lots.get(lot, "?"),
                        before=before.net_g,
                        after=after.net_g,
                    ),
                )
    return by_lot


def _used(
    point: SeriesPoint, by_lot: Mapping[int, Sequence[Weighed]], in_use: Mapping[int, tuple[datetime, datetime]]
) -> Bounds | None:
    """Return grams used by a result, over all lots, and their standard uncertainty; None where that is not known."""
    if point.lot_id is None:
        return None
    total, variance = 0.0, 0.0
    for lot, weighings in by_lot.items():
        first, last = in_use[lot]
        if first > point.kept_at:
            continue
        before = [w for w in weighings if w.at <= point.kept_at]
        after = [w for w in weighings if w.at >= point.kept_at]
        if not before or (not after and last > before[-1].at):
            return None
        high, low = before[-1].net_g, (after[0] if after else before[-1]).net_g
        total += weighings[0].net_g - (low + high) / 2.0
        variance += weighings[0].u_g ** 2 + before[-1].u_g ** 2 + (high - low) ** 2 / 12.0
    return total, math.sqrt(variance)


def _weigh(
    points: Sequence[SeriesPoint],
    told: int,
    used_lots: Sequence[int],
    by_lot: Mapping[int, Sequence[Weighed]],
    lots: Mapping[int, str],
) -> Words:
    if not used_lots:
        return tr("These results have no lot. Choose the lot before a trial is kept, and weigh its spool.")
    missing = [lots.get(lot, "?") for lot in used_lots if len(by_lot[lot]) < 2] or [lots.get(used_lots[-1], "?")]
    return tr(
        "Only {told} of {count} results lie between two weighings of their spool, {least} are the least. "
        "Weigh the spool of {lots} on page Lots, before the first print and after the last.",
        told=told,
        count=len(points),
        least=FEWEST,
        lots=", ".join(missing),
    )


def _fitted(drift: Drift, points: tuple[SeriesPoint, ...], x: Floats, u_x: Floats, left_out: int) -> Wear:
    y, u_y = np.array([(point.value, point.u) for point in points]).T
    try:
        line = fit_line(x, y)
    except InputError as error:
        raise InputError(
            "used", tr("Too little filament was used between these results. Go on, and weigh the spool again.")
        ) from error
    off = x - x.mean()
    stated_u = float(np.sqrt(np.sum(off**2 * (u_y**2 + (line.slope * u_x) ** 2))) / np.sum(off**2))
    unit = f"{points[0].unit}/kg"
    both = (Estimate("per_kg", line.slope, line.u_slope, line.dof, unit),
            Estimate("per_kg", line.slope, stated_u, math.inf, unit))  # fmt: skip
    per_kg = max(both, key=lambda estimate: estimate.U)
    says = (
        tr("It changes with the filament used: look at the nozzle for wear, filled filament above all.")
        if per_kg.significant
        else tr("No change with the filament used is proved.")
    )
    return Wear(points, x, u_x, line, per_kg, left_out, says)
