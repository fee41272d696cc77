"""Which changes can be told apart by what was read between them; the rule is common practice, no source."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from core.guidance.attribution import Attribution, judge_changes
from core.quantity import Estimate
from core.records.rows import SettingInForce, Trial, TrialState

AT = datetime(2026, 11, 25, 9, tzinfo=UTC)


def setting(number, name="flow_factor", lot_id=1, **changes):
    made = SettingInForce(1, lot_id, name, 1.0, 0.97, "1", AT + timedelta(hours=number), number, number, serial=number)
    return replace(made, **changes)


def trial(number, gives="flow_ratio_wall", begun=None, **changes):
    """A trial kept in that hour, of that serial number, and begun a minute before, or in hour `begun`."""
    started = AT + (timedelta(hours=number, minutes=-1) if begun is None else timedelta(hours=begun))
    kept = AT + timedelta(hours=number)
    found = (Estimate(gives, 0.97, 0.005, 9.0, "1"),)
    made = Trial("wall", 1, 1, state=TrialState.KEPT, estimates=found, started_at=started, kept_at=kept)
    return replace(replace(made, id=number, serial=number), **changes)


CHECKING = (trial(100, "moved"), trial(3, "moved"), trial(9, "moved"))


def judged(settings, trials=CHECKING):
    return {change.setting.id: change for change in judge_changes(settings, trials)}


def told(*settings, trials=CHECKING):
    return {number: change.attribution.value for number, change in judged(settings, trials).items()}


def test_one_change_is_open_until_it_is_checked():
    assert told(setting(1)) == {1: "open"}
    assert told(setting(1, verified_by=3)) == {1: "checked"}


def test_a_second_change_before_the_first_is_checked_makes_both_not_attributable():
    first, second = setting(1), setting(2, "contour_offset")
    assert told(first, second) == {1: "not_attributable", 2: "not_attributable"}
    changes = judge_changes((second, first), CHECKING)
    assert [(change.setting.id, change.with_ids) for change in changes] == [(2, (1,)), (1, (2,))]


def test_they_stay_so_when_checked_later():
    first, second = setting(1, verified_by=100), setting(2, "contour_offset", verified_by=100)
    assert told(first, second) == {1: "not_attributable", 2: "not_attributable"}


def test_the_order_of_the_walk_confuses_nothing():
    """A ladder sets the temperature, walls printed with it set the flow, a size piece printed with both the offset."""
    settings = (
        setting(1, "nozzle_temperature"),
        setting(2, "flow_factor"),
        setting(4, "contour_offset", trial_id=None),
        setting(5, "shrink_allowance_x", trial_id=None),
        setting(6, "shrink_allowance_y", trial_id=None),
    )
    trials = (trial(1, "ladder_temperature"), trial(2), trial(3, "wall_outset"))
    assert set(told(*settings, trials=trials).values()) == {"open"}
    assert all(change.would_tell is None for change in judged(settings, trials).values())


@pytest.mark.parametrize(
    "between",
    [
        trial(2, begun=1),  # its piece was made before the first change was in force
        trial(3),  # kept after the second
        trial(2, "wall_thickness"),
        trial(2, state=TrialState.WITHDRAWN),
        trial(2, state=TrialState.OPEN, serial=None),
        trial(2, serial=None),
        trial(2, started_at=None),
        trial(2, machine_id=2),
        trial(2, lot_id=2),
        trial(2, lot_id=None),
    ],
)
def test_what_does_not_lie_between_or_reads_something_else_tells_nothing(between):
    settings = (setting(1, "nozzle_temperature"), setting(2))
    assert told(*settings, trials=(between,)) == {1: "not_attributable", 2: "not_attributable"}
    assert told(*settings, trials=(between, trial(2))) == {1: "open", 2: "open"}


def test_a_first_change_whose_moment_nobody_knows_is_told_by_nothing():
    assert set(told(setting(1, "nozzle_temperature", since=None), setting(2), trials=(trial(2),)).values()) == {
        "not_attributable"
    }


def test_a_change_of_the_machine_is_read_with_any_lot():
    both = (setting(1, "steps_x", lot_id=None), setting(5, "axis_scale_x", lot_id=None))
    assert set(told(*both, trials=(trial(3, "scale_x", lot_id=7),)).values()) == {"open"}
    of_lot = (both[0], setting(5, "shrink_allowance_x", lot_id=1))
    assert set(told(*of_lot, trials=(trial(3, "scale_x", lot_id=7),)).values()) == {"not_attributable"}
    assert set(told(*of_lot, trials=(trial(3, "scale_x"),)).values()) == {"open"}


def test_an_axis_is_read_along_itself():
    both = (setting(1, "axis_scale_x", lot_id=None), setting(5, "shrink_allowance_x"))
    assert set(told(*both, trials=(trial(3, "scale_y"),)).values()) == {"not_attributable"}
    whole = (setting(1, "axis_scale", lot_id=None), setting(5, "shrink_allowance"))
    assert set(told(*whole, trials=(trial(3, "scale_y"),)).values()) == {"open"}
    skews = (setting(1, "skew_xy", lot_id=None), setting(5, "skew_xy", lot_id=None))
    assert set(told(*skews, trials=(trial(3, "squareness_xz"),)).values()) == {"not_attributable"}
    assert set(told(*skews, trials=(trial(3, "squareness_xy"),)).values()) == {"open"}


@pytest.mark.parametrize(
    ("names", "says"),
    [
        (("nozzle_temperature", "flow_factor"), "print and read walls, a mass box or top pads, keep it"),
        (("flow_factor", "flow_factor"), "walls, a mass box or top pads"),
        (("flow_factor", "contour_offset"), "a size piece"),
        (("flow_factor", "of a later version"), "print and read what the earlier one acts on"),
    ],
)
def test_what_would_tell_is_said(names, says):
    changes = judged([setting(number, name) for number, name in enumerate(names, 1)])
    assert all(str(change.would_tell).startswith("Undo the later one, ") for change in changes.values())
    assert all(says in str(change.would_tell) for change in changes.values())


def test_what_cannot_be_undone_any_more_is_not_advised():
    unknown = judged([setting(1), setting(2, old=None)])
    assert str(unknown[1].would_tell) == str(unknown[2].would_tell) == "What each of them did can no longer be told."
    replaced = judged([setting(1), setting(2), setting(4)], trials=(trial(3),))
    assert str(replaced[1].would_tell) == str(replaced[2].would_tell) == "What each of them did can no longer be told."
    assert replaced[4].would_tell is None


def test_what_was_changed_before_the_trials_in_sight_is_not_held_against_others():
    settings = (setting(1), setting(2), setting(11), setting(12))
    found = {change.setting.id: change.attribution.value for change in judge_changes(settings, CHECKING, 9)}
    assert found == {1: "open", 2: "open", 11: "not_attributable", 12: "not_attributable"}


def test_doing_what_would_tell_tells():
    """The later change is undone, walls are read without it, and it is set anew."""
    settings = (
        setting(1, "nozzle_temperature"),
        setting(2),
        setting(3, undoes=2, old=0.97, new=1.0, trial_id=None),
        setting(5),
    )
    assert told(*settings, trials=(trial(4),)) == {1: "open", 2: "undone", 3: "open", 5: "open"}


def test_a_value_that_was_found_right_is_no_change():
    assert told(setting(1, old=0.97), setting(2)) == {1: "open", 2: "open"}
    assert told(setting(1), setting(2, old=0.97)) == {1: "open", 2: "open"}


def test_a_first_change_that_was_checked_stands():
    assert told(setting(1, verified_by=3), setting(5, "contour_offset")) == {1: "checked", 5: "open"}


def test_a_verifier_that_nobody_knows_proves_no_order():
    assert told(setting(1, verified_by=77), setting(5)) == {1: "not_attributable", 5: "not_attributable"}
    unknown = (trial(3, "moved", serial=None),)
    assert set(told(setting(1, verified_by=3), setting(5), trials=unknown).values()) == {"not_attributable"}


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


def test_a_change_along_an_axis_is_told_from_one_along_another():
    assert set(told(setting(1, "scale_x"), setting(2, "scale_y")).values()) == {"open"}
    assert set(told(setting(1, "scale_x"), setting(2, "scale")).values()) == {"not_attributable"}


def undone(number, of, name="flow_factor"):
    """The undoing in that hour of the change made in hour `of`."""
    return setting(number, name, undoes=of, trial_id=None, old=0.97, new=1.0)


def test_undoing_ends_a_change_and_confuses_nothing():
    assert told(setting(1), undone(2, 1)) == {1: "undone", 2: "open"}
    for trials in (CHECKING, (trial(1, "wall_outset", begun=0.5),)):  # nothing was read with what was taken back
        after = judged((setting(1), undone(2, 1), setting(5, "contour_offset")), trials)
        assert {number: change.attribution for number, change in after.items()} == {
            1: Attribution.UNDONE, 2: Attribution.OPEN, 5: Attribution.OPEN
        }  # fmt: skip
    before = (setting(1), setting(2, "contour_offset"), undone(3, 2, "contour_offset"))
    assert told(*before) == {1: "open", 2: "undone", 3: "open"}


def test_an_undoing_of_what_was_read_is_a_change_like_any_other():
    """The next piece differs from the one read in the offset, and in the flow that was taken back."""
    read = (trial(2, "wall_outset"),)
    for settings in (
        (setting(1), undone(3, 1), setting(5, "contour_offset")),
        (setting(1), setting(3, "contour_offset"), undone(5, 1)),
    ):
        assert told(*settings, trials=read) == {1: "undone", 3: "not_attributable", 5: "not_attributable"}
        read_again = (*read, trial(4, "wall_outset"))
        assert told(*settings, trials=read_again) == {1: "undone", 3: "open", 5: "open"}


def test_a_change_stands_again_when_its_undoing_is_undone():
    settings = (setting(1), undone(2, 1), setting(3, undoes=2), setting(5, "contour_offset"))
    assert told(*settings) == {1: "not_attributable", 2: "undone", 3: "open", 5: "not_attributable"}
    assert judged(settings)[5].with_ids == (1,)


@pytest.mark.parametrize("first", [setting(1, since=None), setting(1, id=77)])
def test_an_undoing_of_nobody_knows_what_or_when_counts_as_a_change(first):
    found = told(first, undone(2, 1), setting(5, "contour_offset"))
    assert found[2] == found[5] == "not_attributable"


def test_only_the_newest_of_a_name_and_lot_is_in_force():
    changes = judged((setting(1), setting(2), setting(3, lot_id=2), setting(4, lot_id=None)))
    assert {number: change.in_force for number, change in changes.items()} == {1: False, 2: True, 3: True, 4: True}
