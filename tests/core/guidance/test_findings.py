"""Small, real or not told: the limits at T/4 and T/10, and the scales of one print put together."""

import math

import numpy as np
import pytest
import statsmodels.api as sm

from core.errors import InputError
from core.guidance.findings import Size, common_scale, finding, scale_difference, tolerance_at
from core.part_size.sizeerror import fit_size_error
from core.quantity import Estimate, coverage_factor
from core.records.rows import Instrument
from tests.core.part_size.printouts import Faults, Print


@pytest.mark.parametrize(
    ("length_mm", "tolerance", "half_mm"),
    [
        (10.0, "m", 0.2),  # ISO 2768-1 table 1
        (100.0, "f", 0.15),
        (0.1, "m", 0.1),  # below the table its first row
        (9000.0, "m", 2.0),  # above it its last
        (20.0, "IT7", 0.0105),  # ISO 286-1 table 1: 21 um, half to either side
        (1e-9, "IT7", 0.005),
        (55.0, 0.3, 0.3),
    ],
)
def test_the_tolerance_at_a_length(length_mm, tolerance, half_mm):
    assert tolerance_at(length_mm, tolerance) == pytest.approx(half_mm)


@pytest.mark.parametrize("tolerance", ["medium", 0.0, -0.1, math.nan, math.inf])
def test_a_tolerance_that_there_is_not(tolerance):
    with pytest.raises(InputError) as refused:
        tolerance_at(20.0, tolerance)
    assert refused.value.field == "tolerance"


def one_sided(dof):
    return coverage_factor(dof, 0.90)


@pytest.mark.parametrize(
    ("effect_mm", "u_mm", "dof", "size"),
    [
        # T = 0.4: small below 0.1 by the one-sided guard band (JCGM 106), real above 0.04 and its own U
        (0.099 - one_sided(10) * 0.01, 0.01, 10, Size.SMALL),
        (0.101 - one_sided(10) * 0.01, 0.01, 10, Size.REAL),
        (-0.099 + one_sided(10) * 0.01, 0.01, 10, Size.SMALL),
        (0.0, 0.2, math.inf, Size.UNCLEAR),  # as it stands small, but not proved
        (0.0, 0.1 / coverage_factor(8) * 1.01, 8, Size.UNCLEAR),
        (0.0, 0.1 / coverage_factor(8) * 0.99, 8, Size.SMALL),
        (0.11, 0.06, math.inf, Size.UNCLEAR),  # not beyond its uncertainty
        (0.11, 0.05, math.inf, Size.REAL),
        (-0.5, 0.05, 5, Size.REAL),
    ],
)
def test_how_an_effect_is_judged(effect_mm, u_mm, dof, size):
    found = finding(Estimate("wall_outset", effect_mm / 2, u_mm / 2, dof, "mm"), 2.0, 20.0, 0.4)
    assert found.size is size
    assert (found.effect.value, found.effect.u, found.effect.dof) == (effect_mm, u_mm, dof)


def test_an_effect_that_is_sure_and_idle_is_small_however_sure():
    tiny = Estimate("scale_x", 1.6e-5, 1e-7, 10, "1")
    assert tiny.significant and finding(tiny, 55.0, 55.0, "m").size is Size.SMALL


def of_print(axes="xy", times=(1,), **beside):
    piece = Print(axes, times)
    size = piece.size_mm(Faults(scale=(0.003, -0.001)))[piece.reading]
    return piece, size + 0.02 * np.random.default_rng(1).standard_normal(size.size), beside


def test_difference_and_common_scale_of_one_print():
    """Exact contrasts of one least-squares fit: its own degrees of freedom, not those of two fits."""
    piece, size, _ = of_print()
    fit = piece.fit(size)
    theirs = sm.OLS(size - piece.nominal_mm, fit.terms.design).fit()
    difference, common = scale_difference(fit), common_scale(fit)
    assert (difference.unit, difference.dof, common.dof) == ("1", 17, 17)
    apart = theirs.t_test([1, -1, 0, 0, 0])
    assert (difference.value, difference.u) == (pytest.approx(apart.effect[0]), pytest.approx(apart.sd[0, 0]))
    restricted = theirs.t_test([0.5, 0.5, 0, 0, 0])  # two equal combs
    assert (common.value, common.u) == (pytest.approx(restricted.effect[0]), pytest.approx(restricted.sd[0, 0]))


def test_the_common_scale_leans_on_the_surer_axis():
    piece, size, _ = of_print(times=(1,) * 11 + (9,) * 11)
    short_x = [i for i, g in enumerate(piece.reading) if piece.axis[g] == "y" or piece.nominal_mm[g] < 60]
    columns = piece.columns()
    fit = fit_size_error(
        piece.nominal_mm[piece.reading][short_x],
        size[short_x],
        [columns["kind"][i] for i in short_x],
        axis=[columns["axis"][i] for i in short_x],
        feature=[columns["feature"][i] for i in short_x],
    )
    x, y, common = fit.estimate("scale_x"), fit.estimate("scale_y"), common_scale(fit)
    assert common.u < min(x.u, y.u) and abs(common.value - y.value) < abs(common.value - x.value)


def test_scales_that_share_one_doubt_are_averaged():
    """Where the caliper's own scale is all the doubt there is, neither axis is surer than the other."""
    L = np.array([10.0, 30.0, 60.0, 100.0, 140.0] * 2)
    axis = ["x"] * 5 + ["y"] * 5
    sure = Instrument("c", resolution_mm=1e-6, u_scale_ratio=0.5)
    fit = fit_size_error(L, L * np.repeat([1.001, 1.003], 5), ["same_facing"] * 10, axis=axis, instrument=sure)
    common = common_scale(fit)
    assert 0.001 <= common.value <= 0.003 and common.u == pytest.approx(0.5, rel=1e-3)


def test_one_axis_has_no_difference_and_is_its_own_common_scale():
    piece, size, _ = of_print("y")
    fit = piece.fit(size)
    assert scale_difference(fit) is None and common_scale(fit) == fit.estimate("scale_y")
    x_only = Print("x").fit(Print("x").nominal_mm + 0.01 * np.arange(11) % 0.03)
    assert common_scale(x_only) == x_only.estimate("scale_x")
