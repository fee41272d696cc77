"""What is charted over time, whose it is, and the results in their order.

A machine owns what shrinkage cannot fake: the difference X less Y of one print, squareness, reversal error, wall
outset, the bed. A lot owns what travels with the filament: the scale of its parts, diameter, density, flow factors.
They are charted apart, so that a new spool is no alarm of the machine. What only the check of an instrument gives is
the instrument's.

Reference: which quantity belongs to whom: common practice, no source. JCGM 100:2008 5.1.2 (difference and mean of two).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import timedelta
from enum import StrEnum
from functools import cache

import numpy as np

from core.guidance.names import is_magnitude, name_words
from core.measuring.gum import effective_dofs
from core.records.rows import SeriesPoint
from core.words import Words, tr

Pair = tuple[SeriesPoint, SeriesPoint]
Fetch = Callable[[str], Sequence[SeriesPoint]]  # all results of a name in use, oldest first

DIFFERENCE, MEAN = "scale_difference_xy", "scale_mean_xy"
SAME_PRINT = timedelta(days=1)  # two combs of one lot on one machine this close in time count as one print
_INSTRUMENT = ("zero_outside", "zero_inside", "zero_depth", "zero", "scale", "sd_hand", "operator_offset")


class Owner(StrEnum):
    """Whose quantity it is."""

    MACHINE = "machine"
    LOT = "lot"
    INSTRUMENT = "instrument"


@dataclass(frozen=True, slots=True)
class Quantity:
    """One line of the list: estimate or what is derived from two, whose it is, which page keeps it.

    `again`, `repeat`, `look` are the readings that tell a signal from a blunder, the cheapest first.
    """

    name: str
    owner: Owner
    words: Words
    kept_on: Words
    again: Words
    repeat: Words
    look: Words

    @property
    def of_print(self) -> bool:
        """Whether it belongs to the lot, yet the machine that printed it counts too."""
        return self.owner is Owner.LOT and self.name.startswith(("scale_", "flow_"))

    @property
    def is_magnitude(self) -> bool:
        """Whether it is written without a plus."""
        return is_magnitude(self.name)


_AGAIN = tr("read the same piece again with another instrument")
_PRINT = tr("print the same piece again, with the same file and settings, and read it")
_CYCLE = tr("repeat the trial without touching the machine")
_CYCLE_LATER = tr("repeat it on another day, after the same warm-up")
_REREAD = tr("read the same places of the filament again with another instrument")
_STRETCH = tr("read another stretch of the same spool")
_WEIGH = tr("weigh and measure the same piece again with other instruments")
_SIZE = tr("Part size, Size error")
_BELTS = tr("look at the belts of both axes: pitch, teeth, tension, page Drive")
_SLOP = tr("look for play: belt, grub screw, slide; page Reversal tells how much")
_FRAME = tr("look at the frame: screws, rails, what it stands on")
_BED = tr("look at the bed: clamps, screws, dirt below, time to warm through")
_BEAD = tr("look at the nozzle for wear, then try the flow: pages Wall and Mass")
_CHECK = (
    tr("wipe it and check it again"),
    tr("check it against another reference"),
    tr("have it looked at, and use another one until then"),
)
_SPOOL = tr("measure the filament: pages Diameter and Lots, dry or damp")


def _q(name: str, kept_on: Words, steps: tuple[Words, Words, Words], words: Words | None = None) -> Quantity:
    return Quantity(name, owner_of(name), words or _words(name), kept_on, *steps)


def owner_of(name: str) -> Owner:
    """Return whose an estimate is; a new lot changes what belongs to the lot, and nothing else."""
    if name in _INSTRUMENT:
        return Owner.INSTRUMENT
    lot = ("diameter", "ovality", "area_ratio", "mass_per_length", "density", "drying_loss", "stock", "flow_", MEAN,
           "shrinkage_", "shrink_allowance_")  # fmt: skip
    scales = name.startswith("scale_") and name != DIFFERENCE
    return Owner.LOT if scales or name.startswith(lot) else Owner.MACHINE


@cache
def main_quantities() -> tuple[Quantity, ...]:
    """Return what is worth a chart in every shop, those of the machine first, those of an instrument last."""
    printed, moved = (_AGAIN, _PRINT), (_CYCLE, _CYCLE_LATER)
    return (
        _q(DIFFERENCE, tr("Part size, Size error, one lot along X and along Y"), (*printed, _BELTS)),
        *(_q(f"squareness_{plane}", tr("Machine geometry, Squareness"), (*printed, _FRAME))
          for plane in ("xy", "xz", "yz")),
        *(_q(f"reversal_{axis}", tr("Machine geometry, Reversal"), (*moved, _SLOP)) for axis in "xyz"),
        *(_q(f"lost_motion_{axis}", _SIZE, (*printed, _SLOP)) for axis in "xy"),
        _q("wall_outset", _SIZE, (*printed, _BEAD)),
        _q("bed_flatness", tr("Machine geometry, Bed plane"), (*moved, _BED)),
        _q("feed_ratio", tr("Filament, Feed"), (*moved, tr("look at the feed wheel: teeth, pressure, dust"))),
        _q(MEAN, tr("Part size, Size error, one lot along X and along Y"), (*printed, _SPOOL)),
        *(_q(f"scale_{axis}", _SIZE, (*printed, _SPOOL)) for axis in "xyz"),
        *(_q(name, tr("Filament, Diameter"), (_REREAD, _STRETCH, tr("weigh a length of it: page Lots")))
          for name in ("diameter", "ovality")),
        _q("mass_per_length", tr("Filament, Lots"), (_REREAD, _STRETCH, tr("measure its diameter: page Diameter"))),
        _q("flow_ratio", tr("Flow trials, Wall and Mass"), (_WEIGH, _PRINT, _SPOOL)),
        *(_q(name, tr("Bench, Instruments"), _CHECK) for name in _INSTRUMENT),
    )  # fmt: skip


def other_quantities(names: Iterable[str]) -> tuple[Quantity, ...]:
    """Return the quantities of further estimates that are on record, by name."""
    known = {quantity.name for quantity in main_quantities()}
    steps = (_CYCLE, _CYCLE_LATER, tr("look at what the page that keeps it names"))
    return tuple(_q(name, tr("the page that keeps it"), steps) for name in sorted(set(names) - known))


def results_in_order(name: str, fetch: Fetch) -> tuple[SeriesPoint, ...]:
    """Return the results of a quantity, oldest first, each with its own uncertainty.

    Args:
        name: an estimate, `scale_difference_xy` or `scale_mean_xy`.
        fetch: gives all results of an estimate for the wanted machine and lot.
    """
    if name == DIFFERENCE:
        return _combined(_pairs(fetch("scale_x"), fetch("scale_y")), 1.0, -1.0)
    if name == MEAN:
        return _combined(_pairs(fetch("scale_x"), fetch("scale_y")), 0.5, 0.5)
    return tuple(fetch(name))


def _pairs(x: Sequence[SeriesPoint], y: Sequence[SeriesPoint]) -> list[Pair]:
    """Pair the scale along X and along Y of one trial; else of one machine and lot within a day, each used once."""
    of_trial = {point.trial_id: point for point in y}
    pairs = [(point, of_trial.pop(point.trial_id)) for point in x if point.trial_id in of_trial]
    paired = {point.trial_id for point, _ in pairs}
    alone = [(0, point) for point in x if point.trial_id not in paired] + [(1, point) for point in of_trial.values()]
    waiting: dict[tuple[int, int], tuple[int, SeriesPoint]] = {}
    for axis, point in sorted(alone, key=lambda entry: entry[1].kept_at):
        if point.machine_id is None or point.lot_id is None:
            continue
        here = point.machine_id, point.lot_id
        other_axis, other = waiting.get(here, (axis, point))
        if other_axis != axis and point.kept_at - other.kept_at <= SAME_PRINT:
            pairs.append((other, point) if other_axis == 0 else (point, other))
            del waiting[here]
        else:
            waiting[here] = axis, point
    return pairs


def _combined(pairs: list[Pair], a: float, b: float) -> tuple[SeriesPoint, ...]:
    """Return a*x + b*y of each pair; what both share (the instrument's scale, the lot) is not known here to cancel."""
    if not pairs:
        return ()
    u = np.array([(abs(a) * x.u, abs(b) * y.u) for x, y in pairs])
    dofs = effective_dofs(u, np.array([(x.dof, y.dof) for x, y in pairs]))
    points = []
    for (x, y), parts, dof in zip(pairs, u, dofs, strict=True):
        later = max(x, y, key=lambda point: (point.kept_at, point.trial_id))
        value = a * x.value + b * y.value
        points.append(replace(later, value=value, u=float(np.hypot(*parts)), dof=float(dof)))
    return tuple(sorted(points, key=lambda point: (point.kept_at, point.trial_id)))


def _words(name: str) -> Words:
    derived = {DIFFERENCE: tr("scale error, X less Y"), MEAN: tr("scale error, mean of X and Y")}
    return derived[name] if name in derived else name_words(name)
