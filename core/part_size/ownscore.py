"""How our own predictions did so far: the share of features inside their U, and by how much U should grow.

    share   = inside / n
    factor  = root of the mean square of 1.96 E_n       one where U is right

Features of one piece go wrong together (one print, one fit, one clamping), so a piece counts as one in the intervals,
however many features were read on it: they are wide for few pieces, and no U is called too small by one bad print.

Reference: E. Wilson, J. Am. Stat. Assoc. 22 (1927) 209 (interval of a share); chi-squared interval of a variance;
that the unit of a cluster sample is the cluster: W. Cochran, Sampling Techniques, 3rd ed. 1977, 9.1.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from core.errors import InputError
from core.measuring.finite import refuse_no_number
from core.measuring.reach import within_reach
from core.quantity import coverage_factor
from core.words import tr


@dataclass(frozen=True, slots=True)
class Score:
    """How our predictions did so far.

    Attributes:
        pieces: how many were held against readings; `features` on them all.
        share: of the features inside their U; `low`, `high` its 95 % interval.
        factor: on our U that makes 95 % lie inside; `factor_low`, `factor_high` its 95 % interval.
    """

    pieces: int
    features: int
    share: float
    low: float
    high: float
    factor: float
    factor_low: float
    factor_high: float

    @property
    def too_small(self) -> bool:
        """Whether our U is proved too small."""
        return self.factor_low > 1.0


@within_reach
def lifetime_score(e_n_ratio: Sequence[ArrayLike]) -> Score:
    """Return the share inside and the factor by which our U should grow.

    Args:
        e_n_ratio: piece by piece the normalised errors of its verified features, U at 95 %.

    Raises:
        InputError: field `value` where nothing was verified yet.
    """
    by_piece = [piece for piece in (np.asarray(one, dtype=float) for one in e_n_ratio) if piece.size]
    if not by_piece:
        raise InputError("value", tr("No prediction was held against readings yet."))
    refuse_no_number("e_n_ratio", np.concatenate(by_piece))  # pieces have unlike numbers of features
    from scipy.special import chdtri

    z = coverage_factor(math.inf)
    e_n, n = np.concatenate(by_piece), len(by_piece)
    share = float(np.mean(np.abs(e_n) <= 1.0))
    middle, half = share + z * z / (2 * n), z * math.sqrt(share * (1 - share) / n + z * z / (4 * n * n))
    whole = 1 + z * z / n
    factor = z * math.sqrt(float(np.mean(e_n**2)))
    return Score(
        pieces=n,
        features=int(e_n.size),
        share=share,
        low=max((middle - half) / whole, 0.0),
        high=min((middle + half) / whole, 1.0),
        factor=factor,
        factor_low=factor * math.sqrt(n / float(chdtri(n, 0.025))),
        factor_high=factor * math.sqrt(n / float(chdtri(n, 0.975))),
    )
