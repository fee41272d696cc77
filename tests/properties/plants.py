"""One number of a call made not a number or infinite, in each place in turn."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import Any

import numpy as np

NO_NUMBERS = (math.nan, math.inf, -math.inf)

# Calls that answer with no number where they are given none, and why. All others refuse it in words.
_HOT = "asked for every point of a picture or every round of a fit; what it rests on was asked before"
_OWN = "its numbers are the answers of other calls, which refuse"
PASSES = {
    "core.machine_geometry.bedplane.BedPlane.": _HOT,
    "core.measuring.lines.": _HOT,
    "core.measuring.straightline.Line.": _HOT,
    "core.measuring.brokenstick.": _HOT,
    "core.measuring.ordinal.": _HOT,
    "core.measuring.gum.effective_dofs": _HOT,
    "core.guidance.splitpair.print_u_ratio": _HOT,
    "core.quantity.coverage_factor": "degrees of freedom that nobody knows give a factor that nobody knows",
    "core.guidance.known.known_of": _OWN,
    "core.part_size.features.design_terms": _OWN,
    "core.part_size.ownscore.lifetime_score": _OWN,
    "core.part_size.scatter.feature_means": _OWN,
    "core.part_size.lengths.LayerPlan.": _OWN,
    "core.guidance.predicted.verify_locked": _OWN,
    "core.motion_trials.layertime.Layers.times_s": _OWN,
    "core.pieces.": "draws with numbers that were asked for; toolpathmoves refuses what no file can hold",
}


def passes_on(name: str) -> bool:
    """Whether a call may answer with no number where it was given none."""
    return name.startswith(tuple(PASSES))


def planted(given: dict[str, Any]) -> Iterator[dict[str, Any]]:
    """Yield the arguments with one number in one of them put out of the range of numbers."""
    for name, value in given.items():
        for put in [] if name == "self" else list(_places(value)):
            for number in NO_NUMBERS:
                yield {**given, name: put(number)}


def _places(value: Any) -> Iterator[Callable[[float], Any]]:
    """Yield what puts a number into each place of a value: itself, or the middle of a list or an array."""
    if isinstance(value, float):
        yield lambda number: number
    elif isinstance(value, np.ndarray) and value.dtype.kind == "f" and value.size:
        yield lambda number: np.where(np.arange(value.size).reshape(value.shape) == value.size // 2, number, value)
    elif type(value) in (list, tuple) and value:
        middle = len(value) // 2
        for put in _places(value[middle]):
            yield lambda number, put=put: type(value)([*value[:middle], put(number), *value[middle + 1 :]])
