"""A copy in the place of a database file that cannot be opened any more; the file itself is set aside first."""

from __future__ import annotations

import tempfile
from contextlib import suppress
from pathlib import Path

from core.errors import StoreError
from core.records import backup
from core.records.backup import Step, no_step
from core.records.engine import place_of
from core.records.faults import store_error
from core.records.rows import Backup
from core.records.storage import get_ready


def copies_of(where: str | Path) -> tuple[Backup, ...]:
    """Return the copies of a database file that perhaps cannot be opened, newest first; none for a server."""
    with suppress(StoreError):
        path = place_of(where).path
        return () if path is None else backup.backups_of(path)
    return ()


def rescue(where: str | Path, file: str, step: Step = no_step) -> Path:
    """Put a copy in the place of a file and return where the file itself lies now.

    The copy is checked and brought up to date first, so that a bad one changes nothing; until then `step` may stop it.

    Raises:
        StoreError: the copy is damaged, or the disk refuses; the file is where it was then.
    """
    path = place_of(where).path
    assert path is not None  # only a file has copies beside it
    backup.contents_of(Path(file), backup.share_of(step, 0.0, 0.1))
    try:
        with tempfile.TemporaryDirectory(dir=backup.folder_of(path)) as folder:
            ready = Path(folder) / "ready.sqlite"
            get_ready(Path(file), ready, backup.share_of(step, 0.1, 1.0))
            aside = backup.set_aside(path)
            for log in ("-wal", "-shm"):  # SQLite would take them for those of the copy
                path.with_name(path.name + log).unlink(missing_ok=True)
            ready.replace(path)
    except OSError as error:
        raise store_error(error, str(path)) from error
    return aside
