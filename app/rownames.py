"""The names of rows and gauges as a person reads and types them."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from app.words import shown
from core.measuring.rownames import row_name, row_words


def shown_name(name: object) -> str:
    """Return the name of a row in the language of the window; any other text as it is."""
    return shown(row_words(str(name or "")))


def typed_name(text: str) -> str:
    """Return the name under which what was typed is kept."""
    return row_name(text, _translated)


def _translated(template: str) -> str:
    return QCoreApplication.translate("", template)
