"""Whether the changes of a trial started from what was in force when it was begun; said when the trial is kept."""

from __future__ import annotations

from app.context import Context
from app.words import shown
from core.errors import StoreError
from core.records.rows import Trial


def other_bases(context: Context, kept: Trial) -> str:
    """Say which changes of a kept trial started from another value; nothing where all started from the right one."""
    if kept.machine_id is None or kept.started_at is None:
        return ""
    from core.guidance.changes import base_words  # the window opens before the mathematics is needed

    try:
        every = context.store.settings(kept.machine_id)
    except StoreError:
        return ""  # it is kept; the logbook marks such a change too
    own = (base_words(made, every, kept.started_at) for made in every if made.trial_id == kept.id)
    return " ".join(shown(words) for words in own if words is not None)
