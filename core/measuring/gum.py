"""Components of uncertainty put together. The Student factor itself is `core.quantity.coverage_factor`.

Symbols: u_i(y) = |c_i| u(x_i) contribution of component i to the result y, nu_i its degrees of freedom, u_c combined
standard uncertainty, nu_eff effective degrees of freedom, k coverage factor, U = k*u_c expanded uncertainty, a
half-width of a distribution, beta = |a_1 - a_2|/(a_1 + a_2) edge parameter of the trapezoid that two rectangles make.

Reference: JCGM 100:2008 (GUM) 4.2 to 4.4, 5.1.2 and G.4.1, equation G.2b; EA-4/02 supplements S9 and S10.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import SMALLEST, within_reach
from core.quantity import LEVEL, coverage_factor
from core.words import Words, tr

Floats = NDArray[np.float64]

DOMINANT_RATIO = 0.3  # EA-4/02 S9 and S10: the others together are at most this share of those that dominate
FEWEST = 2  # readings that scatter


@dataclass(frozen=True, slots=True)
class Combined:
    """Combined standard uncertainty `u`, in the unit of its components, and its effective degrees of freedom."""

    u: float
    dof: float

    def expanded(self, level: float = LEVEL) -> float:
        """Return U = k*u for the level."""
        return coverage_factor(self.dof, level) * self.u


@within_reach
def combine(contributions: ArrayLike, dofs: ArrayLike = math.inf) -> Combined:
    """Combine independent components.

    Args:
        contributions: (n,) |c_i| u(x_i), all in the unit of the result.
        dofs: (n,) degrees of freedom, or one number for all; infinite where the uncertainty itself is taken as known.

    Raises:
        InputError: field `contributions` or `dofs`, as `welch_satterthwaite` does.
    """
    u, _ = _checked(contributions, dofs)
    return Combined(float(np.linalg.norm(u)), welch_satterthwaite(contributions, dofs))


def welch_satterthwaite(contributions: ArrayLike, dofs: ArrayLike) -> float:
    """Return the effective degrees of freedom u_c^4 / sum(u_i^4 / nu_i), not truncated; infinite if all u_i are known.

    Args:
        contributions: (n,) |c_i| u(x_i), all in the unit of the result.
        dofs: (n,) degrees of freedom, or one number for all.

    Raises:
        InputError: field `contributions` for none, or one that is not finite; `dofs` for one that is not above zero.

    Reference: JCGM 100:2008 G.4.1, equation G.2b.
    """
    u, nu = _checked(contributions, dofs)
    return float(effective_dofs(u[np.newaxis, :], nu)[0])


def effective_dofs(u: Floats, nu: Floats) -> Floats:
    """Return the effective degrees of freedom (n,) of n results with components u (n, m) of nu (m,), unchecked."""
    largest = u.max(axis=1, keepdims=True)
    share = (u / np.where(largest > 0.0, largest, 1.0)) ** 2  # fourth powers neither overflow nor vanish
    spread = np.sum(share**2 / nu, axis=1)
    known = spread <= _KNOWN
    return np.asarray(np.where(known, math.inf, np.sum(share, axis=1) ** 2 / np.where(known, 1.0, spread)))


def _checked(contributions: ArrayLike, dofs: ArrayLike) -> tuple[Floats, Floats]:
    u = np.abs(np.atleast_1d(np.asarray(contributions, dtype=float)))
    if u.size == 0 or not np.all(np.isfinite(u)):
        raise InputError(
            "contributions", tr("A component of the uncertainty is missing or not finite; give its real size.")
        )
    nu = np.asarray(dofs, dtype=float)
    if nu.ndim and nu.shape != u.shape:
        raise InputError("dofs", tr("Components and degrees of freedom differ in number; give one for each component."))
    if not np.all(nu > SMALLEST):
        raise InputError("dofs", tr("Degrees of freedom must be above zero; two readings give one degree of freedom."))
    return u, np.broadcast_to(nu, u.shape)


class Distribution(StrEnum):
    """What is known of how an input quantity is spread."""

    NORMAL = "normal"
    RECTANGLE = "rectangle"
    TRIANGLE = "triangle"
    U_SHAPED = "u_shaped"
    STUDENT = "t"


_KNOWN = 1e-300  # what is left of components whose uncertainty is in doubt, where the others are far larger
_DIVISORS = {  # half-width a of the whole spread over u; JCGM 100:2008 4.3.7 and 4.3.9, JCGM 101:2008 6.4.6
    Distribution.RECTANGLE: math.sqrt(3.0),
    Distribution.TRIANGLE: math.sqrt(6.0),
    Distribution.U_SHAPED: math.sqrt(2.0),
}


def distribution_words(distribution: Distribution) -> Words:
    """Return the name of a distribution for people."""
    return {
        Distribution.NORMAL: tr("normal"),
        Distribution.RECTANGLE: tr("rectangle"),
        Distribution.TRIANGLE: tr("triangle"),
        Distribution.U_SHAPED: tr("U-shaped"),
        Distribution.STUDENT: tr("t"),
    }[distribution]


@within_reach
def standard_uncertainty(
    half_width: float, distribution: Distribution, *, dof: float = math.inf, level: float = LEVEL
) -> float:
    """Return u of what is stated as plus and minus a half-width.

    Args:
        half_width: a of the whole spread; of a normal or t distribution the expanded uncertainty U at `level`.
        distribution: how it is spread.
        dof: degrees of freedom of a t distribution.
        level: level of confidence of U; a certificate that states k = 2 means 0.9545.

    Raises:
        InputError: field `half_width` when it is below zero or not a number.

    Reference: JCGM 100:2008 4.3.3 to 4.3.9.
    """
    if not dof > 0.0:
        raise InputError("dof", tr("Degrees of freedom are above zero; type how many there are."))
    if not 0.0 <= half_width < math.inf:
        raise InputError("half_width", tr("A half-width is zero or more; type what the limits are apart, halved."))
    if distribution in _DIVISORS:
        return half_width / _DIVISORS[distribution]
    return half_width / coverage_factor(dof if distribution is Distribution.STUDENT else math.inf, level)


@within_reach
def type_b_dof(relative_u: float) -> float:
    """Return the degrees of freedom 0.5 (du/u)^-2 of an uncertainty that is itself in doubt by that share.

    Raises:
        InputError: field `relative_u` when it is below zero or not a number.

    Reference: JCGM 100:2008 G.4.2, equation G.3.
    """
    if not relative_u >= 0.0:
        raise InputError("relative_u", tr("The doubt about an uncertainty is zero or more; type for example 0.25."))
    return math.inf if relative_u == 0.0 else 0.5 / relative_u**2


@dataclass(frozen=True, slots=True)
class Mean:
    """Readings of one quantity: mean, standard deviation of one reading, u of the mean, degrees of freedom."""

    value: float
    sd: float
    u: float
    dof: int


@within_reach
def mean_of(readings: ArrayLike) -> Mean:
    """Return the mean of repeated readings and how well it is known.

    Args:
        readings: (n,) readings, two at least.

    Raises:
        InputError: field `readings` for fewer, or one that is not finite.

    Reference: JCGM 100:2008 4.2.2 and 4.2.3.
    """
    x = np.asarray(readings, dtype=float).ravel()
    if x.size < FEWEST or not np.all(np.isfinite(x)):
        raise InputError("readings", tr("One reading does not scatter; read it twice at least."))
    sd = float(np.std(x, ddof=1))
    return Mean(float(np.mean(x)), sd, sd / math.sqrt(x.size), x.size - 1)


@dataclass(frozen=True, slots=True)
class Component:
    """One line of a budget.

    Attributes:
        name: what it comes from, for people.
        u: standard uncertainty of the input quantity, in its own unit.
        sensitivity: change of the result with that quantity.
        distribution: how the quantity is spread.
        dof: degrees of freedom of u.
    """

    name: Words
    u: float
    sensitivity: float = 1.0
    distribution: Distribution = Distribution.NORMAL
    dof: float = math.inf

    @property
    def contribution(self) -> float:
        """What it adds to the result: |c| u."""
        return abs(self.sensitivity) * self.u


class Coverage(StrEnum):
    """Where the coverage factor of a budget comes from."""

    STUDENT = "student"
    RECTANGLE = "rectangle"
    TRAPEZOID = "trapezoid"


@dataclass(frozen=True, slots=True)
class Budget:
    """Components and what they make together.

    Attributes:
        components: as given.
        u: combined standard uncertainty u_c.
        dof: effective degrees of freedom nu_eff.
        k: coverage factor for the level.
        coverage: whether k is Student's, or that of one or two rectangles that dominate.
    """

    components: tuple[Component, ...]
    u: float
    dof: float
    k: float
    coverage: Coverage

    @property
    def U(self) -> float:
        """Expanded uncertainty k*u_c."""
        return self.k * self.u

    @property
    def shares(self) -> tuple[float, ...]:
        """Share of each component in u_c squared; they add up to 1."""
        whole = self.u**2 or 1.0
        return tuple(component.contribution**2 / whole for component in self.components)


@within_reach
def budget(components: Sequence[Component], level: float = LEVEL) -> Budget:
    """Put components together and choose the coverage factor.

    One rectangle that dominates has its own factor, two make a trapezoid; else Student's with the effective degrees of
    freedom. Second-order terms are components too: of a product of two quantities about zero, u = u_1 u_2.

    Raises:
        InputError: as `combine` does.

    Reference: JCGM 100:2008 5.1.2 with its note, G.4.1; EA-4/02 S9 and S10.
    """
    combined = combine([c.contribution for c in components], [c.dof for c in components])
    half_widths = _dominant_rectangles(components)
    if half_widths:
        coverage = Coverage.RECTANGLE if len(half_widths) == 1 else Coverage.TRAPEZOID
        k = trapezoid_factor(half_widths[0], sum(half_widths[1:]), level)
    else:
        coverage, k = Coverage.STUDENT, coverage_factor(combined.dof, level)
    return Budget(tuple(components), combined.u, combined.dof, k, coverage)


@finite_in("level")
def trapezoid_factor(first: float, second: float = 0.0, level: float = LEVEL) -> float:
    """Return the coverage factor of the sum of two rectangles with these half-widths; of one where the second is zero.

    Raises:
        InputError: field `first` where they are not zero or more, or both zero; `level`, not between 0 and 1.

    Reference: EA-4/02 supplements S10 (trapezoid) and S9 (one rectangle: k = p sqrt(3)).
    """
    if not (min(first, second) >= 0.0 and 0.0 < first + second < math.inf):
        raise InputError("first", tr("A half-width is zero or more, and one of the two is above zero."))
    if not 0.0 < level < 1.0:
        raise InputError("level", tr("A level of confidence of {level:g} is not between 0 and 1; type 0.95 for 95 %.",
                                     level=level))  # fmt: skip
    beta = abs(first - second) / (first + second)
    if level / (2.0 - level) < beta:  # the interval ends on the flat top
        share = level * (1.0 + beta) / 2.0
    else:
        share = 1.0 - math.sqrt((1.0 - level) * (1.0 - beta**2))
    return share / math.sqrt((1.0 + beta**2) / 6.0)


def _dominant_rectangles(components: Sequence[Component]) -> tuple[float, ...]:
    """Return the half-widths, in the unit of the result, of one or two rectangles that dominate; else none."""
    ranked = sorted(components, key=lambda component: component.contribution, reverse=True)
    for count in (1, 2):
        first, rest = ranked[:count], ranked[count:]
        if len(first) < count or any(c.distribution is not Distribution.RECTANGLE or c.u == 0.0 for c in first):
            return ()
        large = math.hypot(*(c.contribution for c in first))
        if math.hypot(*(c.contribution for c in rest)) <= DOMINANT_RATIO * large:
            return tuple(c.contribution * _DIVISORS[Distribution.RECTANGLE] for c in first)
    return ()
