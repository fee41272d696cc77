"""Run rules against patterns made by hand and against how often chance breaks them."""


import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.measuring.runrules import Rule, Run, find_runs

R = Rule


def found(values, rule=None):
    return [run for run in find_runs(values, 0.0, 1.0) if rule in (None, run.rule)]


@pytest.mark.parametrize(
    ("values", "runs"),
    [
        ([0, 0.5, -0.5, 0.2], []),
        ([0, 3.0, 0], []),  # on the limit is not beyond it
        ([0, 3.1, 0], [Run(R.BEYOND, 1, 1, 1, 1)]),
        ([0, -3.1, -3.2, 0], [Run(R.BEYOND, 1, 1, 2, -1), Run(R.TWO_OF_THREE, 1, 2, 2, -1)]),
        ([0, 2.1, 0.5, 2.2, 0], [Run(R.TWO_OF_THREE, 1, 3, 3, 1)]),
        ([0, 2.1, 2.2, 0.5, 2.2], [Run(R.TWO_OF_THREE, 1, 2, 2, 1), Run(R.TWO_OF_THREE, 2, 4, 4, 1)]),
        ([2.1, 2.2, -1.0], [Run(R.TWO_OF_THREE, 0, 1, 1, 1)]),
        ([2.1, -2.2, 0], []),  # on different sides
        ([2.1, 0, 0, 2.2], []),  # two of four
        ([0.5, 0.6, 0.4, 0.6, 0.5, 0.4, 0.7], []),
        ([0.5, 0.6, 0.4, 0.6, 0.5, 0.4, 0.7, 0.1], [Run(R.ONE_SIDE, 0, 7, 7, 1)]),
        ([-0.5, -0.6, -0.4, -0.6, -0.5, -0.4, -0.7, -0.1, -0.2], [Run(R.ONE_SIDE, 0, 7, 8, -1)]),
        ([0.5, 0.6, 0.4, 0.0, 0.5, 0.4, 0.7, 0.1, 0.3], []),  # on the centre is on neither side
        ([-1, -0.5, 0, 0.5, 1], []),
        ([-1, -0.5, 0, 0.5, 1, 1.5], [Run(R.STEADILY, 0, 5, 5, 1)]),
        ([1.6, 1.0, 0.5, 0.2, -0.5, -1.0, -1.1, 0], [Run(R.STEADILY, 0, 5, 6, -1)]),
        ([-1, -0.5, 0, 0, 0.5, 1, 1.5], []),  # a step of nothing is not steadily up
    ],
)
def test_each_rule(values, runs):
    assert sorted(found(values), key=lambda run: (run.last, run.first)) == runs


@given(st.lists(st.floats(-5, 5), min_size=1, max_size=40))
def test_a_mirrored_series_breaks_the_mirrored_rules(values):
    mirrored = {(run.rule, run.first, run.completed, run.last, -run.side) for run in found([-v for v in values])}
    assert mirrored == {(run.rule, run.first, run.completed, run.last, run.side) for run in found(values)}


@given(st.lists(st.floats(-5, 5), min_size=1, max_size=40))
def test_a_run_lies_within_the_series_and_no_later_result_changes_when_it_was_completed(values):
    for run in found(values):
        assert 0 <= run.first <= run.completed <= run.last < len(values)
        until = found(values[: run.completed + 1])
        assert any((r.rule, r.side, r.completed) == (run.rule, run.side, run.completed) for r in until)


def run_lengths(rules, shift, runs, longest, seed):
    """Return how many results pass until one of the rules is broken, over many simulated series."""
    rng = np.random.default_rng(seed)
    lengths = []
    for _ in range(runs):
        broken = [run.completed for run in find_runs(rng.normal(shift, 1, longest), 0, 1) if run.rule in rules]
        lengths.append(min(broken) + 1)
    return np.array(lengths, dtype=float)


# Champ and Woodall 1987, table 1: average run lengths, rules 1; 1 and 2; 1 and 8 on one side; these together.
@pytest.mark.parametrize(
    ("rules", "shift", "published"),
    [
        ({R.BEYOND}, 0.0, 370.40),
        ({R.BEYOND}, 1.0, 43.89),
        ({R.BEYOND}, 2.0, 6.30),
        ({R.BEYOND, R.TWO_OF_THREE}, 0.0, 225.44),
        ({R.BEYOND, R.ONE_SIDE}, 0.0, 152.73),
        ({R.BEYOND, R.TWO_OF_THREE, R.ONE_SIDE}, 0.0, 122.05),
    ],
)
def test_how_often_chance_breaks_the_rules(rules, shift, published):
    lengths = run_lengths(rules, shift, 1200, int(20 * published), seed=11)
    assert abs(lengths.mean() - published) < 3.3 * lengths.std(ddof=1) / np.sqrt(lengths.size)


def test_chance_breaks_the_four_rules_about_once_in_a_hundred_results():
    lengths = run_lengths({R.BEYOND, R.TWO_OF_THREE, R.ONE_SIDE, R.STEADILY}, 0.0, 1200, 3000, seed=12)
    assert 85 < lengths.mean() < 115
