"""Flow factor from the wall of an open box, one or two beads thick.

    W = mean reading - d2(n) sd_lat                        what the jaws read too much on n ridged layers
    one bead   A = h(W - c h)
    two beads  A = h(W - c h)/2      where they fill their spacing p, else   A = h(W - p - c h)
    k_new = k A_t / A

Symbols: W wall, w_t width commanded, h layer height, c = 1 - pi/4, A cross-section laid for one path, A_t that asked
for by the bead model (h(w_t - c h) or w_t h), k flow factor in force, sd_lat standard deviation of the sideways offset
of one layer, d2(n) mean range of n normal values. A wall is laid half-round at its sides whatever a program counts.

Reference: plane geometry; `core.measuring.normalrange` for d2; JCGM 100:2008 4.2, 4.3.7 (rectangular), 5.1.6 and table
E.1. Offsets of layers up to 0.01 mm, 5 layers, 8 places: common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from core.errors import InputError
from core.flow_trials.bead import FLAT_SHARE
from core.flow_trials.conditions import PrintConditions
from core.measuring.gum import combine
from core.measuring.normalrange import mean_range_ratio
from core.measuring.reach import within_reach
from core.quantity import Estimate
from core.records.rows import Instrument
from core.words import Words, tr

METHOD = "wall 1"
NAME = "flow_ratio_wall"
FEW_LAYERS = 5
USUAL_OFFSET_MM = 0.01  # sd_lat lies somewhere below where nobody measured it
ENOUGH_PLACES = 4
_OFFSET_KNOWN_RATIO = 0.24  # JCGM 100:2008 table E.1: a standard deviation from ten values
_MOST_LAYERS = 1000
_SLIP_FACTOR = 4.0
_USUAL_STEP_MM = 0.01
USUAL_U_MM = 0.012  # of a caliper that nobody checked, zero and scale; common practice, no source

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class WallBox:
    """How a wall box was printed and read: beads side by side, layers under the jaws, and sd_lat (None: not known).

    Raises:
        InputError: the field that cannot be.
    """

    beads: int = 1
    layers_in_contact: int = FEW_LAYERS
    sd_lateral_mm: float | None = None

    def __post_init__(self) -> None:
        """Refuse what cannot be."""
        if self.beads not in (1, 2):
            raise InputError("beads", tr("A wall box is one or two beads thick; choose one of them."))
        if not 1 <= self.layers_in_contact <= _MOST_LAYERS:
            raise InputError(
                "layers_in_contact",
                tr("{count} layers under the jaws cannot be; divide the jaw's length by the layer height.",
                   count=self.layers_in_contact),
            )  # fmt: skip
        if self.sd_lateral_mm is not None and not 0 <= self.sd_lateral_mm <= 0.1:
            raise InputError(
                "sd_lateral_mm",
                tr(
                    "A spread of layer offsets of {value:g} mm is not between 0 and 0.1; leave it empty if it was not "
                    "measured.",
                    value=self.sd_lateral_mm,
                ),
            )

    def over_read_mm(self) -> tuple[float, float]:
        """Return what ridges add to a reading, and its standard uncertainty.

        Where sd_lat was not measured it lies anywhere between 0 and 0.01 mm (JCGM 100:2008 4.3.7).
        """
        d2 = mean_range_ratio(self.layers_in_contact)
        if self.sd_lateral_mm is None:
            return d2 * USUAL_OFFSET_MM / 2.0, d2 * USUAL_OFFSET_MM / math.sqrt(12.0)
        return d2 * self.sd_lateral_mm, d2 * self.sd_lateral_mm * _OFFSET_KNOWN_RATIO


@dataclass(frozen=True, slots=True, eq=False)
class WallFlow:
    """The answer of a wall box.

    Attributes:
        flow: the factor that lays the commanded cross-section, flow_ratio_wall.
        reading_mm: (n,) walls as read.
        reading_ratio: (n,) the factor each reading asks for by itself.
        wall_mm: mean reading without the over-read, with its standard uncertainty `u_wall_mm`.
        right_wall_mm: what the wall reads, ridges taken off, when the flow is right.
        over_read_mm: taken off the mean reading.
        questions: what to mind.
    """

    flow: Estimate
    reading_mm: Floats
    reading_ratio: Floats
    wall_mm: float
    u_wall_mm: float
    right_wall_mm: float
    over_read_mm: float
    questions: tuple[Words, ...]


@within_reach
def measure_wall(
    wall_mm: Sequence[float], conditions: PrintConditions, box: WallBox, instrument: Instrument | None = None
) -> WallFlow:
    """Return the flow factor that the walls of a box ask for.

    Args:
        wall_mm: (n,) readings at the middle of the faces, two at least.
        conditions: what held while the box was printed.
        box: its thickness and how the jaws touched it.
        instrument: its zero, scale and resolution; None takes those of a usual caliper.

    Raises:
        InputError: field `wall_mm`, with the row where it is one; `beads` where the wall looks like another number.
    """
    walls = _checked(wall_mm, conditions, box)
    excess, u_excess = box.over_read_mm()
    wall = float(np.mean(walls)) - excess
    if wall - FLAT_SHARE * conditions.bead.height_mm <= 0:
        raise InputError(
            "layers_in_contact",
            tr("Ridges would make {excess:.3f} mm of these walls, nothing is left; check the layers under the jaws.",
               excess=excess),
        )  # fmt: skip
    random, dof, shared = _of_readings(walls, instrument)
    u_wall = combine([random, *shared, u_excess], [dof, *(math.inf for _ in shared), math.inf])
    asked_mm2 = conditions.in_force_ratio * conditions.bead.area_mm2
    laid, slope_mm = _laid_mm2(np.array([wall]), conditions, box)
    value = asked_mm2 / float(laid[0])
    u = value * float(slope_mm[0]) / float(laid[0]) * u_wall.u
    return WallFlow(
        flow=Estimate(NAME, value, u, u_wall.dof, "1"),
        reading_mm=walls,
        reading_ratio=asked_mm2 / _laid_mm2(walls - excess, conditions, box)[0],
        wall_mm=wall,
        u_wall_mm=u_wall.u,
        right_wall_mm=right_wall_mm(conditions, box),
        over_read_mm=excess,
        questions=tuple(_questions(walls, box, instrument)),
    )


def right_wall_mm(conditions: PrintConditions, box: WallBox) -> float:
    """Return the smooth wall that the commanded cross-section makes: n A_t/h + c h."""
    return box.beads * conditions.bead.spacing_mm + FLAT_SHARE * conditions.bead.height_mm


def _laid_mm2(wall_mm: Floats, conditions: PrintConditions, box: WallBox) -> tuple[Floats, Floats]:
    """Return the cross-section laid for one path (n,) and its slope against the wall (n,), mm²/mm."""
    h, spacing = conditions.bead.height_mm, conditions.bead.spacing_mm
    across = np.maximum(wall_mm - FLAT_SHARE * h, 1e-9)
    if box.beads == 1:
        return h * across, np.full(across.shape, h)
    full = across >= 2.0 * spacing  # else a gap stays between the two, and each outer side moves with its own bead
    laid = np.where(full, h * across / 2.0, h * np.maximum(across - spacing, 1e-9))
    return laid, np.where(full, h / 2.0, h)


def _of_readings(walls: Floats, instrument: Instrument | None) -> tuple[float, float, list[float]]:
    """Return the random part of the mean with its degrees of freedom, and what all readings share."""
    n, sd = walls.size, float(np.std(walls, ddof=1))
    step = (instrument.resolution_mm if instrument else 0.0) or _USUAL_STEP_MM
    rounding = 0.0 if sd >= step / 2.0 else step / math.sqrt(12.0)  # a wider scatter averages the last digit
    shared = [rounding]
    if instrument is None:
        shared.append(USUAL_U_MM)
    else:
        shared += [instrument.u_outside_zero_mm, instrument.u_scale_ratio * float(np.mean(walls))]
    return sd / math.sqrt(n), n - 1.0, shared


def _checked(wall_mm: ArrayLike, conditions: PrintConditions, box: WallBox) -> Floats:
    walls = np.array(wall_mm, dtype=float)
    right = right_wall_mm(conditions, box)
    for row, wall in enumerate(walls):
        if not right / _SLIP_FACTOR < wall < right * _SLIP_FACTOR:
            raise InputError(
                "wall_mm",
                tr(
                    "{wall:g} mm for a wall of {right:.2f} mm: decimal mark, unit, or another feature? Retype it or "
                    "leave the row empty.",
                    wall=float(wall),
                    right=right,
                ),
                row,
            )
    if walls.size < 2:
        raise InputError("wall_mm", tr("One place is not a wall; read eight, four at least, at the middle of faces."))
    _check_beads(float(np.mean(walls)), conditions, box)
    return walls


def _check_beads(mean_mm: float, conditions: PrintConditions, box: WallBox) -> None:
    """Refuse a wall that is nearer to the other number of beads."""
    right = {beads: right_wall_mm(conditions, WallBox(beads)) for beads in (1, 2)}
    between = math.sqrt(right[1] * right[2])
    values = {"wall": mean_mm, "width": conditions.bead.width_mm}
    if box.beads == 1 and mean_mm > between:
        raise InputError(
            "beads", tr("Wall {wall:.2f} mm on a path of {width:g} mm: two beads? Choose the two-bead wall.", **values)
        )
    if box.beads == 2 and mean_mm < between:
        raise InputError(
            "beads", tr("Wall {wall:.2f} mm on paths of {width:g} mm: one bead? Choose the one-bead wall.", **values)
        )


def _questions(walls: Floats, box: WallBox, instrument: Instrument | None) -> list[Words]:
    asks = []
    if box.layers_in_contact > FEW_LAYERS and box.sd_lateral_mm != 0:
        most = mean_range_ratio(box.layers_in_contact) * (box.sd_lateral_mm or USUAL_OFFSET_MM)
        asks.append(
            tr(
                "The jaws touch {count} layers: ridges may add {most:.3f} mm. Read with blade edges on at most 5 "
                "layers, or trust the mass.",
                count=box.layers_in_contact,
                most=most,
            )
        )
    if walls.size < ENOUGH_PLACES:
        asks.append(tr("Only {count} places: read eight, away from seam and corners.", count=int(walls.size)))
    if instrument is None:
        asks.append(
            tr("A usual caliper is taken, u {u:g} mm (common practice, no source): pick the checked one above.",
               u=USUAL_U_MM)
        )  # fmt: skip
    return asks
