"""The instruments of the shop in the setup walk: which are proved good, and what the bad ones throw doubt on.

From the last good check before an instrument was found bad to the next good one nobody knows how long it had been bad.
Reference: ISO 10012:2003 8.3.3 and common practice of calibration rooms.
"""

from __future__ import annotations

from collections.abc import Sequence

from core.measuring.doubt import conformity_of
from core.measuring.tolerance import Conformity
from core.records.rows import Event, InUse, Trial, TrialState

GAUGE_BAD = "gauge_bad"


class Gauges:
    """Serial numbers at which each instrument was found good or bad, by kept checks and by logged events."""

    def __init__(self, checks: Sequence[Trial], events: Sequence[Event]) -> None:
        self._good: dict[int, list[int]] = {}
        self._bad: dict[int, list[int]] = {}
        for check in checks:
            if check.state is TrialState.KEPT and check.serial is not None and check.instrument_id is not None:
                said = conformity_of(check)
                if said is Conformity.CONFORMING:
                    self._good.setdefault(check.instrument_id, []).append(check.serial)
                elif said is Conformity.NOT_CONFORMING:
                    self._bad.setdefault(check.instrument_id, []).append(check.serial)
        for event in events:
            if event.kind == GAUGE_BAD and event.instrument_id is not None:
                self._bad.setdefault(event.instrument_id, []).append(event.serial or 0)

    def doubt_since(self, trial: InUse) -> int | None:
        """Return when the instrument of a trial was last found bad, where that throws doubt on it; None where not."""
        if trial.instrument_id is None:
            return None
        good, bad = self._good.get(trial.instrument_id, []), self._bad.get(trial.instrument_id, [])
        before = max((serial for serial in good if serial < trial.serial), default=0)
        after = min((serial for serial in good if serial > trial.serial), default=None)
        found = [serial for serial in bad if before < serial and (after is None or serial < after)]
        return max(found, default=None)

    def newest_good(self) -> int | None:
        """Return when one of the instruments was last proved good that was not found bad since; None for none."""
        good = [
            max(serials)
            for number, serials in self._good.items()
            if max(serials) > max(self._bad.get(number, []), default=0)
        ]
        return max(good, default=None)
