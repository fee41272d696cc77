"""Numbers no workshop reads, and columns that do not go together, are refused before anything is calculated."""

from dataclasses import dataclass, field

import numpy as np
import pytest

from core.errors import InputError
from core.measuring.reach import above_zero, finite_out, of_one_length, refuse_out_of_reach, refuse_unlike, within_reach


@dataclass
class Readings:
    gap_mm: list[float] = field(default_factory=list)


@within_reach
def doubled(length_mm, others=(), *, readings=None):
    return 2 * length_mm


@pytest.mark.parametrize(
    ("name", "value", "row", "words"),
    [
        ("length_mm", 1e6, None, "1e+06 mm is out of reach: at most 100000 mm. Check the decimal mark."),
        ("temperature_c", -2e4, None, "-20000 °C is out of reach"),
        ("value", 1e21, None, "out of reach: at most 1e+20"),
        ("length_mm", [1.0, None, 1e200], 2, "Row 3: 1e+200 mm"),
        ("length_mm", (1.0, (2.0, 1e200)), 1, "Row 2: 1e+200 mm"),
        ("length_mm", np.array([[1.0, 2.0], [3.0, -1e200]]), 1, "Row 2: -1e+200 mm"),
        ("length_mm", np.array(1e200), None, "1e+200 mm is out of reach"),
        ("spread_ratio", {"x": 1e200}, None, "1e+200 is out of reach"),
        ("readings", Readings([1.0, 1e9]), 1, "Row 2: 1e+09 mm"),
    ],
)
def test_out_of_reach(name, value, row, words):
    with pytest.raises(InputError) as caught:
        refuse_out_of_reach(name, value)
    assert words in caught.value.message and caught.value.row == row
    assert caught.value.field == ("gap_mm" if name == "readings" else name)


@pytest.mark.parametrize(
    "value",
    [
        0.0,
        -0.0,
        5,
        True,
        1e5,
        float("nan"),
        float("inf"),
        None,
        "1e200",
        [],
        np.array([]),
        np.array(["x"]),
        np.array([np.nan, np.inf, 0.0]),
        np.array([True]),
        Readings([1.0]),
        {"x": 1.0, "y": None},
        [("x", "tooth"), ("y", None), ()],
    ],
    ids=str,
)
def test_within_reach_or_not_ours_to_say(value):
    refuse_out_of_reach("length_mm", value)


def test_the_guard_stands_before_the_call():
    assert doubled(2.0, [1.0], readings=Readings()) == 4.0
    for given in ({"length_mm": 1e200}, {"length_mm": 1.0, "readings": Readings([1e200])}):
        with pytest.raises(InputError):
            doubled(**given)


@within_reach
def told(value, others):
    return value, others


@pytest.mark.parametrize(
    "others", [[1.0, -1e-320], (1.0, 2), np.array([1.0, 1e-320]), np.array([1.0, 2.0]), np.array([])]
)
def test_next_to_nothing_is_nothing(others):
    value, found = told(1e-320, others)
    assert value == 0.0 and told(value=-3e-9, others=())[0] == -3e-9
    assert list(found) == [0.0 if abs(one) < 1e-300 else one for one in others]


@pytest.mark.parametrize(
    "others", [["x", None, True], [("x", "tooth"), ("y", "gap")], [1.0, np.nan, -np.inf], []], ids=str
)
def test_a_column_with_nothing_to_settle_stays_as_it_is(others):
    assert told(1.0, others)[1] == others and type(told(1.0, others)[1]) is list


def test_next_to_nothing_is_nothing_in_each_array_of_a_list():
    whole, counts = np.array([[0.0, -2.0], [np.nan, 3.0]]), np.array([0, 1])
    found = told(1.0, [np.array([1e-320, -1.0]), whole, counts])[1]
    assert found[0].tolist() == [0.0, -1.0]
    assert found[1] is whole and found[2] is counts


@pytest.mark.parametrize("value", [np.array([[1e-320, 0.0], [np.nan, -3.0]]), np.array([np.inf, -1e-320])], ids=str)
def test_next_to_nothing_beside_what_is_no_number(value):
    found = told(value, ())[0]
    assert np.array_equal(found, np.where(np.abs(value) < 1e-300, 0.0, value), equal_nan=True)
    with pytest.raises(InputError, match="Row 1"):
        told(np.array([-1e200, np.nan]), ())


def test_next_to_nothing_is_nothing_within_a_dataclass():
    @dataclass
    class Reading:
        value: float
        u: float

    whole = Reading(1.0, 0.1)
    found = told(1.0, [Reading(1.0, 1e-320), whole])[1]
    assert found == [Reading(1.0, 0.0), whole] and found[1] is whole


def test_an_object_answers_for_itself():
    @dataclass
    class Line:
        slope: float

        @within_reach
        def at(self, length_mm):
            return self.slope * length_mm

    assert Line(1e200).at(1.0) == 1e200
    with pytest.raises(InputError):
        Line(1.0).at(1e200)


def test_columns_of_one_length():
    @of_one_length("first", "second")
    def pairs(first, second, third=()):
        return list(zip(first, second, strict=True))

    assert pairs([1], second=[2]) == [(1, 2)]
    with pytest.raises(InputError, match="There are 1 entries of second and 2 of first") as caught:
        pairs([1, 2], [3])
    assert caught.value.field == "second"
    refuse_unlike(part=[1], value=[2], other=(3,))


@above_zero("length_mm", "step")
def shared(length_mm, step=1.0):
    return np.asarray(length_mm) / step


@pytest.mark.parametrize(("given", "field"), [((0.0, 1.0), "length_mm"), ((1.0, np.array([1.0, np.nan])), "step")])
def test_what_divides_is_above_zero(given, field):
    assert shared([3.0], step=2.0) == 1.5
    with pytest.raises(InputError, match="must be a number above 0") as caught:
        shared(*given)
    assert caught.value.field == field


@dataclass
class Both:
    first: np.ndarray
    second: tuple[np.ndarray, float]


@pytest.mark.parametrize(
    ("answer", "infinite", "refused"),
    [
        (np.array([1.0, 2.0]), False, False),
        (np.array([1.0, np.inf]), False, True),
        (np.array([1.0, np.inf]), True, False),
        (np.array([1.0, np.nan]), True, True),
        (Both(np.array([1.0]), (np.array([2.0]), np.nan)), False, False),
        (Both(np.array([1.0]), (np.array([np.inf]), 1.0)), False, True),
    ],
    ids=str,
)
def test_an_answer_that_is_no_number_is_refused(answer, infinite, refused):
    @finite_out("speed_mm_s", infinite=infinite)
    def answered():
        return answer

    if not refused:
        assert answered() is answer
        return
    with pytest.raises(InputError, match="too large or too small") as caught:
        answered()
    assert caught.value.field == "speed_mm_s"
