"""What to turn at the levelling screws, and the twist of a bed on four of them.

    t_k = (z_k - z_b)/P          twist = (z1 + z3 - z2 - z4)/4

Symbols: z_k height of the fitted plane at screw k, b the screw that stays (the one nearest to the mean height of all
screws, so that the turns are small), P thread pitch, t_k turns; z1 to z4 going round the bed, of a surface with a term
x*y, because a plane has no twist.

Reference: ISO 261:1998 table 2 (coarse pitches M3 0.5, M4 0.7, M5 0.8 mm).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from core.errors import InputError
from core.machine_geometry.bedplane import PROBE_SD_MM, BedPlane
from core.measuring.finite import finite_in
from core.measuring.linefit import fit_linear
from core.measuring.reach import within_reach
from core.quantity import Estimate
from core.words import tr

PITCHES_MM = {"M3": 0.5, "M4": 0.7, "M5": 0.8}
Place = tuple[float, float]
_SAME_MM = 0.01  # screws whose distances from the mean differ by less need equally little


@dataclass(frozen=True, slots=True)
class ScrewTurn:
    """One screw: its place, turns with uncertainty (positive: the bed must come down there), and which way round.

    Attributes:
        number: counted from 1 in the order given.
        off: height of the bed there above the screw that stays, mm.
        turns: off divided by the pitch.
        clockwise: as seen from above; None for the screw that stays, or where nothing is to turn.
    """

    number: int
    place_mm: Place
    off: Estimate
    turns: Estimate
    clockwise: bool | None

    @property
    def angle_deg(self) -> float:
        """Turns without their sign, as an angle."""
        return abs(360.0 * self.turns.value)

    @property
    def told(self) -> bool:
        """Whether the turn is told from none at all; a screw whose turn is not told stays."""
        return self.clockwise is not None and self.turns.significant


@within_reach
@finite_in("screws_mm")
def plan_turns(
    plane: BedPlane, screws_mm: Sequence[Place], pitch_mm: float, *, clockwise_lowers: bool
) -> tuple[ScrewTurn, ...]:
    """Return what to turn at each screw to bring all to the height of the one that needs least.

    Args:
        plane: of the bed.
        screws_mm: three or four places, the stiffest first: of screws that need equally little the first stays.
        pitch_mm: of the thread.
        clockwise_lowers: whether a turn clockwise, seen from above, brings the bed down.

    Raises:
        InputError: field `screws` or `pitch_mm`.
    """
    _check_screws(screws_mm)
    if not (math.isfinite(pitch_mm) and pitch_mm > 0):
        raise InputError("pitch_mm", tr("The thread pitch must be above zero; M3 has 0.5, M4 0.7, M5 0.8 mm."))
    turns = []
    base = _base(plane, screws_mm)
    for number, place in enumerate(screws_mm, start=1):
        off = plane.fall(screws_mm[base], place)
        turn = Estimate("turns", off.value / pitch_mm, off.u / pitch_mm, off.dof, "turns")
        still = number == base + 1 or turn.value == 0.0
        turns.append(ScrewTurn(number, place, off, turn, None if still else (off.value > 0) == clockwise_lowers))
    return tuple(turns)


def _base(plane: BedPlane, screws_mm: Sequence[Place]) -> int:
    """Return which screw stands nearest to the mean height of all; the first of those equally near."""
    heights = [float(plane.height(*place)) for place in screws_mm]
    mean = sum(heights) / len(heights)
    away = [abs(height - mean) for height in heights]
    return next(number for number, far in enumerate(away) if far <= min(away) + _SAME_MM)


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
