"""The report of the newest kept trial of a subject of the picked machine and lot."""

from __future__ import annotations

from pathlib import Path

from app.context import Context
from app.pages.part_size.keptbeside import kept_here
from app.pages.trialreport import report_name, write_kept


def write_newest(context: Context, subject: str, path: Path) -> bool:
    """Write it, as PDF or, where the name ends so, as CSV; False where none is kept or the folder takes no file."""
    kept = kept_here(context, subject)
    return bool(kept) and write_kept(context, context.store.trial(kept[0].id or 0), path)


def newest_name(context: Context, subject: str) -> str:
    """Return the name to propose for its report; empty where none is kept."""
    return report_name(next(iter(kept_here(context, subject)), None))
