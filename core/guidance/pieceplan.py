"""A test piece planned for the picked machine and instrument: what to print, how often to read, what will be known.

What the drives repeat after (whole turns, whole electrical cycles) becomes the step of the centre distances; how far
the hand scatters comes from the instrument's last check. Where nobody knows, a usual value stands in: 0.02 mm for one
reading, 0.01 mm for the placement of a wall, a pulley of 40 mm (common practice, no source).
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from enum import StrEnum

from core.errors import InputError
from core.guidance.names import parameter_words
from core.machine_geometry.drive import Drive, DriveKind, drive_from_parts
from core.machine_geometry.resolution import clean_heights_mm, whole_travel
from core.part_size.features import FeatureKind
from core.part_size.planner import (
    ExpectedU,
    Place,
    Scatter,
    choose_times,
    expected_uncertainties,
)
from core.part_size.power import chance_to_see, readings_needed, shortest_length_mm
from core.pieces.bounds import Bounds
from core.pieces.catalogue import SIZE_SETS, plan_set
from core.pieces.piece import Gauge, PrintSet
from core.records.rows import Instrument, Machine, Motion
from core.words import Words, tr

__all__ = [
    "ExpectedU", "PiecePlan", "PieceWishes", "Share", "bounds_of", "diagonal_gauges", "pillar_sides_mm", "plan_piece",
    "size_gauges",
]  # fmt: skip

USUAL_READING_MM, USUAL_FACE_MM, USUAL_LAYER_MM = 0.02, 0.01, 0.2
_FEWEST_READINGS, _SPARE_READINGS = 4, 2
_BEST_RATIO = 6e-4  # fit, caliper, 2 K, run-out, next print: of caliper work; common practice, no source
_DIAGONALS = ("outer_diagonal", "inner_diagonal")
_ALL_BUT_SURE = 99.5


class Share(StrEnum):
    """How the readings are shared out."""

    EVEN = "even"
    ALL = "all"
    SCALE = "scale"


@dataclass(frozen=True, slots=True)
class PieceWishes:
    """What is wanted of a piece.

    Attributes:
        rounds: readings in all are as many rounds of all gauges.
        share: how these readings are shared out.
        scale_ratio: the smallest scale error that matters.
    """

    key: str
    bounds: Bounds = Bounds()
    sd_reading_mm: float = USUAL_READING_MM
    sd_face_mm: float = USUAL_FACE_MM
    share: Share = Share.EVEN
    rounds: int = 1
    scale_ratio: float = 0.001


@dataclass(frozen=True, slots=True)
class PiecePlan:
    """The answer: what to print, how often to read each gauge, what will be known, and sentences about it."""

    planned: PrintSet
    times: tuple[int, ...]
    expected: tuple[ExpectedU, ...]
    says: tuple[Words, ...]

    @property
    def readings(self) -> int:
        """Readings in all."""
        return sum(self.times)


def bounds_of(machine: Machine | None, bounds: Bounds | None = None) -> Bounds:
    """Return the bounds with bed, drives and layer of a machine; what it does not say stays.

    Raises:
        InputError: a travel that suits no piece.
    """
    bounds = bounds or Bounds()
    if machine is None:
        return bounds
    bounds = replace(
        bounds, bed_x_mm=machine.travel_x_mm, bed_y_mm=machine.travel_y_mm, bed_z_mm=machine.travel_z_mm
    )
    for axis, bed in (("x", machine.travel_x_mm), ("y", machine.travel_y_mm)):
        parts = machine.drives.get(axis)
        known = parts and machine.motion is not Motion.DELTA  # carriages of a delta do not go along x and y
        turn = _turn_mm(drive_from_parts(parts), bed) if parts and known else 0.0
        bounds = replace(bounds, turn_x_mm=turn) if axis == "x" else replace(bounds, turn_y_mm=turn)
    parts = machine.drives.get("z")
    stacks = drive_from_parts(parts) if parts else None
    heights = clean_heights_mm(stacks) if stacks and stacks.kind is not DriveKind.ROTARY else ()
    if heights:
        clean = min(heights, key=lambda height: abs(height - USUAL_LAYER_MM))
        bounds = replace(bounds, layer_mm=round(clean, 6), first_layer_mm=round(clean, 6))
    return bounds


def _turn_mm(drive: Drive, bed_mm: float) -> float:
    """Return the travel after which turn and cycle begin anew; the turn alone where both do not fit; 0 for none."""
    return 0.0 if drive.kind is DriveKind.ROTARY else float(whole_travel(drive, bed_mm)[0])


def scatter_of(wishes: PieceWishes, instrument: Instrument | None) -> Scatter:
    """Return the scatter that a plan reckons with.

    Raises:
        InputError: field `sd_reading_mm` or `sd_face_mm`.
    """
    return Scatter(wishes.sd_reading_mm, wishes.sd_face_mm, instrument)


def size_gauges(planned: PrintSet) -> tuple[Gauge, ...]:
    """Return the gauges that a size trial takes, in the order of reading."""
    kinds = set(FeatureKind)
    return tuple(g for g in planned.gauges if g.kind in kinds) if planned.key in SIZE_SETS else ()


def diagonal_gauges(planned: PrintSet) -> tuple[Gauge, ...]:
    """Return the gauges that a trial of squareness takes, in the order of reading."""
    return tuple(g for g in planned.gauges if g.kind in _DIAGONALS)


def pillar_sides_mm(planned: PrintSet) -> tuple[float, float]:
    """Return the centre distances of the pillars along x and y: the mean over and between them."""
    x, y = (
        [g.nominal_mm for g in planned.gauges if g.axis == axis and g.kind in (FeatureKind.OUTSIDE, FeatureKind.GAP)]
        for axis in "xy"
    )
    return (max(x) + min(x)) / 2, (max(y) + min(y)) / 2


def plan_piece(wishes: PieceWishes, instrument: Instrument | None = None) -> PiecePlan:
    """Plan a piece.

    Raises:
        InputError: the field that leaves no room, or that cannot be.
    """
    planned = plan_set(wishes.key, wishes.bounds)
    gauges = size_gauges(planned)
    if not gauges:
        return PiecePlan(planned, tuple(wishes.rounds for _ in planned.gauges), (), planned.minds)
    places = [Place(FeatureKind(g.kind), g.axis, g.nominal_mm, g.faces) for g in gauges]
    scatter = scatter_of(wishes, instrument)
    times = _times(places, wishes, scatter)
    expected = expected_uncertainties(places, times, scatter)
    of = dict(zip((g.name for g in gauges), times, strict=True))
    return PiecePlan(
        planned,
        tuple(of.get(g.name, wishes.rounds) for g in planned.gauges),
        expected,
        (*planned.minds, *_says(places, expected, wishes, instrument)),
    )


def _times(places: list[Place], wishes: PieceWishes, scatter: Scatter) -> tuple[int, ...]:
    if not 1 <= wishes.rounds <= 20:
        raise InputError("rounds", tr("{count} rounds cannot be; type 1 to 20.", count=wishes.rounds))
    even = (wishes.rounds,) * len(places)
    told = [e.name for e in expected_uncertainties(places, even, scatter) if e.name.startswith("scale_")]
    if wishes.share is Share.EVEN or (wishes.share is Share.SCALE and not told):
        return even
    wanted = told if wishes.share is Share.SCALE else []
    readings = wishes.rounds * len(places)
    return tuple(int(n) for n in choose_times(places, readings, scatter, wanted=wanted))


def _says(
    places: list[Place], expected: tuple[ExpectedU, ...], wishes: PieceWishes, instrument: Instrument | None
) -> list[Words]:
    says: list[Words] = []
    scale = max((e for e in expected if e.name.startswith("scale_")), key=lambda e: e.u, default=None)
    if scale is None:
        return says
    chance = 100.0 * chance_to_see(wishes.scale_ratio, scale.u)
    says.append(
        tr(
            "A {name} of {percent:g} % is told from none {chance} times in 100.",
            name=parameter_words(scale.name),
            percent=100.0 * wishes.scale_ratio,
            chance=tr("more than 99") if chance > _ALL_BUT_SURE else f"{chance:.0f}",
        )
    )
    if 2.0 * scale.floor_u > wishes.scale_ratio:
        says.append(
            tr(
                "No repeat takes its expanded uncertainty below {floor:.3f} %: that is the instrument and where "
                "walls stand. Take a longer piece or a better instrument.",
                floor=200.0 * scale.floor_u,
            )
        )
    elif 2.0 * scale.u < _BEST_RATIO:
        says.append(
            tr(
                "Temperature, run-out and the next print come on top: caliper work knows no scale better than "
                "± {best:g} %.",
                best=100.0 * _BEST_RATIO,
            )
        )
    says += _says_of_lengths(places, wishes, instrument)
    return says


def _says_of_lengths(places: list[Place], wishes: PieceWishes, instrument: Instrument | None) -> list[Words]:
    says = []
    pairs = [p.nominal_mm for p in places if p.kind is FeatureKind.NOTCH]
    if pairs:
        needed = readings_needed(wishes.scale_ratio, max(pairs), wishes.sd_reading_mm)
        says.append(
            tr(
                "In pairs over {length:g} mm, {needed} readings see it nine times in ten; take {more}, on two prints.",
                length=max(pairs),
                needed=needed,
                more=max(_FEWEST_READINGS, needed + _SPARE_READINGS),
            )
        )
    fixed = math.hypot(instrument.u_outside_zero_mm, instrument.u_inside_zero_mm) if instrument else 0.0
    if fixed > 0:
        says.append(
            tr(
                "On a length below {length:.0f} mm no repeat shows it, for the zero of the jaws.",
                length=shortest_length_mm(wishes.scale_ratio, fixed / math.sqrt(2.0)),
            )
        )
    return says
