"""Which kept results stand in doubt because the instrument they were read with was found bad later, or before.

A check proves the instrument good, proves it bad, or proves nothing. From the last good check before a bad one to the
first good one after it nobody knows how long it had been bad: every result of which a reading may lie in between is in
doubt. A trial is read from when it was begun until it was kept. Nothing is deleted.

Reference: ISO 10012:2003 8.3.3 and common practice of calibration rooms.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from core.measuring.tolerance import Conformity
from core.records.rows import Trial, TrialState

CONFORMITY_KEY = "conformity"  # of the sentences of a kept check's verdict


@dataclass(frozen=True, slots=True)
class Doubtful:
    """A kept result and the check that throws doubt on it; `good_since`: the good check before, None for none."""

    trial: Trial
    bad_check_id: int
    good_since: datetime | None


def conformity_of(check: Trial) -> Conformity:
    """Return what a kept check has proved."""
    said = [Conformity(sentence[CONFORMITY_KEY]) for sentence in check.verdict if CONFORMITY_KEY in sentence]
    return said[0] if said else Conformity.NOT_PROVED


def in_doubt(checks: Iterable[Trial], trials: Iterable[Trial]) -> tuple[Doubtful, ...]:
    """Return the results in doubt, in the order given.

    Args:
        checks: kept checks of instruments, in any order; open and withdrawn ones count for nothing.
        trials: kept trials, in any order; of each, only the checks of its own instrument count.
    """
    by_instrument: dict[int, list[Trial]] = {}
    for check in checks:
        if check.state is TrialState.KEPT and check.instrument_id is not None:
            by_instrument.setdefault(check.instrument_id, []).append(check)
    for known in by_instrument.values():
        known.sort(key=_kept_at)
    found = []
    for trial in trials:
        known = by_instrument.get(-1 if trial.instrument_id is None else trial.instrument_id, [])
        if trial.state is TrialState.KEPT and trial.id not in {check.id for check in known}:
            doubt = _doubt(trial, known)
            found += [doubt] if doubt else []
    return tuple(found)


def _doubt(trial: Trial, checks: Sequence[Trial]) -> Doubtful | None:
    """Look for a bad check whose good neighbours leave a time in which the trial was read; checks by time."""
    last = _kept_at(trial)
    first = min(trial.started_at or last, last)
    good = [_kept_at(check) for check in checks if conformity_of(check) is Conformity.CONFORMING]
    for check in checks:
        if conformity_of(check) is not Conformity.NOT_CONFORMING or check.id is None:
            continue
        bad = _kept_at(check)
        since = max((at for at in good if at <= bad), default=None)
        until = min((at for at in good if at > bad), default=None)
        if (since is None or last > since) and (until is None or first < until):
            return Doubtful(trial, check.id, since)
    return None


def _kept_at(trial: Trial) -> datetime:
    assert trial.kept_at is not None  # the store gives it to every kept trial
    return trial.kept_at
