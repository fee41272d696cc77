"""The middle of the window: it scrolls where a page needs more room than there is, so that nothing is cut.

That is so with large fonts, long words, and small screens; in the usual window pages fit and no bar is seen.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6 import QtCore  # QtCore.Qt is slow to make: nothing below touches it before the first paint
from PySide6.QtCore import QEvent, QObject, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QStackedWidget, QWidget

from app.faults import or_else, told_at_once
from app.widgets.focusscroll import FocusScroll

if TYPE_CHECKING:
    from PySide6.QtWidgets import QLayout

    from app.widgets.focusring import FocusRing

_MOST_TURNS = 6  # of a bar that comes and goes


class BodyRoom(FocusScroll):
    """Shows a stack of pages as large as there is room, and no smaller than the page in view needs."""

    margin_px = 0

    def __init__(self, body: QStackedWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._body = body
        self._ring: FocusRing | None = None
        self._here: tuple[int, QSize] | None = None  # the page in view and its room
        self._barred, self._turns = False, 0
        self.setViewport(QWidget())  # Qt's own would be painted
        self.setWidget(body)
        body.setAutoFillBackground(False)
        body.currentChanged.connect(self._fit)

    @or_else(QSize())
    def minimumSizeHint(self) -> QSize:
        """Be content with little: it scrolls."""
        return QSize(0, 0)

    @or_else(QSize())
    def sizeHint(self) -> QSize:
        """Ask for what the page asks for."""
        page = self._body.currentWidget()
        return page.sizeHint() if page is not None else QSize(0, 0)

    @or_else(False)
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
        """Give the page in view what it needs, and a bar where that is more than there is."""
        layout, room = self._layout(), self.contentsRect().size()
        if layout is None:
            self._body.resize(room)
            return
        down, across = self.verticalScrollBar().sizeHint().width(), self.horizontalScrollBar().sizeHint().height()
        wide, high = _needed(layout, room.width())
        down *= self._is_barred(high > room.height() or (wide > room.width() and high > room.height() - across))
        across *= wide > room.width() - down
        policy = QtCore.Qt.ScrollBarPolicy
        self.setVerticalScrollBarPolicy(policy.ScrollBarAlwaysOn if down else policy.ScrollBarAlwaysOff)
        self.setHorizontalScrollBarPolicy(policy.ScrollBarAlwaysOn if across else policy.ScrollBarAlwaysOff)
        inside = QSize(room.width() - down, room.height() - across)
        self._body.resize(QSize(*_needed(layout, inside.width())).expandedTo(inside))

    def _is_barred(self, needed: bool) -> bool:
        """Whether there is a bar at the side; one that came and went again and again stays.

        Beside the bar a page may be lower than without it, and by that not need it: they would chase for ever.
        """
        here = self._body.currentIndex(), self.contentsRect().size()
        if here != self._here:
            self._here, self._turns = here, 0
        barred = needed or (self._barred and self._turns > _MOST_TURNS)
        self._turns += barred is not self._barred
        self._barred = barred
        return barred

    def _layout(self) -> QLayout | None:
        """Return the layout of the page in view; None before there is one."""
        page = self._body.currentWidget()
        return page.layout() if page is not None else None


def _needed(layout: QLayout, across: int) -> tuple[int, int]:
    """Return the least width and height at which a page that wide cuts nothing."""
    wide = layout.totalMinimumSize().width()
    high = layout.totalMinimumHeightForWidth(max(wide, across)) if layout.hasHeightForWidth() else -1
    return wide, layout.totalMinimumSize().height() if high < 0 else high
