"""The ladders that ship with the program, read from `resources/ladders.toml`: data, so that a shop may add its own.

Reference: ranges and steps are common practice, no source.
"""

from __future__ import annotations

import math
import tomllib
from collections.abc import Iterable, Mapping, Sequence, Sized
from dataclasses import dataclass, field, replace
from enum import StrEnum
from functools import cache
from importlib.resources import files
from typing import Any

from core.errors import InputError
from core.measuring.criteria import Aim, Criterion
from core.measuring.ladder import Choose
from core.measuring.reach import refuse_unlike
from core.measuring.scores import HIGHEST_SCORE, LOWEST_SCORE
from core.words import tr

Step = float  # in the unit of its ladder
Steps = Sequence[Step]
Bound = float  # likewise


class Read(StrEnum):
    """How the specimens of a ladder are read."""

    SCORE = "score"
    WIDTHS = "widths"
    LOW = "low"
    HIGH = "high"

    @property
    def is_of_any_kind(self) -> bool:
        """Whether a value of any kind is read, in a unit of its own, of which the least or the most is best."""
        return self in OF_ANY_KIND


OF_ANY_KIND = frozenset({Read.LOW, Read.HIGH})


@dataclass(frozen=True, slots=True)
class LadderKind:
    """One ladder: the words of its keys are explained in the head of the file.

    Attributes:
        former: criteria of before, each after the key of the one that took its place.
    """

    key: str
    unit: str
    low: float
    high: float
    steps: int
    least: float
    most: float
    choose: Choose
    keep: str
    read: Read
    setting: str
    limit: str = ""
    geometric: bool = False
    criteria: tuple[Criterion, ...] = ()
    former: tuple[tuple[str, Criterion], ...] = ()

    def criterion(self, key: str) -> Criterion | None:
        """Return the criterion of that key, one of before too; None where there is none."""
        every = (*self.criteria, *(before for _, before in self.former))
        return next((criterion for criterion in every if criterion.key == key), None)

    def scored_by(self, keys: Iterable[str]) -> LadderKind:
        """Return the ladder with the criteria its readings were scored by: one of before stands where it was used.

        Args:
            keys: of the criteria of the readings.
        """
        seen, criteria = set(keys), []
        for criterion in self.criteria:
            before = [old for now, old in self.former if now == criterion.key and old.key in seen]
            criteria += before if before and criterion.key not in seen else [criterion, *before]
        return replace(self, criteria=tuple(criteria))

    @property
    def holds_for_lot(self) -> bool:
        """Whether the result holds for one filament lot only."""
        return self.keep == "lot"


@dataclass(frozen=True, slots=True)
class LadderReadings:
    """What was read of a ladder, each (n,): step, value, and the judge where it is a score.

    Attributes:
        limit: what the machine bears, in the ladder's unit; None where nobody said.
        piece: the piece that was scored; empty where every score is of another one.
        criterion: by which criterion it was scored; empty for a ladder with one score.
        aim: what the parts are for.
        unit: of a value that is neither score nor width; empty for a count.
    """

    kind: LadderKind
    read: Read
    step: Sequence[float]
    value: Sequence[float]
    judge: Sequence[str]
    limit: float | None = None
    piece: Sequence[str] = field(default=())
    criterion: Sequence[str] = field(default=())
    aim: Aim = Aim.LOOKS
    unit: str = ""


@cache
def ladders() -> Mapping[str, LadderKind]:
    """Return the ladders by key, in the order of the file."""
    data = tomllib.loads((files("resources") / "ladders.toml").read_text(encoding="utf-8"))
    return {key: _kind(key, entry) for key, entry in data.items()}


def usual_range(kind: LadderKind, now: Step | None, limit: Bound | None) -> tuple[float, float]:
    """Return first and last step of a new ladder: the usual ones, about what is set now, where all may be tried.

    A ladder whose usual steps begin above nothing does not go down to it: a gap of 0 scrapes the bed.

    Args:
        kind: of the ladder.
        now: what is set, in the ladder's unit; None where nobody said. What no ladder may try is left aside.
        limit: the machine's own limit; None where nobody said.
    """
    if now is not None and not kind.least <= now <= kind.most:
        now = None  # no step of a ladder
    top = limit if limit is not None and kind.least < limit < kind.most else kind.most
    if kind.geometric:
        if now is None:
            return kind.low, kind.high
        middle, ratio = math.sqrt(kind.low * kind.high), kind.high / kind.low
        low = min(max(float(f"{kind.low * now / middle:.2g}"), kind.least), top / ratio)
        return low, float(f"{low * ratio:.3g}")
    span = kind.high - kind.low
    gap = span / (kind.steps - 1)
    down = 0.0 if now is None else kind.low + span / 2 - _rounded(now, gap)
    floor = kind.least if kind.low == kind.least else max(kind.least, min(kind.low, gap))
    low = kind.low - down
    low = max(low, floor) if floor + span <= top else low
    low -= max(low + span - top, 0.0)
    return float(f"{low:.6g}"), float(f"{low + span:.6g}")


def _rounded(value: float, gap: float) -> float:
    """Return a value rounded to the place of the first figure of a gap between steps."""
    return round(value, -math.floor(math.log10(gap)))


def check_columns(readings: LadderReadings) -> None:
    """Refuse columns that differ in number.

    Raises:
        InputError: the first column that differs from the one before it.
    """
    columns: dict[str, Sized] = {"step": readings.step, "value": readings.value}
    columns |= {"judge": readings.judge} if readings.read is Read.SCORE else {}
    columns |= {"piece": readings.piece} if readings.piece else {}
    columns |= {"criterion": readings.criterion} if readings.criterion else {}
    refuse_unlike(**columns)


def check_steps(kind: LadderKind, step: Steps, limit: Bound | None) -> None:
    """Refuse steps that no machine may try, or this one may not.

    Args:
        kind: of the ladder.
        step: of every specimen.
        limit: the machine's own limit, in the ladder's unit; None where nobody said.

    Raises:
        InputError: field `step`, row the specimen at fault.
    """
    for row, value in enumerate(step):
        if limit is not None and value > limit:
            says = tr(
                "{value:g} {unit} is above this machine's limit of {limit:g} {unit}. Refused: nothing is tried there.",
                value=value,
                unit=kind.unit,
                limit=limit,
            )
            raise InputError("step", says, row)
        if not kind.least <= value <= kind.most:
            says = tr(
                "{value:g} {unit} is not between {least:g} and {most:g} {unit}; retype the step.",
                value=value,
                unit=kind.unit,
                least=kind.least,
                most=kind.most,
            )
            raise InputError("step", says, row)


def check_plan(kind: LadderKind, step: Steps, limit: Bound | None) -> None:
    """Refuse a plan with a step that may not be tried, before anything is printed.

    Raises:
        InputError: field `high` or `low`, whichever end of the ladder leads there.
    """
    try:
        check_steps(kind, step, limit)
    except InputError as error:
        at_fault = step[error.row or 0]
        raise InputError("high" if at_fault > min(step) else "low", error.message) from error


def _kind(key: str, entry: Mapping[str, Any]) -> LadderKind:
    own = dict(entry)
    criteria = tuple(Criterion(name, **bounds) for name, bounds in own.pop("criteria", {}).items())
    former = []
    for name, bounds in own.pop("former", {}).items():
        now = str(bounds["now"])
        former.append((now, Criterion(name, **{bound: value for bound, value in bounds.items() if bound != "now"})))
    for criterion in (*criteria, *(before for _, before in former)):
        for bound in (criterion.at_least, criterion.at_most):
            if bound is not None and not LOWEST_SCORE <= bound <= HIGHEST_SCORE:
                says = tr("ladders.toml, {ladder}: the bound of {name} lies between 0 and 4.",
                          ladder=key, name=criterion.key)  # fmt: skip
                raise InputError("criteria", says)
    return LadderKind(
        key=key,
        criteria=criteria,
        former=tuple(former),
        **own | {"choose": Choose(own["choose"]), "read": Read(own["read"])},
    )
