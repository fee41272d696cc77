"""How each direct trial is drawn from what it asks: strokes, and the parts that its picture names.

Reference: plane geometry. Distances: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from core.pieces.toolpath import Part, PathBead, Stroke
from core.pieces.toolpathlines import (
    APART_MM,
    feed_strokes,
    ladder_strokes,
    lag_strokes,
    pen_strokes,
    spread,
    strand_places_mm,
    strand_strokes,
)
from core.pieces.toolpathsolids import box_strokes, layer_heights_mm, pad_strokes
from core.words import Words, tr

_PADS_A_ROW = 5
_PADS_APART_MM = (6.0, 12.0)  # along a row and between the rows, where the ticks lie
_BANDS_APART_MM = 7.0  # of their names in the picture
_PEN_MM = 0.5
_BESIDE_MM = 2.0
_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


@dataclass(frozen=True, slots=True)
class Setup:
    """What all trials are laid with.

    Attributes:
        first_mm_s: highest speed of the first layer of what stands up.
        middle_mm: where the middle of the piece stands.
        ladder_ratio: changes of the flow factor of the pads, in the order of their letters.
    """

    bead: PathBead
    filament_mm: float
    speed_mm_s: float
    first_mm_s: float
    middle_mm: tuple[float, float]
    ladder_ratio: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Drawn:
    """A trial as strokes with its named parts."""

    strokes: list[Stroke]
    parts: tuple[Part, ...]


def _speeds(setup: Setup, layers: int) -> list[float]:
    """Return the speed of each layer: the first one slow, so that it holds."""
    return [min(setup.first_mm_s, setup.speed_mm_s), *[setup.speed_mm_s] * (layers - 1)]


def draw_box(values: Mapping[str, float], setup: Setup) -> Drawn:
    """Draw a box without bottom and top."""
    layers = layer_heights_mm(values["high_mm"], setup.bead).size
    strokes = box_strokes(values["side_mm"], values["high_mm"], int(values["beads"]), setup.bead, setup.middle_mm,
                          _speeds(setup, layers))  # fmt: skip
    return Drawn(strokes, (Part(tr("box"), setup.middle_mm),))


def draw_ringing(values: Mapping[str, float], setup: Setup) -> Drawn:
    """Draw a box of one bead; from band to band it is laid faster by the same factor."""
    heights, bands = layer_heights_mm(values["high_mm"], setup.bead), int(values["bands"])
    speeds = np.geomspace(values["slow_mm_s"], values["fast_mm_s"], bands)
    band = np.minimum(np.arange(heights.size) * bands // heights.size, bands - 1)
    by_layer = [float(speed) for speed in speeds[band]]
    by_layer[0] = min(by_layer[0], setup.first_mm_s)
    strokes = box_strokes(values["side_mm"], values["high_mm"], 1, setup.bead, setup.middle_mm, by_layer)
    named = [replace(stroke, part=int(number) + 1) for stroke, number in zip(strokes, band, strict=True)]
    x, y = setup.middle_mm
    names = [tr("band {number}: {speed:.0f} mm/s", number=number, speed=float(speed))
             for number, speed in enumerate(speeds, start=1)]  # fmt: skip
    places = spread(bands, _BANDS_APART_MM)
    return Drawn(named, tuple(Part(name, (x, y + float(p))) for name, p in zip(names, places, strict=True)))


def draw_pads(values: Mapping[str, float], setup: Setup) -> Drawn:
    """Draw pads in rows of five, each with its letter and its own flow; layer by layer over all of them."""
    count, layers = len(setup.ladder_ratio), int(values["layers"])
    along, across = (values["size_mm"] + apart for apart in _PADS_APART_MM)
    rows = [min(_PADS_A_ROW, count - first) for first in range(0, count, _PADS_A_ROW)]
    middles = [
        (float(setup.middle_mm[0] + x), float(setup.middle_mm[1] + y))
        for y, pads_here in zip(spread(len(rows), across), rows, strict=True)
        for x in spread(pads_here, along)
    ]
    pads = [
        pad_strokes(values["size_mm"], layers, setup.bead, middle, _speeds(setup, layers), number, factor=1.0 + change)
        for number, (middle, change) in enumerate(zip(middles, setup.ladder_ratio, strict=True), start=1)
    ]
    strokes = [stroke for layer in range(layers) for pad in pads for stroke in pad[layer]]
    return Drawn(strokes, tuple(Part(tr("Pad {letter}", letter=_LETTERS[number]), middle)
                                for number, middle in enumerate(middles)))  # fmt: skip


def draw_ladder(values: Mapping[str, float], setup: Setup) -> Drawn:
    """Draw lines whose flow rises evenly about the factor in force."""
    span, count = values["span_percent"] / 100.0, int(values["lines"])
    factors = 1.0 + np.linspace(-span, span, count)
    strokes = ladder_strokes(values["length_mm"], factors.tolist(), setup.bead, setup.middle_mm, setup.speed_mm_s)
    names = [tr("line {number}: {change:+.1f} %", number=number, change=100.0 * (float(factor) - 1.0))
             for number, factor in enumerate(factors, start=1)]  # fmt: skip
    return Drawn(strokes, _line_parts(names, setup, values["length_mm"]))


def draw_lag(values: Mapping[str, float], setup: Setup) -> Drawn:
    """Draw lines fed ahead for evenly rising lags, none for the first."""
    lags = np.linspace(0.0, values["lag_s"], int(values["lines"]))
    speeds = (values["slow_mm_s"], values["fast_mm_s"])
    strokes = lag_strokes(values["length_mm"], lags.tolist(), setup.bead, setup.middle_mm, speeds,
                          values["acceleration_mm_s2"])  # fmt: skip
    names = [tr("line {number}: {lag:.3f} s", number=number, lag=float(lag))
             for number, lag in enumerate(lags, start=1)]  # fmt: skip
    return Drawn(strokes, _line_parts(names, setup, values["length_mm"]))


def _line_parts(names: Sequence[Words], setup: Setup, length_mm: float) -> tuple[Part, ...]:
    x, y = setup.middle_mm
    beside, places = x + length_mm / 2 + _BESIDE_MM, spread(len(names), APART_MM)
    return tuple(Part(name, (beside, y + float(p)), beside=True) for name, p in zip(names, places, strict=True))


def draw_strands(values: Mapping[str, float], setup: Setup) -> Drawn:
    """Draw strands at evenly rising rates."""
    rates = np.linspace(values["slow_mm3_s"], values["fast_mm3_s"], int(values["strands"]))
    strokes = strand_strokes(values["length_mm"], rates.tolist(), setup.filament_mm, setup.middle_mm, values["pause_s"])
    places = strand_places_mm(rates.size, setup.middle_mm)[1:]
    names = [tr("{number}: {rate:.1f} mm³/s", number=number, rate=float(rate))
             for number, rate in enumerate(rates, start=1)]  # fmt: skip
    return Drawn(strokes, tuple(Part(name, place) for name, place in zip(names, places, strict=True)))


def draw_feed(values: Mapping[str, float], setup: Setup) -> Drawn:
    """Draw one long feed."""
    strokes = feed_strokes(values["length_mm"], values["feed_mm_s"], setup.middle_mm)
    return Drawn(strokes, (Part(tr("feed of {length:g} mm", length=values["length_mm"]), setup.middle_mm),))


def draw_pen(values: Mapping[str, float], setup: Setup) -> Drawn:
    """Draw a rectangle by pen."""
    sides = (values["side_x_mm"], values["side_y_mm"])
    strokes = pen_strokes(sides, values["pen_mm"], _PEN_MM, setup.middle_mm, values["draw_mm_s"])
    names = (tr("front"), tr("back"), tr("left"), tr("right"))
    places = [tuple(map(float, stroke.points_mm.mean(axis=0))) for stroke in strokes]
    return Drawn(strokes, tuple(Part(name, (x, y)) for name, (x, y) in zip(names, places, strict=True)))


