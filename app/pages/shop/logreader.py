"""What the logbook shows, read from the store for the picked machine, the picked lot, or the whole shop."""

from __future__ import annotations

from dataclasses import dataclass

from app.context import Context
from app.pages.shop.logdoing import pictures_of
from app.pages.subjecttitles import subject_titles
from core.guidance.attribution import Change, judge_changes
from core.guidance.changes import wrong_base
from core.guidance.logentries import Entry, Moved, compare_trials, log_entries
from core.records.rows import Attachment, Lot, Machine, SettingInForce, Trial, TrialState

MOST_TRIALS = 1000  # in sight; older ones are found by machine or lot


@dataclass(frozen=True, slots=True)
class Log:
    """Entries newest first, the judged changes by setting, and names of machines and lots."""

    entries: tuple[Entry, ...]
    changes: dict[int, Change]
    machines: dict[int, str]
    lots: dict[int, str]


def read_log(context: Context, machine: Machine | None, lot: Lot | None) -> Log:
    """Return the log of a machine, of a lot, or, with neither, of the shop.

    Raises:
        StoreError: the database cannot be read.
    """
    store = context.store
    machine_id, lot_id = machine.id if machine else None, lot.id if lot else None
    trials = store.trials(machine_id=machine_id, lot_id=lot_id, limit=MOST_TRIALS)
    settings = store.settings(machine_id, lot_id)
    if machine_id is None and lot_id is not None:
        settings = tuple(setting for setting in settings if setting.lot_id == lot_id)
    events = store.events(machine_id=machine_id, lot_id=lot_id)
    # What tells changes of the machine as such apart need not be of the lot.
    telling = trials if None in (machine_id, lot_id) else store.trials(machine_id=machine_id, limit=MOST_TRIALS)
    since = telling[-1].serial or 0 if len(telling) == MOST_TRIALS else 0
    by_machine: dict[int, list[Change]] = {}
    for number in {setting.machine_id for setting in settings}:
        own = [setting for setting in settings if setting.machine_id == number]
        by_machine[number] = list(judge_changes(own, telling, since))
    return Log(
        log_entries(trials, settings, events, subject_titles()),
        {change.setting.id or 0: change for changes in by_machine.values() for change in changes},
        {row.id or 0: row.name for row in store.machines()},
        {row.id or 0: row.name for row in store.lots()},
    )


@dataclass(frozen=True, slots=True)
class KnownOfEntry:
    """What stands beside an entry: the trial before it and what moved since, a setting's base, its pictures."""

    before: Trial | None
    moved: tuple[Moved, ...]
    based: SettingInForce | None
    attached: tuple[Attachment, ...]
    contents: dict[int, bytes]


def read_entry(context: Context, entry: Entry, changes: dict[int, Change]) -> KnownOfEntry:
    """Return what stands beside an entry of the log.

    Raises:
        InputError: a trial that it speaks of is gone.
        StoreError: the database cannot be read.
    """
    before = trial_before(context, entry.row) if isinstance(entry.row, Trial) else None
    moved = compare_trials(before, entry.row) if before is not None and isinstance(entry.row, Trial) else ()
    attached = pictures_of(context, entry)
    contents = {found.id or 0: context.store.attachment_content(found.id or 0) for found in attached}
    return KnownOfEntry(before, moved, based_on(context, entry, changes), attached, contents)


def trial_before(context: Context, trial: Trial) -> Trial | None:
    """Return the kept trial of the same subject, machine and lot before this one."""
    others = context.store.trials(trial.subject, trial.machine_id, trial.lot_id, limit=MOST_TRIALS)
    earlier = [
        other
        for other in others
        if other.state is TrialState.KEPT and other.serial is not None and other.serial < (trial.serial or 0)
    ]
    return max(earlier, key=lambda other: other.serial or 0, default=None)


def based_on(context: Context, entry: Entry, changes: dict[int, Change]) -> SettingInForce | None:
    """Return what was in force when the trial of a setting was begun, where the setting did not start from it."""
    setting = entry.row
    if not isinstance(setting, SettingInForce) or setting.trial_id is None:
        return None
    begun = context.store.trial(setting.trial_id).started_at
    every = [change.setting for change in changes.values() if change.setting.machine_id == setting.machine_id]
    return None if begun is None else wrong_base(setting, every, begun)
