"""One press of a gauge's button that arrives twice."""

from __future__ import annotations

from PySide6.QtCore import QElapsedTimer

DOUBLE_MS = 300  # the same burst again this soon is one press of the gauge's button sent twice


class Bursts:
    """Remembers the last burst of a gauge, and when it came."""

    def __init__(self) -> None:
        self._last, self._since = "", QElapsedTimer()

    def is_again(self, text: str, from_gauge: bool) -> bool:
        """Tell whether the same came from the gauge just before; from now on this is the last one."""
        again = from_gauge and text == self._last and self._since.isValid() and self._since.elapsed() < DOUBLE_MS
        self._last = text if from_gauge else ""
        self._since.start()
        return again
