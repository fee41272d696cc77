"""The proportional-odds model against an independent implementation, and its intervals against planted scores."""

import numpy as np
import pytest

from core.errors import InputError
from core.measuring.ordinal import difference_p, draw_around, fit_proportional_odds

SCALE = (0, 1, 2, 3, 4)


def drawn(rng, n=80):
    X = rng.normal(size=(n, 2))
    return X, np.searchsorted([-1.0, 0.0, 1.5], X @ [1.0, -0.5] + rng.logistic(size=n)).astype(float)


def test_estimates_are_those_of_statsmodels():
    """OrderedModel of statsmodels 0.14 and later, logit link, maximum likelihood."""
    from statsmodels.miscmodels.ordinal_model import OrderedModel

    X, y = drawn(np.random.default_rng(3))
    ours = fit_proportional_odds(y, X, np.inf)
    model = OrderedModel(y, X, distr="logit")
    theirs = model.fit(method="newton", disp=0, maxiter=200)
    np.testing.assert_allclose(ours.effects, theirs.params[:2], rtol=1e-6)
    np.testing.assert_allclose(ours.thresholds, model.transform_threshold_params(theirs.params)[1:-1], rtol=1e-6)
    np.testing.assert_allclose(np.sqrt(np.diag(ours.cov))[-2:], theirs.bse[:2], rtol=1e-4)
    assert ours.log_likelihood == pytest.approx(theirs.llf, rel=1e-9)


def test_two_classes_are_logistic_regression():
    """With two classes and one group each, b is the log of the odds ratio: elementary."""
    y = np.repeat([0.0, 1.0, 0.0, 1.0], [30, 10, 15, 45])
    x = np.repeat([0.0, 0.0, 1.0, 1.0], [30, 10, 15, 45])[:, np.newaxis]
    fit = fit_proportional_odds(y, x, np.inf)
    assert fit.effects[0] == pytest.approx(np.log((45 / 15) / (10 / 30)))
    assert fit.cov[1, 1] == pytest.approx(1 / 30 + 1 / 10 + 1 / 15 + 1 / 45)
    assert fit.mean_score([1.0]) == pytest.approx(45 / 60)
    draws = draw_around(fit, np.random.default_rng(0))
    assert draws.above([0.0], [1.0]) == pytest.approx(1.0, abs=1e-3)
    place = draws.place([1.0])  # 45 of 60: 0.75 +- 1.98*0.056
    assert place.u == pytest.approx(0.056, rel=0.1)
    assert (place.low, place.high) == pytest.approx((0.63, 0.85), abs=0.02)


def test_scores_that_separate_the_specimens_have_an_interval_all_the_same():
    y = np.repeat([0.0, 2.0, 4.0], 6)
    fit = fit_proportional_odds(y, np.repeat(np.eye(3), 6, axis=0), scale=SCALE)
    draws = draw_around(fit, np.random.default_rng(1))
    places = [draws.place(row) for row in np.eye(3)]
    assert places[0].high < places[1].low < places[1].high < places[2].low
    assert all(0 < p.low < p.score < p.high < 4 for p in places)


def test_intervals_hold_the_planted_mean_score():
    rng = np.random.default_rng(7)
    true, edges = np.array([1.5, 1.0, 0.0, -1.5, -3.0]), np.array([-3.0, -1.5, 0.0, 1.5])
    level = np.tile(np.arange(5), 6)
    design = np.eye(5)[level]
    mean = 4 - np.sum(1 / (1 + np.exp(-(edges[None] - true[:, None]))), axis=1)
    hits = runs = 0
    for _ in range(60):
        y = np.searchsorted(edges, true[level] + rng.logistic(size=level.size))
        draws = draw_around(fit_proportional_odds(y, design, scale=SCALE), rng)
        for k, row in enumerate(np.eye(5)):
            place = draws.place(row)
            hits, runs = hits + (place.low <= mean[k] <= place.high), runs + 1
    assert 0.91 <= hits / runs <= 0.99


def test_chance_is_told_from_difference():
    """Two judges who rank five specimens alike: 1 of the 120 orders of the second agrees as well; elementary."""
    rng = np.random.default_rng(0)
    s, j = np.tile(np.arange(5), 2), np.repeat([0, 1], 5)
    alike = difference_p(np.tile([0, 1, 2, 3, 4], 2), s, j, rng, 4000)
    assert alike == pytest.approx(1 / 120, abs=0.006)
    opposed = difference_p([0, 1, 2, 3, 4, 4, 3, 2, 1, 0], s, j, rng, 500)
    assert opposed == 1.0


def test_steps_that_go_too_far_are_shortened():
    rng = np.random.default_rng(13)
    n, size = int(rng.integers(6, 30)), 10 ** rng.uniform(-1, 2)
    X = rng.normal(size=(n, 1)) * size
    y = np.searchsorted([-1.0, -0.9, 0.5], X[:, 0] / size * 3 + rng.logistic(size=n) * rng.uniform(0, 1)).astype(float)
    fit = fit_proportional_odds(y, X, 100.0)
    assert np.all(np.diff(fit.thresholds) > 0) and np.all(np.isfinite(fit.cov))


def test_as_many_specimens_as_scores_leave_everything_open():
    fit = fit_proportional_odds([0, 4], np.eye(2), scale=SCALE)
    place = draw_around(fit, np.random.default_rng(3)).place([1, 0])
    assert place.low < 0.1 and place.high > 3.5


def test_equal_scores_are_an_answer_where_the_scale_is_known():
    fit = fit_proportional_odds([2, 2, 2, 2], np.repeat(np.eye(2), 2, axis=0), scale=SCALE)
    assert abs(fit.effects[0] - fit.effects[1]) < 1e-6 and fit.mean_score([1, 0]) == pytest.approx(2)


@pytest.mark.parametrize(
    ("y", "scale"), [([1, 1, 1], None), ([1, float("nan"), 2], None), ([1, 2], None), ([1, 2, 2.5], SCALE)]
)
def test_refused(y, scale):
    with pytest.raises(InputError) as error:
        fit_proportional_odds(y, np.ones((3, 1)), scale=scale)
    assert error.value.field == "score"
