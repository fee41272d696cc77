"""Core's sentences in the language of the window."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from core.words import Words


def shown(sentence: str) -> str:
    """Translate a sentence of the core by its template and fill in its values; any other text passes unchanged."""
    if not isinstance(sentence, Words):
        return sentence
    template = QCoreApplication.translate("", sentence.template)
    return template.format(**{name: shown(value) if isinstance(value, str) else value
                              for name, value in sentence.values.items()})
