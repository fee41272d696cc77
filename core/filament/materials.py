"""What is usual for the materials of filaments: density, moulding shrinkage, expansion, temperatures, drying.

The figures come from the table `resources/catalogue/materials.csv`, each with its source and whether anybody compared
it with a publication. They are orders of magnitude for unfilled grades: good for questions, never for acceptance.

Reference: the table's source column; densities as by ISO 1183-1, moulding shrinkage as by ISO 294-4, expansion as by
ISO 11359-2. JCGM 100:2008 4.3.7 (rectangular distribution between two limits).
"""

from __future__ import annotations

import csv
import math
import re
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from importlib.resources import files

from core.quantity import Estimate
from core.words import Words, tr

_ROOT_3 = math.sqrt(3.0)
_KIN = {"PA": "PA6", "NYLON": "PA6", "PET": "PETG", "TPE": "TPU", "PE": "HDPE"}


class FigureName(StrEnum):
    """A property of a material."""

    DENSITY = "density"
    SHRINKAGE = "shrinkage"
    EXPANSION = "expansion"
    NOZZLE = "nozzle"
    BED = "bed"
    DRYING = "drying"
    DRYING_TIME = "drying_time"


def figure_words(name: FigureName) -> Words:
    """Return the name of a property for people."""
    return {
        FigureName.DENSITY: tr("density"),
        FigureName.SHRINKAGE: tr("moulding shrinkage"),
        FigureName.EXPANSION: tr("expansion"),
        FigureName.NOZZLE: tr("nozzle"),
        FigureName.BED: tr("bed"),
        FigureName.DRYING: tr("drying"),
        FigureName.DRYING_TIME: tr("drying time"),
    }[name]


@dataclass(frozen=True, slots=True)
class Figure:
    """What is usual: from `low` to `high`, and a typical value where one is given; `verified` tells who checked it."""

    name: FigureName
    low: float
    typical: float | None
    high: float
    unit: str
    verified: bool
    source: str


@dataclass(frozen=True, slots=True)
class Material:
    """A material by its short name, with the figures on record."""

    name: str
    figures: tuple[Figure, ...]

    def figure(self, name: FigureName) -> Figure | None:
        """Return one figure, or None where there is none on record."""
        return next((figure for figure in self.figures if figure.name is name), None)

    @property
    def polyamide(self) -> bool:
        """Whether it takes up so much water that another limit holds."""
        return self.name.startswith("PA")


@dataclass(frozen=True, slots=True)
class Match:
    """The material a text names; where not `exact` (filled, blended, or kin to it) its density is not this one's."""

    material: Material
    exact: bool


@cache
def materials() -> tuple[Material, ...]:
    """Return all materials in the order of the table."""
    text = (files("resources") / "catalogue" / "materials.csv").read_text(encoding="utf-8")
    by_name: dict[str, list[Figure]] = {}
    for row in csv.DictReader(line for line in text.splitlines() if not line.startswith("#")):
        by_name.setdefault(row["material"], []).append(
            Figure(
                name=FigureName(row["figure"]),
                low=float(row["low"]),
                typical=float(row["typical"]) if row["typical"] else None,
                high=float(row["high"]),
                unit=row["unit"],
                verified=row["known"] == "seen",
                source=row["source"],
            )
        )
    return tuple(Material(name, tuple(figures)) for name, figures in by_name.items())


def find_material(text: str) -> Match | None:
    """Return the material that a text such as `PETG`, `pla+` or `PA6-CF` names, or None.

    Further words mean a filled or blended grade.
    """
    words = [word for word in re.split(r"[\s\-_/,()]+", text.strip().upper()) if word]
    if not words:
        return None
    first = words[0].rstrip("+")
    name = _KIN.get(first, first)
    material = next((known for known in materials() if known.name == name), None)
    return Match(material, exact=len(words) == 1 and name == first) if material else None


def usual_density(text: str) -> Estimate | None:
    """Return the usual density in g/cm3 of what a text names; None where the material is not exactly known."""
    match = find_material(text)
    figure = match.material.figure(FigureName.DENSITY) if match and match.exact else None
    if figure is None:
        return None
    typical = figure.typical or (figure.low + figure.high) / 2.0
    half = max(typical - figure.low, figure.high - typical)
    return Estimate("density", typical, half / _ROOT_3, math.inf, "g/cm3")
