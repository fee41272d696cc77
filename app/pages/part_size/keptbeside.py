"""What the pages of this room find kept beside their own: trials to choose from, locks, settings, the shop's split."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import QDateTime, QLocale

from app.context import Context
from app.words import shown
from core.records.rows import SettingInForce, Trial, TrialState
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.splitpair import SplitPair

_SHORT = QLocale.FormatType.ShortFormat
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

    store = context.store
    kept = [t.id for t in store.trials(VERIFIED) if t.state is TrialState.KEPT and t.id is not None]
    return normalised_errors([store.trial(number) for number in kept])


def begun_since(trials: Sequence[Trial], locked: Trial | None) -> list[Trial]:
    """Return the trials whose readings were begun after a prediction was locked."""
    if locked is None or locked.kept_at is None:
        return []
    return [t for t in trials if t.started_at is not None and t.started_at >= locked.kept_at]


def linked_pairs(context: Context) -> dict[str, SplitPair]:
    """Return by axis what other trials of the shop say of the picked machine and lot; none where no trial links them.

    Raises:
        InputError: for drive parts on record that cannot be.
        StoreError: the database cannot be read.
    """
    from core.guidance.splitshop import read_shop

    machine, lot, store = context.machine, context.lot, context.store
    if machine is None or lot is None:
        return {}
    machines = store.machines()
    settings = [setting for row in machines if row.id for setting in store.settings(row.id)]
    shop = read_shop(machines, store.lots(), store.series, settings, store.events())
    pairs = {axis: shop.pair(axis, machine.id, lot.id) for axis in shop.axes}
    return {axis: pair for axis, pair in pairs.items() if pair is not None and pair.others > 0}


def choices(trials: Sequence[Trial]) -> list[tuple[str, str]]:
    """Return number and day of trials, for a picker."""
    return [(str(trial.id), f"№ {trial.id}, {day_of(trial)}") for trial in trials]


def flow_row(context: Context, trial_id: int) -> tuple[str, str, str]:
    """Return the flow trial behind a size trial and what it holds for: a size trial knows no nozzle temperature.

    Raises:
        StoreError: the database cannot be read.
    """
    from core.guidance.flowheld import flow_held_words  # the window opens before the mathematics is needed

    held = flow_held_words(context.store.trial(trial_id).conditions)
    return shown(tr("flow trial")), f"№ {trial_id}", shown(held)


def day_of(trial: Trial) -> str:
    """Return the day on which a trial was kept."""
    seconds = int(trial.kept_at.timestamp()) if trial.kept_at else 0
    return QLocale().toString(QDateTime.fromSecsSinceEpoch(seconds).date(), _SHORT)


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
