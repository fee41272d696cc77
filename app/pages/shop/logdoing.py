"""What the logbook's buttons do with an entry; each adds one, none is changed."""

from __future__ import annotations

from pathlib import Path

from app.context import Context
from app.pages.shop.photos import MIME, small_picture
from app.pages.trialreport import write_kept
from app.words import shown
from core.guidance.logentries import Entry, change_words
from core.records.rows import Attachment, Event, SettingInForce, Trial

_SETTING = "setting"  # in the detail of a note: the id of the setting that it is about


def let_go(context: Context, entry: Entry, note: str) -> None:
    """Withdraw a trial, undo a setting, or take an event back.

    Raises:
        InputError: a reason is needed, or it counts no more already.
        StoreError: the database refuses.
    """
    row, store = entry.row, context.store
    if isinstance(row, Trial):
        context.kept.emit(store.withdraw(row.id or 0, note))
    elif isinstance(row, SettingInForce):
        store.undo_setting(row, note)
    else:
        back = Event(
            row.kind,
            row.machine_id,
            row.lot_id,
            row.instrument_id,
            detail=dict(row.detail),
            note=note,
            takes_back=row.id,
        )
        context.logged.emit(store.log_event(back))


def add_note(context: Context, entry: Entry, note: str) -> None:
    """Log words about an entry; those about a trial hang on it.

    Raises:
        InputError: the note cannot be kept as it is.
        StoreError: the database refuses.
    """
    trial_id = entry.row.id if isinstance(entry.row, Trial) else None
    event = Event("note", entry.machine_id, entry.lot_id, trial_id=trial_id, note=note)
    context.logged.emit(context.store.log_event(event))


def attach_picture(context: Context, entry: Entry, path: str, note: str) -> None:
    """Keep a picture file with an entry, made small; that of a setting hangs on a note of its own.

    Raises:
        InputError: no picture that can be read.
        StoreError: the database refuses.
    """
    content = small_picture(path)
    row, store = entry.row, context.store
    event_id = row.id if isinstance(row, Event) else None
    if isinstance(row, SettingInForce):
        says = note or shown(change_words(row))
        event = Event("note", row.machine_id, row.lot_id, detail={_SETTING: row.id}, note=says)
        event_id = store.log_event(event).id
    store.attach(
        Attachment(
            Path(path).name,
            MIME,
            machine_id=entry.machine_id,
            lot_id=entry.lot_id,
            trial_id=row.id if isinstance(row, Trial) else None,
            event_id=event_id,
            note=note,
        ),
        content,
    )


def write_report(context: Context, entry: Entry, path: Path) -> bool:
    """Write the report of a trial of the log, kept or withdrawn; False for any other entry or where it cannot be."""
    return isinstance(entry.row, Trial) and write_kept(context, context.store.trial(entry.row.id or 0), path)


def pictures_of(context: Context, entry: Entry) -> tuple[Attachment, ...]:
    """Return the pictures kept with an entry; for a setting those of its notes.

    Raises:
        StoreError: the database cannot be read.
    """
    row, store = entry.row, context.store
    if isinstance(row, Trial):
        return store.attachments(trial_id=row.id)
    if isinstance(row, Event):
        return store.attachments(event_id=row.id)
    notes = store.events(machine_id=row.machine_id, kind="note")
    own = [event.id for event in notes if event.detail.get(_SETTING) == row.id]
    return tuple(found for number in own for found in store.attachments(event_id=number))


def may_go(entry: Entry, in_force: bool) -> bool:
    """Return whether an entry can be withdrawn, undone or taken back."""
    if isinstance(entry.row, Trial):
        return not entry.gone
    if isinstance(entry.row, SettingInForce):
        return in_force and entry.row.old is not None
    return not entry.gone and entry.row.kind != "withdrawn"
