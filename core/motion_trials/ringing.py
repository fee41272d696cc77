"""Ringing: the ripple after a corner read as a frequency, its damping, and the accelerations that follow.

    f = n v/d          zeta = Lambda/sqrt(4 pi^2 + Lambda^2),  Lambda = ln(A_0/A_n)/n
    a_max = A (2 pi f)^2          a_k = v f/k

Symbols: n crests passed over the distance d at the speed v, lambda = d/n wavelength, A_0 and A_n height of the first
crest and of the one n later, Lambda logarithmic decrement, zeta damping, A ripple that may still be seen, a_max
acceleration whose ripple is that high, a_k acceleration whose ramp to v lasts k whole periods, so that the ripple of
its beginning and that of its end cancel.

Ringing keeps its frequency when the speed changes, and its wavelength follows; a mark of a tooth, a pulley turn, a lead
or a bearing keeps its wavelength. Two speeds tell which: the fit of log(lambda) against log(v) has slope 1 or slope 0.
One speed never does: a frequency at which no frame rings may as well be crests miscounted.

Reference: ISO 2041:2018 (natural frequency, damping ratio, logarithmic decrement); f and u(f) by JCGM 100:2008 5.1.6.
The ripple of a step of acceleration, a/(2 pi f)^2 and at most twice it, and what is left after a ramp of length t_r,
2 a/(2 pi f)^2 |sin(pi f t_r)|: the undamped oscillator, elementary.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.gum import combine
from core.measuring.reach import above_zero, within_reach
from core.quantity import Estimate
from core.words import Words, tr

Floats = NDArray[np.float64]

METHOD = "ringing 2"
LOWEST_HZ, HIGHEST_HZ = 10.0, 400.0  # frames and carriages of printers ring within these (common practice, no source)
MOST_PERIODS = 6
_TELLS = 3.0  # log units of u between the two slopes, so that one is proved and the other refuted
_LONGEST_MM = 200.0


class Kind(StrEnum):
    """What a ripple is."""

    RESONANCE = "resonance"
    MARK = "mark"
    NEITHER = "neither"
    OPEN = "open"


@dataclass(frozen=True, slots=True)
class Ripple:
    """One ripple as read: n crests on a distance, at a speed; heights of the first and the last where they were read.

    Attributes:
        speed_mm_s: of the nozzle along the wall.
        crests: how many wavelengths the distance holds.
        distance_mm: over these.
        first_um: height of the first crest over its valley; None where not read.
        last_um: height of the one `crests` later.
    """

    speed_mm_s: float
    crests: int
    distance_mm: float
    first_um: float | None = None
    last_um: float | None = None

    @property
    def wavelength_mm(self) -> float:
        """Distance from crest to crest."""
        return self.distance_mm / self.crests


@dataclass(frozen=True, slots=True)
class Part:
    """A part of the drive that repeats along an axis every `period_mm`."""

    says: Words
    period_mm: float


@dataclass(frozen=True, slots=True, eq=False)
class Ringing:
    """The answer of the ripples of one axis with one payload.

    Attributes:
        axis: x, y or z.
        kind: ringing, a mark of a part, neither, or not told yet.
        frequency: mean over the ripples, frequency_<axis>; None where it is a mark, or no frame rings so.
        wavelength: mean, wavelength_<axis>, of a mark; None else.
        damping: damping_<axis>; None where no heights were read.
        slope: of log(wavelength) against log(speed), with its u; None at one speed.
        fits: parts of the drive whose period is this wavelength.
        own_hz: (n,) frequency of each ripple. u_hz: (n,) of each, standard uncertainty.
    """

    axis: str
    kind: Kind
    frequency: Estimate | None
    wavelength: Estimate | None
    damping: Estimate | None
    slope: tuple[float, float] | None
    fits: tuple[Part, ...]
    own_hz: Floats
    u_hz: Floats

    def estimates(self) -> tuple[Estimate, ...]:
        """Return what is known."""
        return tuple(e for e in (self.frequency, self.damping, self.wavelength) if e is not None)


@within_reach
def read_ringing(
    axis: str, ripples: Sequence[Ripple], u_distance_mm: float, u_speed_ratio: float, parts: Sequence[Part] = ()
) -> Ringing:
    """Return frequency and damping of the ripples of one axis, or the part whose mark they are.

    Args:
        axis: x, y or z.
        ripples: one or more, best at two speeds or three.
        u_distance_mm: standard uncertainty of one end of a distance.
        u_speed_ratio: relative standard uncertainty of the speed.
        parts: what repeats along this axis.

    Raises:
        InputError: a field of the ripple at fault, with its place as row; `u_distance_mm` or `u_speed_ratio`.
    """
    _check(ripples, u_distance_mm, u_speed_ratio)
    speed = np.array([r.speed_mm_s for r in ripples])
    length = np.array([r.wavelength_mm for r in ripples])
    own = speed / length
    u_length = math.sqrt(2.0) * u_distance_mm / np.array([r.distance_mm for r in ripples])
    relative = np.hypot(u_length, u_speed_ratio)
    slope = _slope(np.log(speed), np.log(length), relative)
    may_ring = LOWEST_HZ <= float(np.mean(own)) <= HIGHEST_HZ
    kind = _kind(slope, may_ring)
    wavelength = _mean(f"wavelength_{axis}", length, length * u_length, 0.0, "mm")
    frequency = _mean(f"frequency_{axis}", own, own * u_length, u_speed_ratio, "Hz")
    fits = tuple(p for p in parts if abs(p.period_mm - wavelength.value) <= max(wavelength.U, 0.02 * p.period_mm))
    return Ringing(
        axis=axis,
        kind=kind,
        frequency=frequency if may_ring and kind in (Kind.RESONANCE, Kind.OPEN) else None,
        wavelength=wavelength if kind is Kind.MARK else None,
        damping=_damping(axis, ripples),
        slope=slope,
        fits=fits if kind in (Kind.MARK, Kind.OPEN) else (),
        own_hz=own,
        u_hz=own * relative,
    )


@within_reach
def acceleration_limit_mm_s2(frequency: Estimate, visible_mm: float) -> Estimate:
    """Return the acceleration whose ripple is as high as may still be seen, A (2 pi f)^2.

    Raises:
        InputError: field `visible_mm`, not between 0 and 1.
    """
    if not 0 < visible_mm < 1:
        raise InputError("visible_mm", tr("A ripple that may be seen lies between 0 and 1 mm; 0.015 is usual."))
    value = visible_mm * (2 * math.pi * frequency.value) ** 2
    u = 2.0 * visible_mm * (2 * math.pi) ** 2 * abs(frequency.value) * frequency.u
    return Estimate(frequency.name.replace("frequency", "acceleration_limit"), value, u, frequency.dof, "mm/s²")


@within_reach
def quiet_accelerations_mm_s2(frequency: Estimate, speed_mm_s: float, most_mm_s2: float) -> tuple[Estimate, ...]:
    """Return accelerations whose ramp to a speed lasts a whole number of periods, v f/k, highest first.

    Args:
        frequency: of the axis.
        speed_mm_s: that is reached from standing.
        most_mm_s2: accelerations above it are left out.

    Raises:
        InputError: field `speed_mm_s` or `most_mm_s2`, not above zero.
    """
    for field, value in (("speed_mm_s", speed_mm_s), ("most_mm_s2", most_mm_s2)):
        if not 0 < value < math.inf:
            raise InputError(field, tr("This must be a number above 0; type the limit that holds."))
    found = []
    for periods in range(1, MOST_PERIODS + 1):
        value, u = speed_mm_s * frequency.value / periods, speed_mm_s * frequency.u / periods
        if value <= most_mm_s2:
            found.append(Estimate(f"quiet_{periods}_{frequency.name[-1:]}", value, u, frequency.dof, "mm/s²"))
    return tuple(found)


@within_reach
@above_zero("frequency_hz", "speed_mm_s", "acceleration_mm_s2")
@finite_in("frequency_hz", "speed_mm_s", "acceleration_mm_s2")
def left_after_ramp_mm(frequency_hz: float, speed_mm_s: float, acceleration_mm_s2: Floats) -> Floats:
    """Return the ripple left after ramps to a speed, 2 a/(2 pi f)^2 |sin(pi f v/a)|, for each acceleration.

    Raises:
        InputError: the field that is not above zero.
    """
    a = np.asarray(acceleration_mm_s2, dtype=float)
    ripple = 2 * a / (2 * math.pi * frequency_hz) ** 2
    return np.asarray(ripple * np.abs(np.sin(math.pi * frequency_hz * speed_mm_s / a)))


def _kind(slope: tuple[float, float] | None, may_ring: bool) -> Kind:
    if slope is None:
        return Kind.OPEN
    value, u = slope
    rings, marks = abs(value - 1.0) <= _TELLS * u, abs(value) <= _TELLS * u
    if rings and marks:
        return Kind.OPEN
    if rings:
        return Kind.RESONANCE if may_ring else Kind.NEITHER
    return Kind.MARK if marks else Kind.NEITHER


def _slope(x: Floats, y: Floats, u: Floats) -> tuple[float, float] | None:
    """Return slope and u of y against x; None at one speed."""
    if np.ptp(x) < 0.05:
        return None
    w = 1.0 / u**2
    middle = float(np.sum(w * x) / np.sum(w))
    spread = float(np.sum(w * (x - middle) ** 2))
    slope = float(np.sum(w * (x - middle) * y) / spread)
    rest = y - np.sum(w * y) / np.sum(w) - slope * (x - middle)
    chi = float(np.sum(w * rest**2)) / max(x.size - 2, 1)
    return slope, math.sqrt(max(chi, 1.0) / spread)


def _mean(name: str, values: Floats, u: Floats, u_common_ratio: float, unit: str) -> Estimate:
    """Return the mean weighted by 1/u^2; u from what was stated or, where they scatter more, from their scatter."""
    w = 1.0 / u**2
    mean = float(np.sum(w * values) / np.sum(w))
    stated, dof = 1.0 / math.sqrt(float(np.sum(w))), math.inf
    if values.size > 1:
        seen = math.sqrt(float(np.sum(w * (values - mean) ** 2)) / (values.size - 1) / float(np.sum(w)))
        if seen > stated:
            stated, dof = seen, float(values.size - 1)
    both = combine([stated, abs(mean) * u_common_ratio], [dof, math.inf])
    return Estimate(name, mean, both.u, both.dof, unit)


def _damping(axis: str, ripples: Sequence[Ripple]) -> Estimate | None:
    """Return the damping, mean over the ripples with heights; each height is good to a tenth of the first."""
    values, us = [], []
    for r in ripples:
        if r.first_um is None or r.last_um is None:
            continue
        decrement = math.log(r.first_um / r.last_um) / r.crests
        reading = 0.1 * r.first_um / math.sqrt(3.0)
        u_decrement = math.hypot(reading / r.first_um, reading / r.last_um) / r.crests
        root = math.hypot(2 * math.pi, decrement)
        values.append(decrement / root)
        us.append(u_decrement * 4 * math.pi**2 / root**3)
    return _mean(f"damping_{axis}", np.array(values), np.array(us), 0.0, "1") if values else None


def _check(ripples: Sequence[Ripple], u_distance_mm: float, u_speed_ratio: float) -> None:
    if not 0 < u_distance_mm < 1:
        says = tr("An end of a distance is read to more than 0 and less than 1 mm; {u:g} mm cannot be, type how well.",
                  u=u_distance_mm)  # fmt: skip
        raise InputError("u_distance_mm", says)
    if not 0 < u_speed_ratio < 1:
        says = tr("A speed is known to more than 0 and less than 1 of itself; {u:g} cannot be, type how well.",
                  u=u_speed_ratio)  # fmt: skip
        raise InputError("u_speed_ratio", says)
    if not ripples:
        raise InputError("distance_mm", tr("No ripple yet: count crests, and measure over them."))
    for row, r in enumerate(ripples):
        if not 0 < r.speed_mm_s < 2000:
            says = tr("{speed:g} mm/s is no printing speed; retype it.", speed=r.speed_mm_s)
            raise InputError("speed_mm_s", says, row)
        if not 1 <= r.crests <= 200:
            says = tr("Count 1 crest at least, from crest to crest; {n} cannot be.", n=r.crests)
            raise InputError("crests", says, row)
        if not 0 < r.distance_mm <= _LONGEST_MM:
            says = tr("{n} crests over {mm:g} mm cannot be read on one wall; retype it.", n=r.crests, mm=r.distance_mm)
            raise InputError("distance_mm", says, row)
        if (r.first_um is None) != (r.last_um is None):
            says = tr("Type the height of the first crest and of the last, or neither.")
            raise InputError("first_um" if r.first_um is None else "last_um", says, row)
        if r.first_um is not None and r.last_um is not None and not 0 < r.last_um < r.first_um:
            says = tr("Ringing dies away: the last crest, {last:g} µm, must be lower than the first, {first:g} µm.",
                      last=r.last_um, first=r.first_um)  # fmt: skip
            raise InputError("last_um", says, row)
