"""What an answer may hold: finite numbers everywhere, but for the few places that document another."""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Iterator, Mapping
from typing import Any

import numpy as np

# Field or property: which of nan and the infinities its docstring allows, and why.
ALLOWED: dict[str, str] = {
    "Estimate.dof": "inf",  # GUM: known without doubt
    "Combined.dof": "inf",
    "Budget.dof": "inf",
    "Component.dof": "inf",
    "Part.dof": "inf",
    "Ladder.dof": "inf",
    "Prediction.dof": "inf",
    "Mate.dof": "inf",
    "RatioInterval.dof": "inf",
    "Diagonals.dof": "inf",
    "ScatteredFit.dof": "nan inf",
    "ScatteredFit.again_dof": "inf",
    "Knee.at": "inf",  # open on this side: the readings do not end it
    "Knee.low": "inf",
    "Knee.high": "inf",
    "CeilingAt.low_mm3_s": "inf",
    "CeilingAt.high_mm3_s": "inf",
    "Decay.low": "inf",
    "Decay.high": "inf",
    "Success.low": "inf",
    "Success.high": "inf",
    "Soak.high_s": "inf",
    "Ladder.low": "inf",
    "Ladder.high": "inf",
    "Length.step_mm": "nan",  # a fraction has no last digit
    "NextReading.u_now": "nan",  # before it is told
    "NextReading.u_then": "nan",
    "Spread.sd_within_mm": "nan",  # one reading each
    "Shares.u_mm": "nan",  # nothing is known of it
    "Shares.explained_u_mm": "nan",
    "FeatureMeans.sd_repeat_mm": "nan",
    "ScatteredFit.variance_mm2": "nan",
    "ScatteredFit.next_mm2": "nan",
    "ScatteredFit.feature_sd_mm": "nan",
    "Diagnostic.value": "nan",
    "Diagnostic.limit": "nan",
    "Checked.low_mm": "nan",
    "Checked.high_mm": "nan",
    "View.shade": "nan",
    "Phase.centre": "nan",  # no limits yet
    "Phase.mean_moving_range": "nan",
    "Phase.sigma": "nan",
    "Phase.limits": "nan",
    "Phase.moving_range_limit": "nan",
    "IndividualsChart.moving_range": "nan",
    "EwmaChart.smoothed": "nan",
    "EwmaChart.half_width": "nan",
    "Line.dof": "inf",
    "SeriesPoint.dof": "inf",
    "BedPlane.dof": "inf",
    "Path.wanted_mm_s": "inf",  # as fast as the machine goes
    "Path.radius_mm": "inf",  # straight
    "LayerTimes.floor_mm_s": "inf",  # no layer waits
    "Flow.limit": "inf",  # one trial agrees with itself
}


def faults_of(answer: Any, where: str = "answer", depth: int = 0) -> Iterator[str]:
    """Yield every number in an answer that is not finite where it should be."""
    if isinstance(answer, (bool, str, bytes, int)) or answer is None or depth > 8:
        return
    if isinstance(answer, float | np.floating):
        if not math.isfinite(answer):
            yield f"{where} is {answer}"
    elif isinstance(answer, np.ndarray):
        if answer.dtype.kind == "f" and not np.isfinite(answer).all():
            yield f"{where} holds {answer[~np.isfinite(answer)][0]}"
    elif dataclasses.is_dataclass(answer) and not isinstance(answer, type):
        yield from _faults_of_dataclass(answer, where, depth)
    elif isinstance(answer, Mapping):
        for key, value in answer.items():
            yield from faults_of(value, f"{where}[{key}]", depth + 1)
    elif isinstance(answer, (tuple, list)):
        for place, value in enumerate(answer):
            yield from faults_of(value, f"{where}[{place}]", depth + 1)


def _faults_of_dataclass(answer: Any, where: str, depth: int) -> Iterator[str]:
    kind = type(answer)
    names = [field.name for field in dataclasses.fields(answer)]
    names += [name for name, value in vars(kind).items() if isinstance(value, property) and not name.startswith("_")]
    for name in names:
        allowed = ALLOWED.get(f"{kind.__name__}.{name}", "")
        for fault in faults_of(getattr(answer, name), f"{where}.{name}", depth + 1):
            if fault.rpartition(" ")[2].lstrip("-") not in allowed.split():
                yield f"{fault} ({kind.__name__}.{name})"
                break
    estimates = getattr(kind, "estimates", None)
    if callable(estimates):
        for estimate in answer.estimates():
            yield from faults_of(estimate, f"{where}.estimates()[{estimate.name}]", depth + 1)


# Calls whose whole answer may be another: what their docstring says.
CALLS = {
    "core.part_size.sizeerror.SizeError.covariance": "nan",  # nothing is known of the scatter
    "core.measuring.ladder.Ladder.at": "nan",  # there is no curve
    "core.machine_geometry.delta.carriage_height_mm": "nan",  # out of reach of the rod
    "core.measuring.gum.effective_dofs": "inf",
    "core.measuring.gum.welch_satterthwaite": "inf",
    "core.measuring.gum.type_b_dof": "inf",
    "core.measuring.tolerance.tolerance_mm": "nan",  # beyond the table
    "core.motion_trials.crossedbelts.motor_speeds_mm_s": "inf",  # no limit
    "core.motion_trials.crossedbelts.motor_accelerations_mm_s2": "inf",
    "core.motion_trials.profile.corner_speed_mm_s": "inf",  # straight on
    "core.motion_trials.profile.corner_speeds_mm_s": "inf",
}


def allowed(name: str, fault: str) -> bool:
    """Whether the docstring of a call allows this in its answer."""
    return fault.rpartition(" ")[2].lstrip("-") in CALLS.get(name, "").split()
