"""The picture of the page *First layer*: how far each pad is off the height commanded, and their mean."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from app.widgets.fields import local_text
from app.widgets.plotdata import FitCurve, Ground, PlotData, PointSeries
from app.words import shown
from core.machine_geometry.firstlayer import GOOD_MM, FirstLayer
from core.quantity import Estimate, value_text
from core.words import tr


def firstlayer_plot(pads: FirstLayer, error: Estimate, names: Sequence[str]) -> PlotData:
    """Return the pads by place, their mean with its interval, and the ground within which they are left alone.

    `error` is that mean: of a kept trial as it was kept, whatever is known since.
    """
    off = pads.thickness_mm - pads.layer_mm
    number = np.arange(1.0, off.size + 1.0)
    ends = np.array([0.5, number[-1] + 0.5])
    mean = shown(tr("mean, {value}", value=local_text(value_text(error))))
    tips = [f"{name}: {local_text(f'{value:+.3f}')} mm" for name, value in zip(names, off.tolist(), strict=True)]
    return PlotData(
        points=(
            PointSeries(shown(tr("pads")), number, off, symbol="■", role=0, tips=tuple(tips), flagged=pads.flagged),
        ),
        curves=(FitCurve(mean, ends, np.full(2, error.value), np.full(2, error.U), role=0),),
        ground=Ground(ends, np.full(2, GOOD_MM), shown(tr("leave it: ±0.02 mm"))),
        x_label=shown(tr("pad, in the order of the table")),
        y_label=shown(tr("pad less height commanded, mm")),
        title=shown(tr("Pads")),
        summary=shown(tr("Pads: {count}; {mean}.", count=off.size, mean=mean)),
        least_y_span=0.06,
    )
