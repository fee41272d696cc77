"""When to measure again: weekly first, doubled after four quiet results, halved by a signal. Own computation."""

from datetime import UTC, datetime, timedelta

import pytest

from core.guidance.charted import main_quantities
from core.guidance.drift import judge_drift
from core.guidance.recheck import LONGEST, SHORTEST, plan_recheck
from core.measuring.runrules import Rule, Run
from core.records.rows import SeriesPoint

NOON = datetime(2026, 3, 2, 12, tzinfo=UTC)
WALL = next(quantity for quantity in main_quantities() if quantity.name == "wall_outset")


def planned(days, signals=()):
    """Plan after results kept at these days; `signals` are the places that break a rule."""
    points = [
        SeriesPoint(n, NOON + timedelta(days=day), 0.01 * (n % 3), 0.002, 9.0, "mm", 1, None)
        for n, day in enumerate(days)
    ]
    runs = tuple(Run(Rule.BEYOND, place, place, place, 1) for place in signals)
    return plan_recheck(judge_drift(WALL, points), runs)


@pytest.mark.parametrize(
    ("days", "signals", "wanted"),
    [
        ([0], (), 7),
        ([0, 7, 14], (), 7),
        ([0, 7, 14, 21], (), 14),
        (range(0, 49, 7), (), 14),
        (range(0, 56, 7), (), 28),
        ([0, 0.1, 0.2, 0.3, 0.4], (), 7),  # one occasion
        ([0, 7, 14, 21], (3,), 3.5),
        ([0, 7, 14, 21, 28], (2,), 3.5),
        ([0, 7, 14, 21, 28, 35, 42], (2,), 7),  # four quiet ones after it
        (range(0, 700, 7), (), LONGEST.days),
        (range(8), range(8), SHORTEST.days),
    ],
)
def test_the_interval(days, signals, wanted):
    plan = planned(list(days), signals)
    assert plan.interval == timedelta(days=wanted)
    assert plan.due == NOON + timedelta(days=list(days)[-1] + wanted)
