"""Whether the readings of a size trial support the straight-line model, and which reading stands out.

Reference: NIST/SEMATECH e-Handbook 4.4.4 (lack of fit, curvature); Koenker, J. Econometrics 17 (1981) 107 (unequal
scatter); Cook and Weisberg, Residuals and Influence (1982) 2.2.2 (studentised residual, Bonferroni limit); Belsley,
Kuh and Welsch, Regression Diagnostics (1980) 3 (condition number of the scaled columns, above 30 a warning).
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.measuring.linefit import LinearFit, fit_linear
from core.part_size.features import FEATURES, FeatureKind, Terms
from core.part_size.scatter import RANK_RATIO, FeatureMeans, ScatteredFit
from core.words import Words, tr

Floats = NDArray[np.float64]

_LEVEL = 0.99  # of every check but the outlier's, which shares 0.95 over the readings
_REFUSE_P = 2e-5  # a curve this sure is no accident of 2000 trials
_FEWEST_FOR_SCATTER = 8
_CONDITION_LIMIT = 30.0
_SPAN_LIMIT = 3.0
_LENGTHS_LIMIT = 3


@dataclass(frozen=True, slots=True)
class Diagnostic:
    """One check: its value against its limit (nan where it has none), whether it is met, and what that means."""

    name: str
    value: float
    limit: float
    ok: bool
    says: Words


def run_checks(
    terms: Terms,
    means: FeatureMeans,
    scattered: ScatteredFit,
    kinds: list[FeatureKind],
    axes: list[str],
    nominal_mm: Floats,
    error_mm: Floats,
) -> tuple[list[Diagnostic], bool, NDArray[np.bool_]]:
    """Return the diagnostics, whether the straight line is refused, and which of the n readings are flagged.

    Args:
        terms: parameters and design of the fit.
        means: the readings by feature.
        scattered: the fit itself.
        kinds: (m,) of each feature.
        axes: (m,) of each feature.
        nominal_mm: (m,) of each feature.
        error_mm: of each reading (n,).
    """
    found = [_scatter_source(scattered), _condition(scattered.fit)]
    curves = list(_curvature(terms, means, scattered, (kinds, axes, nominal_mm)))
    found += [check for check, _ in curves]
    found += _lever(kinds, axes, nominal_mm)
    found += _lack_of_fit(terms, means)
    found += _unequal_scatter(scattered, nominal_mm)
    found += _one_wall_outset(terms, means, scattered, axes)
    found += _jaw_zero(terms, means, scattered, kinds, axes)
    outliers, flagged = _outliers(means, scattered, error_mm)
    return found + outliers, any(sure for _, sure in curves), flagged


def _scatter_source(scattered: ScatteredFit) -> Diagnostic:
    sd = math.sqrt(scattered.next_mm2)
    says = {
        "features": tr("The uncertainties rest on how far the features scatter about the line."),
        "repeats": tr("Too few features to see their scatter: the uncertainties rest on the repeats alone."),
        "instrument": tr(
            "Too few features to see their scatter: the uncertainties rest on the instrument's last "
            "repeatability check."
        ),
        "none": tr("Too few features to see their scatter, and no repeatability on record: cannot tell yet."),
    }[scattered.source]
    if scattered.rounded:
        says = tr(
            "{first} They scatter less than the last digit can show, so the digit sets the uncertainty.", first=says
        )
    return Diagnostic("scatter_mm", sd, math.nan, scattered.source == "features", says)


def _condition(fit: LinearFit) -> Diagnostic:
    ok = fit.condition <= _CONDITION_LIMIT
    says = (
        tr("The readings tell the mechanisms apart.")
        if ok
        else tr(
            "The readings hardly tell the mechanisms apart: take lengths further apart, and inside as well as outside."
        )
    )
    return Diagnostic("condition", fit.condition, _CONDITION_LIMIT, ok, says)


def _lever(kinds: list[FeatureKind], axes: list[str], nominal_mm: Floats) -> Iterator[Diagnostic]:
    """Check range and number of the lengths on each axis; positions of a travel have no ratio."""
    for axis in sorted(set(axes)):
        mine = np.array([a == axis for a in axes])
        lengths = np.unique(nominal_mm[mine])
        ok = lengths.size >= _LENGTHS_LIMIT
        yield Diagnostic(
            f"distinct_lengths_{axis}",
            float(lengths.size),
            float(_LENGTHS_LIMIT),
            ok,
            tr("Enough different lengths to see a curve.")
            if ok
            else tr("Fewer than 3 different lengths: a curve cannot be seen."),
        )
        if FeatureKind.TRAVEL in {k for k, a in zip(kinds, axes, strict=True) if a == axis}:
            continue
        span = float(lengths[-1] / lengths[0])
        ok = span >= _SPAN_LIMIT
        yield Diagnostic(
            f"span_{axis}",
            span,
            _SPAN_LIMIT,
            ok,
            tr("The lengths are far enough apart.")
            if ok
            else tr("The longest length is less than 3 times the shortest: scale and constants are hardly told apart."),
        )


def _curvature(
    terms: Terms,
    means: FeatureMeans,
    scattered: ScatteredFit,
    read: tuple[list[FeatureKind], list[str], Floats],
) -> Iterator[tuple[Diagnostic, bool]]:
    """Add a square of the length, axis by axis, and see whether it is needed; a jaw that is not zeroed is no curve."""
    kinds, axes, nominal_mm = read
    jaws = np.array([[FEATURES[kind].outside_jaw, FEATURES[kind].inside_jaw] for kind in kinds])
    design = np.hstack([terms.design, jaws])
    for axis in sorted(set(axes)):
        mine = np.array([a == axis for a in axes])
        lengths = nominal_mm[mine]
        if np.unique(lengths).size < _LENGTHS_LIMIT:
            continue
        middle, half = (lengths.max() + lengths.min()) / 2, np.ptp(lengths) / 2
        column = np.where(mine, ((nominal_mm - middle) / half) ** 2, 0.0)
        extra = _added(design, column[:, None], means, scattered)
        if extra is None:
            continue
        F, dof = extra
        limit, p = _f_limit(1, dof), _f_beyond(F, 1, dof)
        says = (
            tr("No curve along {axis} beyond the scatter.", axis=axis)
            if limit >= F
            else tr(
                "The error along {axis} bends: look for a lifted corner, a bent screw, or a misread length.", axis=axis
            )
        )
        yield Diagnostic(f"curvature_{axis}", F, limit, limit >= F, says), p < _REFUSE_P


def _one_wall_outset(
    terms: Terms, means: FeatureMeans, scattered: ScatteredFit, axes: list[str]
) -> Iterator[Diagnostic]:
    """Test whether X and Y share one wall outset, where both can tell."""
    if "wall_outset" not in terms.names:
        return
    only_y = np.array([a == "y" for a in axes])
    column = terms.design[:, terms.names.index("wall_outset")] * only_y
    extra = _added(terms.design, column[:, None], means, scattered)
    if extra is None:
        return
    F, dof = extra
    limit = _f_limit(1, dof)
    says = (
        tr("One wall outset serves X and Y.")
        if limit >= F
        else tr(
            "The wall outset differs between X and Y: the bead is wider in one direction. Give no common contour "
            "offset."
        )
    )
    yield Diagnostic("one_wall_outset", F, limit, limit >= F, says)


def _jaw_zero(
    terms: Terms, means: FeatureMeans, scattered: ScatteredFit, kinds: list[FeatureKind], axes: list[str]
) -> Iterator[Diagnostic]:
    """Test whether lengths of walls are all off alike, outside and inside, which no mechanism of the model does."""
    walls = [a != "z" and not FEATURES[k].constant for k, a in zip(kinds, axes, strict=True)]
    extra = _added(terms.design, np.array(walls, dtype=float)[:, None], means, scattered)
    if extra is None:
        return
    F, dof = extra
    limit = _f_limit(1, dof)
    says = (
        tr("Outside and inside are not off alike: the jaws are zeroed.")
        if limit >= F
        else tr("Outside and inside are off alike: check the zero of both jaws, and the kind of each feature.")
    )
    yield Diagnostic("jaw_zero", F, limit, limit >= F, says)


def _added(design: Floats, columns: Floats, means: FeatureMeans, scattered: ScatteredFit) -> tuple[float, int] | None:
    """Return F of one added column and its degrees of freedom; None where it adds nothing or no freedom is left."""
    weights = scattered.fit.weights
    fit = fit_linear(design, means.error_mm, weights, RANK_RATIO)
    wider = fit_linear(np.hstack([design, columns]), means.error_mm, weights, RANK_RATIO)
    if wider.rank != fit.rank + 1 or wider.dof < 1:
        return None
    variance = max(wider.ssr / wider.dof, scattered.rounding_mm2, 1e-30)
    return max(0.0, fit.ssr - wider.ssr) / variance, wider.dof


def _lack_of_fit(terms: Terms, means: FeatureMeans) -> Iterator[Diagnostic]:
    """Compare the scatter of the features with what re-reading explains; each counts as often as it was read."""
    if not means.repeat_dof or means.sd_repeat_mm <= 0.0:
        return
    fit = fit_linear(terms.design, means.error_mm, means.count, RANK_RATIO)
    if fit.dof < 1:
        return
    F = fit.ssr / fit.dof / means.sd_repeat_mm**2
    limit = _f_limit(fit.dof, means.repeat_dof)
    says = (
        tr("The features scatter no more than re-reading explains.")
        if limit >= F
        else tr("The features differ by more than re-reading explains; the uncertainties include that.")
    )
    yield Diagnostic("lack_of_fit", F, limit, limit >= F, says)


def _unequal_scatter(scattered: ScatteredFit, nominal_mm: Floats) -> Iterator[Diagnostic]:
    """Regress the squared residuals on the length: m R^2 is chi-squared with 1 degree of freedom (Koenker)."""
    from scipy.special import chdtri

    fit = scattered.fit
    if nominal_mm.size < _FEWEST_FOR_SCATTER or fit.dof < 3 or np.unique(nominal_mm).size < 2:
        return
    square = fit.weights * fit.residual**2
    about = square - square.mean()
    if float(about @ about) <= 0.0:
        return
    line = fit_linear(np.column_stack([np.ones_like(nominal_mm), nominal_mm]), square)
    value = float(nominal_mm.size * (1.0 - line.ssr / (about @ about)))
    limit = float(chdtri(1, 1.0 - _LEVEL))
    says = (
        tr("The scatter is alike at short and long lengths.")
        if limit >= value
        else tr("The scatter changes with the length; read the long features again.")
    )
    yield Diagnostic("unequal_scatter", value, limit, limit >= value, says)


def _outliers(
    means: FeatureMeans, scattered: ScatteredFit, error_mm: Floats
) -> tuple[list[Diagnostic], NDArray[np.bool_]]:
    """Flag a feature that is off the line, and a reading that is off its own feature."""
    flagged = np.zeros(error_mm.size, dtype=bool)
    found = []
    fit = scattered.fit
    if fit.dof >= 2:
        t, limit = _studentised(np.sqrt(fit.weights) * fit.residual, fit.leverage, fit.dof, scattered.rounding_mm2)
        flagged |= (t > limit)[means.group]
        found.append(_outlier_check("outlier", t, limit))
    if means.repeat_dof >= 2:
        within = error_mm - means.error_mm[means.group]
        t, limit = _studentised(within, 1.0 / means.count[means.group], means.repeat_dof, scattered.digit_mm2)
        flagged |= t > limit
        found.append(_outlier_check("repeat_outlier", t, limit))
    return found, flagged


def _outlier_check(name: str, t: Floats, limit: float) -> Diagnostic:
    worst = float(np.max(t))
    says = (
        tr("No reading stands out.")
        if worst <= limit
        else tr("A reading stands out; it is flagged, not dropped. Read it again, and one ordinary feature with it.")
    )
    return Diagnostic(name, worst, limit, worst <= limit, says)


def _studentised(residual: Floats, leverage: Floats, dof: int, least_variance: float) -> tuple[Floats, float]:
    """Return |t_i|, each residual against the scatter of the others, and the limit that 1 in 20 sound trials passes."""
    from scipy.special import stdtrit

    free = 1.0 - leverage
    told = free > 1e-9
    share = np.zeros_like(residual)
    share[told] = residual[told] ** 2 / free[told]  # what leaving the reading out takes from the sum of squares
    ssr = float(residual @ residual)
    variance = np.maximum((ssr - share) / (dof - 1), max(least_variance, 1e-30))
    t = np.sqrt(share / variance)
    limit = float(stdtrit(dof - 1, 1.0 - 0.05 / (2 * residual.size)))
    return t, limit


def _f_limit(dfn: float, dfd: float) -> float:
    from scipy.special import fdtri

    return float(fdtri(dfn, dfd, _LEVEL))


def _f_beyond(F: float, dfn: float, dfd: float) -> float:
    from scipy.special import fdtrc

    return float(fdtrc(dfn, dfd, F))
