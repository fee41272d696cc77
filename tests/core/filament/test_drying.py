"""Moisture and stock: limits, uncertainties, and every refusal."""

import math

import pytest

from core.errors import InputError
from core.filament.drying import Moisture, measure_drying, stock_left
from core.quantity import Estimate

U = {"u_balance_g": 0.2, "u_spool_g": 1.0}
PER_M = Estimate("mass_per_length", 2.98, 0.01, 12.0, "g/m")


@pytest.mark.parametrize(
    ("after", "polyamide", "says"),
    [(1196.0, False, Moisture.WET), (1199.5, False, Moisture.DRY), (1197.0, False, Moisture.UNCLEAR),
     (1196.0, True, Moisture.DRY), (1192.0, True, Moisture.WET)],
)
def test_limits(after, polyamide, says):
    assert measure_drying(1200.0, after, 200.0, **U, polyamide=polyamide).moisture is says


def test_loss_with_its_uncertainty():
    found = measure_drying(1200.0, 1196.0, 200.0, **U)
    assert found.loss.value == pytest.approx(0.004)
    assert found.loss.u == pytest.approx(math.hypot(math.sqrt(2) * 0.2 / 1000, 0.004 * 1.0 / 1000))
    assert found.estimates() == (found.loss,)
    assert measure_drying(1200.0, 1200.3, 200.0, **U).loss.value < 0  # within the balance's uncertainty


def test_stock():
    found = stock_left(796.0, 200.0, PER_M, **U)
    assert found.value == pytest.approx(200.0)
    assert found.u == pytest.approx(math.hypot(math.hypot(0.2, 1.0) / 2.98, 200.0 * 0.01 / 2.98))
    assert (found.name, found.unit) == ("stock", "m")


@pytest.mark.parametrize(
    ("before", "after", "spool", "field", "says"),
    [
        (1200.0, 1203.0, 200.0, "after_g", "swapped"),
        (1200.0, 900.0, 200.0, "after_g", "more than any filament takes up"),
        (190.0, 1196.0, 200.0, "before_g", "not above the 200 g"),
        (1200.0, 200.0, 200.0, "after_g", "not above"),
        (1200.0, 1196.0, -1.0, "spool_g", "0 for a coil"),
        (1.2e6, 1196.0, 200.0, "before_g", "more than 30 kg"),
        (math.nan, 1196.0, 200.0, "before_g", "more than 30 kg"),
    ],
)
def test_refusals(before, after, spool, field, says):
    with pytest.raises(InputError, match=says) as caught:
        measure_drying(before, after, spool, **U)
    assert caught.value.field == field


def test_stock_refuses_a_mass_below_the_spool():
    with pytest.raises(InputError, match="not above") as caught:
        stock_left(100.0, 200.0, PER_M, **U)
    assert caught.value.field == "now_g"
