"""A value with its uncertainty, and a length as people type it.

Symbols are those of JCGM 100:2008 (GUM): u standard uncertainty, dof effective degrees of freedom, k coverage factor
for 95 %, U = k*u expanded uncertainty.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from statistics import NormalDist

from core.errors import InputError
from core.words import tr

LEVEL = 0.95
_LEAST_DOF = 0.05  # the factor of fewer is beyond all numbers of a workshop
_LEAST_LEVEL = 1e-9  # an interval so narrow that its factor is next to zero
_MOST_SCALE = 100.0  # of a scale error: what is beyond is no error of a scale
_LARGEST_U = 1e300  # of one that can be rounded to two digits
LONGEST_MM = 1e5  # no printed part comes near: what is longer was mistyped
MM_PER_INCH = 25.4  # ISO 31-1 / international yard and pound agreement, exact

CELL_MARK = "'"
FORMULA_SIGNS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠", CELL_MARK)

_NUMBER = re.compile(r"([+-]?)(\d+(?:[.,]\d*)?|[.,]\d+)")
_FIGURE = re.compile(rf"{_NUMBER.pattern}(?: ± {_NUMBER.pattern})?(?: ?[%°]| mm)?")  # a value with its uncertainty
_CUBIC = re.compile(r"(?<=[mc]m)3\b")
_FRACTION = re.compile(r"([+-]?)(?:(\d{1,6})[ -]+)?(\d{1,6})/(\d{1,6})")
_UNITS = {"": 1.0, "mm": 1.0, "in": MM_PER_INCH, '"': MM_PER_INCH, "inch": MM_PER_INCH, "″": MM_PER_INCH}


def coverage_factor(dof: float, level: float = LEVEL) -> float:
    """Return the two-sided Student factor t_p(dof); the normal quantile for infinite degrees of freedom.

    Raises:
        InputError: field `level`, not between 0 and 1; `dof`, so few that no number is the factor.

    Reference: JCGM 100:2008 G.3.2 and table G.2. Degrees of freedom are not truncated to an integer.
    """
    if not _LEAST_LEVEL < level < 1.0:
        says = tr("A level of confidence of {level:g} tells nothing, or is not between 0 and 1; type 0.95 for 95 %.",
                  level=level)  # fmt: skip
        raise InputError("level", says)
    p = 0.5 + level / 2
    if dof == math.inf:
        return NormalDist().inv_cdf(p)  # spares scipy where nothing was read off readings
    from scipy.special import stdtrit

    factor = math.inf if dof < _LEAST_DOF else float(stdtrit(dof, p))
    if math.isinf(factor):
        says = tr("{dof:g} degrees of freedom give no level of confidence; read more often.", dof=dof)
        raise InputError("dof", says)
    return factor


@dataclass(frozen=True, slots=True)
class Estimate:
    """A measured quantity: name, value, standard uncertainty `u` and its degrees of freedom, all in `unit`."""

    name: str
    value: float
    u: float
    dof: float
    unit: str

    @property
    def k(self) -> float:
        """Coverage factor for 95 %."""
        return coverage_factor(self.dof)

    @property
    def U(self) -> float:
        """Expanded uncertainty for 95 %."""
        return self.k * self.u

    @property
    def significant(self) -> bool:
        """Whether the 95 % interval leaves zero out."""
        return abs(self.value) > self.U


def rounded_pair(value: float, U: float) -> tuple[str, str]:
    """Return value and expanded uncertainty as text, `U` to two significant digits and the value to match.

    Reference: JCGM 100:2008 7.2.6.
    """
    if not 0 < U < _LARGEST_U:
        return f"{value:.6g}".replace("-", "−"), "0" if U <= 0 else "?"
    digits = 1 - int(f"{U:.1e}".partition("e")[2])  # of the rounded U: 0.0999 becomes 0.10, one digit fewer
    places = max(digits, 0)
    shown = round(value, digits) + 0.0  # no minus before a zero
    return f"{shown:+.{places}f}".replace("-", "−"), f"{round(U, digits):.{places}f}"


def size_ratio(scale_error_ratio: float) -> float:
    """Return how many times as long as drawn a part is, 1 + s.

    Raises:
        InputError: field `scale`, an error that leaves no length.
    """
    if not -1.0 < scale_error_ratio < _MOST_SCALE:
        says = tr("A part cannot be off by {percent:.3g} %; check its sizes.", percent=100.0 * scale_error_ratio)
        raise InputError("scale", says)
    return 1.0 + scale_error_ratio


def told_value(estimate: Estimate) -> float:
    """Return the value as people are told it: rounded to two digits of U, to be set as it was read."""
    return float(rounded_pair(estimate.value, estimate.U)[0].replace("−", "-"))


def is_factor(name: str) -> bool:
    """Whether an estimate is a factor that people type as such, not a share in percent."""
    return name.startswith("flow_ratio")


def value_text(estimate: Estimate) -> str:
    """Return `+0.040 ± 0.006 mm`; a pure ratio is shown in percent, a flow factor as it is set, mm3 as mm³."""
    if is_factor(estimate.name):
        return " ± ".join(rounded_pair(estimate.value, estimate.U))
    factor, unit = (100.0, "%") if estimate.unit == "1" else (1.0, _CUBIC.sub("³", estimate.unit))
    value, U = rounded_pair(estimate.value * factor, estimate.U * factor)
    return f"{value} ± {U} {unit}"


def size_text(estimate: Estimate) -> str:
    """Return the text of an estimate that is a size and no deviation: without a plus."""
    return value_text(estimate).removeprefix("+")


@dataclass(frozen=True, slots=True)
class Length:
    """A length as typed and in millimetres; `step_mm` is the worth of its last digit (nan for a fraction)."""

    text: str
    mm: float
    unit: str
    step_mm: float


def length_from_text(text: str, field: str = "length") -> Length:
    """Read a length such as `12.5`, `12,5`, `0.394in`, `5.108"` or `25/64in`; without a unit it is millimetres.

    Raises:
        InputError: no number, a thousands separator, an unknown unit, or a fraction without inch.
    """
    plain = text.strip().replace("−", "-")
    split = re.fullmatch(r"(.*?\d[.,]?)\s*([a-zA-Z\"″µμ]*)", plain)
    body, unit = (split[1], split[2].lower()) if split else (plain, "")
    if unit not in _UNITS:
        raise InputError(field, tr("“{text}”: the unit {unit} is not known here; type mm or in.", text=text, unit=unit))
    inch = _UNITS[unit] != 1.0
    if fraction := _FRACTION.fullmatch(body):
        return _length_from_fraction(text, fraction, unit, field)
    number = _NUMBER.fullmatch(body)
    if not number:
        raise InputError(
            field,
            tr(
                "“{text}” is not a length; type for example 12.5, 12,5, 0.394in or 25/64in, without thousands "
                "separators.",
                text=text,
            ),
        )
    digits = number[2].replace(",", ".")
    places = len(digits.partition(".")[2])
    exact = Decimal(number[1] + digits) * Decimal(str(_UNITS[unit]))  # so that 1.5 in is 38.1 mm to the last digit
    return Length(text, _within_reach(text, float(exact), field), "in" if inch else "mm", _UNITS[unit] * 10.0**-places)


def _length_from_fraction(text: str, fraction: re.Match[str], unit: str, field: str) -> Length:
    if _UNITS[unit] == 1.0:
        raise InputError(
            field,
            tr(
                "“{text}”: a fraction is read in inch only; type {fraction}in, or the length in mm as a decimal.",
                text=text,
                fraction=fraction[0],
            ),
        )
    sign, whole, top, bottom = fraction.groups()
    if int(bottom) == 0:
        raise InputError(field, tr("“{text}”: the fraction has a zero below the line; type it again.", text=text))
    inches = Fraction(int(whole or 0)) + Fraction(int(top), int(bottom))
    mm = _within_reach(text, float(inches * Fraction(str(MM_PER_INCH))) * (-1 if sign == "-" else 1), field)
    return Length(text, mm, "in", math.nan)


def _within_reach(text: str, mm: float, field: str) -> float:
    if abs(mm) > LONGEST_MM:
        raise InputError(field, tr("“{text}” is longer than 100 m; check the decimal mark.", text=text))
    return mm


def is_formula(text: str) -> bool:
    """Whether a spreadsheet would run a cell, or take away the mark before it."""
    return text.lstrip(" ").startswith(FORMULA_SIGNS)


def harmless_cell(text: str) -> str:
    """Return a cell of a table for spreadsheets: marked as text where it would be run; values stay as they are.

    Reference: common practice, no source: an apostrophe before what begins a formula.
    """
    return CELL_MARK + text if is_formula(text) and not _FIGURE.fullmatch(text) else text
