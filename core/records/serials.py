"""The one count of what was kept: trials, settings and events in the order of keeping, whatever the clock says."""

from __future__ import annotations

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from core.records.tables import EventRow, SettingRow, TrialRow

_LAST = select(*(select(func.max(table.serial)).scalar_subquery() for table in (TrialRow, SettingRow, EventRow)))


def next_serial(session: Session) -> int:
    """Return the number after the last one; each column has an index, so nothing is searched."""
    return max(number or 0 for number in session.execute(_LAST).one()) + 1
