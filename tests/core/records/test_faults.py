import sqlite3

import pytest

from core.errors import StoreError
from core.records.faults import damaged, server_error, store_error


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("SQLITE_BUSY", "is locked by another program"),
        ("SQLITE_BUSY_SNAPSHOT", "is locked by another program"),
        ("SQLITE_LOCKED_SHAREDCACHE", "is locked by another program"),
        ("SQLITE_NOTADB", "is not a database"),
        ("SQLITE_READONLY_DIRECTORY", "is write-protected"),
        ("SQLITE_PERM", "is write-protected"),
        ("SQLITE_CANTOPEN", "cannot be opened"),
        ("SQLITE_FULL", "is full"),
        ("SQLITE_IOERR_WRITE", r"cannot be read or written \(SQLITE_IOERR_WRITE\)"),
        ("SQLITE_PROTOCOL", r"cannot be read or written \(SQLITE_PROTOCOL\)"),
        ("SQLITE_CONSTRAINT_UNIQUE", "another seat has written the same thing"),
        ("SQLITE_CORRUPT_INDEX", "is damaged"),
        ("SQLITE_ERROR", "is damaged"),
        (None, "is damaged"),
    ],
)
def test_each_error_of_sqlite_has_its_sentence(name, words):
    error = sqlite3.OperationalError("the words of the library play no part")
    error.sqlite_errorname = name
    with pytest.raises(StoreError, match=f"shop.sqlite.* {words}|shop.sqlite: {words}"):
        raise store_error(error, "/data/shop.sqlite")


@pytest.mark.parametrize(
    ("state", "words"),
    [
        ("", "cannot be reached or refuses; check the address, the name of the database, the user and the network"),
        ("08006", "cannot be reached or refuses"),
        ("23505", "another seat has written the same thing"),
        ("40P01", "is locked by another program"),
        ("55P03", "is locked by another program"),
        ("53100", "is full; nothing was written"),
        ("42501", "does not let you write; nothing was written. Ask"),
        ("25006", "does not let you write"),
    ],
)
def test_each_class_of_errors_of_a_server_has_its_sentence(state, words):
    assert words in server_error("host", state).message


def test_what_sqlite_does_not_name_is_damage():
    assert "is damaged" in store_error(sqlite3.OperationalError("undecodable text"), "shop.sqlite").message
    assert damaged("shop.sqlite").message == store_error(sqlite3.DatabaseError(), "shop.sqlite").message


def test_every_sentence_says_what_to_do():
    for name in ("BUSY", "NOTADB", "READONLY", "CANTOPEN", "FULL", "IOERR", "CONSTRAINT", "CORRUPT"):
        error = sqlite3.OperationalError()
        error.sqlite_errorname = f"SQLITE_{name}"
        message = store_error(error, "shop.sqlite").message
        assert any(way in message for way in ("Close", "Name", "allow", "check", "Free", "Check", "Open", "Put")), (
            message
        )
    assert "check the address" in server_error("host").message
