"""Which kept trials are in use now, read from indexes alone: what the setup walk and the shop board rest on."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from operator import attrgetter
from typing import Any

from sqlalchemy import ColumnElement, Text, cast, func, or_, select, type_coerce
from sqlalchemy.orm import InstrumentedAttribute, Session

from core.records.columns import objects_from_json
from core.records.rows import InUse, NewestKept, Trial, TrialState
from core.records.tables import TrialRow, UsedRow
from core.records.trials import IDS_AT_ONCE
from core.words import kept_words, side_by_side

_COLUMNS: tuple[ColumnElement[Any] | InstrumentedAttribute[Any], ...] = (
    TrialRow.id,
    TrialRow.serial,
    TrialRow.subject,
    TrialRow.machine_id,
    TrialRow.lot_id,
    TrialRow.instrument_id,
    TrialRow.kept_at,
    TrialRow.gives,
    cast(TrialRow.verdict, Text),  # of many trials: taken apart only where it may say what is looked for
)
# As a text put together the state has no index: the numbers are looked up, not all that is kept walked through.
_IS_KEPT = type_coerce(TrialRow.state, Text).concat("") == str(TrialState.KEPT)
_CHECK = "instrument"  # the subject of the trials that prove one
_UNDECIDED = "undecided"  # the setting that an advice names where it cannot tell yet


def read_newest_kept(session: Session, machine_id: int | None, lot_id: int | None) -> list[NewestKept]:
    """Return, for each machine, lot, subject and set of results, the newest kept trial; one index is walked through.

    With a machine: its own, and those that belong to no machine; with a lot those of the lot on other machines too.
    """
    # As plain text: the index of a large shop has many thousand rows, and nothing in them needs a second look.
    texts = [type_coerce(column, Text) for column in (TrialRow.subject, TrialRow.gives)]
    place: list[Any] = [TrialRow.machine_id, TrialRow.lot_id, *texts]
    statement = select(*place, func.max(TrialRow.serial)).where(TrialRow.state == TrialState.KEPT)
    if machine_id is not None:
        of_lot = [] if lot_id is None else [TrialRow.lot_id == lot_id]
        statement = statement.where(or_(TrialRow.machine_id == machine_id, TrialRow.machine_id.is_(None), *of_lot))
    return list(map(NewestKept._make, session.execute(statement.group_by(*place))))


def read_in_use(session: Session, serials: Collection[int]) -> list[InUse]:
    """Return the kept trials of these serial numbers, and after them those that they relied on and that still count."""
    asked = _read(session, TrialRow.serial, serials)
    relied_on = {number for trial in asked for number in trial.used} - {trial.id for trial in asked}
    return asked + _read(session, TrialRow.id, relied_on)


def read_checks(session: Session, limit: int) -> tuple[Trial, ...]:
    """Return the checks of instruments kept last and in use, newest first: of each the verdict alone."""
    columns = TrialRow.id, TrialRow.serial, TrialRow.instrument_id, TrialRow.verdict
    kept = TrialRow.subject == _CHECK, TrialRow.state == TrialState.KEPT
    statement = select(*columns).where(*kept).order_by(TrialRow.serial.desc()).limit(limit)
    return tuple(Trial(_CHECK, state=TrialState.KEPT, **row) for row in session.execute(statement).mappings())


def _read(session: Session, column: InstrumentedAttribute[Any], numbers: Collection[int]) -> list[InUse]:
    """Return the kept trials with these numbers in a column, by serial number."""
    found: list[Any] = []
    for some in _portions(numbers):
        found += session.execute(select(*_COLUMNS).where(column.in_(some), _IS_KEPT))
    used: dict[int, list[int]] = {}
    for some in _portions([row[0] for row in found]):
        links = select(UsedRow.trial_id, UsedRow.used_id).where(UsedRow.trial_id.in_(some)).order_by(UsedRow.id)
        for trial_id, used_id in session.execute(links):
            used.setdefault(trial_id, []).append(used_id)
    names = {gives: frozenset(gives.splitlines()) for gives in {row[-2] for row in found}}  # a shop has few kinds
    trials = [
        InUse._make((*row[:-2], names[row[-2]], tuple(used.get(row[0], ())), _would_tell(row[-1]))) for row in found
    ]
    return sorted(trials, key=attrgetter("serial"))


def _would_tell(verdict_json: str) -> str:
    """Return what a verdict asks for that is nothing but "cannot tell yet"; empty for any other."""
    if f'"{_UNDECIDED}"' not in verdict_json:
        return ""
    verdict = objects_from_json(verdict_json)
    if any(advice.get("setting") != _UNDECIDED for advice in verdict):
        return ""
    return side_by_side(kept_words(advice, "action") for advice in verdict)


def _portions(numbers: Collection[int]) -> Iterator[list[int]]:
    """Yield the numbers in their order, as many at once as a statement takes."""
    wanted = sorted(numbers)
    for start in range(0, len(wanted), IDS_AT_ONCE):
        yield wanted[start : start + IDS_AT_ONCE]
