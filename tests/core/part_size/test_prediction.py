"""Predictions: planted changes, coverage, the mirror that a wrong sign leaves, the score of our own uncertainty."""

import math
from dataclasses import replace

import numpy as np
import pytest
from scipy import stats
from scipy.stats import binomtest

from core.errors import InputError
from core.part_size.features import FeatureKind
from core.part_size.prediction import Changes, content_hash, predict, sign_test, verify
from core.part_size.sizeerror import fit_size_error
from tests.core.part_size.printouts import Faults, Print

AXES = ["x"] * 4 + ["y"] * 4 + ["x", "y"]
KINDS = ["outside"] * 8 + ["closed_hole"] * 2
LENGTHS = [37.0, 64.0, 91.0, 118.0] * 2 + [50.0, 80.0]
TRUE = Faults(scale=(-0.004, -0.003), wall_outset_mm=0.05, lost_motion_mm=(0.02, 0.02))
SD = 0.01


def fitted(rng, faults=TRUE):
    piece = Print("xy")
    return piece.fit(piece.size_mm(faults) + SD * rng.standard_normal(piece.nominal_mm.size))


def true_error(scale, outset, motion=0.02):
    s = np.where(np.array(AXES) == "x", scale[0], scale[1])
    k = np.where(np.array(KINDS) == "outside", 1, -1)
    return s * np.array(LENGTHS) + 2 * k * outset - motion


def test_a_change_is_predicted_feature_by_feature():
    rng = np.random.default_rng(1)
    changes = Changes(-0.05, {"x": 1.004, "y": 1.003})
    found = predict(fitted(rng), AXES, KINDS, LENGTHS, changes)
    assert found.as_is_mm == pytest.approx(true_error((-0.004, -0.003), 0.05), abs=0.06)
    assert found.error_mm == pytest.approx(true_error((0.0, 0.0), 0.0), abs=0.06)
    by_hand = found.as_is_mm + 2 * np.where(np.array(KINDS) == "outside", 1, -1) * -0.05 + (
        np.where(np.array(AXES) == "x", 0.004, 0.003) * (np.array(LENGTHS) + found.as_is_mm))  # fmt: skip
    assert found.error_mm == pytest.approx(by_hand)
    assert found.place("y", "outside", 64.0) == 5 and found.place("y", FeatureKind.BORE, 64.0) is None


def test_the_uncertainty_is_that_of_the_band_and_the_piece():
    fit = fitted(np.random.default_rng(2))
    found = predict(fit, AXES, KINDS, LENGTHS, Changes())
    band = fit.band("x", FeatureKind.OUTSIDE, LENGTHS[:4])
    pieces = found.k * math.sqrt(2) * 2e-4 * np.array(LENGTHS[:4])
    assert found.U_mm[:4] == pytest.approx(np.hypot(band.prediction_mm, pieces), rel=0.02)


def test_predictions_hold_as_often_as_they_say():
    """Both pieces differ by 0.02 % as pieces do: the one that was read, and the next."""
    rng, inside, by_chance, passed, runs = np.random.default_rng(3), 0, 0, 0, 300
    changes = Changes(-0.05, {"x": 1.004, "y": 1.003})
    for _ in range(runs):
        off, of_next = 2e-4 * rng.standard_normal((2, 2))
        read = fitted(rng, Faults(scale=tuple(TRUE.scale + off), wall_outset_mm=0.05, lost_motion_mm=(0.02, 0.02)))
        found = predict(read, AXES, KINDS, LENGTHS, changes)
        scale = of_next + np.array([1.004 * 0.996, 1.003 * 0.997]) - 1
        result = verify(found, range(10), true_error(scale, 0.0) + SD * rng.standard_normal(10), 0.0)
        inside += result.inside
        by_chance += result.probability > 0.05
        passed += result.passed
    assert 0.93 < inside / (10 * runs) < 0.975
    assert 0.92 < by_chance / runs < 0.99
    assert 0.90 < passed / runs < 0.985


def test_all_together_are_held_against_what_few_readings_tell_of_the_scatter():
    """Hotelling's T squared is F: chi2/n of n features against F(n, dof); chi-squared where the scatter is known."""
    found = predict(fitted(np.random.default_rng(5)), AXES, KINDS, LENGTHS, Changes())
    result = verify(found, range(10), found.error_mm + 0.03 * np.random.default_rng(8).standard_normal(10), 0.002)
    assert math.isfinite(found.dof)
    assert result.probability == pytest.approx(stats.f.sf(result.chi2 / 10, 10, found.dof))
    known = verify(replace(found, dof=math.inf), range(10), found.error_mm + 0.01, 0.002)
    assert known.probability == pytest.approx(stats.chi2.sf(known.chi2, 10))


def test_one_feature_of_many_may_be_outside_by_chance_and_one_alone_may_not():
    found = predict(fitted(np.random.default_rng(5)), AXES, KINDS, LENGTHS, Changes())
    off = np.zeros(10)
    off[9] = 1.02 * found.U_mm[9]
    many = verify(found, range(10), found.error_mm + off, 0.0)
    alone = verify(found, [9], found.error_mm[9:] + off[9:], 0.0)
    assert (many.inside, many.passed) == (9, True) and (alone.inside, alone.passed) == (0, False)
    off[[7, 8]] = 1.02 * found.U_mm[[7, 8]] * [1, -1]
    assert not verify(found, range(10), found.error_mm + off, 0.0).passed


def test_the_mean_of_a_class_knows_what_its_features_share():
    found = predict(fitted(np.random.default_rng(5)), AXES, KINDS, LENGTHS, Changes())
    result = verify(found, range(10), found.error_mm + 0.02, 0.002)
    mine = np.arange(10) < 8
    mean, U = result.mean_mm(mine)
    weight = mine / 8
    assert mean == pytest.approx(0.02)
    assert pytest.approx(found.k * math.sqrt(weight @ (found.covariance_mm2 + 0.002**2 * np.eye(10)) @ weight)) == U


def test_a_change_with_the_wrong_sign_is_seen():
    rng = np.random.default_rng(4)
    found = predict(fitted(rng), AXES, KINDS, LENGTHS, Changes(-0.05))
    wrong = verify(found, range(10), true_error((-0.004, -0.003), 0.10) + SD * rng.standard_normal(10), 0.005)
    assert wrong.mirrored and not wrong.passed and wrong.dof == 10
    right = verify(found, range(10), true_error((-0.004, -0.003), 0.0) + SD * rng.standard_normal(10), 0.005)
    assert right.passed and not right.mirrored and right.inside == 10 and right.place == tuple(range(10))
    other = verify(found, range(10), true_error((0.002, 0.002), 0.0), 0.005)
    assert not other.passed and not other.mirrored
    nothing = predict(fitted(rng), AXES, KINDS, LENGTHS, Changes())
    same = verify(nothing, range(10), true_error((0.002, 0.002), 0.0), 0.005)
    assert not same.mirrored  # nothing was changed: the mirror is the prediction


def test_e_n_as_the_standard_writes_it():
    found = predict(fitted(np.random.default_rng(5)), ["x"], ["outside"], [64.0], Changes())
    one = verify(found, [0], found.error_mm + 0.05, 0.01)
    assert one.e_n[0] == pytest.approx(0.05 / math.sqrt(0.02**2 + found.U_mm[0] ** 2))
    assert one.chi2 == pytest.approx(0.05**2 / (0.01**2 + found.covariance_mm2[0, 0]))


def test_what_the_fit_does_not_tell_is_left_out():
    outside = fit_size_error([20, 40, 60, 80, 100, 120], [20.1, 40.05, 60.06, 79.9, 100.0, 120.1], ["outside"] * 6)
    asked = (["x", "x", "y", "x", "z", "x", "x"],
             ["outside", "closed_hole", "outside", "travel", "outside", "bore", "outside"])  # fmt: skip
    found = predict(outside, *asked, [37.0] * 6 + [64.0], Changes())
    assert found.nominal_mm.tolist() == [37.0, 64.0]
    cube = fit_size_error([20.0], [20.1], ["outside"])
    with pytest.raises(InputError, match="tells none of these features") as told:
        predict(cube, ["x"], ["outside"], [37.0], Changes())
    assert told.value.field == "value"
    with pytest.raises(InputError, match="lock them beforehand") as told:
        verify(found, [], [], 0.0)
    assert told.value.field == "measured_mm"


def test_one_change_anywhere_gives_another_hash():
    content = {"nominal_mm": [37.0, 64.0], "predicted_mm": [37.01, 64.0], "from": 3, "name": "Büchse"}
    again = dict(reversed(list(content.items())))
    assert content_hash(content) == content_hash(again) and len(content_hash(content)) == 64
    assert content_hash(content) != content_hash(content | {"predicted_mm": [37.01, 64.0000001]})
    with pytest.raises(ValueError, match="JSON"):
        content_hash({"U_mm": math.nan})


@pytest.mark.parametrize(("above", "n"), [(8, 8), (7, 8), (4, 8), (0, 5), (3, 3), (1, 2)])
def test_the_sign_test_is_the_exact_one(above, n):
    rest = [0.01] * above + [-0.01] * (n - above) + [0.0]
    assert sign_test(rest) == pytest.approx(binomtest(above, n, 0.5).pvalue)


def test_no_side_is_no_sign():
    assert sign_test([0.0, 0.0]) == 1.0
