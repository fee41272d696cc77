"""Files that come from outside, read whole: a plain file, and no larger than what it may be.

A folder, a device or a pipe never ends or never begins; the kind is asked for again once the file is open, so that
nothing is put in its place in between. What is too large is refused before the memory is full.
"""

from __future__ import annotations

import os
import stat
from pathlib import Path

from core.errors import InputError
from core.words import Words, tr

_MB = 10**6


def content_of(path: Path, limit_mb: int, field: str = "file") -> bytes:
    """Return the content of a plain file.

    Raises:
        InputError: it is not there, is no plain file, cannot be read, or is larger than the limit.
    """
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            raise InputError(field, _no_file(path))
        handle = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
        with os.fdopen(handle, "rb") as file:
            status = os.fstat(handle)
            if not stat.S_ISREG(status.st_mode):
                raise InputError(field, _no_file(path))
            if status.st_size > limit_mb * _MB:  # told at once; a file that grows meanwhile is told below
                raise InputError(field, _too_large(path, limit_mb))
            content = file.read(limit_mb * _MB + 1)
    except InputError:
        raise
    except (FileNotFoundError, ValueError) as error:  # a zero byte in the name
        raise InputError(field, _no_file(path)) from error
    except OSError as error:
        raise InputError(field, tr("{file} cannot be read; check that you may open it.", file=path)) from error
    if len(content) > limit_mb * _MB:
        raise InputError(field, _too_large(path, limit_mb))
    return content


def _no_file(path: Path) -> Words:
    return tr("{file} is not there or is not a file; check its name.", file=path)


def _too_large(path: Path, limit_mb: int) -> Words:
    return tr(
        "{file} is larger than {limit} MB, more than can be read here; split it or choose another.",
        file=path,
        limit=limit_mb,
    )
