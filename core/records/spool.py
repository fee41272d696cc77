"""What was typed while the database could not take it: one small file for each open trial, on this computer.

A file is complete when it has its name, and stays until the database has its content. It holds the trial as typed and
the trial as the database last gave it, so that what another seat has entered meanwhile is not written over.
"""

from __future__ import annotations

import os
from contextlib import suppress
from dataclasses import asdict, dataclass, fields, replace
from datetime import datetime
from hashlib import blake2b
from pathlib import Path
from types import NoneType
from typing import TYPE_CHECKING, Any

from core.errors import InputError
from core.records.cells import LARGEST_INTEGER
from core.records.columns import json_from_value, value_from_json
from core.records.faults import store_error
from core.records.outside import content_of
from core.records.rows import Trial, TrialState
from core.words import tr

if TYPE_CHECKING:
    from core.records.store import Store

_FOLDER = "waiting"
_LARGEST_MB = 100
_TIMES = ("started_at", "kept_at")
_NUMBER = (int, NoneType)
# What a trial holds that somebody may have written into its file; the rest is not taken from there.
_KINDS: dict[str, type | tuple[type, ...]] = {
    "subject": str, "machine_id": _NUMBER, "lot_id": _NUMBER, "instrument_id": _NUMBER, "id": _NUMBER,
    "readings": dict, "conditions": dict, "method": str, "note": str, "author": str, "withdrawn_because": str,
    "started_at": (datetime, NoneType), "kept_at": (datetime, NoneType), "serial": _NUMBER,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Waiting:
    """An open trial that waits for its database, and the file that holds it."""

    file: Path
    trial: Trial
    seen: Trial | None


class Spool:
    """What waits for one database; `folder` is that of the program's own data."""

    def __init__(self, where: str, folder: Path) -> None:
        self._where = where
        self._folder = folder / _FOLDER

    def put(self, trial: Trial, seen: Trial | None) -> Path:
        """Write an open trial into its file, over what waited for the same subject, machine and lot.

        Raises:
            StoreError: this disk does not take it either.
        """
        file = self._file(trial)
        part = file.with_suffix(".part")
        held = {"where": self._where, "trial": _plain(trial), "seen": None if seen is None else _plain(seen)}
        try:
            self._folder.mkdir(parents=True, exist_ok=True)
            with part.open("w", encoding="utf-8") as written:
                written.write(json_from_value(held))
                written.flush()
                os.fsync(written.fileno())
            part.replace(file)
        except OSError as error:
            raise store_error(error, str(file)) from error
        return file

    def drop(self, trial: Trial) -> None:
        """Take a trial out that the database has; one that cannot be deleted is found stored when it is sent again."""
        with suppress(OSError):
            self._file(trial).unlink()

    def waiting(self) -> tuple[Waiting, ...]:
        """Return what waits for this database; a file that cannot be read stays where it is."""
        found = []
        for file in sorted(self._folder.glob("*.json")):
            try:
                held: Any = value_from_json(content_of(file, _LARGEST_MB).decode("utf-8"))
                if held["where"] == self._where:
                    seen = held["seen"]
                    found.append(Waiting(file, _trial(held["trial"]), None if seen is None else _trial(seen)))
            except (ValueError, TypeError, KeyError):  # an InputError is a ValueError
                continue
        return tuple(found)

    def send(self, store: Store) -> tuple[int, tuple[str, ...]]:
        """Hand all that waits to its database; return how many trials it took, and why it refused the others.

        Raises:
            StoreError: the database is away again; what it has not taken still waits.
        """
        taken, refused = 0, []
        for waiting in self.waiting():
            try:
                _send(store, waiting.trial, waiting.seen)
            except InputError as error:
                refused.append(
                    tr(
                        "What was typed for {subject} while the database was away waits in {file}: {sentence}",
                        subject=waiting.trial.subject,
                        file=waiting.file,
                        sentence=error.message,
                    )
                )
            else:
                self.drop(waiting.trial)
                taken += 1
        return taken, tuple(refused)

    def _file(self, trial: Trial) -> Path:
        about = json_from_value([self._where, trial.subject, trial.machine_id, trial.lot_id])
        return self._folder / f"{trial.subject}-{blake2b(about.encode(), digest_size=8).hexdigest()}.json"


def _send(store: Store, trial: Trial, seen: Trial | None) -> None:
    """Store an open trial, as a new one where it was kept meanwhile; one that arrived after all is not sent again."""
    there = store.draft(trial.subject, trial.machine_id, trial.lot_id)
    if there is not None and dict(there.readings) == dict(trial.readings):
        return
    try:
        store.save_draft(trial, seen)
    except InputError as error:
        if error.field != "id" or trial.id is None:
            raise
        store.save_draft(replace(trial, id=None), None)


def _plain(trial: Trial) -> dict[str, Any]:
    draft = asdict(replace(trial, estimates=(), verdict=(), used=()))
    return {name: value.isoformat() if isinstance(value, datetime) else value for name, value in draft.items()}


def _trial(plain: dict[str, Any]) -> Trial:
    names = {field.name for field in fields(Trial)} & dict(plain).keys()
    values = {name: plain[name] for name in names}
    for name in _TIMES:
        if values.get(name):
            values[name] = datetime.fromisoformat(values[name])
    trial = replace(Trial(**values), state=TrialState(values["state"]), estimates=(), verdict=(), used=())
    for name, kind in _KINDS.items():
        value = getattr(trial, name)
        if not isinstance(value, kind) or (isinstance(value, int) and abs(value) > LARGEST_INTEGER):
            raise TypeError
    return trial
