"""Lines of moves as text, many at once: digit for digit what a format string writes, without a call for each number.

    G1   X12.345  Y123.456  E0.03385        f"G1 {'X…':>9} {'Y…':>9} {'E…':>9}", numbers as f"{value:.3f}"

Every line has the same length, so that the points stand below one another and nothing has to be moved: spaces between
words are free (ISO 6983-1, RS-274). A number is looked up in two tables: a head (letter, sign, digits before the point
and, of many decimals, the first ones) and a tail (the last three or four). What does not fit is written one by one.

Rounding is that of Python: to the nearest decimal of the exact binary value, ties to even. v*10^d is itself rounded;
where it comes out half-way, the part lost decides.

Reference: Dekker, Numer. Math. 18 (1971) 224 (exact product of two floating-point numbers, with Veltkamp's split).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.reach import finite_out
from core.words import tr

WIDTH = 9  # characters of a word with its number
_COMMAND = "G1"
_FEW = 40  # lines: below, tables gain nothing
_HEAD, _TAIL = 8, 4  # bytes; a head reaches two bytes into the tail before it, or over the command
_DIGITS = 4  # of a head, with its point
_SPLIT = 2.0**27 + 1.0

Floats = NDArray[np.float64]
Table = NDArray[Any]


@dataclass(frozen=True, slots=True, eq=False)
class Column:
    """One number of each line: its letter, its values (n,) and how many decimals (3 to 6) are written."""

    letter: str
    values: Floats
    decimals: int


def move_text(columns: Sequence[Column], runs: Sequence[slice]) -> list[bytes]:
    """Return the text of runs of lines `G1` with a number of each column.

    Raises:
        InputError: field `toolpath`, for a number that is not finite.
    """
    if sum(run.stop - run.start for run in runs) < _FEW:
        return [_one_by_one(columns, run) for run in runs]
    leads = [f"{_COMMAND} ", *["   "] * (len(columns) - 1)]
    pairs = [_looked_up(lead, column) for lead, column in zip(leads, columns, strict=True)]
    fitting = [pair for pair in pairs if pair is not None]
    if len(fitting) < len(pairs):
        return [_one_by_one(columns, run) for run in runs]
    lines = _side_by_side(fitting)
    return [lines[run].tobytes() for run in runs]


def word_text(letter: str, value: float, decimals: int) -> str:
    """Return one word as it stands in the lines."""
    return f"{letter}{value:.{decimals}f}".rjust(WIDTH)


@finite_out("value")
def scaled_whole(value: Floats, decimals: int) -> Floats:
    """Return value*10^decimals as whole numbers, rounded as Python rounds the exact values, none of them negative."""
    scale = 10.0**decimals
    product = value * scale
    whole = np.rint(product)
    below = product - whole  # half-way: rint went down to the even one, or up
    half = np.abs(below) == 0.5
    if half.any():
        lost = _lost(value[half], scale, product[half])
        up, down = (below[half] > 0) & (lost > 0), (below[half] < 0) & (lost < 0)
        whole[half] += np.where(up, 1.0, np.where(down, -1.0, 0.0))
    return whole


def _lost(first: Floats, second: float, product: Floats) -> Floats:
    """Return first*second - product, exactly."""
    high = first * _SPLIT
    high = high - (high - first)
    low = first - high
    high2 = second * _SPLIT
    high2 = high2 - (high2 - second)
    low2 = second - high2
    return np.asarray(low * low2 - (((product - high * high2) - low * high2) - high * low2))


def _one_by_one(columns: Sequence[Column], run: slice) -> bytes:
    for column in columns:
        if not np.isfinite(column.values[run]).all():
            raise InputError("toolpath", tr("A move asks for a place that is no number; check the sizes."))
    words = [[word_text(column.letter, value, column.decimals) for value in column.values[run].tolist()]
             for column in columns]  # fmt: skip
    return "".join(f"{_COMMAND} {' '.join(line)}\n" for line in zip(*words, strict=True)).encode()


def _side_by_side(pairs: Sequence[tuple[Table, Table]]) -> Table:
    """Write heads and tails at their places; the heads first, for they reach into the tails before them."""
    size = len(_COMMAND) + len(pairs) * (1 + WIDTH) + 1
    lines = np.empty((pairs[0][0].size, size), np.uint8)
    ends = [len(_COMMAND) + number * (1 + WIDTH) for number in range(1, len(pairs) + 1)]
    for (head, _), end in zip(pairs, ends, strict=True):
        _cells(lines, end - _TAIL - _HEAD, np.uint64)[:] = head
    for (_, tail), end in zip(pairs, ends, strict=True):
        _cells(lines, end - _TAIL, np.uint32)[:] = tail
    lines[:, -1] = ord("\n")
    return lines


def _cells(lines: Table, at: int, kind: type[np.generic]) -> Table:
    """Return the cells that begin at byte `at` of each line."""
    return np.ndarray(lines.shape[:1], kind, lines, at, lines.strides[:1])


def _looked_up(lead: str, column: Column) -> tuple[Table, Table] | None:
    """Return head and tail of each number; None where one is too long for its head, or no number."""
    in_tail = 3 if column.decimals == 3 else 4
    most, most_negative = _capacity(column.decimals)
    if not np.isfinite(column.values).all():
        return None
    negative = np.signbit(column.values)
    signed = bool(negative.any())
    with np.errstate(invalid="ignore", over="ignore"):
        whole = scaled_whole(np.abs(column.values) if signed else column.values, column.decimals)
    if not whole.max() < most * 10.0**in_tail:
        return None
    number = whole.astype(np.int32)
    head = number // 10**in_tail
    tail = number - head * 10**in_tail
    if signed:
        if head[negative].max() >= most_negative:
            return None
        head += most * negative
    return np.take(_heads(lead, column.letter, column.decimals), head), np.take(_tails(in_tail), tail)


def _capacity(decimals: int) -> tuple[int, int]:
    """Return below which number a head, counted in its last digit, fits: without and with a minus."""
    digits = _DIGITS if decimals == 3 else _DIGITS - 1
    in_head = max(decimals - 4, 0)
    return int(10**digits), int(10 ** (digits - 1)) if digits - 1 > in_head else 0


@cache
def _heads(lead: str, letter: str, decimals: int) -> Table:
    """Return the heads without a minus, then those with one; each begins with the three letters before its word."""
    point, in_head = "." if decimals > 3 else "", max(decimals - 4, 0)
    texts = []
    for sign, most in zip(("", "-"), _capacity(decimals), strict=True):
        for number in range(most):
            digits = str(number).rjust(in_head + 1, "0")
            texts.append(f"{letter}{sign}{digits[: len(digits) - in_head]}{point}{digits[len(digits) - in_head :]}")
    return np.frombuffer("".join(lead + text.rjust(_HEAD - len(lead)) for text in texts).encode(), np.uint64)


@cache
def _tails(decimals: int) -> Table:
    """Return the last decimals of a number, with the point where there are three."""
    point = "." if decimals == 3 else ""
    return np.frombuffer("".join(f"{point}{n:0{decimals}d}" for n in range(10**decimals)).encode(), np.uint32)
