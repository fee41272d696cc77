"""Many lines in one call: the books' lines among others, an independent program, and what a 95 % interval promises."""

import math

import numpy as np
import pytest
import statsmodels.api as sm

from core.errors import InputError
from core.measuring.lines import fit_lines
from core.quantity import coverage_factor
from tests.published import columns, printed, table


def test_iso_28037_example_1_among_others():
    """ISO/TS 28037:2010 example 1 (clause 6), parameters as printed, between two other lines."""
    x, y, u = columns("straightline_iso28037", "x", "y", "u_y", example="1")
    up = np.array([0.0, 1.0, 5.0])
    three = ([up, x, up], [up, y, -up], [up + 1, u, up + 1])
    lines = fit_lines(np.repeat([0, 1, 2], [3, x.size, 3]), *map(np.concatenate, three))
    covariance = lines.covariance()[1]
    assert lines.value()[1] == printed("1.867") and lines.slope[1] == printed("1.757")
    assert math.sqrt(covariance[0, 0]) == printed("0.465") and math.sqrt(covariance[1, 1]) == printed("0.120")
    assert covariance[0, 1] == covariance[1, 0] == printed("-0.050")
    assert (lines.chi2[1], lines.spare[1], lines.s) == (printed("1.665"), 4, None)
    assert lines.slope[[0, 2]] == pytest.approx([1.0, -1.0])


def test_nist_norris_among_a_thousand():
    """NIST StRD, Norris: certified values, in a call of more readings than are added up in one go."""
    certified = {row["parameter"]: row for row in table("linefit_nist_certified", set="Norris")}
    x, y = columns("linefit_nist_norris", "x", "y")
    lines = fit_lines(np.repeat(np.arange(1000), x.size), np.tile(x, 1000), np.tile(y, 1000))
    u = np.sqrt(lines.covariance()[:, [0, 1], [0, 1]])
    for place in (0, 499, 999):
        found = [lines.value()[place], lines.slope[place]]
        assert found == pytest.approx([float(certified[b]["value"]) for b in ("B0", "B1")], rel=1e-9)
        assert u[place].tolist() == pytest.approx([float(certified[b]["sd"]) for b in ("B0", "B1")], rel=1e-9)
        assert lines.s[place] == pytest.approx(float(certified["residual_sd"]["value"]), rel=1e-9)


@pytest.mark.parametrize("seed", range(4))
@pytest.mark.parametrize("known", [True, False])
def test_an_independent_program_gives_the_same_for_lines_of_any_length_in_any_order(seed, known):
    rng = np.random.default_rng(seed)
    of_line = rng.permutation(np.repeat([3, 7, 20, 21], [3, 40, 5, 9]))
    x = rng.uniform(-50, 300, of_line.size)
    u = rng.uniform(0.005, 0.1, of_line.size)
    y = rng.normal(0.05 + 0.001 * x * of_line, u)
    lines = fit_lines(of_line, x, y, u if known else None)
    for place, number in enumerate((3, 7, 20, 21)):
        mine = of_line == number
        weights = 1 / u[mine] ** 2 if known else np.ones(mine.sum())
        referee = sm.WLS(y[mine], sm.add_constant(x[mine]), weights=weights)
        referee = referee.fit(cov_type="fixed scale") if known else referee.fit()
        assert [lines.value()[place], lines.slope[place]] == pytest.approx(referee.params, rel=1e-8)
        assert lines.covariance()[place] == pytest.approx(referee.cov_params(), rel=1e-7)
        assert lines.value(100.0)[place] == pytest.approx(referee.params @ [1.0, 100.0], rel=1e-8)
        assert (lines.chi2[place], lines.spare[place]) == (pytest.approx(referee.ssr), mine.sum() - 2)


def test_the_interval_holds_the_true_slope_in_95_of_100():
    """Simulated: 4000 lines of five readings each; 95 % within three standard deviations of such a count."""
    rng = np.random.default_rng(8)
    of_line = np.repeat(np.arange(4000), 5)
    x = rng.uniform(10, 200, of_line.size)
    lines = fit_lines(of_line, x, rng.normal(0.03 - 0.002 * x, 0.02))
    held = np.mean(np.abs(lines.slope + 0.002) <= coverage_factor(3.0) * lines.u_slope)
    assert held == pytest.approx(0.95, abs=3 * math.sqrt(0.95 * 0.05 / 4000))


L, X, Y = [1, 1, 1, 2, 2, 2], [1.0, 2.0, 3.0, 1.0, 2.0, 3.0], [0.1, 0.2, 0.3, 0.1, 0.2, 0.2]


@pytest.mark.parametrize(
    ("arguments", "field", "row", "words"),
    [
        (([], [], []), "x", None, "The positions and the readings differ in number; check the columns."),
        ((L, X, Y[:3]), "x", None, "The positions and the readings differ in number; check the columns."),
        ((L[:3], X, Y), "x", None, "The positions and the readings differ in number; check the columns."),
        ((L, X, Y, [0.1, 0.1]), "u_y", None,
         "The uncertainties and the readings differ in number; give one for each or one for all."),
        ((L, [*X[:5], math.nan], Y), "x", 5, "Row 6: this is not a finite number; remove or retype it."),
        ((L, X, [math.inf, *Y[1:]]), "y", 0, "Row 1: this is not a finite number; remove or retype it."),
        ((L, X, Y, [0.1, 0.0, 0.1, 0.1, 0.1, 0.1]), "u_y", 1,
         "Row 2: the uncertainty of a reading must be above zero; give its real size."),
        ((L, [*X[:3], 5.0, 5.0, 5.0], Y), "x", None,
         "Line 2: all its positions are the same; measure at two different ones at least."),
        (([1, 1, 2, 2, 2, 2], X, Y), "y", None,
         "Line 1: two readings always lie on a line; add a third, or give the uncertainty of each."),
    ],
)  # fmt: skip
def test_refusals(arguments, field, row, words):
    with pytest.raises(InputError) as refused:
        fit_lines(*arguments)
    assert (refused.value.field, refused.value.row, refused.value.message) == (field, row, words)


def test_two_readings_with_uncertainties_make_a_line():
    lines = fit_lines([0, 0], [10, 20], [1.0, 3.0], u_y=0.1)
    assert (lines.slope[0], lines.u_slope[0]) == pytest.approx((0.2, 0.1 * math.sqrt(2) / 10))
