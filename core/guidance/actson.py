"""What a setting acts on, and what reads that: by it two changes can be told apart, or not.

Reference: common practice, no source.
"""

from __future__ import annotations

from typing import NamedTuple

from core.guidance.names import AXES_AND_PLANES
from core.words import Words, tr


class Reader(NamedTuple):
    """What reads a thing: how the names of its estimates begin, and what a person prints and reads for it."""

    names: tuple[str, ...]
    words: Words


# What a setting acts on; one that is not named here may act on anything.
ACTS_ON = {
    "extruder_steps_mm": {"feed"},
    "filament_diameter": {"amount"},
    "flow_factor": {"amount", "outset"},
    "contour_offset": {"outset"},
    "shrink_allowance": {"scale"},
    "axis_scale": {"scale"},
    "scale": {"scale"},
    "steps": {"scale"},
    "skew": {"skew"},
    "nozzle_temperature": {"amount"},
    "retraction": {"retraction"},
    "pressure_lag": {"corners"},
    "cornering": {"corners"},
    "cooling": {"cooling"},
    "bed_temperature": {"squash"},
    "first_layer_gap": {"squash"},
    "height_offset": {"squash"},
    "print_speed": {"pace"},
    "acceleration": {"pace"},
}
READ_BY = {
    "feed": Reader(("feed_ratio",), tr("the extruder feed")),
    "amount": Reader(("flow_ratio",), tr("walls, a mass box or top pads")),
    "outset": Reader(("wall_outset",), tr("a size piece")),
    "scale": Reader(("scale_x", "scale_y", "scale_z"), tr("a size piece")),
    "skew": Reader(("squareness_",), tr("the squareness")),
    "retraction": Reader(("ladder_retraction",), tr("a ladder of the retraction")),
    "corners": Reader(("ladder_lag", "ladder_cornering"), tr("a ladder of the pressure lag or the corner speed")),
    "cooling": Reader(("ladder_cooling",), tr("a ladder of the cooling")),
    "squash": Reader(("first_layer_error", "ladder_gap"), tr("first-layer pads")),
    "pace": Reader(("trial_speed", "trial_acceleration", "acceleration_limit_"), tr("a speed trial")),
}


def acts_on(name: str) -> frozenset[str]:
    """Return what a setting acts on; nothing where nobody knows."""
    stem = name.rpartition("_")[0] if _axis(name) else name
    return frozenset(ACTS_ON.get(stem, ()))


def both_act_on(one: str, other: str) -> frozenset[str] | None:
    """Return what two settings act on both, by their names; None where nobody knows of one."""
    of_one, of_other = acts_on(one), acts_on(other)
    if not of_one or not of_other:
        return None
    axes = _axis(one), _axis(other)
    return of_one & of_other if "" in axes or axes[0] == axes[1] else frozenset()


def names_that_read(one: str, other: str) -> tuple[str, ...]:
    """Return how the names begin of what reads what two settings act on both; along an axis those of the axis."""
    axis = _axis(one) or _axis(other)
    return tuple(name for thing in sorted(both_act_on(one, other) or ()) for name in _along(thing, axis))


def _along(thing: str, axis: str) -> tuple[str, ...]:
    names = READ_BY[thing].names
    if thing == "scale" and axis:
        return tuple(name for name in names if name.endswith(f"_{axis}"))
    return tuple(name + axis for name in names) if thing == "skew" else names


def _axis(name: str) -> str:
    """Return the axis or plane that a setting is for; empty where it is for all of them."""
    stem, _, axis = name.rpartition("_")
    return axis if axis in AXES_AND_PLANES and stem in ACTS_ON else ""
