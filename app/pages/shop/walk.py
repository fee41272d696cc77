"""The page *Walk*: the ordered steps of a machine from its record to a proved part, and what is to be done next."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, ClassVar, NamedTuple

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from app.authors import remember_author
from app.context import Context, Level
from app.pages.base import Page
from app.pages.shop.walkcard import StepCard
from app.pages.shop.walksteps import StepList, progress_text
from app.theme import STEP_PX
from app.walkreader import read_walk, standing_skips
from app.widgets.panel import Panel
from app.words import shown
from core.errors import InputError, StoreError
from core.guidance.walk import State, StepState, Walk
from core.guidance.walkplan import Scope
from core.quantity import Estimate
from core.records.rows import Event, Machine, Motion, Trial
from core.words import tr


class Walked(NamedTuple):
    """Whose walk it is, with which lot."""

    machine: Machine
    lot_id: int | None


class WalkPage(Page):
    """Steps at the left, the chosen one at the right; what is typed there and not logged is an open trial."""

    subject: ClassVar[str] = "walk"

    def __init__(self, context: Context, parent: QWidget | None = None) -> None:
        super().__init__(context, parent)
        self.title = self.tr("Walk")
        self.heading, self.progress = QLabel(self.title), QLabel()
        self.steps = StepList()
        self.card = StepCard()
        self._stored: dict[str, str] = {}  # the open trial's texts of every step
        self._lay_out()
        self.setFocusProxy(self.steps)
        self.steps.step_chosen.connect(self._show_chosen)
        self.steps.step_entered.connect(self._enter_step)
        self.card.page_asked.connect(context.page_asked)
        self.card.checks.changed.connect(self.save_draft)
        self.card.good_said.connect(self.keep)
        self.card.fault_said.connect(self._log_fault)
        self.card.quick_said.connect(self._log_quick_check)
        self.card.skip_said.connect(self._skip)
        for changed in (context.kept, context.logged, context.machine_changed, context.lot_changed):
            changed.connect(self._answer_context)

    # The four methods of a page

    def read(self) -> Walked:
        """Return the machine and lot; InputError where no machine is picked."""
        machine = self.context.machine
        if machine is None:
            raise InputError("machine", tr("Choose a machine above."))
        return Walked(machine, self.context.lot_id)

    def compute(self, readings: Walked) -> Walk:
        """Ask the core where each step stands."""
        return read_walk(self.context.store, *readings)

    def show_result(self, result: Walk) -> None:
        """Show the steps, with the chosen one kept, or the next one to do once that one stands."""
        seen = self.card.state
        before = seen.step.key if seen else ""
        todo = result.todo.step.key if result.todo else ""
        if seen is not None and seen.state is not State.DONE and result.step(before).state is State.DONE:
            before = ""  # it was done on its page: the walk goes on
        self.progress.setText(progress_text(result))
        self.steps.show_walk(result, before or todo)
        self._show_chosen()

    def record(self) -> Trial:
        """Return what is typed in the steps' forms and not logged."""
        readings = {"field": list(self._stored), "raw": list(self._stored.values())}
        return Trial(self.subject, self.context.machine_id, self.context.lot_id, readings=readings)

    # Hooks

    def show_problem(self, field: str, row: int | None, message: str) -> None:
        """Show at its field, or on the notice line, what cannot be; without a machine nothing is shown."""
        if field == "machine":
            self.progress.setText("")
            self.steps.show_walk(None, "")
            self.card.show_step(None, Motion.CARTESIAN)
        elif not self.card.checks.show_problem(field, message):
            super().show_problem(field, row, message)

    def clear_problems(self) -> None:
        """Take the problems away."""
        self.card.checks.clear_problems()

    def load_draft(self, trial: Trial | None) -> None:
        """Take what was typed and not logged; the walk itself is shown by whoever has it loaded, once."""
        readings: Mapping[str, list[Any]] = trial.readings if trial else {}
        self._stored = dict(zip(readings.get("field", ()), readings.get("raw", ()), strict=True))
        self.card.state = None

    def shown(self) -> None:
        """Look again: other pages have kept trials meanwhile."""
        self.recompute()

    def save_draft(self) -> bool:
        """Commit what stands in the form of the step in sight."""
        if self.card.state is not None:
            own = f"{self.card.state.step.key}."
            others = {key: text for key, text in self._stored.items() if not key.startswith(own)}
            self._stored = others | {own + key: text for key, text in self.card.checks.texts().items()}
        return super().save_draft()

    def keep(self) -> None:
        """Log that all of the step in sight was found in order."""
        if self.card.by_hand():
            self._log(lambda: ("checked", self.card.checks.findings(), self.card.checks.note()))

    # What the buttons say

    def _log_fault(self) -> None:
        says = tr("Say what is wrong; it stays with the step until it is mended.")
        self._log(lambda: ("checked", {"fault": True}, self.card.checks.needed_note(says)))

    def _log_quick_check(self) -> None:
        says = tr("Say what was read; a check without a reading is none.")
        results = list(self.card.doubtful())
        self._log(lambda: ("checked", {"results": results}, self.card.checks.needed_note(says)))

    def _skip(self) -> None:
        state = self.card.state
        if state is not None and state.state is State.SKIPPED:
            self._take_up_again(state.step.key)
            return
        says = tr("Say why it is skipped; the reason stands beside the step.")
        self._log(lambda: ("skipped", {}, self.card.checks.needed_note(says)))

    def _take_up_again(self, key: str) -> None:
        assert self.context.machine is not None  # a step is in sight
        for event in standing_skips(self.context.store, self.context.machine, key):
            self._write(Event("skipped", event.machine_id, event.lot_id, detail=event.detail, takes_back=event.id))

    def _log(self, what: Callable[[], tuple[str, dict[str, Any], str]]) -> bool:
        """Log a check or a skip of the step in sight; a problem appears at its field."""
        state = self.card.state
        if state is None or self.context.machine is None:
            return False
        self.clear_problems()
        if name := self.card.checks.author():
            self.context.sign(name)
            remember_author(self.context, name)
        try:
            kind, detail, note = what()
        except InputError as error:
            self.show_problem(error.field, error.row, shown(error.message))
            return False
        of_lot = any(result.kind.scope is Scope.BOTH for result in state.results)
        lot_id = self.context.lot_id if of_lot else None
        step = {"step": state.step.key} if "results" not in detail else {}
        return self._write(Event(kind, self.context.machine.id, lot_id, detail={**step, **detail}, note=note))

    def _write(self, event: Event) -> bool:
        try:
            logged = self.context.store.log_event(event)
        except (InputError, StoreError) as error:
            self.context.say(shown(error.message), Level.ERROR)
            return False
        self.card.checks.set_texts({})
        self.save_draft()
        if event.takes_back is None and not event.detail.get("fault"):
            self.card.state = None  # this step is through: the next one comes into sight
        self.context.logged.emit(logged)
        self.context.say(self.tr("Logged."), Level.GOOD)
        self.steps.setFocus(Qt.FocusReason.OtherFocusReason)  # the box that had it may be gone
        return True

    # What is shown

    def _show_chosen(self) -> None:
        state = self.steps.chosen() if self.result is not None else None
        machine = self.context.machine
        if state is None or machine is None:
            return
        changed = self.card.state is None or self.card.state.step.key != state.step.key
        if changed and self.card.state is not None:
            self.save_draft()
        self.card.show_step(state, machine.motion, self._estimates(state), self.context.lot is not None)
        self.card.checks.ask_author(not self.context.store.author)
        if changed:
            own = f"{state.step.key}."
            texts = {key.removeprefix(own): text for key, text in self._stored.items() if key.startswith(own)}
            self.card.checks.set_texts(texts)
            self.undoing.forget()

    def _estimates(self, state: StepState) -> list[Estimate]:
        """Return the estimates that a step rests on, each once."""
        trials = {trial.id: trial for result in state.results for trial in result.trials}
        try:
            return [e for number in trials for e in self.context.store.trial(number).estimates]
        except StoreError as error:
            self.context.say(shown(error.message), Level.ERROR)
            return []

    def _enter_step(self) -> None:
        if self.card.open_button.isVisible():
            self.card.open_button.click()
        else:
            self.card.checks.take_focus()

    def _answer_context(self) -> None:
        if self.isVisible():
            self.recompute()

    def _lay_out(self) -> None:
        self.heading.setObjectName("heading")
        self.progress.setObjectName("quiet")
        above, across, down = QHBoxLayout(), QHBoxLayout(), QVBoxLayout(self)
        above.addWidget(self.heading)
        above.addSpacing(2 * STEP_PX)
        above.addWidget(self.progress, 1)
        left = Panel(self.steps.accessibleName())
        inside = QVBoxLayout(left)
        inside.setContentsMargins(1, 1, 1, 1)
        inside.addWidget(self.steps)
        across.setSpacing(2 * STEP_PX)
        across.addWidget(left, 45)
        across.addWidget(self.card, 55)
        down.setContentsMargins(0, 0, 0, 0)
        down.setSpacing(STEP_PX)
        down.addLayout(above)
        down.addLayout(across, 1)
