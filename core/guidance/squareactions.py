"""The instructions of a squareness verdict: which side to push, which term to set, which reading would tell.

A term adds to the one that was in force when the piece was made: with t in force a frame off by g shows g - t.
"""

from __future__ import annotations

import math

from core.machine_geometry.squareness import Plane, Squareness
from core.measuring.reach import within_reach
from core.quantity import Estimate, rounded_pair, size_text
from core.records.rows import Motion
from core.words import Words, tr

_FORMULAS = {
    Plane.XY: "x − y·tan XY",
    Plane.XZ: "x − z·(tan XZ − tan XY·tan YZ)",
    Plane.YZ: "y − z·tan YZ",
}


@within_reach
def per_hundred(angle: Estimate) -> Estimate:
    """Return an angle as the offset over 100 mm.

    Raises:
        InputError: field `value` or `u`, out of reach.
    """
    return Estimate("per_100", 100.0 * angle.value, 100.0 * angle.u, angle.dof, "mm")


def needs(fit: Squareness) -> Words:
    """Say which reading would tell the angle."""
    if fit.fake_rad > 0:
        return tr("Read the pillars on both faces: from one side only, reversal may be all of it.")
    return tr("Read each length more often, or make the piece larger: the interval is too wide to tell.")


def frame_action(fit: Squareness, span_mm: float, motion: Motion) -> Words:
    """Say which side of the frame to push, which way, and by how much."""
    shift, g = fit.shift(span_mm), fit.angle.value
    values: dict[str, str | float] = {
        "shift": size_text(Estimate("shift", abs(shift.value), shift.u, shift.dof, "mm")),
        "span": span_mm,
    }
    if fit.plane is not Plane.XY:
        values |= {"first": str(fit.plane)[0].upper(), "second": str(fit.plane)[1].upper()}
        if g > 0:
            return tr(
                "{second} leans towards +{first}: bring its far end back by {shift} over {span:g} mm. Terms only then.",
                **values,
            )
        return tr(
            "{second} leans towards −{first}: bring its far end forward by {shift} over {span:g} mm. Terms only then.",
            **values,
        )
    if motion is Motion.DELTA:
        return tr("A delta has no side to shift: measure rods and tower places, then enter what they are.")
    if motion is Motion.CROSSED_BELT:
        return tr("Even the tension of the two belts first, then set the beam: unequal belts lean Y like this.")
    if g > 0:
        return tr(
            "The +X side of the beam stands ahead: bring it back (towards −Y) by {shift} on {span:g} mm between the "
            "sides. Terms only then.",
            **values,
        )
    return tr(
        "The +X side of the beam lags: bring it forward (towards +Y) by {shift} on {span:g} mm between the sides. "
        "Terms only then.",
        **values,
    )


def term_action(fit: Squareness, term_ratio: float) -> Words:
    """Say what to set the term to, from the one that was in force."""
    tangent = math.tan(fit.angle.value)
    new, U = rounded_pair(term_ratio + tangent, fit.angle.U)
    return tr(
        "Set the term of {plane} to {new} ± {U}: {old} was in force, {tangent} is added ({formula}). Then make the "
        "piece again and expect 0; doubled means that the sign is wrong.",
        plane=str(fit.plane).upper(),
        new=new,
        U=U,
        old=_signed(term_ratio),
        tangent=_signed(tangent),
        formula=_FORMULAS[fit.plane],
    )


def unchanged_action() -> Words:
    """Say what to do where a correction changed nothing."""
    return tr("Look whether the correction is in force at all: the angle is what it was.")


def turn_action(turned_ratio: float | None, *, terms: bool) -> Words:
    """Say what to do where a correction doubled the angle; `turned_ratio` is the term with its sign turned round."""
    if not terms:
        return tr("Shift the same side the other way, by twice as much: the correction doubled the angle.")
    if turned_ratio is None:
        return tr("Turn the sign of the term round: the correction doubled the angle.")
    return tr(
        "Turn the sign of the term round, to {term}: the correction doubled the angle.", term=_signed(turned_ratio)
    )


def untouched() -> Words:
    """Name the settings that would hide the angle."""
    return tr("Steps per millimetre, flow, contour offset: none of them turns an axis.")


def _signed(ratio: float) -> str:
    return f"{ratio:+.6f}".replace("-", "−")
