import copy
import json
import math
import pickle

import numpy as np
import pytest

from core.words import Words, as_plain, from_plain, listed, side_by_side, tr


def test_a_sentence_is_its_text_and_remembers_its_template():
    words = tr("Row {row}: {length} mm is too long.", row=4, length="12,4")
    assert words == "Row 4: 12,4 mm is too long."
    assert isinstance(words, str) and words.template == "Row {row}: {length} mm is too long."
    assert words.values == {"row": 4, "length": "12,4"}


def test_what_a_person_typed_is_never_a_template():
    assert tr("“{text}” is not a length.", text="{0} {text}") == "“{0} {text}” is not a length."


def test_a_sentence_may_hold_another():
    inner = tr("the window")
    assert tr("Measure {what}.", what=inner).values["what"].template == "the window"


@pytest.mark.parametrize("duplicate", [copy.copy, copy.deepcopy, lambda words: pickle.loads(pickle.dumps(words))])
def test_copies_remember_too(duplicate):
    twin = duplicate(tr("Row {row}", row=2))
    assert isinstance(twin, Words) and (twin, twin.template, twin.values) == ("Row 2", "Row {row}", {"row": 2})


def test_a_text_of_a_data_file_stands_for_itself():
    assert listed("one data sheet {A}") == "one data sheet {A}"
    assert listed("one data sheet").template == "one data sheet"


def test_a_sentence_is_kept_as_json_and_comes_back_with_its_template():
    inner = tr("the {name}", name="window")
    words = tr("Row {row}: {length:.2f} mm of {what}, {text}.", row=4, length=np.float64(12.4), what=inner, text="{x}")
    back = from_plain(json.loads(json.dumps(as_plain(words))))
    assert isinstance(back, Words) and (back, back.template) == (words, words.template)
    assert back.values["what"].template == "the {name}"
    assert from_plain(as_plain("as typed")) == "as typed"


@pytest.mark.parametrize("value", [math.inf, math.nan, None, [1.0]])
def test_what_json_cannot_hold_is_kept_as_its_text(value):
    assert as_plain(tr("k {k}", k=value)) == f"k {value}"


@pytest.mark.parametrize(
    "plain",
    [{}, {"template": "{a}", "values": {}}, {"template": "{a.b}", "values": {"a": 1}}, {"template": 1, "values": {}},
     {"template": "{a:x}", "values": {"a": "text"}}, {"template": "{", "values": {}}, {"template": "", "values": []},
     {"template": "{a:999999999}", "values": {"a": 1}}, {"template": "{a!r}", "values": {"a": 1}},
     {"template": "{a[0]}", "values": {"a": "text"}}, {"template": "{a:{a}}", "values": {"a": 9}},
     {"template": "{a:c}", "values": {"a": 2_000_000_000}}, {"template": "{a}" * 20, "values": {"a": "x" * 1000}},
     {"template": "{a:f}", "values": {"a": 10**400}}],
)
def test_what_is_no_kept_sentence_is_refused(plain):
    with pytest.raises(ValueError):
        from_plain(plain)


def test_sentences_after_one_another_are_said_once_each():
    words = side_by_side([tr("Leave {it}.", it="it"), "As typed.", tr("Leave {it}.", it="it")])
    assert words == "Leave it. As typed."
    assert side_by_side(["a", "b"], "; ") == "a; b"
    assert [getattr(value, "template", None) for value in words.values.values()] == ["Leave {it}.", None]
