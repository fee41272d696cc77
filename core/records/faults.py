"""What a failing disk, lock, file or server means for the person: one sentence with the way out.

Faults are told apart by the class of the exception, by SQLite's own name of the error, by errno and by the SQLSTATE of
a server, never by their words.

Reference: https://www.sqlite.org/rescode.html (result and extended result codes); PostgreSQL 15 documentation,
Appendix A (SQLSTATE, after ISO/IEC 9075-2).
"""

from __future__ import annotations

import errno

from core.errors import StoreError
from core.words import Words, tr

_BY_ERRNO = {
    errno.ENOSPC: "SQLITE_FULL",
    errno.EROFS: "SQLITE_READONLY",
    errno.EACCES: "SQLITE_READONLY",
    errno.EPERM: "SQLITE_READONLY",
}


def store_error(error: BaseException, where: str) -> StoreError:
    """Return the sentence for an error of sqlite3 or of the operating system met at the file `where`."""
    if isinstance(error, OSError):
        name = _BY_ERRNO.get(error.errno or 0, "SQLITE_CANTOPEN")
    else:
        name = getattr(error, "sqlite_errorname", "") or "SQLITE_ERROR"
    return StoreError(_sentence(name, where))


def damaged(where: str) -> StoreError:
    """Return the sentence for a file whose pages, tables or values cannot be trusted."""
    return StoreError(
        tr(
            "{where} is damaged and was left as it is. Put a backup in its place, and keep this file for rescue.",
            where=where,
        )
    )


def server_error(where: str, state: str = "") -> StoreError:
    """Return the sentence for a database server that does not do what it was asked.

    Args:
        where: its address, for people.
        state: the SQLSTATE it gave; empty where it gave none, as when it cannot be reached.
    """
    match state[:2]:
        case "23":
            return StoreError(_sentence("SQLITE_CONSTRAINT", where))
        case "40" | "55":  # rolled back for another seat, or its lock waited for in vain
            return StoreError(_sentence("SQLITE_BUSY", where))
        case "53":
            return StoreError(_sentence("SQLITE_FULL", where))
        case "25" | "42":
            return StoreError(
                tr(
                    "The database server at {where} does not let you write; nothing was written. Ask whoever looks "
                    "after it for the right to make and change tables.",
                    where=where,
                )
            )
        case _:
            return StoreError(
                tr(
                    "The database server at {where} cannot be reached or refuses; check the address, the name of the "
                    "database, the user and the network, then try again.",
                    where=where,
                )
            )


def _sentence(name: str, where: str) -> Words | str:
    match name.removeprefix("SQLITE_").partition("_")[0]:
        case "BUSY" | "LOCKED":
            return tr(
                "{where} is locked by another program; nothing was written. Close that program, then try again.",
                where=where,
            )
        case "NOTADB":
            return tr("{where} is not a database; it was left as it is. Name another file.", where=where)
        case "READONLY" | "PERM" | "AUTH":
            return tr(
                "{where} or its folder is write-protected; allow writing, or open a copy of the file in a "
                "folder of your own.",
                where=where,
            )
        case "CANTOPEN":
            return tr(
                "{where} cannot be opened; check that its disk is there and that you may write in its folder.",
                where=where,
            )
        case "FULL":
            return tr("The disk of {where} is full; nothing was written. Free some space, then try again.", where=where)
        case "IOERR" | "NOLFS" | "PROTOCOL":
            return tr(
                "The disk of {where} cannot be read or written ({name}); nothing was written. Check the disk and "
                "its space, then try again.",
                where=where,
                name=name,
            )
        case "CONSTRAINT":
            return tr(
                "{where}: another seat has written the same thing at this moment; nothing was written. Open the "
                "page again, then try again.",
                where=where,
            )
        case _:  # CORRUPT, and what only happens when the tables are not those of the version on record
            return damaged(where).message
