"""What follows from the test at half speed: where a defect comes from, and which two runs tell more."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from core.guidance.verdict import Advice, Setting
from core.measuring.choices import each_of
from core.motion_trials import halfspeed
from core.motion_trials.halfspeed import Cause, HalfSpeed, Run, judge_half_speed
from core.quantity import Estimate
from core.words import Words, side_by_side, tr


@dataclass(frozen=True, slots=True, eq=False)
class HalfSpeedJudgement:
    """The test at half speed, and what follows."""

    found: HalfSpeed
    advice: tuple[Advice, ...]
    mind: tuple[Words, ...]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return halfspeed.METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return nothing: a diagnosis is no number."""
        return ()


def judge_diagnosis(run: Sequence[str], score: Sequence[float], judge: Sequence[str]) -> HalfSpeedJudgement:
    """Judge the test at half speed.

    Args:
        run: (n,) names of `halfspeed.Run`.
        score: (n,) 0 to 4.
        judge: (n,) who scored.

    Raises:
        InputError: field `run`, with its row; and as `halfspeed.judge_half_speed`.
    """
    found = judge_half_speed(each_of(Run, run, "run"), score, judge)
    mind = (
        tr(
            "Half speed halves the volumetric rate and doubles the time of a layer too, so better alone does not say "
            "which of them it is."
        ),
    )
    return HalfSpeedJudgement(found, (_cause_advice(found),), mind if found.cause is Cause.DYNAMICS else ())


def run_words(run: Run) -> Words:
    """Return the name of a run for people."""
    return {
        Run.USUAL: tr("usual"),
        Run.HALF_SPEED: tr("half speed and acceleration"),
        Run.HALF_RATE: tr("full speed, half layer height"),
        Run.LONG_LAYERS: tr("full speed, second copy on the bed"),
    }[run]


def short_run_words(run: Run) -> Words:
    """Return the name of a run for a picture."""
    return {
        Run.USUAL: tr("usual"),
        Run.HALF_SPEED: tr("half speed"),
        Run.HALF_RATE: tr("half layers"),
        Run.LONG_LAYERS: tr("two copies"),
    }[run]


def _cause_advice(found: HalfSpeed) -> Advice:
    setting, action, untouched = _causes()[found.cause]
    first = found.scores[Run.USUAL]
    said = (
        tr("{run} {score:.1f}", run=run_words(run), score=sum(own.values()) / len(own))
        for run, own in found.scores.items()
    )
    because = tr("Mean scores of {count} judges: {scores}.", count=len(first), scores=side_by_side(said, ", "))
    return Advice(setting, action, None, "", because, untouched)


def _causes() -> Mapping[Cause, tuple[Setting, Words, Words]]:
    speeds = tr("Speed, acceleration, cooling: they are not the cause.")
    setup = tr("Steps per millimetre, squareness, offsets: the setup is not the cause.")
    return {
        Cause.NO_DEFECT: (Setting.LEAVE, tr("Both judges find the usual print without fault."), speeds),
        Cause.SETUP: (
            Setting.SETUP,
            tr(
                "Slower is no better: look at geometry and setup, that is lost motion, squareness, offsets, bed, first "
                "layer and filament."
            ),
            speeds,
        ),
        Cause.DYNAMICS: (
            Setting.DYNAMICS,
            tr(
                "Slower is better. Two more runs split rate from layer time: full speed at half the layer height, and "
                "full speed with a second copy on the bed."
            ),
            setup,
        ),
        Cause.RATE: (
            Setting.DYNAMICS,
            tr("It is the flow rate: measure the flow ceiling, then the pressure lag; until then print slower."),
            setup,
        ),
        Cause.COOLING: (
            Setting.COOLING,
            tr("It is the time of a layer: more cooling, or a longer least time of a layer; speed itself is innocent."),
            setup,
        ),
        Cause.RATE_AND_COOLING: (
            Setting.DYNAMICS,
            tr("A lower rate and longer layers both help: measure the flow ceiling, then make the cooling ladder."),
            setup,
        ),
        Cause.MOTION: (
            Setting.ACCELERATION,
            tr(
                "Neither rate nor layer time: it is the motion itself. Read the ringing, try a lower corner speed, and "
                "look for lost steps: home before and after."
            ),
            setup,
        ),
        Cause.OPEN: (
            Setting.UNDECIDED,
            tr("The judges do not agree. Print the runs once more, shuffle, and score again."),
            tr("Everything: nothing is proved yet."),
        ),
    }
