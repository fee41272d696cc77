"""Size error told apart: scale, wall outset and lost motion from lengths measured on one printed part.

    e = measured - nominal = s*L + 2*k*w - r*B + noise          along x and y, one w for both
    e + 2*f                                                     the same over flared first layers
    e = s_z*H + z0                                              heights, H on whole layers
    e = s*P + origin                                            travel of an axis, no part and no shrinkage

Symbols: L nominal length, s scale error, w wall outset per side, B lost motion (reversal error, ISO 230-2), z0 squash
of the first layer, f its flare per side; k and r from `features.FEATURES`. Only what the readings determine is
reported; for the rest, the reading that would tell.

Reference: JCGM 100:2008 (GUM) 4.2, 4.3, 5.1, G.4; ISO 1:2022 (20 degrees Celsius).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.measuring.choices import one_of
from core.measuring.gum import combine, effective_dofs
from core.measuring.linefit import LinearFit
from core.measuring.reach import within_reach
from core.part_size.checks import Diagnostic, run_checks
from core.part_size.features import (
    FEATURES,
    FeatureKind,
    Terms,
    axis_problem,
    design_terms,
    parameter_names,
    travel_centres,
)
from core.part_size.lengths import LayerPlan, PartTemperature, check_lengths, fixed_effects
from core.part_size.missing import Missing, missing_parameters
from core.part_size.onrecord import check_instrument, record_checks, sd_of_hand
from core.part_size.scatter import (
    FINEST_GUESS_MM,
    ScatteredFit,
    feature_means,
    fit_with_scatter,
    guess_resolution_mm,
)
from core.quantity import LEVEL, Estimate, coverage_factor
from core.records.rows import Instrument

METHOD = "sizeerror 1"

Floats = NDArray[np.float64]
_COMBINED = {"constant": (2.0, -1.0), "hole_constant": (-2.0, -1.0)}  # of (w, B); a gap has minus the first


@dataclass(frozen=True, slots=True, eq=False)
class Band:
    """Mean error (mm) at the asked lengths with the half-widths of its confidence and prediction bands."""

    length_mm: Floats
    mean_mm: Floats
    confidence_mm: Floats
    prediction_mm: Floats


@dataclass(frozen=True, slots=True, eq=False)
class SizeError:
    """The answer of one trial.

    Attributes:
        terms: the parameters of the fit and the design matrix of its features.
        kinds: of each feature, in the order of the rows of the design.
        axes: of each feature.
        nominal_mm: (m,) of each feature.
        error_mm: (m,) of each feature, the mean over its readings.
        scattered: the fit and the scatter behind its uncertainty.
        fixed_mm: (m, q) systematic effects on each feature, one standard uncertainty each, that no averaging removes.
        flagged: (n,) readings that do not fit the others; flagged, never dropped.
        reading_error_mm: (n,) error of each reading, at 20 degrees Celsius and against whole layers.
        residual_mm: (n,) that error less the fitted line.
        line_refused: a straight line does not describe the readings; no scale is given then.
        found: the estimates, worked out once.
    """

    terms: Terms
    kinds: tuple[FeatureKind, ...]
    axes: tuple[str, ...]
    nominal_mm: Floats
    error_mm: Floats
    scattered: ScatteredFit
    fixed_mm: Floats
    not_estimable: tuple[Missing, ...]
    diagnostics: tuple[Diagnostic, ...]
    flagged: NDArray[np.bool_]
    reading_error_mm: Floats
    residual_mm: Floats
    line_refused: bool
    found: tuple[Estimate, ...] = field(init=False, repr=False, default=())

    def __post_init__(self) -> None:
        """Work out every parameter, or named combination, that the readings determine."""
        if math.isnan(self.scattered.variance_mm2):
            return
        found = [self._estimate(name, c) for name, c in reported(self.terms, self.scattered.fit)]
        told = tuple(e for e in found if not (self.line_refused and e.name.startswith("scale_")))
        object.__setattr__(self, "found", told)

    def estimates(self) -> tuple[Estimate, ...]:
        """Return every parameter, or named combination, that the readings determine."""
        return self.found

    def estimate(self, name: str) -> Estimate | None:
        """Return one estimate by name, or None where the readings do not determine it."""
        return next((e for e in self.estimates() if e.name == name), None)

    def combination(self, estimate_name: str, **coefficients: float) -> Estimate | None:
        """Return a combination of named parameters, or None where the readings do not determine it."""
        c = self.terms.combination(**coefficients)
        told = all(self.estimate(name) for name in coefficients)
        return self._estimate(estimate_name, c) if c is not None and told else None

    def covariance(self, first_name: str, second_name: str) -> float:
        """Return the covariance of the estimates of two parameters of the fit."""
        first, second = self.terms.coefficients(first_name), self.terms.coefficients(second_name)
        fixed = self.scattered.fit.solver @ self.fixed_mm
        random = self.scattered.variance_mm2 * first @ self.scattered.fit.unscaled_cov @ second
        return float(random + (first @ fixed) @ (second @ fixed))

    def band(self, axis: str, kind: FeatureKind, length_mm: ArrayLike, level: float = LEVEL) -> Band | None:
        """Return mean error and bands for features of this kind, or None where the readings cannot say.

        Args:
            axis: x, y or z.
            kind: of the features asked for.
            length_mm: (j,) nominal lengths.
            level: of both bands.

        Raises:
            InputError: field `kind`.

        Reference: JCGM 100:2008 5.2.2 for the mean; the prediction adds the scatter of one reading of one new feature.
        """
        kind, lengths = one_of(FeatureKind, kind, "kind"), np.asarray(length_mm, dtype=float)
        needed = parameter_names([kind], [axis])
        asked = [name for name in needed if not (name.startswith("lost_motion") and FEATURES[kind].r == 0)]
        asked = [name for name in asked if not (name == "wall_outset" and FEATURES[kind].k == 0)]
        unsure = math.isnan(self.scattered.variance_mm2) or self.line_refused
        if unsure or axis_problem(kind, axis) or not set(asked) <= set(self.terms.names):
            return None
        names = tuple(dict.fromkeys((*self.terms.names, *needed)))
        rows = design_terms(names, [kind] * lengths.size, [axis] * lengths.size, lengths, self.terms.centre_mm).design
        rows = rows[:, : len(self.terms.names)]
        if not all(self.scattered.fit.determines(row) for row in rows[:: max(1, lengths.size - 1)]):
            return None
        return self._band_of(rows, lengths, level)

    def _band_of(self, rows: Floats, lengths: Floats, level: float) -> Band:
        fit, random = self.scattered.fit, self.scattered.variance_mm2
        var_random = random * np.einsum("ij,jk,ik->i", rows, fit.unscaled_cov, rows)
        var_fixed = np.sum((rows @ fit.solver @ self.fixed_mm) ** 2, axis=1)
        again = np.full(lengths.size, self.scattered.again_mm2)
        var_next = var_random + self.scattered.next_mm2 - again
        dofs = (self.scattered.dof, self.scattered.again_dof, math.inf)
        return Band(
            lengths,
            rows @ fit.coef,
            _half_width((var_random, 0.0 * again, var_fixed), dofs, level),
            _half_width((var_next, again, var_fixed), dofs, level),
        )

    def _estimate(self, name: str, c: Floats) -> Estimate:
        fit = self.scattered.fit
        random = self.scattered.variance_mm2 * float(c @ fit.unscaled_cov @ c)
        fixed = float(np.linalg.norm(c @ fit.solver @ self.fixed_mm))
        combined = combine([math.sqrt(random), fixed], [self.scattered.dof, math.inf])
        unit = "1" if name.startswith("scale_") else "mm"
        return Estimate(name, float(c @ fit.coef), combined.u, combined.dof, unit)


@within_reach
def fit_size_error(
    nominal_mm: ArrayLike,
    measured_mm: ArrayLike,
    kind: Sequence[str],
    *,
    axis: Sequence[str] | None = None,
    feature: Sequence[str | int | None] | None = None,
    instrument: Instrument | None = None,
    part_temperature: PartTemperature | None = None,
    layers: LayerPlan | None = None,
) -> SizeError:
    """Separate scale error, wall outset and lost motion of one part, X and Y together.

    Args:
        nominal_mm: (n,) drawn lengths; for `travel` commanded positions, which may be zero or negative.
        measured_mm: (n,) readings.
        kind: (n,) names of `FeatureKind`.
        axis: (n,) x, y or z; all x when None.
        feature: (n,) readings with the same axis, kind, nominal and label are repeats of one feature; None, or an empty
            label, makes a reading a feature of its own.
        instrument: its uncertainties that no averaging removes, its resolution, its repeatability from the last check.
        part_temperature: corrects plastic lengths to 20 degrees Celsius; not applied to travel.
        layers: heights are compared with the nearest whole layers instead of the drawn height.

    Raises:
        InputError: fields `nominal_mm`, `measured_mm`, `kind`, `axis` or `feature`, with the row at fault;
            `instrument`, `part_temperature` or `layers` where a number in it cannot be.

    Reference: JCGM 100:2008 5.1 and G.4 for the uncertainties; see the module for the model.
    """
    check_instrument(instrument)
    lengths = check_lengths(nominal_mm, measured_mm, kind, axis, feature, part_temperature, layers)
    means = feature_means(lengths.error_mm, lengths.labels)
    kinds, axes = [lengths.kinds[i] for i in means.first], [lengths.axes[i] for i in means.first]
    wanted = lengths.wanted_mm[means.first]
    names, centres = parameter_names(kinds, axes), travel_centres(kinds, axes, wanted)
    terms = design_terms(names, kinds, axes, wanted, centres)
    resolution = (instrument.resolution_mm if instrument else 0.0) or guess_resolution_mm(lengths.measured_mm)
    scattered = fit_with_scatter(terms.design, means, max(resolution, FINEST_GUESS_MM), sd_of_hand(instrument))
    diagnostics, refused, flagged = run_checks(terms, means, scattered, kinds, axes, wanted, lengths.error_mm)
    return SizeError(
        terms=terms,
        kinds=tuple(kinds),
        axes=tuple(axes),
        nominal_mm=wanted,
        error_mm=means.error_mm,
        scattered=scattered,
        fixed_mm=fixed_effects(kinds, wanted, instrument, part_temperature),
        not_estimable=missing_parameters(terms, scattered, kinds, axes, wanted, refused),
        diagnostics=(*diagnostics, *record_checks(instrument, part_temperature, kinds)),
        flagged=flagged,
        reading_error_mm=lengths.error_mm,
        residual_mm=lengths.error_mm - (terms.design @ scattered.fit.coef)[means.group],
        line_refused=refused,
    )


def reported(terms: Terms, fit: LinearFit) -> list[tuple[str, Floats]]:
    """Name every parameter that a fit determines; where w and B are not, the combinations that are."""
    singly = [(name, terms.coefficients(name)) for name in terms.names]
    found = [(name, c) for name, c in singly if fit.determines(c)]
    told = {name for name, _ in found}
    for axis in ("x", "y"):
        motion = f"lost_motion_{axis}"
        if motion not in terms.names or "wall_outset" in told or motion in told:
            continue
        for name, (of_w, of_B) in _COMBINED.items():
            c = terms.combination(wall_outset=of_w, **{motion: of_B})
            if c is not None and fit.determines(c):
                found.append((f"{name}_{axis}", c))
    return found


def _half_width(variances: tuple[Floats, ...], dofs: tuple[float, ...], level: float) -> Floats:
    parts = np.sqrt(np.column_stack(variances))
    factors = _coverage_factors(effective_dofs(parts, np.array(dofs)), level)
    return np.asarray(factors * np.linalg.norm(parts, axis=1))


def _coverage_factors(dofs: Floats, level: float) -> Floats:
    """Return `core.quantity.coverage_factor` of each, at once: a plot asks for hundreds at every keystroke."""
    from scipy.special import stdtrit

    factors, estimated = np.full(dofs.shape, coverage_factor(math.inf, level)), np.isfinite(dofs)
    factors[estimated] = stdtrit(dofs[estimated], 0.5 + level / 2)
    return factors
