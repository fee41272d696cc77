"""Lines of a program, read into words."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.pieces.toolpathwords import KNOWN, command_from_line


@pytest.mark.parametrize(
    ("line", "name", "numbers"),
    [
        ("G1 X12.5 Y-3 E.25 F1800", "G1", {"X": 12.5, "Y": -3.0, "E": 0.25, "F": 1800.0}),
        ("  g1 x1. y+2 ; a comment with G28", "G1", {"X": 1.0, "Y": 2.0}),
        ("G1X1Y2", "G1", {"X": 1.0, "Y": 2.0}),
        ("G1 X 1 Y 2", "G1", {"X": 1.0, "Y": 2.0}),  # ISO 6983-1: spaces are free
        ("G28", "G28", {}),
        ("G28 X Z", "G28", {"X": 0.0, "Z": 0.0}),
        ("G28 X0", "G28", {"X": 0.0}),
        ("M109 S210", "M109", {"S": 210.0}),
        ("G00 X1", "G0", {"X": 1.0}),
    ],
)
def test_lines(line, name, numbers):
    command = command_from_line(line)
    assert command is not None
    assert (command.name, dict(command.numbers)) == (name, numbers)


@pytest.mark.parametrize("line", ["", "   ", "; G1 X900", "\t;"])
def test_blank_lines_and_comments_say_nothing(line):
    assert command_from_line(line) is None


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("M92 X80", "M92 is not among the words"),
        ("G2 X1 Y1 I1", "G2 is not among"),
        ("T0", "T0 is not among"),
        ("G1.5 X1", "G1.5 is not among"),
        ("X10 Y10", "X10 is not among"),
        ("G1 Xnan", "“XNAN” is no letter with a number"),
        ("G1 Xinf", "“XINF” is no letter"),
        ("G1 X", "“X” is no letter"),
        ("G1 X1.2.3", "“X1.2.3” is no letter"),
        ("G1 X--5", "no letter with a number"),
        ("G28 E", "“E” is no letter"),
        ("(G1 X1)", "no letter with a number"),
        ("G1 X" + "9" * 400, "no finite number"),
        ("G1 X1 X2", "X stands there twice"),
        ("G1 S200", "G1 takes no S"),
        ("M104 T1 S200", "M104 takes no T"),
    ],
)
def test_what_not_every_machine_reads_alike_is_refused(line, says):
    with pytest.raises(InputError, match=says.replace("(", r"\(")) as refused:
        command_from_line(line)
    assert refused.value.field == "line"


@given(st.text(max_size=60).filter(lambda text: "\n" not in text))
def test_any_line_is_read_or_refused_in_words(line):
    try:
        command = command_from_line(line)
    except InputError as refused:
        assert refused.message
    else:
        assert command is None or command.name in KNOWN
