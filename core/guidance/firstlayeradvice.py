"""What follows from pads of one layer: another height offset, or what is to be set right before it.

In order: pads that cannot be relied on are read or printed again, the flow comes before the gap, the plane of the bed
comes before the offset, and a pad within 0.02 mm is left alone.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from core.errors import InputError
from core.flow_trials.conditions import LEAST_FACTOR, MOST_FACTOR
from core.guidance.verdict import Advice, Setting
from core.machine_geometry.firstlayer import (
    ENOUGH,
    GOOD_MM,
    METHOD,
    FirstLayer,
    Printed,
    Spread,
    measure_first_layer,
)
from core.measuring.gauge import Gauge, GaugeKind, gauge_of, usual_gauge_words
from core.quantity import Estimate, rounded_pair, size_text, told_value, value_text
from core.records.rows import Instrument
from core.words import Words, tr

HEIGHT_OFFSET = "height_offset"  # name of the setting in force
INSIDE_MM = 3.0  # a rim may stand proud up to here
FLOW_OFF_RATIO = 0.015  # a factor this near its result is in force
_U_FLOW_RATIO = 0.05 / math.sqrt(3.0)  # where nobody measured it: within 5 %, common practice, no source


@dataclass(frozen=True, slots=True)
class PadReadings:
    """What was read off the pads, and what held for them.

    Attributes:
        thickness_mm: (n,) by place.
        printed: first-layer height commanded, height offset in force, bore of the nozzle.
        x_mm, y_mm: (n,) places on the bed, nan for one not told; empty for none.
        inside_mm: how far from the edge of a pad the readings were taken, at least.
        gauge: what they were read with.
        warm: whether the pads were still warm.
    """

    thickness_mm: Sequence[float]
    printed: Printed
    x_mm: Sequence[float] = ()
    y_mm: Sequence[float] = ()
    inside_mm: float = 5.0
    gauge: GaugeKind = GaugeKind.MICROMETER
    warm: bool = False


@dataclass(frozen=True, slots=True)
class FlowBeside:
    """The flow factor that a kept trial found for this machine and lot, and the one in force."""

    found: Estimate
    in_force_ratio: float

    def __post_init__(self) -> None:
        """Refuse what no trial finds and no machine has in force."""
        if not LEAST_FACTOR <= self.found.value <= MOST_FACTOR:
            says = tr("The flow factor {value:g}, kept last for this machine and lot, cannot be and is left out: "
                      "withdraw its trial.", value=self.found.value)  # fmt: skip
            raise InputError("flow", says)
        if not LEAST_FACTOR <= self.in_force_ratio <= MOST_FACTOR:
            says = tr("The flow factor in force, {value:g}, cannot be: put the right one in force on page Logbook, 1 "
                      "for 100 %.", value=self.in_force_ratio)  # fmt: skip
            raise InputError("in_force_ratio", says)

    @property
    def off(self) -> Estimate:
        """Share by which too much is laid: the factor in force against the one found."""
        share = self.in_force_ratio / self.found.value
        return Estimate("flow_off", share - 1.0, share * self.found.u / self.found.value, self.found.dof, "1")


@dataclass(frozen=True, slots=True)
class BesidePads:
    """What other kept trials say: flatness of the bed, flow, and their ids."""

    flatness: Estimate | None = None
    flow: FlowBeside | None = None
    used: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class FirstLayerJudgement:
    """A trial of the first layer, what follows, what to mind, and the kept trials it relies on."""

    readings: PadReadings
    pads: FirstLayer
    advice: tuple[Advice, ...]
    mind: tuple[Words, ...] = ()
    used: tuple[int, ...] = ()
    method: str = field(default=METHOD, init=False)

    @property
    def new_offset_mm(self) -> float | None:
        """The offset to be set, as the verdict tells it; None where none is to be changed."""
        return told_value(self.pads.offset) if self.advice[0].setting is Setting.HEIGHT_OFFSET else None

    def estimates(self) -> tuple[Estimate, ...]:
        """Return the estimates of the trial."""
        return self.pads.estimates()


def judge_first_layer(
    readings: PadReadings, instrument: Instrument | None = None, beside: BesidePads | None = None
) -> FirstLayerJudgement:
    """Judge a trial: from typed readings to a verdict.

    Args:
        readings: what was typed.
        instrument: what is picked; it counts where it is of the gauge's kind.
        beside: what other kept trials say; None for nothing.

    Raises:
        InputError: as `measure_first_layer` does.
    """
    beside = beside or BesidePads()
    gauge = gauge_of(readings.gauge, instrument)
    pads = measure_first_layer(
        readings.thickness_mm,
        readings.printed,
        Instrument("", str(gauge.kind), gauge.resolution_mm, gauge.u_zero_mm, u_scale_ratio=gauge.u_scale_ratio),
        u_flow_ratio=beside.flow.off.u if beside.flow else _U_FLOW_RATIO,
        x_mm=readings.x_mm,
        y_mm=readings.y_mm,
        flatness=beside.flatness,
    )
    advice = _first(readings, pads, beside.flow)
    return FirstLayerJudgement(readings, pads, (advice,), _minds(pads, gauge, beside), beside.used)


def _first(readings: PadReadings, pads: FirstLayer, flow: FlowBeside | None) -> Advice:
    """Return the first thing to do."""
    if readings.warm:
        action = tr("Let the pads cool, then read them again.")
        return _advice(Setting.UNDECIDED, action, tr("A warm pad gives way under the gauge and reads thin."))
    if not readings.inside_mm >= INSIDE_MM:
        action = tr("Read the pads again, {inside:g} mm or more inside their edges.", inside=INSIDE_MM)
        because = tr("The rim of a pad stands proud, or is pressed flat: it does not tell the gap.")
        return _advice(Setting.UNDECIDED, action, because)
    if flow is not None and abs(flow.off.value) > max(FLOW_OFF_RATIO, flow.off.U):
        return _flow_first(flow)
    if pads.fall is not None and pads.fall.matters:
        return _plane_first(pads, pads.fall.size)
    if pads.good:
        return _leave(pads)
    return _change(readings, pads) if pads.error.significant else _unclear(readings, pads)


def _flow_first(flow: FlowBeside) -> Advice:
    factor, _ = rounded_pair(flow.found.value, flow.found.U)
    action = tr(
        "Set the flow factor from {old:g} to {new} first, then print the pads again.",
        old=flow.in_force_ratio,
        new=factor.removeprefix("+"),
    )
    because = tr("The factor in force lays {off} against the one found: a pad tells its gap only where the plastic "
                 "just fills it.", off=value_text(flow.off))  # fmt: skip
    return _advice(Setting.CHECK_FLOW, action, because)


def _plane_first(pads: FirstLayer, fall: Estimate) -> Advice:
    action = tr("Bed plane first: level the bed, then print the pads again.")
    because = tr(
        "The pads differ by {fall} from one side to the other; one offset cannot be right for both ends. {mean}",
        fall=size_text(fall),
        mean=_mean(pads),
    )
    return _advice(Setting.LEVEL_BED, action, because)


def _leave(pads: FirstLayer) -> Advice:
    because = tr("{mean} Within ±{limit:g} mm nothing is gained by a change.", mean=_mean(pads), limit=GOOD_MM)
    if not pads.proved_good:
        because = tr("{because} The interval reaches beyond: read more places to be surer.", because=because)
    return _advice(Setting.LEAVE, tr("Change nothing."), _with_spread(pads, because))


def _change(readings: PadReadings, pads: FirstLayer) -> Advice:
    value, U = rounded_pair(pads.offset.value, pads.offset.U)
    says = {"old": f"{readings.printed.offset_mm:g}".replace("-", "−"), "new": value.removeprefix("+"), "U": U,
            "by": rounded_pair(abs(pads.error.value), pads.error.U)[0].removeprefix("+"),
            "layer": readings.printed.layer_mm, "limit": GOOD_MM}  # fmt: skip
    if pads.error.value < 0:
        action = tr(
            "Change the height offset from {old} to {new} ± {U} mm, which raises the nozzle by {by} mm; then print "
            "and read new pads and expect {layer:g} ± {limit:g} mm.", **says
        )  # fmt: skip
    else:
        action = tr(
            "Change the height offset from {old} to {new} ± {U} mm, which lowers the nozzle by {by} mm; then print "
            "and read new pads and expect {layer:g} ± {limit:g} mm.", **says
        )  # fmt: skip
    because = tr("{mean} A larger offset holds the nozzle farther from the bed.", mean=_mean(pads))
    return _advice(Setting.HEIGHT_OFFSET, action, _with_spread(pads, because), pads.offset.value)


def _unclear(readings: PadReadings, pads: FirstLayer) -> Advice:
    action = tr("Keep the height offset of {old} mm and read more places.",
                old=f"{readings.printed.offset_mm:g}".replace("-", "−"))  # fmt: skip
    because = tr("{mean} More than ±{limit:g} mm, but within its uncertainty.", mean=_mean(pads),
                 limit=GOOD_MM)  # fmt: skip
    return _advice(Setting.UNDECIDED, action, _with_spread(pads, because))


def _mean(pads: FirstLayer) -> Words:
    return tr("{count} places: {off} against the {layer:g} mm commanded.", count=pads.thickness_mm.size,
              off=value_text(pads.error), layer=pads.layer_mm)  # fmt: skip


def _with_spread(pads: FirstLayer, because: Words) -> Words:
    """Add that the bed makes the places differ, where it does."""
    if pads.spread is not Spread.BY_BED:
        return because
    return tr("{because} The spread between places is no more than the flatness of the bed makes.", because=because)


def _advice(setting: Setting, action: Words, because: Words, amount: float | None = None) -> Advice:
    untouched = tr("Z steps per millimetre, flow factor, height of the first layer: none of them sets the gap.")
    if setting is Setting.CHECK_FLOW:
        untouched = tr("Z steps per millimetre, height offset, height of the first layer: the flow comes first.")
    return Advice(setting, action, amount, "" if amount is None else "mm", because, untouched)


def _minds(pads: FirstLayer, gauge: Gauge, beside: BesidePads) -> tuple[Words, ...]:
    minds = []
    if not gauge.on_record:
        minds.append(usual_gauge_words(gauge))
    if gauge.kind is GaugeKind.CALIPER:
        minds.append(tr("The jaws of a caliper tilt on a thin pad: read it with a micrometer."))
    if beside.flow is None:
        minds.append(
            tr("No flow result of this machine and lot is kept; it is taken to be right within 5 %. Do Wall or Mass "
               "with this lot, then read pads again.")
        )  # fmt: skip
    if pads.thickness_mm.size < ENOUGH:
        minds.append(tr("Only {count} places: read five, the middle and the corners.", count=pads.thickness_mm.size))
    if pads.spread is Spread.NO_FLATNESS:
        minds.append(tr("No flatness of this bed is kept: whether it explains the spread, page Bed plane tells."))
    if pads.spread is Spread.MORE_THAN_BED:
        minds.append(
            tr("The places differ more than the flatness of the bed explains: look for plastic below the plate, a "
               "pressed rim, an edge that lifted.")
        )  # fmt: skip
    if pads.fall is None:
        minds.append(tr("Whether the bed is tilted is not told: type X and Y of four places or more, not in a line."))
    elif pads.fall.proved and not pads.fall.matters:
        fall = size_text(pads.fall.size)
        minds.append(tr("The pads fall by {fall}, a tilt too small to matter.", fall=fall))
    return tuple(minds)
