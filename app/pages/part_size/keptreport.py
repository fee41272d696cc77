"""The report of the newest kept trial of a subject of the picked machine and lot."""

from __future__ import annotations

from pathlib import Path

from app.context import Context
from app.pages.kepttrials import newest_check
from app.pages.part_size.keptbeside import kept_here


def write_newest(context: Context, subject: str, path: Path) -> bool:
    """Write it, as PDF or, where the name ends so, as CSV; False where none is kept or the folder takes no file."""
    from app.reportfiles import write_trial  # no page needs it before its button is used

    kept = kept_here(context, subject)
    if not kept:
        return False
    trial = context.store.trial(kept[0].id or 0)
    return write_trial(context, trial, newest_check(context, trial.instrument_id), path, None)
