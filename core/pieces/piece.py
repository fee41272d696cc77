"""What a test piece is: upright prisms to print, gauges where the jaws go, and the set that is printed together.

A piece is drawn in a frame of its own, millimetres, first axis along its length, the bed at height zero. `turned` lays
it along y: a quarter turn to the left, as a person turns the part on the bed.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.words import Words

Point = tuple[float, float, float]
Outline = tuple[tuple[float, float], ...]

INSIDE_KINDS = ("notch", "closed_hole", "gap", "bore", "inner_diagonal")


@dataclass(frozen=True, slots=True)
class Prism:
    """Material between two heights.

    Attributes:
        outlines: closed outlines; what an odd number of them surrounds is inside.
        low_mm, high_mm: heights.
        relief_mm: the lower edge steps in by as much, so that the wider first layers touch no measured face.
    """

    outlines: tuple[Outline, ...]
    low_mm: float
    high_mm: float
    relief_mm: float = 0.0


@dataclass(frozen=True, slots=True)
class Gauge:
    """One place to measure: the two points that the jaws touch, in the frame of the piece, and what they span.

    Attributes:
        kind: a name of `core.part_size.features.FeatureKind`, or `wall`, `outer_diagonal`, `inner_diagonal`
            for others.
        axis: x, y or z of the machine; xy for a diagonal.
        faces: names of the two walls; a gauge that shares none with another scatters by itself.
    """

    name: str
    says: Words
    kind: str
    axis: str
    first_mm: Point
    second_mm: Point
    faces: tuple[str, str] = ("", "")

    @property
    def nominal_mm(self) -> float:
        """Drawn distance of the jaws."""
        return round(math.dist(self.first_mm, self.second_mm), 9)

    @property
    def inside(self) -> bool:
        """Whether the inside blades read it."""
        return self.kind in INSIDE_KINDS

    @property
    def jaws_mm(self) -> tuple[float, float]:
        """Where the two jaws stand along the first axis of the piece."""
        return self.first_mm[0], self.second_mm[0]

    @property
    def height_mm(self) -> float:
        """How far across the piece the jaws reach."""
        return self.first_mm[1]


@dataclass(frozen=True, slots=True)
class Piece:
    """One solid body and its gauges, in the order that spares the hand.

    Attributes:
        prisms: added and cut in this order.
        place_mm: where its frame stands on the bed, after the turn.
        side_view: its gauges are seen from the side.
    """

    name: Words
    axis: str
    prisms: tuple[Prism, ...]
    gauges: tuple[Gauge, ...]
    place_mm: tuple[float, float] = (0.0, 0.0)
    turned: bool = False
    side_view: bool = False

    @property
    def outlines(self) -> tuple[Outline, ...]:
        """The outlines of its first prism: the body, then what is cut out of it."""
        return self.prisms[0].outlines

    def on_bed(self, point_mm: Point) -> Point:
        """Return where a point of the piece's frame lies on the bed."""
        x, y, z = point_mm
        if self.turned:
            x, y = -y, x
        return x + self.place_mm[0], y + self.place_mm[1], z


@dataclass(frozen=True, slots=True)
class PrintSet:
    """What is printed together.

    Attributes:
        purpose: what its readings tell.
        page: key of the page that takes its readings; empty where none does.
        minds: what to mind about it on this machine.
    """

    key: str
    name: Words
    purpose: Words
    pieces: tuple[Piece, ...]
    page: str = ""
    minds: tuple[Words, ...] = ()

    @property
    def gauges(self) -> tuple[Gauge, ...]:
        """All gauges, numbered by their place."""
        return tuple(gauge for piece in self.pieces for gauge in piece.gauges)

    def places(self) -> tuple[tuple[Point, Point], ...]:
        """Return the two points of every gauge on the bed."""
        return tuple((p.on_bed(g.first_mm), p.on_bed(g.second_mm)) for p in self.pieces for g in p.gauges)


@finite_in("x0_mm", "x1_mm", "y0_mm", "y1_mm")
def box(x0_mm: float, y0_mm: float, x1_mm: float, y1_mm: float) -> Outline:
    """Return a rectangle, anticlockwise."""
    return ((x0_mm, y0_mm), (x1_mm, y0_mm), (x1_mm, y1_mm), (x0_mm, y1_mm))


@within_reach
@finite_in("diameter_mm", "x_mm", "y_mm")
def ngon(x_mm: float, y_mm: float, diameter_mm: float, sides: int, *, flat: bool = False) -> Outline:
    """Return a regular polygon, its corners on the circle; `flat`: its sides on the circle, one facing along x."""
    turn = math.pi / sides if flat else 0.0
    radius = diameter_mm / 2 / (math.cos(math.pi / sides) if flat else 1.0)
    angles = (turn + 2 * math.pi * i / sides for i in range(sides))
    return tuple((x_mm + radius * math.cos(a), y_mm + radius * math.sin(a)) for a in angles)
