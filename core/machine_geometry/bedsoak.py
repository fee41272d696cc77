"""How long a bed must soak: drift of one place while bed and chamber warm up.

    z = z_end + A*exp(-t/tau)        soak time = 3*tau

After three time constants 5 % of the drift is left. The bed counts as settled where the drift left in five minutes is
below 0.01 mm, and where the soak time does not lie past the readings: no drift is drawn out beyond what was read.

Reference: as `core.measuring.decay`; the limit and the factor 3: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from core.errors import InputError
from core.measuring.decay import FEWEST, Decay, fit_decay
from core.measuring.reach import within_reach
from core.quantity import Estimate, coverage_factor
from core.words import tr

SETTLED_MM = 0.01
WINDOW_S = 300.0
TAUS = 3.0


class SoakAnswer(StrEnum):
    """What a drift tells."""

    STEADY = "steady"  # no drift from the beginning
    SETTLED = "settled"
    NOT_SETTLED = "not_settled"


@dataclass(frozen=True, slots=True)
class Soak:
    """The drift of one place.

    Attributes:
        answer: what it tells.
        fit: the decay.
        low_s, high_s: 95 % interval of the soak time, infinite where the readings do not bound it.
        drift_mm: what it moved in the last five minutes.
        last_s: time of the last reading.
    """

    answer: SoakAnswer
    fit: Decay
    low_s: float
    high_s: float
    drift_mm: float
    last_s: float

    @property
    def soak_s(self) -> float:
        """Three time constants; zero for a bed that does not drift."""
        return 0.0 if self.answer is SoakAnswer.STEADY else TAUS * self.fit.tau

    def estimates(self) -> tuple[Estimate, ...]:
        """Return bed_soak in minutes, where the bed has settled."""
        if self.answer is not SoakAnswer.SETTLED:
            return ()
        half_min = (self.high_s - self.low_s) / 120.0
        u_min = half_min / coverage_factor(self.fit.dof)
        return (Estimate("bed_soak", self.soak_s / 60.0, u_min, float(self.fit.dof), "min"),)


@within_reach
def fit_soak(elapsed_s: Sequence[float], z_mm: Sequence[float]) -> Soak:
    """Fit the drift of a place.

    Args:
        elapsed_s: (n,) since the heating began, n >= 6.
        z_mm: (n,) heights of that place.

    Raises:
        InputError: field `elapsed_s` or `z_mm`.
    """
    if any(t < 0 for t in elapsed_s):
        row = next(i for i, t in enumerate(elapsed_s) if t < 0)
        raise InputError(
            "elapsed_s", tr("Row {row}: time counts from the start of heating, from 0 on.", row=row + 1), row
        )
    if len(elapsed_s) < FEWEST or len(set(elapsed_s)) < FEWEST - 1:
        raise InputError(
            "z_mm",
            tr(
                "Readings over time so far: {n}; a drift takes {fewest} at different times. Read on, every two "
                "minutes.",
                n=len(elapsed_s),
                fewest=FEWEST,
            ),
        )
    fit = fit_decay(elapsed_s, z_mm)
    last_s = float(max(elapsed_s))
    before, now = fit.mean(np.array([last_s - WINDOW_S, last_s]))
    drift_mm = abs(float(now - before))
    answer = _answer(fit, drift_mm, float(min(elapsed_s)), last_s)
    return Soak(answer, fit, TAUS * fit.low, TAUS * fit.high, drift_mm, last_s)


def _answer(fit: Decay, drift_mm: float, first_s: float, last_s: float) -> SoakAnswer:
    if last_s - first_s < WINDOW_S:
        return SoakAnswer.NOT_SETTLED  # nothing shows whether five minutes pass without drift
    if not fit.seen:
        return SoakAnswer.STEADY if fit.sd < SETTLED_MM else SoakAnswer.NOT_SETTLED
    bounded = fit.low > 0 and math.isfinite(fit.high) and TAUS * fit.low <= last_s
    return SoakAnswer.SETTLED if bounded and drift_mm < SETTLED_MM else SoakAnswer.NOT_SETTLED
