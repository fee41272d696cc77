"""The list that drops down from a field, whole: Qt forgets the frame of its view, and cuts the last line."""

from __future__ import annotations

from typing import Any

from PySide6.QtWidgets import QComboBox

_FEW = 3  # lines; where more are missing the screen has no room for them, and arrows to scroll by are right


def show_whole(box: QComboBox) -> None:
    """Make the list that is open as high as its lines, its frame, and the gaps that Qt leaves about them."""
    view, frame = box.view(), box.view().window()
    layout: Any = frame.layout()
    items = [layout.itemAt(place) for place in range(layout.count())]
    gaps = sum(item.sizeHint().height() for item in items if item.widget() is None)
    lines = sum(view.sizeHintForRow(row) for row in range(box.count()))
    missing = lines + 2 * view.frameWidth() + gaps - frame.height()
    if 0 < missing <= _FEW * view.sizeHintForRow(0):
        frame.resize(frame.width(), frame.height() + missing)
        for item in items:
            if item.widget() not in (None, view):  # an arrow to scroll by, and nothing is left to scroll
                item.widget().hide()
