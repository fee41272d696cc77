"""Spectra against scipy's Welch, and resonances of a simulated machine of two masses against its own modes."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.motion_trials.spectrum import read_log, spectrum_of, welch


def two_masses(rng, seconds=120.0, rate=800.0):
    """Acceleration of a machine of two masses on springs under random force; its frequencies and dampings."""
    from scipy.linalg import eig, expm

    m, k, c = np.diag([8.0, 1.2]), np.array([[9e5, -1.5e5], [-1.5e5, 1.5e5]]), np.array([[70.0, -10.0], [-10.0, 10.0]])
    inverse = np.linalg.inv(m)
    A = np.block([[np.zeros((2, 2)), np.eye(2)], [-inverse @ k, -inverse @ c]])
    roots = eig(A, right=False)
    roots = roots[roots.imag > 0]
    step = 1.0 / rate
    Ad = expm(A * step)
    B = np.concatenate([np.zeros(2), inverse @ [1.0, 0.3]])
    Bd = np.linalg.solve(A, (Ad - np.eye(4)) @ B)
    force = rng.normal(0, 50, int(seconds * rate))
    state, out = np.zeros(4), np.empty(force.size)
    for n, f in enumerate(force):
        out[n] = A[3] @ state + B[3] * f
        state = Ad @ state + Bd * f
    t = np.arange(force.size) * step
    order = np.argsort(np.abs(roots))
    return t, out, np.abs(roots[order]) / (2 * math.pi), -roots[order].real / np.abs(roots[order])


@pytest.fixture(scope="module")
def machine():
    return two_masses(np.random.default_rng(5))


def test_welch_is_that_of_scipy():
    from scipy.signal import welch as scipy_welch

    x = np.random.default_rng(1).normal(size=5000) + 0.3
    for piece in (512, 511):
        frequency, density, pieces = welch(x, 500.0, piece=piece)
        want_f, want = scipy_welch(x, 500.0, nperseg=piece, noverlap=piece - piece // 2)
        np.testing.assert_allclose(frequency, want_f, rtol=1e-12)
        np.testing.assert_allclose(density, want, rtol=1e-9)
        assert pieces == 1 + (5000 - piece) // (piece // 2)


def test_power_is_conserved():
    """Parseval: the integral of the density is the variance."""
    x = np.random.default_rng(2).normal(0, 3.0, 40_000)
    frequency, density, _ = welch(x, 1000.0)
    assert np.sum(density) * frequency[1] == pytest.approx(9.0, rel=0.03)


def test_both_modes_of_a_two_mass_machine_are_found(machine):
    t, x, modes, dampings = machine
    found = spectrum_of(t, x, "y")
    assert found.sampling_hz == pytest.approx(800) and found.pieces >= 8
    peaks = sorted(found.peaks[:2], key=lambda peak: peak.frequency.value)
    for peak, mode, damping in zip(peaks, modes, dampings, strict=True):
        assert abs(peak.frequency.value - mode) <= peak.frequency.U + 0.01 * mode
        assert abs(peak.damping.value - damping) <= max(peak.damping.U, 0.35 * damping)
    assert {e.unit for e in found.estimates()} == {"Hz", "1"}
    assert found.peaks[0].frequency.name == "peak_1_y" and found.peaks[0].height > found.peaks[1].height


def test_a_pure_tone_has_no_damping_to_tell():
    t = np.arange(0, 20, 1 / 500)
    x = np.sin(2 * math.pi * 61.3 * t) + np.random.default_rng(3).normal(0, 0.05, t.size)
    found = spectrum_of(t, x)
    assert abs(found.peaks[0].frequency.value - 61.3) < 0.3 and found.peaks[0].damping is None


def test_a_short_noisy_log_has_no_peak_by_chance_alone():
    t = np.arange(0, 30, 1 / 400)
    found = spectrum_of(t, np.random.default_rng(4).normal(size=t.size))
    assert found.peaks == () and found.estimates() == ()


def test_times_that_jitter_a_little_are_evened_out(machine):
    t, x, modes, _ = machine
    shaken = t + np.random.default_rng(6).uniform(-0.1, 0.1, t.size) / 800
    found = spectrum_of(shaken, x)
    assert min(abs(p.frequency.value - modes[0]) for p in found.peaks) < 0.02 * modes[0]


def test_a_log_is_read_with_headings_and_other_separators():
    t, x = read_log("# shaken by hand\ntime;acceleration\n0;1.5\n0.001;-2\n\n0.002;3\n")
    assert list(t) == [0, 0.001, 0.002] and list(x) == [1.5, -2, 3]
    assert list(read_log("0\t1\n1\t2")[1]) == list(read_log("0   1\n \n1   2")[1]) == [1, 2]
    t, x = read_log('"t";"a"\n0,001;1,5\n0,002;-2,25;\n')
    assert list(t) == [0.001, 0.002] and list(x) == [1.5, -2.25]


def test_the_peak_where_the_machine_moves_furthest_need_not_be_the_highest(machine):
    t, x, modes, _ = machine
    found = spectrum_of(t, x)
    low, high = sorted(found.peaks[:2], key=lambda peak: peak.frequency.value)
    further = low if low.height / modes[0] ** 4 > high.height / modes[1] ** 4 else high
    assert found.furthest(1.0, 400.0) is further
    assert found.furthest(high.frequency.value - 1, 400.0) is high
    assert found.furthest(1.0, 2.0) is None


@pytest.mark.parametrize(
    ("text", "row"),
    [
        ("0,1\n0.1,abc", 1),
        ("t,a\n0.1", 1),
        ("t,x,y\n0,1,2\n", 1),
        ("0;1;2", 0),
        ("0,1\n0.1,nan", 1),
        ("0,-1e308", 0),
    ],
)
def test_a_line_that_is_no_sample_is_named(text, row):
    with pytest.raises(InputError, match=f"Line {row + 1}") as error:
        read_log(text)
    assert error.value.field == "log" and error.value.row == row


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (lambda t, x: (t[:100], x[:100]), "256 samples"),
        (lambda t, x: (np.where(np.arange(t.size) == 50, t[0], t), x), "do not rise"),
        (lambda t, x: (np.where(np.arange(t.size) > 50, t + 1, t), x), "missing"),
        (lambda t, x: (t, 0 * x), "equal"),
        (lambda t, x: (1000 * t, x), "in ms or µs"),
        (lambda t, x: (t, np.where(np.arange(t.size) == 5, np.nan, x)), "samples"),
    ],
)
def test_logs_that_cannot_be_used(change, says):
    t, x = np.arange(1000) / 500.0, np.random.default_rng(0).normal(size=1000)
    with pytest.raises(InputError, match=says) as error:
        spectrum_of(*change(t, x))
    assert error.value.field == "log"


def test_a_long_log_tells_how_far_it_is_and_stops_where_the_caller_raises():
    text, told = "\n".join(f"{n / 400},{n % 7}" for n in range(45_000)), []
    read_log(text, told.append)
    assert told == pytest.approx([0.0, 20_000 / 45_000, 40_000 / 45_000])

    def stop(part):
        if part > 0:
            raise InterruptedError

    with pytest.raises(InterruptedError):
        read_log(text, stop)
