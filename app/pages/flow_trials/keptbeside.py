"""What other kept trials of a machine and lot say beside a flow trial: its ceilings, and how the factor was found."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.context import Context
from core.records.rows import Trial, TrialState

if TYPE_CHECKING:
    from core.flow_trials.ceiling import KnownCeiling
    from core.flow_trials.conditions import PrintConditions
    from core.quantity import Estimate

FLOW_FACTOR = "flow_factor"  # name of the setting in force
_CEILING = "flow_ceiling"
_LOOK_BACK = 20  # trials


def known_ceilings(context: Context, machine_id: int, lot_id: int) -> tuple[KnownCeiling, ...]:
    """Return the kept ceilings of a machine and lot with the nozzle's temperature, newest first.

    Raises:
        StoreError: the store cannot be read.
    """
    from core.flow_trials.ceiling import KnownCeiling  # the window opens before the mathematics is needed

    kept = [
        trial
        for trial in context.store.trials("ceiling", machine_id, lot_id, limit=_LOOK_BACK)
        if trial.state is TrialState.KEPT and trial.id is not None
    ]
    return tuple(
        KnownCeiling(temperature_c, estimate, trial.id or 0)
        for trial in kept
        for estimate in trial.estimates
        if estimate.name.startswith(_CEILING)
        and (temperature_c := _temperature_c(context, trial, estimate)) is not None
    )


def factor_found(context: Context, machine_id: int, lot_id: int) -> PrintConditions | None:
    """Return what held when the flow factor in force was found; None where that is not known.

    Raises:
        StoreError: the store cannot be read.
    """
    from core.flow_trials.conditions import conditions_from

    now = context.store.in_force(FLOW_FACTOR, machine_id, lot_id)
    return conditions_from(context.store.trial(now.trial_id).conditions) if now and now.trial_id else None


def _temperature_c(context: Context, trial: Trial, estimate: Estimate) -> float | None:
    """Return the temperature in the estimate's name; of a trial at one temperature that of its strands."""
    stated = estimate.name.removeprefix(_CEILING).strip("_").removesuffix("c")
    if stated:
        return float(stated)
    typed = context.store.trial(trial.id or 0).readings.get("temperature_c", [])
    known = [float(value) for value in typed if value is not None]
    return sum(known) / len(known) if known else None
