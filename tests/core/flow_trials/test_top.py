"""Flow factor from scored top pads: the crossing, its Fieller interval, planted truth, every refusal."""

import math
from dataclasses import replace

import numpy as np
import pytest

from core.errors import InputError
from core.flow_trials.bead import Bead
from core.flow_trials.conditions import PrintConditions
from core.flow_trials.top import EYE_RATIO, JUDGES, LADDER_RATIO, measure_top
from core.quantity import coverage_factor

HERE = PrintConditions(Bead(0.45, 0.20), 0.4, 210.0, 4.0, 0.97, 240.0)
PADS = [*LADDER_RATIO, *LADDER_RATIO]
WHO = [JUDGES[0]] * len(LADDER_RATIO) + [JUDGES[1]] * len(LADDER_RATIO)


def scores(crossing, noise=(), per_ratio=50.0):
    noise = np.zeros(len(PADS)) if len(noise) == 0 else noise
    return per_ratio * (np.array(PADS) - crossing) + noise


def test_the_ladder_is_whole_and_shuffled():
    assert sorted(LADDER_RATIO) == pytest.approx(np.arange(-0.06, 0.061, 0.015).tolist())
    assert list(LADDER_RATIO) != sorted(LADDER_RATIO)


def test_the_zero_crossing_is_the_change():
    wobble = 0.1 * np.tile([1, -1], 9)
    found = measure_top(PADS, scores(0.02, wobble), WHO, HERE)
    assert found.crossing.value == pytest.approx(0.02, abs=1e-3)
    assert found.flow.value == pytest.approx(0.97 * (1 + found.crossing.value))
    assert found.flow.name == "flow_ratio_top"
    assert found.questions == ()
    assert found.line.slope == pytest.approx(50, rel=0.01)


def test_the_interval_is_that_of_fieller():
    """Its ends are where the confidence band of the line meets zero."""
    rng = np.random.default_rng(8)
    found = measure_top(PADS, scores(0.01, rng.normal(0, 0.7, len(PADS))), WHO, HERE)
    t, line = coverage_factor(found.line.dof), found.line
    x = np.linspace(-0.2, 0.2, 400_001)
    inside = np.abs(line.at(x)[0]) <= t * line.at(x)[1]
    half = (x[inside].max() - x[inside].min()) / 2
    assert found.crossing.u == pytest.approx(math.hypot(half / t, EYE_RATIO / math.sqrt(2)), rel=1e-4)


def test_intervals_cover_a_planted_factor():
    rng, hits = np.random.default_rng(13), 0
    for _ in range(2000):
        right = rng.uniform(-0.03, 0.03)
        eye = np.repeat(rng.normal(0, EYE_RATIO, 2), len(LADDER_RATIO))
        found = measure_top(PADS, scores(right + eye, rng.normal(0, 0.3, len(PADS)), per_ratio=30.0), WHO, HERE)
        hits += abs(found.crossing.value - right) <= found.crossing.U
    assert 0.93 < hits / 2000 < 0.975


def test_judges_that_see_different_zeros_are_asked_to_agree():
    apart = np.repeat([0.03, -0.03], len(LADDER_RATIO))
    (asks,) = measure_top(PADS, scores(apart), WHO, HERE).questions
    assert "The judges' zeros lie 6.0 % apart" in asks


@pytest.mark.parametrize(
    ("pads", "score", "who", "field", "row", "says"),
    [
        (PADS, -scores(0.0), WHO, "score", None, "fall with more flow"),
        (PADS, [1.0, -1.0] * 9, WHO, "score", None, "do not rise clearly"),
        (PADS, scores(-0.1, per_ratio=25.0), WHO, "score", None, "outside the pads from −6.0 to +6.0 %"),
        (PADS, scores(0.0)[:-1], WHO, "score", None, "its pad and its judge"),
        (PADS, [7.0, *scores(0.0)[1:]], WHO, "score", 0, "not between −5 (gaps) and +5"),
        ([1.5, *PADS[1:]], scores(0.0), WHO, "change_ratio", 0, "A pad at +150.0 % is no small change"),
        (PADS, scores(0.0), ["1"] * 18, "judge", None, "One pair of eyes"),
        ([0.0, 0.015, 0.03] * 2, [-1, 0, 1] * 2, ["1"] * 3 + ["2"] * 3, "score", None, "four different pads"),
        ([], [], [], "score", None, "four different pads"),
    ],
)
def test_refusals(pads, score, who, field, row, says):
    with pytest.raises(InputError) as refused:
        measure_top(pads, score, who, HERE)
    assert (refused.value.field, refused.value.row) == (field, row)
    assert says in refused.value.message


def test_the_base_is_the_factor_in_force():
    wobble = 0.1 * np.tile([1, -1], 9)
    found = [measure_top(PADS, scores(0.02, wobble), WHO, replace(HERE, in_force_ratio=k)).flow for k in (0.9, 1.0)]
    assert found[0].value == pytest.approx(0.9 * found[1].value)
    assert found[0].u == pytest.approx(0.9 * found[1].u)
