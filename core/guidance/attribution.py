"""Which changes of settings can be told apart by what was read between them and after them.

One change, one check. Two changes that act on the same thing cannot be told apart where nothing was read between them:
whatever the next print shows may come from either, and both are "not attributable". They can where the first was
checked before the second, or where a kept trial lies between them that reads what both act on. The trial that the
second change comes from is such a one, where its piece was made with the first in force: against what was read before
it shows what the first did, and the next one shows against it what the second did.

A trial lies between when it was begun with the first change in force and was kept no later than the second. Where none
does, the next print is read against the last trial begun before the first change. What was both changed and undone
since then makes no difference between the two: such a pair is ended and confuses nothing. An undoing of what was in
force in that trial is a change since then, like any other.

Reference: common practice, no source; what a setting acts on, and what reads that: `actson`.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from itertools import accumulate

from core.guidance.actson import READ_BY, both_act_on, names_that_read
from core.guidance.settingorder import in_order, undone_ids
from core.records.rows import SettingInForce, Trial, TrialState
from core.words import Words, tr


class Attribution(StrEnum):
    """What can be said of the effect of a change."""

    CHECKED = "checked"
    OPEN = "open"
    UNDONE = "undone"
    NOT_ATTRIBUTABLE = "not_attributable"


@dataclass(frozen=True, slots=True)
class Change:
    """A setting with what can be said of its effect.

    Attributes:
        in_force: whether it still holds.
        with_ids: the other changes whose effect cannot be told from its own.
        would_tell: what to do so that they can be told apart; None where they can.
    """

    setting: SettingInForce
    attribution: Attribution
    in_force: bool
    with_ids: tuple[int, ...] = ()
    would_tell: Words | None = None


def judge_changes(
    settings: Sequence[SettingInForce], trials: Sequence[Trial], since_serial: int = 0
) -> tuple[Change, ...]:
    """Judge all changes of one machine, newest first.

    Args:
        settings: every setting that was ever in force on the machine, in any order.
        trials: the trials in sight, of any state and machine; their readings are not needed.
        since_serial: of the oldest trial in sight, if there are older ones: what was changed before it is not held
            against other changes, for what was read between them is not known.
    """
    ordered = in_order(settings)
    undone = undone_ids(settings)
    readings = _Readings([trial for trial in trials if trial.state is TrialState.KEPT and trial.serial is not None])
    standing = [setting for setting in ordered if setting.id not in undone]
    known = {setting.id: setting for setting in ordered}
    confused: dict[int, list[SettingInForce]] = {}
    for place, second in enumerate(standing):
        for first in standing[:place]:
            if (first.serial or 0) >= since_serial and _cannot_be_told_apart(first, second, readings, known):
                confused.setdefault(first.id or 0, []).append(second)
                confused.setdefault(second.id or 0, []).append(first)
    newest = {(setting.lot_id, setting.name): setting.id for setting in ordered}
    found = []
    for setting in ordered:
        others = confused.get(setting.id or 0, [])
        found.append(
            Change(
                setting,
                _attribution(setting, undone, bool(others)),
                newest[setting.lot_id, setting.name] == setting.id,
                tuple(other.id or 0 for other in others),
                _would_tell(setting, others[-1], newest) if others else None,
            )
        )
    return tuple(reversed(found))


def _attribution(setting: SettingInForce, undone: set[int], confused: bool) -> Attribution:
    if setting.id in undone:
        return Attribution.UNDONE
    if confused:
        return Attribution.NOT_ATTRIBUTABLE
    return Attribution.CHECKED if setting.verified_by is not None else Attribution.OPEN


class _Readings:
    """The kept trials in sight: when each was kept, and which of those that read a thing was begun last by then."""

    def __init__(self, kept: Sequence[Trial]) -> None:
        self.serials = {trial.id: trial.serial or 0 for trial in kept if trial.id is not None}
        self._kept = sorted(kept, key=lambda trial: trial.serial or 0)
        self._known: dict[tuple[tuple[str, ...], int, int | None], tuple[list[int], list[datetime]]] = {}

    def last_begun(self, names: tuple[str, ...], place: tuple[int, int | None], serial: int) -> datetime | None:
        """Return when the trial was begun that began last of those kept up to a serial number; None for none.

        Args:
            names: how the names of its estimates begin.
            place: ids of the machine and of the lot; None for any lot.
            serial: the last one that counts.
        """
        key = (names, *place)
        if key not in self._known:
            self._known[key] = self._of(names, *place)
        serials, begun = self._known[key]
        count = bisect_right(serials, serial)
        return begun[count - 1] if count else None

    def _of(self, names: tuple[str, ...], machine_id: int, lot_id: int | None) -> tuple[list[int], list[datetime]]:
        found = [
            (trial.serial or 0, trial.started_at)
            for trial in self._kept
            if trial.started_at is not None
            and trial.machine_id == machine_id
            and lot_id in (None, trial.lot_id)
            and any(estimate.name.startswith(names) for estimate in trial.estimates)
        ]
        return [serial for serial, _ in found], list(accumulate((begun for _, begun in found), max))


def _cannot_be_told_apart(
    first: SettingInForce, second: SettingInForce, readings: _Readings, known: Mapping[int | None, SettingInForce]
) -> bool:
    """Whether both act on the same thing, and nothing that tells it was read between them; `known` are all, by id."""
    if second.serial == first.serial:
        return False  # one trial's changes are one change
    if first.old == first.new or second.old == second.new:
        return False  # what was found right and written down changes nothing
    if first.lot_id is not None and second.lot_id is not None and first.lot_id != second.lot_id:
        return False
    both = both_act_on(first.name, second.name)
    if both is not None and not both:
        return False
    checked = readings.serials.get(first.verified_by) if first.verified_by is not None else None
    if checked is not None and checked < (second.serial or 0):
        return False
    names = names_that_read(first.name, second.name)
    place = first.machine_id, first.lot_id if second.lot_id is None else second.lot_id
    begun = readings.last_begun(names, place, second.serial or 0) if names else None
    if begun is not None and first.since is not None and begun > first.since:
        return False
    return _changes_since(begun, first, known) and _changes_since(begun, second, known)


def _changes_since(
    begun: datetime | None, setting: SettingInForce, known: Mapping[int | None, SettingInForce]
) -> bool:
    """Whether a setting differs from when a trial was begun: an undoing, if it was begun with what that took back."""
    taken_back = known.get(setting.undoes)
    if setting.undoes is None or taken_back is None or taken_back.since is None:
        return True
    return begun is not None and begun > taken_back.since


def _would_tell(
    one: SettingInForce, other: SettingInForce, newest: Mapping[tuple[int | None, str], int | None]
) -> Words:
    """Say how two changes can still be told apart: the later one must be in force, and what was there before known."""
    later = in_order((one, other))[-1]
    if newest[later.lot_id, later.name] != later.id or later.old is None:
        return tr("What each of them did can no longer be told.")
    both = both_act_on(one.name, other.name)
    if not both:
        return tr(
            "Undo the later one, print and read what the earlier one acts on, keep it, then set the later one anew."
        )
    return tr(
        "Undo the later one, print and read {what}, keep it, then set the later one anew.",
        what=READ_BY[min(both)].words,
    )
