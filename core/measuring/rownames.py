"""What the rows of a new trial and the gauges of the test pieces are called, in the language of the person.

A reading is kept under the English name of its row, in any language: by it the readings of several trials, the drawing
of a piece and a prediction find one another. `row_words` says it in words that can be translated; a name that a person
typed passes unchanged. `row_name` goes the way back, for what is typed or pasted.

Whatever a page plans or a piece calls its gauges matches one of these names; `tests/app/test_plannednames.py` holds it.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import lru_cache

from core.words import Words, tr

_GAUGES = (
    tr("outer {first}-{second} {axis}", first="1", second="7", axis="x"),
    tr("inner {first}-{second} {axis}", first="1", second="7", axis="x"),
    tr("tooth {number} {axis}", number="4", axis="x"),
    tr("overall {axis}", axis="x"),
    tr("window left {axis}", axis="x"),
    tr("window right {axis}", axis="x"),
    tr("tread {number} {axis}", number="1", axis="z"),
    tr("hole {number} {axis}", number="1", axis="x"),
    tr("peg {number} {axis}", number="1", axis="x"),
    tr("outside {number} {axis}", number="1", axis="x"),
    tr("inside {number} {axis}", number="1", axis="x"),
    tr("low {number} {axis}", number="1", axis="x"),
    tr("high {number} {axis}", number="1", axis="x"),
    tr("front {number}", number="1"),
    tr("right {number}", number="1"),
    tr("back {number}", number="1"),
    tr("left {number}", number="1"),
)
_PLACES = (
    tr("Left"), tr("Middle"), tr("Right"), tr("Front"), tr("Back"), tr("Low"), tr("High"),
    tr("Front left"), tr("Front right"), tr("Back left"), tr("Back right"),
    tr("Along"), tr("Sideways"),
    tr("Centre"), tr("Centre at {minutes} min", minutes="5"),
    tr("P{number}", number="1"), tr("Place {number}", number="1"),
    tr("Run {number}", number="1"), tr("Step {number}", number="1"),
    tr("Square as it stands"), tr("Square turned over"),
    tr("Diagonal {number}, {what}", number="1", what="outside"),
)  # fmt: skip
_PRINTED = (
    tr("place {number}, largest", number="1"), tr("place {number}, at 90°", number="1"),
    tr("sample {number}, in air", number="1"), tr("sample {number}, in water", number="1"),
    tr("piece {number}", number="1"), tr("strand {number}", number="1"),
    tr("mass of repeat {number}", number="1"), tr("rest of repeat {number}", number="1"),
    tr("Pad {letter}, judge {judge}", letter="A", judge="1"),
    tr("{letter}, judge {judge}", letter="A", judge="1"),
    tr("{letter}, {what}, judge {judge}", letter="A", what="strings", judge="1"),
    tr("{letter} {what}, judge {judge}", letter="A", what="usual", judge="1"),
    tr("{letter}, {what}", letter="A", what="steady"),
)  # fmt: skip
_CHECKED = (
    tr("zero"), tr("zero again"), tr("re-seated"), tr("2nd person"), tr("own reference"), tr("depth rod"),
    tr("{size} ring", size="608"), tr("{size} bore", size="608"),
    tr("block {size}", size="25"), tr("block {size} at the tips", size="25"),
    tr("mass {size} g", size="10"), tr("water with ice"), tr("boiling water"),
)  # fmt: skip
_NAMES = (*_GAUGES, *_PLACES, *_PRINTED, *_CHECKED)
_PARTS = (
    tr("outside"), tr("inside"), tr("line"),
    tr("cleanness"), tr("strings"), tr("bond"), tr("overhang"), tr("snap force"), tr("snap force {unit}", unit="N"),
    tr("after faster"), tr("steady"), tr("after slower"),
    tr("usual"), tr("half speed"), tr("half layers"), tr("two copies"),
)  # fmt: skip
_KINDS = {"axis": "xy|x|y|z", "letter": r"[A-Z]\d*", "what": r"[^,]+", "unit": r"\S+"}
_MOST_KEPT = 1024  # names: more than the table of any trial has


@lru_cache(maxsize=_MOST_KEPT)
def row_words(name: str) -> str:
    """Return the name of a row as words; any other text as it is."""
    return _found(name, _NAMES, str) or name


def row_name(text: str, translated: Callable[[str], str]) -> str:
    """Return the name under which a reading is kept that a person calls by this text.

    Args:
        text: as typed.
        translated: a template in the language in which it is typed.
    """
    return str(_found(text, _NAMES, translated) or text)


def _found(text: str, names: tuple[Words, ...], translated: Callable[[str], str]) -> Words | None:
    plain = text.replace("–", "-")
    for name in names:
        if match := _pattern(translated(name.template)).fullmatch(plain):
            values: dict[str, str] = match.groupdict()
            if "what" in values:
                what = text[slice(*match.span("what"))]  # a name that a shop gave stays as it is
                values["what"] = _found(what, _PARTS, translated) or what
            return Words(name.template, values)
    return None


@lru_cache(maxsize=_MOST_KEPT)
def _pattern(template: str) -> re.Pattern[str]:
    """Return what a template matches once it is filled in."""
    marked = re.escape(template.replace("–", "-"))
    return re.compile(re.sub(r"\\\{(\w+)\\\}", lambda field: f"(?P<{field[1]}>{_kind(field[1])})", marked))


def _kind(field: str) -> str:
    return _KINDS.get(field, r"\d+")
