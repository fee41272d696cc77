"""When to measure again what is charted: more often after a signal, less often while nothing changes.

It begins with a week. After four results in control it doubles, up to three months; after a signal it halves, down to a
day. Results kept within a day of each other are one occasion. Common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime, timedelta

from core.guidance.drift import Drift
from core.measuring.runrules import Run

FIRST, LONGEST, SHORTEST = timedelta(days=7), timedelta(days=90), timedelta(days=1)
_SAME_OCCASION = timedelta(days=1)
_STEADY = 4  # results in control before the interval doubles


@dataclass(frozen=True, slots=True)
class Recheck:
    """How long to wait after the newest result, and until when."""

    interval: timedelta
    due: datetime


def plan_recheck(drift: Drift, runs: tuple[Run, ...]) -> Recheck:
    """Return when the quantity is to be measured again.

    Args:
        drift: the judged results.
        runs: the signals of the chart that is looked at.
    """
    signals = {place for run in runs for place in range(run.completed, run.last + 1)}
    interval, steady, before = FIRST, 0, None
    for place, point in enumerate(drift.points):
        if place in signals:
            interval, steady = max(interval / 2, SHORTEST), 0
        elif before is None or point.kept_at - before >= _SAME_OCCASION:
            steady += 1
        if steady == _STEADY:
            interval, steady = min(interval * 2, LONGEST), 0
        before = point.kept_at
    return Recheck(interval, drift.points[-1].kept_at + interval)
