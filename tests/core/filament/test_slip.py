"""Slip against the rate: planted knees, what no fall says, shares with their uncertainty, and every refusal."""

import math
from dataclasses import replace

import numpy as np
import pytest

from core.errors import InputError
from core.filament.slip import HotFeed, SlipAnswer, measure_slip

RATE = np.repeat(np.arange(2.0, 21.0, 2.0), 2)
HOT = HotFeed(0.4, 240.0, 300.0)


def shares(knee, rng, level=0.99, loss=0.004, sd=0.002):
    return level - loss * np.maximum(RATE - knee, 0.0) + rng.normal(0, sd, RATE.size)


def test_up_to_the_knee_no_slip_is_proved_and_beyond_its_interval_it_is():
    """The end of the knee's 95 % interval lies beyond the planted knee in all but 2.5 % of trials."""
    rng, proved, beyond = np.random.default_rng(21), 0, 0
    for _ in range(200):
        found = measure_slip(RATE, shares(10.0, rng), u_reading_ratio=0.002)
        proved += found.answer is SlipAnswer.PROVED
        beyond += found.free_to_mm3_s >= 10.0
        assert found.free_to_mm3_s <= 20.0
    assert proved == 200
    assert 0.95 < beyond / 200 <= 1.0


def test_the_rate_at_which_half_a_percent_is_lost_covers_the_planted_one():
    rng, hits = np.random.default_rng(22), 0
    place = 10.0 + 0.005 * 0.99 / 0.004
    for _ in range(250):
        loss = measure_slip(RATE, shares(10.0, rng), u_reading_ratio=0.002).loss
        hits += abs(loss.value - place) <= loss.U
    assert 0.92 < hits / 250 < 0.985


def test_alike_at_all_rates_shows_no_slip():
    rng = np.random.default_rng(23)
    found = measure_slip(RATE, shares(10.0, rng, loss=0.0), u_reading_ratio=0.002)
    assert found.answer is SlipAnswer.NONE_PROVED
    assert found.free_to_mm3_s == 20.0
    assert found.loss is None
    assert [e.name for e in found.estimates()] == ["loaded_share"]
    assert found.level.value == pytest.approx(0.99, abs=0.002)


def test_shares_by_rate_carry_the_scatter_of_all_rates_or_the_reading():
    found = measure_slip([2.0, 2.0, 4.0, 4.0], [0.99, 0.97, 0.98, 0.96], u_reading_ratio=0.001, u_scale_ratio=0.0005)
    assert found.rates_mm3_s.tolist() == [2.0, 4.0]
    sd = math.sqrt((2 * 0.01**2 + 2 * 0.01**2) / 2)
    assert found.shares[0].value == pytest.approx(0.98)
    assert found.shares[0].u == pytest.approx(math.hypot(sd / math.sqrt(2), 0.98 * 0.0005))
    assert found.shares[0].dof == pytest.approx(2.0, rel=0.01)
    single = measure_slip([2.0, 4.0], [0.99, 0.97], u_reading_ratio=0.004)
    assert single.shares[0].u == pytest.approx(0.004)
    assert single.answer is SlipAnswer.TOO_FEW
    assert single.estimates() == ()


def test_a_loss_that_is_not_bounded_is_not_told():
    rng = np.random.default_rng(24)
    found = measure_slip(RATE, shares(18.5, rng, loss=0.006, sd=0.0008), u_reading_ratio=0.001)
    assert found.answer is SlipAnswer.PROVED
    assert found.loss is None or found.loss.value <= 20.0
    assert found.free_to_mm3_s <= 20.0


@pytest.mark.parametrize(
    ("rate", "share", "field", "row", "says"),
    [
        ([], [], "rate_mm3_s", None, "Every repeat under load"),
        ([2.0], [1.0, 1.0], "rate_mm3_s", None, "Every repeat under load"),
        ([2.0, 0.0], [1.0, 1.0], "rate_mm3_s", 1, "leave it empty for a repeat without load"),
        ([2.0, 201.0], [1.0, 1.0], "rate_mm3_s", 1, "not between 0 and 200"),
        ([2.0], [1.05], "share_ratio", 0, "105 % of what was commanded at 2 mm³/s"),
        ([2.0], [math.nan], "share_ratio", 0, "which way you measured"),
    ],
)
def test_refusals(rate, share, field, row, says):
    with pytest.raises(InputError) as refused:
        measure_slip(rate, share, u_reading_ratio=0.002)
    assert (refused.value.field, refused.value.row) == (field, row)
    assert says in refused.value.message


@pytest.mark.parametrize(
    ("change", "field", "says"),
    [
        ({"nozzle_mm": 0.0}, "nozzle_mm", "stamped on the nozzle"),
        ({"temperature_c": 0.0}, "temperature_c", "feeds nothing"),
        ({"temperature_c": 310.0}, "temperature_c", "above this hot end's stated limit of 300 °C. Refused"),
    ],
)
def test_what_must_not_be_hot_is_refused(change, field, says):
    with pytest.raises(InputError) as refused:
        replace(HOT, **change)
    assert refused.value.field == field
    assert says in refused.value.message


def test_few_repeats_that_agree_by_chance_are_known_no_better_than_they_were_read():
    """Two marks of 0.3 mm on 100 mm: 0.42 % of one repeat, over the square root of those at slow rates."""
    rate, share = [2.0, 4.0, 6.0, 8.0, 10.0, 12.0], [0.975, 0.9751, 0.9749, 0.975, 0.956, 0.94]
    found = measure_slip(rate, share, u_reading_ratio=0.0042)
    assert found.answer is SlipAnswer.PROVED
    assert found.level.u == pytest.approx(0.0042 / 2, rel=0.2)
    alike = measure_slip(rate, [0.975, 0.9751, 0.9749, 0.975, 0.9751, 0.9749], u_reading_ratio=0.0042)
    assert alike.answer is SlipAnswer.NONE_PROVED
    assert alike.level.u == pytest.approx(0.0042 / math.sqrt(6))
