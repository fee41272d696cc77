"""What the page *Promise* reads and has judged, beside the window where there is much of it: it touches no widget."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from core.records.rows import Instrument, Trial, TrialState

if TYPE_CHECKING:
    from datetime import datetime

    from app.context import Context
    from app.jobs import Step
    from core.guidance.promised import PromiseJudgement

_MOST_PIECES = 500


class Wanted(NamedTuple):
    """Whose promise is asked for, with which instrument, and what for."""

    machine_id: int
    lot_id: int
    instrument: Instrument | None
    tolerance: str | float


class Asked(NamedTuple):
    """The pieces of machine and lot, the instrument, the tolerance asked for, and when settings changed."""

    trials: tuple[Trial, ...]
    instrument: Instrument | None
    tolerance: str | float
    since: datetime | None


def pieces(context: Context, wanted: Wanted, step: Step) -> Asked:
    """Read the kept pieces."""
    from core.guidance.partgroups import pieces_since

    store = context.store
    kept = store.trials("sizeerror", wanted.machine_id, wanted.lot_id, limit=_MOST_PIECES, readings=True)
    step(0.7)
    trials = [trial for trial in reversed(kept) if trial.state is TrialState.KEPT]
    settings = store.settings(wanted.machine_id, wanted.lot_id)
    since = pieces_since(settings, wanted.lot_id, store.events(wanted.machine_id))
    return Asked(tuple(trials), wanted.instrument, wanted.tolerance, since)


def judged(asked: Asked) -> PromiseJudgement:
    """Judge them: one call into the core."""
    from core.guidance.promised import judge_promise

    return judge_promise(*asked)
