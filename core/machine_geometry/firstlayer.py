"""The gap between nozzle and bed, told by printed pads of one layer: their thickness against the height commanded.

    e = mean t - h                        Z_new = Z - e
    u(e)^2 = s^2/n + u_zero^2 + (u_scale mean t)^2 + r^2/12 + (h u_flow)^2
    t = c0 + c1 x + c2 y + residual       F = (S_0 - S)/2 / (S/(n - 3))
    chi2 = S_0/(R^2/12 + r^2/12 + s_surface^2)

Symbols: t thickness at n places, h first-layer height commanded, Z height offset in force, s standard deviation between
places, r worth of the last digit, S_0 and S sums of squares about the mean and about the plane, R flatness of the bed.

Sign: the height offset is added to every height commanded, so that a larger one holds the nozzle farther from the bed.
A pad too thin was pressed by a nozzle too low: e < 0, and the offset grows by what is missing.

A pad is as thick as the gap only where the plastic just fills it. From a nozzle too low, or too much of it, it rises
into ridges beside the path; the pad then reads thicker than the gap, and the change comes out too small, never the
wrong way. So pads are printed and read again after a change.

Reference: JCGM 100:2008 4.2 (mean), 4.3.7 (a range that is all that is known), 5.1.2, F.2.2.1 (resolution), G.4;
Montgomery, Peck and Vining, Introduction to Linear Regression Analysis, 3.3.1 (F test of a regression) and the
chi-squared test of a variance, both from memory. Limits: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.gum import combine, mean_of
from core.measuring.linefit import LinearFit, fit_linear
from core.measuring.reach import within_reach
from core.quantity import LEVEL, Estimate
from core.records.rows import Instrument
from core.words import tr

METHOD = "firstlayer 1"
GOOD_MM = 0.02  # a pad this near the height commanded is left alone
FEWEST, ENOUGH = 3, 5
TILT_RATIO = 0.25  # of the first layer: a larger fall over the places is no matter of the offset
SURFACE_SD_MM = 0.005  # of one reading on the paths of a pad
MOST_CHANGE_MM = 0.5
_MOST_OFFSET_MM = 10.0
_BORES_MM = (0.1, 3.0)
_ODD_MM, _ODD_SDS = 0.05, 4.0  # looked at again

Floats = NDArray[np.float64]


class Spread(StrEnum):
    """What the places differ by, held against the bed."""

    BY_BED = "by_bed"
    MORE_THAN_BED = "more_than_bed"
    NO_FLATNESS = "no_flatness"


@dataclass(frozen=True, slots=True)
class Printed:
    """How the pads were printed: first-layer height commanded, height offset in force, bore of the nozzle.

    Raises:
        InputError: the field that cannot be.
    """

    layer_mm: float
    offset_mm: float
    nozzle_mm: float

    def __post_init__(self) -> None:
        """Refuse what cannot be."""
        low, high = _BORES_MM
        if not low <= self.nozzle_mm <= high:
            raise InputError(
                "nozzle_mm",
                tr("A bore of {bore:g} mm is not between {low:g} and {high:g} mm; type that of the nozzle.",
                   bore=self.nozzle_mm, low=low, high=high),
            )  # fmt: skip
        if not 0.0 < self.layer_mm <= self.nozzle_mm:
            raise InputError(
                "layer_mm",
                tr(
                    "A first layer of {layer:g} mm is not above 0 and up to the bore of {bore:g} mm; type the height "
                    "that was commanded.",
                    layer=self.layer_mm,
                    bore=self.nozzle_mm,
                ),
            )
        if not abs(self.offset_mm) <= _MOST_OFFSET_MM:
            raise InputError(
                "offset_mm",
                tr("A height offset of {offset:g} mm is more than {limit:g} mm; type the one in force.",
                   offset=self.offset_mm, limit=_MOST_OFFSET_MM),
            )  # fmt: skip


@dataclass(frozen=True, slots=True)
class Fall:
    """The plane through the thicknesses.

    Attributes:
        size: largest difference of the plane over the places, first_layer_fall.
        proved: whether the F test says so.
        matters: whether it is proved and more than a quarter of the first layer.
    """

    size: Estimate
    proved: bool
    matters: bool


@dataclass(frozen=True, slots=True, eq=False)
class FirstLayer:
    """What the pads say; arrays (n,) by place.

    Attributes:
        thickness_mm: as read.
        layer_mm: first-layer height commanded.
        error: mean thickness less height commanded, first_layer_error.
        offset: the height offset that makes it zero, height_offset.
        scatter: standard deviation between places, first_layer_spread.
        spread: whether the flatness of the bed explains it.
        fall: the plane through the places; None where they are not told, too few or in a line.
        flagged: places far from the others.
    """

    thickness_mm: Floats
    layer_mm: float
    error: Estimate
    offset: Estimate
    scatter: Estimate
    spread: Spread
    fall: Fall | None
    flagged: NDArray[np.bool_]

    def __post_init__(self) -> None:
        """Make the arrays read-only."""
        self.thickness_mm.flags.writeable = self.flagged.flags.writeable = False

    @property
    def good(self) -> bool:
        """Whether the mean lies within the limit."""
        return abs(self.error.value) <= GOOD_MM

    @property
    def proved_good(self) -> bool:
        """Whether the whole interval lies within the limit."""
        return abs(self.error.value) + self.error.U <= GOOD_MM

    def estimates(self) -> tuple[Estimate, ...]:
        """Return first_layer_error, height_offset, first_layer_spread, and first_layer_fall where places are told."""
        return (self.error, self.offset, self.scatter, *((self.fall.size,) if self.fall else ()))


@within_reach
def measure_first_layer(
    thickness_mm: Sequence[float],
    printed: Printed,
    instrument: Instrument,
    *,
    u_flow_ratio: float = 0.0,
    x_mm: Sequence[float] = (),
    y_mm: Sequence[float] = (),
    flatness: Estimate | None = None,
) -> FirstLayer:
    """Return what pads of one layer say about the gap.

    Args:
        thickness_mm: (n,) of the pads, three places at least.
        printed: how they were printed.
        instrument: what they were read with.
        u_flow_ratio: standard uncertainty of the flow, as a share.
        x_mm: (n,) places on the bed; empty, or with a nan among them, where they are not told.
        y_mm: (n,) as well.
        flatness: of the bed, from a kept trial; None for none.

    Raises:
        InputError: `thickness_mm`, with its row where it is one; `u_flow_ratio`, `x_mm`.
    """
    if not 0.0 <= u_flow_ratio <= 1.0:
        raise InputError("u_flow_ratio", tr("The flow is not known to better than itself; type a share from 0 to 1."))
    t = _checked(thickness_mm, printed.nozzle_mm)
    layer_mm = printed.layer_mm
    mean = mean_of(t)
    step = instrument.resolution_mm
    u = combine(
        [mean.u, instrument.u_outside_zero_mm, instrument.u_scale_ratio * mean.value, step / math.sqrt(12.0),
         layer_mm * u_flow_ratio],
        [mean.dof, math.inf, math.inf, math.inf, math.inf],
    )  # fmt: skip
    e = mean.value - layer_mm
    if abs(e) > MOST_CHANGE_MM:
        raise InputError(
            "thickness_mm",
            tr(
                "The pads are {off:.2f} mm off the height commanded: an offset is not changed by more than {limit:g} "
                "mm. Check the homing first, and that this was the first layer.",
                off=abs(e),
                limit=MOST_CHANGE_MM,
            ),
        )
    return FirstLayer(
        thickness_mm=t,
        layer_mm=layer_mm,
        error=Estimate("first_layer_error", e, u.u, u.dof, "mm"),
        offset=Estimate("height_offset", printed.offset_mm - e, u.u, u.dof, "mm"),
        scatter=Estimate("first_layer_spread", mean.sd, mean.sd / math.sqrt(2.0 * mean.dof), float(mean.dof), "mm"),
        spread=_spread(t, step, flatness),
        fall=_fall(t, x_mm, y_mm, step, layer_mm),
        flagged=_flagged(t),
    )


def _checked(thickness_mm: Sequence[float], nozzle_mm: float) -> Floats:
    t = np.array(thickness_mm, dtype=float)
    for row, thickness in enumerate(t.ravel()):
        if not thickness > 0.0:
            raise InputError(
                "thickness_mm",
                tr(
                    "A pad of {thickness:g} mm is none. Zero the gauge, then read it again, or leave the row empty.",
                    thickness=float(thickness),
                ),
                row,
            )
        if thickness > nozzle_mm:
            raise InputError(
                "thickness_mm",
                tr(
                    "{thickness:g} mm is more than the bore of {bore:g} mm; no single layer is. Two layers, a rim, or "
                    "the decimal mark? Read it again, or leave the row empty.",
                    thickness=float(thickness),
                    bore=nozzle_mm,
                ),
                row,
            )
    if t.size < FEWEST or t.ndim != 1:
        raise InputError(
            "thickness_mm",
            tr(
                "{count} of {fewest} places so far: fewer do not tell what is the gap and what is the place. "
                "Read five, one in the middle and one in each corner.",
                count=int(t.size),
                fewest=FEWEST,
            ),
        )
    return t


def _spread(t: Floats, step_mm: float, flatness: Estimate | None) -> Spread:
    """Hold the places against the bed by chi-squared: its heights lie anywhere within its flatness."""
    if flatness is None:
        return Spread.NO_FLATNESS
    from scipy.special import chdtri

    expected = (flatness.value**2 + step_mm**2) / 12.0 + SURFACE_SD_MM**2
    limit = expected * float(chdtri(t.size - 1, 1.0 - LEVEL))
    return Spread.BY_BED if _about_mean(t) <= limit else Spread.MORE_THAN_BED


def _fall(t: Floats, x_mm: Sequence[float], y_mm: Sequence[float], step_mm: float, layer_mm: float) -> Fall | None:
    x, y = np.array(x_mm, dtype=float), np.array(y_mm, dtype=float)
    if x.size == 0 and y.size == 0:
        return None
    if x.shape != t.shape or y.shape != t.shape:
        raise InputError("x_mm", tr("Places and thicknesses differ in number; check the columns."))
    if t.size <= FEWEST or not np.all(np.isfinite([x, y])):
        return None
    fit = fit_linear(np.column_stack([np.ones(t.size), x - x.mean(), y - y.mean()]), t)
    if fit.rank < 3:
        return None
    return _told(fit, _about_mean(t), np.array([np.ptp(x), np.ptp(y)]), step_mm**2 / 12.0, layer_mm)


def _told(fit: LinearFit, about_mean: float, span_mm: Floats, least: float, layer_mm: float) -> Fall:
    """Return the fall; `least` is the variance that the last digit leaves to readings that agree all too well."""
    from scipy.special import fdtri

    variance = max(fit.ssr / fit.dof, least)
    F = (about_mean - fit.ssr) / 2.0 / variance if variance > 0.0 else math.inf
    run = np.array([0.0, *(np.sign(fit.coef[1:]) * span_mm)])
    u = math.sqrt(max(float(run @ fit.unscaled_cov @ run), 0.0) * variance)
    size = Estimate("first_layer_fall", float(run @ fit.coef), u, float(fit.dof), "mm")
    proved = float(fdtri(2, fit.dof, LEVEL)) < F
    return Fall(size, proved, proved and size.value > TILT_RATIO * layer_mm)


def _about_mean(t: Floats) -> float:
    return float(np.sum((t - t.mean()) ** 2))


def _flagged(t: Floats) -> NDArray[np.bool_]:
    """Flag the places that stand far from the mean of the others, by the scatter of those."""
    n = t.size
    if n <= FEWEST:
        return np.zeros(n, dtype=bool)
    off = (t - t.mean()) * n / (n - 1.0)
    others = np.maximum(_about_mean(t) - (t - t.mean()) ** 2 * n / (n - 1.0), 0.0)
    sd = np.sqrt(others / (n - 2.0) * n / (n - 1.0))  # of a further place, by the others
    return np.asarray((np.abs(off) > _ODD_MM) & (np.abs(off) > _ODD_SDS * sd))
