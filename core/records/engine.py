"""The open database and the one way to talk to it: a transaction that begins, commits and ends within one call.

On SQLite those that write say `BEGIN IMMEDIATE` and those that read plain `BEGIN`, so that no reader blocks a writer
and no writer is refused half-way (https://www.sqlite.org/lang_transaction.html, 2.2). On PostgreSQL writers take one
advisory lock, so that they follow one another there too (PostgreSQL 15 documentation, 13.3.5).
"""

from __future__ import annotations

import sqlite3
import sys
from collections.abc import Iterator
from contextlib import ExitStack, closing, contextmanager, suppress
from pathlib import Path

from sqlalchemy import URL, Connection, Engine, create_engine, event, make_url
from sqlalchemy.exc import ArgumentError, DatabaseError, InterfaceError, NoSuchModuleError, ProgrammingError
from sqlalchemy.orm import Session
from sqlalchemy.pool import QueuePool, StaticPool

from core.errors import StoreError
from core.records.columns import DamagedValueError, json_from_value, value_from_json
from core.records.faults import damaged, server_error, store_error
from core.records.place import Place, default_database_path, file_place, identity, log_identity, sqlite_address
from core.words import tr

BUSY_TIMEOUT_MS = 5000  # two seats that each write a thousand times wait 0.4 s at worst
SERVER_TIMEOUT_S = 5  # until a server that does not answer counts as gone
WRITERS_LOCK = 0x534C4741  # one number for all seats: the letters SLGA
MEMORY = ":memory:"
_IMPATIENT = {"connect_timeout": SERVER_TIMEOUT_S, "tcp_user_timeout": 1000 * SERVER_TIMEOUT_S}
_RIGHTS = "42501"  # the SQLSTATE of a missing right, the one statement error that is not ours


def place_of(where: str | Path) -> Place:
    """Return the place meant by a path, by `:memory:` or by an SQLAlchemy URL.

    Raises:
        StoreError: not a URL, an SQLite address with options, or a bare word that is no file yet: a slip of the keys
            must not begin a database in whatever folder the program was started from.
    """
    text = str(where)
    if text == MEMORY:
        return Place(MEMORY)
    if "://" not in text:
        if _is_bare_word(where):
            raise StoreError(
                tr("“{where}” names no folder and no kind of file; type the whole path, such as {example}.",
                   where=text, example=default_database_path())
            )  # fmt: skip
        return file_place(where)
    try:
        url = make_url(text)
    except (ArgumentError, ValueError) as error:
        raise StoreError(
            tr(
                "“{where}” is not a database address; type the path of a file, or an address such as {example}.",
                where=text,
                example="postgresql+psycopg://user@host/name",
            )
        ) from error
    if url.get_backend_name() != "sqlite":
        return Place(url.render_as_string(hide_password=True), url=text)
    if url.query:
        raise StoreError(tr("“{where}”: an SQLite address takes no options here; type the path alone.", where=text))
    return file_place(url.database) if url.database and url.database != MEMORY else Place(MEMORY)


def _is_bare_word(where: str | Path) -> bool:
    path = Path(where)
    with suppress(OSError, ValueError):  # a name no system takes: refused where the file is begun
        return isinstance(where, str) and len(path.parts) <= 1 and not path.suffix and not path.exists()
    return False


class Database:
    """An open database. Every use is a `transaction`; failures of disk, lock and server come out as `StoreError`."""

    def __init__(self, place: Place, busy_timeout_ms: int = BUSY_TIMEOUT_MS) -> None:
        self.place = place
        self.on_server = bool(place.url)
        self._identity = identity(place)
        self._log_identity: tuple[int, int] | None = None
        self._engines: dict[tuple[bool, ...], Engine] = {}
        self._engine = _server_engine(place) if self.on_server else _sqlite_engine(place, busy_timeout_ms)

    def close(self) -> None:
        """Close all connections; the last one folds the write-ahead log into the file."""
        self._engine.dispose()

    @contextmanager
    def transaction(
        self, *, write: bool = False, foreign_keys: bool = True, snapshot: bool = False
    ) -> Iterator[Session]:
        """Give a session whose work is committed as a whole at the end, or not at all.

        Args:
            write: whether something may be written.
            foreign_keys: whether links between rows are watched.
            snapshot: whether all that is read is of one moment, for whoever reads many tables; on SQLite it always is.

        Raises:
            StoreError: the database cannot do what was asked.
        """
        if identity(self.place) != self._identity:
            raise StoreError(
                tr(
                    "{where} has been moved, deleted or replaced while it was open; nothing was written. Put it back, "
                    "or open the right file.",
                    where=self.place.shown,
                )
            )
        self._open_anew_if_folded()
        engine = self._engine_for(write, foreign_keys, snapshot)
        try:
            with Session(engine, expire_on_commit=False) as session, session.begin():
                yield session
        except (DamagedValueError, UnicodeDecodeError) as error:  # SQLite names a damaged thing in bytes of no text
            raise damaged(self.place.shown) from error
        except (DatabaseError, InterfaceError) as error:
            if isinstance(error, ProgrammingError) and _state(error) != _RIGHTS:  # a statement of ours is wrong
                raise
            raise self._store_error(error) from error
        finally:
            self._log_identity = log_identity(self.place)

    def _engine_for(self, write: bool, foreign_keys: bool, snapshot: bool) -> Engine:
        """Return the engine with these options, made once: every keystroke asks for it."""
        options = {"write": write, "foreign_keys": foreign_keys, "snapshot": snapshot}
        key = tuple(options.values())
        if key not in self._engines:
            self._engines[key] = self._engine.execution_options(**options)
        return self._engines[key]

    def _open_anew_if_folded(self) -> None:
        """Leave connections whose write-ahead log another process has folded and removed: writes would go nowhere.

        It can, where this process lost its locks on the file: reading and closing it anywhere else in this process
        drops them, and a file dialog that looks for the kind of a file does so (fcntl, POSIX.1-2017; "How to corrupt
        an SQLite database file", 2.2).
        """
        if self._log_identity is not None and log_identity(self.place) != self._log_identity:
            self._engine.dispose()

    def use_write_ahead_log(self) -> None:
        """Set the write-ahead log, a lasting property of an SQLite file; does nothing where it is set already."""
        try:
            with closing(self._engine.raw_connection()) as connection:
                connection.cursor().execute("PRAGMA journal_mode=WAL")
        except sqlite3.Error as error:
            raise store_error(error, self.place.shown) from error

    def _store_error(self, error: DatabaseError | InterfaceError) -> StoreError:
        if isinstance(error.orig, sqlite3.Error):
            return store_error(error.orig, self.place.shown)
        return server_error(self.place.shown, _state(error))


def _state(error: DatabaseError | InterfaceError) -> str:
    return getattr(error.orig, "sqlstate", None) or ""


def _server_engine(place: Place) -> Engine:
    url = make_url(place.url)
    is_postgres = url.get_backend_name() == "postgresql"
    impatient = is_postgres and "connect_timeout" not in url.query
    try:
        engine = create_engine(
            url,
            pool_pre_ping=True,
            connect_args=_IMPATIENT if impatient else {},
            json_serializer=json_from_value,
            json_deserializer=value_from_json,
        )
    except (NoSuchModuleError, ImportError) as error:
        raise StoreError(
            tr(
                "{where}: the driver for this kind of database is not installed here; that of PostgreSQL is installed "
                "with {command}. Or type the path of a file.",
                where=place.shown,
                command=f'{sys.executable} -m pip install "psycopg[binary]"',
            )
        ) from error
    if is_postgres:
        event.listen(engine, "begin", _begin_on_postgres)
    return engine


def _begin_on_postgres(connection: Connection) -> None:
    options = connection.get_execution_options()
    if options.get("snapshot"):
        connection.exec_driver_sql("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ")
    if options.get("write"):
        # What was answered is on disk, however the server is set up.
        connection.exec_driver_sql(
            f"SET LOCAL synchronous_commit = on; SET LOCAL lock_timeout = '{SERVER_TIMEOUT_S}s'; "
            f"SELECT pg_advisory_xact_lock({WRITERS_LOCK})"
        )


def _sqlite_engine(place: Place, busy_timeout_ms: int) -> Engine:
    """Return an engine whose connections leave the beginning of transactions to us (isolation_level None)."""
    address = MEMORY if place.path is None else sqlite_address(place.path, "rw")

    def connect() -> sqlite3.Connection:
        connection = sqlite3.connect(address, uri=True, isolation_level=None, check_same_thread=False)
        with ExitStack() as undo:
            undo.callback(connection.close)  # of a damaged file, which says so only now
            connection.execute(f"PRAGMA busy_timeout={busy_timeout_ms}")
            connection.execute("PRAGMA synchronous=FULL")
            undo.pop_all()
        return connection

    engine = create_engine(
        URL.create("sqlite"),
        creator=connect,
        poolclass=StaticPool if place.path is None else QueuePool,
        json_serializer=json_from_value,
        json_deserializer=value_from_json,
    )
    event.listen(engine, "begin", _begin)
    return engine


def _begin(connection: Connection) -> None:
    options = connection.get_execution_options()
    watched = "ON" if options.get("foreign_keys", True) else "OFF"
    if connection.info.get("foreign_keys") != watched:  # cannot be changed inside a transaction, so it is said before
        connection.exec_driver_sql(f"PRAGMA foreign_keys={watched}")
        connection.info["foreign_keys"] = watched
    connection.exec_driver_sql("BEGIN IMMEDIATE" if options.get("write") else "BEGIN")
