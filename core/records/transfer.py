"""All rows of all tables from one database to another, whatever the tables are; each in its order, none left out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from sqlalchemy import Column, Table, delete, func, insert, select, text
from sqlalchemy.orm import Session

from core.records.backup import Step, no_step
from core.records.tables import Base

ROWS_AT_ONCE = 1000
TABLES: tuple[Table, ...] = tuple(Base.metadata.sorted_tables)  # those that others point to come first
Row = Mapping[str, Any]


def columns_of(table: Table) -> list[Column[Any]]:
    """Return the columns in the order for people: number and name first."""
    return sorted(table.columns, key=lambda column: (column.name != "id", column.name != "name"))


def count_rows(session: Session) -> dict[str, int]:
    """Return how many rows each table has."""
    return {table.name: session.scalar(select(func.count()).select_from(table)) or 0 for table in TABLES}


def read_rows(session: Session, table: Table) -> Iterator[list[Row]]:
    """Yield the rows of a table in the order of their ids, some at a time."""
    found = session.execute(select(table).order_by(table.c.id), execution_options={"yield_per": ROWS_AT_ONCE})
    names = table.columns.keys()
    for part in found.partitions():
        yield [dict(zip(names, row, strict=True)) for row in part]


def write_rows(session: Session, table: Table, rows: Sequence[Row]) -> None:
    """Add rows with their ids."""
    for start in range(0, len(rows), ROWS_AT_ONCE):
        session.execute(insert(table), [dict(row) for row in rows[start : start + ROWS_AT_ONCE]])


def count_on(session: Session) -> None:
    """Let the ids that a server gives next follow the highest one in each table; SQLite does so by itself."""
    if session.get_bind().dialect.name != "postgresql":
        return
    for table in TABLES:
        session.execute(
            text(
                f"SELECT setval(pg_get_serial_sequence('{table.name}', 'id'), max(id)) FROM {table.name} "
                "HAVING max(id) IS NOT NULL"
            )
        )


def empty_all(session: Session) -> None:
    """Delete every row of every table."""
    for table in reversed(TABLES):
        session.execute(delete(table))


def copy_all(source: Session, target: Session, step: Step = no_step) -> dict[str, int]:
    """Copy every row from one database into an empty one and return how many each table has."""
    counts = count_rows(source)
    whole, done = max(sum(counts.values()), 1), 0
    for table in TABLES:
        for rows in read_rows(source, table):
            write_rows(target, table, rows)
            done += len(rows)
            step(done / whole)
    count_on(target)
    return counts
