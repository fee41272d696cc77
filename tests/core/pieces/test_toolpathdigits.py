"""Lines of moves, byte for byte what Python's own format writes."""

import math

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from core.errors import InputError
from core.pieces.toolpathdigits import Column, move_text, scaled_whole, word_text

MANY = 64  # lines: above the number from which tables are used


def formatted(columns: list[Column]) -> bytes:
    """The peer: one format call for each number."""
    lines = zip(*(column.values.tolist() for column in columns), strict=True)
    return "".join(
        "G1 " + " ".join(f"{f'{c.letter}{value:.{c.decimals}f}':>9}" for c, value in zip(columns, line, strict=True))
        + "\n"
        for line in lines
    ).encode()


def ties(decimals: int) -> st.SearchStrategy[float]:
    """Numbers half-way between two decimals, and those that only look so."""
    halves = st.integers(-(10**6), 10**6).map(lambda n: (2 * n + 1) / (2 * 10**decimals))
    exact = st.builds(lambda n, k: n / 2**k, st.integers(-(2**14), 2**14), st.integers(1, 14))
    return st.one_of(halves, exact, st.sampled_from([0.0, -0.0, 0.0005, -0.0005, 2.5e-6, -4e-9, 999.9995, 9999.9995]))


@pytest.mark.parametrize("decimals", [3, 4, 5, 6])
@given(data=st.data())
@settings(max_examples=60, deadline=None)
def test_bytes_are_those_of_format_strings(decimals, data):
    numbers = st.one_of(
        st.floats(-999, 999), st.floats(0, 9999), st.floats(-1e-6, 1e-6), ties(decimals), st.floats(-1e12, 1e12)
    )
    kind = data.draw(st.sampled_from([numbers, st.floats(0, 90), st.floats(-9, 9), ties(decimals)]))
    values = data.draw(arrays(float, MANY, elements=kind, fill=st.nothing()))
    columns = [Column("X", values, decimals), Column("E", values[::-1].copy(), decimals)]
    assert move_text(columns, [slice(0, MANY)]) == [formatted(columns)]


@given(st.floats(-1e9, 1e9), st.integers(3, 6))
@example(0.0005, 3)  # the double lies above the tie, its product with 1000 on it
@example(0.0015, 3)  # below and above
@example(2.5, 3)
@settings(deadline=None)
def test_rounding_is_that_of_python(value, decimals):
    whole = scaled_whole(np.array([abs(value)]), decimals)[0]
    assert whole == int(f"{abs(value):.{decimals}f}".replace(".", ""))


def test_a_seeded_million_like_sample_is_identical():
    """All sizes in one go, so that the tables are met at their ends."""
    rng = np.random.default_rng(7)
    for scale in (1e-4, 0.1, 9.0, 95.0, 990.0, 9900.0):
        values = scale * rng.uniform(-1.0, 1.0, 5000)
        for of in (values, np.abs(values)):
            columns = [Column("X", of, 3), Column("Y", of[::-1], 3), Column("E", of, 5)]
            assert move_text(columns, [slice(0, 5000)]) == [formatted(columns)]


def test_few_lines_are_written_the_same_way():
    columns = [Column("X", np.array([1.25, -0.0]), 3), Column("E", np.array([0.03385, 12.0]), 5)]
    assert move_text(columns, [slice(0, 2)])[0] == b"G1    X1.250  E0.03385\nG1   X-0.000 E12.00000\n"


def test_every_line_has_the_same_length():
    columns = [Column("X", np.linspace(0, 250, 100), 3), Column("E", np.linspace(0, 9, 100), 5)]
    (text,) = move_text(columns, [slice(0, 100)])
    assert {len(line) for line in text.splitlines()} == {2 + 2 * 10}


@pytest.mark.parametrize("most", [90.0, 90_000.0])
def test_runs_are_cut_out_of_the_lines(most):
    column = Column("X", np.linspace(0, most, 100), 3)
    lines = formatted([column]).splitlines(keepends=True)
    assert move_text([column], [slice(3, 5), slice(20, 90)]) == [b"".join(lines[3:5]), b"".join(lines[20:90])]


@pytest.mark.parametrize("wrong", [math.nan, math.inf, -math.inf])
@pytest.mark.parametrize("count", [3, 100])
def test_what_is_no_number_is_refused(wrong, count):
    values = np.ones(count)
    values[1] = wrong
    with pytest.raises(InputError, match="no number") as refused:
        move_text([Column("X", values, 3)], [slice(0, count)])
    assert refused.value.field == "toolpath"


def test_one_word():
    assert word_text("Z", 0.2, 3) == "   Z0.200"
