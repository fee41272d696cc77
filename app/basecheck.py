"""What a trial put in force, and whether it started from what was in force when it was begun: said when it is kept."""

from __future__ import annotations

from app.context import Context, Level
from app.words import shown
from core.errors import StoreError
from core.records.rows import Trial


def with_changes(context: Context, kept: Trial, says: str) -> tuple[str, Level]:
    """Return what is said of a kept trial, and how loud: what it put in force, and what started from another value.

    Args:
        context: of the window.
        kept: the trial.
        says: that it is kept.
    """
    if kept.machine_id is None:
        return says, Level.GOOD
    from core.guidance.changes import base_words, put_words  # the window opens before the mathematics is needed

    try:
        every = context.store.settings(kept.machine_id)
    except StoreError:
        return says, Level.GOOD  # it is kept; the logbook tells the rest too
    own = [made for made in every if made.trial_id == kept.id]
    doubts = [base_words(made, every, kept.started_at) for made in own] if kept.started_at is not None else []
    found = [words for words in doubts if words is not None]
    told = (put_words(kept.id, every), *found)
    text = " ".join([says, *(shown(words) for words in told if words is not None)])
    return text, Level.WARNING if found else Level.GOOD
