"""Labels that stand everywhere: the heading of a page or of a part of one, and quiet words that explain it."""

from __future__ import annotations

from PySide6.QtWidgets import QLabel


def heading(text: str) -> QLabel:
    """Return a label that looks like a heading."""
    label = QLabel(text)
    label.setObjectName("heading")
    return label


def quiet(text: str) -> QLabel:
    """Return words in a quiet colour, as many lines of them as they need."""
    label = QLabel(text)
    label.setObjectName("quiet")
    label.setWordWrap(True)
    return label
