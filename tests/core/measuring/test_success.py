"""The place from which specimens succeed: against an independent penalised fit, and against what was planted."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.measuring.success import fit_success

STEPS = np.array([0.4, 0.8, 1.2, 1.6, 2.0])


def by_optimizer(x, y, share=0.8):
    """Firth's penalised likelihood climbed by scipy in constant and slope, not over a grid of places."""
    from scipy.optimize import minimize

    def loss(parameters):
        eta = parameters[0] + parameters[1] * x
        weight = np.exp(-np.logaddexp(0, eta) - np.logaddexp(0, -eta))
        design = np.column_stack([np.ones_like(x), x])
        likelihood = -np.sum(np.where(y, np.logaddexp(0, -eta), np.logaddexp(0, eta)))
        return -likelihood - 0.5 * np.linalg.slogdet(design.T @ (weight[:, np.newaxis] * design))[1]

    options = {"xatol": 1e-8, "fatol": 1e-11, "maxiter": 4000}
    constant, slope = minimize(loss, [0.0, 1.0], method="Nelder-Mead", options=options).x
    return (math.log(share / (1 - share)) - constant) / slope


@pytest.mark.parametrize("wins", [(0, 0, 6, 6, 6), (0, 1, 3, 5, 6), (0, 2, 2, 6, 6), (1, 1, 4, 5, 6)])
@pytest.mark.parametrize("share", [0.5, 0.8])
def test_the_place_is_that_of_an_independent_fit(wins, share):
    x = np.repeat(STEPS, 6)
    y = np.concatenate([np.arange(6) < n for n in wins])
    found = fit_success(x, y, share)
    assert found.at == pytest.approx(by_optimizer(x, y, share), abs=0.01)  # the grid's places lie 0.008 apart
    assert found.low < found.at < found.high and found.share == share


def test_the_planted_place_lies_in_the_interval():
    """Seeded; 2000 runs of this kind: 92 to 98 %."""
    rng = np.random.default_rng(3)
    x, hits, runs = np.repeat(STEPS, 6), 0, 0
    for _ in range(100):
        y = rng.random(x.size) < 1 / (1 + np.exp(-(math.log(4) + 6 * (x - 1.2))))
        found = fit_success(x, y)
        hits, runs = hits + (found.low <= 1.2 <= found.high), runs + 1
    assert 0.88 * runs <= hits < runs


def test_few_specimens_leave_the_end_open():
    found = fit_success(np.repeat(STEPS, 2), [0, 0, 0, 0, 1, 1, 0, 0, 1, 1])
    assert math.isinf(found.high) and found.low > 0.4
    other = fit_success(np.repeat(STEPS, 2), [1, 1, 0, 1, 1, 1, 1, 1, 1, 1])
    assert math.isinf(other.low)


@pytest.mark.parametrize(
    ("step", "success", "field"),
    [
        ([1, 2, 3], [1, 1, 1], "success"),
        ([1, 2, 3], [0, 0, 0], "success"),
        ([1, 2], [0, 1, 1], "success"),
        ([2, 2], [0, 1], "step"),
    ],
)
def test_refused(step, success, field):
    with pytest.raises(InputError) as error:
        fit_success(step, success)
    assert error.value.field == field
