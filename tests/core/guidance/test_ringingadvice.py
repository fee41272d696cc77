"""Verdicts on ripples and on logs: planted resonances and planted marks."""

import math

import numpy as np
import pytest

from core.guidance.names import parameter_words
from core.guidance.ringingadvice import Use, judge_log, judge_ringing
from core.guidance.verdict import Setting
from core.motion_trials.ringing import Ripple

BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200}
USE = Use("x", 250.0, 100.0, 0.015, 3000.0)


def judged(ripples, use=USE, drive=BELT):
    return judge_ringing(ripples, use, 0.05, 0.005, drive)


def rings(hz, speeds):
    return [Ripple(v, 4, 4 * v / hz) for v in speeds]


def test_ringing_gives_an_acceleration():
    found = judged(rings(40, (60, 80, 110)))
    (advice,) = found.advice
    assert advice.setting is Setting.ACCELERATION and advice.amount == pytest.approx(947.5, abs=1)
    assert "at most 947 mm/s²" in advice.action and "X rings at 40.0" in advice.because and "250 g" in advice.because
    assert "twice" in found.mind[1] and "1/√mass" in found.mind[2] and "2000 ± " in found.mind[0]
    assert "mm/s² last whole periods" in found.mind[0]
    assert [e.name for e in found.estimates()] == ["frequency_x", "acceleration_limit_x"]
    assert all(parameter_words(e.name) for e in found.estimates())
    assert found.method == "ringing 2" and found.frequency.value == pytest.approx(40)


def test_a_stiff_machine_may_do_what_it_can():
    found = judged(rings(120, (60, 100)), Use("y", 0.0, 30.0, 0.015, 1000.0))
    assert "allows all of this machine's 1000 mm/s²" in found.advice[0].action and found.advice[0].amount == 1000
    assert len(found.mind) == 3
    slow = judged(rings(120, (60, 100)), Use("y", 0.0, 300.0, 0.015, 100.0))
    assert len(slow.mind) == 2  # no ramp of whole periods is so gentle


def test_one_speed_asks_for_another_and_names_what_else_it_could_be():
    found = judged([Ripple(80, 4, 8.0)])
    first, second = found.advice
    assert first.setting is Setting.UNDECIDED and "120 mm/s too" in first.action
    assert "tooth of the belt" in first.because
    assert second.setting is Setting.ACCELERATION
    assert "do not tell" in judged([Ripple(80, 4, 6.6)]).advice[0].because


def test_a_mark_sends_to_the_part():
    found = judged([Ripple(v, 6, 12.0) for v in (40, 60, 90)])
    assert found.advice[0].setting is Setting.MEND_MECHANICS and "tooth of the belt, 2 mm" in found.advice[0].action
    assert found.limit is None and found.mind == () and [e.name for e in found.estimates()] == ["wavelength_x"]
    two = judged([Ripple(v, 10, 8.1) for v in (20, 60, 90)], drive=BELT | {"full_steps": 50})
    assert "full step of the motor, 0.8 mm" in two.advice[0].action
    unknown = judged([Ripple(v, 6, 30.0) for v in (40, 60, 90)])
    assert "roller, a bearing" in unknown.advice[0].action


def test_one_speed_far_from_what_frames_ring_at_cannot_tell_yet():
    """12 mm at 40 mm/s are 3.3 Hz: no frame rings so slowly, yet a count may be wrong; a second speed tells."""
    found = judged([Ripple(40, 3, 36.0)])
    (advice,) = found.advice
    assert advice.setting is Setting.UNDECIDED and "at 60 mm/s too, and count" in advice.action
    assert "3.333 ± 0.036 Hz" in advice.because and "a part that repeats, or crests were miscounted" in advice.because
    assert "A mark stays" in advice.because and found.estimates() == () and found.limit is None and found.mind == ()
    (turn,) = judged([Ripple(40, 2, 80.0), Ripple(40, 2, 80.1)]).advice
    assert turn.setting is Setting.UNDECIDED and "a mark of: turn of the pulley, 40 mm; or crests" in turn.because
    tooth = judged([Ripple(40, 3, 36.0), Ripple(60, 3, 36.0)]).advice[0]
    assert tooth.setting is Setting.MEND_MECHANICS  # that reading told


def test_what_goes_with_the_speed_but_too_slowly_is_neither():
    found = judged(rings(4, (40, 60, 90)))
    assert found.advice[0].setting is Setting.UNDECIDED and found.estimates() == ()
    assert "4 Hz is nothing that a frame rings at (10 to 400 Hz)" in found.advice[0].because


def test_two_parts_of_one_period_are_both_named():
    found = judged([Ripple(v, 6, 12.0) for v in (40, 60, 90)], drive=BELT | {"full_steps": 80})
    assert "tooth of the belt, 2 mm, electrical cycle of the motor, 2 mm" in found.advice[0].action


def test_neither_asks_to_count_again():
    found = judged([Ripple(50, 4, 5.0), Ripple(100, 4, 7.0)])
    assert found.advice[0].setting is Setting.UNDECIDED and "power 0.485 ± 0.054" in found.advice[0].because


def test_a_log_gives_peaks_and_the_same_advice():
    rng = np.random.default_rng(2)
    t = np.arange(0, 60, 1 / 500)
    w, zeta, x, v, out = 2 * math.pi * 38, 0.03, 0.0, 0.0, np.empty(t.size)
    for n, push in enumerate(rng.normal(0, 50, t.size)):
        a = push - 2 * zeta * w * v - w * w * x
        v += a / 500
        x += v / 500
        out[n] = a
    found = judge_log(t, out, USE)
    assert found.frequency.value == pytest.approx(38, abs=1.0) and found.method == "spectrum 1"
    assert found.advice[0].setting is Setting.ACCELERATION and found.spectrum is not None
    names = [e.name for e in found.estimates()]
    assert names[0] == "frequency_x" and names[-1] == "acceleration_limit_x" and "peak_1_x" in names
    assert all(parameter_words(name) for name in names)


def resonator(hz, rng, rate=1000, seconds=40, zeta=0.03):
    """Acceleration of a mass on a spring under random force, by scipy's own discretisation."""
    from scipy.signal import cont2discrete, lfilter

    w = 2 * math.pi * hz
    num, den, _ = cont2discrete(([1.0, 0.0, 0.0], [1.0, 2 * zeta * w, w * w]), 1 / rate, method="bilinear")
    return lfilter(num.ravel(), den, rng.normal(0, 1.0, rate * seconds))


def test_the_lower_peak_counts_where_the_machine_moves_further_there():
    rng = np.random.default_rng(8)
    a = resonator(35, rng) + resonator(95, rng)
    found = judge_log(np.arange(a.size) / 1000, a, USE)
    assert found.spectrum.peaks[0].frequency.value == pytest.approx(95, abs=4)  # this filter bends high ones
    assert found.frequency.value == pytest.approx(35, abs=1)
    assert found.limit.value == pytest.approx(0.015 * (2 * math.pi * 35) ** 2, rel=0.06)
    assert "highest peak is at 9" in found.mind[0] and "moves further" in found.mind[0]


def test_a_log_of_noise_says_how_to_shake():
    found = judge_log(np.arange(0, 30, 1 / 400), np.random.default_rng(4).normal(size=12_000), USE)
    assert found.advice[0].setting is Setting.UNDECIDED and "shakes" in found.advice[0].action
    assert found.estimates() == () and found.frequency is None and found.limit is None
