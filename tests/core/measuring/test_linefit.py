"""Least squares against certified values, against an independent program, and against its own promises."""

import numpy as np
import pytest
import statsmodels.api as sm
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.measuring.linefit import fit_linear
from tests.published import columns, table

WITHOUT_INTERCEPT = ("NoInt1", "NoInt2")


def nist(name):
    """Return design and readings of a NIST data set."""
    if name == "Longley":
        y, *x = columns("linefit_nist_longley", "y", *(f"x{i}" for i in range(1, 7)))
        return np.column_stack([np.ones_like(y), *x]), y
    if name.startswith("Wampler"):
        x, y = columns("linefit_nist_wampler", "x", f"y{name[-1]}")
        return np.vander(x, 6, increasing=True), y
    x, y = columns(f"linefit_nist_{name.lower()}", "x", "y")
    return x[:, None] if name in WITHOUT_INTERCEPT else np.column_stack([np.ones_like(x), x]), y


@pytest.mark.parametrize(
    "certified", table("linefit_nist_certified"), ids=lambda row: f"{row['set']} {row['parameter']}"
)
def test_nist_certified_values_to_nine_digits(certified):
    fit = fit_linear(*nist(certified["set"]))
    s = np.sqrt(fit.ssr / fit.dof)
    if certified["parameter"] == "residual_sd":
        assert s == pytest.approx(float(certified["value"]), rel=1e-9, abs=1e-6)
        return
    j = int(certified["parameter"][1:]) - (certified["set"] in WITHOUT_INTERCEPT)
    assert fit.coef[j] == pytest.approx(float(certified["value"]), rel=1e-9)
    assert s * np.sqrt(fit.unscaled_cov[j, j]) == pytest.approx(float(certified["sd"]), rel=1e-9, abs=1e-6)


@pytest.mark.parametrize("seed", range(20))
def test_an_independent_program_gives_the_same(seed):
    rng = np.random.default_rng(seed)
    m, p = int(rng.integers(8, 40)), int(rng.integers(1, 6))
    X, y, w = rng.normal(size=(m, p)) * 10.0 ** rng.integers(-4, 5, p), rng.normal(size=m), rng.uniform(0.01, 100, m)
    ours, referee = fit_linear(X, y, w), sm.WLS(y, X, weights=w).fit()
    assert ours.coef == pytest.approx(referee.params, rel=1e-9)
    assert np.sqrt(np.diag(ours.unscaled_cov) * ours.ssr / ours.dof) == pytest.approx(referee.bse, rel=1e-9)
    assert ours.unscaled_cov == pytest.approx(referee.normalized_cov_params, rel=1e-8, abs=1e-300)
    assert ours.residual == pytest.approx(referee.resid, rel=1e-9, abs=1e-12)
    assert ours.leverage == pytest.approx(np.sum(referee.model.wexog * referee.model.pinv_wexog.T, axis=1), rel=1e-9)
    assert ours.solver @ y == pytest.approx(ours.coef, rel=1e-9)
    assert (ours.dof, ours.rank) == (m - p, p)


scales = st.sampled_from([1e-6, 1e-3, 1.0, 25.4, 1e6])


@given(seed=st.integers(0, 10**6), scale_x=scales, scale_y=scales, scale_w=scales)
def test_no_unit_sways_the_answer(seed, scale_x, scale_y, scale_w):
    rng = np.random.default_rng(seed)
    L, y, w = rng.uniform(1, 300, 7), rng.normal(size=7), rng.uniform(0.5, 2, 7)
    one, two = np.column_stack([L, 2 * np.ones(7)]), np.column_stack([L * scale_x, 2 * np.ones(7)])
    here, there = fit_linear(one, y, w), fit_linear(two, y * scale_y, w * scale_w)
    assert there.coef * [scale_x, 1] / scale_y == pytest.approx(here.coef, rel=1e-9, abs=1e-12)
    assert there.leverage == pytest.approx(here.leverage, rel=1e-9)
    assert there.ssr / scale_y**2 / scale_w == pytest.approx(here.ssr, rel=1e-9)


@pytest.mark.parametrize("unit", [1e-9, 1e-3, 1.0, 1e3, 1e9])
def test_what_outside_lengths_alone_determine(unit):
    L = np.array([10.0, 40.0, 100.0]) * unit
    outside = np.column_stack([L, [2, 2, 2], [-1, -1, -1]])  # scale, wall outset, lost motion
    fit = fit_linear(outside, 0.001 * L + 0.05)
    assert fit.rank == 2 and fit.dof == 1
    asked = {
        "scale": [1, 0, 0],
        "outset": [0, 1, 0],
        "lost motion": [0, 0, 1],
        "2w - B": [0, 2, -1],
        "nothing": [0, 0, 0],
    }
    told = {name for name, combination in asked.items() if fit.determines(combination)}
    assert told == {"scale", "2w - B", "nothing"}
    assert fit.coef @ [0, 2, -1] == pytest.approx(0.05)
    assert outside @ fit.null_space == pytest.approx(0, abs=1e-9 * max(unit, 1))


@pytest.mark.parametrize("unit", [1e-9, 1.0, 1e9])
def test_one_length_determines_no_parameter(unit):
    fit = fit_linear([[20.0 * unit, 2.0]], [0.1])
    assert fit.rank == 1 and not fit.determines([1, 0]) and not fit.determines([0, 1])
    assert fit.determines([20.0 * unit, 2.0])


def test_a_column_of_zeros_is_left_open():
    fit = fit_linear([[1.0, 0.0], [2.0, 0.0]], [1.0, 2.0])
    assert fit.determines([1, 0]) and not fit.determines([0, 1])
    assert fit.coef.tolist() == [pytest.approx(1.0), 0.0] and fit.condition == 1.0


def test_a_design_of_zeros_determines_nothing():
    fit = fit_linear(np.zeros((3, 2)), [1.0, 2.0, 3.0])
    assert (fit.rank, fit.dof, fit.condition) == (0, 3, 1.0) and fit.coef.tolist() == [0.0, 0.0]


def test_weak_combinations_count_as_open_at_a_coarser_rank_ratio():
    nearly = np.column_stack([np.ones(4), 1 + np.array([0, 1e-5, 2e-5, 4e-5])])
    assert fit_linear(nearly, np.ones(4)).rank == 2
    assert fit_linear(nearly, np.ones(4), rank_ratio=1e-3).rank == 1


def test_many_readings_need_little_memory():
    fit = fit_linear(np.vander(np.linspace(-1, 1, 20_000), 3), np.ones(20_000))  # a square factor would take 3.2 GB
    assert fit.coef == pytest.approx([0, 0, 1], abs=1e-12)


def test_the_result_cannot_be_changed():
    fit = fit_linear([[1.0], [2.0]], [1.0, 2.0])
    with pytest.raises(ValueError, match="read-only"):
        fit.coef[0] = 5.0


SQUARE = [[1.0, 0.0], [1.0, 1.0]]


@pytest.mark.parametrize(
    ("design", "y", "weights", "field", "words"),
    [
        (SQUARE, [1.0], None, "y", "differ in number"),
        (SQUARE, [[1.0, 2.0]], None, "y", "differ in number"),
        (SQUARE, [1.0, 2.0], [1.0], "y", "differ in number"),
        (np.zeros((0, 2)), [], None, "y", "differ in number"),
        (SQUARE, [1.0, np.nan], None, "y", "not a finite number"),
        ([[1.0, np.inf], [1.0, 1.0]], [1.0, 2.0], None, "y", "not a finite number"),
        (SQUARE, [1.0, 2.0], [1.0, 0.0], "weights", "zero or not finite"),
        (SQUARE, [1.0, 2.0], [1.0, -1.0], "weights", "zero or not finite"),
        (SQUARE, [1.0, 2.0], [1.0, np.inf], "weights", "zero or not finite"),
    ],
)
def test_refusals(design, y, weights, field, words):
    with pytest.raises(InputError, match=words) as refused:
        fit_linear(design, y, weights)
    assert refused.value.field == field
