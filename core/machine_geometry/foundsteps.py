"""A steps/mm value found in the controller against the parts of the drive: what it does to a part.

Symbols: found and calculated, steps/mm; L length of a part. The motor turns in proportion to the value found, the
carriage goes by the parts: L comes out as L found/calculated.

Reference: plain geometry of the parts. The bounds are common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from core.errors import InputError
from core.machine_geometry.drive import describe_drive
from core.machine_geometry.parts import Drive, short
from core.measuring.reach import within_reach
from core.quantity import Estimate
from core.words import Words, tr

GROSS_RATIO = 0.01  # beyond 1 % it is a wrong part and no trimming (common practice, no source)


class Found(StrEnum):
    """How a value found in the controller compares with the parts."""

    AGREES = "agrees"
    TUNED = "tuned"
    OTHER_PARTS = "other_parts"


@dataclass(frozen=True, slots=True)
class FoundSteps:
    """What a steps/mm value found in the controller does to a part of `length_mm`.

    `scale_ratio` is the size error, found/calculated - 1; `effect_mm` the error of that part, + for too long.
    """

    verdict: Found
    found_steps_mm: float
    calculated_steps_mm: float
    length_mm: float
    scale_ratio: float
    effect_mm: float
    tolerance_ratio: float
    says: Words

    def estimates(self) -> tuple[Estimate, ...]:
        """Return found_scale (1) and found_effect (mm); their uncertainty is the tolerance of the drive."""
        u = (1 + self.scale_ratio) * self.tolerance_ratio
        return (
            Estimate("found_scale", self.scale_ratio, u, math.inf, "1"),
            Estimate("found_effect", self.effect_mm, self.length_mm * u, math.inf, "mm"),
        )


@within_reach
def found_steps_effect(drive: Drive, found_steps_mm: float, length_mm: float = 200.0) -> FoundSteps:
    """Compare a value found in the controller with the parts, and say what it does to a part of this length.

    The motor turns in proportion to the value found, the carriage goes by the parts: L comes out as L found/calculated.

    Raises:
        InputError: field `found_steps_mm` or `length_mm`, not a positive number.
    """
    for field, value in (("found_steps_mm", found_steps_mm), ("length_mm", length_mm)):
        if not (math.isfinite(value) and value > 0):
            raise InputError(field, tr("“{value}” must be a number above 0; type it again.", value=short(value)))
    calculated = describe_drive(drive).steps_mm
    scale = found_steps_mm / calculated - 1
    verdict, says = _judge_found(found_steps_mm, calculated, length_mm, drive.tolerance_ratio)
    return FoundSteps(
        verdict, found_steps_mm, calculated, length_mm, scale, scale * length_mm, drive.tolerance_ratio, says
    )


def _judge_found(found: float, calculated: float, length_mm: float, tolerance_ratio: float) -> tuple[Found, Words]:
    scale = found / calculated - 1
    values = {
        "found": short(found),
        "calculated": f"{calculated:.4f}",
        "percent": f"{abs(scale):.2%}".replace("%", " %") if abs(scale) >= 5e-5 else f"{abs(scale) * 100:.1g} %",
        "effect": f"{abs(scale) * length_mm:.2g}" if abs(scale) * length_mm < 1 else f"{abs(scale) * length_mm:.1f}",
        "length": short(length_mm),
        "sense": tr("too long") if scale > 0 else tr("too short"),
    }
    if abs(found - calculated) <= 6e-5:
        return Found.AGREES, tr("{found} steps/mm is what these parts give.", **values)
    if abs(scale) > GROSS_RATIO:
        return Found.OTHER_PARTS, tr(
            "{found} steps/mm cannot come from these parts (they give {calculated}): a part of {length} mm would be "
            "{effect} mm {sense} ({percent}). That is a wrong part in the list, no trimming; count again.",
            **values,
        )
    if abs(scale) <= 2 * tolerance_ratio:
        return Found.TUNED, tr(
            "{found} steps/mm is not what these parts give ({calculated}); on {length} mm it makes {effect} mm {sense} "
            "({percent}), less than the drive itself may be off. Enter {calculated}.",
            **values,
        )
    return Found.TUNED, tr(
        "{found} steps/mm cannot come from these parts (nearest: {calculated}). Someone may have tuned it: a part of "
        "{length} mm comes out {effect} mm {sense} ({percent}).",
        **values,
    )
