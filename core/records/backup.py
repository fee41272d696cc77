"""Copies of an SQLite database by its online backup: made, listed, thinned, looked into, put back.

The copies lie in a folder beside the file, each named after its moment (UTC) and its kind. A copy is complete when it
has its name: it is written under another one, checked and flushed first. Nothing is ever put over the database before
a copy of it is made, and what is put back is checked and brought up to date before it is.

Reference: https://www.sqlite.org/backup.html.
"""

from __future__ import annotations

import os
import re
import shutil
import sqlite3
import time
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from datetime import UTC, datetime
from pathlib import Path

from core.errors import StoreError
from core.records.faults import damaged, store_error
from core.records.place import APPLICATION_ID, sqlite_address
from core.records.rows import Backup, BackupKind, Contents
from core.words import tr

KEPT_DAYS = 10  # of the daily copies; of older ones the last of each week
PATIENCE_S = 5.0  # with another seat that writes while its file is to be replaced
PAGES_AT_ONCE = 2048
_LOOK_EVERY = 20_000  # instructions of SQLite, some milliseconds
_INSTRUCTIONS_A_PAGE = 230  # of a check; of a shop with ten readings a trial
_MOMENT = "%Y%m%dT%H%M%S%fZ"
_NAME = re.compile(r"(.*)-(\d{8}T\d{12}Z)-(\w+)\.[^.-]*")
_UNFINISHED = ".part"
_TABLES = ("machine", "lot", "instrument", "trial", "result", "setting", "event", "attachment")
_LATER = {"setting": "0002", "event": "0003", "attachment": "0003"}  # tables that the first version had not
_NEWEST = (  # indexes alone tell which ones may be it: the readings of a large shop stay unread
    "SELECT trial.id, trial.subject, machine.name, coalesce(trial.kept_at, trial.started_at) FROM trial "
    "LEFT JOIN machine ON machine.id = trial.machine_id WHERE trial.id IN "
    "(SELECT id FROM trial WHERE kept_at IS NOT NULL ORDER BY kept_at DESC, id DESC LIMIT 1) "
    "OR trial.id IN (SELECT id FROM trial WHERE open_as IS NOT NULL) "
    "ORDER BY coalesce(trial.kept_at, trial.started_at) DESC, trial.id DESC LIMIT 1"
)

Step = Callable[[float], None]  # is told the part done; raises to stop the work
Run = Callable[[str], list[tuple[object, ...]]]  # answers a statement with its rows


def no_step(_done_ratio: float) -> None:
    """Tell nobody."""


def share_of(step: Step, begin_ratio: float, end_ratio: float) -> Step:
    """Return the step of a part of the work, from this share of the whole to that."""
    return lambda part: step(begin_ratio + (end_ratio - begin_ratio) * part)


@contextmanager
def interruptible(connection: sqlite3.Connection, step: Step, instructions: int) -> Iterator[None]:
    """Ask the step between the instructions of SQLite too: one statement may read or change all of a large shop.

    Args:
        connection: that of the statements.
        step: told the part done; where it raises, the statement is left.
        instructions: about how many there are.
    """
    done, left = 0, False

    def look() -> None:
        nonlocal done, left
        done, left = done + _LOOK_EVERY, True
        step(min(done / max(instructions, 1), 1.0))  # where it raises, SQLite leaves the statement and says only that
        left = False

    connection.set_progress_handler(look, _LOOK_EVERY)
    try:
        yield
    finally:
        connection.set_progress_handler(None, 0)
        if left:
            step(1.0)  # raises anew, now past SQLite


def folder_of(path: Path) -> Path:
    """Return the folder of the copies of a database; it need not exist."""
    return path.with_name(f"{path.stem}-backups")


def back_up(path: Path, shown: str, kind: BackupKind, step: Step = no_step) -> Backup:
    """Copy the database, with what its write-ahead log holds, and check the copy.

    Raises:
        StoreError: no room or no right to write the copy, or the database is damaged; no copy is left then.
    """
    return make_copy(path, shown, kind, lambda part: copy_pages(path, part, step))


def make_copy(path: Path, shown: str, kind: BackupKind, write: Callable[[Path], None], name: str = "") -> Backup:
    """Let a copy be written, check it and give it its name, by `path` also its folder. Raises as `back_up`."""
    made_at = datetime.now(UTC)
    copy = folder_of(path) / f"{name or path.stem}-{made_at:{_MOMENT}}-{kind}{path.suffix or '.sqlite'}"
    part = copy.with_name(copy.name + _UNFINISHED)
    try:
        copy.parent.mkdir(parents=True, exist_ok=True)
        try:
            write(part)
            check_pages(part, shown)
            with part.open("rb+") as file:
                os.fsync(file.fileno())
            part.replace(copy)
        finally:
            part.unlink(missing_ok=True)
    except (OSError, sqlite3.Error) as error:
        raise store_error(error, str(copy.parent)) from error
    return _backup_from(copy, made_at, kind)


def copy_pages(source: Path, target: Path, step: Step = no_step) -> None:
    """Write the pages of one database over those of another, all or none; the target may be in use.

    Raises:
        sqlite3.Error, StoreError: the disk refuses, or another seat does not let go of the target.
    """
    begun = time.monotonic()

    def tell(status: int, remaining: int, total: int) -> None:
        step(1.0 - remaining / max(total, 1))
        if status == sqlite3.SQLITE_BUSY and time.monotonic() - begun > PATIENCE_S:
            busy = sqlite3.OperationalError()
            busy.sqlite_errorname = "SQLITE_BUSY"
            raise store_error(busy, str(target))

    with (
        closing(sqlite3.connect(_address(source), uri=True, isolation_level=None)) as of,
        closing(sqlite3.connect(sqlite_address(target, "rwc"), uri=True, timeout=0.05)) as to,
    ):
        of.execute("BEGIN")  # one state of the source, however many steps it takes
        of.execute("SELECT count(*) FROM sqlite_master").fetchone()
        of.backup(to, pages=PAGES_AT_ONCE, progress=tell, sleep=0.05)


def _address(path: Path) -> str:
    """Return the file for reading; one that nobody writes to is opened so that nothing appears beside it."""
    in_use = path.with_name(path.name + "-wal").exists()
    return sqlite_address(path, "ro" if in_use else "ro&immutable=1")


def check_pages(path: Path, shown: str, step: Step = no_step) -> None:
    """Raise StoreError if the pages of a file that nobody writes to do not hang together."""
    with closing(sqlite3.connect(_address(path), uri=True)) as connection:
        (page_bytes,) = connection.execute("PRAGMA page_size").fetchone()
        pages, cut = divmod(path.stat().st_size, page_bytes)
        if cut:  # SQLite would fill up a last page cut short with zeros
            raise damaged(shown)
        with interruptible(connection, step, pages * _INSTRUCTIONS_A_PAGE):
            found = connection.execute("PRAGMA quick_check(1)").fetchone()
        if found != ("ok",):
            raise damaged(shown)


def backups_of(path: Path) -> tuple[Backup, ...]:
    """Return the copies of a database, newest first."""
    found = []
    for file in folder_of(path).glob("*"):
        named = _NAME.fullmatch(file.name)
        if named and named[3] in list(BackupKind) and file.is_file():
            moment = datetime.strptime(named[2], _MOMENT).replace(tzinfo=UTC)
            found.append(_backup_from(file, moment, BackupKind(named[3])))
    return tuple(sorted(found, key=lambda backup: backup.made_at, reverse=True))


def _backup_from(file: Path, made_at: datetime, kind: BackupKind) -> Backup:
    return Backup(str(file), kind, made_at, file.stat().st_size)


def back_up_daily(path: Path, make: Callable[[], Backup], name: str = "") -> Backup | None:
    """Let the copy of today be made unless there is one, then thin out the earlier ones; raises as `make` does.

    A clock set back only makes one copy more: today is compared with the days of the copies, not with the newest.

    Args:
        path: tells the folder of the copies.
        make: makes the copy.
        name: that copies of this database begin with, where others may lie in the folder too; empty for that of the
            path.
    """
    today = datetime.now(UTC).date()
    own = [backup for backup in backups_of(path) if _name_in(backup) == (name or path.stem)]
    daily = [backup for backup in own if backup.kind == BackupKind.DAILY]
    if any(backup.made_at.date() == today for backup in daily):
        return None
    made = make()
    for backup in superfluous((made, *daily)):
        Path(backup.file).unlink(missing_ok=True)
    return made


def _name_in(backup: Backup) -> str:
    named = _NAME.fullmatch(Path(backup.file).name)
    return named[1] if named else ""


def superfluous(daily: tuple[Backup, ...]) -> tuple[Backup, ...]:
    """Return the daily copies that need not stay: older than the last ten, and not the last of their week."""
    older = sorted(daily, key=lambda backup: backup.made_at, reverse=True)[KEPT_DAYS:]
    last_of_week: dict[tuple[int, int], Backup] = {}
    for backup in older:
        last_of_week.setdefault(backup.made_at.isocalendar()[:2], backup)
    return tuple(backup for backup in older if backup not in last_of_week.values())


def contents_of(path: Path, step: Step = no_step) -> Contents:
    """Look into a copy without changing a byte of it.

    Raises:
        StoreError: it cannot be read, is damaged, or is no database of this program.
    """
    shown = str(path)
    if path.exists() and not path.is_file():  # SQLite would wait for a pipe, and read a device without end
        raise StoreError(tr("{where} is a folder or a device, not a file; name a file.", where=shown))
    try:
        with closing(sqlite3.connect(_address(path), uri=True)) as connection:
            if connection.execute("PRAGMA application_id").fetchone() != (APPLICATION_ID,):
                raise StoreError(
                    tr(
                        "{where} is a database of another program; it was left as it is. Name another file.",
                        where=shown,
                    )
                )
            check_pages(path, shown, step)
            return contents(lambda statement: connection.execute(statement).fetchall())
    except sqlite3.Error as error:
        raise store_error(error, shown) from error


def contents(run: Run) -> Contents:
    """Return what a database holds, whatever its version; `run` answers a statement with its rows."""
    ((tables,),) = run("SELECT version_num FROM alembic_version")
    rows = {table: _count(run, table) for table in _TABLES if str(tables) >= _LATER.get(table, "")}
    return Contents(str(tables), rows, newest_trial(run))


def newest_trial(run: Run) -> tuple[int, str, str, datetime] | None:
    """Return number, subject, machine and moment of the newest trial; None where there is none."""
    newest = run(_NEWEST)
    if not newest:
        return None
    number, subject, machine, at = newest[0]
    moment = datetime.fromisoformat(at) if isinstance(at, str) else at
    assert isinstance(number, int)
    assert isinstance(moment, datetime)
    at_utc = moment.astimezone(UTC) if moment.tzinfo else moment.replace(tzinfo=UTC)
    return number, str(subject), str(machine or ""), at_utc


def _count(run: Run, table: str) -> int:
    ((count,),) = run(f"SELECT count(*) FROM {table}")
    assert isinstance(count, int)
    return count


def set_aside(path: Path) -> Path:
    """Copy a file that cannot be opened, with its write-ahead log, byte for byte into the folder of the copies.

    Raises:
        StoreError: no room or no right to write it; the file is as it was.
    """
    aside = folder_of(path) / f"{path.stem}-{datetime.now(UTC):{_MOMENT}}-damaged{path.suffix}"
    try:
        aside.parent.mkdir(exist_ok=True)
        for ending in ("", "-wal"):
            part = path.with_name(path.name + ending)
            if part.exists():
                shutil.copyfile(part, aside.with_name(aside.name + ending))
    except OSError as error:
        raise store_error(error, str(aside.parent)) from error
    return aside
