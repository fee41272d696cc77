"""Slips of the fingers are common practice, no source; the inch is 25.4 mm exactly (agreement of 1959)."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from core.errors import InputError
from core.measuring.plausible import question_reading

lengths = st.floats(-2000, 2000)


@pytest.mark.parametrize(
    ("reading", "nominal", "meant", "word"),
    [
        (13, 31, (31,), "swapped"),
        (12.94, 12.49, None, ""),  # inside the window: nothing to ask
        (192.76, 130, (129.76,), "swapped"),
        (0.787, 20, (19.9898,), "inch"),
        (5.108, 130, (129.7432,), "inch"),
        (508, 20, (20.0,), "inch"),
        (1.005, 10, (10.05,), "decimal mark"),
        (100.5, 10, (10.05,), "decimal mark"),
        (1005, 10, (10.05,), "decimal mark"),
        (0.1, 10, (10.0,), "decimal mark"),
        (1.234, 1234, (1234.0,), "decimal mark"),
        (29.8, 130, (129.8,), "digit more"),
        (139.8, 130, (129.8, 130.8, 131.8), "digit changed"),
        (19.76, 130, (129.76,), "digit more"),
        (1129.76, 130, (129.76,), "digit less"),
        (-129.8, 130, (129.8,), "other sign"),
        (-31, -13, (-13,), "swapped"),
        (75, 130, (), "Read it again"),
        (0.2, 2, (2.0,), "decimal mark"),
        (0.9, 0, None, ""),
        (7, 0, (), "Read it again"),
    ],
)
def test_a_mistyped_reading_is_asked_about(reading, nominal, meant, word):
    question = question_reading(reading, nominal)
    if meant is None:
        assert question is None
        return
    assert question.suggestions == pytest.approx(meant, abs=1e-6)
    assert word in question.says


@pytest.mark.parametrize(
    ("reading", "nominal"),
    [(10.06, 10), (129.75, 130), (98.1, 100), (0.72, 1), (202.9, 200), (1.6, 2), (103.0, 100), (10.94, 10)],
)
def test_printed_parts_as_they_are_raise_no_question(reading, nominal):
    assert question_reading(reading, nominal) is None


def test_the_sentence_names_reading_target_and_way_out():
    assert question_reading(13, 31).says == "13 mm for 31 mm? With two digits swapped it would be 31 mm."
    assert question_reading(-75.5, 130).says == (
        "−75.5 mm is 205.5 mm from its nominal 130 mm. Read it again, or keep it.")
    assert question_reading(129.0, 130, expected_mm=129.76, u_expected_mm=0.04).says == (
        "129 mm is 0.76 mm from the 129.76 mm expected here. Read it again, or keep it.")


def test_an_expected_value_narrows_the_window_to_five_standard_uncertainties():
    expected = {"expected_mm": 129.76, "u_expected_mm": 0.1}
    assert question_reading(130.25, 130, **expected) is None
    assert question_reading(130.27, 130, **expected) is not None
    assert question_reading(129.47, 130, expected_mm=129.76, u_expected_mm=0.001) is None
    assert question_reading(129.45, 130, expected_mm=129.76, u_expected_mm=0.001) is not None


def test_the_last_zero_of_a_reading_may_be_one_of_two_swapped_digits():
    question = question_reading(10.6, 10, expected_mm=10.07, u_expected_mm=0.02)
    assert question.suggestions == (10.06,)
    assert question.says == "10.6 mm for 10.07 mm? With two digits swapped it would be 10.06 mm."


def test_an_expected_value_moves_the_window_but_never_widens_it():
    assert question_reading(104.1, 130, expected_mm=104.0, u_expected_mm=0.05) is None
    assert question_reading(13, 31, expected_mm=31.0, u_expected_mm=50.0).suggestions == (31,)
    assert question_reading(104.1, 130, expected_mm=104.0) is None


@pytest.mark.parametrize(
    ("field", "values", "says"),
    [
        ("reading_mm", {"reading_mm": math.nan, "nominal_mm": 1.0}, "finite"),
        ("nominal_mm", {"reading_mm": 1.0, "nominal_mm": math.inf}, "finite"),
        ("expected_mm", {"reading_mm": 1.0, "nominal_mm": 1.0, "expected_mm": math.nan}, "finite"),
        ("u_expected_mm", {"reading_mm": 1.0, "nominal_mm": 1.0, "u_expected_mm": math.inf}, "finite"),
        ("u_expected_mm", {"reading_mm": 1.0, "nominal_mm": 1.0, "u_expected_mm": -0.1}, "below zero"),
    ],
)
def test_what_is_no_length_is_refused(field, values, says):
    with pytest.raises(InputError, match=says) as refused:
        question_reading(**values)
    assert refused.value.field == field


@given(nominal=lengths, share=st.floats(-1, 1))
def test_a_reading_within_one_millimetre_or_three_percent_is_never_questioned(nominal, share):
    assume(abs(nominal) >= 4)
    window = max(1.0, 0.03 * abs(nominal))
    assert question_reading(nominal + 0.999 * share * window, nominal) is None


@given(reading=lengths, nominal=lengths, expected=st.none() | lengths, u=st.none() | st.floats(0, 100))
def test_suggestions_are_finite_few_different_and_themselves_plausible(reading, nominal, expected, u):
    question = question_reading(reading, nominal, expected_mm=expected, u_expected_mm=u)
    if question is None:
        return
    assert len(question.suggestions) <= 3
    assert len(set(question.suggestions)) == len(question.suggestions)
    target = nominal if expected is None else expected
    for meant in question.suggestions:
        assert math.isfinite(meant)
        assert abs(meant - target) < abs(reading - target)


@given(nominal=st.integers(100, 2000))
def test_swapping_two_digits_is_found_again(nominal):
    digits = str(nominal)
    typed = digits[1] + digits[0] + digits[2:]
    question = question_reading(float(typed), nominal)
    if question is not None:
        assert any(abs(meant - nominal) <= 0.03 * nominal for meant in question.suggestions)
