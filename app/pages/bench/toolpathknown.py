"""What machine and lot say about a path: limits, flow factor in force, the machine's own text."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

from app.context import Context, Level
from app.words import shown
from core.errors import InputError, StoreError
from core.quantity import Estimate
from core.records.rows import Machine, Trial
from core.words import tr

if TYPE_CHECKING:
    from core.guidance.directtrials import PathRequest, PlannedPath
    from core.pieces.toolpathcheck import Limits

METHOD = "toolpath 1"
INVENTED = tr("DEMO SHOP, invented data: limits and temperatures of no real machine. Do not run it on yours.")

_PLAIN_MACHINE = Machine("")
_IN_FORCE = {"flow_ratio": "flow_factor", "nozzle_c": "nozzle_temperature", "bed_c": "bed_temperature"}


def limits_known(context: Context) -> Limits:
    """Return the limits of the picked machine, of a plain one where none is picked."""
    from core.guidance.directtrials import limits_of

    return limits_of(context.machine or _PLAIN_MACHINE)


def nozzle_of(context: Context) -> float | None:
    """Return the bore of the picked machine's nozzle, in mm; None where it was not entered."""
    bore = (context.machine or _PLAIN_MACHINE).limits.get("nozzle_mm")
    return float(bore) if bore else None


def refuse_above_entered(context: Context, typed: Limits) -> None:
    """Refuse limits beyond those that were entered for the picked machine; where none was entered any may be typed.

    Raises:
        InputError: at the field of that limit.
    """
    if context.machine is None:
        return
    entered, known = context.machine.limits, limits_known(context)
    for key, field, of, unit in (
        ("hot_end_limit_c", "hot_end_c", "hot_end_c", "°C"),
        ("bed_limit_c", "bed_limit_c", "bed_c", "°C"),
        ("max_speed_mm_s", "speed_limit_mm_s", "speed_mm_s", "mm/s"),
        ("max_flow_mm3_s", "rate_mm3_s", "rate_mm3_s", "mm³/s"),
    ):
        most, value = getattr(known, of), getattr(typed, of)
        if entered.get(key) and value > most:
            raise InputError(
                field,
                tr("{value:g} {unit} is above the {most:g} {unit} entered for this machine; change it there first.",
                   value=value, most=most, unit=unit),
            )  # fmt: skip


def own_text(context: Context) -> tuple[str, str]:
    """Return start and end text of the picked machine, the plainest where it has none."""
    from core.pieces.toolpathtext import END_TEXT, START_TEXT

    templates = (context.machine or _PLAIN_MACHINE).templates
    return str(templates.get("start") or START_TEXT), str(templates.get("end") or END_TEXT)


def laying_known(context: Context) -> dict[str, float | str]:
    """Return the diameter of the picked lot, and flow factor and temperatures in force, as far as they are known."""
    machine, lot = context.machine, context.lot
    known: dict[str, float | str] = {}
    if lot is not None and lot.nominal_diameter_mm is not None:
        known["filament_mm"] = lot.nominal_diameter_mm
    if machine is None or machine.id is None or lot is None:
        return known
    try:
        now = {field: context.store.in_force(name, machine.id, lot.id) for field, name in _IN_FORCE.items()}
    except StoreError as error:
        context.say(shown(error.message), Level.ERROR)
        return known
    return known | {field: setting.new for field, setting in now.items() if setting is not None}


def remarks_of(context: Context) -> tuple[str, ...]:
    """Return what is said in the head of a file: that it is of the demo shop where it is, machine and lot."""
    machine, lot = context.machine, context.lot
    says = [INVENTED] if context.store.is_demo else []
    says += [tr("machine: {name}", name=machine.name)] if machine else []
    return (*says, *([tr("filament lot: {name}", name=lot.name)] if lot else []))


def keep_mass_path(context: Context, request: PathRequest, planned: PlannedPath) -> bool:
    """Keep what the path of a mass box commands, for the page Mass, and return whether that was done."""
    from core.pieces.toolpathtrials import TrialKind

    machine, lot = context.machine, context.lot
    if request.kind is not TrialKind.MASS_BOX or machine is None or lot is None:
        return False
    commanded = Estimate("path_filament", planned.toolpath.commanded_mm(), 0.0, math.inf, "mm")
    trial = Trial(
        "toolpaths",
        machine.id,
        lot.id,
        conditions={"trial": str(request.kind), "filament_mm": request.filament_mm},
        estimates=(commanded,),
        method=METHOD,
    )
    try:
        kept = context.store.keep(trial)
    except (InputError, StoreError) as error:
        context.say(shown(error.message), Level.ERROR)
        return False
    context.kept.emit(kept)
    return True


def keep_text(context: Context, start: str, end: str) -> bool:
    """Keep start and end text with the picked machine, and return whether that was done."""
    machine = context.machine
    if machine is None:
        return False
    try:
        context.store.change_machine(replace(machine, templates={**machine.templates, "start": start, "end": end}))
    except (InputError, StoreError) as error:
        context.say(shown(error.message), Level.ERROR)
        return False
    context.machines_changed.emit()
    return True
