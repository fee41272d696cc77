"""Python's garbage is collected in the thread of the window, and in no other.

Left to itself Python collects in whatever thread asks for memory, and so a worker may take apart widgets that nobody
holds any more. Qt's widgets must go in the thread they live in; anywhere else the program sometimes crashes later.
"""

from __future__ import annotations

import gc

from PySide6.QtCore import QObject, QTimer

_EVERY_MS = 250


class GarbageCollector(QObject):
    """Collects a generation when Python would have, a quarter of a second later at most."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        gc.disable()
        self._timer = QTimer(self)
        self._timer.timeout.connect(collect_what_is_due)
        self._timer.start(_EVERY_MS)


def collect_what_is_due() -> None:
    """Collect the oldest generation whose threshold is passed; call it in the thread of the window."""
    counts, thresholds = gc.get_count(), gc.get_threshold()
    for generation in (2, 1, 0):
        if 0 < thresholds[generation] < counts[generation]:
            gc.collect(generation)
            return
