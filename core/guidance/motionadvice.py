"""What follows from a speed trial: the level to print at, how to go on, and where faster buys nothing."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from core.errors import InputError
from core.guidance.criteriaadvice import one_piece_words
from core.guidance.verdict import Advice, Setting
from core.measuring.finite import finite_in
from core.measuring.ladder import Answer
from core.measuring.reach import refuse_unlike
from core.motion_trials import speed
from core.motion_trials.layertime import LayerTimes
from core.motion_trials.speed import Level, SpeedTrial, judge_levels
from core.quantity import Estimate
from core.words import Words, tr

SPEED, ACCELERATION = "speed", "acceleration"
UNITS: Mapping[str, str] = {SPEED: "mm/s", ACCELERATION: "mm/s²"}
Bound = float  # in the unit of what the levels are of
_SETTINGS = {SPEED: Setting.PRINT_SPEED, ACCELERATION: Setting.ACCELERATION}


@dataclass(frozen=True, slots=True)
class LevelReadings:
    """Scores of levels, each (n,), what the levels are of, and the time of the part by level.

    Attributes:
        of: `speed` or `acceleration`.
        limit: what the machine may do at most; None where nobody said.
        piece: of each score the piece it is of; empty where every score is of another one.
        layers: how the least layer time holds the part up; None where none is asked.
    """

    of: str
    level: Sequence[float]
    score: Sequence[float]
    judge: Sequence[str]
    time_s: Mapping[float, float]
    asked_score: float
    limit: float | None = None
    piece: Sequence[str] = ()
    layers: LayerTimes | None = None


@dataclass(frozen=True, slots=True, eq=False)
class SpeedJudgement:
    """A speed trial, and what follows."""

    readings: LevelReadings
    trial: SpeedTrial
    advice: tuple[Advice, ...]
    mind: tuple[Words, ...]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return speed.METHOD

    @property
    def new_value(self) -> float | None:
        """What is put in force; None where no level is proved good enough."""
        return None if self.trial.chosen is None else self.trial.chosen.scored.step

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the level to print at, as fine as the levels lie, its mean score, and the floor of the layer time."""
        if (chosen := self.trial.chosen) is None:
            return ()
        floor = floor_estimate(self.readings.layers)
        steps = [level.scored.step for level in self.trial.levels]
        at = steps.index(chosen.scored.step)
        gap = steps[min(at + 1, len(steps) - 1)] - steps[min(at, len(steps) - 2)]
        unit = UNITS[self.readings.of]
        return (
            Estimate(f"trial_{self.readings.of}", chosen.scored.step, gap / math.sqrt(12), math.inf, unit),
            Estimate("trial_score", chosen.scored.place.score, chosen.scored.place.u, math.inf, "of 4"),
            *((floor,) if floor else ()),
        )


def judge_speed(readings: LevelReadings, rng: np.random.Generator) -> SpeedJudgement:
    """Judge a speed trial: from scores to a verdict.

    Args:
        readings: what was scored.
        rng: of the shuffles that tell chance.

    Raises:
        InputError: field `level` above the machine's limit; as `speed.judge_levels`.
    """
    piece = {"piece": readings.piece} if readings.piece else {}
    refuse_unlike(level=readings.level, score=readings.score, judge=readings.judge, **piece)
    check_levels(readings.of, readings.level, readings.limit)
    trial = judge_levels(
        readings.level,
        readings.score,
        readings.judge,
        dict(readings.time_s),
        readings.asked_score,
        rng,
        readings.piece or None,
    )
    advice = _level_advice(readings, trial) if trial.chosen else _no_level(readings, trial)
    return SpeedJudgement(readings, trial, (advice,), _mind(readings, trial))


def check_levels(of: str, level: Sequence[float], limit: Bound | None) -> None:
    """Refuse levels that the machine may not try.

    Args:
        of: `speed` or `acceleration`.
        level: of every specimen, in the unit of `UNITS`.
        limit: what the machine may do at most; None where nobody said.

    Raises:
        InputError: field `level`, with the row.
    """
    unit = UNITS[of]
    for row, value in enumerate(level):
        if limit is not None and value > limit:
            says = tr(
                "{value:g} {unit} is above this machine's limit of {limit:g} {unit}. Refused: lost steps, and worse.",
                value=value, unit=unit, limit=limit,
            )  # fmt: skip
            raise InputError("level", says, row)
        if not value > 0:
            says = tr("A level of {value:g} {unit} cannot be; retype it.", value=value, unit=unit)
            raise InputError("level", says, row)


@finite_in("time_s")
def time_text(time_s: float) -> str:
    """Return a time for people: `1 h 24 min`, `12 min`, `2 min 5 s`, `48 s`."""
    minutes, seconds = divmod(round(time_s), 60)
    if not minutes:
        return f"{seconds} s"
    if minutes < 10:
        return f"{minutes} min {seconds} s"
    hours, minutes = divmod(round(time_s / 60), 60)
    return f"{hours} h {minutes} min" if hours else f"{minutes} min"


def _level_advice(readings: LevelReadings, trial: SpeedTrial) -> Advice:
    chosen, slowest = trial.chosen, trial.levels[0]
    assert chosen is not None  # asked for only where there is one
    value, unit = chosen.scored.step, UNITS[readings.of]
    because = tr(
        "It scores {score:.1f} ({low:.1f} to {high:.1f}), {asked:g} is asked; by the time model it takes {percent:.0f} "
        "% of the time of {slowest:.4g} {unit}.",
        score=chosen.scored.place.score, low=chosen.scored.place.low, high=chosen.scored.place.high,
        asked=trial.asked, percent=100 * chosen.time_s / slowest.time_s, slowest=slowest.scored.step, unit=unit,
    )  # fmt: skip
    if held_up(readings, trial, chosen):
        because = tr("{because} A faster level is good enough too, but only waits for the least layer time.",
                     because=because)  # fmt: skip
    action = tr("Print at {value:.4g} {unit}.", value=value, unit=unit)
    return Advice(_SETTINGS[readings.of], action, value, unit, because, _untouched())


def held_up(readings: LevelReadings, trial: SpeedTrial, chosen: Level) -> bool:
    """Whether a faster level is good enough too and a layer waits at it."""
    faster = [level for level in trial.levels if level.enough and level.scored.step > chosen.scored.step]
    return readings.layers is not None and any(readings.layers.waits(level.scored.step) for level in faster)


def _no_level(readings: LevelReadings, trial: SpeedTrial) -> Advice:
    best = max(trial.levels, key=lambda level: (round(level.scored.place.score, 1), level.scored.step))
    if best.scored.place.high < trial.asked:
        action = tr("None of these levels is good enough: speed is not all of it. Make the test at half speed.")
    else:
        action = tr("Score more specimens of {value:.4g} {unit}, or go slower.",
                    value=best.scored.step, unit=UNITS[readings.of])  # fmt: skip
    because = tr(
        "The best one scores {score:.1f} ({low:.1f} to {high:.1f}); {asked:g} is asked.",
        score=best.scored.place.score, low=best.scored.place.low, high=best.scored.place.high, asked=trial.asked,
    )  # fmt: skip
    return Advice(Setting.UNDECIDED, action, None, "", because, _untouched())


def _mind(readings: LevelReadings, trial: SpeedTrial) -> tuple[Words, ...]:
    says = []
    unit = UNITS[readings.of]
    if trial.knee is not None:
        says.append(tr("Beyond {value:.4g} {unit} the next level saves under 5 % of the time.",
                       value=trial.knee.scored.step, unit=unit))  # fmt: skip
    if readings.layers is not None:
        says.append(layer_words(readings.layers, [level.scored.step for level in trial.levels], unit))
    last = trial.levels[-1]
    if trial.chosen is last and not (readings.layers and readings.layers.waits(last.scored.step)):
        says.append(tr("The last level tried is good enough: a faster one may be too; extend the trial."))
    if trial.ladder.answer is Answer.NO_DIFFERENCE:
        says.append(tr("No difference seen between the levels."))
    if readings.limit is None:
        says.append(tr("The machine's limit is not typed yet, so it is not watched here."))
    if readings.piece and len(set(readings.piece)) <= len(trial.levels):
        says.append(one_piece_words())
    return tuple(says)


def floor_estimate(layers: LayerTimes | None) -> Estimate | None:
    """Return the speed beyond which the shortest layer waits, anywhere between its bounds; None without an upper one.

    Reference: rectangular distribution between limits, JCGM 100:2008 4.3.7.
    """
    if layers is None or not math.isfinite(layers.floor_mm_s[1]):
        return None
    low, high = layers.floor_mm_s
    return Estimate("layer_floor", (low + high) / 2, max(high - low, 0.01 * low) / math.sqrt(12), math.inf, "mm/s")


def layer_words(layers: LayerTimes, level: Sequence[float], unit: str) -> Words:
    """Return from which level on layers wait, how many and how long, and the speed up to which none does."""
    least, path = layers.rule.least_s, layers.shortest_mm
    floor = tr(
        "Up to {speed:.3g} mm/s ({path:.4g} mm of path in {least:g} s) none waits, whatever its ramps.",
        speed=layers.floor_mm_s[0], path=path, least=least,
    )  # fmt: skip
    if layers.line:
        floor = tr("{floor} The shortest layer begins at line {line} of the file.", floor=floor, line=layers.line)
    held = [value for value in level if layers.waits(value)]
    if not held:
        return tr("The least layer time holds no level up. {floor}", floor=floor)
    last = max(held)
    return tr(
        "From {first:.4g} {unit} on the shortest layer is done before its least {least:g} s and waits: there faster "
        "buys nothing. At {last:.4g} {unit} {count:.0f} of {all:.0f} layers wait, {wait} in all. {floor}",
        first=min(held), last=last, unit=unit, least=least, count=layers.waiting[last], all=layers.count,
        wait=time_text(layers.wait_s[last]), floor=floor,
    )  # fmt: skip


def _untouched() -> Words:
    return tr("Steps per millimetre, flow factor; and only one of speed, acceleration and corner speed at a time.")


def level_rows(levels: Sequence[Level], of: str, layers: LayerTimes | None = None) -> list[tuple[str, str, str]]:
    """Return for each level its name, its mean score with interval, and its time, as a card shows them."""
    return [
        (
            tr("{value:.4g} {unit}", value=level.scored.step, unit=UNITS[of]),
            tr(
                "{score:.1f} ({low:.1f} to {high:.1f})",
                score=level.scored.place.score, low=level.scored.place.low, high=level.scored.place.high,
            ),
            tr("{time}, waits {wait}", time=time_text(level.time_s), wait=time_text(layers.wait_s[level.scored.step]))
            if layers is not None and layers.waits(level.scored.step)
            else time_text(level.time_s),
        )
        for level in levels
    ]  # fmt: skip
