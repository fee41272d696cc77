"""One machine's case in the setup walk: what proves each result, and what has spoiled it since."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from core.guidance.walkgauges import Gauges
from core.guidance.walkheat import heat_moved
from core.guidance.walkplan import Cell, Effect, Plan, ResultKind, Scope, Step
from core.guidance.walkreasons import (
    check_words,
    fault_words,
    gauge_words,
    heat_words,
    missed_words,
    missing_words,
    parts_words,
    redo_words,
    replaced_words,
    set_since_words,
    undecided_words,
    withdrawn_words,
)
from core.records.rows import Event, InUse, Machine, SettingInForce, Trial
from core.words import Words

CHECKED, SKIPPED = "checked", "skipped"
READINGS = "readings"  # mend a result that cannot tell yet; no look by hand does
_AXES = ("x", "y", "z")
_OF_PARTS = ("contour_offset", "shrink_allowance", "axis_scale")  # settings that the size piece speaks of
_VERIFICATION = "verification"
_FROM_LOT = "from_lot"


class Standing(StrEnum):
    """Where a result stands."""

    DONE = "done"
    DOUBT = "in_doubt"
    STALE = "stale"
    MISSING = "missing"


@dataclass(frozen=True, slots=True)
class ResultState:
    """A result as it stands.

    Attributes:
        trials: the kept trials that give it.
        check: the check by hand that proves it, if no trial does.
        reasons: why it does not stand.
        how: `count` or `compare` where that is enough to mend it, `readings` where only those do, or what to mind at
            the check.
        serial: of its newest evidence; None for none.
    """

    kind: ResultKind
    standing: Standing
    trials: tuple[InUse, ...] = ()
    check: Event | None = None
    reasons: tuple[Words, ...] = ()
    how: str = ""
    serial: int | None = None


class Case:
    """What is known of one machine and lot, sorted for the questions of the walk."""

    def __init__(
        self,
        plan: Plan,
        machine: Machine,
        lot_id: int | None,
        kept: Sequence[InUse],
        events: tuple[Event, ...],
        settings: tuple[SettingInForce, ...],
        checks: tuple[Trial, ...],
    ) -> None:
        taken_back = {event.takes_back for event in events}
        standing = [event for event in events if event.takes_back is None and event.id not in taken_back]
        self.plan, self.machine, self.lot_id = plan, machine, lot_id
        self._kept = sorted(kept, key=lambda trial: -trial.serial)  # newest first
        self._spoiling = [event for event in standing if event.kind in plan.spoils and self._concerns(event)]
        by_hand = [event for event in standing if event.machine_id == machine.id]
        self._checked = [event for event in by_hand if event.kind == CHECKED and self._of_lot(event)]
        self._skipped = [event for event in by_hand if event.kind == SKIPPED and self._of_lot(event)]
        self._gauges = Gauges(checks, standing)
        self._settings = [setting for setting in settings if self.lot_id is None or setting.lot_id in (None, lot_id)]
        self._check_ids = {check.id for check in checks}
        self._newest: dict[tuple[int | None, int | None, str], InUse] = {}
        for trial in reversed(self._kept):
            for name in trial.gives:
                self._newest[trial.machine_id, trial.lot_id, name] = trial
        self._by_id = {trial.id: trial for trial in self._kept}
        proofs = [trial for trial in self._kept if trial.subject == _VERIFICATION]
        self._read_as_proof = {number for trial in proofs for number in trial.used}

    def skipped(self, step: Step) -> Event | None:
        """Return the event that skipped a step last."""
        found = [event for event in self._skipped if event.detail.get("step") == step.key]
        return found[-1] if found else None

    def result_state(self, step: Step, key: str) -> ResultState | None:
        """Return where a result of a step stands; None where this machine needs none."""
        kind = self.plan.results[key]
        if self.machine.motion in kind.not_for:
            return None
        if kind.scope is Scope.SHOP:
            return self._gauge_state(kind)
        if key == "record" and (lacking := [axis for axis in _AXES if not self.machine.drives.get(axis)]):
            return ResultState(kind, Standing.MISSING, reasons=(parts_words(lacking),))
        check, missed = self._check(step, kind), self._missed(kind)
        if missed is not None and (check is None or (check.serial or 0) < missed.serial):
            return ResultState(kind, Standing.STALE, (missed,), reasons=(missed_words(missed),), serial=missed.serial)
        return self._proved(kind, check)

    # What proves a result

    def _proved(self, kind: ResultKind, check: Event | None) -> ResultState | None:
        """Return where a result stands by its trials, else by a check or a setting."""
        trials, lacking = self._trials(kind)
        if trials and not lacking:
            # A piece that was read to prove the settings is no newer size piece to decide about.
            tuned = [trial.serial for trial in trials if trial.id not in self._read_as_proof]
            by_hand = 0 if check is None or check.detail.get("fault") else check.serial or 0
            return self._judge(kind, trials, None, max(tuned, default=0), by_hand)
        if check is not None and check.detail.get("fault"):
            return ResultState(kind, Standing.STALE, check=check, reasons=(fault_words(check),), serial=check.serial)
        serial = self._hand_serial(kind, check)
        if serial is not None:
            return self._judge(kind, (), check, serial)
        if kind.optional:
            return None
        reasons = (missing_words(lacking),) if trials else ()
        return ResultState(kind, Standing.MISSING, trials, reasons=reasons, serial=_newest_serial(trials))

    def _trials(self, kind: ResultKind) -> tuple[tuple[InUse, ...], list[str]]:
        """Return the newest trials that give a result, and the names that none gives."""
        candidates = [trial for trial in self._kept if trial.subject in kind.subjects and self._gives_here(kind, trial)]
        if kind.scope in (Scope.LOT, Scope.BOTH) and not candidates:
            candidates = self._carried(kind)
        found: dict[int, InUse] = {}
        lacking = []
        for name in kind.needs:
            newest = next((trial for trial in candidates if _gives(trial, name)), None)
            if newest is None:
                lacking.append(name)
            else:
                found[newest.id] = newest
        if kind.any and found:
            # A trial that cannot tell does not take the place of one that did.
            newest = max(found.values(), key=lambda trial: (not trial.undecided, trial.serial))
            return (newest,), []
        return tuple(found.values()), lacking

    def _missed(self, kind: ResultKind) -> InUse | None:
        """Return the newest trial of a result where it missed what was predicted."""
        newest = next((t for t in self._kept if t.subject in kind.subjects and self._gives_here(kind, t)), None)
        return newest if newest is not None and kind.missed in newest.gives else None

    def _gives_here(self, kind: ResultKind, trial: InUse) -> bool:
        on_machine = kind.scope is Scope.LOT or trial.machine_id == self.machine.id
        on_lot = kind.scope is Scope.MACHINE or self.lot_id is None or trial.lot_id == self.lot_id
        return on_machine and on_lot

    def _carried(self, kind: ResultKind) -> list[InUse]:
        """Return the trials of the lot before, where a new one was logged: the table says what of them still holds."""
        logged = [event for event in self._spoiling if event.lot_id is not None and event.detail.get(_FROM_LOT)]
        if not logged:
            return []
        newest = logged[-1]
        return [
            trial
            for trial in self._kept
            if trial.subject in kind.subjects
            and trial.lot_id == newest.detail[_FROM_LOT]
            and trial.serial < (newest.serial or 0)
            and (kind.scope is Scope.LOT or trial.machine_id == self.machine.id)
        ]

    def _check(self, step: Step, kind: ResultKind) -> Event | None:
        """Return the newest check by hand that speaks of the whole result."""
        if not kind.hand:
            return None
        found = [event for event in self._checked if event.detail.get("step") == step.key]
        return found[-1] if found else None

    def _hand_serial(self, kind: ResultKind, check: Event | None) -> int | None:
        serials = [] if check is None or check.serial is None else [check.serial]
        if kind.key == "record":
            serials.append(0)  # the parts are on the machine's record, since nobody knows when
        if kind.settings:
            serials += [
                setting.serial
                for setting in self._settings
                if setting.name.startswith(_OF_PARTS) and setting.serial is not None
            ]
        return max(serials, default=None)

    # What has spoiled it since

    def _judge(
        self, kind: ResultKind, trials: tuple[InUse, ...], check: Event | None, serial: int, by_hand: int = 0
    ) -> ResultState:
        """Return where a proved result stands; `by_hand`: serial of a good check of it, which may be newer."""
        since = min((trial.serial for trial in trials), default=serial)
        stale, doubt, how = self._spoiled(kind, since)
        for trial in trials:
            stale += self._replaced(trial)
            doubt += self._badly_read(trial)
        undecided = [undecided_words(trial) for trial in trials if trial.undecided and trial.serial > by_hand]
        if undecided and not stale and not doubt:
            how = READINGS
        doubt += undecided
        if kind.of_heat and trials:
            moved = heat_moved(self._settings, trials[0].lot_id if self.lot_id is None else self.lot_id, since)
            stale += [heat_words(*moved)] if moved else []
        if kind.after_settings:
            stale += [
                set_since_words(setting)
                for setting in self._settings
                if setting.serial is not None and setting.serial > since and setting.new != setting.old
            ][:1]
        standing = Standing.STALE if stale else Standing.DOUBT if doubt else Standing.DONE
        return ResultState(kind, standing, trials, check, tuple(stale or doubt), how, serial)

    def _spoiled(self, kind: ResultKind, since: int) -> tuple[list[Words], list[Words], str]:
        stale: list[Words] = []
        doubt: list[Words] = []
        how = ""
        for event in self._spoiling:
            cell = self.plan.spoils[event.kind].get(kind.key, Cell(Effect.STAYS))
            if cell.effect is Effect.STAYS or (event.serial or 0) <= since or self._seen_to(kind, cell, event):
                continue
            if cell.effect is Effect.REDO:
                stale.append(redo_words(event, cell.how))
            else:
                doubt.append(check_words(event, cell.how))
            how = cell.how
        return stale, doubt, how

    def _seen_to(self, kind: ResultKind, cell: Cell, event: Event) -> bool:
        """Whether a quick check (or the count, or the comparison that is enough here) was made after an event."""
        if cell.effect is Effect.REDO and not cell.how:
            return False
        return any(
            kind.key in check.detail.get("results", ())
            and not check.detail.get("fault")
            and (check.serial or 0) > (event.serial or 0)
            for check in self._checked
        )

    def _replaced(self, trial: InUse) -> list[Words]:
        reasons = []
        for number in trial.used:
            if number in self._check_ids:
                continue  # a newer check of an instrument does not spoil what was read with it before
            used = self._by_id.get(number)
            if used is None:
                reasons.append(withdrawn_words(trial, number))
                continue
            newest = [self._newest[used.machine_id, used.lot_id, name] for name in sorted(used.gives)]
            newer = next((other for other in newest if other.serial > trial.serial), None)
            if newer is not None:
                reasons.append(replaced_words(trial, number, newer.id))
        return reasons

    def _badly_read(self, trial: InUse) -> list[Words]:
        """Say that a trial's instrument was found bad and nobody has checked the result since."""
        found_bad = self._gauges.doubt_since(trial)
        given = {key for key, kind in self.plan.results.items() if trial.subject in kind.subjects}
        if found_bad is None or any(
            given.intersection(check.detail.get("results", ())) and (check.serial or 0) > found_bad
            for check in self._checked
        ):
            return []
        return [gauge_words(trial)]

    def _gauge_state(self, kind: ResultKind) -> ResultState:
        """A shop has a gauge to go by when one was proved good and not found bad since."""
        newest = self._gauges.newest_good()
        return (
            ResultState(kind, Standing.MISSING) if newest is None else ResultState(kind, Standing.DONE, serial=newest)
        )

    def _concerns(self, event: Event) -> bool:
        here = event.machine_id in (None, self.machine.id)
        if self.plan.about[event.kind] == "lot" and event.lot_id is not None:
            return here if self.lot_id is None else event.lot_id == self.lot_id
        return here

    def _of_lot(self, event: Event) -> bool:
        return self.lot_id is None or event.lot_id in (None, self.lot_id)


def _gives(trial: InUse, name: str) -> bool:
    if name.endswith("*"):
        return any(given.startswith(name[:-1]) for given in trial.gives)
    return name in trial.gives


def _newest_serial(trials: tuple[InUse, ...]) -> int | None:
    return max((trial.serial for trial in trials), default=None)
