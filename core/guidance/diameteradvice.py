"""A trial of diameter, mass per length and density of a filament: from typed readings to verdict and what to mind."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from core.errors import InputError
from core.filament.density import measure_density
from core.filament.diameter import (
    METHOD,
    Diameter,
    equal_readings,
    measure_diameter,
)
from core.filament.massperlength import diameter_from_mass, measure_mass_per_length
from core.filament.ways import Way, WayName, plan_by_gauge, plan_by_mass, way_of
from core.guidance.sectionadvice import SetNow, advise_section, best_way
from core.guidance.verdict import Advice
from core.measuring.gauge import GaugeKind, gauge_of, usual_gauge_words
from core.quantity import Estimate, size_text
from core.records.rows import Instrument
from core.words import Words, tr

FILAMENT_DIAMETER = "filament_diameter"  # name of the setting in force
_USUAL_DENSITY = Estimate("density", 1.2, 0.1, math.inf, "g/cm3")  # of a plastic nobody named


@dataclass(frozen=True, slots=True)
class DiameterReadings:
    """All readings of a trial; what was not read is empty.

    Attributes:
        nominal_mm: diameter as claimed.
        in_force_mm: diameter the printing program works with now.
        gauge: what the pairs were read with.
        first_mm, second_mm: (n,) pairs by place, None where a reading is missing.
        mass_g, length_mm: (m,) weighed pieces.
        air_g, water_g: (p,) samples weighed in air and in water.
        water_c: temperature of the water.
        u_balance_g, u_length_mm: standard uncertainties of one weighing and of one length.
    """

    nominal_mm: float
    in_force_mm: float
    gauge: GaugeKind = GaugeKind.CALIPER
    first_mm: tuple[float | None, ...] = ()
    second_mm: tuple[float | None, ...] = ()
    mass_g: tuple[float, ...] = ()
    length_mm: tuple[float, ...] = ()
    air_g: tuple[float, ...] = ()
    water_g: tuple[float, ...] = ()
    water_c: float = 20.0
    u_balance_g: float = 0.01
    u_length_mm: float = 0.5


@dataclass(frozen=True, slots=True)
class KnownDensity:
    """A density from elsewhere: of the lot's kept trial, or usual for the material where `trial_id` is None."""

    estimate: Estimate
    trial_id: int | None = None


@dataclass(frozen=True, slots=True, eq=False)
class DiameterJudgement:
    """What was read, what it gives, and what follows.

    Attributes:
        readings: as judged.
        pairs: what the pairs give, or None.
        mass_per_length, density: measured here, or None.
        ways: the three ways to the cross-section, used or planned.
        best: the used way that counts, or None.
        advice: the verdict.
        mind: what to look at, in sentences.
        used: kept trials this one relies on.
        new_mm: the diameter in force after this trial; None where nothing is decided.
    """

    readings: DiameterReadings
    pairs: Diameter | None
    mass_per_length: Estimate | None
    density: Estimate | None
    ways: tuple[Way, ...]
    best: Way | None
    advice: tuple[Advice, ...]
    mind: tuple[Words, ...]
    used: tuple[int, ...]
    new_mm: float | None

    @property
    def method(self) -> str:
        """Name and version of the mathematics."""
        return METHOD

    def estimates(self) -> tuple[Estimate, ...]:
        """Return diameter and area_ratio of the way that counts, then what else was measured."""
        section = (self.best.diameter, self.best.area) if self.best else ()
        shape = (self.pairs.ovality, self.pairs.spread) if self.pairs else ()
        return (*section, *shape, *(e for e in (self.mass_per_length, self.density) if e is not None))


def judge_diameter(
    readings: DiameterReadings, instrument: Instrument | None = None, known_density: KnownDensity | None = None
) -> DiameterJudgement:
    """Judge a trial: from typed readings to a verdict.

    Args:
        readings: all that was typed.
        instrument: what is picked; it counts where it is of the gauge's kind.
        known_density: density of the lot where none was measured here.

    Raises:
        InputError: field `readings` where there is none; else as the functions of `core.filament` do.
    """
    gauge = gauge_of(readings.gauge, instrument)
    pairs = _pairs(readings, instrument)
    density, mass_per_length = _density(readings), _mass_per_length(readings)
    if pairs is None and density is None and mass_per_length is None:
        raise InputError("readings", tr("No reading yet."))
    plastic = density or (known_density.estimate if known_density else None)
    relies = known_density is not None and density is None and mass_per_length is not None
    ways = _ways(readings, instrument, pairs, mass_per_length, plastic)
    mind = [*(pairs.questions if pairs else ())]
    if pairs and not gauge.on_record:
        mind.append(usual_gauge_words(gauge))
    mind += _doubts_of_density(density, mass_per_length, known_density)
    asked = SetNow(readings.nominal_mm, readings.in_force_mm)
    advice, new_mm = advise_section(asked, pairs, ways, _label_count(readings))
    return DiameterJudgement(
        readings=readings,
        pairs=pairs,
        mass_per_length=mass_per_length,
        density=density,
        ways=ways,
        best=best_way(ways),
        advice=advice,
        mind=tuple(mind),
        used=(known_density.trial_id,) if relies and known_density and known_density.trial_id is not None else (),
        new_mm=new_mm,
    )


def _density(readings: DiameterReadings) -> Estimate | None:
    if not readings.air_g:
        return None
    return measure_density(readings.air_g, readings.water_g, readings.water_c, u_balance_g=readings.u_balance_g)


def _mass_per_length(readings: DiameterReadings) -> Estimate | None:
    if not readings.mass_g:
        return None
    return measure_mass_per_length(
        readings.mass_g,
        readings.length_mm,
        readings.nominal_mm,
        u_balance_g=readings.u_balance_g,
        u_length_mm=readings.u_length_mm,
    )


def _doubts_of_density(
    density: Estimate | None, mass_per_length: Estimate | None, known: KnownDensity | None
) -> Iterator[Words]:
    """Say what speaks against the density: the one measured here, or the one that a mass relies on."""
    if density is not None:
        if known is not None and _far(density, known.estimate):
            yield _far_density(density, known)
    elif mass_per_length is not None:
        if known is None:
            yield tr("Without the density a mass tells no diameter: weigh a sample in water.")
        elif known.trial_id is None:
            yield _usual_plastic(known.estimate)


def _pairs(readings: DiameterReadings, instrument: Instrument | None) -> Diameter | None:
    """Return what the pairs give; a few of them beside other readings wait without stopping those."""
    if not any(reading is not None for reading in (*readings.first_mm, *readings.second_mm)):
        return None
    gauge = gauge_of(readings.gauge, instrument)
    try:
        return measure_diameter(readings.first_mm, readings.second_mm, readings.nominal_mm, gauge)
    except InputError as error:
        few = error.field == "second_mm" and error.row is None
        if few and (readings.mass_g or readings.air_g):
            return None
        raise


def _ways(
    readings: DiameterReadings,
    instrument: Instrument | None,
    pairs: Diameter | None,
    mass_per_length: Estimate | None,
    plastic: Estimate | None,
) -> tuple[Way, ...]:
    ways = []
    for kind in GaugeKind:
        if pairs is not None and kind is readings.gauge:
            ways.append(way_of(WayName(kind), pairs.diameter, readings.nominal_mm, measured=True))
        else:
            ways.append(plan_by_gauge(gauge_of(kind, instrument), readings.nominal_mm))
    if mass_per_length is not None and plastic is not None:
        by_mass = diameter_from_mass(mass_per_length, plastic)
        return (*ways, way_of(WayName.MASS, by_mass, readings.nominal_mm, measured=True))
    density = plastic or _USUAL_DENSITY
    return (*ways, plan_by_mass(density, readings.nominal_mm, readings.u_balance_g, readings.u_length_mm))


def _usual_plastic(density: Estimate) -> Words:
    return tr("Density as usual, {density}, unverified: weigh a sample in water.", density=size_text(density))


def _far(found: Estimate, known: Estimate) -> bool:
    return abs(found.value - known.value) > math.hypot(found.U, known.U)


def _far_density(found: Estimate, known: KnownDensity) -> Words:
    """Question a density that is not that of the lot's earlier trial or of its material."""
    said = {"found": size_text(found), "known": size_text(known.estimate)}
    if known.trial_id is None:
        return tr("The density of {found} is far from the usual {known}: bubbles, a sign, or is it filled?", **said)
    return tr("The density of {found} is far from {known} of trial {number}: bubbles, a sign, or another lot?",
              number=known.trial_id, **said)  # fmt: skip


def _label_count(readings: DiameterReadings) -> int:
    """Return how many readings there are where all are equal, else 0."""
    read = [reading for reading in (*readings.first_mm, *readings.second_mm) if reading is not None]
    return len(read) if equal_readings(readings.first_mm, readings.second_mm) else 0
