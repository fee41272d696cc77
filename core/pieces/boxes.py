"""Small pieces for flow and first layer: flare blocks, wall box, mass box, top pads.

    wall of n beads   n w - (n - 1) c h,  c = 1 - pi/4        beads w wide and h high that fill their spacing

The layouts are our own; sizes: common practice, no source.
"""

from __future__ import annotations

import math

from core.pieces.bounds import BED_EDGE_MM, Bounds
from core.pieces.marks import mark
from core.pieces.piece import Gauge, Piece, Point, Prism, box
from core.words import tr

BLOCK_MM, BLOCK_TALL_MM = 20.0, 8.0
_BLOCKS_APART_MM = 15.0
BOX_MM, BOX_TALL_MM = 40.0, 15.0
MASS_MM, MASS_TALL_MM = 25.0, 10.0
PAD_STEPS_PERCENT = (1.5, -4.5, 6.0, -1.5, 3.0, -6.0, 0.0, 4.5, -3.0)  # of A to I: the order of the page Top pads
PAD_LETTERS = "ABCDEFGHI"
_PADS_A_ROW, _PADS_APART_MM = 5, 3.0
_FLARE_Z_MM = 0.3
_TAB_MM, _TAB_TALL_MM, _PAD_TALL_MM = 7.0, 1.2, 3.0


def plan_flare_blocks(bounds: Bounds) -> tuple[Piece, ...]:
    """Return two blocks without a relieved edge, read low and high: of one alone the scatter is hardly told."""
    return tuple(_flare_block(number, bounds) for number in (1, 2))


def _flare_block(number: int, bounds: Bounds) -> Piece:
    size, high = BLOCK_MM, bounds.clean_height_mm(BLOCK_TALL_MM)
    body = Prism((box(0.0, 0.0, size, size),), 0.0, high)
    gauges = [
        Gauge(
            f"{name} {number} {axis}",
            says,
            kind,
            axis,
            *_across(axis, size, z),
            (f"{name} {number} -{axis}", f"{name} {number} +{axis}"),
        )
        for name, kind, says, z in (
            ("low", "first_layer", tr("at the first layer"), _FLARE_Z_MM),
            ("high", "outside", tr("at half height"), high / 2),
        )
        for axis in "xy"
    ]
    signs = (*mark("XY", size / 2, size * 0.3, high), *mark(str(number), size / 2, size * 0.7, high))
    apart = (0.0, (number - 1) * (size + _BLOCKS_APART_MM))
    return Piece(tr("Flare block {number}", number=number), "xy", (body, *signs), tuple(gauges), apart)


def _across(axis: str, size: float, z: float) -> tuple[Point, Point]:
    if axis == "x":
        return (0.0, size / 2, z), (size, size / 2, z)
    return (size / 2, 0.0, z), (size / 2, size, z)


def wall_mm(beads: int, bounds: Bounds) -> float:
    """Return the drawn wall of a box of one or two beads."""
    return round(beads * bounds.bead_mm - (beads - 1) * (1.0 - math.pi / 4.0) * bounds.layer_mm, 4)


def plan_wall_box(beads: int, bounds: Bounds) -> Piece:
    """Return an open box without floor and top, its wall one or two beads thick, read at eight places."""
    wall, high = wall_mm(beads, bounds), bounds.clean_height_mm(BOX_TALL_MM)
    inner = BOX_MM - wall
    body = Prism((box(0.0, 0.0, BOX_MM, BOX_MM), box(wall, wall, inner, inner)), 0.0, high)
    tab_high = bounds.clean_height_mm(_TAB_TALL_MM)
    tab = Prism((box(-_TAB_MM, 0.0, 0.0, _TAB_MM),), 0.0, tab_high)
    gauges = []
    for side, place in enumerate(("front", "right", "back", "left")):
        axis = "yxyx"[side]
        for number, along in enumerate((BOX_MM * 0.35, BOX_MM * 0.65), start=1):
            ends = ((0.0, wall), (inner, BOX_MM))[side in (1, 2)]
            first, second = (
                ((at, along, high - 2.0) if axis == "x" else (along, at, high - 2.0)) for at in ends
            )
            name = f"{place} {number}"
            faces = (f"{name} outer", f"{name} inner")
            gauges.append(Gauge(name, tr("thickness of the wall"), "wall", axis, first, second, faces))
    name = tr("Wall box, one bead") if beads == 1 else tr("Wall box, two beads")
    sign = mark(str(beads), -_TAB_MM / 2, _TAB_MM / 2, tab_high)
    return Piece(name, "xy", (body, tab, *sign), tuple(gauges))


def plan_mass_box(bounds: Bounds) -> Piece:
    """Return the block to weigh: 6 cm3 and more, printed solid."""
    high = bounds.clean_height_mm(MASS_TALL_MM)
    body = Prism((box(0.0, 0.0, MASS_MM, MASS_MM),), 0.0, high)
    return Piece(tr("Mass box"), "xy", (body,), ())


def plan_top_pads(bounds: Bounds) -> tuple[Piece, ...]:
    """Return nine pads in rows of five and four, each with its letter on a tab, to be printed each with its own flow.

    Neither piece nor name tells the flow, so that who scores does not see it.
    """
    room_x, room_y = (bed - 2 * BED_EDGE_MM for bed in (bounds.bed_x_mm, bounds.bed_y_mm))
    rows = -(-len(PAD_LETTERS) // _PADS_A_ROW)
    widest = (room_x + _PADS_APART_MM) / _PADS_A_ROW - _PADS_APART_MM
    deepest = (room_y + _PADS_APART_MM) / rows - _PADS_APART_MM - _TAB_MM
    size = min(25.0, math.floor(widest), math.floor(deepest))
    return tuple(_pad(number, size, bounds) for number in range(len(PAD_LETTERS)))


def _pad(number: int, size: float, bounds: Bounds) -> Piece:
    high, tab_high = bounds.clean_height_mm(_PAD_TALL_MM), bounds.clean_height_mm(_TAB_TALL_MM)
    body = Prism((box(0.0, 0.0, size, size),), 0.0, high)
    tab = Prism((box(size / 2 - 4.0, -_TAB_MM, size / 2 + 4.0, 0.0),), 0.0, tab_high)
    sign = mark(PAD_LETTERS[number], size / 2, -_TAB_MM / 2, tab_high)
    row, place = divmod(number, _PADS_A_ROW)
    at = (place * (size + _PADS_APART_MM), row * (size + _TAB_MM + _PADS_APART_MM))
    return Piece(tr("Pad {letter}", letter=PAD_LETTERS[number]), "xy", (body, tab, *sign), (), at)
