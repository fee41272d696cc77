"""What follows from ripples on a wall, or from an accelerometer log: accelerations that ring little, a part to mend."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import ArrayLike

from core.guidance.verdict import Advice, Setting
from core.motion_trials import ringing, spectrum
from core.motion_trials.repeats import parts_of
from core.motion_trials.ringing import (
    HIGHEST_HZ,
    LOWEST_HZ,
    Kind,
    Ringing,
    Ripple,
    acceleration_limit_mm_s2,
    quiet_accelerations_mm_s2,
    read_ringing,
)
from core.motion_trials.spectrum import Spectrum, spectrum_of
from core.quantity import Estimate, rounded_pair, told_value
from core.words import Words, side_by_side, tr


@dataclass(frozen=True, slots=True)
class Use:
    """What the answer is for.

    Attributes:
        axis: x, y or z.
        payload_g: mass of the part on the bed; the frequency holds for it.
        speed_mm_s: printed with.
        visible_mm: ripple that may just be seen.
        most_mm_s2: acceleration that the machine may do at most.
    """

    axis: str
    payload_g: float
    speed_mm_s: float
    visible_mm: float
    most_mm_s2: float


@dataclass(frozen=True, slots=True, eq=False)
class RingingJudgement:
    """Ripples or a log, and what follows.

    Attributes:
        use: what it is for.
        found: the ripples' answer; None for a log.
        spectrum: of a log; None for ripples.
        limit: acceleration whose ripple may just be seen; None where nothing rings.
        quiet: accelerations whose ramp lasts whole periods.
    """

    use: Use
    found: Ringing | None
    spectrum: Spectrum | None
    limit: Estimate | None
    quiet: tuple[Estimate, ...]
    advice: tuple[Advice, ...]
    mind: tuple[Words, ...]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return ringing.METHOD if self.spectrum is None else spectrum.METHOD

    @property
    def frequency(self) -> Estimate | None:
        """Frequency of the ringing; of a log that of the peak at which the machine moves furthest."""
        if self.spectrum is not None:
            return _as_frequency(self.spectrum, self.use.axis)
        return self.found.frequency if self.found else None

    def estimates(self) -> tuple[Estimate, ...]:
        """Return frequency, damping or wavelength, the peaks of a log, and the acceleration by ripple."""
        limit = () if self.limit is None else (self.limit,)
        if self.spectrum is not None:
            own = _as_frequency(self.spectrum, self.use.axis)
            return ((own,) if own else ()) + self.spectrum.estimates() + limit
        return (self.found.estimates() if self.found else ()) + limit


def judge_ringing(
    ripples: Sequence[Ripple],
    use: Use,
    u_distance_mm: float,
    u_speed_ratio: float,
    drive: Mapping[str, Any] | None,
    bearing_mm: float | None = None,
) -> RingingJudgement:
    """Judge ripples read on a wall.

    Args:
        ripples: of one axis.
        use: what the answer is for.
        u_distance_mm: standard uncertainty of one end of a distance.
        u_speed_ratio: relative standard uncertainty of the speed.
        drive: parts of the drive as a machine keeps them; None where not known.
        bearing_mm: diameter over which a bearing rolls on the axis; None for none.

    Raises:
        InputError: as `ringing.read_ringing` and the two that follow from it.
    """
    found = read_ringing(use.axis, ripples, u_distance_mm, u_speed_ratio, parts_of(drive, bearing_mm))
    rings = found.frequency is not None
    limit = acceleration_limit_mm_s2(found.frequency, use.visible_mm) if found.frequency is not None else None
    quiet = (
        quiet_accelerations_mm_s2(found.frequency, use.speed_mm_s, use.most_mm_s2)
        if found.frequency is not None else ()
    )  # fmt: skip
    advice = [_second_speed(found, ripples)] if found.kind is Kind.OPEN else []
    if rings or found.kind is not Kind.OPEN:
        advice.append(_by_kind(found, use, limit))
    mind = _mind(use, quiet) if rings else ()
    return RingingJudgement(use, found, None, limit, quiet, tuple(advice), mind)


def judge_log(time_s: ArrayLike, acceleration_mm_s2: ArrayLike, use: Use) -> RingingJudgement:
    """Judge an accelerometer log.

    Args:
        time_s: (n,) times.
        acceleration_mm_s2: (n,); another unit does as well.
        use: what the answer is for.

    Raises:
        InputError: as `spectrum.spectrum_of`.
    """
    found = spectrum_of(np.asarray(time_s), np.asarray(acceleration_mm_s2), use.axis)
    own = _as_frequency(found, use.axis)
    if own is None:
        nothing = Advice(
            Setting.UNDECIDED,
            tr("Log again while the machine shakes: a rattle of quick moves to and fro along this axis."),
            None,
            "",
            tr(
                "In {count} averaged pieces nothing from {low:g} to {high:g} Hz stands out from the noise.",
                count=found.pieces, low=LOWEST_HZ, high=HIGHEST_HZ,
            ),
            tr("Acceleration, speed: nothing is proved yet."),
        )
        return RingingJudgement(use, None, found, None, (), (nothing,), ())
    limit = acceleration_limit_mm_s2(own, use.visible_mm)
    quiet = quiet_accelerations_mm_s2(own, use.speed_mm_s, use.most_mm_s2)
    mind = _mind(use, quiet)
    highest = found.peaks[0].frequency
    if highest.value != own.value:
        others = tr(
            "The highest peak is at {highest:.1f} Hz; at {own:.1f} Hz the machine moves further, so that one counts.",
            highest=highest.value, own=own.value,
        )  # fmt: skip
        mind = (others, *mind)
    return RingingJudgement(use, None, found, limit, quiet, (_limit_advice(own, use, limit),), mind)


def _as_frequency(found: Spectrum, axis: str) -> Estimate | None:
    peak = found.furthest(LOWEST_HZ, HIGHEST_HZ)
    if peak is None:
        return None
    own = peak.frequency
    return Estimate(f"frequency_{axis}", own.value, own.u, own.dof, own.unit)


def _by_kind(found: Ringing, use: Use, limit: Estimate | None) -> Advice:
    if found.frequency is not None and limit is not None:
        return _limit_advice(found.frequency, use, limit)
    if found.kind is Kind.MARK and found.wavelength is not None:
        value, U = rounded_pair(found.wavelength.value, found.wavelength.U)
        parts = side_by_side((fit.says for fit in found.fits), ", ")
        action = (
            tr("Mend what repeats there: {parts}.", parts=parts)
            if parts else tr("Look for a part that repeats with this length: a roller, a bearing, an eccentric pulley.")
        )  # fmt: skip
        value = value.removeprefix("+")
        because = tr("The marks lie {value} ± {U} mm apart whatever the speed, so it is not ringing.", value=value, U=U)
        untouched = tr("Acceleration and speed: they do not move these marks.")
        return Advice(Setting.MEND_MECHANICS, action, None, "", because, untouched)
    return Advice(
        Setting.UNDECIDED,
        tr("Count the crests again, away from corners, at three speeds."),
        None,
        "",
        _neither(found),
        tr("Everything: nothing is proved yet."),
    )


def _neither(found: Ringing) -> Words:
    slope, hz = found.slope or (0.0, 0.0), float(np.mean(found.own_hz))
    if not LOWEST_HZ <= hz <= HIGHEST_HZ:
        return tr(
            "It goes with the speed as ringing does, but {hz:.3g} Hz is nothing that a frame rings at ({low:g} to "
            "{high:g} Hz).",
            hz=hz, low=LOWEST_HZ, high=HIGHEST_HZ,
        )  # fmt: skip
    power, U = rounded_pair(slope[0], 2 * slope[1])
    return tr(
        "The wavelength goes as speed to the power {power} ± {U}: neither ringing (1) nor a mark (0).",
        power=power.removeprefix("+"), U=U,
    )  # fmt: skip


def _limit_advice(frequency: Estimate, use: Use, limit: Estimate) -> Advice:
    hz, U_hz = rounded_pair(frequency.value, frequency.U)
    told, U_limit = rounded_pair(limit.value, limit.U)
    amount = min(told_value(limit), use.most_mm_s2)
    capped = limit.value > use.most_mm_s2
    action = (
        tr("The ringing allows all of this machine's {most:.0f} mm/s².", most=use.most_mm_s2)
        if capped
        else tr("Accelerate {axis} with at most {limit:.0f} mm/s² on walls that are seen.", axis=use.axis.upper(),
                limit=amount)
    )  # fmt: skip
    because = tr(
        "{axis} rings at {hz} ± {U} Hz with {payload:g} g on the bed; a ripple of {visible:g} mm is that of "
        "{limit} ± {U_limit} mm/s².",
        axis=use.axis.upper(), hz=hz.removeprefix("+"), U=U_hz, payload=use.payload_g, visible=use.visible_mm,
        limit=told.removeprefix("+"), U_limit=U_limit,
    )  # fmt: skip
    untouched = tr("Steps per millimetre, flow factor: ringing is none of theirs.")
    return Advice(Setting.ACCELERATION, action, amount, "mm/s²", because, untouched)


def _second_speed(found: Ringing, ripples: Sequence[Ripple]) -> Advice:
    speed = ripples[0].speed_mm_s
    parts = side_by_side((fit.says for fit in found.fits), ", ")
    because = tr("Ringing stretches with the speed, a mark does not; so far these readings do not tell.")
    if parts:
        because = tr("It could be a mark of: {parts}. Ringing stretches with the speed, a mark does not.", parts=parts)
    faster = 1.5 * speed
    if found.frequency is not None:
        action = tr("Print the wall at {speed:.0f} mm/s too, count there; what follows holds if it is ringing.",
                    speed=faster)  # fmt: skip
    else:
        action, because = tr("Print the wall at {speed:.0f} mm/s too, and count there.", speed=faster), _too_far(found)
    return Advice(
        Setting.UNDECIDED,
        action,
        None,
        "",
        because,
        tr("Everything: nothing is proved yet."),
    )


def _too_far(found: Ringing) -> Words:
    """Return what a ripple at one speed may be that would be ringing at a frequency no frame rings at."""
    hz, U = rounded_pair(float(np.mean(found.own_hz)), 2 * float(np.mean(found.u_hz)))
    told = {"hz": hz.removeprefix("+"), "U": U, "low": LOWEST_HZ, "high": HIGHEST_HZ}
    parts = side_by_side((fit.says for fit in found.fits), ", ")
    if parts:
        return tr(
            "As ringing it would be {hz} ± {U} Hz, and frames ring at {low:g} to {high:g} Hz. It could be a mark of: "
            "{parts}; or crests were miscounted. A mark stays where it is at the second speed.",
            parts=parts, **told,
        )  # fmt: skip
    return tr(
        "As ringing it would be {hz} ± {U} Hz, and frames ring at {low:g} to {high:g} Hz. It could be a mark of a part "
        "that repeats, or crests were miscounted. A mark stays where it is at the second speed.",
        **told,
    )


def _mind(use: Use, quiet: Sequence[Estimate]) -> tuple[Words, ...]:
    says = [tr("The ripple may be twice as high: halve the acceleration if it is still seen.")]
    if quiet:
        pairs = [rounded_pair(e.value, e.U) for e in quiet[:4]]
        listed = ", ".join(f"{value.removeprefix('+')} ± {U}" for value, U in pairs)
        says.insert(0, tr("At {speed:g} mm/s ramps of {listed} mm/s² last whole periods and cancel their own ripple.",
                          speed=use.speed_mm_s, listed=listed))  # fmt: skip
    says.append(tr("A heavier part on a moving bed rings lower, as 1/√mass: read it again with the heaviest part."))
    return tuple(says)
