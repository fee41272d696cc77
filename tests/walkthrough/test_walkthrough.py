"""The walkthrough cannot go stale: its story is told on the real window, and what its text quotes stands there."""

from __future__ import annotations

import re

import pytest
from PySide6.QtGui import QImage

from tests.walkthrough.__main__ import LANGUAGES, PICTURES, picture_name, told
from tests.walkthrough.hands import SIZE
from tests.walkthrough.sight import plain
from tests.walkthrough.story import FLOW, PARTS, SMALL_CUBE_STEPS_MM, STEPS, TRAVELS, readings

HELP = PICTURES.parents[1] / "help"
WRITTEN = {"en": HELP / "walkthrough.md", "de": HELP / "de" / "walkthrough.md"}
NAMES = [step.name for step in STEPS]
MINUTES = 15
MOST_BYTES = 2_500_000
QUOTED = re.compile(r"[“„]([^“”„]+)[”“]")
READINGS = {"first_reading": ("before", 0, 1), "all_readings": ("before", 1, None), "flow": ("masses", 0, None),
            "again": ("after", 0, None)}  # fmt: skip


def sections(language: str) -> dict[str, str]:
    """The text of each step; what stands before the first belongs to it."""
    before, *parts = re.split(r"^## ", WRITTEN[language].read_text(encoding="utf-8"), flags=re.MULTILINE)
    return dict(zip(NAMES, [before + parts[0], *parts[1:]], strict=True))


def quotes(text: str) -> list[str]:
    return [plain(quote) for quote in QUOTED.findall(text)]


def stands(quote: str, read: frozenset[str]) -> bool:
    return any(quote in seen for seen in read)


def english(text: str) -> str:
    return text.replace(",", ".")


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_the_text_quotes_stands_on_the_window_at_that_step_and_a_picture_is_taken(qapp, tmp_path, language):
    """One test a language: the story is told once."""
    pictures = tmp_path / "pictures"
    read = dict(told(qapp, tmp_path, language, pictures))
    text = sections(language)
    missing = [(name, quote) for name in NAMES for quote in quotes(text[name]) if not stands(quote, read[name])]
    assert missing == []
    taken = sorted(pictures.iterdir())
    assert [path.name for path in taken] == [picture_name(n, name, language) for n, name in enumerate(NAMES, start=1)]
    assert {QImage(str(path)).size().toTuple() for path in taken} == {SIZE}
    leave_it = quotes(text["flow"])[-2]  # a quote would be missed: this one comes with the masses
    assert not stands(leave_it, read["all_readings"]) and stands(leave_it, read["flow"])
    assert not any(stands(plain(text[name])[:40], read[name]) for name in NAMES)  # the help itself is not looked at


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_readings_in_the_text_are_those_of_the_story(language):
    for name, text in sections(language).items():
        typed = english(" ".join(re.findall(r"^    (\S.*)$", text, flags=re.MULTILINE))).split()
        trial, first, last = READINGS.get(name, ("before", 0, 0))
        assert typed == list(readings()[trial][first:last]), name


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_else_is_typed_in_the_story_stands_in_the_text(language):
    text = {name: english(part) for name, part in sections(language).items()}
    own = [*TRAVELS.values(), *PARTS.values()]
    for name, typed in (("drive", [SMALL_CUBE_STEPS_MM]), ("flow", FLOW.values()), ("own", own)):
        for number in typed:
            assert re.search(rf"(?<![\d.]){re.escape(number)}(?![\d.])", text[name]), (name, number)


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_step_shows_its_picture_and_none_is_left_over(language):
    for number, (name, text) in enumerate(sections(language).items(), start=1):
        picture = f"../pictures/walkthrough/{picture_name(number, name, language)}"
        assert re.findall(r"\(([^)]*\.png)\)", text) == [picture]
        assert QImage(str(HELP / picture)).size().toTuple() == SIZE
    kept = {path.name for path in PICTURES.iterdir()}
    wanted = {picture_name(n, name, tongue) for tongue in LANGUAGES for n, name in enumerate(NAMES, start=1)}
    assert kept == wanted, "run: python -m tests.walkthrough, and with --language de"


def test_the_pictures_are_small():
    assert sum(path.stat().st_size for path in PICTURES.iterdir()) < MOST_BYTES


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_minutes_of_the_steps_are_those_promised(language):
    minutes = re.findall(r"^\d+ .*\((\d+) [Mm]inuten?s?\)$|^## \d+ .*\((\d+) [Mm]inuten?s?\)$",
                         WRITTEN[language].read_text("utf-8"), flags=re.MULTILINE)  # fmt: skip
    assert (len(minutes), sum(int(a or b) for a, b in minutes)) == (len(STEPS), MINUTES)


def test_the_cautions_are_given_where_something_is_hot_or_moves():
    for language, word in (("en", "**Caution.**"), ("de", "**Vorsicht.**")):
        text = sections(language)
        assert [name for name in NAMES if word in text[name]] == ["drive", "all_readings", "flow", "own"]
