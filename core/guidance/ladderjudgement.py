"""What the judgements of a ladder share, whether its steps were told apart by one criterion or by several."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, TypeVar

from core.guidance.verdict import Advice
from core.measuring.criteria import CriteriaLadder
from core.measuring.ladder import Ladder
from core.motion_trials.ladders import LadderReadings
from core.quantity import Estimate
from core.words import Words

FittedT = TypeVar("FittedT", Ladder, CriteriaLadder)


@dataclass(frozen=True, slots=True, eq=False)
class StepJudgement(Generic[FittedT]):
    """A ladder, what was read, and what follows."""

    readings: LadderReadings
    ladder: FittedT
    advice: tuple[Advice, ...]
    mind: tuple[Words, ...]

    @property
    def new_value(self) -> float | None:
        """What is put in force; None where nothing is found."""
        return self.ladder.chosen

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the step to use; none where none is found."""
        kind = self.readings.kind
        found = self.ladder.estimate(f"ladder_{kind.key}", kind.unit)
        return () if found is None else (found,)
