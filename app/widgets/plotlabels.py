"""Where the names of lines go: beside their own line, off every line, point and other name.

The view is ruled into small cells. Cells under lines, points and placed names are taken; sums over any rectangle of
cells come from a summed-area table, so that a thousand candidate places cost one array expression.

Reference: F. C. Crow, Summed-area tables for texture mapping, SIGGRAPH 1984.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]
Table = NDArray[np.float64] | NDArray[np.int32]  # summed areas

CELL_PX = 3.0
_EDGE_PX = 5.0  # kept free along the frame
_NEAR_PX = 12.0  # another line or name this close makes a name ambiguous
_AT_POINT_PX = 34.0  # a sign explained from farther away would not be found
_GAPS_PX = np.array([4.0, 8.0, 14.0, 22.0, 34.0, 50.0, 75.0])
# The corner or side of the name that faces its line: offset in widths and heights, direction of the gap, and dislike.
_SIDES = {
    "above": (-0.5, -1.0, 0.0, -1.0, 0.0),
    "below": (-0.5, 0.0, 0.0, 1.0, 0.5),
    "above right": (0.0, -1.0, 0.5, -1.0, 0.5),
    "above left": (-1.0, -1.0, -0.5, -1.0, 0.5),
    "below right": (0.0, 0.0, 0.5, 1.0, 1.0),
    "below left": (-1.0, 0.0, -0.5, 1.0, 1.0),
    "right": (0.0, -0.5, 1.0, 0.0, 1.5),
    "left": (-1.0, -0.5, -1.0, 0.0, 1.5),
}


ALL_SIDES = tuple(_SIDES)


@dataclass(frozen=True, slots=True, eq=False)
class Wish:
    """A name that belongs to a line (n, 2), or to each of its points alone; `sides` limits where it may stand.

    `widths_px` are those of its wordings, the fullest first; a shorter one is tried where the fuller has no room.
    """

    widths_px: tuple[float, ...]
    height_px: float
    line: Floats
    sides: tuple[str, ...] = ALL_SIDES
    at_points: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class Taken:
    """What is drawn. Lines, edges (n, 2) and boxes (m, 4: left, top, right, bottom) must stay clear; fills should.

    A name too near to another of the `lines` would seem to be that one's; `edges` bear no names. Fills are (n, 3):
    x, top, bottom.
    """

    lines: Sequence[Floats]
    boxes: Floats
    fills: Sequence[Floats] = ()
    edges: Sequence[Floats] = ()


@dataclass(frozen=True, slots=True)
class Placed:
    """The top left corner of a name, and which of its wordings fits there."""

    x_px: float
    y_px: float
    wording: int


def place_names(wishes: Sequence[Wish], taken: Taken, width_px: float, height_px: float) -> list[Placed | None]:
    """Return where each name stands, in the order of the wishes; None where there is no room."""
    if width_px < 4 * CELL_PX or height_px < 4 * CELL_PX:
        return [None] * len(wishes)
    shape = int(height_px / CELL_PX) + 1, int(width_px / CELL_PX) + 1
    grids = [_grown(_line_cells(line, shape)) for line in taken.lines]
    hard = np.zeros(shape, dtype=bool)
    for grid in [*grids, *(_grown(_line_cells(edge, shape)) for edge in taken.edges)]:
        hard |= grid
    for box in taken.boxes:
        _take_box(hard, box)
    room = _Room((width_px, height_px), hard, np.zeros(shape, dtype=bool), _table(_fill_cells(taken.fills, shape)))
    places: list[Placed | None] = []
    for wish in wishes:
        strange = np.zeros(shape, dtype=bool)
        for line, grid in zip(taken.lines, grids, strict=True):
            if line is not wish.line:
                strange |= grid
        place = _first_fit(wish, room, strange)
        places.append(place)
        if place is not None:
            width = wish.widths_px[place.wording]
            _take_box(room.named, np.array([place.x_px - 2, place.y_px - 2, place.x_px + width + 2,
                                            place.y_px + wish.height_px + 2]))  # fmt: skip
            room.hard |= room.named
    return places


@dataclass(slots=True, eq=False)
class _Room:
    size_px: tuple[float, float]
    hard: Bools  # cells that must stay clear
    named: Bools  # cells of the names placed so far
    fills: Table  # of what should stay clear


@dataclass(frozen=True, slots=True, eq=False)
class _Around:
    """What stands about a name while its wordings are tried: what must stay clear, other lines, these and names."""

    hard: Table
    strange: Table
    near: Table


def _first_fit(wish: Wish, room: _Room, strange: Bools) -> Placed | None:
    anchors = _anchors(wish, room.size_px)
    if not len(anchors):
        return None
    around = _Around(_table(room.hard), _table(strange), _table(strange | room.named))
    for wording, width in enumerate(wish.widths_px):
        corner = _best_corner(wish, width, anchors, room, around)
        if corner is not None:
            return Placed(float(corner[0]), float(corner[1]), wording)
    return None


def _best_corner(wish: Wish, width_px: float, anchors: Floats, room: _Room, around: _Around) -> Floats | None:
    corner, gap, cost = _candidates(wish, width_px, anchors)
    extent = np.array([width_px, wish.height_px])
    inside = np.all(corner >= _EDGE_PX, axis=1) & np.all(corner + extent <= np.array(room.size_px) - _EDGE_PX, axis=1)
    corner, gap, cost = corner[inside], gap[inside], cost[inside]
    free = _sums(around.hard, corner - 1, corner + extent + 1) == 0
    if wish.at_points:
        free &= gap <= _AT_POINT_PX
    else:  # farther from its own line than from another it would name the wrong one
        free &= _sums(around.strange, corner - gap[:, None], corner + extent + gap[:, None]) == 0
    corner, cost = corner[free], cost[free]
    if not len(corner):
        return None
    far = corner + extent
    if not wish.at_points:
        cost = cost + 14.0 * (1 - far[:, 0] / room.size_px[0])  # names read best at the right end
    cost += 12.0 * np.minimum(_sums(around.near, corner - _NEAR_PX, far + _NEAR_PX) / 15, 1)
    cost += 16.0 * _sums(room.fills, corner, far) / (extent.prod() / CELL_PX**2)
    return np.asarray(np.round(corner[np.argmin(cost)]))


def _candidates(wish: Wish, width_px: float, anchors: Floats) -> tuple[Floats, Floats, Floats]:
    """Return the corners (k, 2) of every side and gap at every anchor, their gaps and what speaks against them (k,)."""
    sides = np.array([_SIDES[side] for side in wish.sides])
    offset = sides[:, None, :2] * (width_px, wish.height_px) + sides[:, None, 2:4] * _GAPS_PX[None, :, None]
    corners = anchors[:, None, None, :] + offset[None]
    gap, cost = np.broadcast_to(_GAPS_PX, offset.shape[:2]), sides[:, None, 4] + 0.5 * _GAPS_PX
    gaps, costs = (np.broadcast_to(part, corners.shape[:3]).reshape(-1) for part in (gap, cost))
    return corners.reshape(-1, 2), gaps, costs


def _anchors(wish: Wish, size: tuple[float, float]) -> Floats:
    points = wish.line if wish.at_points else _along(wish.line, 14.0)
    return points[np.all((points >= 0) & (points <= size), axis=1)]


def _along(line: Floats, step_px: float) -> Floats:
    """Return points at most `step_px` apart along a polyline (n, 2)."""
    line = line[np.all(np.isfinite(line), axis=1)]
    if len(line) < 2:
        return line
    run = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))])
    at = np.linspace(0.0, run[-1], min(int(run[-1] / step_px) + 2, 20_000))
    return np.column_stack([np.interp(at, run, line[:, 0]), np.interp(at, run, line[:, 1])])


def _line_cells(line: Floats, shape: tuple[int, int]) -> Bools:
    cells = np.zeros(shape, dtype=bool)
    line = line[np.all(np.isfinite(line), axis=1)]
    if len(line) < 2:
        line = np.repeat(line, 2, axis=0)
    start, end = line[:-1], line[1:]
    limit = np.array(shape[::-1]) * CELL_PX
    seen = np.all((np.maximum(start, end) >= 0) & (np.minimum(start, end) <= limit), axis=1)
    start, end = start[seen], end[seen]
    count = np.minimum(np.hypot(*(end - start).T) / (CELL_PX / 2), 10_000).astype(int) + 2
    first = np.concatenate([[0], np.cumsum(count)])
    piece = np.repeat(np.arange(len(count)), count)
    share = (np.arange(first[-1]) - first[piece]) / (count[piece] - 1)
    points = start[piece] + share[:, None] * (end - start)[piece]
    at = np.floor(points / CELL_PX).astype(int)
    at = at[np.all((at >= 0) & (at < shape[::-1]), axis=1)]
    cells[at[:, 1], at[:, 0]] = True
    return cells


def _grown(cells: Bools) -> Bools:
    """Return the cells with their neighbours, so that a name keeps a cell's distance."""
    wide = cells.copy()
    wide[:, 1:] |= cells[:, :-1]
    wide[:, :-1] |= cells[:, 1:]
    tall = wide.copy()
    tall[1:] |= wide[:-1]
    tall[:-1] |= wide[1:]
    return tall


def _take_box(cells: Bools, box: Floats) -> None:
    left, top, right, bottom = np.floor(np.clip(box / CELL_PX, 0, 1e6)).astype(int)
    cells[top : bottom + 1, left : right + 1] = True


def _fill_cells(fills: Sequence[Floats], shape: tuple[int, int]) -> Floats:
    """Return the share (0 to 1) by which cells lie inside filled bands."""
    row, column = (np.arange(shape[0]) + 0.5) * CELL_PX, (np.arange(shape[1]) + 0.5) * CELL_PX
    soft = np.zeros(shape)
    for fill in fills:
        top, bottom = (np.interp(column, fill[:, 0], fill[:, part], left=np.nan, right=np.nan) for part in (1, 2))
        soft = np.maximum(soft, (row[:, None] >= top) & (row[:, None] <= bottom))
    return soft


def _table(cells: Bools | Floats) -> Table:
    """Return the summed-area table, one row and column larger than the cells; whole numbers add up quickest."""
    table = np.zeros((cells.shape[0] + 1, cells.shape[1] + 1), dtype=np.int32 if cells.dtype == bool else float)
    inside = table[1:, 1:]
    inside[:] = cells
    np.cumsum(inside, axis=0, out=inside)
    np.cumsum(inside, axis=1, out=inside)
    return table


def _sums(table: Table, corner: Floats, far: Floats) -> Floats:
    """Return the sum of the cells under each rectangle from `corner` (k, 2) to `far` (k, 2)."""
    limit = table.shape[1] - 1, table.shape[0] - 1
    x0, y0 = np.clip(np.floor(corner / CELL_PX), 0, limit).astype(int).T
    x1, y1 = np.clip(np.floor(far / CELL_PX) + 1, 0, limit).astype(int).T
    return np.asarray(table[y1, x1] - table[y0, x1] - table[y1, x0] + table[y0, x0])
