"""What follows from a ceiling trial: how fast this bead may be printed at each temperature, or how to go on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from core.errors import InputError
from core.flow_trials.bead import Bead
from core.flow_trials.ceiling import METHOD, Ceiling, CeilingAt, delivered_share, fit_ceiling, highest_speed_mm_s
from core.guidance.verdict import Advice, Setting
from core.quantity import Estimate, rounded_pair
from core.words import Words, tr


@dataclass(frozen=True, slots=True)
class Strands:
    """Strands extruded into air and weighed: rate, mass and temperature of each (n,), and what all have in common."""

    rate_mm3_s: Sequence[float]
    mass_g: Sequence[float]
    temperature_c: Sequence[float]
    length_mm: float
    mass_per_length_g_m: float
    hot_end_limit_c: float


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


def judge_ceiling(strands: Strands, bead: Bead, safety_ratio: float) -> CeilingJudgement:
    """Judge a trial: from weighed strands to a verdict.

    Args:
        strands: what was extruded and weighed.
        bead: whose highest printing speed is wanted.
        safety_ratio: share of the ceiling that is used.

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
    advice = tuple(_advice(part, speed, safety_ratio) for part, speed in zip(found.at, speeds, strict=True))
    return CeilingJudgement(found, speeds, advice, _mind(found))


def _advice(part: CeilingAt, speed: Estimate, safety_ratio: float) -> Advice:
    temperature = f"{part.temperature_c:.0f}"
    untouched = tr("Flow factor: more of it does not melt faster. Never above the hottest temperature tried here.")
    if part.ceiling is None:
        action = tr(
            "At {temperature} °C go on with faster strands; until then print this bead at most at {speed:.0f} mm/s.",
            temperature=temperature,
            speed=speed.value,
        )
        because = tr(
            "Up to {rate:g} mm³/s no drop of 2 % is proved, so the ceiling is not told.", rate=part.highest_mm3_s
        )
        return Advice(Setting.UNDECIDED, action, None, "", because, untouched)
    value, U = rounded_pair(speed.value, speed.U)
    ceiling, U_ceiling = rounded_pair(part.ceiling.value, part.ceiling.U)
    action = tr(
        "At {temperature} °C print this bead at most at {speed} ± {U} mm/s.",
        temperature=temperature,
        speed=value.removeprefix("+"),
        U=U,
    )
    because = tr(
        "Delivery falls by 2 % at {ceiling} ± {U} mm³/s ({count} strands); {percent:.0f} % of that is used.",
        ceiling=ceiling.removeprefix("+"),
        U=U_ceiling,
        count=part.rate_mm3_s.size,
        percent=100 * safety_ratio,
    )
    return Advice(Setting.PRINT_SPEED, action, speed.value, "mm/s", because, untouched)


def _mind(found: Ceiling) -> tuple[Words, ...]:
    says = [tr("In a print the back pressure of the nozzle lowers the ceiling by some 5 to 15 % (common practice).")]
    if found.trend is not None:
        value, U = rounded_pair(100 * found.trend.slope, 100 * found.trend.u_slope * 2)
        says.append(tr("The ceiling changes by {value} ± {U} % for 1 K.", value=value, U=U))
    return tuple(says)
