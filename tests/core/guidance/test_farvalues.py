"""Values far from all others: named with specimen and step; no word about ordinary ladders, valleys and peaks."""

import pytest

from core.guidance.farvalues import far_values_words
from core.guidance.ladderadvice import known_kinds
from core.motion_trials.ladders import LadderReadings, Read

HOT = known_kinds()["temperature"]
STEPS = [200.0, 205.0, 210.0, 215.0, 220.0, 225.0, 230.0]
PLAIN = [12.6, 12.3, 12.1, 11.5, 11.2, 11.9, 12.8]


def far(values, read=Read.LOW, step=None, unit="N", piece="ABCDEFG"):
    readings = LadderReadings(HOT, read, step or STEPS, values, [""] * len(values), None, list(piece), unit=unit)
    return [words.partition(",")[0] for words in far_values_words(readings)]


def test_ten_times_more_or_less_is_named():
    assert far([999_999_999_999.0, *PLAIN[1:]]) == ["A"]
    assert far([*PLAIN[:1], 0.0, *PLAIN[2:]]) == ["B"] and far([*PLAIN[:6], 0.0]) == ["G"]
    assert far([*PLAIN[:3], 1150.0, *PLAIN[4:]], Read.HIGH) == ["D"]
    assert far([1.15, *PLAIN[1:]]) == ["A"] and far([1.3, *PLAIN[1:]]) == []
    assert far([0.0, 12.0, 12.0, 1200.0, 12.0, 12.0, 12.0]) == ["A", "D"]


@pytest.mark.parametrize(
    "values",
    [
        PLAIN,
        [6.0, 9.0, 14.0, 18.0, 15.0, 10.0, 7.0],  # forces that differ by a factor of 3
        [30.0, 12.0, 3.0, 1.0, 2.0, 9.0, 25.0],  # counts of strings: the valley is what is looked for
        [0.0, 0.0, 0.0, 0.0, 3.0, 12.0, 40.0],  # none at most steps
        [1.0, 3.0, 10.0, 30.0, 100.0, 300.0, 1000.0],
        [-1.0, 0.0, 200.0, 3.0, 4.0, 5.0, 6.0],  # with a sign a ratio tells nothing
    ],
)
def test_ordinary_ladders_are_not_nagged_about(values):
    assert far(values) == [] and far(values, Read.HIGH) == []


def test_what_two_specimens_of_a_step_agree_on_is_believed():
    steps, values = [*STEPS, 205.0], [*PLAIN, 0.0]
    assert far(values, step=steps, piece="ABCDEFGH") == ["H"]
    assert far([*PLAIN[:1], 0.1, *PLAIN[2:], 0.12], step=steps, piece="ABCDEFGH") == []


def test_scores_and_two_values_tell_nothing():
    assert far([4.0, 0.0, 4.0, 4.0, 4.0, 4.0, 4.0], Read.SCORE) == [] and far([1.0, 100.0], step=[200.0, 205.0]) == []


def test_the_sentence_has_its_units():
    def said(read, unit, piece):
        values = [0.0, *PLAIN[1:]]
        return far_values_words(LadderReadings(HOT, read, STEPS, values, [""] * 7, None, piece, unit=unit))[0]

    assert said(Read.LOW, "", []) == (
        "One specimen, at 200 °C, reads 0, the middle one of the others 12: read it again, or exclude it."
    )
    assert "reads 0 mm, the middle one of the others 12 mm" in said(Read.WIDTHS, "", list("ABCDEFG"))
