"""The names of gauges in words: every one of every piece, and back again; what a person named stays as it is."""

from __future__ import annotations

import pytest

from core.pieces.bounds import Bounds
from core.pieces.catalogue import plan_set, set_names
from core.pieces.gaugenames import gauge_name, gauge_words
from core.words import Words

ROOMY = Bounds(bed_x_mm=330.0, bed_y_mm=330.0, caliper_mm=300.0)  # for the half-combs
NAMES = sorted({gauge.name for key in set_names() for gauge in plan_set(key, ROOMY).gauges})
GERMAN = {"outer {first}-{second} {axis}": "außen {first}–{second} {axis}", "overall {axis}": "gesamt {axis}"}


def in_german(template: str) -> str:
    return GERMAN.get(template, template.replace("left", "links").replace("right", "rechts"))


@pytest.mark.parametrize("name", NAMES)
def test_every_gauge_of_every_piece_has_its_words(name):
    words = gauge_words(name)
    assert words == name
    assert isinstance(words, Words) and words.values
    assert gauge_name(in_german(words.template).format(**words.values), in_german) == name


@pytest.mark.parametrize("name", ["", "my slot", "outer 1-7", "outer 1-7 x again", "tooth x", "P1", "Outer 1-7 x"])
def test_any_other_text_passes_unchanged(name):
    assert gauge_words(name) == name and not isinstance(gauge_words(name), Words)
    assert gauge_name(name, in_german) == name


@pytest.mark.parametrize("typed", ["außen 2–6 y", "außen 2-6 y"])
def test_a_name_typed_in_another_language_is_that_of_the_gauge(typed):
    assert gauge_name(typed, in_german) == "outer 2-6 y"
    assert gauge_name(typed, str) == typed
