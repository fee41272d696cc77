"""The next piece predicted before it is printed, and held against its readings.

    e_after = e + 2 k d + (q - 1)(L + e)        contour offset changed by d a side, drawn q times as large
    V       = X C X' + diag(next^2) + 2 (0.02 % L)(0.02 % L)'      of a new piece about the one that was read
    E_n     = (y - p) / sqrt(U_y^2 + U_p^2)     one feature
    chi2    = r' (V + diag(u_y^2))^-1 r         all n features together, what they share taken into account

The scale of a print differs from piece to piece: the piece that was read is off by it, and so is the next, hence the 2.
Where the scatter in V was told by nu spare readings, chi2/n is held against F(n, nu), not against chi-squared.

Symbols: e error of a feature as it is, p predicted and y measured error, r = y - p, C covariance of the fit.
The mirror of a prediction is 2 e - e_after: what a change with the wrong sign would give.

Reference: ISO 13528:2022 9.7 (E_n); T. Anderson, An Introduction to Multivariate Statistical Analysis, 3rd ed. 2003,
5.2 (Hotelling's T^2 as F); W. Conover, Practical Nonparametric Statistics, 3rd ed. 1999, 3.4 (sign test).
"""

from __future__ import annotations

import hashlib
import json
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.choices import each_of
from core.measuring.finite import finite_in
from core.measuring.reach import of_one_length, refuse_out_of_reach, within_reach
from core.part_size.features import FEATURES, FeatureKind, axis_problem, design_terms, parameter_names
from core.part_size.sizeerror import SizeError
from core.quantity import LEVEL, coverage_factor
from core.words import tr

METHOD = "prediction 1"
PIECE_U_RATIO = 0.0002  # scale from piece to piece (common practice, no source)
_PIECES = 2.0  # the one that was read and the next
MIRROR_SHARE = 0.8  # of features that must lie at the mirror before the sign is blamed (common practice, no source)

Floats = NDArray[np.float64]
Mask = NDArray[np.bool_]


@dataclass(frozen=True, slots=True)
class Changes:
    """What is changed before the next piece: contour offset by so many mm a side, drawn so many times as large."""

    offset_mm: float = 0.0
    factor_ratio: Mapping[str, float] = field(default_factory=dict)

    @within_reach
    @finite_in("error_mm", "nominal_mm")
    def effect_mm(self, kind: FeatureKind, axis: str, nominal_mm: float, error_mm: float) -> float:
        """Return what they add to the error of a feature.

        Raises:
            InputError: the field at fault, out of reach.
        """
        refuse_out_of_reach("changes", self)
        larger = self.factor_ratio.get(axis, 1.0) - 1.0
        return 2.0 * FEATURES[kind].k * self.offset_mm + larger * (nominal_mm + error_mm)


@dataclass(frozen=True, slots=True, eq=False)
class Prediction:
    """Features (n) of the next piece.

    Attributes:
        as_is_mm: (n,) their errors if nothing were changed.
        error_mm: (n,) their errors after the changes.
        covariance_mm2: (n, n) of a new piece about them.
        k: coverage factor of the fit.
        dof: degrees of freedom of its scatter; infinite where it is known.
    """

    axis: tuple[str, ...]
    kind: tuple[FeatureKind, ...]
    nominal_mm: Floats
    as_is_mm: Floats
    error_mm: Floats
    covariance_mm2: Floats
    k: float
    dof: float = math.inf

    @property
    def U_mm(self) -> Floats:
        """(n,) expanded uncertainty of each predicted error."""
        return np.asarray(self.k * np.sqrt(np.diag(self.covariance_mm2)))

    def place(self, axis: str, kind: str, nominal_mm: float) -> int | None:
        """Return where a feature stands in the prediction; None where it was not predicted."""
        for row, (a, k, L) in enumerate(zip(self.axis, self.kind, self.nominal_mm.tolist(), strict=True)):
            if (a, str(k)) == (axis, str(kind)) and abs(L - nominal_mm) < 0.005:
                return row
        return None


@within_reach
@of_one_length("axis", "kind", "nominal_mm")
def predict(
    fit: SizeError, axis: Sequence[str], kind: Sequence[str], nominal_mm: ArrayLike, changes: Changes
) -> Prediction:
    """Predict the next piece; features that the fit does not tell are left out.

    Args:
        fit: of the pieces so far.
        axis: (m,) of the features.
        kind: (m,) of the features.
        nominal_mm: (m,) of the features.
        changes: what is changed before it is printed.

    Raises:
        InputError: field `kind`, with its row; `value` where the fit tells none of the features.
    """
    lengths, each = np.asarray(nominal_mm, dtype=float), each_of(FeatureKind, kind, "kind")
    rows, kept = [], []
    unsure = math.isnan(fit.scattered.variance_mm2) or fit.line_refused
    for place, (a, name) in enumerate(zip(axis, each, strict=True)):
        row = None if unsure else _row(fit, a, name, float(lengths[place]))
        if row is not None:
            rows.append(row)
            kept.append(place)
    if not rows:
        raise InputError("value", tr("The trial tells none of these features yet; complete its readings first."))
    X = np.array(rows)
    L, kinds, axes = lengths[kept], tuple(each[p] for p in kept), tuple(axis[p] for p in kept)
    as_is = X @ fit.scattered.fit.coef
    effect = [changes.effect_mm(k, a, n, e) for k, a, n, e in zip(kinds, axes, L.tolist(), as_is.tolist(), strict=True)]
    fixed = X @ fit.scattered.fit.solver @ fit.fixed_mm
    shared = fit.scattered.variance_mm2 * X @ fit.scattered.fit.unscaled_cov @ X.T + fixed @ fixed.T
    piece = PIECE_U_RATIO * L * np.array([[float(a == b) for b in "xyz"] for a in axes]).T
    V = shared + np.diag(np.full(L.size, fit.scattered.next_mm2)) + _PIECES * piece.T @ piece
    dof = fit.scattered.dof
    return Prediction(axes, kinds, L, as_is, as_is + np.array(effect), V, coverage_factor(dof), dof)


def _row(fit: SizeError, axis: str, kind: FeatureKind, length: float) -> Floats | None:
    needed = parameter_names([kind], [axis])
    if axis_problem(kind, axis) or kind is FeatureKind.TRAVEL or f"scale_{axis}" not in fit.terms.names:
        return None
    names = tuple(dict.fromkeys((*fit.terms.names, *needed)))
    row = design_terms(names, [kind], [axis], [length], fit.terms.centre_mm).design[0]
    if np.any(row[len(fit.terms.names) :]):
        return None
    row = row[: len(fit.terms.names)]
    return row if fit.scattered.fit.determines(row) else None


def content_hash(content: Mapping[str, Any]) -> str:
    """Return the SHA-256 of plain JSON values, written with sorted names: one change anywhere gives another one.

    Raises:
        InputError: field `hash`: a number is none.
    """
    try:
        text = json.dumps(content, sort_keys=True, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    except ValueError as error:
        says = tr("What is to be locked holds a number that JSON does not know; check its readings.")
        raise InputError("hash", says) from error
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()  # a file may hold half a letter


@dataclass(frozen=True, slots=True, eq=False)
class Verification:
    """Readings (n) held against their prediction.

    Attributes:
        place: (n,) of each reading in the prediction.
        e_n: (n,) normalised errors; up to 1 a feature agrees.
        rest_mm: (n,) measured less predicted, with its `covariance_mm2` (n, n).
        chi2: over all, for `dof` features, with the probability of more by chance.
        mirrored: whether the readings lie where a change with the wrong sign would put them.
    """

    prediction: Prediction
    place: tuple[int, ...]
    e_n: Floats
    rest_mm: Floats
    covariance_mm2: Floats
    chi2: float
    dof: int
    probability: float
    mirrored: bool

    @property
    def inside(self) -> int:
        """How many features agree."""
        return int(np.sum(np.abs(self.e_n) <= 1.0))

    @property
    def passed(self) -> bool:
        """Whether they agree together, and no more are outside than one piece in twenty has by chance."""
        from scipy.special import bdtr

        outside = self.e_n.size - self.inside
        usual = outside == 0 or float(bdtr(outside - 1, self.e_n.size, 1.0 - LEVEL)) < LEVEL - 1e-9
        return usual and self.probability > 1.0 - LEVEL

    def mean_mm(self, mine: Mask) -> tuple[float, float]:
        """Return the mean of the rests of some features and its expanded uncertainty, what they share included.

        Args:
            mine: (n,) which.
        """
        mean = float(self.rest_mm[mine].mean())
        return mean, self.prediction.k * math.sqrt(float(self.covariance_mm2[np.ix_(mine, mine)].mean()))


@within_reach
@of_one_length("place", "error_mm")
@finite_in("error_mm", "u_mm", "k")
def verify(
    prediction: Prediction, place: Sequence[int], error_mm: ArrayLike, u_mm: ArrayLike, k: float = 2.0
) -> Verification:
    """Hold readings against a prediction.

    Args:
        prediction: as it was locked.
        place: (n,) of each reading in it.
        error_mm: (n,) measured less nominal.
        u_mm: (n,) standard uncertainty that no repeat removes.
        k: coverage factor of the readings.

    Raises:
        InputError: field `measured_mm` where no reading was predicted.
    """
    if not len(place):
        raise InputError("measured_mm", tr("None of the features that were read was predicted; lock them beforehand."))
    rows, errors = np.asarray(place, dtype=int), np.asarray(error_mm, dtype=float)
    u = np.broadcast_to(np.asarray(u_mm, dtype=float), errors.shape)
    rest = errors - prediction.error_mm[rows]
    V = prediction.covariance_mm2[np.ix_(rows, rows)] + np.diag(u**2)
    e_n = rest / np.hypot(prediction.U_mm[rows], k * u)
    chi2 = float(rest @ np.linalg.solve(V, rest))
    mirror = errors - (2.0 * prediction.as_is_mm - prediction.error_mm)[rows]
    mirror_chi2 = float(mirror @ np.linalg.solve(V, mirror))
    at_mirror = float(np.mean(np.abs(mirror / np.hypot(prediction.U_mm[rows], k * u)) <= 1.0))
    probability = _by_chance(chi2, errors.size, prediction.dof)
    mirrored = at_mirror >= MIRROR_SHARE and mirror_chi2 < 0.25 * chi2
    found = Verification(prediction, tuple(place), e_n, rest, V, chi2, int(errors.size), probability, mirrored)
    return replace(found, mirrored=mirrored and not found.passed)


def _by_chance(chi2: float, features: int, dof: float) -> float:
    """Return the probability of this sum of squares or more, the scatter behind it known to so many degrees."""
    from scipy.special import chdtrc, fdtrc

    return float(chdtrc(features, chi2) if math.isinf(dof) else fdtrc(features, dof, chi2 / features))


def sign_test(rest_mm: ArrayLike) -> float:
    """Return the probability that chance puts so many or more features on one side; two-sided, zeros left out."""
    from scipy.special import bdtr

    rest = np.asarray(rest_mm, dtype=float)
    n, above = int(np.sum(rest != 0.0)), int(np.sum(rest > 0.0))
    fewer = min(above, n - above)
    return 1.0 if n == 0 else min(1.0, 2.0 * float(bdtr(fewer, n, 0.5)))
