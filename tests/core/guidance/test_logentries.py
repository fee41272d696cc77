"""The logbook: all that was kept in one order, and two trials held against each other."""

import math
import tomllib
from dataclasses import replace
from datetime import UTC, datetime
from importlib.resources import files

import numpy as np
import pytest

from core.guidance.actson import acts_on
from core.guidance.diameteradvice import FILAMENT_DIAMETER
from core.guidance.feedadvice import EXTRUDER_STEPS
from core.guidance.flowadvice import FLOW_FACTOR
from core.guidance.logentries import (
    EntryKind,
    change_words,
    compare_trials,
    happened_words,
    log_entries,
    plain_value,
    setting_name_words,
    value_words,
)
from core.guidance.names import estimate_text, name_words
from core.guidance.squareadvice import term_name
from core.quantity import Estimate
from core.records.rows import Event, SettingInForce, Trial, TrialState

AT = datetime(2026, 11, 25, 9, tzinfo=UTC)
SCALE = Estimate("scale_x", 0.0021, 0.0004, 8.0, "1")
WALL = Estimate("wall_outset", 0.031, 0.006, math.inf, "mm")
KEPT = Trial("sizeerror", 1, 2, state=TrialState.KEPT, estimates=(SCALE, WALL, SCALE), kept_at=AT, id=3, author="Kim",
             serial=5)  # fmt: skip
SET = SettingInForce(1, 2, "flow_factor", 1.0, 0.97, "1", AT, 3, 7, author="Kim", serial=5)
MOVED = Event("moved", 1, note="to the back room", author="Bo", at=AT, serial=6, id=9)


def test_all_that_was_kept_stands_in_the_order_of_keeping_newest_first():
    entries = log_entries([KEPT, Trial("drive", id=4)], [SET], [MOVED], {"sizeerror": "Size error"})
    assert [(entry.kind, entry.serial) for entry in entries] == [
        (EntryKind.EVENT, 6), (EntryKind.SETTING, 5), (EntryKind.TRIAL, 5)
    ]  # fmt: skip
    assert [entry.title for entry in entries] == [
        "Machine moved: to the back room",
        "flow factor 1 → 0.97",
        "Size error: scale error X +0.210 ± 0.092 %, wall outset per side +0.031 ± 0.012 mm",
    ]
    assert [entry.author for entry in entries] == ["Bo", "Kim", "Kim"]
    assert {(entry.machine_id, entry.at) for entry in entries} == {(1, AT)}
    assert [entry.lot_id for entry in entries] == [None, 2, 2]
    assert [entry.row for entry in entries] == [MOVED, SET, KEPT]


def test_what_counts_no_more_is_marked():
    withdrawn = replace(KEPT, state=TrialState.WITHDRAWN, estimates=())
    undoing = replace(SET, id=8, undoes=7, old=0.97, new=1.0, serial=8)
    back = replace(MOVED, id=10, takes_back=9, serial=9, note="")
    entries = log_entries([withdrawn], [SET, undoing], [MOVED, back], {})
    assert [(entry.title, entry.gone) for entry in entries] == [
        ("Taken back: Machine moved", True),
        ("Undone: flow factor 0.97 → 1", False),
        ("Machine moved: to the back room", True),
        ("flow factor 1 → 0.97", True),
        ("sizeerror", True),
    ]


@pytest.mark.parametrize(
    ("event", "words"),
    [
        (Event("checked", detail={"step": "mechanics"}), "Checked by hand: Mechanical health"),
        (Event("checked", detail={"results": ["bed", "speed"]}, note="0.1"), "Checked by hand: bed plane, speed: 0.1"),
        (Event("withdrawn", trial_id=3, note="slipped"), "Trial withdrawn (3): slipped"),
        (Event("checked", detail={"step": "of a later version"}), "Checked by hand"),
        (Event("checked", detail={"step": "record", "drives": {"y": {}, "x": {}}}), "Drive parts written down: X, Y"),
    ],
)
def test_an_event_says_what_it_is_about(event, words):
    assert happened_words(event) == words


def test_settings_and_results_are_named_for_people():
    assert change_words(replace(SET, name="steps_x", old=None, new=80.0, unit="steps/mm")) == (
        "steps per millimetre X unknown → 80 steps/mm"
    )
    assert [setting_name_words(name) for name in ("skew_xy", "axis_scale_y", "of_later")] == [
        "squareness term XY", "axis scale Y", "of_later"
    ]  # fmt: skip
    assert name_words("of a later version") == "of a later version"
    assert value_words(SCALE) == "scale error X +0.210 ± 0.092 %"
    assert estimate_text(Estimate("diameter", 1.742, 0.002, math.inf, "mm")) == "1.7420 ± 0.0039 mm"
    assert plain_value(-0.03, "mm") == "−0.03 mm"


def test_two_trials_are_held_against_each_other():
    before = replace(KEPT, estimates=(SCALE, WALL, Estimate("squash_z", 0.1, 0.01, 5.0, "mm")))
    after = replace(
        KEPT,
        id=4,
        estimates=(
            replace(SCALE, value=0.0001),
            replace(WALL, value=0.035),
            Estimate("squash_z", 0.1, 0.01, 5.0, "um"),
            Estimate("scale_y", 0.0, 0.1, 5.0, "1"),
        ),
    )
    scale, wall = compare_trials(before, after)
    assert (scale.name, scale.before, scale.after) == ("scale_x", SCALE, after.estimates[0])
    assert scale.difference.value == pytest.approx(-0.002)
    assert scale.difference.u == pytest.approx(0.0004 * math.sqrt(2))
    assert scale.difference.dof == pytest.approx(16.0)  # GUM G.4.2: two equal components of 8
    assert scale.told
    assert not wall.told
    assert wall.difference.dof == math.inf


def test_a_move_is_told_as_often_as_the_level_says():
    """Two trials of one truth: 5 % of their differences are told, no more."""
    rng = np.random.default_rng(7)
    told = 0
    for _ in range(2000):
        first, second = (rng.normal(0.0, 1.0, 10) for _ in range(2))
        trials = [
            replace(KEPT, estimates=(Estimate("scale_x", x.mean(), x.std(ddof=1) / math.sqrt(10), 9.0, "1"),))
            for x in (first, second)
        ]
        told += compare_trials(*trials)[0].told
    assert 0.03 < told / 2000 < 0.07


def test_the_settings_that_pages_put_in_force_have_names_and_effects():
    for name in (EXTRUDER_STEPS, FILAMENT_DIAMETER, FLOW_FACTOR, term_name("xy"), *ladder_settings()):
        assert setting_name_words(name).template != "{name}", name
        assert acts_on(name), name


def ladder_settings():
    ladders = tomllib.loads((files("resources") / "ladders.toml").read_text(encoding="utf-8"))
    return [ladder["setting"] for ladder in ladders.values()]
