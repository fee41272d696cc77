"""Which lengths to read, how often, and how well scale, wall outset and lost motion will then be known.

    V = f^2 S F F' S + diag(sd^2/n)          of the feature means, before anything is printed
    G = (X'WX)^-1 X'W, W = diag(1/V)         the fit as it will be made
    C = G V G' + G J J' G'                   J: jaw zeros, instrument scale, temperature
    floor: C for n without end

Symbols: X design, n readings of a feature, sd of one reading, f placement of one wall, F which walls a feature touches,
S +1 outside and -1 inside. Features that share a wall scatter together, and W does not know: C says what that costs.

D-optimal: det(X'WX) largest. c-optimal: the variance of one parameter smallest. Either puts nothing in the middle; a
fifth of the readings is kept there to see a curve.

Reference: Atkinson, Donev and Tobias, Optimum Experimental Designs (2007) 10, 11.2, 12.5 (exchange); JCGM 100:2008 5.1.
A fifth: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from core.errors import InputError
from core.measuring.linefit import fit_linear
from core.measuring.reach import of_one_length, within_reach
from core.part_size.features import FEATURES, FeatureKind, Terms, design_terms, parameter_names, travel_centres
from core.part_size.lengths import PartTemperature, fixed_effects
from core.part_size.scatter import RANK_RATIO
from core.part_size.sizeerror import reported
from core.records.rows import Instrument
from core.words import tr

MIDDLE_SHARE = 0.2
_RIDGE = 1e-9  # lets the first readings be compared before all parameters are determined

Floats = NDArray[np.float64]
Counts = NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class Place:
    """A length that can be read: kind, axis, nominal length, and the names of the walls it touches, if known."""

    kind: FeatureKind
    axis: str
    nominal_mm: float
    faces: tuple[str, str] = ("", "")


@dataclass(frozen=True, slots=True)
class Scatter:
    """What is expected of reading and printing: sd of one reading, placement of one wall, and what no repeat removes.

    Raises:
        InputError: field `sd_reading_mm` or `sd_face_mm`, where it cannot be.
    """

    sd_reading_mm: float = 0.02
    sd_face_mm: float = 0.01
    instrument: Instrument | None = None
    part_temperature: PartTemperature | None = None

    def __post_init__(self) -> None:
        """Refuse what cannot be."""
        for field, value, low in (("sd_reading_mm", self.sd_reading_mm, 1e-4), ("sd_face_mm", self.sd_face_mm, 0.0)):
            if not low <= value <= 1.0:
                raise InputError(field, tr("{value:g} mm is no scatter; type {low:g} to 1 mm.", value=value, low=low))


@dataclass(frozen=True, slots=True)
class ExpectedU:
    """What will be known of a parameter: standard uncertainty, and the floor below which no repeat takes it."""

    name: str
    u: float
    floor_u: float
    unit: str


@within_reach
@of_one_length("places", "times")
def expected_uncertainties(
    places: Sequence[Place], times: Sequence[int], scatter: Scatter | None = None
) -> tuple[ExpectedU, ...]:
    """Return the standard uncertainty of every parameter, or combination, that the planned readings will determine.

    Args:
        places: lengths of one print.
        times: how often each is read; 0 leaves it out.
        scatter: of reading and printing.

    Raises:
        InputError: field `readings`, where nothing is to be read; `times`, with its row, below zero.
    """
    refuse_below_zero(times)
    scatter = scatter or Scatter()
    read = [place for place, count in zip(places, times, strict=True) if count]
    if not read:
        raise InputError("readings", tr("Nothing is to be read; plan one reading at least."))
    counts = np.array([count for count in times if count], dtype=float)
    terms, fixed = _terms(read), _fixed(read, scatter)
    of_faces = _face_covariance(read, scatter.sd_face_mm)
    V = of_faces + np.diag(scatter.sd_reading_mm**2 / counts)
    fit = fit_linear(terms.design, np.zeros(len(read)), 1.0 / np.diag(V), RANK_RATIO)
    found = []
    for name, c in reported(terms, fit):
        g = c @ fit.solver
        floor = g @ of_faces @ g + float(np.sum((g @ fixed) ** 2))
        u = math.sqrt(floor + g @ (V - of_faces) @ g)
        found.append(ExpectedU(name, u, math.sqrt(floor), "1" if name.startswith("scale_") else "mm"))
    return tuple(found)


@within_reach
def choose_times(
    places: Sequence[Place],
    readings: int,
    scatter: Scatter | None = None,
    *,
    wanted: Sequence[str] = (),
    least: int = 0,
) -> Counts:
    """Return how often to read each place, a fifth of the readings in the middle of the lengths.

    Args:
        places: lengths of one print.
        readings: to be shared out.
        scatter: of reading and printing.
        wanted: names of the parameters whose variances together are to be least; none for all alike (D-optimal).
        least: times that every place is read anyhow.

    Raises:
        InputError: field `readings`, where they do not go round.
    """
    scatter = scatter or Scatter()
    fewest = max(least * len(places), len(_terms(places).names))
    if not places or readings < fewest:
        raise InputError("readings", tr("{count} readings are too few here; {fewest} at least.",
                                        count=readings, fewest=fewest))  # fmt: skip
    criterion = _Criterion(places, scatter, wanted)
    middle = _middle(places)
    elsewhere = [i for i in range(len(places)) if i not in middle]
    counts = np.full(len(places), least, dtype=np.int64)
    spare = readings - int(counts.sum())
    kept = min(round(MIDDLE_SHARE * readings), spare)
    shares = ((elsewhere, spare - kept), (middle, kept)) if elsewhere else ((middle, spare),)
    for group, share in shares:
        for _ in range(share):
            counts[max(group, key=lambda i: criterion.value(counts, add=i))] += 1
    for group, _ in shares:
        _exchange(counts, group, criterion, least)
    return counts


class _Criterion:
    """How good a plan is, larger is better."""

    def __init__(self, places: Sequence[Place], scatter: Scatter, wanted: Sequence[str]) -> None:
        terms = _terms(places)
        length = np.maximum(np.linalg.norm(terms.design, axis=0), 1e-300)
        self._design = terms.design / length
        self._face2 = np.diag(_face_covariance(list(places), scatter.sd_face_mm))
        self._reading2 = scatter.sd_reading_mm**2
        self._wanted = np.array([terms.coefficients(name) / length for name in wanted])

    def value(self, counts: Counts, add: int = -1, take: int = -1) -> float:
        n = counts.astype(float)
        for place, change in ((add, 1.0), (take, -1.0)):
            if place >= 0:
                n[place] += change
        weight = np.where(n > 0, 1.0 / (self._face2 + self._reading2 / np.maximum(n, 1.0)), 0.0) * self._reading2
        information = (self._design.T * weight) @ self._design + _RIDGE * np.eye(self._design.shape[1])
        if not self._wanted.size:
            return float(np.linalg.slogdet(information)[1])
        return -float(np.sum(self._wanted.T * np.linalg.solve(information, self._wanted.T)))


def _exchange(counts: Counts, group: list[int], criterion: _Criterion, least: int) -> None:
    """Move single readings within a group while that helps; every move does, so it ends."""
    while True:
        now = criterion.value(counts)
        moves = [(i, j) for i in group if counts[i] > least for j in group if i != j]
        best = max(moves, key=lambda move: criterion.value(counts, add=move[1], take=move[0]), default=None)
        if best is None or criterion.value(counts, add=best[1], take=best[0]) <= now + 1e-12:
            return
        counts[best[0]] -= 1
        counts[best[1]] += 1


def _middle(places: Sequence[Place]) -> list[int]:
    """Return the places in the middle third of the lengths of their axis, or the nearest to its middle."""
    found: list[int] = []
    for axis in dict.fromkeys(place.axis for place in places):
        mine = [i for i, place in enumerate(places) if place.axis == axis]
        lengths = [places[i].nominal_mm for i in mine]
        centre, sixth = (max(lengths) + min(lengths)) / 2, (max(lengths) - min(lengths)) / 6
        near = [i for i in mine if abs(places[i].nominal_mm - centre) <= sixth]
        found += near or [min(mine, key=lambda i: abs(places[i].nominal_mm - centre))]
    return found


def refuse_below_zero(times: Sequence[int]) -> None:
    """Refuse numbers of readings that are below zero.

    Raises:
        InputError: field `times`, with its row.
    """
    for row, count in enumerate(times):
        if count < 0:
            raise InputError("times", tr("{count} readings cannot be; type 0 or more.", count=count), row)


def _terms(places: Sequence[Place]) -> Terms:
    kinds, axes = [p.kind for p in places], [p.axis for p in places]
    lengths = np.array([p.nominal_mm for p in places])
    names = parameter_names(kinds, axes)
    return design_terms(names, kinds, axes, lengths, travel_centres(kinds, axes, lengths))


def _fixed(places: list[Place], scatter: Scatter) -> Floats:
    kinds, lengths = [p.kind for p in places], np.array([p.nominal_mm for p in places])
    return fixed_effects(kinds, lengths, scatter.instrument, scatter.part_temperature)


def _face_covariance(places: list[Place], sd_face_mm: float) -> Floats:
    """Return f^2 S F F' S (m, m); a wall without a name belongs to one feature only."""
    names = [[name or f"{i} {side}" for side, name in enumerate(place.faces)] for i, place in enumerate(places)]
    columns = {name: j for j, name in enumerate(dict.fromkeys(name for pair in names for name in pair))}
    F = np.zeros((len(places), len(columns)))
    for i, (place, pair) in enumerate(zip(places, names, strict=True)):
        for name in pair:
            F[i, columns[name]] += 1.0 if FEATURES[place.kind].k >= 0 else -1.0
    return np.asarray(sd_face_mm**2 * F @ F.T)
