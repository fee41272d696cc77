"""The hole and peg ladder: round bores and round pegs of the same diameters on one plate.

Circles are drawn with so many sides that none lies further than 0.005 mm inside the circle, and with corners on the
lines along which they are read, so that the drawn length there is the diameter. Bores below 6 mm are read with pins.

The layout is our own.
"""

from __future__ import annotations

import math

from core.measuring.finite import finite_in
from core.measuring.reach import above_zero, within_reach
from core.pieces.bounds import Bounds
from core.pieces.marks import mark
from core.pieces.piece import Gauge, Piece, Prism, box, ngon
from core.words import tr

DIAMETERS_MM = (3.0, 5.0, 8.0, 12.0, 20.0)
_CHORD_MM = 0.005
_GAP_MM = 6.0
_PLATE_MM, _PEG_MM = 6.0, 14.0
_BORES_Y_MM, _PEGS_Y_MM, _DEEP_MM = 16.0, 48.0, 64.0
_PINS_BELOW_MM = 6.0


@within_reach
@above_zero("diameter_mm")
@finite_in("diameter_mm")
def sides_of(diameter_mm: float) -> int:
    """Return how many sides, in fours, keep a polygon within 0.005 mm of its circle: N = pi / acos(1 - t/R).

    Raises:
        InputError: field `diameter_mm`, not above zero.
    """
    sides = math.pi / math.acos(max(1.0 - _CHORD_MM / (diameter_mm / 2), -1.0))
    return 4 * math.ceil(sides / 4)


def plan_holes(bounds: Bounds) -> Piece:
    """Return the ladder; the heights are on whole layers."""
    low, high = bounds.clean_height_mm(_PLATE_MM), bounds.clean_height_mm(_PEG_MM)
    centres, x = [], _GAP_MM
    for diameter in DIAMETERS_MM:
        centres.append(x + diameter / 2)
        x += diameter + _GAP_MM
    circles = list(zip(centres, DIAMETERS_MM, strict=True))
    bores = [ngon(at, _BORES_Y_MM, d, sides_of(d)) for at, d in circles]
    plate = Prism((box(0.0, 0.0, x, _DEEP_MM), *bores), 0.0, low, relief_mm=0.4)
    pegs = [Prism((ngon(at, _PEGS_Y_MM, d, sides_of(d)),), 0.0, high) for at, d in circles]
    marks = [m for i, at in enumerate(centres) for m in mark(str(i + 1), at, 32.0, low)]
    gauges = [g for i, (at, d) in enumerate(circles) for g in _across(i, (at, _PEGS_Y_MM), d, (low + high) / 2, "boss")]
    gauges += [g for i, (at, d) in enumerate(circles) for g in _across(i, (at, _BORES_Y_MM), d, low / 2, "bore")]
    return Piece(tr("Hole and peg ladder"), "xy", (plate, *pegs, *marks), tuple(gauges))


def _across(number: int, centre: tuple[float, float], diameter: float, z: float, kind: str) -> list[Gauge]:
    says = tr("across the peg") if kind == "boss" else tr("across the hole")
    if kind == "bore" and diameter < _PINS_BELOW_MM:
        says = tr("the thickest pin that goes in")
    name = "peg" if kind == "boss" else "hole"
    (x, y), r = centre, diameter / 2
    return [
        Gauge(
            f"{name} {number + 1} {axis}",
            says,
            kind,
            axis,
            (x - r * (axis == "x"), y - r * (axis == "y"), z),
            (x + r * (axis == "x"), y + r * (axis == "y"), z),
            (f"{name} {number} -{axis}", f"{name} {number} +{axis}"),
        )
        for axis in "xy"
    ]
