"""The temperatures that a size trial is kept with: those in force when its readings were begun."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from app.words import shown
from core.words import tr

if TYPE_CHECKING:
    from app.context import Context
    from app.pages.trialcard import Row
    from core.records.rows import Trial


def heat_of(context: Context, draft: Trial | None) -> dict[str, float]:
    """Return what was in force on the picked machine when the open trial was begun, as a trial keeps it.

    Raises:
        StoreError: the database cannot be read.
    """
    from core.guidance.printedat import heat_in_force  # the window opens before the mathematics is needed

    machine_id, lot_id = context.machine_id, context.lot_id
    if machine_id is None:
        return {}
    begun = None if draft is None else draft.started_at
    return heat_in_force(context.store.settings(machine_id, lot_id), lot_id, begun)


def heat_rows(conditions: Mapping[str, Any]) -> list[Row]:
    """Return the row of the card that says the temperatures; none where a trial knows none."""
    from core.guidance.printedat import heat_words

    says = heat_words(conditions)
    return [] if says is None else [(shown(tr("printed at")), shown(says), shown(tr("in force when begun")))]
