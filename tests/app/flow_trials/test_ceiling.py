"""The page *Ceiling*, by keyboard."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from app.pages.flow_trials.ceiling import CeilingPage
from core.quantity import Estimate
from core.records.rows import Lot, Machine, Trial

# 200 mm of 2.98 g/m each: 0.596 g; the share falls beyond 10 mm3/s.
MASSES = ("0.590", "0.589", "0.591", "0.590", "0.589", "0.583", "0.572", "0.561", "0.548", "0.537")


@pytest.fixture
def page(qtbot, context, store):
    lot = store.add_lot(Lot("Slate 7", "PETG"))
    context.select_machine(store.add_machine(Machine("Bramble")).id)
    context.select_lot(lot.id)
    store.keep(Trial("diameter", lot_id=lot.id, estimates=(Estimate("mass_per_length", 2.98, 0.01, 20.0, "g/m"),)))
    page = CeilingPage(context)
    qtbot.addWidget(page)
    page.resize(1080, 720)
    page.show()
    qtbot.waitExposed(page)
    return page


def type_all(qtbot, page, masses=MASSES, temperature="230"):
    for row in range(len(masses)):
        page.form.model.edit(row, "temperature_c", temperature)
    page.form.table.go_to(0)
    page.take_focus()
    for text in masses:
        target = QGuiApplication.focusObject()
        QTest.keyClicks(target, text)
        qtbot.wait(60)
        QTest.keyClick(target, Qt.Key.Key_Return)
        qtbot.wait(320)


def verdict(page):
    return page.card.body.toPlainText()


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


def test_hotter_than_the_hot_end_may_be_is_refused_at_its_cell(qtbot, page):
    type_all(qtbot, page, MASSES[:6], temperature="285")
    assert "Refused" in verdict(page)
    assert page.form.model.problem(0, "temperature_c")


def test_too_much_mass_is_questioned(qtbot, page):
    type_all(qtbot, page, MASSES[:5])
    page.form.model.edit(1, "measured_mm", "0.640")
    assert "weigh again" in verdict(page)
    assert page.form.model.problem(1, "measured_mm")


def test_three_strands_do_not_tell(qtbot, page):
    type_all(qtbot, page, MASSES[:3])
    assert "5 strands" in verdict(page)


def test_a_strand_is_added_at_the_same_temperature(qtbot, page):
    page.form.model.edit(9, "temperature_c", "230")
    page.add_button.setFocus()
    QTest.keyClick(page.add_button, Qt.Key.Key_Space)
    assert page.form.model.values(10)["temperature_c"] == 230.0


def test_without_a_lot_it_is_not_kept(qtbot, page, context):
    type_all(qtbot, page)
    context.select_lot(None)
    assert "filament lot" in page.why_not_keep()
