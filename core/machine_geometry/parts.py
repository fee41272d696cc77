"""The parts of one drive train, checked: motor, gear pairs, belt, screw, rack or wheel, or a rotary axis.

Whole numbers stay whole and decimals are taken as typed (2.032 is 254/125), so that everything calculated from them is
exact until the last rounding. Refused is only what cannot be; what is merely odd is asked about in `questions`.

Reference: belt pitches ISO 5296, ISO 13050, ISO 17396; threads ISO 261, ISO 2904; racks ISO 53, ISO 54. Limits of what
can be: common practice, no source.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, fields
from enum import StrEnum
from fractions import Fraction
from typing import Any, TypeVar

from core.errors import InputError
from core.machine_geometry.catalogue import lookup
from core.words import Words, tr


class DriveKind(StrEnum):
    """What turns rotation into travel; on a rotary axis nothing does, it goes by degrees."""

    BELT = "belt"
    SCREW = "screw"
    RACK = "rack"
    WHEEL = "wheel"
    ROTARY = "rotary"


class Reeving(StrEnum):
    """How far the carriage goes when the belt, nut or rope goes 1: as far, half as far, or twice as far."""

    DIRECT = "direct"
    HALF = "half"
    DOUBLE = "double"


REEVING_RATIO = {Reeving.DIRECT: Fraction(1), Reeving.HALF: Fraction(1, 2), Reeving.DOUBLE: Fraction(2)}
_Choice = TypeVar("_Choice", DriveKind, Reeving)
_COUNTS = ("full_steps", "microsteps", "teeth", "starts")
MICROSTEPS = (1, 2, 4, 8, 16, 32, 64, 128, 256)

_NEEDED = {
    DriveKind.BELT: ("pitch_mm", "teeth"),
    DriveKind.SCREW: ("pitch_mm", "starts"),
    DriveKind.RACK: ("teeth",),
    DriveKind.WHEEL: ("diameter_mm",),
    DriveKind.ROTARY: (),
}
OWN_PARTS = {**_NEEDED, DriveKind.RACK: ("module_mm", "pitch_mm", "teeth", "helix_deg")}
_LABELS = {
    "kind": tr("kind of drive"),
    "reeving": tr("reeving"),
    "full_steps": tr("full steps per turn"),
    "microsteps": tr("microsteps"),
    "pitch_mm": tr("pitch"),
    "teeth": tr("number of teeth"),
    "starts": tr("number of starts"),
    "module_mm": tr("module"),
    "helix_deg": tr("helix angle"),
    "diameter_mm": tr("diameter"),
    "u_ratio": tr("tolerance of the drive"),
}
_LIMITS: dict[str, tuple[float, float, str]] = {
    "full_steps": (4, 10000, ""),
    "pitch_mm": (0.1, 100, " mm"),
    "teeth": (3, 500, ""),
    "starts": (1, 12, ""),
    "module_mm": (0.1, 20, " mm"),
    "helix_deg": (0, 60, "°"),
    "diameter_mm": (1, 500, " mm"),
    "u_ratio": (1e-6, 0.05, ""),
}


@dataclass(frozen=True, slots=True)
class Drive:
    """One axis from motor to carriage. A drive that cannot exist is refused when it is made.

    Attributes:
        full_steps: of the motor per turn, 200 for a step angle of 1.8 degrees.
        gears: (driven teeth, driving teeth) of each pair between motor and pulley, screw or pinion; a worm drives with
            its starts. Never a rounded ratio.
        reeving: how far the carriage goes with the belt.
        pitch_mm: of the belt, of the thread (not the lead) or of a metric-pitch rack.
        teeth: of the pulley or pinion that moves the carriage.
        starts: thread beginnings at the end of the screw.
        module_mm: normal module of the rack, instead of its pitch.
        helix_deg: helix angle of the rack, 0 where it is straight.
        diameter_mm: effective diameter of a smooth wheel, the thickness of a band included.
        u_ratio: relative standard uncertainty of the travel; None takes the catalogue's for this kind.

    Raises:
        InputError: named after the field at fault.
    """

    kind: DriveKind
    full_steps: int = 200
    microsteps: int = 16
    gears: tuple[tuple[int, int], ...] = ()
    reeving: Reeving = Reeving.DIRECT
    pitch_mm: float | None = None
    teeth: int | None = None
    starts: int | None = None
    module_mm: float | None = None
    helix_deg: float = 0.0
    diameter_mm: float | None = None
    u_ratio: float | None = None

    def __post_init__(self) -> None:
        """Refuse what cannot be."""
        for name in ("full_steps", "microsteps", *OWN_PARTS[self.kind], "u_ratio"):
            if getattr(self, name) is not None:
                _check_number(name, getattr(self, name))
        _check_gears(self.gears)
        if self.kind is DriveKind.ROTARY and self.reeving is not Reeving.DIRECT:
            raise InputError("reeving", tr("A rotary axis has no reeving; enter its wheels as gear pairs."))
        for name in _NEEDED[self.kind]:
            if getattr(self, name) is None:
                raise InputError(name, tr("The {what} is missing; count or measure it.", what=_LABELS[name]))
        if self.kind is DriveKind.RACK and (self.module_mm is None) == (self.pitch_mm is None):
            raise InputError("module_mm", tr("A rack has a module or a pitch in mm: enter one of the two."))

    @property
    def reduction(self) -> Fraction:
        """Motor turns per turn of the pulley, screw, pinion or wheel."""
        product = Fraction(1)
        for driven, driving in self.gears:
            product *= Fraction(driven, driving)
        return product

    @property
    def tolerance_ratio(self) -> float:
        """Relative standard uncertainty of the travel: as entered, else the catalogue's for this kind of drive."""
        return lookup("drive_tolerances", "kind", "u_ratio")[self.kind] if self.u_ratio is None else self.u_ratio

    def parts(self) -> dict[str, Any]:
        """Return the parts as plain JSON values; `drive_from_parts` reads them back."""
        kept: dict[str, Any] = {"kind": str(self.kind), "reeving": str(self.reeving)}
        kept |= {name: getattr(self, name) for name in ("full_steps", "microsteps", *OWN_PARTS[self.kind], "u_ratio")}
        kept["gears"] = [list(pair) for pair in self.gears]
        return {name: value for name, value in kept.items() if value is not None}


def drive_from_parts(parts: Mapping[str, Any]) -> Drive:
    """Make a drive from named values, as a form or the database holds them; None and "" count as not given.

    Raises:
        InputError: for an unknown name, a missing part, a count that is not whole, or a value outside its limits.
    """
    given = {name: value for name, value in parts.items() if value is not None and value != ""}
    for name in given:
        if name not in {field.name for field in fields(Drive)}:
            raise InputError(name, tr("A drive has no part called “{name}”; leave it out.", name=name))
    if "kind" not in given:
        raise InputError("kind", tr("Choose what moves the carriage: belt, screw, rack or wheel; or a rotary axis."))
    kind = _choice(DriveKind, "kind", given.pop("kind"))
    reeving = _choice(Reeving, "reeving", given.pop("reeving", Reeving.DIRECT))
    gears = _gears_from_value(given.pop("gears", ()))
    read: dict[str, Any] = {name: _check_number(name, value) for name, value in given.items()}
    return Drive(kind=kind, reeving=reeving, gears=gears, **read)


def gears_from_text(text: str) -> tuple[tuple[int, int], ...]:
    """Read gear pairs such as `43/12` or `43/12 3/1`, driven teeth first; nothing means no pair.

    Raises:
        InputError: field `gears`, for anything but whole tooth counts; a decimal is answered with the pair it may be.
    """
    pairs = []
    for word in re.split(r"[\s;×*]+", text.replace(":", "/").replace(",", ".").strip()):
        if pair := re.fullmatch(r"(\d{1,4})/(\d{1,4})", word):
            pairs.append((int(pair[1]), int(pair[2])))
        elif re.fullmatch(r"\d{0,4}\.?\d{1,12}", word):
            raise InputError("gears", _rounded_ratio(word))
        elif word:
            raise InputError(
                "gears",
                tr("“{text}” is not a gear pair; enter counted teeth, driven/driving, such as 43/12.", text=word),
            )
    _check_gears(tuple(pairs))
    return tuple(pairs)


def _rounded_ratio(word: str) -> Words:
    """Answer a decimal ratio with the smallest pair of teeth that rounds to it."""
    places = len(word.partition(".")[2])
    ratio = float(word)
    for driving in range(1, 61):
        driven = round(ratio * driving)
        if (driving > 7 or driven == ratio * driving) and driven > 0 and round(driven / driving, places) == ratio:
            return tr(
                "{ratio} is a rounded gear ratio; enter the counted teeth, driven/driving. Is it {driven}/{driving}?",
                ratio=word,
                driven=driven,
                driving=driving,
            )
    return tr("{ratio} is a rounded gear ratio; count the teeth and enter driven/driving, such as 43/12.", ratio=word)


def _gears_from_value(value: object) -> tuple[tuple[int, int], ...]:
    if isinstance(value, str):
        return gears_from_text(value)
    if isinstance(value, (list, tuple)) and all(isinstance(pair, (list, tuple)) and len(pair) == 2 for pair in value):
        return tuple((_whole("gears", pair[0]), _whole("gears", pair[1])) for pair in value)
    raise InputError("gears", tr("Gear pairs are counted teeth, driven/driving, such as 43/12."))


def _check_gears(gears: tuple[tuple[int, int], ...]) -> None:
    for driven, driving in gears:
        if not (1 <= driven <= 1000 and 1 <= driving <= 1000):
            raise InputError(
                "gears",
                tr(
                    "Gear pair {driven}/{driving}: each wheel has 1 to 1000 teeth; count again.",
                    driven=driven,
                    driving=driving,
                ),
            )


def _choice(kind: type[_Choice], field: str, value: object) -> _Choice:
    if value not in list(kind):
        raise InputError(
            field,
            tr(
                "“{value}” is no {what} known here; choose one of {choices}.",
                value=value,
                what=_LABELS[field],
                choices=", ".join(kind),
            ),
        )
    return kind(str(value))


def _check_number(field: str, value: object) -> int | float:
    """Return the value as its field wants it, whole where it is a count, inside the limits of what can be."""
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not math.isfinite(value):
        raise InputError(
            field, tr("The {what} “{value}” is not a number; type it again.", what=_LABELS[field], value=value)
        )
    if field in _COUNTS:
        if field == "microsteps" and value not in MICROSTEPS:
            raise InputError(
                field,
                tr("Microsteps {value} is not a power of two; drivers offer 1, 2, 4 … 256.", value=short(value)),
            )
        if value != int(value):
            raise InputError(field, _not_whole(field, value))
        value = int(value)
    low, high, unit = _LIMITS.get(field, (-math.inf, math.inf, ""))
    if not low <= value <= high:
        raise InputError(
            field,
            tr(
                "The {what} {value}{unit} is outside {low} to {high}{unit}; check the decimal mark and the unit.",
                what=_LABELS[field],
                value=short(value),
                low=short(low),
                high=short(high),
                unit=unit,
            ),
        )
    return value


def _not_whole(field: str, value: float) -> Words:
    if field == "teeth":
        return tr("{value} teeth is not possible; count again, a tooth count is a whole number.", value=short(value))
    if field == "starts":
        return tr(
            "{value} starts is not possible; count the thread beginnings at the end of the screw.", value=short(value)
        )
    angles = lookup("drive_motors", "step_angle_deg", "full_steps")
    steps = next((steps for angle, steps in angles.items() if float(angle) == value), None)
    if steps is not None:
        return tr(
            "{value}° is the step angle; enter the full steps per turn, {steps}.", value=short(value), steps=int(steps)
        )
    return tr(
        "{value} full steps is not possible; enter 360 divided by the step angle, a whole number.", value=short(value)
    )


def _whole(field: str, value: object) -> int:
    if isinstance(value, bool) or not isinstance(value, (int, float)) or value != int(value):
        raise InputError(field, tr("A gear has whole teeth: “{value}” is not a tooth count; count again.", value=value))
    return int(value)


def short(number: float) -> str:
    """Write a number without needless digits: 2, 2.032, 0.0005."""
    return f"{number:.10g}".replace("-", "−")
