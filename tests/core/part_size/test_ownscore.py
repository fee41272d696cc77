"""The score of our own predictions: Wilson's interval, planted faults of our U, pieces that err as one."""

import numpy as np
import pytest
from scipy.stats import binomtest, chi2

from core.errors import InputError
from core.part_size.ownscore import lifetime_score


def test_the_factor_that_our_u_lacks_is_found():
    rng = np.random.default_rng(6)
    good = lifetime_score(rng.standard_normal((2000, 1)) / 1.96)
    assert good.share == pytest.approx(0.95, abs=0.015) and good.low < 0.95 < good.high
    assert good.factor_low < 1.0 < good.factor_high and not good.too_small
    small = lifetime_score(1.53 * rng.standard_normal((2000, 1)) / 1.96)  # 80 % inside: U should be 1.53 times as large
    assert small.share == pytest.approx(0.80, abs=0.03) and small.factor == pytest.approx(1.53, rel=0.05)
    assert small.too_small


def test_the_intervals_are_those_of_the_books():
    few = lifetime_score([[0.1]] * 8 + [[1.5]] * 2)
    wilson = binomtest(8, 10).proportion_ci(method="wilson")
    assert (few.low, few.high) == pytest.approx((wilson.low, wilson.high)) and (few.pieces, few.features) == (10, 10)
    squares = 1.96**2 * (8 * 0.1**2 + 2 * 1.5**2)
    expected = np.sqrt(squares / chi2.ppf([0.975, 0.025], 10))
    assert (few.factor_low, few.factor_high) == pytest.approx(expected, rel=1e-4)


def test_features_that_err_together_do_not_prove_our_u_wrong():
    """U is right, and all 20 features of a piece share one error: no shop in twenty hears that it is small."""
    rng = np.random.default_rng(7)
    told = [lifetime_score(np.repeat(rng.standard_normal((3, 1)) / 1.96, 20, axis=1)).too_small for _ in range(400)]
    assert np.mean(told) < 0.05
    assert lifetime_score([np.full(20, 3.0), []]).pieces == 1


def test_nothing_verified_has_no_score():
    for nothing in ([], [[], []]):
        with pytest.raises(InputError, match="No prediction was held") as told:
            lifetime_score(nothing)
        assert told.value.field == "value"
