"""Soak time of a bed. Expected: planted drift."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.machine_geometry.bedsoak import SoakAnswer, fit_soak

T = np.arange(0.0, 31.0, 2.0) * 60.0


def drift(tau_s, size=0.12, noise=0.002, seed=1, times=T):
    return size * (1 - np.exp(-times / tau_s)) + np.random.default_rng(seed).normal(0, noise, times.size)


def test_a_drift_that_settles_gives_three_time_constants():
    soak = fit_soak(T, drift(300.0))
    assert soak.answer is SoakAnswer.SETTLED
    assert soak.low_s <= 900.0 <= soak.high_s
    (told,) = soak.estimates()
    assert (told.name, told.unit) == ("bed_soak", "min")
    assert told.value == pytest.approx(soak.soak_s / 60) == pytest.approx(15, rel=0.1)
    assert math.isclose(told.U, (soak.high_s - soak.low_s) / 120)
    assert soak.drift_mm < 0.01 and soak.last_s == 1800.0


def test_a_drift_that_goes_on_is_not_settled():
    for soak in (fit_soak(T[:7], drift(900.0)[:7]), fit_soak(T, drift(3600.0, noise=0.001))):
        assert soak.answer is SoakAnswer.NOT_SETTLED
        assert soak.drift_mm > 0.01 or soak.low_s > soak.last_s
        assert soak.estimates() == ()


def test_less_than_five_minutes_settle_nothing():
    short = np.arange(0.0, 240.0, 30.0)
    assert fit_soak(short, drift(20.0, times=short)).answer is SoakAnswer.NOT_SETTLED


def test_a_soaked_bed_is_steady_and_a_restless_one_is_not():
    steady = fit_soak(T, drift(300.0, 0.0, 0.003))
    assert (steady.answer, steady.soak_s, steady.estimates()) == (SoakAnswer.STEADY, 0.0, ())
    assert fit_soak(T, drift(300.0, 0.0, 0.05)).answer is SoakAnswer.NOT_SETTLED


@pytest.mark.parametrize(
    "t, z, field, words, row",
    [
        (T[:5], T[:5], "z_mm", "Readings over time so far: 5", None),
        (np.full(8, 60.0), T[:8], "z_mm", "at different times", None),
        (T - 60.0, T, "elapsed_s", "Row 1: time counts from the start", 0),
    ],
)
def test_refusals(t, z, field, words, row):
    with pytest.raises(InputError, match=words) as refused:
        fit_soak(t, z)
    assert (refused.value.field, refused.value.row) == (field, row)
