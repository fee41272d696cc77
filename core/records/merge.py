"""What was read from a file into a database: as it stands where the database is empty, else beside what is there.

Beside what is there every row gets a number of its own after the highest one, and what points to it follows. A row that
is there already, whatever its number, is left as it is, and so is one that the tables allow only once (a name, an open
trial): the one on record holds, and the report says so. Numbers of trials inside free text and JSON are not touched.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from hashlib import blake2b
from typing import Any

from sqlalchemy import Column, Table, UniqueConstraint, func, select
from sqlalchemy.orm import Session

from core.records.backup import Step, no_step
from core.records.cells import plain_from_row
from core.records.columns import json_from_value
from core.records.exchange import Parsed
from core.records.rows import ImportReport
from core.records.transfer import TABLES, Row, count_on, count_rows, read_rows, write_rows
from core.records.trials import open_as
from core.words import tr

LINES_LIMIT = 1000  # of a report; nobody reads more
_SERIAL = "serial"


def import_parsed(session: Session, parsed: Parsed, step: Step = no_step) -> ImportReport:
    """Write what a file holds and report on every line; where a line is at fault nothing is written."""
    # What points to a line at fault is no fault of its own.
    faults = parsed.faults or [*_given_twice(parsed), *_lost_pointers(parsed)]
    nothing = {table.name: 0 for table in TABLES}
    if faults:
        return ImportReport(nothing, 0, _limited(faults), refused=True)
    if not any(count_rows(session).values()):
        for table in TABLES:
            write_rows(session, table, [row for _, row in parsed.rows[table.name]])
        count_on(session)
        return ImportReport({name: len(rows) for name, rows in parsed.rows.items()}, 0, (), refused=False)
    merged = _Merge(session)
    for number, table in enumerate(TABLES, start=1):
        merged.add(table, parsed.rows[table.name])
        step(number / len(TABLES))
    count_on(session)
    return ImportReport(nothing | merged.added, merged.already, _limited(merged.lines), refused=False)


def _limited(lines: list[tuple[str, str]]) -> tuple[tuple[str, str], ...]:
    more = len(lines) - LINES_LIMIT
    return (*lines[:LINES_LIMIT], *([("", tr("… and {more} more lines.", more=more))] if more > 0 else []))


def _given_twice(parsed: Parsed) -> list[tuple[str, str]]:
    """Find the rows that say again what a table may say only once."""
    faults: list[tuple[str, str]] = []
    for table in TABLES:
        for names in (("id",), *_only_once(table)):
            seen: set[tuple[Any, ...]] = set()
            for place, row in parsed.rows[table.name]:
                values = tuple(row[name] for name in names)
                if values in seen and None not in values:
                    what = ", ".join(f"{name} {value}" for name, value in zip(names, values, strict=True))
                    faults.append((place, tr("{what} is there twice; correct one.", what=what)))
                seen.add(values)
    return faults


def _lost_pointers(parsed: Parsed) -> list[tuple[str, str]]:
    """Find the rows that point to a row that the file does not have."""
    numbers = {table.name: {row["id"] for _, row in parsed.rows[table.name]} for table in TABLES}
    faults: list[tuple[str, str]] = []
    for table in TABLES:
        for column, other in _pointers(table):
            faults += [
                (place, tr("{column}: there is no {thing} {number} in this file; correct it.",
                           column=column.name, thing=other, number=row[column.name]))
                for place, row in parsed.rows[table.name]
                if row[column.name] is not None and row[column.name] not in numbers[other]
            ]  # fmt: skip
    return faults


def _pointers(table: Table) -> list[tuple[Column[Any], str]]:
    return [(key.parent, key.column.table.name) for key in table.foreign_keys]


def _only_once(table: Table) -> list[tuple[str, ...]]:
    """Return the groups of columns of which a table allows the same values once."""
    return [
        tuple(column.name for column in rule.columns)
        for rule in table.constraints
        if isinstance(rule, UniqueConstraint)
    ]


@dataclass(slots=True)
class _Merge:
    """The rows added so far, and how the numbers of the file became those of the database."""

    session: Session
    added: dict[str, int] = field(default_factory=dict)
    already: int = 0
    lines: list[tuple[str, str]] = field(default_factory=list)
    _numbers: dict[str, dict[int, int]] = field(default_factory=dict)
    _serial: int | None = None

    def add(self, table: Table, rows: list[tuple[str, Row]]) -> None:
        """Add the rows of a table that are not on record; those it points to are added before."""
        known = _Known(self.session, table)
        offset = self.session.scalar(select(func.max(table.c.id))) or 0
        numbers = self._numbers[table.name] = {}
        new = []
        for place, row in rows:
            here = self._here(table, row, offset)
            if (number := known.same(here)) is not None:
                self.already += 1
            elif (number := known.rival(here)) is not None:
                self.lines.append((place, _kept_sentence(table, here)))
            else:
                number = here["id"]
                known.take(here)
                new.append(here)
            numbers[row["id"]] = number
        write_rows(self.session, table, new)
        self.added[table.name] = len(new)

    def _here(self, table: Table, row: Row, offset: int) -> dict[str, Any]:
        """Return a row with the numbers it has in this database."""
        here = {**row, "id": row["id"] + offset}
        for column, other in _pointers(table):
            old = row[column.name]
            if old is not None:
                own = other == table.name  # what points into its own table points to an earlier row of it
                here[column.name] = self._numbers[other].get(old, old + offset) if own else self._numbers[other][old]
        if here.get(_SERIAL) is not None:
            here[_SERIAL] += self._last_serial()
        if here.get("open_as") is not None:
            here["open_as"] = open_as(here["subject"], here["machine_id"], here["lot_id"])
        return here

    def _last_serial(self) -> int:
        """Return the highest number in the order of keeping before the import."""
        if self._serial is None:
            counted = [table for table in TABLES if _SERIAL in table.columns]
            self._serial = max(self.session.scalar(select(func.max(table.c.serial))) or 0 for table in counted)
        return self._serial


def _kept_sentence(table: Table, row: Row) -> str:
    if "name" in row and "version" in row:
        return tr("“{name}” is on record already with other values; those on record hold.", name=row["name"])
    if row.get("open_as") is not None:
        return tr("A trial is open here for the same subject, machine and lot; keep or discard it, then import again.")
    return tr("The {thing} {number} is on record already with other values; those on record hold.",
              thing=table.name, number=row["id"])  # fmt: skip


class _Known:
    """The rows on record of one table, by all they say but their numbers, and by what they may say only once."""

    def __init__(self, session: Session, table: Table) -> None:
        self._table = table
        self._groups = _only_once(table)
        self._by_content: dict[bytes, int] = {}
        self._by_group: dict[tuple[Any, ...], int] = {}
        for rows in read_rows(session, table):
            for row in rows:
                self.learn(row)

    def learn(self, row: Row) -> None:
        """Take note of a row on record."""
        self._by_content.setdefault(self._digest(row), row["id"])
        self.take(row)

    def take(self, row: Row) -> None:
        """Take note that what a row may say only once is taken; all the rest a second row of the file may say too."""
        for group in self._taken(row):
            self._by_group.setdefault(group, row["id"])

    def same(self, row: Row) -> int | None:
        """Return the number of the row that says the same."""
        return self._by_content.get(self._digest(row))

    def rival(self, row: Row) -> int | None:
        """Return the number of the row that stands where this one would."""
        return next((self._by_group[group] for group in self._taken(row) if group in self._by_group), None)

    def _taken(self, row: Row) -> list[tuple[Any, ...]]:
        values = [(names, *(row[name] for name in names)) for names in self._groups]
        return [group for group in values if None not in group]

    def _digest(self, row: Row) -> bytes:
        plain = plain_from_row(self._table, row)
        said = {name: plain[name] for name in sorted(plain) if name not in ("id", _SERIAL)}
        return blake2b(json_from_value(said).encode(), digest_size=16).digest()
