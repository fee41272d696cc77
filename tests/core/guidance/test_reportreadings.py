"""What stands in the table of readings of a report: nothing of the program's own, every reading with its unit."""

from __future__ import annotations

import pytest

from core.guidance.reportblocks import Heading
from core.guidance.reportreadings import reading_blocks
from core.records.rows import Trial


def told(subject, **readings):
    """Return heading, column names and rows of a trial's readings, as people read them."""
    heading, table = reading_blocks(Trial(subject, readings=readings))
    assert isinstance(heading, Heading) and table.name == "readings"
    rows = [tuple(map(str, row)) for row in table.rows]
    return str(heading.text), [str(name) for name in table.headings], rows


def test_a_score_has_no_millimetres_and_what_the_name_of_its_row_says_is_not_said_twice():
    title, names, rows = told(
        "ladder", feature=["A, bond, judge 1", "B, bond, judge 1"], axis=["temperature/score"] * 2,
        kind=["travel"] * 2, nominal_mm=[None, None], nominal_raw=["", ""], measured_mm=[4.0, None], raw=["4", ""],
        unit=["", ""], confirmed=[True, False], judge=["1", "1"], criterion=["bond", "bond"], step=[210.0, 205.5],
        step_raw=["210", "205.5"],
    )  # fmt: skip
    assert title == "Readings as typed" and names == ["What", "Score, 0 to 4", "As typed", "Step, °C"]
    assert rows == [("A, bond, judge 1", "4", "4", "210"), ("B, bond, judge 1", "", "", "205.5")]


@pytest.mark.parametrize(
    ("units", "heading"),
    [(["g", "g"], "Reading, g"), (["mm", "in"], "Reading, mm"), (["mm", "g"], "Reading"), (["°C", ""], "Reading, °C")],
)
def test_the_unit_stands_in_the_heading_or_beside_each_reading(units, heading):
    _, names, rows = told(
        "mass", feature=["piece 1", "piece 2"], measured_mm=[5.964, 5.955], raw=["5.964", "5.955"], unit=units
    )
    assert names == ["What", heading, "As typed"] + ["Unit"] * (heading == "Reading")
    assert rows[0][:3] == ("piece 1", "5.964", "5.964")


def scored(subject, groups, **readings):
    pieces = ["A", "B", "C", "D"][: len(groups)]
    return told(subject, feature=pieces, axis=groups, **readings, step=[80.0, 0.5, 1.0, 2.0][: len(groups)])


@pytest.mark.parametrize(
    ("subject", "groups", "heading", "steps"),
    [
        ("speed", ["speed/", "speed"], "Step, mm/s", ["80", "0.5"]),
        ("speed", ["acceleration"], "Step, mm/s²", ["80"]),
        ("speed", ["speed", "acceleration", "half"], "Step", ["80 mm/s", "0.5 mm/s²", ""]),
        ("ladder", ["retraction/score"] * 2, "Step, mm", ["80", "0.5"]),
        ("ladder", ["lag/widths"], "Step, s", ["80"]),
        ("ladder", ["cooling/score", "cornering/score"], "Step", ["80 %", "0.5 mm/s"]),
        ("ladder", ["of a later version/score"], "Step", ["80"]),
        ("ladder", ["cooling/score", "of a later version/score"], "Step", ["80 %", "0.5"]),
    ],
)
def test_a_step_has_the_unit_of_its_ladder_or_levels(subject, groups, heading, steps):
    _, names, rows = scored(subject, groups, raw=["3"] * len(groups))
    assert names == ["What", "As typed", heading] and [row[-1] for row in rows] == steps


@pytest.mark.parametrize(("unit", "heading"), [("N", "Reading, N"), ("", "Reading")])
def test_a_value_of_any_kind_has_the_unit_that_was_typed(unit, heading):
    conditions = {"ladder": "temperature", "read": "high", "value_unit": unit}
    readings = {"feature": ["A"], "axis": ["temperature/high"], "measured_mm": [15.1], "raw": ["15.1"], "step": [205.0]}
    _, table = reading_blocks(Trial("ladder", conditions=conditions, readings=readings))
    assert str(table.headings[1]) == heading


def test_the_runs_at_half_speed_are_named_and_not_numbered():
    _, names, _ = scored("speed", ["half"] * 2, judge=["1", "2"], measured_mm=[3.0, 4.0], raw=["3", "4"])
    assert names == ["What", "Score, 0 to 4", "As typed"]


def test_what_was_typed_without_a_unit_has_the_one_of_how_it_is_read():
    _, names, rows = scored(
        "ladder", ["temperature/score"] * 3, measured_mm=[4.0, 52.5, 3.0], raw=["4", "52.5", "3"],
        judge=["1", "", ""], criterion=["bond", "force", "of a later version"],
    )  # fmt: skip
    assert names == ["What", "Reading", "As typed", "Step, °C", "Unit"]
    assert [(row[1], row[-1]) for row in rows] == [("4", "of 4"), ("52.5", "N"), ("3", "")]
    _, names, _ = scored("ladder", ["lag/widths"], measured_mm=[0.44], raw=["0.44"])
    assert names == ["What", "Reading, mm", "As typed", "Step, s"]
    _, names, _ = scored("ladder", ["lag/high"], measured_mm=[0.44], raw=["0.44"])
    assert names == ["What", "Reading", "As typed", "Step, s"]


def test_the_score_of_a_top_pad_says_its_scale():
    _, names, _ = told("top", feature=["Pad A, judge 1"], measured_mm=[-2.0], raw=["-2"], change_percent=[3.0])
    assert names == ["What", "Score, −5 to 5", "As typed", "Flow, %"]


def test_readings_in_several_units_have_no_nominal_in_one():
    names = told("instrument", nominal_mm=[10.0, 20.0], measured_mm=[10.0, 20.0], half_width=[0.1, 0.1],
                 raw=["10", "20"], unit=["mm", "g"])[1]  # fmt: skip
    assert names == ["Nominal", "Reading", "± of the reference", "As typed", "Unit"]


def test_from_which_side_an_axis_came_and_which_part_of_a_gauge_was_read():
    _, names, rows = told(
        "reversal", feature=["Left"] * 4, axis=["up", "down", "rest", "pushed"], kind=["travel"] * 4,
        measured_mm=[0.4] * 4, raw=["0.40"] * 4,
    )  # fmt: skip
    assert names == ["What", "From", "Reading, mm", "As typed"]
    assert [row[1] for row in rows] == ["from −", "from +", "rest", "push"] and rows[0][2:] == ("0.4", "0.40")
    _, names, rows = told(
        "instrument", feature=["zero", "608 ring"], axis=["", ""], kind=["zero", "tip"], nominal_mm=[0.0, 21.9955],
        measured_mm=[-0.0, 21.99], raw=["-0.00", "21.99"], half_width=[0.0, 0.0045],
    )  # fmt: skip
    assert names == ["What", "Part", "Nominal, mm", "Reading, mm", "As typed", "± of the reference, mm"]
    assert rows[0][2:4] == ("0", "0")  # no minus before a zero
    assert rows[1] == ("608 ring", "at the tips", "21.9955", "21.99", "21.99", "0.0045")


def test_lengths_of_a_part_keep_axis_and_kind_and_what_was_left_out():
    _, names, rows = told(
        "sizeerror", feature=["tooth 1 x"], axis=["x"], kind=["tooth"], nominal_mm=[10.0], measured_mm=[10.06],
        raw=["10.06"], unit=["mm"], excluded=[True], reason=["chip"],
    )  # fmt: skip
    assert names == ["Feature", "Axis", "Kind", "Nominal, mm", "Reading, mm", "As typed", "Excluded", "Reason"]
    assert rows == [("tooth 1 x", "X", "comb tooth", "10", "10.06", "10.06", "yes", "chip")]


def test_what_was_worked_out_is_no_reading_and_is_rounded():
    title, names, rows = told(
        "verification", axis=["x", "y"], kind=["outside"] * 2, nominal_mm=[64.0, 64.0],
        predicted_mm=[0.0056966153, -1e-6], e_n=[0.32977, -0.001],
    )  # fmt: skip
    assert title == "Values as kept" and names == ["Axis", "Kind", "Nominal, mm", "Predicted error, mm", "E_n"]
    assert rows == [("X", "outside", "64", "0.0057", "0.33"), ("Y", "outside", "64", "0.0000", "0.00")]


def test_the_fields_of_a_weighing_have_words_and_a_field_of_another_version_keeps_its_name():
    _, names, rows = told("drying", field=["weighing.now_g", "weighing.mood"], raw=["981.0", "good"])
    assert names == ["What", "As typed"] and rows == [("Now, or dried, g", "981.0"), ("weighing.mood", "good")]


def test_columns_and_kinds_of_another_version_keep_their_names_and_nothing_read_is_no_table():
    _, names, rows = told("instrument", kind=["odd"], lag_s=[1.0], raw=[""])
    assert names == ["Part", "lag s"] and rows == [("odd", "1")]
    assert reading_blocks(Trial("walk")) == []
    assert reading_blocks(Trial("walk", readings={"measured_mm": [None], "raw": [""]})) == []
