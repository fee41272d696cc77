"""The report of the newest kept trial of a subject of the picked machine and lot."""

from __future__ import annotations

from pathlib import Path

from app.context import Context
from app.pages.kepttrials import write_kept
from app.pages.part_size.keptbeside import kept_here


def write_newest(context: Context, subject: str, path: Path) -> bool:
    """Write it, as PDF or, where the name ends so, as CSV; False where none is kept or the folder takes no file."""
    kept = kept_here(context, subject)
    return bool(kept) and write_kept(context, context.store.trial(kept[0].id or 0), path)
