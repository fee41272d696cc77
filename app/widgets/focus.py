"""Where the keyboard goes when a part of the window comes into view."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget


def focus_inside(part: QWidget) -> None:
    """Put the keyboard on the focus proxy of a part, else on the first field in it that takes the Tab key."""
    if part.focusProxy() is not None:
        part.setFocus(Qt.FocusReason.OtherFocusReason)
        return
    field = part.nextInFocusChain()
    while field is not None and part.isAncestorOf(field):
        if field.isVisible() and field.isEnabled() and field.focusPolicy() & Qt.FocusPolicy.TabFocus:
            field.setFocus(Qt.FocusReason.TabFocusReason)
            return
        field = field.nextInFocusChain()
