"""Extruder feed: the ratio, what its uncertainty rests on, and every answer. Numbers are worked by hand."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.filament.feed import FeedAnswer, fed_from_marks, fed_from_mass, measure_feed


def test_new_steps_start_from_the_value_in_force():
    """97 of 100 mm fed at 93 steps/mm: 93 / 0.97."""
    found = measure_feed([100.0] * 3, [97.0, 97.1, 96.9], 93.0)
    assert found.steps.value == pytest.approx(93.0 / 0.97)
    assert found.answer is FeedAnswer.CHANGE
    assert [e.name for e in found.estimates()] == ["feed_ratio", "feed_steps_mm"]
    assert found.steps.u / found.steps.value == pytest.approx(found.ratio.u / found.ratio.value)


def test_two_marks_of_0_3_mm_give_0_42_percent_on_100_mm():
    """sqrt(0.3^2 + 0.3^2)/100 (JCGM 100:2008 5.1.2), the rule's 0.05 % beside it."""
    found = measure_feed([100.0], [99.0], 93.0)
    assert found.rests_on == "reading"
    assert found.ratio.u == pytest.approx(math.hypot(0.3 * math.sqrt(2) / 100, 0.99 * 0.0005))
    long = measure_feed([300.0], [297.0], 93.0, u_scale_ratio=0.0)
    assert long.ratio.u == pytest.approx(0.3 * math.sqrt(2) / 300)


def test_scatter_beyond_the_reading_is_believed():
    found = measure_feed([100.0] * 4, [95.0, 99.0, 97.0, 101.0], 93.0)
    assert found.rests_on == "scatter"
    assert found.ratio.dof == pytest.approx(3.0, rel=0.01)
    assert measure_feed([100.0] * 2, [95.0, 96.0], 93.0, u_reading_mm=0.0).rests_on == "scatter"


def test_intervals_cover_the_truth():
    rng = np.random.default_rng(3)
    hits = 0
    for _ in range(2000):
        scale = 1 + rng.normal(0, 0.0005)
        fed = 97.0 * scale + rng.normal(0, 0.3 * math.sqrt(2), 3)
        found = measure_feed([100.0] * 3, fed, 93.0)
        hits += abs(found.ratio.value - 0.97) <= found.ratio.U
    assert 0.93 < hits / 2000 < 0.97


@pytest.mark.parametrize(
    ("fed", "answer", "factor"),
    [
        ([100.1, 100.0, 99.9], FeedAnswer.LEAVE, 1.0),
        ([48.9, 49.0, 49.2], FeedAnswer.WRONG_PART, 0.5),
        ([201.0, 200.5, 199.8], FeedAnswer.WRONG_PART, 2.0),
        ([93.8, 94.0, 94.2], FeedAnswer.GO_BACK, 1.0),
        ([98.0, 97.9, 98.1], FeedAnswer.CHANGE, 1.0),
        ([99.6, 99.6, 99.6], FeedAnswer.LEAVE, 1.0),
        ([112.0, 111.8, 112.1], FeedAnswer.GO_BACK, 1.0),
    ],
)
def test_answers(fed, answer, factor):
    found = measure_feed([100.0] * 3, fed, 93.0)
    assert found.answer is answer
    assert found.factor == factor


def test_one_repeat_is_no_change():
    assert measure_feed([100.0], [97.0], 93.0).answer is FeedAnswer.ONCE


def test_less_than_half_a_percent_is_left_however_sure_it_is():
    """0.4 ± 0.2 %: proved, and not worth a change."""
    found = measure_feed([300.0] * 6, [298.8] * 6, 93.0, u_reading_mm=0.1)
    assert found.ratio.U < 0.004
    assert found.answer is FeedAnswer.LEAVE


def test_a_change_below_its_uncertainty_is_not_made():
    found = measure_feed([50.0], [49.6], 93.0, u_reading_mm=0.5)
    assert 0.005 < 1 - found.ratio.value < found.ratio.U
    assert found.answer is FeedAnswer.UNCLEAR


def test_mass_over_mass_per_length_is_what_was_fed():
    """2.98 g of 2.98 g/m are a metre; known to 0.2 % with 0.01 g on two metres and 0.1 % of the mass per length."""
    assert fed_from_mass([2.98, 1.49], 2.98).tolist() == pytest.approx([1000.0, 500.0])
    found = measure_feed([2000.0], fed_from_mass([5.95], 2.98), 93.0, u_reading_mm=0.01 / 0.00298,
                         u_scale_ratio=0.001, readings_each=1)
    assert found.ratio.value == pytest.approx(5.95 / 5.96)
    assert found.ratio.u == pytest.approx(math.hypot(0.01 / 5.96, 0.001 * 5.95 / 5.96))
    assert found.ratio.u == pytest.approx(0.002, abs=1e-4)


@pytest.mark.parametrize(
    ("mass", "per_length", "field", "row", "says"),
    [
        ([2.98], 0.003, "mass_per_length_g_m", None, "about 3 g/m"),
        ([2.98], math.nan, "mass_per_length_g_m", None, "Weigh a metre"),
        ([2.98, 0.0], 2.98, "mass_g", 1, "cannot be; weigh it again"),
        ([math.nan], 2.98, "mass_g", 0, "cannot be"),
    ],
)
def test_masses_that_cannot_be_are_refused(mass, per_length, field, row, says):
    with pytest.raises(InputError) as refused:
        fed_from_mass(mass, per_length)
    assert (refused.value.field, refused.value.row) == (field, row)
    assert says in refused.value.message


def test_a_ratio_applied_upside_down_is_recognised():
    """Fed 0.97, steps multiplied by 0.97 instead of divided: the next trial feeds 0.97 squared."""
    again = measure_feed([100.0] * 3, [94.0, 94.1, 94.2], 93.0 * 0.97, previous=(0.97, 93.0))
    assert again.answer is FeedAnswer.UPSIDE_DOWN
    right = measure_feed([100.0] * 3, [100.0, 100.1, 99.9], 93.0 / 0.97, previous=(0.97, 93.0))
    assert right.answer is FeedAnswer.LEAVE
    small = measure_feed([100.0] * 3, [94.0, 94.1, 94.2], 93.0, previous=(1.001, 93.0))
    assert small.answer is FeedAnswer.GO_BACK


def test_marks_give_what_was_drawn_in():
    assert fed_from_marks([120.0, 120.0], [23.0, 22.5]).tolist() == [97.0, 97.5]


@pytest.mark.parametrize(
    ("rest", "words"), [([120.0], "nothing was drawn in"), ([-8.0], "more than the marked"), ([130.0], "nothing")]
)
def test_a_rest_that_cannot_be_is_refused(rest, words):
    with pytest.raises(InputError) as refused:
        fed_from_marks([120.0], rest)
    assert refused.value.field == "rest_mm"
    assert refused.value.row == 0
    assert words in refused.value.message


@pytest.mark.parametrize(
    ("commanded", "fed", "steps", "field", "says"),
    [
        ([], [], 93.0, "fed_mm", "Every repeat needs"),
        ([100.0], [97.0, 98.0], 93.0, "fed_mm", "Every repeat needs"),
        ([0.0], [97.0], 93.0, "commanded_mm", "0 mm of filament is not between 0 and 5000 mm"),
        ([100.0], [math.nan], 93.0, "fed_mm", "not between 0 and 5000 mm"),
        ([100.0], [97.0], 0.0, "in_force_steps_mm", "in force when you measured"),
        ([100.0], [97.0], math.nan, "in_force_steps_mm", "in force when you measured"),
    ],
)
def test_refusals(commanded, fed, steps, field, says):
    with pytest.raises(InputError) as refused:
        measure_feed(commanded, fed, steps)
    assert refused.value.field == field
    assert says in refused.value.message
