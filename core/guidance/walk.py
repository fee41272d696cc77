"""The setup walk: where each step of a machine stands, by one function of what is kept, and of nothing else.

A result is done when kept trials (or a check by hand) give it. It is stale when an event after it spoils it, or when a
trial it relied on is no longer the newest of its results; it is in doubt when one quick check would do, or when its
instrument was found bad. "After" is by serial number, one count of all that is kept, whatever the clock says.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from core.guidance.walkcase import Case, ResultState, Standing
from core.guidance.walkplan import Plan, Step
from core.guidance.walkreasons import done_before_words
from core.guidance.walkwords import step_title
from core.records.rows import Event, InUse, Machine, SettingInForce, Trial
from core.words import Words

__all__ = ["ResultState", "Standing", "State", "StepState", "Walk", "newly_spoiled", "walk_state"]


class State(StrEnum):
    """Where a step stands."""

    DONE = "done"
    STALE = "stale"
    DOUBT = "in_doubt"
    NEXT = "next"
    NOT_YET = "not_yet"
    SKIPPED = "skipped"


@dataclass(frozen=True, slots=True)
class StepState:
    """A step as it stands.

    Attributes:
        results: its results, each with what it rests on.
        reasons: why it is stale or in doubt, or the reason it was skipped for.
        waits_for: keys of the steps before it that do not stand; empty where it could be done now.
        serial: of its newest evidence; None for none.
    """

    step: Step
    state: State
    results: tuple[ResultState, ...]
    reasons: tuple[Words | str, ...] = ()
    waits_for: tuple[str, ...] = ()
    serial: int | None = None

    @property
    def open_result(self) -> ResultState | None:
        """The first result that is to be seen to; None where all stand."""
        return next((result for result in self.results if result.standing is not Standing.DONE), None)


@dataclass(frozen=True, slots=True)
class Walk:
    """All steps in their order."""

    steps: tuple[StepState, ...]

    @property
    def todo(self) -> StepState | None:
        """The first thing to do: the first step that is stale, in doubt or next."""
        wanted = (State.STALE, State.DOUBT, State.NEXT)
        return next((step for step in self.steps if step.state in wanted), None)

    @property
    def verified(self) -> bool:
        """Whether the proof part stands, with all before it done or skipped."""
        proof = next(place for place, step in enumerate(self.steps) if step.step.key == "proof")
        before = all(step.state in (State.DONE, State.SKIPPED) for step in self.steps[:proof])
        return before and self.steps[proof].state is State.DONE

    def count(self, state: State) -> int:
        """Return how many steps are in this state."""
        return sum(step.state is state for step in self.steps)

    def step(self, key: str) -> StepState:
        """Return the step of that key."""
        return next(step for step in self.steps if step.step.key == key)


def walk_state(
    plan: Plan,
    machine: Machine,
    lot_id: int | None,
    kept: Sequence[InUse],
    events: Iterable[Event],
    settings: Sequence[SettingInForce] = (),
    checks: Sequence[Trial] = (),
) -> Walk:
    """Return where each step of a machine stands.

    Args:
        plan: the steps and what spoils what.
        machine: as it is on record.
        lot_id: the filament lot that is walked with; None: whatever lot was used last.
        kept: the newest kept trials, of this machine, of this lot, and of no machine.
        events: in the order they were logged; those of other machines and lots count for nothing.
        settings: ever in force on the machine.
        checks: kept checks of instruments.
    """
    case = Case(plan, machine, lot_id, kept, tuple(events), tuple(settings), tuple(checks))
    found: dict[str, StepState] = {}
    for step in plan.steps:
        results = tuple(state for key in step.results if (state := case.result_state(step, key)) is not None)
        found[step.key] = _step_state(case, step, results, found)
    return Walk(_with_one_next(tuple(found.values())))


def newly_spoiled(before: Walk, after: Walk) -> tuple[ResultState, ...]:
    """Return the results that stood worse after something happened than before it."""
    stood = {result.kind.key: result.standing for step in before.steps for result in step.results}
    return tuple(
        result
        for step in after.steps
        for result in step.results
        if result.standing in (Standing.STALE, Standing.DOUBT) and stood.get(result.kind.key) is not result.standing
    )


def _step_state(case: Case, step: Step, results: tuple[ResultState, ...], before: dict[str, StepState]) -> StepState:
    serials = [result.serial for result in results if result.serial is not None]
    serial = max(serials, default=None)
    skip = case.skipped(step)
    if skip is not None and skip.serial is not None and skip.serial > (serial or 0):
        return StepState(step, State.SKIPPED, results, (skip.note,), serial=serial)
    standings = {result.standing for result in results}
    reasons = tuple(reason for result in results for reason in result.reasons)
    waits_for = tuple(key for key in step.needs if key in before and not _stands(before[key]))
    if Standing.STALE in standings:
        return StepState(step, State.STALE, results, reasons, waits_for, serial)
    if Standing.MISSING in standings:
        return StepState(step, State.NOT_YET, results, reasons, waits_for, serial)
    younger = [before[key] for key in step.after if (before[key].serial or 0) > min(serials)]
    if younger:
        late = tuple(done_before_words(step_title(other.step.key)) for other in younger)
        return StepState(step, State.STALE, results, (*reasons, *late), waits_for, serial)
    return StepState(
        step, State.DOUBT if Standing.DOUBT in standings else State.DONE, results, reasons, waits_for, serial
    )


def _stands(step: StepState) -> bool:
    return step.state in (State.DONE, State.DOUBT, State.SKIPPED)


def _with_one_next(steps: tuple[StepState, ...]) -> tuple[StepState, ...]:
    """Mark the first step that could be done now."""
    place = next(
        (place for place, step in enumerate(steps) if step.state is State.NOT_YET and not step.waits_for), None
    )
    if place is None:
        return steps
    first = steps[place]
    marked = StepState(first.step, State.NEXT, first.results, first.reasons, (), first.serial)
    return (*steps[:place], marked, *steps[place + 1 :])
