"""What a person asks of a drive, and one sentence about what it allows."""

from __future__ import annotations

from dataclasses import dataclass

from core.words import Words


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a person asks of a drive; None for what was not typed. `load_ratio` is a share of the holding torque.

    `rod_mm`, `rod_measured_mm`, `radius_mm` belong to a delta; `at_radius_mm`, the place of a print, and
    `centre_off_mm`, how far the true turning centre lies from where it is set, to a rotary axis.
    """

    height_mm: float | None = None
    speed_mm_s: float | None = None
    step_rate_per_s: float | None = None
    supply_v: float | None = None
    current_a: float | None = None
    inductance_mh: float | None = None
    load_ratio: float | None = None
    belt_width_mm: float | None = None
    span_mm: float | None = None
    tone_hz: float | None = None
    rod_mm: float | None = None
    rod_measured_mm: float | None = None
    radius_mm: float | None = None
    at_radius_mm: float | None = None
    centre_off_mm: float | None = None
    extruder_steps_mm: float | None = None
    flow_mm3_s: float | None = None
    filament_mm: float | None = None


@dataclass(frozen=True, slots=True)
class DriveLimit:
    """One sentence, what it is about, and whether it asks for a change."""

    about: Words
    says: str
    asks: bool = False
