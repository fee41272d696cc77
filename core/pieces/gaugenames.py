"""What the gauges of the test pieces are called, in the language of the person.

A reading is kept under the English name of its gauge, in any language: by it the readings of several trials, the
drawing of the piece and a prediction find one another. `gauge_words` says it in words that can be translated; a name
that a person typed passes unchanged. `gauge_name` goes the way back, for what is typed or pasted.
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
_MOST_KEPT = 1024  # names: more than the table of any trial has


@lru_cache(maxsize=_MOST_KEPT)
def gauge_words(name: str) -> str:
    """Return the name of a gauge as words; any other text as it is."""
    return _found(name, str) or name


def gauge_name(text: str, translated: Callable[[str], str]) -> str:
    """Return the name under which a reading is kept that a person calls by this text.

    Args:
        text: as typed.
        translated: a template in the language in which it is typed.
    """
    return str(_found(text, translated) or text)


def _found(text: str, translated: Callable[[str], str]) -> Words | None:
    for gauge in _GAUGES:
        if match := _pattern(translated(gauge.template)).fullmatch(text.replace("–", "-")):
            return Words(gauge.template, match.groupdict())
    return None


@lru_cache(maxsize=_MOST_KEPT)
def _pattern(template: str) -> re.Pattern[str]:
    """Return what a template matches once it is filled in: numbers, and axes."""
    marked = re.escape(template.replace("–", "-"))
    return re.compile(re.sub(r"\\\{(\w+)\\\}", lambda field: f"(?P<{field[1]}>{_kind(field[1])})", marked))


def _kind(field: str) -> str:
    return "xy|x|y|z" if field == "axis" else r"\d+"
