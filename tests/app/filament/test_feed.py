"""The page *Feed*, by keyboard."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from app.pages.filament.feed import FeedPage
from core.records.rows import Machine


@pytest.fixture
def page(qtbot, context, store):
    machine = store.add_machine(Machine("Bramble"))
    context.select_machine(machine.id)
    page = FeedPage(context)
    qtbot.addWidget(page)
    page.resize(1080, 720)
    page.show()
    qtbot.waitExposed(page)
    return page


def type_line(qtbot, widget, text):
    widget.setFocus()
    QTest.keyClicks(widget, text)
    QTest.keyClick(widget, Qt.Key.Key_Return)


def type_rests(qtbot, page, texts):
    page.take_focus()
    for text in texts:
        target = QGuiApplication.focusObject()
        QTest.keyClicks(target, text)
        qtbot.wait(60)
        QTest.keyClick(target, Qt.Key.Key_Return)
        qtbot.wait(320)  # equal readings this far apart are two readings


def verdict(page):
    return page.card.body.toPlainText()


def test_three_repeats_give_new_steps_from_the_value_in_force(qtbot, page, store):
    type_line(qtbot, page.steps, "93")
    type_rests(qtbot, page, ["23.0", "22,9", "23.1"])
    assert "Extruder steps" in verdict(page)
    assert "from 93 to 95.88" in verdict(page)
    assert "±" in verdict(page)
    assert page.plot.data.point_count == 3
    page.keep()
    (kept,) = store.trials(subject="feed")
    assert {e.name for e in kept.estimates} == {"feed_ratio", "feed_steps_mm"}
    assert store.trial(kept.id).conditions["in_force_steps_mm"] == 93.0
    assert "Extruder steps" in verdict(page)
    assert not page.steps.isEnabled()


def test_without_the_steps_in_force_the_field_asks_for_them(qtbot, page):
    type_rests(qtbot, page, ["23.0"])
    assert page.steps.accessibleDescription()
    assert "Cannot tell yet" in verdict(page)


def test_half_fed_is_a_wrong_part(qtbot, page):
    type_line(qtbot, page.steps, "93")
    type_rests(qtbot, page, ["70.9", "71.0", "71.2"])
    assert "A part is not what the list says" in verdict(page)


def test_a_rest_above_the_mark_is_refused_at_its_cell(qtbot, page):
    type_line(qtbot, page.steps, "93")
    type_rests(qtbot, page, ["130"])
    assert "which way you measured" in verdict(page)
    assert "which way" in page.form.model.problem(0, "measured_mm")


def test_the_last_ratio_applied_upside_down_is_said(qtbot, page):
    type_line(qtbot, page.steps, "93")
    type_rests(qtbot, page, ["23.0", "22.9", "23.1"])
    page.keep()
    page.begin_anew()
    page.steps.setFocus()
    page.steps.selectAll()
    type_line(qtbot, page.steps, "90.21")
    type_rests(qtbot, page, ["25.9", "25.8", "26.0"])
    assert "upside down" in verdict(page)


def test_a_further_repeat_is_added_by_its_button(qtbot, page):
    page.add_button.setFocus()
    QTest.keyClick(page.add_button, Qt.Key.Key_Space)
    assert page.form.model.rowCount() == 4
    assert page.form.entry.current_row() == 3


def test_kept_steps_are_in_force_and_a_good_trial_verifies_them(qtbot, page, store, context):
    type_line(qtbot, page.steps, "93")
    type_rests(qtbot, page, ["23.0", "22.9", "23.1"])
    page.keep()
    now = store.in_force("extruder_steps_mm", context.machine.id)
    assert (now.old, now.unit) == (93.0, "steps/mm")
    assert now.new == pytest.approx(95.876, abs=0.001)
    page.begin_anew()
    assert page.steps.value() == pytest.approx(95.876, abs=0.001)
    type_rests(qtbot, page, ["20.0", "20.1", "19.9"])
    page.keep()
    assert store.in_force("extruder_steps_mm", context.machine.id).verified_by is not None
