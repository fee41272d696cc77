"""Mass per length: the usual strand, the quotient's uncertainty, and every refusal."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.filament.massperlength import diameter_from_mass, measure_mass_per_length
from core.quantity import Estimate

U = {"u_balance_g": 0.01, "u_length_mm": 0.5}


def test_usual_strand():
    """1.75 mm of 1.24 g/cm3 weighs 2.98 g/m, and 0.01 g and 0.5 mm make it known to 0.34 %."""
    exact = 1.24 * math.pi * 1.75**2 / 4
    assert f"{exact:.2f}" == "2.98"
    found = measure_mass_per_length([2.98], [1000.0], 1.75, **U)
    assert (found.value, found.unit, found.name) == (pytest.approx(2.98), "g/m", "mass_per_length")
    assert found.u / found.value == pytest.approx(math.hypot(0.01 / 2.98, 0.5 / 1000))
    assert math.isinf(found.dof)


def test_scatter_counts_and_the_balance_does_not_average_away():
    found = measure_mass_per_length([2.98, 3.02, 2.94], [1000.0] * 3, 1.75, **U)
    by_balance = found.value * np.mean([0.01 / mass for mass in (2.98, 3.02, 2.94)])
    assert found.u**2 == pytest.approx(0.04**2 / 3 + by_balance**2 + (found.value * 0.5 / 1000) ** 2)
    assert 2 <= found.dof < 4


def test_diameter_from_mass_and_density():
    area = Estimate("mass_per_length", 1.24 * math.pi * 1.70**2 / 4, 0.01, 8.0, "g/m")
    found = diameter_from_mass(area, Estimate("density", 1.24, 0.005, math.inf, "g/cm3"))
    assert found.value == pytest.approx(1.70, rel=1e-12)
    assert found.u / found.value == pytest.approx(math.hypot(0.01 / area.value, 0.005 / 1.24) / 2)
    assert found.dof > 8


@pytest.mark.parametrize(
    ("mass", "length", "field", "row", "says"),
    [
        ([], [], "mass_g", None, "No piece weighed"),
        ([2.98, 29.8], [1000.0, 1000.0], "mass_g", 1, "check the decimal mark"),
        ([0.298], [1000.0], "mass_g", 0, "plastic of 0.124"),
        ([0.0], [1000.0], "mass_g", 0, "not above zero"),
        ([0.15], [50.0], "length_mm", 0, "too short"),
        ([2.98], [math.nan], "length_mm", 0, "too short"),
    ],
)
def test_refusals(mass, length, field, row, says):
    with pytest.raises(InputError) as caught:
        measure_mass_per_length(mass, length, 1.75, **U)
    assert (caught.value.field, caught.value.row) == (field, row)
    assert says in caught.value.message


@pytest.mark.parametrize(("mass", "density", "field"), [(0.0, 1.24, "mass_per_length"), (3.0, -1.0, "density")])
def test_nothing_weighed_has_no_diameter(mass, density, field):
    with pytest.raises(InputError, match="is not above zero; weigh again") as caught:
        diameter_from_mass(
            Estimate("mass_per_length", mass, 0.01, math.inf, "g/m"),
            Estimate("density", density, 0.01, math.inf, "g/cm3"),
        )
    assert caught.value.field == field
