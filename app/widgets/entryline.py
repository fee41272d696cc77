"""The one big line for a reading: tells a person's keys from a gauge's burst, and readings from commands."""

from __future__ import annotations

from PySide6.QtCore import QElapsedTimer, QEvent, Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QGuiApplication, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QLineEdit, QWidget

from app.faults import or_else, told_at_once

GAUGE_GAP_MS = 50  # nobody types three keys and Enter this fast one after another; a gauge with keyboard output does
ALONE_MS = 300  # a sign with nothing behind it for so long is a command, not the sign of a reading
_PASSING = (Qt.FocusReason.ActiveWindowFocusReason, Qt.FocusReason.PopupFocusReason,
            Qt.FocusReason.MenuBarFocusReason)


class EntryLine(QLineEdit):
    """Enter (or Tab, as some gauges send it) finishes a reading; `*` and `/` are commands in a line without text.

    A `-` or `+` is a command when it stays alone, because gauges send signs before their digits. Escape drops what is
    typed, and Alt with a letter that leads nowhere types nothing.
    """

    finished = Signal(str, bool)  # text, and whether it came in a burst from a gauge
    left = Signal()  # for another part of the window, not for another window
    went_back = Signal()
    skipped = Signal()
    flagged = Signal()
    repeated = Signal()
    block_pasted = Signal(str)
    dropped = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("entry")
        self.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.signs_wait = False
        self._clock = QElapsedTimer()
        self._gaps_ms: list[int] = []
        self._since_burst = QElapsedTimer()
        self._alone = QTimer(self, interval=ALONE_MS, singleShot=True)
        self._alone.timeout.connect(self._obey_sign)

    def show_reading(self, text: str) -> None:
        """Show the reading of a row, ready to be overwritten."""
        self.setText(text)
        self.setModified(False)
        self.selectAll()

    def let_signs_wait(self, wait: bool) -> None:
        """Take a sign as a command only with Enter, where readings may be negative."""
        self.signs_wait = wait

    @or_else(False)
    def event(self, event: QEvent) -> bool:
        """Take Tab behind a typed reading as Enter; an idle Tab moves on as everywhere."""
        if (isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress
                and event.key() == Qt.Key.Key_Tab and self.isModified() and self.text().strip()):
            self._finish()
            return True
        return super().event(event)

    @told_at_once
    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Say that the line was left."""
        super().focusOutEvent(event)
        if event.reason() not in _PASSING:
            self.left.emit()

    @told_at_once
    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Sort keys into commands and text."""
        self._alone.stop()
        if event.modifiers() == Qt.KeyboardModifier.AltModifier:
            event.ignore()
            return
        if self._is_command(event):
            event.accept()
            return
        untouched = self._untouched()
        gap_ms = self._clock.restart() if self._clock.isValid() else self._start_clock()
        self._gaps_ms = [] if untouched else [*self._gaps_ms, gap_ms]
        super().keyPressEvent(event)
        if self.text() in ("-", "−", "+") and not self.signs_wait:
            self._alone.start()

    def _start_clock(self) -> int:
        self._clock.start()
        return 0

    def _is_command(self, event: QKeyEvent) -> bool:
        """Carry out a key that is no text, and say whether it was one."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._finish()
            return True
        if event.matches(QKeySequence.StandardKey.Paste):
            return self._paste_block()
        if event.key() == Qt.Key.Key_Escape and self.isModified():
            self.dropped.emit()
            return True
        wanted_by_key = {"*": self.skipped, "/": self.flagged}.get(event.text())
        if event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            wanted_by_key = self.went_back if event.key() == Qt.Key.Key_Up else self.skipped
        elif not self._untouched():
            return False
        if wanted_by_key is None:
            return False
        wanted_by_key.emit()
        return True

    def _untouched(self) -> bool:
        """Whether the next character starts a new text: nothing typed yet, or all of it about to be replaced."""
        return not self.text() or self.selectedText() == self.text()

    def _paste_block(self) -> bool:
        text = QGuiApplication.clipboard().text()
        is_block = any(mark in text.strip() for mark in "\t\n\r")
        if is_block:
            self.block_pasted.emit(text)
        return is_block

    def _obey_sign(self) -> None:
        """Carry out a sign that stayed alone."""
        text = self.text()
        self.show_reading("")
        (self.repeated if text == "+" else self.went_back).emit()

    def _finish(self) -> None:
        """Hand over the text; a second line end right behind a burst belongs to the burst."""
        text = self.text().strip()
        if text in ("-", "−", "+"):
            self._obey_sign()
            return
        if not self.isModified() and self._since_burst.isValid() and self._since_burst.elapsed() < GAUGE_GAP_MS:
            return
        gaps_ms = [*self._gaps_ms, self._clock.elapsed() if self._clock.isValid() else 0]
        from_gauge = self.isModified() and len(gaps_ms) >= 3 and max(gaps_ms) < GAUGE_GAP_MS
        self._gaps_ms = []
        self._since_burst.invalidate()
        self.finished.emit(text, from_gauge)
        if from_gauge:
            self._since_burst.start()
