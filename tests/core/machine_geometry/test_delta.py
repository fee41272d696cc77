"""Rods of a delta: the share of a wrong length in the size of parts, against the geometry solved point by point."""

import math

import numpy as np
import pytest
from scipy.optimize import brentq, root

from core.errors import InputError
from core.machine_geometry.delta import U_ROD_MM, carriage_height_mm, scale_from_rods

TOWERS = (90.0, 210.0, 330.0)


def reached(x, y, entered, true):
    """Where the nozzle goes for a commanded place at height 0: (rod, radius) as entered and as they are."""
    heights = [carriage_height_mm(x, y, 0.0, *entered, tower) for tower in TOWERS]

    def apart(place):
        return [carriage_height_mm(*place, *true, tower) - h for tower, h in zip(TOWERS, heights, strict=True)]

    return root(apart, (x, y, 0.0), method="lm", tol=1e-13).x


def flat_radius(entered, true_rod, at_mm):
    """The true radius at which the bed is as high at a radius as in the middle."""
    entered_rod, radius = entered
    places = [(at_mm * math.cos(a), at_mm * math.sin(a)) for a in np.linspace(0, 2 * math.pi, 12, endpoint=False)]

    def bowl(more):
        true = (true_rod, radius + more)
        middle = reached(0.0, 0.0, (entered_rod, radius), true)[2]
        return float(np.mean([reached(x, y, (entered_rod, radius), true)[2] for x, y in places])) - middle

    return radius + brentq(bowl, -1.0, 1.0)


@pytest.mark.parametrize(("rod", "radius", "off"), [(215.0, 105.0, 0.5), (250.0, 120.0, -0.4), (300.0, 180.0, 0.3)])
def test_the_share_is_that_of_the_geometry_solved_near_the_centre(rod, radius, off):
    true = (rod + off, flat_radius((rod, radius), rod + off, 5.0))
    x = [reached(at, 0.0, (rod, radius), true)[0] for at in (-5.0, 5.0)]
    found = scale_from_rods(rod, rod + off, radius)
    assert found.value == pytest.approx((x[1] - x[0]) / 10.0 - 1.0, rel=0.01)
    assert found.u == pytest.approx(abs(found.value / off) * U_ROD_MM)
    assert (found.name, found.unit) == ("delta_scale", "1")


def test_a_bed_flat_at_80_mm_and_parts_too_large_at_once():
    """Rods 215 mm entered, 215.5 mm true: flat again at R + 0.14 mm, parts 0.17 % too large. Own computation."""
    radius = flat_radius((215.0, 105.0), 215.5, 80.0)
    assert radius == pytest.approx(105.1397, abs=2e-3)
    x = [reached(at, 0.0, (215.0, 105.0), (215.5, radius))[0] for at in (-80.0, 80.0)]
    assert (x[1] - x[0]) / 160.0 - 1.0 == pytest.approx(0.00169, abs=5e-5)


def test_a_rod_does_not_reach_everywhere():
    assert math.isnan(carriage_height_mm(200.0, 0.0, 0.0, 215.0, 105.0, 180.0))


@pytest.mark.parametrize(
    ("arguments", "field", "message"),
    [
        ((0.0, 215.0, 105.0), "rod_mm", "A delta has rods and a radius above 0 mm; measure and type them."),
        ((215.0, math.inf, 105.0), "rod_measured_mm", "A delta has rods and a radius above 0 mm"),
        ((215.0, 215.0, -1.0), "radius_mm", "A delta has rods and a radius above 0 mm"),
        ((105.0, 105.0, 215.0), "radius_mm", "The radius 215 mm is not below the rod length 105 mm"),
        ((215.0, 230.0, 105.0), "rod_measured_mm", "230 mm is 15.0 mm off the rod as entered; was it measured"),
    ],
)
def test_refusals(arguments, field, message):
    with pytest.raises(InputError) as refused:
        scale_from_rods(*arguments)
    assert refused.value.field == field and refused.value.message.startswith(message)
