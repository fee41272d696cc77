"""Errors shared out among their causes, changes tried on parts, wrong moves shown."""

import numpy as np
import pytest

from core.errors import InputError
from core.part_size.features import FeatureKind
from core.part_size.forecast import small_piece_effect
from core.part_size.prediction import Changes
from core.part_size.sizeerror import fit_size_error
from core.part_size.whose import (
    UNEXPLAINED,
    UNTOLD,
    USUAL_PARTS,
    Part,
    all_to_steps,
    share_out,
    stop_words,
    what_if,
)
from core.quantity import coverage_factor
from core.records.rows import Instrument
from tests.core.part_size.printouts import Faults, Print

TRUE = Faults(scale=(-0.004, 0), wall_outset_mm=0.05, lost_motion_mm=(0.03, 0))


def of_comb(faults=TRUE, sd=0.006, seed=1):
    piece = Print("x")
    return piece.fit(piece.size_mm(faults) + sd * np.random.default_rng(seed).standard_normal(piece.nominal_mm.size))


def test_the_shares_of_a_feature_add_up_to_its_error():
    fit = of_comb()
    shares = share_out(fit)
    assert set(shares.names) == {"scale", "wall_outset", "lost_motion", UNEXPLAINED} and shares.names[-1] == UNEXPLAINED
    assert shares.value_mm.sum(axis=1) == pytest.approx(fit.error_mm)
    row = next(i for i, k in enumerate(shares.kinds) if k is FeatureKind.OUTSIDE)
    by = dict(zip(shares.names, shares.value_mm[row], strict=True))
    assert by["scale"] == pytest.approx(-0.004 * shares.nominal_mm[row], abs=0.03)
    assert by["wall_outset"] == pytest.approx(0.10, abs=0.03) and by["lost_motion"] == pytest.approx(-0.03, abs=0.03)


def test_shares_depend_on_one_another():
    """Scale and outset of a long tooth are told against each other: together they are better known than as squares."""
    shares = share_out(of_comb())
    longest = int(np.argmax(shares.nominal_mm))
    squares = np.sqrt(np.sum(shares.u_mm[longest, :-1] ** 2))
    assert shares.explained_u_mm[longest] < 0.9 * squares
    fit = of_comb()
    u = fit.estimate("scale_x").u * shares.nominal_mm[longest]
    assert shares.u_mm[longest, shares.names.index("scale")] == pytest.approx(u, rel=1e-6)


def test_what_readings_do_not_tell_apart_is_one_share():
    nominal = [20.0, 40.0, 60.0, 80.0, 100.0, 120.0]
    rng = np.random.default_rng(2)
    fit = fit_size_error(nominal, [n * 0.996 + 0.08 + 0.005 * rng.standard_normal() for n in nominal], ["outside"] * 6)
    shares = share_out(fit)
    assert shares.names == ("scale", UNTOLD, UNEXPLAINED)
    assert shares.value_mm[:, 1] == pytest.approx(0.08, abs=0.02)
    tall = fit_size_error([5.0, 10, 20, 40, 60], [4.92, 9.93, 19.91, 39.92, 59.91], ["height"] * 5, axis=["z"] * 5)
    assert share_out(tall).names == ("scale", "squash", UNEXPLAINED)


def test_the_scale_is_shrinkage_and_the_machines_share_where_the_shop_tells():
    fit = of_comb()
    whole, told = share_out(fit), share_out(fit, {"x": (0.001, 0.0002)})
    assert told.names[:2] == ("shrinkage", "machine") and told.value_mm.sum(axis=1) == pytest.approx(fit.error_mm)
    assert told.value_mm[:, 1] == pytest.approx(0.001 * fit.nominal_mm)
    assert told.value_mm[:, 0] + told.value_mm[:, 1] == pytest.approx(whole.value_mm[:, 0])
    assert told.u_mm[:, 1] == pytest.approx(0.0002 * fit.nominal_mm)
    assert share_out(fit, {}).names == whole.names
    assert np.all(share_out(fit, {"y": (0.001, 0.0002)}).value_mm[:, 1] == 0)


def test_a_change_is_tried_on_the_shops_parts():
    fit = of_comb()
    found = what_if(fit, USUAL_PARTS, Changes(-0.05, {"x": 1.004}), np.random.default_rng(3))
    assert [p.nominal_mm for p in found.parts] == [25, 70, 180, 35]
    assert [p.axis for p in found.untold] == ["y", "z"]
    assert not found.worse.any() and not found.unsure.any()
    parts = [Part("", "x", FeatureKind.OUTSIDE, 15.0), Part("", "x", FeatureKind.OUTSIDE, 20.0)]
    short = what_if(fit, parts, Changes(-0.05, {"x": 1.004}), np.random.default_rng(3))
    assert short.worse.tolist() == [False, True]  # lost motion and outset had hidden one another there
    assert short.unsure.tolist() == [True, False]  # +0.010 becomes -0.030, and 0.02 of both is not told
    assert found.p_better > 0.99 and found.parts[found.worst].nominal_mm == 180
    assert found.predicted.error_mm[2] == pytest.approx(-0.03, abs=0.08)


def test_a_part_that_gets_worse_is_marked():
    found = what_if(of_comb(), USUAL_PARTS, Changes(0.0, {"x": 0.99}), np.random.default_rng(4))
    assert found.worse[:3].all()
    assert found.p_better < 0.01
    parts = [Part("20", "x", FeatureKind.OUTSIDE, 20.0), Part("mean", "x", FeatureKind.SAME_FACING, 90.0)]
    offset = what_if(of_comb(Faults(wall_outset_mm=0.05)), parts, Changes(0.05), np.random.default_rng(5))
    assert offset.worse.tolist() == [True, False]


def test_a_coin_toss_is_called_one():
    """Nothing is wrong and nothing is known well: a change of nothing improves nothing."""
    fit = of_comb(Faults())
    found = what_if(fit, USUAL_PARTS[:3], Changes(), np.random.default_rng(6))
    assert found.p_better == 0.0
    half = fit.estimate("scale_x").value
    tuned = what_if(fit, USUAL_PARTS[2:3], Changes(0.0, {"x": 1 - half}), np.random.default_rng(7))
    assert 0.3 < tuned.p_better < 0.999


def test_no_part_that_is_told_is_refused():
    with pytest.raises(InputError) as told:
        what_if(of_comb(), USUAL_PARTS[4:], Changes(), np.random.default_rng(8))
    assert told.value.field == "value"


def test_all_to_steps_books_constants_as_scale():
    """A constant of +0.1 on lengths 10 to 140 mm becomes a scale; a long part then comes out short."""
    nominal = np.array([10.0, 40.0, 70.0, 100.0, 140.0])
    jitter = np.array([1, -1, 0, 1, -1]) * 1e-3
    fit = fit_size_error(nominal, nominal + 0.1 + jitter, ["outside"] * 5)
    found = all_to_steps(fit, "x", FeatureKind.OUTSIDE, 400.0)
    factor = np.sum(nominal**2) / np.sum(nominal * (nominal + 0.1 + jitter))
    assert found.factor == pytest.approx(factor) and found.before_mm == pytest.approx(0.1, abs=0.01)
    assert found.after_mm == pytest.approx(0.1 + (factor - 1) * 400.0, abs=0.02) and found.after_mm < -0.2
    assert found.unshrunk_mm == (pytest.approx((factor - 1) * 400.0), pytest.approx(found.U_factor_ratio * 400.0))
    assert all_to_steps(fit, "y", FeatureKind.OUTSIDE, 400.0) is None
    travel = fit_size_error(nominal, nominal + jitter, ["travel"] * 5)
    assert all_to_steps(travel, "x", FeatureKind.TRAVEL, 100.0) is None


def test_the_factors_of_wrong_moves_scatter_as_their_U_says():
    """Two thousand pieces of one machine: the factors' scatter is the u that each piece gives (JCGM 100:2008 5.1.2)."""
    rng, piece = np.random.default_rng(3), Print("x")
    sizes = piece.size_mm(TRUE)
    fit = piece.fit(sizes + 0.01 * rng.standard_normal(sizes.size))
    noise = np.sqrt(fit.scattered.variance_mm2)
    solver, rows = fit.scattered.fit.solver, fit.nominal_mm
    short = small_piece_effect(fit, "x", FeatureKind.TOOTH, 10.0, 180.0)
    every = all_to_steps(fit, "x", FeatureKind.OUTSIDE, 180.0)
    errors = fit.error_mm + noise * rng.standard_normal((2000, rows.size))
    at_ten = 10.0 / (10.0 + errors @ solver.T @ (fit.terms.coefficients("scale_x") * 10.0 +
                                                 2.0 * fit.terms.coefficients("wall_outset")))  # fmt: skip
    of_all = rows @ rows / (rows @ rows + errors @ rows)
    k = coverage_factor(fit.scattered.dof)
    assert short.U_factor_ratio / k == pytest.approx(np.std(at_ten), rel=0.06)
    assert every.U_factor_ratio / k == pytest.approx(np.std(of_all), rel=0.06)
    assert every.unshrunk_mm == pytest.approx(((every.factor - 1.0) * 180.0, every.U_factor_ratio * 180.0))


def test_what_an_instrument_is_wrong_by_is_no_smaller_in_the_factor():
    piece = Print("x")
    sizes = piece.size_mm(TRUE) + 0.001 * np.random.default_rng(3).standard_normal(piece.nominal_mm.size)
    rule = Instrument("long rule", u_scale_ratio=0.001)
    plain, with_rule = piece.fit(sizes), piece.fit(sizes, instrument=rule)
    U_plain, U_rule = (all_to_steps(fit, "x", FeatureKind.OUTSIDE, 180.0).U_factor_ratio for fit in (plain, with_rule))
    assert U_rule == pytest.approx(np.hypot(U_plain, 2 * 0.001), rel=0.05)


@pytest.mark.parametrize(
    ("effect", "U", "stop", "words"),
    [(0.02, 0.02, True, "below a quarter"), (0.05, 0.06, True, "cannot be seen"), (0.019, 0.05, True, "cannot be seen"),
     (-0.09, 0.02, False, "Worth a change")],
)  # fmt: skip
def test_when_to_stop(effect, U, stop, words):
    """Common practice, no source: T/4 and T/10 with T = 0.2 mm."""
    found = stop_words(effect, U, 0.2)
    assert found[0] is stop and words in found[1]
