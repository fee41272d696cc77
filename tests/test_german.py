"""The German of the window is complete, loads, and says the same: no sentence missing, no value lost."""

from __future__ import annotations

import json
import re
import shutil
import string

import pytest
from PySide6.QtCore import QTranslator

from tests.translate.__main__ import TEXTS, extract, messages

MESSAGES = messages(TEXTS)
MNEMONIC = re.compile(r"(?<!&)&(?=\w)")


def fields(text: str) -> list[tuple[str, str, str]]:
    """The places of a template that are filled in: name, format and conversion."""
    parts = string.Formatter().parse(text)
    return sorted((name, spec or "", conversion or "") for _, name, spec, conversion in parts if name is not None)


def test_the_file_has_every_sentence_of_the_program_and_no_other(tmp_path):
    anew = tmp_path / TEXTS.name
    shutil.copy(TEXTS, anew)
    extract(anew)
    said = {message[:2] for message in messages(anew)}
    stored = {message[:2] for message in MESSAGES}
    hint = "run: python -m tests.translate"
    assert sorted(said - stored) == [], hint
    assert sorted(stored - said) == [], hint


def test_every_sentence_has_its_german():
    assert [english for _, english, german in MESSAGES if not german] == []


def test_the_german_takes_the_same_values_in():
    wrong = [(english, german) for _, english, german in MESSAGES if fields(english) != fields(german)]
    assert wrong == []


def test_the_german_has_a_letter_to_press_where_the_english_has_one():
    wrong = [pair for _, *pair in MESSAGES if len({len(MNEMONIC.findall(text)) for text in pair}) > 1]
    assert wrong == []


def test_the_window_loads_what_the_file_says():
    translator = QTranslator()
    assert translator.load(str(TEXTS.with_suffix(".qm")))
    stale = [english for context, english, german in MESSAGES if translator.translate(context, english) != german]
    assert stale == [], "run: python -m tests.translate"


@pytest.mark.parametrize("word", ["Maschine", "Charge", "Messwert", "Umkehrspanne", "Wandüberstand"])
def test_the_trade_words_are_used(word):
    assert any(word in german for *_, german in MESSAGES)


HELP = TEXTS.parents[1] / "help"
WRITTEN = [path for path in sorted(HELP.rglob("*.md")) if HELP / "de" not in path.parents]


def bones(text: str) -> list[str]:
    """What a text is built of: how each line begins, where that carries meaning, and the count of its openers."""
    lines = [re.match(r"#+ |- |\d+\. |    (?=\S)|\|", line) for line in text.splitlines()]
    return [line[0].strip() or "code" for line in lines if line] + ["**"] * (text.count("**") // 2)


@pytest.mark.parametrize("path", WRITTEN, ids=lambda path: str(path.relative_to(HELP)))
def test_every_help_has_its_german_built_alike(path):
    german = (HELP / "de" / path.relative_to(HELP)).read_text(encoding="utf-8")
    english = path.read_text(encoding="utf-8")
    assert bones(german) == bones(english)
    assert german.splitlines()[1:] != english.splitlines()[1:]


def test_every_label_of_a_sketch_has_its_german_or_is_the_same_in_both():
    words = json.loads((HELP / "de" / "sketches.json").read_text(encoding="utf-8"))
    drawn = [path.read_text("utf-8") for path in HELP.rglob("*.svg")]
    labels = {label for text in drawn for label in re.findall(r">([^<>]+)</text>", text)}
    labels |= {label for text in drawn for label in re.findall(r'aria-label="([^"]*)"', text)}
    assert sorted(set(words) - labels) == [], "labels that no sketch has"
    english = re.compile(r"\b(the|of|and|from|to|is|on|by|for|so|not|here)\b")
    untold = [label for label in labels - set(words) if english.search(label)]
    assert untold == []
