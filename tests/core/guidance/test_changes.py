"""Which changes can be told apart by their checks; the rule is common practice, no source."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from core.guidance.changes import (
    Attribution,
    acts_on,
    base_words,
    in_force_when,
    judge_changes,
    now_in_force,
    wrong_base,
)
from core.records.rows import SettingInForce

AT = datetime(2026, 11, 25, 9, tzinfo=UTC)
SERIALS = {100: 100, 3: 3, 9: 9}


def setting(number, name="flow_factor", lot_id=1, **changes):
    made = SettingInForce(1, lot_id, name, 1.0, 0.97, "1", AT + timedelta(hours=number), number, number, serial=number)
    return replace(made, **changes)


def told(*settings):
    return {change.setting.id: change.attribution.value for change in judge_changes(settings, SERIALS)}


def test_one_change_is_open_until_it_is_checked():
    assert told(setting(1)) == {1: "open"}
    assert told(setting(1, verified_by=3)) == {1: "checked"}


def test_a_second_change_before_the_first_is_checked_makes_both_not_attributable():
    first, second = setting(1), setting(2, "contour_offset")
    assert told(first, second) == {1: "not_attributable", 2: "not_attributable"}
    judged = judge_changes((second, first), SERIALS)
    assert [(change.setting.id, change.with_ids) for change in judged] == [(2, (1,)), (1, (2,))]


def test_they_stay_so_when_checked_later():
    first, second = setting(1, verified_by=100), setting(2, "contour_offset", verified_by=100)
    assert told(first, second) == {1: "not_attributable", 2: "not_attributable"}


def test_a_value_that_was_found_right_is_no_change():
    assert told(setting(1, old=0.97), setting(2)) == {1: "open", 2: "open"}
    assert told(setting(1), setting(2, old=0.97)) == {1: "open", 2: "open"}


def test_a_first_change_that_was_checked_stands():
    assert told(setting(1, verified_by=3), setting(5, "contour_offset")) == {1: "checked", 5: "open"}


def test_a_verifier_that_nobody_knows_proves_no_order():
    assert told(setting(1, verified_by=77), setting(5)) == {1: "not_attributable", 5: "not_attributable"}


def test_changes_of_one_trial_are_one_change():
    assert told(setting(1), setting(2, "contour_offset", serial=1)) == {1: "open", 2: "open"}


@pytest.mark.parametrize(
    ("second", "confused"),
    [
        ({"lot_id": 2}, False),
        ({"lot_id": None}, True),
        ({"name": "skew_xy"}, False),
        ({"name": "extruder_steps_mm", "lot_id": None}, False),
        ({"name": "filament_diameter"}, True),
        ({"name": "of a later version"}, True),
    ],
)
def test_only_what_acts_on_the_same_thing_is_confused(second, confused):
    expected = "not_attributable" if confused else "open"
    assert told(setting(1), setting(2, **second)) == {1: expected, 2: expected}


def test_axes_act_as_their_stem():
    assert acts_on("scale_x") == acts_on("axis_scale") == acts_on("shrink_allowance") == {"scale"}
    assert acts_on("flow_x") == frozenset()


def test_undoing_ends_a_change_and_confuses_nothing():
    first = setting(1)
    undoing = setting(2, undoes=1, trial_id=None)
    third = setting(3, "contour_offset")
    judged = judge_changes((first, undoing, third), SERIALS)
    assert {change.setting.id: change.attribution for change in judged} == {
        1: Attribution.UNDONE, 2: Attribution.NOT_ATTRIBUTABLE, 3: Attribution.NOT_ATTRIBUTABLE
    }  # fmt: skip
    assert told(first, undoing) == {1: "undone", 2: "open"}


def test_only_the_newest_of_a_name_and_lot_is_in_force():
    judged = judge_changes((setting(1), setting(2), setting(3, lot_id=2), setting(4, lot_id=None)), SERIALS)
    assert {change.setting.id: change.in_force for change in judged} == {1: False, 2: True, 3: True, 4: True}


def test_what_held_when_the_piece_was_made():
    history = (setting(1), setting(3), setting(2, lot_id=None), setting(4, lot_id=2), setting(5, since=None))

    def number(hour, lot_id=1, name="flow_factor"):
        found = in_force_when(history, name, lot_id, AT + timedelta(hours=hour))
        return None if found is None else found.id

    assert [number(hour) for hour in (0, 1, 1.5, 2.5, 3.5, 9)] == [None, None, 1, 1, 3, 3]
    assert [number(hour, None) for hour in (1.5, 2.5)] == [None, 2]
    assert [number(hour, 9) for hour in (1.5, 2.5, 4.5)] == [None, 2, 2]
    assert number(9, 1, "contour_offset") is None
    now = in_force_when(history, "flow_factor", 2, None)
    assert now is not None and now.id == 4


def test_a_change_starts_from_what_was_in_force_when_the_piece_was_made():
    first = setting(1, old=1.0, new=0.97)
    later = setting(5, old=1.0, new=0.95)
    at = AT + timedelta(hours=3)
    assert wrong_base(later, (first, later), at) == first
    assert wrong_base(replace(later, old=0.97), (first, later), at) is None
    assert wrong_base(replace(later, old=None), (first, later), at) is None
    assert wrong_base(later, (first, later), AT) is None
    assert wrong_base(first, (first, later), at) is None
    assert base_words(later, (first, later), AT) is None
    assert str(base_words(later, (first, later), at)).startswith(
        "flow factor: the correction started from 1, but 0.97 was in force when the trial was begun."
    )


def test_what_holds_now_is_of_the_lot_before_the_machine():
    history = (setting(1, lot_id=None), setting(2, lot_id=None), setting(3), setting(4, "a", lot_id=2))
    assert [found.id for found in now_in_force(history, 1)] == [3]
    assert [found.id for found in now_in_force(history, 2)] == [4, 2]
    assert [found.id for found in now_in_force(history, None)] == [2]
