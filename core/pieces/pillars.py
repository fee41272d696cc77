"""The pillar plate: four eight-sided pillars on a frame, for X, Y and both diagonals of one print.

A pillar's flats face along x, along y and along the diagonals, so that jaws lie flat wherever they go. The mean of the
span over two pillars and the gap between them is their centre distance, free of wall outset and lost motion; the plate
tells w and B only together, as 2w - B. The layout is our own.
"""

from __future__ import annotations

import math

from core.pieces.bounds import Bounds, largest_whole_mm
from core.pieces.marks import mark
from core.pieces.piece import Gauge, Piece, Prism, box, ngon
from core.words import tr

PILLAR_MM = 10.0
_FRAME_MM, _FRAME_TALL_MM, _TALL_MM, _GAUGE_Z_MM = 14.0, 3.0, 11.0, 8.0
_LEAST_MM = 40.0


def plan_pillars(bounds: Bounds) -> Piece:
    """Return the pillar plate, as large as bed and caliper allow."""
    across = (bounds.longest_mm - PILLAR_MM) / math.sqrt(2)
    sides = []
    for axis in "xy":
        bed, turn = bounds.along(axis)
        most = min(bed - _FRAME_MM, across)
        whole = largest_whole_mm(turn, most)
        sides.append(whole if whole >= _LEAST_MM else float(math.floor(most)))
    x, y = sides
    at = ((0.0, 0.0), (x, 0.0), (x, y), (0.0, y))
    half = _FRAME_MM / 2
    frame = Prism(
        (box(-half, -half, x + half, y + half), box(half, half, x - half, y - half)), 0.0, _FRAME_TALL_MM, relief_mm=0.4
    )
    pillars = [Prism((ngon(*centre, PILLAR_MM, 8, flat=True),), 0.0, _TALL_MM) for centre in at]
    inward = [(px + (12 if px == 0 else -12), py) for px, py in at]
    marks = [m for i, (px, py) in enumerate(inward) for m in mark(str(i + 1), px, py, _FRAME_TALL_MM)]
    gauges = (*_spans(at, inside=False), *_spans(at, inside=True))
    return Piece(tr("Pillar plate"), "xy", (frame, *pillars, *marks), gauges)


def _spans(at: tuple[tuple[float, float], ...], *, inside: bool) -> list[Gauge]:
    """Return the spans over, or the gaps between, the pillars: along x, along y, and the diagonals."""
    found = []
    pairs = (("x", 0, 1), ("x", 3, 2), ("y", 0, 3), ("y", 1, 2), ("xy", 0, 2), ("xy", 1, 3))
    says = tr("between two pillars") if inside else tr("over two pillars")
    name = "inner" if inside else "outer"
    kind = "gap" if inside else "outside"
    for axis, i, j in pairs:
        a, b = at[i], at[j]
        far = math.dist(a, b)
        step = PILLAR_MM / 2 / far * (1 if inside else -1)
        dx, dy = (b[0] - a[0]) * step, (b[1] - a[1]) * step
        first = (a[0] + dx, a[1] + dy, _GAUGE_Z_MM)
        second = (b[0] - dx, b[1] - dy, _GAUGE_Z_MM)
        faces = (f"pillar {i} {name} {axis}", f"pillar {j} {name} {axis}")
        label = f"{name} {i + 1}-{j + 1} {axis}"
        found.append(Gauge(label, says, f"{name}_diagonal" if axis == "xy" else kind, axis, first, second, faces))
    return found
