"""Which temperatures a piece was printed at, by what was in force; common practice, no source."""

from datetime import UTC, datetime, timedelta

import pytest

from core.guidance.printedat import heat_in_force, heat_words, nozzle_of
from core.records.rows import SettingInForce

AT = datetime(2026, 11, 25, 9, tzinfo=UTC)


def was_set(name, new, hour, lot_id=1):
    return SettingInForce(1, lot_id, name, None, new, "°C", AT + timedelta(hours=hour), id=hour, serial=hour)


HISTORY = (
    was_set("nozzle_temperature", 210.0, 1),
    was_set("nozzle_temperature", 225.0, 5),
    was_set("bed_temperature", 60.0, 2, lot_id=None),
    was_set("nozzle_temperature", 250.0, 3, lot_id=2),
)


@pytest.mark.parametrize(
    ("lot_id", "hour", "held"),
    [
        (1, 0, {}),
        (1, 4, {"nozzle_temperature_c": 210.0, "bed_temperature_c": 60.0}),
        (1, 6, {"nozzle_temperature_c": 225.0, "bed_temperature_c": 60.0}),
        (1, None, {"nozzle_temperature_c": 225.0, "bed_temperature_c": 60.0}),
        (2, 4, {"nozzle_temperature_c": 250.0, "bed_temperature_c": 60.0}),
        (3, 4, {"bed_temperature_c": 60.0}),
    ],
)
def test_what_was_in_force_when_the_readings_were_begun_is_kept(lot_id, hour, held):
    at = None if hour is None else AT + timedelta(hours=hour)
    assert heat_in_force(HISTORY, lot_id, at) == held


def test_it_is_said_where_it_is_known():
    assert heat_words({"nozzle_temperature_c": 215.0, "bed_temperature_c": 60}) == "nozzle 215 °C, bed 60 °C"
    assert heat_words({"bed_temperature_c": 60.0}) == "bed 60 °C"
    assert heat_words({"nozzle_temperature_c": 215.5}) == "nozzle 215.5 °C"
    assert heat_words({"nozzle_temperature_c": None, "tolerance": "m"}) is None


def test_the_nozzle_of_a_trial_is_a_number_or_not_known():
    assert nozzle_of({"nozzle_temperature_c": 215}) == 215.0
    assert nozzle_of({"nozzle_temperature_c": "hot"}) is None and nozzle_of({}) is None
