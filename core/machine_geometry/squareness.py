"""Squareness of two axes: how far the angle between them is from 90 degrees, from diagonals or a square turned over.

    sin g = (d1^2 - d2^2)/(4*a*b)        with a square turned over:  tan g = (e1 + e2)/(2*L)

Symbols: a, b sides of the parallelogram along the first and the second axis of the plane; d1 its diagonal from the
corner (-,-) to (+,+), d2 the other one; g > 0 where the second axis leans towards + of the first, so that d1 is the
long one. e1, e2 how far the carriage runs towards + of the first axis against the blade of a square over the length L,
the square standing one way and turned over; its own error drops out.

Four pillars are read centre to centre: d is the mean of outer and inner reading. Wall outset, reversal error and the
zero of the jaws are in both diagonals alike and drop out of the difference. Of outer readings alone they do not: where
the reversal errors Bx and By differ, play makes each pillar wider along one diagonal than along the other, by
2*(Bx*a - By*b)/sqrt(a^2 + b^2), on a square sqrt(2)*(Bx - By), with a sign that follows the printing direction.

Reference: ISO 230-1:2012 3.5.5 and 12 (squareness); ISO 230-2:2014 (reversal error); JCGM 100:2008 5.1 (propagation).
Standard deviations of a single reading where nothing was repeated, and the limits: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from core.errors import InputError
from core.machine_geometry.diagonals import DRAWN, ONE_SIDED, Diagonals, read_diagonals
from core.measuring.finite import finite_in
from core.measuring.gum import combine
from core.measuring.reach import above_zero, of_one_length, within_reach
from core.quantity import Estimate
from core.records.rows import Instrument
from core.words import Words, tr

METHOD = "squareness 1"
MOST_RAD = math.radians(2.0)  # 3.5 mm in 100 mm are seen by eye: what reads more was misread
U_SIDE_MM = 0.5  # a side as commanded or as measured; it counts only times g
U_ASSUMED_PLAY_MM = 0.15  # difference of two reversal errors where none is on record
SD_CHANGE_MM = 0.02  # of an indicator run along a square, where nothing was repeated
_SIDES_ALIKE = 0.03  # sides within this share of each other were meant equal


class Plane(StrEnum):
    """The two axes; the first one is named first."""

    XY = "xy"
    XZ = "xz"
    YZ = "yz"


class SignCheck(StrEnum):
    """What a correction did to the angle, held against the prediction that it takes it to zero."""

    GONE = "gone"
    UNCHANGED = "unchanged"
    WRONG_SIGN = "wrong_sign"
    PARTLY = "partly"
    UNCLEAR = "unclear"


@dataclass(frozen=True, slots=True)
class Part:
    """One component of the uncertainty."""

    name: Words
    u_rad: float
    dof: float = math.inf


@dataclass(frozen=True, slots=True)
class Squareness:
    """The angle of a plane and what it rests on.

    Attributes:
        plane: which axes.
        angle: g in rad; its name is `squareness_` and the plane.
        difference_mm: d1 - d2 centre to centre, or e1 + e2 with a square.
        diagonals_mm: d1 and d2 centre to centre, zeros with a square.
        parts: components of the uncertainty.
        fake_rad: false skew that reversal may have put in; 0 where it drops out.
        fake_known: whether its size rests on reversal errors on record.
        square: own error of the square in rad, None with diagonals.
        minds: checks that are not met, in sentences.
        doubtful: places of readings that stand out from those of the same length.
    """

    plane: Plane
    angle: Estimate
    difference_mm: float
    diagonals_mm: tuple[float, float]
    parts: tuple[Part, ...]
    fake_rad: float = 0.0
    fake_known: bool = False
    square: Estimate | None = None
    minds: tuple[Words, ...] = ()
    doubtful: tuple[int, ...] = ()

    def estimates(self) -> tuple[Estimate, ...]:
        """Return squareness_xy, squareness_xz or squareness_yz in rad."""
        return (self.angle,)

    @finite_in("span_mm")
    def shift(self, span_mm: float) -> Estimate:
        """Return by how much one end of a span stands ahead of the other: g times the span."""
        return Estimate("shift", self.angle.value * span_mm, self.angle.u * span_mm, self.angle.dof, "mm")


@within_reach
def squareness_from_diagonals(
    plane: Plane,
    side_a_mm: float,
    side_b_mm: float,
    reading_mm: Sequence[float],
    diagonal: Sequence[str],
    part: Sequence[str],
    *,
    instrument: Instrument | None = None,
    reversal: Mapping[str, Estimate] | None = None,
) -> Squareness:
    """Return the angle from the two diagonals of a printed or drawn parallelogram.

    Args:
        plane: which axes.
        side_a_mm: centre distance along the first axis.
        side_b_mm: centre distance along the second axis.
        reading_mm: (n,) diagonals.
        diagonal: (n,) "1" for the one through (+,+), "2" for the other.
        part: (n,) "outer", "inner" or "drawn".
        instrument: whose uncertainties are known; None for none on record.
        reversal: reversal error in mm by axis, where kept results exist.

    Raises:
        InputError: fields `side_a_mm`, `side_b_mm`, `reading_mm` (with the row where one reading is at fault).
    """
    read = read_diagonals(plane, side_a_mm, side_b_mm, reading_mm, diagonal, part, instrument)
    sine = (read.d1_mm**2 - read.d2_mm**2) / (4.0 * side_a_mm * side_b_mm)  # sin g
    if abs(sine) > math.sin(MOST_RAD):
        raise InputError("reading_mm", _too_far(read, sine))
    fake_rad, fake_known, fake_part = _fake(plane, read, reversal or {})
    parts = (*_diagonal_parts(read, sine, instrument), *fake_part)
    g = math.asin(sine)
    whole = combine([p.u_rad for p in parts], [p.dof for p in parts])
    angle = Estimate(f"squareness_{plane}", g, whole.u / math.cos(g), whole.dof, "rad")
    minds = (*read.minds, *_fake_minds(read, fake_rad, fake_known), *_side_minds(plane, read, angle))
    return Squareness(
        plane, angle, read.d1_mm - read.d2_mm, (read.d1_mm, read.d2_mm), parts, fake_rad, fake_known, None, minds,
        read.doubtful,
    )  # fmt: skip


@within_reach
@of_one_length("change_mm", "placing")
def squareness_from_flips(
    plane: Plane,
    length_mm: float,
    change_mm: Sequence[float],
    placing: Sequence[str],
    *,
    resolution_mm: float = 0.01,
) -> Squareness:
    """Return the angle from an indicator run along a square, the square then turned over.

    Args:
        plane: which axes.
        length_mm: travel along the second axis.
        change_mm: (n,) how far the carriage came towards + of the first axis against the blade on that travel.
        placing: (n,) "normal" or "flipped".
        resolution_mm: of the indicator.

    Raises:
        InputError: field `length_mm`, or `change_mm` while a placing is missing or out of reach.
    """
    if not length_mm > 0:
        raise InputError("length_mm", tr("The length along the square must be above zero; type what was travelled."))
    normal = [c for c, p in zip(change_mm, placing, strict=True) if p == "normal"]
    flipped = [c for c, p in zip(change_mm, placing, strict=True) if p == "flipped"]
    if not normal or not flipped:
        raise InputError(
            "change_mm",
            tr("A square proves nothing one way round: read it standing one way and turned over, each once at least."),
        )
    e1, e2 = sum(normal) / len(normal), sum(flipped) / len(flipped)
    tangent = (e1 + e2) / (2.0 * length_mm)  # tan g
    if abs(tangent) > math.tan(MOST_RAD):
        raise InputError(
            "change_mm",
            tr(
                "{change:.2f} mm in {length:g} mm is {degrees:.1f}°, more than 2°: that would be seen by eye. Count "
                "both readings positive where the carriage comes towards + of the first axis, and read again.",
                change=(e1 + e2) / 2,
                length=length_mm,
                degrees=math.degrees(math.atan(tangent)),
            ),
        )
    parts = _flip_parts(normal, flipped, e1, e2, length_mm, resolution_mm)
    whole = combine([p.u_rad for p in parts], [p.dof for p in parts])
    angle = Estimate(f"squareness_{plane}", math.atan(tangent), whole.u, whole.dof, "rad")
    own = Estimate("square", math.atan((e1 - e2) / (2.0 * length_mm)), whole.u, whole.dof, "rad")
    return Squareness(plane, angle, e1 + e2, (0.0, 0.0), parts, square=own)


def check_prediction(before: Estimate, after: Estimate) -> SignCheck:
    """Hold the angle after a correction against its prediction: zero; doubled means that the sign was wrong."""
    fitting = []
    for check, share in ((SignCheck.GONE, 0.0), (SignCheck.UNCHANGED, 1.0), (SignCheck.WRONG_SIGN, 2.0)):
        both = combine([after.u, share * before.u], [after.dof, before.dof])
        if abs(after.value - share * before.value) <= both.expanded():
            fitting.append(check)
    if not fitting:
        return SignCheck.PARTLY
    return fitting[0] if len(fitting) == 1 else SignCheck.UNCLEAR


@within_reach
@above_zero("side_a_mm", "side_b_mm")
@finite_in("reversal_a_mm", "reversal_b_mm", "side_a_mm", "side_b_mm")
def faked_difference_mm(side_a_mm: float, side_b_mm: float, reversal_a_mm: float, reversal_b_mm: float) -> float:
    """Return d1 - d2 that unequal reversal fakes where pillars are read from outside only, printed anticlockwise.

    Raises:
        InputError: field `side_a_mm` or `side_b_mm`, not above zero.
    """
    return 2.0 * (reversal_a_mm * side_a_mm - reversal_b_mm * side_b_mm) / math.hypot(side_a_mm, side_b_mm)


def _fake(plane: Plane, read: Diagonals, reversal: Mapping[str, Estimate]) -> tuple[float, bool, tuple[Part, ...]]:
    """Return the size of the false skew, whether it is known, and its part: of a known size but of either sign."""
    if not read.one_sided:
        return 0.0, False, ()
    a, b = read.side_a_mm, read.side_b_mm
    per_mm = math.hypot(a, b) / (2.0 * a * b)  # rad for each mm of d1 - d2
    first, second = (reversal.get(axis) for axis in plane)
    if first is None or second is None:
        fake_mm = 2.0 * U_ASSUMED_PLAY_MM * max(a, b) / math.hypot(a, b)
        return fake_mm * per_mm, False, (Part(tr("reversal, not on record"), fake_mm * per_mm),)
    fake_mm = abs(faked_difference_mm(a, b, first.value, second.value))
    u_mm = 2.0 * math.hypot(first.u * a, second.u * b) / math.hypot(a, b)
    return fake_mm * per_mm, True, (Part(tr("reversal"), math.hypot(fake_mm, u_mm) * per_mm),)


def _diagonal_parts(read: Diagonals, sine: float, instrument: Instrument | None) -> tuple[Part, ...]:
    a, b = read.side_a_mm, read.side_b_mm
    per_mm = math.hypot(read.d1_mm, read.d2_mm) / (2.0 * a * b)  # of both diagonals, alike and independent
    parts = [
        Part(tr("repeatability"), per_mm * read.u_repeat_mm, read.dof),
        Part(tr("resolution"), per_mm * read.u_resolution_mm),
        Part(tr("sides"), abs(sine) * math.hypot(U_SIDE_MM / a, U_SIDE_MM / b)),
    ]
    if instrument is not None and not read.drawn:
        zero_mm = 0.5 * math.hypot(instrument.u_outside_zero_mm, instrument.u_inside_zero_mm)
        parts.append(Part(tr("zero of the jaws"), abs(read.d1_mm - read.d2_mm) * zero_mm / (2.0 * a * b)))
        parts.append(Part(tr("scale of the instrument"), 2.0 * abs(sine) * instrument.u_scale_ratio))
    return tuple(parts)


def _flip_parts(
    normal: Sequence[float], flipped: Sequence[float], e1: float, e2: float, length_mm: float, resolution_mm: float
) -> tuple[Part, ...]:
    dof = len(normal) + len(flipped) - 2
    squares = sum((c - e1) ** 2 for c in normal) + sum((c - e2) ** 2 for c in flipped)
    sd = math.sqrt(squares / dof) if dof else SD_CHANGE_MM
    each = math.sqrt(1 / len(normal) + 1 / len(flipped)) / (2.0 * length_mm)
    return (
        Part(tr("repeatability"), sd * each, float(dof) if dof else math.inf),
        Part(tr("resolution"), resolution_mm / math.sqrt(6.0) / (math.sqrt(2.0) * length_mm)),  # two ends a change
    )


def _too_far(read: Diagonals, sine: float) -> Words:
    return tr(
        "The diagonals {d1:.2f} and {d2:.2f} mm differ by {off:.2f} mm, {degrees:.1f}° on sides of {a:g} and {b:g} mm. "
        "A machine so far out is seen by eye: look whether the same pillars were read, or a digit was swapped.",
        d1=read.d1_mm,
        d2=read.d2_mm,
        off=abs(read.d1_mm - read.d2_mm),
        degrees=math.degrees(math.asin(max(-1.0, min(1.0, abs(sine))))),
        a=read.side_a_mm,
        b=read.side_b_mm,
    )


def _fake_minds(read: Diagonals, fake_rad: float, known: bool) -> tuple[Words, ...]:
    if not read.one_sided:
        return ()
    values = {"side": ONE_SIDED[read.parts[0]], "per_100": 100.0 * fake_rad}
    if known:
        return (
            tr(
                "Read {side} only: the kept reversal errors alone can fake {per_100:.3f} mm in 100 mm, either way.",
                **values,
            ),
        )
    return (
        tr(
            "Read {side} only: unequal reversal fakes an angle that changes sign with the printing direction, perhaps "
            "{per_100:.2f} mm in 100 mm. Read the other side of the pillars too.",
            **values,
        ),
    )


def _side_minds(plane: Plane, read: Diagonals, angle: Estimate) -> tuple[Words, ...]:
    a, b = read.side_a_mm, read.side_b_mm
    if a == b or abs(a - b) > _SIDES_ALIKE * max(a, b) or angle.significant or read.parts == (DRAWN,):
        return ()
    return (
        tr(
            "Sides of {a:g} and {b:g} mm with equal diagonals: that is scale along {first} and {second}, not an angle; "
            "it belongs to Size error.",
            a=a,
            b=b,
            first=str(plane)[0].upper(),
            second=str(plane)[1].upper(),
        ),
    )
