"""A printer on paper: follows contours with lost motion, scale error and wall outset, and says where each wall stands.

For tests only. The carriage follows the commanded path through a play operator per axis: it lags by half the lost
motion behind whatever direction it was last pulled in, and stands still while the commanded path moves inside the play.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.pieces.piece import Piece

Floats = NDArray[np.float64]
AXES = "xy"


@dataclass(frozen=True, slots=True)
class Wall:
    """A straight printed wall that faces along `axis`, outwards to the `side` +1 or -1, at a position in mm."""

    axis: str
    side: int
    position_mm: float


@dataclass(slots=True)
class Printer:
    """Planted faults: scale error (ratio) and lost motion B (mm) of each axis, and one wall outset w (mm per side)."""

    scale_ratio: tuple[float, float] = (0.0, 0.0)
    lost_motion_mm: tuple[float, float] = (0.0, 0.0)
    wall_outset_mm: float = 0.0
    _carriage_mm: Floats = field(default_factory=lambda: np.zeros(2))

    def follow(self, commanded_mm: Floats) -> Floats:
        """Move to a commanded (2,) position and return where the carriage stands."""
        pulled_mm = commanded_mm * (1.0 + np.array(self.scale_ratio))
        play_mm = np.array(self.lost_motion_mm) / 2
        self._carriage_mm = np.clip(self._carriage_mm, pulled_mm - play_mm, pulled_mm + play_mm)
        return self._carriage_mm.copy()

    def print_contour(self, points_mm: ArrayLike, *, material_inside: bool = True) -> list[Wall]:
        """Follow a closed contour twice and return the walls of the second lap, in the order of travel.

        Args:
            points_mm: (n, 2) corners in the order of travel, not repeated at the end.
            material_inside: False for the contour of a hole.

        The first lap belongs to the layers below: from the second on no wall depends on where the nozzle came from.
        Only walls that face along an axis are returned.
        """
        corners = np.asarray(points_mm, dtype=float)
        material_left = (_signed_area(corners) > 0) == material_inside
        stops = [self.follow(corner) for _lap in range(2) for corner in corners] + [self.follow(corners[0])]
        second_lap = stops[len(corners) :]
        ends = zip(corners, np.roll(corners, -1, axis=0), second_lap, second_lap[1:], strict=False)
        return [
            wall for start, end, here, there in ends for wall in self._walls(end - start, here, there, material_left)
        ]

    def _walls(self, run: Floats, here: Floats, there: Floats, material_left: bool) -> Iterable[Wall]:
        if np.count_nonzero(run) == 1:
            across = int(np.flatnonzero(run == 0)[0])
            assert here[across] == there[across], "the carriage left the wall sideways"
            outward = np.array([run[1], -run[0]]) * (1 if material_left else -1)
            side = int(np.sign(outward[across]))
            yield Wall(AXES[across], side, float(here[across]) + side * self.wall_outset_mm)


def _signed_area(corners: Floats) -> float:
    after = np.roll(corners, -1, axis=0)
    return float(np.sum(corners[:, 0] * after[:, 1] - after[:, 0] * corners[:, 1])) / 2


def gauge_sizes(printer: Printer, piece: Piece, *, clockwise: bool = False) -> list[float]:
    """Return the printed size (mm) of every gauge of a comb, each between the walls that its jaws touch.

    A comb along y is drawn along x; the mirror that lays it along y turns the travel round, so it is turned back.
    """
    walls = []
    for number, outline in enumerate(piece.outlines):
        points = np.array(outline)[:: -1 if clockwise else 1]
        points = points if piece.axis == "x" else points[::-1, ::-1]
        walls += [(number > 0, wall) for wall in printer.print_contour(points, material_inside=number == 0)]
    sizes = []
    for gauge in piece.gauges:
        sides = (+1, -1) if gauge.inside else (-1, +1)
        ends = [
            min(
                (w.position_mm for in_hole, w in walls
                 if in_hole == (gauge.kind == "closed_hole") and (w.axis, w.side) == (piece.axis, side)),
                key=lambda at, jaw=jaw: abs(at - jaw),
            )
            for jaw, side in zip(gauge.jaws_mm, sides, strict=True)
        ]  # fmt: skip
        sizes.append(ends[1] - ends[0])
    return sizes


def rectangle(x0: float, y0: float, x1: float, y1: float, *, clockwise: bool = False) -> Floats:
    """Return the corners of a rectangle in mm in the order of travel."""
    corners = np.array([[x0, y0], [x1, y0], [x1, y1], [x0, y1]], dtype=float)
    return corners[::-1] if clockwise else corners


def comb(tooth_mm: float, notch_mm: float, teeth: int, *, clockwise: bool = False) -> Floats:
    """Return the corners of an open comb: a spine along x from 0, teeth up from it, the first one at its left end."""
    corners = [(0.0, 0.0), (teeth * tooth_mm + (teeth - 1) * notch_mm, 0.0)]
    for i in reversed(range(teeth)):
        left = i * (tooth_mm + notch_mm)
        corners += [(left + tooth_mm, 20.0), (left, 20.0)]
        if i:
            corners += [(left, 5.0), (left - notch_mm, 5.0)]
    return np.array(corners)[::-1] if clockwise else np.array(corners)
