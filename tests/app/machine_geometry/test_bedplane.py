"""The page *Bed plane*, by keyboard: heights in, map, turns, soak time and database out."""

import math

import pytest
from PySide6.QtCore import QLocale, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from app.pages.machine_geometry.bedplane import BedPlanePage
from core.quantity import Estimate
from core.records.rows import Machine, Trial
from tests.app.atpage import show_page, type_readings, verdict

TILTED = "-0.02 0.05 0.11 0.08 0.02 -0.05 -0.12 -0.06 0.05".split()  # noqa: SIM905


@pytest.fixture
def shop(context, store):
    machine = store.add_machine(Machine("Bramble", travel_x_mm=220.0, travel_y_mm=220.0))
    context.select_machine(machine.id)
    return context


@pytest.fixture
def page(qtbot, shop, by_hand):
    page = show_page(qtbot, BedPlanePage(shop))
    page.take_focus()
    return page


def choose(field, step=Qt.Key.Key_Down):
    field.setFocus()
    QTest.keyClick(field, step)


def type_setting(page, key, text):
    field = page.form.settings.field(key)
    field.setFocus()
    field.selectAll()
    QTest.keyClick(field, Qt.Key.Key_Delete)
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def test_nine_heights_typed_by_keyboard_tell_screws_and_map(qtbot, page):
    type_readings(qtbot, TILTED)
    assert "Levelling screws" in verdict(page)
    assert "screw 2 clockwise" in verdict(page) and "screw 4 anticlockwise" in verdict(page)
    assert "±" in verdict(page) and "touch one ten times" in verdict(page)
    told = page.picture.map
    assert told.isVisible() and not page.picture.drift.isVisible()
    assert told.data.screws[1].text.startswith("2: ↻") and told.data.screws[0].text == "1: stays"
    assert page.form.model.text(0, "error").startswith(("+0.0", "−0.0"))
    assert "flatness" in told.accessibleDescription()


def test_the_map_is_walked_with_the_arrow_keys(qtbot, page):
    type_readings(qtbot, TILTED)
    sheet = page.picture.map.sheet
    sheet.setFocus()
    QTest.keyClick(sheet, Qt.Key.Key_Right)
    assert page.picture.map.tells.text().startswith("P1 at 20, 20 mm")
    QTest.keyClick(sheet, Qt.Key.Key_Left)
    assert page.picture.map.tells.text().startswith("Screw 4: anticlockwise")
    QTest.keyClick(sheet, Qt.Key.Key_Escape)
    assert "Blue low" in page.picture.map.tells.text()


def test_clockwise_and_pitch_are_the_machine_s(qtbot, page):
    type_readings(qtbot, TILTED)
    before = page.result.judgement.turns[1].angle_deg
    choose(page.form.clockwise)
    assert "screw 2 anticlockwise" in verdict(page)
    choose(page.form.screw_thread)
    assert page.result.judgement.turns[1].angle_deg == pytest.approx(before * 0.7 / 0.8)


def test_touches_at_one_place_tell_the_probe_and_are_used_later(qtbot, page, store, shop):
    type_readings(qtbot, TILTED)
    page.form.entry.go_to(4)
    page.form.touch_button.setFocus()
    QTest.keyClick(page.form.touch_button, Qt.Key.Key_Space)
    assert page.form.model.rowCount() == 18
    page.form.entry.go_to(5)
    type_readings(qtbot, "0.021 0.019 0.025 0.018 0.022 0.02 0.024 0.023 0.017".split())  # noqa: SIM905
    assert "repeatability of the probe" in verdict(page)
    assert "touch one ten times" not in verdict(page)
    page.keep()
    (kept,) = store.trials(subject="bedplane")
    names = {e.name for e in kept.estimates}
    assert names == {"bed_tilt_x", "bed_tilt_y", "bed_flatness", "probe_sd", "bed_twist"}
    assert page.form.reading.isEnabled() is False and page.picture.map.data is not None
    QTest.keyClick(QGuiApplication.focusObject(), Qt.Key.Key_Space)  # the button New readings
    type_readings(qtbot, TILTED)
    assert page.record().used == (kept.id,)


def test_plus_repeats_a_touch_at_the_same_place(qtbot, page):
    type_readings(qtbot, TILTED)
    page.form.entry.go_to(4)
    line = page.form.entry.focusProxy()
    line.setFocus()
    QTest.keyClicks(line, "+")
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert page.form.model.rowCount() == 10
    assert [page.form.model.text(5, key) for key in ("x_mm", "y_mm")] == ["110", "110"]
    type_readings(qtbot, ["0.021"])
    assert page.result.judgement.plane.touches.tolist() == [1, 1, 1, 1, 2, 1, 1, 1, 1]


def test_cold_readings_are_kept_apart(qtbot, page):
    type_readings(qtbot, TILTED)
    type_setting(page, "bed_c", "24")
    assert "The bed was at 24 °C and is printed on at 60 °C" in verdict(page)
    assert page.result.judgement.estimates()[0].name == "bed_tilt_x_cold"
    type_setting(page, "bed_c", "60")
    assert page.result.judgement.estimates()[0].name == "bed_tilt_x"
    choose(page.form.state)
    assert "Probed cold" in verdict(page) and "bed tilt along X, cold" in verdict(page)


def test_three_screws_at_places_of_their_own(qtbot, page):
    type_readings(qtbot, TILTED)
    type_setting(page, "screws", "10 10; 210 10; 110 210")
    assert [turn.number for turn in page.result.judgement.turns] == [1, 2, 3]
    type_setting(page, "screws", "10/10; 210,5/10; 110/210")
    assert page.result.judgement.turns[1].place_mm == (210.5, 10.0)
    type_setting(page, "screws", "10 10; 210")
    assert "is no place" in page.form.screws.accessibleDescription()
    type_setting(page, "screws", "10 10; 210 10")
    assert "three or four" in page.form.screws.accessibleDescription()
    type_setting(page, "screws", "")
    assert "Name the places" in verdict(page)


def test_a_finer_grid_keeps_what_was_read(qtbot, page):
    type_readings(qtbot, TILTED)
    choose(page.form.grid)
    rows = page.form.model.rows()
    assert [row["raw"] for row in rows[:9]] == TILTED
    assert len(rows) == 9 + 16 - 4  # the corners are read already


def test_swarf_is_refused_at_its_row(qtbot, page):
    type_readings(qtbot, [*TILTED[:6], "1.9"])
    assert "Probe 7 is" in verdict(page)
    assert "plane of the others" in page.form.model.problem(6, "measured_mm")
    assert page.form.entry.current_row() == 6  # it waits there
    QTest.keyClicks(page.form.entry.focusProxy(), "/")
    QTest.keyClicks(QGuiApplication.focusObject(), "swarf")
    QTest.keyClick(QGuiApplication.focusObject(), Qt.Key.Key_Return)
    assert "Levelling screws" in verdict(page)


def test_a_height_needs_its_place_or_its_time(qtbot, page):
    page.form.place_button.click()
    page.form.model.edit(9, "measured_mm", "0.1")
    assert "where was that probed" in verdict(page)
    page.form.model.edit(9, "x_mm", "50")
    assert "where was that probed" in page.form.model.problem(9, "y_mm")
    page.form.model.edit(9, "y_mm", "50")
    assert "Places probed so far: 1" in verdict(page)
    choose(page.form.reading)
    page.form.place_button.click()
    row = page.form.model.rowCount() - 1
    page.form.model.edit(row, "measured_mm", "0.1")
    assert "when was that read" in verdict(page)


def drift(count=11):
    return [f"{0.12 * (1 - math.exp(-2 * i / 5)) + 0.003 * math.sin(7 * i):.3f}" for i in range(count)]


def test_soak_readings_typed_by_keyboard_tell_the_soak_time(qtbot, page, store):
    choose(page.form.reading)
    assert page.picture.drift.isVisible() and not page.picture.map.isVisible()
    page.form.entry.setFocus()
    type_readings(qtbot, drift())
    assert "Let bed and chamber stand for 14 min" in verdict(page)
    assert page.picture.drift.data.point_count == 11
    page.keep()
    (kept,) = store.trials(subject="bedplane")
    assert [(e.name, e.unit) for e in kept.estimates] == [("bed_soak", "min")]
    assert store.trial(kept.id).readings["minutes"][1] == 2.0


def test_places_and_soak_live_in_one_trial(qtbot, page):
    type_readings(qtbot, TILTED)
    choose(page.form.reading)
    page.form.entry.setFocus()
    type_readings(qtbot, drift(4))
    assert "Readings over time so far: 4" in verdict(page) and "Levelling screws" in verdict(page)
    page.form.model.edit(1, "minutes", "-2")
    assert page.form.model.problem(1, "minutes")
    page.form.model.edit(1, "minutes", "2")
    choose(page.form.reading, Qt.Key.Key_Up)
    assert [row["raw"] for row in page.form.model.rows()[:9]] == TILTED
    assert page.picture.map.data is not None


def test_a_decimal_comma_is_read_and_shown(qtbot, page):
    QLocale.setDefault(QLocale("de_DE"))
    try:
        type_readings(qtbot, [text.replace(".", ",") for text in TILTED])
        assert "0,0" in verdict(page)
    finally:
        QLocale.setDefault(QLocale.c())


def test_the_places_fit_the_bed_of_the_machine(qtbot, page, store, shop):
    other = store.add_machine(Machine("Thistle", travel_x_mm=180.0, travel_y_mm=160.0))
    shop.machines_changed.emit()
    shop.select_machine(other.id)
    assert page.form.model.rows()[-1]["x_mm"] == 160.0 and page.form.model.rows()[-1]["y_mm"] == 140.0
    assert page.form.screws.text().endswith("10 150")


def test_an_earlier_probe_of_the_machine_narrows_the_interval(qtbot, page, store, shop):
    type_readings(qtbot, TILTED)
    wide = page.result.judgement.estimates()[0].U
    trial = Trial("bedplane", machine_id=shop.machine.id, method="bedplane 1",
                  estimates=(Estimate("probe_sd", 0.003, 0.001, 9.0, "mm"),))  # fmt: skip
    kept = store.keep(trial)
    page.recompute()
    assert wide > page.result.judgement.estimates()[0].U and page.record().used == (kept.id,)
