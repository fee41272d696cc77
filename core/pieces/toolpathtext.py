"""A toolpath as a program: only words that the trade at large uses, cautions first, heaters off first and last.

    comments            what it is, the cautions, the parts
    M104 S0, M140 S0    heaters off, then the machine's own start text, in which it finds its zero
    a lap               cold and high, round all that follows: whoever stands by sees that it fits on the bed
    heating, moves, heaters off, the machine's own end text

Reference: ISO 6983-1 (words, spaces, comments after a semicolon as the trade writes them).
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from core.errors import InputError
from core.pieces.outfile import moved_into_place
from core.pieces.toolpath import Toolpath
from core.pieces.toolpathmoves import Style, moves_text, plain_places, rate_text
from core.words import Words, tr

START_TEXT = "G28\n"
END_TEXT = "G91\nG1 Z10 F600\nG90\n"
LAP_Z_MM = 10.0
_BUFFER = 1 << 20  # bytes: a file system takes large pieces sooner
_NAME = re.compile(r"\{(\w*)\}")
_HEATS = re.compile(r"^\s*M(104|109|140|190)\b[^;]*?[SR]\s*(?!0*\.?0*(\s|;|$))", re.IGNORECASE | re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Heat:
    """Temperatures of nozzle and bed (0: stays cold) and the fan from the second layer on."""

    nozzle_c: float
    bed_c: float
    fan_percent: float = 0.0


@dataclass(frozen=True, slots=True)
class Program:
    """A toolpath with what stands round it.

    Attributes:
        heat: temperatures; None where nothing is heated.
        relative: whether extrusion counts from move to move.
        start_text: the machine's own commands before it, end_text those after it.
        lap_mm_s: speed of the lap, z_mm_s that of Z in it, lap_z_mm its height.
        remarks: further lines for its head.
    """

    toolpath: Toolpath
    heat: Heat | None
    relative: bool
    start_text: str
    end_text: str
    lap_mm_s: float
    z_mm_s: float
    lap_z_mm: float = LAP_Z_MM
    remarks: tuple[str, ...] = ()


def cautions(heated: bool) -> tuple[Words, ...]:
    """Return what is said in the head of each program and before it is saved."""
    always = (
        tr("Axes start without warning: no fingers, hair or sleeves in the travel; know where the switch is."),
        tr("Start it yourself, watch the cold lap, never leave it unattended."),
    )
    if not heated:
        return (*always, tr("Local rules come first."))
    return (
        *always,
        tr("Nozzle and bed burn at once; ventilate; follow the safety data sheet of the material."),
        tr("Confirm first that heating stops when a sensor fails; never above the limits."),
        tr("Local rules come first."),
    )


def filled_text(text: str, heat: Heat | None) -> str:
    """Return a start or end text with its names filled in.

    Raises:
        InputError: field `template`, for a name that is not known.
    """
    known = {"nozzle_c": _degrees(heat.nozzle_c if heat else 0.0), "bed_c": _degrees(heat.bed_c if heat else 0.0)}
    for name in _NAME.findall(text):
        if name not in known:
            raise InputError(
                "template",
                tr("The machine's text names {{{name}}}; known are {{nozzle_c}} and {{bed_c}}. Mend it.", name=name),
            )
    return _NAME.sub(lambda found: known[found[1]], text)


def heats(text: str) -> bool:
    """Return whether a start text heats, so that the lap after it is no longer cold."""
    return _HEATS.search(text) is not None


def program_text(program: Program) -> Iterator[bytes]:
    """Return the program in pieces.

    Raises:
        InputError: field `toolpath` for a place that is no number, `template` for a name that is not known.
    """
    yield "".join(f"; {_plain(line)}\n" for line in _head(program)).encode()
    yield _lines("M104 S0", "M140 S0", "M107", *filled_text(program.start_text, program.heat).splitlines(), "G90")
    yield _lines(*_lap(program))
    if program.heat:
        nozzle, bed = _degrees(program.heat.nozzle_c), _degrees(program.heat.bed_c)
        if program.heat.bed_c > 0:
            yield _lines(f"M140 S{bed}", f"M190 S{bed}")
        yield _lines(f"M104 S{nozzle}", f"M109 S{nozzle}", "M83" if program.relative else "M82", "G92 E0")
    fan = program.heat.fan_percent if program.heat else 0.0
    yield from moves_text(program.toolpath.moves, Style(program.relative, fan, program.lap_z_mm))
    yield _lines("M104 S0", "M140 S0", "M107", *filled_text(program.end_text, program.heat).splitlines(), "; end")


def write_program(program: Program, path: Path) -> None:
    """Write the program beside its place and move it there: a full disk leaves the old file whole.

    Raises:
        StoreError: the file cannot be written.
        InputError: as `program_text`.
    """
    with moved_into_place(path) as beside, beside.open("wb", buffering=_BUFFER) as file:
        file.writelines(program_text(program))
        file.flush()
        os.fsync(file.fileno())


def _head(program: Program) -> Iterator[str]:
    path = program.toolpath
    yield f"Slipgauge, direct trial: {path.title}"
    yield from (f"CAUTION: {says}" for says in cautions(program.heat is not None))
    yield from program.remarks
    if program.heat:
        yield f"commanded for the piece: {path.commanded_mm():.2f} mm of filament, {path.commanded_mm3():.1f} mm3"
    yield from (f"part {number}: {part.name}" for number, part in enumerate(path.parts, start=1))


def _lap(program: Program) -> Iterator[str]:
    """Go once round all places, cold and high."""
    moves, rate = program.toolpath.moves, rate_text(program.lap_mm_s)
    ends = plain_places(np.array([moves.x_mm.min(), moves.x_mm.max(), moves.y_mm.min(), moves.y_mm.max()]))
    left, right, front, back = ends.tolist()
    yield "; a lap with the heaters off: all that follows lies within"
    yield f"G0 Z{program.lap_z_mm:.3f} F{rate_text(program.z_mm_s)}"
    corners = ((left, front), (right, front), (right, back), (left, back), (left, front))
    yield from (f"G0 X{x:.3f} Y{y:.3f} F{rate}" for x, y in corners)


def _lines(*lines: str) -> bytes:
    return "".join(f"{_plain(line)}\n" for line in lines).encode()


def _plain(line: str) -> str:
    """Return a line in letters that every machine reads."""
    plain = line.replace("°", "deg ").replace("³", "3").replace("²", "2").replace("−", "-")
    return " ".join(plain.encode("ascii", "replace").decode().split())


def _degrees(celsius: float) -> str:
    return f"{celsius:.1f}".removesuffix(".0")
