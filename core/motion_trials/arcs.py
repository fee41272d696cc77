"""Arcs of G-code in the XY plane: length, radius and the directions at both ends.

Symbols: d chord from start to end, c centre seen from the start, r radius, phi swept angle, z rise. The way of an arc
that rises is a helix: length sqrt((r phi)^2 + z^2).

Reference: ISO 6983-1:2009 (circular interpolation; I and J from the start of the arc, R positive for the arc below
180 degrees and negative for the one above).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.reach import finite_out, of_one_length, refuse_unlike
from core.words import tr

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]
Ints = NDArray[np.int64]

_CLOSED_MM = 1e-6  # chord below which an arc is a full turn
_UNEQUAL_RATIO, _UNEQUAL_MM = 0.01, 0.05  # how far the two radii of a rounded centre may differ


@dataclass(frozen=True, slots=True, eq=False)
class Arcs:
    """Arcs (n,): length along the way, radius in the plane, unit directions at the start and at the end."""

    length_mm: Floats
    radius_mm: Floats
    begin: tuple[Floats, Floats, Floats]
    end: tuple[Floats, Floats, Floats]


@of_one_length("x_mm", "y_mm", "z_mm", "clockwise", "line")
@finite_out("file")
def arcs_of(
    x_mm: Floats,
    y_mm: Floats,
    z_mm: Floats,
    centre_mm: tuple[Floats, Floats, Floats],
    clockwise: Bools,
    line: Ints,
) -> Arcs:
    """Return the arcs between two points.

    Args:
        x_mm: (n,) chord along X. y_mm and z_mm: along Y and Z.
        y_mm: (n,) chord along Y.
        z_mm: (n,) rise.
        centre_mm: the words I, J and R, each (n,), nan where not given.
        clockwise: (n,) G2, else G3.
        line: (n,) line in the file, for errors.

    Raises:
        InputError: field `file`, row the line: no centre, or one that is not the same distance from both ends; a column
            that differs in number from the others.
    """
    i, j, r = centre_mm
    refuse_unlike(x_mm=x_mm, i_mm=i, j_mm=j, r_mm=r)
    by_radius = ~np.isnan(r) & np.isnan(i) & np.isnan(j)
    cx, cy = np.nan_to_num(i), np.nan_to_num(j)
    cx, cy = _centres_by_radius(x_mm, y_mm, cx, cy, np.where(by_radius, r, np.nan), clockwise)
    radius = np.hypot(cx, cy)
    other = np.hypot(x_mm - cx, y_mm - cy)
    bad = ~(radius > 0) | (np.abs(other - radius) > np.maximum(_UNEQUAL_MM, _UNEQUAL_RATIO * radius))
    if bad.any():
        row = int(line[np.flatnonzero(bad)[0]])
        says = tr("Line {line}: this arc has no centre that fits both its ends; mend this line.", line=row + 1)
        raise InputError("file", says, row)
    start, stop = np.arctan2(-cy, -cx), np.arctan2(y_mm - cy, x_mm - cx)
    sign = np.where(clockwise, -1.0, 1.0)
    sweep = np.mod(sign * (stop - start), 2 * math.pi)
    sweep = np.where((np.hypot(x_mm, y_mm) < _CLOSED_MM) & ~by_radius, 2 * math.pi, sweep)
    around = radius * sweep
    length = np.hypot(around, z_mm)
    flat, rise = around / length, z_mm / length
    ends = [(-sign * np.sin(a) * flat, sign * np.cos(a) * flat, rise) for a in (start, start + sign * sweep)]
    return Arcs(length, radius, ends[0], ends[1])


def _centres_by_radius(
    x: Floats, y: Floats, cx: Floats, cy: Floats, r: Floats, clockwise: Bools
) -> tuple[Floats, Floats]:
    """Return the centres, those of arcs given by R beside the middle of their chord; nan where none fits."""
    given = ~np.isnan(r)
    if not given.any():
        return cx, cy
    chord = np.hypot(x, y)
    off = np.sqrt(np.maximum(r * r / (chord * chord) - 0.25, np.where(2 * np.abs(r) < 0.999 * chord, np.nan, 0.0)))
    off = np.where(chord > _CLOSED_MM, off, np.nan)
    side = np.where(clockwise, 1.0, -1.0) * np.sign(r)  # the centre lies right of the chord where the arc turns right
    return np.where(given, x / 2 + side * off * y, cx), np.where(given, y / 2 - side * off * x, cy)
