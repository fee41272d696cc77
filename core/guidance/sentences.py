"""Sentences that every rule of the advice shares."""

from __future__ import annotations

from core.guidance.findings import Finding
from core.guidance.verdict import Advice, Setting
from core.quantity import value_text
from core.words import Words, tr


def leave_it(found: Finding, what: Words, on: Words) -> Advice:
    """Say that an effect is proved small."""
    return Advice(
        Setting.LEAVE,
        tr("Change nothing."),
        None,
        "",
        tr(
            "{what}: {value}, at most {effect:.2g} mm on a size where ±{tolerance:g} mm is allowed ({basis}).",
            what=what,
            value=value_text(found.estimate),
            effect=abs(found.effect.value) + found.effect.U,
            tolerance=found.tolerance_mm,
            basis=on,
        ),
        tr("Steps per millimetre, flow factor, contour offset."),
    )


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
