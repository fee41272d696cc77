"""What follows from a bed trial: screws, a height correction or a new plate, and how long to soak."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from core.errors import InputError
from core.guidance.verdict import Advice, Setting
from core.machine_geometry.bedplane import FLAT_MM, LEVEL_MM, MAP_MM, METHOD, BedPlane, fit_bed
from core.machine_geometry.bedscrews import Place, ScrewTurn, plan_turns, twist_of
from core.machine_geometry.bedsoak import SETTLED_MM, WINDOW_S, Soak, SoakAnswer, fit_soak
from core.quantity import Estimate, rounded_pair, size_text, value_text
from core.words import NOTHING, Words, side_by_side, tr

_LEAST_TWIST_MM = 0.05
_LEAST_DEG = 5.0  # nobody turns a screw by less


@dataclass(frozen=True, slots=True)
class BedReadings:
    """The readings that count and what held while they were taken.

    Attributes:
        x_mm, y_mm, z_mm: (n,) probes, z the height of the bed, up positive.
        elapsed_s, soak_mm: (m,) heights of one place over time.
        hot: whether the bed is said to be hot; `bed_c` and `print_c` its temperatures, None for not said.
        screws_mm: places of the levelling screws, the stiffest first; none where none are named.
        clockwise_lowers: whether a turn clockwise, seen from above, brings the bed down.
    """

    x_mm: Sequence[float]
    y_mm: Sequence[float]
    z_mm: Sequence[float]
    elapsed_s: Sequence[float] = ()
    soak_mm: Sequence[float] = ()
    hot: bool = True
    bed_c: float | None = None
    print_c: float | None = None
    screws_mm: Sequence[Place] = ()
    pitch_mm: float = 0.5
    clockwise_lowers: bool = True


@dataclass(frozen=True, slots=True)
class BedJudgement:
    """A bed trial and what follows; the part that has no readings is None."""

    plane: BedPlane | None
    turns: tuple[ScrewTurn, ...]
    twist: Estimate | None
    soak: Soak | None
    advice: tuple[Advice, ...]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the estimates of plane, twist and soak."""
        plane = self.plane.estimates() if self.plane else ()
        return (*plane, *((self.twist,) if self.twist else ()), *(self.soak.estimates() if self.soak else ()))


def judge_bed(readings: BedReadings, known_probe: Estimate | None = None) -> BedJudgement:
    """Judge a trial: from typed readings to a verdict.

    Args:
        readings: probes, readings over time, or both.
        known_probe: probe_sd of an earlier kept trial.

    Raises:
        InputError: as `fit_bed`, `plan_turns` and `fit_soak` do; too few readings of one kind only where the other kind
            tells nothing either. Rows count within their kind, soak rows have the fields `elapsed_s` and `soak_mm`.
    """
    plane, plane_error = _plane_of(readings, known_probe)
    soak, soak_error = _soak_of(readings)
    if plane is None and soak is None:
        raise plane_error or soak_error or InputError("z_mm", tr("No reading yet."))
    turns: tuple[ScrewTurn, ...] = ()
    if plane is not None and readings.screws_mm:
        turns = plan_turns(plane, readings.screws_mm, readings.pitch_mm, clockwise_lowers=readings.clockwise_lowers)
    twist = twist_of(plane, readings.screws_mm) if plane is not None else None
    advice = [] if plane is None else [_tilt_advice(plane, turns), *_twist_advice(twist), _flat_advice(plane)]
    advice += [] if soak is None else [_soak_advice(soak)]
    advice += [_go_on(error) for error in (plane_error, soak_error) if error is not None]
    return BedJudgement(plane, turns, twist, soak, tuple(advice))


def _plane_of(readings: BedReadings, known_probe: Estimate | None) -> tuple[BedPlane | None, InputError | None]:
    if not readings.z_mm:
        return None, None
    try:
        plane = fit_bed(
            readings.x_mm,
            readings.y_mm,
            readings.z_mm,
            hot=readings.hot,
            bed_c=readings.bed_c,
            print_c=readings.print_c,
            known_probe=known_probe,
        )
    except InputError as error:
        if error.row is not None:
            raise
        return None, error
    return plane, None


def _soak_of(readings: BedReadings) -> tuple[Soak | None, InputError | None]:
    if not readings.soak_mm:
        return None, None
    try:
        return fit_soak(readings.elapsed_s, readings.soak_mm), None
    except InputError as error:
        field = {"z_mm": "soak_mm"}.get(error.field, error.field)
        renamed = InputError(field, error.message, error.row)
        if error.row is not None:
            raise renamed from error
        return None, renamed


def _tilt_advice(plane: BedPlane, turns: Sequence[ScrewTurn]) -> Advice:
    fall = plane.tilt_over_bed()
    because = tr(
        "It falls by {fall} over {count} places.",
        fall=size_text(fall),
        count=plane.z_mm.size,
    )
    if fall.value <= LEVEL_MM:
        return Advice(Setting.LEAVE, tr("The bed is level; the screws stay."), None, "", because, _untouched())
    if not fall.significant:
        action = tr("Probe more places, or touch one place ten times: the tilt is not told from scatter.")
        return Advice(Setting.UNDECIDED, action, None, "", because, _untouched())
    if not plane.hot:
        action = tr("Heat and soak the bed, then probe again. For a first rough setting: {turns}", turns=_turns(turns))
        return Advice(Setting.UNDECIDED, action, None, "", because, _untouched())
    if turns and not any(turn.told for turn in turns):
        action = tr("No turn of a screw is told from zero: probe more places, or touch one place ten times.")
        return Advice(Setting.UNDECIDED, action, None, "", because, _untouched())
    return Advice(Setting.LEVEL_BED, _turns(turns), fall.value, "mm", because, _untouched())


def _turns(turns: Sequence[ScrewTurn]) -> Words:
    wanted = [turn for turn in turns if turn.told and turn.angle_deg >= _LEAST_DEG]
    if not turns:
        return tr("Name the places of the levelling screws, then their turns are told.")
    if not wanted:
        return tr("No screw needs a turn of {least:.0f}° or more; all stay.", least=_LEAST_DEG)
    stay = ", ".join(str(turn.number) for turn in turns if turn not in wanted)
    listed = side_by_side(map(_turn, wanted), "; ")
    return tr("Seen from above: {list}. Screws that stay: {stay}. Probe again.", list=listed, stay=stay)


def _turn(turn: ScrewTurn) -> Words:
    turns, U = rounded_pair(abs(turn.turns.value), turn.turns.U)
    down = tr("down") if turn.off.value > 0 else tr("up")
    values = {"number": turn.number, "angle": turn.angle_deg, "turns": turns.removeprefix("+"), "U": U, "down": down}
    if turn.clockwise:
        return tr("screw {number} clockwise {turns} ± {U} turns ({angle:.0f}°), {down}", **values)
    return tr("screw {number} anticlockwise {turns} ± {U} turns ({angle:.0f}°), {down}", **values)


def _twist_advice(twist: Estimate | None) -> tuple[Advice, ...]:
    if twist is None or not twist.significant or abs(twist.value) < _LEAST_TWIST_MM:
        return ()
    action = tr("Loosen the fourth screw, level on three, then bring the fourth up until it just touches.")
    because = tr(
        "Four screws twist the plate by {twist}; no turn of the others takes that out.", twist=value_text(twist)
    )
    return (Advice(Setting.LEVEL_BED, action, twist.value, "mm", because, _untouched()),)


def _flat_advice(plane: BedPlane) -> Advice:
    flat = plane.flatness_mm
    because = tr("Flatness {flat}.", flat=size_text(plane.flatness))
    if flat < FLAT_MM:
        return Advice(Setting.LEAVE, tr("The plate is flat enough."), None, "", because, _untouched())
    if flat <= MAP_MM:
        action = tr("Use one. It bends the bottom of long parts with the bed, by up to as much.")
        return Advice(Setting.HEIGHT_MAP, action, flat, "mm", because, _untouched())
    action = tr("Straighten the plate or take another: with a height correction parts would come off bowed by as much.")
    return Advice(Setting.MEND_MECHANICS, action, flat, "mm", because, _untouched())


def _soak_advice(soak: Soak) -> Advice:
    moved = tr(
        "In the last five minutes it moved {drift:.3f} mm ({minutes:.0f} min read).",
        drift=soak.drift_mm,
        minutes=soak.last_s / 60.0,
    )
    if soak.answer is SoakAnswer.STEADY:
        return Advice(Setting.LEAVE, tr("No drift is seen: the bed was settled."), None, "", moved, _untouched())
    if soak.answer is SoakAnswer.NOT_SETTLED:
        return Advice(Setting.UNDECIDED, _read_on(soak), None, "", moved, _untouched())
    action = tr(
        "Let bed and chamber stand for {soak:.0f} min before probing or printing (95 % interval {low:.0f} to "
        "{high:.0f}).",
        soak=soak.soak_s / 60.0,
        low=soak.low_s / 60.0,
        high=soak.high_s / 60.0,
    )
    return Advice(Setting.SOAK_TIME, action, soak.soak_s / 60.0, "min", moved, _untouched())


def _read_on(soak: Soak) -> Words:
    low_min = soak.low_s / 60.0
    if soak.drift_mm < SETTLED_MM and soak.last_s >= WINDOW_S:
        return tr("The drift is slow, but its end is not in sight: read on, to {low:.0f} min at least.", low=low_min)
    if math.isinf(soak.high_s):
        return tr("Not settled: read on until five minutes pass with less than 0.01 mm.")
    return tr(
        "Not settled: read on until five minutes pass with less than 0.01 mm (perhaps {low:.0f} to {high:.0f} min).",
        low=low_min,
        high=soak.high_s / 60.0,
    )


def _go_on(error: InputError) -> Advice:
    return Advice(Setting.UNDECIDED, tr("{says}", says=error.message), None, "", NOTHING, _untouched())


def _untouched() -> Words:
    return tr("Z steps, first-layer height: neither levels a bed.")
