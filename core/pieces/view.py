"""A solid seen from front, right and above, as parallel lines leave it: shaded faces and the edges that can be seen.

    u = x cos A + y sin A      v = -x sin A + y cos A          A turn about the upright
    right = u    up = v sin E + z cos E    away = v cos E - z sin E          E tilt

Faces are drawn into a depth buffer; an edge is seen where nothing in the buffer lies before it.

Reference: Foley, van Dam, Feiner and Hughes, Computer Graphics (1990) 6.1 and 15.4 (depth buffer).
"""

from __future__ import annotations

import struct
import zlib
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.pieces.solid import Solid
from core.words import tr

_TURN_RATIO = (0.9063, 0.4226)  # cosine and sine of A = 25 degrees
_TILT_RATIO = (0.7547, 0.6561)  # cosine and sine of E = 41 degrees
_LIGHT = np.array([0.35, -0.45, 0.82])
_SHARP_RATIO = 0.94  # cosine of 20 degrees: flatter edges belong to a round wall
_SAMPLE_PX = 1.5
_MOST_PX = 4e7  # of a whole picture

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class View:
    """A picture of solids.

    Attributes:
        shade: (height, width) brightness 0 to 1; nan where there is nothing.
        edges_px: (k, 2, 2) seen edges, from (x, y) to (x, y), pixels from the upper left corner.
        scale_px_mm, shift_px: of the projection.
    """

    shade: Floats
    edges_px: Floats
    scale_px_mm: float
    shift_px: tuple[float, float]

    def at_px(self, points_mm: ArrayLike) -> Floats:
        """Return where points (n, 3) of the bed lie in the picture (n, 2)."""
        flat = _projected(np.atleast_2d(np.asarray(points_mm, dtype=float)))
        return _on_paper(flat, self.scale_px_mm, self.shift_px)


def view_of(solids: Sequence[Solid], width_px: int, height_px: int, margin_px: int = 20) -> View:
    """Return the picture of solids that fills a sheet of this size but for a margin.

    Raises:
        InputError: field `width_px` for a sheet that cannot be, `solids` for none.
    """
    if min(width_px, height_px) < 1 or width_px * height_px > _MOST_PX:
        says = tr("A picture of {width} by {height} px cannot be drawn; choose another size.",
                  width=width_px, height=height_px)  # fmt: skip
        raise InputError("width_px", says)
    if not solids:
        raise InputError("solids", tr("There is nothing to be drawn; choose a piece."))
    flats = [_projected(solid.corners_mm) for solid in solids]
    every = np.vstack(flats)
    low, high = every[:, :2].min(axis=0), every[:, :2].max(axis=0)
    room = np.array([width_px, height_px]) - 2.0 * margin_px
    scale = float(max(np.min(room / np.maximum(high - low, 1e-6)), 1e-3))
    middle = (low + high) / 2
    shift = (width_px / 2 - scale * float(middle[0]), height_px / 2 + scale * float(middle[1]))
    shade = np.full((height_px, width_px), np.nan)
    depth = np.full((height_px, width_px), np.inf)
    for solid, flat in zip(solids, flats, strict=True):
        _paint(shade, depth, np.column_stack([_on_paper(flat, scale, shift), flat[:, 2]]), solid)
    behind = _farthest_near(depth)
    runs = [
        _seen(solid, np.column_stack([_on_paper(flat, scale, shift), flat[:, 2]]), behind, 1.5 / scale)
        for solid, flat in zip(solids, flats, strict=True)
    ]
    return View(shade, np.concatenate(runs), scale, shift)


def png_of(view: View) -> bytes:
    """Return the view as a grey PNG with its edges, white where there is nothing (ISO/IEC 15948)."""
    grey = np.where(np.isnan(view.shade), 255.0, 110.0 + 120.0 * np.nan_to_num(view.shade))
    height, width = grey.shape
    start, way = view.edges_px[:, 0], view.edges_px[:, 1] - view.edges_px[:, 0]
    points = _along(start, way, np.abs(way).max(axis=1, initial=0.0).astype(int) + 1).astype(int)
    grey[np.clip(points[:, 1], 0, height - 1), np.clip(points[:, 0], 0, width - 1)] = 40.0
    rows = np.hstack([np.zeros((height, 1), dtype=np.uint8), grey.astype(np.uint8)])
    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    parts = ((b"IHDR", head), (b"IDAT", zlib.compress(rows.tobytes(), 9)), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(_chunk(name, body) for name, body in parts)


def _chunk(name: bytes, body: bytes) -> bytes:
    return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))


def _projected(points: Floats) -> Floats:
    """Return right, up and away (n, 3) in millimetres."""
    (cos_a, sin_a), (cos_e, sin_e) = _TURN_RATIO, _TILT_RATIO
    x, y, z = points.T
    u, v = x * cos_a + y * sin_a, -x * sin_a + y * cos_a
    return np.column_stack([u, v * sin_e + z * cos_e, v * cos_e - z * sin_e])


def _on_paper(flat: Floats, scale: float, shift: tuple[float, float]) -> Floats:
    return np.column_stack([shift[0] + scale * flat[:, 0], shift[1] - scale * flat[:, 1]])


def _normals(solid: Solid) -> Floats:
    a, b, c = (solid.corners_mm[solid.triangles[:, i]] for i in range(3))
    across = np.cross(b - a, c - a)
    return np.asarray(across / np.maximum(np.linalg.norm(across, axis=1, keepdims=True), 1e-300))


def _facing(paper: Floats, solid: Solid) -> NDArray[np.bool_]:
    a, b, c = (paper[solid.triangles[:, i], :2] for i in range(3))
    (ux, uy), (vx, vy) = (b - a).T, (c - a).T
    return np.asarray(ux * vy - uy * vx < -1e-9)  # the paper's y points down


def _paint(shade: Floats, depth: Floats, paper: Floats, solid: Solid) -> None:
    """Draw the faces that look at the viewer into shade and depth."""
    bright = 0.25 + 0.75 * np.clip(_normals(solid) @ (_LIGHT / np.linalg.norm(_LIGHT)), 0.0, 1.0)
    height, width = depth.shape
    facing = np.flatnonzero(_facing(paper, solid))
    corners = paper[solid.triangles[facing]]
    lows = np.maximum(corners[:, :, :2].min(axis=1).astype(int), 0)
    highs = np.minimum(corners[:, :, :2].max(axis=1).astype(int) + 2, (width, height))
    for number, first, (along, down), (left, top), (right, foot) in zip(
        facing, corners[:, 0], _slopes(corners), lows, highs, strict=True
    ):
        x, y = np.arange(left, right) + 0.5 - first[0], np.arange(top, foot)[:, None] + 0.5 - first[1]
        share_1, share_2, away = along * x + down * y
        away += first[2]
        window = (slice(top, foot), slice(left, right))
        nearer = (share_1 >= -1e-9) & (share_2 >= -1e-9) & (share_1 + share_2 <= 1 + 1e-9) & (away < depth[window])
        depth[window][nearer] = away[nearer]
        shade[window][nearer] = bright[number]


def _slopes(corners: Floats) -> Floats:
    """Return how the shares of the second and third corner and the depth grow along x and down y, (k, 2, 3, 1, 1)."""
    (x1, y1, z1), (x2, y2, z2) = (corners[:, 1] - corners[:, 0]).T, (corners[:, 2] - corners[:, 0]).T
    area = x1 * y2 - x2 * y1
    share_1, share_2 = np.array([y2, -x2]) / area, np.array([-y1, x1]) / area
    return np.stack([share_1, share_2, share_1 * z1 + share_2 * z2]).transpose(2, 1, 0)[..., None, None]


def _farthest_near(depth: Floats) -> Floats:
    """Return the farthest depth of each pixel and its eight neighbours."""
    padded = np.pad(depth, 1, constant_values=np.inf)
    height, width = depth.shape
    return np.asarray(
        np.max([padded[i : i + height, j : j + width] for i in range(3) for j in range(3)], axis=0)
    )


def _sharp_edges(solid: Solid, paper: Floats) -> NDArray[np.int64]:
    """Return the corner numbers (k, 2) of edges between faces at an angle, or between a seen and an unseen face."""
    triangles, normals, facing = solid.triangles, _normals(solid), _facing(paper, solid)
    ends = np.vstack([triangles[:, [0, 1]], triangles[:, [1, 2]], triangles[:, [2, 0]]])
    face = np.tile(np.arange(len(triangles)), 3)
    key = np.sort(ends, axis=1)
    order = np.lexsort((key[:, 1], key[:, 0]))
    first, second = order[0::2], order[1::2]  # a closed body has every edge twice
    a, b = face[first], face[second]
    angled = np.einsum("ij,ij->i", normals[a], normals[b]) < _SHARP_RATIO
    drawn = (facing[a] | facing[b]) & (angled | (facing[a] != facing[b]))
    return np.asarray(key[first][drawn])


def _seen(solid: Solid, paper: Floats, behind: Floats, bias: float) -> Floats:
    """Return the runs (k, 2, 2) of every edge that nothing hides; all edges are walked along in one go."""
    height, width = behind.shape
    edges = _sharp_edges(solid, paper)
    start, way = paper[edges[:, 0]], paper[edges[:, 1]] - paper[edges[:, 0]]
    steps = np.maximum((np.hypot(way[:, 0], way[:, 1]) / _SAMPLE_PX).astype(int), 2)
    points = _along(start, way, steps)
    columns = np.clip(points[:, 0].astype(int), 0, width - 1)
    rows = np.clip(points[:, 1].astype(int), 0, height - 1)
    seen = points[:, 2] <= behind[rows, columns] + bias
    last = np.cumsum(steps + 1) - 1  # of each edge: no run goes on from there
    goes_on = seen[:-1] & seen[1:]
    goes_on[last[:-1]] = False
    begins = np.flatnonzero(goes_on & ~np.append(False, goes_on[:-1]))
    ends = np.flatnonzero(goes_on & ~np.append(goes_on[1:], False)) + 1
    return np.stack([points[begins, :2], points[ends, :2]], axis=1)


def _along(start: Floats, way: Floats, steps: NDArray[np.int64]) -> Floats:
    """Return the points of lines one after another, from `start` (k, d) along `way` in so many equal steps (k,)."""
    count = steps + 1
    line = np.repeat(np.arange(steps.size), count)
    step = np.arange(line.size) - np.repeat(np.cumsum(count) - count, count)
    return np.asarray(start[line] + (step / steps[line])[:, None] * way[line])
