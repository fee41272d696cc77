"""The plane of the bed through probed heights: tilt, flatness, residual map, repeatability of the probe.

    z = c0 + c1*x + c2*y + r

Symbols: x, y place on the bed, z height of the bed there (up is positive), c1, c2 tilt, r residual, n places,
s_p standard deviation of one touch from touches at one place, flatness = max r - min r. Touches within 0.5 mm are one
place and count by their mean, so that a place touched ten times pulls no harder than the others.

The uncertainty of the tilt rests on s_p where touches tell it (u(c1) = s_p/sqrt(sum (x - mean x)^2) for a symmetric
grid), else on the scatter about the plane, which holds the shape of the bed too.

Reference: JCGM 100:2008 4.2 and H.3 (least squares); ISO 12781-1:2011 3 (flatness, least-squares reference plane). The
limits for probe and bed: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.linefit import LinearFit, fit_linear
from core.measuring.reach import refuse_unlike, within_reach
from core.quantity import Estimate
from core.words import Words, tr

METHOD = "bedplane 1"
SAME_PLACE_MM = 0.5
MOST_PROBE_SD_MM = 0.03
PROBE_SD_MM = 0.02  # of one touch where nothing is known: the upper end of what probes do
FLAT_MM, MAP_MM = 0.1, 0.3  # flatness below is fine; up to the second a height correction bends parts with the bed
LEVEL_MM = 0.05  # tilt over the bed below this is level
HOT_WITHIN_C = 10.0  # a bed that much below its printing temperature is cold
_FEWEST = 4
_MOST_ACROSS = 50
_FAR_MM, _FAR_SDS = 1.0, 5.0  # from the plane of the others: no bed, but swarf, a clip, a miss
_ODD_MM, _ODD_SDS = 0.15, 4.0  # looked at again

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class BedPlane:
    """The plane and what is left of the bed above and below it; arrays (n,) by place.

    Attributes:
        x_mm, y_mm, z_mm: places and their mean heights.
        touches: touches at each place.
        residual_mm: height above the plane.
        flagged: places that stand out from the plane of the others.
        row_place: (m,) for each probe as typed the number of its place.
        coef: c0, c1, c2.
        centre_mm: mean place, about which `cov` holds.
        cov: (3, 3) covariance of height at the centre and tilts.
        dof: degrees of freedom of `cov`.
        probe: standard deviation of one touch, None where no place was touched three times in all.
        hot: whether the bed counts as hot; a cold one has estimates of other names.
        minds: checks that are not met, in sentences.
    """

    x_mm: Floats
    y_mm: Floats
    z_mm: Floats
    touches: NDArray[np.int64]
    residual_mm: Floats
    flagged: NDArray[np.bool_]
    row_place: NDArray[np.int64]
    coef: Floats
    centre_mm: tuple[float, float]
    cov: Floats
    dof: float
    probe: Estimate | None
    u_flatness_mm: float
    hot: bool
    minds: tuple[Words, ...] = ()

    @property
    def flatness_mm(self) -> float:
        """Range of the residuals."""
        return float(np.ptp(self.residual_mm))

    @property
    def flatness(self) -> Estimate:
        """Range of the residuals with the uncertainty of two probed places; a cold bed's has a name of its own."""
        dof = self.probe.dof if self.probe else math.inf
        name = "bed_flatness" if self.hot else "bed_flatness_cold"
        return Estimate(name, self.flatness_mm, self.u_flatness_mm, dof, "mm")

    def estimates(self) -> tuple[Estimate, ...]:
        """Return bed_tilt_x, bed_tilt_y (1), bed_flatness, probe_sd (mm); a cold bed's names end in _cold."""
        end = "" if self.hot else "_cold"
        tilts = (
            Estimate(f"bed_tilt_{axis}{end}", float(self.coef[i]), math.sqrt(self.cov[i, i]), self.dof, "1")
            for i, axis in ((1, "x"), (2, "y"))
        )
        return (*tilts, self.flatness, *((self.probe,) if self.probe else ()))

    @within_reach
    def height(self, x_mm: ArrayLike, y_mm: ArrayLike) -> Floats:
        """Return the height of the plane at one place or many.

        Raises:
            InputError: field `y_mm`, where places have no X and Y each.
        """
        refuse_unlike(x_mm=np.atleast_1d(x_mm), y_mm=np.atleast_1d(y_mm))
        return np.asarray(self.coef[0] + self.coef[1] * np.asarray(x_mm) + self.coef[2] * np.asarray(y_mm))

    @within_reach
    def fall(self, from_mm: tuple[float, float], to_mm: tuple[float, float]) -> Estimate:
        """Return how much higher the plane is at the second place than at the first."""
        run = np.array([0.0, to_mm[0] - from_mm[0], to_mm[1] - from_mm[1]])
        return Estimate("fall", float(run @ self.coef), math.sqrt(float(run @ self.cov @ run)), self.dof, "mm")

    def tilt_over_bed(self) -> Estimate:
        """Return the largest difference of the plane's height over the probed area, with the sign left out."""
        x, y = (np.array([v.min(), v.max()]) for v in (self.x_mm, self.y_mm))
        low = (float(x[int(self.coef[1] < 0)]), float(y[int(self.coef[2] < 0)]))
        high = (float(x[int(self.coef[1] >= 0)]), float(y[int(self.coef[2] >= 0)]))
        return self.fall(low, high)


@within_reach
def fit_bed(
    x_mm: Sequence[float],
    y_mm: Sequence[float],
    z_mm: Sequence[float],
    *,
    hot: bool = True,
    bed_c: float | None = None,
    print_c: float | None = None,
    known_probe: Estimate | None = None,
) -> BedPlane:
    """Fit the plane of a bed.

    Args:
        x_mm: (m,) places of the probes.
        y_mm: (m,) as well.
        z_mm: (m,) heights of the bed, up positive; several at one place are touches of it.
        hot: whether the bed is said to be at its printing temperature.
        bed_c: temperature of the bed while it was probed, None for not read.
        print_c: temperature it is printed at, None for not said.
        known_probe: probe_sd of an earlier trial.

    Raises:
        InputError: field `x_mm`, `z_mm`: too few places, all in a line, a probe that is no bed, a probe that scatters.
    """
    x, y, z = _checked(x_mm, y_mm, z_mm)
    place = _places(x, y)
    count = np.bincount(place)
    mean = [np.bincount(place, weights=v) / count for v in (x, y, z)]
    probe = _probe(z, place, mean[2], count)
    cx, cy = float(mean[0].mean()), float(mean[1].mean())
    fit = _plane(mean[0] - cx, mean[1] - cy, mean[2])
    flagged = _standing_out(fit, place)
    best = probe or known_probe
    warm, minds = _warmth(hot, bed_c, print_c)
    sd = best.value if best else PROBE_SD_MM
    if best is None:
        minds += (
            tr("No place was touched again: touch one ten times, or the bed's shape counts as scatter of the probe."),
        )
    b = fit.coef
    return BedPlane(
        x_mm=mean[0],
        y_mm=mean[1],
        z_mm=mean[2],
        touches=count,
        residual_mm=fit.residual,
        flagged=flagged,
        row_place=place,
        coef=np.array([b[0] - b[1] * cx - b[2] * cy, b[1], b[2]]),
        centre_mm=(cx, cy),
        cov=_cov(fit, best, count),
        dof=best.dof if best else float(fit.dof),
        probe=probe,
        u_flatness_mm=sd * math.sqrt(2.0 / float(count.mean())),
        hot=warm,
        minds=minds,
    )


@within_reach
@finite_in("margin_mm", "travel_x_mm", "travel_y_mm")
def plan_probes(
    travel_x_mm: float, travel_y_mm: float, across: int, margin_mm: float = 20.0
) -> list[tuple[float, float]]:
    """Return across x across places on the bed, row by row, there and back, so that the way is short.

    Raises:
        InputError: field `across`, outside 2 to 50.
    """
    if not 2 <= across <= _MOST_ACROSS:
        says = tr("{count} places a side cannot be planned; type 2 to {most}.", count=across, most=_MOST_ACROSS)
        raise InputError("across", says)
    xs = np.linspace(margin_mm, max(travel_x_mm - margin_mm, 2 * margin_mm), across)
    ys = np.linspace(margin_mm, max(travel_y_mm - margin_mm, 2 * margin_mm), across)
    return [
        (round(float(x), 1), round(float(y), 1))
        for line, y in enumerate(ys)
        for x in (xs if line % 2 == 0 else xs[::-1])
    ]


def _checked(x_mm: Sequence[float], y_mm: Sequence[float], z_mm: Sequence[float]) -> tuple[Floats, Floats, Floats]:
    x, y, z = (np.asarray(v, dtype=float) for v in (x_mm, y_mm, z_mm))
    if not x.shape == y.shape == z.shape or x.ndim != 1 or x.size == 0:
        raise InputError("z_mm", tr("Places and heights differ in number, or there are none; check the columns."))
    bad = ~(np.isfinite(x) & np.isfinite(y) & np.isfinite(z))
    if bad.any():
        row = int(np.argmax(bad))
        raise InputError("z_mm", tr("Row {row}: this is not a finite number; retype it.", row=row + 1), row)
    return x, y, z


def _plane(x: Floats, y: Floats, z: Floats) -> LinearFit:
    """Fit height and slopes; x and y are counted from the middle of the places."""
    if x.size < _FEWEST:
        raise InputError(
            "z_mm",
            tr("Places probed so far: {n}; a plane takes three, and a fourth to show a misfit.", n=int(x.size)),
        )
    fit = fit_linear(np.column_stack([np.ones(x.size), x, y]), z)
    if fit.rank < 3:
        raise InputError("x_mm", tr("All places lie in one line; probe at places beside it too."))
    return fit


def _places(x: Floats, y: Floats) -> NDArray[np.int64]:
    """Number the places in the order they were probed; touches within half a millimetre share one."""
    found: list[tuple[float, float]] = []
    numbers = []
    for here in zip(x.tolist(), y.tolist(), strict=True):
        near = [n for n, there in enumerate(found) if math.dist(here, there) <= SAME_PLACE_MM]
        if not near:
            found.append(here)
        numbers.append(near[0] if near else len(found) - 1)
    return np.array(numbers, dtype=np.int64)


def _probe(z: Floats, place: NDArray[np.int64], mean: Floats, count: NDArray[np.int64]) -> Estimate | None:
    """Return the standard deviation of one touch, pooled over the places; refuse a probe that cannot find a bed."""
    dof = int(np.sum(count - 1))
    if dof < 2:
        return None
    off = z - mean[place]
    sd = math.sqrt(float(np.sum(off**2)) / dof)
    if sd > MOST_PROBE_SD_MM:
        worst = int(np.argmax(np.abs(off)))
        raise InputError(
            "z_mm",
            tr(
                "The probe scatters by {sd:.3f} mm at one and the same place, more than {limit} mm: clean the nozzle "
                "or tip, tighten the probe, then touch again.",
                sd=sd,
                limit=MOST_PROBE_SD_MM,
            ),
            worst,
        )
    return Estimate("probe_sd", sd, sd / math.sqrt(2.0 * dof), float(dof), "mm")


def _standing_out(fit: LinearFit, place: NDArray[np.int64]) -> NDArray[np.bool_]:
    """Flag the places off the plane of the others; refuse one that cannot be the bed."""
    n = fit.residual.size
    free = np.maximum(1.0 - fit.leverage, 1e-9)
    off = fit.residual / free  # from the plane through all the others
    if n <= _FEWEST or np.any(fit.leverage > 1.0 - 1e-9):
        return np.zeros(n, dtype=bool)
    rest = np.maximum(fit.ssr - fit.residual**2 / free, 0.0)
    sd = np.sqrt(rest / (n - 4) / free)  # of a further probe there, by the others
    worst = int(np.argmax(np.abs(off) - _FAR_SDS * sd))
    if abs(off[worst]) > max(_FAR_MM, _FAR_SDS * float(sd[worst])):
        row = int(np.argmax(place == worst))
        raise InputError(
            "z_mm",
            tr(
                "Probe {number} is {off:.2f} mm from the plane of the others: swarf, a clip, or beside the plate? "
                "Probe there again, or leave it out with that reason.",
                number=row + 1,
                off=abs(float(off[worst])),
            ),
            row,
        )
    return np.asarray((np.abs(off) > _ODD_MM) & (np.abs(off) > _ODD_SDS * sd))


def _cov(fit: LinearFit, probe: Estimate | None, count: NDArray[np.int64]) -> Floats:
    """Return the covariance of the coefficients: from the probe where it is known, else from the scatter."""
    if probe is None:
        return np.asarray(fit.unscaled_cov * (fit.ssr / fit.dof))
    return np.asarray((fit.solver * (probe.value**2 / count)) @ fit.solver.T)


def _warmth(hot: bool, bed_c: float | None, print_c: float | None) -> tuple[bool, tuple[Words, ...]]:
    """Return whether the bed counts as hot, and what there is to say about it."""
    if not hot:
        return False, (tr("Probed cold: plates move by 0.05 to 0.3 mm when hot. Kept apart from hot readings."),)
    if bed_c is None or print_c is None or bed_c >= print_c - HOT_WITHIN_C:
        return True, ()
    return False, (
        tr(
            "The bed was at {bed:g} °C and is printed on at {printed:g} °C; plates move by 0.05 to 0.3 mm when hot. "
            "Kept as cold.",
            bed=bed_c,
            printed=print_c,
        ),
    )
