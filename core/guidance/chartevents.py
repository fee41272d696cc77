"""Events of the log as a chart marks them: which begin its limits anew, which are only drawn, which say nothing to it.

The table of the setup walk says what an event does to a result. Where it is to be measured again, the limits begin
anew; where one quick check will do, the event is drawn and begins nothing, as a note is; where the result stays, it is
not drawn. A kind of event or a quantity that the table does not know is drawn and begins the limits anew. What the
store writes itself, checks by hand, skipped steps and what was taken back are no events of a chart.
"""

from __future__ import annotations

from collections.abc import Iterable

from core.guidance.drift import Event
from core.guidance.walkplan import Effect, shop_plan
from core.guidance.walkwords import event_words
from core.records.rows import Event as Logged
from core.words import tr

_NO_EVENTS = ("checked", "skipped", "withdrawn")
_NOTE = "note"
_RESULTS = (  # beginnings of the names of estimates, and the result of the walk's table they belong to
    (("scale_difference",), "scale"),
    (("scale_",), "shrink"),
    (("reversal_", "mean_", "systematic_", "repeatability_", "accuracy_", "play_", "windup_", "lost_motion_",
      "compliance_", "side_compliance_"),
     "reversal"),
    (("squareness_",), "square"),
    (("bed_", "probe_sd"), "bed"),
    (("feed_",), "feed"),
    (("diameter", "ovality", "area_ratio", "mass_per_length", "density"), "spool"),
    (("flow_ceiling", "highest_speed"), "ceiling"),
    (("flow_ratio",), "flow"),
    (("wall_outset", "boss_constant", "bore_constant"), "outset"),
    (("squash_", "first_layer_error", "first_layer_spread", "first_layer_fall", "height_offset"), "squash"),
)  # fmt: skip


def marked_events(logged: Iterable[Logged], name: str) -> tuple[Event, ...]:
    """Return the events a chart marks.

    Args:
        logged: of the machine, lot or instrument whose results are charted; each with the moment the store gave it.
        name: of the estimate that is charted.
    """
    every = list(logged)
    gone = {event.takes_back for event in every}
    found = []
    for event in every:
        effect = _effect(event.kind, name)
        counts = event.id not in gone and event.takes_back is None and event.kind not in _NO_EVENTS
        if event.at is not None and counts and effect is not Effect.STAYS:
            found.append(Event(event.at, _label(event), identified=effect is Effect.REDO))
    return tuple(found)


def _effect(kind: str, name: str) -> Effect:
    """Return what an event does to a result: to be done again, to be checked, or nothing."""
    if kind == _NOTE:
        return Effect.CHECK
    result = next((result for begins, result in _RESULTS if name.startswith(begins)), None)
    cell = shop_plan().spoils.get(kind, {}).get(result or "")
    return Effect.REDO if cell is None else cell.effect


def _label(event: Logged) -> str:
    return tr("{note}", note=event.note) if event.kind == _NOTE and event.note else event_words(event.kind)
