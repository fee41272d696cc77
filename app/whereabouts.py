"""Which database is opened: that of the command line, the one of every start, or the usual one; and its copies."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path
from urllib.parse import urlsplit

from PySide6.QtCore import QSettings

from app.options import ANEW
from core.errors import StoreError

_KEY = "database"


def where_to_open(settings: QSettings, given: str | None) -> str | Path:
    """Return the path or address: as given, else the one of every start, else the usual path.

    Raises:
        StoreError: the system tells no home folder for the usual path.
    """
    from core.records.place import default_database_path  # slow to import: not before the first paint

    return given or str(settings.value(_KEY, "")) or default_database_path()


def demo_to_open(how: str) -> Path:
    """Begin the demo shop where that is due, or ANEW, and return its path.

    Raises:
        StoreError: the disk refuses, or no demo shop is where it belongs.
    """
    from core.records.demoshop import demo_path, ready_demo  # as above

    path = demo_path()
    ready_demo(path, datetime.now(UTC), anew=how == ANEW)
    return path


def remember_database(settings: QSettings, where: str) -> None:
    """Open this one at every start from now on; an address with a password in it is not written down."""
    settings.setValue(_KEY, "" if "://" in where and urlsplit(where).password else where)


def copies_to_offer(settings: QSettings, given: str | None) -> list[tuple[str, str]]:
    """Return the copies of a database that cannot be opened, newest first, each for people and as its file."""
    from core.records.rescue import copies_of

    try:
        found = copies_of(where_to_open(settings, given))
    except StoreError:  # no home folder, so no usual place
        return []
    return [(f"{copy.made_at.astimezone():%Y-%m-%d %H:%M}   {Path(copy.file).name}", copy.file) for copy in found]
