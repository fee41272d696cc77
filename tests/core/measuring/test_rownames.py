"""The names of gauges and rows in words and back again; what a person named stays as it is."""

from __future__ import annotations

import pytest

from core.measuring.rownames import row_name, row_words
from core.pieces.bounds import Bounds
from core.pieces.catalogue import plan_set, set_names
from core.words import Words

ROOMY = Bounds(bed_x_mm=330.0, bed_y_mm=330.0, caliper_mm=300.0)  # for the half-combs
NAMES = sorted({gauge.name for key in set_names() for gauge in plan_set(key, ROOMY).gauges})
GERMAN = {
    "outer {first}-{second} {axis}": "außen {first}–{second} {axis}", "overall {axis}": "gesamt {axis}",
    "{letter}, {what}, judge {judge}": "{letter}, {what}, Bewerter {judge}", "Middle": "Mitte",
    "strings": "Fäden", "snap force {unit}": "Bruchkraft {unit}",
}  # fmt: skip


def in_german(template: str) -> str:
    return GERMAN.get(template, template.replace("left", "links").replace("right", "rechts"))


@pytest.mark.parametrize("name", NAMES)
def test_every_gauge_of_every_piece_has_its_words(name):
    words = row_words(name)
    assert words == name
    assert isinstance(words, Words) and words.values
    assert row_name(in_german(words.template).format(**words.values), in_german) == name


@pytest.mark.parametrize("name", ["Middle", "Centre at 5 min", "P12", "place 3, at 90°", "A2, judge 1", "608 ring"])
def test_every_planned_row_has_its_words(name):
    assert row_words(name) == name and isinstance(row_words(name), Words)


@pytest.mark.parametrize(
    ("name", "what"),
    [("B, strings, judge 2", "strings"), ("B, snap force N", "snap force N"), ("A half speed, judge 1", "half speed")],
)
def test_a_part_of_a_name_is_translated_by_itself(name, what):
    words = row_words(name)
    assert words == name and isinstance(words, Words)
    assert isinstance(words.values["what"], Words) and words.values["what"] == what


def test_what_a_shop_scores_besides_keeps_its_name():
    words = row_words("B, warp–edge, judge 2")
    assert words == "B, warp–edge, judge 2" and isinstance(words, Words)
    assert type(words.values["what"]) is str


@pytest.mark.parametrize("name", ["", "my slot", "outer 1-7", "outer 1-7 x again", "tooth x", "middle", "Outer 1-7 x"])
def test_any_other_text_passes_unchanged(name):
    assert row_words(name) == name and not isinstance(row_words(name), Words)
    assert row_name(name, in_german) == name


@pytest.mark.parametrize(
    ("typed", "name"),
    [("außen 2–6 y", "outer 2-6 y"), ("außen 2-6 y", "outer 2-6 y"), ("Mitte", "Middle"),
     ("C, Fäden, Bewerter 1", "C, strings, judge 1"), ("C, Verzug, Bewerter 1", "C, Verzug, judge 1")],
)  # fmt: skip
def test_a_name_typed_in_another_language_is_that_of_the_row(typed, name):
    assert row_name(typed, in_german) == name
    assert row_name(typed, str) == typed
