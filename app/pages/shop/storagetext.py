"""What the page Storage says about a database and about an import, in the language of the window."""

from __future__ import annotations

from app.pages import PAGES
from app.words import shown
from core.records.rows import Contents, ImportReport
from core.words import tr


def contents_text(contents: Contents) -> str:
    """Return how many of each there are, and in a second line the newest trial."""
    names = {
        "machine": tr("machines {count}", count=contents.rows["machine"]),
        "lot": tr("lots {count}", count=contents.rows["lot"]),
        "instrument": tr("instruments {count}", count=contents.rows["instrument"]),
        "trial": tr("trials {count}", count=contents.rows["trial"]),
        "event": tr("events {count}", count=contents.rows.get("event", 0)),
        "attachment": tr("pictures {count}", count=contents.rows.get("attachment", 0)),
    }
    counts = " · ".join(shown(text) for text in names.values())
    if contents.newest is None:
        return counts
    number, subject, machine, at = contents.newest
    titles = {entry.key: entry.shown_title() for entry in PAGES}
    values = {"number": number, "subject": titles.get(subject, subject), "moment": f"{at.astimezone():%Y-%m-%d %H:%M}"}
    newest = (
        tr("Newest trial: {number}, {subject} on {machine}, {moment}", machine=machine, **values)
        if machine
        else tr("Newest trial: {number}, {subject}, {moment}", **values)
    )
    return f"{counts}\n{shown(newest)}"


def import_text(report: ImportReport) -> str:
    """Return what came of an import, then line by line what was not taken as it stands."""
    lines = [f"{shown(place)}: {shown(said)}" if place else shown(said) for place, said in report.lines]
    if report.refused:
        head = tr("Nothing was imported. Mend these lines, then try again.")
    elif not any(report.added.values()):
        head = tr("Nothing was added; {already} rows are on record already.", already=report.already)
    else:
        added = " · ".join(f"{table} {count}" for table, count in report.added.items() if count)
        head = tr("Added: {added}. On record already: {already} rows.", added=added, already=report.already)
    return "\n".join([shown(head), *lines])
