"""The mean range of normal values against the printed factors of control charts, and against drawn samples."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.measuring.normalrange import mean_range_ratio
from tests.published import printed, table


@pytest.mark.parametrize("row", table("normalrange_d2"), ids=lambda row: row["n"])
def test_the_printed_factors(row):
    assert mean_range_ratio(int(row["n"])) == printed(row["d2"])


def test_two_values_have_a_closed_form():
    assert mean_range_ratio(2) == pytest.approx(2 / math.sqrt(math.pi), rel=1e-12)
    assert mean_range_ratio(1) == pytest.approx(0, abs=1e-12)


def test_drawn_samples_agree():
    drawn = np.random.default_rng(4).standard_normal((20_000, 75))
    assert np.ptp(drawn, axis=1).mean() == pytest.approx(mean_range_ratio(75), abs=0.02)
    assert mean_range_ratio(75) == printed("4.81")


@pytest.mark.parametrize("n", [0, 100_001])
def test_other_samples_are_refused(n):
    with pytest.raises(InputError) as refused:
        mean_range_ratio(n)
    assert (refused.value.field, refused.value.message) == ("n", f"A sample has 1 to 100000 values; {n} is outside.")
