"""The knee of a broken stick: against scipy, on planted truth, and refusing to see one in noise."""

import math
from dataclasses import replace

import numpy as np
import pytest
from scipy.optimize import curve_fit

from core.errors import InputError
from core.measuring.brokenstick import fit_broken_stick, stick_band

X = np.repeat(np.arange(2.0, 25.0, 2.0), 2)


def stick(x, level, slope, knee):
    return level + slope * np.maximum(np.asarray(x) - knee, 0.0)


@pytest.mark.parametrize("seed", range(8))
def test_the_fit_is_that_of_scipy(seed):
    rng = np.random.default_rng(seed)
    y = stick(X, 0.99, -0.012, 11.0) + rng.normal(0, 0.004, X.size)
    found = fit_broken_stick(X, y, -0.02)
    (level, slope, knee), _ = curve_fit(stick, X, y, p0=(0.99, -0.01, 10.9))
    ssr = np.sum((y - stick(X, level, slope, knee)) ** 2)
    assert found.sd**2 * found.dof <= ssr * 1.002
    assert found.level == pytest.approx(level, abs=5e-4)
    assert found.knee.at == pytest.approx(knee, abs=0.2)


def test_intervals_of_knee_and_change_cover_the_truth():
    rng = np.random.default_rng(1)
    hits = np.zeros(2)
    for _ in range(400):
        y = stick(X, 0.99, -0.012, 11.0) + rng.normal(0, 0.004, X.size)
        found = fit_broken_stick(X, y, -0.02)
        place = 11.0 + 0.02 / 0.012
        hits += found.knee.low <= 11.0 <= found.knee.high, found.changed.low <= place <= found.changed.high
    assert np.all((hits / 400 > 0.93) & (hits / 400 < 0.97))


def test_the_band_covers_the_planted_line():
    """Before the knee and beyond it; at the very kink, where the line is not smooth, some 2 % of runs less."""
    rng, places = np.random.default_rng(9), np.array([4.0, 18.0, 11.0])
    true, hits = stick(places, 0.99, -0.012, 11.0), np.zeros(3)
    for _ in range(400):
        y = stick(X, 0.99, -0.012, 11.0) + rng.normal(0, 0.004, X.size)
        low, high = stick_band(X, y, fit_broken_stick(X, y, -0.02), places)
        hits += (low <= true) & (true <= high)
    assert np.all((hits[:2] / 400 > 0.93) & (hits[:2] / 400 < 0.97))
    assert 0.90 < hits[2] / 400 < 0.97


def test_the_band_of_a_level_is_that_of_its_mean():
    """Student's interval of a mean (JCGM 100:2008 4.2 and G.3): t(23) = 2.0687."""
    y = 0.99 + np.tile([0.004, -0.004], 12)
    found = fit_broken_stick(X, y, -0.02)
    low, high = stick_band(X, y, found, [5.0, 20.0])
    assert not found.seen
    assert (high - low) / 2 == pytest.approx(2.0687 * np.std(y, ddof=1) / math.sqrt(24), rel=1e-4)
    assert (high + low) / 2 == pytest.approx(0.99)


def test_noise_alone_shows_no_knee():
    rng = np.random.default_rng(2)
    seen = sum(fit_broken_stick(X, 0.99 + rng.normal(0, 0.004, X.size), -0.02).seen for _ in range(400))
    assert seen <= 12


def test_a_rise_is_no_fall():
    y = stick(X, 0.99, +0.012, 11.0) + np.tile([0.001, -0.001], 12)
    found = fit_broken_stick(X, y, -0.02)
    assert not found.seen
    assert math.isinf(found.changed.at)
    assert np.ptp(found.mean(X)) == 0


def test_a_known_level_is_kept():
    y = stick(X, 0.0, 0.9, 5.0) + np.tile([0.002, -0.002], 12)
    found = fit_broken_stick(X, y, 0.1, level=0.0)
    assert found.level == 0.0
    assert found.u_level == 0.0
    assert found.slope == pytest.approx(0.9, rel=0.01)
    assert found.mean(10.0) == pytest.approx(0.9 * 5.0, rel=0.01)


def test_a_change_that_lies_beyond_the_readings_is_not_bounded():
    rng = np.random.default_rng(4)
    y = stick(X, 0.99, -0.004, 16.0) + rng.normal(0, 0.001, X.size)
    found = fit_broken_stick(X, y, -0.5)
    assert found.seen
    assert found.changed.high == math.inf or found.changed.low > X.max()


def test_the_band_of_exact_readings_is_the_stick():
    y = np.where(X > 3.0, 1.0 - 0.5 * (X - 3.0), 1.0)
    stick = fit_broken_stick(X, y, -0.5)
    for near in (stick, replace(stick, sd=0.0)):
        low, high = stick_band(X, y, near, X)
        assert np.all(low <= high) and np.allclose((low + high) / 2, y, atol=0.02)


def test_exact_readings_give_the_exact_knee():
    found = fit_broken_stick(X, stick(X, 1.0, -0.02, 12.0), -0.02)
    assert found.knee.at == pytest.approx(12.0, abs=1e-6)
    assert found.changed.at == pytest.approx(13.0, abs=0.05)
    assert found.changed.low <= 13.05


MISSING = "A reading is missing or not a finite number; remove or retype it."
FEW = "A knee is looked for in 5 readings at 4 places or more; take more."
NO_CHANGE = "The change that is looked for must not be zero."


@pytest.mark.parametrize(
    ("x", "y", "change", "field", "words"),
    [
        ([1, 2, 3, 4], [1, 1, 1, 1], -0.1, "x", FEW),
        ([1, 1, 2, 2, 3], [1, 1, 1, 1, 1], -0.1, "x", FEW),
        ([1, 2, 3, 4, 5], [1, 1, math.nan, 1, 1], -0.1, "y", MISSING),
        ([1, 2, math.inf, 4, 5], [1, 1, 1, 1, 1], -0.1, "y", MISSING),
        ([1, 2, 3, 4, 5], [1, 1, 1, 1], -0.1, "y", MISSING),
        ([1, 2, 3, 4, 5], [1, 1, 1, 1, 1], 0.0, "change", NO_CHANGE),
        ([1, 2, 3, 4, 5], [1, 1, 1, 1, 1], math.inf, "change", NO_CHANGE),
    ],
)
def test_refusals(x, y, change, field, words):
    with pytest.raises(InputError) as refused:
        fit_broken_stick(x, y, change)
    assert (refused.value.field, refused.value.message) == (field, words)
