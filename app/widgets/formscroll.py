"""A form that scrolls only where the window is too low for it; it is never narrower than its fields need."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget

from app.faults import or_else, told_at_once
from app.widgets.focusscroll import FocusScroll

_LEAST_PX = 120  # high


class FormScroll(FocusScroll):
    """Shows one widget, as high as there is room; the field with the keyboard comes into view."""

    _barred = False  # the bar has been there

    def __init__(self, form: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidget(form)
        form.setAutoFillBackground(False)
        self.viewport().setAutoFillBackground(False)

    @or_else(QSize())
    def minimumSizeHint(self) -> QSize:
        """Ask for the width of the form, and of the bar where there is one or was.

        A form that gave the width back could become higher by it, need the bar again, and so on for ever.
        """
        form = self.widget()
        if form is None:
            return QSize(0, _LEAST_PX)
        needs = max(form.minimumSizeHint().width(), form.minimumWidth())
        bar = self.verticalScrollBar()
        self._barred = self._barred or bar.maximum() > 0
        return QSize(needs + (bar.sizeHint().width() if self._barred else 0), _LEAST_PX)

    @or_else(QSize())
    def sizeHint(self) -> QSize:
        """Ask for what the form asks for."""
        form = self.widget()
        if form is None:
            return self.minimumSizeHint()
        high = form.heightForWidth(self.viewport().width()) if form.hasHeightForWidth() else 0
        return QSize(form.sizeHint().width(), max(high, form.minimumSizeHint().height()))

    @told_at_once
    def resizeEvent(self, event: QResizeEvent) -> None:
        """Lines break elsewhere in another width."""
        super().resizeEvent(event)
        if event.oldSize().width() != event.size().width():
            self.updateGeometry()

    @or_else(False)
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow a form that becomes wider or lower."""
        done = super().eventFilter(watched, event)
        if watched is self.widget() and event.type() == QEvent.Type.LayoutRequest:
            self.updateGeometry()
        return done
