"""What a volume weighs: the identity of density and mass per length, and every refusal."""

import math

import pytest

from core.errors import InputError
from core.flow_trials.plastic import Density, MassPerLength


def test_one_filament_weighs_the_same_by_both():
    """1.75 mm of 1.24 g/cm3 is 2.98 g/m: pi/4 1.75^2 1.24."""
    per_m = 1.24 * math.pi * 1.75**2 / 4
    assert f"{per_m:.2f}" == "2.98"
    assert MassPerLength(per_m, 1.75).g_mm3 == pytest.approx(Density(1.24).g_mm3, rel=1e-12)
    assert Density(1.24).g_mm3 == pytest.approx(0.00124)


@pytest.mark.parametrize(
    ("make", "field", "says"),
    [
        (lambda: Density(1240.0), "density_g_cm3", "Typed in kg/m³?"),
        (lambda: Density(math.nan), "density_g_cm3", "no filament"),
        (lambda: Density(1.24, 0.0), "u_ratio", "not between 0 and 20 %"),
        (lambda: MassPerLength(0.003, 1.75), "mass_per_length_g_m", "about 3 g/m"),
        (lambda: MassPerLength(2.98, 0.0), "filament_mm", "diameter"),
        (lambda: MassPerLength(2.98, 1.75, 0.3), "u_ratio", "30 %"),
    ],
)
def test_refusals(make, field, says):
    with pytest.raises(InputError) as refused:
        make()
    assert refused.value.field == field
    assert says in refused.value.message
