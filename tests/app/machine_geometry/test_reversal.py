"""The page *Reversal*, by keyboard: readings in, sentences, pictures and database out."""

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from app.pages.machine_geometry.reversal import ReversalPage
from core.records.rows import Instrument, Machine, TrialState
from tests.app.atpage import choose, show_page, type_readings, verdict
from tests.published import table

SLACK = [("0.50", "0.41"), ("0.51", "0.42"), ("0.50", "0.42"), ("0.50", "0.41"), ("0.51", "0.42")]
TIGHT = [("0.50", "0.49"), ("0.50", "0.50"), ("0.51", "0.50"), ("0.50", "0.49"), ("0.50", "0.50")]


def texts(*places):
    return [text for pairs in places for pair in pairs for text in pair]


@pytest.fixture
def shop(context, store):
    machine = store.add_machine(Machine("Bramble", travel_x_mm=100.0))
    context.select_machine(machine.id)
    return context


@pytest.fixture
def page(qtbot, shop, by_hand):
    page = show_page(qtbot, ReversalPage(shop))
    page.take_focus()
    return page


def fill(page, readings, first=0):
    """Paste readings as one step, the first into this row."""
    keys = [column.key for column in page.form.model.columns]
    page.form.model.paste(first, keys.index("measured_mm"), "\n".join(readings))


def type_setting(page, key, text):
    field = page.form.settings.field(key)
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def shown_columns(page):
    columns = page.form.model.columns
    return [column.key for place, column in enumerate(columns) if not page.form.table.isColumnHidden(place)]


def test_pairs_typed_by_keyboard_alone_send_to_the_mechanics(qtbot, page):
    assert "Come from −: move X towards +" in page.form.next_move.text()
    type_readings(qtbot, texts(SLACK)[:1])
    assert "Come from +: move X towards −" in page.form.next_move.text()
    type_readings(qtbot, texts(SLACK, SLACK, SLACK)[1:])
    assert "Mend the mechanics" in verdict(page) and "grub screw" in verdict(page)
    assert "reversal error X" in verdict(page) and "±" in verdict(page) and "at Middle" in verdict(page)
    assert "Steps per millimetre, flow factor, contour offset" in page.card.untouched.text()
    assert page.form.model.text(1, "error") == "+0.090" and page.form.model.text(0, "error") == ""
    assert page.plot.data.point_count == 30
    assert [event.name for event in page.plot.data.events] == ["Left", "Middle", "Right"]
    assert page.plot.data.bands_label == "±2s"
    assert "Remove the indicator before homing" in page.form.caution.text()
    assert "feature" in shown_columns(page) and "nominal_mm" not in shown_columns(page)


def test_a_tight_axis_is_left_alone_and_kept(qtbot, page, store, shop):
    fill(page, texts(TIGHT, TIGHT, TIGHT))
    assert "Leave it" in verdict(page) and "good" in verdict(page)
    qtbot.mouseClick(page.card.keep_button, Qt.MouseButton.LeftButton)
    (kept,) = store.trials(subject="reversal")
    assert kept.state is TrialState.KEPT and kept.method == "reversal 1"
    assert [(e.name, e.unit) for e in kept.estimates] == [("reversal_x", "mm")]
    assert kept.conditions == {"axis": "x", "method": "quick", "resolution_mm": 0.01}
    assert store.newest("reversal_x", shop.machine.id)[0] == kept.id
    assert "Leave it" in verdict(page) and not page.card.keep_button.isEnabled()
    page.form.new_button.click()
    assert page.form.model.rows()[0]["raw"] == "" and page.card.card is None


def test_what_cannot_be_a_result_is_refused_in_words_and_not_kept(qtbot, page, store):
    fill(page, ["0.50", "0.46"])
    assert "One pair only (Left)" in verdict(page)
    fill(page, ["0.50", "0.55", "0.50", "0.47"], first=2)
    assert "changes its sign" in verdict(page) and "Clamp it" in verdict(page)
    fill(page, texts([("1.70", "0.50")] * 5))
    assert "1.20 mm" in verdict(page) and "something is loose" in verdict(page)
    page.keep()
    assert not [t for t in store.trials(subject="reversal") if t.state is TrialState.KEPT]
    fill(page, texts(TIGHT))
    page.form.model.edit(4, "measured_mm", "5.1")
    assert "type it again" in page.form.model.problem(4, "measured_mm")


def test_an_excluded_reading_takes_its_pair_along(qtbot, page):
    fill(page, texts(SLACK, SLACK, SLACK))
    page.form.model.edit(0, "measured_mm", "0.80")
    assert page.form.model.mark(0) and page.form.model.mark(1) and "after power-on" in verdict(page)
    page.form.table.go_to(0)
    QTest.keyClicks(page.form.entry.focusProxy(), "/")
    QTest.keyClicks(QGuiApplication.focusObject(), "cold")
    QTest.keyClick(QGuiApplication.focusObject(), Qt.Key.Key_Return)
    assert len(page.result.judgement.fit.places[0].rows) == 4
    assert not page.form.model.mark(1)


def test_other_axes_have_other_places_and_other_repairs(qtbot, page):
    choose(page.form.axis, "y")
    assert page.form.model.rows()[0]["feature"] == "Front"
    choose(page.form.axis, "z")
    assert page.form.model.rows()[0]["feature"] == "Low"
    fill(page, texts(SLACK, SLACK, SLACK))
    assert "Z axis: nut" in verdict(page) and "by weight" in verdict(page)
    choose(page.form.axis, "y")
    assert page.form.model.rows()[0]["feature"] == "Low"  # what is read stays
    assert "reversal error Y" in verdict(page)


def test_a_full_cycle_gives_the_figures_of_the_standard(qtbot, page, store):
    choose(page.form.method, "full")
    assert shown_columns(page) == ["feature", "axis", "nominal_mm", "measured_mm", "error"]
    rows = page.form.model.rows()
    assert [row["nominal_mm"] for row in rows[:6]] == [10.0, 31.0, 48.0, 72.0, 90.0, 90.0]  # of 100 mm travel
    assert [row["axis"] for row in rows[:10]] == ["up"] * 5 + ["down"] * 5
    type_setting(page, "resolution_mm", "0.00001")
    published = table("reversal_axis_test")
    sides = {"forward": "−", "backward": "+"}
    block = [f"{sides[row['direction']]}\t{row['target_mm']}\t{row['measured_mm']}" for row in published]
    assert page.form.model.paste(0, 1, "\n".join(block)) == ()
    assert page.form.model.text(0, "error") == "+0.003"
    found = {e.name: e.value for e in page.result.judgement.estimates()}
    assert found["systematic_x"] == pytest.approx(0.01599, abs=5e-6)
    assert found["repeatability_x"] == pytest.approx(0.00835, abs=5e-6)
    assert "deviation E X" in verdict(page)
    assert "E from −, from +\n0.0151, 0.01485 mm\nU 0.0012, 0.00067" in verdict(page)
    mean, *ends = page.plot.data.limits  # as the standard draws it: mean of both directions, ends of A
    fit = page.result.judgement.fit
    assert mean.y == pytest.approx((fit.up.mean_mm + fit.down.mean_mm) / 2)
    assert ends[0].y[0] - ends[1].y[0] == pytest.approx(found["accuracy_x"]) and ends[0].name.startswith("A 0.0186")
    assert "E X from" not in verdict(page)
    assert [series.x.size for series in page.plot.data.points] == [25, 25]
    up = page.plot.data.curves[0]
    assert up.mean == pytest.approx(page.result.judgement.fit.up.mean_mm)
    assert up.prediction_half == pytest.approx(2 * page.result.judgement.fit.up.sd_mm)
    page.keep()
    (kept,) = store.trials(subject="reversal")
    assert len(kept.estimates) == 12


def test_a_lost_motion_curve_tells_play_from_windup(qtbot, page):
    choose(page.form.method, "curve")
    assert shown_columns(page) == ["feature", "nominal_mm", "measured_mm", "error"]
    page.form.entry.go_to(0)
    assert "Move X one way by 2 mm" in page.form.next_move.text()
    page.form.entry.go_to(4)
    assert "0.04 mm since the turn" in page.form.next_move.text()
    type_setting(page, "resolution_mm", "0.001")
    rng = np.random.default_rng(1)
    fill(page, [f"{1 - 0.8 * max(0.01 * i - 0.07, 0) + rng.normal(0, 0.001):.3f}" for i in range(21)])
    assert "of the command arrives" in verdict(page) and "play X" in verdict(page) and "wind-up X" in verdict(page)
    (event,) = page.plot.data.events
    assert event.x == pytest.approx(0.07, abs=0.004) and event.name.startswith("play 0.07")
    assert page.form.model.text(20, "error").startswith("+0.09")
    page.form.add_button.click()
    assert page.form.model.rows()[21]["nominal_mm"] == pytest.approx(0.21)


def test_readings_of_another_way_stay_and_do_not_count(qtbot, page):
    fill(page, texts(SLACK, SLACK, SLACK))
    choose(page.form.method, "curve")
    assert page.card.card is None  # none of its own yet
    assert page.form.model.rowCount() == 51 and page.form.model.mark(21)
    choose(page.form.method, "quick")
    assert "Mend the mechanics" in verdict(page)
    assert page.form.model.rows()[0]["raw"] == "0.50"


def test_a_further_pair_is_added_from_the_other_side(qtbot, page):
    fill(page, texts(TIGHT, TIGHT, TIGHT))
    for text, way in (("0.50", "up"), ("0.49", "down")):
        page.form.add_button.click()
        row = page.form.model.rowCount() - 1
        assert page.form.model.rows()[row]["axis"] == way
        page.form.model.edit(row, "measured_mm", text)
    assert len(page.result.judgement.fit.places[-1].rows) == 6
    page.form.model.remove_rows(range(page.form.model.rowCount()))
    page.form.add_button.click()
    assert page.form.model.rows()[0]["axis"] == "down" and page.card.card is None


def test_the_picked_indicator_says_how_fine_it_reads(qtbot, shop, store):
    dial = store.add_instrument(Instrument("Dial 1", kind="dial", resolution_mm=0.001))
    shop.select_instrument(dial.id)
    page = ReversalPage(shop)
    qtbot.addWidget(page)
    page.show()
    assert page.form.resolution.value() == 0.001


def test_a_graduation_that_cannot_be_is_refused_at_its_field(qtbot, page):
    fill(page, texts(TIGHT))
    type_setting(page, "resolution_mm", "2")
    assert "graduation" in page.form.resolution.accessibleDescription()
    type_setting(page, "resolution_mm", "0.01")
    assert page.form.resolution.accessibleDescription() == ""
    assert "Leave it" in verdict(page)


def test_a_draft_is_found_again_with_its_way(qtbot, page, shop, store):
    choose(page.form.method, "curve")
    fill(page, ["0.5", "0.5", "0.51"])
    again = ReversalPage(shop)
    qtbot.addWidget(again)
    again.show()
    assert again.form.method.value() == "curve" and shown_columns(again) == shown_columns(page)
    assert "Readings of the curve so far: 3" in verdict(again)


def test_pushes_tell_how_stiff_an_axis_is(qtbot, page, store):
    choose(page.form.method, "push")
    assert shown_columns(page) == ["feature", "axis", "measured_mm", "error"]
    assert not page.form.push.isHidden() and page.form.push.value() == 10.0
    page.form.entry.go_to(0)
    assert "push along X once, let go, read at rest" in page.form.next_move.text()
    page.form.entry.go_to(11)
    assert "Push sideways to X again, the same way; hold the force and read." in page.form.next_move.text()
    type_setting(page, "resolution_mm", "0.001")
    fill(page, ["0.500", "0.520"] * 5 + ["0.500", "0.700"] * 5)
    assert page.form.model.text(1, "error") == "+0.020" and page.form.model.text(0, "error") == ""
    assert "Along X it gives way by 0.00200" in verdict(page) and "side compliance X" in verdict(page)
    assert "Take the play out of the slide of X" in verdict(page)
    assert [event.name for event in page.plot.data.events] == ["Along X", "Sideways to X"]
    assert page.plot.data.limits[0].y[0] == pytest.approx(0.1)  # 0.05 mm at 5 N
    type_setting(page, "push_n", "80")
    assert "A push of 80 N is not possible here" in page.form.push.accessibleDescription()
    type_setting(page, "push_n", "10")
    page.form.add_button.click()
    added = page.form.model.rows()[20]
    assert (added["feature"], added["axis"], added["kind"]) == ("Sideways", "rest", "sideways")
    page.keep()
    (kept,) = store.trials(subject="reversal")
    assert [e.name for e in kept.estimates] == ["compliance_x", "side_compliance_x"]
    assert kept.conditions == {
        "axis": "x", "method": "push", "resolution_mm": 0.001, "push_n": 10.0, "push_limit_n": 0.5
    }  # fmt: skip


def test_a_force_is_asked_for_pushes_only_and_pushes_count_nowhere_else(qtbot, page):
    assert page.form.push.isHidden() and "push_n" not in page.form.conditions()
    choose(page.form.method, "push")
    fill(page, ["0.500", "0.520"])
    choose(page.form.method, "quick")
    assert page.form.push.isHidden() and page.card.card is None
    assert any(page.form.model.mark(place) for place in range(page.form.model.rowCount()))
