"""The page *Diameter*, used as a person uses it: keys in, sentences and database out."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QPushButton

from app.pages.filament.diameter import DiameterPage
from core.quantity import Estimate
from core.records.rows import Instrument, Lot, Machine, SettingInForce, Trial, TrialState
from tests.app.atpage import show_page, type_readings, verdict

# 1.70 mm by micrometer, nearly round: largest and square to it, place by place.
THIN = "1.702 1.700 1.701 1.698 1.703 1.699 1.700 1.699 1.702 1.701".split()  # noqa: SIM905
OVAL = ["1.80", "1.68"] * 4


@pytest.fixture
def shop(context, store):
    machine = store.add_machine(Machine("Bramble"))
    lot = store.add_lot(Lot("Slate 7", "PLA", nominal_diameter_mm=1.75, claimed_tolerance_mm=0.03))
    context.select_machine(machine.id)
    context.select_lot(lot.id)
    return context


@pytest.fixture
def page(qtbot, shop, by_hand):
    page = show_page(qtbot, DiameterPage(shop))
    page.take_focus()
    return page


def choose(field, value):
    """Walk to a choice with the arrow keys."""
    field.setFocus()
    QTest.keyClick(field, Qt.Key.Key_Home)
    for _ in range(field.findData(value)):
        QTest.keyClick(field, Qt.Key.Key_Down)
    assert field.value() == value


def retype(field, text):
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def test_pairs_typed_by_keyboard_set_the_diameter(qtbot, page, store, shop):
    choose(page.form.gauge, "micrometer")
    page.form.entry.setFocus()
    type_readings(qtbot, THIN)
    assert "Filament diameter: Set 1.700 mm instead of 1.75 mm." in verdict(page)
    assert "94.4" in verdict(page)
    assert "by caliper to ± 2.7 %, by micrometer to ± 0.66 % (used)" in verdict(page)
    assert page.plot.data.point_count == 10
    assert page.plot.data.ground.label == "claimed ± 0.03 mm"
    qtbot.mouseClick(page.card.keep_button, Qt.MouseButton.LeftButton)
    (kept,) = store.trials(subject="diameter")
    assert kept.state is TrialState.KEPT
    assert {e.name for e in kept.estimates} == {"diameter", "area_ratio", "ovality", "diameter_sd"}
    now = store.in_force("filament_diameter", shop.machine.id, shop.lot.id)
    assert (now.old, now.new, now.unit, now.trial_id) == (1.75, 1.7, "mm", kept.id)
    assert "Set 1.700 mm" in verdict(page)  # as kept
    assert page.form.view.isEnabled() and not page.form.nominal.isEnabled()

    page.form.new_button.click()
    assert page.form.in_force.mm() == 1.7  # the base of the next trial
    choose(page.form.gauge, "micrometer")
    page.form.entry.setFocus()
    type_readings(qtbot, THIN)
    assert "Leave it: Leave 1.7 mm." in verdict(page)
    page.keep()
    assert store.in_force("filament_diameter", shop.machine.id, shop.lot.id).verified_by is not None


def test_left_nominal_is_on_record_with_its_base(qtbot, page, store, shop):
    type_readings(qtbot, ["1.75", "1.74", "1.75", "1.76"])
    page.keep()
    now = store.in_force("filament_diameter", shop.machine.id, shop.lot.id)
    assert (now.old, now.new) == (1.75, 1.75)


def test_caliper_alone_does_not_set_it(qtbot, page):
    type_readings(qtbot, [text[:4] for text in THIN])
    assert "Cannot tell yet: Keep 1.75 mm; read with a micrometer" in verdict(page)


def test_oval_filament_is_named_and_marked(qtbot, page):
    type_readings(qtbot, OVAL)
    assert "The filament itself: Return it" in verdict(page)
    assert "6.7 %" in verdict(page)
    assert page.form.model.mark(1) and not page.form.model.mark(0)
    assert page.form.model.text(1, "error") == "0.120"
    assert all(series.ringed.all() for series in page.plot.data.points)


def test_one_way_reading_is_not_enough(qtbot, page):
    type_readings(qtbot, ["1.75"])
    assert "turn the filament by 90°" in verdict(page)


def test_slipped_decimal_mark_is_asked_with_its_answer_on_a_key(qtbot, page):
    type_readings(qtbot, ["17.5"])
    assert page.form.model.question(0) is not None
    (answer,) = [b for b in page.form.entry.findChildren(QPushButton) if b.text().startswith("1.75 mm  (Alt+1)")]
    answer.setFocus()
    QTest.keyClick(answer, Qt.Key.Key_Space)
    assert page.form.model.rows()[0]["measured_mm"] == pytest.approx(1.75)


def test_filament_of_another_diameter_is_asked_at_the_nominal(qtbot, page):
    type_readings(qtbot, ["2.85"])
    assert "2.85 mm read for a filament set to 1.75 mm" in page.form.nominal.accessibleDescription()
    retype(page.form.nominal, "2.85")
    assert page.form.nominal.accessibleDescription() == ""
    assert page.form.model.question(0) is None
    assert page.form.model.rows()[1]["nominal_mm"] == 2.85
    assert "2.85 mm" in page.form.entry.findChildren(QLabel)[0].text()


def test_equal_readings_are_questioned(qtbot, page):
    type_readings(qtbot, ["1.75"] * 10)
    assert "type what the instrument shows" in verdict(page)


def test_mass_and_water_make_one_trial_with_the_pairs(qtbot, page, store, shop):
    type_readings(qtbot, ["1.75", "1.74", "1.75", "1.76"])
    choose(page.form.view, "mass")
    assert page.form.model.rowCount() == 2
    page.form.entry.setFocus()
    type_readings(qtbot, ["2.98 g", "2,99"])
    assert "mass per length" in verdict(page)
    assert "unverified: weigh a sample in water" in verdict(page)
    assert page.plot.data.point_count == 2
    choose(page.form.view, "water")
    page.form.entry.setFocus()
    type_readings(qtbot, ["6.00", "1.17"])
    assert "density" in verdict(page)
    assert page.plot.data.point_count == 1
    draft = store.draft("diameter", shop.machine.id, shop.lot.id)
    assert {raw for raw in draft.readings["raw"] if raw} == {"6.00", "1.17", "1.75", "1.74", "1.76", "2.98 g", "2,99"}
    choose(page.form.view, "pairs")
    assert [row["raw"] for row in page.form.model.rows()][:4] == ["1.75", "1.74", "1.75", "1.76"]
    page.keep()
    (kept,) = store.trials(subject="diameter")
    assert {e.name for e in kept.estimates} == {"diameter", "area_ratio", "ovality", "diameter_sd",
                                                "mass_per_length", "density"}
    choose(page.form.view, "mass")  # a kept trial's other readings can be looked at
    assert [row["raw"] for row in page.form.model.rows()] == ["2.98 g", "2,99"]


def test_draft_is_found_again_in_its_view(qtbot, page, store, shop):
    choose(page.form.view, "mass")
    page.form.entry.setFocus()
    type_readings(qtbot, ["2.98"])
    again = DiameterPage(shop)
    qtbot.addWidget(again)
    again.show()
    assert again.form.view.value() == "mass"
    assert again.form.model.rows()[0]["raw"] == "2.98"


@pytest.mark.parametrize(
    ("view", "texts", "row", "says"),
    [("mass", ["29.8"], 0, "check the decimal mark"), ("water", ["1.17", "6.0"], 1, "swapped"),
     ("water", ["0.5", "0.1"], 0, "too little")],
)
def test_refusals_appear_at_their_row(qtbot, page, view, texts, row, says):
    choose(page.form.view, view)
    page.form.entry.setFocus()
    type_readings(qtbot, texts)
    assert says in page.form.model.problem(row, "measured_mm")
    assert "Cannot tell yet" in verdict(page)


def test_refusal_of_another_view_is_said_in_the_card(qtbot, page):
    choose(page.form.view, "mass")
    page.form.entry.setFocus()
    type_readings(qtbot, ["29.8"])
    choose(page.form.view, "pairs")
    assert "check the decimal mark" in verdict(page)


def test_density_of_a_kept_trial_is_used_and_named(qtbot, page, store, shop):
    known = store.keep(Trial("diameter", machine_id=shop.machine.id, lot_id=shop.lot.id,
                             estimates=(Estimate("density", 1.24, 0.003, 30.0, "g/cm3"),)))
    choose(page.form.view, "mass")
    page.form.entry.setFocus()
    type_readings(qtbot, ["2.812", "2.813"])
    assert "Set 1.6" in verdict(page) or "Set 1.7" in verdict(page)
    assert page.record().used == (known.id,)


def test_instrument_of_the_gauge_is_recorded_and_others_are_not(qtbot, page, store, shop):
    micrometer = store.add_instrument(Instrument("M1", kind="micrometer", u_outside_zero_mm=0.002))
    shop.instruments_changed.emit()
    shop.select_instrument(micrometer.id)
    type_readings(qtbot, ["1.75", "1.74", "1.75", "1.76"])
    assert page.record().instrument_id is None
    choose(page.form.gauge, "micrometer")
    assert page.record().instrument_id == micrometer.id


def test_a_diameter_belongs_to_a_lot(qtbot, page, shop):
    shop.select_lot(None)
    type_readings(qtbot, ["1.75", "1.74", "1.75", "1.76"])
    assert "lot above" in page.card.why_not.text()
    assert page.settings() == ()


def test_base_is_the_diameter_in_force(qtbot, shop, store):
    store.keep(Trial("diameter", machine_id=shop.machine.id, lot_id=shop.lot.id),
               (SettingInForce(shop.machine.id, shop.lot.id, "filament_diameter", 1.75, 1.72, "mm"),))
    page = DiameterPage(shop)
    qtbot.addWidget(page)
    page.show()
    assert page.form.in_force.mm() == 1.72


def test_places_can_be_added_and_pasted_rows_need_one(qtbot, page):
    page.form.add_button.click()
    assert page.form.model.rowCount() == 22
    assert page.form.model.rows()[21]["feature"] == "place 11, at 90°"
    QGuiApplication.clipboard().setText("\n".join(["1.75", "1.74"] * 12))
    page.form.table.go_to(0)
    page.form.table.setFocus()
    QTest.keyClick(page.form.table, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert "belongs to no place" in page.form.model.problem(22, "measured_mm")


def test_a_piece_without_length_is_refused_and_repeats_are_averaged(qtbot, page):
    choose(page.form.view, "mass")
    page.form.model.edit(0, "length_mm", "")
    page.form.entry.setFocus()
    type_readings(qtbot, ["2.98"])
    assert "length of this piece" in page.form.model.problem(0, "length_mm")
    page.form.model.edit(0, "length_mm", "50")
    assert "too short" in page.form.model.problem(0, "length_mm")
    page.form.model.edit(0, "length_mm", "1000")
    page.form.model.repeat_row(0)
    page.form.model.edit(1, "length_mm", "1000")
    page.form.model.edit(1, "measured_mm", "3.00")
    assert page.result.mass_per_length.value == pytest.approx(2.99)


def test_unreadable_nominal_changes_nothing(qtbot, page):
    retype(page.form.nominal, "x")
    assert page.form.model.rows()[0]["nominal_mm"] == 1.75
    assert "not a length" in page.form.nominal.accessibleDescription()
