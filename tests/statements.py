"""The statements that are sent to the database, for tests that count them."""

from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy import Engine, event


@contextmanager
def sent() -> Iterator[list[str]]:
    """Gather the statements of every database while the block runs."""
    said: list[str] = []

    def note(_connection, _cursor, statement, *_rest):
        said.append(statement)

    event.listen(Engine, "before_cursor_execute", note)
    try:
        yield said
    finally:
        event.remove(Engine, "before_cursor_execute", note)


def reading(statements: list[str], table: str) -> list[str]:
    """Return those that read from a table."""
    return [one for one in statements if one.startswith("SELECT") and f"FROM {table}" in one]
