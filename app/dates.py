"""Days and moments as ISO 8601 writes them, in local time: the same in every language.

Reference: ISO 8601-1:2019 5.2.2.1 (calendar date).
"""

from __future__ import annotations

from datetime import datetime


def day_text(at: datetime | None) -> str:
    """Return `2026-03-09`; nothing where there is no time."""
    return at.astimezone().strftime("%Y-%m-%d") if at else ""


def moment_text(at: datetime | None) -> str:
    """Return `2026-03-09 14:05`; nothing where there is no time."""
    return at.astimezone().strftime("%Y-%m-%d %H:%M") if at else ""
