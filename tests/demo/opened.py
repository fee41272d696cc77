"""The demo shop opened for a test or a picture."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

from core.records.demoshop import FILE_NAME, ready_demo
from core.records.rows import Instrument, Lot, Machine
from core.records.store import Store, open_store


def open_demo(folder: Path, now: datetime | None = None) -> Store:
    """Return the store of a demo shop of its own in this folder; whoever asks closes it.

    Args:
        folder: for the database file.
        now: the present moment; the newest record is of the day before. A fixed one makes pictures repeatable.
    """
    path = folder / FILE_NAME
    ready_demo(path, now or datetime.now(UTC), anew=True)
    return open_store(path)


def named(rows: tuple[Machine | Lot | Instrument, ...], name: str) -> int:
    """Return the id of a machine, lot or instrument by its name."""
    found = next(row.id for row in rows if row.name == name)
    assert found is not None  # it comes from the store
    return found
