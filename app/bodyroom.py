"""The middle of the window: it scrolls where a page needs more room than there is, so that nothing is cut.

That is so with large fonts, long words, and small screens; in the usual window pages fit and no bar is seen.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6 import QtCore  # QtCore.Qt is slow to make: nothing below touches it before the first paint
from PySide6.QtCore import QEvent, QObject, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QStackedWidget, QWidget

from app.faults import told_at_once
from app.widgets.focusscroll import FocusScroll

if TYPE_CHECKING:
    from PySide6.QtWidgets import QLayout

    from app.widgets.focusring import FocusRing


class BodyRoom(FocusScroll):
    """Shows a stack of pages as large as there is room, and no smaller than the page in view needs."""

    margin_px = 0

    def __init__(self, body: QStackedWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._body = body
        self._ring: FocusRing | None = None
        self.setViewport(QWidget())  # Qt's own would be painted
        self.setWidget(body)
        body.setAutoFillBackground(False)
        body.currentChanged.connect(self._fit)

    def minimumSizeHint(self) -> QSize:
        """Be content with little: it scrolls."""
        return QSize(0, 0)

    def sizeHint(self) -> QSize:
        """Ask for what the page asks for."""
        page = self._body.currentWidget()
        return page.sizeHint() if page is not None else QSize(0, 0)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow a page that needs more room than before, or less."""
        done = super().eventFilter(watched, event)
        if watched is self._body and event.type() == QEvent.Type.LayoutRequest:
            self._fit()
        return done

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Follow the window."""
        super().resizeEvent(event)
        self._fit()

    def _show_focus(self, focus: QObject | None) -> None:
        """Frame what has the keyboard, anywhere in the window, where it does not show it by itself."""
        super()._show_focus(focus)
        if self._layout() is None:
            return  # the first page is still to come
        if self._ring is None:
            from app.widgets.focusring import FocusRing

            self._ring = FocusRing(self.window())
            self.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)  # it follows the keyboard, and has nothing of its own
        self._ring.follow(focus)

    def _fit(self) -> None:
        self._body.resize(self._needed().expandedTo(self.maximumViewportSize()))
        if self.verticalScrollBar().isVisible() or self.horizontalScrollBar().isVisible():
            self._body.resize(self._needed().expandedTo(self.viewport().size()))

    def _needed(self) -> QSize:
        """Return the least size at which the page in view cuts nothing."""
        layout = self._layout()
        if layout is None:
            return QSize(0, 0)
        width = layout.totalMinimumSize().width()
        across = max(width, self.viewport().width())
        high = layout.totalMinimumHeightForWidth(across) if layout.hasHeightForWidth() else -1
        return QSize(width, max(high, layout.totalMinimumSize().height()) if high < 0 else high)

    def _layout(self) -> QLayout | None:
        """Return the layout of the page in view; None before there is one."""
        page = self._body.currentWidget()
        return page.layout() if page is not None else None
