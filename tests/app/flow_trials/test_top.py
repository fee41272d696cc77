"""The page *Top pads*, by keyboard."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from app.pages.flow_trials.top import TopPage
from tests.app.atpage import verdict
from tests.app.flow_trials.flowpages import kept_flow, open_page, put_readings, type_readings, type_setting

SCORES = "2 -2 4 0 3 -3 1 4 -1 1.5 -1 4 0 2 -3 1 3 -1".split()  # noqa: SIM905 - the pads in their shuffled order


@pytest.fixture
def page(qtbot, shop):
    page = open_page(qtbot, shop, TopPage)
    type_setting(page, "temperature_c", "210")
    type_setting(page, "rate_mm3_s", "4")
    return page


def hidden(page):
    return {column.key for place, column in enumerate(page.form.model.columns) if page.form.table.isColumnHidden(place)}


def test_scores_of_two_judges_typed_by_keyboard_give_a_crossing(qtbot, page, store):
    type_readings(qtbot, page, SCORES)
    assert "flow factor by top pads" in verdict(page)
    assert page.result.flow.estimates[0].value == pytest.approx(0.986, abs=0.003)
    assert page.plot.data.point_count == 18
    assert {series.name for series in page.plot.data.points} == {"judge 1", "judge 2"}
    assert "zero at −1." in page.plot.data.curves[0].name
    page.keep()
    (kept,) = store.trials(subject="top")
    assert [e.name for e in kept.estimates] == ["flow_ratio_top", "flow_ratio"]


def test_who_scores_does_not_see_the_flow(qtbot, page):
    assert hidden(page) == {"judge", "change_percent"}
    page.form.again_button.setFocus()
    QTest.keyClick(page.form.again_button, Qt.Key.Key_Space)
    assert hidden(page) == set()  # a pad of one's own needs its flow


def test_one_judge_is_not_enough(page):
    put_readings(page, SCORES[:9])
    assert "let a second person score" in verdict(page)


def test_a_score_beyond_the_scale_is_refused_at_its_cell(qtbot, page):
    type_readings(qtbot, page, ["7"])
    assert "at most 5" in page.form.model.problem(0, "measured_mm")


def test_signs_turned_round_are_said(page):
    put_readings(page, [text.removeprefix("-") if text.startswith("-") else f"-{text}" for text in SCORES])
    assert "check the signs" in verdict(page)


def test_a_pad_without_its_flow_is_asked_for(page):
    put_readings(page, SCORES)
    page.form.model.edit(3, "change_percent", "")
    assert "type the flow of this pad" in verdict(page)


def test_the_estimates_of_all_methods_can_be_seen(page, store, shop):
    kept_flow(store, shop, "mass", 0.99)
    put_readings(page, SCORES)
    page.view.setFocus()
    QTest.keyClick(page.view, Qt.Key.Key_Down)
    assert [series.name for series in page.plot.data.points] == ["top pads", "mass"]
