"""What changes would do: the models of the module, worked numbers of the small-piece trap, and refusals."""

import numpy as np
import pytest

from core.errors import InputError
from core.part_size.features import FEATURES, FeatureKind
from core.part_size.forecast import Change, forecast, scaled_from, small_piece_curve, small_piece_effect
from core.part_size.sizeerror import fit_size_error
from tests.core.part_size.printouts import Faults, Print

S, W, B = -0.0025, 0.04, 0.06
FIT = Print("x").fit(Print("x").size_mm(Faults((S, 0), (B, 0), W)))
LENGTHS = np.array([5.0, 40.0, 300.0])


def constant_only(c=0.1):
    """Outside lengths, all too large by the same."""
    L = np.array([10.0, 30.0, 60.0, 100.0, 140.0])
    return fit_size_error(L, L + c, ["outside"] * 5)


@pytest.mark.parametrize("kind", ["outside", "closed_hole", "tooth", "notch", "gap", "same_facing", "ring_mean"])
def test_each_change_takes_away_its_own_share(kind):
    kind = FeatureKind(kind)
    walls, play = 2 * FEATURES[kind].k * W, -FEATURES[kind].r * B
    expected = {
        Change.AS_IS: S * LENGTHS + walls + play,
        Change.CONTOUR_OFFSET: S * LENGTHS + play,
        Change.SHRINK_ALLOWANCE: walls + play + 0 * LENGTHS,
        Change.BOTH: play + 0 * LENGTHS,
    }
    before = FIT.band("x", kind, LENGTHS)
    for change, error in expected.items():
        band = forecast(FIT, "x", kind, LENGTHS, change)
        assert band.mean_mm == pytest.approx(error, abs=1e-9)
        assert band.confidence_mm.tolist() == before.confidence_mm.tolist()  # the estimate is no surer for being used
        assert band.prediction_mm.tolist() == before.prediction_mm.tolist()


def test_a_printed_part_after_both_changes_is_what_was_forecast():
    """Drawn by the allowance, printed with the offset: the sizes themselves, by the model."""
    outside = (1 + S) * (LENGTHS / (1 + S)) + 2 * (W - W) - B
    assert forecast(FIT, "x", FeatureKind.OUTSIDE, LENGTHS, Change.BOTH).mean_mm == pytest.approx(outside - LENGTHS)


def test_no_forecast_of_what_is_not_told():
    fit = constant_only()
    assert forecast(fit, "x", FeatureKind.OUTSIDE, LENGTHS, Change.AS_IS) is not None
    assert forecast(fit, "x", FeatureKind.OUTSIDE, LENGTHS, Change.SHRINK_ALLOWANCE) is not None
    assert forecast(fit, "x", FeatureKind.OUTSIDE, LENGTHS, Change.CONTOUR_OFFSET) is None
    assert forecast(fit, "x", FeatureKind.NOTCH, LENGTHS, Change.AS_IS) is None


def test_the_small_piece_trap():
    """A constant 0.1 mm read off 10 mm and scaled out: 100 mm goes from +0.10 to -0.89 mm (no source)."""
    trap = small_piece_effect(constant_only(), "x", FeatureKind.OUTSIDE, 10.0, 100.0)
    assert trap.factor == pytest.approx(10 / 10.1)
    assert (trap.before_mm, trap.after_mm) == (pytest.approx(0.1), pytest.approx(-0.8901, abs=1e-4))
    assert trap.after_mm - trap.before_mm == pytest.approx(-0.99, abs=0.01)
    band = constant_only().band("x", FeatureKind.OUTSIDE, [10.0])
    assert trap.U_factor_ratio == pytest.approx(band.confidence_mm[0] / 10.0 * (10 / 10.1) ** 2)


@pytest.mark.parametrize("L0", [10.0, 35.0, 250.0])
def test_the_small_piece_curve_makes_one_length_right_but_for_the_constant_itself(L0):
    curve = small_piece_curve(FIT, "x", FeatureKind.TOOTH, L0, [L0, *LENGTHS])
    f = L0 / (L0 + S * L0 + 2 * W)
    assert curve[0] == pytest.approx(2 * W * (1 - f))  # the constant does not scale with the steps
    assert curve[1:] == pytest.approx(f * (1 + S) * LENGTHS + 2 * W - LENGTHS)


def test_no_trap_without_a_second_length_or_without_a_line():
    assert small_piece_effect(FIT, "x", FeatureKind.TOOTH, 100.0, 100.0) is None
    assert small_piece_effect(FIT, "y", FeatureKind.TOOTH, 10.0, 100.0) is None
    assert small_piece_curve(constant_only(), "x", FeatureKind.NOTCH, 10.0, LENGTHS) is None


@pytest.mark.parametrize(("error_mm", "length_mm"), [(0.1, 0.0), (0.1, -5.0), (-10.0, 10.0), (float("nan"), 10.0)])
def test_a_correction_is_read_from_a_length(error_mm, length_mm):
    with pytest.raises(InputError, match="read from a length above 0 mm; choose another one") as refused:
        scaled_from(error_mm, length_mm)
    assert refused.value.field == "from_length_mm"
