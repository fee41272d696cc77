"""Usual tolerances of a length, and the rule by which a measured value is decided against a limit.

Two families, both given here as a symmetric half-width around the nominal: the general tolerances of ISO 2768-1
(classes f, m, c, v), which are symmetric by themselves, and the standard tolerance grades of ISO 286-1 (IT5 to IT16),
whose width lies where the fit letter puts it and of which half is taken here to either side.

Symbols: T limit, y measured value, u its standard uncertainty, w = k*u guard band, p conformance probability.

Reference: ISO 2768-1:1989 table 1; ISO 286-1:2010 table 1; JCGM 106:2012 7 and 8; ISO 14253-1:2017.
"""

from __future__ import annotations

import csv
import math
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from importlib.resources import files

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.quantity import LEVEL, coverage_factor
from core.words import Words, tr

Floats = NDArray[np.float64]

GENERAL_CLASSES: dict[str, Words] = {
    "f": tr("ISO 2768-1 f, fine"),
    "m": tr("ISO 2768-1 m, medium"),
    "c": tr("ISO 2768-1 c, coarse"),
    "v": tr("ISO 2768-1 v, very coarse"),
}
GRADES: dict[str, Words] = {f"IT{n}": tr("ISO 286-1 IT{n}, half to either side", n=n) for n in range(5, 17)}
CLASSES: dict[str, Words] = {**GENERAL_CLASSES, **GRADES}  # for a picker: what to pass, and its name for people


def tolerance_mm(length_mm: ArrayLike, klass: str) -> Floats:
    """Return the half-width of the tolerance of a nominal length: plus and minus this much.

    Args:
        length_mm: nominal lengths, of any shape; a length on a row limit belongs to the row below it.
        klass: a key of `CLASSES`. Of an ISO 286-1 grade half the width is returned, symmetric about the nominal.

    Raises:
        InputError: field `tolerance` for a class that there is not; `length_mm`, with its row, where there is none.
    """
    table = _table(klass)
    length = np.asarray(length_mm, dtype=float)
    row = np.searchsorted(table.up_to_mm, length, side="left")
    half_width = np.append(table.half_width_mm, math.nan)[row]
    half_width = np.where(_above_lowest(length, table), half_width, math.nan)
    missing = np.isnan(half_width)
    if np.any(missing):
        first = int(np.argmax(missing))
        raise InputError(
            "length_mm",
            tr(
                "{length} mm has no tolerance in {klass}, which goes {begin} up to {highest} mm; choose another class "
                "or state a tolerance of its own.",
                length=f"{length.flat[first]:g}",
                klass=CLASSES[klass],
                begin=table.begin(),
                highest=f"{table.up_to_mm[-1]:g}",
            ),
            first if length.ndim else None,
        )
    return np.asarray(half_width)


def tolerance_range_mm(klass: str) -> tuple[float, float]:
    """Return between which lengths a class is defined, for drawing it: from there on up, and up to and including.

    Raises:
        InputError: field `tolerance` for a class that there is not.
    """
    table = _table(klass)
    return table.lowest_mm, float(table.up_to_mm[-1])


@dataclass(frozen=True, slots=True, eq=False)
class _Table:
    """One class: each row reaches up to and including its `up_to_mm`; the lowest length, and whether it is included."""

    lowest_mm: float
    lowest_included: bool
    up_to_mm: Floats
    half_width_mm: Floats

    def begin(self) -> Words:
        """Say where the table begins."""
        lowest = f"{self.lowest_mm:g}"
        return tr("from {lowest} mm", lowest=lowest) if self.lowest_included else tr("over {lowest} mm", lowest=lowest)


def _above_lowest(length_mm: Floats, table: _Table) -> NDArray[np.bool_]:
    return np.asarray(length_mm >= table.lowest_mm if table.lowest_included else length_mm > table.lowest_mm)


@cache
def _table(klass: str) -> _Table:
    if klass not in CLASSES:
        raise InputError(
            "tolerance",
            tr("“{klass}” is not a tolerance class; use one of {classes}.", klass=klass, classes=", ".join(CLASSES)),
        )
    general = klass in GENERAL_CLASSES
    rows = [row for row in _rows("tolerance_general" if general else "tolerance_grades") if row[klass]]
    lowest = float(rows[0]["over_mm"])
    half = np.array([float(row[klass]) for row in rows])
    return _Table(
        lowest_mm=lowest,
        lowest_included=general and lowest == 0.5,  # ISO 2768-1 begins "from 0,5 up to 3"
        up_to_mm=np.array([float(row["up_to_mm"]) for row in rows]),
        half_width_mm=half if general else half / 2 / 1000,  # grades: width in micrometres
    )


@cache
def _rows(name: str) -> tuple[dict[str, str], ...]:
    text = (files("resources") / "catalogue" / f"{name}.csv").read_text(encoding="utf-8")
    return tuple(csv.DictReader(line for line in text.splitlines() if not line.startswith("#")))


class Conformity(StrEnum):
    """What a measured value proves."""

    CONFORMING = "conforming"
    NOT_CONFORMING = "not_conforming"
    NOT_PROVED = "not_proved"


@dataclass(frozen=True, slots=True)
class Decision:
    """What is proved, the guard band w (in the unit of the value) and the probability that the limits are kept."""

    conformity: Conformity
    guard_band: float
    probability: float


@within_reach
@finite_in("value")
def decide(
    value: float, u: float, limit: float, dof: float = math.inf, *, lower: float = -math.inf, level: float = LEVEL
) -> Decision:
    """Decide a measured value against an upper limit, or against two.

    Conformity is proved where the limits are kept with at least the probability `level`; with one limit that is inside
    the zone reduced by the guard band, with two it asks a little more where the zone is narrow. Non-conformity is
    proved only beyond a limit by more than the guard band. In between nothing is proved.

    Args:
        value: measured value y.
        u: its standard uncertainty; zero leaves the limits themselves to decide.
        limit: upper limit.
        dof: degrees of freedom of u.
        lower: lower limit, none by default; for an error within plus and minus T give -T here.
        level: probability that must be reached.

    Raises:
        InputError: field `u` when it is below zero or not a number, `limit` when the lower limit is above the upper,
            `dof` when they are so few that the guard band has no end.

    Reference: JCGM 106:2012 7 (p = Phi((T - y)/u)) and 8 (guard bands); ISO 14253-1:2017 (95 %, one-sided: 1.65 u).
    """
    if not u >= 0:
        raise InputError("u", tr("The uncertainty of the value is not known; without it nothing is decided."))
    if not lower <= limit:
        raise InputError(
            "limit",
            tr(
                "The lower limit {lower} is above the upper limit {upper}; exchange them.",
                lower=f"{lower:g}",
                upper=f"{limit:g}",
            ),
        )
    guard_band = coverage_factor(dof, 2 * level - 1) * u  # one-sided factor
    if not math.isfinite(guard_band):
        says = tr("With {dof:g} degrees of freedom nothing is decided; take more readings.", dof=dof)
        raise InputError("dof", says)
    if u == 0:
        probability = float(lower <= value <= limit)
    else:
        probability = _share_below((limit - value) / u, dof) - _share_below((lower - value) / u, dof)
    if value > limit + guard_band or value < lower - guard_band:
        conformity = Conformity.NOT_CONFORMING
    else:
        conformity = Conformity.CONFORMING if probability >= level else Conformity.NOT_PROVED
    return Decision(conformity, guard_band, probability)


def _share_below(distance: float, dof: float) -> float:
    from scipy.special import ndtr, stdtr

    return float(ndtr(distance) if math.isinf(dof) else stdtr(dof, distance))
