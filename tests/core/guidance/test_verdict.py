"""An advice as it is kept: its sentences in English, and with their templates for another language."""

import json

import pytest

from core.guidance.verdict import Advice, Setting, with_action, without_templates
from core.words import Words, kept_words, tr

LENGTH = tr("Change it by {amount}.", amount="−0.040 mm")
ADVICE = Advice(Setting.CONTOUR_OFFSET, LENGTH, -0.04, "mm per side", tr("Walls stand proud."), tr("Steps."))


@pytest.fixture
def kept() -> dict:
    return json.loads(json.dumps(ADVICE.as_json()))


def test_a_kept_advice_says_its_sentences_by_their_templates(kept):
    action = kept_words(kept, "action")
    assert isinstance(action, Words) and (action, action.template) == (LENGTH, LENGTH.template)
    assert kept["action"] == "Change it by −0.040 mm."


def test_one_kept_by_an_older_version_says_its_text(kept):
    old = without_templates(kept)
    assert sorted(old) == ["action", "amount", "because", "do_not_touch", "setting", "unit"]
    assert (kept_words(old, "because"), kept_words(old, "nothing")) == ("Walls stand proud.", "")
    assert not isinstance(kept_words(old, "because"), Words)


@pytest.mark.parametrize("said", [None, [], {"because": {"template": "{x}", "values": {}}}])
def test_one_changed_by_hand_says_its_text(kept, said):
    assert kept_words({**kept, "said": said}, "because") == "Walls stand proud."


def test_another_text_of_what_to_do(kept):
    other = with_action(kept, "Change it by −0.0016 in.")
    assert kept_words(other, "action") == "Change it by −0.0016 in."
    assert isinstance(kept_words(other, "because"), Words)
    assert kept_words(with_action(without_templates(kept), "Other."), "action") == "Other."
