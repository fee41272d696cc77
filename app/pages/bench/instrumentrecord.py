"""What the store knows of an instrument: its checks, its record after a check, the results in doubt."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from app.context import Context
from core.measuring.instrumentkinds import kind_of
from core.records.rows import Instrument, Trial

if TYPE_CHECKING:
    from core.measuring.doubt import Doubtful
    from core.measuring.instrument import InstrumentCheck

SUBJECT = "instrument"


def checks_of(context: Context) -> list[Trial]:
    """Return the kept checks of the picked instrument, newest first, without their readings.

    Raises:
        StoreError: disk, lock, schema or server.
    """
    picked = context.instrument
    if picked is None or picked.id is None:
        return []
    return list(context.store.read_with(picked.id, subject=SUBJECT))


def doubtful_of(context: Context) -> tuple[Doubtful, ...]:
    """Return the results that a bad check of the picked instrument throws doubt on.

    Raises:
        StoreError: disk, lock, schema or server.
    """
    from core.measuring.doubt import doubt_begins, in_doubt  # the page opens before it is needed

    checks = checks_of(context)
    since = doubt_begins(checks)
    if context.instrument_id is None or since is None:
        return ()
    read = context.store.read_with(context.instrument_id, since)
    return in_doubt(checks, [trial for trial in read if trial.subject != SUBJECT])


def instrument_of(context: Context, instrument_id: int | None) -> Instrument | None:
    """Return an instrument by its id.

    Raises:
        StoreError: disk, lock, schema or server.
    """
    return next((row for row in context.store.instruments() if row.id == instrument_id), None)


def write_record(context: Context, trial: Trial, check: InstrumentCheck, resolution: float) -> Instrument | None:
    """Give the record of an instrument what its kept check has found; None where nothing is to be written.

    Raises:
        InputError: the record was changed elsewhere meanwhile.
        StoreError: disk, lock, schema or server.
    """
    from core.measuring.instrument import instrument_after  # the page opens before it is needed

    row = instrument_of(context, trial.instrument_id)
    if row is None or not kind_of(row.kind).length:
        return None
    found = replace(instrument_after(row, check), resolution_mm=resolution)
    return context.store.change_instrument(found) if found != row else None
