"""Results against the filament used: planted wear, brackets of weighings, and each "cannot tell" in full."""

import math
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from core.errors import InputError
from core.guidance.charted import main_quantities
from core.guidance.drift import Event, judge_drift
from core.guidance.wear import Weighed, judge_wear, weighing_of
from core.measuring.straightline import fit_line
from core.records.rows import SeriesPoint, Trial, TrialState

BEGIN = datetime(2026, 3, 1, 8, tzinfo=UTC)
OUTSET = next(q for q in main_quantities() if q.name == "wall_outset")
CHECK = next(q for q in main_quantities() if q.name == "zero_outside")
LOTS = {1: "Slate", 2: "Moss"}
ALONE = {1: frozenset({1}), 2: frozenset({1})}


def day(n):
    return BEGIN + timedelta(days=n)


def points(values, lots=None, u=0.002):
    lots = lots or [1] * len(values)
    return [
        SeriesPoint(n, day(n), value, u, 9.0, "mm", 1, lots[n]) for n, value in enumerate(values)
    ]  # fmt: skip


def weighed(lot, *net, u=0.5, begin=-0.5):
    """Weighings half a day before each result."""
    return [Weighed(lot, day(begin + n), mass, u) for n, mass in enumerate(net)]


def wear(results, weighings, events=(), quantity=OUTSET, machines=ALONE):
    return judge_wear(judge_drift(quantity, results, events), weighings, LOTS, machines)


def test_a_slope_per_kilogram_is_found_and_sent_to_the_nozzle():
    """100 g a day on the same spool; the outset grows by 0.1 mm/kg."""
    net = [1000.0 - 100.0 * n for n in range(8)]
    middle = (np.arange(7) * 100.0 + 50.0) / 1000.0
    found = wear(points((0.02 + 0.1 * middle).tolist()), weighed(1, *net))
    assert found.used_kg == pytest.approx(middle)
    assert found.u_kg == pytest.approx([math.sqrt(0.5**2 * 2 + 100**2 / 12) / 1000] * 7)
    assert found.per_kg.value == pytest.approx(0.1) and found.per_kg.unit == "mm/kg" and found.left_out == 0
    assert found.per_kg.significant
    assert found.says == "It changes with the filament used: look at the nozzle for wear, filled filament above all."


def test_the_larger_of_stated_and_seen_uncertainty_counts():
    net = [1000.0 - 100.0 * n for n in range(8)]
    values = np.array([0.02, 0.05, 0.01, 0.04, 0.00, 0.05, 0.02])
    found = wear(points(values.tolist()), weighed(1, *net))
    x = (np.arange(7) * 100.0 + 50.0) / 1000.0
    assert found.per_kg.u == pytest.approx(fit_line(x, values).u_slope) and found.per_kg.dof == 5
    assert found.says == "No change with the filament used is proved."
    coarse = wear(points(values.tolist(), u=0.2), weighed(1, *net))
    assert math.isinf(coarse.per_kg.dof) and coarse.per_kg.U > found.per_kg.U


def test_a_second_spool_goes_on_where_the_first_ended():
    lots = [1, 1, 1, 2, 2]
    weighings = [*weighed(1, 1000.0, 900.0, 800.0, 700.0), *weighed(2, 500.0, 450.0, 400.0, begin=2.5)]
    found = wear(points([0.02, 0.03, 0.02, 0.03, 0.02], lots), weighings)
    assert found.used_kg == pytest.approx([0.05, 0.15, 0.25, 0.325, 0.375])


def test_a_new_nozzle_begins_anew():
    net = [1000.0 - 100.0 * n for n in range(8)]
    found = wear(points([0.02] * 3 + [0.05, 0.06, 0.05, 0.06]), weighed(1, *net), [Event(day(2.7), "new nozzle")])
    assert [p.trial_id for p in found.points] == [3, 4, 5, 6]


def test_results_that_no_weighing_brackets_are_counted_out():
    results = [*points([0.02, 0.03, 0.02, 0.03, 0.02]), replace(points([0.02] * 6)[5], lot_id=None)]
    found = wear(results, weighed(1, 1000.0, 900.0, 800.0, 700.0))
    assert len(found.points) == 3 and found.left_out == 3


def text_of(results, weighings, **more):
    with pytest.raises(InputError) as refused:
        wear(results, weighings, **more)
    assert refused.value.field == "used"
    return str(refused.value.message)


def test_what_cannot_be_told_names_the_weighing_that_would():
    three = points([0.02, 0.03, 0.02])
    assert text_of(three, []) == (
        "Only 0 of 3 results lie between two weighings of their spool, 3 are the least. Weigh the spool of Slate on "
        "page Lots, before the first print and after the last."
    )
    assert text_of(three, weighed(1, 1000.0, 900.0)).startswith("Only 1 of 3 results lie between two weighings")
    assert "Weigh the spool of Slate on" in text_of(three, weighed(1, 1000.0, 900.0))
    assert text_of([replace(p, lot_id=None) for p in three], []) == (
        "These results have no lot. Choose the lot before a trial is kept, and weigh its spool."
    )
    assert text_of(three, weighed(1, 1000.0, 1000.0, 1000.0, 1000.0)) == (
        "Too little filament was used between these results. Go on, and weigh the spool again."
    )
    assert text_of(three, weighed(1, 300.0, 1000.0)) == (
        "Slate weighed 300 g of filament, and 1000 g later: another spool? Make it a lot of its own on page Lots, or "
        "withdraw the wrong weighing."
    )
    assert text_of(three, weighed(1, 1000.0, 900.0, 800.0, 700.0), machines={1: frozenset({1, 2})}) == (
        "Slate was printed on more than one machine, so its weighings do not tell what went through this nozzle. Keep "
        "a spool to one machine while its wear is followed."
    )
    assert text_of(three, [], quantity=CHECK) == "Filament does not wear an instrument; choose another chart."


def test_a_weighing_out_of_reach_is_refused():
    with pytest.raises(InputError) as refused:
        wear(points([0.02, 0.03, 0.02]), weighed(1, 1e200, 900.0, 800.0, 700.0))
    assert refused.value.field == "net_g"


WEIGHING = Trial(
    "drying", lot_id=1, state=TrialState.KEPT, kept_at=BEGIN, conditions={"spool_mass_g": 210.0},
    readings={"field": ["weighing.before_g", "weighing.now_g", "weighing.u_balance_g"], "raw": ["", "712,5", "0.5"]},
)  # fmt: skip


def test_a_kept_weighing_is_read_as_it_was_typed():
    assert weighing_of(WEIGHING) == Weighed(1, BEGIN, 502.5, 0.5)


@pytest.mark.parametrize(
    "changed",
    [
        {"subject": "sizeerror"},
        {"state": TrialState.WITHDRAWN},
        {"lot_id": None},
        {"kept_at": None},
        {"conditions": {}},
        {"readings": {"field": ["weighing.now_g"], "raw": [""]}},
        {"readings": {}},
    ],
)
def test_other_trials_are_no_weighing(changed):
    assert weighing_of(replace(WEIGHING, **changed)) is None
