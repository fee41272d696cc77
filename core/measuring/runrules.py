"""Run rules: patterns of results in the order of time that chance alone seldom makes.

With the centre and the spread sigma known: one result beyond three sigma; two of three beyond two sigma on the same
side; eight in a row on one side of the centre; six in a row steadily up or steadily down. Results of a steady normal
process break the four rules together about once in a hundred results: a signal asks for a reading, it proves nothing.

Reference: Western Electric, Statistical Quality Control Handbook (1956); Nelson, J. Quality Technology 16 (1984)
237-239 (six steadily); Champ and Woodall, Technometrics 29 (1987) 393-399 (how often chance breaks them).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.measuring.reach import above_zero, within_reach

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]

BEYOND_SIGMA, WARNING_SIGMA = 3.0, 2.0
ONE_SIDE, STEADY = 8, 6  # results in a row


class Rule(StrEnum):
    """What stands out. The last two belong to the moving range and to the smoothed mean."""

    BEYOND = "beyond"
    TWO_OF_THREE = "two_of_three"
    ONE_SIDE = "one_side"
    STEADILY = "steadily"
    SPREAD = "spread"
    SMOOTHED = "smoothed"


@dataclass(frozen=True, slots=True)
class Run:
    """Results `first` to `last` that break a rule: above or upwards (`side` +1), below or downwards (-1).

    `completed` is the result with which the rule was broken first; from there on to `last` each one breaks it.
    """

    rule: Rule
    first: int
    completed: int
    last: int
    side: int

    def moved(self, by: int) -> Run:
        """Return the run as counted from another begin."""
        return replace(self, first=self.first + by, completed=self.completed + by, last=self.last + by)


@within_reach
@above_zero("sigma")
def find_runs(value: ArrayLike, centre: float, sigma: float) -> tuple[Run, ...]:
    """Return what breaks the four rules, by rule and side.

    Args:
        value: (n,) results in the order of time.
        centre: their long-run mean.
        sigma: their spread.

    Raises:
        InputError: field `sigma`, not above zero.

    Reference: Nelson 1984; Western Electric 1956.
    """
    distance = (np.asarray(value, dtype=float) - centre) / sigma
    runs: list[Run] = []
    for side in (1, -1):
        runs += _one_sided(side * distance, side)
    return tuple(runs)


def runs_where(broken: Bools, rule: Rule, window: int, side: int = 1) -> list[Run]:
    """Return one run for each unbroken stretch of `broken` (n,), whose pattern is `window` results long."""
    edges = np.flatnonzero(np.diff(np.concatenate([[False], broken, [False]]).astype(int)))
    stretches = edges.reshape(-1, 2).tolist()
    return [Run(rule, begin - window + 1, begin, end - 1, side) for begin, end in stretches]


def _one_sided(d: Floats, side: int) -> Iterator[Run]:
    yield from runs_where(d > BEYOND_SIGMA, Rule.BEYOND, 1, side)
    far = d > WARNING_SIGMA
    for run in runs_where(far & (_counts(far, 3) >= 2), Rule.TWO_OF_THREE, 3, side):
        first = max(run.first, 0)
        yield replace(run, first=first if far[first] else first + 1)
    yield from runs_where(_counts(d > 0, ONE_SIDE) == ONE_SIDE, Rule.ONE_SIDE, ONE_SIDE, side)
    rises = np.concatenate([[False], np.diff(d) > 0])
    yield from runs_where(_counts(rises, STEADY - 1) == STEADY - 1, Rule.STEADILY, STEADY, side)


def _counts(flags: Bools, window: int) -> NDArray[np.int64]:
    """Return how many of the last `window` flags up to each place are set, (n,)."""
    total = np.concatenate([np.zeros(window, dtype=np.int64), np.cumsum(flags)])
    return np.asarray(total[window:] - total[:-window])
