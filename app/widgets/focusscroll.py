"""A part of the window that scrolls, and brings the field with the keyboard into view."""

from __future__ import annotations

from PySide6.QtCore import QObject, QPoint
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QScrollArea, QWidget

from app.faults import told_at_once


class FocusScroll(QScrollArea):
    """Follows the keyboard from its first sight on; `margin_px` stay between the field and the edge, if that can be.

    What can be seen from the top is seen from there.
    """

    margin_px = 50  # as Qt has it

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._follows = False

    @told_at_once
    def showEvent(self, event: QShowEvent) -> None:
        """From now on follow the keyboard."""
        super().showEvent(event)
        window = self.window().windowHandle()
        if window is not None and not self._follows:
            self._follows = True
            window.focusObjectChanged.connect(self._show_focus)

    def _show_focus(self, focus: QObject | None) -> None:
        inside = self.widget()
        if isinstance(focus, QWidget) and inside is not None and inside.isAncestorOf(focus):
            self.ensureWidgetVisible(focus, self.margin_px, self.margin_px)
            if focus.mapTo(inside, QPoint(0, focus.height())).y() <= self.viewport().height():
                self.verticalScrollBar().setValue(0)  # the first row is worth more than room below the field
