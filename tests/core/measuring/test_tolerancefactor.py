"""Tolerance factors against published tables, an approximation of the handbook, and simulation."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.measuring.tolerancefactor import two_sided_factor
from tests.published import printed, table


@pytest.mark.parametrize("row", table("tolerancefactor_two_sided"), ids=lambda row: row["n"])
def test_the_published_factors_come_out(row):
    n = int(row["n"])
    assert two_sided_factor(n, n - 1, float(row["content"]), float(row["confidence"])) == printed(row["k2"])


def test_the_handbooks_example_within_its_approximation():
    """NIST/SEMATECH e-Handbook 7.2.6.3, from memory: 43 wafers, 90 % with 99 % confidence, k2 = 2.217 (Howe)."""
    howe = 1.644854 * math.sqrt(42 * (1 + 1 / 43) / 23.650)
    assert howe == printed("2.217")
    assert two_sided_factor(43, 42, 0.90, 0.99) == pytest.approx(howe, rel=3e-3)


# common practice, no source: the trade's table of promises, by Howe's approximation
TRADE = [(5, 5.09, 6.69), (10, 3.38, 4.44), (20, 2.75, 3.62), (30, 2.55, 3.35), (50, 2.38, 3.13), (100, 2.23, 2.93)]


@pytest.mark.parametrize(("n", "of_95", "of_99"), TRADE)
def test_the_trades_table_within_its_approximation(n, of_95, of_99):
    assert two_sided_factor(n, n - 1) == pytest.approx(of_95, rel=6e-3)
    assert two_sided_factor(n, n - 1, 0.99) == pytest.approx(of_99, rel=1.5e-2)


def test_a_known_mean_needs_less_and_its_factor_is_closed():
    from scipy.special import chdtri, ndtri

    assert two_sided_factor(math.inf, 9) == pytest.approx(ndtri(0.975) * math.sqrt(9 / chdtri(9, 0.95)), rel=1e-9)
    assert two_sided_factor(2, 9) > two_sided_factor(10, 9) > two_sided_factor(math.inf, 9)


def test_intervals_hold_their_share_as_often_as_they_say():
    from scipy.special import ndtr

    rng, n = np.random.default_rng(1), 8
    x = rng.standard_normal((20_000, n))
    mean, half = x.mean(axis=1), two_sided_factor(n, n - 1, 0.9, 0.95) * x.std(axis=1, ddof=1)
    held = ndtr(mean + half) - ndtr(mean - half) >= 0.9
    assert np.mean(held) == pytest.approx(0.95, abs=0.006)


@pytest.mark.parametrize(
    ("arguments", "field"),
    [
        ((0, 9), "n"),
        ((10, 0), "dof"),
        ((10, math.inf), "dof"),
        ((9, 8, 1.0), "content"),
        ((9, 8, 0.9, 0), "confidence"),
    ],
)
def test_what_makes_no_interval_is_refused(arguments, field):
    with pytest.raises(InputError) as told:
        two_sided_factor(*arguments)
    assert told.value.field == field
