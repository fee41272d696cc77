"""A direct trial from what the page asks: bead and ladder from the flow trials, moves and check from the pieces.

Reference: `core.flow_trials.bead`, `core.flow_trials.top`, `core.pieces.toolpath`. Speeds of travel, Z, lap and first
layer: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from core.errors import InputError
from core.flow_trials.bead import Bead, BeadModel, bead_questions
from core.flow_trials.top import LADDER_RATIO
from core.pieces.toolpath import Laying, PathBead, Toolpath, lay
from core.pieces.toolpathcheck import Checked, Limits, check_program
from core.pieces.toolpathdraw import Setup
from core.pieces.toolpathtext import LAP_Z_MM, Heat, Program, heats, program_text
from core.pieces.toolpathtrials import TRIALS, Entry, TrialKind, draw_trial
from core.records.rows import Machine, Motion
from core.words import Words, tr

_TRAVEL_MM_S, _Z_MM_S, _LAP_MM_S, _FIRST_MM_S, _RETRACT_MM_S = 120.0, 8.0, 60.0, 20.0, 30.0


@dataclass(frozen=True, slots=True)
class PathRequest:
    """What the page asks for.

    Attributes:
        values: the trial's own entries by key.
        model: name of the bead model.
        flow_ratio: flow factor in force.
        relative: whether extrusion counts from move to move.
        remarks: further lines for the head of the program.
        nozzle_mm: bore of the nozzle, None where it is not known.
    """

    kind: TrialKind
    values: Mapping[str, float]
    width_mm: float
    height_mm: float
    model: str
    filament_mm: float
    flow_ratio: float
    nozzle_c: float
    bed_c: float
    fan_percent: float
    speed_mm_s: float
    retract_mm: float
    relative: bool
    start_text: str
    end_text: str
    remarks: tuple[str, ...] = ()
    nozzle_mm: float | None = None


@dataclass(frozen=True, slots=True)
class PlannedPath:
    """A direct trial, laid, written and checked; `minds` is what nothing forbids and somebody should look at."""

    program: Program
    checked: Checked
    minds: tuple[Words, ...]

    @property
    def toolpath(self) -> Toolpath:
        """The moves."""
        return self.program.toolpath


def limits_of(machine: Machine) -> Limits:
    """Return what a machine can bear, as far as it was entered; for the rest the usual limits of a plain one."""
    x, y, z = machine.travel_x_mm, machine.travel_y_mm, machine.travel_z_mm
    limits = Limits(high_mm=(x, y, z))
    if machine.motion is Motion.DELTA:  # its zero is the middle of a round bed
        limits = replace(limits, low_mm=(-x / 2, -y / 2, 0.0), high_mm=(x / 2, y / 2, z), round_bed=True)
    speeds = machine.limits.get("max_speed_mm_s") or {}
    level = [float(speeds[axis]) for axis in ("x", "y") if speeds.get(axis)]
    known: dict[str, Any] = {
        "hot_end_c": machine.limits.get("hot_end_limit_c"),
        "bed_c": machine.limits.get("bed_limit_c"),
        "rate_mm3_s": machine.limits.get("max_flow_mm3_s"),
        "speed_mm_s": min(level, default=None),
        "z_mm_s": speeds.get("z"),
        "feed_mm_s": speeds.get("e"),
    }
    return replace(limits, **{name: value for name, value in known.items() if value})


def plan_path(request: PathRequest, limits: Limits) -> PlannedPath:
    """Lay a direct trial in the middle of the bed, write it, and check what was written.

    Raises:
        InputError: at the entry that cannot be, or `template` for the machine's own text.
    """
    _refuse_entries(request, limits)
    plan, bead = TRIALS[request.kind], Bead(request.width_mm, request.height_mm, BeadModel(request.model))
    ratio = bead.filament_ratio(request.filament_mm, request.flow_ratio)
    middle = ((limits.low_mm[0] + limits.high_mm[0]) / 2, (limits.low_mm[1] + limits.high_mm[1]) / 2)
    setup = Setup(
        PathBead(bead.width_mm, bead.height_mm, bead.spacing_mm, ratio),
        filament_mm=request.filament_mm,
        speed_mm_s=request.speed_mm_s,
        first_mm_s=_FIRST_MM_S,
        middle_mm=middle,
        ladder_ratio=LADDER_RATIO,
    )
    drawn = draw_trial(request.kind, request.values, setup)
    laying = Laying(
        travel_mm_s=min(_TRAVEL_MM_S, limits.speed_mm_s),
        z_mm_s=min(_Z_MM_S, limits.z_mm_s),
        retract_mm=request.retract_mm if plan.heats else 0.0,
        retract_mm_s=min(_RETRACT_MM_S, limits.feed_mm_s),
        lift_mm=plan.lift_mm,
    )
    lap_z = LAP_Z_MM + request.values.get("pen_mm", 0.0)
    toolpath = Toolpath(plan.title, drawn.parts, lay(drawn.strokes, laying, lap_z), request.filament_mm)
    program = Program(
        toolpath,
        _heat(request),
        relative=request.relative,
        start_text=request.start_text,
        end_text=request.end_text,
        lap_mm_s=min(_LAP_MM_S, limits.speed_mm_s),
        z_mm_s=laying.z_mm_s,
        lap_z_mm=lap_z,
        remarks=request.remarks,
    )
    checked = check_program(program_text(program), limits, request.filament_mm)
    return PlannedPath(program, checked, _minds(request, bead))


def _minds(request: PathRequest, bead: Bead) -> tuple[Words, ...]:
    minds: tuple[Words, ...] = ()
    if TRIALS[request.kind].lays and request.nozzle_mm is not None:
        minds = bead_questions(bead, request.nozzle_mm)
    if heats(request.start_text):
        minds = (*minds, tr("The start text heats: the lap after it is not cold. Keep clear of nozzle and bed."))
    heat = _heat(request)
    if TRIALS[request.kind].lays and heat is not None and heat.bed_c == 0.0:
        minds = (*minds, tr("The bed stays cold, 0 °C: type what this filament wants; leave it for an unheated bed."))
    return minds


def _heat(request: PathRequest) -> Heat | None:
    plan = TRIALS[request.kind]
    if not plan.heats:
        return None
    return Heat(request.nozzle_c, request.bed_c, request.fan_percent) if plan.lays else Heat(request.nozzle_c, 0.0)


def _refuse_entries(request: PathRequest, limits: Limits) -> None:
    """Refuse at its field what the check would refuse anyway."""
    for entry in TRIALS[request.kind].entries:
        _refuse_entry(entry, request.values.get(entry.key))
    hot = TRIALS[request.kind].heats
    for field, what, value, most, unit in (
        ("nozzle_c", tr("hot end"), request.nozzle_c if hot else 0.0, limits.hot_end_c, "°C"),
        ("bed_c", tr("bed"), request.bed_c if hot else 0.0, limits.bed_c, "°C"),
        ("speed_mm_s", tr("nozzle"), request.speed_mm_s, limits.speed_mm_s, "mm/s"),
    ):
        if not 0 <= value <= most:
            raise InputError(
                field,
                tr("{value:g} {unit} is beyond the limit of the {what}, {most:g} {unit}. Lower it.",
                   value=value, unit=unit, what=what, most=most),
            )  # fmt: skip


def _refuse_entry(entry: Entry, value: float | None) -> None:
    if value is not None and entry.low <= value <= entry.high:
        return
    if entry.unit:
        says = tr("{label}: from {low:g} to {high:g} {unit} can be laid.",
                  label=entry.label, low=entry.low, high=entry.high, unit=entry.unit)  # fmt: skip
    else:
        says = tr("{label}: from {low:g} to {high:g} can be laid.", label=entry.label, low=entry.low, high=entry.high)
    raise InputError(entry.key, says)
