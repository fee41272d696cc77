"""The straight line against standards and textbooks, an independent program, and its own promises."""

import math

import numpy as np
import pytest
import statsmodels.api as sm
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import minimize

from core.errors import InputError
from core.measuring.straightline import fit_line
from tests.published import columns, printed, table

# ISO/TS 28037:2010: a, u(a), b, u(b), cov(a, b), chi-squared as printed.
ISO_28037 = {
    "1": ("1.867", "0.465", "1.757", "0.120", "-0.050", "1.665"),
    "2": ("0.885", "0.530", "2.057", "0.178", "-0.082", "4.131"),
    "3": ("0.5788", "0.4764", "2.159", "0.1355", "-0.0577", "2.743"),
    "4": ("1.172", "0.159", "1.964", "0.041", "-0.006", None),
}


def iso_line(example):
    return fit_line(*columns("straightline_iso28037", "x", "y", "u_y", "u_x", example=example))


@pytest.mark.parametrize("example", ISO_28037)
def test_iso_28037_parameters(example):
    a, u_a, b, u_b, cov, chi2 = ISO_28037[example]
    line = iso_line(example)
    last = 1.0 if example == "3" else 0.5  # iterations of example 3 end one unit of the last digit apart
    assert line.intercept == printed(a)
    assert math.sqrt(line.covariance()[0, 0]) == printed(u_a)
    assert line.slope == printed(b, last)
    assert line.u_slope == printed(u_b)
    assert line.covariance()[0, 1] == line.covariance()[1, 0] == printed(cov)
    assert line.spare == 4
    if chi2:
        assert (line.chi2, line.s, line.dof) == (printed(chi2), None, math.inf)


def test_iso_28037_example_4_scatter():
    """A transcription calls 0.171 the chi-squared; it is s. The residual sum is 0.116 498 285 71."""
    line = iso_line("4")
    assert line.s == printed("0.171") and line.chi2 is None and line.dof == 4
    assert line.s**2 * line.spare == printed("0.11649828571")


# example, y, u(y), x, u(x) as printed; inverse use
@pytest.mark.parametrize(
    ("example", "y", "u_y", "x", "u_x"),
    [
        ("1", 10.5, 0.5, "4.91327913279133", "0.32203556012891"),
        ("2", 10.5, 1.0, "4.674", "0.533"),
        ("4", 10.5, None, "4.751", "0.097"),
    ],
)
def test_iso_28037_inverse_use(example, y, u_y, x, u_x):
    assert iso_line(example).x_from_y(y, u_y) == (printed(x), printed(u_x))


def test_iso_28037_forward_use():
    assert iso_line("1").at(3.5, u_x=0.2) == (printed("8.01666666666667"), printed("0.406409531732455"))
    mean, u_mean = iso_line("4").at(3.5)
    u_single = iso_line("4").prediction(3.5, level=0.95) / 2.7764451052  # t_95(4), GUM table G.2: 2.78
    assert (mean, u_mean, u_single) == (printed("8.04"), printed("0.07"), printed("0.18"))


def test_uncertainty_in_both_minimises_chi_squared():
    x, y, u_y, u_x = columns("straightline_iso28037", "x", "y", "u_y", "u_x", example="3")

    def chi2(ab):
        return np.sum((y - ab[0] - ab[1] * x) ** 2 / (u_y**2 + (ab[1] * u_x) ** 2))

    best = minimize(chi2, [0.5, 2.0], method="Nelder-Mead", options={"xatol": 1e-10, "fatol": 1e-14})
    line = iso_line("3")
    assert (line.intercept, line.slope) == pytest.approx(best.x, rel=1e-6)
    assert line.chi2 == pytest.approx(best.fun, rel=1e-12)


def test_gum_h3():
    t, b = columns("straightline_gum_h3", "t_k", "b_k")
    line = fit_line(t - 20.0, b)
    covariance = line.covariance()
    assert line.intercept == printed("-0.1712") and math.sqrt(covariance[0, 0]) == printed("0.0029")
    assert line.slope == printed("0.00218") and line.u_slope == printed("0.00067")
    assert covariance[0, 1] / math.sqrt(covariance[0, 0] * covariance[1, 1]) == printed("-0.930")
    assert (line.s, line.dof) == (printed("0.0035"), 9)
    assert line.at(10.0) == (printed("-0.1494"), printed("0.0041"))


def test_gum_h3_does_not_depend_on_the_origin():
    t, b = columns("straightline_gum_h3", "t_k", "b_k")
    about_20, about_mean = fit_line(t - 20.0, b), fit_line(t - t.mean(), b)
    assert about_mean.at(30.0 - t.mean()) == pytest.approx(about_20.at(10.0), rel=1e-12)
    assert about_20.covariance(origin=t.mean() - 20.0)[0, 1] == pytest.approx(0, abs=1e-12)
    assert about_20.covariance(origin=10.0)[0, 0] == pytest.approx(about_20.at(10.0)[1] ** 2, rel=1e-12)


def test_natrella_line_and_bands():
    line = fit_line(*columns("straightline_natrella", "x_temperature_C", "y_modulus"))
    assert (line.slope, line.intercept) == (printed("-0.44985482"), printed("4654.9846"))
    assert line.s == printed("9.277617", last_digit=1.0)  # cut off, not rounded: 9.277 617 6
    assert line.at(1200)[1] ** 2 == printed("10.53")
    t95 = line.band(750) / line.at(750)[1]
    assert t95 == printed("2.14")  # GUM table G.2, 14 degrees of freedom
    assert (line.prediction(750) / t95) ** 2 == printed("91.45")


def test_bevington_6_1():
    line = fit_line(*columns("straightline_bevington_6_1", "x", "y"))
    assert (line.intercept, line.slope) == (printed("-0.222142"), printed("0.992780"))
    covariance = line.covariance()
    assert (math.sqrt(covariance[0, 0]), line.u_slope) == (printed("0.06962967"), printed("0.002636608"))
    assert covariance[0, 1] == printed("-0.0001616271")


def test_nist_norris():
    certified = {row["parameter"]: row for row in table("linefit_nist_certified", set="Norris")}
    line = fit_line(*columns("linefit_nist_norris", "x", "y"))
    u = np.sqrt(np.diag(line.covariance()))
    assert [line.intercept, line.slope] == pytest.approx([float(certified[b]["value"]) for b in ("B0", "B1")], rel=1e-9)
    assert u.tolist() == pytest.approx([float(certified[b]["sd"]) for b in ("B0", "B1")], rel=1e-9)
    assert line.s == pytest.approx(float(certified["residual_sd"]["value"]), rel=1e-9)


@pytest.mark.parametrize("level", [0.6827, 0.95, 0.99])
@pytest.mark.parametrize("seed", range(8))
def test_an_independent_program_gives_the_same_bands(seed, level):
    rng = np.random.default_rng(seed)
    x = rng.uniform(-50, 300, rng.integers(3, 30))
    y = rng.normal(0.05 + 0.001 * x, 0.03)
    line, at = fit_line(x, y), np.linspace(-100, 400, 7)
    referee = sm.OLS(y, sm.add_constant(x)).fit()
    frame = referee.get_prediction(sm.add_constant(at)).summary_frame(alpha=1 - level)
    mean, u = line.at(at)
    assert [line.intercept, line.slope] == pytest.approx(referee.params, rel=1e-9)
    assert line.covariance() == pytest.approx(referee.cov_params(), rel=1e-8)
    assert mean == pytest.approx(frame["mean"].to_numpy(), rel=1e-9)
    assert u == pytest.approx(frame["mean_se"].to_numpy(), rel=1e-9)
    assert mean + line.band(at, level) == pytest.approx(frame["mean_ci_upper"].to_numpy(), rel=1e-9)
    assert mean - line.prediction(at, level) == pytest.approx(frame["obs_ci_lower"].to_numpy(), rel=1e-9)


@pytest.mark.parametrize("seed", range(8))
def test_an_independent_program_gives_the_same_with_known_uncertainties(seed):
    rng = np.random.default_rng(seed)
    x, u = rng.uniform(0, 300, 9), rng.uniform(0.005, 0.1, 9)
    y = rng.normal(0.05 + 0.001 * x, u)
    line = fit_line(x, y, u)
    referee = sm.WLS(y, sm.add_constant(x), weights=1 / u**2).fit(cov_type="fixed scale")
    assert [line.intercept, line.slope] == pytest.approx(referee.params, rel=1e-9)
    assert np.sqrt(np.diag(line.covariance())) == pytest.approx(referee.bse, rel=1e-9)
    assert line.band(100.0) == pytest.approx(1.959963984540054 * line.at(100.0)[1])
    assert line.prediction(100.0, u_y=0.03) == pytest.approx(1.959963984540054 * np.hypot(line.at(100.0)[1], 0.03))


units = st.sampled_from([1e-6, 1e-3, 1.0, 25.4, 1e6])


@given(
    seed=st.integers(0, 10**6),
    unit_x=units,
    unit_y=units,
    origin_x=st.floats(-1e4, 1e4),
    origin_y=st.floats(-1e2, 1e2),
    known=st.sampled_from(["nothing", "u_y", "both"]),
)
def test_answers_depend_on_no_unit_and_no_origin(seed, unit_x, unit_y, origin_x, origin_y, known):
    rng = np.random.default_rng(seed)
    x = rng.uniform(0, 300, 6)
    y = rng.normal(0.1 + 0.01 * x, 0.03)
    u_y, u_x = (None if known == "nothing" else 0.03), (0.2 if known == "both" else None)
    here = fit_line(x, y, u_y, u_x)
    there = fit_line((x + origin_x) * unit_x, (y + origin_y) * unit_y, u_y and u_y * unit_y, u_x and u_x * unit_x)
    asked = np.array([-50.0, 20.0, 500.0])
    mean, u = there.at((asked + origin_x) * unit_x)
    assert mean / unit_y - origin_y == pytest.approx(here.at(asked)[0], rel=1e-6, abs=1e-7)
    assert u / unit_y == pytest.approx(here.at(asked)[1], rel=1e-6)
    back, u_back = there.x_from_y((1.0 + origin_y) * unit_y, 0.03 * unit_y)
    assert back / unit_x - origin_x == pytest.approx(here.x_from_y(1.0, 0.03)[0], rel=1e-6, abs=1e-6)
    assert u_back / unit_x == pytest.approx(here.x_from_y(1.0, 0.03)[1], rel=1e-6)


numbers = st.integers(-5_000_000, 5_000_000).map(lambda millionths: millionths / 1e6)  # as readings are: none near zero


@given(a=numbers, b=numbers, position=st.floats(-1e3, 1e3))
def test_forward_and_inverse_use_undo_each_other(a, b, position):
    assume(abs(b) > 1e-3)
    x = np.array([0.0, 10.0, 50.0, 200.0])
    line = fit_line(x, a + b * x, u_y=1e-3 * abs(b))
    assert line.x_from_y(line.at(position)[0], 0.01)[0] == pytest.approx(position, rel=1e-6, abs=1e-6)


def test_two_readings_with_uncertainties_make_a_line():
    line = fit_line([10, 20], [1.0, 3.0], u_y=[0.1, 0.1])
    assert (line.slope, line.u_slope) == pytest.approx((0.2, 0.1 * math.sqrt(2) / 10))
    assert (line.spare, line.chi2) == (0, pytest.approx(0, abs=1e-20))


X, Y = [10.0, 20.0, 30.0], [1.0, 2.1, 2.9]
NUMBER = "The positions and the readings differ in number; check the columns."
COLUMN = "The uncertainties and the readings differ in number; give one for each or one for all."
SAME = "All positions are the same; a line needs readings at two different ones at least."
NOT_FINITE = "this is not a finite number; remove or retype it."


@pytest.mark.parametrize(
    ("arguments", "field", "row", "words"),
    [
        (([], []), "x", None, NUMBER),
        ((X, Y[:2]), "x", None, NUMBER),
        (([X], [Y]), "x", None, NUMBER),
        ((X, Y, [0.1, 0.1]), "u_y", None, COLUMN),
        ((X, Y, 0.1, [0.1]), "u_x", None, COLUMN),
        (([10, math.nan, 30], Y), "x", 1, f"Row 2: {NOT_FINITE}"),
        ((X, [1, 2, math.inf]), "y", 2, f"Row 3: {NOT_FINITE}"),
        ((X, Y, [0.1, math.nan, 0.1]), "u_y", 1, f"Row 2: {NOT_FINITE}"),
        ((X, Y, 0.1, [0.1, 0.1, math.inf]), "u_x", 2, f"Row 3: {NOT_FINITE}"),
        ((X, Y, [0.1, 0.1, 0.0]), "u_y", 2,
         "Row 3: the uncertainty of a reading must be above zero; give its real size."),
        ((X, Y, 0.1, [0.1, -0.1, 0.1]), "u_x", 1,
         "Row 2: the uncertainty of a position cannot be below zero; give its real size."),
        (([0.3, 0.3, 0.1 + 0.2], Y), "x", None, SAME),
        (([0.0, 0.0, 0.0], Y), "x", None, SAME),
        ((X, Y, None, 0.1), "u_y", None,
         "With uncertain positions the uncertainties of the readings are needed too; give both."),
        ((X[:2], Y[:2]), "y", None,
         "Two readings always lie on a line; add a third, or give the uncertainty of each."),
        (([-0.671, -0.402, 0.834, -1.583, 0.308], [0.373, 0.937, -0.580, -0.760, -0.193], 1.35, 1.97), "u_x", None,
         "The positions are too uncertain for their spread to tell a slope; measure at positions further apart."),
    ],
)  # fmt: skip
def test_refusals(arguments, field, row, words):
    with pytest.raises(InputError) as refused:
        fit_line(*arguments)
    assert (refused.value.field, refused.value.row, refused.value.message) == (field, row, words)


def test_a_slope_not_told_from_zero_has_no_inverse():
    with pytest.raises(InputError) as refused:
        fit_line([10, 20, 30, 40], [1.0, 1.1, 0.9, 1.0]).x_from_y(1.0)
    assert (refused.value.field, refused.value.message) == (
        "y",
        "The slope of the line is not told from zero, so no position can be read off it; measure at positions further "
        "apart.",
    )


@pytest.mark.parametrize("use", [lambda line: line.prediction(15.0), lambda line: line.x_from_y(1.5)])
def test_a_new_reading_of_unknown_uncertainty_is_refused(use):
    with pytest.raises(InputError) as refused:
        use(fit_line(X, Y, u_y=0.1))
    assert (refused.value.field, refused.value.message) == (
        "u_y", "The uncertainty of the new reading is needed here; give it beside the reading."
    )  # fmt: skip


def test_positions_that_fall_together_tell_no_slope():
    with pytest.raises(InputError) as caught:
        fit_line([1.0, 1.0 + 1e-15, 1.0 + 2e-15], [0.0, 1e9, -1e9], [1e-9] * 3, [1e9] * 3)
    assert caught.value.field in ("u_x", "x")


def test_positions_that_fall_together_once_corrected_tell_no_slope():
    with pytest.raises(InputError, match="too uncertain for their spread to tell a slope"):
        fit_line([0.0, 3.0, 3.0, 0.0], [-1e-6, 1e6, -1e-6, -1e3], [0.1, 1e-5, 1e-4, 10.0], [1e-5, 0.01, 1e-5, 1.0])
