"""The shop board: one line a machine, from the same walk as the machine's own page.

Which lot is on a machine: that of the newest kept trial with one.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

from core.guidance.walk import State, Walk
from core.records.rows import NewestKept

PROVING = ("proof", "size")  # steps whose trial verifies a machine, the better one first


@dataclass(frozen=True, slots=True)
class BoardLine:
    """What the board says of a machine.

    Attributes:
        lot_id: the lot it was used with last; None for none.
        todo: key of the step that is to be done first; empty where all is done.
        todo_state: why: stale, in doubt or next.
        stale, in_doubt: keys of steps in these states.
        verified_at: when a proof part, else a size piece, was last kept; None for never.
        verified: whether the proof stands now.
        promise_id: the kept trial that holds the promise; None for none.
    """

    machine_id: int
    lot_id: int | None
    todo: str
    todo_state: State | None
    stale: tuple[str, ...]
    in_doubt: tuple[str, ...]
    done: int
    steps: int
    verified_at: datetime | None
    verified: bool
    promise_id: int | None


def loaded_lots(newest: Iterable[NewestKept]) -> dict[int, int]:
    """Return the lot that each machine was used with last."""
    last: dict[int, tuple[int, int]] = {}
    for row in newest:
        if row.machine_id is not None and row.lot_id is not None:
            last[row.machine_id] = max(last.get(row.machine_id, (0, 0)), (row.serial, row.lot_id))
    return {machine_id: lot_id for machine_id, (_, lot_id) in last.items()}


def serials_by_machine(
    newest: Iterable[NewestKept], loaded: Mapping[int, int], of_lots: Collection[str] = ()
) -> dict[int, list[int]]:
    """Return the serial numbers of the trials that each machine's walk looks at.

    Those of its own without a lot and with the lot it is loaded with, and those of that lot that belong to no machine.

    Args:
        newest: of each machine, lot, subject and set of results.
        loaded: the lot on each machine.
        of_lots: subjects whose results are the lot's, wherever it was read; the newest of each counts everywhere.
    """
    users: dict[int, list[int]] = {}
    for machine_id, lot_id in loaded.items():
        users.setdefault(lot_id, []).append(machine_id)
    found: dict[int, list[int]] = {}
    elsewhere: dict[tuple[int, str, str], NewestKept] = {}
    for row in newest:
        if row.machine_id is not None and row.lot_id in (None, loaded.get(row.machine_id)):
            found.setdefault(row.machine_id, []).append(row.serial)
        elif row.machine_id is None and row.lot_id is not None:
            for machine_id in users.get(row.lot_id, ()):
                found.setdefault(machine_id, []).append(row.serial)
        if row.machine_id is not None and row.lot_id is not None and row.subject in of_lots:
            key = row.lot_id, row.subject, row.gives
            elsewhere[key] = max(row, elsewhere.get(key, row), key=_serial)
    for row in elsewhere.values():
        for machine_id in users.get(row.lot_id or 0, ()):
            if machine_id != row.machine_id:
                found.setdefault(machine_id, []).append(row.serial)
    return found


def _serial(row: NewestKept) -> int:
    return row.serial


def board_line(machine_id: int, lot_id: int | None, walk: Walk) -> BoardLine:
    """Return what the board says of a machine whose walk stands like this."""
    todo = walk.todo
    proofs = [walk.step(key) for key in PROVING]
    trials = [trial for step in proofs[:1] for result in step.results for trial in result.trials]
    trials = trials or [trial for step in proofs[1:] for result in step.results for trial in result.trials]
    promises = [trial for result in walk.step("promise").results for trial in result.trials]
    return BoardLine(
        machine_id=machine_id,
        lot_id=lot_id,
        todo=todo.step.key if todo else "",
        todo_state=todo.state if todo else None,
        stale=_keys(walk, State.STALE),
        in_doubt=_keys(walk, State.DOUBT),
        done=walk.count(State.DONE) + walk.count(State.SKIPPED),
        steps=len(walk.steps),
        verified_at=max((trial.kept_at for trial in trials), default=None),
        verified=walk.verified,
        promise_id=max((trial.id for trial in promises), default=None),
    )


def _keys(walk: Walk, state: State) -> tuple[str, ...]:
    return tuple(step.step.key for step in walk.steps if step.state is state)
