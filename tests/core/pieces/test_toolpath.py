"""Strokes and the moves that lay them."""

import math

import numpy as np
import pytest

from core.pieces.toolpath import BETWEEN, PURGE, Laying, Part, PathBead, Stroke, Toolpath, bead_stroke, lay
from core.words import tr

# Obround 0.45 x 0.20 mm and filament of 1.75 mm: A 0.08142 mm2, e 0.03385 (plane geometry).
AREA = 0.2 * (0.45 - (1 - math.pi / 4) * 0.2)
FILAMENT = math.pi * 1.75**2 / 4
BEAD = PathBead(0.45, 0.2, AREA / 0.2, AREA / FILAMENT)
QUICK = Laying(120.0, 8.0, retract_mm=1.0, retract_mm_s=30.0)


def line(y: float, z: float = 0.2, part: int = 1, factor: float = 1.0) -> Stroke:
    return bead_stroke([(10, y), (110, y)], z, BEAD, 40.0, part, factor=factor)


def table(strokes, laying=QUICK, z=10.0):
    moves = lay(strokes, laying, z)
    return np.column_stack((moves.x_mm, moves.y_mm, moves.z_mm, moves.filament_mm, moves.speed_mm_s)), moves


def test_a_bead_is_fed_by_its_length():
    stroke = bead_stroke([(0, 0), (3, 4), (3, 14)], 0.2, BEAD, 40.0, 1, factor=1.06)
    assert stroke.filament_mm == pytest.approx([1.06 * 5 * AREA / FILAMENT, 1.06 * 10 * AREA / FILAMENT])
    assert BEAD.filament_ratio == pytest.approx(0.03385, abs=5e-6)


def test_between_strokes_the_filament_is_drawn_back_and_given_again():
    rows, moves = table([line(20.0), line(30.0)])
    assert rows[:, :3].tolist() == [
        [10, 20, 10], [10, 20, 0.2], [110, 20, 0.2], [110, 20, 0.2], [10, 30, 0.2], [10, 30, 0.2], [110, 30, 0.2]
    ]  # fmt: skip
    assert rows[:, 3] == pytest.approx([0, 0, 3.38488, -1, 0, 1, 3.38488], abs=1e-4)
    assert rows[:, 4].tolist() == [120, 8, 40, 30, 120, 30, 40]
    assert moves.part.tolist() == [BETWEEN, BETWEEN, 1, BETWEEN, BETWEEN, BETWEEN, 1]


def test_the_nozzle_rises_before_it_travels_and_comes_down_after():
    rows, _ = table([line(20.0, 0.4), line(30.0, 0.6), line(40.0, 0.2)], Laying(120.0, 8.0))
    places = rows[:, :3].tolist()
    assert places[3:5] == [[110, 20, 0.6], [10, 30, 0.6]]  # up, then over
    assert places[6:8] == [[10, 40, 0.6], [10, 40, 0.2]]  # over, then down


def test_a_layer_above_the_last_one_begins_where_it_ended():
    up = bead_stroke([(110, 20), (10, 20)], 0.4, BEAD, 40.0, 1)
    rows, _ = table([line(20.0), up])
    assert rows[3].tolist() == [110, 20, 0.4, 0, 8]
    assert len(rows) == 5


def test_a_stroke_goes_on_from_the_last_one_without_a_travel():
    on = bead_stroke([(110, 20), (110, 40)], 0.2, BEAD, 40.0, 1)
    assert len(table([line(20.0), on])[0]) == 4


def test_a_pen_is_lifted_over_the_sheet():
    rows, _ = table([line(20.0, 10.0), line(30.0, 10.0)], Laying(120.0, 8.0, lift_mm=5.0), 10.0)
    assert rows[:, 2].tolist() == [10, 10, 15, 15, 10, 10]


def test_a_stroke_may_be_approached_slowly():
    place = np.array([(50.0, 50.0), (50.0, 50.0)])
    strand = Stroke(place, 0.2, np.array([200.0]), np.array([2.0]), 0.0, 1, approach_mm_s=1.5)
    assert 1.5 in table([line(20.0), strand])[0][:, 4]


def test_the_commanded_volume_leaves_the_purge_out():
    moves = lay([line(5.0, part=PURGE), line(20.0), line(30.0, part=2)], QUICK, 10.0)
    path = Toolpath(tr("Lines"), (Part(tr("one"), (60.0, 20.0)), Part(tr("two"), (60.0, 30.0))), moves, 1.75)
    assert path.commanded_mm3() == pytest.approx(200 * AREA)
    assert path.commanded_mm(2) == pytest.approx(100 * AREA / FILAMENT)
    assert path.layers_mm().tolist() == [0.2]
