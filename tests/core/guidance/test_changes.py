"""What held at a moment; that a correction starts from it is common practice, no source."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

from core.guidance.changes import base_words, in_force_when, now_in_force, put_words, wrong_base
from core.records.rows import SettingInForce

AT = datetime(2026, 11, 25, 9, tzinfo=UTC)


def setting(number, name="flow_factor", lot_id=1, **changes):
    made = SettingInForce(1, lot_id, name, 1.0, 0.97, "1", AT + timedelta(hours=number), number, number, serial=number)
    return replace(made, **changes)


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


def test_what_a_trial_put_in_force_is_told_and_nothing_where_it_left_all_as_it_was():
    heat = setting(5, "nozzle_temperature", id=8, old=245.0, new=215.1, unit="°C", trial_id=5)
    flow = setting(5, id=9, trial_id=5)
    earlier = setting(1)
    says = put_words(5, (flow, earlier, heat))
    assert says == "In force now: nozzle temperature 245 °C → 215.1 °C, flow factor 1 → 0.97."
    assert put_words(6, (flow, earlier, heat)) is None
    assert put_words(5, (replace(heat, old=215.1), earlier)) is None, "the same value again"
