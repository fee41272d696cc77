"""Trials within one transaction: finding, writing and reading them. The store gives the transaction."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import fields
from datetime import UTC, datetime
from functools import cache
from types import EllipsisType
from typing import Any

from sqlalchemy import BindParameter, ColumnElement, Executable, bindparam, func, insert, or_, select, update
from sqlalchemy.orm import InstrumentedAttribute, Session

from core.errors import InputError
from core.quantity import Estimate
from core.records.rows import SeriesPoint, Trial, TrialState
from core.records.serials import next_serial
from core.records.tables import InstrumentRow, LotRow, MachineRow, NamedRow, ResultRow, TrialRow, UsedRow
from core.words import tr

IDS_AT_ONCE = 10_000  # a statement of SQLite takes 32 766 values at most (https://www.sqlite.org/limits.html, 9)
_ENTRIES = ("subject", "machine_id", "lot_id", "instrument_id", "readings", "conditions", "method", "note", "author")
_COLUMNS = tuple(field.name for field in fields(Trial) if field.name not in ("estimates", "used"))
_POINT: tuple[InstrumentedAttribute[Any], ...] = (  # the fields of SeriesPoint, in order
    TrialRow.id,
    TrialRow.kept_at,
    ResultRow.value,
    ResultRow.u,
    ResultRow.dof,
    ResultRow.unit,
    TrialRow.machine_id,
    TrialRow.lot_id,
)

_ESTIMATE = select(  # after the trial's id the fields of Estimate, in order
    ResultRow.trial_id, ResultRow.name, ResultRow.value, ResultRow.u, ResultRow.dof, ResultRow.unit
)
# Statements are made once: to make one, with its columns and conditions, takes longer than to run it.
_RESULTS = _ESTIMATE.order_by(ResultRow.id)
_LINKS = select(UsedRow.trial_id, UsedRow.used_id).order_by(UsedRow.id)
_WHOLE = select(*(getattr(TrialRow, name) for name in _COLUMNS))
_WITHOUT_READINGS = select(*(getattr(TrialRow, name) for name in _COLUMNS if name != "readings"))
_ID: BindParameter[int] = bindparam("trial_id")
_ONE, _RESULTS_OF_ONE = _WHOLE.where(TrialRow.id == _ID), _RESULTS.where(ResultRow.trial_id == _ID)
_USED_BY_ONE = select(UsedRow.used_id).where(UsedRow.trial_id == _ID).order_by(UsedRow.id)
_OPEN = select(TrialRow.id).where(TrialRow.open_as == bindparam("place"))
_ON_RECORD: dict[str, type[NamedRow]] = {"machine_id": MachineRow, "lot_id": LotRow, "instrument_id": InstrumentRow}
_LOOK = select(
    *(select(kind.id).where(kind.id == bindparam(name)).scalar_subquery() for name, kind in _ON_RECORD.items())
)
_NEWEST = _ESTIMATE.join(TrialRow, TrialRow.id == ResultRow.trial_id).limit(1)
_ENTERED = select(TrialRow.state, TrialRow.readings).where(TrialRow.id == _ID).with_for_update()
_STATES = (
    select(TrialRow.id, TrialRow.state).where(TrialRow.id.in_(bindparam("some", expanding=True))).with_for_update()
)
_BEGIN, _CHANGE = insert(TrialRow), update(TrialRow).where(TrialRow.id == _ID)
_ADD_RESULTS, _ADD_LINKS = insert(ResultRow), insert(UsedRow)
_LOOKED_AT = 100  # results of a name kept last: of a machine with many trials, the newest is among them


def matching(**conditions: str | int | None) -> list[ColumnElement[bool]]:
    """Return the conditions on columns of a trial; None leaves one out."""
    return [getattr(TrialRow, name) == value for name, value in conditions.items() if value is not None]


def of_whole_shop(subject: str | None, limit: int | None) -> ColumnElement[bool]:
    """Return the condition of the newest trials of a shop, or of those of a subject, whatever machine and lot.

    Indexes alone answer it: with a hundred thousand trials, whose readings lie between, all others stay unread.
    """
    if subject is not None:
        return TrialRow.id.in_(select(TrialRow.id).where(TrialRow.subject == subject))
    kept = select(TrialRow.id).where(TrialRow.kept_at.is_not(None))
    newest = kept.order_by(TrialRow.kept_at.desc(), TrialRow.id.desc()).limit(limit)
    begun = select(TrialRow.id).where(TrialRow.open_as.is_not(None))
    return or_(TrialRow.id.in_(newest), TrialRow.id.in_(begun))


def kept_since(since: datetime | None, subject: str | None) -> list[ColumnElement[bool]]:
    """Return the conditions of a trial in use, kept at this moment or later, of a subject; None leaves one out."""
    later = [] if since is None else [TrialRow.kept_at >= since]
    of_subject = [] if subject is None else [of_whole_shop(subject, None)]
    return [TrialRow.state == TrialState.KEPT, *later, *of_subject]


def find_open(session: Session, subject: str, machine_id: int | None, lot_id: int | None) -> int | None:
    """Return the id of the one open trial, if any; None for a machine or lot means that there is none."""
    return session.connection().scalar(_OPEN, {"place": open_as(subject, machine_id, lot_id)})


def open_as(subject: str, machine_id: int | None, lot_id: int | None) -> str:
    """Return what an open trial is open for, as one text of which the database allows each once."""
    return f"{subject}/{machine_id or ''}/{lot_id or ''}"


def find_row(session: Session, trial_id: int) -> TrialRow:
    """Return the row, to be changed; InputError `id` if there is none."""
    row = session.get(TrialRow, trial_id, with_for_update=True)
    if row is None:
        raise _not_on_record(trial_id)
    return row


def find_open_row(session: Session, trial_id: int) -> TrialRow:
    """Return the row of an open trial; InputError `id` for every other one."""
    row = find_row(session, trial_id)
    _check_open(row.state, trial_id)
    return row


def _not_on_record(trial_id: int) -> InputError:
    return InputError("id", tr("Trial {number} is not on record; it was perhaps discarded.", number=trial_id))


def _check_open(state: TrialState, trial_id: int) -> None:
    if state != TrialState.OPEN:
        raise InputError(
            "id", tr("Trial {number} was kept already and does not change; begin a new one.", number=trial_id)
        )


def write_entries(
    session: Session, trial: Trial, state: TrialState, seen: Trial | EllipsisType | None = ...
) -> int:
    """Write what was entered into the open trial, a new one if it has no id, and return its id.

    Written by column, not through an object of the row: it is done at each finished cell.

    Args:
        session: of the transaction.
        trial: what is entered.
        state: that it is then in, open or kept; with kept go its moment, its serial number and its verdict.
        seen: the open trial as it was last seen; what another seat has entered since then is not written over.

    Raises:
        InputError: the trial is not open, its machine, lot or instrument is not on record, or another seat has
            entered something since.
    """
    if trial.state != TrialState.OPEN:
        raise InputError("state", tr("This trial was kept already and does not change; begin a new one."))
    _check_on_record(session, trial)
    if trial.id is not None:
        _check_entered(session, trial.id, seen)
    written: dict[str, Any] = {name: getattr(trial, name) for name in _ENTRIES}
    written |= {"state": state, "open_as": None}
    if state == TrialState.OPEN:
        written["open_as"] = open_as(trial.subject, trial.machine_id, trial.lot_id)
    else:
        written["kept_at"], written["serial"] = datetime.now(UTC), next_serial(session)
        written["gives"] = "\n".join(sorted(estimate.name for estimate in trial.estimates))
        written["verdict"] = tuple(dict(advice) for advice in trial.verdict)
    if trial.id is not None:
        session.connection().execute(_CHANGE, {"trial_id": trial.id, **written})
        return trial.id
    # One that is kept at once was not begun after it: what it puts in force did not hold for it yet.
    started_at = trial.started_at or written.get("kept_at") or datetime.now(UTC)
    begun = {"verdict": (), "withdrawn_because": "", "gives": "", "started_at": started_at}
    key: Any = session.connection().execute(_BEGIN, begun | written).inserted_primary_key
    return int(key[0])


def _check_entered(session: Session, trial_id: int, seen: Trial | EllipsisType | None) -> None:
    """Refuse a trial that is not open, and to write over what another seat has entered since it was last seen."""
    row = session.connection().execute(_ENTERED, {"trial_id": trial_id}).one_or_none()
    if row is None:
        raise _not_on_record(trial_id)
    _check_open(row.state, trial_id)
    if not isinstance(seen, EllipsisType) and (seen is None or dict(row.readings) != dict(seen.readings)):
        raise InputError(
            "readings",
            tr("These readings are being typed in another window too. Close one of the two, then go on."),
        )


def _check_on_record(session: Session, trial: Trial) -> None:
    """Refuse a machine, lot or instrument that there is not; one statement looks for all of them."""
    asked = {field: getattr(trial, field) for field in _ON_RECORD}
    for (field, number), found in zip(asked.items(), session.connection().execute(_LOOK, asked).one(), strict=True):
        if number is not None and found is None:
            thing = _ON_RECORD[field].__tablename__
            raise InputError(
                field, tr("The {thing} {number} is not on record; choose again.", thing=thing, number=number)
            )


def check_estimates(estimates: tuple[Estimate, ...]) -> None:
    """Refuse, before anything is written, what has no number or one name twice; infinity is a number here."""
    names = [estimate.name for estimate in estimates]
    for estimate in estimates:
        if any(math.isnan(number) for number in (estimate.value, estimate.u, estimate.dof)):
            raise InputError(
                "estimates", tr("{name} is not a number and cannot be kept; check its readings.", name=estimate.name)
            )
        if names.count(estimate.name) > 1:
            raise InputError(
                "estimates", tr("{name} was estimated twice in one trial; keep it as two trials.", name=estimate.name)
            )


def write_outcome(session: Session, trial_id: int, trial: Trial) -> None:
    """Write the estimates of a trial that is just being kept, and the trials it used.

    Raises:
        InputError: a used trial is not in use.
    """
    used = list(dict.fromkeys(trial.used))
    _check_in_use(session, trial_id, used)
    results = [{"trial_id": trial_id, "name": e.name, "value": e.value, "u": e.u, "dof": e.dof, "unit": e.unit}
               for e in trial.estimates]  # fmt: skip
    links = [{"trial_id": trial_id, "used_id": used_id} for used_id in used]
    for statement, rows in ((_ADD_RESULTS, results), (_ADD_LINKS, links)):
        if rows:
            session.connection().execute(statement, rows)


def _check_in_use(session: Session, trial_id: int, used: Sequence[int]) -> None:
    """Refuse a trial among these that is not in use; a few statements look at all, for a shop's split rests on all."""
    states: dict[int, TrialState] = {}
    for start in range(0, len(used), IDS_AT_ONCE):
        some = used[start : start + IDS_AT_ONCE]
        states |= {row.id: row.state for row in session.connection().execute(_STATES, {"some": some})}
    for used_id in used:
        if used_id not in states:
            raise _not_on_record(used_id)
        if used_id == trial_id or states[used_id] != TrialState.KEPT:
            raise InputError(
                "used",
                tr("Trial {number} is not in use, yet this one relies on it; calculate again.", number=used_id),
            )


def read_trial(session: Session, trial_id: int) -> Trial:
    """Return one trial with its readings; InputError `id` if there is none."""
    session.flush()
    one, connection = {"trial_id": trial_id}, session.connection()
    row = connection.execute(_ONE, one).mappings().one_or_none()
    if row is None:
        raise _not_on_record(trial_id)
    if row["state"] == TrialState.OPEN:  # neither results nor used trials
        return Trial(**row)
    results = connection.execute(_RESULTS_OF_ONE, one)
    estimates = tuple(Estimate(name, value, u, dof, unit) for _, name, value, u, dof, unit in results)
    return Trial(**row, estimates=estimates, used=tuple(connection.execute(_USED_BY_ONE, one).scalars()))


def read_trials(
    session: Session, conditions: list[ColumnElement[bool]], limit: int | None, *, readings: bool = False
) -> tuple[Trial, ...]:
    """Return trials newest first: their columns, then the results and used trials of all of them together."""
    newest = func.coalesce(TrialRow.kept_at, TrialRow.started_at).desc(), TrialRow.id.desc()
    statement = (_WHOLE if readings else _WITHOUT_READINGS).where(*conditions).order_by(*newest).limit(limit)
    found = {row["id"]: row for row in session.execute(statement).mappings()}
    estimates: dict[int, list[Estimate]] = {key: [] for key in found}
    used: dict[int, list[int]] = {key: [] for key in found}
    keys = [key for key, row in found.items() if row["state"] != TrialState.OPEN]  # an open one has neither
    for start in range(0, len(keys), IDS_AT_ONCE):
        some = keys[start : start + IDS_AT_ONCE]
        for key, name, value, u, dof, unit in session.execute(_RESULTS.where(ResultRow.trial_id.in_(some))):
            estimates[key].append(Estimate(name, value, u, dof, unit))
        for key, used_id in session.execute(_LINKS.where(UsedRow.trial_id.in_(some))):
            used[key].append(used_id)
    return tuple(Trial(**row, estimates=tuple(estimates[key]), used=tuple(used[key])) for key, row in found.items())


def last_id(session: Session) -> int:
    """Return the number of the trial begun last; 0 for none."""
    return session.scalar(select(func.max(TrialRow.id))) or 0


def read_result_names(session: Session, limit: int) -> tuple[str, ...]:
    """Return the names of the estimates kept last, the last one first."""
    return tuple(session.scalars(select(ResultRow.name).order_by(ResultRow.id.desc()).limit(limit)))


def read_newest(session: Session, *names: str, **places: int | None) -> tuple[int, Estimate] | None:
    """Return the estimate of one of these names kept last and still in use, with the id of its trial.

    The results kept last are looked at first, all of them only where none is of that place; None leaves a place out.
    """
    given = {place: number for place, number in places.items() if number is not None}
    for statement in _newest(tuple(given)):
        if row := session.connection().execute(statement, {"names": names, **given}).first():
            return row.trial_id, Estimate(row.name, row.value, row.u, row.dof, row.unit)
    return None


@cache
def _newest(places: tuple[str, ...]) -> tuple[Executable, Executable]:
    of_name = ResultRow.name.in_(bindparam("names", expanding=True))
    conditions = [getattr(TrialRow, place) == bindparam(place) for place in places]
    # As a sum the number has no index: the few trials of one machine or lot are looked at, not all results of the name.
    every = _NEWEST.where(of_name, TrialRow.state == TrialState.KEPT, *conditions).order_by((ResultRow.id + 0).desc())
    latest = select(ResultRow.id).where(of_name).order_by(ResultRow.id.desc()).limit(_LOOKED_AT)
    return every.where(ResultRow.id.in_(latest)), every


def read_series(session: Session, name: str, conditions: list[ColumnElement[bool]]) -> tuple[SeriesPoint, ...]:
    """Return the estimates of that name still in use, oldest first: columns only, past what keeps rows as objects."""
    found = session.connection().execute(
        select(*_POINT)
        .join(ResultRow, TrialRow.id == ResultRow.trial_id)
        .where(ResultRow.name == name, TrialRow.state == TrialState.KEPT, *conditions)
        .order_by(TrialRow.kept_at, ResultRow.id)
    )
    return tuple(SeriesPoint(*point) for point in found)
