"""The ladders that ship with the program, read from `resources/ladders.toml`: data, so that a shop may add its own.

Reference: ranges and steps are common practice, no source.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from importlib.resources import files
from typing import Any

from core.errors import InputError
from core.measuring.ladder import Choose
from core.words import tr

Steps = Sequence[float]  # in the unit of their ladder
Bound = float  # likewise


class Read(StrEnum):
    """How the specimens of a ladder are read."""

    SCORE = "score"
    WIDTHS = "widths"
    LOW = "low"
    HIGH = "high"


@dataclass(frozen=True, slots=True)
class LadderKind:
    """One ladder: the words of its keys are explained in the head of the file."""

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

    @property
    def holds_for_lot(self) -> bool:
        """Whether the result holds for one filament lot only."""
        return self.keep == "lot"


@cache
def ladders() -> Mapping[str, LadderKind]:
    """Return the ladders by key, in the order of the file."""
    data = tomllib.loads((files("resources") / "ladders.toml").read_text(encoding="utf-8"))
    return {key: _kind(key, entry) for key, entry in data.items()}


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


def _kind(key: str, entry: Mapping[str, Any]) -> LadderKind:
    own = dict(entry)
    return LadderKind(key=key, **own | {"choose": Choose(own["choose"]), "read": Read(own["read"])})
