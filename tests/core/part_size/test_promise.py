"""Promises: the trade's numbers, planted spreads held at the stated confidence, and words where none can be given."""

import math

import numpy as np
import pytest
from scipy.special import ndtr

from core.errors import InputError
from core.measuring.tolerance import tolerance_mm
from core.part_size.promise import capability, cpk_lower, promise, rounded_up_mm
from core.part_size.spread import Spread, fit_spread

# common practice, no source: lower 95 % bounds of Cpk for n parts
BOUNDS = [
    (5, (0.37, 0.52, 0.67, 0.81)), (10, (0.58, 0.79, 1.00, 1.21)), (20, (0.71, 0.95, 1.21, 1.45)),
    (30, (0.76, 1.03, 1.30, 1.56)), (50, (0.82, 1.10, 1.38, 1.66)), (100, (0.87, 1.17, 1.47, 1.76)),
]  # fmt: skip


@pytest.mark.parametrize(("n", "bounds"), BOUNDS)
def test_lower_bounds_of_cpk(n, bounds):
    found = [cpk_lower(cpk, n) for cpk in (1.00, 1.33, 1.67, 2.00)]
    assert found == pytest.approx(bounds, abs=0.0101)


def of(n, bias, sd, shortest=50.0, longest=50.0):
    """A spread as n parts of one length, read once each, would give it."""
    between = np.array([[sd**2, 0.0], [0.0, 0.0]])
    return Spread(n, n, shortest, longest, (shortest + longest) / 2, bias, 0.0, math.nan, 0, between, np.zeros((2, 2)))


def test_the_trades_promise():
    """Common practice, no source: bias 0.03, sd 0.035, 20 parts: 0.126 for 95 %, 0.157 for 99 %, promised 0.20."""
    spread = of(20, 0.03, 0.035)
    assert promise(spread).tolerance_at(50.0) == pytest.approx(0.126, abs=1e-3)
    assert promise(spread, content_ratio=0.99).tolerance_at(50.0) == pytest.approx(0.157, abs=1e-3)
    assert rounded_up_mm(float(promise(spread, content_ratio=0.99).tolerance_at(50.0)[0])) == pytest.approx(0.20)
    guarded = promise(spread, guard_mm=0.03, guard_ratio=0.0008).tolerance_at(50.0)
    assert guarded == pytest.approx(promise(spread).tolerance_at(50.0) + 0.05)


def test_ten_parts_with_a_good_cpk_are_no_promise_on_cp():
    """Common practice, no source: mean 0.027, sd 0.02069, plus-minus 0.15: Cp 2.42, Cpk 1.98, lower bound about 1.2."""
    found = capability(of(10, 0.027, 0.02069), 50.0, 0.15)
    assert (found.cp_ratio, found.cpk_ratio) == (pytest.approx(2.42, abs=0.005), pytest.approx(1.98, abs=0.005))
    assert found.cpk_lower_ratio == pytest.approx(1.2, abs=0.01)
    assert found.cp_lower_ratio == pytest.approx(2.42 * math.sqrt(3.325 / 9), rel=2e-3)  # chi-squared table, 9 and 5 %


def printed(rng, pieces, lengths, *, between, within, bias=0.02, slope=-0.0005, scale=0.0):
    piece = np.repeat(np.arange(pieces), len(lengths))
    L = np.tile(lengths, pieces).astype(float)
    error = bias + slope * L + between * rng.standard_normal(pieces)[piece] + within * rng.standard_normal(L.size)
    error += scale * rng.standard_normal(pieces)[piece] * L
    return piece, L, error


@pytest.mark.parametrize(
    ("between", "within", "scale"),
    [(0.0, 0.03, 0.0), (0.02, 0.02, 0.0), (0.03, 0.005, 0.0), (0.01, 0.01, 2e-4), (0.0, 0.01, 4e-4)],
)
def test_promised_intervals_hold_their_share_as_often_as_they_say(between, within, scale):
    """At the longest length, where pieces that differ in scale spread most."""
    rng, lengths, kept = np.random.default_rng(2), (10, 40, 90, 120), 0
    sd, runs = math.hypot(between, within, 120.0 * scale), 300
    for _ in range(runs):
        spread = fit_spread(
            *printed(rng, 12, lengths, between=between, within=within, bias=0.0, slope=0.0, scale=scale)
        )
        k = promise(spread).factor_at(120.0)[0]
        middle, half = float(spread.bias_at(120.0)), k * float(spread.sd_at(120.0))
        kept += ndtr((middle + half) / sd) - ndtr((middle - half) / sd) >= 0.95
    assert kept / runs > 0.92  # planned 0.95; the interval of two components is known to be a little off either way


def test_a_class_is_held_up_to_a_length():
    good = promise(
        fit_spread(*printed(np.random.default_rng(4), 15, (10, 60, 150), between=0.01, within=0.01, slope=-0.0015))
    )
    assert good.held_up_to_mm("c") == 150.0
    up_to = good.held_up_to_mm("f")
    assert 10.0 < up_to < 150.0
    T = good.tolerance_at([up_to, up_to + 1.5])
    assert T[0] <= tolerance_mm(up_to, "f") and T[1] > tolerance_mm(up_to + 1.5, "f")
    assert good.finest_class(("f", "m", "c", "v")) == "m" and good.finest_class(("f",)) is None
    assert good.held_up_to_mm("IT5") is None
    assert np.all(np.diff(good.factor_at([80.0, 110.0, 150.0])) > 0)


def test_a_class_that_does_not_reach_the_lengths_is_not_held():
    beyond = of(20, 0.0, 0.001, 3000.0, 3500.0)
    assert promise(beyond).held_up_to_mm("f") is None  # defined up to 2000 mm


def test_fewer_than_ten_parts_promise_nothing_and_say_so():
    with pytest.raises(InputError, match="Only 4 parts: a spread can be shown, a tolerance cannot be promised") as told:
        promise(of(4, 0.0, 0.02))
    assert told.value.field == "piece" and "6 more" in told.value.message


def test_a_capability_needs_a_tolerance():
    with pytest.raises(InputError, match="above 0 mm"):
        capability(of(10, 0.0, 0.01), 50.0, 0.0)
