"""Sentences that the core says and the window may translate.

The core knows no Qt, yet its sentences reach the person. `tr` keeps the English template beside the filled-in text, so
that the window can look the template up in its translation and fill in the same values.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping
from string import Formatter
from typing import Any

_FORM = re.compile(r"[+-]?\d?(\.\d\d?)?[defg%]?")  # of a number in a sentence
_SHOWN = 60  # letters of a value in a sentence
_LONGEST = 10_000  # letters of a sentence that is read: each value may hold the next one more than once
SAID = "said"  # where a kept advice has its sentences with their templates, beside their English text


class Words(str):
    """An English sentence that remembers the template and the values it was made from."""

    template: str
    values: dict[str, Any]

    def __new__(cls, template: str, values: dict[str, Any]) -> Words:
        """Fill the values into the template."""
        words = super().__new__(cls, template.format(**values))
        words.template = template
        words.values = values
        return words

    def __reduce__(self) -> tuple[Any, ...]:
        """Copy and pickle by template and values."""
        return Words, (self.template, self.values)


def tr(template: str, **values: Any) -> Words:
    """Return a translatable sentence; Qt's text extractor finds the template by the name of this function."""
    return Words(template, values)


def listed(text: str) -> Words:
    """Return a text of a data file as a sentence; `tests.translate` takes those that are shown from the files."""
    return Words(text.replace("{", "{{").replace("}", "}}"), {})


def in_short(value: object) -> str:
    """Return a value of another hand as it can stand in a sentence: printable, and not long."""
    text = str(value)
    plain = "".join(letter if letter.isprintable() else "?" for letter in text[:_SHOWN])
    return plain if len(text) <= _SHOWN else f"{plain}…"


NOTHING = Words("", {})  # said where there is nothing to say


def side_by_side(texts: Iterable[str], between: str = " ") -> Words:
    """Return sentences after one another, each once, as one that can be translated piece by piece."""
    values = {f"says_{number}": text for number, text in enumerate(dict.fromkeys(texts))}
    return Words(between.join(f"{{{name}}}" for name in values), values)


def as_plain(text: str) -> Any:
    """Return a sentence as plain JSON values from which `from_plain` makes it again; a text of no template as it is."""
    if not isinstance(text, Words):
        return str(text)
    values = {name: _plain_value(value) for name, value in text.values.items()}
    if any(value is None for value in values.values()):  # no JSON value: its text alone can be stored
        return str(text)
    return {"template": text.template, "values": values}


def _plain_value(value: Any) -> Any:
    if isinstance(value, str):
        return as_plain(value)
    value = value.item() if hasattr(value, "item") else value  # a number of numpy
    fits = isinstance(value, int) or (isinstance(value, float) and math.isfinite(value))
    return value if fits else None


def from_plain(plain: Any) -> str:
    """Return what `as_plain` was given.

    Raises:
        ValueError: these are no values that it gives.
    """
    if not isinstance(plain, Mapping):
        return str(plain)
    try:
        values = {
            name: value if isinstance(value, int | float) else from_plain(value)
            for name, value in plain["values"].items()
        }
        return Words(_asked(plain["template"], values), values)
    except (AttributeError, IndexError, KeyError, OverflowError, TypeError) as error:
        raise ValueError("no sentence") from error


def _asked(template: str, values: Mapping[str, Any]) -> str:
    """Return a template that was read, or raise ValueError: one of another hand may ask for a gigabyte of letters."""
    length = len(template)
    for _, name, form, conversion in Formatter().parse(template):
        if name is None:
            continue
        if not (name.isidentifier() and _FORM.fullmatch(form or "") and conversion is None):
            raise ValueError(f"no place for a value: {name}")
        length += len(values[name]) if isinstance(values[name], str) else 0
    if length > _LONGEST:
        raise ValueError("a sentence without end")
    return template


def kept_words(advice: Mapping[str, Any], name: str) -> str:
    """Return a sentence of a kept advice, `action` or another, to be shown in any language."""
    try:
        return from_plain(advice[SAID][name])
    except (KeyError, TypeError, ValueError):  # kept by an older version, or changed by hand
        return str(advice.get(name, ""))
