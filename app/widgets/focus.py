"""Where the keyboard goes when a part of the window comes into view."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget


def focus_inside(part: QWidget) -> None:
    """Put the keyboard on the focus proxy of a part, else on the first field that takes the Tab key.

    A proxy may be locked, as a line for readings is while a kept trial is shown; then another field near it is taken.
    """
    wanted = part
    while (proxy := wanted.focusProxy()) is not None:
        wanted = proxy
    if wanted is not part and wanted.isEnabled():
        part.setFocus(Qt.FocusReason.OtherFocusReason)
        return
    part = part.focusProxy() or part
    field = part.nextInFocusChain()
    while field is not None and part.isAncestorOf(field):
        if field.isVisible() and field.isEnabled() and field.focusPolicy() & Qt.FocusPolicy.TabFocus:
            field.setFocus(Qt.FocusReason.TabFocusReason)
            return
        field = field.nextInFocusChain()


@contextmanager
def keyboard_left(part: QWidget) -> Iterator[None]:
    """Bring the keyboard back to where it was outside of a part, if what happens meanwhile takes it there."""
    before = part.window().focusWidget()
    yield
    if before is not None and not part.isAncestorOf(before):
        before.setFocus()
