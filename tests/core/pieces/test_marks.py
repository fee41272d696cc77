"""Every sign is its own picture, of the size asked for, centred where it was asked for."""

import pytest
import shapely

from core.pieces.marks import RAISED_MM, mark


def shape(text, **where):
    return shapely.union_all([shapely.Polygon(p.outlines[0]) for p in mark(text, 0.0, 0.0, 8.0, **where)])


@pytest.mark.parametrize("sign", "0123456789ABCDEFGHIXY")
def test_a_sign_has_its_size_and_place(sign):
    x0, y0, x1, y1 = shape(sign).bounds
    assert y1 - y0 == pytest.approx(5.0, abs=0.6) and x1 - x0 < 3.6  # slanted strokes end square
    assert abs(y0 + y1) < 0.5 and abs(x0 + x1) < 2.0
    assert all((p.low_mm, p.high_mm) == (8.0, 8.0 + RAISED_MM) for p in mark(sign, 0.0, 0.0, 8.0))


def test_no_two_signs_look_alike():
    shapes = [shape(sign) for sign in "0123456789ABCDEFGHIXY"]
    for i, a in enumerate(shapes):
        for b in shapes[i + 1 :]:
            assert a.symmetric_difference(b).area > 1.0


def test_several_signs_stand_apart():
    assert len(shape("10").geoms) == 2 and shape("10", size_mm=8.0).bounds[3] == pytest.approx(4.0)
