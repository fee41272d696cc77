import copy
import pickle

import pytest

from core.words import Words, tr


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
