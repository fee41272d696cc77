"""What a flow factor counts with: refusals, questions, and the marks on a use the trial does not cover."""

from dataclasses import replace

import pytest

from core.errors import InputError
from core.flow_trials.bead import Bead, BeadModel
from core.flow_trials.conditions import PrintConditions, conditions_from, use_questions, why_apart

HERE = PrintConditions(Bead(0.45, 0.20), 0.4, 210.0, 4.0, 0.97, 240.0)
STORED = {
    "width_mm": 0.45,
    "height_mm": 0.2,
    "bead_model": "obround",
    "nozzle_mm": 0.4,
    "temperature_c": 210,
    "rate_mm3_s": 4.0,
    "in_force_ratio": 0.97,
    "hot_end_limit_c": 240.0,
}


@pytest.mark.parametrize(
    ("field", "value", "says"),
    [
        ("nozzle_mm", 0.0, "bore"),
        ("temperature_c", 0.0, "does not print"),
        ("temperature_c", 700.0, "does not print"),
        ("temperature_c", 245.0, "245 °C is above this hot end's stated limit of 240 °C. Refused"),
        ("rate_mm3_s", 0.0, "not between 0 and 200"),
        ("rate_mm3_s", 201.0, "not between 0 and 200"),
        ("in_force_ratio", 97.0, "type 1 for 100 %"),
        ("in_force_ratio", 0.0, "type 1 for 100 %"),
    ],
)
def test_what_cannot_be_is_refused(field, value, says):
    with pytest.raises(InputError) as refused:
        replace(HERE, **{field: value})
    assert refused.value.field == field
    assert says in refused.value.message


def test_the_rate_is_held_against_the_ceiling():
    assert HERE.questions() == ()
    assert HERE.questions(8.0) == ()
    (asks,) = HERE.questions(7.9)
    assert "more than half the flow ceiling of 7.9 mm³/s" in asks
    with pytest.raises(InputError) as refused:
        HERE.questions(3.9)
    assert refused.value.field == "rate_mm3_s"
    assert "above the flow ceiling of 3.9 mm³/s" in refused.value.message


def test_the_bead_is_held_against_the_nozzle():
    (asks,) = replace(HERE, nozzle_mm=0.2).questions()[:1]
    assert "wider than twice the bore" in asks


def test_a_result_says_what_it_holds_for():
    assert HERE.words() == ("Holds for obround beads of 0.45 × 0.2 mm, nozzle 0.4 mm, 210 °C ± 5 K, up to 4 mm³/s.")


def test_conditions_are_read_from_a_kept_trial():
    assert conditions_from(STORED) == HERE


@pytest.mark.parametrize("change", [{"nozzle_mm": None}, {"bead_model": "hexagon"}, {"temperature_c": 300.0}])
def test_incomplete_conditions_are_none(change):
    assert conditions_from(STORED | change) is None
    assert conditions_from({}) is None


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({}, None),
        ({"temperature_c": 215.0}, None),
        ({"temperature_c": 216.0}, "at 216 °C"),
        ({"temperature_c": 204.0}, "at 204 °C"),
        ({"nozzle_mm": 0.6}, "a nozzle of 0.6 mm"),
        ({"bead": Bead(0.45, 0.2, BeadModel.RECTANGLE)}, "not carried between models"),
    ],
)
def test_an_estimate_counts_under_the_same_conditions_only(change, says):
    why = why_apart(HERE, replace(HERE, **change))
    assert why is None if says is None else says in why


@pytest.mark.parametrize(
    ("use", "marks"),
    [
        ((210.0, 4.0, None), []),
        ((215.0, 4.0, BeadModel.OBROUND), []),
        ((205.0, 9.0, None), ["Tested up to 4 mm³/s, used at 9"]),
        ((216.0, 3.0, None), ["outside ±5 K"]),
        ((230.0, 9.0, BeadModel.RECTANGLE), ["Tested at 210 °C, used at 230", "slip grows", "convert the factor"]),
    ],
)
def test_a_use_that_the_trial_does_not_cover_is_marked(use, marks):
    found = use_questions(HERE, *use)
    assert len(found) == len(marks)
    assert all(mark in says for mark, says in zip(marks, found, strict=True))
