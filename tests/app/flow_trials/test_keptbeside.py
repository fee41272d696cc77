"""What kept trials say beside a flow trial: ceilings with their temperature, the factor with what it was found with."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.pages.flow_trials.keptbeside import factor_found, known_ceilings
from app.pages.flow_trials.wall import WallPage
from core.quantity import Estimate
from core.records.rows import SettingInForce, Trial
from tests.app.atpage import verdict
from tests.app.flow_trials.flowpages import CONDITIONS, open_page, put_readings, type_setting


def kept_ceiling(store, context, ceilings, temperatures=()):
    """Keep a ceiling trial: name and rate of each estimate, and the temperatures of its strands."""
    estimates = tuple(Estimate(name, rate, 0.2, 9.0, "mm3/s") for name, rate in ceilings.items())
    readings = {"temperature_c": list(temperatures), "raw": [""] * len(temperatures)}
    return store.keep(Trial("ceiling", context.machine.id, context.lot.id, readings=readings, estimates=estimates))


def test_a_ceiling_at_one_temperature_takes_it_from_its_strands(store, shop):
    kept_ceiling(store, shop, {"flow_ceiling": 11.0, "highest_speed": 108.0}, [229.0, None, 231.0])
    (found,) = known_ceilings(shop, shop.machine.id, shop.lot.id)
    assert (found.temperature_c, found.ceiling.value) == (230.0, 11.0)


def test_several_temperatures_stand_in_the_names_and_what_is_withdrawn_or_open_does_not_count(store, shop):
    kept = kept_ceiling(store, shop, {"flow_ceiling_210c": 8.0, "flow_ceiling_230c": 11.0})
    bad = kept_ceiling(store, shop, {"flow_ceiling_250c": 15.0})
    store.withdraw(bad.id, "wet filament")
    store.save_draft(Trial("ceiling", shop.machine.id, shop.lot.id, readings={"raw": ["1"]}))
    kept_ceiling(store, shop, {"flow_ceiling": 9.0})  # nobody knows at which temperature
    found = known_ceilings(shop, shop.machine.id, shop.lot.id)
    assert [(one.temperature_c, one.trial_id) for one in found] == [(210.0, kept.id), (230.0, kept.id)]


def test_the_factor_in_force_knows_its_conditions(store, shop):
    assert factor_found(shop, shop.machine.id, shop.lot.id) is None
    setting = SettingInForce(shop.machine.id, shop.lot.id, "flow_factor", 1.0, 0.97, "1")
    flow = Estimate("flow_ratio_mass", 0.97, 0.006, 30.0, "1")
    store.keep(Trial("mass", shop.machine.id, shop.lot.id, conditions=CONDITIONS, estimates=(flow,)), (setting,))
    found = factor_found(shop, shop.machine.id, shop.lot.id)
    assert (found.temperature_c, found.rate_mm3_s, found.nozzle_mm) == (210.0, 4.0, 0.4)


@pytest.fixture
def page(qtbot, shop):
    page = open_page(qtbot, shop, WallPage)
    type_setting(page, "temperature_c", "210")
    type_setting(page, "rate_mm3_s", "4")
    return page


@pytest.mark.parametrize("temperature", ["206", "210", "215"])
def test_within_five_kelvin_the_rate_is_held_against_the_ceiling(page, store, shop, temperature):
    kept_ceiling(store, shop, {"flow_ceiling": 6.0}, [210.5] * 5)
    type_setting(page, "temperature_c", temperature)
    put_readings(page, ["0.45"] * 8)
    assert "more than half the flow ceiling of 6 mm³/s" in verdict(page)


def test_above_the_ceiling_it_is_refused_at_the_field(page, store, shop):
    kept_ceiling(store, shop, {"flow_ceiling_208c": 3.0})
    put_readings(page, ["0.45"] * 8)
    assert "above the flow ceiling of 3 mm³/s" in verdict(page)
    assert "above the flow ceiling" in page.form.typed["rate_mm3_s"].accessibleDescription()


def test_a_ceiling_at_another_temperature_only_is_marked(page, store, shop):
    kept_ceiling(store, shop, {"flow_ceiling_220c": 3.0})
    put_readings(page, ["0.45"] * 8)
    assert "The flow ceiling was measured at 220 °C: outside ±5 K of it nothing is told at 210 °C" in verdict(page)
    assert "above the flow ceiling" not in verdict(page)


def test_the_result_names_machine_and_lot_and_keeps_them_when_looked_at_again(page, store, shop):
    put_readings(page, ["0.45"] * 8)
    assert "Bramble, Slate 7" in verdict(page)
    page.keep()
    shop.select_lot(None)
    assert "Slate 7" not in verdict(page)
    page.picker.setFocus()
    QTest.keyClick(page.picker, Qt.Key.Key_Down)
    assert "Bramble, Slate 7" in verdict(page)
