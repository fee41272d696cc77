"""The store: frozen rows in and out, one transaction a call; no session and no row object leaves.

A trial is open (a draft, at most one for a subject, machine and lot), then kept for good, and perhaps withdrawn with a
reason. Kept trials are never overwritten.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from types import EllipsisType
from typing import TYPE_CHECKING

from sqlalchemy import text

from core.errors import InputError
from core.quantity import Estimate
from core.records import inforce, named, newest, trials
from core.records.backup import Step, no_step
from core.records.engine import BUSY_TIMEOUT_MS, Database, place_of
from core.records.log import Log, write_event, write_parts
from core.records.named import Named
from core.records.place import default_database_path, prepare
from core.records.rows import (
    Event,
    Instrument,
    InUse,
    Lot,
    Machine,
    NewestKept,
    SeriesPoint,
    SettingInForce,
    Trial,
    TrialState,
)
from core.records.upgrade import bring_up_to_date
from core.words import tr

if TYPE_CHECKING:
    from core.records.spool import Spool
    from core.records.storage import Storage

__all__ = ["Store", "default_database_path", "open_store"]


def open_store(where: str | Path, busy_timeout_ms: int = BUSY_TIMEOUT_MS, step: Step = no_step) -> Store:
    """Open a database: the path of an SQLite file (begun if there is none), `:memory:`, or an SQLAlchemy URL.

    An older one is changed first; `step` is told the part done, and raises to leave it as it was.

    Raises:
        StoreError: it cannot be opened; a file that is there was not changed.
    """
    place = place_of(where)
    prepare(place)
    database = Database(place, busy_timeout_ms)
    try:
        bring_up_to_date(database, step=step)
    except BaseException:
        database.close()
        raise
    return Store(database)


class Store(Log):
    """What the shop has on record. Every method raises `StoreError` when disk, lock or server fail."""

    @property
    def where(self) -> str:
        """The path or address, for people."""
        return self._database.place.shown

    @property
    def storage(self) -> Storage:
        """What is done with the database as a whole: copies, export, moving."""
        from core.records.storage import Storage  # a start needs none of it

        return Storage(self._database)

    def ping(self) -> None:
        """Raise StoreError if the database cannot be written to now; change nothing."""
        with self._database.transaction(write=True) as session:
            session.execute(text("SELECT 1"))

    @property
    def spool(self) -> Spool:
        """What waits on this computer until the database takes it."""
        from core.records.spool import Spool  # needed only where something fails

        return Spool(self.where, default_database_path().parent)

    def close(self) -> None:
        """Close the database."""
        self._database.close()

    def machines(self) -> tuple[Machine, ...]:
        """Return all machines by name."""
        return self._all(Machine)

    def add_machine(self, machine: Machine) -> Machine:
        """Add a machine; InputError `name` if there is one of that name. Its parts are an event of the log."""
        machine = named.checked(machine)
        with self._database.transaction(write=True) as session:
            added = named.add(session, machine)
            write_parts(session, {}, added, self.author)
            return added

    def change_machine(self, machine: Machine) -> Machine:
        """Write a changed machine; changed parts are an event of the log.

        Raises:
            InputError: field `version`: it was changed elsewhere since it was read; `name`: the name is taken; `id`:
                it is not on record.
        """
        machine = named.checked(machine)
        with self._database.transaction(write=True) as session:
            before = named.parts_of(session, machine.id)
            changed = named.change(session, machine)
            write_parts(session, before, changed, self.author)
            return changed

    def lots(self) -> tuple[Lot, ...]:
        """Return all filament lots by name."""
        return self._all(Lot)

    def add_lot(self, lot: Lot) -> Lot:
        """Add a lot; InputError `name` if there is one of that name."""
        return self._add(lot)

    def change_lot(self, lot: Lot) -> Lot:
        """Write a changed lot; raises as `change_machine`."""
        return self._change(lot)

    def instruments(self) -> tuple[Instrument, ...]:
        """Return all instruments by name."""
        return self._all(Instrument)

    def add_instrument(self, instrument: Instrument) -> Instrument:
        """Add an instrument; InputError `name` if there is one of that name."""
        return self._add(instrument)

    def change_instrument(self, instrument: Instrument) -> Instrument:
        """Write a changed instrument; raises as `change_machine`."""
        return self._change(instrument)

    def draft(self, subject: str, machine_id: int | None = None, lot_id: int | None = None) -> Trial | None:
        """Return the open trial of this subject, machine and lot, if any."""
        with self._database.transaction() as session:
            trial_id = trials.find_open(session, subject, machine_id, lot_id)
            return None if trial_id is None else trials.read_trial(session, trial_id)

    def save_draft(self, trial: Trial, seen: Trial | EllipsisType | None = ...) -> Trial:
        """Write the open trial; without an id that of its subject, machine and lot, begun if there is none.

        Estimates, verdict and used trials are not part of a draft.

        Args:
            trial: what is entered.
            seen: the open trial as the caller last had it from here, None for none: what another seat has entered
                since then is not written over. Left out, the caller answers for that.

        Raises:
            InputError: field `id` where it is no longer open, or another one is open for the same subject, machine and
                lot; field `readings` where another seat has entered something since.
        """
        with self._database.transaction(write=True) as session:
            other = trials.find_open(session, trial.subject, trial.machine_id, trial.lot_id)
            if trial.id is not None and other not in (None, trial.id):
                raise InputError("id", tr("Trial {other} is open here already; keep or discard it first.", other=other))
            number = trials.write_entries(session, replace(trial, id=trial.id or other), TrialState.OPEN, seen)
            return trials.read_trial(session, number)

    def discard_draft(self, trial_id: int) -> None:
        """Delete an open trial; InputError `id` for every other one."""
        with self._database.transaction(write=True) as session:
            session.delete(trials.find_open_row(session, trial_id))

    def keep(self, trial: Trial, settings: Sequence[SettingInForce] = ()) -> Trial:
        """Keep a trial for good, with its estimates, verdict, the trials it used and the settings it put in force.

        With an id the draft of that id becomes the kept trial; without one a new trial is kept and no draft is touched.
        A setting without an id is in force from now on; one with an id, as the store gave it, is verified by the trial.

        Raises:
            InputError: it is no longer open, an estimate or setting is not a number, a used trial is not in use, or a
                setting is for another machine or lot or no longer in force.
        """
        trials.check_estimates(trial.estimates)
        inforce.check_settings(trial, settings)
        trial = replace(trial, author=trial.author or self.author)
        with self._database.transaction(write=True) as session:
            number = trials.write_entries(session, trial, TrialState.KEPT)
            trials.write_outcome(session, number, trial)
            kept = trials.read_trial(session, number)
            inforce.write_settings(session, kept, settings)
            return kept

    def withdraw(self, trial_id: int, because: str) -> Trial:
        """Take a kept trial out of use, with a reason; it stays visible, but what it verified no longer counts so.

        The event `withdrawn` says when and who.
        """
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
            inforce.forget_verifier(session, trial_id)
            places = {name: getattr(row, name) for name in ("machine_id", "lot_id", "instrument_id")}
            said = Event("withdrawn", trial_id=trial_id, note=because.strip(), author=self.author, **places)
            write_event(session, said)
            return trials.read_trial(session, trial_id)

    def trial(self, trial_id: int) -> Trial:
        """Return a trial with its readings; InputError `id` if there is none."""
        with self._database.transaction() as session:
            return trials.read_trial(session, trial_id)

    def trials(
        self,
        subject: str | None = None,
        machine_id: int | None = None,
        lot_id: int | None = None,
        limit: int | None = 200,
        *,
        readings: bool = False,
    ) -> tuple[Trial, ...]:
        """Return trials of any state, newest first, with their readings if asked; None leaves a condition out."""
        conditions = trials.matching(subject=subject, machine_id=machine_id, lot_id=lot_id)
        if machine_id is None and lot_id is None:
            conditions = [trials.of_whole_shop(subject, limit)]
        with self._database.transaction() as session:
            return trials.read_trials(session, conditions, limit, readings=readings)

    def last_trial_id(self) -> int:
        """Return the number of the trial begun last, about how many there are; 0 for none."""
        with self._database.transaction() as session:
            return trials.last_id(session)

    def results_of_late(self, limit: int = 1000) -> tuple[str, ...]:
        """Return the names of the estimates kept last, in use or not, the last one first."""
        with self._database.transaction() as session:
            return trials.read_result_names(session, limit)

    def newest(
        self, name: str, machine_id: int | None = None, lot_id: int | None = None
    ) -> tuple[int, Estimate] | None:
        """Return the estimate of that name kept last and not withdrawn, with the id of its trial."""
        with self._database.transaction() as session:
            return trials.read_newest(session, name, machine_id=machine_id, lot_id=lot_id)

    def newest_for_instrument(self, name: str, instrument_id: int) -> tuple[int, Estimate] | None:
        """Return the estimate of that name kept last, read with this instrument and not withdrawn, with its trial."""
        with self._database.transaction() as session:
            return trials.read_newest(session, name, instrument_id=instrument_id)

    def newest_check(self, names: Collection[str], instrument_id: int) -> Trial | None:
        """Return the newest trial in use that gave one of these results with this instrument, with its readings."""
        with self._database.transaction() as session:
            newest = trials.read_newest(session, *names, instrument_id=instrument_id)
            return None if newest is None else trials.read_trial(session, newest[0])

    def read_with(
        self, instrument_id: int, since: datetime | None = None, subject: str | None = None
    ) -> tuple[Trial, ...]:
        """Return what is in use, read with an instrument and kept since then: newest first, without the readings."""
        conditions = trials.kept_since(since, subject) + trials.matching(instrument_id=instrument_id)
        with self._database.transaction() as session:
            return trials.read_trials(session, conditions, None)

    def series(
        self, name: str, machine_id: int | None = None, lot_id: int | None = None, instrument_id: int | None = None
    ) -> tuple[SeriesPoint, ...]:
        """Return all estimates of that name in use, oldest first; None leaves a condition out."""
        conditions = trials.matching(machine_id=machine_id, lot_id=lot_id, instrument_id=instrument_id)
        with self._database.transaction() as session:
            return trials.read_series(session, name, conditions)

    def newest_kept(self, machine_id: int | None = None, lot_id: int | None = None) -> list[NewestKept]:
        """Return the newest kept trial of each machine, lot, subject and set of results.

        With a machine: its own, and those that belong to no machine; with a lot those of the lot elsewhere too.
        """
        with self._database.transaction() as session:
            return newest.read_newest_kept(session, machine_id, lot_id)

    def in_use(self, serials: Collection[int]) -> list[InUse]:
        """Return the kept trials in use of these serial numbers, then those they relied on and that still count."""
        with self._database.transaction() as session:
            return newest.read_in_use(session, serials)

    def checks(self, limit: int) -> tuple[Trial, ...]:
        """Return the checks of instruments kept last and in use, newest first: of each the verdict alone."""
        with self._database.transaction() as session:
            return newest.read_checks(session, limit)

    def settings(self, machine_id: int | None, lot_id: int | None = None) -> tuple[SettingInForce, ...]:
        """Return all settings that were ever in force on a machine, or on all, newest first.

        With a lot, those of the lot and those of the machine as such; without one, those of every lot.
        """
        with self._database.transaction() as session:
            return inforce.read_settings(session, machine_id, lot_id)

    def in_force(self, name: str, machine_id: int, lot_id: int | None = None) -> SettingInForce | None:
        """Return what is set now: for the lot if it has a value of its own, else for the machine as such.

        A withdrawn trial stays in force: what it put into the machine is there until another value is set.
        """
        with self._database.transaction() as session:
            return inforce.read_in_force(session, name, machine_id, lot_id)

    def put_in_force(self, setting: SettingInForce) -> SettingInForce:
        """Put a value in force that comes from no trial, such as one read back from a controller.

        Raises:
            InputError: no reason is given, or the value is not a number.
        """
        with self._database.transaction(write=True) as session:
            return inforce.write_by_hand(session, replace(setting, author=setting.author or self.author))

    def undo_setting(self, setting: SettingInForce, because: str) -> SettingInForce:
        """Bring the old value of a setting back, as a new entry.

        Raises:
            InputError: no reason is given, nobody knows the old value, or the setting is no longer in force.
        """
        with self._database.transaction(write=True) as session:
            return inforce.write_undo(session, setting, because, self.author)

    def _all(self, kind: type[Named]) -> tuple[Named, ...]:
        with self._database.transaction() as session:
            return named.read_all(session, kind)

    def _add(self, row: Named) -> Named:
        row = named.checked(row)
        with self._database.transaction(write=True) as session:
            return named.add(session, row)

    def _change(self, row: Named) -> Named:
        row = named.checked(row)
        with self._database.transaction(write=True) as session:
            return named.change(session, row)
