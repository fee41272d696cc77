"""A file of a million moves read and timed, beside a plain loop in Python over the same file.

Both read the text, find the limit of every junction, look ahead over the whole path and add up the times.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import partial

import numpy as np

from tests.benchmarks.sidebyside import Contest, Way

TITLE = "A file of moves read and timed"
ACCELERATION, CORNER = 3000.0, 0.02
AXIS_SPEED = {"x": 300.0, "y": 300.0, "z": 12.0}
AXIS_ACCELERATION = {"x": 5000.0, "y": 3000.0, "z": 200.0}


def text_of(moves: int) -> bytes:
    """A file as a part gives it: outlines of short moves, layer after layer, long straights between them."""
    rng = np.random.default_rng(12)
    angle = np.cumsum(np.where(rng.random(moves) < 0.02, 1.6, 0.05))
    length = np.where(rng.random(moves) < 0.1, 20.0, rng.uniform(0.3, 2.0, moves))
    x, y = 110.0 + np.cumsum(length * np.cos(angle)), 110.0 + np.cumsum(length * np.sin(angle))
    x, y = x - 0.5 * x.min(), y - 0.5 * y.min()
    e = np.cumsum(0.0339 * length)
    lines = ["G21", "G90", "M82", "G28", "G1 Z0.200 F600"]
    for number in range(moves):
        if number % 5000 == 0:
            lines.append(f"G1 Z{0.2 + 0.2 * (number // 5000):.3f} F600\nG1 F{3600 + 60 * (number // 5000 % 20)}")
        lines.append(f"G1 X{x[number]:.3f} Y{y[number]:.3f} E{e[number]:.5f}")
    return ("\n".join(lines) + "\n").encode()


def by_core(text: bytes) -> float:
    """Seconds of the part, by the core."""
    from core.motion_trials.gcodepath import read_path
    from core.motion_trials.gcodetime import Limits, time_path

    limits = Limits(ACCELERATION, CORNER, AXIS_SPEED, AXIS_ACCELERATION)
    return time_path(read_path(text), limits).duration_s


def by_loop(text: bytes) -> float:
    """The same, as one writes it without arrays."""
    sqrt, inf = math.sqrt, math.inf
    x = y = z = e = 0.0
    speed = inf
    moves = []
    for line in text.decode().splitlines():
        words = line.split()
        if not words or words[0] not in ("G0", "G1"):
            continue
        nx, ny, nz, ne = x, y, z, e
        for word in words[1:]:
            letter, value = word[0], float(word[1:])
            if letter == "X":
                nx = value
            elif letter == "Y":
                ny = value
            elif letter == "Z":
                nz = value
            elif letter == "E":
                ne = value
            elif letter == "F":
                speed = value / 60.0
        dx, dy, dz = nx - x, ny - y, nz - z
        length = sqrt(dx * dx + dy * dy + dz * dz)
        if length > 1e-9:
            ux, uy, uz = dx / length, dy / length, dz / length
            v, a = min(speed, 1e4), ACCELERATION
            for axis, u in (("x", abs(ux)), ("y", abs(uy)), ("z", abs(uz))):
                if u:
                    v, a = min(v, AXIS_SPEED[axis] / u), min(a, AXIS_ACCELERATION[axis] / u)
            moves.append((length, ux, uy, uz, v, a))
        x, y, z, e = nx, ny, nz, ne
    square = [0.0]
    for (l0, x0, y0, z0, v0, a0), (_, x1, y1, z1, v1, a1) in zip(moves, moves[1:], strict=False):
        half = sqrt(min(max(0.5 * (1.0 + x0 * x1 + y0 * y1 + z0 * z1), 0.0), 1.0))
        corner = min(a0, a1) * CORNER * half / (1.0 - half) if half < 1.0 else inf
        square.append(min(corner, v0 * v0, v1 * v1, square[-1] + 2.0 * a0 * l0))
    square.append(0.0)
    for place in range(len(moves) - 1, -1, -1):
        square[place] = min(square[place], square[place + 1] + 2.0 * moves[place][5] * moves[place][0])
    total = 0.0
    for place, (length, _, _, _, v, a) in enumerate(moves):
        ends = 0.5 * (square[place] + square[place + 1])
        peak2 = min(v * v, ends + a * length)
        peak = sqrt(peak2)
        total += (2.0 * peak - sqrt(square[place]) - sqrt(square[place + 1])) / a
        total += max(length - (peak2 - ends) / a, 0.0) / peak
    return total


def contests(quick: bool) -> Iterator[Contest]:
    count = 2_000 if quick else 1_000_000
    text = text_of(count)
    yield Contest(
        "moves",
        f"{count} moves, {len(text) / 2**20:.0f} MiB",
        Way("read_path and time_path", partial(by_core, text)),
        (Way("plain loop in Python", partial(by_loop, text), lambda ours, other: abs(ours / other - 1.0)),),
        (1e-9, "of the duration"),
        rounds=5,
    )
