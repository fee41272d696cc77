"""Names stand beside their own line and on nothing else."""

import numpy as np
import pytest

from app.widgets.plotlabels import Taken, Wish, place_names

SIZE = 400.0, 240.0
NO_BOXES = np.empty((0, 4))


def box(wish, place):
    return place.x_px, place.y_px, place.x_px + wish.widths_px[place.wording], place.y_px + wish.height_px


def line(*corners):
    return np.array(corners, dtype=float)


def crosses(rectangle, path):
    left, top, right, bottom = rectangle
    along = np.concatenate([np.linspace(a, b, 400) for a, b in zip(path[:-1], path[1:], strict=True)])
    x, y = along.T
    return bool(np.any((x > left) & (x < right) & (y > top) & (y < bottom)))


def overlap(a, b):
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


@pytest.mark.parametrize("fall", [0, 60, 120, 220])
def test_names_clear_lines_points_and_each_other(fall):
    lines = [line((0, 10), (400, 10 + fall)), line((0, 60), (400, 40 + 0.8 * fall))]
    boxes = np.array([[x - 6, 60 - 6, x + 6, 60 + 6] for x in range(20, 400, 60)], dtype=float)
    wishes = [Wish((110.0, 40.0), 14.0, path) for path in lines]
    places = place_names(wishes, Taken(lines, boxes), *SIZE)
    found = [box(wish, place) for wish, place in zip(wishes, places, strict=True) if place is not None]
    assert len(found) == 2
    assert not overlap(*found)
    for rectangle in found:
        assert rectangle[0] >= 0 and rectangle[2] <= SIZE[0] and rectangle[1] >= 0 and rectangle[3] <= SIZE[1]
        assert not any(crosses(rectangle, path) for path in lines)
        assert not any(overlap(rectangle, other) for other in boxes.tolist())


def test_a_name_stands_nearer_to_its_own_line_than_to_another():
    lines = [line((0, 100), (400, 100)), line((0, 125), (400, 125))]  # no name fits between them
    wishes = [Wish((100.0,), 14.0, path) for path in lines]
    upper, lower = place_names(wishes, Taken(lines, NO_BOXES), *SIZE)
    assert upper.y_px + 14 < 100
    assert lower.y_px > 125


def test_the_shorter_wording_is_used_where_the_full_one_has_no_room():
    path = line((0, 120), (400, 120))
    walls = np.array([[x, 0, x + 20, 240] for x in range(80, 400, 100)], dtype=float)
    (place,) = place_names([Wish((200.0, 50.0), 14.0, path)], Taken([path], walls), *SIZE)
    assert place.wording == 1


def test_no_room_at_all_leaves_the_name_away():
    path = line((0, 120), (400, 120))
    full = np.array([[0, 0, 400, 240]], dtype=float)
    assert place_names([Wish((50.0,), 14.0, path)], Taken([path], full), *SIZE) == [None]
    assert place_names([Wish((50.0,), 14.0, path)], Taken([path], NO_BOXES), 5.0, 5.0) == [None]


def test_a_line_out_of_sight_gets_no_name():
    path = line((0, 900), (400, 900))
    assert place_names([Wish((50.0,), 14.0, path)], Taken([path], NO_BOXES), *SIZE) == [None]


def test_a_line_that_crosses_from_far_outside_is_kept_clear():
    steep = line((199, -1e5), (201, 1e5))
    path = line((0, 120), (400, 120))
    wish = Wish((150.0,), 14.0, path)
    (place,) = place_names([wish], Taken([path, steep], NO_BOXES), *SIZE)
    assert not crosses(box(wish, place), line((200, 0), (200, 240)))


def test_the_name_of_a_sign_stands_beside_it():
    path = line((0, 120), (400, 120))
    wish = Wish((60.0,), 14.0, line((200, 120)), at_points=True)
    (place,) = place_names([wish], Taken([path], np.array([[190.0, 110, 210, 130]])), *SIZE)
    assert abs(place.x_px + 30 - 200) < 90 and abs(place.y_px + 7 - 120) < 60


def test_bands_are_avoided_where_there_is_room_beside_them():
    path = line((0, 120), (400, 120))
    band = np.array([[0, 60, 140], [400, 60, 140]], dtype=float)
    (place,) = place_names([Wish((60.0,), 14.0, path)], Taken([path], NO_BOXES, [band]), *SIZE)
    assert place.y_px >= 137


def test_a_name_stands_over_the_edge_of_a_band_before_it_is_left_away():
    path = line((0, 120), (400, 120))
    edges = [line((0, y), (400, y)) for y in range(6, 240, 12)]  # nowhere is there room between two of them
    wish = Wish((90.0, 40.0), 14.0, path)
    (place,) = place_names([wish], Taken([path], NO_BOXES, edges=edges), *SIZE)
    assert place.wording == 1 and place.on_edge  # the shorter one
    alone = Wish((40.0,), 14.0, path)
    assert place_names([alone], Taken([path], NO_BOXES, edges=edges), *SIZE)[0].wording == 0
    (place,) = place_names([alone], Taken([path], NO_BOXES), *SIZE)
    assert place.y_px + 14 < 120 and not place.on_edge
