"""Machines, lots and instruments within one transaction: what has a name that is given once, and counts its changes."""

from __future__ import annotations

import math
from dataclasses import fields, replace
from typing import Any, TypeVar

from sqlalchemy import select
from sqlalchemy.orm import Session

from core.errors import InputError
from core.records.rows import Instrument, Lot, Machine
from core.records.tables import InstrumentRow, LotRow, MachineRow, NamedRow
from core.words import tr

Named = TypeVar("Named", Machine, Lot, Instrument)

_TABLES: dict[type, type[NamedRow]] = {Machine: MachineRow, Lot: LotRow, Instrument: InstrumentRow}


def checked(named: Named) -> Named:
    """Return the row with its name trimmed; refuse a blank name and what is not a number."""
    name = named.name.strip()
    if not name:
        raise InputError("name", tr("Give it a name, so that it can be told from the others."))
    for field in fields(named):
        value = getattr(named, field.name)
        if isinstance(value, float) and not math.isfinite(value):
            raise InputError(field.name, tr("{field} is not a finite number; type one.", field=field.name))
    return replace(named, name=name)


def read_all(session: Session, kind: type[Named]) -> tuple[Named, ...]:
    """Return all of a kind by name."""
    table = _TABLES[kind]
    columns = [getattr(table, field.name) for field in fields(kind)]  # plain: objects of a thousand rows take longer
    found = [kind(*row) for row in session.execute(select(*columns))]
    return tuple(sorted(found, key=lambda row: row.name.casefold()))


def parts_of(session: Session, machine_id: int | None) -> dict[str, Any]:
    """Return the drive parts that a machine has on record; nothing for none."""
    drives = session.scalar(select(MachineRow.drives).where(MachineRow.id == machine_id))
    return drives or {}


def add(session: Session, named: Named) -> Named:
    """Write a checked one anew, in its first version; InputError `name` if the name is taken."""
    table = _TABLES[type(named)]
    _check_name(session, table, named.name, None)
    row = table()
    added = replace(named, id=None, version=1)
    _write(row, added)
    session.add(row)
    session.flush()
    return replace(added, id=row.id)


def change(session: Session, named: Named) -> Named:
    """Write a checked one over the version it was read in.

    Raises:
        InputError: field `id`: it is not on record; `version`: it was changed since it was read; `name`: it is taken.
    """
    table = _TABLES[type(named)]
    row = None if named.id is None else session.get(table, named.id, with_for_update=True)
    if row is None:
        raise InputError(
            "id", tr("The {thing} {name} is not on record; add it.", thing=table.__tablename__, name=named.name)
        )
    if row.version != named.version:
        raise InputError(
            "version",
            tr("{name} was changed elsewhere meanwhile; open it again, then repeat the change.", name=row.name),
        )
    _check_name(session, table, named.name, named.id)
    changed = replace(named, version=named.version + 1)
    _write(row, changed)
    return changed


def _check_name(session: Session, table: type[NamedRow], name: str, own: int | None) -> None:
    taken = session.scalar(select(table.id).where(table.name == name))
    if taken not in (None, own):
        raise InputError("name", tr("“{name}” is on record already; choose another name.", name=name))


def _write(row: NamedRow, named: Machine | Lot | Instrument) -> None:
    for field in fields(named):
        setattr(row, field.name, getattr(named, field.name))
