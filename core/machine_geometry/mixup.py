"""The mix-up finder: which single wrong part explains a gross ratio.

The ratio is the length that came out, printed or travelled, divided by the length that was commanded; it is above 1
where the machine goes too far. The controller steps by the value in force, S_force (calculated from the parts as
entered, unless another value was found in it); the carriage goes by the parts really fitted, S_fitted. Hence

    ratio = S_force / S_fitted

for a wrong part, and 1/25.4 or 25.4 where inch and mm were mixed. Every candidate differs from the entry in one part.
It is a hit where its ratio lies inside the 95 % interval of the measured one, widened by the drive's own tolerance
and, for a printed part, by what the plastic may have shrunk. Hits are ranked by Bayes' rule: how often the slip happens
(catalogue, common practice without a source) times the normal likelihood of the ratio. The shares sum to 1 over the
hits and say nothing about two slips at once.

Reference: JCGM 100:2008 5.1 and 6.2 for the interval; the candidates are the parts of the catalogue.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from core.errors import InputError
from core.machine_geometry.foundsteps import GROSS_RATIO, found_steps_effect
from core.machine_geometry.parts import Drive, short
from core.machine_geometry.slips import Candidate, Slip, slips_of
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.quantity import coverage_factor
from core.words import Words, tr

__all__ = [
    "Mixup",
    "MixupSearch",
    "RatioInterval",
    "Slip",
    "find_mixups",
    "mixups_within",
    "parts_behind_steps",
    "ratio_from_lengths",
    "search_mixups",
]

_ROUNDING = 1e-9  # relative width that stands for the rounding of a ratio given without uncertainty
_FOUND_ROUNDING = 1e-4  # relative width for a value that somebody cut to two decimals


@dataclass(frozen=True, slots=True)
class RatioInterval:
    """A measured ratio with its standard uncertainty; shrunk plastic hides up to `shrink_ratio` of the true one."""

    ratio: float
    u_ratio: float
    shrink_ratio: float = 0.0
    dof: float = math.inf

    @property
    def low_ratio(self) -> float:
        """Lower end of the 95 % interval."""
        return self.ratio - self._half_width

    @property
    def high_ratio(self) -> float:
        """Upper end of the 95 % interval, shrinkage included."""
        return self.ratio * (1 + self.shrink_ratio) + self._half_width

    @property
    def _half_width(self) -> float:
        return coverage_factor(self.dof) * self.u_ratio + _ROUNDING * self.ratio

    def holds(self, ratio: float) -> bool:
        """Whether a ratio lies inside the interval."""
        return self.low_ratio <= ratio <= self.high_ratio

    @within_reach
    @finite_in("relative_u")
    def widened(self, relative_u: float) -> RatioInterval:
        """Return the interval with another relative standard uncertainty added in quadrature."""
        u = math.hypot(self.u_ratio, self.ratio * relative_u)
        return RatioInterval(self.ratio, u, self.shrink_ratio, self.dof)

    @within_reach
    @finite_in("ratio")
    def likelihood(self, ratio: float) -> float:
        """Return how well a ratio fits, 1 at its best: flat over the possible shrinkage, normal outside."""
        away = max(self.ratio - ratio, ratio - self.ratio * (1 + self.shrink_ratio), 0.0)
        return math.exp(-0.5 * (away / max(self.u_ratio, _ROUNDING * self.ratio)) ** 2)


@dataclass(frozen=True, slots=True)
class Mixup:
    """A wrong part that explains the ratio.

    Attributes:
        slip: what kind of slip.
        entered: the part as the list has it.
        fitted: the part as it must be.
        ratio: the ratio this slip gives.
        share: how likely it is among the hits; they sum to 1.
        says: the sentence for the person.
        drive: the drive with the part as fitted; None where a unit and no part is wrong.
    """

    slip: Slip
    entered: str
    fitted: str
    ratio: float
    share: float
    says: Words
    drive: Drive | None


@dataclass(frozen=True, slots=True)
class MixupSearch:
    """What a search came to: the interval, the hits, whether the parts as entered explain it, and a sentence."""

    interval: RatioInterval
    hits: tuple[Mixup, ...]
    as_entered: bool
    says: Words


@within_reach
def ratio_from_lengths(
    commanded_mm: float, measured_mm: float, U_measured_mm: float, shrink_ratio: float = 0.0
) -> RatioInterval:
    """Return measured / commanded with its uncertainty.

    Args:
        commanded_mm: drawn or commanded length.
        measured_mm: length that came out.
        U_measured_mm: expanded uncertainty (95 %) of the measured length.
        shrink_ratio: the most that the plastic may have shrunk, 0 where the travel itself was measured.

    Raises:
        InputError: named after the argument that is not a possible length, uncertainty or shrinkage.
    """
    for field, value in (("commanded_mm", commanded_mm), ("measured_mm", measured_mm)):
        if not 0 < value < math.inf:
            raise InputError(field, tr("{length} mm gives no ratio; enter a length above 0.", length=short(value)))
    if not 0 <= U_measured_mm < measured_mm:
        raise InputError(
            "U_measured_mm",
            tr(
                "An uncertainty of {U} mm must be 0 or more and below the reading of {length} mm.",
                U=short(U_measured_mm),
                length=short(measured_mm),
            ),
        )
    if not 0 <= shrink_ratio <= 0.05:
        percent = short(100 * shrink_ratio)
        raise InputError("shrink_ratio", tr("Shrinkage of {percent} % is outside 0 to 5 %.", percent=percent))
    u = U_measured_mm / coverage_factor(math.inf) / commanded_mm
    return RatioInterval(measured_mm / commanded_mm, u, shrink_ratio)


@within_reach
def find_mixups(
    drive: Drive, ratio: float, u_ratio: float = 0.0, *, dof: float = math.inf, found_steps_mm: float | None = None
) -> tuple[Mixup, ...]:
    """Return every single wrong part whose ratio lies inside ratio ± U, the likeliest first.

    Args:
        drive: the parts as entered.
        ratio: printed or measured length / commanded length; for a scale error s it is 1 + s.
        u_ratio: its standard uncertainty.
        dof: degrees of freedom of u_ratio.
        found_steps_mm: the value that was in force in the controller, where it was not the calculated one.

    Raises:
        InputError: field `ratio` or `u_ratio`, not possible numbers; `found_steps_mm`, not above 0; `kind`, for a
            rotary axis.
    """
    if not 0 < ratio < math.inf:
        raise InputError(
            "ratio", tr("A ratio of {ratio} is not possible; it is a length over a length.", ratio=short(ratio))
        )
    if not 0 <= u_ratio < ratio:
        raise InputError(
            "u_ratio",
            tr(
                "An uncertainty of {u} leaves a ratio of {ratio} open; measure again.",
                u=short(u_ratio),
                ratio=short(ratio),
            ),
        )
    return mixups_within(drive, RatioInterval(ratio, u_ratio, dof=dof), found_steps_mm=found_steps_mm)


@within_reach
def mixups_within(drive: Drive, interval: RatioInterval, *, found_steps_mm: float | None = None) -> tuple[Mixup, ...]:
    """Return every single wrong part whose ratio lies inside the interval widened by the drive's tolerance.

    Raises:
        InputError: field `found_steps_mm`, not above 0; `kind`, for a rotary axis.
    """
    force = _force_ratio(drive, found_steps_mm)
    return tuple(
        Mixup(c.slip, c.entered, c.fitted, force * c.ratio, share, _sentence(c, force * c.ratio), c.drive)
        for c, share in _ranked(slips_of(drive), force, interval.widened(drive.tolerance_ratio))
    )


@within_reach
def search_mixups(drive: Drive, interval: RatioInterval, *, found_steps_mm: float | None = None) -> MixupSearch:
    """Search the interval for every single wrong part, and say what that comes to.

    Raises:
        InputError: field `found_steps_mm`, not above 0; `kind`, for a rotary axis.
    """
    hits = mixups_within(drive, interval, found_steps_mm=found_steps_mm)
    wide = interval.widened(drive.tolerance_ratio)
    as_entered = wide.holds(_force_ratio(drive, found_steps_mm))
    return MixupSearch(wide, hits, as_entered, _sum_up(wide, hits, as_entered))


def _force_ratio(drive: Drive, found_steps_mm: float | None) -> float:
    """Return the ratio that correct parts give: 1, or what a value found in the controller makes of it."""
    if found_steps_mm is None:
        return 1.0
    effect = found_steps_effect(drive, found_steps_mm)
    return effect.found_steps_mm / effect.calculated_steps_mm


def _ranked(candidates: Iterable[Candidate], force: float, interval: RatioInterval) -> list[tuple[Candidate, float]]:
    hits = [(c, c.weight * interval.likelihood(force * c.ratio)) for c in candidates if interval.holds(force * c.ratio)]
    total = sum(score for _, score in hits)
    if not total:  # few degrees of freedom hold what lies far off: nothing there is likelier than another
        hits = [(c, c.weight) for c, _ in hits]
        total = sum(c.weight for c, _ in hits)
    return [(c, score / total) for c, score in sorted(hits, key=lambda hit: -hit[1])]


def _sentence(candidate: Candidate, ratio: float) -> Words:
    return tr(
        "{cause}: 100 mm come out as {length} mm. {remedy}",
        cause=candidate.cause,
        length=f"{100 * ratio:.4g}",
        remedy=candidate.remedy,
    )


def _sum_up(interval: RatioInterval, hits: tuple[Mixup, ...], as_entered: bool) -> Words:
    ends = {
        "ratio": f"{interval.ratio:.4f}",
        "low": f"{interval.low_ratio:.4f}",
        "high": f"{interval.high_ratio:.4f}",
        "percent": f"{100 * abs(interval.ratio - 1):.2f}",
    }
    if as_entered:
        return tr(
            "The parts as entered fit this reading (ratio {low} to {high}). Leave the steps per millimetre.", **ends
        )
    if hits:
        return tr("Wrong parts that give a ratio of {low} to {high}, the likeliest first:", **ends)
    if abs(interval.ratio - 1) <= GROSS_RATIO:
        return tr(
            "Off by {percent} %: too little for a wrong part. Leave the steps per millimetre; a size trial tells more.",
            **ends,
        )
    return tr(
        "No single wrong part gives a ratio of {low} to {high}: two slips at once, or slip and lost steps. Count every "
        "part again, then measure at low speed.",
        **ends,
    )


@within_reach
def parts_behind_steps(drive: Drive, found_steps_mm: float) -> tuple[Mixup, ...]:
    """Return the single other parts that would give a value found in the controller, the likeliest first.

    Empty where the parts as entered give it, and where none does (then somebody tuned it).

    Raises:
        InputError: field `found_steps_mm`, not above 0; `kind`, for a rotary axis.
    """
    ratio = 1 / _force_ratio(drive, found_steps_mm)
    interval = RatioInterval(ratio, _FOUND_ROUNDING * ratio)
    if interval.holds(1.0):
        return ()
    parts = [candidate for candidate in slips_of(drive) if candidate.drive is not None]
    return tuple(
        Mixup(
            c.slip,
            c.entered,
            c.fitted,
            c.ratio,
            share,
            tr(
                "{found} steps/mm would belong to {cause}. {remedy}",
                found=short(found_steps_mm),
                cause=c.cause,
                remedy=c.remedy,
            ),
            c.drive,
        )
        for c, share in _ranked(parts, 1.0, interval)
    )
