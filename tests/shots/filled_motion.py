"""The pages of *Motion trials* with the invented readings of a shop of ours: one function fills one page."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QSignalBlocker

RIPPLES_MM, CRESTS = ("6.0", "9.0", "13.0"), "4"
FIRST_UM, LAST_UM = "60", "20"


def fill_speed(page: Any) -> None:
    """Two people, who like the slower half of the pieces."""
    _score(page, lambda rank: 4 if rank < 0.6 else 2 if rank < 0.8 else 0)


def fill_ringing(page: Any) -> None:
    """Three walls with the heights of their ripples."""
    for row, text in enumerate(RIPPLES_MM):
        page.form.model.edit(row, "crests", CRESTS)
        page.form.model.edit(row, "measured_mm", text)
        page.form.model.edit(row, "first_um", FIRST_UM)
        page.form.model.edit(row, "last_um", LAST_UM)


def fill_ladder(page: Any) -> None:
    """Two people, who like the middle of the ladder."""
    _score(page, lambda rank: round(4 * (1 - abs(2 * rank - 1))))


def _score(page: Any, score: Callable[[float], int]) -> None:
    """Score every piece by where its step stands from the lowest (0) to the highest (1)."""
    rows = page.form.model.rows()
    steps = [row["step"] for row in rows]
    low, high = min(steps), max(steps)
    with QSignalBlocker(page.form):  # judged once, not at every score
        for place, step in enumerate(steps):
            page.form.model.edit(place, "measured_mm", str(score((step - low) / (high - low))))
    page.answer_change()


FILLS: dict[str, Callable[[Any], None]] = {"speed": fill_speed, "ringing": fill_ringing, "ladder": fill_ladder}
