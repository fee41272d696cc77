"""The page *Instruments*, used as a person uses it: keys in, sentences, tables and database out."""

import re

import numpy as np
import pytest
from PySide6.QtCore import QLocale, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from app.context import Context
from app.pages.bench.instrumentpane import BUDGET, DOUBT
from app.pages.bench.instruments import InstrumentsPage
from core.measuring.instrumentkinds import KINDS, Plan, plans_of
from core.quantity import Estimate
from core.records.rows import Instrument, Machine, Trial, TrialState
from core.records.store import open_store
from tests.app.atpage import show_page, type_readings, verdict
from tests.core.measuring.checks import taken


@pytest.fixture
def shop(context, store):
    machine = store.add_machine(Machine("Bramble"))
    for name, kind in (("Caliper 2", "caliper"), ("Caliper 3", "caliper"), ("Balance", "balance")):
        store.add_instrument(Instrument(name, kind=kind, u_outside_zero_mm=0.5 if kind == "caliper" else 0.0))
    context.select_machine(machine.id)
    pick(context, "Caliper 2")
    return context


@pytest.fixture
def page(qtbot, shop, by_hand):
    page = show_page(qtbot, InstrumentsPage(shop))
    page.take_focus()
    return page


def pick(context, name):
    context.select_instrument(instrument(context, name).id if name else None)


def instrument(context, name):
    return next(row for row in context.store.instruments() if row.name == name)


def texts(seed=1, **faults):
    rng = None if seed is None else np.random.default_rng(seed)
    return [f"{y:.2f}" for y in taken(rng=rng, **faults).measured]


def fill(page, readings):
    """Paste readings as one step."""
    keys = [column.key for column in page.form.model.columns]
    page.form.model.paste(0, keys.index("measured_mm"), "\n".join(readings))


def cells(table):
    rows, columns = range(table.rowCount()), range(table.columnCount())
    return [[table.item(row, column).text() for column in columns] for row in rows]


def choose(box, value):
    box.setCurrentIndex(box.findData(value))


def keep_size_trial(shop, name="Caliper 2", machine=None):
    trial = Trial(
        "sizeerror",
        machine_id=machine or shop.machine.id,
        instrument_id=instrument(shop, name).id,
        readings={"raw": ["1"]},
        estimates=(Estimate("scale_x", -0.002, 2e-4, 9, "1"),),
        method="sizeerror 1",
    )
    return shop.store.keep(trial)


def test_a_check_typed_by_keyboard_alone_is_kept_and_used_from_then_on(qtbot, page, store, shop):
    type_readings(qtbot, texts())
    assert "Use this instrument" in verdict(page)
    assert re.search(r"zero, outside jaws\s+[+−]0\.00\d+\s+± 0\.0\d+ mm", verdict(page))
    assert "hand, one reading" in verdict(page)
    assert page.picture.plot.data.point_count == 6
    assert page.picture.plot.data.ground.half_height.min() == pytest.approx(0.02)
    page.card.keep_button.setFocus()
    QTest.keyClick(page.card.keep_button, Qt.Key.Key_Space)
    (kept,) = store.trials(subject="instrument")
    assert (kept.state, kept.machine_id, kept.lot_id) == (TrialState.KEPT, None, None)
    assert [said["conformity"] for said in kept.verdict] == ["conforming"]
    assert {e.name for e in kept.estimates} == {"zero_outside", "zero_inside", "zero_depth", "scale", "sd_hand"}
    row = instrument(shop, "Caliper 2")
    assert 0.001 < row.u_outside_zero_mm < 0.02
    assert 0.001 < row.u_inside_zero_mm < 0.02
    assert 0 < row.u_scale_ratio < 1e-3
    assert row.sd_hand_dof == 9
    assert shop.instrument == row
    assert "Use this instrument" in verdict(page)  # still in sight
    assert not page.card.keep_button.isEnabled()
    QTest.keyClick(QGuiApplication.focusObject(), Qt.Key.Key_Space)  # the button New readings
    assert page.form.model.rows()[0]["raw"] == ""


def test_the_budget_lists_every_component_and_follows_the_readings(qtbot, page):
    page.picture.view.setFocus()
    QTest.keyClick(page.picture.view, Qt.Key.Key_Down)
    assert page.picture.budget.isVisible()
    assert cells(page.picture.budget.table) == []
    fill(page, texts())
    rows = cells(page.picture.budget.table)
    assert {row[0] for row in rows} >= {"reference", "resolution", "repeatability", "temperature apart"}
    assert {row[2] for row in rows} == {"rectangle", "t"}
    assert all(row[1] and row[3] and row[4] for row in rows)
    assert [row[5] for row in rows if row[0] == "repeatability"] == ["16"]
    page.picture.budget.point.setFocus()
    QTest.keyClick(page.picture.budget.point, Qt.Key.Key_End)
    assert [row[0] for row in cells(page.picture.budget.table)] == ["resolution", "repeatability"]
    assert page.picture.budget.total.text().startswith("zero: error ")
    assert "k = 1.9" in page.picture.budget.total.text()
    page.form.model.edit(0, "measured_mm", "0.01")
    assert page.picture.budget.total.text().startswith("zero: error ")


def test_a_bad_instrument_puts_earlier_results_in_doubt_and_deletes_nothing(page, store, shop):
    fill(page, texts())
    page.keep()
    page.begin_anew()
    mine, other = keep_size_trial(shop), keep_size_trial(shop, "Caliper 3")
    fill(page, texts(scale=1.2e-3))
    assert "Take it out of use" in verdict(page)
    said = []
    shop.notice.connect(lambda text, level: said.append((text, level)))
    page.keep()
    bad = store.trials(subject="instrument")[0]
    assert said[-1] == (f"Check {bad.id} kept; results in doubt that were read with this instrument: 1.", "warning")
    assert page.picture.view.value() == DOUBT
    assert page.picture.doubt.isVisible()
    ((number, subject, _, machine, check),) = cells(page.picture.doubt.table)
    assert (number, subject, machine, check) == (f"№ {mine.id}", "Size error", "Bramble", f"№ {bad.id}")
    assert "Nothing is deleted" in page.picture.doubt.says.text()
    assert {trial.state for trial in store.trials(subject="sizeerror")} == {TrialState.KEPT}
    pick(shop, "Caliper 3")
    assert cells(page.picture.doubt.table) == []
    assert "No kept result is in doubt" in page.picture.doubt.says.text()
    assert other.id


def test_a_further_reading_of_a_reference_begins_with_how_well_it_is_known(page):
    page.form.model.edit(5, "measured_mm", "22.00")
    page.form.model.repeat_row(5)
    known = page.form.model.rows()[5]["half_width"]
    assert known > 0 and page.form.model.rows()[6]["half_width"] == known
    assert page.form.model.rows()[6]["raw"] == ""


def test_what_is_seen_between_the_closed_jaws_counts_and_is_kept(qtbot, page, store):
    fill(page, texts())
    assert "wear of the jaws (close the jaws and hold them against a lamp)" in verdict(page).lower()
    page.form.light_gap.setFocus()
    QTest.keyClick(page.form.light_gap, Qt.Key.Key_Down)
    assert "Use this instrument" in verdict(page) and "Not told yet" not in verdict(page)
    QTest.keyClick(page.form.light_gap, Qt.Key.Key_Down)
    assert "Cannot tell yet" in verdict(page) and "Wipe the jaws and look again" in verdict(page)
    page.keep()
    (kept,) = store.trials(subject="instrument")
    assert store.trial(kept.id).conditions["light_gap"] == "seen"
    pick(page.context, "Balance")
    assert page.form.light_gap.isHidden()


def test_zero_that_moved_marks_the_readings_in_between(page):
    readings = texts(seed=None)
    readings[20:22] = ["0.03", "0.03"]
    fill(page, readings)
    assert "Zero moved from 0 to 0.03 mm" in verdict(page)
    marked = [row for row in range(len(readings)) if page.form.model.mark(row)]
    assert marked == list(range(5, 20))
    page.form.model.edit(20, "measured_mm", "0.00")
    page.form.model.edit(21, "measured_mm", "0.01")
    assert not any(page.form.model.mark(row) for row in range(len(readings)))


def test_negative_zero_readings_are_typed_as_they_are_shown(qtbot, page):
    target = QGuiApplication.focusObject()
    QTest.keyClicks(target, "-")
    qtbot.wait(400)
    QTest.keyClicks(target, "0,01")
    QTest.keyClick(target, Qt.Key.Key_Return)
    assert page.form.model.rows()[0]["measured_mm"] == -0.01


def test_the_promise_is_held_against_the_hand(qtbot, page):
    choose(page.form.plan_choice, str(Plan.HAND))
    fill(page, ["10.05", "10.06", "10.07", "10.05", "10.07"])
    page.form.promised.setFocus()
    QTest.keyClicks(page.form.promised, "0,03")
    QTest.keyClick(page.form.promised, Qt.Key.Key_Return)
    assert "cannot promise ± 0.03 mm" in verdict(page).replace("0,03", "0.03")
    assert "Not told yet: Zero, outside jaws (read zero five times); instrument scale" in verdict(page)


def test_another_plan_keeps_what_was_read(page):
    fill(page, texts()[:6])
    choose(page.form.plan_choice, str(Plan.ZERO))
    assert [row["raw"] for row in page.form.model.rows()] == texts()[:6]
    choose(page.form.plan_choice, str(Plan.REFERENCES))
    rows = page.form.model.rows()
    assert [row["raw"] for row in rows][:6] == texts()[:6]
    assert [row["feature"] for row in rows if row["raw"] == ""].count("block 50") == 3
    assert page.form.table.isColumnHidden(3)
    page.undoing.undo()
    assert len(page.form.model.rows()) == 6


def test_what_is_typed_of_a_reference_is_read_before_its_error_in_a_narrow_window(qtbot, page):
    choose(page.form.plan_choice, str(Plan.OWN))
    error = [column.key for column in page.form.model.columns].index("error")
    for width, hidden in ((780, True), (1500, False)):
        page.resize(width, 620)
        qtbot.waitUntil(lambda hidden=hidden: page.form.table.isColumnHidden(error) is hidden)
    choose(page.form.plan_choice, str(Plan.FULL))
    page.resize(780, 620)
    qtbot.waitUntil(lambda: page.width() == 780)
    assert not page.form.table.isColumnHidden(error)


def test_no_view_takes_more_of_the_height_than_another(qtbot, page):
    heights = set()
    for view in range(page.picture.view.count()):
        page.picture.view.setCurrentIndex(view)
        qtbot.wait(1)
        heights.add(page.layout().totalMinimumHeightForWidth(780))
    assert len(heights) == 1


def test_an_own_reference_needs_its_half_width(qtbot, page):
    fill(page, ["0.00", "0.00"])
    page.form.add_button.setFocus()
    QTest.keyClick(page.form.add_button, Qt.Key.Key_Space)
    editor = QGuiApplication.focusObject()
    QTest.keyClicks(editor, "30")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    last = page.form.model.rowCount() - 1
    qtbot.waitUntil(lambda: page.form.model.rows()[last]["nominal_mm"] == 30.0)
    page.form.model.edit(last, "measured_mm", "30.00")
    assert "how well is the reference known" in page.form.model.problem(last, "half_width")
    assert f"Row {last + 1}" in verdict(page)
    assert not page.form.table.isColumnHidden(3)
    page.form.model.edit(last, "half_width", "0,06")
    assert "is no gauge" in verdict(page)
    page.form.model.edit(last, "half_width", "0,001")
    assert "Cannot tell yet" not in verdict(page).replace("Cannot tell yet: Nothing is proved", "")
    page.form.model.edit(last, "kind", "")
    assert f"Row {last + 1}: choose the part" in verdict(page)


def test_a_limit_of_ones_own_decides(qtbot, page):
    fill(page, texts())
    assert "Use this instrument" in verdict(page)
    page.form.limit.setFocus()
    QTest.keyClicks(page.form.limit, "0.005")
    QTest.keyClick(page.form.limit, Qt.Key.Key_Return)
    assert "Use this instrument" not in verdict(page)
    page.form.resolution.setFocus()
    page.form.resolution.selectAll()
    QTest.keyClick(page.form.resolution, Qt.Key.Key_Delete)
    QTest.keyClick(page.form.resolution, Qt.Key.Key_Return)
    assert "needed" in page.form.resolution.accessibleDescription()


def test_readings_of_one_instrument_are_never_booked_to_another(page, store, shop):
    fill(page, texts()[:7])
    pick(shop, "Caliper 3")
    assert "These readings were begun with Caliper 2" in verdict(page)
    page.keep()
    assert store.trials(subject="instrument")[0].state is TrialState.OPEN
    assert store.draft("instrument").instrument_id == instrument(shop, "Caliper 2").id
    pick(shop, None)
    assert "begun with Caliper 2" in verdict(page)
    pick(shop, "Caliper 2")
    assert "begun with" not in verdict(page)
    for row in range(7):
        page.form.model.clear_cells([(row, "measured_mm")])
    pick(shop, "Caliper 3")
    fill(page, texts()[:7])
    assert store.draft("instrument").instrument_id == instrument(shop, "Caliper 3").id


def test_readings_typed_before_the_instrument_was_picked_move_along(page, store, shop):
    pick(shop, None)
    assert "Pick the instrument in the top row" in verdict(page)
    fill(page, texts())
    assert "Pick or add the instrument" in page.card.why_not.text()
    page.keep()
    assert store.draft("instrument") is not None
    pick(shop, "Caliper 2")
    page.keep()
    assert store.trials(subject="instrument")[0].instrument_id == instrument(shop, "Caliper 2").id


def test_a_draft_is_found_again_with_its_instrument(qtbot, page, store, shop):
    fill(page, texts()[:7])
    page.hide()
    later = Context(store)
    again = InstrumentsPage(later)
    qtbot.addWidget(again)
    again.show()
    assert later.instrument.name == "Caliper 2"
    assert [row["raw"] for row in again.form.model.rows()][:7] == texts()[:7]
    again.hide()


def test_an_instrument_picked_elsewhere_is_followed_when_the_page_comes_back(page, shop):
    page.hide()
    pick(shop, "Balance")
    page.show()
    assert page.form.kind == "balance"


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_has_its_columns_plans_and_units(qtbot, page, store, shop, kind):
    added = store.add_instrument(Instrument(f"My {kind}", kind=kind, resolution_mm=KINDS[kind].resolution))
    shop.instruments_changed.emit()
    shop.select_instrument(added.id)
    unit = KINDS[kind].unit
    assert page.form.model.headerData(4, Qt.Orientation.Horizontal).endswith(unit)
    assert page.form.plan_choice.count() == len(plans_of(kind))
    assert page.form.limit.accessibleName() == f"Limit ±, {unit}"
    assert page.form.promised.isHidden() == (not KINDS[kind].length)
    assert page.form.land.isHidden() == (not KINDS[kind].inside)
    fill(page, [f"{y:.4f}" for y in taken(kind, resolution=KINDS[kind].resolution).measured])
    if kind == "other":
        assert "no usual limit of error" in page.form.limit.accessibleDescription()
        return
    assert "Use this instrument" in verdict(page)
    page.keep()
    assert store.trials(subject="instrument")[0].instrument_id == added.id


def test_kept_checks_are_listed_by_instrument_and_shown_with_their_kind(page, store, shop):
    fill(page, texts())
    page.keep()
    page.begin_anew()
    pick(shop, "Balance")
    assert page.picker.count() == 1
    fill(page, texts(kind="balance"))
    page.keep()
    assert page.form.kind == "balance"
    before = instrument(shop, "Balance")
    assert (before.version, before.sd_hand_mm) == (1, None)
    pick(shop, "Caliper 2")
    assert page.kept_trial is None
    assert page.picker.count() == 2
    page.picker.setFocus()
    QTest.keyClick(page.picker, Qt.Key.Key_Down)
    assert page.form.kind == "caliper"
    assert "Use this instrument" in verdict(page)
    assert "Kept trials are not changed" in page.card.why_not.text()


def test_a_balance_is_read_in_grams(page, shop):
    pick(shop, "Balance")
    fill(page, ["0.00 g", "0,01"])
    assert [row["measured_mm"] for row in page.form.model.rows()][:2] == [0.0, 0.01]
    assert page.form.model.edit(2, "measured_mm", "1in")


def test_a_record_can_be_changed_from_the_page(qtbot, page, shop):
    page.form.change_button.setFocus()
    QTest.keyClick(page.form.change_button, Qt.Key.Key_Space)
    form = page.findChild(type(page._change))  # the popover that opened
    name = form.form.field("name")
    assert name.text() == "Caliper 2"
    name.selectAll()
    QTest.keyClicks(name, "Caliper 2b")
    form.submit()
    assert instrument(shop, "Caliper 2b").id == shop.instrument.id
    assert instrument(shop, "Caliper 2b").version == 2
    assert not form.isVisible()
    page.form.change_button.click()
    name.setText("Caliper 3")
    form.submit()
    assert "on record already" in name.accessibleDescription()
    said = []
    shop.notice.connect(lambda text, level: said.append(text))
    shop.store.change_instrument(shop.instrument)  # elsewhere
    name.setText("Caliper 4")
    form.submit()
    assert "changed elsewhere" in said.pop()
    form.hide()
    pick(shop, None)
    page.form.change_button.click()
    assert said == ["Pick the instrument in the top row first."]


def test_a_locale_with_a_comma_is_shown_with_a_comma(qtbot, shop):
    QLocale.setDefault(QLocale("de_DE"))
    try:
        page = InstrumentsPage(shop)
        qtbot.addWidget(page)
        page.show()
        fill(page, texts())
        page.picture.turn_to(BUDGET)
        assert "0," in page.picture.budget.total.text()
        assert "0." not in page.picture.budget.total.text()
        assert page.form.model.index(0, 5).data() == "+0,000"
        page.hide()
    finally:
        QLocale.setDefault(QLocale.c())


def test_a_store_that_fails_is_said_and_nothing_is_lost(page, store, shop):
    fill(page, texts())
    said = []
    shop.notice.connect(lambda text, level: said.append((text, level)))
    stale = instrument(shop, "Caliper 2")
    real = store.change_instrument
    store.change_instrument = lambda row: real(type(row)(**{**vars_of(row), "version": 99}))
    page.keep()
    assert said[-1][1] == "error"
    assert "changed elsewhere" in said[-1][0]
    assert instrument(shop, "Caliper 2") == stale


def vars_of(row):
    return {name: getattr(row, name) for name in row.__dataclass_fields__}


def test_the_last_printed_trial_is_resumed_below_a_check(page, store, shop):
    keep_size_trial(shop)
    fill(page, texts())
    page.keep()
    later = Context(store)
    later.resume()
    assert (later.machine.name, later.instrument.name) == ("Bramble", "Caliper 2")
    empty = Context(open_store(":memory:"))
    empty.resume()
    assert (empty.machine, empty.instrument) == (None, None)
    empty.store.close()


# What the other pages make of it

@pytest.fixture
def size_page(qtbot, shop):
    from app.pages.part_size.sizeerror import SizeErrorPage

    size_page = SizeErrorPage(shop)
    qtbot.addWidget(size_page)
    size_page.show()
    nominal = [row["nominal_mm"] for row in size_page.form.model.rows()]
    fill(size_page, [f"{L * 0.997 + (place % 3 - 1) * 0.01:.2f}" for place, L in enumerate(nominal)])
    return size_page


def test_size_error_uses_the_check_of_the_picked_instrument_and_says_so(page, size_page, store, shop):
    wide = size_page.result.judgement.fit.estimate("wall_outset").U
    assert "never checked here" in verdict(size_page)
    fill(page, texts())
    page.keep()
    size_page.recompute()
    assert wide / 2 > size_page.result.judgement.fit.estimate("wall_outset").U
    check = store.trials(subject="instrument")[0]
    assert f"check № {check.id}, " in verdict(size_page)
    assert "is used" in verdict(size_page)
    size_page.keep()
    assert store.trials(subject="sizeerror")[0].used == (check.id,)


def test_size_error_says_that_the_picked_instrument_was_found_bad(page, size_page, shop):
    fill(page, texts(scale=1.2e-3))
    page.keep()
    size_page.recompute()
    assert "found bad, check № " in verdict(size_page)
    pick(shop, "Caliper 3")
    assert "never checked here" in verdict(size_page)
    pick(shop, None)
    assert "never checked" not in verdict(size_page)
