"""Pads of one layer: the mean of the GUM's readings; t, F and chi-squared of scipy and statsmodels; refusals."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.machine_geometry.firstlayer import Printed, Spread, measure_first_layer
from core.quantity import Estimate
from core.records.rows import Instrument
from tests.published import columns, printed

PERFECT = Instrument("", "micrometer", 0.0)
MICROMETER = Instrument("", "micrometer", 0.001, 0.003, u_scale_ratio=0.001)
SET = Printed(0.2, -0.15, 0.4)
PADS = (0.182, 0.176, 0.185, 0.179, 0.183)
X, Y = (110.0, 40.0, 180.0, 180.0, 40.0), (110.0, 40.0, 40.0, 180.0, 180.0)


def test_mean_and_its_uncertainty_are_those_of_the_guide():
    """JCGM 100:2008 4.4.3, table 1; one degree as one micrometre."""
    (degrees,) = columns("gum_temperatures", "t_c")
    found = measure_first_layer(degrees / 1000.0, Printed(0.1, 0.0, 0.4), PERFECT)
    assert 1000.0 * (found.error.value + 0.1) == printed("100.145")
    assert 1000.0 * found.error.u == printed("0.333")
    assert found.error.dof == 19
    assert 1000.0 * found.scatter.value == printed("1.489")


def test_the_interval_is_the_t_interval_of_scipy():
    from scipy import stats

    found = measure_first_layer(PADS, SET, PERFECT)
    low, high = stats.t.interval(0.95, 4, loc=np.mean(PADS) - 0.2, scale=stats.sem(PADS))
    assert (found.error.value - found.error.U, found.error.value + found.error.U) == pytest.approx((low, high))


def test_instrument_and_flow_add_what_no_averaging_removes():
    found = measure_first_layer(PADS, SET, MICROMETER, u_flow_ratio=0.02)
    parts = (np.std(PADS, ddof=1) / math.sqrt(5), 0.003, 0.001 * np.mean(PADS), 0.001 / math.sqrt(12), 0.2 * 0.02)
    assert found.error.u == pytest.approx(math.hypot(*parts))
    assert found.error.dof == pytest.approx(4 * (found.error.u / parts[0]) ** 4)  # JCGM 100:2008 G.2b


@pytest.mark.parametrize(("thickness_mm", "offset_mm"), [(0.15, -0.10), (0.25, -0.20)])
def test_too_thin_raises_the_nozzle_and_too_thick_lowers_it(thickness_mm, offset_mm):
    found = measure_first_layer([thickness_mm] * 3, SET, MICROMETER)
    assert found.offset.value == pytest.approx(offset_mm)
    assert found.offset.u == found.error.u
    assert not found.good


def test_good_and_proved_good_are_two_things():
    near = measure_first_layer([0.201, 0.199, 0.200, 0.201, 0.2], SET, MICROMETER)
    wide = measure_first_layer([0.230, 0.175, 0.210, 0.185, 0.2], SET, MICROMETER)
    assert near.good and near.proved_good
    assert wide.good and not wide.proved_good


@pytest.mark.parametrize("slope", [0.0, 2e-4, 6e-4])
def test_the_plane_is_proved_where_statsmodels_says_so(slope):
    import statsmodels.api as sm

    rng = np.random.default_rng(8)
    x, y = np.tile([20.0, 110.0, 200.0], 3), np.repeat([20.0, 110.0, 200.0], 3)
    t = 0.2 + slope * (x - 110.0) - slope / 2 * (y - 110.0) + rng.normal(0.0, 0.012, 9)
    fit = sm.OLS(t, sm.add_constant(np.column_stack([x, y]))).fit()
    found = measure_first_layer(t, SET, PERFECT, x_mm=x, y_mm=y)
    told = fit.t_test([0.0, *(np.sign(fit.params[1:]) * 180.0)])
    assert found.fall.proved == (fit.f_pvalue < 0.05)
    assert (found.fall.size.value, found.fall.size.u) == pytest.approx((told.effect[0], told.sd[0, 0]))
    assert found.fall.size.dof == 6
    assert found.fall.matters == (slope == 6e-4)
    assert [e.name for e in found.estimates()][-1] == "first_layer_fall"


def test_a_tilt_below_a_quarter_of_the_layer_does_not_matter():
    t = [0.200, 0.190, 0.2101, 0.2099, 0.190]
    found = measure_first_layer(t, SET, MICROMETER, x_mm=X, y_mm=Y)
    assert found.fall.proved and not found.fall.matters


def test_readings_that_agree_to_the_last_digit_prove_no_tilt_by_it():
    same = measure_first_layer([0.2] * 5, SET, MICROMETER, x_mm=X, y_mm=Y)
    assert not same.fall.proved and same.fall.size.u > 0
    digit = measure_first_layer([0.20, 0.20, 0.21, 0.20, 0.20], SET, Instrument("", "caliper", 0.01), x_mm=X, y_mm=Y)
    assert not digit.fall.proved
    exact = measure_first_layer([0.2, 0.19, 0.21, 0.21, 0.19], SET, PERFECT, x_mm=X, y_mm=Y)
    assert exact.fall.proved


@pytest.mark.parametrize(
    ("x_mm", "y_mm", "n"),
    [((), (), 5), (X, (math.nan, *Y[1:]), 5), (X[:3], Y[:3], 3), (X, X, 5)],
    ids=["none", "one not told", "three", "in a line"],
)
def test_without_places_there_is_no_plane(x_mm, y_mm, n):
    found = measure_first_layer(PADS[:n], SET, MICROMETER, x_mm=x_mm, y_mm=y_mm)
    assert found.fall is None
    assert [e.name for e in found.estimates()] == ["first_layer_error", "height_offset", "first_layer_spread"]


@pytest.mark.parametrize("flatness_mm", [0.0, 0.02, 0.05, 0.2])
def test_the_spread_is_held_against_the_bed_by_chi_squared(flatness_mm):
    from scipy import stats

    t = [0.182, 0.166, 0.205, 0.179, 0.193]
    found = measure_first_layer(t, SET, MICROMETER, flatness=Estimate("bed_flatness", flatness_mm, 0.01, 8.0, "mm"))
    variance = flatness_mm**2 / 12 + 0.001**2 / 12 + 0.005**2
    p = stats.chi2.sf(4 * np.var(t, ddof=1) / variance, 4)
    assert found.spread == (Spread.BY_BED if p > 0.05 else Spread.MORE_THAN_BED)


def test_without_a_flatness_nothing_explains_the_spread():
    assert measure_first_layer(PADS, SET, MICROMETER).spread is Spread.NO_FLATNESS


def test_a_place_far_from_the_others_is_flagged():
    found = measure_first_layer([0.182, 0.176, 0.300, 0.179, 0.183], SET, MICROMETER)
    assert found.flagged.tolist() == [False, False, True, False, False]
    assert not measure_first_layer([0.182, 0.176, 0.3], SET, MICROMETER).flagged.any()
    with pytest.raises(ValueError, match="read-only"):
        found.thickness_mm[0] = 1.0


def test_the_interval_covers_the_gap():
    """2000 machines with scatter, a zero error of the gauge and a flow known to 2 %; seeded."""
    rng = np.random.default_rng(5)
    held = 0
    for _ in range(2000):
        gap = 0.2 * (1.0 + rng.normal(0.0, 0.02)) + rng.normal(0.0, 0.003)
        t = gap + rng.normal(0.0, 0.01, 5)
        error = measure_first_layer(t, SET, Instrument("", "micrometer", 0.001, 0.003), u_flow_ratio=0.02).error
        held += abs(error.value) <= error.U
    assert 0.93 < held / 2000 < 0.975


@pytest.mark.parametrize(
    ("t", "change", "field", "row", "words"),
    [
        ([0.2, 0.0, 0.2], {}, "thickness_mm", 1, "is none. Zero the gauge"),
        ([0.2, 0.2, -0.1], {}, "thickness_mm", 2, "is none. Zero the gauge"),
        ([math.nan, 0.2, 0.2], {}, "thickness_mm", 0, "is none. Zero the gauge"),
        ([0.2, 0.41, 0.2], {}, "thickness_mm", 1, "more than the bore of 0.4 mm"),
        ([0.2, 0.2], {}, "thickness_mm", None, "2 of 3 places so far"),
        ([], {}, "thickness_mm", None, "0 of 3 places so far"),
        ([0.9] * 3, {"printed": Printed(0.3, 0.0, 1.0)}, "thickness_mm", None, "Check the homing first"),
        ([0.2] * 3, {"u_flow_ratio": 1.5}, "u_flow_ratio", None, "a share from 0 to 1"),
        ([0.2] * 3, {"x_mm": [1.0, 2.0]}, "x_mm", None, "differ in number"),
    ],
)
def test_what_is_no_pad_is_refused(t, change, field, row, words):
    with pytest.raises(InputError, match=words) as refused:
        measure_first_layer(t, **{"printed": SET, "instrument": MICROMETER, **change})
    assert (refused.value.field, refused.value.row) == (field, row)


@pytest.mark.parametrize(
    ("asked", "field", "words"),
    [
        ((0.0, 0.0, 0.4), "layer_mm", "first layer of 0 mm is not above 0"),
        ((-0.2, 0.0, 0.4), "layer_mm", "not above 0"),
        ((0.5, 0.0, 0.4), "layer_mm", "up to the bore of 0.4 mm"),
        ((0.2, 12.0, 0.4), "offset_mm", "more than 10 mm; type the one in force"),
        ((0.2, 0.0, 0.0), "nozzle_mm", "not between 0.1 and 3 mm"),
        ((0.2, 0.0, 4.0), "nozzle_mm", "not between 0.1 and 3 mm"),
    ],
)
def test_what_was_not_printed_so_is_refused(asked, field, words):
    with pytest.raises(InputError, match=words) as refused:
        Printed(*asked)
    assert refused.value.field == field
