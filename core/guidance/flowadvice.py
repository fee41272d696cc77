"""What follows from a flow trial: the flow factor, or the cause to look for first. Never a cure for a size."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from core.flow_trials import mass, top, wall
from core.flow_trials.bead import convert_flow_ratio, model_words
from core.flow_trials.combine import Flow, FlowAnswer, KnownFlow, combine_flow, conflict_words, known_here
from core.flow_trials.conditions import PrintConditions, percent_text, use_questions
from core.flow_trials.mass import Commanded, MassFlow, measure_mass
from core.flow_trials.plastic import Density, MassPerLength, typed_words
from core.flow_trials.top import TopFlow, measure_top
from core.flow_trials.wall import WallBox, WallFlow, measure_wall
from core.guidance.verdict import Advice, Setting
from core.quantity import Estimate, rounded_pair, told_value
from core.records.rows import Instrument
from core.words import Words, side_by_side, tr

FLOW_FACTOR = "flow_factor"  # name of the setting in force
WIDE_RATIO = 0.03


@dataclass(frozen=True, slots=True)
class Beside:
    """What other trials of this machine and lot say.

    Attributes:
        known: the newest estimate of each method.
        ceiling_mm3_s: the flow ceiling, None where it is not known.
        in_force: what the factor in force was found with, None where that is not known.
        far: a sentence where ceilings are known at other temperatures only.
    """

    known: tuple[KnownFlow, ...] = ()
    ceiling_mm3_s: float | None = None
    in_force: PrintConditions | None = None
    far: Words | None = None


@dataclass(frozen=True, slots=True, eq=False)
class FlowJudgement:
    """A flow trial, the estimates it was put together with, and what follows.

    Attributes:
        found: what the trial's own readings say.
        flow: all estimates that count, together.
        conditions: what the factor holds for.
        used: the earlier trials that count.
        advice: the verdict.
        mind: questions and limits, in sentences.
        method: name and version of the mathematics.
    """

    found: WallFlow | MassFlow | TopFlow
    flow: Flow
    conditions: PrintConditions
    used: tuple[int, ...]
    advice: tuple[Advice, ...]
    mind: tuple[Words, ...]
    method: str

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the trial's own factor and, where it can be relied on, that of all methods together."""
        if self.flow.answer in (FlowAnswer.LEAVE, FlowAnswer.CHANGE):
            return self.found.flow, self.flow.combined
        return (self.found.flow,)

    @property
    def new_ratio(self) -> float | None:
        """The factor to be set, as the verdict tells it; None where none is to be changed."""
        return told_value(self.flow.combined) if self.flow.answer is FlowAnswer.CHANGE else None


def judge_wall(
    wall_mm: Sequence[float],
    conditions: PrintConditions,
    box: WallBox,
    instrument: Instrument | None = None,
    beside: Beside | None = None,
) -> FlowJudgement:
    """Judge the walls of a box: from typed readings to a verdict; arguments as for `wall.measure_wall`.

    Raises:
        InputError: as `wall.measure_wall` does; `rate_mm3_s` above the flow ceiling.
    """
    return _judge(measure_wall(wall_mm, conditions, box, instrument), conditions, beside or Beside(), wall.METHOD)


def judge_mass(
    mass_g: Sequence[float],
    conditions: PrintConditions,
    commanded: Commanded,
    plastic: Density | MassPerLength,
    u_balance_g: float = 0.015,
    beside: Beside | None = None,
) -> FlowJudgement:
    """Judge weighed pieces; arguments as for `mass.measure_mass`.

    Raises:
        InputError: as `mass.measure_mass` does; `rate_mm3_s` above the flow ceiling.
    """
    found = measure_mass(mass_g, conditions, commanded, plastic, u_balance_g=u_balance_g)
    if not plastic.kept:
        found = replace(found, questions=(*found.questions, typed_words(plastic)))
    return _judge(found, conditions, beside or Beside(), mass.METHOD)


def judge_top(
    change_ratio: Sequence[float],
    score: Sequence[float],
    judge: Sequence[str],
    conditions: PrintConditions,
    beside: Beside | None = None,
) -> FlowJudgement:
    """Judge scored top pads; arguments as for `top.measure_top`.

    Raises:
        InputError: as `top.measure_top` does; `rate_mm3_s` above the flow ceiling.
    """
    return _judge(measure_top(change_ratio, score, judge, conditions), conditions, beside or Beside(), top.METHOD)


def _judge(
    found: WallFlow | MassFlow | TopFlow, conditions: PrintConditions, beside: Beside, method: str
) -> FlowJudgement:
    asks = conditions.questions(beside.ceiling_mm3_s)
    used, left_out = known_here(conditions, found.flow.name, beside.known)
    marks = _marks(beside.in_force, conditions)
    flow = combine_flow((found.flow, *(other.estimate for other in used)), conditions.in_force_ratio)
    return FlowJudgement(
        found=found,
        flow=flow,
        conditions=conditions,
        used=tuple(other.trial_id for other in used),
        advice=(_ADVICE[flow.answer](flow, conditions),),
        mind=(*found.questions, *asks, *((beside.far,) if beside.far else ()), *marks, *left_out),
        method=method,
    )


def _marks(tested: PrintConditions | None, here: PrintConditions) -> list[Words]:
    """Mark a factor in force that was found under other conditions."""
    if tested is None:
        return []
    asks = list(use_questions(tested, here.temperature_c, here.rate_mm3_s, here.bead.model))
    if tested.bead.model is not here.bead.model:
        found_as = replace(here.bead, model=tested.bead.model)
        asks.append(
            tr(
                "{old:g} by {tested} beads lays what {new:.3g} does by {used} ones of {width:g} × {height:g} mm.",
                old=here.in_force_ratio,
                tested=model_words(tested.bead.model),
                new=convert_flow_ratio(here.in_force_ratio, found_as, here.bead.model),
                used=model_words(here.bead.model),
                width=here.bead.width_mm,
                height=here.bead.height_mm,
            )
        )
    return [tr("The factor in force: {says}", says=says) for says in asks]


def _leave(flow: Flow, conditions: PrintConditions) -> Advice:
    because = tr(
        "The factor comes out as {factor}, {change} % from {old:g} in force ({methods}). Below 1.5 % nothing is gained "
        "by a change. {holds}",
        **_told(flow, conditions),
    )
    if flow.change.U > WIDE_RATIO:
        because = tr("{because} The interval is wide: weigh a piece to be surer.", because=because)
    return Advice(Setting.LEAVE, tr("Change nothing."), None, "", because, _untouched())


def _change(flow: Flow, conditions: PrintConditions) -> Advice:
    told = _told(flow, conditions)
    action = tr(
        "Change the flow factor from {old:g} to {factor}, then print the trial again and expect no change.", **told
    )
    face = conditions.bead.spacing_mm * flow.change.value / 2.0
    because = tr(
        "{change} % is asked for ({methods}). It moves the face of a wall by {face} mm: no cure for a size. {holds}",
        **told,
        face=f"{face:+.3f}".replace("-", "−"),
    )
    return Advice(Setting.FLOW_FACTOR, action, told_value(flow.combined), "1", because, _untouched())


def _go_back(flow: Flow, conditions: PrintConditions) -> Advice:
    action = tr(
        "Keep the factor of {old:g}. Go back to feed, filament diameter, nozzle and bead model.",
        **_told(flow, conditions),
    )
    because = tr(
        "A factor of {factor} ({methods}) is outside 0.85 to 1.10: something else is wrong.", **_told(flow, conditions)
    )
    return Advice(Setting.UNDECIDED, action, None, "", because, _untouched())


def _conflict(flow: Flow, conditions: PrintConditions) -> Advice:
    action = tr("Keep the factor of {old:g}; estimates that conflict are not averaged.", old=conditions.in_force_ratio)
    because = conflict_words(flow, conditions.bead, conditions.in_force_ratio)
    return Advice(Setting.UNDECIDED, action, None, "", because, _untouched())


def _unclear(flow: Flow, conditions: PrintConditions) -> Advice:
    told = _told(flow, conditions)
    action = tr(
        "Keep the factor of {old:g}. Weigh a piece, or read more places: the interval is too wide to decide.", **told
    )
    because = tr("The factor comes out as {factor}, {change} % from {old:g} in force ({methods}).", **told)
    return Advice(Setting.UNDECIDED, action, None, "", because, _untouched())


_ADVICE = {
    FlowAnswer.LEAVE: _leave,
    FlowAnswer.CHANGE: _change,
    FlowAnswer.GO_BACK: _go_back,
    FlowAnswer.CONFLICT: _conflict,
    FlowAnswer.UNCLEAR: _unclear,
}


def _told(flow: Flow, conditions: PrintConditions) -> dict[str, object]:
    value, U = rounded_pair(flow.combined.value, flow.combined.U)
    return {
        "factor": tr("{value} ± {U}", value=value.removeprefix("+"), U=U),
        "change": percent_text(flow.change.value),
        "old": conditions.in_force_ratio,
        "methods": _methods(flow.estimates),
        "holds": conditions.words(),
    }


def _methods(estimates: Sequence[Estimate]) -> Words:
    names = {"flow_ratio_wall": tr("wall"), "flow_ratio_mass": tr("mass"), "flow_ratio_top": tr("top pads")}
    return side_by_side((names[estimate.name] for estimate in estimates), ", ")


def _untouched() -> Words:
    return tr("Part size, steps per millimetre, contour offset: a flow factor never cures a size.")
