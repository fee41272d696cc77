"""The picture: a cube shows three faces and nine edges, a nearer body hides a farther one."""

import numpy as np
import pytest

from core.pieces.catalogue import plan_set
from core.pieces.piece import Piece, PrintSet, Prism, box
from core.pieces.solid import solids_of
from core.pieces.view import png_of, view_of


def cubes(*corners):
    pieces = tuple(Piece(f"cube {x} {y}", "x", (Prism((box(x, y, x + 10, y + 10),), 0, 10),), ()) for x, y in corners)
    return solids_of(PrintSet("cubes", "Cubes", "for tests", pieces))


def test_a_cube_shows_three_faces_and_nine_edges():
    view = view_of(cubes((0, 0)), 300, 300)
    assert len(set(view.shade[~np.isnan(view.shade)].tolist())) == 3
    assert len(view.edges_px) == 9
    x, y = view.edges_px.reshape(-1, 2).T
    assert x.min() >= 19 and x.max() <= 281 and y.min() >= 19 and y.max() <= 281
    assert min(np.ptp(x), np.ptp(y)) < 262 and max(np.ptp(x), np.ptp(y)) == pytest.approx(260, abs=2)


def test_its_edges_are_parallel_projections_of_the_real_ones():
    view = view_of(cubes((0, 0)), 300, 300)
    top = view.at_px([(0, 0, 10), (10, 0, 10), (10, 10, 10), (0, 10, 10)])
    drawn = [tuple(sorted(map(tuple, np.round(edge)))) for edge in view.edges_px]
    for a, b in zip(top, np.roll(top, -1, axis=0), strict=True):
        wanted = np.array(sorted(map(tuple, np.round([a, b]))))
        assert any(np.abs(np.array(edge) - wanted).max() <= 2 for edge in drawn)
    up = view.at_px([(0, 0, 0), (0, 0, 10)])
    assert up[0, 0] == pytest.approx(up[1, 0]) and up[0, 1] > up[1, 1]


def test_what_stands_before_hides_what_stands_behind():
    """In front is where y is smaller; a wall seen through another would add edges."""
    apart = len(view_of(cubes((0, 0), (40, 0)), 400, 300).edges_px)
    hidden = view_of(cubes((0, 0), (-2, 11)), 400, 300)
    length = np.linalg.norm(np.diff(hidden.edges_px, axis=1), axis=2).sum()
    alone = view_of(cubes((0, 0), (-60, 110)), 400, 300)
    assert apart == 18
    assert length / hidden.scale_px_mm < 0.9 * np.linalg.norm(np.diff(alone.edges_px, axis=1), axis=2).sum() / (
        alone.scale_px_mm
    )


def test_round_walls_have_no_edges_along_them():
    view = view_of(solids_of(plan_set("holes"), relieved=False), 600, 400)
    peg = view.at_px([(100 - 16 - 10, 48, 8)])
    assert np.isfinite(view.shade[int(peg[0, 1]), int(peg[0, 0])])
    assert len(view.edges_px) < 1500
    assert png_of(view).startswith(b"\x89PNG")
