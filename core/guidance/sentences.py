"""Sentences that every rule of the advice shares."""

from __future__ import annotations

import math

from core.guidance.findings import Finding
from core.guidance.verdict import Advice, Setting
from core.measuring.reach import within_reach
from core.quantity import Estimate, rounded_pair, size_ratio, value_text
from core.records.rows import Motion
from core.words import Words, tr


def leave_it(found: Finding, what: Words) -> Advice:
    """Say that an effect is proved small; what it rests on is said once for all such effects."""
    return Advice(
        Setting.LEAVE,
        tr("Change nothing."),
        None,
        "",
        tr(
            "{what}: {value}, at most {effect} mm where ±{tolerance:g} mm is allowed.",
            what=what,
            value=value_text(found.estimate),
            effect=_at_most(abs(found.effect.value) + found.effect.U),
            tolerance=found.tolerance_mm,
        ),
        tr("Steps per millimetre, flow factor, contour offset."),
    )


def _at_most(effect_mm: float) -> str:
    """Round up to two digits: what is said to be the most must not be less; below a micrometre nobody asks."""
    step = 10.0 ** (math.floor(math.log10(max(effect_mm, 1e-3))) - 1)
    return f"{max(math.ceil(effect_mm / step - 1e-9) * step, 1e-3):.2g}"


@within_reach
def correcting_factor(scale: Estimate) -> str:
    """Return the factor that makes up for a scale error, with its expanded uncertainty.

    Raises:
        InputError: field `scale`, no scale error of a part.
    """
    factor = 1.0 / size_ratio(scale.value)
    value, U = rounded_pair(factor, scale.U * factor**2)
    return f"{value.removeprefix('+')} ± {U}"


def axes_differ(difference: Estimate, because: Words, motion: Motion) -> Advice:
    """Say that X and Y of one print differ, which is the machine."""
    if motion is Motion.CROSSED_BELT:
        action = tr("Look at slides, frame and bead width by direction: crossed belts cannot make X differ from Y.")
    else:
        action = tr("Find why one axis runs longer: belt tension and seating, pulley run-out, a fibre-filled material.")
    untouched = tr("Separate steps per millimetre for X and Y, shrink allowance.")
    return Advice(Setting.MEND_MECHANICS, action, difference.value, "1", because, untouched)


def unclear(what: Words, found: Finding) -> Advice:
    """Say that an effect is neither small nor real."""
    return undecided(
        tr("Read every feature again, or add features: the interval is too wide to decide."),
        tr(
            "{what}: {value}; ±{tolerance:g} mm is allowed, and neither small nor real is proved.",
            what=what,
            value=value_text(found.estimate),
            tolerance=found.tolerance_mm,
        ),
    )


def undecided(action: Words, because: Words) -> Advice:
    """Say what would tell."""
    return Advice(Setting.UNDECIDED, action, None, "", because, tr("Everything: nothing is proved yet."))
