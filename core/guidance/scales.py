"""Rules 1, 4, 5 and 6: proportional errors. A wrong part, the filament, or, by measured travel only, the axis."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from core.guidance.findings import Size, common_scale, finding, scale_difference
from core.guidance.known import Known, kinds_on, longest_mm, printed_axes
from core.guidance.sentences import axes_differ, correcting_factor, leave_it, unclear, undecided
from core.guidance.splitadvice import LONG_TRAVEL_MM, split_advice
from core.guidance.verdict import Advice, Setting, basis
from core.machine_geometry.drive import Drive, DriveKind
from core.machine_geometry.foundsteps import GROSS_RATIO
from core.machine_geometry.mixup import RatioInterval, mixups_within
from core.part_size.features import FeatureKind
from core.part_size.sizeerror import SizeError
from core.quantity import Estimate, size_ratio, value_text
from core.records.rows import Motion
from core.words import Words, tr

MOST_SHRINK_RATIO = 0.01  # of usual filaments; above it a gross ratio is searched for (common practice, no source)
_USUAL_BELT = Drive(DriveKind.BELT, pitch_mm=2.0, teeth=20)
_USUAL_SCREW = Drive(DriveKind.SCREW, pitch_mm=2.0, starts=4)


def gross_advice(fit: SizeError, known: Known) -> Iterator[Advice]:
    """Rule 1: a ratio beyond what belts, screws and filaments do is a wrong part."""
    for axis in sorted(set(fit.axes)):
        scale = fit.estimate(f"scale_{axis}")
        if scale is None or not scale.significant or abs(scale.value) <= GROSS_RATIO:
            continue
        travel = FeatureKind.TRAVEL in kinds_on(fit, axis)
        interval = RatioInterval(1.0 + scale.value, scale.u, 0.0 if travel else MOST_SHRINK_RATIO, scale.dof)
        drive = known.drives.get(axis)
        hits = mixups_within(drive or _usual(axis), interval) if interval.ratio > 0 else ()
        if not hits and abs(scale.value) <= 3 * MOST_SHRINK_RATIO and not travel:
            continue  # as much as some filaments shrink: the scale rule speaks
        yield Advice(
            Setting.WRONG_PART,
            tr("Count the parts of the {axis} drive again and mend the entry or the part.", axis=axis.upper())
            if drive
            else tr("Enter the parts of the {axis} drive; then count them again.", axis=axis.upper()),
            1.0 + scale.value,
            "1",
            _gross_because(fit, axis, scale, [hit.says for hit in hits[:3]], drive is not None),
            tr("Steps per millimetre by trimming, shrink allowance, flow factor."),
        )


def _gross_because(fit: SizeError, axis: str, scale: Estimate, says: list[Words], drive_known: bool) -> Words:
    base = tr(
        "Scale {axis} is off by {value}, more than any belt, screw or usual filament ({basis}).",
        axis=axis.upper(),
        value=value_text(scale),
        basis=basis(kinds_on(fit, axis)),
    )
    if not says:
        return tr(
            "{base} No single wrong part of the catalogue explains it: look for a unit or a wrong file.", base=base
        )
    words = says[0]
    for more in says[1:]:
        words = tr("{first} Or: {second}", first=words, second=more)
    if drive_known:
        return tr("{base} It would fit: {hits}", base=base, hits=words)
    usual = tr("a screw of 4 starts, 2 mm pitch") if axis == "z" else tr("a 2 mm belt on 20 teeth")
    return tr("{base} No drive is on record; for {usual} it would fit: {hits}", base=base, usual=usual, hits=words)


def _usual(axis: str) -> Drive:
    return _USUAL_SCREW if axis == "z" else _USUAL_BELT


def scale_advice(fit: SizeError, known: Known) -> Iterator[Advice]:
    """Rules 4 and 5: leave a small scale alone, book a real one to the filament."""
    if "x" in printed_axes(fit) or "y" in printed_axes(fit):
        yield from _plane_scale(fit, known)
    if "z" in printed_axes(fit) and (scale := fit.estimate("scale_z")):
        yield from _scale_verdict(fit, scale, ["z"], known)


def _plane_scale(fit: SizeError, known: Known) -> Iterator[Advice]:
    axes = [axis for axis in printed_axes(fit) if axis != "z"]
    difference = scale_difference(fit) if len(axes) == 2 else None
    if difference is not None:
        longest = longest_mm(fit, axes)
        found = finding(difference, longest, longest, known.tolerance)
        if found.size is Size.REAL:
            because = tr(
                "X and Y differ by {value} on the same print; shrinkage is alike in both, so this is the machine.",
                value=value_text(difference),
            )
            yield axes_differ(difference, because, known.motion)
            return
    scale = common_scale(fit) if len(axes) == 2 else fit.estimate(f"scale_{axes[0]}")
    if scale is not None:
        yield from _scale_verdict(fit, scale, axes, known)


def _scale_verdict(fit: SizeError, scale: Estimate, axes: list[str], known: Known) -> Iterator[Advice]:
    longest = longest_mm(fit, axes)
    found = finding(scale, longest, longest, known.tolerance)
    named = tr("Scale error {axes}", axes="".join(axes).upper())
    on = basis(tuple(k for k, a in zip(fit.kinds, fit.axes, strict=True) if a in axes))
    if found.size is Size.SMALL:
        yield leave_it(found, named)
    elif found.size is Size.UNCLEAR:
        yield unclear(named, found)
    elif all(axis in known.split for axis in axes):
        yield from split_advice(fit, scale, axes, known)
    elif scale.value > 0:
        yield undecided(
            tr("Compare the steps in the controller with the calculated ones; was the part drawn larger already?"),
            tr(
                "{named} is {value}: parts too large are not shrinkage ({basis}).",
                named=named,
                value=value_text(scale),
                basis=on,
            ),
        )
    elif any(a in known.drives and known.drives[a].kind is DriveKind.WHEEL for a in axes):
        yield undecided(
            tr("Measure the travel itself with a dial or a drawn line, or print with a second filament."),
            tr("{named} is {value}; a smooth wheel may be off by as much.", named=named, value=value_text(scale)),
        )
    else:
        yield _shrink(scale, named, on, axes, known)


def _shrink(scale: Estimate, named: Words, on: Words, axes: list[str], known: Known) -> Advice:
    allowance = 1.0 / size_ratio(scale.value)
    drive = max(known.drives.get(a, _usual(a)).tolerance_ratio for a in axes)
    share = (
        tr("the drive leaves about {percent:.2f} %", percent=drive * 100)
        if abs(scale.value) > 2 * drive
        else tr("the drive may be off by as much, {percent:.2f} %", percent=drive * 100)
    )
    return Advice(
        Setting.SHRINK_ALLOWANCE,
        tr(
            "Draw parts of this filament {allowance} times as large along {axes}.",
            allowance=correcting_factor(scale),
            axes="".join(axes).upper(),
        ),
        allowance,
        "1",
        tr(
            "{named} is {value} and {share}, so it is booked to the filament ({basis}); one print "
            "cannot tell how much of it is the machine's.",
            named=named,
            value=value_text(scale),
            share=share,
            basis=on,
        ),
        tr("Steps per millimetre, flow factor."),
    )


def travel_advice(fit: SizeError, known: Known) -> Iterator[Advice]:
    """Rule 6: a measured travel is free of filament and may become an axis scale; never two on crossed belts."""
    given = list(_travel_by_axis(fit, known))
    scaled = [advice for advice in given if advice.setting is Setting.AXIS_SCALE]
    if known.motion is Motion.CROSSED_BELT and scaled:
        yield _crossed_travel(fit, scaled[0])
        given = [advice for advice in given if advice.setting is not Setting.AXIS_SCALE]
    yield from given


def _crossed_travel(fit: SizeError, scaled: Advice) -> Advice:
    """Both motors move both axes: one factor for X and Y together, or none where the two differ."""
    difference = scale_difference(fit)
    if difference is None or not difference.significant:
        action = tr("{action} Both motors move X and Y: give both the same steps, never two.", action=scaled.action)
        return replace(scaled, action=action)
    return Advice(
        Setting.MEND_MECHANICS,
        tr("Look at slides, frame and belt tension: crossed belts cannot make X differ from Y."),
        difference.value,
        "1",
        tr("The travel of X and Y differs by {value}.", value=value_text(difference)),
        tr("Separate steps per millimetre for X and Y: they would shear every part."),
    )


def _travel_by_axis(fit: SizeError, known: Known) -> Iterator[Advice]:
    for axis in sorted({a for k, a in zip(fit.kinds, fit.axes, strict=True) if k is FeatureKind.TRAVEL}):
        scale = fit.estimate(f"scale_{axis}")
        if scale is None:
            continue
        reach = float(np.ptp([L for L, a in zip(fit.nominal_mm, fit.axes, strict=True) if a == axis]))
        found = finding(scale, reach, reach, known.tolerance)
        named = tr("Travel of {axis}", axis=axis.upper())
        if found.size is Size.SMALL:
            yield leave_it(found, named)
        elif found.size is Size.UNCLEAR:
            yield unclear(named, found)
        else:
            yield _travel_scale(scale, axis, reach, known.drives.get(axis))


def _travel_scale(scale: Estimate, axis: str, reach_mm: float, drive: Drive | None) -> Advice:
    because = tr(
        "The {axis} axis itself travels {value} off; no filament is in this.",
        axis=axis.upper(),
        value=value_text(scale),
    )
    if drive is None and reach_mm < LONG_TRAVEL_MM:
        return undecided(
            tr("Enter the parts of the {axis} drive: they say what may be off.", axis=axis.upper()), because
        )
    if drive is not None and drive.kind is not DriveKind.WHEEL and abs(scale.value) > 3 * drive.tolerance_ratio:
        return Advice(
            Setting.MEND_MECHANICS,
            tr(
                "Look at belt tension, seating, run-out and the dial's alignment, and count the parts of {axis} again.",
                axis=axis.upper(),
            ),
            scale.value,
            "1",
            because,
            tr("Steps per millimetre: these parts are good to {percent:.2f} %.", percent=drive.tolerance_ratio * 100),
        )
    return Advice(
        Setting.AXIS_SCALE,
        tr(
            "Multiply the steps per millimetre of {axis} in force by {factor}, then measure the travel again.",
            axis=axis.upper(),
            factor=correcting_factor(scale),
        ),
        1.0 / size_ratio(scale.value),
        "1",
        because,
        tr("Shrink allowance, flow factor."),
    )
