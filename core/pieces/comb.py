"""The size comb: teeth, notches, a closed window and an overall length along one axis.

    teeth and notches of one side    reached on one run of the contour: outside and inside cancel the wall outset
    overall length, window           closed outlines: smaller by the lost motion than the comb predicts

Centre distances of the teeth are whole turns of a 40 mm pulley, of screws of lead 8 and 2, and of a 0.8 mm electrical
cycle. The layout is our own; why teeth cancel lost motion: see `core.part_size.features`.
"""

from __future__ import annotations

from dataclasses import dataclass

from core.words import Words, tr

BODY_MM = 140.0
DEPTH_MM = 16.0
TOOTH_OUT_MM = 8.0
TEETH_MM = ((5.0, 15.0), (45.0, 55.0), (65.0, 75.0), (125.0, 135.0))
WINDOW_MM = (15.0, 125.0, 4.0, 12.0)


@dataclass(frozen=True, slots=True)
class Gauge:
    """One place to measure: where the jaws stand (mm from the left end), and the kind of feature they span.

    `kind` is a name of `core.part_size.features.FeatureKind`.
    """

    name: str
    says: Words
    kind: str
    axis: str
    jaws_mm: tuple[float, float]
    height_mm: float

    @property
    def nominal_mm(self) -> float:
        """Drawn distance of the jaws."""
        return abs(self.jaws_mm[1] - self.jaws_mm[0])


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece along one axis: closed outlines (mm, the first is the body, the others are cut out) and its gauges."""

    name: Words
    axis: str
    outlines: tuple[tuple[tuple[float, float], ...], ...]
    gauges: tuple[Gauge, ...]


def plan_comb(axis: str) -> Piece:
    """Return the size comb along x or y, gauges in the order that spares the hand: outside jaws first, then inside."""
    top = DEPTH_MM + TOOTH_OUT_MM / 2
    gauges = [
        _teeth(axis, "outer 1-4", "tooth", TEETH_MM[0][0], TEETH_MM[3][1], top),
        _teeth(axis, "outer 1-2", "tooth", TEETH_MM[0][0], TEETH_MM[1][1], top),
        _teeth(axis, "outer 2-4", "tooth", TEETH_MM[1][0], TEETH_MM[3][1], top),
        _teeth(axis, "tooth 1", "tooth", *TEETH_MM[0], top),
        _teeth(axis, "tooth 4", "tooth", *TEETH_MM[3], top),
        Gauge(f"overall {axis}", tr("overall length of the bar"), "outside", axis, (0.0, BODY_MM), DEPTH_MM / 2),
        _teeth(axis, "inner 1-4", "notch", TEETH_MM[0][1], TEETH_MM[3][0], top),
        _teeth(axis, "inner 1-2", "notch", TEETH_MM[0][1], TEETH_MM[1][0], top),
        _teeth(axis, "inner 2-4", "notch", TEETH_MM[1][1], TEETH_MM[3][0], top),
        _teeth(axis, "notch 2-3", "notch", TEETH_MM[1][1], TEETH_MM[2][0], top),
        Gauge(f"window {axis}", tr("length of the window"), "closed_hole", axis, WINDOW_MM[:2], DEPTH_MM / 2),
    ]
    return Piece(tr("Size comb {axis}", axis=axis.upper()), axis, (_body(), _window()), tuple(gauges))


def _teeth(axis: str, name: str, kind: str, left: float, right: float, height: float) -> Gauge:
    says = tr("over the outer faces") if kind == "tooth" else tr("between the inner faces")
    return Gauge(f"{name} {axis}", says, kind, axis, (left, right), height)


def _body() -> tuple[tuple[float, float], ...]:
    outline: list[tuple[float, float]] = [(0.0, 0.0), (BODY_MM, 0.0), (BODY_MM, DEPTH_MM)]
    for left, right in reversed(TEETH_MM):
        high = DEPTH_MM + TOOTH_OUT_MM
        outline += [(right, DEPTH_MM), (right, high), (left, high), (left, DEPTH_MM)]
    return (*outline, (0.0, DEPTH_MM))


def _window() -> tuple[tuple[float, float], ...]:
    left, right, low, high = WINDOW_MM
    return ((left, low), (right, low), (right, high), (left, high))
