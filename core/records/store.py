"""The store: frozen rows in and out, one transaction a call; no session and no row object leaves.

A trial is open (a draft, at most one for a subject, machine and lot), then kept for good, and perhaps withdrawn with a
reason. Kept trials are never overwritten.
"""

from __future__ import annotations

import math
from dataclasses import fields, replace
from pathlib import Path
from typing import TypeVar

from sqlalchemy import select
from sqlalchemy.orm import Session

from core.errors import InputError, StoreError
from core.quantity import Estimate
from core.records import trials
from core.records.engine import BUSY_TIMEOUT_MS, Database, place_of
from core.records.place import default_database_path, prepare
from core.records.rows import Instrument, Lot, Machine, Trial, TrialState
from core.records.tables import InstrumentRow, LotRow, MachineRow
from core.records.upgrade import bring_up_to_date
from core.words import tr

__all__ = ["Store", "default_database_path", "open_store"]

Named = TypeVar("Named", Machine, Lot, Instrument)
NamedRow = MachineRow | LotRow | InstrumentRow

_TABLES: dict[type, type[NamedRow]] = {Machine: MachineRow, Lot: LotRow, Instrument: InstrumentRow}


def open_store(where: str | Path, busy_timeout_ms: int = BUSY_TIMEOUT_MS) -> Store:
    """Open a database: the path of an SQLite file (begun if there is none), `:memory:`, or an SQLAlchemy URL.

    Raises:
        StoreError: it cannot be opened; a file that is there was not changed.
    """
    place = place_of(where)
    prepare(place)
    database = Database(place, busy_timeout_ms)
    try:
        bring_up_to_date(database)
    except StoreError:
        database.close()
        raise
    return Store(database)


class Store:
    """What the shop has on record. Every method raises `StoreError` when disk, lock or server fail."""

    def __init__(self, database: Database) -> None:
        self._database = database

    @property
    def where(self) -> str:
        """The path or address, for people."""
        return self._database.place.shown

    def close(self) -> None:
        """Close the database."""
        self._database.close()

    def machines(self) -> tuple[Machine, ...]:
        """Return all machines by name."""
        return self._all(Machine)

    def add_machine(self, machine: Machine) -> Machine:
        """Add a machine; InputError `name` if there is one of that name."""
        return self._add(replace(machine, version=1))

    def change_machine(self, machine: Machine) -> Machine:
        """Write a changed machine.

        Raises:
            InputError: field `version`: it was changed elsewhere since it was read; `name`: the name is taken.
        """
        machine = _checked(machine)
        with self._database.transaction(write=True) as session:
            row = None if machine.id is None else session.get(MachineRow, machine.id, with_for_update=True)
            if row is None:
                raise InputError("id", tr("The machine {name} is not on record; add it.", name=machine.name))
            if row.version != machine.version:
                raise InputError(
                    "version",
                    tr("{name} was changed elsewhere meanwhile; open it again, then repeat the change.", name=row.name),
                )
            _check_name(session, MachineRow, machine.name, machine.id)
            changed = replace(machine, version=machine.version + 1)
            _write(row, changed)
        return changed

    def lots(self) -> tuple[Lot, ...]:
        """Return all filament lots by name."""
        return self._all(Lot)

    def add_lot(self, lot: Lot) -> Lot:
        """Add a lot; InputError `name` if there is one of that name."""
        return self._add(lot)

    def instruments(self) -> tuple[Instrument, ...]:
        """Return all instruments by name."""
        return self._all(Instrument)

    def add_instrument(self, instrument: Instrument) -> Instrument:
        """Add an instrument; InputError `name` if there is one of that name."""
        return self._add(instrument)

    def draft(self, subject: str, machine_id: int | None = None, lot_id: int | None = None) -> Trial | None:
        """Return the open trial of this subject, machine and lot, if any."""
        with self._database.transaction() as session:
            trial_id = trials.find_open(session, subject, machine_id, lot_id)
            return None if trial_id is None else trials.read_trial(session, trial_id)

    def save_draft(self, trial: Trial) -> Trial:
        """Write the open trial; without an id that of its subject, machine and lot, begun if there is none.

        Estimates, verdict and used trials are not part of a draft.

        Raises:
            InputError: it is no longer open, or another one is open for the same subject, machine and lot.
        """
        with self._database.transaction(write=True) as session:
            other = trials.find_open(session, trial.subject, trial.machine_id, trial.lot_id)
            if trial.id is not None and other not in (None, trial.id):
                raise InputError("id", tr("Trial {other} is open here already; keep or discard it first.", other=other))
            row = trials.write_entries(session, replace(trial, id=trial.id or other), TrialState.OPEN)
            return trials.read_trial(session, row.id)

    def discard_draft(self, trial_id: int) -> None:
        """Delete an open trial; InputError `id` for every other one."""
        with self._database.transaction(write=True) as session:
            session.delete(trials.find_open_row(session, trial_id))

    def keep(self, trial: Trial) -> Trial:
        """Keep a trial for good, with its estimates, verdict and the trials it used.

        With an id the draft of that id becomes the kept trial; without one a new trial is kept and no draft is touched.

        Raises:
            InputError: it is no longer open, an estimate is not a number, or a used trial is not in use.
        """
        trials.check_estimates(trial.estimates)
        with self._database.transaction(write=True) as session:
            row = trials.write_entries(session, trial, TrialState.KEPT)
            trials.write_outcome(session, row, trial)
            return trials.read_trial(session, row.id)

    def withdraw(self, trial_id: int, because: str) -> Trial:
        """Take a kept trial out of use, with a reason; it stays visible."""
        if not because.strip():
            raise InputError("because", tr("Say why the trial is withdrawn; the reason stays with it."))
        with self._database.transaction(write=True) as session:
            row = trials.find_row(session, trial_id)
            if row.state != TrialState.KEPT:
                raise InputError(
                    "id", tr("Trial {number} is not in use; only a kept one is withdrawn.", number=trial_id)
                )
            row.state = TrialState.WITHDRAWN
            row.withdrawn_because = because.strip()
            session.flush()
            return trials.read_trial(session, trial_id)

    def trial(self, trial_id: int) -> Trial:
        """Return a trial with its readings; InputError `id` if there is none."""
        with self._database.transaction() as session:
            return trials.read_trial(session, trials.find_row(session, trial_id).id)

    def trials(
        self, subject: str | None = None, machine_id: int | None = None, lot_id: int | None = None, limit: int = 200
    ) -> tuple[Trial, ...]:
        """Return trials of any state, newest first, without their readings; None leaves a condition out."""
        conditions = trials.matching(subject=subject, machine_id=machine_id, lot_id=lot_id)
        with self._database.transaction() as session:
            return trials.read_trials(session, conditions, limit)

    def newest(
        self, name: str, machine_id: int | None = None, lot_id: int | None = None
    ) -> tuple[int, Estimate] | None:
        """Return the estimate of that name kept last and not withdrawn, with the id of its trial."""
        with self._database.transaction() as session:
            return trials.read_newest(session, name, trials.matching(machine_id=machine_id, lot_id=lot_id))

    def _all(self, kind: type[Named]) -> tuple[Named, ...]:
        with self._database.transaction() as session:
            rows = session.scalars(select(_TABLES[kind])).all()
            found = [kind(**{field.name: getattr(row, field.name) for field in fields(kind)}) for row in rows]
        return tuple(sorted(found, key=lambda row: row.name.casefold()))

    def _add(self, named: Named) -> Named:
        named = _checked(named)
        table = _TABLES[type(named)]
        with self._database.transaction(write=True) as session:
            _check_name(session, table, named.name, None)
            row = table()
            _write(row, replace(named, id=None))
            session.add(row)
            session.flush()
            return replace(named, id=row.id)


def _checked(named: Named) -> Named:
    """Return the row with its name trimmed; refuse a blank name and what is not a number."""
    name = named.name.strip()
    if not name:
        raise InputError("name", tr("Give it a name, so that it can be told from the others."))
    for field in fields(named):
        value = getattr(named, field.name)
        if isinstance(value, float) and not math.isfinite(value):
            raise InputError(field.name, tr("{field} is not a finite number; type one.", field=field.name))
    return replace(named, name=name)


def _check_name(session: Session, table: type[NamedRow], name: str, own: int | None) -> None:
    taken = session.scalar(select(table.id).where(table.name == name))
    if taken not in (None, own):
        raise InputError("name", tr("“{name}” is on record already; choose another name.", name=name))


def _write(row: NamedRow, named: Machine | Lot | Instrument) -> None:
    for field in fields(named):
        setattr(row, field.name, getattr(named, field.name))
