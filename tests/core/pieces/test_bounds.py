"""Limits that cannot be are refused at their field; heights lie on whole layers."""

import pytest

from core.errors import InputError
from core.pieces.bounds import Bounds, largest_whole_mm


@pytest.mark.parametrize(
    ("field", "value"),
    [("bed_x_mm", 20.0), ("caliper_mm", 40.0), ("reach_mm", 5.0), ("turn_x_mm", -1.0), ("layer_mm", 0.0),
     ("nozzle_mm", float("nan"))],
)  # fmt: skip
def test_what_cannot_be_is_refused(field, value):
    with pytest.raises(InputError, match="does not suit these pieces; type") as refused:
        Bounds(**{field: value})
    assert refused.value.field == field


def test_clean_heights_are_whole_layers():
    """20.1 at 0.2 rounds to 20.0 or 20.2; with a first layer of 0.3 heights are 0.3 + n 0.2."""
    assert Bounds().clean_height_mm(20.1) in (20.0, 20.2)
    assert Bounds(first_layer_mm=0.3).clean_height_mm(20.0) == pytest.approx(19.9)
    assert Bounds(layer_mm=0.16, first_layer_mm=0.2).clean_height_mm(4.0) == pytest.approx(0.2 + 24 * 0.16)


def test_whole_turns():
    assert [largest_whole_mm(40.0, most) for most in (39.9, 40.0, 119.999999999, 130.0)] == [0.0, 40.0, 120.0, 120.0]
    assert largest_whole_mm(0.0, 100.0) == 0.0


def test_a_bead_is_an_eighth_wider_than_the_bore():
    assert Bounds(nozzle_mm=0.4).bead_mm == 0.45
