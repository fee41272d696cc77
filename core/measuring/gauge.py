"""What a thin thing is read with, caliper or micrometer, and the uncertainties of it that no averaging removes.

Reference: JCGM 100:2008 4.3 (type B). The uncertainties of a usual gauge: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from core.records.rows import Instrument
from core.words import Words, tr


class GaugeKind(StrEnum):
    """What is read with."""

    CALIPER = "caliper"
    MICROMETER = "micrometer"


def gauge_words(kind: GaugeKind) -> Words:
    """Return the name of a gauge for people."""
    return {GaugeKind.CALIPER: tr("caliper"), GaugeKind.MICROMETER: tr("micrometer")}[kind]


@dataclass(frozen=True, slots=True)
class Gauge:
    """A gauge with the uncertainties that no averaging removes; `on_record` tells a checked one from a usual one."""

    kind: GaugeKind
    u_zero_mm: float
    u_scale_ratio: float
    resolution_mm: float
    sd_hand_mm: float | None = None
    on_record: bool = False


_USUAL = {  # standard uncertainty of a length to 5 mm; common practice, no source
    GaugeKind.CALIPER: Gauge(GaugeKind.CALIPER, 0.012, 0.0, 0.01),
    GaugeKind.MICROMETER: Gauge(GaugeKind.MICROMETER, 0.003, 0.0, 0.001),
}


def gauge_of(kind: GaugeKind, instrument: Instrument | None = None) -> Gauge:
    """Return the gauge: the instrument where it is of that kind, else what is usual for the kind."""
    if instrument is None or instrument.kind != kind:
        return _USUAL[kind]
    return Gauge(
        kind,
        instrument.u_outside_zero_mm,
        instrument.u_scale_ratio,
        instrument.resolution_mm,
        instrument.sd_hand_mm,
        on_record=True,
    )


def usual_gauge_words(gauge: Gauge) -> Words:
    """Say that a usual gauge was taken, for want of a checked one."""
    return tr(
        "A usual {gauge} is taken, u {u:g} mm (common practice, no source): pick the checked one above.",
        u=gauge.u_zero_mm,
        gauge=gauge_words(gauge.kind),
    )
