"""A value found in the controller, held against the parts. Own computation by plain geometry."""

import math

import pytest

from core.errors import InputError
from core.machine_geometry.drive import Drive, DriveKind
from core.machine_geometry.foundsteps import Found, found_steps_effect

BELT = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20)


@pytest.mark.parametrize(
    "found, verdict, says",
    [
        (80.0, Found.AGREES, "80 steps/mm is what these parts give."),
        (
            80.63,
            Found.TUNED,
            "80.63 steps/mm cannot come from these parts (nearest: 80.0000). Someone may have tuned it: a part of 200 "
            "mm comes out 1.6 mm too long (0.79 %).",
        ),
        (
            79.4,
            Found.TUNED,
            "79.4 steps/mm cannot come from these parts (nearest: 80.0000). Someone may have tuned it: a part of 200 "
            "mm comes out 1.5 mm too short (0.75 %).",
        ),
        (
            80.02,
            Found.TUNED,
            "80.02 steps/mm is not what these parts give (80.0000); on 200 mm it makes 0.05 mm too long (0.02 %), less "
            "than the drive itself may be off. Enter 80.0000.",
        ),
        (
            80.001,
            Found.TUNED,
            "80.001 steps/mm is not what these parts give (80.0000); on 200 mm it makes 0.0025 mm too long (0.001 %), "
            "less than the drive itself may be off. Enter 80.0000.",
        ),
        (
            100.0,
            Found.OTHER_PARTS,
            "100 steps/mm cannot come from these parts (they give 80.0000): a part of 200 mm would be 50.0 mm too long "
            "(25.00 %). That is a wrong part in the list, no trimming; count again.",
        ),
    ],
)
def test_a_found_value_is_told_by_what_it_does_to_a_part(found, verdict, says):
    effect = found_steps_effect(BELT, found)
    assert (effect.verdict, effect.says) == (verdict, says)


def test_effect_of_a_found_value_with_its_uncertainty():
    scale, effect = found_steps_effect(BELT, 80.63, length_mm=200).estimates()
    assert (scale.name, scale.unit, effect.name, effect.unit) == ("found_scale", "1", "found_effect", "mm")
    assert scale.value == pytest.approx(0.007875, rel=1e-12)
    assert effect.value == pytest.approx(1.575, rel=1e-12)
    assert effect.u == pytest.approx(200 * 80.63 / 80 * 0.0005, rel=1e-12)


@pytest.mark.parametrize(
    "found, length, field",
    [(0, 200, "found_steps_mm"), (math.nan, 200, "found_steps_mm"), (80, -1, "length_mm"), (80, math.inf, "length_mm")],
)
def test_a_found_value_must_be_a_positive_number(found, length, field):
    with pytest.raises(InputError, match="must be a number above 0") as refused:
        found_steps_effect(BELT, found, length)
    assert refused.value.field == field
