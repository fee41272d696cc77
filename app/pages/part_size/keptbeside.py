"""What the pages of this room find kept beside their own: trials to choose from, locks, settings."""

from __future__ import annotations

from collections.abc import Sequence

from app.context import Context
from app.dates import day_text
from app.words import shown
from core.records.rows import SettingInForce, Trial, TrialState
from core.words import tr

_OF_PARTS = ("shrink_allowance", "axis_scale", "contour_offset")  # settings that a proof piece verifies


def kept_here(context: Context, subject: str) -> list[Trial]:
    """Return the kept trials of a subject of the picked machine and lot, newest first; none where one is not picked."""
    machine, lot = context.machine, context.lot
    if machine is None or lot is None:
        return []
    return [t for t in context.store.trials(subject, machine.id, lot.id) if t.state is TrialState.KEPT]


def earlier_errors(context: Context) -> tuple[tuple[float, ...], ...]:
    """Return the normalised errors of all kept verifications of the shop, piece by piece."""
    from core.guidance.predicted import VERIFIED
    from core.guidance.scored import normalised_errors

    kept = [trial for trial in context.store.trials(VERIFIED, readings=True) if trial.state is TrialState.KEPT]
    return normalised_errors(kept)


def begun_since(trials: Sequence[Trial], locked: Trial | None) -> list[Trial]:
    """Return the trials whose readings were begun after a prediction was locked."""
    if locked is None or locked.kept_at is None:
        return []
    return [t for t in trials if t.started_at is not None and t.started_at >= locked.kept_at]


def choices(trials: Sequence[Trial]) -> list[tuple[str, str]]:
    """Return number and day of trials, for a picker."""
    return [(str(trial.id), f"№ {trial.id}, {day_of(trial)}") for trial in trials]


def flow_row(context: Context, trial_id: int, nozzle_c: float | None) -> tuple[str, str, str]:
    """Return the flow trial behind a size trial and what it holds for.

    Args:
        context: of the window.
        trial_id: of the flow trial.
        nozzle_c: nozzle temperature that the size trial is kept with; None for not known.

    Raises:
        StoreError: the database cannot be read.
    """
    from core.guidance.flowheld import flow_held_words  # the window opens before the mathematics is needed

    held = flow_held_words(context.store.trial(trial_id).conditions, nozzle_c)
    return shown(tr("flow trial")), f"№ {trial_id}", shown(held)


def day_of(trial: Trial) -> str:
    """Return the day on which a trial was kept."""
    return day_text(trial.kept_at)


def verified_settings(context: Context, read: Trial) -> tuple[SettingInForce, ...]:
    """Return the settings in force for parts, set before the proof piece was read, that nothing has verified yet."""
    newest: dict[tuple[int | None, str], SettingInForce] = {}
    for setting in context.store.settings(read.machine_id or 0, read.lot_id):
        newest.setdefault((setting.lot_id, setting.name), setting)
    return tuple(
        s
        for s in newest.values()
        if s.verified_by is None
        and s.since is not None
        and read.started_at is not None
        and s.since < read.started_at
        and s.name.startswith(_OF_PARTS)
    )
