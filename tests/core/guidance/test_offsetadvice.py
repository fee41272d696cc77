"""What other ladders foretell, in words: with uncertainty and trials, refused above the limit, or what would tell."""

import math
from datetime import UTC, datetime, timedelta

import pytest

from core.guidance.offsetadvice import ShopLadders, foretell_temperature
from core.records.rows import Event, Lot, Machine, SeriesPoint

NOON = datetime(2026, 3, 1, 12, tzinfo=UTC)
NAMES = ("Bramble", "Teasel", "Sedge", "Furze", "Gorse")
MACHINES = tuple(Machine(name, id=number) for number, name in enumerate(NAMES, 1))
LOTS = tuple(Lot(name, "PETG", id=number) for number, name in enumerate(("Slate 7", "Chalk 2", "Moss 4", "Ash 1"), 1))


def point(trial, machine, lot, value, u=1.5, days=0):
    return SeriesPoint(trial, NOON + timedelta(days=days), value, u, math.inf, "°C", machine, lot)


def shop(*points, events=()):
    return ShopLadders(points, MACHINES, LOTS, events)


THREE = (point(4, 1, 1, 210.0), point(5, 2, 1, 216.0), point(9, 1, 2, 204.0))


def test_three_ladders_foretell_the_fourth():
    found = foretell_temperature(shop(*THREE), 2, 2, 240.0)
    assert found.estimate.value == pytest.approx(210.0) and found.trial_ids == (4, 5, 9) and not found.refused
    assert found.says == (
        "Predicted for this machine and lot from other ladders of the shop: 210.0 ± 7.8 °C (trials 4, 5, 9)."
    )


def test_above_the_limit_it_is_refused():
    found = foretell_temperature(shop(*THREE), 2, 2, 205.0)
    assert found.refused and "above this machine's limit of 205 °C. Refused" in found.says
    near = foretell_temperature(shop(*THREE), 2, 2, 212.0)
    assert not near.refused and "upper end is above this machine's limit of 212 °C" in near.says
    assert "limit" not in foretell_temperature(shop(*THREE), 2, 2, None).says


def test_its_own_ladder_agrees_or_asks_for_the_sensor():
    agrees = foretell_temperature(shop(*THREE, point(11, 2, 2, 214.0)), 2, 2, 240.0)
    assert "Its own ladder (trial 11) agrees: 214 °C" in agrees.says
    off = foretell_temperature(shop(*THREE, point(11, 2, 2, 230.0)), 2, 2, 240.0)
    assert "says 230 °C, 20 K from it, and ±8 K is due: check the sensor" in off.says


@pytest.mark.parametrize(
    ("points", "says"),
    [
        ((), "this ladder on this machine would tell"),
        ((point(1, 1, 2, 210.0),), "this machine's sensor is not known against the others"),
        ((point(1, 2, 1, 210.0),), "shares one of the lots “Slate 7” with this one"),
        ((point(1, 1, 2, 210.0), point(2, 2, 1, 215.0)), "one of “Slate 7” on one of “Bramble” would tell"),
        (
            tuple(point(k, k, 2, 210.0) for k in (1, 3, 4, 5)) + (point(9, 2, 1, 215.0),),
            "on one of “Bramble”, “Sedge”, “Furze”, … would tell",
        ),
    ],
)
def test_what_is_not_linked_names_the_ladder_that_would_tell(points, says):
    found = foretell_temperature(shop(*points), 2, 2, 240.0)
    assert found.estimate is None and says in found.says and found.trial_ids == ()


def test_after_another_heater_the_ladders_before_say_nothing():
    heater = Event("heater", machine_id=1, at=NOON + timedelta(days=1), id=1)
    assert foretell_temperature(shop(*THREE, events=(heater,)), 2, 2, 240.0).estimate is None
    again = (point(12, 1, 1, 220.0, days=2), point(13, 1, 2, 214.0, days=2))
    found = foretell_temperature(shop(*THREE, *again, events=(heater,)), 2, 2, 240.0)
    assert found.trial_ids == (5, 12, 13) and found.estimate.value == pytest.approx(210.0)
    taken_back = Event("note", machine_id=1, takes_back=1, at=NOON + timedelta(days=3), id=2)
    assert foretell_temperature(shop(*THREE, events=(heater, taken_back)), 2, 2, 240.0).trial_ids == (4, 5, 9)


def test_what_belongs_to_no_machine_or_lot_on_record_does_not_count():
    odd = (point(20, None, 1, 250.0), point(21, 1, None, 250.0), point(22, 9, 1, 250.0), point(23, 1, 9, 250.0),
           point(24, 2, 1, 250.0, u=0.0))  # fmt: skip
    assert foretell_temperature(shop(*THREE, *odd), 2, 2, None) == foretell_temperature(shop(*THREE), 2, 2, None)
