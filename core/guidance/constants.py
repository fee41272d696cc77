"""Rules 2 and 3: constant errors. Lost motion is mended, wall outset offset, squash and flare are the first layer."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from core.guidance.findings import Size
from core.guidance.keptreversal import beside_constant, beside_print, kept_play_advice
from core.guidance.known import Known, axis_constant, constant_finding, kinds_on, needs_of, printed_axes
from core.guidance.sentences import leave_it, unclear, undecided
from core.guidance.verdict import Advice, Setting, basis
from core.part_size.features import FLARE, FeatureKind
from core.part_size.sizeerror import SizeError
from core.quantity import Estimate, value_text
from core.words import Words, side_by_side, tr

MOST_OUTSET_MM = 0.3  # more than half a usual bead (common practice, no source)


def lost_motion_advice(fit: SizeError, known: Known) -> Iterator[Advice]:
    """Rule 2: closed outlines smaller than comb teeth are play; mend it before anything is trimmed.

    What a kept reversal trial proved counts too, where the print does not show it.
    """
    for axis in ("x", "y"):
        motion = fit.estimate(f"lost_motion_{axis}")
        found = constant_finding(fit, motion, 1.0, axis, known) if motion else None
        if motion is None or found is None or found.size is not Size.REAL:
            if axis in printed_axes(fit):
                yield from kept_play_advice(axis, found, known)
            continue
        if motion.value < 0:
            yield undecided(
                tr("Read the closed windows and the outside of {axis} again, and check their kind.", axis=axis.upper()),
                tr(
                    "Lost motion {axis} comes out as {value}, below zero, which no machine has.",
                    axis=axis.upper(),
                    value=value_text(motion),
                ),
            )
            continue
        yield Advice(
            Setting.MEND_MECHANICS,
            tr(
                "{axis} axis first: belt tension, grub screw on the flat, slide play, coupling. Then measure again.",
                axis=axis.upper(),
            ),
            motion.value,
            "mm",
            beside_print(_lost_words(fit, motion, axis), axis, known),
            tr("Steps per millimetre, flow factor, contour offset: none of them mends play."),
        )


def _lost_words(fit: SizeError, motion: Estimate, axis: str) -> Words:
    return tr(
        "Lost motion {axis} is {value}: closed outlines come out smaller by it, comb teeth do not ({basis}).",
        axis=axis.upper(),
        value=value_text(motion),
        basis=basis(kinds_on(fit, axis)),
    )


def open_motion(fit: SizeError, known: Known) -> Iterator[Advice]:
    """Say in one sentence which lost motion is neither proved small nor proved real, lest it be taken for absent."""
    told: list[tuple[str, Advice]] = []
    for axis in ("x", "y"):
        motion = fit.estimate(f"lost_motion_{axis}")
        found = motion and constant_finding(fit, motion, 1.0, axis, known)
        if found and found.size is Size.UNCLEAR:
            told.append((axis.upper(), unclear(tr("Lost motion {axis}", axis=axis.upper()), found)))
    if not told:
        return
    axes = told[0][0] if len(told) == 1 else tr("{first} and {second}", first=told[0][0], second=told[1][0])
    because = side_by_side(advice.because for _, advice in told)
    action = tr("Read the outside lengths and closed windows of {axis} again.", axis=axes)
    yield replace(told[0][1], action=action, because=because)


def outset_advice(fit: SizeError, known: Known) -> Iterator[Advice]:
    """Rule 3: outside too large and inside too small by the same is bead width."""
    outset = fit.estimate("wall_outset")
    if outset is None:
        yield from _constant_only(fit, known)
        return
    found = constant_finding(fit, outset, 2.0, None, known)
    if found.size is Size.SMALL:
        yield leave_it(found, tr("Wall outset"))
    elif found.size is Size.UNCLEAR:
        yield unclear(tr("Wall outset per side"), found)
    else:
        yield from _outset_remedies(fit, outset, known)


def _outset_remedies(fit: SizeError, outset: Estimate, known: Known) -> Iterator[Advice]:
    because = tr(
        "Walls stand {value} per side proud of the drawing, alike at every length ({basis}).",
        value=value_text(outset),
        basis=basis(fit.kinds),
    )
    untouched = tr("Steps per millimetre: a constant error is not a scale.")
    if abs(outset.value) > MOST_OUTSET_MM:
        action = tr("Check the nozzle bore and the bead width in the settings, then the flow: no offset mends so much.")
        yield Advice(Setting.CHECK_FLOW, action, None, "", because, untouched)
        return
    if not known.flow_checked:
        action = tr("Make a wall or mass trial first, and set the flow by it.")
        yield Advice(Setting.CHECK_FLOW, action, None, "", because, untouched)
    if not _one_outset(fit):
        yield undecided(
            tr("Measure the wall of a box along X and along Y; give no common contour offset yet."),
            tr("The wall outset differs between X and Y: the bead is wider in one direction."),
        )
        return
    offset = value_text(replace(outset, value=-outset.value))
    if known.flow_checked:
        action = tr("Change the one in force by {amount} per side.", amount=offset)
    else:
        action = tr("When the flow is good: change the one in force by {amount} per side.", amount=offset)
        because = tr("It takes back the wall outset.")
    yield Advice(Setting.CONTOUR_OFFSET, action, -outset.value, "mm per side", because, untouched)


def _constant_only(fit: SizeError, known: Known) -> Iterator[Advice]:
    """Outside lengths alone give 2w - B: it may be small, but what it belongs to is not told."""
    for axis in ("x", "y"):
        constant = axis_constant(fit, axis)
        if constant is None:
            continue
        found = constant_finding(fit, constant, 1.0, axis, known)
        if found.size is Size.REAL:
            because = tr(
                "A constant {value} along {axis} may be wall outset, lost motion, or both ({basis}).",
                value=value_text(constant),
                axis=axis.upper(),
                basis=basis(kinds_on(fit, axis)),
            )
            yield undecided(
                tr("Do not correct it yet: {needs}.", needs=needs_of(fit, "wall_outset")),
                beside_constant(because, axis, known),
            )
        elif found.size is Size.UNCLEAR:
            yield unclear(tr("Constant error {axis}", axis=axis.upper()), found)


def round_advice(fit: SizeError, known: Known) -> Iterator[Advice]:
    """Round features have constants of their own."""
    for name, kind, what in (
        ("boss_constant", FeatureKind.BOSS, tr("bosses")),
        ("bore_constant", FeatureKind.BORE, tr("bores")),
    ):
        constant = fit.estimate(name)
        if constant is None:
            continue
        found = constant_finding(fit, constant, 1.0, None, known, kind)
        if found.size is Size.UNCLEAR:
            yield unclear(tr("Constant error of {what}", what=what), found)
        if found.size is Size.REAL:
            yield Advice(
                Setting.CONTOUR_OFFSET,
                tr(
                    "Change the drawn diameter of {what} by {amount}.",
                    what=what,
                    amount=value_text(replace(constant, value=-constant.value)),
                ),
                -constant.value / 2,
                "mm per side",
                tr("All {what} are off by {value}, whatever their size.", what=what, value=value_text(constant)),
                tr("Steps per millimetre and shrink allowance; the offset of straight walls."),
            )


def squash_advice(fit: SizeError, known: Known) -> Iterator[Advice]:
    """A constant error of all heights is the first layer."""
    squash = fit.estimate("squash_z")
    if squash is None:
        return
    found = constant_finding(fit, squash, 1.0, "z", known)
    if found.size is Size.UNCLEAR:
        yield unclear(tr("First-layer squash"), found)
    if found.size is Size.SMALL:
        yield leave_it(found, tr("First-layer squash"))
    if found.size is Size.REAL:
        yield Advice(
            Setting.MEND_MECHANICS,
            tr(
                "Change the gap between nozzle and bed by {amount}.",
                amount=value_text(replace(squash, value=-squash.value)),
            ),
            -squash.value,
            "mm",
            tr("Every height is off by {value}: the first layer, not the screw.", value=value_text(squash)),
            tr("Steps per millimetre of Z."),
        )


def flare_advice(fit: SizeError, known: Known) -> Iterator[Advice]:
    """First layers wider than the rest are the gap, the bed, or an edge to step in; no outset of the walls."""
    flare = fit.estimate(FLARE)
    if flare is None:
        return
    found = constant_finding(fit, flare, 2.0, None, known, FeatureKind.FIRST_LAYER)
    if found.size is Size.UNCLEAR:
        yield unclear(tr("First-layer flare per side"), found)
    elif found.size is Size.SMALL:
        yield leave_it(found, tr("First-layer flare"))
    elif flare.value < 0:
        yield undecided(
            tr("Look for a lifted corner, and read the low and the high gauges again."),
            tr("The first layers come out narrower than the rest by {value} per side.", value=value_text(flare)),
        )
    else:
        yield Advice(
            Setting.FIRST_LAYER_GAP,
            tr("Widen the gap a little or print on a cooler bed, and read again; else step the lower edge in."),
            None,
            "",
            tr(
                "The first layers stand {value} per side proud of the walls above ({basis}).",
                value=value_text(flare),
                basis=basis(fit.kinds),
            ),
            tr("Contour offset and flow factor: only the first layers are wide."),
        )


def _one_outset(fit: SizeError) -> bool:
    return all(check.ok for check in fit.diagnostics if check.name == "one_wall_outset")
