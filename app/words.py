"""Core's sentences in the language of the window, numbers in them with the decimal mark of the locale."""

from __future__ import annotations

import re
from pathlib import PurePath

from PySide6.QtCore import QCoreApplication, QLocale

from app.units import hold, inch_sentence
from core.words import Words, tr

_POINT = "\ue000"  # stands in a name for its points, which are no decimal marks
_UNITS = (tr("steps/mm"), tr("turns"), tr("times"), tr("of 4"))
_UNIT_WORDS = re.compile(rf"(?<=\d )(?:{'|'.join(_UNITS)})(?!\w)")
_CELL = re.compile(
    r"[+\-−±]?\d+(?:\.\d+)?(?: ± (?:\d+(?:\.\d+)?|\?))?"
    r"(?: (?:[µcdkm]?m[²³]?|[km]?g|%|°C?|rad|[hKNs]|k?Hz|min|steps|turns|times|of 4)(?!\w)\S*)?"
)
_DECIMAL = re.compile(r"(?<![\d.])(\d+)\.(\d+)(?![\d.]*\.\d)(?!\d)")


class Said(str):
    """A sentence of ours, so that lengths in it may be shown in another unit; any other text is a name."""

    __slots__ = ()


def shown(sentence: str) -> str:
    """Translate a sentence of the core by its template and fill in its values; any other text passes unchanged."""
    if not isinstance(sentence, Words) or not sentence.template:
        return sentence
    template = QCoreApplication.translate("", sentence.template)
    values = {name: _value(value) for name, value in sentence.values.items()}
    return Said(local_numbers(template.format(**values)).replace(_POINT, "."))


def in_inch(text: str) -> str:
    """Return a text with its lengths in inch: a sentence of ours, or a number with its unit; a name stays."""
    says = shown(text)
    return inch_sentence(says) if isinstance(says, Said) or _is_number(says) else says


def _value(value: object) -> object:
    """Return what fills a template: a sentence translated, a number as it is, the points and lengths of a name held."""
    if isinstance(value, Words | Said):
        return shown(value)
    if isinstance(value, PurePath):
        value = str(value)
    return hold(value).replace(".", _POINT) if isinstance(value, str) and not _is_number(value) else value


def _is_number(text: str) -> bool:
    return text[:1].isdigit() or text[:1] in ("+", "-", "−", "±") or " ± " in text


def local_numbers(text: str) -> str:
    """Give the numbers in a sentence the decimal mark of the locale; what has two points or more is no number."""
    return unit_words(_DECIMAL.sub(rf"\1{QLocale().decimalPoint()}\2", text))


def local_cell(text: str) -> str:
    """Return a cell of a table, its number with the decimal mark of the locale; what is more than a number stays."""
    says = shown(text)
    return local_numbers(says) if _CELL.fullmatch(says) else says


def unit_words(text: str) -> str:
    """Translate the units after numbers that are words; all others are the same in every language."""
    return _UNIT_WORDS.sub(lambda unit: QCoreApplication.translate("", unit[0]), text)
