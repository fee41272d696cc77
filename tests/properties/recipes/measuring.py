"""Fits, corrections and rules."""

from __future__ import annotations

from typing import Any

import numpy as np

from core.measuring.checkreadings import CheckReadings
from core.measuring.correction import CorrectionCurve
from core.measuring.decay import Decay, fit_decay
from core.measuring.linefit import LinearFit
from core.measuring.ordinal import Ordinal, draw_around
from core.measuring.runrules import Rule, Run, find_runs
from tests.properties import shapes
from tests.properties.kinds import Hand, Recipe


def soaked(hand: Hand) -> Decay:
    """Return a decay, from readings that make one."""
    count = 4 + hand.many()
    return fit_decay(np.arange(count) * 60.0, np.array(hand.numbers("_mm", count)))


def ordinal_row(hand: Hand) -> dict[str, Any]:
    """Return a fit of scores, draws around it, and rows of its design."""
    fit = shapes.ordinal_fit(hand)
    drawn = draw_around(fit, np.random.default_rng(hand.between(0, 9)), 50)
    row = np.eye(fit.effects.size)
    return {"fit": fit, "self": drawn, "row": row[0], "first": row[0], "second": row[-1]}


def ordinal_mean(hand: Hand) -> dict[str, Any]:
    """Return a fit of scores, and a row of its design."""
    given = ordinal_row(hand)
    return {**given, "self": given["fit"]}


def correction(hand: Hand) -> CorrectionCurve:
    """Return a correction curve of a few lengths."""
    count = hand.between(1, 4)
    columns = [np.array([hand.number("u_") for _ in range(count)]) for _ in range(3)]
    return CorrectionCurve(np.arange(count) * 10.0, *columns)


RECIPES: dict[Any, Recipe] = {
    CorrectionCurve: correction,
    tuple[Run, ...]: lambda hand: find_runs(hand.numbers("_mm"), 50.0, 20.0),
    Run: lambda hand: Run(hand.pick(*Rule), 0, 1, 1, 1),
    CheckReadings: shapes.readings_of_check,
    LinearFit: lambda hand: shapes.shaped_fit(hand)[0],
    Ordinal: shapes.ordinal_fit,
    Decay: soaked,
}


ARGUMENTS: dict[str, Recipe] = {
    "measuring.brokenstick.stick_band": shapes.stick,
    "measuring.linefit.LinearFit.determines": shapes.determines,
    "measuring.ordinal.fit_proportional_odds": shapes.scored,
    "measuring.ordinal.difference_p": shapes.scored,
    "measuring.ordinal.draw_around": lambda hand: {"draws": 20},
    "measuring.scores.draw_scores": shapes.scored,
    "measuring.criteria.fit_criteria": shapes.criteria,
    "measuring.ladder.fit_scores": shapes.scores_of_steps,
    "measuring.lines.add_up": shapes.lines,
    "measuring.lines.fit_lines": shapes.lines,
    "measuring.straightline.fit_line": shapes.line,
    "measuring.lines.line_covariance": lambda hand: {name: hand.number("u_") for name in ("lever", "u_y0", "u_slope")},
    "measuring.rownames.row_name": lambda _: {"translated": str},
    "measuring.ordinal.Ordinal.mean_score": ordinal_mean,
    "measuring.ordinal.Draws.place": ordinal_row,
    "measuring.ordinal.Draws.above": ordinal_row,
    "measuring.checkreadings.CheckReadings.of": lambda hand: {"self": shapes.readings_of_check(hand, even=True)},
    "measuring.ladder.fit_values": shapes.values_of_steps,
    "measuring.ladder.Ladder.at": lambda hand: {"step": hand.numbers("_c")},
    "measuring.gum.effective_dofs": lambda hand: {
        "u": np.abs(shapes.column(hand, "u_", 6)).reshape(2, 3),
        "nu": np.array([1.0, np.inf, 9.5]),
    },
}
