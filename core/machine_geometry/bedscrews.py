"""What to turn at the levelling screws, and the twist of a bed on four of them.

    t_k = (z_k - z_1)/P          twist = (z1 + z3 - z2 - z4)/4

Symbols: z_k height of the fitted plane at screw k, screw 1 the reference that stays, P thread pitch, t_k turns; z1 to
z4 going round the bed, of a surface with a term x*y, because a plane has no twist. Minutes are those of a clock hand: a
turn has sixty.

Reference: ISO 261:1998 table 2 (coarse pitches M3 0.5, M4 0.7, M5 0.8 mm).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from core.errors import InputError
from core.machine_geometry.bedplane import PROBE_SD_MM, BedPlane
from core.measuring.linefit import fit_linear
from core.quantity import Estimate
from core.words import tr

PITCHES_MM = {"M3": 0.5, "M4": 0.7, "M5": 0.8}
Place = tuple[float, float]


@dataclass(frozen=True, slots=True)
class ScrewTurn:
    """One screw: its place, turns with uncertainty (positive: the bed must come down there), and which way round.

    Attributes:
        number: counted from 1 in the order given; 1 is the reference.
        off: height of the bed there above the reference, mm.
        turns: off divided by the pitch.
        clockwise: as seen from above; None for the reference, or where nothing is to turn.
    """

    number: int
    place_mm: Place
    off: Estimate
    turns: Estimate
    clockwise: bool | None

    @property
    def minutes(self) -> float:
        """Turns without their sign, as minutes of a clock hand."""
        return abs(60.0 * self.turns.value)


def plan_turns(
    plane: BedPlane, screws_mm: Sequence[Place], pitch_mm: float, *, clockwise_lowers: bool
) -> tuple[ScrewTurn, ...]:
    """Return what to turn at each screw to bring it to the height of the first.

    Args:
        plane: of the bed.
        screws_mm: three or four places; the first stays as it is, so name the stiffest first.
        pitch_mm: of the thread.
        clockwise_lowers: whether a turn clockwise, seen from above, brings the bed down.

    Raises:
        InputError: field `screws` or `pitch_mm`.
    """
    _check_screws(screws_mm)
    if not (math.isfinite(pitch_mm) and pitch_mm > 0):
        raise InputError("pitch_mm", tr("The thread pitch must be above zero; M3 has 0.5, M4 0.7, M5 0.8 mm."))
    turns = []
    for number, place in enumerate(screws_mm, start=1):
        off = plane.fall(screws_mm[0], place)
        turn = Estimate("turns", off.value / pitch_mm, off.u / pitch_mm, off.dof, "turns")
        still = number == 1 or turn.value == 0.0
        turns.append(ScrewTurn(number, place, off, turn, None if still else (off.value > 0) == clockwise_lowers))
    return tuple(turns)


def twist_of(plane: BedPlane, screws_mm: Sequence[Place]) -> Estimate | None:
    """Return the twist at four screws, or None: three screws have none, and too few probes do not tell it."""
    if len(screws_mm) != 4:
        return None
    cx, cy = plane.centre_mm
    x, y = plane.x_mm - cx, plane.y_mm - cy
    fit = fit_linear(np.column_stack([np.ones(x.size), x, y, x * y]), plane.z_mm)
    if fit.rank < 4:
        return None
    at = np.array([(1.0, sx - cx, sy - cy, (sx - cx) * (sy - cy)) for sx, sy in _round_the_bed(screws_mm)])
    row = np.array([1.0, -1.0, 1.0, -1.0]) @ at / 4.0
    if plane.probe is not None or fit.dof == 0:
        sd, dof = (plane.probe.value, plane.probe.dof) if plane.probe else (PROBE_SD_MM, math.inf)
        u = sd * float(np.linalg.norm((row @ fit.solver) / np.sqrt(plane.touches)))
        return Estimate("bed_twist", float(row @ fit.coef), u, dof, "mm")
    u = math.sqrt(float(row @ fit.unscaled_cov @ row) * fit.ssr / fit.dof)
    return Estimate("bed_twist", float(row @ fit.coef), u, float(fit.dof), "mm")


def _round_the_bed(screws_mm: Sequence[Place]) -> list[Place]:
    """Return the screws in the order in which one walks round them, beginning with the first."""
    cx, cy = (sum(values) / len(screws_mm) for values in zip(*screws_mm, strict=True))
    ordered = sorted(screws_mm, key=lambda s: math.atan2(s[1] - cy, s[0] - cx))
    first = ordered.index(screws_mm[0])
    return ordered[first:] + ordered[:first]


def _check_screws(screws_mm: Sequence[Place]) -> None:
    if len(screws_mm) not in (3, 4):
        raise InputError("screws", tr("{n} screws are named; a bed is levelled on three or four.", n=len(screws_mm)))
    off = np.array(screws_mm) - np.array(screws_mm[0])
    wide = np.linalg.svd(off, compute_uv=False)
    if wide[1] < 0.05 * wide[0] or wide[0] == 0:
        raise InputError("screws", tr("The screws stand in one line or on one place; type where each one is."))
