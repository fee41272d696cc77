"""The page *Charts*: results kept in the store, what a person then reads, by keyboard."""

from datetime import UTC, datetime, timedelta

import numpy as np
import pytest
from PySide6.QtCore import QLocale, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from app.pages import PAGES
from app.pages.bench.charts import ChartsPage
from core.errors import StoreError
from core.quantity import Estimate
from core.records.rows import Event, Instrument, Lot, Machine, Trial
from core.words import tr
from tests.app.atpage import show_page, verdict

STEADY = [0.02, 0.04, 0.01, 0.03, 0.05, 0.02, 0.03, 0.00, 0.04, 0.03, 0.02, 0.04, 0.03, 0.01, 0.04, 0.02, 0.03, 0.05,
          0.01, 0.03]  # fmt: skip


@pytest.fixture
def shop(context, store):
    machine = store.add_machine(Machine("Bramble"))
    context.select_machine(machine.id)
    return context


@pytest.fixture
def opened(qtbot, shop):
    def open_page():
        page = show_page(qtbot, ChartsPage(shop))
        page.activateWindow()
        qtbot.waitUntil(page.isActiveWindow)
        page.take_focus()
        return page

    return open_page


def keep(store, values, name="wall_outset", machine=1, lot=None, unit="mm", subject="sizeerror"):
    for value in values:
        estimate = Estimate(name, value, 0.002, 9.0, unit)
        store.keep(Trial(subject, machine_id=machine, lot_id=lot, estimates=(estimate,)))


def choose(choice, value):
    """Go to the value with the arrow keys."""
    choice.setFocus()
    step = Qt.Key.Key_Down if choice.findData(value) > choice.currentIndex() else Qt.Key.Key_Up
    for _ in range(abs(choice.findData(value) - choice.currentIndex())):
        QTest.keyClick(choice, step)
    assert choice.value() == value


def test_it_is_on_the_list_with_its_help(shop):
    (entry,) = [entry for entry in PAGES if entry.key == "charts"]
    assert isinstance(entry.build(shop), ChartsPage)
    from app.helppane import help_path

    assert help_path(entry).exists() and help_path(entry).with_suffix(".svg").exists()


def test_nothing_kept_says_what_to_keep_first(opened):
    page = opened()
    assert "No kept result of this yet: scale error, X less Y." in verdict(page)
    assert "Keep a trial first: Part size, Size error, one lot along X and along Y." in verdict(page)
    assert page.plots.above.data.point_count == 0 and page.plots.below.isHidden()
    choose(page.choices.quantity, "reversal_x")
    assert "reversal error X. Keep a trial first: Machine geometry, Reversal." in verdict(page)


def test_without_a_machine_it_asks_for_one(qtbot, context):
    page = ChartsPage(context)
    qtbot.addWidget(page)
    page.show()
    assert "Choose or add a machine above" in verdict(page)


def test_the_quantity_with_most_results_is_shown_first(opened, store):
    keep(store, [0.05, 0.06], "reversal_x")
    keep(store, STEADY)
    page = opened()
    assert page.choices.quantity.value() == "wall_outset"
    assert "Steady: No signal in 20 results." in verdict(page)
    assert [line.name for line in page.plots.above.data.limits] == ["upper +0.085", "mean +0.028", "lower −0.030"]
    assert [line.name for line in page.plots.below.data.limits] == ["limit 0.070", "mean 0.022"]
    assert not any(line.dashed for line in page.plots.above.data.limits)
    assert page.plots.above.data.y_label == "wall outset per side, mm"


def test_few_results_have_no_limits_and_more_have_dashed_ones(opened, store):
    keep(store, STEADY[:7])
    page = opened()
    assert "Cannot tell yet: Results since the limits began: 7. Trial limits need 1 more" in verdict(page)
    assert page.plots.above.data.limits == ()
    keep(store, STEADY[7:10])
    page.hide()
    page.show()  # what was kept meanwhile is there
    assert "Not firm yet: Trial limits from 10 results, drawn dashed; 10 more make them firm." in verdict(page)
    assert [line.dashed for line in page.plots.above.data.limits] == [True] * 3


def test_a_trial_kept_meanwhile_is_charted_at_once(opened, store, shop):
    keep(store, STEADY)
    page = opened()
    keep(store, [0.15])
    shop.kept.emit(store.trial(21))
    assert "Signal: Trial 21 gave +0.150 mm, above the limit +0.085 mm." in verdict(page)


def test_a_signal_is_marked_and_asks_for_readings_and_no_adjustment(opened, store):
    keep(store, [*STEADY, 0.15])
    page = opened()
    assert "Signal: Trial 21 gave +0.150 mm, above the limit +0.085 mm." in verdict(page)
    assert "Next reading: For trial 21, read the same piece again with another instrument." in verdict(page)
    assert page.card.untouched.text() == (
        "Do not touch: every setting. A signal asks for a reading, not for an adjustment."
    )
    assert np.flatnonzero(page.plots.above.data.points[0].flagged).tolist() == [20]
    assert np.flatnonzero(page.plots.below.data.points[0].flagged).tolist() == [20]
    assert "✕ signal" in page.plots.above.canvas.name_rects()
    assert "wall outset per side: results 21, with a signal 1." in page.plots.above.accessibleDescription()


def test_the_keys_tell_the_trial_of_each_point(opened, store):
    keep(store, [*STEADY, 0.15])
    page = opened()
    canvas = page.plots.above.canvas
    canvas.setFocus()
    QTest.keyClick(canvas, Qt.Key.Key_Left)  # the last one
    today = datetime.now(UTC).astimezone().strftime("%Y-%m-%d")
    assert canvas.tip().startswith(f"Trial 21, {today} ")
    assert canvas.tip().endswith(": +0.1500 ± 0.0045 mm; beyond the limit; jump from the one before")
    below = page.plots.below.canvas
    below.setFocus()
    QTest.keyClick(below, Qt.Key.Key_Left)
    assert below.tip() == "Trial 20 to 21: 0.120 mm"
    choose(page.choices.kind, "ewma")
    canvas.setFocus()
    QTest.keyClick(canvas, Qt.Key.Key_Right)
    QTest.keyClick(canvas, Qt.Key.Key_Right)
    assert canvas.tip().startswith(("Smoothed mean after trial 1: +0.0", "Trial 1, "))
    tips = page.plots.above.data.points[0].tips
    assert len(tips) == 21 and tips[-1].startswith("Smoothed mean after trial 21") and len(tips[2:5]) == 3


def test_slow_wear_shows_in_the_smoothed_mean(opened, store):
    wear = [value + 0.0035 * n for n, value in enumerate(STEADY)]
    keep(store, [*STEADY, *wear])
    page = opened()
    choose(page.choices.kind, "ewma")
    assert "Slow drift: the smoothed mean is above its limits from trial" in verdict(page)
    smooth, results = page.plots.above.data.points
    assert smooth.flagged.any() and results.hollow.all()
    assert page.plots.below.isHidden()
    assert page.plots.above.data.limits[0].y[0] < page.plots.above.data.limits[0].y[-1]  # widening


def test_by_date_each_result_stands_at_its_day(opened, store):
    keep(store, STEADY)
    page = opened()
    choose(page.choices.kind, "dates")
    data = page.plots.above.data
    today = (datetime.now(UTC) - datetime(1970, 1, 1, tzinfo=UTC)) / timedelta(days=1)
    assert data.x_dates and data.points[0].x == pytest.approx(np.full(20, today), abs=0.1)
    assert data.points[0].U.tolist() == pytest.approx([2.262 * 0.002] * 20, rel=1e-3)
    assert page.plots.below.isHidden()


def test_machines_are_charted_apart_and_the_picked_one_first(opened, store, shop):
    other = store.add_machine(Machine("Thistle"))
    keep(store, STEADY)
    keep(store, [0.5, 0.6], machine=other.id)
    shop.machines_changed.emit()
    page = opened()
    assert page.plots.above.data.point_count == 20
    choose(page.choices.machine, str(other.id))
    assert page.plots.above.data.point_count == 2
    shop.select_machine(1)
    shop.select_machine(other.id)  # follows the picker above
    assert page.choices.machine.value() == str(other.id)
    shop.select_machine(1)
    assert page.plots.above.data.point_count == 20


def test_what_the_lot_owns_begins_anew_with_each_lot(opened, store):
    slate, ash = store.add_lot(Lot("Slate 7", "PETG")), store.add_lot(Lot("Ash 3", "PLA"))
    keep(store, [-0.003 + value / 100 for value in STEADY], "scale_x", lot=slate.id, unit="1")
    keep(store, [-0.002 + value / 100 for value in STEADY], "scale_x", lot=ash.id, unit="1")
    page = opened()
    assert page.choices.lot.isHidden()
    choose(page.choices.owner, "lot")
    assert page.choices.lot.isVisible()
    assert page.choices.quantity.value() == "scale_x"
    assert page.plots.above.data.point_count == 40
    assert [event.name for event in page.plots.above.data.events] == ["lot Ash 3"]
    assert [event.x for event in page.plots.above.data.events] == [20.5]
    assert "Steady" in verdict(page)
    assert page.plots.above.data.y_label == "scale error X, %"
    choose(page.choices.lot, str(slate.id))
    assert page.plots.above.data.point_count == 20 and page.plots.above.data.events == ()
    choose(page.choices.machine, "")
    assert page.plots.above.data.point_count == 20


def test_x_less_y_needs_both_axes_of_one_trial(opened, store):
    lot = store.add_lot(Lot("Slate 7", "PETG"))
    for value in STEADY:
        pair = (Estimate("scale_x", -0.003 + value / 100, 2e-4, 9.0, "1"), Estimate("scale_y", -0.003, 2e-4, 9.0, "1"))
        store.keep(Trial("sizeerror", machine_id=1, lot_id=lot.id, estimates=pair))
    page = opened()
    assert page.choices.quantity.value() == "scale_difference_xy"
    assert page.plots.above.data.point_count == 20
    assert "mean\t+0.027 %" in page.card.text()


def test_further_results_are_offered_by_name(opened, store):
    keep(store, [0.004, 0.005], "probe_sd")
    page = opened()
    offered = page.choices.quantity
    assert "repeatability of the probe" in [offered.itemText(n) for n in range(offered.count())]
    assert page.choices.quantity.value() == "probe_sd"


def test_events_begin_the_limits_anew_and_are_marked(opened, store):
    keep(store, STEADY)
    store.log_event(Event("nozzle_other", machine_id=1))
    keep(store, [value + 0.3 for value in STEADY[:9]])
    store.log_event(Event("note", machine_id=1, note="noisy fan"))
    other = store.add_machine(Machine("Thistle"))
    store.log_event(Event("nozzle_other", machine_id=other.id))
    page = opened()
    assert "Signal" not in verdict(page) and "Trial limits from 9 results" in verdict(page)
    data = page.plots.above.data
    assert [event.name for event in data.events] == ["New nozzle, other bore"]
    assert [(line.name, line.dashed) for line in data.limits] == [
        ("", False), ("", False), ("", False), ("upper +0.393", True), ("mean +0.327", True), ("lower +0.260", True)
    ]  # fmt: skip
    assert "New nozzle, other bore" in page.plots.above.canvas.name_rects()
    choose(page.choices.kind, "dates")
    assert len(page.plots.above.data.events) == 2


def test_what_the_checks_of_an_instrument_found_is_charted_by_instrument(opened, store, shop):
    caliper, other = store.add_instrument(Instrument("Caliper 2")), store.add_instrument(Instrument("Caliper 3"))
    for owner, shift in ((caliper, 0.0), (other, 0.3)):
        for value in STEADY:
            zero = Estimate("zero_outside", value / 10 + shift, 0.002, 9.0, "mm")
            store.keep(Trial("instrument", instrument_id=owner.id, estimates=(zero,)))
    store.log_event(Event("dropped", instrument_id=caliper.id))
    page = opened()
    assert "zero, outside jaws" not in [page.choices.quantity.itemText(n) for n in range(page.choices.quantity.count())]
    choose(page.choices.owner, "instrument")
    assert "Choose or add an instrument" not in verdict(page)
    assert page.choices.machine.isHidden() and page.choices.lot.isHidden() and page.choices.instrument.isVisible()
    assert page.choices.quantity.value() == "zero_outside" and page.plots.above.data.point_count == 20
    assert "mean\t+0.0027 mm" in page.card.text()
    shop.select_instrument(other.id)
    assert page.choices.instrument.value() == str(other.id)
    assert "mean\t+0.3027 mm" in page.card.text()
    choose(page.choices.quantity, "sd_hand")
    assert "Keep a trial first: Bench, Instruments." in verdict(page)


def test_without_an_instrument_it_asks_for_one(opened):
    page = opened()
    choose(page.choices.owner, "instrument")
    assert "Choose or add an instrument above" in verdict(page)


def test_it_says_until_when_to_measure_again(opened, store):
    keep(store, [*STEADY, 0.15])
    page = opened()
    due = (datetime.now(UTC).astimezone() + timedelta(days=3.5)).strftime("%Y-%m-%d")
    assert f"again by\t{due}, every 3.5 days" in page.card.text()


def test_a_withdrawn_trial_leaves_the_chart(opened, store):
    keep(store, [*STEADY, 0.15])
    store.withdraw(21, "caliper slipped")
    assert "Steady" in verdict(opened())


def test_results_in_two_units_are_refused_in_words(opened, store):
    keep(store, [0.1])
    keep(store, [0.1], unit="1")
    assert "Cannot tell yet: The results are in different units" in verdict(opened())


def test_there_is_nothing_to_keep(opened, store, shop):
    keep(store, STEADY)
    page, said = opened(), []
    shop.notice.connect(lambda text, level: said.append((text, level)))
    assert page.card.keep_button.isHidden()
    page.keep()
    assert said == [("A chart has nothing to keep; trials are kept on their own pages.", "info")]
    assert page.save_draft() and store.trials(limit=1)[0].id == 20
    assert page.record() == Trial("charts")


def test_a_store_that_fails_is_told_on_the_notice_line(opened, store, shop, monkeypatch):
    keep(store, STEADY)
    page, said = opened(), []
    shop.notice.connect(lambda text, level: said.append((text, level)))

    def fail(*_args, **_more):
        raise StoreError(tr("The disk is gone."))

    monkeypatch.setattr(store, "series", fail)
    page.recompute()
    monkeypatch.setattr(store, "machines", fail)
    page.shown()
    assert ("The disk is gone.", "error") in said and len(said) == 3


def test_numbers_have_the_decimal_mark_of_the_locale(qtbot, opened, store):
    before = QLocale()
    QLocale.setDefault(QLocale(QLocale.Language.German))
    try:
        keep(store, [*STEADY, 0.15])
        page = opened()
        assert "+0,150 mm" in page.card.text() and "+0,1500 ± 0,0045 mm" in page.card.text()
        assert page.plots.above.data.limits[0].name == "upper +0,085"
        assert "," not in page.plots.above.data.x_label.partition("order, ")[2]  # dates stay dates
    finally:
        QLocale.setDefault(before)


def test_tab_goes_through_the_choices(opened, store):
    keep(store, STEADY)
    page = opened()
    assert QGuiApplication.focusObject() is page.choices.quantity
    for expected in (page.choices.machine, page.choices.kind):
        QTest.keyClick(QGuiApplication.focusObject(), Qt.Key.Key_Tab)
        assert QGuiApplication.focusObject() is expected


def test_zoom_stays_on_the_same_quantity_and_both_plots_move_together(opened, store):
    keep(store, [0.05, 0.06], "reversal_x")
    keep(store, STEADY)
    page = opened()
    above, below = page.plots.above.canvas, page.plots.below.canvas
    above.view.setXRange(5, 12, padding=0)
    assert below.view.viewRange()[0] == pytest.approx([5, 12])
    below.view.setXRange(6, 9, padding=0)
    assert above.view.viewRange()[0] == pytest.approx([6, 9])
    page.recompute()
    assert above.view.viewRange()[0] == pytest.approx([6, 9])
    choose(page.choices.quantity, "reversal_x")
    assert above.is_home() and below.is_home()
    assert above.view_rect().left() == pytest.approx(below.view_rect().left(), abs=1)


@pytest.mark.parametrize("size", [(790, 580), (1080, 680)], ids=["1000x700", "1280x800"])
def test_the_card_is_whole_and_nothing_is_cut(opened, store, size):
    keep(store, [*STEADY, 0.15])
    page = opened()
    page.resize(*size)
    QTest.qWait(20)
    assert not page.card.body.verticalScrollBar().isVisible()
    assert page.minimumSizeHint().width() <= size[0]
    for choice in (page.choices.owner, page.choices.quantity, page.choices.machine, page.choices.kind):
        room = choice.width() - 40
        assert choice.fontMetrics().horizontalAdvance(choice.currentText()) <= room


def test_ten_thousand_results_are_shown(opened, store, monkeypatch):
    keep(store, [0.04])
    (only,) = store.series("wall_outset")
    from dataclasses import replace

    values = np.random.default_rng(2).normal(0.04, 0.006, 10_000)
    many = tuple(replace(only, trial_id=n, kept_at=only.kept_at + timedelta(hours=n), value=float(v))
                 for n, v in enumerate(values))  # fmt: skip
    monkeypatch.setattr(store, "series", lambda *_args, **_more: many)
    page = opened()
    page.recompute()
    QTest.qWait(1)
    assert page.plots.above.data.point_count == 10_000
    assert any("signal" in text for text in page.plots.above.canvas.name_rects())


def keep_weighing(store, lot, now_g, spool_g=200.0):
    texts = {"weighing.before_g": "", "weighing.now_g": now_g, "weighing.u_balance_g": "0.5"}
    store.keep(
        Trial("drying", lot_id=lot, readings={"field": list(texts), "raw": list(texts.values())},
              conditions={"spool_mass_g": spool_g}, estimates=(Estimate("stock", 100.0, 1.0, 9.0, "m"),))
    )  # fmt: skip


def test_by_filament_used_needs_weighings_and_then_tells_wear_per_kilogram(opened, store):
    lot = store.add_lot(Lot("Slate", "PETG-CF", spool_mass_g=200.0))
    keep(store, [0.02, 0.03, 0.04, 0.05], lot=lot.id)
    page = opened()
    choose(page.choices.kind, "used")
    assert "Cannot tell yet: Only 0 of 4 results lie between two weighings of their spool" in verdict(page)
    assert "Weigh the spool of Slate on page Lots" in verdict(page) and page.plots.above.data.point_count == 0
    for n, outset in enumerate([0.02, 0.031, 0.039, 0.051, 0.06]):
        keep_weighing(store, lot.id, str(1200 - 100 * n))
        keep(store, [outset], lot=lot.id)
    keep_weighing(store, lot.id, "700")
    page.recompute()
    assert "Signal: It changes with the filament used: look at the nozzle for wear" in verdict(page)
    assert "Results between no two weighings of their spool: 4" in verdict(page)
    assert "change\n+0.100" in verdict(page) and "mm/kg" in verdict(page) and "known to" in verdict(page)
    assert page.plots.above.data.points[0].x == pytest.approx([0.05, 0.15, 0.25, 0.35, 0.45])
    assert page.plots.above.data.x_label == "filament used, kg" and page.plots.below.isHidden()
    assert "Trial" in page.plots.above.data.points[0].tips[0]
    choose(page.choices.kind, "individuals")
    assert "Trial limits from 9 results" in verdict(page) and not page.plots.below.isHidden()


def test_what_is_logged_while_the_chart_is_open_is_drawn_at_once(opened, store, shop):
    keep(store, STEADY[:10])
    page = opened()
    assert not page.plots.above.data.events
    event = store.log_event(Event("nozzle_other", machine_id=1))
    keep(store, STEADY[:2])
    shop.logged.emit(event)
    assert [mark.x for mark in page.plots.above.data.events] == [10.5]
