"""What follows from diameter, mass per length and density of a filament: the diameter to set, or what to doubt first.

The way with the smallest uncertainty counts; ways that contradict one another are not averaged.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from core.errors import InputError
from core.filament.density import measure_density
from core.filament.diameter import (
    METHOD,
    Diameter,
    GaugeKind,
    area_ratio,
    equal_readings,
    gauge_of,
    gauge_words,
    measure_diameter,
)
from core.filament.massperlength import diameter_from_mass, measure_mass_per_length
from core.filament.ways import CHANGE_MM, Way, WayName, plan_by_gauge, plan_by_mass, way_of
from core.guidance.verdict import Advice, Setting
from core.quantity import Estimate, rounded_pair, value_text
from core.records.rows import Instrument
from core.words import Words, tr

FILAMENT_DIAMETER = "filament_diameter"  # name of the setting in force
OVAL_MM, OVAL_RETURN_MM, SPREAD_MM = 0.05, 0.10, 0.02  # common practice, no source
_USUAL_DENSITY = Estimate("density", 1.2, 0.1, math.inf, "g/cm3")  # of a plastic nobody named
_SETTABLE_DIGITS = 3


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
    density = (
        measure_density(readings.air_g, readings.water_g, readings.water_c, u_balance_g=readings.u_balance_g)
        if readings.air_g
        else None
    )
    mass_per_length = (
        measure_mass_per_length(
            readings.mass_g,
            readings.length_mm,
            readings.nominal_mm,
            u_balance_g=readings.u_balance_g,
            u_length_mm=readings.u_length_mm,
        )
        if readings.mass_g
        else None
    )
    if pairs is None and density is None and mass_per_length is None:
        raise InputError("readings", tr("No reading yet."))
    plastic = density or (known_density.estimate if known_density else None)
    relies = known_density is not None and density is None and mass_per_length is not None
    ways = _ways(readings, instrument, pairs, mass_per_length, plastic)
    best = min((way for way in ways if way.measured), key=lambda way: way.diameter.U, default=None)
    mind = [*(pairs.questions if pairs else ())]
    if pairs and not gauge.on_record:
        mind.append(_usual_gauge(readings.gauge, gauge.u_zero_mm))
    if relies and known_density is not None and known_density.trial_id is None:
        mind.append(_usual_plastic(known_density.estimate))
    if mass_per_length is not None and plastic is None:
        mind.append(tr("Without the density a mass tells no diameter: weigh a sample in water."))
    advice, new_mm = _advise(readings, pairs, ways, best)
    return DiameterJudgement(
        readings=readings,
        pairs=pairs,
        mass_per_length=mass_per_length,
        density=density,
        ways=ways,
        best=best,
        advice=advice,
        mind=tuple(mind),
        used=(known_density.trial_id,) if relies and known_density and known_density.trial_id is not None else (),
        new_mm=new_mm,
    )


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


def _advise(
    readings: DiameterReadings, pairs: Diameter | None, ways: tuple[Way, ...], best: Way | None
) -> tuple[tuple[Advice, ...], float | None]:
    """Return the verdict, the diameter's part first unless the readings are in doubt, and the diameter in force."""
    shape = _shape(pairs)
    if best is None:
        because = tr("Nothing here tells the cross-section yet: read pairs of diameters, or weigh a length.")
        return (*shape, _undecided(tr("Keep {old:g} mm.", old=readings.in_force_mm), because)), None
    if equal_readings(readings.first_mm, readings.second_mm):
        because = tr("{count} equal readings are rather the label than the gauge.", count=_count(readings))
        return (_undecided(tr("Read again and type what the gauge shows."), because),), None
    used = [way for way in ways if way.measured]
    if len(used) > 1 and _apart(used[0].diameter, used[1].diameter):
        return (*shape, _conflict(used[0].diameter, used[1].diameter, readings)), None
    advice, new_mm = _diameter(readings, best)
    return (*shape, advice), new_mm


def _diameter(readings: DiameterReadings, best: Way) -> tuple[Advice, float | None]:
    d, old = best.diameter, readings.in_force_mm
    off_mm = abs(d.value - old)
    said = {"d": _plain(d), "old": old, "area": _plain(area_ratio(d, old))}
    if off_mm <= CHANGE_MM or off_mm <= d.U:
        because = (
            tr("{d}, {area} of the cross-section set: within 0.02 mm; the flow factor takes up the rest.", **said)
            if off_mm <= CHANGE_MM
            else tr("{d}, {area} of the cross-section set: not told from it.", **said)
        )
        return Advice(Setting.LEAVE, tr("Leave {old:g} mm.", old=old), None, "", because, _untouched()), old
    if not best.enough:
        because = tr(
            "{d}: the cross-section would be {area} of the one set, but this way cannot tell 0.02 mm from none.", **said
        )
        action = tr("Keep {old:g} mm; read with a micrometer, or weigh 1 m with a known density.", old=old)
        return _undecided(action, because), None
    from_nominal_mm = abs(d.value - readings.nominal_mm)
    measured = from_nominal_mm > CHANGE_MM and from_nominal_mm > d.U
    new_mm = round(d.value, _SETTABLE_DIGITS) if measured else readings.nominal_mm
    because = tr("{d}: the cross-section is {area} of the one set.", **said)
    action = tr("Set {new:.3f} mm instead of {old:g} mm.", new=new_mm, old=old)
    return Advice(Setting.FILAMENT_DIAMETER, action, new_mm, "mm", because, _untouched()), new_mm


def _shape(pairs: Diameter | None) -> tuple[Advice, ...]:
    """Return what ovality and spread say about the lot; nothing where they are usual."""
    if pairs is None:
        return ()
    oval, spread = pairs.ovality, pairs.spread
    said = {"oval": _plain(oval), "spread": _plain(spread), "flow": f"{100.0 * (1.0 - pairs.one_way_ratio):.1f}"}
    because = tr(
        "Ovality {oval}, spread along the length {spread}. Set from one-way readings the flow would be up to {flow} % "
        "low.",
        **said,
    )
    if oval.value - oval.U > OVAL_RETURN_MM:
        return (_lot(tr("Return it: more than 0.1 mm out of round jams and makes bands."), because),)
    if oval.value > OVAL_MM or spread.value > SPREAD_MM:
        return (_lot(tr("Not for tolerance work: above 0.05 mm ovality or 0.02 mm spread."), because),)
    return ()


def _apart(first: Estimate, second: Estimate) -> bool:
    return abs(first.value - second.value) > math.hypot(first.U, second.U)


def _conflict(by_gauge: Estimate, by_mass: Estimate, readings: DiameterReadings) -> Advice:
    because = tr(
        "The gauge says {gauge}, the mass says {mass}. A strand with three lobes has one width all round and fools any "
        "jaws; or length, density or zero are off.",
        gauge=_plain(by_gauge),
        mass=_plain(by_mass),
    )
    action = tr("Keep {old:g} mm; weigh another metre and check the zero.", old=readings.in_force_mm)
    return _undecided(action, because)


def _lot(action: Words, because: Words) -> Advice:
    return Advice(Setting.FILAMENT_LOT, action, None, "", because, _untouched())


def _undecided(action: Words, because: Words) -> Advice:
    return Advice(Setting.UNDECIDED, action, None, "", because, _untouched())


def _untouched() -> Words:
    return tr("Flow factor and extruder steps: they do not change the strand.")


def _usual_gauge(kind: GaugeKind, u_mm: float) -> Words:
    return tr(
        "A usual {gauge} is taken, u {u:g} mm (common practice, no source): pick the checked one above.",
        u=u_mm,
        gauge=gauge_words(kind),
    )


def _usual_plastic(density: Estimate) -> Words:
    return tr("Density as usual, {density}, unverified: weigh a sample in water.", density=_plain(density))


def _plain(estimate: Estimate) -> str:
    """Return the text of a size, without a plus."""
    if estimate.unit == "1":
        value, U = rounded_pair(100.0 * estimate.value, 100.0 * estimate.U)
        return f"{value.removeprefix('+')} ± {U} %"
    return value_text(estimate).removeprefix("+")


def _count(readings: DiameterReadings) -> int:
    return sum(reading is not None for reading in (*readings.first_mm, *readings.second_mm))
