"""Rule 6: what travels with the filament becomes its shrink allowance; what stays with the machine is looked into.

An axis scale is an exception. All of this must hold: the machine's share, free of filament, is beyond its uncertainty
and 0.1 %, and matters at its longest part; two lots and two pieces show it, or its travel was read; the drive is a
smooth wheel, or the axis is longer than 400 mm; the pieces tell a constant error from a proportional one; the machine
is no delta, whose steps do not set its size; the mechanical causes were looked at. Crossed belts never get two.

Reference: the conditions are common practice, no source; JCGM 106:2012 for what matters against a tolerance.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from core.guidance.findings import Size, finding
from core.guidance.known import Known, longest_mm
from core.guidance.sentences import correcting_factor, undecided
from core.guidance.splitpair import SplitPair
from core.guidance.verdict import Advice, Setting
from core.machine_geometry.drive import DriveKind
from core.measuring.reach import within_reach
from core.part_size.features import FEATURES
from core.part_size.sizeerror import SizeError
from core.quantity import Estimate, rounded_pair, size_text, value_text
from core.records.rows import Motion
from core.words import Words, side_by_side, tr

LONG_TRAVEL_MM = 400.0  # an axis this long may earn a measured scale (common practice, no source)
NO_MATTER_RATIO = 0.001  # a machine's share below this is left alone (common practice, no source)
COUNT_AGAIN_RATIO = 0.005  # above this the parts of belts and screws are counted again (common practice, no source)
FEWEST_PIECES = 2


def split_advice(fit: SizeError, scale: Estimate, axes: list[str], known: Known) -> Iterator[Advice]:
    """Share the scale error of a print, which matters, between its filament and its machine.

    Args:
        fit: the print.
        scale: its scale error along the axes together.
        axes: x and y, or one of them, or z.
        known: with `split` for each of these axes.
    """
    pairs = []
    for axis in axes:
        own = fit.estimate(f"scale_{axis}")
        pairs.append(known.split[axis].with_print(own) if own else known.split[axis])
    yield from lot_advice(pairs, longest_mm(fit, axes), known, scale)
    paired = fit.estimate("wall_outset") is not None or all(FEATURES[kind].k == 0 for kind in fit.kinds)
    yield from machine_advice(pairs, known, paired=paired)


@within_reach
def lot_advice(
    pairs: list[SplitPair], longest_length_mm: float, known: Known, scale: Estimate | None = None
) -> Iterator[Advice]:
    """Give the shrink allowance of the lot, axis by axis where they differ.

    Args:
        pairs: of the axes.
        longest_length_mm: where a proportional error matters most.
        known: with the tolerance.
        scale: scale error of the print at hand, to be told apart; None where there is none.
    """
    findings = [finding(pair.shrinkage, longest_length_mm, longest_length_mm, known.tolerance) for pair in pairs]
    worst = max(findings, key=lambda found: abs(found.effect.value))
    because = _share_words(pairs, scale)
    if worst.size is not Size.REAL:
        yield Advice(
            Setting.LEAVE if worst.size is Size.SMALL else Setting.UNDECIDED,
            tr("Give this filament no shrink allowance."),
            None,
            "",
            because,
            tr("Steps per millimetre, flow factor."),
        )
    elif worst.effect.value < 0:
        yield undecided(
            tr("Compare the steps in the controller with the calculated ones; was the part drawn larger already?"),
            tr("{because} Parts of one filament that come out too large have not shrunk.", because=because),
        )
    else:
        yield Advice(
            Setting.SHRINK_ALLOWANCE,
            _allowance_words(pairs),
            math.exp(-sum(pair.lot_ratio for pair in pairs) / len(pairs)),
            "1",
            because,
            tr("Steps per millimetre, flow factor."),
        )


def allowance_text(allowance: Estimate) -> str:
    """Return `1.0024 ± 0.0005`."""
    value, U = rounded_pair(allowance.value, allowance.U)
    return f"{value.removeprefix('+')} ± {U}"


def _allowance_words(pairs: list[SplitPair]) -> Words:
    first = pairs[0].allowance
    alike = all(abs(pair.allowance.value - first.value) <= max(pair.allowance.U, first.U) for pair in pairs)
    shown = [max(pairs, key=lambda pair: pair.u_lot_ratio)] if alike else pairs
    names = ["".join(pair.axis for pair in pairs)] if alike else [pair.axis for pair in pairs]
    each = (
        tr("{allowance} times as large along {axes}", allowance=allowance_text(pair.allowance), axes=name.upper())
        for pair, name in zip(shown, names, strict=True)
    )
    along = side_by_side(each, ", ")
    return tr("Draw parts of this filament {along}, not on top of an allowance in force.", along=along)


def _share_words(pairs: list[SplitPair], scale: Estimate | None) -> Words:
    each = (
        tr(
            "along {axis} this filament shrinks {lot} and the machine is {machine} off",
            axis=pair.axis.upper(),
            lot=size_text(pair.shrinkage),
            machine=value_text(pair.machine_scale),
        )
        for pair in pairs
    )
    first = pairs[0]
    beside = tr(
        "{told} (prints of this machine: {prints}, of lots: {lots}; machines of this lot: {machines})",
        told=side_by_side(each, "; "),
        prints=first.prints,
        lots=first.lots,
        machines=first.machines,
    )
    if scale is None:
        return tr("By all trials of the shop, {beside}.", beside=beside)
    seen = value_text(scale)
    return tr("The scale error is {value}. By all trials of the shop, {beside}.", value=seen, beside=beside)


@within_reach
def machine_advice(pairs: list[SplitPair], known: Known, *, paired: bool = True) -> Iterator[Advice]:
    """Say what to do about the machine's own share; nothing where it does not matter.

    Args:
        pairs: of the axes.
        known: motion, drives, travel, tolerance.
        paired: whether the pieces tell a constant error from a proportional one.
    """
    found = [advice for pair in pairs if (advice := _of_machine(pair, known, paired=paired))]
    scaled = [advice for advice in found if advice.setting is Setting.AXIS_SCALE]
    if known.motion is Motion.CROSSED_BELT and scaled:
        found = [advice for advice in found if advice.setting is not Setting.AXIS_SCALE]
        found.append(_crossed(pairs, scaled))
    yield from found


def matters(pair: SplitPair, known: Known) -> bool:
    """Whether the machine's share is beyond its uncertainty and 0.1 %, and counts at the longest part it can print."""
    scale, travel = pair.machine_scale, known.travel_mm.get(pair.axis, LONG_TRAVEL_MM)
    if not scale.significant or abs(scale.value) <= NO_MATTER_RATIO:
        return False
    return finding(scale, travel, travel, known.tolerance).size is Size.REAL


def _of_machine(pair: SplitPair, known: Known, *, paired: bool) -> Advice | None:
    """Return the verdict on one axis, the cheapest doubt first."""
    if not matters(pair, known):
        return None
    axis, drive = pair.axis.upper(), known.drives.get(pair.axis)
    because = tr(
        "{axis} is {value} off on every filament: {prints} prints of {lots} lots tell it from shrinkage.",
        axis=axis,
        value=value_text(pair.machine_scale),
        prints=pair.prints,
        lots=pair.lots,
    )
    if drive is not None and drive.kind is not DriveKind.WHEEL and abs(pair.machine_scale.value) > COUNT_AGAIN_RATIO:
        action = tr("Count the parts of the {axis} drive again.", axis=axis)
        return _advice(Setting.WRONG_PART, action, pair, because)
    if known.motion is Motion.DELTA:
        action = tr("Measure the rods from hole to hole: rods and radius set the size of X and Y, not the steps.")
        return _advice(Setting.MEND_MECHANICS, action, pair, because)
    if not pair.travel and (pair.prints < FEWEST_PIECES or pair.lots < FEWEST_PIECES):
        return undecided(tr("Print and measure a piece of another lot on this machine first."), because)
    if not paired:
        return undecided(
            tr("Measure notches or windows too: outside lengths alone cannot carry an axis scale."), because
        )
    if drive is None and known.travel_mm.get(pair.axis, 0.0) <= LONG_TRAVEL_MM:
        return undecided(tr("Enter the parts of the {axis} drive: they say what may be off.", axis=axis), because)
    long_or_wheel = (
        drive is None or drive.kind is DriveKind.WHEEL or known.travel_mm.get(pair.axis, 0.0) > LONG_TRAVEL_MM
    )
    if not long_or_wheel:
        action = tr(
            "Look at tension, seating, run-out and temperature of the {axis} drive; print the piece again after.",
            axis=axis,
        )
        return _advice(Setting.MEND_MECHANICS, action, pair, because)
    action = tr(
        "When tension, seating and run-out are in order: multiply the calculated steps per millimetre of {axis} by "
        "{factor}, then print a piece of another lot to check.",
        axis=axis,
        factor=correcting_factor(pair.machine_scale),
    )
    return _advice(Setting.AXIS_SCALE, action, pair, because)


def _advice(setting: Setting, action: Words, pair: SplitPair, because: Words) -> Advice:
    scaled = setting is Setting.AXIS_SCALE
    return Advice(
        setting,
        action,
        math.exp(-pair.machine_ratio) if scaled else pair.machine_scale.value,
        "1",
        because,
        tr("Shrink allowance, flow factor.") if scaled else tr("Steps per millimetre, shrink allowance, flow factor."),
    )


def _crossed(pairs: list[SplitPair], scaled: list[Advice]) -> Advice:
    """Both motors move both axes: one factor for the two, and only where the two agree."""
    plane = [pair for pair in pairs if pair.axis in "xy"]
    widest = max(pair.machine_scale.U for pair in plane)
    apart = max(pair.machine_ratio for pair in plane) - min(pair.machine_ratio for pair in plane)
    if len(scaled) == len(plane) > 1 and apart <= widest:
        mean = sum(pair.machine_ratio for pair in plane) / len(plane)
        common = Estimate("machine_scale_xy", math.expm1(mean), max(p.u_machine_ratio for p in plane), math.inf, "1")
        action = tr(
            "When tension, seating and run-out are in order: multiply the calculated steps per millimetre of both "
            "motors by {factor}; crossed belts take one factor, never two.",
            factor=correcting_factor(common),
        )
        return Advice(
            Setting.AXIS_SCALE, action, math.exp(-mean), "1", scaled[0].because, tr("Shrink allowance, flow factor.")
        )
    return Advice(
        Setting.MEND_MECHANICS,
        tr("Look at slides, frame and bead width by direction: crossed belts cannot make X differ from Y."),
        scaled[0].amount,
        "1",
        scaled[0].because,
        tr("Separate steps per millimetre for X and Y: they would shear every part."),
    )
