"""Bring the tables of an opened database to the version that this program knows, or refuse in words.

The version on record is read by one statement; alembic is imported only when tables must be made or changed. A file
that is to be changed is first copied into the folder of its backups through SQLite's online backup.
"""

from __future__ import annotations

import sqlite3
from threading import Lock

from sqlalchemy import Connection, inspect, text

from core.errors import StoreError
from core.records.backup import Step, back_up, interruptible, no_step, share_of
from core.records.engine import Database
from core.records.faults import damaged
from core.records.place import Place
from core.records.rows import BackupKind
from core.words import tr

KNOWN = ("0001", "0002", "0003")  # versions of the tables, oldest first
SCRIPTS = "core.records:migrations"
_one_at_a_time = Lock()  # alembic keeps the upgrade it is at in a global: two databases begun at once would mix
_COPIED_RATIO = 0.3  # of the work: the copy that is made first
_INSTRUCTIONS_A_PAGE = 450  # of SQLite; of a shop with ten readings a trial
QUICK_CHECK_LIMIT_PAGES = 1024  # 4 MiB, some 10 ms; in a larger file damage is found where it is read


def bring_up_to_date(database: Database, *, copy_first: bool = True, step: Step = no_step) -> None:
    """Make the tables of an empty database, or change those of an older one.

    Args:
        database: the database.
        copy_first: whether an older file is copied before it is changed; not where it is a copy itself.
        step: told the part done where tables are changed, before all else 0; raises to leave them as they were.

    Raises:
        StoreError: a newer version, another program's tables, a damaged or write-protected file, a lock, a full disk.
    """
    # Begun as a writer although nothing may be written: a protected or locked file must be known before the typing.
    with database.transaction(write=True) as session:
        connection = session.connection()
        _check_pages(connection, database.place)
        found = _version(connection, database.place)
    if found != KNOWN[-1]:
        _upgrade(database, step, copy_first=copy_first)
    if database.place.path is not None:
        database.use_write_ahead_log()


def _check_pages(connection: Connection, place: Place) -> None:
    if place.path is None or connection.execute(text("PRAGMA page_count")).scalar_one() > QUICK_CHECK_LIMIT_PAGES:
        return
    if connection.execute(text("PRAGMA quick_check(1)")).scalar_one() != "ok":
        raise damaged(place.shown)


def _version(connection: Connection, place: Place) -> str | None:
    """Return the version on record; None in an empty database."""
    tables = inspect(connection)
    if tables.has_table("alembic_version"):
        versions = connection.execute(text("SELECT version_num FROM alembic_version")).scalars().all()
        if len(versions) != 1:
            raise damaged(place.shown)
        if versions[0] not in KNOWN:
            raise StoreError(
                tr(
                    "{where} was written by a newer version of this program (tables {found}, known here {known}); it "
                    "was left as it is. Update the program, then open it again.",
                    where=place.shown,
                    found=versions[0],
                    known=KNOWN[-1],
                )
            )
        return str(versions[0])
    if tables.get_table_names():
        raise StoreError(
            tr(
                "{where} holds the tables of another program; it was left as it is. Name another database.",
                where=place.shown,
            )
        )
    return None


def _upgrade(database: Database, step: Step = no_step, *, copy_first: bool = True) -> None:
    # Foreign keys rest meanwhile: SQLite changes a table by making it anew.
    with database.transaction(write=True, foreign_keys=False) as session:
        connection = session.connection()
        found = _version(connection, database.place)  # again, now that no other seat can change it
        if found == KNOWN[-1]:
            return
        if found is not None:
            step(0.0)
        if found is not None and database.place.path is not None and copy_first:
            back_up(database.place.path, database.place.shown, BackupKind.UPGRADE, share_of(step, 0.0, _COPIED_RATIO))
        own = connection.connection.driver_connection
        if found is not None and isinstance(own, sqlite3.Connection):
            whole = _INSTRUCTIONS_A_PAGE * connection.execute(text("PRAGMA page_count")).scalar_one()
            with interruptible(own, share_of(step, _COPIED_RATIO, 1.0), whole):
                _run_migrations(connection)
        else:
            _run_migrations(connection)
        if not database.on_server and connection.execute(text("PRAGMA foreign_key_check")).first():
            raise StoreError(
                tr(
                    "The change of the tables of {where} would have broken links between records; nothing was changed. "
                    "Keep using the earlier version of this program, and report this.",
                    where=database.place.shown,
                )
            )


def _run_migrations(connection: Connection) -> None:
    from alembic import command
    from alembic.config import Config

    settings = Config()
    settings.set_main_option("script_location", SCRIPTS)
    settings.set_main_option("path_separator", "os")
    settings.attributes["connection"] = connection
    with _one_at_a_time:
        command.upgrade(settings, KNOWN[-1])
