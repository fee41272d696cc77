"""Scores 0 to 4 of specimens, given by two judges at least, blind: what cannot be one, and what they leave possible.

Reference: proportional odds, `core.measuring.ordinal`. Scores 0 to 4, two judges: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.ordinal import Draws, draw_around, fit_proportional_odds, piece_weights
from core.words import tr

Floats = NDArray[np.float64]
Ints = NDArray[np.intp]

LOWEST_SCORE, HIGHEST_SCORE = 0.0, 4.0
FEWEST_STEPS, FEWEST_JUDGES = 3, 2
DRAWS = 2000
_SCALE = (0.0, 1.0, 2.0, 3.0, 4.0)


def draw_scores(
    y: Floats,
    place: Ints,
    who: Ints,
    rng: np.random.Generator,
    piece: Sequence[str] | None = None,
    draws: int = DRAWS,
) -> Draws:
    """Return draws of the effects of the steps, then of the judges, an average pair of eyes at zero.

    Args:
        y: (n,) scores.
        place: (n,) which step, from 0.
        who: (n,) which judge, from 0.
        rng: of the draws.
        piece: (n,) the piece each score is of; None: all of different ones.
        draws: how many.
    """
    design = (place[:, np.newaxis] == np.arange(place.max() + 1)).astype(float)
    judges = int(who.max()) + 1
    eyes = (who[:, np.newaxis] == np.arange(1, judges)).astype(float) - 1.0 / judges
    weight = None if piece is None else piece_weights(piece)
    fit = fit_proportional_odds(y, np.column_stack([design, eyes]), scale=_SCALE, weight=weight)
    return draw_around(fit, rng, draws)


def checked_scores(step: Sequence[float], score: Sequence[float], judge: Sequence[str]) -> tuple[Floats, Floats]:
    """Return steps and scores (n,) as arrays.

    Raises:
        InputError: field `score`, `step` or `judge`, with the row where it is one.
    """
    x, y = np.array(step, dtype=float), np.array(score, dtype=float)
    if not x.shape == y.shape == (len(judge),):
        raise InputError("score", tr("Every score needs its step and its judge."))
    for row in range(x.size):
        if not math.isfinite(x[row]):
            raise InputError("step", tr("Row {row}: type the step of this specimen.", row=row + 1), row)
        check_score(float(y[row]), row)
    if np.unique(x).size < FEWEST_STEPS:
        raise InputError("score", tr("Score three different steps at least; two only say which is better."))
    if len(set(judge)) < FEWEST_JUDGES:
        raise InputError("judge", tr("One pair of eyes only: let a second person score the specimens, blind."))
    return x, y


def check_score(value: float, row: int) -> None:
    """Refuse what is no score.

    Raises:
        InputError: field `score` at this row.
    """
    if not LOWEST_SCORE <= value <= HIGHEST_SCORE:
        says = tr("A score of {value:g} is not between 0 (useless) and 4 (without fault).", value=value)
        raise InputError("score", says, row)
    if value not in _SCALE:
        says = tr("A score of {value:g} lies between two of the scale; type 0, 1, 2, 3 or 4.", value=value)
        raise InputError("score", says, row)
