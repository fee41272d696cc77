"""Flow ceiling on planted knees, its trend over the temperature, and its refusals."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.flow_trials.ceiling import (
    KnownCeiling,
    ceiling_far,
    ceiling_near,
    delivered_share,
    fit_ceiling,
    highest_speed_mm_s,
)
from core.quantity import Estimate

RATE = np.repeat(np.arange(2.0, 25.0, 2.0), 2)


def shares(ceiling, rng, drop=0.01, sd=0.003):
    """Shares whose fall reaches 2 % of 0.98 at `ceiling`."""
    knee = ceiling - 0.02 * 0.98 / drop
    return 0.98 - drop * np.maximum(RATE - knee, 0.0) + rng.normal(0, sd, RATE.size)


def test_the_share_is_mass_over_what_was_commanded():
    """200 mm of 2.98 g/m weigh 0.596 g."""
    assert delivered_share([0.596], 200.0, 2.98).tolist() == [pytest.approx(1.0)]


def test_a_planted_ceiling_is_found_at_the_nominal_rate():
    rng = np.random.default_rng(9)  # 3000 runs: 95.2 %
    hits = reached = 0
    for _ in range(400):
        (at,) = fit_ceiling(RATE, shares(12.0, rng), [230.0] * RATE.size, hot_end_limit_c=300.0).at
        reached += at.ceiling is not None
        hits += at.low_mm3_s <= 12.0 <= at.high_mm3_s
    assert reached > 395
    assert 0.93 < hits / 400 < 0.97


@pytest.mark.parametrize(("drop", "sd"), [(0.02, 0.002), (0.05, 0.0005)])
def test_a_steep_fall_read_well_is_covered_too(drop, sd):
    """Few strands, a steep fall, a good balance: the interval is narrower than the steps of a coarse search."""
    rng, rate = np.random.default_rng(31), np.arange(2.0, 21.0, 2.0)
    hits = 0
    for _ in range(400):
        true = rng.uniform(9.0, 14.0)
        share = 0.98 - drop * np.maximum(rate - true + 0.02 * 0.98 / drop, 0.0) + rng.normal(0, sd, rate.size)
        (at,) = fit_ceiling(rate, share, [230.0] * rate.size, hot_end_limit_c=300.0).at
        hits += abs(at.ceiling.value - true) <= at.ceiling.U
    assert 0.92 < hits / 400 < 0.98


def test_several_temperatures_have_names_and_a_trend_of_1_5_percent_for_a_kelvin():
    rng = np.random.default_rng(6)
    temperatures = (210.0, 230.0, 250.0)
    true = [9.0 * math.exp(0.015 * (t - 210.0)) for t in temperatures]
    rate = np.tile(RATE, 3)
    share = np.concatenate([shares(c, rng) for c in true])
    found = fit_ceiling(rate, share, np.repeat(temperatures, RATE.size), hot_end_limit_c=300.0)
    assert [e.name for e in found.estimates()] == ["flow_ceiling_210c", "flow_ceiling_230c", "flow_ceiling_250c"]
    assert abs(found.trend.slope - 0.015) < 3 * found.trend.u_slope
    assert found.estimates()[0].unit == "mm3/s"


def test_two_temperatures_have_no_trend_and_nearby_readings_are_one():
    rng = np.random.default_rng(7)
    rate, share = np.tile(RATE, 2), np.concatenate([shares(10.0, rng), shares(12.0, rng)])
    found = fit_ceiling(rate, share, np.repeat([219.0, 231.0], RATE.size), hot_end_limit_c=300.0)
    assert found.trend is None
    near = fit_ceiling(RATE, shares(10.0, rng), np.tile([229.0, 230.5], 12), hot_end_limit_c=300.0)
    assert len(near.at) == 1


def test_not_reached_says_so_and_keeps_to_what_was_tried():
    rng = np.random.default_rng(8)
    (at,) = fit_ceiling(RATE, 0.98 + rng.normal(0, 0.003, RATE.size), [230.0] * 24, hot_end_limit_c=300.0).at
    assert at.ceiling is None
    assert highest_speed_mm_s(at, 0.0814).value == pytest.approx(0.8 * 24.0 / 0.0814)


def test_speed_for_a_bead():
    """0.8 x 11 mm3/s on a bead of 0.0814 mm2: 108 mm/s."""
    rng = np.random.default_rng(9)
    (at,) = fit_ceiling(RATE, shares(11.0, rng), [230.0] * 24, hot_end_limit_c=300.0).at
    speed = highest_speed_mm_s(at, 0.0814)
    assert abs(speed.value - 108.1) < speed.U
    assert speed.u / speed.value == pytest.approx(at.ceiling.u / at.ceiling.value)


def test_a_kept_ceiling_holds_within_five_kelvin():
    known = [KnownCeiling(t, Estimate("flow_ceiling", 10.0, 0.3, 9.0, "mm3/s"), 1) for t in (210.0, 230.2, 236.0)]
    assert ceiling_near(known, 232.0).temperature_c == 230.2
    assert ceiling_near(known, 235.2).temperature_c == 236.0
    assert ceiling_near(known, 215.0).temperature_c == 210.0
    assert ceiling_near(known, 220.0) is None
    assert ceiling_near([], 220.0) is None
    assert "measured at 210 °C: outside ±5 K of it nothing is told at 219 °C" in ceiling_far(known, 219.0)
    assert ceiling_far(known, 232.0) is None
    assert ceiling_far([], 232.0) is None


@pytest.mark.parametrize(
    ("rate", "share", "temperature", "field", "words"),
    [
        ([], [], [], "rate_mm3_s", "Every strand"),
        ([2.0], [1.0, 1.0], [230.0], "rate_mm3_s", "Every strand"),
        ([0.0], [1.0], [230.0], "rate_mm3_s", "between 0 and 200"),
        ([2.0], [1.0], [285.0], "temperature_c", "Refused"),
        ([2.0], [1.05], [230.0], "share_ratio", "weigh again"),
    ],
)
def test_refusals(rate, share, temperature, field, words):
    with pytest.raises(InputError) as refused:
        fit_ceiling(rate, share, temperature, hot_end_limit_c=240.0)
    assert refused.value.field == field
    assert words in refused.value.message


@pytest.mark.parametrize(
    ("mass", "length", "per_length", "field"),
    [
        ([0.6], 0.0, 2.98, "length_mm"),
        ([0.6], 200.0, math.nan, "mass_per_length_g_m"),
        ([0.6, -1.0], 200.0, 2.98, "mass_g"),
    ],
)
def test_shares_that_cannot_be_are_refused(mass, length, per_length, field):
    with pytest.raises(InputError) as refused:
        delivered_share(mass, length, per_length)
    assert refused.value.field == field


def test_speed_refuses_impossible_beads_and_shares():
    rng = np.random.default_rng(9)
    (at,) = fit_ceiling(RATE, shares(11.0, rng), [230.0] * 24, hot_end_limit_c=300.0).at
    for area, safety, field in ((0.0, 0.8, "bead_area_mm2"), (0.08, 1.2, "safety_ratio")):
        with pytest.raises(InputError) as refused:
            highest_speed_mm_s(at, area, safety)
        assert refused.value.field == field
