"""The page *Ceiling*, by keyboard."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from app.pages.flow_trials.ceiling import CeilingPage
from core.quantity import Estimate
from core.records.rows import Lot, Machine, SettingInForce, Trial
from tests.app.atpage import show_page, verdict
from tests.app.flow_trials.flowpages import CONDITIONS

# 200 mm of 2.98 g/m each: 0.596 g; the share falls beyond 10 mm3/s.
MASSES = ("0.590", "0.589", "0.591", "0.590", "0.589", "0.583", "0.572", "0.561", "0.548", "0.537")


@pytest.fixture
def page(qtbot, context, store, by_hand):
    lot = store.add_lot(Lot("Slate 7", "PETG"))
    context.select_machine(store.add_machine(Machine("Bramble")).id)
    context.select_lot(lot.id)
    store.keep(Trial("diameter", lot_id=lot.id, estimates=(Estimate("mass_per_length", 2.98, 0.01, 20.0, "g/m"),)))
    return show_page(qtbot, CeilingPage(context))


def type_temperature(qtbot, page, row, text):
    page.form.table.edit_cell(row, "temperature_c")
    qtbot.waitUntil(lambda: QGuiApplication.focusObject() is not page.form.table)
    cell = QGuiApplication.focusObject()
    cell.selectAll()
    QTest.keyClicks(cell, text)
    QTest.keyClick(cell, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: QGuiApplication.focusObject() is not cell)


def type_all(qtbot, page, masses=MASSES, temperature="230"):
    type_temperature(qtbot, page, 0, temperature)
    page.form.table.go_to(0)
    page.take_focus()
    for text in masses:
        target = QGuiApplication.focusObject()
        QTest.keyClicks(target, text)
        QTest.keyClick(target, Qt.Key.Key_Return)


def put_all(page, masses=MASSES, temperature="230"):
    """Put the strands in without waiting for a hand."""
    for row, mass in enumerate(masses):
        page.form.model.edit(row, "temperature_c", temperature)
        page.form.model.edit(row, "measured_mm", mass)


def test_the_mass_per_length_of_the_lot_is_used(page):
    assert page.typed["mass_per_length_g_m"].value() == pytest.approx(2.98)


def test_strands_give_the_ceiling_and_the_speed(qtbot, page, store):
    type_all(qtbot, page)
    assert "Printing speed" in verdict(page)
    assert "mm³/s" in verdict(page)
    assert page.plot.data.point_count == len(MASSES)
    assert page.form.model.text(0, "error") == "99.0"
    page.keep()
    (kept,) = store.trials(subject="ceiling")
    assert {e.name for e in kept.estimates} == {"flow_ceiling", "highest_speed"}
    assert "Printing speed" in verdict(page)


def test_hotter_than_the_hot_end_may_be_is_refused_at_its_cell(page):
    put_all(page, MASSES[:6], temperature="285")
    assert "Refused" in verdict(page)
    assert page.form.model.problem(0, "temperature_c")


def test_too_much_mass_is_questioned(page):
    put_all(page, MASSES[:5])
    page.form.model.edit(1, "measured_mm", "0.640")
    assert "weigh again" in verdict(page)
    assert page.form.model.problem(1, "measured_mm")


def test_three_strands_do_not_tell(page):
    put_all(page, MASSES[:3])
    assert "5 strands" in verdict(page)


def test_a_strand_is_added_at_the_same_temperature(qtbot, page):
    page.form.model.edit(9, "temperature_c", "230")
    page.add_button.setFocus()
    QTest.keyClick(page.add_button, Qt.Key.Key_Space)
    assert page.form.model.values(10)["temperature_c"] == 230.0


def test_without_a_lot_it_is_not_kept(page, context):
    put_all(page)
    context.select_lot(None)
    assert "filament lot" in page.why_not_keep()


def test_the_bands_and_the_level_of_the_drop_are_drawn(page):
    put_all(page)
    (curve,), (drop,) = page.plot.data.curves, page.plot.data.limits
    assert all(curve.confidence_half > 0)
    assert drop.y[0] == pytest.approx(100 * (0.98 * page.result.ceiling.at[0].stick.level - 1))
    assert page.plot.data.points[0].tips[0].startswith("2 mm³/s at 230 °C: 99.0 %")
    assert "Holds for nozzle 0.4 mm, ±5 K" in verdict(page)
    assert "Bramble, Slate 7" in verdict(page)


def test_without_a_fall_the_band_is_that_of_the_level(page):
    for row in range(len(MASSES)):
        page.form.model.edit(row, "temperature_c", "230")
        page.form.model.edit(row, "measured_mm", ("0.590", "0.591")[row % 2])
    assert "Go on with faster strands" in verdict(page)
    assert page.plot.data.curves[0].mean.std() == pytest.approx(0, abs=1e-9)
    assert page.plot.data.curves[0].confidence_half[0] > 0


def test_a_flow_factor_found_slower_is_marked_beside_the_speed(page, store, context):
    setting = SettingInForce(context.machine.id, context.lot.id, "flow_factor", 1.0, 0.97, "1")
    flow = Estimate("flow_ratio_mass", 0.97, 0.006, 30.0, "1")
    trial = Trial("mass", context.machine.id, context.lot.id, conditions=CONDITIONS | {"temperature_c": 230.0},
                  estimates=(flow,))
    store.keep(trial, (setting,))
    put_all(page)
    assert "The flow factor in force: Tested up to 4 mm³/s, used at" in verdict(page)


def test_a_temperature_goes_into_the_empty_rows_below_and_on_to_the_mass(qtbot, page):
    type_temperature(qtbot, page, 0, "210")
    assert [row["temperature_c"] for row in page.form.model.rows()] == [210.0] * 10
    assert page.form.table.currentIndex().column() == 2
    page.form.model.edit(3, "measured_mm", MASSES[3])
    type_temperature(qtbot, page, 1, "215")  # mistyped: what it filled follows, to the strand that was weighed
    assert [row["temperature_c"] for row in page.form.model.rows()] == [210.0, 215.0, 215.0] + [210.0] * 7
    for _ in range(3):
        page.undoing.undo()
    assert not any(row.get("temperature_c") for row in page.form.model.rows())


def test_another_temperature_adds_the_rates_once_more(qtbot, page):
    put_all(page, temperature="210")
    page.form.other_button.setFocus()
    QTest.keyClick(page.form.other_button, Qt.Key.Key_Space)
    cell = QGuiApplication.focusObject()  # the temperature is asked for at once
    QTest.keyClicks(cell, "230")
    QTest.keyClick(cell, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: QGuiApplication.focusObject() is not cell)
    rows = page.form.model.rows()
    assert [row.get("temperature_c") for row in rows] == [210.0] * 10 + [230.0] * 10
    assert [row["rate_mm3_s"] for row in rows[10:]] == [row["rate_mm3_s"] for row in rows[:10]]
    for row, mass in enumerate(MASSES, start=10):
        page.form.model.edit(row, "measured_mm", mass)
    assert "at 210 °C" in verdict(page) and "at 230 °C" in verdict(page)
    page.keep()
    assert page.kept_trial is not None
    assert {e.name for e in page.kept_trial.estimates} == {"flow_ceiling_210c", "flow_ceiling_230c"}


def test_a_strand_without_a_temperature_asks_for_it(page):
    page.form.model.edit(2, "measured_mm", MASSES[2])
    assert "Row 3: type the nozzle's temperature" in verdict(page)
    assert page.form.model.problem(2, "temperature_c")
    page.form.model.edit(2, "temperature_c", "230")
    assert "5 strands" in verdict(page)


def test_a_refusal_leaves_no_earlier_share_standing(page):
    put_all(page)
    assert page.form.model.text(0, "error") == "99.0"
    page.form.model.edit(1, "measured_mm", "0.640")
    assert page.form.model.text(0, "error") == ""
