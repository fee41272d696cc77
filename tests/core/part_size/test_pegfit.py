"""Clearances, by the trade's numbers and by trying pairs."""

from dataclasses import replace

import numpy as np
import pytest

from core.errors import InputError
from core.part_size.pegfit import Mate, clearance_for, share_that_fits

HOLE, PEG = Mate(0.0, 0.03), Mate(0.0, 0.04)


def test_the_trades_numbers():
    """Common practice, no source: spreads 0.03 and 0.04: 0.10 mm lets 97.7 % together, 99 % need 0.116 mm."""
    assert share_that_fits(0.10, HOLE, PEG) == pytest.approx(0.977, abs=5e-4)
    assert clearance_for(0.99, HOLE, PEG) == pytest.approx((0.116, 0.0), abs=5e-4)


def test_pairs_go_together_as_often_as_said():
    rng, hole, peg = np.random.default_rng(1), Mate(-0.08, 0.03), Mate(0.02, 0.04)
    c, _ = clearance_for(0.95, hole, peg)
    room = c + hole.bias_mm + 0.03 * rng.standard_normal(100_000) - peg.bias_mm - 0.04 * rng.standard_normal(100_000)
    assert np.mean(room > 0) == pytest.approx(0.95, abs=0.003)
    assert share_that_fits(c, hole, peg) == pytest.approx(0.95)
    assert clearance_for(0.95, replace(hole, u_bias_mm=0.02), peg)[0] > c


def test_a_clearance_is_as_uncertain_as_the_parts_it_rests_on():
    """Means and spreads of 12 pegs and 12 holes drawn again and again: the clearances scatter by the u that is told."""
    rng, n = np.random.default_rng(2), 12
    found, told = [], []
    for _ in range(2000):
        holes, pegs = 0.03 * rng.standard_normal(n), 0.04 * rng.standard_normal(n)
        mates = [Mate(x.mean(), x.std(ddof=1), x.std(ddof=1) / n**0.5, n - 1) for x in (holes, pegs)]
        c, u = clearance_for(0.99, *mates)
        found.append(c)
        told.append(u)
    assert np.std(found) == pytest.approx(np.mean(told), rel=0.08)


def test_what_cannot_be_told_is_refused():
    for share in (0.0, 1.0):
        with pytest.raises(InputError) as told:
            clearance_for(share, HOLE, PEG)
        assert told.value.field == "share"
    with pytest.raises(InputError, match="measure several of each"):
        share_that_fits(0.1, Mate(0, 0), Mate(0, 0))
