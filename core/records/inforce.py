"""Settings in force within one transaction: writing those of a kept trial, and reading what holds now."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import fields, replace
from datetime import UTC, datetime

from sqlalchemy import ColumnElement, or_, select, update
from sqlalchemy.orm import Session

from core.errors import InputError
from core.records.rows import SettingInForce, Trial
from core.records.serials import next_serial
from core.records.tables import LotRow, MachineRow, SettingRow
from core.words import tr

_COLUMNS = tuple(field.name for field in fields(SettingInForce))


def check_settings(trial: Trial, settings: Sequence[SettingInForce]) -> None:
    """Refuse, before anything is written, what is no number, is for another machine or lot, or is there twice."""
    places = [(setting.lot_id, setting.name) for setting in settings]
    for setting, place in zip(settings, places, strict=True):
        if trial.machine_id is None:
            raise InputError("machine_id", tr("Choose the machine first; a setting is in force on one."))
        if setting.machine_id != trial.machine_id or setting.lot_id not in (None, trial.lot_id):
            raise InputError(
                "settings",
                tr("{name} is for another machine or lot than the trial; calculate again.", name=setting.name),
            )
        if not math.isfinite(setting.new) or not math.isfinite(setting.old or 0.0):
            raise InputError(
                "settings", tr("{name} is not a finite number and cannot be set; type one.", name=setting.name)
            )
        if places.count(place) > 1:
            raise InputError("settings", tr("{name} is set twice in one trial; choose one value.", name=setting.name))


def write_settings(session: Session, trial: Trial, settings: Sequence[SettingInForce]) -> None:
    """Put settings in force with a trial that is just being kept; one that has an id is verified by the trial.

    Raises:
        InputError: a setting to be verified is no longer in force.
    """
    for setting in settings:
        if setting.id is None:
            given = replace(setting, since=trial.kept_at, trial_id=trial.id, verified_by=None, serial=trial.serial)
            given = replace(given, author=given.author or trial.author)
            session.add(SettingRow(**{name: getattr(given, name) for name in _COLUMNS}))
        else:
            _row_in_force(session, setting).verified_by = trial.id
    session.flush()


def write_by_hand(session: Session, setting: SettingInForce) -> SettingInForce:
    """Put a setting in force that comes from no trial.

    Raises:
        InputError: no reason is given, the machine or lot is not on record, or the value is not a number.
    """
    if not setting.because.strip():
        raise InputError("because", tr("Say why {name} is set; the reason stays with it.", name=setting.name))
    check_settings(Trial("", setting.machine_id, setting.lot_id), (setting,))
    for field, number, table in (("machine_id", setting.machine_id, MachineRow), ("lot_id", setting.lot_id, LotRow)):
        if number is not None and session.get(table, number) is None:
            raise InputError(
                field,
                tr("The {thing} {number} is not on record; choose again.", thing=table.__tablename__, number=number),
            )
    given = replace(
        setting,
        since=datetime.now(UTC),
        trial_id=None,
        verified_by=None,
        serial=next_serial(session),
        because=setting.because.strip(),
        id=None,
    )
    row = SettingRow(**{name: getattr(given, name) for name in _COLUMNS})
    session.add(row)
    session.flush()
    return replace(given, id=row.id)


def write_undo(session: Session, setting: SettingInForce, because: str, author: str) -> SettingInForce:
    """Put the old value of a setting in force again, as a new entry.

    Raises:
        InputError: no reason is given, nobody knows the old value, or the setting is no longer in force.
    """
    row = _row_in_force(session, setting)
    if row.old is None:
        raise InputError(
            "old",
            tr("Nobody wrote down what {name} was before; set the value you want by hand.", name=setting.name),
        )
    back = SettingInForce(row.machine_id, row.lot_id, row.name, row.new, row.old, row.unit)
    return write_by_hand(session, replace(back, undoes=row.id, because=because, author=author))


def _row_in_force(session: Session, setting: SettingInForce) -> SettingRow:
    row = _newest(session, setting.name, setting.machine_id, setting.lot_id)
    if row is None or replace(_setting_from_row(row), verified_by=setting.verified_by) != setting:
        raise InputError(
            "settings",
            tr(
                "{name} was set anew elsewhere meanwhile; open the page again and look at what is in force now.",
                name=setting.name.replace("_", " "),
            ),
        )
    return row


def forget_verifier(session: Session, trial_id: int) -> None:
    """Take back what a trial verified: it is being withdrawn."""
    session.execute(update(SettingRow).where(SettingRow.verified_by == trial_id).values(verified_by=None))


def read_settings(session: Session, machine_id: int | None, lot_id: int | None) -> tuple[SettingInForce, ...]:
    """Return all settings of a machine, past and present, newest first; with a lot those that can touch the lot."""
    conditions: list[ColumnElement[bool]] = [] if machine_id is None else [SettingRow.machine_id == machine_id]
    if lot_id is not None:
        conditions.append(or_(SettingRow.lot_id.is_(None), SettingRow.lot_id == lot_id))
    rows = session.scalars(select(SettingRow).where(*conditions).order_by(SettingRow.id.desc()))
    return tuple(_setting_from_row(row) for row in rows)


def read_in_force(session: Session, name: str, machine_id: int, lot_id: int | None) -> SettingInForce | None:
    """Return the last setting of that name: that of the lot, else that of the machine."""
    row = _newest(session, name, machine_id, lot_id)
    if row is None and lot_id is not None:
        row = _newest(session, name, machine_id, None)
    return None if row is None else _setting_from_row(row)


def _newest(session: Session, name: str, machine_id: int, lot_id: int | None) -> SettingRow | None:
    of_lot: ColumnElement[bool] = SettingRow.lot_id.is_(None) if lot_id is None else SettingRow.lot_id == lot_id
    return session.scalar(
        select(SettingRow)
        .where(SettingRow.machine_id == machine_id, SettingRow.name == name, of_lot)
        .order_by(SettingRow.id.desc())
        .limit(1)
    )


def _setting_from_row(row: SettingRow) -> SettingInForce:
    return SettingInForce(**{name: getattr(row, name) for name in _COLUMNS})
