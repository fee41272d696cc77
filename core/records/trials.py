"""Trials within one transaction: finding, writing and reading them. The store gives the transaction."""

from __future__ import annotations

import math
from dataclasses import fields
from datetime import UTC, datetime
from types import EllipsisType
from typing import Any

from sqlalchemy import ColumnElement, func, insert, or_, select
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
_RESULTS = _ESTIMATE.order_by(ResultRow.id)
_NEWEST = _ESTIMATE.join(TrialRow, TrialRow.id == ResultRow.trial_id).limit(1)
_LOOKED_AT = 100  # results of a name kept last: of a machine with many trials, the newest is among them
_LINKS = select(UsedRow.trial_id, UsedRow.used_id).order_by(UsedRow.id)


def matching(**conditions: str | int | None) -> list[ColumnElement[bool]]:
    """Return the conditions on columns of a trial; None leaves one out."""
    return [getattr(TrialRow, name) == value for name, value in conditions.items() if value is not None]


def of_whole_shop(subject: str | None, limit: int) -> ColumnElement[bool]:
    """Return the condition of the newest trials of a shop, or of those of a subject, whatever machine and lot.

    Indexes alone answer it: with a hundred thousand trials, whose readings lie between, all others stay unread.
    """
    if subject is not None:
        return TrialRow.id.in_(select(TrialRow.id).where(TrialRow.subject == subject))
    kept = select(TrialRow.id).where(TrialRow.kept_at.is_not(None))
    newest = kept.order_by(TrialRow.kept_at.desc(), TrialRow.id.desc()).limit(limit)
    begun = select(TrialRow.id).where(TrialRow.open_as.is_not(None))
    return or_(TrialRow.id.in_(newest), TrialRow.id.in_(begun))


def kept_since(since: datetime) -> list[ColumnElement[bool]]:
    """Return the conditions of a trial in use that was kept at this moment or later."""
    return [TrialRow.state == TrialState.KEPT, TrialRow.kept_at >= since]


def find_open(session: Session, subject: str, machine_id: int | None, lot_id: int | None) -> int | None:
    """Return the id of the one open trial, if any; None for a machine or lot means that there is none."""
    return session.scalar(select(TrialRow.id).where(TrialRow.open_as == open_as(subject, machine_id, lot_id)))


def open_as(subject: str, machine_id: int | None, lot_id: int | None) -> str:
    """Return what an open trial is open for, as one text of which the database allows each once."""
    return f"{subject}/{machine_id or ''}/{lot_id or ''}"


def find_row(session: Session, trial_id: int) -> TrialRow:
    """Return the row, to be changed; InputError `id` if there is none."""
    row = session.get(TrialRow, trial_id, with_for_update=True)
    if row is None:
        raise InputError("id", tr("Trial {number} is not on record; it was perhaps discarded.", number=trial_id))
    return row


def find_open_row(session: Session, trial_id: int) -> TrialRow:
    """Return the row of an open trial; InputError `id` for every other one."""
    row = find_row(session, trial_id)
    if row.state != TrialState.OPEN:
        raise InputError(
            "id", tr("Trial {number} was kept already and does not change; begin a new one.", number=trial_id)
        )
    return row


def write_entries(
    session: Session, trial: Trial, state: TrialState, seen: Trial | EllipsisType | None = ...
) -> TrialRow:
    """Write what was entered into the row of the open trial, a new one if it has no id; it is then in that state.

    Args:
        session: of the transaction.
        trial: what is entered.
        state: open or kept.
        seen: the open trial as it was last seen; what another seat has entered since then is not written over.

    Raises:
        InputError: the trial is not open, its machine, lot or instrument is not on record, or another seat has
            entered something since.
    """
    if trial.state != TrialState.OPEN:
        raise InputError("state", tr("This trial was kept already and does not change; begin a new one."))
    _check_on_record(session, trial)
    if trial.id is None:
        row = TrialRow(verdict=(), withdrawn_because="", gives="")
        row.started_at = trial.started_at or datetime.now(UTC)
        session.add(row)
    else:
        row = find_open_row(session, trial.id)
        if not isinstance(seen, EllipsisType):
            _check_unseen(row, seen)
    row.state = state
    is_open = state == TrialState.OPEN
    row.open_as = open_as(trial.subject, trial.machine_id, trial.lot_id) if is_open else None
    for name in _ENTRIES:
        setattr(row, name, getattr(trial, name))
    session.flush()
    return row


def _check_unseen(row: TrialRow, seen: Trial | None) -> None:
    """Refuse to write over readings that another seat has entered since the open trial was last seen."""
    if seen is None or dict(row.readings) != dict(seen.readings):
        raise InputError(
            "readings",
            tr("These readings are being typed in another window too. Close one of the two, then go on."),
        )


def _check_on_record(session: Session, trial: Trial) -> None:
    """Refuse a machine, lot or instrument that there is not; one statement looks for all of them."""
    kinds: dict[str, type[NamedRow]] = {"machine_id": MachineRow, "lot_id": LotRow, "instrument_id": InstrumentRow}
    asked = [(field, getattr(trial, field), kind) for field, kind in kinds.items() if getattr(trial, field) is not None]
    if not asked:
        return
    looks = [select(kind.id).where(kind.id == number).scalar_subquery() for _, number, kind in asked]
    for (field, number, kind), found in zip(asked, session.execute(select(*looks)).one(), strict=True):
        if found is None:
            raise InputError(
                field,
                tr("The {thing} {number} is not on record; choose again.", thing=kind.__tablename__, number=number),
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


def write_outcome(session: Session, row: TrialRow, trial: Trial) -> None:
    """Write when a trial was kept, its verdict, its estimates and the trials it used.

    Raises:
        InputError: a used trial is not in use.
    """
    row.serial = next_serial(session)  # first: asking it writes what of the row was changed before
    row.kept_at = datetime.now(UTC)
    row.gives = "\n".join(sorted(estimate.name for estimate in trial.estimates))
    row.verdict = tuple(dict(advice) for advice in trial.verdict)
    for used_id in dict.fromkeys(trial.used):
        if used_id == row.id or find_row(session, used_id).state != TrialState.KEPT:
            raise InputError(
                "used",
                tr("Trial {number} is not in use, yet this one relies on it; calculate again.", number=used_id),
            )
        session.add(UsedRow(trial_id=row.id, used_id=used_id))
    session.flush()
    results = [{"trial_id": row.id, "name": e.name, "value": e.value, "u": e.u, "dof": e.dof, "unit": e.unit}
               for e in trial.estimates]  # fmt: skip
    if results:
        session.execute(insert(ResultRow), results)


def read_trial(session: Session, trial_id: int) -> Trial:
    """Return one trial with its readings; it is there."""
    return read_trials(session, [TrialRow.id == trial_id], 1, readings=True)[0]


def read_trials(
    session: Session, conditions: list[ColumnElement[bool]], limit: int | None, *, readings: bool = False
) -> tuple[Trial, ...]:
    """Return trials newest first: their columns, then the results and used trials of all of them together."""
    statement = (
        select(*(getattr(TrialRow, name) for name in _COLUMNS if readings or name != "readings"))
        .where(*conditions)
        .order_by(func.coalesce(TrialRow.kept_at, TrialRow.started_at).desc(), TrialRow.id.desc())
        .limit(limit)
    )
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


def read_newest(session: Session, name: str, conditions: list[ColumnElement[bool]]) -> tuple[int, Estimate] | None:
    """Return the estimate of that name kept last and still in use, with the id of its trial."""
    # As a sum the number has no index: the few trials of one machine or lot are looked at, not all results of the name.
    statement = _NEWEST.where(ResultRow.name == name, TrialRow.state == TrialState.KEPT, *conditions)
    statement = statement.order_by((ResultRow.id + 0).desc())
    latest = select(ResultRow.id).where(ResultRow.name == name).order_by(ResultRow.id.desc()).limit(_LOOKED_AT)
    row = session.execute(statement.where(ResultRow.id.in_(latest))).first() or session.execute(statement).first()
    return None if row is None else (row.trial_id, Estimate(row.name, row.value, row.u, row.dof, row.unit))


def read_series(session: Session, name: str, conditions: list[ColumnElement[bool]]) -> tuple[SeriesPoint, ...]:
    """Return the estimates of that name still in use, oldest first: columns only, no rows as objects."""
    found = session.execute(
        select(*_POINT)
        .join(ResultRow, TrialRow.id == ResultRow.trial_id)
        .where(ResultRow.name == name, TrialRow.state == TrialState.KEPT, *conditions)
        .order_by(TrialRow.kept_at, ResultRow.id)
    )
    return tuple(SeriesPoint(*point) for point in found)
