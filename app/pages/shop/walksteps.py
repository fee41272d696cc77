"""The steps of the walk as a list: number, title, and where each stands, by sign, word and colour."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QColor, QFont
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from app.faults import or_else
from app.theme import tokens
from app.widgets.rowsmodel import AnyIndex, RowsModel
from app.words import shown
from core.guidance.walk import State, StepState, Walk
from core.guidance.walkwords import step_title
from core.words import Words, tr

_NUMBER, _TITLE, _STATE = range(3)
_ROW_PX = 27
SIGNS = {
    State.DONE: "✓", State.STALE: "↻", State.DOUBT: "?", State.NEXT: "▶", State.NOT_YET: "·", State.SKIPPED: "–",
}  # fmt: skip
_WORDS = {
    State.DONE: tr("done"),
    State.STALE: tr("stale"),
    State.DOUBT: tr("in doubt"),
    State.NEXT: tr("next"),
    State.NOT_YET: tr("not yet"),
    State.SKIPPED: tr("skipped"),
}


def state_words(state: State) -> Words:
    """Return a state for people."""
    return _WORDS[state]


def state_text(state: State) -> str:
    """Return the sign and the word of a state, in the window's language."""
    return f"{SIGNS[state]} {shown(_WORDS[state])}"


def state_colour(state: State) -> str:
    """Return the colour of a state; its sign and word say the same without colour."""
    theme = tokens()
    return {
        State.DONE: theme.good,
        State.STALE: theme.warning,
        State.DOUBT: theme.warning,
        State.NEXT: theme.accent,
        State.NOT_YET: theme.quiet,
        State.SKIPPED: theme.quiet,
    }[state]


def progress_text(walk: Walk) -> str:
    """Say how many steps stand, what comes next, and whether the machine is verified."""
    stand = walk.count(State.DONE) + walk.count(State.SKIPPED)
    says = [tr("{stand} of {steps} steps stand.", stand=stand, steps=len(walk.steps))]
    if walk.todo is not None:
        says.append(tr("Next: {step}.", step=step_title(walk.todo.step.key)))
    if walk.verified:
        says.append(tr("The machine is verified."))
    return " ".join(shown(sentence) for sentence in says)


class StepsModel(RowsModel):
    """The steps of a walk, one a row."""

    names = _TITLE

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.steps: tuple[StepState, ...] = ()
        self.titles = ("№", self.tr("Step"), self.tr("State"))

    def show_walk(self, walk: Walk | None) -> None:
        """Show these steps."""
        self.beginResetModel()
        self.steps = walk.steps if walk else ()
        self.endResetModel()

    def held(self) -> tuple[StepState, ...]:
        """Return the steps."""
        return self.steps

    @or_else(None)
    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Return what a cell shows."""
        step = self.steps[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            texts = (str(step.step.number), shown(step_title(step.step.key)), state_text(step.state))
            return texts[index.column()]
        if role == Qt.ItemDataRole.ForegroundRole and (index.column() == _STATE or step.state is State.NOT_YET):
            return QColor(state_colour(step.state))
        if role == Qt.ItemDataRole.FontRole and step.state in (State.STALE, State.DOUBT, State.NEXT):
            font = QFont()
            font.setBold(True)
            return font
        if role == Qt.ItemDataRole.TextAlignmentRole and index.column() == _NUMBER:
            return int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        if role == Qt.ItemDataRole.ToolTipRole:
            return "\n".join(shown(reason) for reason in step.reasons)
        return self.told(index, role)


class StepList(QTableView):
    """The list of steps; `step_chosen` carries the key, `step_entered` follows Enter or a double click."""

    step_chosen = Signal(str)
    step_entered = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.steps = StepsModel(self)
        self.setModel(self.steps)
        self.setAccessibleName(self.tr("Steps of the walk"))
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.setShowGrid(False)
        self.verticalHeader().hide()
        self.verticalHeader().setDefaultSectionSize(_ROW_PX)
        heads = self.horizontalHeader()
        heads.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        heads.setHighlightSections(False)
        heads.setSectionResizeMode(_NUMBER, QHeaderView.ResizeMode.ResizeToContents)
        heads.setSectionResizeMode(_TITLE, QHeaderView.ResizeMode.Stretch)
        heads.setSectionResizeMode(_STATE, QHeaderView.ResizeMode.ResizeToContents)
        self.selectionModel().currentRowChanged.connect(self._choose)
        self.activated.connect(self._enter)

    def show_walk(self, walk: Walk | None, chosen: str) -> None:
        """Show a walk with one of its steps chosen."""
        self.steps.show_walk(walk)
        row = next((row for row, step in enumerate(self.steps.steps) if step.step.key == chosen), 0)
        self.setCurrentIndex(self.steps.index(row, _TITLE))

    def chosen(self) -> StepState | None:
        """Return the step in sight."""
        row = self.currentIndex().row()
        return self.steps.steps[row] if 0 <= row < len(self.steps.steps) else None

    def _choose(self) -> None:
        step = self.chosen()
        self.step_chosen.emit(step.step.key if step else "")

    def _enter(self) -> None:
        step = self.chosen()
        if step is not None:
            self.step_entered.emit(step.step.key)
