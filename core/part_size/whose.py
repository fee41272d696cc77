"""Whose error is it? The error of each feature shared out among its causes; and what a change would do to whole parts.

    e_i = s L_i + 2 k_i w - r_i B + constants + unexplained
    u^2 of the sum = x_i' C x_i        the shares depend on one another: their u do not add as squares

Stop meter: the share of draws theta ~ N(theta^, C) in which the change lowers the largest error of the listed parts.

    all to steps: the factor that makes the errors smallest by scale alone, f = sum(L^2)/sum(L (L + e))

Symbols as in `sizeerror`. Reference: JCGM 100:2008 5.2 (covariance); JCGM 101:2008 7 (draws).
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.gum import combine
from core.part_size.features import FeatureKind
from core.part_size.forecast import SmallPiece
from core.part_size.prediction import Changes, Prediction, predict
from core.part_size.sizeerror import SizeError
from core.words import tr

Floats = NDArray[np.float64]

DRAWS = 20_000
UNTOLD = "untold"  # shares that the readings do not tell apart
UNEXPLAINED = "unexplained"
_PROVED = 0.975  # share of the draws on one side of none: beyond U
WORSE_MM = 0.005  # more than this counts as worse: half the digit of a usual caliper


@dataclass(frozen=True, slots=True, eq=False)
class Shares:
    """Features (m) by cause (q).

    Attributes:
        names: (q) causes: `scale`, `wall_outset`, `lost_motion`, a constant, `untold`, and `unexplained` last.
        value_mm: (m, q) what each cause adds; a row adds up to the feature's error.
        u_mm: (m, q) standard uncertainty of each; nan where nothing is known of it.
        explained_u_mm: (m,) of all that is explained together.
    """

    axes: tuple[str, ...]
    kinds: tuple[FeatureKind, ...]
    nominal_mm: Floats
    names: tuple[str, ...]
    value_mm: Floats
    u_mm: Floats
    explained_u_mm: Floats


def share_out(fit: SizeError, machine_ratio: Mapping[str, tuple[float, float]] | None = None) -> Shares:
    """Share the error of each feature of a fit out among its causes.

    What the readings do not tell apart (2w - B of outside lengths alone, say) is one share, `untold`.

    Args:
        fit: the readings.
        machine_ratio: by axis the machine's own share of the scale and its standard uncertainty, where the shop's other
            trials tell it; the scale is then shown as `machine` and `shrinkage`.
    """
    X, solved = fit.terms.design, fit.scattered.fit
    covariance = _covariance(fit)
    causes: dict[str, list[int]] = {}
    for column, name in enumerate(fit.terms.names):
        told = solved.determines(fit.terms.coefficients(name))
        causes.setdefault(_cause(name) if told else UNTOLD, []).append(column)
    values, u = [], []
    for columns in causes.values():
        part = np.zeros_like(X)
        part[:, columns] = X[:, columns]
        values.append(part @ solved.coef)
        u.append(np.sqrt(np.einsum("ij,jk,ik->i", part, covariance, part)))
    explained = np.sqrt(np.einsum("ij,jk,ik->i", X, covariance, X))
    values.append(fit.error_mm - X @ solved.coef)
    u.append(np.full(fit.error_mm.size, math.sqrt(fit.scattered.next_mm2)))
    found = Shares(
        axes=fit.axes,
        kinds=fit.kinds,
        nominal_mm=fit.nominal_mm,
        names=(*causes, UNEXPLAINED),
        value_mm=np.column_stack(values),
        u_mm=np.column_stack(u),
        explained_u_mm=explained,
    )
    return _with_machine(found, machine_ratio) if machine_ratio and "scale" in causes else found


def _with_machine(shares: Shares, machine_ratio: Mapping[str, tuple[float, float]]) -> Shares:
    """Split the scale of each feature: what is the machine's, and the rest, which is shrinkage."""
    place = shares.names.index("scale")
    of_axis = np.array([machine_ratio.get(axis, (0.0, 0.0)) for axis in shares.axes])
    machine, u_machine = of_axis.T * shares.nominal_mm
    value, u = shares.value_mm.copy(), shares.u_mm.copy()
    value[:, place] -= machine
    u[:, place] = np.hypot(u[:, place], u_machine)
    return replace(
        shares,
        names=(*shares.names[:place], "shrinkage", "machine", *shares.names[place + 1 :]),
        value_mm=np.insert(value, place + 1, machine, axis=1),
        u_mm=np.insert(u, place + 1, u_machine, axis=1),
    )


def _cause(name: str) -> str:
    """Return the cause without its axis: the shares of X and Y have one name."""
    stem, _, axis = name.rpartition("_")
    return stem if axis in ("x", "y", "z") and stem in ("scale", "lost_motion", "origin", "squash") else name


def _covariance(fit: SizeError) -> Floats:
    fixed = fit.scattered.fit.solver @ fit.fixed_mm
    return np.asarray(fit.scattered.variance_mm2 * fit.scattered.fit.unscaled_cov + fixed @ fixed.T)


@dataclass(frozen=True, slots=True)
class Part:
    """One size of the shop's parts, to try changes on; it need have no name."""

    name: str
    axis: str
    kind: FeatureKind
    nominal_mm: float


USUAL_PARTS = (  # common practice, no source
    Part("", "x", FeatureKind.OUTSIDE, 25.0),
    Part("", "x", FeatureKind.OUTSIDE, 70.0),
    Part("", "x", FeatureKind.OUTSIDE, 180.0),
    Part("", "x", FeatureKind.CLOSED_HOLE, 35.0),
    Part("", "y", FeatureKind.OUTSIDE, 160.0),
    Part("", "z", FeatureKind.HEIGHT, 50.0),
)


@dataclass(frozen=True, slots=True, eq=False)
class WhatIf:
    """The listed parts (n) before and after a change.

    Attributes:
        parts: those that the fit tells.
        predicted: their errors as they are and after the change, with U.
        worse: (n,) which get worse, told from chance (95 %).
        unsure: (n,) of which it is not told whether they get better or worse.
        p_better: probability that the largest error becomes smaller.
        untold: parts that the fit does not tell.
    """

    parts: tuple[Part, ...]
    predicted: Prediction
    worse: NDArray[np.bool_]
    unsure: NDArray[np.bool_]
    p_better: float
    untold: tuple[Part, ...]

    @property
    def worst(self) -> int:
        """Which part has the largest error as it is."""
        return int(np.argmax(np.abs(self.predicted.as_is_mm)))


def what_if(fit: SizeError, parts: Sequence[Part], changes: Changes, rng: np.random.Generator) -> WhatIf:
    """Push a change through the model for parts of the shop.

    Args:
        fit: the readings as they are.
        parts: sizes to try it on.
        changes: what would be changed.
        rng: for the draws of the stop meter.

    Raises:
        InputError: field `value` where the fit tells none of the parts.
    """
    told, untold = [], []
    for part in parts:
        try:
            predict(fit, [part.axis], [part.kind], [part.nominal_mm], changes)
        except InputError:
            untold.append(part)
        else:
            told.append(part)
    columns = [p.axis for p in told], [p.kind for p in told], [p.nominal_mm for p in told]
    found = predict(fit, *columns, changes)
    shared = found.covariance_mm2 - np.diag(np.full(len(told), fit.scattered.next_mm2))
    off = rng.multivariate_normal(np.zeros(len(told)), shared, DRAWS, method="svd")
    before, after = np.abs(found.as_is_mm + off), np.abs(found.error_mm + off)
    growth = np.abs(found.error_mm) - np.abs(found.as_is_mm)
    p_worse, p_part_better = np.mean(after > before, axis=0), np.mean(after < before, axis=0)
    worse = (growth > WORSE_MM) & (p_worse > _PROVED)
    unsure = (np.abs(growth) > WORSE_MM) & (np.maximum(p_worse, p_part_better) <= _PROVED)
    p_better = float(np.mean(after.max(axis=1) < before.max(axis=1)))
    return WhatIf(tuple(told), found, np.asarray(worse), np.asarray(unsure), p_better, tuple(untold))


def all_to_steps(fit: SizeError, axis: str, kind: FeatureKind, at_length_mm: float) -> SmallPiece | None:
    """Return what booking every error along an axis to its steps does to a long part; None where it is not told.

    Args:
        fit: the readings as they are.
        axis: x or y.
        kind: of the long part.
        at_length_mm: its length.
    """
    band = fit.band(axis, kind, [at_length_mm])
    mine = np.array([a == axis and k is not FeatureKind.TRAVEL for a, k in zip(fit.axes, fit.kinds, strict=True)])
    scale = fit.estimate(f"scale_{axis}")
    if band is None or scale is None or not np.any(mine):
        return None
    L, e = fit.nominal_mm[mine], fit.error_mm[mine]
    factor = float(L @ L / (L @ (L + e)))
    before = float(band.mean_mm[0])
    moved = (1.0 + scale.value) * at_length_mm  # only the motion is scaled, not the constant
    after = before + (factor - 1.0) * moved
    return SmallPiece(float(L.mean()), factor, at_length_mm, before, after, _U_of_factor(fit, mine, factor))


def _U_of_factor(fit: SizeError, mine: NDArray[np.bool_], factor: float) -> float:
    """Return the expanded uncertainty (95 %) of the factor that makes these features (m,) right by scale alone.

    df = -f^2/sum(L^2) sum(L de); JCGM 100:2008 5.1.2 for the scatter of the means, 5.2.2 for what they share.
    """
    L = np.where(mine, fit.nominal_mm, 0.0)
    weight = factor**2 / float(L @ L) * L
    scatter = math.sqrt(fit.scattered.variance_mm2 * float(np.sum(weight**2 / fit.scattered.fit.weights)))
    shared = float(np.linalg.norm(weight @ fit.fixed_mm))
    return combine([scatter, shared], [fit.scattered.dof, math.inf]).expanded()


def stop_words(effect_mm: float, U_mm: float, tolerance_mm: float) -> tuple[bool, str]:
    """Return whether to stop, and by which rule: leave, change, or write down and touch nothing.

    Args:
        effect_mm: the largest error.
        U_mm: its expanded uncertainty.
        tolerance_mm: half-width T of the tolerance.

    The rules are common practice, no source: |e| + U < T/4 leave it; |e| < U or |e| < T/10 touch nothing; else change.
    """
    if abs(effect_mm) + U_mm < tolerance_mm / 4.0:
        return True, tr("Stop: the worst part is below a quarter of its tolerance, uncertainty included.")
    if abs(effect_mm) <= U_mm or abs(effect_mm) <= tolerance_mm / 10.0:
        return True, tr("Stop here: never correct what cannot be seen. Write it down, touch nothing.")
    return False, tr("Worth a change: the worst part is beyond its uncertainty and a tenth of its tolerance.")
