"""A frame around what has the keyboard and would not show it by itself: tables, lists, sliders, and texts to read."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractItemView, QFrame, QPlainTextEdit, QSlider, QTextEdit, QWidget
from shiboken6 import isValid

from app.faults import or_else, told_at_once
from app.theme import CORNER_PX, tokens
from app.widgets.roles import told_as_frame

_AWAY_PX, _LINE_PX = 3, 2


class FocusRing(QObject):
    """Follows the keyboard within one window."""

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        self._frame: _Frame | None = None

    def follow(self, focus: QObject | None) -> None:
        """Frame what has the keyboard now, if it needs a frame."""
        if self._frame is not None and isValid(self._frame):
            self._frame.hide()
            self._frame.deleteLater()
        bare = isinstance(focus, QWidget) and focus.window() is self._window and _is_bare(focus)
        self._frame = _Frame(focus) if bare and isinstance(focus, QWidget) else None


def _is_bare(focus: QWidget) -> bool:
    """Whether the style sheet frames it in no other way."""
    if isinstance(focus, QPlainTextEdit):
        return focus.frameShape() is QFrame.Shape.NoFrame
    return isinstance(focus, QAbstractItemView | QSlider | QTextEdit)


@told_as_frame
class _Frame(QWidget):
    """The frame itself, beside what it frames, so that it is scrolled and cut off with it."""

    def __init__(self, framed: QWidget) -> None:
        super().__init__(framed.parentWidget())
        self._framed = framed
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        framed.installEventFilter(self)
        self._cover()
        self.raise_()
        self.setVisible(framed.isVisible())

    @or_else(False)
    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Go with it."""
        if event.type() in (QEvent.Type.Resize, QEvent.Type.Move):
            self._cover()
        elif event.type() in (QEvent.Type.Show, QEvent.Type.Hide):
            self.setVisible(event.type() == QEvent.Type.Show)
        return super().eventFilter(watched, event)

    @told_at_once
    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the frame."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(QColor(tokens().accent), _LINE_PX))
        half = _LINE_PX / 2
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(half, half, -half, -half), CORNER_PX, CORNER_PX)
        painter.end()

    def _cover(self) -> None:
        room = self._framed.parentWidget()
        around = self._framed.geometry().adjusted(-_AWAY_PX, -_AWAY_PX, _AWAY_PX, _AWAY_PX)
        self.setGeometry(around & room.rect() if room is not None else around)
