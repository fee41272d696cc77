"""Density by weighing in water: the water against the published table, planted samples, and every refusal."""

import math

import numpy as np
import pytest

from core.errors import InputError
from core.filament.density import U_BUBBLES_G, measure_density, water_density_g_cm3
from tests.published import table


@pytest.mark.parametrize("row", table("density_water"), ids=lambda row: row["water_c"])
def test_water_as_published(row):
    found = 1000 * water_density_g_cm3(float(row["water_c"]))
    assert found == pytest.approx(float(row["density_kg_m3"]), abs=1.3e-3)


@pytest.mark.parametrize("water_c", [-0.1, 40.1, math.nan])
def test_water_outside_the_formula_is_refused(water_c):
    with pytest.raises(InputError, match="0 to 40") as caught:
        water_density_g_cm3(water_c)
    assert caught.value.field == "water_c"


def test_sinking_and_floating_samples():
    rho_w = water_density_g_cm3(20.0)
    for rho in (1.24, 0.90):
        air = 6.0
        found = measure_density([air], [air * (1 - rho_w / rho)], 20.0, u_balance_g=0.01)
        assert found.value == pytest.approx(rho, rel=1e-12)
        assert (found.name, found.unit) == ("density", "g/cm3")


def test_uncertainty_by_the_law_of_propagation():
    """JCGM 100:2008 5.1.2 with numerical sensitivities."""
    air, water, t = 6.0, 1.17, 21.0

    def rho(a, w, temperature):
        return water_density_g_cm3(temperature) * a / (a - w)

    by_air = (rho(air + 1e-4, water, t) - rho(air - 1e-4, water, t)) / 2e-4
    by_water = (rho(air, water + 1e-4, t) - rho(air, water - 1e-4, t)) / 2e-4
    by_t = (rho(air, water, t + 1) - rho(air, water, t - 1)) / 2
    u = math.hypot(by_air * 0.01, by_water * math.hypot(0.01, U_BUBBLES_G), by_t)
    found = measure_density([air], [water], t, u_balance_g=0.01)
    assert found.u == pytest.approx(u, rel=1e-6)
    assert found.u / found.value == pytest.approx(0.005, abs=0.001)  # half a percent with 6 g


def test_several_samples_and_the_end_of_the_range():
    found = measure_density([6.0, 6.0, 6.0], [1.17, 1.20, 1.14], 40.0, u_balance_g=0.001, u_bubbles_g=0.0)
    each = water_density_g_cm3(40.0) * 6.0 / (6.0 - np.array([1.17, 1.20, 1.14]))
    assert found.value == pytest.approx(float(np.mean(each)))
    assert found.u == pytest.approx(float(np.std(each, ddof=1)) / math.sqrt(3), rel=0.01)
    assert found.dof == pytest.approx(2.0, rel=0.05)


@pytest.mark.parametrize(
    ("air", "water", "field", "says"),
    [
        ([], [], "air_g", "No sample"),
        ([0.5], [0.1], "air_g", "too little"),
        ([1.17], [6.0], "water_g", "swapped"),
        ([6.0], [5.9], "water_g", "decimal mark"),
        ([6.0], [-60.0], "water_g", "decimal mark"),
    ],
)
def test_refusals(air, water, field, says):
    with pytest.raises(InputError, match=says) as caught:
        measure_density(air, water, 20.0, u_balance_g=0.01)
    assert caught.value.field == field
