"""The height stair: treads on whole layers, read from the bed side up, for the scale of Z and the first-layer squash.

    height of a tread   h1 + n h        the bed face is common to all and goes into the squash

The layout is our own; h1 first layer, h layer.
"""

from __future__ import annotations

from core.pieces.bounds import Bounds
from core.pieces.marks import mark
from core.pieces.piece import Gauge, Piece, Prism, box
from core.words import tr

_HEIGHTS_MM = (4.0, 10.0, 20.0, 30.0, 45.0, 60.0)
_TREAD_MM = 14.0
_APRON_MM, _APRON_TALL_MM = 9.0, 2.0


def plan_stair(bounds: Bounds) -> Piece:
    """Return the height stair, as high as the machine allows."""
    most = min(bounds.bed_z_mm - 5.0, bounds.longest_mm)
    heights = [bounds.clean_height_mm(h) for h in _HEIGHTS_MM if h <= most]
    treads = [
        Prism((box(i * _TREAD_MM, 0.0, (i + 1) * _TREAD_MM, _TREAD_MM),), 0.0, height)
        for i, height in enumerate(heights)
    ]
    apron = Prism((box(0.0, -_APRON_MM, len(heights) * _TREAD_MM, 0.0),), 0.0, bounds.clean_height_mm(_APRON_TALL_MM))
    marks = [
        m
        for i in range(len(heights))
        for m in mark(str(i + 1), (i + 0.5) * _TREAD_MM, -_APRON_MM / 2, apron.high_mm)
    ]
    gauges = tuple(
        Gauge(
            f"tread {i + 1} z",
            tr("from the bed side to the tread"),
            "height",
            "z",
            ((i + 0.5) * _TREAD_MM, _TREAD_MM / 2, 0.0),
            ((i + 0.5) * _TREAD_MM, _TREAD_MM / 2, height),
            ("bed", f"tread {i}"),
        )
        for i, height in enumerate(heights)
    )
    return Piece(tr("Height stair"), "z", (*treads, apron, *marks), gauges, side_view=True)
