"""Ladders: planted optima, plateaus and nothing at all, each told as what it is."""

import numpy as np
import pytest

from core.errors import InputError
from core.measuring.ladder import Answer, Choose, blind_order, fit_scores, fit_values, plan_steps
from core.measuring.ordinal import piece_weights


def scored(levels, means, pieces=3, choose=Choose.MIDDLE):
    """Two judges, some pieces each, who score what is planted."""
    n = 2 * pieces
    step = [level for level in levels for _ in range(n)]
    score = [mean for mean in means for _ in range(n)]
    return fit_scores(step, score, ["1", "2"] * (len(step) // 2), np.random.default_rng(2), choose)


def test_steps_are_even_or_in_equal_ratios():
    np.testing.assert_allclose(plan_steps(190, 220, 7), [190, 195, 200, 205, 210, 215, 220])
    np.testing.assert_allclose(plan_steps(40, 160, 5, geometric=True), [40, 56.5685, 80, 113.137, 160], rtol=1e-5)


def test_the_order_is_shuffled_and_never_as_planned():
    rng = np.random.default_rng(0)
    orders = {blind_order(3, rng) for _ in range(100)}
    assert len(orders) == 4 and (0, 1, 2) not in orders and (2, 1, 0) not in orders
    assert sorted(blind_order(2, rng)) == [0, 1]


def test_the_middle_of_a_plateau():
    found = scored((190, 195, 200, 205, 210, 215, 220), (0, 1, 4, 4, 4, 2, 0))
    assert found.answer is Answer.FOUND and found.chosen == 205
    assert (found.low, found.high) == (200, 210) and found.p < 0.01
    estimate = found.estimate("ladder_temperature", "°C")
    assert estimate.value == 205 and pytest.approx(5) == estimate.U
    assert [s.as_good for s in found.scored] == [False, False, True, True, True, False, False]
    assert found.scored[0].count == 6 and np.isnan(found.at(200))


LENGTHS = (0.5, 1.0, 1.5, 2.0)


def test_the_least_step_that_does():
    found = scored(LENGTHS, (0, 4, 4, 4), choose=Choose.LEAST)
    assert found.answer is Answer.FOUND and found.chosen == 1.0
    assert 0.5 < found.low < found.success.at < 1.0 < found.high < 1.5
    lowest = found.estimate("ladder_retraction", "mm")
    assert lowest.value == 1.0 and pytest.approx(max(found.high - 1.0, 1.0 - found.low, 0.25)) == lowest.U
    sharp = scored(LENGTHS, (0, 4, 0, 0))
    only = sharp.estimate("ladder_retraction", "mm")
    assert (only.value, only.U) == pytest.approx((1.0, 0.25))


@pytest.mark.parametrize(
    ("means", "answer", "chosen"),
    [
        ((4, 2, 1, 0), Answer.FOUND, 0.5),  # the first does it, more does harm
        ((3, 4, 4, 4), Answer.FOUND, 0.5),  # all do it
        ((0, 4, 0, 0), Answer.UNSURE, None),  # what lies beyond the best does not count
        ((0, 0, 1, 4), Answer.UNSURE, None),  # the interval ends beyond the last step
        ((0, 0, 1, 2), Answer.EXTEND_HIGH, None),
        ((0, 1, 2, 0), Answer.NONE_GOOD, None),
        ((2, 0, 0, 0), Answer.EXTEND_LOW, None),
    ],
)
def test_where_the_least_step_is_wanted(means, answer, chosen):
    found = scored(LENGTHS, means, choose=Choose.LEAST)
    assert (found.answer, found.chosen) == (answer, chosen)
    assert (found.estimate("x", "mm") is None) is (chosen is None)


def test_a_share_never_reached_asks_to_go_on():
    step, score = np.repeat(LENGTHS, 6), [0] * 6 + [1] * 5 + [3] + [1] * 4 + [3] * 2 + [3] * 3 + [2] * 3
    found = fit_scores(step, score, ["1", "2"] * 12, np.random.default_rng(2), Choose.LEAST)
    assert found.answer is Answer.EXTEND_HIGH and found.success.at > 2.0


@pytest.mark.parametrize(
    ("means", "answer"),
    [((4, 3, 2, 1, 0), Answer.EXTEND_LOW), ((0, 1, 2, 3, 4), Answer.EXTEND_HIGH)],
)
def test_the_best_at_an_end_is_no_optimum(means, answer):
    found = scored((1, 2, 3, 4, 5), means)
    assert found.answer is answer and found.chosen is None and found.estimate("x", "1") is None


def test_no_difference_seen():
    assert scored((1, 2, 3, 4, 5), (2, 2, 2, 2, 2)).answer is Answer.NO_DIFFERENCE
    rng = np.random.default_rng(5)
    step = np.repeat([1.0, 2.0, 3.0], 4)
    quiet = 0
    for _ in range(30):
        found = fit_scores(step, rng.integers(1, 4, 12), ["1", "2"] * 6, rng)
        quiet += found.answer is Answer.NO_DIFFERENCE
    assert quiet >= 25  # one ladder of twenty differs by chance


def test_a_parabola_turns_where_planted():
    """Exact values give the exact turning point; scattered ones hold it in their interval (2000 runs: 94 %)."""
    x = np.linspace(2, 12, 11)
    exact = fit_values(x, 3 + 0.5 * (x - 6.2) ** 2)
    assert exact.answer is Answer.FOUND and exact.chosen == pytest.approx(6.2, rel=1e-9)
    np.testing.assert_allclose(exact.at([6.2, 8.2]), [3, 5], rtol=1e-9)
    rng = np.random.default_rng(9)
    hits = 0
    for _ in range(200):
        found = fit_values(x, -0.5 * (x - 6.2) ** 2 + rng.normal(0, 1.5, x.size), least=False)
        hits += found.answer is Answer.FOUND and found.low <= 6.2 <= found.high
    assert 180 <= hits <= 199


def test_weights_count():
    x = np.array([0, 1, 2, 3, 4, 5, 2.5])
    y = (x - 2) ** 2
    y[-1] += 40
    plain = fit_values(x, y, u_ratio=np.array([1, 1, 1, 1, 1, 1, 1e4]))
    assert plain.chosen == pytest.approx(2, abs=1e-3)


@pytest.mark.parametrize(
    ("values", "least", "answer"),
    [
        (lambda x, e: 2.0 * x + e, True, Answer.EXTEND_LOW),
        (lambda x, e: 2.0 * x + e, False, Answer.EXTEND_HIGH),
        (lambda x, e: (x - 15) ** 2 + e, True, Answer.EXTEND_HIGH),
        (lambda x, e: (x + 5) ** 2 + e, True, Answer.EXTEND_LOW),
        (lambda x, e: -((x - 5) ** 2) + e, True, Answer.ONLY_ENDS),
        (lambda x, e: 5 + e, True, Answer.NO_DIFFERENCE),
    ],
)
def test_other_curves_are_told_as_what_they_are(values, least, answer):
    x = np.linspace(0, 10, 11)
    found = fit_values(x, values(x, np.random.default_rng(1).normal(0, 0.5, 11)), least=least)
    assert found.answer is answer and found.chosen is None


@pytest.mark.parametrize(
    ("call", "field", "row"),
    [
        (lambda: plan_steps(1, 2, 2), "count", None),
        (lambda: plan_steps(2, 2, 5), "high", None),
        (lambda: plan_steps(0, 2, 5, geometric=True), "low", None),
        (lambda: fit_scores([1, 2], [1, 2, 3], ["1"] * 3, np.random.default_rng()), "score", None),
        (lambda: fit_scores([1, np.nan, 3], [1, 2, 3], ["1"] * 3, np.random.default_rng()), "step", 1),
        (lambda: fit_scores([1, 2, 3], [1, 2, 5], ["1"] * 3, np.random.default_rng()), "score", 2),
        (lambda: fit_scores([1, 2, 3], [1, 2.5, 3], ["1"] * 3, np.random.default_rng()), "score", 1),
        (lambda: fit_scores([1, 2, 2], [1, 2, 3], ["1", "2", "1"], np.random.default_rng()), "score", None),
        (lambda: fit_scores([1, 2, 3], [1, 2, 3], ["1"] * 3, np.random.default_rng()), "judge", None),
        (lambda: fit_values([1, 2, 3, 4], [1, 2, 3, 4]), "step", None),
        (lambda: fit_values([1, 2, 3], [1, 2, np.nan]), "value", None),
    ],
)
def test_refused(call, field, row):
    with pytest.raises(InputError) as error:
        call()
    assert (error.value.field, error.value.row) == (field, row)


def test_the_scores_of_one_piece_count_less_than_those_of_different_ones():
    """Kish's design effect with a share of 0.5 in common: two judges of a piece count as 4/3 scores."""
    np.testing.assert_allclose(piece_weights(["A", "A", "B", "C", "C", "C"]), [2 / 3, 2 / 3, 1, 0.5, 0.5, 0.5])
    step, score = np.repeat([1.0, 2.0, 3.0, 4.0], 6), np.repeat([0, 2, 3, 1], 6) + np.tile([0, 1], 12)
    judge, piece = ["1", "2"] * 12, [f"{k // 2}" for k in range(24)]
    alone = fit_scores(step, score, judge, np.random.default_rng(3))
    shared = fit_scores(step, score, judge, np.random.default_rng(3), piece=piece)
    for one, other in zip(alone.scored, shared.scored, strict=True):
        assert other.place.high - other.place.low > one.place.high - one.place.low


def test_pieces_of_one_step_that_differ_hide_a_difference_of_steps():
    """All judges agree on each piece, but pieces of a step differ as much as steps do: shuffled whole, that shows."""
    step = np.repeat([1.0, 2.0, 3.0], 6)
    score = np.repeat([0, 2, 2, 1, 3, 3, 4, 2, 4], 2)
    judge, piece = ["1", "2"] * 9, [f"{k // 2}" for k in range(18)]
    alone = fit_scores(step, score, judge, np.random.default_rng(3))
    shared = fit_scores(step, score, judge, np.random.default_rng(3), piece=piece)
    assert alone.p < 0.05 and alone.answer is Answer.EXTEND_HIGH
    assert shared.p > 0.1 and shared.answer is Answer.NO_DIFFERENCE


def test_with_one_piece_of_each_step_the_judges_are_shuffled():
    step, score = np.repeat([1.0, 2.0, 3.0, 4.0, 5.0], 2), np.repeat([0, 2, 4, 3, 1], 2)
    piece = [f"{k // 2}" for k in range(10)]
    found = fit_scores(step, score, ["1", "2"] * 5, np.random.default_rng(3), piece=piece)
    assert found.p < 0.05
