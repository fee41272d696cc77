"""Core's sentences in the language of the window, numbers in them with the decimal mark of the locale."""

from __future__ import annotations

import re

from PySide6.QtCore import QCoreApplication, QLocale

from core.words import Words


def shown(sentence: str) -> str:
    """Translate a sentence of the core by its template and fill in its values; any other text passes unchanged."""
    if not isinstance(sentence, Words):
        return sentence
    template = QCoreApplication.translate("", sentence.template)
    values = {name: shown(value) if isinstance(value, str) else value for name, value in sentence.values.items()}
    return local_numbers(template.format(**values))


def local_numbers(text: str) -> str:
    """Give the numbers in a sentence the decimal mark of the locale."""
    return re.sub(r"(?<=\d)\.(?=\d)", QLocale().decimalPoint(), text)
