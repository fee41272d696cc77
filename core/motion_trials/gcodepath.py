"""The path of a G-code file: its moves one after the other, with lengths, directions, filament and wanted speeds.

Read: G0, G1 straight; G2, G3 arcs in the XY plane by I and J or by R; G4 dwell (P in ms, S in s); G20, G21 units;
G28 home; G90, G91, M82, M83 absolute and relative; G92 sets positions. All other functions move nothing that is timed.

Symbols: c commanded position of an axis. An absolute word sets c, a relative one adds to it, G92 sets it without a
move: c = value last set + sum of the relative words since, so that no line waits for the one before it.

Reference: ISO 6983-1:2009 (G functions); G92 by the general usage of the trade, M82, M83 and P in ms likewise.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.motion_trials.arcs import arcs_of
from core.motion_trials.gcodewords import Floats, Ints, Words, read_words
from core.quantity import MM_PER_INCH
from core.words import tr

Bools = NDArray[np.bool_]
_WORDS_RATIO = 0.6  # of the time to read a file that goes by until its words are columns
_NO_PATH = 1e-9  # mm: shorter is no move
_LAST_MOTION = 3.0  # G0 to G3 move; each of the others counts wherever it stands
_UNREAD = {5: "G5", 6: "G6", 18: "G18", 19: "G19"}  # other curves, and arcs in other planes


@dataclass(frozen=True, slots=True, eq=False)
class Turns:
    """Unit directions (n,) at one end of every move."""

    x: Floats
    y: Floats
    z: Floats


@dataclass(frozen=True, eq=False)
class Path:
    """The moves of a file, n of them.

    Attributes:
        length_mm: (n,) of the nozzle's way; of the filament where only that moves.
        filament_mm: (n,) filament fed, below zero where it is drawn back.
        wanted_mm_s: (n,) speed asked for; infinite where the file has not said one.
        begin: directions where the moves begin.
        end: directions where they end; other than `begin` for arcs.
        radius_mm: (n,) of arcs, infinite for straight moves.
        feeds_only: (n,) only filament moves.
        stop_before: (n,) the machine stands still before the move: a dwell, or homing.
        line: (n,) line in the file, counted from 0.
        dwell_s: sum of all dwells.
    """

    length_mm: Floats
    filament_mm: Floats
    wanted_mm_s: Floats
    begin: Turns
    end: Turns
    radius_mm: Floats
    feeds_only: Bools
    stop_before: Bools
    line: Ints
    dwell_s: float

    @property
    def moves(self) -> int:
        """How many moves."""
        return int(self.length_mm.size)

    @cached_property
    def prints(self) -> Bools:
        """(n,) whether a move lays filament down."""
        return (self.filament_mm > 0) & ~self.feeds_only

    @cached_property
    def turn_cosine(self) -> Floats:
        """(n - 1,) cosine of the change of direction between one move and the next: 1 straight on, -1 back."""
        a, b = self.end, self.begin
        return np.asarray(a.x[:-1] * b.x[1:] + a.y[:-1] * b.y[1:] + a.z[:-1] * b.z[1:])


def read_path(text: bytes, step: Callable[[float], None] = lambda part: None) -> Path:
    """Read the path of a G-code file.

    Args:
        text: the file as it is.
        step: is called now and then with the part that is done; it may raise.

    Raises:
        InputError: field `file`, with the line as row where it is one: no move, a line that cannot be read, an arc
            that cannot be, a speed that is not above zero, or a curve that is not timed here.
    """
    words = read_words(text, lambda part: step(_WORDS_RATIO * part))
    kinds = _kinds(words)
    lines = np.flatnonzero(kinds.moves | kinds.sets | kinds.homes)
    deltas = {}
    for number, axis in enumerate("XYZE"):
        step(_WORDS_RATIO + 0.06 * number)
        deltas[axis] = _deltas(words, kinds, axis, lines)
    step(0.85)
    begin, end, length, radius = _ways(words, kinds, lines, deltas)
    step(0.95)
    filament = deltas["E"]
    feeds_only = (length <= _NO_PATH) & (np.abs(filament) > _NO_PATH)
    length = np.where(feeds_only, np.abs(filament), length)
    moved = np.flatnonzero((length > _NO_PATH) & kinds.moves[lines])
    if moved.size == 0:
        raise InputError("file", tr("No move in this file; choose a file of G-code that prints something."))
    step(0.98)
    at = lines[moved]
    still, speed = np.cumsum(kinds.stops)[at], _speeds_mm_s(words, kinds, at)
    if (stuck := np.flatnonzero(~(speed > 0))).size:
        row = int(at[stuck[0]])
        says = tr("Line {line}: a move at a speed of 0 or below (F) never ends; mend this line.", line=row + 1)
        raise InputError("file", says, row)
    return Path(
        length_mm=length[moved],
        filament_mm=filament[moved],
        wanted_mm_s=speed,
        begin=Turns(*(part[moved] for part in begin)),
        end=Turns(*(part[moved] for part in end)),
        radius_mm=radius[moved],
        feeds_only=feeds_only[moved],
        stop_before=_steps(still.astype(float), 0.0) > 0,
        line=at,
        dwell_s=kinds.dwell_s,
    )


@dataclass(frozen=True, slots=True, eq=False)
class _Kinds:
    """By line: what it is, and what holds in it."""

    moves: Bools
    sets: Bools
    homes: Bools
    stops: Bools
    motion: Ints
    relative: Bools
    relative_e: Bools
    unit_mm: Floats | None
    dwell_s: float


def _kinds(words: Words) -> _Kinds:
    n = words.lines
    told = np.flatnonzero(
        (_steps(words.g_value, -1.0) != 0) | (words.g_value > _LAST_MOTION)
    )  # G1 after G1 says nothing
    line, value = words.g_line[told], words.g_value[told]
    code = np.round(value).astype(np.int64)
    code[np.abs(value - code) > 1e-6] = -1  # G92.1 and its like set nothing here
    for number, name in _UNREAD.items():
        if (at := np.flatnonzero(code == number)).size:
            row = int(line[at[0]])
            says = tr("Line {line}: {name} is not timed here; use straight moves instead.", line=row + 1, name=name)
            raise InputError("file", says, row)
    m = words.column("M")
    other = np.zeros(n, dtype=bool) if m is None else ~np.isnan(m)
    marked = {number: np.zeros(n, dtype=bool) for number in (4, 28, 92)}
    for number, flags in marked.items():
        flags[line[code == number]] = True
    moves = words.places & ~(other | marked[4] | marked[28] | marked[92])
    if m is None:
        m = np.empty(0)
    e_line = np.flatnonzero((m == 82) | (m == 83))
    e_value = m[e_line] + 8.0  # 90 and 91, as the G functions that say the same of all axes
    both = np.concatenate([line[(code == 90) | (code == 91)], e_line])
    values = np.concatenate([code[(code == 90) | (code == 91)].astype(float), e_value])
    order = np.argsort(both, kind="stable")
    inch = _modal(line, code, (21, 20), n) == 20
    return _Kinds(
        moves=moves,
        sets=marked[92],
        homes=marked[28],
        stops=marked[4] | marked[28],
        motion=_modal(line, code, (0, 1, 2, 3), n),
        relative=_modal(line, code, (90, 91), n) == 91,
        relative_e=_runs(both[order], values[order], n, 90.0) == 91.0,
        unit_mm=np.where(inch, MM_PER_INCH, 1.0) if inch.any() else None,
        dwell_s=_dwell_s(words, marked[4]),
    )


def _modal(line: Ints, code: Ints, group: tuple[int, ...], lines: int) -> Ints:
    """Return the function of a group that holds in each line; the first of the group before any."""
    chosen = (code >= min(group)) & (code <= max(group))
    return _runs(line[chosen], code[chosen].astype(float), lines, float(group[0])).astype(np.int64)


def _runs(line: Ints, value: Floats, lines: int, first: float) -> Floats:
    """Return what holds in each line where a value holds from its line on."""
    changed = np.flatnonzero(_steps(value, first))
    places = np.concatenate([[0], line[changed], [lines]])
    return np.repeat(np.concatenate([[first], value[changed]]), np.diff(places))


def _speeds_mm_s(words: Words, kinds: _Kinds, at: Ints) -> Floats:
    column = words.column("F")
    if column is None:
        return np.full(at.size, np.inf)
    seen = np.flatnonzero(~np.isnan(column))
    unit = 1.0 if kinds.unit_mm is None else kinds.unit_mm[seen]
    return _runs(seen, column[seen] * unit / 60.0, words.lines, np.inf)[at]


def _dwell_s(words: Words, dwells: Bools) -> float:
    total = 0.0
    for letter, factor in (("P", 1e-3), ("S", 1.0)):
        if (column := words.column(letter)) is not None:
            total += factor * float(np.nansum(np.maximum(column[dwells], 0.0)))
    return total


def _deltas(words: Words, kinds: _Kinds, axis: str, lines: Ints) -> Floats:
    """Return how far each of these lines moves an axis, in mm."""
    column = words.column(axis)
    if column is None:
        return np.zeros(lines.size)
    value = column[lines]
    if (homes := np.flatnonzero(kinds.homes[lines])).size:
        value[homes] = _homed(words, axis, lines[homes])
    given = np.flatnonzero(~np.isnan(value))
    value, moves = value[given], kinds.moves[lines[given]]
    if kinds.unit_mm is not None:
        value *= kinds.unit_mm[lines[given]]
    relative = kinds.relative_e if axis == "E" else kinds.relative
    if relative.any():
        adds = relative[lines[given]] & moves
        last = np.maximum.accumulate(np.where(adds, 0, np.arange(1, given.size + 1)))
        added = np.cumsum(np.where(adds, value, 0.0))
        value = np.concatenate([[0.0], value])[last] + added - np.concatenate([[0.0], added])[last]
    delta = np.zeros(lines.size)
    delta[given] = np.where(moves, _steps(value, 0.0), 0.0)
    return delta


def _homed(words: Words, axis: str, homes: Ints) -> Floats:
    """Return zero where an axis is sent home, nan where it is not; a command without letters means X, Y and Z."""
    given = {k: np.zeros(homes.size, bool) if (c := words.column(k)) is None else ~np.isnan(c[homes]) for k in "XYZ"}
    everything = ~(given["X"] | given["Y"] | given["Z"])
    return np.where(given[axis] | everything, 0.0, np.nan) if axis in given else np.full(homes.size, np.nan)


def _steps(value: Floats, first: float) -> Floats:
    """Return the difference of each value from the one before it."""
    steps = np.empty(value.size)
    if value.size:
        steps[0] = value[0] - first
        np.subtract(value[1:], value[:-1], out=steps[1:])
    return steps


Ways = tuple[tuple[Floats, Floats, Floats], tuple[Floats, Floats, Floats], Floats, Floats]


def _ways(words: Words, kinds: _Kinds, lines: Ints, deltas: dict[str, Floats]) -> Ways:
    """Return directions at either end, length and radius of each line."""
    x, y, z = deltas["X"], deltas["Y"], deltas["Z"]
    length = np.sqrt(x * x + y * y + z * z)
    with np.errstate(divide="ignore"):
        inverse = np.where(length > _NO_PATH, 1.0 / length, 0.0)
    begin = x * inverse, y * inverse, z * inverse
    radius = np.full(lines.size, np.inf)
    curved = np.flatnonzero((kinds.motion[lines] >= 2) & kinds.moves[lines])
    if curved.size == 0:
        return begin, begin, length, radius
    at = lines[curved]
    unit = 1.0 if kinds.unit_mm is None else kinds.unit_mm[at]
    i, j, r = (np.full(curved.size, np.nan) if (c := words.column(k)) is None else c[at] * unit for k in "IJR")
    arcs = arcs_of(x[curved], y[curved], z[curved], (i, j, r), kinds.motion[at] == 2, at)
    end = tuple(part.copy() for part in begin)
    for target, first, last in zip(range(3), arcs.begin, arcs.end, strict=True):
        begin[target][curved], end[target][curved] = first, last
    length[curved], radius[curved] = arcs.length_mm, arcs.radius_mm
    return begin, (end[0], end[1], end[2]), length, radius
