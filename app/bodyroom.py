"""The middle of the window: it scrolls where a page needs more room than there is, so that nothing is cut.

That is so with large fonts, long words, and small screens; in the usual window pages fit and no bar is seen.
"""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QStackedWidget, QWidget

from app.widgets.focusscroll import FocusScroll


class BodyRoom(FocusScroll):
    """Shows a stack of pages as large as there is room, and no smaller than the page in view needs."""

    margin_px = 0

    def __init__(self, body: QStackedWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._body = body
        self.setWidget(body)
        body.setAutoFillBackground(False)
        self.viewport().setAutoFillBackground(False)
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

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Follow the window."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        self._body.resize(self._needed().expandedTo(self.maximumViewportSize()))
        if self.verticalScrollBar().isVisible() or self.horizontalScrollBar().isVisible():
            self._body.resize(self._needed().expandedTo(self.viewport().size()))

    def _needed(self) -> QSize:
        """Return the least size at which the page in view cuts nothing."""
        page = self._body.currentWidget()
        layout = page.layout() if page is not None else None
        if layout is None:
            return QSize(0, 0)
        width = layout.totalMinimumSize().width()
        across = max(width, self.viewport().width())
        high = layout.totalMinimumHeightForWidth(across) if layout.hasHeightForWidth() else -1
        return QSize(width, max(high, layout.totalMinimumSize().height()) if high < 0 else high)
