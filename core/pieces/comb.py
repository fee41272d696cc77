"""The size comb: teeth, notches, closed windows and an overall length along one axis.

    outer and inner span of a tooth pair   reached on one run of the contour: their mean is s*L_c, without w and B
    overall length, windows                closed outlines: smaller by the lost motion than the comb predicts

Teeth stand in pairs about the middle, and each of their walls is touched by one gauge only: where walls scatter, gauges
that share one would scatter together, and a fit that takes them for strangers promises too much. Centre distances are
whole turns where any fit. A long comb is two half-combs tied by a narrower bar.

The layout is our own; why teeth cancel lost motion: see `core.part_size.features`.
"""

from __future__ import annotations

from dataclasses import dataclass

from core.errors import InputError
from core.pieces.bounds import Bounds, largest_whole_mm, turn_minds
from core.pieces.marks import mark
from core.pieces.piece import Gauge, Outline, Piece, Prism, box
from core.words import Words, tr

DEPTH_MM = 16.0
TALL_MM = 8.0
TOOTH_MM = 8.0
TOOTH_OUT_MM = 8.0  # at most: short blades must pass over a tooth
PITCH_MM = 20.0  # of neighbouring teeth at least: room for a jaw
BAR_MM = 10.0  # depth of the bar that ties half-combs
RELIEF_MM = 0.6
_GAUGE_Z_MM = 5.0
_WINDOW_Y_MM = (4.0, 12.0)
_WALL_MM = 5.0  # left beside a window
_SHORTEST_LONG_MM = 160.0
_GRIP_MM = 5.0  # of a blade below the tops of the teeth it passes over


@dataclass(frozen=True, slots=True)
class _Layout:
    """Where things stand along the comb: body, centre distances of tooth pairs, a middle tooth, windows, the bar."""

    body_mm: float
    pairs_mm: tuple[float, ...]
    middle: bool
    windows_mm: tuple[tuple[float, float], ...]
    out_mm: float
    bar_mm: tuple[float, float] | None = None

    def teeth_mm(self) -> list[float]:
        """Centres of the teeth from the left."""
        half, middle = [d / 2 for d in self.pairs_mm], self.body_mm / 2
        return [
            *(middle - d for d in half),
            *([middle] if self.middle else []),
            *(middle + d for d in reversed(half)),
        ]


def plan_comb(axis: str, bounds: Bounds | None = None) -> Piece:
    """Return the size comb along x or y, as long as bed and caliper allow.

    Raises:
        InputError: field `bed_x_mm` or `bed_y_mm`, where none fits.
    """
    bounds = bounds or Bounds()
    bed, turn = bounds.along(axis)
    most = min(bed, bounds.longest_mm)
    body, centre = _body_and_centre(most, turn)
    if centre < 3 * PITCH_MM:
        raise InputError(
            f"bed_{axis}_mm",
            tr("{most:g} mm left along {axis} are too short for a size comb; take one comb at a time, or the rings.",
               most=most, axis=axis.upper()),
        )  # fmt: skip
    pairs, middle = _nested(centre, turn)
    long = largest_whole_mm(turn, body / 2 + PITCH_MM) or body / 2
    long = min(long, body - 5 * _WALL_MM)
    short = min(largest_whole_mm(turn, body - long - 3 * _WALL_MM) or body / 4, body - long - 3 * _WALL_MM)
    free = (body - long - short) / 3
    windows = ((free, free + long), (body - free - short, body - free))
    layout = _Layout(body, pairs, middle, windows, _out_mm(bounds))
    return _comb(axis, layout, tr("Size comb {axis}", axis=axis.upper()))


def plan_half_combs(axis: str, bounds: Bounds) -> Piece:
    """Return two half-combs tied by a bar along x or y, for long beds and long calipers.

    Raises:
        InputError: field `caliper_mm` or `bed_x_mm`, `bed_y_mm`, where it would be no longer than a size comb.
    """
    bed, turn = bounds.along(axis)
    body, centre = _body_and_centre(min(bed, bounds.longest_mm), turn)
    if centre < _SHORTEST_LONG_MM:
        field = "caliper_mm" if bounds.longest_mm < bed else f"bed_{axis}_mm"
        raise InputError(
            field,
            tr("Half-combs start at {least:g} mm between the outer teeth; here {centre:g} mm fit. Take the size comb.",
               least=_SHORTEST_LONG_MM, centre=centre),
        )  # fmt: skip
    pairs = (centre, _step_down(centre, turn), _step_down(_step_down(centre, turn), turn))
    end = (body - pairs[-1]) / 2 + PITCH_MM / 2
    window = end - 2 * _WALL_MM
    windows = ((_WALL_MM, _WALL_MM + window), (body - end + _WALL_MM, body - _WALL_MM))
    name = tr("Half-combs {axis}", axis=axis.upper())
    return _comb(axis, _Layout(body, pairs, False, windows, _out_mm(bounds), (end, body - end)), name)


def _out_mm(bounds: Bounds) -> float:
    """Return how far a tooth stands out, so that the blades grip below the teeth that they pass over."""
    return min(TOOTH_OUT_MM, bounds.reach_mm - _GRIP_MM)


def comb_minds(axis: str, bounds: Bounds, piece: Piece) -> tuple[Words, ...]:
    """Say what to mind about a comb on this drive."""
    outer, inner = (next(g for g in piece.gauges if g.kind == kind).nominal_mm for kind in ("tooth", "notch"))
    return turn_minds(bounds.along(axis)[1], (outer + inner) / 2, axis)


def _body_and_centre(most_mm: float, turn_mm: float) -> tuple[float, float]:
    """Return body length and outer centre distance: whole turns with a shoulder of 10 mm, else 8, else what fits."""
    fitting = [(largest_whole_mm(turn_mm, most_mm - 2 * shoulder), shoulder) for shoulder in (10.0, 8.0)]
    centre, shoulder = max(fitting, key=lambda found: (found[0], found[1]))
    if centre < 3 * PITCH_MM:
        shoulder = 10.0
        centre = float(int(most_mm - 2 * shoulder))
    return centre + 2 * shoulder, centre


def _step_down(distance_mm: float, turn_mm: float) -> float:
    """Return the next shorter centre distance: whole turns where that leaves two pitches, else two pitches less."""
    return largest_whole_mm(turn_mm, distance_mm - 2 * PITCH_MM) or distance_mm - 2 * PITCH_MM


def _nested(centre_mm: float, turn_mm: float) -> tuple[tuple[float, ...], bool]:
    """Return the centre distances of nested pairs, and whether a single tooth stands in the middle."""
    pairs = [centre_mm]
    while (following := _step_down(pairs[-1], turn_mm)) >= PITCH_MM:
        pairs.append(following)
    return tuple(pairs), pairs[-1] >= 2 * PITCH_MM


def _comb(axis: str, layout: _Layout, name: Words) -> Piece:
    teeth, size = layout.teeth_mm(), min(5.0, layout.out_mm)
    body = Prism((_body(layout), *(_window(w) for w in layout.windows_mm)), 0.0, TALL_MM, relief_mm=RELIEF_MM)
    y = DEPTH_MM + layout.out_mm / 2
    marks = [m for i, at in enumerate(teeth) for m in mark(str(i + 1), at, y, TALL_MM, size_mm=size)]
    (_, left), (right, _) = layout.windows_mm
    letter = mark(axis.upper(), (left + right) / 2, BAR_MM / 2, TALL_MM)
    return Piece(name, axis, (body, *marks, *letter), _gauges(axis, layout), turned=axis == "y")


def _gauges(axis: str, layout: _Layout) -> tuple[Gauge, ...]:
    """Return the gauges, long to short, outside jaws first, so that hand and caliper turn over once."""
    teeth, count = layout.teeth_mm(), len(layout.teeth_mm())
    across = DEPTH_MM + layout.out_mm / 2
    outside, inside = [], []
    for i in range(len(layout.pairs_mm)):
        j = count - 1 - i
        outside.append(_teeth(axis, f"outer {i + 1}-{j + 1}", "tooth", across, (teeth[i], -1, i), (teeth[j], +1, j)))
        inside.append(_teeth(axis, f"inner {i + 1}-{j + 1}", "notch", across, (teeth[i], +1, i), (teeth[j], -1, j)))
    if layout.middle:
        i = count // 2
        outside.append(_teeth(axis, f"tooth {i + 1}", "tooth", across, (teeth[i], -1, i), (teeth[i], +1, i)))
    closed = [_closed(axis, "overall", tr("overall length of the bar"), "outside", (0.0, layout.body_mm))]
    for which, window in zip(("window left", "window right"), layout.windows_mm, strict=True):
        inside.append(_closed(axis, which, tr("length of the window"), "closed_hole", window))
    return (*outside, *closed, *inside)


def _teeth(
    axis: str, name: str, kind: str, across: float, left: tuple[float, int, int], right: tuple[float, int, int]
) -> Gauge:
    says = tr("over the outer faces") if kind == "tooth" else tr("between the inner faces")
    (x0, side0, i), (x1, side1, j) = left, right
    first = (x0 + side0 * TOOTH_MM / 2, across, _GAUGE_Z_MM)
    second = (x1 + side1 * TOOTH_MM / 2, across, _GAUGE_Z_MM)
    faces = (f"{axis} tooth {i}{side0:+d}", f"{axis} tooth {j}{side1:+d}")
    return Gauge(f"{name} {axis}", says, kind, axis, first, second, faces)


def _closed(axis: str, name: str, says: Words, kind: str, jaws: tuple[float, float]) -> Gauge:
    first, second = ((x, sum(_WINDOW_Y_MM) / 2, _GAUGE_Z_MM) for x in jaws)
    return Gauge(f"{name} {axis}", says, kind, axis, first, second, (f"{axis} {name} left", f"{axis} {name} right"))


def _window(jaws: tuple[float, float]) -> Outline:
    return box(jaws[0], _WINDOW_Y_MM[0], jaws[1], _WINDOW_Y_MM[1])


def _body(layout: _Layout) -> Outline:
    """Return the outline of body, teeth and bar, anticlockwise from the left end of the plain side."""
    body, half = layout.body_mm, TOOTH_MM / 2
    outline: list[tuple[float, float]] = [(0.0, 0.0), (body, 0.0), (body, DEPTH_MM)]
    tied = layout.bar_mm
    for at in reversed(layout.teeth_mm()):
        if tied and at < tied[0]:
            outline += [(tied[1], DEPTH_MM), (tied[1], BAR_MM), (tied[0], BAR_MM), (tied[0], DEPTH_MM)]
            tied = None
        high = DEPTH_MM + layout.out_mm
        outline += [(at + half, DEPTH_MM), (at + half, high), (at - half, high), (at - half, DEPTH_MM)]
    return (*outline, (0.0, DEPTH_MM))
