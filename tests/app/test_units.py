"""Lengths in inch: sentences, headings and bare numbers are converted together with their unit, and nothing else is."""

from __future__ import annotations

import math
import re
import string

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from app.inches import show_inches
from app.units import (
    HELD,
    hold,
    inch_digits,
    inch_heading,
    inch_numbers,
    inch_sentence,
    inches_for,
    is_length,
    with_unit,
)
from core.quantity import Estimate, length_from_text, value_text
from tests.translate.__main__ import TEXTS, messages

MM_PER_INCH = 25.4  # exact: international yard and pound agreement, 1959


@pytest.fixture
def inches():
    show_inches(True)
    yield
    show_inches(False)


@pytest.mark.parametrize(
    ("mm", "inch"),
    [
        ("25.4 mm", "1 in"),
        ("+0.040 ± 0.0060 mm", "+0.00157 ± 0.00024 in"),  # U two digits, JCGM 100:2008 7.2.6
        ("0,040 ± 0,006 mm", "0,00157 ± 0,00024 in"),
        ("+0.4 ± ? mm", "+0.0157 ± ? in"),
        ("Row 4: 12.4 mm is 3 mm from its nominal 15 mm.", "Row 4: 0.4882 in is 0.1181 in from its nominal 0.5906 in."),
        ("±0.15 mm from 20 to 100 mm may be promised", "±0.0059 in from 0.7874 to 3.937 in may be promised"),
        ("20 bis 100 mm", "0.7874 bis 3.937 in"),
        ("60 × 20 × 5 mm", "2.3622 × 0.7874 × 0.1969 in"),
        ("(0.12, −0.20, 0.10 mm)", "(0.0047, −0.0079, 0.0039 in)"),
        ("trial № 3, 20 mm", "trial № 3, 0.7874 in"),
        ("100 mm reads 100 ± 0.5 mm", "3.937 in reads 3.937 ± 0.020 in"),
        ("0.001 mm", "0.00004 in"),
        ("1e-05 mm", "0.0000004 in"),
        ("Walls stand +0.040 mm per side.", "Walls stand +0.00157 in per side."),
        ("Off by 0.093 ± 0.012 mm in 100 mm; allowed 0.050. It is 2.54 mm long.",
         "Off by 0.093 ± 0.012 mm in 100 mm; allowed 0.050. It is 0.1000 in long."),
    ],
)
def test_lengths_in_a_sentence(mm, inch):
    assert inch_sentence(mm) == inch


@pytest.mark.parametrize(
    "text",
    ["80 mm/s", "3 mm²", "12 mm³/s", "80 steps/mm", "0.1 mm/N", "5 N·mm", "type mm or in.", f"Slot 20{HELD}", "M3", ""],
)
def test_what_is_no_length_stays(text):
    assert inch_sentence(text) == text


@pytest.mark.parametrize(
    ("mm", "inch"),
    [("Nominal mm", "Nominal in"), ("Reading\nmm", "Reading\nin"), ("Mean error, mm", "Mean error, in"), ("mm", "in"),
     ("Tolerance, mm (ISO 2768-m)", "Tolerance, in (ISO 2768-m)")],
)
def test_headings_of_lengths(mm, inch):
    assert (inch_heading(mm), is_length(mm)) == (inch, True)


@pytest.mark.parametrize("heading", ["speed, mm/s", "rate, mm³/s", "Prints", "Share, %", f"X{HELD}", ""])
def test_other_headings(heading):
    assert (inch_heading(heading), is_length(heading)) == (heading, False)


def test_bare_numbers():
    assert inch_numbers("+0.040 ± 0.0060") == "+0.00157 ± 0.00024"
    assert [inch_numbers(text) for text in ("", "—", "±0.15", "120")] == ["", "—", "±0.0059", "4.7244"]


@pytest.mark.usefixtures("inches")
def test_trade_sizes_stay_in_mm():
    assert inches_for("sizeerror") and inches_for("reversal")
    assert not any(inches_for(subject) for subject in ("drive", "diameter", "feed", "wall", "ceiling", "speed"))
    assert inch_sentence(hold("Peg 8 mm")) == f"Peg 8{HELD}"


def test_in_mm_nothing_is_held():
    assert not inches_for("sizeerror")
    assert hold("Peg 8 mm") == "Peg 8 mm"


@pytest.mark.parametrize(
    ("typed", "stands_for"),
    [("0.787", "0.787in"), ("1,5", "1,5in"), ("25/64", "25/64in"), ("1 25/64", "1 25/64in"), ("-.02", "-.02in"),
     ("20mm", "20mm"), ('0.5"', '0.5"'), ("x", "x"), ("", "")],
)
def test_a_number_typed_without_a_unit_gets_it(typed, stands_for):
    assert with_unit(typed) == stands_for


@given(st.floats(-1e4, 1e4), st.sampled_from([0.0, 1.0, 0.1, 0.01, 0.001]))
@example(20.0, 0.0)
def test_the_inches_of_a_length_read_back_as_it(length_mm, step_mm):
    text = inch_digits(length_mm, step_mm)
    places = max(len(text.partition(".")[2]), 4)
    back_mm = length_from_text(f"{text}in").mm
    assert abs(back_mm - length_mm) <= 0.5000001 * MM_PER_INCH * 10.0**-places
    assert step_mm == 0 or MM_PER_INCH * 10.0**-places <= max(step_mm, MM_PER_INCH * 1e-4)


@given(st.floats(-1e3, 1e3), st.floats(1e-5, 10.0))
def test_a_value_with_its_uncertainty_keeps_both(value, u):
    mm = value_text(Estimate("x", value, u, math.inf, "mm"))
    shown = inch_sentence(mm)
    assert shown.endswith(" in")
    numbers = [[float(n.replace("−", "-")) for n in re.findall(r"[+−]?\d+(?:\.\d+)?", text)] for text in (mm, shown)]
    (value_mm, U_mm), (value_in, U_in) = numbers
    assert abs(value_in * MM_PER_INCH - value_mm) <= 0.06 * U_mm + 1e-9
    assert abs(U_in * MM_PER_INCH - U_mm) <= 0.06 * U_mm + 1e-9


def filled(template: str) -> tuple[str, dict[str, str]]:
    """A template filled with numbers that are told apart, and the field of each."""
    says, fields = "", {}
    for literal, name, spec, _conversion in string.Formatter().parse(template):
        says += literal
        if name is not None:
            number = f"{101 + len(fields)}.25" if spec else f"x{len(fields)}x"
            fields[number] = name
            says += number
    return says, fields


def converted(template: str) -> set[str]:
    """The fields of a template that are shown in inch."""
    says, fields = filled(template)
    return {name for number, name in fields.items() if number in says and number not in inch_sentence(says)}


def test_every_sentence_is_converted_alike_in_english_and_german():
    pairs = [(english, german) for _, english, german in messages(TEXTS) if german and "mm" in english]
    assert len(pairs) > 100
    differ = [english for english, german in pairs if converted(english) != converted(german)]
    assert differ == []
