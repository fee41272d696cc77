"""How far readings scatter: re-reading one feature, and feature from feature.

Symbols: m features, n_i readings of feature i, sd_r pooled repeatability with sum(n_i - 1) degrees of freedom, tau
feature-to-feature scatter, w_i = 1/(tau^2 + sd_r^2/n_i) weight of the mean of feature i, d resolution of the readings.

Reference: Paule and Mandel, J. Res. NBS 87 (1982) 377 (tau); Knapp and Hartung, Statistics in Medicine 22 (2003) 2693
(covariance scaled by the weighted residuals, Student's t on m - p degrees of freedom); JCGM 100:2008 F.2.2.1
(resolution).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.measuring.finite import finite_in
from core.measuring.linefit import LinearFit, fit_linear
from core.measuring.reach import within_reach

Floats = NDArray[np.float64]

FEWEST_SPARE = 3  # features beyond the parameters before their own scatter may carry the uncertainty
RANK_RATIO = 1e-3  # a combination seen a thousand times more weakly than the best one counts as not seen
COARSEST_GUESS_MM = 0.01  # digit of a usual caliper: whole millimetres typed do not make the caliper coarser
FINEST_GUESS_MM = 1e-6  # nobody reads finer: scatter is never taken for nothing
_MOST_STEPS = 200  # each at least doubles tau^2, from a nanometre's square if need be
_SURE = 0.99  # level at which too few residuals are still believed against a repeatability


@dataclass(frozen=True, slots=True, eq=False)
class FeatureMeans:
    """Readings by feature: mean error (m,), count (m,), feature index of each reading, pooled repeatability."""

    error_mm: Floats
    count: NDArray[np.int64]
    group: NDArray[np.int64]
    first: NDArray[np.int64]
    sd_repeat_mm: float
    repeat_dof: int

    @property
    def balanced(self) -> bool:
        """Whether every feature was read equally often."""
        return bool(np.all(self.count == self.count[0]))


@dataclass(frozen=True, slots=True, eq=False)
class ScatteredFit:
    """The least-squares fit of the feature means and the scatter that its uncertainty rests on.

    Attributes:
        fit: fitted to the feature means.
        variance_mm2: factor on `fit.unscaled_cov`; nan when nothing is known of the scatter.
        dof: degrees of freedom of that variance.
        source: `features`, `repeats`, `instrument`, or `none`.
        next_mm2: variance of one new reading of one new feature about its mean.
        again_mm2: the part of it that only the repeats tell, with `again_dof` degrees of freedom.
        feature_sd_mm: tau, nan when it cannot be seen.
        rounding_mm2: the least that factor can be, because the readings have a last digit.
        digit_mm2: variance that the last digit leaves in one reading.
    """

    fit: LinearFit
    variance_mm2: float
    dof: float
    source: str
    next_mm2: float
    feature_sd_mm: float
    rounding_mm2: float
    digit_mm2: float
    again_mm2: float = 0.0
    again_dof: float = math.inf

    @property
    def rounded(self) -> bool:
        """Whether the last digit of the readings, not their scatter, sets the variance."""
        return self.variance_mm2 <= self.rounding_mm2


@within_reach
def feature_means(error_mm: Floats, labels: list[tuple[str, ...]]) -> FeatureMeans:
    """Gather readings (n,) that carry the same label."""
    index: dict[tuple[str, ...], int] = {}
    group = np.array([index.setdefault(label, len(index)) for label in labels], dtype=np.int64)
    count = np.bincount(group)
    mean = np.bincount(group, weights=error_mm) / count
    repeat_dof = int(error_mm.size - count.size)
    within = error_mm - mean[group]
    sd = math.sqrt(float(within @ within) / repeat_dof) if repeat_dof else math.nan
    first = np.unique(group, return_index=True)[1]
    return FeatureMeans(mean, count, group, first, sd, repeat_dof)


@within_reach
def guess_resolution_mm(readings_mm: Floats) -> float:
    """Return the coarsest decimal digit that all readings share, from that of a usual caliper to a nanometre."""
    for places in range(2, 6):
        if np.allclose(readings_mm, np.round(readings_mm, places), rtol=0.0, atol=1e-9):
            return min(10.0**-places, COARSEST_GUESS_MM)
    return FINEST_GUESS_MM


@finite_in("resolution_mm")
def fit_with_scatter(
    design: Floats, means: FeatureMeans, resolution_mm: float, sd_hand: tuple[float, int] | None
) -> ScatteredFit:
    """Fit the feature means and decide which scatter their uncertainty rests on.

    Args:
        design: (m, p) design matrix of the features.
        means: the readings by feature.
        resolution_mm: worth of the last digit of the readings, above zero.
        sd_hand: repeatability of one reading (mm) and its degrees of freedom from the instrument's last check.
    """
    floor = _rounding_variance(means, resolution_mm)
    digit_mm2 = resolution_mm**2 / 12.0
    of_repeats = np.maximum(means.sd_repeat_mm**2 / means.count, floor)
    tau2 = 0.0 if means.balanced or not means.repeat_dof else _paule_mandel(design, means, of_repeats)
    weights = None if means.balanced or not means.repeat_dof else _weights(tau2 + of_repeats)
    fit = fit_linear(design, means.error_mm, weights, RANK_RATIO)
    on_residuals = _on_residuals(fit, means, tau2, floor, digit_mm2) if fit.dof else None
    if on_residuals is not None and fit.dof >= FEWEST_SPARE:
        return on_residuals
    candidates = [("repeats", means.sd_repeat_mm, means.repeat_dof)] if means.repeat_dof else []
    if sd_hand is not None:
        candidates.append(("instrument", *sd_hand))
    if not candidates:
        return ScatteredFit(fit, math.nan, math.nan, "none", math.nan, math.nan, 0.0, digit_mm2)
    known = max(candidates, key=lambda candidate: candidate[2])
    on_repeats = _on_repeatability(design, means, known, floor, digit_mm2)
    if on_residuals is not None and _contradicted(on_repeats):
        return on_residuals
    return on_repeats


def _weights(variance_mm2: Floats) -> Floats:
    return np.asarray(variance_mm2.min() / variance_mm2)


def _contradicted(scattered: ScatteredFit) -> bool:
    """Whether the features scatter more than the repeatability allows, however few they are (F)."""
    from scipy.special import fdtri

    ssr, dof = scattered.fit.ssr, scattered.fit.dof
    return dof > 0 and bool(ssr / dof > scattered.variance_mm2 * fdtri(dof, scattered.dof, _SURE))


def _on_residuals(fit: LinearFit, means: FeatureMeans, tau2: float, floor: Floats, digit_mm2: float) -> ScatteredFit:
    lowest = float(np.mean(floor * fit.weights))
    variance = max(fit.ssr / fit.dof, lowest)
    of_means = variance * float(np.mean(1.0 / fit.weights))
    if not means.repeat_dof:
        return ScatteredFit(fit, variance, fit.dof, "features", of_means, math.nan, lowest, digit_mm2)
    repeat2, averaged = means.sd_repeat_mm**2, float(np.mean(1.0 / means.count))
    between2 = tau2 if not means.balanced else max(0.0, of_means - repeat2 * averaged)
    again = repeat2 * (1.0 - averaged)  # a mean holds but this share of the scatter of one reading
    return ScatteredFit(
        fit,
        variance,
        fit.dof,
        "features",
        of_means + again,
        math.sqrt(between2),
        lowest,
        digit_mm2,
        again,
        means.repeat_dof,
    )


def _on_repeatability(
    design: Floats, means: FeatureMeans, known: tuple[str, float, int], floor: Floats, digit_mm2: float
) -> ScatteredFit:
    """Take one reading's repeatability as known: the means vary by it alone, scatter of the features is not seen."""
    source, sd, dof = known
    of_means = np.maximum(sd**2 / means.count, floor)
    smallest = float(np.min(of_means))
    fit = fit_linear(design, means.error_mm, _weights(of_means), RANK_RATIO)
    lowest = float(np.min(floor))
    return ScatteredFit(fit, smallest, dof, source, max(sd**2, digit_mm2), math.nan, lowest, digit_mm2)


def _rounding_variance(means: FeatureMeans, resolution_mm: float) -> Floats:
    """Variance that the last digit leaves in each mean: repeats only average it when they scatter beyond it."""
    averages = means.repeat_dof > 0 and means.sd_repeat_mm >= resolution_mm / 2
    return np.asarray(resolution_mm**2 / 12.0 / (means.count if averages else np.ones(means.count.size)))


def _paule_mandel(design: Floats, means: FeatureMeans, of_repeats_mm2: Floats) -> float:
    """Solve sum(w_i r_i^2) = m - p for tau^2 by Newton's steps from zero; 0 where repeats explain the residuals."""
    tau2 = 0.0
    for _ in range(_MOST_STEPS):
        variance = tau2 + of_repeats_mm2
        fit = fit_linear(design, means.error_mm, _weights(variance), RANK_RATIO)
        excess = float(np.sum(fit.residual**2 / variance)) - fit.dof
        if fit.dof < 1 or excess <= 1e-9 * fit.dof:
            break
        tau2 += excess / float(np.sum((fit.residual / variance) ** 2))
    return tau2
