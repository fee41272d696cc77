import math
import os

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError
from core.records.csvio import ReadingsFileError, read_readings, readings_from_bytes

KINDS = {"outside", "gap", "travel"}
HEAD = "axis,kind,nominal_mm,measured_mm"


def read(text: str | bytes):
    return readings_from_bytes(text if isinstance(text, bytes) else text.encode(), KINDS)


def faults(text: str | bytes) -> list[tuple[int, str]]:
    with pytest.raises(ReadingsFileError) as caught:
        read(text)
    assert isinstance(caught.value, InputError)
    assert caught.value.field == "readings"
    assert caught.value.message == caught.value.faults[0][1]
    return list(caught.value.faults)


def test_a_small_file():
    file = read(
        f"# caliper 2\n\n{HEAD},feature,excluded,reason,Remark\n"
        "x,outside,10,10.05,A,,,warm\n# turned\nY,GAP,20,,B,yes,burr,\nx,travel,-5,-5.01,C,no,,\n"
    )
    assert file.line_number == (4, 6, 7)
    assert file.axis == ("x", "y", "x")
    assert file.kind == ("outside", "gap", "travel")
    assert file.nominal_mm == (10.0, 20.0, -5.0)
    assert file.measured_mm == (10.05, None, -5.01)
    assert file.measured_text == ("10.05", "", "-5.01")
    assert file.feature == ("A", "B", "C")
    assert file.excluded == (False, True, False)
    assert file.reason == ("", "burr", "")
    assert file.repeat == file.lot == file.instrument == ("", "", "")
    assert file.notes == ({"Remark": "warm"}, {}, {})


@pytest.mark.parametrize(
    ("cell", "mm"),
    [("12.5", 12.5), ("0.394in", 10.0076), ("25/64in", 9.921875), ('0.5"', 12.7), ('"12,5"', 12.5), ("−3", -3.0)],
)
def test_lengths_as_people_type_them(cell, mm):
    assert read(f"{HEAD}\nx,travel,10,{cell}").measured_mm == (pytest.approx(mm, rel=1e-12),)


@pytest.mark.parametrize("newline", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"], ids=["plain", "bom"])
@pytest.mark.parametrize("delimiter", [";", "\t"])
def test_what_spreadsheets_write(delimiter, mark, newline):
    lines = [HEAD.replace(",", delimiter), delimiter.join(["x", "outside", "10,0", "10,05"]), delimiter * 3, ""]
    file = read(mark + newline.join(lines).encode())
    assert (file.nominal_mm, file.measured_mm, file.line_number) == ((10.0,), (10.05,), (2,))


def test_columns_in_any_order_and_case_and_without_a_name():
    file = read("Measured_mm,Axis,KIND,nominal_mm,,\n10.05,x,outside,10,,late\n")
    assert file.measured_mm == (10.05,)
    assert file.notes == ({"column 6": "late"},)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("", [(0, "The file is empty; its first line names the columns axis, kind, nominal_mm, measured_mm.")]),
        (
            "# only this\n",
            [(0, "The file is empty; its first line names the columns axis, kind, nominal_mm, measured_mm.")],
        ),
        (f"#\n{HEAD}\n", [(2, "There is no row of readings below the names of the columns; add one.")]),
        (
            "axis,kind,nominal_mm\nx,outside,1",
            [
                (
                    1,
                    "The column measured_mm is missing; the first line names the columns axis, kind, nominal_mm, "
                    "measured_mm.",
                )
            ],
        ),
        (
            f"{HEAD},Axis,a,a\n",
            [
                (1, "The column a is there twice; rename or remove one."),
                (1, "The column axis is there twice; rename or remove one."),
            ],
        ),
        (f'{HEAD},"a\n', [(1, "A quotation mark is not closed on this line, or stands inside a cell; remove it.")]),
        (f"{HEAD}\nx,outside,10\n", [(2, "3 cells instead of 4; give every column its cell.")]),
        (
            f"{HEAD}\nx,outside,10,0,10,05\n",
            [
                (
                    2,
                    "6 cells instead of 4; a decimal comma needs semicolons between the cells, or quotes round the "
                    "number.",
                )
            ],
        ),
        (
            "axis;kind;nominal_mm;measured_mm\nx;outside;1;2;3",
            [(2, "5 cells instead of 4; give every column its cell.")],
        ),
        (
            f'{HEAD}\nx,outside,10,"10\n',
            [(2, "A quotation mark is not closed on this line, or stands inside a cell; remove it.")],
        ),
        (
            f"{HEAD}\nx,outside,10,{'1' * 10_001}\n",
            [(2, "The line is longer than 10000 characters; shorten its notes.")],
        ),
        (
            f"{HEAD}\na,hole,,\n",
            [
                (2, "axis: “a” is not one of x, y, z; correct it."),
                (2, "kind: “hole” is not one of gap, outside, travel; correct it."),
                (2, "nominal_mm is empty; type the drawn length."),
                (2, "measured_mm is empty; type the reading, or exclude the row with a reason."),
            ],
        ),
        (f"{HEAD}\n,,1,1\n", [(2, "axis is empty; fill it in."), (2, "kind is empty; fill it in.")]),
        (
            f"{HEAD},excluded,reason\nx,gap,1,1,maybe,\nx,gap,1,1,yes,\n",
            [
                (2, "excluded: “maybe” is neither yes nor no; type one of them."),
                (3, "The reading is excluded without a reason; give one in the column reason."),
            ],
        ),
        (f"{HEAD}\nx,gap,1,{'1' * 61}\n", [(2, f"measured_mm: “{'1' * 60}…” is not a length; type a number.")]),
        (f"{HEAD}\nx,gap,1,\x1b[2J1\n", [(2, "measured_mm: “?[2J1” is not a length; type a number.")]),
        (
            b"axis,kind\n\x00\x01",
            [(2, "There is a zero byte: this is not plain text. Save the table as text (CSV, UTF-8), then try again.")],
        ),
        (
            "größe".encode("latin-1"),
            [(1, "This line is not UTF-8 text; save the table as text (CSV, UTF-8), then try again.")],
        ),
    ],
)
def test_each_fault_has_its_line_and_its_sentence(text, expected):
    assert faults(text) == expected


def test_a_bad_number_is_told_in_the_words_of_the_length():
    ((line, sentence),) = faults(f"{HEAD}\nx,gap,1,1\nx,gap,1,ten\n")
    assert line == 3
    assert sentence.startswith("measured_mm: “ten” is not a length")


def test_faults_are_listed_up_to_a_limit():
    found = faults(HEAD + "\nx,gap,1," * 100_000)
    assert len(found) == 201
    assert found[-1] == (202, "There are more faults from here on; mend these first.")


def test_reading_from_disk(tmp_path):
    path = tmp_path / "readings.csv"
    path.write_text(f"{HEAD}\nx,gap,1,1\n")
    assert read_readings(path, KINDS).measured_mm == (1.0,)


def test_no_such_file_a_folder_and_a_file_too_large(tmp_path):
    large = tmp_path / "large.csv"
    with large.open("wb") as file:
        file.truncate(10_000_001)
    for path, words in (
        (tmp_path / "absent.csv", "is not there or is not a file"),
        (tmp_path, "is not there or is not a file"),
        (tmp_path / "a\0b", "is not there or is not a file"),
        (large, "is larger than 10 MB"),
    ):
        with pytest.raises(ReadingsFileError, match=words) as caught:
            read_readings(path, KINDS)
        assert caught.value.faults[0][0] == 0
        assert str(path) in caught.value.message


def test_a_file_that_may_not_be_opened(tmp_path, monkeypatch):
    path = tmp_path / "readings.csv"
    path.write_text(HEAD)

    def refuse(*_args, **_named):
        raise PermissionError

    monkeypatch.setattr(os, "open", refuse)
    with pytest.raises(ReadingsFileError, match="cannot be read; check that you may open it"):
        read_readings(path, KINDS)


def test_ten_megabytes_are_read_or_refused():
    good = read(HEAD + "\nx,gap,1.25,1.25" * 100_000)
    assert len(good.axis) == 100_000
    for hostile in (
        '"' * 9_999_999,
        "1" * 9_999_999,
        "\n" * 9_999_999,
        HEAD + "\n" + ";" * 9_000_000,
        HEAD + ",a" * 4_000 + "\n" + "x,\n" * 3_000_000,
    ):
        faults(hostile)


@given(
    st.binary(max_size=300)
    | st.text(max_size=300).map(lambda text: (HEAD + "\nx,gap,1," + text).encode("utf-8", "replace"))
    | st.lists(
        st.sampled_from(["x", "gap", "yes", "1", "1,5", '"', ",", ";", "\t", "\n", "\r", "#", "1/0in", "9" * 50, HEAD]),
        max_size=40,
    ).map(lambda parts: (HEAD + "\n" + "".join(parts)).encode())
)
def test_hostile_input_ends_in_a_sentence(content):
    try:
        file = readings_from_bytes(content, KINDS)
    except ReadingsFileError as error:
        assert all(line >= 0 and sentence for line, sentence in error.faults)
    else:
        assert len({len(getattr(file, name)) for name in file.__slots__}) == 1
        assert all(math.isfinite(nominal) for nominal in file.nominal_mm)
