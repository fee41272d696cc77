"""The kinds of feature that are measured on a part, and how each error mechanism enters its length.

    e = measured - nominal = s*L + 2*k*w - r*B + noise
    e + 2*f                                                     over the first layers of a wall without a stepped edge

Symbols: L nominal length, s scale error, w wall outset (mm per side), B lost motion, that is the reversal error of ISO
230-2 (mm), f first-layer flare (mm per side). A closed contour reaches a wall after a move along the axis in one
direction; with lost motion that wall stands B/2 short in that direction. Walls of the teeth and notches of one open
comb are all reached on the same run, so there it cancels.

Source of the table: derived from the play operator; reproduced by the path follower of
`tests/core/part_size/test_play_operator.py`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.words import Words, tr

Floats = NDArray[np.float64]
AXES = ("x", "y", "z")
FLARE = "first_layer_flare"


class FeatureKind(StrEnum):
    """What the jaws, or the dial, span."""

    OUTSIDE = "outside"
    CLOSED_HOLE = "closed_hole"
    TOOTH = "tooth"
    NOTCH = "notch"
    GAP = "gap"
    SAME_FACING = "same_facing"
    RING_MEAN = "ring_mean"
    BOSS = "boss"
    BORE = "bore"
    HEIGHT = "height"
    TRAVEL = "travel"
    FIRST_LAYER = "first_layer"


@dataclass(frozen=True, slots=True)
class Feature:
    """How a kind responds: `k` to the wall outset, `r` to lost motion; the share of outside and inside jaws in it.

    `constant` names the one constant of a kind that has its own (round features, heights, travel), else it is empty;
    `low` says that the first layers are read, with their flare.
    """

    k: int
    r: int
    outside_jaw: float
    inside_jaw: float
    constant: str = ""
    low: bool = False


FEATURES: dict[FeatureKind, Feature] = {
    FeatureKind.OUTSIDE: Feature(+1, +1, 1.0, 0.0),
    FeatureKind.CLOSED_HOLE: Feature(-1, +1, 0.0, 1.0),
    FeatureKind.TOOTH: Feature(+1, 0, 1.0, 0.0),
    FeatureKind.NOTCH: Feature(-1, 0, 0.0, 1.0),
    FeatureKind.GAP: Feature(-1, -1, 0.0, 1.0),
    FeatureKind.SAME_FACING: Feature(0, 0, 0.5, 0.5),
    FeatureKind.RING_MEAN: Feature(0, +1, 0.5, 0.5),
    FeatureKind.BOSS: Feature(0, 0, 1.0, 0.0, "boss_constant"),
    FeatureKind.BORE: Feature(0, 0, 0.0, 1.0, "bore_constant"),
    FeatureKind.HEIGHT: Feature(0, 0, 1.0, 0.0, "squash_z"),
    FeatureKind.TRAVEL: Feature(0, 0, 0.0, 0.0, "origin"),
    FeatureKind.FIRST_LAYER: Feature(+1, +1, 1.0, 0.0, low=True),
}

_ON_Z = (FeatureKind.HEIGHT, FeatureKind.SAME_FACING, FeatureKind.TRAVEL)


def kind_words(kind: FeatureKind) -> Words:
    """Return the name of a kind for people."""
    return {
        FeatureKind.OUTSIDE: tr("outside"),
        FeatureKind.CLOSED_HOLE: tr("closed window"),
        FeatureKind.TOOTH: tr("comb tooth"),
        FeatureKind.NOTCH: tr("comb notch"),
        FeatureKind.GAP: tr("gap between bodies"),
        FeatureKind.SAME_FACING: tr("same-facing walls"),
        FeatureKind.RING_MEAN: tr("ring, mean of outside and inside"),
        FeatureKind.BOSS: tr("round boss"),
        FeatureKind.BORE: tr("round bore"),
        FeatureKind.HEIGHT: tr("height"),
        FeatureKind.TRAVEL: tr("travel of the axis"),
        FeatureKind.FIRST_LAYER: tr("outside at the first layer"),
    }[kind]


def kind_from_text(text: str, row: int | None = None) -> FeatureKind:
    """Read the name of a kind.

    Raises:
        InputError: field `kind`, naming the kinds there are.
    """
    try:
        return FeatureKind(text.strip().lower())
    except ValueError:
        raise InputError(
            "kind",
            tr("“{text}” is not a kind of feature; use one of {kinds}.", text=text, kinds=", ".join(FeatureKind)),
            row,
        ) from None


def axis_problem(kind: FeatureKind, axis: str) -> Words | None:
    """Return why this kind cannot be read along this axis, or None."""
    if axis not in AXES:
        return tr("“{axis}” is not an axis; use x, y or z.", axis=axis)
    if axis == "z" and kind not in _ON_Z:
        return tr(
            "“{kind}” belongs to x and y; along z read heights (height), step tops (same_facing) or travel.", kind=kind
        )
    if axis != "z" and kind is FeatureKind.HEIGHT:
        return tr("A height is read along z; for {axis} use outside.", axis=axis)
    return None


@dataclass(frozen=True, slots=True, eq=False)
class Terms:
    """The design of a size-error fit.

    Attributes:
        names: (p) parameters.
        design: (m, p) how each reading responds to them.
        centre_mm: of the travel of each axis; its positions count from there, so that no choice of zero hides a scale.
    """

    names: tuple[str, ...]
    design: Floats
    centre_mm: Mapping[str, float] = field(default_factory=dict)

    def combination(self, **coefficients: float) -> Floats | None:
        """Return the (p,) coefficients of a combination of named parameters, None when one is not in the fit.

        An origin is the error of a travel at position zero, wherever its positions are counted from.
        """
        if any(name not in self.names for name in coefficients):
            return None
        c = np.array([coefficients.get(name, 0.0) for name in self.names])
        for axis, centre in self.centre_mm.items():
            c[self.names.index(f"scale_{axis}")] -= centre * coefficients.get(f"origin_{axis}", 0.0)
        return c

    def coefficients(self, name: str) -> Floats:
        """Return the (p,) coefficients that give one parameter of the fit."""
        c = self.combination(**{name: 1.0})
        assert c is not None, f"{name} is not in this fit"
        return c


def parameter_names(kinds: list[FeatureKind], axes: list[str]) -> tuple[str, ...]:
    """Name the parameters that readings of these kinds on these axes (two lists of equal length) could respond to."""
    walls = sorted({a for kind, a in zip(kinds, axes, strict=True) if a != "z" and not FEATURES[kind].constant})
    scales = [f"scale_{a}" for a in sorted(set(axes))]
    constants = sorted({_constant(kind, a) for kind, a in zip(kinds, axes, strict=True) if FEATURES[kind].constant})
    flare = [FLARE] if any(FEATURES[kind].low for kind in kinds) else []
    return (*scales, *(["wall_outset"] if walls else []), *(f"lost_motion_{a}" for a in walls), *constants, *flare)


def travel_centres(kinds: list[FeatureKind], axes: list[str], nominal_mm: Floats) -> dict[str, float]:
    """Return the mean position (mm) of the travel on each axis that has one; arguments as for `design_terms`."""
    mine = {a: [k is FeatureKind.TRAVEL and a == b for k, b in zip(kinds, axes, strict=True)] for a in set(axes)}
    return {axis: float(np.mean(nominal_mm[rows])) for axis, rows in mine.items() if any(rows)}


def design_terms(
    names: tuple[str, ...],
    kinds: list[FeatureKind],
    axes: list[str],
    nominal_mm: ArrayLike,
    centre_mm: Mapping[str, float] | None = None,
) -> Terms:
    """Build the design matrix.

    Args:
        names: the parameters, as `parameter_names` gives them.
        kinds: (m,) kind of each reading.
        axes: (m,) axis of each reading.
        nominal_mm: (m,) nominal lengths.
        centre_mm: as `travel_centres` gives it; positions count from zero when None.
    """
    L = np.asarray(nominal_mm, dtype=float)
    centre = centre_mm or {}
    column = {name: j for j, name in enumerate(names)}
    X = np.zeros((L.size, len(names)))
    for i, (kind, axis) in enumerate(zip(kinds, axes, strict=True)):
        feature = FEATURES[kind]
        X[i, column[f"scale_{axis}"]] = L[i] - (centre.get(axis, 0.0) if kind is FeatureKind.TRAVEL else 0.0)
        if feature.constant:
            X[i, column[_constant(kind, axis)]] = 1.0
        elif axis != "z":
            X[i, column["wall_outset"]] = 2.0 * feature.k
            X[i, column[f"lost_motion_{axis}"]] = -feature.r
        if feature.low:
            X[i, column[FLARE]] = 2.0
    return Terms(names, X, centre)


def _constant(kind: FeatureKind, axis: str) -> str:
    constant = FEATURES[kind].constant
    return f"origin_{axis}" if constant == "origin" else constant
