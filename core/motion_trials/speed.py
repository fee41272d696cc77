"""The speed trial: five levels in equal ratios, scored blind, against the time the part really takes.

    level k: low (high/low)^(k/(n - 1))        saving of a step = 1 - t[k+1]/t[k]

The level to use is the fastest whose mean score is proved at or above what the customer asks; a faster one is not worth
it where it saves under 5 % of the time (the knee).

Reference: core.measuring.ladder for scores; core.motion_trials.gcodetime for times. Five levels, about 1.4 from one to
the next, 5 %: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.ladder import Ladder, ScoredStep, fit_scores
from core.words import tr

Floats = NDArray[np.float64]
Score = float  # 0 (useless) to 4 (without fault)

METHOD = "speed 2"
LEVELS = 5
SAVES_LITTLE = 0.05


@dataclass(frozen=True, slots=True)
class Level:
    """A level with its time: `front` where no other is both faster and better, `enough` where the score is proved."""

    scored: ScoredStep
    time_s: float
    front: bool
    enough: bool


@dataclass(frozen=True, slots=True, eq=False)
class SpeedTrial:
    """The answer.

    Attributes:
        levels: slow to fast.
        ladder: the scores.
        chosen: the level to use; None where none is proved good enough.
        knee: the level after which a step saves under 5 % of the time; None where every step saves more.
        asked: the score asked for.
    """

    levels: tuple[Level, ...]
    ladder: Ladder
    chosen: Level | None
    knee: Level | None
    asked: float


def judge_levels(
    speed_mm_s: Sequence[float],
    score: Sequence[float],
    judge: Sequence[str],
    time_s: dict[float, float],
    asked_score: Score,
    rng: np.random.Generator,
    piece: Sequence[str] | None = None,
) -> SpeedTrial:
    """Return the fastest level that is good enough, and where faster buys nothing.

    Args:
        speed_mm_s: (n,) level of each scored specimen; an acceleration or another limit counts as one too.
        score: (n,) 0 to 4.
        judge: (n,) who scored.
        time_s: by level the time of the part.
        asked_score: what the customer asks for.
        rng: of the shuffles that tell chance.
        piece: (n,) the piece each score is of; None: all of different ones.

    Raises:
        InputError: as `fit_scores`; `asked_score` outside 0 to 4; `time_s` of a level missing or not above zero.
    """
    if not 0 <= asked_score <= 4:
        raise InputError("asked_score", tr("The score asked for lies between 0 and 4; 3 is usual."))
    ladder = fit_scores(speed_mm_s, score, judge, rng, piece=piece)
    times = [time_s.get(s.step, 0.0) for s in ladder.scored]
    if not all(time > 0 for time in times):
        raise InputError("time_s", tr("The time of a level is not known; choose a file, or type the usual straight."))
    levels = tuple(
        Level(s, time, _on_front(number, times, ladder.scored), s.place.low >= asked_score)
        for number, (s, time) in enumerate(zip(ladder.scored, times, strict=True))
    )
    chosen: Level | None = None
    for level in sorted((level for level in levels if level.enough), key=lambda level: -level.time_s):
        if chosen is None or 1.0 - level.time_s / chosen.time_s >= SAVES_LITTLE:
            chosen = level
    return SpeedTrial(levels, ladder, chosen, knee_of(levels), asked_score)


def knee_of(levels: Sequence[Level]) -> Level | None:
    """Return the first level from which the next faster one saves under 5 % of the time."""
    for here, faster in zip(levels, levels[1:], strict=False):
        if here.time_s - faster.time_s < SAVES_LITTLE * here.time_s:
            return here
    return None


def _on_front(number: int, times: Sequence[float], scored: Sequence[ScoredStep]) -> bool:
    own = scored[number].place.score
    return not any(
        times[other] <= times[number] and scored[other].place.score >= own and
        (times[other] < times[number] or scored[other].place.score > own)
        for other in range(len(times)) if other != number
    )  # fmt: skip
