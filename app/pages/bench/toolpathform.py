"""The left side of the page *Toolpaths*: the trial, what it asks and is laid with, limits, the machine's own text."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from app.pages.bench.toolpathfields import LayingGrid, LimitsGrid, OwnGrid
from app.theme import STEP_PX
from app.widgets.commandtext import CommandText
from app.widgets.fieldgrid import FieldGrid
from app.widgets.fields import ChoiceField
from app.widgets.focusscroll import FocusScroll
from app.widgets.labels import heading, quiet
from app.widgets.trialform import card
from app.words import shown

if TYPE_CHECKING:
    from core.pieces.toolpathcheck import Limits
    from core.pieces.toolpathtrials import TrialKind


class ToolpathForm(FocusScroll):
    """Fields in cards; `changed` follows every finished change.

    Attributes:
        kind: chooses the trial.
        laying, limits: what holds for every trial.
        start, end: the machine's own text; `keep_text_button` keeps it with the machine.
    """

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        from core.pieces.toolpathtrials import TRIALS

        self._plans = TRIALS
        self.kind = ChoiceField([(str(kind), shown(plan.title)) for kind, plan in TRIALS.items()])
        self.purpose = quiet("")
        self.chooser = FieldGrid(1)
        self.chooser.add("kind", self.tr("Tri&al"), self.kind)
        self.own = {str(kind): OwnGrid(plan) for kind, plan in TRIALS.items()}
        self.laying, self.limits = LayingGrid(), LimitsGrid()
        self.start, self.end = CommandText(self.tr("Start text")), CommandText(self.tr("End text"))
        self.keep_text_button = QPushButton(self.tr("&Keep with the machine"))
        self._lay_out()
        self.setFocusProxy(self.kind)
        self._wire()
        self._show_own()

    def grids(self) -> dict[str, FieldGrid]:
        """Return every grid by the name its fields are stored under."""
        return {"": self.chooser, "laying": self.laying, "limits": self.limits, **self.own}

    def own_grid(self) -> OwnGrid:
        """Return the grid of the chosen trial."""
        return self.own[str(self.kind.value())]

    def chosen(self) -> TrialKind:
        """Return the chosen trial."""
        from core.pieces.toolpathtrials import TrialKind

        return TrialKind(str(self.kind.value()))

    def texts(self) -> dict[str, str]:
        """Return everything as typed."""
        typed = {f"{name}.{key}": text for name, grid in self.grids().items() for key, text in grid.texts().items()}
        return typed | {"start": self.start.toPlainText(), "end": self.end.toPlainText()}

    def set_texts(self, texts: Mapping[str, str]) -> None:
        """Show what `texts` gave; fields not named stay as they are."""
        for name, grid in self.grids().items():
            grid.set_texts({key.partition(".")[2]: text for key, text in texts.items() if key.startswith(f"{name}.")})
        for key, edit in (("start", self.start), ("end", self.end)):
            if key in texts:
                edit.show_text(texts[key])
        self._show_own()

    def show_usual(self, limits: Limits, laying: Mapping[str, float | str], start: str, end: str) -> None:
        """Show the usual values of every field, with what is known of machine and lot."""
        for grid in self.own.values():
            grid.show_usual()
        self.laying.show_usual(laying)
        self.limits.show_limits(limits)
        self.start.show_text(start)
        self.end.show_text(end)
        self.kind.setCurrentIndex(0)
        self.clear_problems()

    def show_problem(self, field: str, message: str) -> bool:
        """Show a problem at its field in sight, and return whether there is one of that name."""
        if field == "template":
            self.start.setFocus()
        return any(grid.show_problem(field, message) for grid in (self.own_grid(), self.laying, self.limits))

    def clear_problems(self) -> None:
        """Take all problems away."""
        for grid in self.grids().values():
            grid.clear_problems()

    def _lay_out(self) -> None:
        texts = QHBoxLayout()
        texts.setSpacing(2 * STEP_PX)
        for label, edit in ((self.tr("S&tart text"), self.start), (self.tr("End te&xt"), self.end)):
            column, name = QVBoxLayout(), QLabel(label)
            name.setBuddy(edit)
            column.setSpacing(3)
            column.addWidget(name)
            column.addWidget(edit)
            texts.addLayout(column)
        body = QWidget()
        column = QVBoxLayout(body)
        column.setContentsMargins(0, 0, STEP_PX, 0)
        column.setSpacing(STEP_PX)
        chosen = card(14, self.chooser, self.purpose, *self.own.values())
        chosen.setAccessibleName(self.kind.accessibleName())
        column.addWidget(chosen)
        self.laid_card = card(14, heading(self.tr("Laid with")), self.laying)
        column.addWidget(self.laid_card)
        hint = quiet(self.tr("Nothing beyond these is written. The bed is as large as the machine's travel."))
        column.addWidget(card(14, heading(self.tr("Limits of the machine")), hint, self.limits))
        below = QVBoxLayout()
        below.addLayout(texts)
        below.addWidget(self.keep_text_button, 0, Qt.AlignmentFlag.AlignLeft)
        below.setContentsMargins(0, 0, 0, 0)
        own_text = QWidget()
        own_text.setLayout(below)
        column.addWidget(card(14, heading(self.tr("The machine's own text")), own_text))
        column.addStretch(1)
        self.setWidget(body)
        self.setWidgetResizable(True)
        self.setMinimumWidth(body.minimumSizeHint().width() + self.verticalScrollBar().sizeHint().width())
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setObjectName("pages")
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    def _wire(self) -> None:
        self.kind.changed.connect(self._show_own)  # first: a problem needs its field in sight
        for grid in self.grids().values():
            grid.changed.connect(self.changed)
        for edit in (self.start, self.end):
            edit.finished.connect(self.changed)

    def _show_own(self) -> None:
        kind = self.chosen()
        self.purpose.setText(shown(self._plans[kind].purpose))
        for name, grid in self.own.items():
            grid.setVisible(name == str(kind))
        self.laying.show_needed(self._plans[kind])
        self.laid_card.setVisible(self._plans[kind].heats)
