"""Slip of the extruder under load: filament fed against commanded, at rising volumetric rates into the open air.

    share = fed / commanded        share = a up to the knee, a - b (Q - knee) above it

Symbols: Q volumetric rate, mm3/s; a share at slow rates, which checks the steps; knee rate at which the wheel begins to
lose filament. Up to the upper end of the knee's 95 % interval no slip can be proved. Slip belongs to temperature, drive
and rate, never to the steps.

Reference: `core.measuring.brokenstick` for the fit; JCGM 100:2008 4.2 and 5.1.2 for the share of one rate. A loss of
0.5 % as the least that matters: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.brokenstick import FEWEST, BrokenStick, fit_broken_stick
from core.measuring.gum import combine
from core.measuring.hotend import refuse_hotter
from core.measuring.reach import within_reach
from core.quantity import Estimate, coverage_factor
from core.words import tr

LOSS_RATIO = 0.005
MOST_SHARE = 1.03
_HOTTEST_C = 600.0
_MOST_RATE_MM3_S = 200.0

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class HotFeed:
    """What held while filament was fed under load: nozzle bore, its temperature, and the hot end's stated limit.

    Raises:
        InputError: the field that cannot be; a temperature above the stated limit is refused.
    """

    nozzle_mm: float
    temperature_c: float
    hot_end_limit_c: float

    def __post_init__(self) -> None:
        """Refuse what cannot be and what must not be."""
        if not 0 < self.nozzle_mm <= 5:
            raise InputError(
                "nozzle_mm",
                tr("A bore of {bore:g} mm cannot be; type the one stamped on the nozzle.", bore=self.nozzle_mm),
            )
        if not 0 < self.temperature_c <= _HOTTEST_C:
            raise InputError(
                "temperature_c",
                tr("A nozzle at {value:g} °C feeds nothing; type the temperature shown.", value=self.temperature_c),
            )
        refuse_hotter(self.temperature_c, self.hot_end_limit_c)


class SlipAnswer(StrEnum):
    """What the shares at rising rates say."""

    TOO_FEW = "too_few"
    NONE_PROVED = "none_proved"
    PROVED = "proved"


@dataclass(frozen=True, slots=True, eq=False)
class Slip:
    """Shares at rising rates and what follows.

    Attributes:
        rate_mm3_s: (n,) rate of each repeat.
        share_ratio: (n,) fed over commanded.
        rates_mm3_s: (m,) different rates, rising.
        shares: mean share of each of them, with u.
        stick: the fit; None where there are too few repeats or rates.
        level: share at slow rates, loaded_share; None without a fit.
        loss: rate at which 0.5 % is lost, slip_rate; None where the readings do not bound it.
        free_to_mm3_s: rate up to which no slip can be proved; the highest one tried where none is.
    """

    rate_mm3_s: Floats
    share_ratio: Floats
    rates_mm3_s: Floats
    shares: tuple[Estimate, ...]
    stick: BrokenStick | None
    level: Estimate | None
    loss: Estimate | None
    free_to_mm3_s: float
    answer: SlipAnswer

    def estimates(self) -> tuple[Estimate, ...]:
        """Return loaded_share (1) and slip_rate (mm3/s), as far as they are told."""
        return tuple(e for e in (self.level, self.loss) if e is not None)


@within_reach
def measure_slip(
    rate_mm3_s: Sequence[float], share_ratio: Sequence[float], *, u_reading_ratio: float, u_scale_ratio: float = 0.0
) -> Slip:
    """Return the delivered share by rate, and the rate up to which no slip can be proved.

    Args:
        rate_mm3_s: (n,) commanded volumetric rate of each repeat.
        share_ratio: (n,) fed over commanded.
        u_reading_ratio: relative standard uncertainty of one repeat by its reading.
        u_scale_ratio: relative standard uncertainty of the rule or of the mass per length, shared by all.

    Raises:
        InputError: fields `rate_mm3_s` or `share_ratio`, with the row at fault.
    """
    rate, share = _checked(rate_mm3_s, share_ratio)
    rates, of = np.unique(rate, return_inverse=True)
    shares = _shares(share, of, u_reading_ratio, u_scale_ratio)
    highest = float(rate.max())
    if rate.size < FEWEST or rates.size < FEWEST - 1:
        return Slip(rate, share, rates, shares, None, None, None, highest, SlipAnswer.TOO_FEW)
    slow = float(np.median(share[np.argsort(rate)][: max(2, share.size // 3)]))
    stick = fit_broken_stick(rate, share, -LOSS_RATIO * slow)
    return Slip(
        rate_mm3_s=rate,
        share_ratio=share,
        rates_mm3_s=rates,
        shares=shares,
        stick=stick,
        level=_level(stick, rate, share, u_reading_ratio, u_scale_ratio),
        loss=_loss(stick, highest),
        free_to_mm3_s=min(stick.knee.high, highest) if stick.seen else highest,
        answer=SlipAnswer.PROVED if stick.seen else SlipAnswer.NONE_PROVED,
    )


def _shares(share: Floats, of: NDArray[np.intp], u_reading: float, u_scale: float) -> tuple[Estimate, ...]:
    """Return the mean share of each rate; repeats of one rate tell the scatter, all rates together."""
    count = np.bincount(of)
    mean = np.bincount(of, weights=share) / count
    dof = share.size - count.size
    sd = math.sqrt(float(np.sum((share - mean[of]) ** 2)) / dof) if dof > 0 else 0.0
    one, one_dof = (sd, float(dof)) if sd > u_reading else (u_reading, math.inf)
    found = []
    for value, n in zip(mean.tolist(), count.tolist(), strict=True):
        u = combine([one / math.sqrt(n), value * u_scale], [one_dof, math.inf])
        found.append(Estimate("delivered_share", value, u.u, u.dof, "1"))
    return tuple(found)


def _level(stick: BrokenStick, rate: Floats, share: Floats, u_reading: float, u_scale: float) -> Estimate:
    """Return the share at slow rates; few repeats that agree by chance are known no better than they were read."""
    slow = share[rate <= stick.knee.at] if stick.seen else share
    value, n = (stick.level, max(slow.size, 1)) if stick.seen else (float(share.mean()), share.size)
    scatter, dof = (stick.u_level, stick.dof) if stick.seen else (float(np.std(share, ddof=1)) / math.sqrt(n), n - 1)
    reading = u_reading / math.sqrt(n)
    random, random_dof = (scatter, float(dof)) if scatter > reading else (reading, math.inf)
    u = combine([random, value * u_scale], [random_dof, math.inf])
    return Estimate("loaded_share", value, u.u, u.dof, "1")


def _loss(stick: BrokenStick, highest: float) -> Estimate | None:
    place = stick.changed
    bounded = stick.seen and math.isfinite(place.low) and math.isfinite(place.high) and place.at <= highest
    if not bounded:
        return None
    u = (place.high - place.low) / 2.0 / coverage_factor(stick.dof)
    return Estimate("slip_rate", place.at, u, stick.dof, "mm3/s")


def _checked(rate_mm3_s: Sequence[float], share_ratio: Sequence[float]) -> tuple[Floats, Floats]:
    rate, share = np.array(rate_mm3_s, dtype=float), np.array(share_ratio, dtype=float)
    if rate.size == 0 or rate.shape != share.shape:
        raise InputError("rate_mm3_s", tr("Every repeat under load needs its rate and what was fed."))
    for row in range(rate.size):
        if not 0 < rate[row] <= _MOST_RATE_MM3_S:
            raise InputError(
                "rate_mm3_s",
                tr("A rate of {rate:g} mm³/s is not between 0 and 200; retype it, or leave it empty for a repeat "
                   "without load.", rate=float(rate[row])),
                row,
            )
        if not 0 < share[row] <= MOST_SHARE:
            raise InputError(
                "share_ratio",
                tr("{percent:.0f} % of what was commanded at {rate:g} mm³/s: check which way you measured, and the "
                   "length commanded.", percent=100.0 * float(share[row]), rate=float(rate[row])),
                row,
            )
    return rate, share
