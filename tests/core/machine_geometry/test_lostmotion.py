"""The lost-motion curve: play and wind-up told apart, intervals that cover, and what is refused."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.machine_geometry.lostmotion import fit_lost_motion

X = np.round(np.arange(21) * 0.01, 4)


def curve(play=0.06, share=1.0, x=X, sd=0.0, rng=None):
    y = share * np.maximum(np.asarray(x) - play, 0.0)
    return y if rng is None else y + rng.normal(0, sd, y.size)


def fit(y, x=X, resolution_mm=0.001):
    return fit_lost_motion(x, y, axis="x", resolution_mm=resolution_mm)


def refused(y, x=X, resolution_mm=0.001):
    with pytest.raises(InputError) as caught:
        fit(y, x, resolution_mm)
    return caught.value


def test_play_alone_is_the_reversal_error():
    found = fit(curve(0.06))
    reversal, play, windup = found.estimates()
    assert [e.name for e in found.estimates()] == ["reversal_x", "play_x", "windup_x"]
    assert reversal.value == pytest.approx(0.06, abs=1e-4)
    assert play.value == pytest.approx(0.06, abs=1e-4)
    assert windup.value == pytest.approx(0.0, abs=1e-3) and windup.unit == "1"
    assert reversal.u >= 0.001 / math.sqrt(6) and play.u >= 0.001 / math.sqrt(12)
    assert found.minds == ()


def test_while_it_winds_up_the_loss_is_not_the_whole_reversal_error():
    found = fit(curve(0.04, 0.7, sd=0.002, rng=np.random.default_rng(1)))
    assert found.still_winding
    assert [e.name for e in found.estimates()] == ["play_x", "windup_x"]
    assert found.windup.value == pytest.approx(0.3, abs=0.06)
    assert found.lost.value == pytest.approx(0.2 - 0.7 * 0.16, abs=0.006)


def test_the_dial_may_stand_either_way_and_steps_in_any_order():
    order = np.random.default_rng(2).permutation(21)
    there, back = fit(curve()), fit(3.2 - curve()[order], X[order])
    assert back.play.value == pytest.approx(there.play.value)
    assert X[order][back.rows].tolist() == back.commanded_mm.tolist() == X.tolist()


@pytest.mark.parametrize(("play", "share", "sd"), [(0.05, 1.0, 0.003), (0.05, 0.8, 0.003), (0.08, 0.7, 0.002)])
def test_the_intervals_cover_what_was_planted(play, share, sd):
    rng, hits, runs = np.random.default_rng(3), np.zeros(3), 300
    for _ in range(runs):
        found = fit(curve(play, share, sd=sd, rng=rng), resolution_mm=1e-5)
        hits += (
            abs(found.play.value - play) <= found.play.U,
            abs(found.windup.value - (1 - share)) <= found.windup.U,
            abs(found.lost.value - (0.2 - share * (0.2 - play))) <= found.lost.U,
        )
    assert np.all((hits / runs >= 0.925) & (hits / runs <= 0.975)), hits / runs  # of 800 runs: 0.93 to 0.97


def test_no_play_is_an_interval_that_reaches_zero():
    found = fit(curve(0.0, 0.9, sd=0.002, rng=np.random.default_rng(5)))
    assert found.play.value - found.play.U <= 0 <= found.play.value


def test_few_readings_beyond_the_knee_and_scatter_are_minded():
    late = fit(curve(0.17))
    assert "beyond the knee" in late.minds[0]
    rough = fit(curve(0.06, sd=0.02, rng=np.random.default_rng(8)))
    assert "scatter by 0.0" in rough.minds[0]


def test_missing_readings_are_passed_over():
    y = curve()
    y[3] = math.nan
    assert 3 not in fit(y).rows


def test_refusals():
    still = refused(np.tile([0.001, 0.0, -0.001], 7))
    assert still.field == "reading_mm" and "powered" in still.message
    assert "moves further" not in still.message
    far = refused(curve(0.02, 1.5))
    assert "does not move further than it is told" in far.message
    few = refused([0.0, 0.0, 0.01], X[:3])
    assert "Readings of the curve so far: 3" in few.message
    assert refused([0.0, 0.0, 0.0, 0.01, 0.02], [0, 0, 0, 0.1, 0.2]).field == "reading_mm"
    below = refused(curve(), np.where(X == 0.05, -0.05, X))
    assert (below.field, below.row) == ("commanded_mm", 5)
    assert refused(curve(), np.where(X == 0.05, math.nan, X)).row == 5
    assert "something is loose" in refused(curve(1.2, x=X * 20), X * 20).message
    assert refused(curve(), resolution_mm=0).field == "resolution_mm"
