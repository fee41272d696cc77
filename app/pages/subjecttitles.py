"""The title of the page that a subject is kept on."""

from __future__ import annotations

from app.pages import PAGES

_SUBJECT_PAGES = {"verification": "prediction", "drying": "lots", "instrument": "instruments"}


def page_of(subject: str) -> str:
    """Return the key of the page that a subject is kept on."""
    return _SUBJECT_PAGES.get(subject, subject)


def subject_titles() -> dict[str, str]:
    """Return the title of each subject's page."""
    titles = {entry.key: entry.shown_title() for entry in PAGES}
    return titles | {subject: titles[key] for subject, key in _SUBJECT_PAGES.items() if key in titles}
