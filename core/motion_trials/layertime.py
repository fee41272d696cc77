"""Least layer time: a layer that would be done sooner waits, or is slowed down, so that faster moves buy nothing.

    v <= path/t_min        wait = max(0, t_min - t)

Symbols: path of the printing moves of a layer, t_min least time of a layer, v printing speed, t time of the layer by
the time model, ways without printing included. The first line takes it that the path never slows down: up to that speed
no layer waits on any machine. Ramps and corners make a layer longer, so it really waits from a higher speed on.

A layer begins where filament is laid down at another height than before.

Reference: elementary; the least layer time itself (for cooling): common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import above_zero, finite_out
from core.motion_trials.gcodepath import Path
from core.words import tr

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]

_LONGEST_MM = 1e12  # of a layer in a file
LONGEST_S = 600.0  # nobody waits longer for a layer (common practice, no source)
_SAME_MM = 1e-4  # heights closer than this are one
_CLIMBS: float = 0.5  # share of the printed length that climbs while printing, above which there are no layers
_STEEP: float = 1e-5  # rise over way of a move that climbs


@dataclass(frozen=True, slots=True)
class LayerRule:
    """Least time of a layer, and the path of the shortest one where no file tells it."""

    least_s: float
    path_mm: float | None = None


@dataclass(frozen=True, slots=True, eq=False)
class Layers:
    """The layers of a path: the first move of each, and the length of its printing moves."""

    first: Ints
    path_mm: Floats

    @finite_out("move_s")
    def times_s(self, move_s: Floats) -> Floats:
        """Return the time of each layer, up to the first move of the next, from the time of each move.

        Raises:
            InputError: field `move_s`, beyond numbers.
        """
        return np.asarray(np.add.reduceat(move_s, self.first))


@dataclass(frozen=True, slots=True)
class LayerTimes:
    """How the least layer time holds a part up.

    Attributes:
        rule: what is asked.
        count: of the layers; for a part without a file how many shortest layers its path makes.
        shortest_mm: path of the shortest layer.
        line: where it begins in the file, counted from 1; 0 without a file.
        shortest_s: by level the time that the quickest layer takes without waiting.
        wait_s: by level the sum of all waits.
        waiting: by level how many layers wait.
        floor_mm_s: speed up to which no layer waits whatever the ramps, and the one from which the shortest layer waits
            by the time model; infinite where it does not wait at any speed looked at.
    """

    rule: LayerRule
    count: float
    shortest_mm: float
    line: int
    shortest_s: dict[float, float]
    wait_s: dict[float, float]
    waiting: dict[float, float]
    floor_mm_s: tuple[float, float]

    def waits(self, level: float) -> bool:
        """Whether a layer waits at a level.

        Raises:
            InputError: field `level`, for one that was not timed.
        """
        if level not in self.waiting:
            says = tr("The time of a level is not known; choose a file, or type the usual straight.")
            raise InputError("level", says)
        return self.waiting[level] > 0


def layers_of(path: Path) -> Layers:
    """Return the layers of a path.

    Raises:
        InputError: field `least_layer_s`: nothing is printed, or the path climbs while it prints and has no layers.
    """
    prints = np.flatnonzero(path.prints)
    if prints.size == 0:
        raise InputError("least_layer_s", tr("This file prints nothing, so it has no layers; leave this empty."))
    climbing = prints[np.abs(path.begin.z[prints]) > _STEEP]
    if np.sum(path.length_mm[climbing]) > _CLIMBS * np.sum(path.length_mm[prints]):
        says = tr("This path climbs while it prints, so it has no layers to be timed; leave this empty.")
        raise InputError("least_layer_s", says)
    way = np.where(path.feeds_only, 0.0, path.length_mm)
    height_mm = np.cumsum(path.begin.z * way)[prints]
    begins = np.flatnonzero(np.abs(np.diff(height_mm, prepend=np.inf)) > _SAME_MM)
    return Layers(prints[begins], np.asarray(np.add.reduceat(path.length_mm[prints], begins)))


@above_zero("least_s")
@finite_in("least_s", "path_mm")
def floor_mm_s(path_mm: float, least_s: float) -> float:
    """Return the speed up to which a layer of this path never waits: path/t_min.

    Raises:
        InputError: field `least_s`, not above zero, or `path_mm`, longer than any file's.
    """
    if not abs(path_mm) <= _LONGEST_MM:
        raise InputError("path_mm", tr("A layer of {mm:g} mm of path cannot be; check the file.", mm=path_mm))
    return path_mm / least_s


def check_rule(rule: LayerRule) -> None:
    """Refuse a least layer time or a path that cannot be.

    Raises:
        InputError: field `least_layer_s` or `layer_mm`.
    """
    if not 0 < rule.least_s <= LONGEST_S:
        says = tr("A least layer time of {s:g} s is not between 0 and {most:g} s; retype it or leave it empty.",
                  s=rule.least_s, most=LONGEST_S)  # fmt: skip
        raise InputError("least_layer_s", says)
    if rule.path_mm is not None and not 0 < rule.path_mm < 1e6:
        says = tr("A layer of {mm:g} mm of path cannot be; type the length of all its lines.", mm=rule.path_mm)
        raise InputError("layer_mm", says)


@finite_in("layer_s", "least_s")
def waits_s(layer_s: Floats, least_s: float) -> Floats:
    """Return how long each layer waits."""
    return np.asarray(np.maximum(least_s - layer_s, 0.0))
