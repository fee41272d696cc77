"""What follows from the ways to the cross-section of a filament: the diameter to set, or what to doubt first.

The way with the smallest uncertainty counts; ways that contradict one another are not averaged. Ovality and spread
along the length judge the lot.

Reference: limits of ovality, spread and change: common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from core.filament.diameter import Diameter, area_ratio
from core.filament.ways import CHANGE_MM, Way
from core.guidance.verdict import Advice, Setting
from core.quantity import Estimate, size_text
from core.words import Words, tr

OVAL_MM, OVAL_RETURN_MM, SPREAD_MM = 0.05, 0.10, 0.02
_SETTABLE_DIGITS = 3


@dataclass(frozen=True, slots=True)
class SetNow:
    """The diameter the maker claims, and the one the printing program works with."""

    nominal_mm: float
    in_force_mm: float


def best_way(ways: tuple[Way, ...]) -> Way | None:
    """Return the way that counts: of those used the one with the smallest uncertainty; None where none was."""
    return min((way for way in ways if way.measured), key=lambda way: way.diameter.U, default=None)


def advise_section(
    set_now: SetNow, pairs: Diameter | None, ways: tuple[Way, ...], label_count: int = 0
) -> tuple[tuple[Advice, ...], float | None]:
    """Return the verdict, and the diameter in force after it; None where nothing is decided.

    Args:
        set_now: what the program works with.
        pairs: what the pairs give, or None.
        ways: to the cross-section, used or planned.
        label_count: number of readings that are all equal, rather the label than the gauge; 0 where they differ.
    """
    best = best_way(ways)
    shape = _shape(pairs)
    if best is None:
        because = tr("Nothing here tells the cross-section yet: read pairs of diameters, or weigh a length.")
        return (*shape, _undecided(tr("Keep {old:g} mm.", old=set_now.in_force_mm), because)), None
    if label_count:
        because = tr("{count} equal readings are rather the label than the instrument.", count=label_count)
        return (_undecided(tr("Read again and type what the instrument shows."), because),), None
    used = [way for way in ways if way.measured]
    if len(used) > 1 and _apart(used[0].diameter, used[1].diameter):
        return (*shape, _conflict(used[0].diameter, used[1].diameter, set_now)), None
    advice, new_mm = _diameter(set_now, best)
    return (*shape, advice), new_mm


def _diameter(set_now: SetNow, best: Way) -> tuple[Advice, float | None]:
    d, old = best.diameter, set_now.in_force_mm
    off_mm = abs(d.value - old)
    said = {"d": size_text(d), "old": old, "area": size_text(area_ratio(d, old))}
    if off_mm <= CHANGE_MM or off_mm <= d.U:
        because = (
            tr("{d}, {area} of the cross-section set: within 0.02 mm; the flow factor takes up the rest.", **said)
            if off_mm <= CHANGE_MM
            else tr("{d}, {area} of the cross-section set: not told from it.", **said)
        )
        return Advice(Setting.LEAVE, tr("Leave {old:g} mm.", old=old), None, "", because, _untouched()), old
    if not best.enough:
        because = tr(
            "{d}: the cross-section would be {area} of the one set, but this way cannot tell 0.02 mm from none.", **said
        )
        action = tr("Keep {old:g} mm; read with a micrometer, or weigh 1 m with a known density.", old=old)
        return _undecided(action, because), None
    from_nominal_mm = abs(d.value - set_now.nominal_mm)
    measured = from_nominal_mm > CHANGE_MM and from_nominal_mm > d.U
    new_mm = round(d.value, _SETTABLE_DIGITS) if measured else set_now.nominal_mm
    because = tr("{d}: the cross-section is {area} of the one set.", **said)
    action = tr("Set {new:.3f} mm instead of {old:g} mm.", new=new_mm, old=old)
    return Advice(Setting.FILAMENT_DIAMETER, action, new_mm, "mm", because, _untouched()), new_mm


def _shape(pairs: Diameter | None) -> tuple[Advice, ...]:
    """Return what ovality and spread say about the lot; nothing where they are usual."""
    if pairs is None:
        return ()
    oval, spread = pairs.ovality, pairs.spread
    flow = f"{100.0 * (1.0 - pairs.one_way_ratio):.1f}"
    said = {"oval": size_text(oval), "spread": size_text(spread), "flow": flow}
    because = tr(
        "Ovality {oval}, spread along the length {spread}. Set from one-way readings the flow would be up to {flow} % "
        "low.",
        **said,
    )
    if oval.value - oval.U > OVAL_RETURN_MM:
        return (_lot(tr("Return it: more than 0.1 mm out of round jams and makes bands."), because),)
    if oval.value > OVAL_MM or spread.value > SPREAD_MM:
        return (_lot(tr("Not for tolerance work: above 0.05 mm ovality or 0.02 mm spread."), because),)
    return ()


def _apart(first: Estimate, second: Estimate) -> bool:
    return abs(first.value - second.value) > math.hypot(first.U, second.U)


def _conflict(by_gauge: Estimate, by_mass: Estimate, set_now: SetNow) -> Advice:
    because = tr(
        "The gauge says {gauge}, the mass says {mass}. A strand with three lobes has one width all round and fools any "
        "jaws; or length, density or zero are off.",
        gauge=size_text(by_gauge),
        mass=size_text(by_mass),
    )
    action = tr("Keep {old:g} mm; weigh another metre and check the zero.", old=set_now.in_force_mm)
    return _undecided(action, because)


def _lot(action: Words, because: Words) -> Advice:
    return Advice(Setting.FILAMENT_LOT, action, None, "", because, _untouched())


def _undecided(action: Words, because: Words) -> Advice:
    return Advice(Setting.UNDECIDED, action, None, "", because, _untouched())


def _untouched() -> Words:
    return tr("Flow factor and extruder steps: they do not change the strand.")
