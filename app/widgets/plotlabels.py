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
Ints = NDArray[np.int64]
Table = NDArray[np.int32]  # summed areas

CELL_PX = 3.0
_EDGE_PX = 5.0  # kept free along the frame
_NEAR_PX = 12.0  # another line or name this close makes a name ambiguous
_RIM = 8  # times the inside of a band
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
    """The top left corner of a name, which of its wordings fits there, and whether it lies over the edge of a band."""

    x_px: float
    y_px: float
    wording: int
    on_edge: bool = False


def place_names(wishes: Sequence[Wish], taken: Taken, width_px: float, height_px: float) -> list[Placed | None]:
    """Return where each name stands, in the order of the wishes; None where there is no room."""
    if width_px < 4 * CELL_PX or height_px < 4 * CELL_PX:
        return [None] * len(wishes)
    room = _Room(taken, (width_px, height_px))
    places: list[Placed | None] = []
    for wish in wishes:
        place = _first_fit(wish, room)
        places.append(place)
        if place is not None:
            right, bottom = place.x_px + wish.widths_px[place.wording], place.y_px + wish.height_px
            room.name(np.array([[place.x_px - 2, place.y_px - 2, right + 2, bottom + 2]]))
    return places


class _Room:
    """What stands in the view, as summed areas; those of what the names have in common are made once.

    Attributes:
        size_px: of the view.
        hard: what must stay clear. firm: likewise where there is no other room, the edges of bands left out.
        named: the names placed so far, which must stay clear too.
        fills: what should stay clear.
    """

    def __init__(self, taken: Taken, size_px: tuple[float, float]) -> None:
        self.size_px = size_px
        self._shape = shape = int(size_px[1] / CELL_PX) + 1, int(size_px[0] / CELL_PX) + 1
        self._lines = [(line, _grown(_line_cells(line, shape))) for line in taken.lines]
        self._strange: dict[int | None, Table] = {}
        firm, edges = np.zeros(shape, dtype=bool), np.zeros(shape, dtype=bool)
        for _, grid in self._lines:
            firm |= grid
        for edge in taken.edges:
            edges |= _grown(_line_cells(edge, shape))
        _take_boxes(firm, taken.boxes)
        self.hard, self.firm, self.fills = _table(firm | edges), _table(firm), _table(_fill_cells(taken.fills, shape))
        self._names = np.zeros(shape, dtype=bool)
        self.named = _table(self._names)

    def strange(self, own: Floats) -> Table:
        """Return the lines other than a name's own one."""
        number = next((number for number, (line, _) in enumerate(self._lines) if line is own), None)
        if number not in self._strange:
            cells = np.zeros(self._shape, dtype=bool)
            for line, grid in self._lines:
                if line is not own:
                    cells |= grid
            self._strange[number] = _table(cells)
        return self._strange[number]

    def name(self, box: Floats) -> None:
        """Take the place of a name."""
        _take_boxes(self._names, box)
        self.named = _table(self._names)


@dataclass(frozen=True, slots=True, eq=False)
class _Spots:
    """Where a name of some width and height could stand: left and top edge, distance from its line, dislike; (k,)."""

    width_px: float
    height_px: float
    left: Floats
    top: Floats
    gap: Floats
    cost: Floats

    def where(self, use: Bools) -> _Spots:
        """Return some of them."""
        left, top, gap, cost = self.left[use], self.top[use], self.gap[use], self.cost[use]
        return _Spots(self.width_px, self.height_px, left, top, gap, cost)

    def sums(self, table: Table, around_px: float | Floats = 0.0) -> Ints:
        """Return the sum of the cells under each, and this far around it."""
        down, across = table.shape
        inside = not isinstance(around_px, np.ndarray) and around_px <= _EDGE_PX
        far = around_px + CELL_PX
        x0, x1 = _cells(self.left - around_px, across, inside), _cells(self.left + self.width_px + far, across, inside)
        y0, y1 = _cells(self.top - around_px, down, inside), _cells(self.top + self.height_px + far, down, inside)
        y0, y1 = y0 * across, y1 * across
        return np.asarray(table.take(y1 + x1) - table.take(y0 + x1) - table.take(y1 + x0) + table.take(y0 + x0))


def _cells(px: Floats, count: int, inside: bool) -> Ints:
    """Return in which cell each place is, or between which two; what may lie outside is brought to the edge."""
    cells = (px / CELL_PX).astype(np.int64)
    return cells if inside else np.minimum(np.maximum(cells, 0), count - 1)


def _first_fit(wish: Wish, room: _Room) -> Placed | None:
    anchors = _anchors(wish, room.size_px)
    if not len(anchors):
        return None
    wordings = list(enumerate(wish.widths_px))
    for taken, offered in ((room.hard, wordings), (room.firm, wordings[1:] or wordings)):
        for wording, width in offered:  # rather a shorter one over the edge of a band than none
            corner = _best_corner(wish, _spots(wish, width, anchors, room.size_px), room, taken)
            if corner is not None:
                return Placed(*corner, wording, taken is room.firm)
    return None


def _best_corner(wish: Wish, spots: _Spots, room: _Room, taken: Table) -> tuple[float, float] | None:
    """Return left and top edge; what rules most spots out is asked first."""
    spots = spots.where(spots.sums(taken, 1.0) == 0)
    spots = spots.where(spots.sums(room.named, 1.0) == 0)
    strange = room.strange(wish.line)
    if not wish.at_points:  # farther from its own line than from another it would name the wrong one
        spots = spots.where(spots.sums(strange, spots.gap) == 0)
    if not spots.left.size:
        return None
    cost = spots.cost.copy()
    if not wish.at_points:
        cost += 14.0 * (1 - (spots.left + spots.width_px) / room.size_px[0])  # names read best at the right end
    near = spots.sums(strange, _NEAR_PX) + spots.sums(room.named, _NEAR_PX)
    cost += 12.0 * np.minimum(near / 15, 1)
    cost += 16.0 * spots.sums(room.fills) / (spots.width_px * spots.height_px / CELL_PX**2)
    best = np.argmin(cost)
    return float(np.round(spots.left[best])), float(np.round(spots.top[best]))


def _spots(wish: Wish, width_px: float, anchors: Floats, size_px: tuple[float, float]) -> _Spots:
    """Return every side and gap at every anchor that lies inside the frame."""
    side = np.array([_SIDES[name] for name in wish.sides]).T[:, :, None]
    gaps = _GAPS_PX[_GAPS_PX <= _AT_POINT_PX] if wish.at_points else _GAPS_PX
    left = (anchors[:, 0, None] + (side[0] * width_px + side[2] * gaps).ravel()).ravel()
    top = (anchors[:, 1, None] + (side[1] * wish.height_px + side[3] * gaps).ravel()).ravel()
    inside = (left >= _EDGE_PX) & (left <= size_px[0] - _EDGE_PX - width_px)
    inside &= (top >= _EDGE_PX) & (top <= size_px[1] - _EDGE_PX - wish.height_px)
    use = np.flatnonzero(inside)
    cost = (side[4] + 0.5 * gaps).ravel()
    return _Spots(width_px, wish.height_px, left[use], top[use], gaps[use % gaps.size], cost[use % cost.size])


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


def _take_boxes(cells: Bools, boxes: Floats) -> None:
    for left, top, right, bottom in np.clip(boxes / CELL_PX, 0, 1e6).astype(int).tolist():
        cells[top : bottom + 1, left : right + 1] = True


def _fill_cells(fills: Sequence[Floats], shape: tuple[int, int]) -> Table:
    """Return how much each cell of filled bands is disliked: their rims, drawn as lines, more than what is between."""
    row, column = (np.arange(shape[0])[:, None] + 0.5) * CELL_PX, (np.arange(shape[1]) + 0.5) * CELL_PX
    soft = np.zeros(shape, dtype=np.int32)
    for fill in fills:
        top, bottom = (np.interp(column, fill[:, 0], fill[:, part], left=np.nan, right=np.nan) for part in (1, 2))
        soft = np.maximum(soft, (row >= top) & (row <= bottom))
        soft[(np.abs(row - top) <= CELL_PX) | (np.abs(row - bottom) <= CELL_PX)] = _RIM
    return soft


def _table(cells: Bools | Table) -> Table:
    """Return the summed-area table, one row and column larger than the cells; whole numbers add up quickest."""
    table = np.zeros((cells.shape[0] + 1, cells.shape[1] + 1), dtype=np.int32)
    inside = table[1:, 1:]
    inside[:] = cells
    np.cumsum(inside, axis=0, out=inside)
    np.cumsum(inside, axis=1, out=inside)
    return table
