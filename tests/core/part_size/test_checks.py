"""Each check of the fit: its number against an independent program, its sentence when something is planted."""

import numpy as np
import pytest
import statsmodels.api as sm
from scipy.stats import chi2, f, t
from statsmodels.stats.diagnostic import het_breuschpagan
from statsmodels.stats.outliers_influence import OLSInfluence

from core.part_size.features import FeatureKind
from core.part_size.sizeerror import fit_size_error
from tests.core.part_size.printouts import Faults, Print

RNG = np.random.default_rng


def found(fit, name):
    return next((d for d in fit.diagnostics if d.name == name), None)


def of_comb(axes="x", sd=0.02, seed=1, times=(1,), off=None, **faults):
    """The fit of a size comb, its readings and the errors of its gauges."""
    piece, rng = Print(axes, times), RNG(seed)
    size = piece.size_mm(Faults(**faults)) + sd * rng.standard_normal(piece.nominal_mm.size)
    readings = size[piece.reading] + (
        0.5 * sd * rng.standard_normal(piece.reading.size) if len(piece.reading) > len(size) else 0
    )
    for row, by in (off or {}).items():
        readings[row] += by
    return piece, piece.fit(readings), readings


def test_a_sound_comb_meets_every_check():
    _, fit, _ = of_comb("xy")
    assert {d.name for d in fit.diagnostics if not d.ok} == {"instrument", "temperature"}
    assert not fit.line_refused and not fit.flagged.any()
    assert {d.name for d in fit.diagnostics} == {
        "scatter_mm", "condition", "curvature_x", "curvature_y", "distinct_lengths_x", "distinct_lengths_y", "span_x",
        "span_y", "unequal_scatter", "one_wall_outset", "jaw_zero", "outlier", "instrument", "temperature",
    }  # fmt: skip


def test_studentised_residuals_and_their_limit():
    piece, fit, readings = of_comb("xy", seed=3)
    theirs = OLSInfluence(sm.OLS(readings - piece.nominal_mm, fit.terms.design).fit())
    check = found(fit, "outlier")
    assert check.value == pytest.approx(np.abs(theirs.resid_studentized_external).max())
    assert check.limit == pytest.approx(t.ppf(1 - 0.05 / 44, 16))


@pytest.mark.parametrize("row", [0, 7, 16])
def test_an_outlier_is_flagged_not_dropped(row):
    piece, fit, readings = of_comb("xy", seed=4, off={row: 0.25})
    results = sm.OLS(readings - piece.nominal_mm, fit.terms.design).fit()
    theirs = np.flatnonzero(OLSInfluence(results).summary_frame()["student_resid"].abs() > t.ppf(1 - 0.05 / 44, 16))
    assert np.flatnonzero(fit.flagged).tolist() == theirs.tolist()
    assert theirs.tolist() == ([16, 21] if row == 16 else [row])  # overall length and window check each other only
    assert [e.value for e in fit.estimates()] == pytest.approx(results.params)  # it still counts
    assert not found(fit, "outlier").ok and "flagged, not dropped" in found(fit, "outlier").says


def test_a_slip_among_repeats_is_flagged_within_its_feature():
    """Unequal repeats too: the limit is a variance in square millimetres, whatever the weights."""
    for times in ((5,), (5, 4)):
        piece, fit, _ = of_comb(seed=5, times=times, off={2: 0.2})
        assert np.flatnonzero(fit.flagged).tolist() == [2]
        assert not found(fit, "repeat_outlier").ok


def test_one_repeat_more_is_too_few_to_judge_repeats():
    nominal = [10.0, 10.0, 40.0, 70.0, 100.0, 140.0]
    fit = fit_size_error(nominal, np.array(nominal) + 0.1, ["tooth"] * 6, feature=[1, 1, 2, 3, 4, 5])
    assert found(fit, "repeat_outlier") is None
    assert fit_size_error([10.0, 50.0, 90.0], [10.1, 50.2, 90.1], ["tooth"] * 3).flagged.tolist() == [False] * 3


def test_a_feature_that_alone_tells_something_cannot_stand_out():
    """Without the overall length the window alone fixes B: it has leverage 1 and no residual."""
    piece = Print("x", only=(FeatureKind.TOOTH, FeatureKind.NOTCH, FeatureKind.CLOSED_HOLE))
    readings = piece.nominal_mm + 0.01 * RNG(1).standard_normal(10)
    readings[[k is FeatureKind.CLOSED_HOLE for k in piece.kind]] -= 3.0
    assert not piece.fit(readings).flagged.any()


@pytest.mark.parametrize("times", [(3,), (1, 2, 4)])
def test_lack_of_fit_is_the_f_test_against_the_feature_means(times):
    piece, fit, readings = of_comb(seed=7, times=times)
    error = readings - piece.nominal_mm[piece.reading]
    X = fit.terms.design[piece.reading]
    straight = sm.OLS(error, X).fit()
    saturated = sm.OLS(error, np.eye(11)[piece.reading]).fit()
    F, p, _ = saturated.compare_f_test(straight)
    check = found(fit, "lack_of_fit")
    assert check.value == pytest.approx(F)
    assert check.limit == pytest.approx(f.ppf(0.99, 8, piece.reading.size - 11))
    assert check.ok == (p >= 0.01)


def test_features_that_differ_by_more_than_re_reading_explains():
    piece, rng = Print("x", times=(3,)), RNG(8)
    size = piece.size_mm(Faults()) + 0.1 * rng.standard_normal(11)
    fit = piece.fit(size[piece.reading] + 0.005 * rng.standard_normal(33))
    assert not found(fit, "lack_of_fit").ok and "the uncertainties include that" in found(fit, "lack_of_fit").says
    assert fit.scattered.source == "features"
    few = fit_size_error(
        np.repeat([10.0, 60.0, 120.0], 2),
        np.repeat([10.0, 60.4, 120.0], 2) + [0, 0.01] * 3,
        ["tooth"] * 6,
        feature=np.repeat([1, 2, 3], 2),
    )
    assert not found(few, "lack_of_fit").ok and few.scattered.source == "features"  # however few they are


def test_lack_of_fit_needs_repeats_that_scatter_and_features_to_spare():
    assert found(of_comb()[1], "lack_of_fit") is None
    nominal = np.repeat([10.0, 40.0, 70.0, 100.0, 140.0], 2)
    assert found(fit_size_error(nominal, nominal, ["tooth"] * 10, feature=nominal), "lack_of_fit") is None
    two = fit_size_error(nominal[:4], nominal[:4] + [0, 0.1] * 2, ["tooth"] * 4, feature=nominal[:4])
    assert found(two, "lack_of_fit") is None


def test_curvature_is_the_f_test_of_a_square_beside_jaw_constants():
    piece, fit, readings = of_comb("xy", seed=9)
    error = readings - piece.nominal_mm
    X = np.column_stack([fit.terms.design, np.ones(22)])  # both jaws off: wall outset, and one constant more
    square = np.array([a == "x" for a in piece.axis]) * ((piece.nominal_mm - 75) / 65) ** 2
    F, _, _ = sm.OLS(error, np.column_stack([X, square])).fit().compare_f_test(sm.OLS(error, X).fit())
    check = found(fit, "curvature_x")
    assert check.value == pytest.approx(F) and check.limit == pytest.approx(f.ppf(0.99, 1, 15))


def test_a_planted_curve_refuses_the_line():
    piece = Print("x")
    bow = 2e-4 * (piece.nominal_mm - 75) ** 2
    fit = piece.fit(piece.nominal_mm + bow + 0.01 * RNG(10).standard_normal(11))
    assert fit.line_refused and not found(fit, "curvature_x").ok
    assert "bends: look for a lifted corner, a bent screw, or a misread length" in found(fit, "curvature_x").says


def test_a_slight_curve_is_named_and_the_scale_kept():
    piece = Print("x")
    fit = piece.fit(piece.nominal_mm + 3e-5 * (piece.nominal_mm - 75) ** 2 + 0.02 * RNG(2).standard_normal(11))
    assert not found(fit, "curvature_x").ok and not fit.line_refused and fit.estimate("scale_x")


def test_a_jaw_that_is_not_zeroed_is_no_curve():
    piece = Print("x")
    readings = piece.nominal_mm + 0.3 + 0.005 * RNG(1).standard_normal(11)
    fit = piece.fit(readings)
    assert not fit.line_refused and found(fit, "curvature_x").ok
    X = fit.terms.design
    F, _, _ = (
        sm.OLS(readings - piece.nominal_mm, np.column_stack([X, np.ones(11)]))
        .fit()
        .compare_f_test(sm.OLS(readings - piece.nominal_mm, X).fit())
    )
    check = found(fit, "jaw_zero")
    assert not check.ok and check.value == pytest.approx(F) and "check the zero of both jaws" in check.says
    outside = fit_size_error([10.0, 40, 70, 100, 140], [10.3, 40.3, 70.3, 100.3, 140.31], ["outside"] * 5)
    assert found(outside, "jaw_zero") is None  # there it is a part of the constant


def test_a_curve_cannot_be_seen_in_two_lengths():
    fit = fit_size_error([20.0, 20.0, 100.0, 100.0, 100.0], [20.1, 20.11, 100.1, 100.12, 100.1], ["outside"] * 5)
    assert found(fit, "curvature_x") is None
    assert not found(fit, "distinct_lengths_x").ok and "a curve cannot be seen" in found(fit, "distinct_lengths_x").says
    three = fit_size_error([20.0, 60.0, 100.0], [20.1, 60.11, 100.1], ["outside"] * 3)
    assert found(three, "curvature_x") is None  # nothing is left to judge it by


def test_unequal_scatter_is_koenkers_test():
    piece, fit, _ = of_comb("xy", seed=12)
    lm, *_ = het_breuschpagan(fit.residual_mm, sm.add_constant(piece.nominal_mm), robust=True)
    check = found(fit, "unequal_scatter")
    assert check.value == pytest.approx(lm) and check.limit == pytest.approx(chi2.ppf(0.99, 1))


def test_scatter_that_grows_with_the_length_is_named():
    L = np.linspace(10, 200, 60)
    fit = fit_size_error(L, L + 5e-4 * L * RNG(13).standard_normal(60), ["outside"] * 60)
    assert not found(fit, "unequal_scatter").ok and "read the long features again" in found(fit, "unequal_scatter").says


@pytest.mark.parametrize(
    "sizes",
    [
        [10.1, 40.1, 70.1, 100.1],  # too few
        [10.1, 10.2] * 4,  # features of one length
    ],
)
def test_unequal_scatter_needs_enough_lengths(sizes):
    nominal = np.round(sizes, 0)
    assert found(fit_size_error(nominal, sizes, ["outside"] * len(sizes)), "unequal_scatter") is None


def test_unequal_scatter_of_none_at_all_is_not_asked():
    L = np.arange(1.0, 11.0)
    assert found(fit_size_error(L, L, ["outside"] * 10), "unequal_scatter") is None


def test_one_wall_outset_is_the_f_test_of_a_second_one():
    piece, fit, readings = of_comb("xy", seed=14)
    X = fit.terms.design
    second = X[:, [fit.terms.names.index("wall_outset")]] * np.array([[a == "y"] for a in piece.axis])
    F, p, _ = (
        sm.OLS(readings - piece.nominal_mm, np.hstack([X, second]))
        .fit()
        .compare_f_test(sm.OLS(readings - piece.nominal_mm, X).fit())
    )
    check = found(fit, "one_wall_outset")
    assert (check.value, check.ok) == (pytest.approx(F), p >= 0.01)


def test_a_bead_wider_in_one_direction_is_reported():
    piece = Print("xy")
    along_x, along_y = (piece.size_mm(Faults(wall_outset_mm=w)) for w in (0.02, 0.09))
    size = np.where([a == "x" for a in piece.axis], along_x, along_y) + 0.01 * RNG(15).standard_normal(22)
    check = found(piece.fit(size), "one_wall_outset")
    assert not check.ok and "Give no common contour offset" in check.says
    assert found(of_comb("x")[1], "one_wall_outset") is None
    travel = fit_size_error([0.0, 5, 10, 20], [0.0, 5, 10, 20.01], ["travel"] * 4)
    assert found(travel, "one_wall_outset") is None


def test_condition_is_that_of_the_scaled_columns():
    _, fit, _ = of_comb("xy")
    X = fit.terms.design
    check = found(fit, "condition")
    assert check.value == pytest.approx(np.linalg.cond(X / np.linalg.norm(X, axis=0))) and check.ok
    L = np.array([100.0, 101, 102, 103, 104])
    near = fit_size_error(L, L + 0.1, ["outside"] * 5)
    assert not found(near, "condition").ok and "take lengths further apart" in found(near, "condition").says
    assert not found(near, "span_x").ok and "less than 3 times the shortest" in found(near, "span_x").says


def test_a_travel_has_no_ratio_of_lengths():
    fit = fit_size_error([-10.0, 0.0, 10.0, 20.0, 40.0], [-10.0, 0.0, 10.0, 20.0, 40.01], ["travel"] * 5)
    assert found(fit, "span_x") is None and found(fit, "distinct_lengths_x").ok
    assert found(fit, "temperature") is None
