"""A toolpath: strokes, each laid without a stop, and the moves that lay them one after another.

    filament for a bead    e = k A l/A_f     k flow factor, A its cross-section, l its length, A_f that of the filament
    commanded volume       sum(e) A_f        of the piece; what is purged before it does not count

Between strokes the filament is drawn back and the nozzle travels: upwards first where the next stroke lies higher,
downwards last where it lies lower, so that nothing laid is touched.

Reference: plane geometry.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.measuring.finite import finite_in
from core.measuring.reach import refuse_out_of_reach, within_reach
from core.words import Words

BETWEEN = -1  # the part of a move that belongs to none
PURGE = 0  # the part that is laid before the piece, to fill the nozzle
_SAME_MM = 1e-6

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class PathBead:
    """A bead as its path counts it, with the flow factor in force.

    Attributes:
        spacing_mm: distance of neighbouring paths that leaves no gap.
        filament_ratio: filament for each mm of path, k A/A_f.
    """

    width_mm: float
    height_mm: float
    spacing_mm: float
    filament_ratio: float


@dataclass(frozen=True, slots=True)
class Laying:
    """How the nozzle goes from stroke to stroke; `lift_mm` above them where nothing may be smeared."""

    travel_mm_s: float
    z_mm_s: float
    retract_mm: float = 0.0
    retract_mm_s: float = 30.0
    lift_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class Part:
    """What the picture names: a pad, a line, a strand; its name stands about `at_mm`, or begins there (`beside`)."""

    name: Words
    at_mm: tuple[float, float]
    beside: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class Stroke:
    """One bead, strand or drawn line without a stop.

    Attributes:
        points_mm: (n, 2) of its centre line; a strand has its place twice.
        filament_mm: (n-1,) fed on the way to each further point; none for a pen.
        speed_mm_s: (n-1,) of the nozzle, or of the filament where the nozzle stands.
        width_mm: as drawn in the picture.
        part: which part it belongs to.
        approach_mm_s: speed of the travel before it, where it is not the usual one.
    """

    points_mm: Floats
    z_mm: float
    filament_mm: Floats
    speed_mm_s: Floats
    width_mm: float
    part: int
    approach_mm_s: float | None = None


@dataclass(frozen=True, slots=True, eq=False)
class Moves:
    """(n,) each: where a move ends, what it feeds, how fast, the bead it lays (0: none) and the part it belongs to."""

    x_mm: Floats
    y_mm: Floats
    z_mm: Floats
    filament_mm: Floats
    speed_mm_s: Floats
    width_mm: Floats
    part: NDArray[np.int64]


@dataclass(frozen=True, slots=True, eq=False)
class Toolpath:
    """A trial as moves; `parts` are counted from 1, `filament_mm` is the diameter that E is counted with."""

    title: Words
    parts: tuple[Part, ...]
    moves: Moves
    filament_mm: float

    def layers_mm(self) -> Floats:
        """Return the heights at which something is laid, low to high."""
        laid = self.moves.width_mm > 0
        return np.unique(self.moves.z_mm[laid])

    def commanded_mm(self, part: int | None = None) -> float:
        """Return the filament of a part, or of the whole piece: all that is fed for it, without the purge."""
        of = self.moves.part > PURGE if part is None else self.moves.part == part
        return float(self.moves.filament_mm[of].sum())

    def commanded_mm3(self) -> float:
        """Return the volume of the piece as its path commands it.

        Raises:
            InputError: field `filament_mm`, out of reach.
        """
        refuse_out_of_reach("filament_mm", self.filament_mm)
        return self.commanded_mm() * math.pi * self.filament_mm**2 / 4.0


@within_reach
@finite_in("points_mm", "z_mm", "speed_mm_s", "factor")
def bead_stroke(
    points_mm: ArrayLike,
    z_mm: float,
    bead: PathBead,
    speed_mm_s: float | Floats,
    part: int,
    *,
    factor: float = 1.0,
) -> Stroke:
    """Return the stroke of a bead along (n, 2) points; `factor` multiplies the flow factor in force."""
    points = np.asarray(points_mm, dtype=float)
    lengths = np.hypot(*np.diff(points, axis=0).T)
    speed = np.broadcast_to(np.asarray(speed_mm_s, dtype=float), lengths.shape)
    return Stroke(points, z_mm, factor * bead.filament_ratio * lengths, speed, bead.width_mm, part)


@within_reach
@finite_in("from_z_mm")
def lay(strokes: Sequence[Stroke], laying: Laying, from_z_mm: float) -> Moves:
    """Return the moves that lay the strokes in this order, from wherever the nozzle stands at a height."""
    rows: list[Floats] = []
    z = from_z_mm
    at: tuple[float, float] | None = None
    for stroke in strokes:
        first = (float(stroke.points_mm[0, 0]), float(stroke.points_mm[0, 1]))
        if at is None:
            rows += _come(first, z, stroke, laying)
        elif math.dist(at, first) > _SAME_MM:
            rows += _travel(at, first, z, stroke, laying)
        elif abs(z - stroke.z_mm) > _SAME_MM:
            rows.append(_row(*first, stroke.z_mm, 0.0, laying.z_mm_s))
        rows.append(_laid(stroke))
        z, at = stroke.z_mm, (float(stroke.points_mm[-1, 0]), float(stroke.points_mm[-1, 1]))
    table = np.concatenate(rows)
    x, y, height, filament, speed, width = (np.ascontiguousarray(table[:, number]) for number in range(6))
    return Moves(x, y, height, filament, speed, width, table[:, 6].astype(np.int64))


def _come(to: tuple[float, float], z: float, stroke: Stroke, laying: Laying) -> Iterator[Floats]:
    """Come from wherever the nozzle stands: first over the place, then to its height."""
    yield _row(*to, z, 0.0, laying.travel_mm_s)
    if abs(z - stroke.z_mm) > _SAME_MM:
        yield _row(*to, stroke.z_mm, 0.0, laying.z_mm_s)


def _travel(
    at: tuple[float, float], to: tuple[float, float], z: float, stroke: Stroke, laying: Laying
) -> Iterator[Floats]:
    """Draw back, rise, go over, come down, and give again what was drawn back."""
    over = max(z, stroke.z_mm) + laying.lift_mm
    if laying.retract_mm > 0:
        yield _row(*at, z, -laying.retract_mm, laying.retract_mm_s)
    if over - z > _SAME_MM:
        yield _row(*at, over, 0.0, laying.z_mm_s)
    yield _row(*to, over, 0.0, stroke.approach_mm_s or laying.travel_mm_s)
    if over - stroke.z_mm > _SAME_MM:
        yield _row(*to, stroke.z_mm, 0.0, laying.z_mm_s)
    if laying.retract_mm > 0:
        yield _row(*to, stroke.z_mm, laying.retract_mm, laying.retract_mm_s)


def _row(x: float, y: float, z: float, filament: float, speed: float) -> Floats:
    return np.array([[x, y, z, filament, speed, 0.0, BETWEEN]])


def _laid(stroke: Stroke) -> Floats:
    count = stroke.points_mm.shape[0] - 1
    table = np.empty((count, 7))
    table[:, :2] = stroke.points_mm[1:]
    table[:, 2] = stroke.z_mm
    table[:, 3] = stroke.filament_mm
    table[:, 4] = stroke.speed_mm_s
    table[:, 5] = stroke.width_mm
    table[:, 6] = stroke.part
    return table
