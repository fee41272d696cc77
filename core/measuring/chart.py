"""Control charts of single results in the order of time: individuals with moving range, and the smoothed mean (EWMA).

    MR_i = |x_i - x_(i-1)|     sigma = MR-bar/d2     limits x-bar ± 3*sigma     limit of MR: D4*MR-bar
    z_i = lambda*x_i + (1 - lambda)*z_(i-1)
    limits of z: centre ± L*sigma*sqrt(lambda/(2 - lambda)*(1 - (1 - lambda)^(2i)))

Symbols: x result, x-bar its mean over the baseline, MR moving range of two, sigma the spread from one result to the
next; d2, D4 the factors of two (1.128 and 3.267, so that 3/d2 = 2.66); lambda the weight of the newest result in z.

A phase begins with the first result and with each identified event. Its limits come from its first 20 results, the
baseline, and then stand; from 8 to 19 results they are trial limits that still move; with fewer there are none.

Reference: ISO 7870-2:2013 (individuals and moving range, factors); NIST/SEMATECH e-Handbook of Statistical Methods
6.3.2.2 and 6.3.2.4; Lucas and Saccucci, Technometrics 32 (1990) 1-12 (exact and steady limits of the EWMA, lambda 0.2
with L 2.86). Eight and twenty results for a baseline: common practice, no source.
"""

from __future__ import annotations

import csv
import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from importlib.resources import files

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.measuring.runrules import Rule, Run, find_runs, runs_where
from core.words import tr

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]

BASELINE = 20  # results whose limits stand
LEAST = 8  # results for trial limits
LIMIT_SIGMA = 3.0
SMOOTHING = 0.2  # lambda: about the last ten results count
EWMA_SIGMA = 2.86  # L of lambda 0.2: as rare a false alarm as with three sigma on single results


class Standing(StrEnum):
    """What the limits of a phase are worth."""

    FIRM = "firm"
    TRIAL = "trial"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class Factors:
    """Factors of a group of n normal readings: mean d2 and deviation d3 of its range over sigma, D4 = 1 + 3*d3/d2."""

    n: int
    d2: float
    d3: float
    D4: float


@cache
def chart_factors(n: int) -> Factors:
    """Return the factors for groups of `n` readings.

    Raises:
        InputError: field `n`: the table goes from 2 to 10.

    Reference: ISO 7870-2:2013.
    """
    text = (files("resources") / "catalogue" / "chart_constants.csv").read_text(encoding="utf-8")
    for row in csv.DictReader(line for line in text.splitlines() if not line.startswith("#")):
        if int(row["n"]) == n:
            return Factors(n, float(row["d2"]), float(row["d3"]), float(row["D4"]))
    raise InputError("n", tr("There are no factors for groups of {n}; choose from 2 to 10.", n=n))


@dataclass(frozen=True, slots=True)
class Phase:
    """Results `start` up to, without, `stop`, and the limits that hold for them.

    Attributes:
        baseline: results the limits were taken from; 0 where there are none.
        centre: mean of the baseline, nan where there are no limits.
        mean_moving_range: mean of its moving ranges.
        missing: results needed for the next standing; 0 where the limits are firm.
        alike: there would be enough results, but they do not differ at all.
    """

    start: int
    stop: int
    standing: Standing
    baseline: int = 0
    centre: float = math.nan
    mean_moving_range: float = math.nan
    missing: int = 0
    alike: bool = False

    @property
    def sigma(self) -> float:
        """Spread from one result to the next, MR-bar/d2."""
        return self.mean_moving_range / chart_factors(2).d2

    @property
    def limits(self) -> tuple[float, float]:
        """Lower and upper limit of single results."""
        return self.centre - LIMIT_SIGMA * self.sigma, self.centre + LIMIT_SIGMA * self.sigma

    @property
    def moving_range_limit(self) -> float:
        """Upper limit of the moving range, D4*MR-bar; its lower limit is zero."""
        return chart_factors(2).D4 * self.mean_moving_range


@dataclass(frozen=True, slots=True, eq=False)
class IndividualsChart:
    """Single results (n,), their moving ranges (n,), nan where a phase begins, the phases and what stands out."""

    value: Floats
    moving_range: Floats
    phases: tuple[Phase, ...]
    runs: tuple[Run, ...]


@dataclass(frozen=True, slots=True, eq=False)
class EwmaChart:
    """Single results (n,), the smoothed mean z (n,), the half-width of its limits (n,); nan where there are none."""

    value: Floats
    smoothed: Floats
    half_width: Floats
    phases: tuple[Phase, ...]
    runs: tuple[Run, ...]


@within_reach
def individuals_chart(value: ArrayLike, starts: Sequence[int] = ()) -> IndividualsChart:
    """Return the chart of single results with their moving ranges.

    Args:
        value: (n,) results in the order of time, all in one unit.
        starts: places of the first result after an identified event; the limits begin anew there.

    Raises:
        InputError: field `value` where there is none or one is not finite, `starts` for a place that is not there.

    Reference: ISO 7870-2:2013; NIST/SEMATECH e-Handbook 6.3.2.2.
    """
    x = _checked(value)
    phases = _phases(x, starts)
    moving_range = np.concatenate([[math.nan], np.abs(np.diff(x))])
    moving_range[[phase.start for phase in phases]] = math.nan
    runs: list[Run] = []
    for phase in phases:
        if phase.standing is Standing.NONE:
            continue
        part = slice(phase.start, phase.stop)
        runs += [run.moved(phase.start) for run in find_runs(x[part], phase.centre, phase.sigma)]
        wide = moving_range[part] > phase.moving_range_limit  # a nan is not
        runs += [run.moved(phase.start) for run in runs_where(wide, Rule.SPREAD, 1)]
    return IndividualsChart(x, _frozen(moving_range), phases, _in_order(runs))


@within_reach
def ewma_chart(
    value: ArrayLike,
    starts: Sequence[int] = (),
    smoothing: float = SMOOTHING,
    width: float = EWMA_SIGMA,
    *,
    steady: bool = False,
) -> EwmaChart:
    """Return the chart of the smoothed mean, which sees slow wear sooner than single results do.

    Args:
        value: (n,) results in the order of time, all in one unit.
        starts: places of the first result after an identified event; smoothing and limits begin anew there.
        smoothing: lambda, above 0 and up to 1.
        width: L, the limits in units of the spread of z.
        steady: the limits that z reaches after many results, from the first one on.

    Raises:
        InputError: as `individuals_chart`; field `smoothing` or `width` out of its range.

    Reference: NIST/SEMATECH e-Handbook 6.3.2.4; Lucas and Saccucci 1990.
    """
    x = _checked(value)
    phases = _phases(x, starts)
    z, half = np.full(x.size, math.nan), np.full(x.size, math.nan)
    runs: list[Run] = []
    for phase in phases:
        if phase.standing is Standing.NONE:
            continue
        part = slice(phase.start, phase.stop)
        z[part] = ewma(x[part], phase.centre, smoothing)
        half[part] = ewma_half_width(phase.stop - phase.start, phase.sigma, smoothing, width, steady=steady)
        for side in (1, -1):
            beyond = side * (z[part] - phase.centre) > half[part]
            runs += [run.moved(phase.start) for run in runs_where(beyond, Rule.SMOOTHED, 1, side)]
    return EwmaChart(x, _frozen(z), _frozen(half), phases, _in_order(runs))


@finite_in("value", "begin")
def ewma(value: ArrayLike, begin: float, smoothing: float = SMOOTHING) -> Floats:
    """Return the smoothed means z_1 to z_n (n,) of the results x_1 to x_n, with z_0 = `begin`.

    Raises:
        InputError: field `smoothing` unless it is above 0 and up to 1.

    Reference: NIST/SEMATECH e-Handbook 6.3.2.4.
    """
    _check_smoothing(smoothing)
    z, out = begin, []
    for x in np.asarray(value, dtype=float).tolist():
        z = smoothing * x + (1.0 - smoothing) * z
        out.append(z)
    return np.array(out)


@within_reach
@finite_in("sigma")
def ewma_half_width(
    count: int, sigma: float, smoothing: float = SMOOTHING, width: float = EWMA_SIGMA, *, steady: bool = False
) -> Floats:
    """Return the half-width (count,) of the limits of z_1 to z_count; `steady`: that of z after many results for all.

    Raises:
        InputError: field `smoothing` unless it is above 0 and up to 1, `width` unless it is above 0.

    Reference: Lucas and Saccucci 1990; NIST/SEMATECH e-Handbook 6.3.2.4.
    """
    _check_smoothing(smoothing)
    if not width > 0 or math.isinf(width):
        raise InputError("width", tr("The width of the limits must be above zero; 3 is usual."))
    i = np.arange(1, count + 1)
    settled = 1.0 if steady else 1.0 - (1.0 - smoothing) ** (2 * i)
    return np.asarray(width * sigma * np.sqrt(smoothing / (2.0 - smoothing) * settled) * np.ones(count))


def _check_smoothing(smoothing: float) -> None:
    if not 0 < smoothing <= 1:
        raise InputError(
            "smoothing", tr("The weight of the newest result must be above 0 and up to 1; 0.2 is usual for slow wear.")
        )


def _phases(x: Floats, starts: Sequence[int]) -> tuple[Phase, ...]:
    bounds = sorted({0, *starts})
    if bounds[0] < 0 or bounds[-1] >= x.size:
        raise InputError("starts", tr("There is no result at the beginning of a phase; take the event away."))
    return tuple(_phase(x, start, stop) for start, stop in zip(bounds, [*bounds[1:], x.size], strict=True))


def _phase(x: Floats, start: int, stop: int) -> Phase:
    count = stop - start
    if count < LEAST:
        return Phase(start, stop, Standing.NONE, missing=LEAST - count)
    standing = Standing.FIRM if count >= BASELINE else Standing.TRIAL
    used = x[start : start + min(count, BASELINE)]
    missing = max(BASELINE - count, 0)
    mean_moving_range = float(np.mean(np.abs(np.diff(used))))
    if mean_moving_range <= 1e-12 * float(np.abs(used).max()):  # what rounding leaves of equal numbers
        return Phase(start, stop, Standing.NONE, missing=missing, alike=True)
    return Phase(start, stop, standing, used.size, float(used.mean()), mean_moving_range, missing)


def _in_order(runs: list[Run]) -> tuple[Run, ...]:
    return tuple(sorted(runs, key=lambda run: (run.last, run.first)))


def _checked(value: ArrayLike) -> Floats:
    x = np.array(value, dtype=float).ravel()
    if x.size == 0:
        raise InputError("value", tr("There is no kept result yet; keep the first one."))
    if not np.all(np.isfinite(x)):
        row = int(np.argmin(np.isfinite(x)))
        raise InputError("value", tr("Result {row} is not a finite number; withdraw its trial.", row=row + 1), row)
    return _frozen(x)


def _frozen(values: Floats) -> Floats:
    values.setflags(write=False)
    return values
