"""Raised digits and axis letters of plain strokes, our own, two beads wide: read by eye and by finger.

A sign stands on a grid of two by four squares; a stroke runs from one crossing to another. Digits 0 to 9,
A to I, X and Y.
"""

from __future__ import annotations

import math

from core.pieces.piece import Outline, Prism

RAISED_MM = 0.6
_WIDE, _HIGH = 2, 4
_LEFT, _RIGHT = ((0, 0), (0, 4)), ((2, 0), (2, 4))
_UP_LEFT, _UP_RIGHT, _LOW_LEFT, _LOW_RIGHT = ((0, 2), (0, 4)), ((2, 2), (2, 4)), ((0, 0), (0, 2)), ((2, 0), (2, 2))
_TOP, _MIDDLE, _FOOT = ((0, 4), (2, 4)), ((0, 2), (2, 2)), ((0, 0), (2, 0))
_STROKES: dict[str, tuple[tuple[tuple[int, int], tuple[int, int]], ...]] = {
    "0": (_TOP, _FOOT, _LEFT, _RIGHT),
    "1": (((1, 0), (1, 4)), ((0, 4), (1, 4)), _FOOT),
    "2": (_TOP, _UP_RIGHT, _MIDDLE, _LOW_LEFT, _FOOT),
    "3": (_TOP, _RIGHT, _MIDDLE, _FOOT),
    "4": (_UP_LEFT, _MIDDLE, _RIGHT),
    "5": (_TOP, _UP_LEFT, _MIDDLE, _LOW_RIGHT, _FOOT),
    "6": (_TOP, _LEFT, _MIDDLE, _LOW_RIGHT, _FOOT),
    "7": (_TOP, _RIGHT),
    "8": (_TOP, _MIDDLE, _FOOT, _LEFT, _RIGHT),
    "9": (_TOP, _UP_LEFT, _MIDDLE, _RIGHT, _FOOT),
    "A": (_TOP, _MIDDLE, _LEFT, _RIGHT),
    "B": (_LEFT, _MIDDLE, _LOW_RIGHT, _FOOT),  # small ones: large ones look like 8 and 0
    "C": (_TOP, _FOOT, _LEFT),
    "D": (_RIGHT, _MIDDLE, _LOW_LEFT, _FOOT),
    "E": (_TOP, _MIDDLE, _FOOT, _LEFT),
    "F": (_TOP, _MIDDLE, _LEFT),
    "G": (_TOP, _FOOT, _LEFT, _LOW_RIGHT),
    "H": (_MIDDLE, _LEFT, _RIGHT),
    "I": (((1, 0), (1, 4)),),
    "X": (((0, 0), (2, 4)), ((0, 4), (2, 0))),
    "Y": (((0, 4), (1, 2)), ((2, 4), (1, 2)), ((1, 0), (1, 2))),
}


def mark(text: str, x_mm: float, y_mm: float, low_mm: float, *, size_mm: float = 5.0) -> tuple[Prism, ...]:
    """Return the signs of a text, centred at (x, y), raised above a face at height `low_mm`.

    Args:
        text: digits, A to I, X and Y.
        x_mm: centre, along.
        y_mm: centre, across.
        low_mm: height of the face.
        size_mm: height of a sign, strokes included.
    """
    stroke = size_mm / 6.0
    unit = (size_mm - stroke) / _HIGH
    step = _WIDE * unit + 2.5 * stroke
    left = x_mm - ((len(text) - 1) * step + _WIDE * unit) / 2
    foot = y_mm - _HIGH * unit / 2
    bars = [
        _bar((left + i * step + a[0] * unit, foot + a[1] * unit), (left + i * step + b[0] * unit, foot + b[1] * unit),
             stroke)
        for i, sign in enumerate(text)
        for a, b in _STROKES[sign]
    ]  # fmt: skip
    return tuple(Prism((outline,), low_mm, low_mm + RAISED_MM) for outline in bars)


def _bar(start: tuple[float, float], end: tuple[float, float], stroke: float) -> Outline:
    """Return a stroke with square ends, anticlockwise."""
    length = math.dist(start, end)
    along = ((end[0] - start[0]) / length * stroke / 2, (end[1] - start[1]) / length * stroke / 2)
    across = (-along[1], along[0])
    corners = ((start, -1, -1), (end, 1, -1), (end, 1, 1), (start, -1, 1))
    return tuple((p[0] + i * along[0] + j * across[0], p[1] + i * along[1] + j * across[1]) for p, i, j in corners)
