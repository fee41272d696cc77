"""The time of a part at each level of a trial, and along a range of levels: where faster buys nothing.

Reference: core.motion_trials.gcodetime.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.motion_trials.gcodepath import Path
from core.motion_trials.gcodetime import Limits, PathTime, time_path
from core.motion_trials.layertime import LayerRule, Layers, LayerTimes, check_rule, floor_mm_s, layers_of, waits_s
from core.words import tr

Floats = NDArray[np.float64]

SHARES = np.linspace(0.0, 1.0, 41)
SPEED, ACCELERATION = "speed", "acceleration"
_ALONG = 13  # levels of the curve: smooth to the eye, and a file of a million moves is timed in a few seconds
_HIGHEST = 1e7  # of a level, in mm/s or mm/s2
_BEYOND = 1.6  # how far the curve goes past the slowest and the fastest level


@dataclass(frozen=True, slots=True, eq=False)
class PartTimes:
    """What a path takes.

    Attributes:
        time_s: by level, waits for the least layer time included.
        at_speed_ratio: by level the share of the printed length driven at the wanted speed.
        above_ratio: by level the share of it whose rate passes the flow ceiling; empty without one.
        rate_mm3_s: by level the volumetric rates (m,) that shares `SHARES` of the printed length do not pass.
        levels: (k,) of the curve.
        along_s: (k,) its times, waits included.
        moves: of the path.
        printed_mm: length of its printing moves.
        layers: how the least layer time holds it up; None where none is asked.
    """

    time_s: dict[float, float]
    at_speed_ratio: dict[float, float]
    above_ratio: dict[float, float]
    rate_mm3_s: dict[float, Floats]
    levels: Floats
    along_s: Floats
    moves: int
    printed_mm: float
    layers: LayerTimes | None = None


def part_times(
    path: Path,
    limits: Limits,
    of: str,
    level: Sequence[float],
    *,
    speed_mm_s: float | None = None,
    ceiling_mm3_s: float | None = None,
    rule: LayerRule | None = None,
    step: Callable[[float], None] = lambda part: None,
) -> PartTimes:
    """Return the time of a path at each level.

    Args:
        path: the moves.
        limits: of the machine.
        of: `speed` of the printing moves in mm/s, or `acceleration` in mm/s2.
        level: one or more.
        speed_mm_s: speed of the printing moves where levels are accelerations; the file's own when None.
        ceiling_mm3_s: flow ceiling to hold the rates against; None for none.
        rule: least layer time; with a path of its own where the path given here has no layers.
        step: called with the part of the work done.

    Raises:
        InputError: field `level` for none or one not above zero; as `gcodetime.time_path`, `layertime.check_rule` and
            `layers_of`.
    """
    if not level or not all(0 < value < _HIGHEST for value in level):
        raise InputError("level", tr("Each level must be a number above 0; retype it."))
    layered = None if rule is None else _Layered(path, rule)
    wanted = sorted(set(level))
    along = np.geomspace(wanted[0] / _BEYOND, wanted[-1] * _BEYOND, _ALONG)
    total = len(wanted) + along.size
    times: list[PathTime] = []
    for number, value in enumerate([*wanted, *(float(v) for v in along)]):
        times.append(_at(path, limits, of, value, speed_mm_s))
        step((number + 1) / total)
    own = dict(zip(wanted, times, strict=False))
    above = {} if ceiling_mm3_s is None else {v: t.above_ratio(path.length_mm, ceiling_mm3_s) for v, t in own.items()}
    waits = np.zeros(total) if layered is None else np.array([layered.wait_s(t) for t in times])
    return PartTimes(
        time_s={value: t.duration_s + float(wait) for (value, t), wait in zip(own.items(), waits, strict=False)},
        at_speed_ratio={value: t.at_speed_ratio for value, t in own.items()},
        above_ratio=above,
        rate_mm3_s={value: _rates(path, t) for value, t in own.items()},
        levels=along,
        along_s=np.array([t.duration_s for t in times[len(wanted) :]]) + waits[len(wanted) :],
        moves=path.moves,
        printed_mm=times[0].printed_mm,
        layers=None if layered is None else layered.told(own, along, times[len(wanted) :], of),
    )


class _Layered:
    """A path held against the least layer time: layer by layer, or as many shortest layers as its length makes."""

    def __init__(self, path: Path, rule: LayerRule) -> None:
        check_rule(rule)
        self.rule = rule
        self.layers: Layers | None = layers_of(path) if rule.path_mm is None else None
        if self.layers is not None:
            at = int(np.argmin(self.layers.path_mm))
            self.shortest_mm = float(self.layers.path_mm[at])
            self.count, self.line = float(self.layers.path_mm.size), int(path.line[self.layers.first[at]]) + 1
        else:
            self.shortest_mm, self.line = float(rule.path_mm or 0.0), 0
            self.count = float(np.sum(path.length_mm[path.prints])) / self.shortest_mm
            if self.count <= 0.0:
                raise InputError("file", tr("Nothing is printed along this path; choose a file that prints."))

    def layer_s(self, timed: PathTime) -> Floats:
        """Return the time of each layer; of one where all are alike."""
        if self.layers is not None:
            return self.layers.times_s(timed.move_s)
        return np.array([timed.duration_s / self.count])

    def waiting(self, timed: PathTime) -> float:
        """Return how many layers wait."""
        each = self.count if self.layers is None else 1.0
        return each * float(np.sum(self.layer_s(timed) < self.rule.least_s))

    def wait_s(self, timed: PathTime) -> float:
        """Return how long all layers wait."""
        each = self.count if self.layers is None else 1.0
        return each * float(np.sum(waits_s(self.layer_s(timed), self.rule.least_s)))

    def told(self, own: dict[float, PathTime], along: Floats, times: Sequence[PathTime], of: str) -> LayerTimes:
        """Return what the least layer time does at each level, and from which speed on."""
        quickest = np.array([float(np.min(self.layer_s(t))) for t in times])
        sooner = np.flatnonzero(quickest < self.rule.least_s)
        low = floor_mm_s(self.shortest_mm, self.rule.least_s)
        high = float("inf")
        if of == SPEED and sooner.size and sooner[0] > 0:
            high = max(low, float(np.interp(-self.rule.least_s, -quickest, along)))
        elif of == SPEED and sooner.size:
            high = max(low, float(along[0]))  # it waits at all speeds looked at, and may wait at slower ones
        return LayerTimes(
            rule=self.rule,
            count=self.count,
            shortest_mm=self.shortest_mm,
            line=self.line,
            shortest_s={value: float(np.min(self.layer_s(t))) for value, t in own.items()},
            wait_s={value: self.wait_s(t) for value, t in own.items()},
            waiting={value: self.waiting(t) for value, t in own.items()},
            floor_mm_s=(low, high),
        )


def _rates(path: Path, timed: PathTime) -> Floats:
    """Return the rates that shares of the printed length do not pass; zeros where nothing is printed."""
    printed = np.flatnonzero(path.prints)
    if printed.size == 0:
        return np.zeros(SHARES.size)
    order = printed[np.argsort(timed.rate_mm3_s[printed])]
    along = np.cumsum(path.length_mm[order])
    place = np.searchsorted(along, SHARES * along[-1]).clip(max=order.size - 1)
    return np.asarray(timed.rate_mm3_s[order[place]])


def _at(path: Path, limits: Limits, of: str, value: float, speed_mm_s: float | None) -> PathTime:
    if of == SPEED:
        return time_path(path, limits, speed_mm_s=value)
    return time_path(path, replace(limits, acceleration_mm_s2=value), speed_mm_s=speed_mm_s)
