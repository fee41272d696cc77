"""A program of a million moves written and synced, beside the same bytes written raw and beside format strings.

`python -m tests.benchmarks.gcode [--moves N]`: the ways take turns in each round. The peer writes format strings, once
the very same bytes (words aligned), once without aligning, which is quicker; the target is against the quicker one.
"""

from __future__ import annotations

import argparse
import os
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np

ROUNDS = 7
MOST_OVER_RAW, LEAST_UNDER_STRINGS = 3.0, 5.0
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


def written_raw(data: bytes, path: Path) -> None:
    with path.open("wb", buffering=0) as file:
        file.write(data)
        os.fsync(file.fileno())


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


def measure(count: int = 1_000_000) -> dict[str, float]:
    """Median seconds of each way over some rounds; the first round only warms up."""
    from core.pieces.toolpathtext import program_text, write_program

    made = program(count)
    moves = made.toolpath.moves
    data = b"".join(program_text(made))
    fed = np.diff(np.rint(np.cumsum(moves.filament_mm) * 1e5), prepend=0.0) / 1e5
    numbers = (moves.x_mm.tolist(), moves.y_mm.tolist(), fed.tolist())
    assert same_bytes(data, numbers), "not the bytes of format strings"
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "moves.gcode"
        ways: dict[str, Callable[[], None]] = {
            "raw": lambda: written_raw(data, path),
            "ours": lambda: write_program(made, path),
            "aligned format strings": lambda: written_by_strings(numbers, path, True),
            "plain format strings": lambda: written_by_strings(numbers, path, False),
        }
        times: dict[str, list[float]] = {name: [] for name in ways}
        for number in range(ROUNDS + 1):
            for name, write in ways.items():
                begun = time.perf_counter()
                write()
                if number:
                    times[name].append(time.perf_counter() - begun)
                if name == "ours":
                    assert path.read_bytes() == data
    return {name: statistics.median(values) for name, values in times.items()}


def report(found: dict[str, float]) -> None:
    print(f"a program of many moves written and synced, median of {ROUNDS}")
    for name, seconds in found.items():
        print(f"  {name:24} {1000 * seconds:7.0f} ms")
    over_raw = found["ours"] / found["raw"]
    under = min(found["plain format strings"], found["aligned format strings"]) / found["ours"]
    within = "within" if over_raw <= MOST_OVER_RAW else "ABOVE"
    print(f"  {over_raw:.2f} times the raw write: {within} {MOST_OVER_RAW:g}")
    enough = "at least" if under >= LEAST_UNDER_STRINGS else "BELOW"
    print(f"  {under:.1f} times as fast as format strings: {enough} {LEAST_UNDER_STRINGS:g}")


def main() -> int:
    parser = argparse.ArgumentParser(description="Time writing a program of many moves.")
    parser.add_argument("--moves", type=int, default=1_000_000)
    report(measure(parser.parse_args().moves))
    return 0


if __name__ == "__main__":
    sys.exit(main())
