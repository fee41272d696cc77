"""A file that is written beside its place and then moved there, so that a full disk leaves the old one whole."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from core.errors import StoreError
from core.words import tr


@contextmanager
def moved_into_place(path: Path) -> Iterator[Path]:
    """Give the path to write to; what was written there is moved to `path` at the end.

    Raises:
        StoreError: the file cannot be written or moved; nothing is left beside it.
    """
    beside = path.with_name(f"{path.name}.part")
    try:
        yield beside
        beside.replace(path)
    except OSError as error:
        raise StoreError(
            tr("{path} cannot be written; choose another folder, or free the disk.", path=str(path))
        ) from error
    finally:
        beside.unlink(missing_ok=True)
