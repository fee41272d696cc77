"""The page *Feed*, by keyboard."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from app.pages.filament.feed import FeedPage
from core.guidance.changes import now_in_force
from core.guidance.settinglines import compare_listing, lines_of_template, values_in_force
from core.quantity import Estimate
from core.records.rows import Lot, Machine, Trial
from tests.app.atpage import show_page, verdict


@pytest.fixture
def page(qtbot, context, store, by_hand):
    machine = store.add_machine(Machine("Bramble"))
    context.select_machine(machine.id)
    return show_page(qtbot, FeedPage(context))


def type_line(qtbot, widget, text):
    widget.setFocus()
    QTest.keyClicks(widget, text)
    QTest.keyClick(widget, Qt.Key.Key_Return)


def type_rests(qtbot, page, texts):
    page.take_focus()
    for text in texts:
        target = QGuiApplication.focusObject()
        QTest.keyClicks(target, text)
        QTest.keyClick(target, Qt.Key.Key_Return)


def test_three_repeats_give_new_steps_from_the_value_in_force(qtbot, page, store):
    type_line(qtbot, page.steps, "277.8")
    type_rests(qtbot, page, ["23.0", "22,9", "23.1"])
    assert "Extruder steps" in verdict(page)
    assert "from 277.8 to 286.4" in verdict(page)
    assert "±" in verdict(page)
    assert page.plot.data.point_count == 3
    page.keep()
    (kept,) = store.trials(subject="feed")
    assert {e.name for e in kept.estimates} == {"feed_ratio", "feed_steps_mm"}
    assert store.trial(kept.id).conditions["in_force_steps_mm"] == 277.8
    assert "Extruder steps" in verdict(page)
    assert not page.steps.isEnabled()


def test_without_the_steps_in_force_the_field_asks_for_them(qtbot, page):
    type_rests(qtbot, page, ["23.0"])
    assert page.steps.accessibleDescription()
    assert "Cannot tell yet" in verdict(page)


def test_half_fed_is_a_wrong_part(qtbot, page):
    type_line(qtbot, page.steps, "277.8")
    type_rests(qtbot, page, ["70.9", "71.0", "71.2"])
    assert "A part is not what the list says" in verdict(page)


def test_a_rest_above_the_mark_is_refused_at_its_cell(qtbot, page):
    type_line(qtbot, page.steps, "277.8")
    type_rests(qtbot, page, ["130"])
    assert "which way you measured" in verdict(page)
    assert "which way" in page.form.model.problem(0, "measured_mm")


def test_the_last_ratio_applied_upside_down_is_said(qtbot, page):
    type_line(qtbot, page.steps, "277.8")
    type_rests(qtbot, page, ["23.0", "22.9", "23.1"])
    page.keep()
    page.begin_anew()
    page.steps.setFocus()
    page.steps.selectAll()
    type_line(qtbot, page.steps, "269.47")
    type_rests(qtbot, page, ["25.9", "25.8", "26.0"])
    assert "upside down" in verdict(page)


def test_a_further_repeat_is_added_by_its_button(qtbot, page):
    page.add_button.setFocus()
    QTest.keyClick(page.add_button, Qt.Key.Key_Space)
    assert page.form.model.rowCount() == 4
    assert page.form.entry.current_row() == 3


def test_kept_steps_are_in_force_and_a_good_trial_verifies_them(qtbot, page, store, context):
    type_line(qtbot, page.steps, "277.8")
    type_rests(qtbot, page, ["23.0", "22.9", "23.1"])
    page.keep()
    now = store.in_force("extruder_steps_mm", context.machine.id)
    assert (now.old, now.unit) == (277.8, "steps/mm")
    assert now.new == 286.4  # as it was told: 286.39 ± 1.5
    page.begin_anew()
    assert page.steps.value() == 286.4
    type_rests(qtbot, page, ["20.0", "20.1", "19.9"])
    page.keep()
    assert store.in_force("extruder_steps_mm", context.machine.id).verified_by is not None


def test_steps_found_right_are_on_record(qtbot, page, store, context):
    type_line(qtbot, page.steps, "277.8")
    type_rests(qtbot, page, ["20.0", "20.1", "19.9"])
    assert "Leave it" in verdict(page)
    page.keep()
    right = store.in_force("extruder_steps_mm", context.machine.id)
    assert (right.old, right.new, right.unit, right.lot_id) == (277.8, 277.8, "steps/mm", None)
    values = values_in_force(context.machine, now_in_force(store.settings(context.machine.id), None))
    assert compare_listing(lines_of_template("extruder_steps_mm: M92 E{value}"), values, "M92 X80 E277.8") == ((), 1)
    page.begin_anew()
    assert page.steps.value() == 277.8
    type_rests(qtbot, page, ["20.1", "20.0", "19.9"])
    page.keep()
    assert store.in_force("extruder_steps_mm", context.machine.id).verified_by is not None
    assert len(store.settings(context.machine.id)) == 1


def test_other_steps_typed_and_found_right_take_the_place_of_those_on_record(qtbot, page, store, context):
    type_line(qtbot, page.steps, "277.8")
    type_rests(qtbot, page, ["23.0", "22.9", "23.1"])
    page.keep()
    page.begin_anew()
    page.steps.setFocus()
    page.steps.selectAll()
    type_line(qtbot, page.steps, "94")
    type_rests(qtbot, page, ["20.0", "20.1", "19.9"])
    page.keep()
    right = store.in_force("extruder_steps_mm", context.machine.id)
    assert (right.old, right.new) == (94.0, 94.0)


def type_setting(page, key, text):
    """Type over a setting and leave it with Enter."""
    field = page.form.typed[key]
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def by_mass(page):
    """Choose the other way with the arrow keys."""
    page.form.way.setFocus()
    QTest.keyClick(page.form.way, Qt.Key.Key_Down)


def put_loaded(qtbot, page, shares, first_rate=2):
    """Type repeats of 100 mm under load at rising rates below the planned ones."""
    for number, rest in enumerate(shares):
        row = page.form.model.rowCount()
        page.form.load_button.setFocus()
        QTest.keyClick(page.form.load_button, Qt.Key.Key_Space)
        cell = QGuiApplication.focusObject()  # the rate is asked for at once
        QTest.keyClicks(cell, str(first_rate + 2 * number))
        QTest.keyClick(cell, Qt.Key.Key_Return)
        qtbot.wait(1)
        page.form.model.edit(row, "measured_mm", rest)


def test_by_mass_the_lots_mass_per_length_tells_what_was_fed(qtbot, page, store, context):
    lot = store.add_lot(Lot("Slate 7", "PETG"))
    weighed = Estimate("mass_per_length", 3.0, 0.003, 20.0, "g/m")
    per_m = store.keep(Trial("diameter", lot_id=lot.id, estimates=(weighed,)))
    context.lots_changed.emit()
    context.select_lot(lot.id)
    type_line(qtbot, page.steps, "277.8")
    by_mass(page)
    assert page.form.typed["mass_per_length_g_m"].value() == pytest.approx(3.0)
    assert [column.key for column in page.form.model.columns] == ["rate_mm3_s", "nominal_mm", "measured_mm", "error"]
    type_rests(qtbot, page, ["2.91", "2,912", "2.908"])
    assert "from 277.8 to 286.4 ± " in verdict(page)
    assert page.form.model.text(0, "error") == "97.00"
    page.keep()
    (kept,) = store.trials(subject="feed")
    assert kept.used == (per_m.id,)
    assert {e.name: round(e.value, 3) for e in kept.estimates}["feed_ratio"] == 0.97
    assert "Slate 7" in verdict(page) and "Bramble" in verdict(page)


def test_what_was_typed_the_other_way_is_found_again(qtbot, page, store):
    type_line(qtbot, page.steps, "277.8")
    type_rests(qtbot, page, ["23.0", "22.9"])
    by_mass(page)
    assert page.form.model.values(0)["measured_mm"] is None
    assert "mass" in page.form.model.column("measured_mm").name.lower()
    assert "this one is needed" not in verdict(page)  # nothing is weighed yet
    page.form.model.edit(0, "measured_mm", "2.91")
    assert "this one is needed" in verdict(page)
    type_setting(page, "mass_per_length_g_m", "3")
    assert "Fed 97.0" in verdict(page)
    QTest.keyClick(page.form.way, Qt.Key.Key_Up)
    assert [row["measured_mm"] for row in page.form.model.rows()] == [23.0, 22.9, None]
    draft = store.draft("feed", page.context.machine.id)
    assert sorted(draft.readings["axis"]) == ["e", "e", "e", "e by mass", "e by mass", "e by mass"]


def test_slip_by_rate_is_drawn_and_told_apart_from_the_steps(qtbot, page, store):
    type_line(qtbot, page.steps, "277.8")
    type_setting(page, "hot_end_limit_c", "300")
    type_setting(page, "temperature_c", "240")
    for row, rest in enumerate(("22.0", "22.1", "21.9")):
        page.form.model.edit(row, "measured_mm", rest)
    put_loaded(qtbot, page, ["22.0", "22.2", "22.1", "22.0", "22.1", "22.9", "24.0", "25.1"])
    assert "Extruder steps: Change the extruder from 277.8 to 283.5" in verdict(page)
    assert "Printing speed: No slip is proved up to 1" in verdict(page) and "print at most at 1" in verdict(page)
    assert "nozzle 0.4 mm, 240 °C ± 5 K, up to 16 mm³/s" in verdict(page)
    free, loaded = page.plot.data.points
    assert (free.x.tolist(), loaded.x.tolist()) == ([0.0], [2.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0])
    assert all(loaded.U > 0) and free.U[0] > 0
    (fit,) = page.plot.data.curves
    assert all(fit.confidence_half > 0)
    (proved,) = page.plot.data.limits
    assert proved.x[0] == pytest.approx(page.result.slip.free_to_mm3_s)
    assert "no slip is proved up to" in page.plot.data.summary
    page.keep()
    (kept,) = store.trials(subject="feed")
    assert [e.name for e in kept.estimates] == ["feed_ratio", "feed_steps_mm", "loaded_share", "slip_rate"]
    assert store.trial(kept.id).conditions["temperature_c"] == 240.0
    now = store.in_force("extruder_steps_mm", page.context.machine.id)
    assert now.new == round(277.8 / 0.98, 1)


def test_few_loaded_repeats_are_drawn_without_a_fit(qtbot, page):
    type_line(qtbot, page.steps, "277.8")
    type_setting(page, "temperature_c", "230")
    for row, (rate, rest) in enumerate((("2", "22"), ("4", "22.2"))):
        page.form.model.edit(row, "rate_mm3_s", rate)
        page.form.model.edit(row, "measured_mm", rest)
    assert "Keep 277.8 steps/mm until it was fed without load" in verdict(page)
    assert "5 repeats at 4 rates" in verdict(page)
    assert page.plot.data.curves == ()
    assert page.plot.data.summary == "Rates so far: 2."
    page.keep()
    assert page.context.store.settings(page.context.machine.id) == ()


def test_under_load_the_temperature_is_asked_for_and_held_against_the_hot_end(qtbot, page):
    type_line(qtbot, page.steps, "277.8")
    page.form.model.edit(0, "rate_mm3_s", "4")
    page.form.model.edit(0, "measured_mm", "22")
    assert "type the one shown" in page.form.typed["temperature_c"].accessibleDescription()
    type_setting(page, "temperature_c", "285")
    assert "above this hot end's stated limit of 240 °C. Refused" in verdict(page)
    assert "Refused" in page.form.typed["temperature_c"].accessibleDescription()


def test_more_than_was_commanded_under_load_is_refused_at_its_cell(qtbot, page):
    type_line(qtbot, page.steps, "277.8")
    type_setting(page, "temperature_c", "230")
    page.form.model.edit(0, "measured_mm", "22")
    page.form.model.edit(1, "rate_mm3_s", "4")
    page.form.model.edit(1, "measured_mm", "10")
    assert "which way you measured" in page.form.model.problem(1, "measured_mm")


def test_the_cautions_stand_before_the_entry(page):
    assert "starts without warning" in page.form.caution.text()
    assert "hot plastic" in page.form.caution.text()
    assert page.form.caution.isVisible()


def test_the_rate_of_a_repeat_under_load_leads_on_to_its_rest(qtbot, page):
    type_line(qtbot, page.steps, "277.8")
    page.form.load_button.setFocus()
    QTest.keyClick(page.form.load_button, Qt.Key.Key_Space)
    cell = QGuiApplication.focusObject()
    QTest.keyClicks(cell, "4")
    QTest.keyClick(cell, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: QGuiApplication.focusObject() is page.form.table)
    here = page.form.table.currentIndex()
    assert (here.row(), page.form.model.columns[here.column()].key) == (3, "measured_mm")


def test_one_repeat_is_not_put_in_force(qtbot, page, store, context):
    type_line(qtbot, page.steps, "277.8")
    type_rests(qtbot, page, ["23.0"])
    assert "feed twice more" in verdict(page)
    page.keep()
    assert store.in_force("extruder_steps_mm", context.machine.id) is None


def test_the_line_says_what_is_to_be_typed(page):
    def says(text):
        return any(text in label.text() for label in page.form.entry.findChildren(QLabel))

    assert says("rest of repeat 1, asked 100 mm")
    page.form.way.setFocus()
    QTest.keyClick(page.form.way, Qt.Key.Key_Down)
    assert says("mass of repeat 1, asked 1000 mm")  # the length commanded, never in grams
