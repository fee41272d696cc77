"""One line of a program, read into its words; only words that the trade at large uses are known.

Reference: ISO 6983-1 (a word is a letter and a number, spaces are free); a comment stands after a semicolon and what
the M words mean: common practice, no source.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass

from core.errors import InputError
from core.words import tr

KNOWN: Mapping[str, str] = {
    "G0": "XYZEF", "G1": "XYZEF", "G28": "XYZ", "G90": "", "G91": "", "G92": "XYZE", "M82": "", "M83": "",
    "M104": "S", "M109": "SR", "M140": "S", "M190": "SR", "M106": "SP", "M107": "P",
}  # fmt: skip
_SPACE = re.compile(r"\s*")
_WORD = re.compile(r"([A-Z])\s*([+-]?(?:\d+\.?\d*|\.\d+))(?![\d.])")
_AXIS = re.compile(r"([XYZ])(?=\s|$)")


@dataclass(frozen=True, slots=True)
class Command:
    """A command such as `G1` with the numbers behind its letters; a bare axis of G28 has the number 0."""

    name: str
    numbers: Mapping[str, float]


def command_from_line(line: str) -> Command | None:
    """Return the command of a line, None for a blank line or a comment.

    Raises:
        InputError: field `line`, for what no machine reads, or not every machine alike.
    """
    text = line.partition(";")[0].strip().upper()
    if not text:
        return None
    words = _words(text)
    (letter, value), *rest = words
    name = f"{letter}{value:g}"
    if name not in KNOWN:
        raise InputError(
            "line", tr("{name} is not among the words written here ({known}).",
                       name=name, known=", ".join(KNOWN)))  # fmt: skip
    numbers: dict[str, float] = {}
    for letter, value in rest:
        if letter not in KNOWN[name]:
            raise InputError("line", tr("{name} takes no {letter}.", name=name, letter=letter))
        if letter in numbers:
            raise InputError("line", tr("{letter} stands there twice.", letter=letter))
        numbers[letter] = value
    return Command(name, numbers)


def _words(text: str) -> list[tuple[str, float]]:
    """Return letters with their numbers."""
    found: list[tuple[str, float]] = []
    at = 0
    while at < len(text):
        word = _WORD.match(text, at)
        axis = _AXIS.match(text, at) if found and found[0] == ("G", 28.0) else None
        if word is None and axis is None:
            raise InputError("line", tr("“{text}” is no letter with a number.", text=text[at:].split(maxsplit=1)[0]))
        value = float(word[2]) if word else 0.0
        if not math.isfinite(value):
            raise InputError("line", tr("“{text}” is no finite number.", text=text[at : at + 12]))
        found.append(((word or axis)[1], value))  # type: ignore[index]
        at = _SPACE.match(text, (word or axis).end()).end()  # type: ignore[union-attr]
    return found
