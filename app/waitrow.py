"""How far a long work of a page is, with the button that stops it; stands at the foot of the page's card."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QPushButton, QWidget

from app.jobs import Job

if TYPE_CHECKING:
    from collections.abc import Callable

    from app.context import Context
    from app.jobs import Step
    from app.widgets.resultcard import ResultCard


class WaitRow(QWidget):
    """Seen while its job runs.

    Attributes:
        job: the work; the page listens to its answer.
    """

    def __init__(self, card: ResultCard, context: Context, job: Job | None = None) -> None:
        super().__init__(card)
        self.job = Job(self) if job is None else job
        self.bar = QProgressBar()
        self.bar.setRange(0, 100)
        self.bar.setTextVisible(False)
        self.bar.setAccessibleName(self.tr("Progress"))
        self.stop = QPushButton(self.tr("Sto&p"))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.bar, 1)
        row.addWidget(self.stop)
        card.foot.insert(0, self, shares=True)
        self.hide()
        self.stop.clicked.connect(self.job.stop)
        self.job.begun.connect(self._begin)
        self.job.progressed.connect(self._show_part)
        self.job.ended.connect(self.hide)
        context.closing.connect(self.job.finish)

    def start(self, work: Callable[[Step], Any]) -> None:
        """Begin a work; one that runs is stopped."""
        self.job.start(work)

    def _begin(self) -> None:
        self.bar.setValue(0)
        self.show()

    def _show_part(self, part: float) -> None:
        self.bar.setValue(round(100 * part))
