"""The work behind the board: a large shop is read beside the window, then each machine is worked out.

The machines are worked out some at a time between two looks at the keyboard, so that a thousand of them do not hold the
window up. What takes longer than a moment shows a bar with a button that stops it.
"""

from __future__ import annotations

from collections.abc import Iterator
from time import monotonic

from PySide6.QtCore import QObject, QTimer, Signal

from app.context import Context
from app.pages.shop.boardreader import read_board
from app.waitrow import WaitBar
from core.errors import StoreError

_SLICE_S = 0.03  # at a time, then the window may breathe
_MOMENT_S = 0.4
_READING_RATIO = 0.3  # of the bar, for the reading


class BoardWork(QObject):
    """One reading and one working out at a time; a newer one begins in the place of an older one.

    `was_read` carries the Board, `worked_out` the first and last row that know more, `ended` follows the last of them,
    `stopped` the button, `failed` carries the StoreError.

    Attributes:
        bar: how far it is; the page gives it its place.
    """

    was_read = Signal(object)
    worked_out = Signal(int, int)
    ended = Signal()
    stopped = Signal()
    failed = Signal(object)

    def __init__(self, context: Context, parent: QObject) -> None:
        super().__init__(parent)
        self.bar = WaitBar(context.closing)
        self._context = context
        self._work: Iterator[int] = iter(())
        self._done = self._all = 0
        self._since = 0.0
        self._timer = QTimer(self)
        self._timer.setInterval(0)
        self._timer.timeout.connect(self._work_on)
        self.bar.stop.clicked.connect(self._stop)
        self.bar.job.answered.connect(self._take)
        self.bar.job.failed.connect(self._fail)

    def is_busy(self) -> bool:
        """Tell whether an answer is still to come."""
        return self._timer.isActive() or not self.bar.isHidden()

    def read(self) -> None:
        """Read the shop beside the window."""
        self.rest()
        context = self._context
        self.bar.start(lambda step: read_board(context, lambda part: step(part * _READING_RATIO)))

    def work_out(self, work: Iterator[int], steps: int) -> None:
        """Go through a work of so many steps; each yields the row that knows more."""
        self._work, self._done, self._all, self._since = work, 0, steps, monotonic()
        self._timer.start()

    def rest(self) -> None:
        """Leave off; an answer that still comes is dropped."""
        self._timer.stop()
        self.bar.job.stop()
        self.bar.hide()

    def _work_on(self) -> None:
        """Work rows out until the slice of time is over."""
        until, rows = monotonic() + _SLICE_S, []
        try:
            while (row := next(self._work, None)) is not None:
                rows.append(row)
                if monotonic() > until:
                    break
        except StoreError as error:
            self._fail(error)
            return
        if not rows:
            self.rest()
            self.ended.emit()
            return
        self._done += len(rows)
        if not self.bar.isHidden() or monotonic() - self._since > _MOMENT_S:
            self.bar.tell(_READING_RATIO + (1.0 - _READING_RATIO) * self._done / self._all)
        self.worked_out.emit(min(rows), max(rows))

    def _take(self, board: object) -> None:
        if not self.bar.isHidden():
            self.was_read.emit(board)

    def _stop(self) -> None:
        self.rest()
        self.stopped.emit()

    def _fail(self, error: StoreError) -> None:
        self.rest()
        self.failed.emit(error)
