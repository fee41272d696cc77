"""Which events of the log a chart marks, and which of them begin its limits anew."""

from datetime import UTC, datetime

import pytest

from core.guidance.charted import main_quantities
from core.guidance.chartevents import marked_events
from core.guidance.walkplan import shop_plan
from core.records.rows import Event

NOON = datetime(2026, 3, 2, 12, tzinfo=UTC)


def logged(number, kind, **more):
    return Event(kind, machine_id=1, id=number, **{"at": NOON, **more})


def marked(*events, name="wall_outset"):
    return [(event.label, event.identified) for event in marked_events(events, name)]


@pytest.mark.parametrize(
    ("kind", "name", "begins_anew"),
    [
        ("belt_changed", "reversal_x", True),
        ("belt_changed", "lost_motion_y", True),
        ("belt_changed", "scale_difference_xy", True),
        ("belt_tension", "squareness_xy", False),  # one quick check
        ("belt_changed", "bed_flatness", None),  # nothing to do with it
        ("nozzle_other", "wall_outset", True),
        ("nozzle_other", "reversal_x", None),
        ("moved", "squareness_xz", True),
        ("new_lot", "scale_x", True),
        ("bed_surface", "squash_z", True),
        ("feed_gear", "feed_ratio", True),
        ("new_lot", "ovality", True),
        ("heater", "flow_ceiling_230c", True),
        ("nozzle_same", "flow_ratio", True),
        ("dropped", "zero_outside", True),  # no word of it in the table
        ("belt_changed", "sd_hand", True),
    ],
)
def test_the_table_of_the_walk_says_what_an_event_does(kind, name, begins_anew):
    found = marked(logged(1, kind), name=name)
    assert [identified for _, identified in found] == ([] if begins_anew is None else [begins_anew])


def test_every_kind_of_event_is_marked_on_some_chart():
    names = [quantity.name for quantity in main_quantities()]
    for kind in shop_plan().spoils:
        assert any(marked(logged(1, kind), name=name) for name in names)


def test_events_have_their_words_and_a_note_its_own():
    assert marked(logged(1, "nozzle_other", note="0.6 mm"), logged(2, "note", note="noisy fan")) == [
        ("New nozzle, other bore", True),
        ("noisy fan", False),
    ]
    assert marked(logged(1, "note")) == [("Note", False)]


def test_checks_skipped_steps_and_what_the_store_writes_are_not_marked():
    assert marked(logged(1, "checked"), logged(2, "skipped"), logged(3, "withdrawn")) == []


def test_what_was_taken_back_or_has_no_moment_is_not_marked():
    assert marked(logged(1, "nozzle_other"), logged(2, "note", takes_back=1)) == []
    assert marked(logged(1, "nozzle_other", at=None)) == []
