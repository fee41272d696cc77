"""The lost-motion curve: small steps after a reversal, and where the axis begins to follow.

    travel = a + b*max(commanded - c, 0)

Symbols: c play (nothing moves up to it), b share of the command that arrives beyond it, 1 - b wind-up: what bends or
stretches before it moves (force over stiffness). Play is a loose part, wind-up a soft one or friction: different
repairs. The interval of c is that of the profile likelihood; b and the whole loss at the end of the curve,
L = X - b*(X - c) with X the last command, follow from the linearised fit.

Reference: Seber and Wild, Nonlinear Regression (1989) 5.2 (profile likelihood), 2.1 (linearisation), 9.3 (two phases).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.machine_geometry.reversal import check_resolution, pair_resolution_mm, refuse_gross
from core.measuring.brokenstick import FEWEST, BrokenStick, fit_broken_stick
from core.measuring.gum import combine
from core.measuring.linefit import fit_linear
from core.measuring.reach import refuse_unlike, within_reach
from core.quantity import Estimate, coverage_factor
from core.words import Words, tr

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class LostMotion:
    """A lost-motion curve evaluated.

    Attributes:
        axis: x, y or z.
        commanded_mm: (n,) rising from 0.
        travel_mm: (n,) measured, taken positive.
        stick: the fit.
        play: c; its u is half of the profile interval over k.
        windup: 1 - b.
        lost: what is lost at the end of the curve.
        rows: (n,) numbers of the readings.
        minds: what to mind.
    """

    axis: str
    commanded_mm: Floats
    travel_mm: Floats
    stick: BrokenStick
    play: Estimate
    windup: Estimate
    lost: Estimate
    rows: NDArray[np.int_]
    minds: tuple[Words, ...]

    @property
    def still_winding(self) -> bool:
        """Whether the loss still grows at the end of the curve, so that `lost` is not yet the whole reversal error."""
        return self.windup.value > self.windup.U

    def estimates(self) -> tuple[Estimate, ...]:
        """Return play and wind-up, and the reversal error where the curve reaches its end."""
        return (self.play, self.windup) if self.still_winding else (self.lost, self.play, self.windup)


@within_reach
def fit_lost_motion(commanded_mm: ArrayLike, travel_mm: ArrayLike, *, axis: str, resolution_mm: float) -> LostMotion:
    """Tell play from wind-up.

    Args:
        commanded_mm: (n,) sum of the steps commanded since the reversal, 0 for the reading before the first.
        travel_mm: (n,) readings of the dial, of either sign; nan for one that is missing or left out.
        axis: x, y or z.
        resolution_mm: graduation of the dial.

    Raises:
        InputError: field `commanded_mm` where it is below zero or missing, `reading_mm` for too few readings, an axis
            that does not move, or one that moves more than was commanded; `resolution_mm`.
    """
    commanded, travel = np.asarray(commanded_mm, dtype=float), np.asarray(travel_mm, dtype=float)
    refuse_unlike(travel_mm=travel, commanded_mm=commanded)
    check_resolution(resolution_mm)
    rows = np.flatnonzero(np.isfinite(travel))
    for row in rows:
        if not commanded[row] >= 0:
            raise InputError("commanded_mm", tr("Type the sum of the steps since the reversal, 0 or more."), int(row))
    rows = rows[np.argsort(commanded[rows], kind="stable")]
    x, y = commanded[rows], travel[rows]
    if x.size < FEWEST or np.unique(x).size < FEWEST - 1:
        raise InputError(
            "reading_mm",
            tr(
                "Readings of the curve so far: {count}; a knee is looked for in {least} or more.", count=x.size, least=5
            ),
        )
    y = (y - y[0]) * (1.0 if y[-1] >= y[0] else -1.0)
    stick = fit_broken_stick(x, y, max(float(np.ptp(y)), resolution_mm))
    _refuse_unusable(x, y, stick, resolution_mm)
    windup, lost = _linearised(x, y, stick, axis, resolution_mm)
    refuse_gross(lost.value)
    minds = _minds(x, stick, resolution_mm)
    return LostMotion(axis, x, y, stick, _play(x, stick, axis, resolution_mm), windup, lost, rows, minds)


def _refuse_unusable(x: Floats, y: Floats, stick: BrokenStick, resolution_mm: float) -> None:
    if not stick.seen:
        raise InputError(
            "reading_mm",
            tr(
                "Commanded {commanded:.3f} mm, moved {moved:.3f} mm: where the axis begins to follow is not seen yet. "
                "Go on with further steps; see that the motors are powered.",
                commanded=float(x[-1]),
                moved=float(y[-1]),
            ),
        )
    if y[-1] - y[0] > x[-1] + max(0.1 * x[-1], 3.0 * resolution_mm):
        raise InputError(
            "reading_mm",
            tr(
                "Commanded {commanded:.3f} mm, moved {moved:.3f} mm: an axis does not move further than it is told. "
                "Check the unit of the steps, the graduation of the dial, and the steps per millimetre on page Drive.",
                commanded=float(x[-1]),
                moved=float(y[-1]),
            ),
        )


def _play(x: Floats, stick: BrokenStick, axis: str, resolution_mm: float) -> Estimate:
    """Return c; where the profile does not bound it below, it may be as small as the curve begins."""
    low, high = max(stick.knee.low, float(x[0])), min(stick.knee.high, float(x[-1]))
    half = max(high - stick.knee.at, (high - low) / 2.0)
    digit = resolution_mm / math.sqrt(12.0) / max(stick.slope, 0.1)  # the knee is seen a part of a digit late
    combined = combine([half / coverage_factor(stick.dof), digit], [stick.dof, math.inf])
    return Estimate(f"play_{axis}", stick.knee.at - float(x[0]), combined.u, combined.dof, "mm")


def _linearised(x: Floats, y: Floats, stick: BrokenStick, axis: str, resolution_mm: float) -> tuple[Estimate, Estimate]:
    beyond = np.maximum(x - stick.knee.at, 0.0)
    jacobian = np.column_stack([np.ones(x.size), beyond, -stick.slope * (x > stick.knee.at)])  # by a, b, c
    cov = stick.sd**2 * fit_linear(jacobian, y).unscaled_cov
    run = float(beyond[-1])
    by_loss = np.array([0.0, -run, stick.slope])  # L = X - b (X - c)
    digit = pair_resolution_mm(resolution_mm)
    u_slope = combine([math.sqrt(cov[1, 1]), digit / run], [stick.dof, math.inf])
    u_loss = combine([math.sqrt(float(by_loss @ cov @ by_loss)), digit], [stick.dof, math.inf])
    lost_mm = float(x[-1] - x[0]) - stick.slope * run
    return (
        Estimate(f"windup_{axis}", 1.0 - stick.slope, u_slope.u, u_slope.dof, "1"),
        Estimate(f"reversal_{axis}", max(lost_mm, 0.0), u_loss.u, u_loss.dof, "mm"),
    )


def _minds(x: Floats, stick: BrokenStick, resolution_mm: float) -> tuple[Words, ...]:
    minds = []
    if np.sum(x > stick.knee.at) < FEWEST:
        minds.append(tr("Few readings beyond the knee: go on with further steps, then wind-up is told better."))
    if stick.sd > max(2.0 * resolution_mm, 0.01):
        minds.append(
            tr(
                "The readings scatter by {sd:.3f} mm about the curve: smooth sliding, whole microsteps as steps, and a "
                "firm base make it finer.",
                sd=stick.sd,
            )
        )
    return tuple(minds)
