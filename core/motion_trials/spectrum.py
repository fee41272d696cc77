"""The spectrum of an accelerometer log: at which frequencies a machine rings, and how well it is damped.

    P(f) = 2/(f_s sum w^2) mean |FFT(w (x - mean))|^2        Welch: mean over half-overlapping pieces, Hann window w
    near a peak   1/P = alpha + beta (f - f_0)^2,   zeta = sqrt(alpha/beta)/f_0

Symbols: f_s sampling frequency, f_0 natural frequency, alpha/beta the square of half the width at half the height.

Reference: Welch, IEEE Trans. Audio Electroacoust. 15 (1967) 70; half-power bandwidth by ISO 2041:2018 (damping ratio).
A peak counts when it is over five times the median about it: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import above_zero, finite_out
from core.quantity import Estimate
from core.words import tr

Floats = NDArray[np.float64]

METHOD = "spectrum 1"
FEWEST_SAMPLES = 256
_PIECES = 8  # of a record: half-overlapping pieces of this part of it
_STANDS_OUT = 5.0
_ROUNDED_RATIO = 1.0 + 1e-12  # so that no rounding keeps a peak out
_AROUND, _WIDE = 25, 1.5  # bins on either side, or the ratio, over which the median is the ground
_SMOOTH, _VALLEY = 5, 2.5  # bins averaged to look for the valley between two peaks, and how deep it must be
_NOTHING_RATIO = 1e-20  # of the highest: below it lies what rounding leaves of a sensor that did not move
_UNEVEN = 0.5  # of a sampling interval: a gap
_MOST_PEAKS = 6
_SLOWEST_HZ = 40.0  # sampling: twice the highest of what it shows, and 10 to 20 Hz are the least that is of use
_LINES_A_STEP = 20_000
_LARGEST = 1e9  # of a time or an acceleration in any unit
_LOWEST_HZ = 5.0  # below it are moves, not ringing


@dataclass(frozen=True, slots=True)
class Peak:
    """One resonance: frequency, damping, height; the damping is None where the record is too short to tell it."""

    frequency: Estimate
    damping: Estimate | None
    height: float


@dataclass(frozen=True, slots=True, eq=False)
class Spectrum:
    """A power spectral density, in the square of the log's unit per Hz, and the peaks that stand out, highest first.

    Attributes:
        frequency_hz: (m,) rising from zero.
        density: (m,) power spectral density.
        peaks: the resonances.
        sampling_hz: of the log.
        duration_s: of the log.
        pieces: how many half-overlapping pieces were averaged.
    """

    frequency_hz: Floats
    density: Floats
    peaks: tuple[Peak, ...]
    sampling_hz: float
    duration_s: float
    pieces: int

    def furthest(self, low_hz: float, high_hz: float) -> Peak | None:
        """Return the peak within these frequencies at which the machine moves furthest, P/(2 pi f)^4; None for none."""
        within = [peak for peak in self.peaks if low_hz <= peak.frequency.value <= high_hz]
        return max(within, key=lambda peak: peak.height / peak.frequency.value**4, default=None)

    def estimates(self) -> tuple[Estimate, ...]:
        """Return frequency and damping of each peak."""
        return tuple(e for peak in self.peaks for e in (peak.frequency, peak.damping) if e is not None)


def read_log(text: str, step: Callable[[float], None] = lambda part: None) -> tuple[Floats, Floats]:
    """Return times (n,) in s and accelerations (n,) in the log's unit from two columns of numbers.

    Args:
        text: CSV with commas, semicolons, tabs or blanks; decimal points, or decimal commas between semicolons or
            tabs; lines that begin with a letter or # are headings.
        step: is called now and then with the part that is read; it may raise.

    Raises:
        InputError: field `log`, row the line counted from 0: not two numbers.
    """
    times, values = [], []
    lines = text.splitlines()
    for row, line in enumerate(lines):
        if row % _LINES_A_STEP == 0:
            step(row / len(lines))
        cells = _cells(line)
        if not cells[0] or cells[0][0] in "#\"" or cells[0][0].isalpha():
            continue
        if len(cells) > 2 and any(cells[2:]):
            says = tr("Line {line} has {count} columns; keep two, time and the acceleration along this axis.",
                      line=row + 1, count=len(cells))  # fmt: skip
            raise InputError("log", says, row)
        try:
            time_s, value = float(cells[0]), float(cells[1])
            if not (abs(time_s) < _LARGEST and abs(value) < _LARGEST):
                raise ValueError
        except (ValueError, IndexError):
            says = tr("Line {line}: “{text}” is not a time and an acceleration; mend it.", line=row + 1, text=line[:40])
            raise InputError("log", says, row) from None
        times.append(time_s)
        values.append(value)
    return np.array(times), np.array(values)


def _cells(line: str) -> list[str]:
    """Return the cells of a line, decimal commas as points."""
    for mark in ("\t", ";"):
        if mark in line:
            return [cell.strip().replace(",", ".") for cell in line.split(mark)]
    return [cell.strip() for cell in line.split(",")] if "," in line else line.split() or [""]


@finite_out("log")
def spectrum_of(time_s: ArrayLike, acceleration_mm_s2: ArrayLike, name: str = "x") -> Spectrum:
    """Return the spectrum of a log and its resonances.

    Args:
        time_s: (n,) times, rising in equal steps as far as a log keeps them.
        acceleration_mm_s2: (n,); another unit does as well, for only the height of the peaks is in it.
        name: of the axis, for the estimates.

    Raises:
        InputError: field `log`: numbers out of reach, too few samples, times that do not rise, gaps, samples so far
            apart that the times are no seconds, or nothing but one value.
    """
    t, x = _checked(time_s, acceleration_mm_s2)
    step = float(t[-1] - t[0]) / (t.size - 1)
    even = np.linspace(t[0], t[-1], t.size)
    frequency, density, pieces = welch(np.interp(even, t, x), 1.0 / step)
    peaks = _peaks(frequency, density, pieces, name)
    return Spectrum(frequency, density, peaks, 1.0 / step, float(t[-1] - t[0]), pieces)


@above_zero("sampling_hz")
@finite_out("log")
@finite_in("sampling_hz")
def welch(acceleration_mm_s2: ArrayLike, sampling_hz: float, *, piece: int | None = None) -> tuple[Floats, Floats, int]:
    """Return frequencies, power spectral density, and how many pieces were averaged.

    Args:
        acceleration_mm_s2: (n,) samples, in any unit.
        sampling_hz: f_s.
        piece: samples of each piece; an eighth of the record, in a power of two, when None.

    Raises:
        InputError: field `log` for fewer samples than a piece has, or than two; `sampling_hz` not above zero.
    """
    x = np.asarray(acceleration_mm_s2, dtype=float)
    most = 1 << max(2 * x.size // (_PIECES + 1), 1).bit_length() - 1
    length = max(FEWEST_SAMPLES // 2, most) if piece is None else piece
    if not 2 <= length <= x.size:
        raise InputError("log", tr("A log of {count} samples is too short; take a longer one.", count=x.size))
    window = 0.5 - 0.5 * np.cos(2 * math.pi * np.arange(length) / length)
    rows = np.lib.stride_tricks.sliding_window_view(x, length)[:: length // 2]
    rows = (rows - rows.mean(axis=1, keepdims=True)) * window
    power: Floats = np.mean(np.abs(np.fft.rfft(rows, axis=1)) ** 2, axis=0) / (sampling_hz * np.sum(window**2))
    power[1 : None if length % 2 else -1] *= 2.0  # the negative frequencies say the same
    return np.asarray(np.fft.rfftfreq(length, 1.0 / sampling_hz), dtype=float), power, int(rows.shape[0])


def _checked(time_s: ArrayLike, acceleration: ArrayLike) -> tuple[Floats, Floats]:
    t, x = np.asarray(time_s, dtype=float), np.asarray(acceleration, dtype=float)
    if t.shape != x.shape or t.size < FEWEST_SAMPLES or not (np.all(np.isfinite(t)) and np.all(np.isfinite(x))):
        says = tr("A log needs {fewest} samples of time and acceleration at least.", fewest=FEWEST_SAMPLES)
        raise InputError("log", says)
    gaps = np.diff(t)
    middle = float(np.median(gaps))
    if not np.all(gaps > 0):
        row = int(np.flatnonzero(gaps <= 0)[0]) + 1
        raise InputError("log", tr("Sample {row}: the times do not rise; export the log again.", row=row + 1), row)
    if np.any(np.abs(gaps - middle) > _UNEVEN * middle):
        row = int(np.flatnonzero(np.abs(gaps - middle) > _UNEVEN * middle)[0]) + 1
        says = tr("Sample {row}: samples are missing here; take a log without gaps.", row=row + 1)
        raise InputError("log", says, row)
    if middle * _SLOWEST_HZ > 1:
        says = tr(
            "{hz:.3g} samples in a second show no ringing. Times are read in seconds: if these are in ms or µs, change "
            "them; else sample faster, 400 Hz and more.",
            hz=1 / middle,
        )  # fmt: skip
        raise InputError("log", says)
    if np.ptp(x) == 0:
        raise InputError("log", tr("All samples are equal: the sensor did not move. Check how it is fixed."))
    return t, x


def _peaks(frequency: Floats, density: Floats, pieces: int, name: str) -> tuple[Peak, ...]:
    """Return what stands out from the median about it, highest first."""
    density = np.maximum(density, _NOTHING_RATIO * density.max())
    inner = density[1:-1]
    top = (inner > density[:-2]) & (inner >= density[2:]) & (frequency[1:-1] >= _LOWEST_HZ)
    places = np.flatnonzero(top) + 1
    even = np.convolve(density, np.full(_SMOOTH, 1.0 / _SMOOTH), mode="same")
    found: list[Peak] = []
    taken: list[int] = []
    for place in (int(p) for p in places[np.argsort(-density[places])]):
        around = density[max(min(int(place / _WIDE), place - _AROUND), 1) : max(int(place * _WIDE), place + _AROUND)]
        if len(found) == _MOST_PEAKS or density[place] < _STANDS_OUT * float(density[1:].min()):
            break
        # Half of the bins about it are below the median: to count them is ten times as quick, and few places pass.
        if 2 * np.count_nonzero(around < density[place] / _STANDS_OUT * _ROUNDED_RATIO) < around.size:
            continue
        if density[place] > _STANDS_OUT * float(np.median(around)) and all(_apart(even, place, p) for p in taken):
            found.append(_peak(frequency, density, place, pieces, f"{len(found) + 1}_{name}"))
            taken.append(place)
    return tuple(found)


def _apart(even: Floats, place: int, higher: int) -> bool:
    """Whether a valley lies between a place and a higher peak, and it is not on that peak's skirt."""
    low, high = sorted((place, higher))
    return bool(even[place] > _VALLEY * float(even[low : high + 1].min()))


def _peak(frequency: Floats, density: Floats, place: int, pieces: int, name: str) -> Peak:
    """Fit 1/P by a parabola over the bins above a quarter of the height; each P scatters by 1/sqrt(pieces)."""
    low, high = place - 1, place + 1
    while low > 1 and density[low - 1] > density[place] / 4 and low > place - 40:
        low -= 1
    while high < density.size - 2 and density[high + 1] > density[place] / 4 and high < place + 40:
        high += 1
    bin_hz, rough = float(frequency[1]), float(frequency[place])
    u_bin = bin_hz / math.sqrt(12.0)
    plain = Peak(Estimate(f"peak_{name}", rough, u_bin, math.inf, "Hz"), None, float(density[place]))
    chosen = slice(low, high + 1)
    z = (frequency[chosen] - rough) / bin_hz
    inverse = density[place] / density[chosen]
    design = np.column_stack([np.ones_like(z), z, z * z]) / inverse[:, np.newaxis]
    coef, *_ = np.linalg.lstsq(design, np.ones_like(z), rcond=None)
    cov = np.linalg.inv(design.T @ design) * 2.0 / pieces  # neighbouring bins of a Hann window share about half
    c0, c1, c2 = (float(c) for c in coef)
    square = (c0 - c1 * c1 / (4 * c2)) / c2 if c2 > 0 else -1.0
    if square <= 1.0:  # narrower than two bins: that is the window's own width
        return plain
    centre, half = rough - bin_hz * c1 / (2 * c2), bin_hz * math.sqrt(square)
    d0, d1, d2 = 1 / c2, -c1 / (2 * c2 * c2), -c0 / c2**2 + c1 * c1 / (2 * c2**3)
    u_half = bin_hz * math.sqrt(float(np.array([d0, d1, d2]) @ cov @ np.array([d0, d1, d2]))) / (2 * math.sqrt(square))
    shift = np.array([0.0, -1 / (2 * c2), c1 / (2 * c2 * c2)])
    u_centre = math.hypot(bin_hz * math.sqrt(float(shift @ cov @ shift)), u_bin)
    zeta = Estimate(f"peak_damping_{name}", half / centre, u_half / centre, math.inf, "1")
    return Peak(Estimate(f"peak_{name}", centre, u_centre, math.inf, "Hz"), zeta, float(density[place]))
