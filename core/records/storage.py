"""What is done with the database as a whole: copies, restoring, checking, export, import, moving to another one.

Every method that can take long takes a `step`, which is told the part done and raises to stop the work; a stopped work
leaves the database as it was. They use connections of their own, so they may run in a thread beside the window.
"""

from __future__ import annotations

import re
import sqlite3
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path

from sqlalchemy import make_url, text
from sqlalchemy.orm import Session

from core.errors import InputError, StoreError
from core.records import backup
from core.records.backup import Step, no_step
from core.records.demoshop import refuse_demo
from core.records.engine import Database, place_of
from core.records.exchange import RowCheck, no_faults, read_export, write_csv, write_json
from core.records.faults import store_error
from core.records.merge import import_parsed
from core.records.place import default_database_path, file_place, prepare
from core.records.rows import Backup, BackupKind, Contents, ImportReport
from core.records.share import network_drive
from core.records.transfer import TABLES, copy_all, count_rows, empty_all, read_rows
from core.records.upgrade import bring_up_to_date
from core.words import tr

FAULTS_SHOWN = 20
_NO_NAME = re.compile(r"[^\w.-]+")  # letters that a file here may not have
_INSTRUCTIONS_A_PAGE = 400  # of SQLite, in a whole check; of a shop with ten readings a trial
_SLACK = timedelta(minutes=2)  # between the clocks of two seats


class Storage:
    """One open database as a whole. Every method raises `StoreError` when disk, lock or server fail."""

    def __init__(self, database: Database) -> None:
        self._database = database

    @property
    def address(self) -> str:
        """The path or URL that opens it again; unlike that for people it holds the password."""
        place = self._database.place
        return place.url or place.shown

    @property
    def is_file(self) -> bool:
        """Whether it is a file of its own, neither on a server nor in memory."""
        return self._database.place.path is not None

    @property
    def on_server(self) -> bool:
        """Whether it is on a server, whose own copies are the work of whoever looks after it."""
        return self._database.on_server

    @property
    def backups_folder(self) -> str:
        """Where its copies lie."""
        return str(backup.folder_of(self._home()))

    def contents(self) -> Contents:
        """Return what it holds."""
        with self._database.transaction() as session:
            return backup.contents(_running(session))

    def warnings(self) -> tuple[str, ...]:
        """Return sentences on what endangers the records though all works: a network drive, a clock set back."""
        place = self._database.place
        said = []
        if place.path is not None and (kind := network_drive(place.path)):
            said.append(
                tr(
                    "{where} lies on a network drive ({kind}), where two seats at once can damage it. Use it from one "
                    "seat at a time, or move it to a database server.",
                    where=place.shown,
                    kind=kind,
                )
            )
        with self._database.transaction() as session:
            newest = backup.newest_trial(_running(session))
        if newest and newest[3] > datetime.now(UTC) + _SLACK:
            said.append(
                tr(
                    "The clock of this computer is behind: trial {number} is of {moment}. Set the clock, or new trials "
                    "will be dated before it; their order is kept all the same.",
                    number=newest[0],
                    moment=f"{newest[3].astimezone():%Y-%m-%d %H:%M}",
                )
            )
        return tuple(said)

    # Copies

    def backups(self) -> tuple[Backup, ...]:
        """Return its copies, newest first."""
        return backup.backups_of(self._home())

    def back_up(self, step: Step = no_step, kind: BackupKind = BackupKind.ASKED) -> Backup:
        """Make a copy now; of a database on a server it is a file here."""
        place = self._database.place
        if place.path is not None:
            return backup.back_up(place.path, place.shown, kind, step)

        def write(part: Path) -> None:
            reading = self._database.transaction(snapshot=True)
            with _made(part) as copy, reading as source, copy.transaction(write=True) as target:
                copy_all(source, target, step)

        return backup.make_copy(self._home(), place.shown, kind, write, self._name())

    def back_up_daily(self, step: Step = no_step) -> Backup | None:
        """Make the copy of today unless there is one; of a database on a server it is a file here, of memory none."""
        if not self.is_file and not self.on_server:
            return None
        return backup.back_up_daily(self._home(), lambda: self.back_up(step, BackupKind.DAILY), self._name())

    def preview(self, file: str, step: Step = no_step) -> Contents:
        """Return what a copy holds, without touching it."""
        return backup.contents_of(Path(file), step)

    def restore(self, file: str, step: Step = no_step) -> Backup:
        """Put a copy in the place of what the database holds now, of which a copy is made first.

        The copy put back is checked and brought up to date beforehand, so that a bad one changes nothing.

        Returns:
            The copy of what the database held.
        """
        backup.contents_of(Path(file), backup.share_of(step, 0.0, 0.1))
        with tempfile.TemporaryDirectory(dir=self._folder_made()) as folder:
            ready = Path(folder) / "ready.sqlite"
            get_ready(Path(file), ready, backup.share_of(step, 0.1, 0.6))
            before = self.back_up(backup.share_of(step, 0.6, 0.8), BackupKind.RESTORE)
            self._put_back(ready, backup.share_of(step, 0.8, 1.0))
        return before

    def _folder_made(self) -> Path:
        folder = backup.folder_of(self._home())
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise store_error(error, str(folder)) from error
        return folder

    def _put_back(self, ready: Path, step: Step) -> None:
        place = self._database.place
        if place.path is None:
            with _opened(ready) as copy, copy.transaction() as source, self._database.transaction(write=True) as target:
                empty_all(target)
                copy_all(source, target, step)
            return
        self._database.close()
        try:
            backup.copy_pages(ready, place.path, step)
        except sqlite3.Error as error:
            raise store_error(error, place.shown) from error

    # Checking

    def check(self, step: Step = no_step) -> tuple[str, ...]:
        """Read everything and return what is wrong; nothing where all is well."""
        with self._database.transaction(snapshot=True) as session:
            faults = [] if self._database.on_server else _file_faults(session, backup.share_of(step, 0.0, 0.2))
            whole, done, read = max(sum(count_rows(session).values()), 1), 0, backup.share_of(step, 0.2, 1.0)
            for table in TABLES:
                for rows in read_rows(session, table):
                    done += len(rows)
                    read(done / whole)
        return tuple(faults)

    # Export and import

    def export_csv(self, folder: str, step: Step = no_step) -> Contents:
        """Write every table as CSV into a new folder; InputError `file` if there is one."""
        return self._export(lambda session: write_csv(session, Path(folder), step))

    def export_json(self, file: str, step: Step = no_step) -> Contents:
        """Write everything into a new JSON file; InputError `file` if there is one."""
        return self._export(lambda session: write_json(session, Path(file), step))

    def _export(self, write: Callable[[Session], None]) -> Contents:
        with self._database.transaction(snapshot=True) as session:
            write(session)
        return self.contents()

    def import_from(self, path: str, step: Step = no_step, check: RowCheck = no_faults) -> ImportReport:
        """Add what an export holds; where one of its lines is at fault, nothing.

        Args:
            path: of the export.
            step: told the part done.
            check: says what is wrong with a row of a table, beyond what its columns refuse.

        Raises:
            InputError: field `file`: it is no export, of another version, or of the demo shop.
        """
        parsed = read_export(Path(path), backup.share_of(step, 0.0, 0.5))
        parsed.check(check, backup.share_of(step, 0.5, 0.7))
        with self._database.transaction(write=True) as session:
            refuse_demo(session, parsed, path)
            return import_parsed(session, parsed, backup.share_of(step, 0.7, 1.0))

    # Moving

    def copy_to(self, where: str, step: Step = no_step) -> Contents:
        """Copy everything to an empty database, by path or URL, and compare the numbers of rows.

        Raises:
            InputError: field `where`: it is this database, or something is in it already.
        """
        place = place_of(where)
        if place == self._database.place:
            raise InputError("where", tr("{where} is this database; name another one.", where=place.shown))
        prepare(place)
        with _opened(place.path or where) as other:
            bring_up_to_date(other)
            with self._database.transaction(snapshot=True) as source, other.transaction(write=True) as target:
                if any(count_rows(target).values()):
                    raise InputError(
                        "where",
                        tr("There are records in {where} already; name an empty database, or import into it.",
                           where=place.shown),
                    )  # fmt: skip
                copy_all(source, target, step)
                if count_rows(target) != count_rows(source):
                    raise StoreError(tr("Not every row arrived in {where}; nothing was moved.", where=place.shown))
            return Storage(other).contents()

    def _home(self) -> Path:
        """The file itself; for a server the one that would stand for it in the data folder."""
        place = self._database.place
        if place.path is not None:
            return place.path
        name = make_url(place.url).database if place.url else "memory"
        return default_database_path().with_name(f"{name}.sqlite")

    def _name(self) -> str:
        """What its copies are named after: for a server the host too, since others may have a database of that name."""
        place = self._database.place
        if not self.on_server:
            return self._home().stem
        url = make_url(place.url)
        return _NO_NAME.sub("_", f"{url.database}-{url.host or 'local'}-{url.port or 'usual'}")


def _running(session: Session) -> backup.Run:
    return lambda statement: [tuple(row) for row in session.execute(text(statement))]


def _file_faults(session: Session, step: Step) -> list[str]:
    own = session.connection().connection.driver_connection
    assert isinstance(own, sqlite3.Connection)
    whole = _INSTRUCTIONS_A_PAGE * session.execute(text("PRAGMA page_count")).scalar_one()
    with backup.interruptible(own, step, whole):
        found = session.execute(text(f"PRAGMA integrity_check({FAULTS_SHOWN})")).scalars().all()
    faults: list[str] = [
        tr("The pages of the file do not hang together: {what}", what=what) for what in found if what != "ok"
    ]
    lost = session.execute(text("PRAGMA foreign_key_check")).all()
    return faults + [
        tr("Row {number} of {table} points to a row of {other} that is not there.", number=row[1], table=row[0],
           other=row[2])
        for row in lost[:FAULTS_SHOWN]
    ]  # fmt: skip


@contextmanager
def _opened(where: str | Path) -> Iterator[Database]:
    database = Database(place_of(where) if isinstance(where, str) else file_place(where))
    try:
        yield database
    finally:
        database.close()


@contextmanager
def _made(path: Path) -> Iterator[Database]:
    """Begin a new file with tables."""
    prepare(file_place(path))
    with _opened(path) as database:
        bring_up_to_date(database)
        yield database


def get_ready(file: Path, ready: Path, step: Step = no_step) -> None:
    """Copy a copy, bring it up to date and check it; the copy itself stays as it is."""
    try:
        backup.copy_pages(file, ready, backup.share_of(step, 0.0, 0.1))
    except sqlite3.Error as error:
        raise store_error(error, str(file)) from error
    with _opened(ready) as database:
        bring_up_to_date(database, copy_first=False, step=backup.share_of(step, 0.1, 0.5))
        if faults := Storage(database).check(backup.share_of(step, 0.5, 1.0)):
            raise StoreError(tr("{where} cannot be restored: {fault}", where=str(file), fault=faults[0]))
