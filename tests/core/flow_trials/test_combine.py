"""Three estimates of one factor: weights, the conflict test, its words, and every answer."""

import math
from dataclasses import replace

import numpy as np
import pytest

from core.errors import InputError
from core.flow_trials.bead import Bead, BeadModel
from core.flow_trials.combine import FlowAnswer, KnownFlow, combine_flow, conflict_words, known_here
from core.flow_trials.conditions import PrintConditions
from core.quantity import Estimate

BEAD = Bead(0.45, 0.20)
HERE = PrintConditions(BEAD, 0.4, 210.0, 4.0, 1.0, 240.0)


def flow(name, value, u, dof=math.inf):
    return Estimate(f"flow_ratio_{name}", value, u, dof, "1")


def test_weights_are_inverse_squares():
    """Worked by hand: 0.94 ± 0.03 and 0.97 ± 0.01 weigh 1 to 9."""
    found = combine_flow([flow("wall", 0.94, 0.03), flow("mass", 0.97, 0.01)], 1.0)
    assert found.combined.value == pytest.approx(0.967)
    assert found.combined.u == pytest.approx(1 / math.sqrt(1 / 0.03**2 + 1 / 0.01**2))
    assert found.combined.name == "flow_ratio"
    assert found.chi2 == pytest.approx(0.03**2 / (0.03**2 + 0.01**2))
    assert found.limit == pytest.approx(3.841, abs=1e-3)
    assert found.change.value == pytest.approx(-0.033)


def test_one_estimate_stands_alone():
    found = combine_flow([flow("mass", 0.96, 0.006, 7.0)], 0.98)
    assert (found.combined.value, found.combined.u) == pytest.approx((0.96, 0.006))
    assert found.combined.dof == pytest.approx(7.0)
    assert found.change.value == pytest.approx(0.96 / 0.98 - 1)
    assert found.chi2 == pytest.approx(0, abs=1e-20)
    assert found.odd is None


def test_few_readings_widen_the_test():
    """On 2 degrees of freedom U is 4.3 u: what conflicts for a known u does not here."""
    sure = combine_flow([flow("wall", 0.90, 0.02), flow("mass", 0.98, 0.006)], 1.0)
    unsure = combine_flow([flow("wall", 0.90, 0.02, 2.0), flow("mass", 0.98, 0.006)], 1.0)
    assert sure.answer is FlowAnswer.CONFLICT
    assert unsure.answer is not FlowAnswer.CONFLICT


def test_the_conflict_test_errs_in_five_percent():
    rng, n, found = np.random.default_rng(14), 2000, 0
    for _ in range(n):
        drawn = [
            flow(name, 1 + u * rng.standard_normal(), u)
            for name, u in (("wall", 0.03), ("mass", 0.006), ("top", 0.015))
        ]
        found += combine_flow(drawn, 1.0).answer is FlowAnswer.CONFLICT
    assert 0.03 < found / n < 0.07


def test_the_combined_interval_covers():
    rng, hits = np.random.default_rng(15), 0
    for _ in range(2000):
        drawn = [flow(name, 0.97 + u * rng.standard_normal(), u) for name, u in (("wall", 0.03), ("mass", 0.01))]
        found = combine_flow(drawn, 1.0)
        hits += abs(found.combined.value - 0.97) <= found.combined.U
    assert 0.93 < hits / 2000 < 0.97


@pytest.mark.parametrize(
    ("estimates", "in_force", "answer"),
    [
        ([flow("mass", 0.986, 0.005)], 1.0, FlowAnswer.LEAVE),
        ([flow("mass", 0.984, 0.005)], 1.0, FlowAnswer.CHANGE),
        ([flow("mass", 1.016, 0.005)], 1.0, FlowAnswer.CHANGE),
        ([flow("wall", 0.95, 0.04)], 1.0, FlowAnswer.UNCLEAR),
        ([flow("mass", 0.96, 0.005)], 0.95, FlowAnswer.LEAVE),
        ([flow("mass", 0.84, 0.005)], 0.9, FlowAnswer.GO_BACK),
        ([flow("mass", 1.11, 0.005)], 1.11, FlowAnswer.GO_BACK),
        ([flow("mass", 0.85, 0.005)], 1.0, FlowAnswer.CHANGE),
        ([flow("wall", 0.91, 0.03), flow("mass", 0.995, 0.006), flow("top", 1.0, 0.015)], 1.0, FlowAnswer.CONFLICT),
    ],
)
def test_answers(estimates, in_force, answer):
    assert combine_flow(estimates, in_force).answer is answer


WALL, MASS, TOP = flow("wall", 1.0, 0.02), flow("mass", 1.0, 0.006), flow("top", 1.0, 0.015)


@pytest.mark.parametrize(
    ("estimates", "odd", "why"),
    [
        ([flow("wall", 0.91, 0.03), flow("mass", 0.995, 0.006), flow("top", 1.0, 0.015)], "wall",
         "The wall reads 0.04 mm too thick for the others: ridges"),
        ([replace(WALL, value=1.1), MASS, TOP], "wall", "too thin"),
        ([WALL, replace(MASS, value=0.9), TOP], "mass", "weighs too much for the others: skirt"),
        ([WALL, replace(MASS, value=1.1), TOP], "mass", "a hollow part or infill"),
        ([WALL, MASS, replace(TOP, value=0.93)], "top", "ridges too early"),
        ([WALL, MASS, replace(TOP, value=1.07)], "top", "gaps too long"),
        ([replace(WALL, value=0.92), MASS], "wall", "ridges under the jaws"),
        ([MASS, replace(TOP, value=0.93)], "top", "ridges too early"),
        ([replace(WALL, u=0.004), replace(MASS, value=1.06)], "mass", "slips"),
    ],
)  # fmt: skip
def test_a_conflict_names_the_odd_one_and_why(estimates, odd, why):
    found = combine_flow(estimates, 1.0)
    assert found.answer is FlowAnswer.CONFLICT
    assert found.odd.name == f"flow_ratio_{odd}"
    assert why in conflict_words(found, BEAD, 1.0)


def test_a_conflict_says_what_each_says():
    found = combine_flow(
        [flow("wall", 0.91, 0.03), flow("mass", 0.995, 0.006), flow("top", 1.0, 0.015)], 1.0
    )  # fmt: skip
    assert found.chi2 > 6 > found.limit
    says = conflict_words(found, BEAD, 1.0)
    assert says.startswith("The trials say: wall −9.0 %, mass −0.5 %, top +0.0 % (χ²")


def test_the_excess_of_the_wall_is_what_would_make_it_agree():
    """0.48 read where 0.45 was laid: 0.03 mm too thick."""
    wall = flow("wall", 0.9314, 0.01)
    found = combine_flow([wall, flow("mass", 1.0, 0.005)], 1.0)
    assert "0.03 mm too thick" in conflict_words(found, BEAD, 1.0)


def test_words_need_no_conflict():
    assert "wall +0.0 %" in conflict_words(combine_flow([WALL, MASS], 1.0), BEAD, 1.0)


def test_earlier_estimates_count_under_the_same_conditions():
    same = KnownFlow(MASS, replace(HERE, temperature_c=214.0), 4)
    own = KnownFlow(WALL, HERE, 3)
    hot = KnownFlow(TOP, replace(HERE, temperature_c=220.0), 5)
    model = KnownFlow(TOP, replace(HERE, bead=Bead(0.45, 0.2, BeadModel.RECTANGLE)), 6)
    used, left = known_here(HERE, "flow_ratio_wall", [own, same, hot, model])
    assert used == (same,)
    assert [str(words) for words in left] == [
        "Trial 5 is left out: it was found at 220 °C.",
        "Trial 6 is left out: it was found with the rectangle model; a factor is not carried between models.",
    ]


@pytest.mark.parametrize(
    ("estimates", "in_force", "field"),
    [([], 1.0, "estimates"), ([flow("mass", 1.0, 0.0)], 1.0, "estimates"), ([MASS], 0.0, "in_force_ratio"),
     ([MASS, flow("wall", 0.0, 0.01)], 1.0, "estimates")],
)
def test_refusals(estimates, in_force, field):
    with pytest.raises(InputError) as refused:
        combine_flow(estimates, in_force)
    assert refused.value.field == field
    assert refused.value.message
