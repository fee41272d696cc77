"""A kept reversal trial beside the readings of a print: mechanics first, the trial named, nothing averaged."""

import numpy as np
import pytest

from core.guidance.advice import advise
from core.guidance.known import KeptResult, Known
from core.guidance.sizetrial import SizeReadings, judge_size_trial
from core.guidance.verdict import Setting
from core.part_size.sizeerror import fit_size_error
from core.quantity import Estimate
from core.records.rows import Machine

L = np.array([10.0, 30.0, 60.0, 90.0, 120.0, 140.0])
NOISE = np.array([0.004, -0.006, 0.003, 0.005, -0.004, -0.002])


def kept(B, u=0.003, axis="x", trial=12):
    return Known(reversal={axis: KeptResult(trial, Estimate(f"reversal_{axis}", B, u, 20.0, "mm"))})


def outside(constant=0.12, scale=0.0):
    return fit_size_error(L, L * (1 + scale) + constant + NOISE, ["outside"] * 6)


def comb(B=0.0, w=0.0):
    kinds = ["tooth", "notch", "outside"] * 2
    k, r = np.array([1, -1, 1] * 2), np.array([0, 0, 1] * 2)
    return fit_size_error(
        np.tile(L, 2), np.tile(L, 2) + 2 * w * np.tile(k, 2) - B * np.tile(r, 2) + np.tile(NOISE, 2), kinds * 2
    )


def settings(advice):
    return [str(a.setting) for a in advice]


def test_a_large_kept_reversal_comes_before_every_trim():
    advice = advise(outside(scale=-0.004), kept(0.12))
    assert settings(advice)[0] == "mend_mechanics"
    assert not {"shrink_allowance", "contour_offset", "check_flow", "leave"} & set(settings(advice))
    assert "Reversal trial № 12 measured 0.1200 ± 0.0063 mm along X on the machine itself" in advice[0].because
    assert "proved above 0.05 mm" in advice[0].because
    assert "measure the reversal again, and print again" in advice[0].action
    assert (advice[0].amount, advice[0].unit) == (0.12, "mm")
    assert "Steps per millimetre" in advice[0].do_not_touch


@pytest.mark.parametrize(
    "known",
    [Known(), kept(0.12, axis="y"), kept(0.12, axis="z"), kept(0.055), kept(0.04), kept(0.01)],
    ids=["none", "other axis", "z", "not proved", "acceptable", "good"],
)
def test_other_kept_reversals_send_nobody_to_the_mechanics(known):
    assert "mend_mechanics" not in settings(advise(outside(scale=-0.004), known))


def test_lost_motion_in_the_print_and_on_the_machine_are_said_together():
    advice = advise(comb(B=0.15), kept(0.14))
    assert settings(advice) == ["mend_mechanics"]
    assert "Lost motion X is +0.1" in advice[0].because
    assert "Reversal trial № 12 measured 0.1400 ± 0.0063 mm on the machine itself" in advice[0].because
    assert "Reversal trial" not in advise(comb(B=0.15))[0].because


def test_a_print_that_shows_no_play_asks_whether_it_was_mended():
    (advice,) = advise(comb(w=0.06), kept(0.12))
    assert advice.setting is Setting.UNDECIDED
    assert "Measure the reversal of X again, or withdraw trial № 12." in advice.action
    assert "was it mended since?" in advice.because
    assert "check_flow" in settings(advise(comb(w=0.06), kept(0.01)))


def test_a_small_kept_reversal_says_what_the_constant_is_and_changes_no_number():
    plain, named = advise(outside()), advise(outside(), kept(0.012))
    assert settings(plain) == settings(named)
    assert [a.amount for a in plain] == [a.amount for a in named]
    assert "trial № 12 measured 0.0120 ± 0.0063 mm only: if the axis is still so, the rest is wall outset" in " ".join(
        a.because for a in named
    )
    assert "№" not in " ".join(a.because for a in advise(outside(), kept(0.06, u=0.02)))


def test_travel_alone_is_no_print():
    fit = fit_size_error(L, L + NOISE, ["travel"] * 6)
    assert "mend_mechanics" not in settings(advise(fit, kept(0.12)))


def test_the_trial_reaches_the_rules():
    readings = SizeReadings(L, L + 0.12 + NOISE, ["outside"] * 6, ["x"] * 6, [""] * 6)
    reversal = kept(0.12).reversal
    for machine in (None, Machine("m")):
        judged = judge_size_trial(readings, machine, reversal=reversal)
        assert judged.known.reversal == reversal
        assert judged.advice[0].setting is Setting.MEND_MECHANICS
