"""The page *Mass*, by keyboard."""

import math

import pytest
from PySide6.QtCore import QLocale

from app.pages.flow_trials.mass import MassPage
from core.errors import StoreError
from core.quantity import Estimate, told_value
from core.records.rows import Instrument, Lot, Trial
from tests.app.atpage import verdict
from tests.app.flow_trials.flowpages import choose, open_page, put_readings, type_readings, type_setting

SETTINGS = {
    "temperature_c": "235",
    "rate_mm3_s": "4",
    "density_g_cm3": "1.27",
    "path_filament_mm": "2100",
}  # 6.415 g


@pytest.fixture
def page(qtbot, shop):
    page = open_page(qtbot, shop, MassPage)
    for key, text in SETTINGS.items():
        type_setting(page, key, text)
    return page


def test_masses_typed_by_keyboard_give_a_factor(qtbot, page, store, shop):
    caliper = store.add_instrument(Instrument("Caliper 2"))
    shop.instruments_changed.emit()
    shop.select_instrument(caliper.id)
    type_readings(qtbot, page, ["6.62", "6,61", "6.60 g"])
    assert "Flow factor: Change the flow factor from 1 to 0.97" in verdict(page)
    assert "(mass)" in verdict(page)
    assert page.plot.data.point_count == 3
    assert page.plot.data.curves[1].mean[0] == pytest.approx(6.415, abs=1e-3)
    page.keep()
    kept = store.trial(store.trials(subject="mass")[0].id)
    assert [e.name for e in kept.estimates] == ["flow_ratio_mass", "flow_ratio"]
    assert kept.conditions["bead_model"] == "obround"
    assert kept.instrument_id is None  # a caliper weighs nothing
    assert kept.readings["raw"] == ["6.62", "6,61", "6.60 g"]
    assert store.in_force("flow_factor", shop.machine.id, shop.lot.id).new == told_value(kept.estimates[1]) == 0.97


def test_half_the_mass_is_a_hollow_part(qtbot, page):
    type_readings(qtbot, page, ["3.34", "3.35"])
    assert "Mass 0.52 of expected: a hollow part or one with infill?" in verdict(page)


def test_a_slip_is_refused_at_its_cell(qtbot, page):
    type_readings(qtbot, page, ["6.42", "64.2"])
    assert "decimal mark" in page.form.model.problem(1, "measured_mm") + page.form.model.problem(0, "measured_mm")


def test_by_mass_per_length_the_density_is_not_asked(page):
    put_readings(page, ["6.42", "6.43"])
    choose(page, "by", "mass_per_length")
    assert page.form.typed["density_g_cm3"].isHidden()
    assert not page.form.typed["mass_per_length_g_m"].isHidden()
    assert page.form.typed["mass_per_length_g_m"].accessibleDescription()  # the field that is asked for, in sight
    type_setting(page, "mass_per_length_g_m", "3.06")
    assert "tests the feed" in verdict(page)
    assert page.result.found.flow.value == pytest.approx(2100 * 3.06e-3 / 6.425)


def test_a_path_counted_at_factor_one_or_in_volume(page):
    put_readings(page, ["6.42", "6.43"])
    type_setting(page, "in_force_ratio", "0.97")
    with_factor = page.result.found.flow.value
    choose(page, "path_counted", "mm at_one")
    assert page.result.found.flow.value == pytest.approx(with_factor * 0.97)
    choose(page, "path_counted", "cm3 in_force")
    assert page.form.typed["filament_mm"].isHidden()
    type_setting(page, "volume_cm3", "5.0511")
    assert page.result.found.flow.value == pytest.approx(with_factor * 0.97 / 0.97, rel=1e-4)
    type_setting(page, "volume_cm3", "-1")
    assert "cannot be" in page.form.typed["volume_cm3"].accessibleDescription()


def test_a_density_in_other_units_is_refused_at_its_field(page):
    put_readings(page, ["6.42", "6.43"])
    type_setting(page, "density_g_cm3", "1270")
    assert "kg/m³" in page.form.typed["density_g_cm3"].accessibleDescription()


def test_density_and_mass_per_length_of_the_lot_are_used_with_their_uncertainty(qtbot, shop, store):
    store.keep(
        Trial(
            "density",
            lot_id=shop.lot.id,
            estimates=(
                Estimate("density", 1.262, 0.0025, 9.0, "g/cm3"),
                Estimate("mass_per_length", 3.03, 0.006, 9.0, "g/m"),
            ),
        )
    )
    page = open_page(qtbot, shop, MassPage)
    assert page.form.number("density_g_cm3") == pytest.approx(1.262)
    assert page.form.number("mass_per_length_g_m") == pytest.approx(3.03)
    for key in ("temperature_c", "rate_mm3_s", "path_filament_mm"):
        type_setting(page, key, SETTINGS[key])
    put_readings(page, ["6.37"])
    kept = page.result.found.flow
    assert kept.u / kept.value == pytest.approx((0.015**2 / 6.37**2 + (0.0025 / 1.262) ** 2) ** 0.5)
    type_setting(page, "density_g_cm3", "1.27")
    typed = page.result.found.flow
    assert typed.u / typed.value == pytest.approx((0.015**2 / 6.37**2 + 0.005**2) ** 0.5)


def test_a_decimal_comma_is_shown_where_it_is_used(qtbot, page):
    QLocale.setDefault(QLocale("de_DE"))
    try:
        type_readings(qtbot, page, ["6,62", "6,61", "6,60"])
        assert "0,97" in verdict(page)
    finally:
        QLocale.setDefault(QLocale.c())


def test_a_coarse_balance_is_minded(page):
    put_readings(page, ["6.42", "6.43"])
    type_setting(page, "u_balance_g", "0.15")
    assert "print at least 15 g" in verdict(page)


def test_a_draft_found_again_shows_the_fields_it_needs(page, store, shop):
    choose(page, "by", "mass_per_length")
    choose(page, "path_counted", "cm3 at_one")
    put_readings(page, ["6.42"])
    here = shop.lot.id
    shop.select_lot(None)
    shop.select_lot(store.add_lot(Lot("Slate 8", "PETG")).id)
    assert not page.form.typed["density_g_cm3"].isHidden()
    shop.select_lot(here)
    assert page.form.typed["density_g_cm3"].isHidden()
    assert not page.form.typed["volume_cm3"].isHidden()
    assert page.form.model.rows()[0]["raw"] == "6.42"


def test_a_store_that_fails_is_said_and_the_mass_still_counts(page, store, shop, monkeypatch):
    def fail(*_where, **_more):
        raise StoreError("the disk is gone")

    said = []
    shop.notice.connect(lambda text, _level: said.append(text))
    monkeypatch.setattr(store, "newest", fail)
    put_readings(page, ["6.42", "6.43"])
    assert "Change nothing" in verdict(page)
    assert "the disk is gone" in said


def test_the_path_of_a_box_laid_meanwhile_is_taken_while_nothing_is_weighed(page, store, shop):
    """The page Toolpaths keeps what a path commands; all that was typed here stays."""

    def lay(length_mm):
        path = Estimate("path_filament", length_mm, 0.0, math.inf, "mm")
        trial = Trial("toolpaths", shop.machine.id, shop.lot.id, conditions={"filament_mm": 2.85}, estimates=(path,))
        shop.kept.emit(store.keep(trial))

    choose(page, "path_counted", "cm3 at_one")
    lay(980.5)
    fields = page.form.typed
    assert (fields["path_filament_mm"].value(), fields["filament_mm"].value()) == (980.5, 2.85)
    assert fields["path_counted"].value() == "mm in_force" and not fields["path_filament_mm"].isHidden()
    assert fields["temperature_c"].value() == 235
    put_readings(page, ["6.42"])
    lay(1200.0)
    assert fields["path_filament_mm"].value() == 980.5


def test_a_path_that_cannot_be_read_is_said(page, store, shop, monkeypatch):
    said = []
    shop.notice.connect(lambda text, level: said.append((text, level)))
    path = Estimate("path_filament", 980.5, 0.0, math.inf, "mm")
    kept = store.keep(Trial("toolpaths", shop.machine.id, shop.lot.id, estimates=(path,)))

    def fail(*_arguments, **_named):
        raise StoreError("The database is locked.")

    monkeypatch.setattr(store, "newest", fail)
    shop.kept.emit(kept)
    assert ("The database is locked.", "error") in said and page.form.typed["path_filament_mm"].value() == 2100
