"""Bead geometry: width, height, cross-section, spacing, and the filament a path needs.

    obround    A = (w - h)h + pi h^2/4 = h(w - c h),  c = 1 - pi/4     flat above and below, half-round sides
    rectangle  A = w h
    spacing    A/h, at which neighbouring beads leave no gap
    filament   e = k A/A_f for each mm of path

Symbols: w width, h height, A cross-section, A_f cross-section of the filament, k flow factor. A flow factor is told
with its bead model only: the same number asks for 10.5 % more plastic with rectangles of 0.45 x 0.20 mm.

Reference: plane geometry. Limits (w to twice the bore, h to three quarters of it): common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from core.errors import InputError
from core.measuring.finite import finite_in
from core.measuring.reach import within_reach
from core.words import Words, tr

FLAT_SHARE = 1.0 - math.pi / 4.0  # c: what a half-round side lacks against a square one, in h^2
WIDEST_BORES = 2.0
HIGHEST_BORES = 0.75
_LEAST_MM = 1e-3  # no nozzle lays a micrometre
_MOST_MM = 20.0


class BeadModel(StrEnum):
    """The shape a slicing program counts a bead as."""

    OBROUND = "obround"
    RECTANGLE = "rectangle"


def model_words(model: BeadModel) -> Words:
    """Return the name of a bead model for people."""
    return {BeadModel.OBROUND: tr("obround"), BeadModel.RECTANGLE: tr("rectangle")}[model]


@dataclass(frozen=True, slots=True)
class Bead:
    """A bead as it is commanded: width and height in mm, and the model it is counted by.

    Raises:
        InputError: fields `width_mm` or `height_mm`, for a bead that cannot be.
    """

    width_mm: float
    height_mm: float
    model: BeadModel = BeadModel.OBROUND

    def __post_init__(self) -> None:
        """Refuse what no nozzle lays."""
        for field, value in (("height_mm", self.height_mm), ("width_mm", self.width_mm)):
            if not _LEAST_MM <= value <= _MOST_MM:
                raise InputError(
                    field, tr("A bead of {value:g} mm cannot be; type above 0 and at most 20 mm.", value=value)
                )
        if self.width_mm < self.height_mm:
            raise InputError(
                "width_mm",
                tr(
                    "A bead {width:g} mm wide and {height:g} mm high is not pressed flat; the width must be at least "
                    "the layer height.",
                    width=self.width_mm,
                    height=self.height_mm,
                ),
            )

    @property
    def area_mm2(self) -> float:
        """Cross-section by its own model."""
        return area_mm2(self.width_mm, self.height_mm, self.model)

    @property
    def spacing_mm(self) -> float:
        """Distance of neighbouring paths that leaves no gap: A/h."""
        return self.area_mm2 / self.height_mm

    @finite_in("factor")
    def filament_ratio(self, filament_mm: float, factor: float = 1.0) -> float:
        """Return the filament for each mm of path, e = k A/A_f.

        Args:
            filament_mm: diameter of the filament.
            factor: flow factor k.

        Raises:
            InputError: field `filament_mm` not above zero.
        """
        return factor * self.area_mm2 / strand_area_mm2(filament_mm, "filament_mm")


@within_reach
@finite_in("width_mm", "height_mm")
def area_mm2(width_mm: float, height_mm: float, model: BeadModel) -> float:
    """Return the cross-section of a bead; see the module for the formulas."""
    if model is BeadModel.RECTANGLE:
        return width_mm * height_mm
    return height_mm * (width_mm - FLAT_SHARE * height_mm)


@within_reach
@finite_in("bead_area_mm2", "height_mm")
def width_from_area_mm(bead_area_mm2: float, height_mm: float, model: BeadModel = BeadModel.OBROUND) -> float:
    """Return the width of the bead with this cross-section; the inverse of `area_mm2`.

    Raises:
        InputError: field `height_mm` not above zero; `bead_area_mm2` for less than a round strand of that height.
    """
    if not height_mm > 0:
        raise InputError("height_mm", tr("The layer height must be above 0 mm."))
    flat = FLAT_SHARE * height_mm if model is BeadModel.OBROUND else 0.0
    width = bead_area_mm2 / height_mm + flat
    if not width >= height_mm * (1.0 - 1e-12):
        raise InputError(
            "bead_area_mm2",
            tr(
                "{area:.4g} mm² does not fill a bead {height:g} mm high; lower the layer.",
                area=bead_area_mm2,
                height=height_mm,
            ),
        )
    return width


@within_reach
def strand_area_mm2(diameter_mm: float, field: str = "diameter_mm") -> float:
    """Return the cross-section of a round strand, of filament or of a bridge: pi d^2/4.

    Raises:
        InputError: the given field, for a diameter not above zero.
    """
    if not 0 < diameter_mm <= _MOST_MM:
        raise InputError(field, tr("A diameter of {value:g} mm cannot be; type it in mm.", value=diameter_mm))
    return math.pi * diameter_mm**2 / 4.0


@within_reach
@finite_in("flow_ratio")
def convert_flow_ratio(flow_ratio: float, bead: Bead, model: BeadModel) -> float:
    """Return the factor that lays the same plastic when the bead is counted by another model: k A_from/A_to."""
    return flow_ratio * bead.area_mm2 / area_mm2(bead.width_mm, bead.height_mm, model)


@within_reach
def bead_words(bead: Bead, rate_mm3_s: float, filament_mm: float | None = None) -> Words:
    """Say what a bead is as commanded: cross-section, spacing, speed at a rate, filament for each mm of path.

    Args:
        bead: as commanded.
        rate_mm3_s: volumetric rate above 0.
        filament_mm: diameter of the filament; None where it is not known.
    """
    fed = tr(", {ratio:.4g} mm fed a mm", ratio=bead.filament_ratio(filament_mm)) if filament_mm else ""
    return tr(
        "Bead {area:.3g} mm², spacing {spacing:.3g} mm{fed}, speed {speed:.0f} mm/s.",
        area=bead.area_mm2,
        spacing=bead.spacing_mm,
        fed=fed,
        speed=rate_mm3_s / bead.area_mm2,
    )


def bead_questions(bead: Bead, nozzle_mm: float) -> tuple[Words, ...]:
    """Ask about a bead that a nozzle of this bore hardly lays.

    Raises:
        InputError: field `nozzle_mm` not between 0 and 5 mm.
    """
    if not 0 < nozzle_mm <= 5:
        raise InputError(
            "nozzle_mm", tr("A bore of {bore:g} mm cannot be; type the one stamped on the nozzle.", bore=nozzle_mm)
        )
    asks = []
    if bead.width_mm > WIDEST_BORES * nozzle_mm:
        asks.append(
            tr(
                "A bead of {width:g} mm is wider than twice the bore of {bore:g} mm: its edges are not pressed down. "
                "Other nozzle?",
                width=bead.width_mm,
                bore=nozzle_mm,
            )
        )
    if bead.height_mm > HIGHEST_BORES * nozzle_mm:
        asks.append(
            tr(
                "A layer of {height:g} mm is above three quarters of the bore of {bore:g} mm: the bead is hardly "
                "pressed. Lower layer or other nozzle?",
                height=bead.height_mm,
                bore=nozzle_mm,
            )
        )
    return tuple(asks)
