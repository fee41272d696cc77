"""Which kept results stand in doubt because the instrument they were read with was found bad later, or before.

A check proves the instrument good, proves it bad, or proves nothing. From the last good check before a bad one to the
first good one after it nobody knows how long it had been bad: every result of which a reading may lie in between is in
doubt. A trial is read from when it was begun until it was kept. Nothing is deleted.

Reference: ISO 10012:2003 8.3.3 and common practice of calibration rooms.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime

from core.measuring.tolerance import Conformity
from core.records.rows import Trial, TrialState

_ALWAYS = datetime(1970, 1, 1, tzinfo=UTC)
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


def doubt_begins(checks: Iterable[Trial]) -> datetime | None:
    """Return a moment at or before which no result of an instrument is in doubt; None where none is at any time.

    Args:
        checks: kept checks of one instrument, in any order.
    """
    proved = [(conformity_of(check), _kept_at(check)) for check in checks]
    bad = min((at for proof, at in proved if proof is Conformity.NOT_CONFORMING), default=None)
    if bad is None:
        return None
    return max((at for proof, at in proved if proof is Conformity.CONFORMING and at <= bad), default=_ALWAYS)


def in_doubt(checks: Iterable[Trial], trials: Iterable[Trial]) -> tuple[Doubtful, ...]:
    """Return the results in doubt, in the order given.

    Args:
        checks: kept checks of instruments, in any order; open and withdrawn ones count for nothing.
        trials: kept trials, in any order; of each, only the checks of its own instrument count.
    """
    kept = [check for check in checks if check.state is TrialState.KEPT]
    numbers = {check.id for check in kept}
    by_instrument: dict[int | None, list[Trial]] = {}
    for check in sorted(kept, key=_kept_at):
        by_instrument.setdefault(check.instrument_id, []).append(check)
    by_instrument.pop(None, None)
    bad = {number: _bad_times(known) for number, known in by_instrument.items()}
    found = []
    for trial in trials:
        if trial.state is TrialState.KEPT and trial.id not in numbers:
            doubt = _doubt(trial, bad.get(trial.instrument_id, ()))
            found += [doubt] if doubt else []
    return tuple(found)


@dataclass(frozen=True, slots=True)
class _BadTime:
    """A bad check, and the good ones about it; None for none."""

    check_id: int
    since: datetime | None
    until: datetime | None


def _bad_times(checks: Sequence[Trial]) -> list[_BadTime]:
    """Return each bad check of one instrument with its good neighbours; checks by time."""
    proved = [(check.id, _kept_at(check), conformity_of(check)) for check in checks]
    good = [at for _, at, proof in proved if proof is Conformity.CONFORMING]
    found = []
    for number, bad, proof in proved:
        if proof is Conformity.NOT_CONFORMING and number is not None:
            before, after = [at for at in good if at <= bad], [at for at in good if at > bad]
            found.append(_BadTime(number, max(before, default=None), min(after, default=None)))
    return found


def _doubt(trial: Trial, bad_times: Sequence[_BadTime]) -> Doubtful | None:
    """Look for a bad check whose good neighbours leave a time in which the trial was read."""
    last = _kept_at(trial)
    first = min(trial.started_at or last, last)
    for bad in bad_times:
        if (bad.since is None or last > bad.since) and (bad.until is None or first < bad.until):
            return Doubtful(trial, bad.check_id, bad.since)
    return None


def _kept_at(trial: Trial) -> datetime:
    assert trial.kept_at is not None  # the store gives it to every kept trial
    return trial.kept_at
