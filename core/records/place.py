"""Where the database lives: the usual path, a first empty file, and whether a file that is there is one of ours.

Standard library only, so that the window knows the path before SQLAlchemy is imported. A file is recognised by the
application id in its head (https://www.sqlite.org/fileformat2.html, 1.3.11), read through an immutable connection: no
lock, no log beside it, not a byte changed. It is never opened as a plain file, because closing that would drop the
locks that SQLite holds in this process (https://www.sqlite.org/howtocorrupt.html, 2.2).
"""

from __future__ import annotations

import errno
import os
import sqlite3
import stat
import sys
import time
from contextlib import closing, suppress
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import quote

from core.errors import StoreError
from core.records.faults import damaged, store_error
from core.words import tr

APPLICATION_ID = 0x534C4741  # the letters SLGA
FILE_NAME = "slipgauge.sqlite"
FIRST_PAGE_S = 0.2  # far more than one page takes to be written


@dataclass(frozen=True, slots=True)
class Place:
    """A database as people read it (`shown`), and its absolute `path` or, for a server, its `url`; neither: memory."""

    shown: str
    path: Path | None = None
    url: str = ""


def default_database_path() -> Path:
    """Return the path of the database in the user's data folder; the folder need not exist.

    Raises:
        StoreError: the system does not tell a home folder.
    """
    home = _home()
    if sys.platform == "win32":
        folder = Path(os.environ.get("LOCALAPPDATA") or home / "AppData" / "Local")
    elif sys.platform == "darwin":
        folder = home / "Library" / "Application Support"
    else:
        given = os.environ.get("XDG_DATA_HOME", "")
        folder = Path(given) if Path(given).is_absolute() else home / ".local" / "share"
    return folder / "slipgauge" / FILE_NAME


def _home() -> Path:
    try:
        return Path.home()
    except RuntimeError as error:
        raise StoreError(tr("This system tells no home folder; name a file for the database.")) from error


def file_place(where: str | Path) -> Place:
    """Return the place of an SQLite file, made independent of the current folder.

    Raises:
        StoreError: letters that no file system takes.
    """
    path = Path(where)
    if path.parts[:1] == ("~",):
        path = _home().joinpath(*path.parts[1:])
    path = path.absolute()
    try:
        return Place(os.fsencode(path).decode("utf-8", "replace"), path)
    except UnicodeEncodeError as error:  # half a letter
        shown = str(where).encode("utf-8", "replace").decode()
        raise StoreError(tr("“{where}” cannot be the name of a file; name another one.", where=shown)) from error


def sqlite_address(path: Path, mode: str) -> str:
    """Return the file as an SQLite URI; with mode `rw` a file that is gone is not silently made anew."""
    name = quote(os.fsencode(path.as_posix()))
    return f"file://{name if name.startswith('/') else '/' + name}?mode={mode}"


def prepare(place: Place) -> None:
    """Begin the file if there is none; else make sure that it is one of ours, without changing it.

    Raises:
        StoreError: no such folder, a folder, an empty file, another program's file, or the disk refuses.
    """
    if place.path is None:
        return
    try:
        _prepare(place.path, place.shown)
    except ValueError as error:  # a zero byte in the name
        raise StoreError(tr("“{where}” cannot be the name of a file; name another one.", where=place.shown)) from error
    except (OSError, sqlite3.Error) as error:
        raise store_error(error, place.shown) from error


def identity(place: Place) -> tuple[int, int]:
    """Return what tells this file from every other one, zeros if there is none."""
    return (0, 0) if place.path is None else _identity_of(place.path)


def log_identity(place: Place) -> tuple[int, int] | None:
    """Return what tells the write-ahead log beside a file from every other one, zeros if there is none; else None."""
    return None if place.path is None else _identity_of(place.path.with_name(f"{place.path.name}-wal"))


def _identity_of(path: Path) -> tuple[int, int]:
    try:
        status = path.stat()
    except OSError:
        return 0, 0
    return status.st_dev, status.st_ino


def _prepare(path: Path, shown: str) -> None:
    try:
        status = path.stat()
    except FileNotFoundError:
        _begin(path, shown)
        return
    if not stat.S_ISREG(status.st_mode):
        raise StoreError(tr("{where} is a folder or a device, not a file; name a file.", where=shown))
    size_bytes = status.st_size or _size_after_a_moment(path)
    if size_bytes == 0:
        raise StoreError(
            tr(
                "{where} is an empty file, perhaps what is left of a database; put a backup in its place, or delete it "
                "to begin a new database.",
                where=shown,
            )
        )
    _recognise(path, size_bytes, shown)
    # Asked beforehand: SQLite would open a protected file for reading, and leave its log beside it.
    if not (_may_write(path) and _may_write(path.parent)):
        raise PermissionError(errno.EACCES, "write-protected")


def _size_after_a_moment(path: Path) -> int:
    """Return the size of an empty file once another seat, which may be beginning it now, has had its time."""
    time.sleep(FIRST_PAGE_S)
    return path.stat().st_size


def _recognise(path: Path, size_bytes: int, shown: str) -> None:
    with closing(sqlite3.connect(sqlite_address(path, "ro&immutable=1"), uri=True)) as connection:
        (found,) = connection.execute("PRAGMA application_id").fetchone()
        (page_bytes,) = connection.execute("PRAGMA page_size").fetchone()
    if found != APPLICATION_ID:
        raise StoreError(
            tr("{where} is a database of another program; it was left as it is. Name another file.", where=shown)
        )
    # SQLite would fill up a last page cut short with zeros. While there is a log, it may hold the rest of that page.
    if size_bytes % page_bytes and not _log(path).exists():
        raise damaged(shown)


def _log(path: Path) -> Path:
    return path.with_name(path.name + "-wal")


def _may_write(path: Path) -> bool:
    return os.access(path, os.W_OK, effective_ids=os.access in os.supports_effective_ids)


def _begin(path: Path, shown: str) -> None:
    """Write the first page of an empty database in one piece, so that a crash leaves no half-made file."""
    folder = path.parent
    with suppress(StoreError):  # a system without a home has no usual path
        if path == default_database_path():
            folder.mkdir(parents=True, exist_ok=True)
    if not folder.is_dir():
        raise StoreError(tr("The folder {folder} does not exist; make it first, or name another file.", folder=folder))
    if _log(path).exists() and not path.exists():  # SQLite would take it for the log of the new file
        raise StoreError(
            tr(
                "{where} is gone, but {log} beside it may hold its last entries; put the file back, or move the log.",
                where=shown,
                log=_log(path).name,
            )
        )
    with closing(sqlite3.connect(":memory:")) as empty:
        empty.execute(f"PRAGMA application_id={APPLICATION_ID}")
        page = bytearray(empty.serialize())
    page[18:20] = b"\2\2"  # with a write-ahead log from birth: to set it later, all other seats would have to be away
    try:
        file = path.open("xb", buffering=0)
    except FileExistsError:  # another seat has begun it in this very moment
        return
    try:
        with file:
            file.write(page)
            os.fsync(file.fileno())
    except OSError:
        path.unlink()
        raise
