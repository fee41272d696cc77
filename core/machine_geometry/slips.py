"""Every way in which one part of a drive may differ from its entry: the candidates of the mix-up finder.

Each candidate changes one part. Its `ratio` is the travel it gives over the travel of the drive as entered; its
`weight` says how often such a slip happens (catalogue, common practice without a source) and serves for ranking only.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from core.machine_geometry.catalogue import common, counts, lookup, numbers, table
from core.machine_geometry.drive import describe_drive, refuse_rotary
from core.machine_geometry.parts import MICROSTEPS, Drive, DriveKind, Reeving, short
from core.quantity import MM_PER_INCH
from core.words import Words, tr

_LOOSE_TEETH = 4  # miscounted by up to this many
_STARTS = (1, 2, 3, 4, 5, 6, 8)
_HELIX_DEG = 19.5283  # usual for racks whose pitch shall be a round number (common practice, no source)
_RARE, _SOME = 0.2, 0.5  # weight of a part seldom or sometimes met, against 1 for a common one


class Slip(StrEnum):
    """What went wrong."""

    TEETH = "teeth"
    BELT_PITCH = "belt_pitch"
    STARTS = "starts"
    LEAD_AS_PITCH = "lead_as_pitch"
    SCREW = "screw"
    RACK_PITCH = "rack_pitch"
    HELIX = "helix"
    DIAMETER = "diameter"
    MICROSTEPS = "microsteps"
    STEP_ANGLE = "step_angle"
    GEAR_INVERSE = "gear_inverse"
    GEAR_MISSING = "gear_missing"
    GEAR_PAIR = "gear_pair"
    REEVING = "reeving"
    INCH = "inch"


@dataclass(frozen=True, slots=True)
class Candidate:
    """One part that may be other than entered. `drive` has it as fitted; None where a unit and no part is wrong."""

    slip: Slip
    entered: str
    fitted: str
    ratio: float
    weight: float
    drive: Drive | None
    cause: Words
    remedy: Words


def slips_of(drive: Drive) -> tuple[Candidate, ...]:
    """Return every candidate of this drive whose travel differs from the entry, no fitted part named twice.

    Raises:
        InputError: field `kind`, for a rotary axis.
    """
    refuse_rotary(drive)
    own = {
        DriveKind.BELT: (_teeth, _belts),
        DriveKind.SCREW: (_starts, _leads, _screws),
        DriveKind.RACK: (_teeth, _racks, _helices),
        DriveKind.WHEEL: (_diameters,),
    }
    sources = (*own[drive.kind], _microsteps, _motors, _gears, _reevings, _units)
    found = [candidate for source in sources for candidate in source(drive) if abs(candidate.ratio - 1) > 1e-9]
    return tuple({(candidate.slip, candidate.fitted): candidate for candidate in reversed(found)}.values())[::-1]


def _candidate(
    drive: Drive, slip: Slip, fitted: Drive, entered: object, fits: object, share: float, cause: Words, remedy: Words
) -> Candidate:
    ratio = describe_drive(drive).steps_mm / describe_drive(fitted).steps_mm
    weight = lookup("drive_slips", "slip", "weight")[slip] * share
    return Candidate(slip, str(entered), str(fits), ratio, weight, fitted, cause, remedy)


def _teeth(drive: Drive) -> Iterator[Candidate]:
    entered = drive.teeth or 0
    near = range(max(entered - _LOOSE_TEETH, 3), min(entered + _LOOSE_TEETH, 500) + 1)
    often, known = common("drive_teeth", "teeth"), counts("drive_teeth", "teeth")
    for teeth in sorted({*near, *known}):
        share = 1.0 if teeth in often else _SOME if teeth in known or abs(teeth - entered) == 1 else _RARE
        cause = tr("{fitted} teeth where {entered} are entered", fitted=teeth, entered=entered)
        remedy = tr("Count the wheel that moves the carriage, one tooth marked; an idler does not count.")
        yield _candidate(drive, Slip.TEETH, replace(drive, teeth=teeth), entered, teeth, share, cause, remedy)


def _belts(drive: Drive) -> Iterator[Candidate]:
    entered = short(drive.pitch_mm or 0)
    often = common("drive_belts", "pitch_mm")
    for pitch in numbers("drive_belts", "pitch_mm"):
        cause = tr("a belt of {fitted} mm pitch where {entered} mm is entered", fitted=short(pitch), entered=entered)
        remedy = tr("Measure the belt over ten teeth.")
        share = 1.0 if pitch in often else _RARE
        fitted = replace(drive, pitch_mm=pitch)
        yield _candidate(drive, Slip.BELT_PITCH, fitted, entered, short(pitch), share, cause, remedy)


def _starts(drive: Drive) -> Iterator[Candidate]:
    entered = drive.starts or 1
    for starts in _STARTS:
        share = 1.0 if starts in (1, 2, 4) else _RARE
        cause = tr("{fitted} thread starts where {entered} is entered", fitted=starts, entered=entered)
        remedy = tr("Count the thread beginnings at the end of the screw.")
        yield _candidate(drive, Slip.STARTS, replace(drive, starts=starts), entered, starts, share, cause, remedy)


def _leads(drive: Drive) -> Iterator[Candidate]:
    """The pitch entered was the travel per turn already."""
    entered = drive.pitch_mm or 0
    if drive.starts == 1 or entered / (drive.starts or 1) < 0.35:
        return
    fitted = replace(drive, pitch_mm=entered / (drive.starts or 1))
    cause = tr("the {entered} mm entered as thread pitch is already the travel per turn", entered=short(entered))
    remedy = tr("Turn the screw once and measure how far the nut goes.")
    yield _candidate(drive, Slip.LEAD_AS_PITCH, fitted, short(entered), short(fitted.pitch_mm or 0), 1.0, cause, remedy)


def _screws(drive: Drive) -> Iterator[Candidate]:
    """Another screw of the catalogue, unless another number of starts gives its travel already."""
    entered = (drive.pitch_mm or 0) * (drive.starts or 1)
    by_starts = {(drive.pitch_mm or 0) * starts for starts in _STARTS}
    for row in sorted(table("drive_screws"), key=lambda row: row["common"], reverse=True):
        pitch, starts = float(row["pitch_mm"]), int(row["starts"])
        if pitch * starts in by_starts:
            continue
        cause = tr(
            "a screw of {fitted} mm travel per turn where {entered} mm is entered",
            fitted=short(pitch * starts),
            entered=short(entered),
        )
        remedy = tr("Turn the screw once and measure how far the nut goes.")
        share = 1.0 if row["common"] == "1" else _RARE
        fitted = replace(drive, pitch_mm=pitch, starts=starts)
        yield _candidate(drive, Slip.SCREW, fitted, short(entered), short(pitch * starts), share, cause, remedy)


def _racks(drive: Drive) -> Iterator[Candidate]:
    remedy = tr("Measure the rack over ten teeth: ten times the pitch, or ten times π times the module.")
    entered = _rack_text(drive)
    other = replace(drive, module_mm=drive.pitch_mm, pitch_mm=drive.module_mm)
    cause = tr(
        "{fitted} where {entered} is entered: module and pitch mistaken", fitted=_rack_text(other), entered=entered
    )
    yield _candidate(drive, Slip.RACK_PITCH, other, entered, _rack_text(other), 1.0, cause, remedy)
    for row in table("drive_racks"):
        module, pitch = (float(row[name]) if row[name] else None for name in ("module_mm", "pitch_mm"))
        fitted = replace(drive, module_mm=module, pitch_mm=pitch)
        cause = tr("a rack of {fitted} where {entered} is entered", fitted=_rack_text(fitted), entered=entered)
        share = 1.0 if row["common"] == "1" else _RARE
        yield _candidate(drive, Slip.RACK_PITCH, fitted, entered, _rack_text(fitted), share, cause, remedy)


def _rack_text(drive: Drive) -> Words:
    if drive.module_mm is None:
        return tr("pitch {pitch} mm", pitch=short(drive.pitch_mm or 0))
    return tr("module {module} mm", module=short(drive.module_mm))


def _helices(drive: Drive) -> Iterator[Candidate]:
    for helix in (0.0, _HELIX_DEG):
        cause = tr(
            "a rack of {fitted}° helix where {entered}° is entered", fitted=short(helix), entered=short(drive.helix_deg)
        )
        remedy = tr("Look at the teeth from above: straight across, or slanted?")
        fitted = replace(drive, helix_deg=helix)
        yield _candidate(drive, Slip.HELIX, fitted, short(drive.helix_deg), short(helix), 1.0, cause, remedy)


def _diameters(drive: Drive) -> Iterator[Candidate]:
    entered = drive.diameter_mm or 0
    for factor, cause in (
        (2.0, tr("the radius of the wheel entered as its diameter")),
        (0.5, tr("twice the diameter of the wheel entered")),
    ):
        if 1 <= entered * factor <= 500:
            remedy = tr("Measure across the wheel, band included.")
            fitted = replace(drive, diameter_mm=entered * factor)
            yield _candidate(drive, Slip.DIAMETER, fitted, short(entered), short(entered * factor), 1.0, cause, remedy)


def _microsteps(drive: Drive) -> Iterator[Candidate]:
    for micro in MICROSTEPS:
        away = abs(math.log2(micro / drive.microsteps))
        cause = tr("{fitted} microsteps where {entered} are entered", fitted=micro, entered=drive.microsteps)
        remedy = tr("Look at the driver's switches and at its setting in the controller; only one of them counts.")
        fitted = replace(drive, microsteps=micro)
        share = _SOME ** max(away - 1, 0)
        yield _candidate(drive, Slip.MICROSTEPS, fitted, drive.microsteps, micro, share, cause, remedy)


def _motors(drive: Drive) -> Iterator[Candidate]:
    often = common("drive_motors", "full_steps")
    for steps in counts("drive_motors", "full_steps"):
        cause = tr(
            "a motor of {fitted} full steps per turn where {entered} are entered",
            fitted=steps,
            entered=drive.full_steps,
        )
        remedy = tr("Read the plate of the motor: 1.8° is 200, 0.9° is 400 full steps.")
        share = 1.0 if steps in often else _RARE
        fitted = replace(drive, full_steps=steps)
        yield _candidate(drive, Slip.STEP_ANGLE, fitted, drive.full_steps, steps, share, cause, remedy)


def _gears(drive: Drive) -> Iterator[Candidate]:
    remedy = tr("Count the teeth of both wheels and see which one sits on the motor.")
    for place, (driven, driving) in enumerate(drive.gears):
        before, after = drive.gears[:place], drive.gears[place + 1 :]
        entered = f"{driven}/{driving}"
        inverse = replace(drive, gears=(*before, (driving, driven), *after))
        cause = tr("the gear pair {entered} entered upside down", entered=entered)
        yield _candidate(drive, Slip.GEAR_INVERSE, inverse, entered, f"{driving}/{driven}", 1.0, cause, remedy)
        without = replace(drive, gears=before + after)
        cause = tr("no gear pair {entered} in the drive", entered=entered)
        yield _candidate(drive, Slip.GEAR_MISSING, without, entered, "1/1", _SOME, cause, remedy)
        for pair, share in _other_pairs(driven, driving):
            cause = tr(
                "a gear pair {fitted} where {entered} is entered", fitted=f"{pair[0]}/{pair[1]}", entered=entered
            )
            other = replace(drive, gears=(*before, pair, *after))
            yield _candidate(drive, Slip.GEAR_PAIR, other, entered, f"{pair[0]}/{pair[1]}", share, cause, remedy)
    if not drive.gears:
        for pair, share in _other_pairs(1, 1):
            cause = tr("a gear pair {fitted} that is not entered", fitted=f"{pair[0]}/{pair[1]}")
            geared = replace(drive, gears=(pair,))
            yield _candidate(drive, Slip.GEAR_MISSING, geared, "1/1", f"{pair[0]}/{pair[1]}", share, cause, remedy)


def _other_pairs(driven: int, driving: int) -> Iterator[tuple[tuple[int, int], float]]:
    """Pairs of the catalogue, and the entered one miscounted by a tooth (a wheel, not a worm)."""
    for row in table("drive_gears"):
        yield (int(row["driven"]), int(row["driving"])), 1.0 if row["common"] == "1" else _RARE
    if min(driven, driving) >= 8:
        for off in (-1, 1):
            yield (min(driven + off, 1000), driving), _SOME
            yield (driven, min(driving + off, 1000)), _SOME


def _reevings(drive: Drive) -> Iterator[Candidate]:
    names = {
        Reeving.DIRECT: tr("as far as the belt"),
        Reeving.HALF: tr("half as far as the belt"),
        Reeving.DOUBLE: tr("twice as far as the belt"),
    }
    for reeving in Reeving:
        cause = tr("a carriage that goes {fitted}, not {entered}", fitted=names[reeving], entered=names[drive.reeving])
        remedy = tr("Mark the belt and look how far the carriage goes with it.")
        fitted = replace(drive, reeving=reeving)
        yield _candidate(drive, Slip.REEVING, fitted, drive.reeving, reeving, _SOME, cause, remedy)


def _units(drive: Drive) -> Iterator[Candidate]:
    """Inch and mm mixed in drawing or reading; the drive itself is as entered."""
    weight = lookup("drive_slips", "slip", "weight")[Slip.INCH]
    for taken, meant, ratio in (("mm", "inch", 1 / MM_PER_INCH), ("inch", "mm", MM_PER_INCH)):
        cause = tr("a length in {meant} read as {taken}", meant=meant, taken=taken)
        remedy = tr("Look at the unit of the caliper and of the drawing.")
        yield Candidate(Slip.INCH, taken, meant, ratio, weight, None, cause, remedy)
