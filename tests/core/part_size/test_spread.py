"""Spreads: NIST's two components, planted scatter of offset and of scale."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.part_size.spread import fit_spread
from tests.published import table


def printed(rng, pieces, lengths, *, between, within, bias=0.02, slope=-0.0005, scale=0.0):
    piece = np.repeat(np.arange(pieces), len(lengths))
    L = np.tile(lengths, pieces).astype(float)
    error = bias + slope * L + between * rng.standard_normal(pieces)[piece] + within * rng.standard_normal(L.size)
    error += scale * rng.standard_normal(pieces)[piece] * L
    return piece, L, error


def test_nist_machines_split_into_between_and_within():
    """NIST/SEMATECH e-Handbook, five diameters of five machines: mean squares 0.000137/4 and 0.000132/20."""
    rows = table("promise_nist_machine_diameters")
    machine = [int(row["machine"]) for row in rows]
    spread = fit_spread(machine, np.zeros(25), [float(row["diameter"]) for row in rows])
    assert spread.sd_within_mm**2 == pytest.approx(0.000132 / 20, rel=0.005)
    assert 5 * spread.sd_between_mm**2 + spread.sd_within_mm**2 == pytest.approx(0.000137 / 4, rel=0.005)


def test_what_was_planted_is_found():
    rng = np.random.default_rng(1)
    spread = fit_spread(*printed(rng, 400, (10, 50, 120), between=0.03, within=0.02))
    assert spread.sd_between_mm == pytest.approx(0.03, rel=0.1) and spread.sd_within_mm == pytest.approx(0.02, rel=0.1)
    assert spread.slope_ratio == pytest.approx(-0.0005, abs=5e-5)
    assert spread.sd_at([10.0, 120.0]) == pytest.approx(math.hypot(0.03, 0.02), rel=0.1)
    assert spread.bias_at(0.0) == pytest.approx(0.02, abs=3 * float(spread.u_bias_at(0.0)))
    assert (spread.pieces, spread.readings) == (400, 1200)


def test_pieces_that_differ_in_scale_spread_more_where_they_are_longer():
    lengths = (10, 50, 90, 140)
    spread = fit_spread(*printed(np.random.default_rng(5), 400, lengths, between=0.01, within=0.02, scale=3e-4))
    at = np.array([10.0, 140.0])
    assert spread.sd_at(at) == pytest.approx(np.sqrt(0.01**2 + 0.02**2 + (3e-4 * at) ** 2), rel=0.08)
    assert spread.sd_mm == spread.sd_at(140.0) and spread.dof == spread.dof_at(140.0)
    assert spread.u_bias_at(140.0) == pytest.approx(math.hypot(0.01, 3e-4 * 140) / 20, rel=0.3)


def test_a_line_for_each_piece_by_hand():
    """numpy's own line through each piece; their covariance; the pooled rest."""
    piece, L, error = printed(np.random.default_rng(6), 12, (10, 50, 90, 140), between=0.01, within=0.02, scale=3e-4)
    spread = fit_spread(piece, L, error)
    lines = np.array([np.polyfit(L[piece == p] - L.mean(), error[piece == p], 1)[::-1] for p in range(12)])
    assert (spread.bias_mm, spread.slope_ratio) == pytest.approx(tuple(lines.mean(axis=0)))
    assert spread.between == pytest.approx(np.cov(lines.T))
    rest = error - lines[piece, 0] - lines[piece, 1] * (L - L.mean())
    assert spread.sd_within_mm**2 == pytest.approx(rest @ rest / (48 - 24)) and spread.dof_within == 24


def test_one_reading_a_piece_tells_the_sum_alone():
    spread = fit_spread(range(12), [20.0] * 12, np.linspace(-0.03, 0.03, 12))
    assert math.isnan(spread.sd_within_mm) and spread.dof == 11
    assert spread.sd_mm == pytest.approx(np.std(np.linspace(-0.03, 0.03, 12), ddof=1))
    assert spread.u_bias_mm == pytest.approx(spread.sd_mm / math.sqrt(12)) and spread.slope_ratio == 0.0
    assert spread.sd_between_mm == pytest.approx(spread.sd_mm)
    sloped = fit_spread(range(12), np.linspace(10, 120, 12), np.random.default_rng(3).standard_normal(12))
    assert sloped.dof == 10 and sloped.u_slope_ratio > 0


@pytest.mark.parametrize(
    ("piece", "nominal", "error", "field"),
    [
        ([1, 1], [10, 20], [0.1, 0.2], "piece"),
        ([1, 2], [10, math.nan], [0.1, 0.2], "nominal_mm"),
        ([1, 2], [10, 10], [0.1, math.inf], "nominal_mm"),
        ([1, 2, 3], [10, 10, 10], [0.1, 0.1, 0.1], "error_mm"),
        ([1, 2], [10, 20], [0.1, 0.3], "error_mm"),
        ([1, 1, 2, 2], [10, 10, 10, 10], [0.1, 0.1, 0.1, 0.1], "error_mm"),
    ],
)
def test_what_shows_no_spread_is_refused(piece, nominal, error, field):
    with pytest.raises(InputError) as told:
        fit_spread(piece, nominal, error)
    assert told.value.field == field
