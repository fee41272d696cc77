"""The report of a kept trial: under which settings it was taken, as its page names them, and the name of its file."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from app.context import Context
from app.pages import PAGES
from app.pages.kepttrials import newest_check
from app.pages.subjecttitles import page_of
from app.widgets.reading_rows import rows_from
from core.records.rows import Trial

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from app.pages.trialpage import TrialPage

Told = Mapping[str, tuple[str, str]]


def report_name(trial: Trial | None) -> str:
    """Return the name to propose for the report of a trial, without its ending; the same in every language."""
    return "" if trial is None else f"{trial.subject}-{trial.id}"


def write_kept(context: Context, trial: Trial, path: Path) -> bool:
    """Write the report of a kept trial away from its page; return whether it was written."""
    return _write(context, trial, path, None, settings_told(context, trial))


def write_looked_at(page: TrialPage, path: Path) -> bool:
    """Write the report of the kept trial on a page, with its picture; False where none is looked at."""
    trial = page.kept_trial
    if trial is None:
        return False
    return _write(page.context, trial, path, page.picture, page.form.told_settings(trial.conditions))


def settings_told(context: Context, trial: Trial) -> Told:
    """Return label and value of each setting of a kept trial by key; nothing where its page has no form of settings."""
    from app.pages.trialpage import TrialPage

    entry = next((entry for entry in PAGES if entry.key == page_of(trial.subject)), None)
    page = entry.build(context) if entry is not None else None
    if page is None:
        return {}
    try:
        if not isinstance(page, TrialPage):
            return {}
        page.form.show_conditions(trial.conditions)
        page.form.show_rows(rows_from(trial.readings))  # of some pages they tell which settings count
        return page.form.told_settings(trial.conditions)
    finally:
        page.deleteLater()


def _write(context: Context, trial: Trial, path: Path, picture: QWidget | None, told: Told) -> bool:
    from app.reportfiles import write_trial  # no page needs it before its button is used

    return write_trial(context, trial, newest_check(context, trial.instrument_id), path, picture, told)
