"""The picture of a filament: both diameters as a ribbon along the length, or the weighed pieces."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from app.pages.filament.diameterrows import MASS, PAIRS, WATER
from app.widgets.fields import number_text
from app.widgets.plotdata import FitCurve, Ground, PlotData, PointSeries
from app.words import shown
from core.filament.density import measure_density
from core.filament.massperlength import measure_mass_per_length
from core.guidance.diameteradvice import DiameterJudgement
from core.guidance.sectionadvice import OVAL_RETURN_MM
from core.quantity import Estimate, value_text
from core.words import tr

Floats = NDArray[np.float64]


def diameter_plot(judged: DiameterJudgement, view: str, claimed_mm: float | None, places: list[int]) -> PlotData:
    """Return the picture of a view; `places` are the numbers of the places that were read both ways."""
    if view == PAIRS and judged.pairs is not None:
        return _ribbon(judged, claimed_mm, np.array(places, dtype=float))
    r = judged.readings
    if view == MASS and judged.mass_per_length is not None:
        u = {"u_balance_g": r.u_balance_g, "u_length_mm": r.u_length_mm}
        each = [measure_mass_per_length([m], [L], r.nominal_mm, **u)
                for m, L in zip(r.mass_g, r.length_mm, strict=True)]
        return _repeats(judged.mass_per_length, each, shown(tr("pieces")), shown(tr("piece")),
                        shown(tr("mass per length, g/m")), title_of(MASS))
    if view == WATER and judged.density is not None:
        each = [measure_density([air], [water], r.water_c, u_balance_g=r.u_balance_g)
                for air, water in zip(r.air_g, r.water_g, strict=True)]
        return _repeats(judged.density, each, shown(tr("samples")), shown(tr("sample")),
                        shown(tr("density, g/cm³")), title_of(WATER))
    return PlotData((), title=title_of(view))


def title_of(view: str) -> str:
    """Return the heading of the picture of a view."""
    if view == PAIRS:
        return shown(tr("Diameter around and along"))
    return shown(tr("Mass per length")) if view == MASS else shown(tr("Density"))


def _ribbon(judged: DiameterJudgement, claimed_mm: float | None, place: Floats) -> PlotData:
    """Draw each reading less the nominal, and the ribbon between the two of a place."""
    pairs = judged.pairs
    assert pairs is not None
    first, second = (values - pairs.nominal_mm for values in (pairs.first_mm, pairs.second_mm))
    d = pairs.diameter
    ends = np.array([float(place.min()) - 0.5, float(place.max()) + 0.5])
    mean = shown(tr("equivalent, {d}", d=value_text(d).removeprefix("+")))
    return PlotData(
        points=(
            _readings(shown(tr("largest")), place, first, pairs.oval_mm, pairs.first_mm, "▲", 0),
            _readings(shown(tr("at 90°")), place, second, pairs.oval_mm, pairs.second_mm, "▼", 1),
        ),
        curves=(
            FitCurve(mean, ends, np.full(2, d.value - pairs.nominal_mm), np.full(2, d.U), role=2),
            FitCurve("", place, (first + second) / 2.0, np.abs(first - second) / 2.0, role=0),
        ),
        ground=None if claimed_mm is None else Ground(ends, np.full(2, claimed_mm), shown(
            tr("claimed ± {tolerance} mm", tolerance=number_text(claimed_mm)))),
        x_label=shown(tr("place along the filament")),
        y_label=shown(tr("diameter − nominal, mm")),
        title=title_of(PAIRS),
        ring_label=shown(tr("out of round")),
        summary=shown(tr("Places: {count}; equivalent diameter {d}; ovality {oval}.", count=place.size,
                         d=value_text(d).removeprefix("+"), oval=value_text(pairs.ovality).removeprefix("+"))),
        least_y_span=0.04,
    )


def _readings(
    name: str, place: Floats, off: Floats, oval: Floats, reading: Floats, symbol: str, role: int
) -> PointSeries:
    tips = tuple(
        shown(tr("place {place}: {name} {reading} mm, oval by {oval} mm", place=f"{at:g}", name=name,
                 reading=number_text(float(d)), oval=number_text(float(o), 3)))
        for at, d, o in zip(place, reading, oval, strict=True)
    )
    return PointSeries(name, place, off, symbol=symbol, role=role, ringed=oval > OVAL_RETURN_MM, tips=tips)


def _repeats(mean: Estimate, each: list[Estimate], name: str, x_label: str, y_label: str, title: str) -> PlotData:
    """Draw what each piece or sample says by itself, and their mean."""
    number = np.arange(1.0, len(each) + 1.0)
    ends = np.array([0.5, len(each) + 0.5])
    text = value_text(mean).removeprefix("+")
    values, half = np.array([e.value for e in each]), np.array([e.U for e in each])
    return PlotData(
        points=(PointSeries(name, number, values, half, symbol="●", role=0),),
        curves=(FitCurve(shown(tr("mean, {mean}", mean=text)), ends, np.full(2, mean.value), np.full(2, mean.U)),),
        x_label=x_label,
        y_label=y_label,
        title=title,
        summary=shown(tr("{count} {name}; mean {mean}.", count=len(each), name=name, mean=text)),
        zero_line=False,
        least_y_span=0.02,
    )
