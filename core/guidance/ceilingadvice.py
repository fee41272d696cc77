"""What follows from a ceiling trial: how fast this bead may be printed at each temperature, or how to go on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from core.errors import InputError
from core.flow_trials.bead import Bead
from core.flow_trials.ceiling import (
    HOLDS_WITHIN_K,
    METHOD,
    Ceiling,
    CeilingAt,
    delivered_share,
    fit_ceiling,
    highest_speed_mm_s,
)
from core.flow_trials.conditions import PrintConditions, use_questions
from core.guidance.verdict import Advice, Setting
from core.quantity import Estimate, rounded_pair
from core.words import Words, side_by_side, tr

_Found = Sequence[tuple[CeilingAt, Estimate]]


@dataclass(frozen=True, slots=True)
class Strands:
    """Strands extruded into air and weighed: rate, mass and temperature of each (n,), and what all have in common."""

    rate_mm3_s: Sequence[float]
    mass_g: Sequence[float]
    temperature_c: Sequence[float]
    length_mm: float
    mass_per_length_g_m: float
    hot_end_limit_c: float
    nozzle_mm: float = 0.4

    def __post_init__(self) -> None:
        """Refuse what is no nozzle."""
        if not 0 < self.nozzle_mm <= 5:
            raise InputError(
                "nozzle_mm",
                tr("A bore of {bore:g} mm cannot be; type the one stamped on the nozzle.", bore=self.nozzle_mm),
            )


@dataclass(frozen=True, slots=True, eq=False)
class CeilingJudgement:
    """A ceiling trial, the speed each temperature allows, and what follows."""

    ceiling: Ceiling
    speeds: tuple[Estimate, ...]
    advice: tuple[Advice, ...]
    mind: tuple[Words, ...]

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the ceilings that were reached; for one temperature also the speed it allows."""
        found = self.ceiling.estimates()
        return (*found, *self.speeds) if len(self.ceiling.at) == 1 and found else found


def judge_ceiling(
    strands: Strands, bead: Bead, safety_ratio: float, factor_found: PrintConditions | None = None
) -> CeilingJudgement:
    """Judge a trial: from weighed strands to a verdict.

    Args:
        strands: what was extruded and weighed.
        bead: whose highest printing speed is wanted.
        safety_ratio: share of the ceiling that is used.
        factor_found: what the flow factor in force was found with; None where that is not known.

    Raises:
        InputError: as `ceiling.delivered_share`, `fit_ceiling` and `highest_speed_mm_s` do.
    """
    share = delivered_share(strands.mass_g, strands.length_mm, strands.mass_per_length_g_m)
    try:
        found = fit_ceiling(strands.rate_mm3_s, share, strands.temperature_c, hot_end_limit_c=strands.hot_end_limit_c)
    except InputError as error:
        if error.field != "x":
            raise
        says = tr("A knee is looked for in 5 strands at 4 rates or more for each temperature; extrude more.")
        raise InputError("mass_g", says, error.row) from error
    speeds = tuple(highest_speed_mm_s(part, bead.area_mm2, safety_ratio) for part in found.at)
    both = list(zip(found.at, speeds, strict=True))
    reached = [(part, speed) for part, speed in both if part.ceiling is not None]
    open_ = [(part, speed) for part, speed in both if part.ceiling is None]
    holds = tr("Holds for nozzle {nozzle:g} mm, ±5 K.", nozzle=strands.nozzle_mm)
    advice = [_reached(reached, safety_ratio, holds)] if reached else []
    advice += [_open(open_, holds)] if open_ else []
    return CeilingJudgement(found, speeds, tuple(advice), (*_mind(found), *_marks(found, safety_ratio, factor_found)))


def _reached(found: _Found, safety_ratio: float, holds: Words) -> Advice:
    """Say how fast the bead may be printed at each temperature whose ceiling was reached."""
    speeds = [
        tr("{speed} ± {U} mm/s at {temperature:.0f} °C", **_pair("speed", speed), temperature=part.temperature_c)
        for part, speed in found
    ]
    ceilings = [
        tr("{ceiling} ± {U} mm³/s at {temperature:.0f} °C", **_pair("ceiling", part.ceiling),
           temperature=part.temperature_c)
        for part, _ in found if part.ceiling is not None
    ]  # fmt: skip
    because = tr(
        "Delivery falls by 2 % at {ceilings} ({count} strands); {percent:.0f} % of that is used. {holds}",
        ceilings=side_by_side(ceilings, ", "),
        count=sum(part.rate_mm3_s.size for part, _ in found),
        percent=100 * safety_ratio,
        holds=holds,
    )
    action = tr("Print this bead at most at {speeds}.", speeds=side_by_side(speeds, ", "))
    amount = found[0][1].value if len(found) == 1 else None
    return Advice(Setting.PRINT_SPEED, action, amount, "mm/s" if amount else "", because, _untouched())


def _open(found: _Found, holds: Words) -> Advice:
    """Say how to go on where no fall is proved."""
    limits = [
        tr("{speed:.0f} mm/s at {temperature:.0f} °C", speed=speed.value, temperature=part.temperature_c)
        for part, speed in found
    ]
    rates = [
        tr("{rate:g} mm³/s at {temperature:.0f} °C", rate=part.highest_mm3_s, temperature=part.temperature_c)
        for part, _ in found
    ]
    action = tr(
        "Go on with faster strands; until then print this bead at most at {limits}.",
        limits=side_by_side(limits, ", "),
    )
    because = tr(
        "Up to {rates} no drop of 2 % is proved, so the ceiling is not told. {holds}",
        rates=side_by_side(rates, ", "),
        holds=holds,
    )
    return Advice(Setting.UNDECIDED, action, None, "", because, _untouched())


def _untouched() -> Words:
    return tr("Flow factor: more of it does not melt faster. Never above the hottest temperature tried here.")


def _pair(name: str, estimate: Estimate | None) -> dict[str, str]:
    assert estimate is not None  # of a ceiling that was reached
    value, U = rounded_pair(estimate.value, estimate.U)
    return {name: value.removeprefix("+"), "U": U}


def _mind(found: Ceiling) -> tuple[Words, ...]:
    says = [tr("In a print back pressure lowers the ceiling by some 5 to 15 % (common practice).")]
    if found.trend is not None:
        value, U = rounded_pair(100 * found.trend.slope, 100 * found.trend.u_slope * 2)
        says.append(tr("The ceiling changes by {value} ± {U} % for 1 K.", value=value, U=U))
    return tuple(says)


def _marks(found: Ceiling, safety_ratio: float, tested: PrintConditions | None) -> tuple[Words, ...]:
    """Mark that the flow factor in force was found cooler, hotter or slower than the speeds told here."""
    if tested is None:
        return ()
    near = [part for part in found.at if abs(part.temperature_c - tested.temperature_c) <= HOLDS_WITHIN_K]
    part = near[0] if near else found.at[0]
    fastest = safety_ratio * (part.ceiling.value if part.ceiling else part.highest_mm3_s)
    asks = use_questions(tested, round(part.temperature_c, 1), round(fastest, 1))
    return tuple(tr("The flow factor in force: {says}", says=says) for says in asks)
