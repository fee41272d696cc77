"""Values of another kind than their name promises are named before they are imported."""

import copy
import json
import math
from dataclasses import asdict
from datetime import UTC, datetime
from importlib.resources import files
from pathlib import Path

import pytest

from core.guidance.foreignrows import foreign_faults
from core.guidance.ownparts import PARTS_KEY, parts_value
from core.part_size.whose import USUAL_PARTS
from core.records.exchange import read_export
from core.records.rows import Machine, TrialState
from core.records.store import open_store
from core.words import SAID, as_plain, tr

BELT = {"kind": "belt", "pitch_mm": 2.0, "teeth": 20, "full_steps": 200, "microsteps": 16}
ADVICE = {"setting": "leave", "action": "Leave it.", "amount": None, "because": "It fits.", "do_not_touch": ""}
WORDS = as_plain(tr("Read {count} times.", count=3))


def machine(**changes):
    row = asdict(Machine("Bramble", drives={"x": BELT}, limits={"nozzle_mm": 0.4, "max_speed_mm_s": {"x": 200.0}}))
    return {**row, "templates": {"start": "G28"}, **changes}


def trial(subject="squareness", **changes):
    kept = {"state": TrialState.KEPT, "kept_at": datetime(2026, 7, 1, tzinfo=UTC), "serial": 1}
    return {"subject": subject, **kept, "readings": {}, "conditions": {}, "verdict": (), **changes}


def one(table, row):
    (sentence,) = foreign_faults(table, row)
    return sentence


@pytest.fixture(scope="module")
def demo():
    """The rows of the demo shop by table."""
    return read_export(Path(str(files("resources").joinpath("demo/shop.json")))).rows


def test_all_that_the_program_writes_passes(demo):
    rows = [(table, row) for table, found in demo.items() for _, row in found]
    assert len(rows) > 500
    assert [(table, row["id"], foreign_faults(table, row)) for table, row in rows if foreign_faults(table, row)] == []


def test_every_name_of_a_kept_trial_tells_a_kind(demo):
    """A list in a place where a value stands is of no kind, so each name must find it at fault."""
    for _, row in demo["trial"]:
        for name in row["conditions"]:
            assert foreign_faults("trial", trial(conditions={name: [{}]})), name
        for name, column in row["readings"].items():
            assert foreign_faults("trial", trial(readings={name: [[] for _ in column]})) or not column, name


@pytest.mark.parametrize(
    ("conditions", "sentence"),
    [
        ({"nozzle_mm": "0,4"}, "conditions, nozzle_mm: “0,4” is not a number; correct it."),
        ({"nozzle_mm": True}, "conditions, nozzle_mm: “True” is not a number; correct it."),
        ({"nozzle_mm": math.nan}, "conditions, nozzle_mm: “nan” is not a number; correct it."),
        ({"layer_mm": math.inf}, "conditions, layer_mm: “inf” is not a number; correct it."),
        ({"k": math.nan}, "conditions, k: “nan” is not a number; correct it."),
        ({"plane": 7}, "conditions, plane: “7” is not a text; correct it."),
        ({"fault": "yes"}, "conditions, fault: “yes” is not true or false; correct it."),
        ({"factor": 1.0}, "conditions, factor: “1.0” is not a group of numbers; correct it."),
        ({"factor": {"x": "1"}}, "conditions, factor: “{'x': '1'}” is not a group of numbers; correct it."),
        ({"covariance_mm2": [[1.0], [2.0]]}, "conditions, covariance_mm2: “[[1.0], [2.0]]” is not a square of numbers"),
        ({"covariance_mm2": 1.0}, "conditions, covariance_mm2: “1.0” is not a square of numbers; correct it."),
        ({"mind": "Look."}, "conditions, mind: “Look.” is not a list of sentences; correct it."),
        (
            {"mind": [{"template": "{a}", "values": {}}]},
            "conditions, mind: “[{'template': '{a}', 'values': {}}]” is not",
        ),
        ({"mind": None}, "conditions, mind: “None” is not a list of sentences; correct it."),
        ({"mind": [3]}, "conditions, mind: “[3]” is not a list of sentences; correct it."),
        ({"piece": {"a": "x" * 99}}, f"conditions, piece: “{str({'a': 'x' * 99})[:60]}…” is not a text; correct it."),
    ],
)
def test_a_condition_of_another_kind(conditions, sentence):
    assert one("trial", trial(conditions=conditions)).startswith(sentence)


def test_what_a_condition_may_be():
    conditions = {
        "nozzle_mm": None, "layer_mm": 0.2, "steps": 4, "k": math.inf, "dof": math.inf, "plane": "xy",
        "mind": ["", WORDS],
        "covariance_mm2": [[1.0, 0.0], [0.0, 1.0]], "factor": {"x": 1}, "of a later version": [{}], "fault": False,
    }  # fmt: skip
    assert foreign_faults("trial", trial(conditions=conditions)) == ()


@pytest.mark.parametrize(
    ("readings", "sentence"),
    [
        ({"measured_mm": 3.0}, "readings, measured_mm: “3.0” is not a list as long as its neighbours; correct it."),
        ({"measured_mm": [3.0, "3"]}, "readings, measured_mm, 2: “3” is not a number; correct it."),
        ({"raw": [3.0]}, "readings, raw, 1: “3.0” is not a text; correct it."),
        ({"kind": [None]}, "readings, kind, 1: “None” is not a text; correct it."),
        ({"x_raw": [3.0]}, "readings, x_raw, 1: “3.0” is not a text; correct it."),
        ({"excluded": [0]}, "readings, excluded, 1: “0” is not true or false; correct it."),
        ({"excluded": [None]}, "readings, excluded, 1: “None” is not true or false; correct it."),
    ],
)
def test_a_reading_of_another_kind(readings, sentence):
    assert one("trial", trial(readings=readings)) == sentence


def test_a_kept_trial_was_kept_at_some_time_in_some_order():
    assert one("trial", trial(kept_at=None)) == "kept_at: “None” is not there, as of every kept trial; correct it."
    assert one("trial", trial(serial=None)).startswith("serial: “None” is not there")
    assert foreign_faults("trial", trial(kept_at=None, serial=None, state=TrialState.OPEN)) == ()


def test_columns_of_different_lengths_are_all_named():
    assert len(foreign_faults("trial", trial(readings={"raw": ["1"], "note": []}))) == 2


def test_a_column_that_is_read_again_must_be_there():
    readings = {"nominal_mm": [20.0], "measured_mm": [20.1], "axis": ["x"]}
    assert one("trial", trial("sizeerror", readings=readings)) == (
        "readings: “kind” is not among what it holds; correct it."
    )
    assert foreign_faults("trial", trial("sizeerror")) == ()
    assert foreign_faults("trial", trial("sizeerror", readings=readings, state=TrialState.OPEN)) == ()
    assert one("trial", trial("prediction", conditions={"k": 2.0})).startswith("conditions: “covariance_mm2” is not")


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        (
            {"setting": "turn it up"},
            "verdict, 1, setting: “turn it up” is not one of the words it may hold; correct it.",
        ),
        ({"setting": [1]}, "verdict, 1, setting: “[1]” is not one of the words it may hold; correct it."),
        (
            {"conformity": "perhaps"},
            "verdict, 1, conformity: “perhaps” is not one of the words it may hold; correct it.",
        ),
        ({"because": 3}, "verdict, 1, because: “3” is not a text; correct it."),
        ({"amount": "3"}, "verdict, 1, amount: “3” is not a number; correct it."),
        ({SAID: 3}, "verdict, 1, said: “3” is not a list of sentences; correct it."),
    ],
)
def test_an_advice_of_another_kind(changes, sentence):
    assert one("trial", trial(verdict=({**ADVICE, **changes},))) == sentence
    assert foreign_faults("trial", trial(verdict=(ADVICE, {**ADVICE, "conformity": "conforming"}))) == ()


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        (
            {"drives": {"x": {**BELT, "teeth": -5}}},
            "drives, x: “{'kind': 'belt', 'pitch_mm': 2.0, 'teeth': -5, 'full_st",
        ),
        ({"drives": {"x": 3}}, "drives, x: “3” is not a drive with its parts; correct it."),
        ({"limits": {"nozzle_mm": "wide"}}, "limits, nozzle_mm: “wide” is not a number; correct it."),
        ({"limits": {"max_speed_mm_s": 3.0}}, "limits, max_speed_mm_s: “3.0” is not a group of numbers; correct it."),
        ({"templates": {"end": 3}}, "templates, end: “3” is not a text; correct it."),
        ({"travel_y_mm": 0.0}, "travel_y_mm: “0.0” is not a length above zero and within reach; correct it."),
        ({"travel_y_mm": 1e300}, "travel_y_mm: “1e+300” is not a length above zero and within reach; correct it."),
    ],
)
def test_a_machine_of_another_kind(changes, sentence):
    assert one("machine", machine(**changes)).startswith(sentence)
    assert foreign_faults("machine", machine()) == ()


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"value": math.inf}, "value: “inf” is not a number; correct it."),
        ({"u": -0.1}, "u: “-0.1” is not a number above zero; correct it."),
        ({"dof": 0.0}, "dof: “0.0” is not a number above zero; correct it."),
    ],
)
def test_a_result_that_is_none(changes, sentence):
    result = {"value": 1.0, "u": 0.0, "dof": math.inf}
    assert one("result", {**result, **changes}) == sentence
    assert foreign_faults("result", result) == ()


@pytest.mark.parametrize(
    ("detail", "sentence"),
    [
        ({"drives": 3}, "detail, drives: “3” is not a drive with its parts; correct it."),
        ({"drives": {"x": {}}}, "detail, drives, x: “{}” is not a drive with its parts; correct it."),
        ({"results": "all"}, "detail, results: “all” is not a list of texts; correct it."),
        ({"results": [3]}, "detail, results: “[3]” is not a list of texts; correct it."),
        ({"step": ["record"]}, "detail, step: “['record']” is not a text; correct it."),
        ({"tone_x_hz": {"value": 90.0}}, "detail, tone_x_hz, U: “None” is not a number; correct it."),
        ({"tone_x_hz": "high"}, "detail, tone_x_hz: “high” is not a number; correct it."),
    ],
)
def test_an_event_of_another_kind(detail, sentence):
    assert one("event", {"detail": detail}) == sentence


def test_what_an_event_and_a_prediction_may_hold():
    detail = {
        "drives": {"x": BELT},
        "results": ["lost_motion"],
        "step": "belts",
        "tone_x_hz": {"value": 90.0, "U": 2.0},
    }
    assert foreign_faults("event", {"detail": detail}) == ()
    assert foreign_faults("setting", {"prediction": {"name": "scale_x", "value": 0.0, "U": 1e-4, "unit": "1"}}) == ()
    assert one("setting", {"prediction": {"U": "wide"}}) == "prediction, U: “wide” is not a number; correct it."


def test_values_for_the_whole_shop():
    parts = parts_value(USUAL_PARTS)
    assert foreign_faults("shop_value", {"key": PARTS_KEY, "value": parts}) == ()
    broken = copy.deepcopy(parts)
    broken["parts"][0]["nominal_mm"] = "long"
    assert one("shop_value", {"key": PARTS_KEY, "value": broken}).endswith("is not a list of parts; correct it.")
    assert one("shop_value", {"key": "authors", "value": {"names": 3}}) == (
        "value, names: “3” is not a list of texts; correct it."
    )


def test_other_tables_have_no_groups():
    assert foreign_faults("lot", {"name": "Slate 7"}) == ()


def test_a_file_of_another_hand_is_refused_line_by_line_and_nothing_is_imported(tmp_path):
    text = files("resources").joinpath("demo/shop.json").read_text("utf-8")
    shop = json.loads(text)
    shop["rows"]["shop_value"] = []  # the mark of the demo shop
    shop["rows"]["trial"][4]["conditions"]["mind"] = 3
    (tmp_path / "shop.json").write_text(json.dumps(shop), "utf-8")
    store = open_store(":memory:")
    report = store.storage.import_from(str(tmp_path / "shop.json"), check=foreign_faults)
    assert (report.refused, report.lines) == (
        True,
        (("trial, record 5", "conditions, mind: “3” is not a list of sentences; correct it."),),
    )
    assert store.machines() == ()
    store.close()
