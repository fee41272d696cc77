"""Where the uncertainty comes from: residuals, repeats, the instrument, the last digit; checked by outside means."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq
from scipy.stats import f

from core.part_size.scatter import (
    COARSEST_GUESS_MM,
    FINEST_GUESS_MM,
    feature_means,
    fit_with_scatter,
    guess_resolution_mm,
)
from tests.published import columns, table

DIGIT = 1e-3


def means_of(groups):
    labels = [(str(i),) for i, group in enumerate(groups) for _ in group]
    return feature_means(np.array([y for group in groups for y in group]), labels)


def line_through(groups, sd_hand=None, digit=DIGIT):
    design = np.column_stack([np.ones(len(groups)), np.arange(len(groups))])
    return fit_with_scatter(design, means_of(groups), digit, sd_hand)


def test_readings_of_one_feature_are_gathered_wherever_they_stand():
    means = feature_means(np.array([1.0, 10.0, 3.0, 20.0]), [("a",), ("b",), ("a",), ("c",)])
    assert means.error_mm.tolist() == [2, 10, 20] and means.count.tolist() == [2, 1, 1]
    assert means.group.tolist() == [0, 1, 0, 2] and means.first.tolist() == [0, 1, 3]
    assert (means.sd_repeat_mm, means.repeat_dof) == (pytest.approx(math.sqrt(2)), 1)
    assert not means.balanced


def test_single_readings_tell_no_repeatability():
    means = means_of([[1.0], [2.0]])
    assert math.isnan(means.sd_repeat_mm) and means.repeat_dof == 0 and means.balanced


@pytest.mark.parametrize(
    ("readings", "digit"),
    [
        ([20.0, 100.0], 0.01),  # typed as 20 and 100: the caliper is no coarser for that
        ([20.1, 100.25], 0.01),
        ([20.125, 100.25], 0.001),
        ([20.12345], 1e-5),
        ([10.0076], 1e-4),  # 0.394 in
        ([1 / 3], FINEST_GUESS_MM),
        ([0.0], COARSEST_GUESS_MM),
    ],
)
def test_the_last_digit_is_guessed_from_the_readings(readings, digit):
    assert guess_resolution_mm(np.array(readings)) == pytest.approx(digit)


def test_noint1_has_the_certified_deviations():
    y, x = columns("linefit_nist_noint1", "y", "x")
    certified = {row["parameter"]: row for row in table("linefit_nist_certified", set="NoInt1")}
    scattered = fit_with_scatter(x[:, None], feature_means(y, [(str(i),) for i in range(y.size)]), DIGIT, None)
    assert math.sqrt(scattered.variance_mm2) == pytest.approx(float(certified["residual_sd"]["value"]), rel=1e-9)
    u = math.sqrt(scattered.variance_mm2 * scattered.fit.unscaled_cov[0, 0])
    assert u == pytest.approx(float(certified["B1"]["sd"]), rel=1e-9)
    assert (scattered.source, scattered.dof, scattered.next_mm2) == ("features", y.size - 1, scattered.variance_mm2)
    assert math.isnan(scattered.feature_sd_mm)


@given(
    st.lists(st.lists(st.floats(-1, 1), min_size=1, max_size=4), min_size=5, max_size=8),
    st.lists(st.floats(-3, 3), min_size=8, max_size=8),
)
def test_paule_mandel_against_a_bracketing_solver(repeats, off):
    groups = [[shift + y for y in group] for group, shift in zip(repeats, off, strict=False)]
    means = means_of(groups)
    if means.balanced or means.sd_repeat_mm < 1e-3:
        return
    design = np.column_stack([np.ones(len(groups)), np.arange(len(groups))])
    of_repeats = means.sd_repeat_mm**2 / means.count

    def excess(tau2):
        root = 1 / np.sqrt(tau2 + of_repeats)
        _, ssr, *_ = np.linalg.lstsq(design * root[:, None], means.error_mm * root, rcond=None)
        return float(ssr[0]) - (len(groups) - 2)

    wanted = brentq(excess, 0, 1e3, xtol=1e-14) if excess(0) > 0 else 0.0
    assert line_through(groups).feature_sd_mm ** 2 == pytest.approx(wanted, rel=1e-5, abs=1e-9)


def test_repeats_that_agree_to_the_last_digit_leave_the_features_to_speak():
    """Unequal repeats without any scatter: Newton's steps begin at the digit and still find tau."""
    off = [0.0, 0.3, -0.2, 0.1, -0.3, 0.2]
    groups = [[y] * (1 + i % 3) for i, y in enumerate(off)]
    scattered = line_through(groups, digit=FINEST_GUESS_MM)
    plain = line_through([[y] for y in off])
    assert scattered.feature_sd_mm**2 == pytest.approx(plain.variance_mm2, rel=1e-6)
    assert scattered.fit.coef == pytest.approx(plain.fit.coef, rel=1e-6)


def test_the_search_for_tau_ends_even_from_a_digit_beyond_all_sense():
    scattered = line_through([[0.0], [0.3, 0.3], [-0.2], [0.1], [0.2]], digit=1e-60)
    assert math.isfinite(scattered.variance_mm2) and scattered.variance_mm2 > 0


def test_weights_leave_the_variance_in_square_millimetres():
    groups = [[0.0, 0.02, -0.02], [0.1], [0.03, 0.01], [-0.1], [0.05, 0.01, 0.03]]
    scattered = line_through(groups)
    assert scattered.fit.weights.max() == 1.0
    assert math.sqrt(scattered.variance_mm2) < 0.2


@pytest.mark.parametrize("times", [1, 3])
def test_readings_without_any_scatter_keep_that_of_their_last_digit(times):
    scattered = line_through([[0.1] * times] * 6)
    assert scattered.variance_mm2 == pytest.approx(DIGIT**2 / 12)  # repeats do not average it
    assert scattered.rounded


def test_repeats_average_the_digit_when_they_scatter_beyond_it():
    groups = [[0.1 - DIGIT, 0.1, 0.1 + DIGIT]] * 6
    scattered = line_through(groups)
    assert scattered.rounded and scattered.variance_mm2 == pytest.approx(DIGIT**2 / 12 / 3)
    assert scattered.next_mm2 == pytest.approx(DIGIT**2 / 36 + DIGIT**2 * 2 / 3)


PAIRS = [[0.0, 0.02], [0.01, 0.03], [0.05, 0.03]]  # three features, one to spare, sd 0.01 sqrt 2


def test_too_few_features_rest_on_their_repeats():
    scattered = line_through(PAIRS)
    sd2 = 0.0002
    assert (scattered.source, scattered.dof) == ("repeats", 3)
    assert (scattered.variance_mm2, scattered.next_mm2) == (pytest.approx(sd2 / 2), pytest.approx(sd2))
    assert math.isnan(scattered.feature_sd_mm) and not scattered.rounded


def test_the_source_with_more_degrees_of_freedom_is_believed():
    assert line_through(PAIRS, (0.015, 10)).source == "instrument"
    assert line_through(PAIRS, (0.015, 10)).variance_mm2 == pytest.approx(0.015**2 / 2)
    assert line_through(PAIRS, (0.5, 2)).source == "repeats"
    assert line_through([[0.0], [0.1], [0.2]]).source == "none"
    assert line_through([[0.0], [0.1]], (0.015, 10)).dof == 10  # nothing to spare


def test_unequal_counts_are_weighted_by_what_is_known_of_one_reading():
    scattered = line_through([[0.0, 0.02], [0.01], [0.03, 0.03]], (0.01, 50))
    assert scattered.fit.weights == pytest.approx([1, 0.5, 1])
    assert scattered.variance_mm2 == pytest.approx(0.01**2 / 2)


@pytest.mark.parametrize(("bow", "source"), [(0.9, "instrument"), (1.1, "features")])
def test_few_features_that_contradict_the_instrument_are_believed(bow, source):
    """Points 0, b, 0 leave b^2*2/3 about their line on 1 degree of freedom; F against sd^2 at 99 %."""
    b = bow * math.sqrt(1.5 * f.ppf(0.99, 1, 20)) * 0.01
    scattered = line_through([[0.0], [b], [0.0]], (0.01, 20))
    assert (scattered.source, scattered.dof) == (source, 20 if source == "instrument" else 1)


def test_a_combination_hardly_seen_may_vanish_with_other_weights():
    """Whether a weak direction counts as seen hangs on the weights too: nothing to spare, nothing to contradict."""
    weak = np.column_stack([np.ones(3), [0.0, 0.0, 3e-3], [0.0, 1.0, 0.0]])
    once = fit_with_scatter(weak, means_of([[0.0], [0.1], [0.2]]), DIGIT, (0.01, 9))
    assert once.fit.dof == 0 and once.source == "instrument"
    often = fit_with_scatter(weak, means_of([[0.0], [0.1], [0.2] * 9]), DIGIT, (0.01, 9))
    assert often.source == "instrument"


def test_an_instrument_finer_than_the_digit_is_held_to_the_digit():
    scattered = line_through([[0.0], [0.1]], (1e-9, 30), digit=0.01)
    assert scattered.variance_mm2 == pytest.approx(0.01**2 / 12) == scattered.next_mm2
    assert scattered.rounded
