"""The open trial of a page: what of it is stored while readings are typed, and which machine and lot it goes with."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from core.records.rows import Trial

Place = tuple[int | None, int | None]  # the numbers of machine and lot; None for none


def continued(trial: Trial, draft: Trial | None) -> Trial:
    """Return a trial as the one that goes on from the open one."""
    return trial if draft is None else replace(trial, id=draft.id, started_at=draft.started_at)


def only_readings(trial: Trial, left: Place | None) -> Trial:
    """Return a trial without what follows from its readings, at the place it was left at where another is picked."""
    bare = replace(trial, estimates=(), verdict=(), used=())
    if left is None:
        return bare
    return replace(bare, machine_id=left[0], lot_id=left[1] if trial.lot_id is not None else None)


def may_move(draft: Trial, here: Place) -> bool:
    """Tell whether an open trial may move along to a machine and lot: where it is of none or of the same ones."""
    return all(was is None or was == now for was, now in zip((draft.machine_id, draft.lot_id), here, strict=True))
