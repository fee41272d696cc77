"""A settling reading against scipy's least squares, and what is told where it has not settled."""

import math

import numpy as np
import pytest
from scipy.optimize import curve_fit

from core.errors import InputError
from core.measuring.decay import fit_decay

T = np.arange(0.0, 31.0, 2.0)


def curve(t, end, start, tau):
    return end + start * np.exp(-t / tau)


@pytest.mark.parametrize("tau", [2.0, 5.0, 9.0])
def test_the_fit_is_that_of_a_general_library(tau):
    y = curve(T, 0.3, -0.12, tau) + np.random.default_rng(int(tau)).normal(0, 0.002, T.size)
    (end, start, other), _ = curve_fit(curve, T, y, p0=(0.3, -0.1, 5.0))
    fit = fit_decay(T, y)
    assert fit.tau == pytest.approx(other, rel=0.005)  # the step of the search
    assert fit.end == pytest.approx(end, abs=2e-4)
    assert fit.start == pytest.approx(start, abs=5e-4)
    assert fit.sd == pytest.approx(math.sqrt(np.sum((y - curve(T, end, start, other)) ** 2) / (T.size - 3)), rel=1e-3)
    assert fit.seen and fit.dof == T.size - 3
    assert fit.mean(T) == pytest.approx(curve(T, end, start, other), abs=1e-3)


def test_the_interval_holds_the_true_value_as_often_as_it_says():
    rng = np.random.default_rng(4)
    inside = 0
    for _ in range(600):
        fit = fit_decay(T, curve(T, 0.1, 0.1, 6.0) + rng.normal(0, 0.004, T.size))
        inside += fit.low <= 6.0 <= fit.high
    assert 0.925 <= inside / 600 <= 0.972


def test_a_late_start_keeps_its_origin():
    fit = fit_decay(T + 10.0, curve(T + 10.0, 0.0, 1.0, 5.0))
    assert (fit.start, fit.tau) == pytest.approx((1.0, 5.0), rel=0.01)


def test_a_straight_drift_has_no_upper_end_and_a_level_none_at_all():
    noise = np.random.default_rng(2).normal(0, 0.002, T.size)
    straight = fit_decay(T, 0.004 * T + noise)
    assert straight.seen and math.isinf(straight.high)
    level = fit_decay(T, noise)
    assert not level.seen
    sudden = fit_decay(T, np.where(T > 0, 0.0, 1.0) + noise)
    assert sudden.low == 0.0


def test_exact_readings_have_an_interval_of_no_width():
    fit = fit_decay(T, curve(T, 0.0, 1.0, 5.0))
    assert fit.low <= fit.tau <= fit.high
    assert not fit_decay(T, np.zeros(T.size)).seen


@pytest.mark.parametrize(
    "t, y, field",
    [
        (T[:5], T[:5], "t"),
        (np.zeros(8), np.arange(8.0), "t"),
        (T, T[:-1], "y"),
        (T, np.where(T > 4, np.nan, T), "y"),
        (np.full((2, 8), 1.0), np.full((2, 8), 1.0), "y"),
    ],
)
def test_refusals(t, y, field):
    with pytest.raises(InputError) as refused:
        fit_decay(t, y)
    assert refused.value.field == field
    assert "reading" in refused.value.message
