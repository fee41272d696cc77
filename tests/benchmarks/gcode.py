"""A program of a million moves written and synced, beside the same bytes written raw and beside format strings.

The moves of ours are first held byte for byte against format strings, those with their words aligned. The other format
strings write shorter lines, which is quicker: they are what one writes without thinking of the reader.
"""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from functools import partial
from pathlib import Path

import numpy as np

from tests.benchmarks.sidebyside import Contest, Way

TITLE = "Lines of a toolpath to disk"
LAYERS = 250
AT_ONCE = 20_000


def program(count: int):
    """A path of many layers, each one a long run of short moves over the bed."""
    from core.pieces.toolpath import Moves, Toolpath
    from core.pieces.toolpathtext import END_TEXT, START_TEXT, Heat, Program
    from core.words import tr

    rng = np.random.default_rng(3)
    z = 0.2 * (1 + np.arange(count) * LAYERS // count)
    moves = Moves(
        x_mm=rng.uniform(0.0, 200.0, count),
        y_mm=rng.uniform(0.0, 200.0, count),
        z_mm=z,
        filament_mm=rng.uniform(0.01, 1.0, count).round(5),
        speed_mm_s=np.full(count, 40.0),
        width_mm=np.full(count, 0.45),
        part=np.ones(count, np.int64),
    )
    path = Toolpath(tr("A million moves"), (), moves, 1.75)
    return Program(path, Heat(210.0, 60.0), True, START_TEXT, END_TEXT, 60.0, 8.0)


def written_raw(data: bytes, path: Path) -> Path:
    with path.open("wb", buffering=0) as file:
        file.write(data)
        os.fsync(file.fileno())
    return path


def written_by_strings(numbers: tuple[list[float], ...], path: Path, aligned: bool) -> None:
    """Write the moves by format strings, in pieces, synced."""
    x, y, e = numbers
    with path.open("wb", buffering=0) as file:
        for at in range(0, len(x), AT_ONCE):
            part = zip(x[at : at + AT_ONCE], y[at : at + AT_ONCE], e[at : at + AT_ONCE], strict=True)
            if aligned:
                lines = [f"G1 {f'X{a:.3f}':>9} {f'Y{b:.3f}':>9} {f'E{c:.5f}':>9}\n" for a, b, c in part]
            else:
                lines = [f"G1 X{a:.3f} Y{b:.3f} E{c:.5f}\n" for a, b, c in part]
            file.write("".join(lines).encode())
        os.fsync(file.fileno())


def same_bytes(data: bytes, numbers: tuple[list[float], ...]) -> bool:
    """Whether the moves of a program are byte for byte what format strings give, the begins of layers included."""
    lines = [f"G1 {f'X{a:.3f}':>9} {f'Y{b:.3f}':>9} {f'E{c:.5f}':>9}" for a, b, c in zip(*numbers, strict=True)]
    count = len(lines)
    for layer in range(LAYERS):
        row = -(-layer * count // LAYERS)
        z = 0.2 * (layer + 1)
        words = f"{lines[row][:22]} {f'Z{z:.3f}':>9}{lines[row][22:]} F2400"
        lines[row] = f"; layer {layer + 1} of {LAYERS}, Z {z:.3f}\n{words}"
    return data.partition(b"G92 E0\n")[2].partition(b"M104 S0\n")[0] == ("\n".join(lines) + "\n").encode()


def contests(quick: bool) -> Iterator[Contest]:
    from core.pieces.toolpathtext import program_text, write_program

    count = 2_000 if quick else 1_000_000
    made = program(count)
    moves = made.toolpath.moves
    data = b"".join(program_text(made))
    fed = np.diff(np.rint(np.cumsum(moves.filament_mm) * 1e5), prepend=0.0) / 1e5
    numbers = (moves.x_mm.tolist(), moves.y_mm.tolist(), fed.tolist())
    with tempfile.TemporaryDirectory() as folder:
        path, raw, strings = (Path(folder) / f"{name}.gcode" for name in ("ours", "raw", "strings"))

        def ours() -> Path:
            write_program(made, path)
            return path

        yield Contest(
            "moves",
            f"{count} moves, {len(data) / 2**20:.0f} MiB, written and synced",
            Way("write_program", ours),
            (
                Way("raw disk: the same bytes, ready made", partial(written_raw, data, raw), files_apart),
                Way("format strings, words aligned", partial(written_by_strings, numbers, strings, True),
                    lambda _, __: 0.0 if same_bytes(data, numbers) else 1.0),
                Way("format strings, shorter lines", partial(written_by_strings, numbers, strings, False)),
            ),
            (0.0, "bytes"),
            rounds=7,
        )  # fmt: skip


def files_apart(ours: Path, other: Path) -> float:
    mine, its = ours.read_bytes(), other.read_bytes()
    return 0.0 if mine == its else float(max(len(mine), len(its)))
