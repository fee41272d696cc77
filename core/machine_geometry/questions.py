"""What is odd about the parts of a drive, though possible: asked, never refused.

Limits of what is usual are common practice without a source; pitches are compared with the catalogue of parts.
"""

from __future__ import annotations

from dataclasses import dataclass

from core.machine_geometry.catalogue import counts, numbers, table
from core.machine_geometry.parts import REEVING_RATIO, Drive, DriveKind, Reeving, short
from core.words import tr


@dataclass(frozen=True, slots=True)
class DriveQuestion:
    """Something odd but possible about a field; `instead` is the value that may have been meant, if there is one."""

    field: str
    says: str
    instead: float | None = None


def question_drive(drive: Drive) -> tuple[DriveQuestion, ...]:
    """Return what is odd about the parts, for the person to look at again; nothing here is refused."""
    asked = [_question_motor(drive), _question_teeth(drive), _question_pitch(drive), _question_reeving(drive)]
    return tuple(question for question in asked if question is not None)


def _question_motor(drive: Drive) -> DriveQuestion | None:
    if drive.full_steps in counts("drive_motors", "full_steps"):
        return None
    return DriveQuestion(
        "full_steps",
        tr(
            "{steps} full steps per turn is unusual; most motors have 200 (1.8°) or 400 (0.9°). Are microsteps in it?",
            steps=drive.full_steps,
        ),
        200,
    )


def _question_teeth(drive: Drive) -> DriveQuestion | None:
    if drive.kind not in (DriveKind.BELT, DriveKind.RACK) or 8 <= (drive.teeth or 0) <= 120:
        return None
    return DriveQuestion(
        "teeth",
        tr("{teeth} teeth is unusual, most wheels have 8 to 120; count again, one tooth marked.", teeth=drive.teeth),
    )


def _question_pitch(drive: Drive) -> DriveQuestion | None:
    if drive.kind is DriveKind.BELT:
        return _question_belt(drive.pitch_mm or 0)
    if drive.kind is DriveKind.SCREW:
        return _question_lead(drive.pitch_mm or 0, drive.starts or 1)
    if drive.kind is DriveKind.WHEEL:
        return DriveQuestion(
            "diameter_mm",
            tr(
                "A smooth wheel gives a nominal value only: {off} mm on {diameter} mm is {percent} %. Measure the "
                "travel.",
                off=0.05,
                diameter=short(drive.diameter_mm or 0),
                percent=f"{5 / (drive.diameter_mm or 1):.1f}",
            ),
        )
    if drive.kind is DriveKind.ROTARY and not drive.gears:
        return DriveQuestion("gears", tr("Without a gear pair the motor's shaft turns with the axis; is that so?"))
    if drive.module_mm is not None and not 0.3 <= drive.module_mm <= 4:
        return DriveQuestion(
            "module_mm",
            tr(
                "Module {module} mm is unusual (0.3 to 4 mm); is it the pitch of the rack?",
                module=short(drive.module_mm),
            ),
        )
    return None


def _question_belt(pitch_mm: float) -> DriveQuestion | None:
    pitches = numbers("drive_belts", "pitch_mm")
    if pitch_mm in pitches:
        return None
    nearest = min(pitches, key=lambda known: abs(known - pitch_mm))
    name = next(row["name"] for row in table("drive_belts") if float(row["pitch_mm"]) == nearest)
    return DriveQuestion(
        "pitch_mm",
        tr(
            "A belt pitch of {pitch} mm is not in the catalogue; the nearest is {nearest} mm ({name}). Measure over "
            "ten teeth.",
            pitch=short(pitch_mm),
            nearest=short(nearest),
            name=name,
        ),
        nearest,
    )


def _question_lead(pitch_mm: float, starts: int) -> DriveQuestion | None:
    """Ask about pitch and lead only where both readings of the number would be a possible thread."""
    lead = pitch_mm * starts
    if starts > 1 and pitch_mm / starts >= 0.35:
        return DriveQuestion(
            "pitch_mm",
            tr(
                "{pitch} mm with {starts} starts: is {pitch} mm the thread pitch (travel {lead} mm per turn) or "
                "already the travel per turn?",
                pitch=short(pitch_mm),
                starts=starts,
                lead=short(lead),
            ),
            pitch_mm / starts,
        )
    if not 0.35 <= lead <= 100:
        return DriveQuestion(
            "pitch_mm",
            tr(
                "Travel of {lead} mm per turn is unusual for a screw (0.35 to 100 mm); check pitch and starts.",
                lead=short(lead),
            ),
        )
    return None


def _question_reeving(drive: Drive) -> DriveQuestion | None:
    if drive.reeving is Reeving.DIRECT:
        return None
    return DriveQuestion(
        "reeving",
        tr(
            "Does the carriage really move {ratio} times as far as the belt? Mark the belt and look.",
            ratio=str(REEVING_RATIO[drive.reeving]),
        ),
    )
