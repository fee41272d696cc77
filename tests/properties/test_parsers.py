"""Every reader of text or bytes: whatever is in it is read, or refused in words."""

from __future__ import annotations

import json

import pytest
import sqlalchemy
from hypothesis import given
from hypothesis import strategies as st

from core.errors import InputError, StoreError
from core.guidance.ownparts import parts_from_text
from core.guidance.settinglines import lines_of_template
from core.machine_geometry.parts import drive_from_parts, gears_from_text
from core.motion_trials.gcodepath import read_path
from core.motion_trials.gcodewords import read_words
from core.motion_trials.spectrum import read_log
from core.part_size.features import FeatureKind, kind_from_text
from core.pieces.toolpathwords import command_from_line
from core.quantity import harmless_cell, is_formula, length_from_text
from core.records.cells import DEEPEST, kind_of, value_from_cell, value_from_plain
from core.records.columns import value_from_json
from core.records.csvio import readings_from_bytes
from core.records.engine import place_of
from core.records.exchange import read_export
from core.records.spool import Spool
from core.records.transfer import TABLES
from tests.properties.examples import examples

PIECES = (
    "12.5",
    "12,5",
    "1.234.567,8",
    "1e999",
    "-0",
    "５.０１",
    "٣٫٥",
    "½",
    "nan",
    "inf",
    "∞",
    "0x1F",
    "5 1/8in",
    "1/0",
    "\x00",
    "\ud800",
    "\ufeff",
    "\r\n",
    "\r",
    "\n",
    "\t",
    ",",
    ";",
    '"',
    "=1+1",
    "@SUM(A1)",
    "+1",
    "-cmd|' /C calc'!A0",
    "#",
    "{",
    "}",
    "[",
    "]",
    ":",
    "null",
    "true",
    '"$float"',
    "G1",
    "G2",
    "X",
    "Y",
    "Z",
    "E",
    "F",
    "I",
    "J",
    "M83",
    "G91",
    ";x",
    "(",
    ")",
    "axis,kind,nominal_mm,measured_mm",
    "x,outside,10,10.1",
    "time,x",
    "0.001",
    "9" * 400,
    "a" * 300,
    "\u202e",
    "😀",
    " ",
    "{steps:2}",
    "M92 X{a:3}",
)
TEXT = st.one_of(st.text(max_size=60), st.lists(st.sampled_from(PIECES), max_size=30).map("".join))
BYTES = st.one_of(st.binary(max_size=200), TEXT.map(lambda text: text.encode("utf-8", "surrogatepass")))
COLUMNS = [column for table in TABLES for column in table.columns]
JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=6), inner, max_size=4),
    max_leaves=12,
)

READERS = {
    "length": (TEXT, length_from_text),
    "kind": (TEXT, kind_from_text),
    "gears": (TEXT, gears_from_text),
    "own parts": (TEXT, parts_from_text),
    "setting lines": (TEXT, lines_of_template),
    "command": (TEXT, command_from_line),
    "log": (TEXT, read_log),
    "readings": (BYTES, lambda content: readings_from_bytes(content, list(FeatureKind))),
    "toolpath words": (BYTES, read_words),
    "toolpath": (BYTES, read_path),
    "place": (TEXT, place_of),
    "drive": (st.dictionaries(st.sampled_from(("kind", "teeth", "pitch_mm", "gears", "x")), JSON), drive_from_parts),
}


@pytest.mark.parametrize("name", READERS)
def test_read_or_refused_in_words(name):
    texts, reader = READERS[name]

    @examples
    @given(texts)
    def run(text):
        try:
            reader(text)
        except (InputError, StoreError) as refusal:
            assert len(refusal.message) > 10

    run()


@examples
@given(st.sampled_from(COLUMNS), TEXT, JSON)
def test_cells_and_json_values_are_of_their_kind_or_a_value_error(column, text, plain):
    """`ValueError` is what the import gathers, with the row it is in."""
    for value_from, found in ((value_from_cell, text), (value_from_plain, plain)):
        try:
            value_from(column, found)
        except ValueError as error:
            assert len(str(error)) > 10


@pytest.mark.parametrize("column", COLUMNS, ids=str)
def test_a_number_larger_than_any_is_refused_in_every_column(column):
    """JSON and Python know whole numbers without end; what calculates does not."""
    largest = 10**400
    for plain in (largest, {"a": [1, {"b": largest}]}, [{"a": largest}]):
        with pytest.raises(ValueError, match=column.name):
            value_from_plain(column, plain)


@pytest.mark.parametrize("column", [column for column in COLUMNS if kind_of(column) is sqlalchemy.JSON], ids=str)
def test_groups_too_deep_to_be_written_again_are_refused(column):
    plain = deep = {"a": 1.5}
    for _ in range(DEEPEST):
        deep = {"a": [deep]}
    plain = [plain] if column.name in ("verdict", "minds") else plain
    deep = [deep] if column.name in ("verdict", "minds") else deep
    assert value_from_plain(column, plain) is not None
    with pytest.raises(ValueError, match=column.name):
        value_from_plain(column, deep)


@examples
@given(TEXT)
def test_json_is_read_or_a_value_error(text):
    try:
        value_from_json(text)
    except ValueError:
        return


@pytest.mark.parametrize(
    "text",
    [
        "[" * 200_000,
        '{"a":' * 100_000,
        '{"a":1,"a":2}',
        '{"$float":[]}',
        '{"$float":"x"}',
        '{"$float":' + "9" * 400 + "}",
        "1" * 5000,
        "\ud800",
        "",
    ],
    ids=lambda text: text[:12],
)
def test_hostile_json_is_a_value_error(text):
    with pytest.raises(ValueError, match=r"too deep|twice|tag|convert|limit|Expecting"):
        value_from_json(text)


@pytest.mark.parametrize(
    "content",
    [
        b"\xff\xfe{",
        bytes(range(256)) * 99,
        b"[" * 200_000,
        b'{"program":"slipgauge","program":"x"}',
        b'{"a":' + b"1" * 5000 + b"}",
        b'{"$float":[]}',
        b'{"$float":' + b"9" * 400 + b"}",
        "{}".encode("utf-16"),
        b"{}\0",
        b"NaN",
        b"1e999",
        b'{"program":"slipgauge","tables":"9999","rows":{}}',
        b"",
    ],
    ids=lambda content: repr(content[:14]),
)
def test_a_hostile_export_is_refused_in_words(tmp_path, content):
    path = tmp_path / "export.json"
    path.write_bytes(content)
    with pytest.raises(InputError, match=r"export\.json") as caught:
        read_export(path)
    assert caught.value.field == "file"


@examples
@given(BYTES)
def test_what_waits_on_this_computer_may_hold_anything(tmp_path_factory, content):
    folder = tmp_path_factory.mktemp("spool")
    (folder / "unsent").mkdir(exist_ok=True)
    for inside in (folder, *folder.iterdir()):
        if inside.is_dir():
            (inside / "x.json").write_bytes(content)
    assert Spool("shop", folder).waiting() == ()


@examples
@given(TEXT)
def test_no_cell_of_a_report_is_run(text):
    cell = harmless_cell(text)
    assert cell in (text, "'" + text)
    assert not is_formula(cell) or cell.startswith("'") or cell.strip("+-").replace(",", ".").replace(".", "").isdigit()


def test_numbers_stay_numbers_and_formulas_become_text():
    assert [harmless_cell(text) for text in ("+0.040", "-3,5", "12", "x", "=1+1", "@A1", " =1", "\t=1", "＝1")] == [
        "+0.040",
        "-3,5",
        "12",
        "x",
        "'=1+1",
        "'@A1",
        "' =1",
        "'\t=1",
        "'＝1",
    ]


def test_json_of_an_export_is_plain_json():
    assert json.loads('{"a":1}') == value_from_json('{"a":1}')
