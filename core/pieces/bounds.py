"""What a piece must fit: bed, caliper, drive, layers and nozzle; and the lengths that follow from them.

Symbols: T travel after which pulley or screw and electrical cycle both begin anew. A centre distance of whole T carries
no run-out and no step error. A height on whole layers, h1 + n h, is printed as drawn.

Reference: common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.words import Words, tr

BED_EDGE_MM = 2.0  # kept free at either side
_CALIPER_SPARE_MM = 2.0


@dataclass(frozen=True, slots=True)
class Bounds:
    """The limits of one machine and one instrument.

    Attributes:
        caliper_mm: longest length the caliper reads.
        reach_mm: how deep its inside blades reach.
        turn_x_mm, turn_y_mm: whole turns and whole electrical cycles of the drives; 0 where nobody knows.
        bead_mm: width of one bead.

    Raises:
        InputError: the field that cannot be.
    """

    bed_x_mm: float = 220.0
    bed_y_mm: float = 220.0
    bed_z_mm: float = 220.0
    caliper_mm: float = 150.0
    reach_mm: float = 15.0
    turn_x_mm: float = 40.0
    turn_y_mm: float = 40.0
    layer_mm: float = 0.2
    first_layer_mm: float = 0.2
    nozzle_mm: float = 0.4

    def __post_init__(self) -> None:
        """Refuse what cannot be."""
        for field, low, high in (
            ("bed_x_mm", 60.0, 3000.0),
            ("bed_y_mm", 60.0, 3000.0),
            ("bed_z_mm", 30.0, 3000.0),
            ("caliper_mm", 80.0, 2000.0),
            ("reach_mm", 9.0, 100.0),
            ("turn_x_mm", 0.0, 1000.0),
            ("turn_y_mm", 0.0, 1000.0),
            ("layer_mm", 0.04, 1.0),
            ("first_layer_mm", 0.04, 1.0),
            ("nozzle_mm", 0.1, 2.0),
        ):
            value = getattr(self, field)
            if not low <= value <= high:
                raise InputError(
                    field,
                    tr("{value:g} mm does not suit these pieces; type {low:g} to {high:g} mm.",
                       value=value, low=low, high=high),
                )  # fmt: skip

    @property
    def bead_mm(self) -> float:
        """Width of one bead: an eighth wider than the bore."""
        return round(1.125 * self.nozzle_mm, 3)

    def along(self, axis: str) -> tuple[float, float]:
        """Return the usable bed length and T along x or y."""
        bed, turn = (self.bed_x_mm, self.turn_x_mm) if axis == "x" else (self.bed_y_mm, self.turn_y_mm)
        return bed - 2 * BED_EDGE_MM, turn

    @property
    def longest_mm(self) -> float:
        """The longest length that caliper reads with room to spare."""
        return self.caliper_mm - _CALIPER_SPARE_MM

    @finite_in("height_mm")
    def clean_height_mm(self, height_mm: float) -> float:
        """Return the height on whole layers nearest to this one."""
        layers = round((height_mm - self.first_layer_mm) / self.layer_mm)
        return round(self.first_layer_mm + layers * self.layer_mm, 6)


@within_reach
@finite_in("most_mm", "turn_mm")
def largest_whole_mm(turn_mm: float, most_mm: float) -> float:
    """Return the longest length of whole T up to `most_mm`; 0 where none is."""
    return math.floor(most_mm / turn_mm + 1e-9) * turn_mm if turn_mm > 0 else 0.0


def turn_minds(turn_mm: float, used_mm: float, axis: str) -> tuple[Words, ...]:
    """Say where the centre distances are no whole turns."""
    if turn_mm <= 0:
        return (
            tr("The drive of {axis} is not on record: run-out of pulley or screw may be in these lengths.",
               axis=axis.upper()),
        )  # fmt: skip
    if math.isclose(used_mm % turn_mm, 0.0, abs_tol=1e-6) or math.isclose(used_mm % turn_mm, turn_mm, abs_tol=1e-6):
        return ()
    return (
        tr("No whole turn of {axis} ({turn:g} mm) fits: run-out may be in these lengths.",
           axis=axis.upper(), turn=turn_mm),
    )  # fmt: skip
