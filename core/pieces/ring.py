"""Two square rings, one inside the other, read outside and inside: scale, wall outset and lost motion of X and Y.

The mean of outside and inside of one ring is free of the wall outset; whole turns where they fit. The layout is our
own.
"""

from __future__ import annotations

from core.errors import InputError
from core.pieces.bounds import Bounds, largest_whole_mm
from core.pieces.marks import mark
from core.pieces.piece import Gauge, Piece, Prism, box
from core.words import tr

WALL_MM = 8.0
_TALL_MM, _GAUGE_Z_MM = 8.0, 5.0
_LARGEST_MM, _STEP_MM, _LEAST_MM = 88.0, 36.0, 56.0


def plan_rings(bounds: Bounds) -> tuple[Piece, Piece]:
    """Return the large ring and the small one inside it.

    Raises:
        InputError: field `bed_x_mm` or `bed_y_mm`, where they do not fit.
    """
    large, small = [], []
    for axis in "xy":
        bed, turn = bounds.along(axis)
        most = min(bed - WALL_MM, bounds.longest_mm - WALL_MM, _LARGEST_MM)
        if most < _LEAST_MM:
            raise InputError(f"bed_{axis}_mm", tr("The bed is too short for the rings; take the size comb."))
        mean = largest_whole_mm(turn, most)
        mean = mean if mean >= _LEAST_MM else most
        large.append(mean)
        small.append(largest_whole_mm(turn, mean - _STEP_MM) or mean - _STEP_MM)
    return _ring(1, (large[0], large[1])), _ring(2, (small[0], small[1]))


def _ring(number: int, mean_mm: tuple[float, float]) -> Piece:
    """Return a ring about the origin; mean of outside and inside along x and y."""
    outer = [(m + WALL_MM) / 2 for m in mean_mm]
    inner = [(m - WALL_MM) / 2 for m in mean_mm]
    body = Prism(
        (box(-outer[0], -outer[1], *outer), box(-inner[0], -inner[1], *inner)), 0.0, _TALL_MM, relief_mm=0.6
    )
    sign = mark(str(number), -outer[0] + WALL_MM / 2, -outer[1] + WALL_MM / 2, _TALL_MM)
    gauges = []
    for kind, half, name in (("outside", outer, "outside"), ("closed_hole", inner, "inside")):
        says = tr("across the ring, outside") if kind == "outside" else tr("across the opening")
        for i, axis in enumerate("xy"):
            first = (-half[0] if i == 0 else 0.0, -half[1] if i == 1 else 0.0, _GAUGE_Z_MM)
            second = (half[0] if i == 0 else 0.0, half[1] if i == 1 else 0.0, _GAUGE_Z_MM)
            faces = (f"{name} {number} -{axis}", f"{name} {number} +{axis}")
            gauges.append(Gauge(f"{name} {number} {axis}", says, kind, axis, first, second, faces))
    return Piece(tr("Ring {number}", number=number), "xy", (body, *sign), tuple(gauges))
