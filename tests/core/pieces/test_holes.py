"""Circles of so many sides that the caliper cannot see them."""

import math

import pytest

from core.pieces.catalogue import plan_set
from core.pieces.holes import DIAMETERS_MM, sides_of


@pytest.mark.parametrize("diameter", DIAMETERS_MM)
def test_no_side_lies_further_inside_than_five_thousandths(diameter):
    n = sides_of(diameter)
    assert n % 4 == 0
    assert diameter / 2 * (1 - math.cos(math.pi / n)) <= 0.005 < diameter / 2 * (1 - math.cos(math.pi / (n - 4)))


def test_small_bores_are_read_with_pins():
    says = {g.name: g.says for g in plan_set("holes").gauges}
    assert "pin" in says["hole 1 x"] and "pin" in says["hole 2 y"] and "pin" not in says["hole 3 x"]
    assert "pin" not in says["peg 1 x"]
