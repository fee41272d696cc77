"""The plane of a bed. Expected: general least-squares libraries, own computation, planted tilt."""

import math

import numpy as np
import pytest
import scipy.linalg
import statsmodels.api as sm

from core.errors import InputError
from core.machine_geometry.bedplane import fit_bed, plan_probes
from core.quantity import Estimate

GRID = np.array(plan_probes(220, 220, 3))
X, Y = GRID.T
FIVE = ([20, 200, 200, 20, 110], [20, 20, 200, 200, 110], [0.05, 0.15, 0.02, -0.08, 0.04])


def bed(seed=1, noise=0.02):
    return 0.1 + 4e-4 * X - 2e-4 * Y + np.random.default_rng(seed).normal(0, noise, X.size)


def test_five_probes_by_hand():
    plane = fit_bed(*FIVE)
    assert plane.coef == pytest.approx([0.05433, 0.00055556, -0.00072222], abs=5e-6)
    assert plane.residual_mm == pytest.approx([-0.001, -0.001, -0.001, -0.001, 0.004], abs=1e-12)
    assert plane.flatness_mm == pytest.approx(0.005)
    assert plane.height([20.0], [20.0]) == pytest.approx([0.051])


@pytest.mark.parametrize("seed", range(4))
def test_plane_and_covariance_are_those_of_general_libraries(seed):
    z = bed(seed)
    plane = fit_bed(X, Y, z)
    design = np.column_stack([np.ones(X.size), X, Y])
    coef, *_ = scipy.linalg.lstsq(design, z)
    assert plane.coef == pytest.approx(coef, rel=1e-10)
    assert plane.coef == pytest.approx(np.linalg.lstsq(design, z, rcond=None)[0], rel=1e-10)
    known = sm.OLS(z, np.column_stack([np.ones(X.size), X - X.mean(), Y - Y.mean()])).fit()
    assert plane.cov == pytest.approx(known.cov_params(), rel=1e-9, abs=1e-18)
    assert plane.residual_mm == pytest.approx(known.resid, abs=1e-12)
    assert plane.dof == known.df_resid
    corner = known.get_prediction([[1.0, 200 - X.mean(), 200 - Y.mean()]])
    run = np.array([1.0, 200 - X.mean(), 200 - Y.mean()])
    assert math.sqrt(run @ plane.cov @ run) == pytest.approx(corner.se_mean[0], rel=1e-9)


def test_touches_at_one_place_tell_the_probe_and_pull_no_harder():
    rng = np.random.default_rng(7)
    z = bed(7)
    again = rng.normal(z[4], 0.004, 10)
    plane = fit_bed([*X, *[X[4] + 0.3] * 10], [*Y, *[Y[4]] * 10], [*z, *again])
    assert plane.touches.tolist() == [1, 1, 1, 1, 11, 1, 1, 1, 1]
    assert plane.row_place.tolist() == [*range(9), *[4] * 10]
    touches = np.array([z[4], *again])
    assert plane.probe.value == pytest.approx(touches.std(ddof=1))
    assert plane.probe.dof == 10 and plane.probe.u == pytest.approx(plane.probe.value / math.sqrt(20))
    mean = z.copy()
    mean[4] = touches.mean()
    plain = np.linalg.lstsq(np.column_stack([np.ones(9), X, Y]), mean, rcond=None)[0]
    assert plane.coef == pytest.approx(plain, rel=0.01)
    u = plane.probe.value / math.sqrt(np.sum((X - X.mean()) ** 2))  # u(c1) = s_p/sqrt(sum (x - mean x)^2)
    assert plane.estimates()[0].u == pytest.approx(u, rel=1e-3)
    assert [e.name for e in plane.estimates()] == ["bed_tilt_x", "bed_tilt_y", "bed_flatness", "probe_sd"]
    assert not plane.minds


def test_an_earlier_probe_counts_where_nothing_was_touched_again():
    earlier = Estimate("probe_sd", 0.005, 0.001, 9.0, "mm")
    plane = fit_bed(X, Y, bed(), known_probe=earlier)
    assert plane.dof == 9 and plane.probe is None and not plane.minds
    assert plane.estimates()[0].u == pytest.approx(0.005 / math.sqrt(np.sum((X - X.mean()) ** 2)))
    assert plane.u_flatness_mm == pytest.approx(0.005 * math.sqrt(2))
    assert any("touch one ten times" in says for says in fit_bed(X, Y, bed()).minds)


def test_the_true_tilt_lies_in_the_interval_as_often_as_it_says():
    rng = np.random.default_rng(8)
    inside = 0
    for _ in range(2000):
        tilt = fit_bed(X, Y, 4e-4 * X - 2e-4 * Y + rng.normal(0, 0.02, 9)).estimates()[0]
        inside += abs(tilt.value - 4e-4) <= tilt.U
    assert 0.93 <= inside / 2000 <= 0.97


@pytest.mark.parametrize("cx, cy", [(5e-4, 3e-4), (-5e-4, 3e-4), (5e-4, -3e-4), (-5e-4, -3e-4), (0.0, 0.0)])
def test_the_tilt_over_the_bed_has_no_sign(cx, cy):
    plane = fit_bed(X, Y, cx * X + cy * Y)
    assert plane.tilt_over_bed().value == pytest.approx(180 * (abs(cx) + abs(cy)), abs=1e-12)


def test_cold_and_hot_are_kept_apart():
    names = [e.name for e in fit_bed(X, Y, bed(), hot=False).estimates()]
    assert names == ["bed_tilt_x_cold", "bed_tilt_y_cold", "bed_flatness_cold"]
    assert any("Probed cold" in says for says in fit_bed(X, Y, bed(), hot=False).minds)
    doubtful = fit_bed(X, Y, bed(), bed_c=24.0, print_c=60.0)
    assert not doubtful.hot
    assert any(says.startswith("The bed was at 24 °C and is printed on at 60 °C") for says in doubtful.minds)
    for temperatures in ({"bed_c": 55.0, "print_c": 60.0}, {"bed_c": 24.0}, {"print_c": 60.0}, {}):
        assert fit_bed(X, Y, bed(), **temperatures).hot


def test_a_place_that_stands_out_is_flagged():
    z = 4e-4 * X + np.random.default_rng(3).normal(0, 0.004, 9)
    z[2] += 0.3
    assert fit_bed(X, Y, z).flagged.tolist() == [False, False, True, *[False] * 6]
    assert not fit_bed(X, Y, bed(3, 0.01)).flagged.any()
    assert not fit_bed(X[:4], Y[:4] + [0, 0, 0, 9], bed()[:4]).flagged.any()
    lone = fit_bed([0, 10, 20, 30, 100], [0, 0, 0, 0, 100], [0, 0, 0, 0, 5.0])  # one place alone holds the slope
    assert not lone.flagged.any()


def test_a_bed_with_a_step_of_a_millimetre_is_no_single_bad_probe():
    z = np.where(X > 100, 1.2, 0.0) + np.random.default_rng(3).normal(0, 0.1, 9)
    assert fit_bed(X, Y, z).flatness_mm > 0.5


# Refusals


def test_swarf_under_a_probe_is_refused_with_its_number():
    z = bed(2)
    z[6] += 1.9
    with pytest.raises(InputError, match=r"Probe 7 is 1\.\d\d mm from the plane of the others") as refused:
        fit_bed(X, Y, z)
    assert (refused.value.field, refused.value.row) == ("z_mm", 6)


def test_a_probe_that_scatters_is_refused():
    with pytest.raises(InputError, match="more than 0.03 mm") as refused:
        fit_bed([*X, X[0], X[0]], [*Y, Y[0], Y[0]], [*bed(), 0.5, 0.3])
    assert (refused.value.field, refused.value.row) == ("z_mm", 9)
    pair = fit_bed([*X, X[0]], [*Y, Y[0]], [*bed(), 0.2])  # two touches are no repeatability
    assert pair.probe is None


@pytest.mark.parametrize(
    "x, y, z, field, words, row",
    [
        (X[:3], Y[:3], X[:3], "z_mm", "Places probed so far: 3", None),
        (X + Y / 9, 2 * X + 2 * Y / 9, X, "x_mm", "All places lie in one line; probe at places beside it", None),
        (X, Y, X[:-1], "z_mm", "differ in number", None),
        ([], [], [], "z_mm", "differ in number, or there are none", None),
        (X, Y, np.where(X > 150, np.nan, X), "z_mm", "not a finite number", 2),
    ],
)
def test_what_makes_no_plane_is_refused(x, y, z, field, words, row):
    with pytest.raises(InputError, match=words) as refused:
        fit_bed(x, y, z)
    assert (refused.value.field, refused.value.row) == (field, row)


# The plan


def test_probes_go_there_and_back_inside_the_margin():
    assert plan_probes(220, 200, 3) == [
        (20, 20), (110, 20), (200, 20), (200, 100), (110, 100), (20, 100), (20, 180), (110, 180), (200, 180),
    ]  # fmt: skip
    assert len(set(plan_probes(180, 180, 5))) == 25
    assert all(x >= 20 for x, _ in plan_probes(30, 30, 3))


@pytest.mark.parametrize("across", [-3, 0, 1, 51])
def test_a_grid_that_cannot_be_planned(across):
    with pytest.raises(InputError, match=f"{across} places a side cannot be planned; type 2 to 50"):
        plan_probes(220, 220, across)
