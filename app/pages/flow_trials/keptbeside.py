"""What other kept trials of a machine and lot say beside a flow trial: factors, ceilings, how the factor was found."""

from __future__ import annotations

from typing import TYPE_CHECKING

from app.context import Context, Level
from app.words import shown
from core.errors import StoreError
from core.records.rows import Trial, TrialState
from core.words import tr

if TYPE_CHECKING:
    from core.flow_trials.ceiling import KnownCeiling
    from core.flow_trials.combine import KnownFlow
    from core.flow_trials.conditions import PrintConditions
    from core.guidance.flowadvice import Beside
    from core.quantity import Estimate

SUBJECTS = ("wall", "mass", "top")  # whose trials find the factor
FLOW_FACTOR = "flow_factor"  # name of the setting in force
_CEILING = "flow_ceiling"
_LOOK_BACK = 20  # trials


def known_beside(context: Context, kept_trial: Trial | None, temperature_c: float) -> Beside:
    """Return what other trials of the picked machine and lot say; a kept trial is shown with those it used."""
    from core.flow_trials.ceiling import ceiling_far, ceiling_near
    from core.guidance.flowadvice import Beside

    machine_id, lot_id, store = context.machine_id, context.lot_id, context.store
    if machine_id is None or lot_id is None:
        return Beside()
    try:
        if kept_trial is not None:
            return Beside(tuple(_known(store.trial(used)) for used in kept_trial.used))
        newest = [store.newest(f"flow_ratio_{subject}", machine_id, lot_id) for subject in SUBJECTS]
        known = tuple(_known(store.trial(found[0])) for found in newest if found)
        ceilings = known_ceilings(context, machine_id, lot_id)
        found_with = factor_found(context, machine_id, lot_id)
    except StoreError as error:
        context.say(shown(error.message), Level.ERROR)
        return Beside()
    ceiling = ceiling_near(ceilings, temperature_c)
    far = ceiling_far(ceilings, temperature_c)
    return Beside(known, ceiling.ceiling.value if ceiling else None, found_with, far)


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


def _known(trial: Trial) -> KnownFlow:
    """Return the factor that a kept trial found by its own readings."""
    from core.flow_trials.combine import KnownFlow
    from core.flow_trials.conditions import conditions_from

    estimate = next((e for e in trial.estimates if e.name == f"flow_ratio_{trial.subject}"), None)
    conditions = conditions_from(trial.conditions)
    if estimate is None or conditions is None or trial.id is None:  # a kept trial had all of them
        raise StoreError(tr("Trial {number} has lost its conditions; withdraw it.", number=trial.id))
    return KnownFlow(estimate, conditions, trial.id)


def _temperature_c(context: Context, trial: Trial, estimate: Estimate) -> float | None:
    """Return the temperature in the estimate's name; of a trial at one temperature that of its strands."""
    stated = estimate.name.removeprefix(_CEILING).strip("_").removesuffix("c")
    if stated:
        return float(stated)
    typed = context.store.trial(trial.id or 0).readings.get("temperature_c", [])
    known = [float(value) for value in typed if value is not None]
    return sum(known) / len(known) if known else None
