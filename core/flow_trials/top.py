"""Flow factor from top pads: a ladder of flow factors, each pad's top scored from gaps to ridges.

    score = a + b x           x change of the factor in force, score below 0 gaps, above 0 ridges
    k_new = k (1 + x0)        x0 where the line crosses zero

The interval of x0 is the inverse use of the line (Fieller); to it comes how well an eye finds the zero. Two people
score, each without seeing the factor or the other's scores.

Reference: Fieller, J. R. Stat. Soc. B 16 (1954) 175; ISO/TS 28037:2010 clause 11. An eye finds the zero within 1.4 %
(one standard uncertainty): common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.flow_trials.conditions import PrintConditions, percent_text
from core.measuring.gum import combine
from core.measuring.reach import within_reach
from core.measuring.straightline import Line, fit_line
from core.quantity import Estimate, coverage_factor
from core.words import Words, tr

METHOD = "top 1"
NAME = "flow_ratio_top"
LADDER_RATIO = (0.015, -0.045, 0.06, -0.015, 0.03, -0.06, 0.0, 0.045, -0.03)  # shuffled, so that no order is seen
HIGHEST_SCORE = 5.0
EYE_RATIO = 0.014
JUDGES = ("1", "2")
_FEWEST_PADS = 4
_WIDEST_RATIO = 0.3

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class TopFlow:
    """The answer of scored pads.

    Attributes:
        flow: the factor whose pads close without ridges, flow_ratio_top.
        line: score over the change of the factor.
        crossing: x0 as an estimate of the change, with U by Fieller and the eye's part.
        change_ratio: (n,) of each score.
        score: (n,) scores.
        judge: of each score.
        questions: what to mind.
    """

    flow: Estimate
    line: Line
    crossing: Estimate
    change_ratio: Floats
    score: Floats
    judge: tuple[str, ...]
    questions: tuple[Words, ...]


@within_reach
def measure_top(
    change_ratio: Sequence[float], score: Sequence[float], judge: Sequence[str], conditions: PrintConditions
) -> TopFlow:
    """Return the flow factor at which the tops of the pads cross from gaps to ridges.

    Args:
        change_ratio: (n,) change of the factor in force of the pad scored.
        score: (n,) from -5 (gaps) over 0 (closed) to +5 (ridges).
        judge: (n,) who scored it.
        conditions: what held while the pads were printed.

    Raises:
        InputError: fields `change_ratio`, `score` or `judge`, with the row where it is one; no extrapolation.
    """
    x, y = _checked(change_ratio, score, judge)
    line = fit_line(x, y)
    x0, half = _crossing(line, x)
    judges = sorted(set(judge))
    combined = combine([half / coverage_factor(line.dof), EYE_RATIO / math.sqrt(len(judges))], [line.dof, math.inf])
    k = conditions.in_force_ratio
    return TopFlow(
        flow=Estimate(NAME, k * (1.0 + x0), k * combined.u, combined.dof, "1"),
        line=line,
        crossing=Estimate("crossing", x0, combined.u, combined.dof, "1"),
        change_ratio=x,
        score=y,
        judge=tuple(judge),
        questions=tuple(_questions(x, y, judge, line)),
    )


def _crossing(line: Line, x: Floats) -> tuple[float, float]:
    """Return where the line is zero and half the width of its Fieller interval."""
    t = coverage_factor(line.dof)
    if line.slope <= t * line.u_slope:
        falls = line.slope < 0
        raise InputError(
            "score",
            tr("The scores fall with more flow: gaps are below zero, ridges above; check the signs.")
            if falls
            else tr("The scores do not rise clearly with the flow; print pads further apart or score them again."),
        )
    x0 = float(line.x_from_y(0.0, u_y=0.0)[0])
    if not x.min() <= x0 <= x.max():
        raise InputError(
            "score",
            tr(
                "The scores cross zero at {crossing} %, outside the pads from {low} to {high} %; "
                "nothing is read off there. Print pads about it.",
                crossing=percent_text(x0),
                low=percent_text(float(x.min())),
                high=percent_text(float(x.max())),
            ),
        )
    # (y0 + b z)^2 = t^2 (u_y0^2 + u_b^2 z^2), z = x - x0 of the line
    g = (t * line.u_slope / line.slope) ** 2
    level = line.y0 / line.slope
    half = t / line.slope * math.sqrt(line.u_y0**2 * (1.0 - g) + (level * line.u_slope) ** 2) / (1.0 - g)
    return x0, half


def _checked(change_ratio: ArrayLike, score: ArrayLike, judge: Sequence[str]) -> tuple[Floats, Floats]:
    x, y = np.array(change_ratio, dtype=float), np.array(score, dtype=float)
    if not x.shape == y.shape == (len(judge),):
        raise InputError("score", tr("Every score needs its pad and its judge."))
    for row in range(x.size):
        if not abs(x[row]) <= _WIDEST_RATIO:
            raise InputError(
                "change_ratio",
                tr("A pad at {value} % is no small change; use −6 to +6 %.", value=percent_text(float(x[row]))),
                row,
            )
        if not abs(y[row]) <= HIGHEST_SCORE:
            raise InputError(
                "score",
                tr("A score of {value:g} is not between −5 (gaps) and +5 (ridges).", value=float(y[row])),
                row,
            )
    if np.unique(x).size < _FEWEST_PADS:
        raise InputError("score", tr("Score four different pads at least; a line through fewer proves little."))
    if len(set(judge)) < len(JUDGES):
        raise InputError("judge", tr("One pair of eyes only: let a second person score the pads, blind."))
    return x, y


def _questions(x: Floats, y: Floats, judge: Sequence[str], line: Line) -> list[Words]:
    """Ask where the judges differ by more than two eyes may."""
    who = np.array(judge)
    off = [float(np.mean(y[who == name] - line.at(x[who == name])[0])) for name in sorted(set(judge))]
    apart = (max(off) - min(off)) / line.slope
    if apart <= 2.0 * math.sqrt(2.0) * EYE_RATIO:
        return []
    return [
        tr("The judges' zeros lie {apart:.1f} % apart: agree on what a gap is, and score again.", apart=100.0 * apart)
    ]
