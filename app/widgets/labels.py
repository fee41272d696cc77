"""Labels that stand everywhere: the heading of a page or of a part of one, and quiet words that explain it."""

from __future__ import annotations

from PySide6.QtWidgets import QLabel, QWidget


def heading(text: str, of: QWidget | None = None) -> QLabel:
    """Return a label that looks like a heading; what it is the heading `of` is called so by a screen reader."""
    label = QLabel(text)
    label.setObjectName("heading")
    if of is not None:
        of.setAccessibleName(text)
    return label


def quiet(text: str) -> QLabel:
    """Return words in a quiet colour, as many lines of them as they need."""
    label = QLabel(text)
    label.setObjectName("quiet")
    label.setWordWrap(True)
    return label
