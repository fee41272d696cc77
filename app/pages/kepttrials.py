"""What a page reads of the kept trials; where the store refuses, the notice line says why and nothing is returned."""

from __future__ import annotations

from collections.abc import Sequence

from app.context import Context, Level
from app.words import shown
from core.errors import StoreError
from core.records.rows import Trial
from core.words import tr

# Estimates that only the check of an instrument gives.
_CHECKED = ("zero_outside", "zero", "zero_inside", "zero_depth", "sd_hand")


def kept_on_machine(context: Context, subject: str) -> tuple[Trial, ...]:
    """Return the kept trials of a subject on the picked machine."""
    machine = context.machine
    try:
        return context.store.trials(subject=subject, machine_id=machine.id) if machine else ()
    except StoreError as error:
        context.say(shown(error.message), Level.ERROR)
        return ()


def kept_trial(context: Context, trial_id: int) -> Trial | None:
    """Return the trial of a number."""
    try:
        return context.store.trial(trial_id)
    except StoreError as error:
        context.say(shown(error.message), Level.ERROR)
        return None


def say_not_offered(context: Context, choices: Sequence[str]) -> None:
    """Say that a trial was made with choices that no field can show; nothing where there are none."""
    if choices:
        says = tr("This trial was made with what is not offered here: {what}. The choice shown instead was not made.",
                  what="; ".join(choices))  # fmt: skip
        context.say(shown(says), Level.WARNING)


def example(context: Context, kept: Sequence[Trial]) -> Trial | None:
    """Return the newest of these trials that is of the picked lot or of none, in the demo shop only."""
    found = next((trial.id for trial in kept if trial.lot_id in (None, context.lot_id)), None)
    return kept_trial(context, found) if found is not None and context.is_demo else None


def newest_check(context: Context, instrument_id: int | None) -> Trial | None:
    """Return the last kept check of an instrument; None also where it was never checked here."""
    if instrument_id is None:
        return None
    try:
        return context.store.newest_check(_CHECKED, instrument_id)
    except StoreError as error:
        context.say(shown(error.message), Level.ERROR)
        return None
