"""The page *Wall*, by keyboard, and what the flow pages share: estimates side by side, the factor put in force."""

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.pages.flow_trials.wall import WallPage
from core.errors import StoreError
from core.quantity import told_value
from core.records.rows import Instrument, Lot
from tests.app.atpage import verdict
from tests.app.flow_trials.flowpages import choose, kept_flow, open_page, put_readings, type_readings, type_setting

THICK = ["0.48", "0,48", "0.49", "0.47", "0.48", "0.49", "0.47", "0.48"]


@pytest.fixture
def page(qtbot, shop):
    page = open_page(qtbot, shop, WallPage)
    type_setting(page, "temperature_c", "210")
    type_setting(page, "rate_mm3_s", "4")
    return page


def test_eight_walls_typed_by_keyboard_give_a_factor_from_the_one_in_force(qtbot, page, store, shop):
    type_setting(page, "in_force_ratio", "0,98")
    type_setting(page, "sd_lateral_mm", "0")
    type_readings(qtbot, page, THICK)
    assert "Flow factor: Change the flow factor from 0.98 to 0.91" in verdict(page)
    assert "no cure for a size" in verdict(page)
    assert "nozzle 0.4 mm, 210 °C ± 5 K, up to 4 mm³/s" in verdict(page)
    assert "never cures a size" in page.card.untouched.text()
    assert page.plot.data.point_count == 8
    assert page.form.model.text(0, "error") == "−6.9"
    qtbot.mouseClick(page.card.keep_button, Qt.MouseButton.LeftButton)
    (kept,) = store.trials(subject="wall")
    assert [e.name for e in kept.estimates] == ["flow_ratio_wall", "flow_ratio"]
    assert kept.method == "wall 1"
    (setting,) = store.settings(shop.machine.id, shop.lot.id)
    assert (setting.name, setting.old, setting.unit, setting.trial_id) == ("flow_factor", 0.98, "1", kept.id)
    assert setting.new == told_value(kept.estimates[1]) == 0.913
    assert "Change the flow factor" in verdict(page)  # still in sight
    assert not page.form.typed["nozzle_mm"].isEnabled()


def test_the_next_trial_starts_from_the_factor_put_in_force(page, store, shop):
    type_setting(page, "sd_lateral_mm", "0")
    put_readings(page, THICK)
    page.keep()
    page.begin_anew()
    set_now = store.in_force("flow_factor", shop.machine.id, shop.lot.id)
    assert page.form.number("in_force_ratio") == pytest.approx(set_now.new, abs=1e-6)
    assert page.form.number("temperature_c") == 210
    put_readings(page, ["0.45"] * 8)
    assert "Change nothing" in verdict(page)
    page.keep()
    assert store.in_force("flow_factor", shop.machine.id, shop.lot.id).verified_by is not None


def test_estimates_stand_side_by_side_and_together(page, store, shop):
    mass = kept_flow(store, shop, "mass", 0.995)
    top = kept_flow(store, shop, "top", 1.0, 0.015)
    put_readings(page, ["0.46"] * 8)
    assert "(wall, mass, top pads)" in verdict(page)
    page.view.setFocus()
    QTest.keyClick(page.view, Qt.Key.Key_Down)
    data = page.plot.data
    assert [float(series.x[0]) for series in data.points] == [1, 2, 3]
    assert all(series.U[0] > 0 for series in data.points)
    assert data.points[1].y[0] == pytest.approx(-0.5)
    assert "together" in data.curves[1].name
    assert "wall" in data.summary and "mass" in data.summary
    page.keep()
    kept = store.trials(subject="wall")[0]
    assert sorted(kept.used) == [mass.id, top.id]
    assert [float(series.x[0]) for series in page.plot.data.points] == [1, 2, 3]  # with those it used


def test_a_ridged_wall_conflicts_with_the_mass_and_the_factor_is_kept(page, store, shop):
    kept_flow(store, shop, "mass", 0.995)
    kept_flow(store, shop, "top", 1.0, 0.015)
    type_setting(page, "sd_lateral_mm", "0")
    type_setting(page, "layers_in_contact", "75")
    put_readings(page, ["0.50"] * 8)
    assert "Keep the factor of 1;" in verdict(page)
    assert "ridges under the jaws" in verdict(page)
    page.view.setCurrentIndex(1)
    assert [curve.name for curve in page.plot.data.curves] == ["in force, 1"]
    assert "they conflict" in page.plot.data.summary
    page.keep()
    assert store.settings(shop.machine.id) == ()
    assert [e.name for e in store.trials(subject="wall")[0].estimates] == ["flow_ratio_wall"]


def test_an_estimate_at_another_temperature_is_left_out(page, store, shop):
    kept_flow(store, shop, "mass", 0.90, temperature_c=230.0)
    put_readings(page, ["0.45"] * 8)
    assert "(wall)" in verdict(page)
    assert "is left out: it was found at 230 °C" in verdict(page)


def test_a_factor_in_force_found_at_another_temperature_is_marked(page, store, shop):
    type_setting(page, "sd_lateral_mm", "0")
    put_readings(page, THICK)
    page.keep()
    page.begin_anew()
    type_setting(page, "temperature_c", "230")
    put_readings(page, ["0.45"] * 8)
    assert "The factor in force: Tested at 210 °C, used at 230 °C" in verdict(page)


def test_two_beads_are_asked_about(qtbot, page):
    type_readings(qtbot, page, ["0.90", "0.88"])
    assert "two beads? Choose the two-bead wall" in verdict(page)
    assert "two beads" in page.form.typed["beads"].accessibleDescription()
    choose(page, "beads", "2")
    assert "Cannot tell yet: Wall" not in verdict(page)
    assert page.plot.data.point_count == 2


def test_a_slipped_decimal_mark_is_refused_at_its_cell(qtbot, page):
    type_readings(qtbot, page, ["0.48", "4.8"])
    assert "decimal mark" in page.form.model.problem(1, "measured_mm")
    assert "decimal mark" in verdict(page)


def test_layers_under_the_jaws_are_minded(page):
    type_setting(page, "layers_in_contact", "75")
    put_readings(page, ["0.49"] * 8)
    assert "The jaws touch 75 layers" in verdict(page)
    assert "mean less ridges" in page.plot.data.curves[0].name


def test_a_temperature_above_the_stated_limit_is_refused(page):
    put_readings(page, THICK)
    type_setting(page, "temperature_c", "250")
    assert "Refused" in page.form.typed["temperature_c"].accessibleDescription()
    assert "above this hot end's stated limit of 240 °C" in verdict(page)


def test_without_temperature_its_field_asks_for_it(qtbot, shop):
    page = open_page(qtbot, shop, WallPage)
    put_readings(page, THICK)
    assert page.form.typed["temperature_c"].accessibleDescription()
    assert "this one is needed" in verdict(page)


def test_rectangles_of_the_program_are_another_target(page):
    put_readings(page, ["0.49"] * 8)
    choose(page, "bead_model", "rectangle")
    assert page.plot.data.curves[1].mean[0] == pytest.approx(0.45 + (1 - np.pi / 4) * 0.2)


def test_a_lot_is_needed_to_keep(page, shop):
    put_readings(page, ["0.45"] * 8)
    shop.select_lot(None)
    put_readings(page, ["0.45"] * 8)
    page.keep()
    assert page.draft is not None or page.kept_trial is None
    assert "a flow factor belongs to a lot" in page.why_not_keep()


def test_the_caution_stands_before_the_entry(page):
    assert "hot nozzle" in page.form.caution.text()
    assert "local rules" in page.form.caution.text()
    assert page.form.caution.isVisible()


def test_a_further_place_is_added_by_its_button(qtbot, page):
    page.form.again_button.setFocus()
    QTest.keyClick(page.form.again_button, Qt.Key.Key_Space)
    assert page.form.model.rowCount() == 9
    put_readings(page, ["0.45"] * 9)
    assert page.plot.data.points[0].tips[8].startswith("reading 9")


def test_the_instrument_widens_the_interval(page, store, shop):
    put_readings(page, THICK)
    before = page.result.found.flow.u
    caliper = store.add_instrument(Instrument("Caliper 2", u_outside_zero_mm=0.02))
    shop.instruments_changed.emit()
    shop.select_instrument(caliper.id)
    assert page.result.found.flow.u > 1.5 * before
    page.keep()
    assert store.trials(subject="wall")[0].instrument_id == caliper.id


def test_a_store_that_fails_is_said_and_the_walls_still_count(qtbot, page, store, shop, monkeypatch):
    def fail(*_where):
        raise StoreError("the disk is gone")

    said = []
    shop.notice.connect(lambda text, _level: said.append(text))
    type_setting(page, "sd_lateral_mm", "0")
    monkeypatch.setattr(store, "newest", fail)
    put_readings(page, ["0.45"] * 8)
    assert "Change nothing" in verdict(page)
    assert "the disk is gone" in said
    monkeypatch.setattr(store, "in_force", fail)
    other = store.add_lot(Lot("Slate 8", "PETG"))
    shop.lots_changed.emit()
    shop.select_lot(other.id)
    assert page.form.number("in_force_ratio") == 1.0


def test_a_reading_open_to_a_question_or_excluded_does_not_count(page):
    put_readings(page, THICK)
    page.form.model.set_excluded(0, True, "on the seam")
    assert page.plot.data.point_count == 7
    page.form.model.set_excluded(0, False)
    assert page.plot.data.point_count == 8


def test_the_bead_as_commanded_is_told_while_its_fields_are_typed(page):
    assert "Bead 0.0814 mm², spacing 0.407 mm, speed 49 mm/s." in page.form.bead.text()
    assert "fed a mm" not in page.form.bead.toolTip()  # nobody said how thick the filament is
    type_setting(page, "width_mm", "0.6")
    type_setting(page, "height_mm", "0.3")
    assert "Bead 0.161 mm²" in page.form.bead.text()
    type_setting(page, "width_mm", "0.2")
    assert page.form.bead.text() == ""  # narrower than the layer is high: refused


def test_a_refusal_leaves_no_earlier_percentage_standing(page):
    put_readings(page, ["0.45", "0.46"])
    assert page.form.model.text(0, "error")
    page.form.model.edit(2, "measured_mm", "4.6")
    assert "decimal mark" in verdict(page)
    assert page.form.model.text(0, "error") == ""


def test_an_empty_setting_is_named_where_the_verdict_would_be(page):
    field = page.form.typed["temperature_c"]
    field.setFocus()
    field.selectAll()
    QTest.keyClick(field, Qt.Key.Key_Delete)
    QTest.keyClick(field, Qt.Key.Key_Return)
    put_readings(page, ["0.45", "0.46"])
    assert "Cannot tell yet: Temperature, °C: Nothing is typed here yet" in verdict(page)
