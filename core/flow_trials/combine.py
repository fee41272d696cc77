"""Up to three estimates of one flow factor put together, or the reason why they must not be.

    k = sum(w_i k_i)/sum(w_i),  w_i = 1/u_i^2,  u = 1/sqrt(sum(w_i))
    conflict where chi^2 = sum((k_i - k)^2/u_i^2) is above its 95 % quantile with n - 1 degrees of freedom

In the test a u_i that rests on few readings counts as U_i/1.96.

Reference: JCGM 100:2008 5.1 (weighted mean as a function of its inputs) and G.4; Cox, Metrologia 39 (2002) 589
(weighted mean, chi-squared test). Rules (1.5 % to leave, 0.85 to 1.10): common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from core.errors import InputError
from core.flow_trials.bead import Bead
from core.flow_trials.conditions import PrintConditions, percent_text, why_apart
from core.measuring.gum import combine
from core.measuring.reach import within_reach
from core.quantity import Estimate, coverage_factor
from core.words import Words, side_by_side, tr

NAME = "flow_ratio"
LEAVE_RATIO = 0.015
LOWEST_FACTOR, HIGHEST_FACTOR = 0.85, 1.10
_ODD_LEVEL = 0.05


class FlowAnswer(StrEnum):
    """What the flow trials say together."""

    LEAVE = "leave"
    CHANGE = "change"
    GO_BACK = "go_back"
    CONFLICT = "conflict"
    UNCLEAR = "unclear"


@dataclass(frozen=True, slots=True)
class KnownFlow:
    """An estimate of an earlier trial with what held then."""

    estimate: Estimate
    conditions: PrintConditions
    trial_id: int


@dataclass(frozen=True, slots=True)
class Flow:
    """The estimates of one flow factor together.

    Attributes:
        estimates: flow_ratio_wall, flow_ratio_mass, flow_ratio_top, those there are.
        combined: their weighted mean flow_ratio, also where they conflict.
        change: of the factor in force, as a ratio.
        chi2: of the conflict test, 0 for one estimate.
        limit: its 95 % quantile.
        odd: the estimate that disagrees most, where they conflict.
    """

    estimates: tuple[Estimate, ...]
    combined: Estimate
    change: Estimate
    chi2: float
    limit: float
    odd: Estimate | None
    answer: FlowAnswer


def known_here(
    conditions: PrintConditions, own_name: str, known: Sequence[KnownFlow]
) -> tuple[tuple[KnownFlow, ...], tuple[Words, ...]]:
    """Sort earlier estimates into those that count beside this trial, and a sentence for each other one.

    Args:
        conditions: of this trial.
        own_name: name of its estimate; an older one of that name gives way without a word.
        known: the newest of each name.
    """
    used, left = [], []
    for flow in known:
        if flow.estimate.name == own_name:
            continue
        why = why_apart(conditions, flow.conditions)
        if why is None:
            used.append(flow)
        else:
            left.append(tr("Trial {number} is left out: {why}.", number=flow.trial_id, why=why))
    return tuple(used), tuple(left)


@within_reach
def combine_flow(estimates: Sequence[Estimate], in_force_ratio: float) -> Flow:
    """Return the weighted mean and what follows for the factor in force.

    Args:
        estimates: of one factor, by different methods.
        in_force_ratio: the factor that a change starts from.

    Raises:
        InputError: field `estimates` for none, one not above zero or without uncertainty, `in_force_ratio` not above
            zero.
    """
    from scipy.special import chdtri

    if not estimates or not all(e.u > 0 for e in estimates):
        raise InputError("estimates", tr("An estimate without uncertainty cannot be weighed; give its size."))
    if not all(e.value > 0 for e in estimates):
        raise InputError("estimates", tr("A flow factor is above 0; read again what gave one that is not."))
    if not in_force_ratio > 0:
        raise InputError("in_force_ratio", tr("The factor in force is above 0; type 1 for 100 %."))
    combined, chi2 = _weighted(estimates)
    limit = float(chdtri(len(estimates) - 1, _ODD_LEVEL)) if len(estimates) > 1 else math.inf
    change = Estimate(
        "flow_change", combined.value / in_force_ratio - 1.0, combined.u / in_force_ratio, combined.dof, "1"
    )
    conflict = chi2 > limit
    return Flow(
        estimates=tuple(estimates),
        combined=combined,
        change=change,
        chi2=chi2,
        limit=limit,
        odd=_odd(estimates) if conflict else None,
        answer=FlowAnswer.CONFLICT if conflict else _answer(combined, change),
    )


def _weighted(estimates: Sequence[Estimate]) -> tuple[Estimate, float]:
    value, u = np.array([e.value for e in estimates]), np.array([e.u for e in estimates])
    weight = u**-2 / np.sum(u**-2)
    mean = float(weight @ value)
    together = combine(weight * u, [e.dof for e in estimates])
    normal_u = np.array([e.U for e in estimates]) / coverage_factor(math.inf)
    chi2 = float(np.sum(((value - np.average(value, weights=normal_u**-2)) / normal_u) ** 2))
    return Estimate(NAME, mean, together.u, together.dof, "1"), chi2


def _answer(combined: Estimate, change: Estimate) -> FlowAnswer:
    if not LOWEST_FACTOR <= combined.value <= HIGHEST_FACTOR:
        return FlowAnswer.GO_BACK
    if abs(change.value) < LEAVE_RATIO:
        return FlowAnswer.LEAVE
    return FlowAnswer.CHANGE if change.significant else FlowAnswer.UNCLEAR


def _odd(estimates: Sequence[Estimate]) -> Estimate:
    """Return the estimate without which the others agree best; of two, the less certain one."""
    if len(estimates) == 2:
        return max(estimates, key=lambda e: e.u)
    return min(estimates, key=lambda odd: _weighted([e for e in estimates if e is not odd])[1])


def conflict_words(flow: Flow, bead: Bead, in_force_ratio: float) -> Words:
    """Say how far the estimates lie apart and what makes the odd one so.

    Args:
        flow: with the answer CONFLICT.
        bead: commanded, to turn a factor into a wall.
        in_force_ratio: the factor in force.
    """
    says = [
        tr("{method} {change} %", method=_method(e.name), change=percent_text(e.value / in_force_ratio - 1.0))
        for e in flow.estimates
    ]
    odd = flow.odd or flow.estimates[0]
    others = _weighted([e for e in flow.estimates if e is not odd])[0]
    return tr(
        "The trials say: {says} (χ² {chi2:.1f}, limit {limit:.1f}). {why}",
        says=side_by_side(says, ", "),
        chi2=flow.chi2,
        limit=flow.limit,
        why=_why(odd, others, in_force_ratio * bead.spacing_mm),
    )


def _method(name: str) -> Words:
    return {
        "flow_ratio_wall": tr("wall"),
        "flow_ratio_mass": tr("mass"),
        "flow_ratio_top": tr("top"),
    }[name]


def _why(odd: Estimate, others: Estimate, spacing_mm: float) -> Words:
    low = odd.value < others.value
    if odd.name == "flow_ratio_wall":
        excess = spacing_mm * abs(1.0 / odd.value - 1.0 / others.value)
        if low:
            return tr(
                "The wall reads {excess:.2f} mm too thick for the others: ridges under the jaws. Read at most 5 "
                "layers with blade edges.",
                excess=excess,
            )
        return tr(
            "The wall reads {excess:.2f} mm too thin for the others: jaws pressed hard, or a place near a corner.",
            excess=excess,
        )
    if odd.name == "flow_ratio_mass":
        if low:
            return tr("The piece weighs too much for the others: skirt, purge or strings weighed with it, or the "
                      "density is higher.")  # fmt: skip
        return tr("The piece weighs too little for the others: a hollow part or infill, a skirt counted but not "
                  "weighed, a feed that slips, or a lower density.")  # fmt: skip
    if low:
        return tr("The pads show ridges too early for the others: nozzle too near the bed, or scored too strictly.")
    return tr("The pads show gaps too long for the others: lines too far apart, cold plastic, or scored too strictly.")
