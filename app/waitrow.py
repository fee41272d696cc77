"""How far a long work of a page is, with the button that stops it; and when a work is long."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QPushButton, QWidget

from app.jobs import Job

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtCore import SignalInstance

    from app.context import Context
    from app.jobs import Step
    from app.widgets.resultcard import ResultCard


_MOMENT_MS = 400
MANY_TRIALS = 2000  # in a shop; below that a page has its answer at once


def is_large(context: Context) -> bool:
    """Tell whether all that is kept takes longer to read than a person likes to wait.

    Raises:
        StoreError: the database cannot be read.
    """
    return context.store.last_trial_id() > MANY_TRIALS


class WaitBar(QWidget):
    """Seen from the beginning of its job until it is hidden.

    Attributes:
        job: the work, ended by `closing`; the page listens to its answer.
    """

    def __init__(self, closing: SignalInstance, job: Job | None = None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.job = Job(self) if job is None else job
        self.bar = QProgressBar()
        self.bar.setRange(0, 100)
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(self.tr("Progress"))
        self.stop = QPushButton(self.tr("Stop"))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.bar, 1)
        row.addWidget(self.stop)
        self.hide()
        self.stop.clicked.connect(self.job.stop)
        self.job.begun.connect(self._begin)
        self.job.progressed.connect(self._show_part)
        closing.connect(self.job.finish)

    def start(self, work: Callable[[Step], Any]) -> None:
        """Begin a work; one that runs is stopped."""
        self.job.start(work)

    def tell(self, part: float) -> None:
        """Come into sight and show how much of the work is done."""
        self._show_part(part)
        self.show()

    def _begin(self) -> None:
        self.tell(0.0)

    def _show_part(self, part: float) -> None:
        self.bar.setValue(round(100 * part))


class LateBar(WaitBar):
    """Comes into sight only where the work is not done in a moment, and goes with its end."""

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context.closing, None, parent)
        self._late = QTimer(self)
        self._late.setSingleShot(True)
        self._late.setInterval(_MOMENT_MS)
        self._late.timeout.connect(self.show)
        self.job.ended.connect(self._end)

    def _begin(self) -> None:
        self._show_part(0.0)
        self._late.start()

    def _end(self) -> None:
        self._late.stop()
        self.hide()


class WaitRow(WaitBar):
    """Stands at the foot of the page's card and is seen while its job runs."""

    def __init__(self, card: ResultCard, context: Context, job: Job | None = None) -> None:
        super().__init__(context.closing, job, card)
        card.foot.insert(0, self, shares=True)
        self.hide()
        self.job.ended.connect(self.hide)
