"""The hand: repeatability of re-seated readings, two people, what it can promise, the parts without it."""

import math

import pytest

from core.errors import InputError
from core.measuring.hand import HandGrade, hand_from_seatings, part_spread
from tests.published import columns, printed

TEN = [10.05, 10.06, 10.08, 10.05, 10.07, 10.06, 10.06, 10.04, 10.07, 10.06]


def test_the_spread_of_one_reading_is_that_of_the_gum():
    """JCGM 100:2008 4.4.3: twenty readings with s = 1.489."""
    (t,) = columns("gum_temperatures", "t_c")
    hand = hand_from_seatings(t, [], 0.01, "°C")
    assert (hand.sd, hand.dof, hand.count) == (printed("1.489"), 19, 20)
    estimate = hand.estimate("°C")
    assert estimate.u == pytest.approx(hand.sd / math.sqrt(38))
    assert (estimate.name, estimate.unit, estimate.dof) == ("sd_hand", "°C", 19)


def test_two_people_share_their_spread_and_differ_by_an_offset():
    hand = hand_from_seatings(TEN, [y + 0.05 for y in TEN[:5]], 0.01, "mm")
    assert hand.dof == 13
    assert hand.offset.value == pytest.approx(0.05 + sum(TEN[:5]) / 5 - sum(TEN) / 10)
    assert hand.offset.u == pytest.approx(hand.sd * math.sqrt(1 / 10 + 1 / 5))
    assert hand.offset.significant
    assert hand_from_seatings(TEN, [], 0.01, "mm").offset is None


def test_equal_readings_are_known_no_better_than_the_last_digit():
    hand = hand_from_seatings([10.06] * 10, [], 0.01, "mm")
    assert hand.sd == pytest.approx(0.01 / math.sqrt(12))
    assert hand.all_equal
    assert not hand_from_seatings([10.06] * 3, [], 0.01, "mm").all_equal
    assert not hand_from_seatings(TEN, [], 0.01, "mm").all_equal


def test_one_reading_tells_nothing():
    assert hand_from_seatings([10.06], [], 0.01, "mm") is None
    assert hand_from_seatings([10.06], [10.05], 0.01, "mm") is None
    assert hand_from_seatings([], [], 0.01, "mm") is None


@pytest.mark.parametrize(
    ("tolerance", "grade"), [(0.2, HandGrade.GOOD), (0.1, HandGrade.USABLE), (0.05, HandGrade.TOO_COARSE)]
)
def test_a_hand_promises_a_tenth_or_a_fifth(tolerance, grade):
    """s = 0.0115 mm against T/10 and T/5."""
    assert hand_from_seatings(TEN, [], 0.01, "mm").grade(tolerance) is grade


def test_parts_without_the_hand():
    assert part_spread(0.05, 0.03) == pytest.approx(0.04)
    with pytest.raises(InputError, match="cannot see the parts") as refused:
        part_spread(0.02, 0.03)
    assert refused.value.field == "sd_observed"
