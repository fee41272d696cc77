"""The moves of a toolpath as lines of a program.

Long runs of beads at one speed and height, which make a file long, are written many at once; all other moves, and those
with which a layer begins, line by line with just the words they need. Extrusion is relative, each move by itself, or
absolute, counted from each layer. What is rounded is the sum, so that nothing is lost.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.pieces.toolpath import Moves
from core.pieces.toolpathdigits import Column, move_text, word_text
from core.words import tr

_PLACES, _FILAMENT_PLACES = 3, 5
_FASTEST_MM_S = 1e5  # no axis comes near
_BLOCK = 16384  # moves: what is worked on stays in the processor's cache
_FAN_MOST = 255

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Style:
    """How moves are written: extrusion, the fan from the second layer on, the height that the first one starts from."""

    relative: bool
    fan_percent: float
    from_z_mm: float


def moves_text(moves: Moves, style: Style) -> Iterator[bytes]:
    """Return the moves as text: runs of one speed and height in one go, all others line by line.

    Raises:
        InputError: field `toolpath`, for a place, a feed or a speed that cannot be.
    """
    begins = _layer_begins(moves)
    says = dict(zip(begins.tolist(), _layer_lines(moves, begins, style), strict=True))
    blocks = _rounded_feed(moves.filament_mm, begins, style.relative)
    for at, fed in zip(range(0, moves.x_mm.size, _BLOCK), blocks, strict=True):
        block = slice(at, at + _BLOCK)
        x, y = plain_places(moves.x_mm[block]), plain_places(moves.y_mm[block])
        plain = _plain_moves(moves, begins, at)
        edges = np.flatnonzero(np.diff(plain, prepend=not plain[0])).tolist()
        runs = [slice(start, end) for start, end in pairwise([*edges, plain.size])]
        columns = [Column("X", x, _PLACES), Column("Y", y, _PLACES), Column("E", fed, _FILAMENT_PLACES)]
        quick = iter(move_text(columns, [run for run in runs if plain[run.start]]))
        for run in runs:
            if plain[run.start]:
                yield next(quick)
            else:
                for row in range(run.start, run.stop):
                    yield f"{says.get(at + row, '')}{_one_line(moves, at, columns, row, style.from_z_mm)}".encode()


def plain_places(place_mm: Floats) -> Floats:
    """Return places without a minus before a zero."""
    if place_mm.min() >= 0:
        return place_mm + 0.0
    return np.where(np.abs(place_mm) < 0.5 * 10.0**-_PLACES, 0.0, place_mm)


def _layer_begins(moves: Moves) -> NDArray[np.int64]:
    """Return the move with which each layer begins: the one after the last bead of the layer below."""
    begins, below, last = [0], math.inf, 0
    changes = np.flatnonzero(moves.z_mm[1:] != moves.z_mm[:-1]) + 1
    for start, end in pairwise([0, *changes.tolist(), moves.z_mm.size]):
        laid = np.flatnonzero(moves.width_mm[start:end] > 0)
        if not laid.size:
            continue
        height = float(moves.z_mm[start])
        if height > below:
            begins.append(last + 1)
        below, last = height, start + int(laid[-1])
    return np.array(begins)


def _rounded_feed(filament_mm: Floats, begins: NDArray[np.int64], relative: bool) -> Iterator[Floats]:
    """Return what is written for E, block by block: by move, or counted from the layer's begin.

    What is rounded is the sum, so that nothing is lost.

    Raises:
        InputError: field `toolpath`, for what is no number.
    """
    scale = 10.0**_FILAMENT_PLACES
    exact = last = base = 0.0
    for at in range(0, filament_mm.size, _BLOCK):
        total = np.cumsum(filament_mm[at : at + _BLOCK])
        total += exact
        exact = float(total[-1])
        if not math.isfinite(exact):
            raise InputError("toolpath", tr("A move asks for filament that is no number; check bead and filament."))
        total *= scale
        np.rint(total, out=total)
        before, last = last, float(total[-1])
        if relative:
            yield np.diff(total, prepend=before) / scale
            continue
        first, end = np.searchsorted(begins, (at, at + _BLOCK)).tolist()
        from_layer = begins[first:end] - at
        bases = np.concatenate(([base], np.concatenate(([before], total))[from_layer]))
        base = float(bases[-1])
        yield (total - np.repeat(bases, np.diff(np.concatenate(([0], from_layer, [total.size]))))) / scale


def _plain_moves(moves: Moves, begins: NDArray[np.int64], at: int) -> NDArray[np.bool_]:
    """Return which moves of a block lay a bead at the speed and height of the move before them."""
    block, from_before = slice(at, at + _BLOCK), slice(max(at - 1, 0), at + _BLOCK)
    speed, z = moves.speed_mm_s[from_before], moves.z_mm[from_before]
    plain = (moves.width_mm[block] > 0) & (moves.filament_mm[block] != 0)
    plain[0 if at else 1 :] &= (speed[1:] == speed[:-1]) & (z[1:] == z[:-1])
    first, end = np.searchsorted(begins, (at, at + _BLOCK)).tolist()
    plain[begins[first:end] - at] = False
    return np.asarray(plain)


def _layer_lines(moves: Moves, begins: NDArray[np.int64], style: Style) -> list[str]:
    """Return what stands before each layer."""
    count = begins.size
    laid = np.flatnonzero(moves.width_mm > 0)
    if not laid.size:
        return [""] * count
    heights = moves.z_mm[laid[np.searchsorted(laid, begins)]]
    reset = "" if style.relative else "G92 E0\n"
    lines = [f"; layer {number} of {count}, Z {z:.3f}\n{reset if number > 1 else ''}"
             for number, z in enumerate(heights.tolist(), start=1)]  # fmt: skip
    if style.fan_percent > 0 and count > 1:
        lines[1] += f"M106 S{round(_FAN_MOST * style.fan_percent / 100)}\n"
    return lines


def _one_line(moves: Moves, at: int, columns: Sequence[Column], row: int, from_z_mm: float) -> str:
    """Return one move of the block that begins at `at`, with just the words it needs."""
    number = at + row
    z, fed = float(moves.z_mm[number]), moves.filament_mm[number] != 0
    words = []
    if number == 0 or any(place[number] != place[number - 1] for place in (moves.x_mm, moves.y_mm)):
        words += [word_text(column.letter, float(column.values[row]), _PLACES) for column in columns[:2]]
    if z != (float(moves.z_mm[number - 1]) if number else from_z_mm):
        words.append(word_text("Z", z, _PLACES))
    if fed:
        words.append(word_text("E", float(columns[2].values[row]), _FILAMENT_PLACES))
    command = "G1" if fed or moves.width_mm[number] > 0 else "G0"
    return f"{command} {' '.join(words)} F{rate_text(float(moves.speed_mm_s[number]))}\n"


def rate_text(speed_mm_s: float) -> str:
    """Return F in mm/min to two decimals, rounded down so that no ceiling is passed.

    Raises:
        InputError: field `toolpath`, for a speed that no axis has.
    """
    if not 0 < speed_mm_s <= _FASTEST_MM_S:
        says = tr("A move of {value:g} mm/s cannot be: above 0, at most {most:g}. Check the speeds.",
                  value=speed_mm_s, most=_FASTEST_MM_S)  # fmt: skip
        raise InputError("toolpath", says)
    return f"{max(math.floor(speed_mm_s * 6000.0 + 1e-6), 1) / 100.0:.2f}".rstrip("0").rstrip(".")
