"""Python's garbage is collected in the thread of the window, and in no other.

Left to itself Python collects in whatever thread asks for memory, and so a worker may take apart widgets that nobody
holds any more. Qt's widgets must go in the thread they live in; anywhere else the program sometimes crashes later.
"""

from __future__ import annotations

import gc
from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer

from app.jobs import Job

_EVERY_MS = 250
_OLDEST = 2  # generation


class GarbageCollector(QObject):
    """Collects a generation when Python would have, a quarter of a second later at most."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        gc.disable()
        self._timer = QTimer(self)
        self._timer.timeout.connect(self._collect)
        self._timer.start(_EVERY_MS)

    def _collect(self) -> None:
        collect_what_is_due(self._is_at_work)

    def _is_at_work(self) -> bool:
        home = self.parent()
        return home is not None and any(job.is_running() for job in home.findChildren(Job))


def collect_what_is_due(is_at_work: Callable[[], bool] = bool) -> None:
    """Collect the oldest generation whose threshold is passed; call it in the thread of the window.

    What a worker holds, such as the rows of an import, is millions of things: to search them all holds the window up
    for a second. So the oldest ones wait until no work runs.
    """
    counts, thresholds = gc.get_count(), gc.get_threshold()
    for generation in (2, 1, 0):
        if 0 < thresholds[generation] < counts[generation] and not (generation == _OLDEST and is_at_work()):
            gc.collect(generation)
            return
