"""The page *Squareness*, by keyboard: readings in, sentences, picture and database out."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from app.pages.machine_geometry.squareness import SquarenessPage
from core.errors import StoreError
from core.quantity import Estimate
from core.records.rows import Machine, SettingInForce, Trial
from tests.app.atpage import choose, show_page, type_readings, verdict

# Pillars of 10 mm at 80 mm, Y leaning towards +X by 0.002 rad, in the order of the page.
LEANING = "123.25 103.25 123.02 103.02 123.26 103.24 123.03 103.01".split()  # noqa: SIM905
SQUARE = "123.14 103.14 123.14 103.13 123.13 103.14 123.13 103.14".split()  # noqa: SIM905


@pytest.fixture
def shop(context, store):
    machine = store.add_machine(Machine("Bramble"))
    context.select_machine(machine.id)
    return context


@pytest.fixture
def page(qtbot, shop, by_hand):
    page = show_page(qtbot, SquarenessPage(shop))
    page.take_focus()
    return page


def type_setting(page, key, text):
    field = page.form.settings.field(key)
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def test_pillars_typed_by_keyboard_alone_say_which_side_to_push(qtbot, page):
    assert page.picture.data.lit == "1" and "outside" in page.picture.data.lit_text
    type_readings(qtbot, LEANING)
    assert "Mend the mechanics" in verdict(page)
    assert "stands ahead: bring it back" in verdict(page) and "±" in verdict(page)
    assert "Steps per millimetre" in page.card.untouched.text()
    assert page.picture.data.push == 1 and page.picture.factor() == 100
    assert page.picture.data.angle_rad == pytest.approx(0.002, abs=1e-4)
    assert "in 100 mm" in page.picture.accessibleDescription()


def test_each_axis_pair_has_its_own_words(qtbot, page):
    type_readings(qtbot, LEANING)
    choose(page.form.plane, "xz")
    assert "Z leans towards +X" in verdict(page)
    assert page.result.judgement.estimates()[0].name == "squareness_xz"
    assert "+X" in page.picture.hint() and "Z leans" in page.picture.hint()


def test_a_kept_trial_is_locked_and_found_again(qtbot, page, store):
    type_readings(qtbot, LEANING)
    qtbot.mouseClick(page.card.keep_button, Qt.MouseButton.LeftButton)
    (kept,) = store.trials(subject="squareness")
    assert [e.name for e in kept.estimates] == ["squareness_xy"]
    assert store.trial(kept.id).conditions["method"] == "pillars"
    assert "Mend the mechanics" in verdict(page) and not page.form.plane.isEnabled()
    assert page.picture.data.angle_rad is not None
    QTest.keyClick(QGuiApplication.focusObject(), Qt.Key.Key_Space)  # the button New readings
    assert page.form.model.rows()[0]["raw"] == "" and page.picture.data.angle_rad is None


def keep(store, context, name, value, u, unit):
    found = Estimate(name, value, u, 8.0, unit)
    return store.keep(Trial("other", machine_id=context.machine.id, estimates=(found,), method="x 1")).id


def test_after_a_correction_the_angle_kept_before_is_the_prediction(qtbot, page, store, shop):
    before = keep(store, shop, "squareness_xy", 0.001, 0.00005, "rad")
    type_readings(qtbot, LEANING)
    choose(page.form.frame_state, "moved")
    assert "Shift the same side the other way" in verdict(page)
    assert page.record().used == (before,)
    choose(page.form.frame_state, "terms")
    assert "Turn the sign of the term round" in verdict(page)
    choose(page.form.frame_state, "found")
    assert page.record().used == ()


def test_keeping_puts_the_term_in_force_and_the_next_trial_verifies_it(qtbot, page, store, shop):
    assert page.form.settings.field("term_ratio").isHidden()
    choose(page.form.frame_state, "moved")
    assert page.form.settings.field("span_mm").isHidden()
    type_setting(page, "term_ratio", "0.0005")  # set by hand before; the piece was made under it
    page.form.entry.setFocus()
    type_readings(qtbot, LEANING)
    assert "Squareness terms" in verdict(page) and "+0.000500 was in force" in verdict(page)
    qtbot.mouseClick(page.card.keep_button, Qt.MouseButton.LeftButton)
    (kept,) = store.trials(subject="squareness")
    now = store.in_force("skew_xy", shop.machine.id)
    assert (now.old, now.unit, now.trial_id, now.verified_by) == (0.0005, "1", kept.id, None)
    assert now.new == pytest.approx(0.0025, abs=1e-4)
    assert (now.prediction["name"], now.prediction["value"], now.prediction["unit"]) == ("squareness_xy", 0.0, "rad")
    assert now.prediction["U"] == kept.estimates[0].U
    QTest.keyClick(QGuiApplication.focusObject(), Qt.Key.Key_Space)  # the button New readings
    assert page.form.settings.field("term_ratio").value() == pytest.approx(now.new, abs=1e-6)
    choose(page.form.frame_state, "terms")
    page.form.entry.setFocus()
    type_readings(qtbot, SQUARE)
    assert "did what was predicted" in verdict(page)
    assert page.record().used == (kept.id,)
    qtbot.mouseClick(page.card.keep_button, Qt.MouseButton.LeftButton)
    assert store.in_force("skew_xy", shop.machine.id).verified_by == store.trials(subject="squareness")[0].id


def test_a_term_of_the_wrong_sign_is_turned_round_and_said_where_it_is(qtbot, page, store, shop):
    keep(store, shop, "squareness_xy", 0.001, 0.00005, "rad")
    choose(page.form.frame_state, "terms")
    type_setting(page, "term_ratio", "0.001")
    page.form.entry.setFocus()
    type_readings(qtbot, LEANING)
    assert "Turn the sign of the term round, to −0.001000" in verdict(page)
    page.keep()
    assert store.in_force("skew_xy", shop.machine.id).new == -0.001


def test_the_term_of_the_chosen_plane_is_offered_while_nothing_is_read(qtbot, page, store, shop):
    judged = SettingInForce(shop.machine.id, None, "skew_xz", 0.0, 0.0007, "1")
    store.keep(Trial("squareness", machine_id=shop.machine.id), (judged,))
    term = page.form.settings.field("term_ratio")
    choose(page.form.plane, "xz")
    assert term.value() == 0.0007
    type_readings_at(page, LEANING[:1])
    choose(page.form.plane, "yz")
    assert term.value() == 0.0007  # the piece was made under what was typed


def type_readings_at(page, texts):
    for row, text in enumerate(texts):
        page.form.model.edit(row, "measured_mm", text)


def test_a_store_that_fails_is_said_and_no_term_is_made_up(qtbot, page, store, monkeypatch):
    def fail(*_, **__):
        raise StoreError("the disk is full")

    monkeypatch.setattr(store, "in_force", fail)
    with qtbot.waitSignal(page.context.notice) as said:
        page.plan()
    assert "the disk is full" in said.args[0]
    assert page.form.settings.field("term_ratio").value() == 0.0


def test_outer_readings_alone_are_warned_of_with_the_size_of_the_kept_reversal(qtbot, page, store, shop):
    outer = [LEANING[0], "", LEANING[2], ""]
    for place, text in enumerate(outer):
        page.form.model.edit(place, "measured_mm", text)
    assert "unequal reversal fakes an angle" in verdict(page) and "both faces" in verdict(page)
    used = [keep(store, shop, "reversal_x", 0.08, 0.004, "mm"), keep(store, shop, "reversal_y", 0.02, 0.004, "mm")]
    page.recompute()
    assert "can fake 0.075 mm in 100 mm" in verdict(page)
    assert page.record().used == tuple(used)


def test_another_method_keeps_what_was_typed_without_counting_it(qtbot, page):
    type_readings(qtbot, LEANING[:2])
    choose(page.form.method, "drawn")
    rows = page.form.model.rows()
    assert [row["feature"] for row in rows[:2]] == ["Diagonal 1, line", "Diagonal 2, line"]
    assert [row["raw"] for row in rows[4:]] == LEANING[:2]
    type_setting(page, "side_a_mm", "200")
    type_setting(page, "side_b_mm", "200")
    page.form.entry.setFocus()
    type_readings(qtbot, ["282.8", "282.9", "282.7", "282.9"])
    assert "Cannot tell yet" in verdict(page)
    assert page.form.model.mark(4) and not page.form.model.mark(0)
    choose(page.form.method, "pillars")
    assert page.form.model.rows()[0]["raw"] == LEANING[0]


def test_a_square_turned_over_takes_signed_readings(qtbot, page):
    choose(page.form.method, "square")
    choose(page.form.plane, "xz")
    assert "indicator off before homing" in page.form.caution.text()
    page.form.entry.setFocus()
    type_readings(qtbot, ["-0.10", "-0.30", "-0,11", "-0.29"])
    assert "Z leans towards −X" in verdict(page)
    assert "the square itself" in verdict(page)
    assert page.picture.data.diagonals == ("1", "2") and page.picture.data.push == -1


def test_what_cannot_be_is_said_in_words_at_its_place(qtbot, page):
    type_readings(qtbot, ["113.1"])
    assert "Diagonal 2 is not read yet" in verdict(page)
    assert page.picture.data.angle_rad is None
    choose(page.form.method, "drawn")
    page.form.entry.setFocus()
    type_readings(qtbot, ["113.1", "107.1"])
    assert "Diagonal 2 comes to 107.10 mm" in verdict(page)
    type_setting(page, "side_a_mm", "0")
    assert page.form.settings.field("side_a_mm").accessibleDescription()


def test_repeats_far_apart_are_marked(qtbot, page):
    type_readings(qtbot, [*SQUARE[:4], "123.64", *SQUARE[5:]])
    assert page.form.model.mark(0) and page.form.model.mark(4) and not page.form.model.mark(1)
    assert "0.50 mm apart" in verdict(page)


def test_a_square_machine_is_left_alone(qtbot, page):
    type_readings(qtbot, SQUARE)
    assert "Leave it" in verdict(page)
    assert page.picture.data.push == 0
