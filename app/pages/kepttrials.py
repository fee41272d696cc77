"""What a page reads of the kept trials; where the store refuses, the notice line says why and nothing is returned."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtWidgets import QWidget

from app.context import Context, Level
from app.words import shown
from core.errors import StoreError
from core.records.rows import Trial

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


def example(context: Context, kept: Sequence[Trial]) -> Trial | None:
    """Return the newest of these trials that is of the picked lot or of none, in the demo shop only."""
    try:
        shows = context.store.is_demo
    except StoreError:
        return None  # whoever reads or stores next says what is wrong
    found = next((trial.id for trial in kept if trial.lot_id in (None, context.lot_id)), None)
    return kept_trial(context, found) if shows and found is not None else None


def write_kept(context: Context, trial: Trial, path: Path, picture: QWidget | None = None) -> bool:
    """Write the report of a kept trial; return whether it was written."""
    from app.reportfiles import write_trial  # no page needs it before its button is used

    return write_trial(context, trial, newest_check(context, trial.instrument_id), path, picture)


def newest_check(context: Context, instrument_id: int | None) -> Trial | None:
    """Return the last kept check of an instrument; None also where it was never checked here."""
    if instrument_id is None:
        return None
    try:
        return context.store.newest_check(_CHECKED, instrument_id)
    except StoreError as error:
        context.say(shown(error.message), Level.ERROR)
        return None
