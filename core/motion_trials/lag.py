"""Pressure lag: how far the flow from the nozzle is behind the feed, from the widths of a line at changes of speed.

    Q_out = Q_in - tau dQ_out/dt        S(tau) = sum (w - w_mean)^2

Symbols: tau time constant that the feed leads by, w widths of one line shortly after the nozzle has become faster, at
steady speed, and shortly after it has become slower. With the right lead all widths are equal; a wrong one makes the
first too narrow and the last too wide or the reverse, both in proportion to its error, so that S is a parabola.
S scatters the more the larger it is, var(S) ~ S + constant, and the fit weighs by that.

Reference: first-order lag, elementary; the parabola through S and its turning point: `core.measuring.ladder`.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.ladder import Ladder, fit_values
from core.words import tr

Floats = NDArray[np.float64]

_FEWEST_WIDTHS = 2
_WIDEST_MM = 10.0
_ROUNDS = 4  # the weights come from the fit itself, and settle quickly
_FLOOR = 0.05  # share of the middle S that counts as scatter even where the fit says less


def width_scatter_mm2(widths_mm: Sequence[Sequence[float]]) -> Floats:
    """Return S of each line.

    Args:
        widths_mm: of each line its widths, two or more, as many for all.

    Raises:
        InputError: field `widths_mm`, row the line: too few widths, or one that cannot be.
    """
    found = []
    for row, widths in enumerate(widths_mm):
        w = np.asarray(widths, dtype=float)
        if w.size < _FEWEST_WIDTHS or w.size != len(widths_mm[0]):
            raise InputError("widths_mm", tr("Row {row}: read all widths of this line.", row=row + 1), row)
        if not np.all((w > 0) & (w < _WIDEST_MM)):
            raise InputError("widths_mm", tr("Row {row}: a line is not so wide; read it again.", row=row + 1), row)
        found.append(float(np.sum((w - w.mean()) ** 2)))
    return np.array(found)


def fit_lag(lead_s: Sequence[float], widths_mm: Sequence[Sequence[float]]) -> Ladder:
    """Return the lead at which a line keeps its width.

    Args:
        lead_s: (n,) lead of each line.
        widths_mm: of each line its widths.

    Raises:
        InputError: as `width_scatter_mm2` and `core.measuring.ladder.fit_values`.
    """
    S = width_scatter_mm2(widths_mm)
    found = fit_values(lead_s, S)
    floor = _FLOOR * float(np.median(S))
    for _ in range(_ROUNDS):
        found = fit_values(lead_s, S, u_ratio=np.sqrt(np.maximum(found.at(lead_s), floor) + floor))
    return found
