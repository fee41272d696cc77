"""Words of G-code: the quick reader against Python's own float, the slow reader on everything untidy."""

from threading import Event

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.motion_trials import gcodewords
from core.motion_trials.gcodewords import read_words

NUMBERS = st.one_of(
    st.decimals(-99999, 99999, places=5).map(lambda d: f"{d:f}"),
    st.integers(-9999999, 99999999).map(str),
    st.decimals(0, 1, places=3).map(lambda d: f"{d:f}".removeprefix("0") if 0 < d < 1 else "+0."),
)


@given(
    st.lists(st.lists(st.tuples(st.sampled_from("XYZEF"), NUMBERS), min_size=1, max_size=5), min_size=1, max_size=30)
)
def test_every_number_is_the_one_that_float_reads(lines):
    text = "\n".join(" ".join(letter + number for letter, number in line) for line in lines).encode()
    words = read_words(text)
    assert words.lines == len(lines)
    for row, line in enumerate(lines):
        for letter, number in dict(line).items():
            assert words.columns[letter][row] == float(number)


def test_pieces_join_at_line_ends(monkeypatch):
    text = b"".join(b"G1 X%d.25 Y-%d\n" % (n, n) for n in range(500))
    whole = read_words(text)
    monkeypatch.setattr(gcodewords, "_PIECE", 64)
    parts = read_words(text)
    np.testing.assert_array_equal(parts.columns["X"], whole.columns["X"])
    np.testing.assert_array_equal(parts.g_line, np.arange(500))
    monkeypatch.setattr(gcodewords, "_PIECE", 4)  # shorter than a line
    np.testing.assert_array_equal(read_words(text).columns["Y"], whole.columns["Y"])


@pytest.mark.parametrize(
    ("line", "column", "value"),
    [
        (b"G1 X10 ; go to X99", "X", 10),
        (b"G1 (fast) X10", "X", 10),
        (b"N7 G1 X10*57", "X", 10),
        (b"g1x10y-2.5", "Y", -2.5),
        (b"G1 X 10", "X", 10),
        (b"G1 X1.123456789", "X", 1.12345679),
        (b"\r\nG1 X3\r\n", "X", 3),
        (b"G1\tX3  Y4 ", "Y", 4),
        (b"G28 X Y", "Y", 0),
        (b"M117 Layer X of Y\nG1 X5", "X", 5),
        (b"START_PRINT NOZZLE=1\nG1 X5", "X", 5),
        (b"%\nO1234\nG1 X5", "X", 5),
    ],
)
def test_what_files_really_hold(line, column, value):
    column = read_words(line).columns[column]
    assert column[~np.isnan(column)][-1] == value


def test_several_g_words_of_one_line_are_all_seen():
    words = read_words(b"G90 G21\nM117 hello\nG1 X1")
    assert list(words.g_value) == [90, 21, 1] and list(words.g_line) == [0, 0, 2]
    assert words.column("Z") is None and list(words.places) == [False, False, True]


@pytest.mark.parametrize(
    ("text", "row", "says"),
    [
        (b"G1 X1\nG1 X1.2.3", 1, "Line 2"),
        (b"G1 X1\nG1 X--3\n", 1, "mend"),
        (b"G1 X1\nX5-\n", 1, "mend"),
        (b"G1 X1\n\nG1 X1234567890", 2, "larger"),
        (b"PK\x00\x01", None, "not text"),
    ],
)
def test_refused(text, row, says):
    with pytest.raises(InputError, match=says) as error:
        read_words(text)
    assert error.value.field == "file" and error.value.row == row


def test_pieces_that_nobody_waits_for_any_more_are_not_read(monkeypatch):
    monkeypatch.setattr(gcodewords, "_PIECE", 64)
    read, stopped, whole = [], Event(), gcodewords._piece

    def piece(text, first):
        read.append(first)
        assert first == 0 or stopped.wait(20)
        return whole(text, first)

    def stop(_part):
        stopped.set()
        raise InterruptedError

    monkeypatch.setattr(gcodewords, "_piece", piece)

    text = b"G1 X1 Y2 ; one line and its comment\n" * 40_000
    with pytest.raises(InterruptedError):
        read_words(text, stop)
    assert len(read) < 0.5 * len(gcodewords._pieces(text))


def test_comments_end_with_their_line_in_every_piece(monkeypatch):
    text = b"G1 X1 ; (open\nG1 X2 (in between) Y3*71\nG1 (left open X4\n" * 3
    whole = read_words(text.replace(b"(left open ", b""))
    monkeypatch.setattr(gcodewords, "_PIECE", 16)
    assert read_words(text.replace(b"(left open ", b"")).columns["X"].tolist() == whole.columns["X"].tolist()
    assert whole.columns["X"].tolist() == [1.0, 2.0, 4.0] * 3
