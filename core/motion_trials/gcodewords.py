"""The words of a G-code file as columns, one row a line, read by arithmetic on the bytes, a piece at a time.

A word is a letter and a number. In well-formed text each byte that is no digit is a letter, a sign, a decimal point or
a blank, so the places of these bytes bound every number; its digits, eight at a time, are one 64-bit word and become
a number in three multiplications. A piece that is not well-formed goes through a slow reader, line by line: it drops
commands with words in plain text, and names the line that cannot be read.

Reference: ISO 6983-1:2009 (words, modal G functions, comments). Eight digits in three multiplications: Lemire,
Quickly parsing eight digits, 2018; numbers come out as correctly rounded as by Python's float.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.words import tr

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

_KEPT = "GMTXYZEFIJRPS"
_PLACES = np.frombuffer(b"XYZEIJ", np.uint8)
_THREADS = 4
_PIECE = 1 << 19  # bytes: all that is made of them stays in the cache
_MOST_DIGITS = 8
_PAD = b"\n" * _MOST_DIGITS
_POWERS = 10 ** np.arange(_MOST_DIGITS + 1, dtype=np.uint64)
_COMMENT = re.compile(rb"[ \t]*(?:;[^\n]*|\([^)\n]*\)|\*\d+[ \t]*(?=\n|$))")
_WORD = re.compile(r"([A-Za-z])\s*([-+]?(?:\d+\.?\d*|\.\d+))")
_LINE = re.compile(r"(?:\s*[A-Za-z]\s*[-+]?(?:\d+\.?\d*|\.\d+))*\s*")
_MOVES = re.compile(r"\s*(?:[Nn]\d+\s*)?(?:[Gg]0*[0-3]\b|[XYZEFIJxyzefij][-+.\d])")
_LARGEST = 1e8


@dataclass(frozen=True, slots=True, eq=False)
class Words:
    """The words of a file.

    Attributes:
        lines: number of lines.
        columns: by letter (lines,) the last value of that letter in each line, nan where it has none.
        g_line: (m,) line of each G word, in the order of the file; a line may have several.
        g_value: (m,) its number.
        places: (lines,) whether a line names a place: one of X, Y, Z, E, I, J.
    """

    lines: int
    columns: dict[str, Floats]
    g_line: Ints
    g_value: Floats
    places: NDArray[np.bool_]

    def column(self, letter: str) -> Floats | None:
        """Return the values of a letter by line, None where the file never uses it."""
        return self.columns.get(letter)


def read_words(text: bytes, step: Callable[[float], None] = lambda part: None) -> Words:
    """Read the words of a G-code file.

    Args:
        text: the file as it is; comments in parentheses or after a semicolon, checksums and line numbers are passed
            over, as are commands that carry plain text.
        step: is called after each piece with the part that is read; it may raise.

    Raises:
        InputError: field `file`, row the line counted from 0: no text, or a move that cannot be read.
    """
    if b"\0" in text:
        raise InputError("file", tr("This file is not text; choose a file of G-code."))
    if b"\r" in text:
        text = text.replace(b"\r\n", b"\n").replace(b"\r", b"\n")
    text = text if text.endswith(b"\n") else text + b"\n"
    lines = text.count(b"\n")
    columns: dict[str, Floats] = {}
    places = np.zeros(lines, dtype=bool)
    g_lines, g_values = [], []
    pieces = _pieces(text)
    with ThreadPoolExecutor(_THREADS) as pool:  # arithmetic on arrays runs side by side
        read = pool.map(lambda piece: _piece(text[piece[0] : piece[1]], piece[2]), pieces)
        try:
            for number, (line, letter, value) in enumerate(read, start=1):
                step(number / len(pieces))
                _sort_in(columns, lines, line, letter, value)
                places[line[np.isin(letter, _PLACES)]] = True
                g_lines.append(line[letter == ord("G")])
                g_values.append(value[letter == ord("G")])
        finally:
            pool.shutdown(cancel_futures=True)  # pieces that nobody waits for any more
    return Words(lines, columns, np.concatenate(g_lines), np.concatenate(g_values), places)


def _sort_in(columns: dict[str, Floats], lines: int, line: Ints, letter: NDArray[np.uint8], value: Floats) -> None:
    for code in _KEPT:
        chosen = np.flatnonzero(letter == ord(code))
        if chosen.size:
            if code not in columns:
                columns[code] = np.full(lines, np.nan)
            columns[code][line[chosen]] = value[chosen]


def _pieces(text: bytes) -> list[tuple[int, int, int]]:
    """Return where pieces of whole lines begin and end, and the number of their first line."""
    found, at, first = [], 0, 0
    while at < len(text):
        end = text.rfind(b"\n", at, at + _PIECE) + 1 or text.find(b"\n", at) + 1
        found.append((at, end, first))
        first += text.count(b"\n", at, end)
        at = end
    return found


def _piece(text: bytes, first: int) -> tuple[Ints, NDArray[np.uint8], Floats]:
    """Return line, letter and value of each word of whole lines; no comment goes on in the next line."""
    if any(mark in text for mark in (b";", b"(", b"*")):
        text = _COMMENT.sub(b"", text)
    found = _by_bytes(text, first)
    if found is None:
        found = _by_bytes(_tidied(text, first), first)
        assert found is not None  # the slow reader writes well-formed text only
    return found


def _by_bytes(text: bytes, first: int) -> tuple[Ints, NDArray[np.uint8], Floats] | None:
    """Return the words, None where the text is not well-formed."""
    padded = _PAD + text + b"\n\n\n"  # a last letter may look three bounds ahead
    byte = np.frombuffer(padded, np.uint8)
    bound = np.flatnonzero((byte - np.uint8(48)) > 9)
    mark = byte[bound]
    blank, letter = mark <= 32, mark > 64
    place = np.flatnonzero(letter)
    after = place + 1
    sign = (mark[after] == 45) | (mark[after] == 43)
    negative = mark[after] == 45
    after += sign
    start, stop = bound[after - 1] + 1, bound[after]
    dot = mark[after] == 46
    last = after + dot
    end = bound[last]
    whole, part = stop - start, np.where(dot, end - stop - 1, 0)
    used = int(np.count_nonzero(sign)) + int(np.count_nonzero(dot))
    stray = np.count_nonzero(blank) + place.size + used != mark.size or np.any(byte[bound[blank][:-1] + 1] - 48 <= 9)
    lengths_fit = bool(np.all(whole + part > 0) and np.all(whole <= _MOST_DIGITS) and np.all(part <= _MOST_DIGITS))
    ended = mark[last]
    if stray or not lengths_fit or not bool(np.all((ended <= 32) | (ended > 64))):
        return None
    eights = np.ndarray((byte.size - 7,), "<u8", padded, strides=(1,))
    scale = _POWERS[part]
    value = (_digits(eights[stop - 8], whole) * scale + _digits(eights[end - 8], part)) / scale
    np.negative(value, out=value, where=negative)
    line = np.cumsum(mark == 10)[place] + (first - len(_PAD))
    return line, mark[place] & np.uint8(0xDF), value


def _digits(eight: NDArray[np.uint64], length: Ints) -> NDArray[np.uint64]:
    """Return the number that the last `length` (0 to 8) of eight bytes spell; the first byte is the lowest."""
    shift = (64 - 8 * np.maximum(length, 1)).astype(np.uint64)
    n = (eight >> shift) << shift
    n &= np.uint64(0x0F0F0F0F0F0F0F0F)
    n = (n * np.uint64(2561)) >> np.uint64(8)
    n &= np.uint64(0x00FF00FF00FF00FF)
    n = (n * np.uint64(6553601)) >> np.uint64(16)
    n &= np.uint64(0x0000FFFF0000FFFF)
    n = (n * np.uint64(42949672960001)) >> np.uint64(32)
    n[length == 0] = 0
    return n


def _tidied(text: bytes, first: int) -> bytes:
    """Return the lines as well-formed words, empty where a line is a command in plain text."""
    tidy = []
    for number, line in enumerate(text.decode("utf-8", "replace").split("\n")[:-1], start=first):
        if _LINE.fullmatch(line):
            tidy.append(" ".join(letter + _shortened(value, number) for letter, value in _WORD.findall(line)))
        elif re.match(r"\s*(?:[Nn]\d+\s*)?[Gg]28\b", line):  # letters alone name the axes
            tidy.append("G28" + "".join(f" {axis}0" for axis in "XYZ" if axis in line.upper().partition("28")[2]))
        elif _MOVES.match(line):
            says = tr("Line {line}: “{text}” cannot be read; mend this line.", line=number + 1, text=line.strip()[:40])
            raise InputError("file", says, number)
        else:
            tidy.append("")
    return ("\n".join(tidy) + "\n").encode()


def _shortened(number: str, line: int) -> str:
    """Write a number with no more digits than the quick reader takes."""
    if not abs(float(number)) < _LARGEST:
        says = tr("Line {line}: {number} is larger than any word may be; mend this line.", line=line + 1, number=number)
        raise InputError("file", says, line)
    return f"{float(number):.8f}"
