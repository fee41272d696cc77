"""The verdict on a weighing: wet, dry, too close to tell, and what is left."""

import math

import pytest

from core.errors import InputError
from core.guidance.dryingadvice import Weighing, judge_weighing, usual_mass_per_length
from core.guidance.verdict import Setting
from core.quantity import Estimate
from core.records.rows import Lot

LOT = Lot("Slate 7", "PETG", nominal_diameter_mm=1.75, claimed_tolerance_mm=0.03, spool_mass_g=200.0)
PER_M = Estimate("mass_per_length", 3.05, 0.01, 12.0, "g/m")


@pytest.mark.parametrize(
    ("material", "after", "setting", "says"),
    [
        ("PETG", 1195.0, Setting.FILAMENT_LOT, "above 0.3 % it was wet"),
        ("PA6", 1195.5, Setting.UNDECIDED, "0.5 % lies inside"),
        ("PA6", 1196.5, Setting.LEAVE, "up to 0.5 %"),
        ("unknown", 1199.9, Setting.LEAVE, "up to 0.3 %"),
    ],
)
def test_moisture(material, after, setting, says):
    lot = Lot("L", material, spool_mass_g=200.0)
    judged = judge_weighing(Weighing(1200.0, after, 0.2), lot, PER_M)
    assert [advice.setting for advice in judged.advice] == [setting]
    assert says in judged.advice[0].because
    assert [e.name for e in judged.estimates()] == ["drying_loss", "stock"]
    assert judged.method == "drying 1"
    assert not judged.mind


def test_stock_alone():
    judged = judge_weighing(Weighing(None, 505.0, 0.2), LOT, PER_M)
    assert judged.advice == ()
    assert judged.stock.value == pytest.approx(100.0)
    assert [e.name for e in judged.estimates()] == ["stock"]


def test_stock_by_the_claim_says_that_it_is_unverified():
    judged = judge_weighing(Weighing(None, 505.0, 0.2), LOT)
    assert judged.stock.value == pytest.approx(305.0 / (1.27 * math.pi * 1.75**2 / 4))
    assert judged.stock.u / judged.stock.value > 0.01
    assert "unverified" in judged.mind[0]


def test_stock_that_cannot_be_told():
    judged = judge_weighing(Weighing(1200.0, 1199.0, 0.2), Lot("L", "wood", spool_mass_g=0.0))
    assert judged.stock is None
    assert "cannot be told" in judged.mind[0]
    assert [e.name for e in judged.estimates()] == ["drying_loss"]


def test_usual_mass_per_length_needs_material_and_claim():
    assert usual_mass_per_length(Lot("L", "PETG")) is None
    assert usual_mass_per_length(Lot("L", "wood", nominal_diameter_mm=1.75)) is None
    loose = usual_mass_per_length(Lot("L", "PETG", nominal_diameter_mm=1.75))
    tight = usual_mass_per_length(LOT)
    assert loose.u > tight.u


def test_empty_spool_must_be_known():
    with pytest.raises(InputError, match="empty spool") as caught:
        judge_weighing(Weighing(None, 505.0, 0.2), Lot("L", "PETG"))
    assert caught.value.field == "spool_mass_g"
