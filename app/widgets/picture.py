"""What stands above the verdict of a page: a plot, or a picture that a subject draws itself."""

from __future__ import annotations

from PySide6.QtCore import QSize, Signal
from PySide6.QtWidgets import QFrame

from app.faults import or_else
from app.units import inch_sentence


class Picture(QFrame):
    """What a page shows above the verdict; `said` carries a sentence and its level after copying or saving.

    `least_px` is how high it is at least; more where its own words need it, as with large letters.
    """

    said = Signal(str, str)
    inch = False
    least_px = 0

    @or_else(QSize())
    def minimumSizeHint(self) -> QSize:
        """Ask for what it needs."""
        needs = super().minimumSizeHint()
        return QSize(needs.width(), max(needs.height(), self.least_px))

    def show_inches(self) -> None:
        """Show lengths in inch."""
        self.inch = True

    def in_unit(self, text: str) -> str:
        """Return a sentence with its lengths in the unit that is shown."""
        return inch_sentence(text) if self.inch else text

    def show_nothing(self, why: str = "") -> None:
        """Show that there is no result, and why."""
        raise NotImplementedError
