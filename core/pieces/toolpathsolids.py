"""Strokes of the direct trials that stand up: boxes of some beads without top, and solid pads.

    ring j of a box      drawn outside - w/2 - j p from the outside, p the spacing that leaves no gap
    pad with n lines     (n + 1) p + w wide: outline and lines lie exactly p apart, so that nothing is counted twice

Reference: plane geometry. Sizes: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.pieces.toolpath import PathBead, Stroke, bead_stroke
from core.words import tr

_TICK_MM = 3.0
_MOST_LAYERS = 1e5
_TICKS_APART_MM = 2.5
_TICKS_AWAY_MM = 4.0

Floats = NDArray[np.float64]


@within_reach
def layer_heights_mm(height_mm: float, bead: PathBead) -> Floats:
    """Return the heights of the layers that come nearest to a height, one at least.

    Raises:
        InputError: field `height_mm` for a layer without height, or so low that they cannot be counted.
    """
    if not 0 <= height_mm <= _MOST_LAYERS * bead.height_mm or bead.height_mm == 0:
        raise InputError("height_mm", tr("Layers of {mm:g} mm cannot be laid; type their height.", mm=bead.height_mm))
    return np.asarray(bead.height_mm * np.arange(1, max(round(height_mm / bead.height_mm), 1) + 1), dtype=float)


@within_reach
@finite_in("outside_mm", "middle_mm")
def box_strokes(
    outside_mm: float,
    height_mm: float,
    beads: int,
    bead: PathBead,
    middle_mm: tuple[float, float],
    speed_mm_s: Sequence[float],
) -> list[Stroke]:
    """Return the strokes of a square box without bottom and top: each layer its rings, the innermost first.

    Args:
        outside_mm: drawn outer size.
        height_mm: drawn height, met to half a layer.
        beads: how many rings.
        bead: the bead.
        middle_mm: where the middle stands on the bed.
        speed_mm_s: of each layer; the last one goes on.

    Raises:
        InputError: field `side_mm`, where the rings do not fit, or there is none.
    """
    halves = [(outside_mm - bead.width_mm) / 2 - ring * bead.spacing_mm for ring in range(beads)]
    if not halves or halves[-1] < 2 * bead.width_mm:
        raise InputError(
            "side_mm",
            tr("{beads} beads do not fit into a box of {side:g} mm; make it larger.", beads=beads, side=outside_mm),
        )
    strokes = []
    for layer, z in enumerate(layer_heights_mm(height_mm, bead)):
        speed = speed_mm_s[min(layer, len(speed_mm_s) - 1)]
        strokes += [bead_stroke(_square(half, middle_mm), float(z), bead, speed, 1) for half in reversed(halves)]
    return strokes


@within_reach
@finite_in("size_mm", "middle_mm", "factor")
def pad_strokes(
    size_mm: float,
    layers: int,
    bead: PathBead,
    middle_mm: tuple[float, float],
    speed_mm_s: Sequence[float],
    part: int,
    *,
    factor: float,
) -> list[list[Stroke]]:
    """Return the strokes of a solid square pad, by layer: outline, then lines to and fro, crossed from layer to layer.

    Args:
        size_mm: drawn size, met to a spacing.
        layers: how many.
        bead: the bead.
        middle_mm: where the middle stands on the bed.
        speed_mm_s: of each layer; the last one goes on.
        part: number of the pad; as many ticks lie in front of it.
        factor: multiplies the flow factor in force.

    Raises:
        InputError: field `size_mm`, where no line fits.
    """
    lines = round((size_mm - bead.width_mm) / bead.spacing_mm) - 1
    if lines < 2:
        raise InputError("size_mm", tr("A pad of {size:g} mm has no room for lines; make it larger.", size=size_mm))
    half = (lines + 1) * bead.spacing_mm / 2
    strokes = []
    for layer in range(layers):
        z, speed = (layer + 1) * bead.height_mm, speed_mm_s[min(layer, len(speed_mm_s) - 1)]
        paths = [_square(half, middle_mm), _to_and_fro(lines, bead.spacing_mm, middle_mm, turned=layer % 2 == 1)]
        laid = [bead_stroke(path, z, bead, speed, part, factor=factor) for path in paths]
        strokes.append([*(_ticks(part, half, bead, z, middle_mm, speed) if layer == 0 else []), *laid])
    return strokes


def _square(half_mm: float, middle_mm: tuple[float, float]) -> Floats:
    """Return a closed square, counter-clockwise from its front left corner."""
    corners = np.array([(-1, -1), (1, -1), (1, 1), (-1, 1), (-1, -1)], dtype=float)
    return np.asarray(corners * half_mm + middle_mm)


def _to_and_fro(lines: int, spacing_mm: float, middle_mm: tuple[float, float], *, turned: bool) -> Floats:
    """Return parallel lines, joined at their ends, along X or (turned) along Y."""
    reach = (lines - 1) * spacing_mm / 2
    across = np.repeat(np.linspace(-reach, reach, lines), 2)
    along = reach * np.tile([-1.0, 1.0, 1.0, -1.0], (lines + 1) // 2)[: 2 * lines]
    points = (across, along) if turned else (along, across)
    return np.column_stack(points) + middle_mm


def _ticks(
    count: int, half_mm: float, bead: PathBead, z_mm: float, middle_mm: tuple[float, float], speed_mm_s: float
) -> list[Stroke]:
    """Return short beads in front of a pad: its number, to be counted on the bed."""
    left, front = middle_mm[0] - half_mm, middle_mm[1] - half_mm - _TICKS_AWAY_MM
    return [
        bead_stroke([(x, front), (x, front - _TICK_MM)], z_mm, bead, speed_mm_s, 0)
        for x in left + _TICKS_APART_MM * np.arange(count)
    ]
