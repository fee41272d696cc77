"""What an empty shop shows: what the program does, and where to begin."""

from __future__ import annotations

from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from app.theme import STEP_PX
from app.widgets.labels import heading
from app.widgets.panel import Panel

_WIDEST_PX = 620


class FirstStart(QWidget):
    """Two ways to begin, in the order of the Tab key, then two of help; whoever shows it answers the buttons."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.add = QPushButton(self.tr("&Add a machine"))
        self.add.setObjectName("primary")
        self.demo = QPushButton(self.tr("&Try the demo shop"))
        self.steps = QPushButton(self.tr("&First steps"))
        self.help = QPushButton(self.tr("Help and &keys   F1"))
        self.help.setObjectName("plain")
        for button in (self.add, self.demo, self.steps, self.help):
            button.setAutoDefault(True)  # Enter presses it
        self._lay_out()
        self.setFocusProxy(self.add)

    def _lay_out(self) -> None:
        title = self.tr("Begin here")
        card = Panel(title)
        card.setMaximumWidth(_WIDEST_PX)
        inside = QVBoxLayout(card)
        inside.setContentsMargins(3 * STEP_PX, 2 * STEP_PX, 3 * STEP_PX, 2 * STEP_PX)
        inside.setSpacing(2 * STEP_PX)
        inside.addWidget(heading(title))
        inside.addWidget(
            _wrapped(
                self.tr(
                    "Slipgauge takes what you measure on printed parts and on the machine, tells an error that grows "
                    "with the length from one that does not, and says which setting or part to change, or which "
                    "reading is still missing."
                )
            )
        )
        inside.addLayout(self._ways())
        across, down = QHBoxLayout(), QVBoxLayout(self)
        across.addStretch(1)
        across.addWidget(card, 8)
        across.addStretch(1)
        down.setContentsMargins(0, 0, 0, 0)
        down.addStretch(2)
        down.addLayout(across)
        down.addStretch(3)

    def _ways(self) -> QGridLayout:
        """Return the ways to begin, with what each leads to."""
        grid = QGridLayout()
        grid.setHorizontalSpacing(2 * STEP_PX)
        grid.setVerticalSpacing(2 * STEP_PX)
        grid.setColumnStretch(1, 1)
        for row, (button, text) in enumerate(
            (
                (self.add, self.tr("Write down its belts, pulleys and screws; the setup walk leads step by step.")),
                (
                    self.demo,
                    self.tr("Look around first: invented machines, filament and readings, kept apart from your own."),
                ),
                (
                    self.steps,
                    self.tr("Fifteen minutes with pictures: from the demo shop to the first machine of your own."),
                ),
                (self.help, self.tr("What every page is for, and all keys; a page's own help stands beside it.")),
            )
        ):
            says = _wrapped(text)
            says.setObjectName("quiet")
            button.setAccessibleDescription(text)
            grid.addWidget(button, row, 0)
            grid.addWidget(says, row, 1)
        return grid


def _wrapped(text: str) -> QLabel:
    label = QLabel(text)
    label.setWordWrap(True)
    return label
