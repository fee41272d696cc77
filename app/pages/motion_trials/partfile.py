"""The part whose time counts: a file of G-code, read and timed beside the window, or the usual straight of a part."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from PySide6.QtCore import QObject, Signal

from app.jobs import Job
from core.errors import InputError
from core.records.outside import content_of
from core.words import Words, tr

if TYPE_CHECKING:
    from core.motion_trials.gcodepath import Path as MotionPath
    from core.motion_trials.gcodetime import Limits
    from core.motion_trials.layertime import LayerRule
    from core.motion_trials.parttime import PartTimes

_LARGEST_MB = 500  # some ten million lines
_READ_RATIO = 0.2  # of the work: a file is read once and timed for each level
_STRAIGHTS = 400  # of the usual straight: enough that start and end do not count


class Asked(NamedTuple):
    """What a part is timed for."""

    limits: Limits
    of: str
    levels: tuple[float, ...]
    speed_mm_s: float | None
    ceiling_mm3_s: float | None
    rule: LayerRule | None = None


class PartFile(QObject):
    """Holds the chosen file and its times; `timed` when they are there, `failed` with the error.

    Attributes:
        name: of the file; empty for the usual straight.
        times: of the last answer; None where they are not known any more.
    """

    timed = Signal()
    failed = Signal(object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.name = ""
        self.times: PartTimes | None = None
        self._text: bytes | None = None
        self._path: MotionPath | None = None
        self._asked: Asked | None = None
        self._timed: Asked | None = None
        self._stored_s: dict[float, float] = {}
        self.job = Job(self)
        self.job.answered.connect(self._take)
        self.job.failed.connect(self._fail)

    def choose(self, path: str) -> None:
        """Take a file.

        Raises:
            InputError: it cannot be read, or is too large.
        """
        text = content_of(Path(path), _LARGEST_MB)
        self.forget()
        self.name, self._text = Path(path).name, text

    def forget(self) -> None:
        """Go back to the usual straight."""
        self.job.stop()
        self.name, self.times, self._stored_s = "", None, {}
        self._text, self._path, self._asked, self._timed = None, None, None, None

    def give_up(self) -> None:
        """Go back to the usual straight: somebody stopped the timing."""
        self.forget()
        self.timed.emit()

    def conditions(self) -> dict[str, Any]:
        """Return what a trial keeps: the name of the file and the time of each level."""
        if not self.name:
            return {}
        known = self.times.time_s if self.times else self._stored_s
        return {"file": self.name, "times_s": {f"{level:.6g}": time for level, time in known.items()}}

    def recall(self, conditions: Mapping[str, Any]) -> None:
        """Go on with what a trial kept; its file is not here."""
        self.forget()
        self.name = str(conditions.get("file") or "")
        self._stored_s = {float(level): float(time) for level, time in (conditions.get("times_s") or {}).items()}

    def times_of(self, asked: Asked, straight_mm: float) -> dict[float, float]:
        """Return the time of each level; of a file only once it is timed: `timed` follows.

        Raises:
            InputError: a limit or the straight cannot be, the file is still being timed, or it is not here any more.
        """
        from core.motion_trials.gcodetime import straights_path
        from core.motion_trials.parttime import part_times

        limits, of, levels, speed, _ceiling, rule = asked
        if not self.name:
            path = straights_path(straight_mm, _STRAIGHTS)
            self.times = part_times(path, limits, of, levels, speed_mm_s=speed, rule=rule)
            return self.times.time_s
        if self._text is None and self._path is None:
            if set(levels) <= set(self._stored_s):
                return self._stored_s
            raise InputError("", tr("The file {name} is not here; choose it again to time it.", name=self.name))
        if self._timed == asked and self.times is not None:
            return self.times.time_s
        if self._asked != asked:
            self._asked = asked
            read, text = self._path, self._text or b""
            self.job.start(lambda step: _read_and_time(read, text, asked, step))
        raise InputError("", tr("Timing {name}…", name=self.name))

    def says(self) -> list[Words]:
        """Say what the path tells beside its time, to be kept with the trial."""
        from core.guidance.motionadvice import UNITS

        times = self.times
        if not self.name or times is None:
            return [
                tr(
                    "Times are those of {count} usual straights; time a file for those of a real part.",
                    count=_STRAIGHTS,
                )
            ]
        last = max(times.time_s)
        says = [
            tr(
                "{name}: {moves} moves; {percent:.0f} % of the printed way at its speed at the last level.",
                name=self.name, moves=times.moves, percent=100 * times.at_speed_ratio[last],
            )
        ]  # fmt: skip
        if over := [level for level, share in times.above_ratio.items() if share > 0]:
            percent = 100 * times.above_ratio[max(over)]
            unit = UNITS[self._timed.of if self._timed else "speed"]
            text = tr(
                "From {level:.4g} {unit} on the rate passes the flow ceiling, "
                "at the last level on {percent:.0f} % of it.",
                level=min(over), unit=unit, percent=percent,
            )  # fmt: skip
            says.append(text)
        return says

    def _take(self, answer: Any) -> None:
        self._path, self.times, self._timed = answer
        self._text = None
        self.timed.emit()

    def _fail(self, error: object) -> None:
        self.forget()
        self.failed.emit(error)


def _read_and_time(
    path: MotionPath | None, text: bytes, asked: Asked, step: Callable[[float], None]
) -> tuple[MotionPath, PartTimes, Asked]:
    """Read the file unless it is read already, and time it: all a worker does."""
    from core.motion_trials.gcodepath import read_path
    from core.motion_trials.parttime import part_times

    read = 0.0 if path else _READ_RATIO
    path = path or read_path(text, lambda part: step(read * part))
    limits, of, levels, speed, ceiling, rule = asked
    times = part_times(path, limits, of, levels, speed_mm_s=speed, ceiling_mm3_s=ceiling, rule=rule,
                       step=lambda part: step(read + (1.0 - read) * part))  # fmt: skip
    return path, times, asked
