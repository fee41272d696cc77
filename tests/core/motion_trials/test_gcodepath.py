"""The path of a file: positions against a plain interpreter, arcs against many short chords."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.motion_trials.gcodepath import read_path


def path_of(text):
    return read_path(text.encode())


def interpreted(text):
    """Lengths and filament of each move, by a plain interpreter of one line after the other."""
    at = dict.fromkeys("XYZE", 0.0)
    unit, relative, relative_e, moves = 1.0, False, False, []
    for line in text.splitlines():
        words = [(w[0], float(w[1:])) for w in line.split()]
        codes = [v for c, v in words if c == "G"]
        values = dict(words)
        for code in codes:
            unit = {20: 25.4, 21: 1.0}.get(code, unit)
            if code in (90, 91):
                relative = relative_e = code == 91
        relative_e = {82: False, 83: True}.get(values.get("M"), relative_e)
        if 92 in codes:
            at.update({c: v * unit for c, v in values.items() if c in at})
        elif 28 in codes:
            at.update({c: 0.0 for c in "XYZ" if c in values or not {"X", "Y", "Z"} & set(values)})
        elif "M" not in values and 4 not in codes:
            before = dict(at)
            for c in "XYZE":
                if c in values:
                    add = relative_e if c == "E" else relative
                    at[c] = values[c] * unit + (at[c] if add else 0.0)
            way = math.dist([at[c] for c in "XYZ"], [before[c] for c in "XYZ"])
            fed = at["E"] - before["E"]
            if way > 1e-9 or abs(fed) > 1e-9:
                moves.append((way if way > 1e-9 else abs(fed), fed))
    return moves


@pytest.mark.parametrize("seed", range(12))
def test_positions_are_those_of_a_plain_interpreter(seed):
    rng = np.random.default_rng(seed)
    lines = []
    for _ in range(300):
        kind = rng.integers(0, 14)
        value = round(float(rng.uniform(-50, 50)), 3)
        lines.append(
            ["G90", "G91", "M82", "M83", f"G92 E{value}", f"G92 X{value} Y1", "G28 X0", "G28", "G20", "G21",
             "M117"][kind] if kind < 11 else
            " ".join(["G1"] + [f"{c}{round(float(rng.uniform(-50, 50)), 3)}" for c in "XYZE" if rng.random() < 0.5])
        )  # fmt: skip
    text = "\n".join(line.replace("M117", "M106 S3 X9") for line in lines)
    path = path_of(text)
    moves = interpreted(text)
    np.testing.assert_allclose(path.length_mm, [m[0] for m in moves], atol=1e-9)
    np.testing.assert_allclose(path.filament_mm, [m[1] for m in moves], atol=1e-9)


def test_speeds_hold_until_changed_and_follow_the_unit():
    path = path_of("G1 X10\nG1 F600 X20\nX30\nG20\nG1 X2 F60\nG21 G1 X0")
    np.testing.assert_allclose(path.wanted_mm_s, [math.inf, 10, 10, 25.4, 25.4])
    assert list(path.line) == [0, 1, 2, 4, 5]


def test_dwell_and_homing_stop_the_machine():
    path = path_of("G1 X10 F600\nG4 P500\nG1 X20\nG4 S2\nG28\nG1 X5")
    assert path.dwell_s == pytest.approx(2.5)
    assert list(path.stop_before) == [False, True, True]


def test_moves_of_filament_alone_are_told_from_printing():
    path = path_of("M83\nG1 X10 E0.4 F600\nG1 E-1\nG0 X20\nG1 E1\nG1 X30 E0.4")
    assert list(path.feeds_only) == [False, True, False, True, False]
    assert list(path.prints) == [True, False, False, False, True]
    np.testing.assert_allclose(path.turn_cosine, [0, 0, 0, 0], atol=1e-12)


def chords(x, y, z, cx, cy, clockwise, full=False, n=20000):
    """Length and end directions of an arc as many short chords."""
    start, stop = math.atan2(-cy, -cx), math.atan2(y - cy, x - cx)
    sweep = (stop - start) % (2 * math.pi) if not clockwise else -((start - stop) % (2 * math.pi))
    if full:
        sweep = -2 * math.pi if clockwise else 2 * math.pi
    a = start + np.linspace(0, sweep, n)
    r = math.hypot(cx, cy)
    points = np.column_stack([cx + r * np.cos(a), cy + r * np.sin(a), np.linspace(0, z, n)])
    steps = np.diff(points, axis=0)
    size = np.linalg.norm(steps, axis=1)
    return size.sum(), steps[0] / size[0], steps[-1] / size[-1]


@pytest.mark.parametrize(
    ("word", "x", "y", "z", "i", "j"),
    [("G2", 10, 10, 0, 10, 0), ("G3", 10, 10, 0, 0, 10), ("G2", 10, 10, 3, 0, 10), ("G3", 20, 0, 0, 10, 0)],
)
def test_arcs_by_their_centre(word, x, y, z, i, j):
    path = path_of(f"{word} X{x} Y{y} Z{z} I{i} J{j} F600")
    length, first, last = chords(x, y, z, i, j, word == "G2")
    assert path.length_mm[0] == pytest.approx(length, rel=1e-6)
    np.testing.assert_allclose([path.begin.x[0], path.begin.y[0], path.begin.z[0]], first, atol=1e-3)
    np.testing.assert_allclose([path.end.x[0], path.end.y[0], path.end.z[0]], last, atol=1e-3)
    assert path.radius_mm[0] == pytest.approx(10)


def test_a_full_turn_needs_no_end_and_rises_as_a_helix():
    path = path_of("G2 I5 F600\nG3 I5 J0 Z4")
    assert path.length_mm[0] == pytest.approx(10 * math.pi)
    assert path.length_mm[1] == pytest.approx(math.hypot(10 * math.pi, 4))


@pytest.mark.parametrize(
    ("word", "r", "share"), [("G2", 10, 0.25), ("G3", 10, 0.25), ("G2", -10, 0.75), ("G3", -10, 0.75)]
)
def test_arcs_by_their_radius(word, r, share):
    path = path_of(f"{word} X10 Y10 R{r} F600")
    assert path.length_mm[0] == pytest.approx(share * 20 * math.pi)


def test_a_half_turn_by_radius_and_inches():
    assert path_of("G2 X20 Y0 R10 F600").length_mm[0] == pytest.approx(10 * math.pi)
    assert path_of("G20 G2 X2 Y0 I1 F60").length_mm[0] == pytest.approx(25.4 * math.pi)


@pytest.mark.parametrize(
    ("text", "row", "says"),
    [
        ("M104 S200", None, "No move"),
        ("G1 X1\nG5 X1", 1, "G5"),
        ("G18\nG2 X1 I1", 0, "G18"),
        ("G1 X0\nG2 X10 Y0 I2 J3", 1, "no centre"),
        ("G2 X10 Y0", 0, "no centre"),
        ("G2 X10 Y0 R3", 0, "no centre"),
        ("G1 X5\nG2 R3 X5 Y0", 1, "no centre"),
        ("G1 X5 F0", 0, "never ends"),
        ("G0 X1\nF-60\nG1 X5", 2, "never ends"),
    ],
)
def test_refused(text, row, says):
    with pytest.raises(InputError, match=says) as error:
        path_of(text)
    assert error.value.field == "file" and error.value.row == row


def test_reading_tells_how_far_it_is():
    told = []
    read_path(b"G1 X1 F600\n" * 200_000, told.append)
    assert len(told) > 8 and told == sorted(told) and told[0] > 0.0 and told[-1] < 1.0


class StopError(Exception):
    pass


@pytest.mark.parametrize("least", [0.0, 0.3, 0.7])
def test_reading_is_stopped_at_the_next_step(least):
    told = []

    def step(part):
        told.append(part)
        if part > least:
            raise StopError

    with pytest.raises(StopError):
        read_path(b"G1 X1 F600 ; outside\n" * 200_000, step)
    assert told[-1] > least and all(part <= least for part in told[:-1])
