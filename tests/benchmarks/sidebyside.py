"""Ours and its peers in turns, in one process and one run: a slow minute of the machine is slow for all of them.

A contest has one job, our way of doing it and the peers' ways. Before anything is timed, each answer is held against
ours: no ratio is told of two programs that do not give the same numbers. Then they take turns, round by round, each
round beginning with another one; of every round the ratio ours/peer is taken, and told as the median of the rounds with
its quartiles.
"""

from __future__ import annotations

import gc
import math
import statistics
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

import numpy as np

LEAST_S = 0.003  # of one timing: what is quicker is done many times in a row


class DifferentAnswersError(Exception):
    """A peer gave other numbers than ours: their times cannot be compared."""


@dataclass(frozen=True)
class Way:
    """One way to do the job.

    Attributes:
        name: what does it.
        call: does it, and returns the answer; a way that `tells` returns the seconds it took instead.
        apart: how far its answer lies from ours, given (ours, its own), in the measure of the contest; None where
            there are no numbers to compare.
        tells: whether it watches its own clock (another process, which ends long after the moment that counts).
    """

    name: str
    call: Callable[[], Any]
    apart: Callable[[Any, Any], float] | None = None
    tells: bool = False


@dataclass(frozen=True)
class Contest:
    """One job and the ways to do it.

    Attributes:
        key: short name of the job, by which `floors.py` knows it.
        name: the job, with its size.
        tolerance: the largest difference of the answers, and what it is a difference of.
        before: called before each timing, outside it.
        rounds: how many at most; for jobs of seconds.
    """

    key: str
    name: str
    ours: Way
    peers: tuple[Way, ...] = ()
    tolerance: tuple[float, str] = (0.0, "")
    before: Callable[[], object] = field(default=lambda: None)
    rounds: int = 1000


@dataclass(frozen=True)
class Spread:
    """Median and quartiles."""

    median: float
    low: float
    high: float


@dataclass(frozen=True)
class Told:
    """What a contest gave: seconds of each way by round, calls of a timing, how far the answers lay apart."""

    contest: Contest
    seconds: dict[str, list[float]]
    calls: dict[str, int]
    apart: dict[str, float]

    def time_s(self, way: str) -> Spread:
        return spread(self.seconds[way])

    def ratio(self, peer: str) -> Spread:
        """Ours over the peer, round by round."""
        ours = self.seconds[self.contest.ours.name]
        return spread([own / other for own, other in zip(ours, self.seconds[peer], strict=True)])


def spread(values: list[float]) -> Spread:
    if len(values) == 1:
        return Spread(values[0], values[0], values[0])
    low, middle, high = statistics.quantiles(values, n=4, method="inclusive")
    return Spread(middle, low, high)


def side_by_side(contest: Contest, rounds: int) -> Told:
    """Compare the answers, then let the ways take turns; where there is one round, the comparing is it.

    Raises:
        DifferentAnswersError: a peer gives other numbers than ours.
    """
    ways = (contest.ours, *contest.peers)
    rounds = min(rounds, contest.rounds)
    answers, first = {}, {}
    for way in ways:
        contest.before()
        first[way.name], answers[way.name] = _timed(way, 1)
    apart = _apart(contest, answers)
    answers.clear()
    if rounds == 1:  # enough to see that all runs
        once = {name: [taken] for name, taken in first.items()}
        return Told(contest, once, dict.fromkeys(once, 1), apart)
    calls = {way.name: 1 if way.tells else _calls(first[way.name]) for way in ways}
    seconds: dict[str, list[float]] = {way.name: [] for way in ways}
    for number in range(rounds):
        begin = number % len(ways)
        for way in ways[begin:] + ways[:begin]:
            contest.before()
            if not way.tells:
                gc.collect()
            seconds[way.name].append(_timed(way, calls[way.name])[0])
    return Told(contest, seconds, calls, apart)


def _calls(once_s: float) -> int:
    return max(1, math.ceil(LEAST_S / max(once_s, 1e-7)))


def _timed(way: Way, calls: int) -> tuple[float, Any]:
    if way.tells:
        return way.call(), None
    call = way.call
    begun = time.perf_counter()
    for _ in range(calls):
        answer = call()
    return (time.perf_counter() - begun) / calls, answer


def _apart(contest: Contest, answers: dict[str, Any]) -> dict[str, float]:
    found = {}
    most, measure = contest.tolerance
    for peer in contest.peers:
        if peer.apart is None:
            continue
        found[peer.name] = float(peer.apart(answers[contest.ours.name], answers[peer.name]))
        if not found[peer.name] <= most:
            raise DifferentAnswersError(
                f"{contest.name}: {peer.name} lies {found[peer.name]:.2g} {measure} from ours, {most:g} are allowed"
            )
    return found


def relative(ours: Any, other: Any) -> float:
    """The largest difference, each group of numbers in shares of its largest one."""
    shares = []
    for own, its in zip(ours, other, strict=True):
        a, b = np.asarray(own, dtype=float), np.asarray(its, dtype=float)
        assert a.shape == b.shape, "answers of different size"
        shares.append(np.max(np.abs(a - b)) / max(np.max(np.abs(b)), 1e-300))
    return float(np.max(shares))  # not a number where one is none
