"""Lengths as they were read on one part: checked, brought to 20 degrees Celsius, compared with what was drawn.

Reference: ISO 1:2022 (reference temperature 20 degrees Celsius).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.reach import within_reach
from core.part_size.features import AXES, FEATURES, FeatureKind, axis_problem, kind_from_text
from core.records.rows import Instrument
from core.words import Words, tr

LONGEST_MM, SHORTEST_MM = 10_000.0, 0.001
_PLACES = 9  # of a millimetre: positions nearer than that are one position
_COLDEST_C, _HOTTEST_C = -50.0, 300.0  # outside, no part is read

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class PartTemperature:
    """Temperature of the part while it was read, and its expansion relative to the instrument's, with uncertainties."""

    part_c: float
    u_part_c: float = 1.0
    expansion_per_k: float = 70e-6  # plastics 60e-6 to 100e-6, common practice, no source
    u_expansion_per_k: float = 12e-6

    @property
    def factor(self) -> float:
        """Length at the part's temperature over length at 20 degrees Celsius."""
        return 1.0 + self.expansion_per_k * (self.part_c - 20.0)

    @property
    def u_ratio(self) -> float:
        """Standard uncertainty of that factor."""
        return math.hypot(self.expansion_per_k * self.u_part_c, (self.part_c - 20.0) * self.u_expansion_per_k)


@dataclass(frozen=True, slots=True)
class LayerPlan:
    """Layer heights of the print: a drawn height is rounded to the first layer plus whole layers."""

    layer_mm: float
    first_layer_mm: float

    @within_reach
    def printed_height_mm(self, height_mm: Floats) -> Floats:
        """Return the height of whole layers nearest to each drawn height.

        Raises:
            InputError: field `layers`, not above zero, or too thick for a height.
        """
        _refuse_layers(self)
        layers = np.round((height_mm - self.first_layer_mm) / self.layer_mm)
        printed = np.asarray(self.first_layer_mm + self.layer_mm * layers)
        if np.any((printed <= 0.0) & (height_mm > 0.0)):
            says = tr("Layers of {layer:g} mm leave nothing of a height; type the layer heights of the print.",
                      layer=self.layer_mm)  # fmt: skip
            raise InputError("layers", says)
        return printed


@dataclass(frozen=True, slots=True, eq=False)
class Lengths:
    """Checked readings (n,): kind, axis, the length each is compared with, its error, and a label for its feature."""

    kinds: list[FeatureKind]
    axes: list[str]
    wanted_mm: Floats
    measured_mm: Floats
    error_mm: Floats
    labels: list[tuple[str, ...]]


def check_lengths(
    nominal_mm: ArrayLike,
    measured_mm: ArrayLike,
    kind: Sequence[str],
    axis: Sequence[str] | None,
    feature: Sequence[str | int | None] | None,
    part_temperature: PartTemperature | None,
    layers: LayerPlan | None,
) -> Lengths:
    """Check the columns of a trial and work out each error; arguments as for `sizeerror.fit_size_error`.

    Raises:
        InputError: fields `nominal_mm`, `measured_mm`, `kind`, `axis` or `feature`, with the row at fault;
            `part_temperature` or `layers`.
    """
    _check_conditions(part_temperature, layers)
    nominal, measured, kinds, axes = _checked(nominal_mm, measured_mm, kind, axis)
    error, wanted = _errors(nominal, measured, kinds, axes, part_temperature, layers)
    return Lengths(kinds, axes, wanted, measured, error, _labels(kinds, axes, nominal, feature))


def reading_problem(kind: FeatureKind, axis: str, nominal_mm: float, measured_mm: float) -> tuple[str, Words] | None:
    """Return the field at fault and why this reading cannot be, or None."""
    if problem := axis_problem(kind, axis):
        return ("kind" if axis in AXES else "axis"), problem
    for field, length in (("nominal_mm", nominal_mm), ("measured_mm", measured_mm)):
        if not abs(length) <= LONGEST_MM:
            return field, tr(
                "{value:g} mm is not a length up to {limit:g} mm; retype it.", value=length, limit=LONGEST_MM
            )
        if kind is not FeatureKind.TRAVEL and length < SHORTEST_MM:
            return field, tr(
                "{value:g} mm: a length on a part is {limit:g} mm at least, only travel may be zero or negative; "
                "retype it.",
                value=length,
                limit=SHORTEST_MM,
            )
    return None


@within_reach
def fixed_effects(
    kinds: list[FeatureKind],
    nominal_mm: Floats,
    instrument: Instrument | None,
    part_temperature: PartTemperature | None,
) -> Floats:
    """Return the columns J u (m, q) of what all readings share: jaw zeros, instrument scale, temperature.

    Reference: JCGM 100:2008 F.1.2.
    """
    columns = []
    if instrument is not None:
        columns.append([instrument.u_outside_zero_mm * FEATURES[k].outside_jaw for k in kinds])
        columns.append([instrument.u_inside_zero_mm * FEATURES[k].inside_jaw for k in kinds])
        columns.append(list(instrument.u_scale_ratio * nominal_mm))
    if part_temperature is not None:
        plastic = np.array([k is not FeatureKind.TRAVEL for k in kinds])
        columns.append(list(part_temperature.u_ratio * nominal_mm * plastic))
    return np.array(columns, dtype=float).reshape(-1, len(kinds)).T


def _check_conditions(part_temperature: PartTemperature | None, layers: LayerPlan | None) -> None:
    if part_temperature is not None:
        sure = all(math.isfinite(n) and n >= 0 for n in (part_temperature.u_ratio, part_temperature.factor))
        if not (sure and _COLDEST_C <= part_temperature.part_c <= _HOTTEST_C):
            raise InputError(
                "part_temperature",
                tr(
                    "{value:g} °C is no temperature at which a part is read; type one from {low:g} to {high:g}.",
                    value=part_temperature.part_c,
                    low=_COLDEST_C,
                    high=_HOTTEST_C,
                ),
            )
    if layers is not None:
        _refuse_layers(layers)


def _refuse_layers(layers: LayerPlan) -> None:
    for height in (layers.layer_mm, layers.first_layer_mm):
        if not SHORTEST_MM <= height <= LONGEST_MM:
            says = tr("A layer of {value:g} mm cannot be, {least:g} to {most:g} mm can; type the heights of the print.",
                      value=height, least=SHORTEST_MM, most=LONGEST_MM)  # fmt: skip
            raise InputError("layers", says)


def _checked(
    nominal_mm: ArrayLike, measured_mm: ArrayLike, kind: Sequence[str], axis: Sequence[str] | None
) -> tuple[Floats, Floats, list[FeatureKind], list[str]]:
    nominal, measured = _numbers("nominal_mm", nominal_mm), _numbers("measured_mm", measured_mm)
    kinds = [kind_from_text(text, row) for row, text in enumerate(kind)]
    axes = ["x"] * nominal.size if axis is None else [str(a).strip().lower() for a in axis]
    if nominal.size == 0:
        raise InputError("nominal_mm", tr("There is no reading yet; measure one length."))
    if not nominal.size == measured.size == len(kinds) == len(axes):
        raise InputError(
            "nominal_mm", tr("The columns differ in length; every reading needs nominal, reading, kind, axis.")
        )
    for row, (k, a, L, y) in enumerate(zip(kinds, axes, nominal.tolist(), measured.tolist(), strict=True)):
        if problem := reading_problem(k, a, L, y):
            raise InputError(*problem, row)
    _refuse_mixed_travel(kinds, axes)
    return np.round(nominal, _PLACES), measured, kinds, axes


def _numbers(field: str, values: ArrayLike) -> Floats:
    try:
        numbers = np.asarray(values, dtype=float)
    except (TypeError, ValueError):
        raise InputError(field, tr("A value is not a number; type every length in millimetres.")) from None
    if numbers.ndim != 1:
        raise InputError(field, tr("Give one list of lengths, one for each reading."))
    return numbers


def _refuse_mixed_travel(kinds: list[FeatureKind], axes: list[str]) -> None:
    for axis in set(axes):
        on_axis = {k is FeatureKind.TRAVEL for k, a in zip(kinds, axes, strict=True) if a == axis}
        if len(on_axis) == 2:
            row = next(i for i, (k, a) in enumerate(zip(kinds, axes, strict=True)) if a == axis and k == "travel")
            raise InputError(
                "kind",
                tr(
                    "Travel of {axis} and lengths of a part along {axis} do not belong to one trial: travel "
                    "does not shrink. Keep them as two trials.",
                    axis=axis,
                ),
                row,
            )


def _errors(
    nominal: Floats,
    measured: Floats,
    kinds: list[FeatureKind],
    axes: list[str],
    part_temperature: PartTemperature | None,
    layers: LayerPlan | None,
) -> tuple[Floats, Floats]:
    """Return error (n,) and the length it is compared with (n,), at 20 degrees Celsius and on whole layers."""
    wanted = nominal.copy()
    if layers is not None:
        on_z = np.array([k is FeatureKind.HEIGHT for k in kinds])
        wanted[on_z] = layers.printed_height_mm(nominal[on_z])
    plastic = np.array([k is not FeatureKind.TRAVEL for k in kinds])
    factor = np.where(plastic, part_temperature.factor if part_temperature else 1.0, 1.0)
    return measured / factor - wanted, wanted


def _labels(
    kinds: list[FeatureKind], axes: list[str], nominal: Floats, feature: Sequence[str | int | None] | None
) -> list[tuple[str, ...]]:
    if feature is None:
        return [(str(row),) for row in range(len(kinds))]
    if len(feature) != len(kinds):
        raise InputError("feature", tr("Name the feature of every reading, or of none."))
    labels: list[tuple[str, ...]] = []
    lengths: dict[tuple[str, ...], float] = {}
    for row, (name, k, a, L) in enumerate(zip(feature, kinds, axes, nominal, strict=True)):
        label = ("", str(row)) if name is None or str(name).strip() == "" else (str(name).strip(), k, a)
        if lengths.setdefault(label, L) != L:
            raise InputError(
                "feature",
                tr(
                    "Feature {name} has two nominal lengths, {first:g} and {second:g} mm; correct one, or give the "
                    "second a name of its own.",
                    name=str(name),
                    first=float(lengths[label]),
                    second=float(L),
                ),
                row,
            )
        labels.append(label)
    return labels
